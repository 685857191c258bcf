namespace Heatwright.Numerics;

/// <summary>Turns correlated parameters into independent causes.</summary>
public static class CovarianceFactor
{
    /// <summary>A matrix L with L·Lᵀ = covariance: row j says how far each independent unit draw pushes parameter j.</summary>
    /// <remarks>Cholesky with pivoting (Golub and Van Loan, Matrix Computations, section 4.2; textbook method) on the correlations, so that units
    /// do not matter. Fully correlated parameters give fewer columns than parameters; what rounding leaves below zero is dropped.</remarks>
    /// <exception cref="ArgumentException">Not a covariance: not square, not symmetric, not finite, or clearly negative somewhere.</exception>
    public static double[,] Of(double[,] covariance)
    {
        int n = covariance.GetLength(0);
        double[,] rest = Correlations(covariance, out double[] errors);
        var columns = new List<double[]>();
        double tolerance = n * 1e-14;
        while (columns.Count < n)
        {
            int pivot = Enumerable.Range(0, n).MaxBy(j => rest[j, j]);
            double size = rest[pivot, pivot];
            if (size <= tolerance)
            {
                break;
            }

            double[] column = [.. Enumerable.Range(0, n).Select(i => rest[i, pivot] / Math.Sqrt(size))];
            columns.Add(column);
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    rest[i, j] -= column[i] * column[j];
                }
            }

            // A finished row is exactly nothing; its rounding must not come back as a further column.
            for (int i = 0; i < n; i++)
            {
                rest[pivot, i] = 0;
                rest[i, pivot] = 0;
            }
        }

        RefuseNegative(rest, n);
        var factor = new double[n, columns.Count];
        for (int j = 0; j < n; j++)
        {
            for (int k = 0; k < columns.Count; k++)
            {
                factor[j, k] = errors[j] * columns[k][j];
            }
        }

        return factor;
    }

    /// <summary>Correlations of an inverse found by rounding arithmetic may miss by about 1e-8; worse is a slip of the caller.</summary>
    private static void RefuseNegative(double[,] rest, int n)
    {
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                if (Math.Abs(rest[i, j]) > 1e-6)
                {
                    throw new ArgumentException($"Entries {i} and {j} correlate more strongly than any set of readings allows.");
                }
            }
        }
    }

    private static double[,] Correlations(double[,] covariance, out double[] errors)
    {
        int n = covariance.GetLength(0);
        if (covariance.GetLength(1) != n)
        {
            throw new ArgumentException("A covariance is square.");
        }

        double[] roots = [.. Enumerable.Range(0, n).Select(j => Math.Sqrt(covariance[j, j]))];
        var correlations = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                double one = covariance[i, j], other = covariance[j, i];
                if (!double.IsFinite(roots[i]) || !double.IsFinite(one) || Math.Abs(one - other) > 1e-9 * roots[i] * roots[j])
                {
                    throw new ArgumentException($"Entry {i}, {j} of the covariance is not finite, not symmetric, or its variance is negative.");
                }

                correlations[i, j] = roots[i] > 0 && roots[j] > 0 ? 0.5 * (one + other) / (roots[i] * roots[j])
                    : one == 0 ? 0
                    : throw new ArgumentException($"Parameters {i} and {j} share variance although one of them has none.");
            }
        }

        errors = roots;
        return correlations;
    }
}
