namespace Heatwright.Numerics;

/// <summary>Matrices of one exact step of x' = L·x + N over a time h: e^(Lh), h·φ₁(Lh) and h·φ₂(Lh), row by row.</summary>
/// <remarks>φ₁(z) = (e^z − 1)/z, φ₂(z) = (φ₁(z) − 1)/z, as in Hochbruck and Ostermann [hochbruck-2010]. Taylor series on a
/// halved step, then doubled back by φ₂(2z) = (e^z·φ₂ + φ₁ + φ₂)/4 and φ₁(2z) = (e^z + 1)·φ₁/2: no inverse of L is needed,
/// so a network without losses is no special case.</remarks>
public sealed class ExponentialStep
{
    /// <summary>Terms for a matrix of size one half; a smaller one needs fewer.</summary>
    private const int Terms = 14;

    /// <summary>A term below this, beside a half, changes no digit.</summary>
    private const double Nothing = 1e-18;

    /// <summary>e^(Lh).</summary>
    public double[] Exp { get; }

    /// <summary>h·φ₁(Lh).</summary>
    public double[] Phi1 { get; }

    /// <summary>h·φ₂(Lh).</summary>
    public double[] Phi2 { get; }

    /// <summary>Matrices for a square L of size n, given row by row, and a step h of 0 or more.</summary>
    public ExponentialStep(ReadOnlySpan<double> linear, int n, double h)
    {
        if (linear.Length != n * n)
        {
            throw new ArgumentException($"A {n}x{n} matrix has {n * n} entries, not {linear.Length}.", nameof(linear));
        }

        double largest = 0;
        for (int row = 0; row < n; row++)
        {
            double sum = 0;
            for (int column = 0; column < n; column++)
            {
                sum += Math.Abs(linear[(row * n) + column]);
            }

            largest = Math.Max(largest, sum);
        }

        int halvings = Math.Max(0, (int)Math.Ceiling(Math.Log2(Math.Max(largest * h, 1e-300) / 0.5)));
        double small = h / Math.Pow(2, halvings);
        double[] z = new double[n * n];
        for (int i = 0; i < z.Length; i++)
        {
            z[i] = linear[i] * small;
        }

        // φ₂ by its series Σ z^k/(k+2)!, then φ₁ = 1 + z·φ₂ and e^z = 1 + z·φ₁: each is exact in the one before.
        (Phi2, Phi1, Exp) = (new double[n * n], new double[n * n], new double[n * n]);
        double[] other = new double[n * n];
        int terms = TermsFor(largest * small);
        AddIdentity(Phi2, n, 1.0 / Factorial(terms + 2));
        for (int k = terms - 1; k >= 0; k--)
        {
            Multiply(z, Phi2, other, n);
            AddIdentity(other, n, 1.0 / Factorial(k + 2));
            (Phi2, other) = (other, Phi2);
        }

        Multiply(z, Phi2, Phi1, n);
        AddIdentity(Phi1, n, 1);
        Multiply(z, Phi1, Exp, n);
        AddIdentity(Exp, n, 1);
        double[] twice = halvings > 0 ? new double[n * n] : other;
        for (int i = 0; i < halvings; i++)
        {
            Multiply(Exp, Phi2, twice, n);
            Multiply(Exp, Phi1, other, n);
            for (int j = 0; j < Phi2.Length; j++)
            {
                Phi2[j] = 0.25 * (twice[j] + Phi1[j] + Phi2[j]);
                Phi1[j] = 0.5 * (other[j] + Phi1[j]);
            }

            Multiply(Exp, Exp, other, n);
            (Exp, other) = (other, Exp);
        }

        for (int i = 0; i < Phi1.Length; i++)
        {
            Phi1[i] *= h;
            Phi2[i] *= h;
        }
    }

    /// <summary>Terms of the series after which one no longer counts beside the first, for a matrix of such a size.</summary>
    private static int TermsFor(double size)
    {
        double term = 0.5;
        for (int k = 1; k < Terms; k++)
        {
            term *= size / (k + 2);
            if (term < Nothing)
            {
                return k;
            }
        }

        return Terms;
    }

    private static void AddIdentity(double[] matrix, int n, double value)
    {
        for (int i = 0; i < n; i++)
        {
            matrix[(i * n) + i] += value;
        }
    }

    private static void Multiply(ReadOnlySpan<double> a, ReadOnlySpan<double> b, Span<double> result, int n)
    {
        result.Clear();
        for (int i = 0; i < n; i++)
        {
            var row = result.Slice(i * n, n);
            for (int k = 0; k < n; k++)
            {
                double factor = a[(i * n) + k];
                var from = b.Slice(k * n, n);
                for (int j = 0; j < row.Length; j++)
                {
                    row[j] += factor * from[j];
                }
            }
        }
    }

    private static double Factorial(int k)
    {
        double product = 1;
        for (int i = 2; i <= k; i++)
        {
            product *= i;
        }

        return product;
    }
}
