namespace Heatwright.Numerics;

/// <summary>How far readings stand from the bulk, judged by medians so that the far ones do not hide themselves.</summary>
/// <remarks>Modified score M = 0.6745·(x − median)/MAD, suspicious above 3.5: Iglewicz and Hoaglin, How to Detect and Handle Outliers
/// (ASQC 1993), formula as given in NIST/SEMATECH e-Handbook 1.3.5.17 [nist-sematech].</remarks>
public static class OutlierScores
{
    /// <summary>Scores beyond this are suspicious, by the published rule.</summary>
    public const double Suspicious = 3.5;

    /// <summary>Quartile of the standard normal, 0.67449: makes the median of the absolute offsets an estimate of the standard deviation.</summary>
    private static readonly double Quartile = Quantiles.Normal(0.75);

    /// <summary>Signed score of each value; all zero when more than half are alike and the rest too.</summary>
    /// <remarks>When more than half of the values are alike the median offset is zero; the mean absolute offset takes its place,
    /// scaled by √(2/π) of the normal, so that one odd reading among equal ones still shows.</remarks>
    public static double[] Of(ReadOnlySpan<double> values)
    {
        double median = Sample.Median(values);
        double[] off = [.. values.ToArray().Select(value => value - median)];
        double[] sizes = [.. off.Select(Math.Abs)];
        double spread = Sample.Median(sizes) / Quartile;
        if (!(spread > 0))
        {
            spread = Sample.Mean(sizes) * Math.Sqrt(Math.PI / 2);
        }

        return [.. off.Select(value => spread > 0 ? value / spread : 0)];
    }
}
