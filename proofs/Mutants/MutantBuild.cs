using System.Reflection;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Heatwright.Proofs.Mutants;

/// <summary>Builds Core once with all drawn changes inside, each behind its switch.</summary>
internal sealed class MutantBuild
{
    private static readonly CSharpParseOptions Language = new(LanguageVersion.CSharp14, preprocessorSymbols: ["DEBUG", "TRACE", "NET", "NET10_0", "NET10_0_OR_GREATER"]);

    private readonly CSharpCompilation plain;
    private readonly string builtCore;

    /// <summary>Reads the sources.</summary>
    /// <param name="root">The repository.</param>
    /// <param name="built">Folder of the built tests.</param>
    public MutantBuild(string root, string built)
    {
        builtCore = Path.Combine(built, "Heatwright.Core.dll");
        string core = Path.Combine(root, "src", "Heatwright.Core"), made = Path.Combine(core, "obj", "Debug", "net10.0");
        string[] sources = [.. Directory.GetFiles(core, "*.cs", SearchOption.AllDirectories).Where(file => !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("/bin/", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];
        var trees = sources.Select(file => CSharpSyntaxTree.ParseText(File.ReadAllText(file), Language, Path.GetRelativePath(core, file).Replace('\\', '/'), Encoding.UTF8))
            .Concat(Directory.GetFiles(made, "*.cs", SearchOption.AllDirectories).Select(file => CSharpSyntaxTree.ParseText(File.ReadAllText(file), Language, file, Encoding.UTF8)))
            .ToList();
        string[] libraries = [.. ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Where(file => Path.GetDirectoryName(file) == Path.GetDirectoryName(typeof(object).Assembly.Location)), Path.Combine(built, "MathNet.Numerics.dll")];
        var written = CSharpCompilation.Create("Heatwright.Core", trees, libraries.Select(file => MetadataReference.CreateFromFile(file)),
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable, deterministic: true, generalDiagnosticOption: ReportDiagnostic.Suppress));
        CSharpGeneratorDriver.Create([Expressions()], parseOptions: Language).RunGeneratorsAndUpdateCompilation(written, out var whole, out _);
        plain = (CSharpCompilation)whole;
    }

    /// <summary>All places of some folders, in the order in which the seed draws them.</summary>
    public List<MutantPoint> Drawn(IReadOnlyList<string> folders, int seed) =>
        [.. MutantFinder.All(plain, plain.SyntaxTrees.Where(tree => folders.Any(folder => tree.FilePath.StartsWith(folder + "/", StringComparison.Ordinal)))).OrderBy(point => MutantFinder.Drawn(point, seed), StringComparer.Ordinal)];

    /// <summary>Writes the changed Core; what the compiler refuses is replaced by the next of its folder.</summary>
    /// <param name="drawn">All places in the order of the draw.</param>
    /// <param name="wanted">How many of each folder.</param>
    /// <param name="file">Where to write.</param>
    /// <param name="known">What was refused in earlier runs is not tried again.</param>
    /// <param name="say">Told what happens.</param>
    /// <returns>The changes that are in it; their numbers are their places in the list. Those refused on the way are null.</returns>
    public IReadOnlyList<MutantPoint?> Write(IReadOnlyList<MutantPoint> drawn, IReadOnlyDictionary<string, int> wanted, string file, MutantMemory known, Action<string> say)
    {
        var waiting = drawn.Where(point => !known.Refused(point.Key)).GroupBy(point => point.Folder).ToDictionary(group => group.Key, group => new Queue<MutantPoint>(group), StringComparer.Ordinal);
        List<MutantPoint?> taken = [];
        while (true)
        {
            foreach (var (folder, count) in wanted)
            {
                int have = taken.Count(point => point?.Folder == folder);
                for (; have < count && waiting[folder].TryDequeue(out var next); have++)
                {
                    taken.Add(next);
                }
            }

            var changed = Changed(taken);
            using var made = new MemoryStream();
            var result = changed.Emit(made, manifestResources: Resources());
            if (result.Success)
            {
                File.WriteAllBytes(file, made.ToArray());
                known.Write();
                return taken;
            }

            File.WriteAllLines(file + ".refused.txt", result.Diagnostics.Select(finding => finding.ToString()));
            var refused = result.Diagnostics.Where(finding => finding.Severity == DiagnosticSeverity.Error).SelectMany(Refused).ToHashSet();
            say($"{refused.Count} changes do not compile");
            if (refused.Count == 0)
            {
                throw new InvalidOperationException(string.Join('\n', result.Diagnostics.Where(finding => finding.Severity == DiagnosticSeverity.Error).Take(10)));
            }

            foreach (int number in refused)
            {
                known.Keep(taken[number]!.Key, "refused");
                taken[number] = null;
            }
        }
    }

    private CSharpCompilation Changed(List<MutantPoint?> taken)
    {
        var changed = plain.AddSyntaxTrees(CSharpSyntaxTree.ParseText(MutantSwitches.Source, Language));
        foreach (var group in taken.Select((point, number) => (point, number)).Where(one => one.point is not null).GroupBy(one => one.point!.Node.SyntaxTree))
        {
            var rewritten = new MutantSwitches(group.ToDictionary(one => one.number, one => one.point!)).Visit(group.Key.GetRoot())!;
            changed = changed.ReplaceSyntaxTree(group.Key, CSharpSyntaxTree.ParseText(rewritten.ToFullString(), Language, group.Key.FilePath, Encoding.UTF8));
        }

        return changed;
    }

    /// <summary>The changes that a finding of the compiler blames: the one around it, else all of its member.</summary>
    private static IEnumerable<int> Refused(Diagnostic finding)
    {
        if (finding.Location.SourceTree?.GetRoot() is not { } root)
        {
            return [];
        }

        var node = root.FindNode(finding.Location.SourceSpan, getInnermostNodeForTie: true);
        var around = node.AncestorsAndSelf().Select(MutantSwitches.Number).FirstOrDefault(number => number is not null);
        return around is { } one ? [one]
            : (node.AncestorsAndSelf().OfType<MemberDeclarationSyntax>().FirstOrDefault() ?? root).DescendantNodesAndSelf().Select(MutantSwitches.Number).OfType<int>();
    }

    /// <summary>What the build writes by itself: regular expressions. It comes with the SDK, beside what programs refer to.</summary>
    private static ISourceGenerator Expressions()
    {
        string packs = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(typeof(object).Assembly.Location)!, "..", "..", "..", "packs", "Microsoft.NETCore.App.Ref"));
        string file = Directory.GetFiles(packs, "System.Text.RegularExpressions.Generator.dll", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Last();
        var type = Assembly.LoadFrom(file).GetType("System.Text.RegularExpressions.Generator.RegexGenerator", throwOnError: true)!;
        return ((IIncrementalGenerator)Activator.CreateInstance(type)!).AsSourceGenerator();
    }

    private List<ResourceDescription> Resources()
    {
        var core = Assembly.LoadFile(builtCore);
        return [.. core.GetManifestResourceNames().Select(name => new ResourceDescription(name, () => core.GetManifestResourceStream(name)!, isPublic: true))];
    }
}
