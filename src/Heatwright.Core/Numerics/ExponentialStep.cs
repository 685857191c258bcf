namespace Heatwright.Numerics;

/// <summary>Matrices of one exact step of x' = L·x + N over a time h: e^(Lh), h·φ₁(Lh) and h·φ₂(Lh), row by row.</summary>
/// <remarks>φ₁(z) = (e^z − 1)/z, φ₂(z) = (φ₁(z) − 1)/z, as in Hochbruck and Ostermann [hochbruck-2010]. Taylor series on a
/// halved step, then doubled back by φ₂(2z) = (e^z·φ₂ + φ₁ + φ₂)/4 and φ₁(2z) = (e^z + 1)·φ₁/2: no inverse of L is needed,
/// so a network without losses is no special case.</remarks>
public sealed class ExponentialStep
{
    private const int Terms = 14;

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
        double[] phi2 = Identity(n, 1.0 / Factorial(Terms + 2));
        for (int k = Terms - 1; k >= 0; k--)
        {
            phi2 = Multiply(z, phi2, n);
            AddIdentity(phi2, n, 1.0 / Factorial(k + 2));
        }

        double[] phi1 = Multiply(z, phi2, n);
        AddIdentity(phi1, n, 1);
        double[] exp = Multiply(z, phi1, n);
        AddIdentity(exp, n, 1);
        for (int i = 0; i < halvings; i++)
        {
            double[] e2 = Multiply(exp, phi2, n);
            double[] e1 = Multiply(exp, phi1, n);
            for (int j = 0; j < phi2.Length; j++)
            {
                phi2[j] = 0.25 * (e2[j] + phi1[j] + phi2[j]);
                phi1[j] = 0.5 * (e1[j] + phi1[j]);
            }

            exp = Multiply(exp, exp, n);
        }

        for (int i = 0; i < phi1.Length; i++)
        {
            phi1[i] *= h;
            phi2[i] *= h;
        }

        Exp = exp;
        Phi1 = phi1;
        Phi2 = phi2;
    }

    private static double[] Identity(int n, double value)
    {
        double[] result = new double[n * n];
        AddIdentity(result, n, value);
        return result;
    }

    private static void AddIdentity(double[] matrix, int n, double value)
    {
        for (int i = 0; i < n; i++)
        {
            matrix[(i * n) + i] += value;
        }
    }

    private static double[] Multiply(double[] a, double[] b, int n)
    {
        double[] result = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < n; k++)
            {
                double factor = a[(i * n) + k];
                for (int j = 0; j < n; j++)
                {
                    result[(i * n) + j] += factor * b[(k * n) + j];
                }
            }
        }

        return result;
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
