using Heatwright.Physics;

namespace Heatwright.BuildSheets;

/// <summary>A chosen sensing chain.</summary>
/// <param name="Wanted">What it must do.</param>
/// <param name="Series">Where the resistors come from: E24, E96, drawer.</param>
/// <param name="Pair">The gain resistors.</param>
/// <param name="FeasiblePairs">How many pairs were feasible.</param>
public sealed record SensorChain(ChainWanted Wanted, string Series, GainPair Pair, int FeasiblePairs)
{
    /// <summary>One step of the converter, V.</summary>
    public double StepV => Converter.StepV(Wanted.ReferenceV, Wanted.Bits);

    /// <summary>Largest count.</summary>
    public int FullCount => (1 << Wanted.Bits) - 1;

    /// <summary>Counts per volt of the sensor.</summary>
    public double CountsPerV => Pair.Gain / StepV;

    /// <summary>Count with the tip as cold as the cold end.</summary>
    public double ZeroCount => Wanted.OutputBiasV / StepV;

    /// <summary>Count of the lowest output that the amplifier reaches.</summary>
    public double FloorCount => Wanted.FloorV / StepV;

    /// <summary>Kelvin a count near a temperature.</summary>
    public double KelvinPerCount(double hotC) => Converter.KelvinPerStep(StepV, Pair.Gain, Wanted.Curve.SlopeVPerK(hotC));

    /// <summary>Output for a tip and a cold end, V, before the rails.</summary>
    public double OutputV(double hotC, double coldC) => Wanted.OutputBiasV + (Pair.Gain * ColdJunction.VoltageV(Wanted.Curve, hotC, coldC));

    /// <summary>Count as the converter gives it: held by the rails and by its own ends.</summary>
    public int CountAt(double hotC, double coldC) =>
        Converter.Count(Amplifier.WithinRailsV(OutputV(hotC, coldC), Wanted.FloorV, Wanted.SupplyLeastV, Wanted.HeadroomV), Wanted.ReferenceV, Wanted.Bits);

    /// <summary>The chain as a calibration at a cold end, before any reading was taken.</summary>
    public PhysicalCalibration Calibration(double coldC) => new(Wanted.Curve, coldC, ZeroCount, CountsPerV, 0);

    /// <summary>Highest tip that is read with a cold end at <paramref name="coldC"/>, resistors and reference nominal, °C.</summary>
    public double SaturatesC(double coldC)
    {
        double volts = (Math.Min(Wanted.ReferenceV, Wanted.SupplyLeastV - Wanted.HeadroomV) - Wanted.OutputBiasV) / Pair.Gain;
        return TipC(volts, coldC);
    }

    /// <summary>Lowest tip that is read with a cold end at <paramref name="coldC"/>, the offset against it, °C.</summary>
    public double ReadsFromC(double coldC) => TipC(((Wanted.FloorV - Wanted.OutputBiasV) / Pair.Gain) + Wanted.OffsetV, coldC);

    /// <summary>Amplifier's own bandwidth at this gain, Hz.</summary>
    public double BandwidthHz => Amplifier.BandwidthHz(Wanted.BandwidthHz, Math.Max(1, Pair.Gain));

    /// <summary>Time in which it settles to half a step, s.</summary>
    public double SettleS => Amplifier.SettlingS(Amplifier.TimeConstantS(BandwidthHz), Wanted.Bits);

    /// <summary>Its resistors side by side, Ω.</summary>
    public double ParallelOhm => Pair.FeedbackOhm * Pair.GroundOhm / (Pair.FeedbackOhm + Pair.GroundOhm);

    private double TipC(double volts, double coldC)
    {
        double emf = volts + Wanted.Curve.EmfV(coldC);
        double least = Wanted.Curve.EmfV(Math.Max(Wanted.Curve.MinC, -200)), most = Wanted.Curve.EmfV(Wanted.Curve.MaxC);
        return emf <= least ? Math.Max(Wanted.Curve.MinC, -200) : emf >= most ? Wanted.Curve.MaxC : Wanted.Curve.TemperatureC(emf);
    }
}
