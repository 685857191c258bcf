using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace Heatwright.Proofs.Mutants;

/// <summary>Makes small changes in the folders that must not be wrong, one at a time, and asks the fast tests whether they notice. See docs/decisions/0076.</summary>
internal static class MutantCampaign
{
    /// <summary>For one change no more time of the processor than this is spent on tests.</summary>
    private const double TryS = 8;

    private static readonly string[] Folders = ["Quantities", "Physics", "Trials", "Safety", "Verdicts"];

    /// <summary>Draws the changes, tries each and counts.</summary>
    /// <param name="root">The repository.</param>
    /// <param name="count">How many changes.</param>
    /// <param name="seed">The seed of the draw.</param>
    /// <param name="minutes">When to stop trying and count.</param>
    /// <param name="again">True to trust an earlier run for what it saw killed.</param>
    /// <param name="say">Told what happens.</param>
    public static MutantResult Run(string root, int count, int seed, double minutes, bool again, Action<string> say) =>
        Run(root, new Look([], count, []), seed, minutes, again, say);

    /// <summary>Tries changes of some sources only, asked of some classes of tests only: for whoever writes the tests that are missing. Kept nowhere.</summary>
    /// <param name="root">The repository.</param>
    /// <param name="files">Parts of the paths of sources.</param>
    /// <param name="count">How many changes at most.</param>
    /// <param name="classes">Parts of the full names of test classes; none: all.</param>
    /// <param name="seed">The seed of the draw.</param>
    /// <param name="say">Told what happens.</param>
    public static MutantResult Of(string root, string[] files, int count, string[] classes, int seed, Action<string> say) =>
        Run(root, new Look(files, count, classes), seed, double.PositiveInfinity, again: false, say);

    /// <summary>What is looked at: parts of paths, how many changes, parts of names of test classes.</summary>
    private sealed record Look(string[] Files, int Count, string[] Classes)
    {
        /// <summary>Beside each other from several checkouts, where only some sources are looked at.</summary>
        public string Folder(string root) => Path.Combine(Path.GetTempPath(), Files.Length == 0 ? "heatwright-mutants" : $"heatwright-mutants-{Path.GetFileName(root)}");

        public List<MutantPoint> Of(List<MutantPoint> drawn) => Files.Length == 0 ? drawn : [.. drawn.Where(point => Files.Any(file => point.File.Contains(file, StringComparison.Ordinal))).Take(Count)];

        public Dictionary<string, int> Wanted(List<MutantPoint> drawn) => Files.Length == 0 ? Shares(drawn, Count) : drawn.GroupBy(point => point.Folder).ToDictionary(group => group.Key, group => group.Count(), StringComparer.Ordinal);
    }

    private static MutantResult Run(string root, Look look, int seed, double minutes, bool again, Action<string> say)
    {
        string folder = look.Folder(root), run = Path.Combine(folder, "run");
        if (Directory.Exists(run))
        {
            Directory.Delete(run, recursive: true);
        }

        foreach (string tests in new[] { "Heatwright.Tests", "Heatwright.Core.Tests" })
        {
            Built(root, tests);
            Copied(Path.Combine(root, "tests", tests, "bin", "Debug", "net10.0"), run);
        }

        var known = again ? MutantMemory.Read(folder) : new MutantMemory(folder);
        var build = new MutantBuild(root, run);
        var drawn = look.Of(build.Drawn(Folders, seed));
        var wanted = look.Wanted(drawn);
        say($"{drawn.Count} places, {string.Join(", ", wanted.Select(share => $"{share.Key} {share.Value}"))}");
        var changes = build.Write(drawn, wanted, Path.Combine(run, "Heatwright.Core.dll"), known, say);
        using var process = new MutantProcess(run, look.Classes);
        var cover = MutantCover.Of(process, changes, known, say);
        process.Dispose();
        using var apart = new MutantProcess(run, look.Classes);
        List<(MutantPoint Point, string Outcome, int Tests)> seen = [];
        var since = Stopwatch.StartNew();

        // Of each folder the same share after the same time: what was tried until then is a fair sample, too.
        var fair = changes.Select((point, number) => (Point: point, Number: number)).Where(one => one.Point is not null).GroupBy(one => one.Point!.Folder)
            .SelectMany(folder => folder.Select((one, i) => (one.Point, one.Number, Share: (i + 0.5) / folder.Count()))).OrderBy(one => one.Share);
        foreach (var (point, number, _) in fair)
        {
            if (since.Elapsed.TotalMinutes >= minutes)
            {
                say($"stopped after {seen.Count} of {changes.Count(one => one is not null)}");
                break;
            }

            var (tests, fresh) = cover.For(point!, number, TryS);
            string outcome = known.Killed(point!.Key) ?? (tests.Count == 0 ? cover.Outcome(number) : Tried(process, apart, number, tests, fresh));
            known.Keep(point.Key, outcome);
            seen.Add((point, outcome, tests.Count));
            if (outcome[0] != 'k' || seen.Count % 50 == 0)
            {
                say(string.Create(CultureInfo.InvariantCulture, $"{TimeProvider.System.GetUtcNow():HH:mm:ss} {seen.Count}: {outcome} {point.File}:{point.Line} {point.Kind}: {point.Shown} ({tests.Count} tests)"));
            }
        }

        known.Write();
        return Result(root, drawn, seen, cover);
    }

    /// <summary>True when enough was noticed of all, and in every folder of what a test could notice.</summary>
    public static bool Holds(MutantResult result) => result.Folders.Values.All(tally => tally.KilledPercentOfTheRest >= 85) && result.Folders["all"].KilledPercent >= 85;

    private static string Tried(MutantProcess process, MutantProcess apart, int number, IReadOnlyList<string> tests, bool fresh)
    {
        string[] said = fresh ? apart.Try(number, tests, fresh: true) : process.Try(number, tests, fresh: false);
        return string.Join('\t', said[0] == "poisoned" ? apart.Try(number, tests, fresh: true) : said);
    }

    /// <summary>Each folder by its share, but at least a hundred where there are as many.</summary>
    private static Dictionary<string, int> Shares(List<MutantPoint> drawn, int count)
    {
        var places = Folders.ToDictionary(folder => folder, folder => drawn.Count(point => point.Folder == folder), StringComparer.Ordinal);
        var few = places.Where(place => (double)place.Value * count / drawn.Count < 100).ToDictionary(place => place.Key, place => Math.Min(Math.Min(place.Value, 100), count / 5), StringComparer.Ordinal);
        double rest = places.Where(place => !few.ContainsKey(place.Key)).Sum(place => place.Value);
        return places.ToDictionary(place => place.Key, place => few.TryGetValue(place.Key, out int least) ? least : (int)Math.Round((count - few.Values.Sum()) * place.Value / rest), StringComparer.Ordinal);
    }

    private static MutantResult Result(string root, List<MutantPoint> drawn, List<(MutantPoint Point, string Outcome, int Tests)> seen, MutantCover cover)
    {
        var reasons = JsonSerializer.Deserialize<Dictionary<string, string[]>>(File.ReadAllText(Path.Combine(root, "proofs", "Mutants", "explained.json")))!
            .SelectMany(group => group.Value.Select(key => (key, group.Key))).ToDictionary(pair => pair.key, pair => pair.Key, StringComparer.Ordinal);
        List<Survivor> survivors = [.. seen.Where(one => one.Outcome is "survived" or "not reached").OrderBy(one => one.Point.File, StringComparer.Ordinal).ThenBy(one => one.Point.Line)
            .Select(one => new Survivor(string.Create(CultureInfo.InvariantCulture, $"{one.Point.File}:{one.Point.Line}"), one.Point.Shown, one.Tests, reasons.GetValueOrDefault(one.Point.Key, "")))];
        return new(
            Folders.Append("all").ToDictionary(folder => folder, folder => Tally(drawn.Count(point => folder == "all" || point.Folder == folder), [.. seen.Where(one => folder == "all" || one.Point.Folder == folder).Select(one => one.Outcome)],
                survivors.Count(one => one.Why.Length > 0 && (folder == "all" || one.Where.StartsWith(folder + "/", StringComparison.Ordinal))))),
            cover.Fast, cover.Long, cover.Other,
            survivors.GroupBy(one => one.Why.Length > 0 ? one.Why : "not explained").OrderByDescending(group => group.Count()).ToDictionary(group => group.Key, group => group.Count()), survivors);
    }

    private static MutantTally Tally(int places, string[] outcomes, int explained)
    {
        int of(string word) => outcomes.Count(outcome => outcome.StartsWith(word, StringComparison.Ordinal));
        int forEver = of("hung") + of("crashed") + outcomes.Count(outcome => outcome.EndsWith("TimeoutException", StringComparison.Ordinal));
        int killed = of("killed") + of("hung") + of("crashed"), only = of("long");
        return new(places, outcomes.Length, killed, forEver, of("survived"), of("not reached"), only, Math.Round(100.0 * killed / Math.Max(1, outcomes.Length - only), 1), explained, Math.Round(100.0 * killed / Math.Max(1, outcomes.Length - only - explained), 1));
    }

    private static void Built(string root, string name)
    {
        string project = Path.Combine(root, "tests", name), built = Path.Combine(project, "bin", "Debug", "net10.0", name + ".dll");
        var sources = new[] { project, Path.Combine(root, "src"), Path.Combine(root, "data") }.SelectMany(folder => Directory.GetFiles(folder, "*", SearchOption.AllDirectories))
            .Where(file => !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("/bin/", StringComparison.Ordinal));
        if (File.Exists(built) && sources.All(file => File.GetLastWriteTimeUtc(file) < File.GetLastWriteTimeUtc(built)))
        {
            return;
        }

        using var process = Process.Start(new ProcessStartInfo("dotnet", ["build", project, "-c", "Debug", "-v", "q", "-p:RunAnalyzers=false", "-p:UseSharedCompilation=false", "-nodeReuse:false"]))!;
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException("The tests do not build.");
        }
    }

    private static void Copied(string from, string to)
    {
        foreach (string file in Directory.GetFiles(from, "*", SearchOption.AllDirectories))
        {
            string copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy, overwrite: true);
        }
    }
}
