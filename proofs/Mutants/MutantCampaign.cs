using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace Heatwright.Proofs.Mutants;

/// <summary>Makes small changes in the folders that must not be wrong, one at a time, and asks the fast tests whether they notice. See docs/decisions/0076.</summary>
internal static class MutantCampaign
{
    /// <summary>For one change no more time of the processor than this is spent on tests.</summary>
    private const double TryS = 15;

    private static readonly string[] Folders = ["Quantities", "Physics", "Trials", "Safety", "Verdicts"];

    /// <summary>Draws the changes, tries each and counts.</summary>
    /// <param name="root">The repository.</param>
    /// <param name="count">How many changes.</param>
    /// <param name="seed">The seed of the draw.</param>
    /// <param name="again">True to trust an earlier run for what it saw killed.</param>
    /// <param name="say">Told what happens.</param>
    public static MutantResult Run(string root, int count, int seed, bool again, Action<string> say)
    {
        string folder = Path.Combine(Path.GetTempPath(), "heatwright-mutants"), run = Path.Combine(folder, "run");
        if (Directory.Exists(run))
        {
            Directory.Delete(run, recursive: true);
        }

        foreach (string tests in new[] { "Heatwright.Tests", "Heatwright.Core.Tests" })
        {
            Built(Path.Combine(root, "tests", tests));
            Copied(Path.Combine(root, "tests", tests, "bin", "Debug", "net10.0"), run);
        }

        var known = again ? MutantMemory.Read(folder) : new MutantMemory(folder);
        var build = new MutantBuild(root, run);
        var drawn = build.Drawn(Folders, seed);
        var wanted = Shares(drawn, count);
        say($"{drawn.Count} places, {string.Join(", ", wanted.Select(share => $"{share.Key} {share.Value}"))}");
        var changes = build.Write(drawn, wanted, Path.Combine(run, "Heatwright.Core.dll"), known, say);
        using var process = new MutantProcess(run);
        var cover = MutantCover.Of(process, changes, known, say);
        process.Dispose();
        List<(MutantPoint Point, string Outcome, int Tests)> seen = [];
        foreach (var (point, number) in changes.Select((point, number) => (point, number)).Where(one => one.point is not null))
        {
            var (tests, fresh) = cover.For(point!, number, TryS);
            string outcome = known.Killed(point!.Key) ?? (tests.Count > 0 ? Tried(process, number, tests, fresh, cover.MadeOnce(number)) : cover.Outcome(number));
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

    /// <summary>True when enough was noticed, in every folder.</summary>
    public static bool Holds(MutantResult result) => result.Folders.Values.All(tally => tally.KilledPercent >= 85);

    private static string Tried(MutantProcess process, int number, IReadOnlyList<string> tests, bool fresh, bool madeOnce)
    {
        string[] said = process.Try(number, tests, fresh);
        // Where something is made once and kept, a process that made it before the change sees nothing of it.
        return string.Join('\t', said[0] == "survived" && madeOnce && !fresh ? process.Try(number, tests, fresh: true) : said);
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
            .Select(one => new Survivor(string.Create(CultureInfo.InvariantCulture, $"{one.Point.File}:{one.Point.Line}"), one.Point.Shown, one.Tests, reasons.GetValueOrDefault($"{one.Point.File}: {one.Point.Shown}", "")))];
        return new(
            Folders.Append("all").ToDictionary(folder => folder, folder => Tally(drawn.Count(point => folder == "all" || point.Folder == folder), [.. seen.Where(one => folder == "all" || one.Point.Folder == folder).Select(one => one.Outcome)])),
            cover.Fast, cover.Long, cover.Other,
            survivors.GroupBy(one => one.Why).OrderByDescending(group => group.Count()).ToDictionary(group => group.Key, group => group.Count()), survivors);
    }

    private static MutantTally Tally(int places, string[] outcomes)
    {
        int of(string word) => outcomes.Count(outcome => outcome.StartsWith(word, StringComparison.Ordinal));
        int forEver = of("hung") + of("crashed") + outcomes.Count(outcome => outcome.EndsWith("TimeoutException", StringComparison.Ordinal));
        int killed = of("killed") + of("hung") + of("crashed"), only = of("long");
        return new(places, outcomes.Length, killed, forEver, of("survived"), of("not reached"), only, Math.Round(100.0 * killed / Math.Max(1, outcomes.Length - only), 1));
    }

    private static void Built(string project)
    {
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
