namespace Heatwright.Numerics;

/// <summary>Orthogonal triangle form of a tall matrix kept by columns, and the right-hand side turned with it.</summary>
/// <remarks>Own code because the rotated right-hand side is needed without forming Q, in place, many times in a fit.
/// Golub and Van Loan, Matrix Computations, section 5.2.</remarks>
internal static class HouseholderQr
{
    /// <summary>Overwrites the columns with R in the upper triangle, and the side with Qᵀ·side.</summary>
    public static void Reduce(double[] columns, int rows, int count, double[] side)
    {
        for (int k = 0; k < count && k < rows; k++)
        {
            var column = columns.AsSpan((k * rows) + k, rows - k);
            double norm = Norm(column);
            if (norm == 0)
            {
                continue;
            }

            double alpha = column[0] > 0 ? -norm : norm;
            double head = column[0] - alpha;
            // v = (head, column[1..]); vᵀv = −2·alpha·head, without cancellation by the choice of sign.
            double half = -alpha * head;
            column[0] = head;
            for (int j = k + 1; j < count; j++)
            {
                Reflect(column, columns.AsSpan((j * rows) + k, rows - k), half);
            }

            Reflect(column, side.AsSpan(k, rows - k), half);
            column[0] = alpha;
        }
    }

    /// <summary>Euclidean length, safe against overflow.</summary>
    public static double Norm(ReadOnlySpan<double> values)
    {
        double largest = 0;
        foreach (double value in values)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        if (largest == 0 || !double.IsFinite(largest))
        {
            return largest;
        }

        double sum = 0;
        foreach (double value in values)
        {
            sum += value / largest * (value / largest);
        }

        return largest * Math.Sqrt(sum);
    }

    private static void Reflect(ReadOnlySpan<double> v, Span<double> target, double half)
    {
        double dot = 0;
        for (int i = 0; i < v.Length; i++)
        {
            dot += v[i] * target[i];
        }

        double factor = dot / half;
        for (int i = 0; i < v.Length; i++)
        {
            target[i] -= factor * v[i];
        }
    }
}
