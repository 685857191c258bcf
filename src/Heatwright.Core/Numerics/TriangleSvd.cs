using MathNet.Numerics.LinearAlgebra;

namespace Heatwright.Numerics;

/// <summary>Singular values of the small triangle of a fit, and the steps of any length that follow from it.</summary>
internal sealed class TriangleSvd
{
    private readonly HouseholderQr qr;
    private readonly double[] values;
    private readonly Matrix<double> u;
    private readonly Matrix<double> vt;

    public TriangleSvd(HouseholderQr qr)
    {
        this.qr = qr;
        var svd = Matrix<double>.Build.Dense(qr.Count, qr.Count, qr.R).Svd();
        (values, u, vt) = (svd.S.ToArray(), svd.U, svd.VT);
    }

    /// <summary>Directions that the matrix tells apart from rounding.</summary>
    public int Rank => values.Count(value => value > Floor);

    public int Count => values.Length;

    private double Floor => values[0] * values.Length * 2.3e-16;

    /// <summary>The right-hand side in the directions of the singular values.</summary>
    public double[] Along(double[] side)
    {
        double[] turned = [.. side];
        qr.TurnForward(turned);
        var along = new double[Count];
        for (int k = 0; k < Count; k++)
        {
            for (int i = 0; i < Math.Min(Count, qr.Rows); i++)
            {
                along[k] += u[i, k] * turned[i];
            }
        }

        return along;
    }

    /// <summary>Minimiser of |A·z + side|² + damping·|z|².</summary>
    public double[] Step(double[] along, double damping)
    {
        var z = new double[Count];
        for (int k = 0; k < Count; k++)
        {
            if (Counts(k, damping))
            {
                double part = -values[k] * along[k] / ((values[k] * values[k]) + damping);
                for (int j = 0; j < Count; j++)
                {
                    z[j] += part * vt[k, j];
                }
            }
        }

        return z;
    }

    /// <summary>The damping at which the step is as long as the radius (within a tenth); zero when the full step is shorter.</summary>
    /// <remarks>Newton on 1/length, which is nearly straight: Moré, "The Levenberg-Marquardt algorithm: implementation and theory",
    /// Lecture Notes in Mathematics 630 (1978) 105.</remarks>
    public double DampingFor(double[] along, double radius)
    {
        if (Length(along, 0).Norm <= radius * 1.1)
        {
            return 0;
        }

        double damping = Rank == Count ? 0 : Floor * Floor;
        for (int iteration = 0; iteration < 60; iteration++)
        {
            var (norm, slope) = Length(along, damping);
            if (Math.Abs(norm - radius) <= 0.1 * radius || (iteration == 0 && norm < radius))
            {
                break;
            }

            damping = Math.Max(damping - ((norm - radius) / radius * (norm / slope)), damping * 1e-3);
        }

        return damping;
    }

    /// <summary>(AᵀA)⁻¹ over the directions that count, and which parameters the others leave open.</summary>
    public (double[,] Inverse, bool[] Open) InverseOfProduct()
    {
        var inverse = new double[Count, Count];
        var open = new bool[Count];
        for (int k = 0; k < Count; k++)
        {
            for (int i = 0; i < Count; i++)
            {
                if (!Counts(k, 0))
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

    private bool Counts(int k, double damping) => values[k] > Floor || (damping > 0 && values[k] > 0);

    private (double Norm, double Slope) Length(double[] along, double damping)
    {
        double sum = 0, bend = 0;
        for (int k = 0; k < Count; k++)
        {
            if (Counts(k, damping))
            {
                double divisor = (values[k] * values[k]) + damping;
                double part = values[k] * along[k] / divisor;
                sum += part * part;
                bend += part * part / divisor;
            }
        }

        double norm = Math.Sqrt(sum);
        return (norm, -bend / Math.Max(norm, double.Epsilon));
    }
}
