using Heatwright.Numerics;
using Heatwright.Tests.Verdicts;

namespace Heatwright.Proofs;

/// <summary>Figures of the advice against simple rules.</summary>
/// <param name="Studies">Made-up studies.</param>
/// <param name="SureAtOnce">Of them: nothing to advise, counted apart.</param>
/// <param name="MedianTrials">Median of the trials until the choice is wrong in at most one of twenty draws, by rule.</param>
/// <param name="MedianMinutes">Median of their minutes.</param>
/// <param name="Right">How many choices, in 100, are truly right then.</param>
public sealed record NextResult(int Studies, int SureAtOnce, IReadOnlyDictionary<string, double> MedianTrials, IReadOnlyDictionary<string, double> MedianMinutes, IReadOnlyDictionary<string, double> Right);

/// <summary>Made-up studies in which the truth is known: which order of trials comes to a sure choice first?</summary>
public static class NextCampaign
{
    /// <summary>So many studies.</summary>
    public static NextResult Run(int studies, int seed)
    {
        var rows = Enumerable.Range(0, studies).AsParallel().AsOrdered().Select(i => One(new MadeUpStudy(unchecked((seed * 1000) + i) & int.MaxValue))).ToArray();
        var open = rows.OfType<Dictionary<string, (double Trials, double Minutes, bool Right)>>().ToArray();
        return new(studies, studies - open.Length, ByRule(row => row.Trials), ByRule(row => row.Minutes),
            open[0].Keys.ToDictionary(rule => rule, rule => Math.Round(100 * open.Average(row => row[rule].Right ? 1.0 : 0), 1)));

        Dictionary<string, double> ByRule(Func<(double Trials, double Minutes, bool Right), double> what) =>
            open[0].Keys.ToDictionary(rule => rule, rule => Math.Round(Sample.Median([.. open.Select(row => what(row[rule]))]), 1));
    }

    private static Dictionary<string, (double Trials, double Minutes, bool Right)>? One(MadeUpStudy study)
    {
        if (study.SureAtOnce)
        {
            return null;
        }

        Dictionary<string, Func<HashSet<int>, int>> rules = new() { ["advised"] = study.Advised, ["any order"] = study.InAnyOrder, ["cheapest first"] = study.Cheapest, ["largest doubt first"] = study.LargestDoubt };
        return rules.ToDictionary(rule => rule.Key, rule =>
        {
            double minutes = 0;
            int trials = study.TrialsUntilSure(
                done =>
                {
                    int next = rule.Value(done);
                    minutes += study.Minutes(next);
                    return next;
                },
                out bool right);
            return ((double)trials, minutes, right);
        });
    }
}
