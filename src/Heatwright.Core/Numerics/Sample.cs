namespace Heatwright.Numerics;

/// <summary>Plain statistics of a row of readings, summed so that large offsets cost no digits.</summary>
/// <remarks>Checked: NIST/ITL StRD univariate sets [nist-strd].</remarks>
public static class Sample
{
    /// <summary>Arithmetic mean; not a number for none.</summary>
    public static double Mean(ReadOnlySpan<double> values) =>
        values.Length == 0 ? double.NaN : CompensatedSum.Of(values) / values.Length;

    /// <summary>Standard deviation of a sample (divisor n − 1); not a number for fewer than two.</summary>
    public static double StandardDeviation(ReadOnlySpan<double> values)
    {
        if (values.Length < 2)
        {
            return double.NaN;
        }

        double[] off = Offsets(values);
        return Math.Sqrt(CompensatedSum.OfProducts(off, off) / (values.Length - 1));
    }

    /// <summary>Correlation of each reading with the one before, about the common mean; not a number when all are alike.</summary>
    public static double Lag1(ReadOnlySpan<double> values)
    {
        double[] off = Offsets(values);
        return off.Length < 2 ? double.NaN : CompensatedSum.OfProducts(off.AsSpan(1), off.AsSpan(0, off.Length - 1)) / CompensatedSum.OfProducts(off, off);
    }

    /// <summary>Middle value; mean of the two middle ones for an even count; not a number for none.</summary>
    public static double Median(ReadOnlySpan<double> values)
    {
        double[] sorted = values.ToArray();
        Array.Sort(sorted);
        int half = sorted.Length / 2;
        return sorted.Length == 0 ? double.NaN
            : sorted.Length % 2 == 1 ? sorted[half]
            : sorted[half - 1] + (0.5 * (sorted[half] - sorted[half - 1]));
    }

    /// <summary>Offsets from the mean. The mean's own rounding error is taken out by centring twice.</summary>
    private static double[] Offsets(ReadOnlySpan<double> values)
    {
        double mean = Mean(values);
        double[] off = values.ToArray();
        for (int i = 0; i < off.Length; i++)
        {
            off[i] -= mean;
        }

        double rest = Mean(off);
        for (int i = 0; i < off.Length; i++)
        {
            off[i] -= rest;
        }

        return off;
    }
}
