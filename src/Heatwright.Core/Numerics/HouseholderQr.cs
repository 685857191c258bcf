namespace Heatwright.Numerics;

/// <summary>A tall matrix turned into an orthogonal Q and a triangle R; both stay at hand.</summary>
/// <remarks>Own code because a fit turns vectors by Q and Qᵀ many times without forming it, and because the linear fits refine
/// their result with both. Golub and Van Loan, Matrix Computations, section 5.2 (textbook method).</remarks>
internal sealed class HouseholderQr
{
    private readonly double[] columns;
    private readonly double[] diagonal;
    private readonly double[] halves;

    /// <param name="columns">The matrix, one column after the other; it is overwritten and kept.</param>
    public HouseholderQr(double[] columns, int rows, int count)
    {
        this.columns = columns;
        Rows = rows;
        Count = count;
        int height = Math.Min(rows, count);
        diagonal = new double[height];
        halves = new double[height];
        for (int k = 0; k < height; k++)
        {
            var v = Mirror(k);
            double norm = Norm(v);
            diagonal[k] = v[0] > 0 ? -norm : norm;
            v[0] -= diagonal[k];
            halves[k] = -diagonal[k] * v[0]; // half of |v|², without cancellation by the choice of sign
            for (int j = k + 1; j < count; j++)
            {
                Reflect(k, columns.AsSpan((j * rows) + k, rows - k));
            }
        }
    }

    public int Rows { get; }

    public int Count { get; }

    /// <summary>Element of the triangle.</summary>
    public double R(int i, int j) => i > j || i >= diagonal.Length ? 0 : i == j ? diagonal[i] : columns[(j * Rows) + i];

    /// <summary>Overwrites the side with Qᵀ·side.</summary>
    public void TurnForward(Span<double> side)
    {
        for (int k = 0; k < diagonal.Length; k++)
        {
            Reflect(k, side[k..]);
        }
    }

    /// <summary>Overwrites the side with Q·side.</summary>
    public void TurnBack(Span<double> side)
    {
        for (int k = diagonal.Length - 1; k >= 0; k--)
        {
            Reflect(k, side[k..]);
        }
    }

    /// <summary>Overwrites the first entries of the side with the solution of R·x = side.</summary>
    public void SolveUpper(Span<double> side)
    {
        for (int i = Count - 1; i >= 0; i--)
        {
            for (int j = i + 1; j < Count; j++)
            {
                side[i] -= R(i, j) * side[j];
            }

            side[i] /= R(i, i);
        }
    }

    /// <summary>Overwrites the first entries of the side with the solution of Rᵀ·x = side.</summary>
    public void SolveLower(Span<double> side)
    {
        for (int i = 0; i < Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                side[i] -= R(j, i) * side[j];
            }

            side[i] /= R(i, i);
        }
    }

    /// <summary>Euclidean length, safe against overflow.</summary>
    public static double Norm(ReadOnlySpan<double> values)
    {
        double largest = Lanes.Largest(values);
        if (largest == 0 || !double.IsFinite(largest))
        {
            return largest;
        }

        if (largest is > 1e-140 and < 1e140)
        {
            return Math.Sqrt(Lanes.Dot(values, values)); // no square of it leaves what a number can hold
        }

        double sum = 0;
        foreach (double value in values)
        {
            sum += value / largest * (value / largest);
        }

        return largest * Math.Sqrt(sum);
    }

    private Span<double> Mirror(int k) => columns.AsSpan((k * Rows) + k, Rows - k);

    private void Reflect(int k, Span<double> target)
    {
        if (halves[k] == 0)
        {
            return;
        }

        var v = Mirror(k);
        Lanes.AddScaled(target, -(Lanes.Dot(v, target) / halves[k]), v);
    }
}
