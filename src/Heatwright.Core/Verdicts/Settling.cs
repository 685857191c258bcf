using Heatwright.Arrangements;
using Heatwright.Numerics;
using Heatwright.Predictions;
using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>When the draws of a prediction are enough: no word of a verdict would change with more of them.</summary>
/// <remarks>The rule: for every must that a run tells, the chance that it holds is off each of the limits at which words change, by its Wilson interval of 99 in 100
/// (E. B. Wilson, Journal of the American Statistical Association 22, 1927). The draws are more even than such an interval believes, so it errs on the careful side.
/// Looking after each round stops a little too early once in a while; a word that is then wrong was within a hair of its limit.</remarks>
public static class Settling
{
    /// <summary>Draws of the first round: one even run of them.</summary>
    public const int First = StratifiedUniform.Run;

    /// <summary>At most so many: a chance of 95 in 100 is then known to half of one in 100.</summary>
    public const int Most = 2048;

    /// <summary>At most so many of a tool that does not run in lanes.</summary>
    public const int MostOneByOne = 512;

    private const double Z = 2.576;

    /// <summary>Chances at which a word changes.</summary>
    private static readonly double[] Limits = [1 - Judge.Sure, Judge.Likely, Judge.Sure];

    /// <summary>The rounds for a brief.</summary>
    public static DrawRounds For(Brief brief, Arrangement arrangement)
    {
        (Func<Outcome, double> Tell, double Limit, bool AtMost)[] musts = [.. brief.Requirements.Where(line => line.Must)
            .Select(line => (Tell: Told.ByRun(line, brief, arrangement.Parallel), Line: line)).Where(pair => pair.Tell is not null)
            .Select(pair => (pair.Tell!, (Units.Find(pair.Line.Unit) ?? Units.One).ToSi(pair.Line.Limit), pair.Line.AtMost))];
        return new(First, Most, MostOneByOne, soFar =>
        {
            foreach (var (tell, limit, atMost) in musts)
            {
                int kept = 0;
                foreach (var outcome in soFar)
                {
                    kept += (atMost ? tell(outcome) <= limit : tell(outcome) >= limit) ? 1 : 0;
                }

                if (!Clear(kept, soFar.Length))
                {
                    return false;
                }
            }

            return true;
        });
    }

    /// <summary>How many draws predictions took, and why, for a line beside them.</summary>
    public static string Taken(IEnumerable<ArrangementVerdict> verdicts)
    {
        int[] counts = [.. verdicts.Select(verdict => verdict.Prediction?.Draws.Count ?? 0).Where(count => count > 0).Distinct().Order()];
        return counts.Length switch
        {
            0 => "no draws yet",
            1 => FormattableString.Invariant($"{counts[0]} draws each"),
            _ => FormattableString.Invariant($"{counts[0]} to {counts[^1]} draws each, more where a word was close"),
        };
    }

    /// <summary>True where no limit lies within the interval of a chance that was seen so often.</summary>
    internal static bool Clear(int kept, int draws)
    {
        double chance = (double)kept / draws, square = Z * Z / draws;
        double middle = (chance + (square / 2)) / (1 + square);
        double half = Z / (1 + square) * Math.Sqrt((chance * (1 - chance) / draws) + (square / (4 * draws)));
        return !Limits.Any(limit => limit >= middle - half && limit <= middle + half);
    }
}
