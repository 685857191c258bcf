namespace Heatwright.Physics;

/// <summary>One cause in an error budget of a sensing chain.</summary>
/// <param name="Cause">In trade words.</param>
/// <param name="HalfWidthK">Half the distance of its limits at the tip, K.</param>
public sealed record BudgetLine(string Cause, double HalfWidthK)
{
    /// <summary>Standard doubt of limits with nothing known between them, K: half width/√3.</summary>
    public double StandardK => HalfWidthK / Math.Sqrt(3);
}

/// <summary>Limits of the parts of a sensing chain.</summary>
/// <param name="OffsetV">Offset of the amplifier, V.</param>
/// <param name="OffsetDriftVPerK">Drift of that offset, V/K.</param>
/// <param name="BoardRangeK">How far the board's temperature strays from where the offset holds, K.</param>
/// <param name="BiasA">Input bias current, A.</param>
/// <param name="SourceOhm">Resistance that the bias current flows through, Ω.</param>
/// <param name="ResistorTolerance">Share by which each gain resistor may be off.</param>
/// <param name="ReferenceShare">Share by which the converter's reference may be off.</param>
/// <param name="ConverterSteps">Linearity error and rounding of the converter, in steps.</param>
/// <param name="ColdJunctionK">Limit of the cold-junction sensor, K.</param>
/// <param name="SensorShare">Tolerance of the thermocouple as a share of °C.</param>
/// <param name="SensorFloorK">Tolerance of the thermocouple that always stands, K.</param>
/// <param name="StrayV">Leakage and parasitic couples, V.</param>
public sealed record ChainLimits(
    double OffsetV, double OffsetDriftVPerK, double BoardRangeK, double BiasA, double SourceOhm, double ResistorTolerance, double ReferenceShare,
    double ConverterSteps, double ColdJunctionK, double SensorShare, double SensorFloorK, double StrayV);

/// <summary>What the parts of a sensing chain can do to the temperature shown.</summary>
/// <remarks>Limits as rectangles, u = a/√3: [jcgm-100] 4.3.7, from memory. Checked: ErrorBudgetTests, also by drawing.</remarks>
public static class ErrorBudget
{
    /// <summary>The lines of a thermocouple chain at one temperature.</summary>
    /// <param name="curve">The thermocouple.</param>
    /// <param name="hotC">Temperature of the tip, °C.</param>
    /// <param name="coldC">Temperature of the cold junction, °C.</param>
    /// <param name="gain">Gain of the amplifier.</param>
    /// <param name="stepV">One step of the converter, V.</param>
    /// <param name="limits">Limits of the parts.</param>
    public static IReadOnlyList<BudgetLine> Lines(ThermocoupleCurve curve, double hotC, double coldC, double gain, double stepV, ChainLimits limits)
    {
        double slope = curve.SlopeVPerK(hotC);
        double signalV = ColdJunction.VoltageV(curve, hotC, coldC);
        return
        [
            new("amplifier offset", limits.OffsetV / slope),
            new("offset drift", limits.OffsetDriftVPerK * limits.BoardRangeK / slope),
            new("bias current", limits.BiasA * limits.SourceOhm / slope),
            new("gain resistors", Amplifier.GainErrorShare(gain, limits.ResistorTolerance) * signalV / slope),
            new("converter reference", limits.ReferenceShare * signalV / slope),
            new("converter steps", limits.ConverterSteps * Converter.KelvinPerStep(stepV, gain, slope)),
            new("cold-junction sensor", limits.ColdJunctionK * ColdJunction.HotKPerColdK(curve, hotC, coldC)),
            new("sensor tolerance", Math.Max(limits.SensorFloorK, limits.SensorShare * Math.Abs(hotC))),
            new("leakage and parasitic couples", limits.StrayV / slope),
        ];
    }

    /// <summary>All causes at their limits at once, K: for safety limits.</summary>
    public static double WorstK(IEnumerable<BudgetLine> lines) => lines.Sum(line => line.HalfWidthK);

    /// <summary>Root sum of squares of the half widths, K: often quoted, but no doubt of a stated coverage.</summary>
    public static double RootSumOfHalfWidthsK(IEnumerable<BudgetLine> lines) => Math.Sqrt(lines.Sum(line => line.HalfWidthK * line.HalfWidthK));

    /// <summary>Combined standard doubt, K.</summary>
    public static double CombinedK(IEnumerable<BudgetLine> lines) => Math.Sqrt(lines.Sum(line => line.StandardK * line.StandardK));
}
