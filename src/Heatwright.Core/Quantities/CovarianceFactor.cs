namespace Heatwright.Quantities;

/// <summary>Splits a covariance into independent parts: C = L·Lᵀ with L lower triangular (Cholesky).</summary>
/// <remarks>Worked on the correlations, so that ohms beside joules per kelvin lose no digits. No row is swapped: the same fit gives the same causes on every run.</remarks>
internal static class CovarianceFactor
{
    /// <summary>A pivot this small against 1 is rounding, not doubt; leaving it out moves a correlation by its root at most, 3e-7.</summary>
    private const double Rounding = 1e-13;

    /// <summary>Covariances arrive rounded themselves: a variance below nothing by this much of its own is still nothing, a correlation too large by this much is still whole.</summary>
    private const double VarianceSlack = 1e-10;

    private const double CorrelationSlack = 1e-5;

    public static double[,] Of(double[,] covariance)
    {
        int count = covariance.GetLength(0);
        if (covariance.GetLength(1) != count)
        {
            throw new ArgumentException("A covariance has as many rows as columns.", nameof(covariance));
        }

        double[] scale = [.. Enumerable.Range(0, count).Select(i => Math.Sqrt(Variance(covariance, i)))];
        double[,] factor = new double[count, count];
        for (int j = 0; j < count; j++)
        {
            double pivot = scale[j] == 0 ? 0 : 1 - Dot(factor, j, j, j);
            if (pivot < -VarianceSlack)
            {
                throw new ArgumentException($"Not a covariance: parameter {j} would have a negative variance of its own.", nameof(covariance));
            }

            bool isFree = pivot > Rounding;
            factor[j, j] = isFree ? Math.Sqrt(pivot) : 0;
            for (int i = j + 1; i < count; i++)
            {
                double left = Correlation(covariance, scale, i, j) - Dot(factor, i, j, j);
                factor[i, j] = isFree ? left / factor[j, j] : Math.Abs(left) <= CorrelationSlack ? 0
                    : throw new ArgumentException($"Not a covariance: parameters {j} and {i} are correlated by more than their variances allow.", nameof(covariance));
            }
        }

        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                factor[i, j] *= scale[i];
            }
        }

        return factor;
    }

    private static double Variance(double[,] covariance, int i) => double.IsFinite(covariance[i, i]) && covariance[i, i] >= 0
        ? covariance[i, i]
        : throw new ArgumentException($"The variance of parameter {i} must be a finite number, 0 or more.", nameof(covariance));

    private static double Correlation(double[,] covariance, double[] scale, int i, int j)
    {
        if (!double.IsFinite(covariance[i, j]) || Math.Abs(covariance[i, j] - covariance[j, i]) > 1e-6 * scale[i] * scale[j])
        {
            throw new ArgumentException($"Not a covariance: entries {i},{j} and {j},{i} must be finite and equal.", nameof(covariance));
        }

        return scale[i] == 0 || scale[j] == 0 ? 0 : covariance[i, j] / (scale[i] * scale[j]);
    }

    private static double Dot(double[,] factor, int i, int j, int below)
    {
        double sum = 0;
        for (int k = 0; k < below; k++)
        {
            sum += factor[i, k] * factor[j, k];
        }

        return sum;
    }
}
