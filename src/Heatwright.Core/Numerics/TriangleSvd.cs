using MathNet.Numerics.LinearAlgebra;

namespace Heatwright.Numerics;

/// <summary>Singular values of the small triangle of a fit, and the steps of any length that follow from it.</summary>
internal sealed class TriangleSvd
{
    private readonly double[] values;
    private readonly double[] turned;
    private readonly Matrix<double> vt;

    /// <param name="columns">Columns whose upper triangle is R.</param>
    /// <param name="side">Its first entries are Qᵀ·residuals.</param>
    public TriangleSvd(double[] columns, int rows, int count, double[] side)
    {
        int height = Math.Min(rows, count);
        var r = Matrix<double>.Build.Dense(count, count, (i, j) => i <= j && i < height ? columns[(j * rows) + i] : 0);
        var svd = r.Svd();
        values = svd.S.ToArray();
        vt = svd.VT;
        turned = [.. Enumerable.Range(0, count).Select(k => svd.U.Column(k).DotProduct(Vector<double>.Build.Dense(count, i => i < height ? side[i] : 0)))];
    }

    public int Count => values.Length;

    /// <summary>Singular values below this cannot be told from rounding.</summary>
    private double Floor => values[0] * values.Length * 2.3e-16;

    public int Rank => values.Count(value => value > Floor);

    /// <summary>Minimiser of |R·z + side|² + damping·|z|².</summary>
    public double[] Step(double damping)
    {
        var z = new double[Count];
        for (int k = 0; k < Count; k++)
        {
            if (values[k] > 0 && (damping > 0 || values[k] > Floor))
            {
                double along = -values[k] * turned[k] / ((values[k] * values[k]) + damping);
                for (int j = 0; j < Count; j++)
                {
                    z[j] += along * vt[k, j];
                }
            }
        }

        return z;
    }

    /// <summary>The damping at which the step is as long as the radius (within a tenth); zero when the full step is shorter.</summary>
    /// <remarks>Newton on 1/length, which is nearly straight: Moré, "The Levenberg-Marquardt algorithm: implementation and theory",
    /// Lecture Notes in Mathematics 630 (1978) 105.</remarks>
    public double DampingFor(double radius)
    {
        if (Length(0).Norm <= radius * 1.1)
        {
            return 0;
        }

        double damping = Rank == Count ? 0 : Floor * Floor;
        for (int iteration = 0; iteration < 60; iteration++)
        {
            var (norm, slope) = Length(damping);
            if (Math.Abs(norm - radius) <= 0.1 * radius || (iteration == 0 && norm < radius))
            {
                break;
            }

            damping = Math.Max(damping - ((norm - radius) / radius * (norm / slope)), damping * 1e-3);
        }

        return damping;
    }

    /// <summary>(RᵀR)⁻¹, or null directions when R is singular to rounding.</summary>
    public (double[,] Inverse, bool[] Open) InverseOfProduct()
    {
        var inverse = new double[Count, Count];
        var open = new bool[Count];
        for (int k = 0; k < Count; k++)
        {
            for (int i = 0; i < Count; i++)
            {
                if (values[k] <= Floor)
                {
                    open[i] |= Math.Abs(vt[k, i]) > 1e-6;
                    continue;
                }

                for (int j = 0; j < Count; j++)
                {
                    inverse[i, j] += vt[k, i] / values[k] * (vt[k, j] / values[k]);
                }
            }
        }

        return (inverse, open);
    }

    private (double Norm, double Slope) Length(double damping)
    {
        double sum = 0, bend = 0;
        for (int k = 0; k < Count; k++)
        {
            double divisor = (values[k] * values[k]) + damping;
            if (divisor > 0 && (damping > 0 || values[k] > Floor))
            {
                double along = values[k] * turned[k] / divisor;
                sum += along * along;
                bend += along * along / divisor;
            }
        }

        double norm = Math.Sqrt(sum);
        return (norm, -bend / Math.Max(norm, double.Epsilon));
    }
}
