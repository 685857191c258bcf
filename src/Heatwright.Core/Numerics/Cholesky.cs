namespace Heatwright.Numerics;

/// <summary>Equations with a symmetric positive matrix, such as a covariance.</summary>
public sealed class Cholesky
{
    private readonly double[,] lower;

    /// <summary>Splits the matrix into L·Lᵀ; a matrix that is not positive is refused.</summary>
    public Cholesky(double[,] matrix)
    {
        int n = matrix.GetLength(0);
        lower = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = matrix[i, j];
                for (int k = 0; k < j; k++)
                {
                    sum -= lower[i, k] * lower[j, k];
                }

                if (i == j && !(sum > 0))
                {
                    throw new ArgumentException("The matrix is not positive: something in it is counted twice or not at all.", nameof(matrix));
                }

                lower[i, j] = i == j ? Math.Sqrt(sum) : sum / lower[j, j];
            }
        }
    }

    /// <summary>Solves matrix·x = right.</summary>
    public double[] Solve(ReadOnlySpan<double> right)
    {
        int n = lower.GetLength(0);
        double[] x = right.ToArray();
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < i; k++)
            {
                x[i] -= lower[i, k] * x[k];
            }

            x[i] /= lower[i, i];
        }

        for (int i = n - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < n; k++)
            {
                x[i] -= lower[k, i] * x[k];
            }

            x[i] /= lower[i, i];
        }

        return x;
    }

    /// <summary>matrix⁻¹.</summary>
    public double[,] Inverse()
    {
        int n = lower.GetLength(0);
        var inverse = new double[n, n];
        double[] unit = new double[n];
        for (int i = 0; i < n; i++)
        {
            unit[i] = 1;
            double[] column = Solve(unit);
            for (int j = 0; j < n; j++)
            {
                inverse[i, j] = column[j];
            }

            unit[i] = 0;
        }

        return inverse;
    }

    /// <summary>aᵀ·matrix⁻¹·b.</summary>
    public double Form(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double[] solved = Solve(b);
        double sum = 0;
        for (int i = 0; i < solved.Length; i++)
        {
            sum += a[i] * solved[i];
        }

        return sum;
    }
}
