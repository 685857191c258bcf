using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>What the parts of a chain can do to the temperature shown, three ways of adding up.</summary>
/// <param name="Lines">Cause by cause.</param>
/// <param name="WorstK">All limits at once.</param>
/// <param name="RootSumK">Root sum of squares of the half widths.</param>
/// <param name="StandardK">Standard doubt, limits as rectangles.</param>
/// <param name="DrawnK">Half width that holds 95 of 100 draws.</param>
public sealed record ChainBudget(IReadOnlyList<BudgetLine> Lines, double WorstK, double RootSumK, double StandardK, double DrawnK)
{
    private const int Draws = 20_000;

    /// <summary>Before any calibration.</summary>
    public static ChainBudget Raw(SensorChain chain, double hotC, double coldC, ChainLimits limits, ulong seed) =>
        Of(ErrorBudget.Lines(chain.Wanted.Curve, hotC, coldC, chain.Pair.Gain, chain.StepV, limits), seed);

    /// <summary>After the offset was taken with a tip as cold as its cold end.</summary>
    /// <param name="raw">Before.</param>
    /// <param name="leftV">Offset that the taking leaves.</param>
    /// <param name="slopeVPerK">Slope of the sensor at the temperature of the budget.</param>
    public static ChainBudget OnePoint(ChainBudget raw, double leftV, double slopeVPerK, ulong seed) =>
        Of([.. raw.Lines.Select(line => line.Cause is "amplifier offset" ? new BudgetLine("offset left by the cold point", leftV / slopeVPerK) : line)], seed);

    /// <summary>After offset and slope were taken with a probe: what the probe cannot tell, and what drifts after it, stay.</summary>
    /// <param name="raw">Before.</param>
    /// <param name="leftV">Offset that the taking leaves.</param>
    /// <param name="slopeVPerK">Slope of the sensor at the temperature of the budget.</param>
    /// <param name="driftShare">Drift of gain and reference since.</param>
    /// <param name="signalV">Signal of the sensor.</param>
    /// <param name="probeStandardK">Standard doubt of the probe.</param>
    public static ChainBudget TwoPoint(ChainBudget raw, double leftV, double slopeVPerK, double driftShare, double signalV, double probeStandardK, ulong seed) => Of(
        [.. raw.Lines.Select(line => line.Cause switch
        {
            "amplifier offset" => new BudgetLine("offset left by the cold point", leftV / slopeVPerK),
            "gain resistors" => new BudgetLine("drift of the gain", driftShare * signalV / slopeVPerK),
            "converter reference" => new BudgetLine("drift of the reference", driftShare * signalV / slopeVPerK),
            "sensor tolerance" => new BudgetLine("reference probe", probeStandardK * Math.Sqrt(3)),
            _ => line,
        })], seed);

    /// <summary>All sums of given lines.</summary>
    internal static ChainBudget Of(IReadOnlyList<BudgetLine> lines, ulong seed)
    {
        double[] sums = new double[Draws];
        var causes = lines.Select(line => Cause.Rectangular("chain: " + line.Cause, CauseGroup.Assumption)).ToArray();
        for (int number = 0; number < Draws; number++)
        {
            var draw = new Draw(seed, number);
            for (int i = 0; i < lines.Count; i++)
            {
                sums[number] += lines[i].StandardK * draw.Of(causes[i]);
            }

            sums[number] = Math.Abs(sums[number]);
        }

        Array.Sort(sums);
        return new(lines, ErrorBudget.WorstK(lines), ErrorBudget.RootSumOfHalfWidthsK(lines), ErrorBudget.CombinedK(lines), sums[(int)(0.95 * (Draws - 1))]);
    }
}
