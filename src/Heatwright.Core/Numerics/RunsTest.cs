namespace Heatwright.Numerics;

/// <summary>Whether the signs of residuals change as often as chance would have it.</summary>
/// <param name="Runs">Stretches of equal sign.</param>
/// <param name="Positive">Residuals above zero.</param>
/// <param name="Negative">Residuals below zero.</param>
/// <param name="Expected">Runs expected by chance.</param>
/// <param name="Z">(runs − expected) over their standard deviation; not a number when all have one sign.</param>
/// <remarks>Wald and Wolfowitz, Annals of Mathematical Statistics 11 (1940) 147. Residuals of exactly zero have no sign and are passed over.</remarks>
public readonly record struct RunsTest(int Runs, int Positive, int Negative, double Expected, double Z)
{
    /// <summary>Probability of so few runs by chance, in the normal approximation.</summary>
    public double ChanceOfSoFew => Quantiles.NormalShare(Z);

    /// <summary>Counts the runs of residuals in their order.</summary>
    public static RunsTest Of(ReadOnlySpan<double> residuals)
    {
        int runs = 0, positive = 0, negative = 0, last = 0;
        foreach (double residual in residuals)
        {
            int sign = Math.Sign(residual);
            if (sign == 0)
            {
                continue;
            }

            positive += sign > 0 ? 1 : 0;
            negative += sign < 0 ? 1 : 0;
            runs += sign != last ? 1 : 0;
            last = sign;
        }

        double n = positive + negative, twice = 2.0 * positive * negative;
        double expected = 1 + (twice / n);
        double variance = twice * (twice - n) / (n * n * (n - 1));
        return new RunsTest(runs, positive, negative, expected, variance > 0 ? (runs - expected) / Math.Sqrt(variance) : double.NaN);
    }
}
