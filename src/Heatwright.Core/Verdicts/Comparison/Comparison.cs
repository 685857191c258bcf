using Heatwright.Arrangements;
using Heatwright.Parts;

namespace Heatwright.Verdicts;

/// <summary>One arrangement in a comparison.</summary>
/// <param name="Verdict">How it stands.</param>
/// <param name="Value">Weighted share of the wants that are known to be kept, 0 to 1; NaN: no want is known.</param>
/// <param name="ValueLow">The same if every unknown want were missed.</param>
/// <param name="ValueHigh">The same if every unknown want were kept.</param>
/// <param name="Odds">Chance that all known musts are kept together, draw by draw; NaN: none is known.</param>
/// <param name="PartsCount">Bought parts, cells counted singly.</param>
/// <param name="Kills">What kills it in one line; empty: nothing does.</param>
public sealed record Contender(ArrangementVerdict Verdict, double Value, double ValueLow, double ValueHigh, double Odds, int PartsCount, string Kills);

/// <summary>On one requirement one arrangement beats another in at least nine of ten draws.</summary>
/// <param name="Winner">Name of the arrangement that wins.</param>
/// <param name="Loser">Name of the one that loses.</param>
/// <param name="Odds">Share of draws in which it wins, 0 to 1.</param>
public sealed record Beats(string Winner, string Loser, string Requirement, double Odds);

/// <summary>Requirements by arrangements under the same brief, air and draws: hard limits first, then weighted value.</summary>
/// <param name="Lines">The lines of the brief, musts first.</param>
/// <param name="Ranked">The arrangements, best first.</param>
/// <param name="Duels">Who beats whom on what.</param>
public sealed record Comparison(IReadOnlyList<Requirement> Lines, IReadOnlyList<Contender> Ranked, IReadOnlyList<Beats> Duels)
{
    /// <summary>Tools that exist, known by their own readings: they stand beside, and are not ranked.</summary>
    public IReadOnlyList<ToolVerdict> Tools { get; init; } = [];

    /// <summary>One beats another where it is better in so many of all draws.</summary>
    public const double Clearly = 0.9;

    /// <summary>Compares arrangements that were judged against one brief.</summary>
    public static Comparison Of(Brief brief, IReadOnlyList<ArrangementVerdict> verdicts, Shelf shelf, IReadOnlyList<ToolVerdict>? tools = null)
    {
        Requirement[] lines = [.. brief.Requirements.OrderByDescending(line => line.Must)];
        Contender[] ranked = [.. verdicts.Select(verdict => Contend(verdict, shelf))
            .OrderBy(one => one.Verdict.Word).ThenByDescending(one => double.IsNaN(one.Value) ? -1 : one.Value).ThenByDescending(one => double.IsNaN(one.Odds) ? -1 : one.Odds)
            .ThenBy(one => one.Verdict.Arrangement.Letter, StringComparer.Ordinal)];
        return new(lines, ranked, [.. Duel(brief, verdicts)]) { Tools = tools ?? [] };
    }

    /// <summary>The verdict of an arrangement on a line of the brief.</summary>
    public static RequirementVerdict? Cell(Contender one, Requirement line) => one.Verdict.Requirements.FirstOrDefault(verdict => verdict.Requirement.Id == line.Id);

    /// <summary>How a tool that exists stands on a line of the brief; null: never read.</summary>
    public static RequirementVerdict? Cell(ToolVerdict tool, Requirement line) => tool.Lines.FirstOrDefault(verdict => verdict?.Requirement.Id == line.Id);

    private static Contender Contend(ArrangementVerdict verdict, Shelf shelf)
    {
        var wants = verdict.Requirements.Where(line => !line.Requirement.Must && line.Requirement.Weight > 0).ToArray();
        var known = wants.Where(line => line.Probability is not null).ToArray();
        double all = wants.Sum(line => line.Requirement.Weight), weight = known.Sum(line => line.Requirement.Weight);
        double kept = known.Sum(line => line.Requirement.Weight * line.Probability!.Value);
        var arrangement = verdict.Arrangement;
        int parts = arrangement.Parts().Count() - 1 + (arrangement.Series * arrangement.Parallel);
        return new(verdict, weight > 0 ? kept / weight : double.NaN, all > 0 ? kept / all : double.NaN, all > 0 ? (kept + all - weight) / all : double.NaN, Together(verdict), parts, Killer(verdict));
    }

    /// <summary>Draws are the same world for every requirement, so that what fails together is counted once.</summary>
    private static double Together(ArrangementVerdict verdict)
    {
        var musts = verdict.Requirements.Where(line => line.Requirement.Must && line.Probability is not null).ToArray();
        if (musts.Length == 0)
        {
            return double.NaN;
        }

        int draws = verdict.Prediction?.Draws.Count ?? 0;
        var drawn = musts.Where(line => line.Drawn.Count == draws && draws > 0).ToArray();
        double still = musts.Except(drawn).Aggregate(1.0, (odds, line) => odds * line.Probability!.Value);
        return drawn.Length == 0 ? still : still * Enumerable.Range(0, draws).Count(i => drawn.All(line => Keeps(line.Requirement, line.Drawn[i]))) / draws;
    }

    private static bool Keeps(Requirement line, double value) => line.AtMost ? value <= line.Limit : value >= line.Limit;

    private static string Killer(ArrangementVerdict verdict) =>
        verdict.Requirements.Where(line => line.Requirement.Must && line.Word == VerdictWord.NoGo).OrderBy(line => line.Probability ?? 0).FirstOrDefault() is { } worst
            ? $"{worst.Requirement.Text.TrimEnd('.')}: {worst.Because}" : "";

    /// <summary>A column that is known only in part is compared only where both are known, so empty cells lose nothing.</summary>
    /// <remarks>What never gets hot stays cool and lasts long for that reason alone: in such a draw it wins nothing that the run tells.
    /// Where both runs end because the work is done, how long they lasted is the work's and not the tools': neither wins.</remarks>
    private static IEnumerable<Beats> Duel(Brief brief, IReadOnlyList<ArrangementVerdict> verdicts)
    {
        static bool Capped(ArrangementVerdict verdict, int draw) => verdict.Prediction?.Draws is { } draws && draw < draws.Count && draws[draw].Stop is Plant.StopReason.WorkDone or Plant.StopReason.TimeOver;
        bool ToBeHot(ArrangementVerdict verdict) => verdict.Arrangement.Lamp is null && double.IsFinite(brief.Work.TargetC);
        foreach (var one in verdicts)
        {
            foreach (var other in verdicts.Where(other => other != one))
            {
                foreach (var line in one.Requirements.Where(line => line.Drawn.Count > 0))
                {
                    var against = other.Requirements.FirstOrDefault(candidate => candidate.Requirement.Id == line.Requirement.Id);
                    int count = Math.Min(line.Drawn.Count, against?.Drawn.Count ?? 0);
                    if (count == 0)
                    {
                        continue;
                    }

                    var draws = ToBeHot(one) && Told.ByRun(line.Requirement, brief, one.Arrangement.Parallel) is not null ? one.Prediction?.Draws : null;
                    bool lasts = line.Requirement.Quantity == RequirementQuantity.RunTime;
                    double odds = Enumerable.Range(0, count).Where(i => !(lasts && Capped(one, i) && Capped(other, i))).Where(i => draws is null || i >= draws.Count || double.IsFinite(draws[i].WarmUpS)).Count(i => line.Requirement.AtMost ? line.Drawn[i] < against!.Drawn[i] : line.Drawn[i] > against!.Drawn[i]) / (double)count;
                    if (odds >= Clearly)
                    {
                        yield return new(one.Arrangement.Letter, other.Arrangement.Letter, line.Requirement.Id, odds);
                    }
                }
            }
        }
    }
}
