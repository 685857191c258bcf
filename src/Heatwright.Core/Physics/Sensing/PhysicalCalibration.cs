namespace Heatwright.Physics;

/// <summary>A calibration by the chain itself: count = a + b·(E(T) − E(T_cold)). Two numbers, safe beyond the last reading.</summary>
/// <param name="Curve">The thermocouple.</param>
/// <param name="ColdC">Temperature of the cold junction it holds for, °C.</param>
/// <param name="OffsetCounts">a: count with the tip as cold as the junction.</param>
/// <param name="CountsPerV">b.</param>
/// <param name="ScatterCounts">Scatter of the readings about the line.</param>
/// <remarks>Ordinary least squares on the counts; definition of the chain. Checked: PhysicalCalibrationTests.</remarks>
public sealed record PhysicalCalibration(ThermocoupleCurve Curve, double ColdC, double OffsetCounts, double CountsPerV, double ScatterCounts)
{
    /// <summary>Fits offset and gain to readings.</summary>
    public static PhysicalCalibration Fit(ThermocoupleCurve curve, double coldC, IReadOnlyList<double> counts, IReadOnlyList<double> tC)
    {
        double[] volts = [.. tC.Select(hot => ColdJunction.VoltageV(curve, hot, coldC))];
        double meanV = volts.Average(), meanCount = counts.Average();
        double gain = volts.Zip(counts, (v, count) => (v - meanV) * (count - meanCount)).Sum() / volts.Sum(v => (v - meanV) * (v - meanV));
        double offset = meanCount - (gain * meanV);
        double misfit = volts.Zip(counts, (v, count) => count - offset - (gain * v)).Sum(r => r * r);
        return new(curve, coldC, offset, gain, Math.Sqrt(misfit / (counts.Count - 2)));
    }

    /// <summary>Count at a temperature, unrounded.</summary>
    public double CountAt(double hotC) => OffsetCounts + (CountsPerV * ColdJunction.VoltageV(Curve, hotC, ColdC));

    /// <summary>Temperature at a count, °C.</summary>
    public double AtC(double count) => ColdJunction.HotC(Curve, (count - OffsetCounts) / CountsPerV, ColdC);
}
