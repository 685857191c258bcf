using System.Collections.Concurrent;
using Heatwright.DemoTruth.Campaign;
using Heatwright.Tests.Trials.Kinds;
using Heatwright.Trials;

namespace Heatwright.Proofs;

/// <summary>How often the true value of a finding lies inside its limits.</summary>
/// <param name="Kind">Kind of trial.</param>
/// <param name="Finding">Name of the finding.</param>
/// <param name="Count">Made-up trials that told it.</param>
/// <param name="In95">Truths inside the 95 % limits, in 100.</param>
/// <param name="In50">Truths inside the 50 % limits, in 100.</param>
/// <param name="Width">Median of the 95 % width over the width for someone who knows the law and every noise.</param>
/// <param name="TwiceIn95">Truths inside the 95 % limits where meters are twice as wrong as promised, in 100.</param>
public sealed record CoverageLine(string Kind, string Finding, int Count, double In95, double In50, double? Width, double TwiceIn95)
{
    /// <summary>93 to 97 of 100 at a thousand, 47 to 53 at four thousand, as much further as chance goes at fewer; at most 1.3 times the bound, where there is one.</summary>
    public bool Kept => Math.Abs(In95 - 95) <= 2 * Math.Sqrt(Math.Max(1, 1000.0 / Count)) && Math.Abs(In50 - 50) <= 3 * Math.Sqrt(Math.Max(1, 4000.0 / Count)) && (Width is null || Width <= 1.3);
}


/// <summary>How often a trial answered with the right word.</summary>
public sealed record WordLine(string Kind, int Count, double Right, double CannotTell);

/// <summary>Figures of the campaign.</summary>
public sealed record CoverageResult(int Trials, int TrialsFor50, IReadOnlyList<CoverageLine> Findings, IReadOnlyList<WordLine> Words, IReadOnlyList<string> Failures);

/// <summary>Is a stated doubt honest? Every kind of bench test is made up many times over by code that shares nothing with the product, from true numbers drawn anew and
/// from meters drawn inside what they promise; some readings are slips. The product fits them, and the truth is looked up in its limits.</summary>
public static class CoverageCampaign
{
    /// <summary>What is asked of it: every kind answers, every finding is kept.</summary>
    public static bool Holds(CoverageResult result) => result.Failures.Count == 0 && result.Findings.All(line => line.Kept);

    /// <summary>Runs it.</summary>
    /// <param name="trials">A quarter of the made-up trials a kind: the 50 % limits need four times as many as the 95 % limits, which are looked at in all of them too.</param>
    /// <param name="seed">Fixed beforehand.</param>
    /// <param name="say">Progress.</param>
    /// <param name="kinds">Which; all where none is named.</param>
    /// <param name="times50">How many times as many are made up.</param>
    /// <param name="slips">Whether long runs may hold a slip.</param>
    public static CoverageResult Run(int trials, int seed, Action<string> say, IReadOnlyList<string>? kinds = null, int times50 = 4, bool slips = true)
    {
        List<CoverageLine> lines = [];
        List<WordLine> words = [];
        ConcurrentBag<string> failures = [];
        foreach (string kind in kinds ?? [.. BenchLaws.Kinds])
        {
            int many = trials * times50;
            var own = new ConcurrentBag<Seen>();
            var wide = new ConcurrentBag<Seen>();
            var said = new ConcurrentBag<(string Should, string Is)>();
            Parallel.For(0, many, number => Try(kind, seed, number, 1, slips, own, said, failures));
            Parallel.For(0, Math.Max(1, trials / 2), number => Try(kind, seed, number, 2, slips, wide, [], failures));
            foreach (string name in own.Select(seen => seen.Name).Distinct().Order(StringComparer.Ordinal))
            {
                Seen[] all = [.. own.Where(seen => seen.Name == name)], twice = [.. wide.Where(seen => seen.Name == name)];
                double[] ratios = [.. all.Select(seen => seen.Width).Where(double.IsFinite).Order()];
                lines.Add(new(kind, name, all.Length, Share(all, seen => seen.In95), Share(all, seen => seen.In50),
                    ratios.Length > 0 ? Math.Round(ratios[ratios.Length / 2], 2) : null, Share(twice, seen => seen.In95)));
                var line = lines[^1];
                say($"{(line.Kept ? "  " : "X ")}{line.Kind,-20}{line.Finding,-34}{line.Count,6}{line.In95,8:0.0}{line.In50,8:0.0}{line.Width,8:0.00}{line.TwiceIn95,8:0.0}");
            }

            if (said.Any(pair => pair.Should.Length > 0))
            {
                words.Add(new(kind, said.Count, Share(said, pair => pair.Is == pair.Should), Share(said, pair => pair.Is == "cannot tell")));
                say($"  {kind,-20}{words[^1].Right,8:0.0} right, {words[^1].CannotTell:0.0} cannot tell");
            }
        }

        return new(trials, trials * times50, lines, words, [.. failures.Distinct().Order(StringComparer.Ordinal).Take(20)]);
    }

    private sealed record Seen(string Name, bool In95, bool In50, double Width);

    private static void Try(string kind, int seed, int number, double wide, bool slips, ConcurrentBag<Seen> seen, ConcurrentBag<(string, string)> words, ConcurrentBag<string> failures)
    {
        var made = BenchLaws.Draw(kind, seed, number, wide, slips);
        var answer = TrialFits.Run(kind, Typed.Input(made));
        if (!answer.IsFine)
        {
            failures.Add($"{kind}: {answer.Problems[0].What}");
            return;
        }

        words.Add((made.Word, answer.Value.Word));
        foreach (var should in made.Findings)
        {
            var finding = should.Name.Split('|').Select(name => answer.Value.Findings.FirstOrDefault(finding => finding.Name == name)).FirstOrDefault(finding => finding is not null);
            if (finding is null)
            {
                continue;
            }

            var (low, high) = finding.Middle(0.95);
            var (low50, high50) = finding.Middle(0.50);
            seen.Add(new(should.Name.Split('|')[0], should.Truth >= low && should.Truth <= high, should.Truth >= low50 && should.Truth <= high50, (high - low) / 2 / should.Half));
        }
    }

    private static double Share<T>(IEnumerable<T> all, Func<T, bool> holds) => Math.Round(all.Select(each => holds(each) ? 100.0 : 0).DefaultIfEmpty(0).Average(), 1);
}
