using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json;
using Heatwright.Proofs.Mutants;

namespace Heatwright.Proofs;

/// <summary>Runs a proof by its name and keeps its result.</summary>
internal static class Program
{
    private const int Seed = 20261125;

    /// <summary>Fixed beforehand: how far from the first seed the second lies.</summary>
    private const int SecondSeed = 5000;

    private static readonly JsonSerializerOptions Pretty = new(JsonSerializerDefaults.Web) { WriteIndented = true, NewLine = "\n" };

    private static int Main(string[] words)
    {
        switch (words)
        {
            case ["child", .. var child]:
                return Victim.Run(child);
            case ["mutants-worker", .. var worker]:
                return MutantWorker.Run(worker);
            case ["mutants" or "mutants-again", .. var rest]:
                return Keep(["mutants", .. rest.Take(1)], "mutants", MutantCampaign.Run(Root(), Count([.. rest.Take(1)], 1500), Seed, Count([.. rest.Skip(1)], 600), words[0] == "mutants-again", Console.WriteLine), MutantCampaign.Holds);
            case ["mutants-of", var files, .. var rest]:
                var tried = MutantCampaign.Of(Root(), files.Split(','), Count([.. rest.Take(1)], 300), [.. rest.Skip(1).SelectMany(classes => classes.Split(','))], Seed, Console.WriteLine);
                Console.WriteLine(JsonSerializer.Serialize(tried with { Survivors = [] }, Pretty));
                return 0;
            case ["kills", .. var rest]:
                return Keep(words, "kills", KillCampaign.Run(Count(rest, 500), Seed, Console.WriteLine), result => result.Failures.Count == 0);
            case ["full-disk"]:
                return Keep(words, "full-disk", FullDisk.Run(Console.WriteLine), result => result.Failures.Count == 0);
            case ["fuzz", .. var rest]:
                string? only = rest is [_, .. var reader] && reader.Length > 0 ? string.Join(' ', reader) : null;
                using (var stop = new CancellationTokenSource())
                using (PosixSignalRegistration.Create(PosixSignal.SIGTERM, signal => End(signal, stop)))
                using (PosixSignalRegistration.Create(PosixSignal.SIGINT, signal => End(signal, stop)))
                {
                    var fuzzed = FuzzCampaign.Run(Count([.. rest.Take(1)], 100_000), only, Seed, Console.WriteLine, FuzzedBefore(string.Join(' ', rest.Take(1))), Path.Combine(Root(), "proofs", "results", "fuzz-failures"), stop.Token);
                    // Readers that run in processes of their own write one after another.
                    using var turn = new Mutex(false, "heatwright-proofs-fuzz");
                    turn.WaitOne();
                    int exit = Keep(["fuzz", .. rest.Take(1)], "fuzz", only is null ? fuzzed : WithOthers(fuzzed, rest[0]), result => result.Failures.Count == 0);
                    turn.ReleaseMutex();
                    return exit;
                }

            case ["verdicts", .. var rest]:
                return Keep(words, "verdicts", VerdictCampaign.Run(Count(rest, 70), Seed, Console.WriteLine), VerdictCampaign.Holds);
            case ["verdicts-again", .. var rest]:
                return Keep(words, "verdicts-again", VerdictCampaign.Run(Count(rest, 70), Seed + SecondSeed, Console.WriteLine), VerdictCampaign.Holds, Seed + SecondSeed);
            case ["next", .. var rest]:
                return Keep(words, "next", NextCampaign.Run(Count(rest, 200), Seed), result => result.MedianTrials["advised"] <= 0.5 * result.MedianTrials["any order"] && result.MedianTrials["advised"] < Math.Min(result.MedianTrials["cheapest first"], result.MedianTrials["largest doubt first"]));
            case ["browsers", .. var rest]:
                return Keep(words, "browsers", BrowserCampaign.Run(20, TimeSpan.FromSeconds(Count(rest, 600)), TimeSpan.FromSeconds(10), real: true, Seed, Console.WriteLine).GetAwaiter().GetResult(), BrowserCampaign.Holds);
            case ["knife"]:
                return Keep(words, "knife", KnifeByBrowser.Run(Root(), Console.WriteLine).GetAwaiter().GetResult(), KnifeByBrowser.Holds);
            case ["coverage", .. var rest]:
                return Keep(words, "coverage", CoverageCampaign.Run(Count(rest, 1000), Seed, Console.WriteLine), CoverageCampaign.Holds);
            case ["coverage-again", .. var rest]:
                return Keep(words, "coverage-again", CoverageCampaign.Run(Count(rest, 1000), Seed + SecondSeed, Console.WriteLine), CoverageCampaign.Holds, Seed + SecondSeed);
            case ["coverage-of", var kind, .. var rest]:
                _ = CoverageCampaign.Run(Count(rest, 100), Seed, Console.WriteLine, [.. kind.Split(',')], 1).Failures.All(failure => { Console.WriteLine(failure); return true; });
                return 0;
            case ["validation"]:
                string page = Path.Combine(Root(), "docs", "validation.md");
                string results = Path.Combine(Root(), "proofs", "results");
                File.WriteAllText(page, ProofPage.Written(File.ReadAllText(page), results));
                File.WriteAllText(Path.Combine(Root(), "docs", ReliabilityPicture.Name), ReliabilityPicture.Svg(results));
                return 0;
            default:
                Console.Error.WriteLine("Say which proof: kills [COUNT], full-disk, fuzz [COUNT [READER]], verdicts [STUDIES], verdicts-again [STUDIES], next [STUDIES], browsers [SECONDS], knife, coverage [TRIALS], coverage-again [TRIALS], coverage-of KIND [TRIALS] (kept nowhere), mutants [COUNT [MINUTES]], mutants-again [COUNT [MINUTES]] (only what was not killed the last time), mutants-of FILES [COUNT [CLASSES]] (parts of paths and names with commas between; kept nowhere). Results go to proofs/results; validation writes them into docs/validation.md.");
                return 2;
        }
    }

    /// <summary>A long campaign that is told to end keeps what it has seen.</summary>
    private static void End(PosixSignalContext signal, CancellationTokenSource stop)
    {
        signal.Cancel = true;
        stop.Cancel();
    }

    /// <summary>What other processes kept of the same campaign, with the readers of this one.</summary>
    private static FuzzResult WithOthers(FuzzResult own, string count)
    {
        var others = FuzzedBefore(count);
        return others is null ? own : new FuzzResult(
            others.Readers.Where(reader => !own.Readers.ContainsKey(reader.Key)).Concat(own.Readers).ToDictionary(StringComparer.Ordinal),
            [.. others.Failures.Where(failure => !own.Readers.Keys.Any(name => failure.StartsWith(name + ",", StringComparison.Ordinal))), .. own.Failures])
        {
            Mended = [.. others.Mended.Where(line => !own.Readers.Keys.Any(name => line.StartsWith(name + ",", StringComparison.Ordinal))), .. own.Mended],
        };
    }

    /// <summary>What is kept of a campaign of this count, from earlier starts too; null: nothing.</summary>
    private static FuzzResult? FuzzedBefore(string count)
    {
        string file = Path.Combine(Root(), "proofs", "results", "fuzz.json");
        if (!File.Exists(file))
        {
            return null;
        }

        using var kept = JsonDocument.Parse(File.ReadAllText(file));
        bool same = kept.RootElement.GetProperty("command").GetString() == $"fuzz {count}" && kept.RootElement.GetProperty("seed").GetInt32() == Seed;
        return same ? kept.RootElement.GetProperty("result").Deserialize<FuzzResult>(Pretty) : null;
    }

    private static int Count(string[] rest, int otherwise) => rest is [var text] ? int.Parse(text, CultureInfo.InvariantCulture) : otherwise;

    private static int Keep<T>(string[] words, string name, T result, Func<T, bool> well, int seed = Seed)
    {
        string folder = Path.Combine(Root(), "proofs", "results");
        Directory.CreateDirectory(folder);
        var kept = new
        {
            Proof = name,
            Command = string.Join(' ', words),
            Date = TimeProvider.System.GetUtcNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            Machine = $"{RuntimeInformation.OSDescription.Trim()}, {RuntimeInformation.OSArchitecture}, {Environment.ProcessorCount.ToString(CultureInfo.InvariantCulture)} cores, {RuntimeInformation.FrameworkDescription}",
            Seed = seed,
            Result = result,
        };
        string text = JsonSerializer.Serialize(kept, Pretty);
        File.WriteAllText(Path.Combine(folder, name + ".json"), text + "\n");
        Console.WriteLine(text);
        return well(result) ? 0 : 1;
    }

    private static string Root()
    {
        string? folder = Environment.CurrentDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Heatwright.slnx")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? Environment.CurrentDirectory;
    }
}
