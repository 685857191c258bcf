namespace Heatwright.Physics;

/// <summary>A chord table in whole numbers, as a small controller evaluates it.</summary>
/// <remarks>T·16 = t0[i] + (((count − c[i])·m[i] + 2048) &gt;&gt; 12), arithmetic shift, 32 bits. The outer brackets matter: + binds tighter
/// than &gt;&gt; in C and C#. Checked: FixedPointTableTests.</remarks>
public sealed record FixedPointTable
{
    private const int Shift = 12;

    private FixedPointTable(int[] counts, int[] slopes, int[] starts)
    {
        (Counts, Slopes, Starts) = (counts, slopes, starts);
        long most = Enumerable.Range(0, slopes.Length).Max(i => Math.Abs((long)(counts[i + 1] - counts[i]) * slopes[i]) + (1 << (Shift - 1)));
        if (most > int.MaxValue)
        {
            throw new ArgumentException("A segment is too long or too steep for 32 bits: add a breakpoint.", nameof(counts));
        }
    }

    /// <summary>Counts at the breakpoints, rising; the last is the end of the table.</summary>
    public IReadOnlyList<int> Counts { get; }

    /// <summary>Sixteenths of a degree per count, times 4096, a segment each.</summary>
    public IReadOnlyList<int> Slopes { get; }

    /// <summary>Sixteenths of a degree at the breakpoints; the last is the end of the table.</summary>
    public IReadOnlyList<int> Starts { get; }

    /// <summary>Builds the table from a calibration and its breakpoints.</summary>
    /// <param name="calibration">Temperature at a count and back.</param>
    /// <param name="breakpointsC">Temperatures of the breakpoints, rising, °C.</param>
    public static FixedPointTable From(PhysicalCalibration calibration, IReadOnlyList<double> breakpointsC)
    {
        int[] counts = [.. breakpointsC.Select(tC => (int)Math.Round(calibration.CountAt(tC)))];
        // The temperature is taken again at the rounded count: half a count is a quarter of a degree here.
        double[] sixteenths = [.. counts.Select(count => 16 * calibration.AtC(count))];
        int[] slopes = [.. Enumerable.Range(0, counts.Length - 1)
            .Select(i => (int)Math.Round((sixteenths[i + 1] - sixteenths[i]) / (counts[i + 1] - counts[i]) * (1 << Shift)))];
        return new(counts, slopes, [.. sixteenths.Select(value => (int)Math.Round(value))]);
    }

    /// <summary>Temperature at a count in sixteenths of a degree, exactly as the controller works it out; the end segments reach on.</summary>
    public int SixteenthsAt(int count)
    {
        int segment = 0;
        while (segment < Slopes.Count - 1 && count >= Counts[segment + 1])
        {
            segment++;
        }

        return Starts[segment] + ((((count - Counts[segment]) * Slopes[segment]) + (1 << (Shift - 1))) >> Shift);
    }

    /// <summary>Temperature at a count, °C.</summary>
    public double AtC(int count) => SixteenthsAt(count) / 16.0;
}
