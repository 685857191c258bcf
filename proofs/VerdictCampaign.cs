using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.DemoTruth;
using Heatwright.Jobs;
using Heatwright.Numerics;
using Heatwright.Verdicts;

namespace Heatwright.Proofs;

/// <summary>One bin of a reliability picture: what was said, and how often it came true.</summary>
/// <param name="Said">Bounds of the said probability, in 100.</param>
/// <param name="Count">Requirement predictions in it.</param>
/// <param name="Mean">Mean of what was said, in 100.</param>
/// <param name="Kept">How many were truly kept, in 100.</param>
public sealed record ReliabilityBin(string Said, int Count, double Mean, double Kept);

/// <summary>Figures of the campaign.</summary>
/// <param name="Studies">Studies whose every reading was made up from a drawn truth, a width.</param>
/// <param name="Draws">Most draws of a prediction; fewer where its words are settled.</param>
/// <param name="OwnWidths">Truth drawn from what labels and assumptions say.</param>
/// <param name="TwiceAsWide">Truth of the numbers that nobody measured drawn twice as wide.</param>
/// <param name="ByQuantity">Share of truths inside the middle 90 of 100 draws, in 100, own widths.</param>
/// <param name="Failures">Studies that could not be worked out.</param>
public sealed record VerdictResult(int Studies, int Draws, IReadOnlyList<ReliabilityBin> OwnWidths, IReadOnlyList<ReliabilityBin> TwiceAsWide, IReadOnlyDictionary<string, double> ByQuantity, IReadOnlyList<string> Failures);

/// <summary>Are said odds the odds that come true? Hidden values are drawn, every reading is made of them by code that shares nothing with the product, the product
/// judges, and the truth is run at steps of 20 ms with more lumps and another controller that holds what the brief says, to the end of its charge. Limits are set at the twentieths of each prediction's draws, so that every
/// probability occurs; pairs of one prediction lean on each other, predictions of one study a little.</summary>
public static class VerdictCampaign
{
    private const int Limits = 20;

    /// <summary>What nobody measured in the invented bag, as labels, sheets and assumptions give it: the middle, and how far it may lie off, evenly.</summary>
    private static readonly Dictionary<string, (double Middle, double Half)> Stated = new(StringComparer.Ordinal)
    {
        ["round.heatCapacity"] = (42, 8),
        ["iron.heatCapacity"] = (40, 8),
        ["holder.ohms"] = (0.030, 0.020),
        ["probe.lag"] = (1.5, 0.4),
        ["grip.heatCapacity"] = (80, 25),
        ["grip.loss"] = (0.18, 0.06),
        ["switch.ohms"] = (0.006, 0.002),
        ["module.limit"] = (10, 0.5),
        ["module.lockOut"] = (2.95, 0.05),
        ["supervision.ohms"] = (0.025, 0.002),
        ["controller.drain"] = (0.012, 0.001),
        ["work.contact"] = (0.22, 0.04),
        ["work.need"] = (41, 9),
    };

    /// <summary>Kept as they are: what the maker set, and what the product's models leave out on purpose.</summary>
    private static readonly HashSet<string> Kept = ["seed", "air", "module.set", "contacts.drift", "probe.contact", "cell.toGrip", "supervision.trip"];

    /// <summary>Measured values differ so much from piece to piece, as a share, one standard deviation.</summary>
    private const double PieceToPiece = 0.06;

    private sealed record Pair(string Quantity, double Said, bool Kept);

    /// <summary>What is asked of it: no study fails, and of at least 2000 predictions said to hold with 85 to 95 in 100, 87 to 93 in 100 do.</summary>
    public static bool Holds(VerdictResult result) => result.Failures.Count == 0
        && result.OwnWidths.FirstOrDefault(bin => bin.Said == "85 to 95") is { Count: >= 2000, Kept: >= 87 and <= 93 };

    /// <summary>So many studies at each width.</summary>
    public static VerdictResult Run(int studies, int seed, Action<string> say)
    {
        List<string> failures = [];
        List<Pair> own = [], wide = [];
        for (int i = 0; i < studies; i++)
        {
            foreach (var (pairs, times) in new[] { (own, 1.0), (wide, 2.0) })
            {
                try
                {
                    pairs.AddRange(One(Drawn(seed, i, times)));
                }
                catch (InvalidOperationException error)
                {
                    failures.Add(string.Create(CultureInfo.InvariantCulture, $"study {i}, {times} times: {error.Message}"));
                }
            }

            say(string.Create(CultureInfo.InvariantCulture, $"{i + 1} of {studies}: {own.Count + wide.Count} pairs, {failures.Count} failures"));
        }

        var inside = own.GroupBy(pair => pair.Quantity).ToDictionary(group => group.Key, group => Math.Round(100 * (Share(group, 0.9, 1) - Share(group, 0, 0.1)), 1));
        return new(studies, Settling.Most, Bins(own), Bins(wide), inside, failures);
    }

    /// <summary>How often limits with such said odds were kept. Between the mean of 0.9 to 1 and that of 0 to 0.1 lie nominally 90 of 100.</summary>
    private static double Share(IEnumerable<Pair> pairs, double from, double to) => pairs.Where(pair => pair.Said >= from && pair.Said <= to).Select(pair => pair.Kept ? 1.0 : 0).DefaultIfEmpty(double.NaN).Average();

    private static ReliabilityBin[] Bins(List<Pair> pairs)
    {
        double[] edges = [0, 0.05, 0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.95, 1.000001];
        return [.. edges.Zip(edges.Skip(1)).Select(bin => (bin, Within: pairs.Where(pair => pair.Said >= bin.First && pair.Said < bin.Second).ToArray())).Where(one => one.Within.Length > 0)
            .Select(one => new ReliabilityBin(string.Create(CultureInfo.InvariantCulture, $"{100 * one.bin.First:0} to {100 * one.bin.Second:0}"), one.Within.Length,
                Math.Round(100 * one.Within.Average(pair => pair.Said), 1), Math.Round(100 * one.Within.Average(pair => pair.Kept ? 1.0 : 0), 1)))];
    }

    private static Hidden Drawn(int seed, int study, double times)
    {
        var hidden = new Hidden();
        int place = 0;
        foreach (string name in hidden.Names.ToArray())
        {
            double even = CounterRandom.Uniform((ulong)seed, (ulong)study, (ulong)place++);
            hidden[name] = Stated.TryGetValue(name, out var stated) ? Math.Max(0.2 * stated.Middle, stated.Middle + (times * stated.Half * ((2 * even) - 1)))
                : Kept.Contains(name) ? hidden[name] : hidden[name] * Math.Exp(PieceToPiece * Quantiles.Normal(even));
        }

        hidden["seed"] = seed + study;
        return hidden;
    }

    private static List<Pair> One(Hidden hidden)
    {
        string folder = Directory.CreateTempSubdirectory("heatwright-verdicts-").FullName;
        try
        {
            DemoTruth.DemoStudy.Write(Path.Combine(folder, "bundle"), hidden);
            string file = Path.Combine(folder, "knife.study");
            if (NewStudy.Import(Path.Combine(folder, "bundle"), file) is { IsFine: false } refused)
            {
                throw new InvalidOperationException(refused.Problems[0].What);
            }

            var opened = OpenStudy.Read(file).Value;
            var verdicts = RunStudy.Run(opened.Study, opened.Fingerprint).Verdicts;
            return [.. verdicts.AsParallel().AsOrdered().SelectMany(verdict => Pairs(verdict, Truth.Does(hidden, verdict.Arrangement.Letter, PlantBuilder.UsualAimAboveK)))];
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static IEnumerable<Pair> Pairs(ArrangementVerdict verdict, (double ReadyS, double Pieces, double GripC, double CellC) truth)
    {
        foreach (var (id, does) in new[] { ("ready", truth.ReadyS), ("pieces", truth.Pieces), ("grip", truth.GripC), ("cells", truth.CellC) })
        {
            var line = verdict.Requirements.FirstOrDefault(one => one.Requirement.Id == id);
            double[] drawn = [.. (line?.Drawn ?? []).Order()];
            // A prediction without any spread says nothing about odds, and one that never gets there is judged by its limit alone.
            if (drawn.Length == 0 || drawn[0] == drawn[^1] || !double.IsFinite(drawn[^1]))
            {
                continue;
            }

            bool atMost = line!.Requirement.AtMost;
            for (int i = 0; i < Limits; i++)
            {
                double limit = drawn[(int)((i + 0.5) / Limits * drawn.Length)];
                yield return new(id, drawn.Count(value => atMost ? value <= limit : value >= limit) / (double)drawn.Length, atMost ? does <= limit : does >= limit);
            }
        }
    }
}
