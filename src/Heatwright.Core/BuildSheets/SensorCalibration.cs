using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>What a calibration holds under: change one of these and the counts mean other degrees.</summary>
/// <param name="ReferenceV">Reference of the converter, V.</param>
/// <param name="Bits">Its bits.</param>
/// <param name="CeilingV">Highest output of the amplifier, V: supply less headroom.</param>
/// <param name="ColdC">Cold end, °C.</param>
/// <param name="ReferenceShare">Share by which the reference may be off.</param>
/// <param name="ColdK">By how much the cold end may be off, K.</param>
public sealed record CalibrationConditions(double ReferenceV, int Bits, double CeilingV, double ColdC, double ReferenceShare, double ColdK)
{
    /// <summary>One step, V.</summary>
    public double StepV => Converter.StepV(ReferenceV, Bits);

    /// <summary>Highest count that is no end of the scale.</summary>
    public double HighestCount => Math.Min((1 << Bits) - 2, CeilingV / StepV);
}

/// <summary>Counts to degrees, with the range it was taken over, its doubt, and what it holds under.</summary>
public sealed class SensorCalibration
{
    private readonly Func<double, double> atC;
    private readonly Func<double, double> standardK;

    private SensorCalibration(string words, Func<double, double> atC, Func<double, double> standardK, double fromCount, double toCount, CalibrationConditions under)
    {
        (Words, this.atC, this.standardK, FromCount, ToCount, Under) = (words, atC, standardK, fromCount, toCount, under);
    }

    /// <summary>Which curve, from what.</summary>
    public string Words { get; }

    /// <summary>Lowest count it holds for.</summary>
    public double FromCount { get; }

    /// <summary>Highest count it holds for; beyond it nothing is said.</summary>
    public double ToCount { get; }

    /// <summary>What it holds under.</summary>
    public CalibrationConditions Under { get; }

    /// <summary>The physical form, where the sensor is of a known type; null: a curve of the readings alone, for this cold end only.</summary>
    public PhysicalCalibration? Physical { get; private init; }

    /// <summary>Scatter of the readings, K; 0: none were taken.</summary>
    public double ScatterK { get; private init; }

    /// <summary>Pairs it rests on; 0: the chain as designed.</summary>
    public int Readings { get; private init; }

    /// <summary>Degrees at a count, °C; outside the range it throws, for nothing may be said there.</summary>
    public double AtC(double count) => count >= FromCount - 1e-9 && count <= ToCount + 1e-9
        ? atC(count)
        : throw new ArgumentOutOfRangeException(nameof(count), count, string.Create(CultureInfo.InvariantCulture, $"The calibration holds from {FromCount:0} to {ToCount:0} counts."));

    /// <summary>Half width of the band that holds 95 of 100 new readings, K.</summary>
    public double BandK(double count) => (Readings > 2 ? Quantiles.StudentT(0.975, Readings - 2) : 2) * standardK(count);

    /// <summary>The chain as designed, before any reading: offset and gain nominal.</summary>
    public static SensorCalibration OfChain(SensorChain chain, CalibrationConditions under, double standardK)
    {
        var physical = chain.Calibration(under.ColdC);
        double from = Math.Max(Math.Ceiling(chain.FloorCount), Math.Ceiling(physical.CountAt(Math.Max(chain.Wanted.Curve.MinC, -100))));
        double to = Math.Floor(Math.Min(under.HighestCount, physical.CountAt(Math.Min(chain.Wanted.Curve.MaxC, chain.Wanted.HottestC + 20))));
        return new($"type {chain.Wanted.Curve.Type} through the chain as designed; no reading was taken", physical.AtC, _ => standardK, from, to, under) { Physical = physical };
    }

    /// <summary>The best curve of readings: the sensor's own law where its type is known, else a polynomial of at most the third order.</summary>
    public static Checked<SensorCalibration> Fit(CalibrationReadings readings, ThermocoupleCurve? curve, CalibrationConditions under)
    {
        double[] counts = [.. readings.Points.Select(point => point.Count)];
        double[] degrees = [.. readings.Points.Select(point => point.ProbeC)];
        if (counts.Any(count => count <= 0 || count >= (1 << under.Bits) - 1))
        {
            return new(new Problem("A calibration point lies at an end of the converter.", "calibration", counts.First(count => count <= 0 || count >= (1 << under.Bits) - 1).ToString("0", CultureInfo.InvariantCulture),
                $"1 to {((1 << under.Bits) - 2).ToString(CultureInfo.InvariantCulture)} counts", "The amplifier or the converter was saturated there: strike the point out."));
        }

        double span = counts.Max() - counts.Min();
        double from = Math.Max(0, Math.Ceiling(counts.Min() - (0.05 * span))), to = Math.Min(Math.Floor(counts.Max() + (0.05 * span)), Math.Floor(under.HighestCount));
        return curve is null ? Polynomial(counts, degrees, from, to, under) : Law(counts, degrees, curve, from, to, under);
    }

    /// <summary>The same chain under other conditions: other reference, bits or cold end. Refused where the amplifier clips before the range ends.</summary>
    /// <param name="to">The conditions on the prototype.</param>
    /// <param name="neededC">Hottest tip that must still be read, °C.</param>
    public Checked<SensorCalibration> MovedTo(CalibrationConditions to, double neededC)
    {
        if (Physical is not { } was)
        {
            return to.ColdC == Under.ColdC && to.Bits == Under.Bits && to.ReferenceV == Under.ReferenceV
                ? new(this)
                : new(new Problem("A curve of readings alone cannot be carried to another board.", "calibration", "no sensor type", "a sensor of known type, or readings on the board itself", "Take the calibration again on the prototype."));
        }

        double ratio = Under.StepV / to.StepV;
        var moved = was with { ColdC = to.ColdC, OffsetCounts = was.OffsetCounts * ratio, CountsPerV = was.CountsPerV * ratio };
        double needed = moved.CountAt(Math.Min(neededC, was.Curve.MaxC));
        if (needed > to.HighestCount)
        {
            double highest = moved.AtC(to.HighestCount);
            return new(new Problem("On the prototype the chain clips before the hottest tip.", "calibration carried over", string.Create(CultureInfo.InvariantCulture, $"{neededC:0} °C would be {needed:0} counts"),
                string.Create(CultureInfo.InvariantCulture, $"{to.HighestCount:0} counts, {highest:0} °C"), "Supply amplifier and converter as on the bench, or choose the gain again for the prototype."));
        }

        double Added(double count)
        {
            double hot = moved.AtC(count), slope = was.Curve.SlopeVPerK(hot);
            double signal = Math.Abs(count - moved.OffsetCounts) / moved.CountsPerV;
            double reference = Math.Sqrt((to.ReferenceShare * to.ReferenceShare) + (Under.ReferenceShare * Under.ReferenceShare)) * signal / slope;
            double cold = Math.Sqrt((to.ColdK * to.ColdK) + (Under.ColdK * Under.ColdK)) * ColdJunction.HotKPerColdK(was.Curve, hot, to.ColdC);
            return Math.Sqrt(((reference * reference) + (cold * cold)) / 3);
        }

        double shift = moved.CountsPerV * (was.Curve.EmfV(Under.ColdC) - was.Curve.EmfV(to.ColdC));
        double Old(double count) => Math.Clamp((count - shift) / ratio, FromCount, ToCount);
        return new(new SensorCalibration(Words + "; carried over to the prototype", moved.AtC, count => Math.Sqrt(Math.Pow(standardK(Old(count)), 2) + Math.Pow(Added(count), 2)),
            Math.Max(0, Math.Ceiling((FromCount * ratio) + shift)), Math.Min(Math.Floor((ToCount * ratio) + shift), Math.Floor(to.HighestCount)), to)
        {
            Physical = moved,
            ScatterK = ScatterK,
            Readings = Readings,
        });
    }

    /// <summary>How much a reading drifts when the reference follows the supply from one voltage to another, K: what the count then means, less what it is.</summary>
    public double DriftK(double hotC, double fromReferenceV, double toReferenceV)
    {
        if (Physical is not { } law)
        {
            return double.NaN;
        }

        double volts = law.CountAt(hotC) * fromReferenceV;
        return law.AtC(volts / toReferenceV) - hotC;
    }

    private static Checked<SensorCalibration> Law(double[] counts, double[] degrees, ThermocoupleCurve curve, double from, double to, CalibrationConditions under)
    {
        var fit = PhysicalCalibration.Fit(curve, under.ColdC, counts, degrees);
        if (!(fit.CountsPerV > 0))
        {
            return new(new Problem("The counts fall while the tip gets hotter.", "calibration", string.Create(CultureInfo.InvariantCulture, $"{fit.CountsPerV / 1000:0.##} counts per mV"), "above 0", "Swap the two wires of the sensor."));
        }

        double[] volts = [.. degrees.Select(hot => ColdJunction.VoltageV(curve, hot, under.ColdC))];
        double mean = volts.Average(), square = volts.Sum(v => (v - mean) * (v - mean));
        double Standard(double count)
        {
            double v = (count - fit.OffsetCounts) / fit.CountsPerV;
            double inCounts = fit.ScatterCounts * Math.Sqrt(1 + (1.0 / counts.Length) + ((v - mean) * (v - mean) / square));
            return inCounts / fit.CountsPerV / curve.SlopeVPerK(fit.AtC(count));
        }

        double middle = curve.SlopeVPerK(degrees.Average());
        return new(new SensorCalibration(string.Create(CultureInfo.InvariantCulture, $"type {curve.Type}, offset and gain fitted to {counts.Length} readings"), fit.AtC, Standard, from, to, under)
        {
            Physical = fit,
            Readings = counts.Length,
            ScatterK = fit.ScatterCounts / fit.CountsPerV / middle,
        });
    }

    private static Checked<SensorCalibration> Polynomial(double[] counts, double[] degrees, double from, double to, CalibrationConditions under)
    {
        double centre = 0.5 * (counts.Max() + counts.Min()), scale = 0.5 * (counts.Max() - counts.Min());
        var fit = PolynomialCalibration.Choose(counts, degrees, centre, scale, to);
        double before = double.NegativeInfinity;
        for (double count = from; count <= to; count++)
        {
            double now = fit.AtC(count);
            if (now <= before)
            {
                return new(new Problem("No curve through these readings rises all the way.", "calibration", string.Create(CultureInfo.InvariantCulture, $"it falls at {count:0} counts"), "a rising curve", "Take more points there, or state the sensor's type."));
            }

            before = now;
        }

        return new(new SensorCalibration(string.Create(CultureInfo.InvariantCulture, $"curve of order {fit.Order} through {counts.Length} readings, good for this cold end only"), fit.AtC, count => fit.NewReadingK(count, 0.68), from, to, under)
        {
            Readings = counts.Length,
            ScatterK = fit.ScatterK,
        });
    }
}
