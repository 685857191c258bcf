namespace Heatwright.Physics;

/// <summary>What is wrong with a set of power readings.</summary>
public enum ReadingFault
{
    /// <summary>Nothing stands out.</summary>
    None,

    /// <summary>More comes out than goes in: one meter or one pairing is wrong.</summary>
    OutputExceedsInput,

    /// <summary>More than half is lost at a real load: fold, wrong range, or a pulsed reading.</summary>
    HalfIsLost,
}

/// <summary>Energy balances that readings must keep. Thresholds are common practice, no source.</summary>
public static class EnergyChecks
{
    /// <summary>Efficiency from four readings with its standard doubt, each meter known to a relative doubt of its own.</summary>
    [Law("efficiency-from-readings", "readings", "Vout·Iout/(Vin·Iin)", Says = "efficiency of a module from four readings, with its doubt", Source = "definition", Where = "output over input power", Valid = "all four read at the same moment at full duty", Example = "input-voltage=3.7V input-current=3.1A output-voltage=9V output-current=1.05A meter-doubt=1%")]
    public static ReadEfficiency Efficiency(
        [In("Vin", "V", "input voltage", Name = "input-voltage", Min = 0)] double inV,
        [In("Iin", "A", "input current", Name = "input-current", Min = 0)] double inA,
        [In("Vout", "V", "output voltage", Name = "output-voltage", Min = 0)] double outV,
        [In("Iout", "A", "output current", Name = "output-current", Min = 0)] double outA,
        [In("r", "", "relative standard doubt of each meter", Name = "meter-doubt", Min = 0, Max = 1, Default = 0.01)] double meterDoubt = 0.01)
    {
        double inW = Impossible.UnlessPositive(inV, "V") * Impossible.UnlessPositive(inA, "A");
        double outW = Impossible.IfNegative(outV, "V") * Impossible.IfNegative(outA, "A");
        double product = Math.Sqrt(2) * Impossible.UnlessFraction(meterDoubt);
        double share = outW / inW;
        return new(share, share * Math.Sqrt(2) * product, inW - outW, ConverterLoss.ReadLossDoubtW(inV, inA, outV, outA, product));
    }

    /// <summary>What such readings say: out above in beyond two doubts, or less than half at more than a fifth of full load.</summary>
    public static ReadingFault Judge(ReadEfficiency read, double loadShare) =>
        -read.LossW > 2 * read.LossDoubtW ? ReadingFault.OutputExceedsInput
        : read.Share < 0.5 && loadShare > 0.2 ? ReadingFault.HalfIsLost : ReadingFault.None;

    /// <summary>Whether run time, capacity and power agree: energy in the load over capacity times mean voltage between 0.6 and 1.</summary>
    public static bool RunAgrees(double loadJ, double capacityAs, double meanV)
    {
        double ratio = Impossible.IfNegative(loadJ, "J") / (Impossible.UnlessPositive(capacityAs, "C") * Impossible.UnlessPositive(meanV, "V"));
        return ratio is >= 0.6 and <= 1;
    }

    /// <summary>Whether less energy went in than the heated mass stores: time or current was misread.</summary>
    public static bool BelowStored(double supplyV, double currentA, double seconds, double capacityJPerK, double riseK) =>
        Impossible.IfNegative(supplyV, "V") * Impossible.IfNegative(currentA, "A") * Impossible.IfNegative(seconds, "s") < Impossible.IfNegative(capacityJPerK, "J/K") * riseK;

    /// <summary>Two meters on the same voltage more than 1 % apart: ask which is right.</summary>
    public static bool MetersDiffer(double firstV, double secondV) =>
        Math.Abs(firstV - secondV) > 0.01 * Math.Max(Math.Abs(firstV), Math.Abs(secondV));
}

/// <summary>Efficiency and loss from four readings.</summary>
/// <param name="Share">Output power over input power.</param>
/// <param name="ShareDoubt">Its standard doubt.</param>
/// <param name="LossW">Input less output power.</param>
/// <param name="LossDoubtW">Its standard doubt.</param>
public readonly record struct ReadEfficiency(
    [property: Out("", "efficiency", Name = "efficiency")] double Share,
    [property: Out("", "standard doubt of the efficiency", Name = "efficiency-doubt")] double ShareDoubt,
    [property: Out("W", "loss")] double LossW,
    [property: Out("W", "standard doubt of the loss")] double LossDoubtW);
