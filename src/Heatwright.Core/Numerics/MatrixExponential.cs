namespace Heatwright.Numerics;

/// <summary>e to the power of a small matrix, and with it the exact step of a linear system whose input is held constant.</summary>
/// <remarks>Scaling and squaring with the [13/13] Padé quotient ([higham-2005]); the step from one exponential of a block matrix
/// ([van-loan-1978]). Both from memory; checked against eigenvalues, a Taylor series and the quotient rule in MatrixExponentialTests.</remarks>
public static class MatrixExponential
{
    private const int Order = 13;

    /// <summary>Below this 1-norm the [13/13] quotient is good to the last bits without scaling ([higham-2005], rounded down).</summary>
    private const double LargestNorm = 5.37;

    private static readonly double[] Quotient = Coefficients();

    /// <summary>e^A of a square matrix.</summary>
    public static double[,] Of(double[,] a)
    {
        int n = a.GetLength(0);
        if (n == 0 || a.GetLength(1) != n)
        {
            throw new ArgumentException($"A matrix of {n} × {a.GetLength(1)} has no exponential: it must be square.", nameof(a));
        }

        double norm = Norm(a);
        if (!double.IsFinite(norm))
        {
            throw new ArgumentException("A matrix with an entry that is not finite has no exponential.", nameof(a));
        }

        int halvings = norm <= LargestNorm ? 0 : (int)Math.Ceiling(Math.Log2(norm / LargestNorm));
        double[,] scaled = Combine(a, Math.Pow(2, -halvings), a, 0);
        double[,] result = Pade(scaled);
        for (int i = 0; i < halvings; i++)
        {
            result = Times(result, result);
        }

        return result;
    }

    /// <summary>Exact step of dx/dt = A·x + B·u over <paramref name="stepS"/> with u held: x' = Transition·x + Input·u.</summary>
    public static (double[,] Transition, double[,] Input) Step(double[,] a, double[,] b, double stepS)
    {
        int n = a.GetLength(0);
        int m = b.GetLength(1);
        double[,] block = new double[n + m, n + m];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n + m; j++)
            {
                block[i, j] = stepS * (j < n ? a[i, j] : b[i, j - n]);
            }
        }

        double[,] power = Of(block);
        double[,] transition = new double[n, n];
        double[,] input = new double[n, m];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n + m; j++)
            {
                (j < n ? ref transition[i, j] : ref input[i, j - n]) = power[i, j];
            }
        }

        return (transition, input);
    }

    /// <summary>φ₁(z) = (e^z − 1)/z, with φ₁(0) = 1. Source: [hochbruck-ostermann-2010].</summary>
    /// <remarks>Near zero the quotient loses all its digits, so the series Σ z^k/(k + 1)! takes over.</remarks>
    public static double Phi1(double z) => Math.Abs(z) < 1 ? Series(z, 1) : (Math.Exp(z) - 1) / z;

    /// <summary>φ₂(z) = (φ₁(z) − 1)/z, with φ₂(0) = 1/2. Source: [hochbruck-ostermann-2010].</summary>
    public static double Phi2(double z) => Math.Abs(z) < 1 ? Series(z, 2) : (Phi1(z) - 1) / z;

    /// <summary>1 − e^(−x) without loss of digits for small x: the share of its end value that a first-order rise has made.</summary>
    public static double RisenShare(double x) => double.IsPositiveInfinity(x) ? 1 : x * Phi1(-x);

    private static double Series(double z, int order)
    {
        double term = order == 1 ? 1 : 0.5;
        double sum = term;
        for (int k = 1; k < 25; k++)
        {
            term *= z / (k + order);
            sum += term;
        }

        return sum;
    }

    /// <summary>c₀ = 1, c_{j+1} = c_j (m − j)/((2m − j)(j + 1)): the quotient's own recurrence, so no digits are remembered.</summary>
    private static double[] Coefficients()
    {
        double[] c = new double[Order + 1];
        c[0] = 1;
        for (int j = 0; j < Order; j++)
        {
            c[j + 1] = c[j] * (Order - j) / ((2.0 * Order - j) * (j + 1));
        }

        return c;
    }

    private static double[,] Pade(double[,] a)
    {
        int n = a.GetLength(0);
        double[,] square = Times(a, a);
        double[,] power = Identity(n);
        double[,] even = new double[n, n];
        double[,] oddFactor = new double[n, n];
        for (int j = 0; j <= Order; j += 2)
        {
            even = Combine(even, 1, power, Quotient[j]);
            oddFactor = Combine(oddFactor, 1, power, Quotient[j + 1]);
            power = Times(power, square);
        }

        double[,] odd = Times(a, oddFactor);
        return Solve(Combine(even, 1, odd, -1), Combine(even, 1, odd, 1));
    }

    private static double Norm(double[,] a)
    {
        double most = 0;
        for (int j = 0; j < a.GetLength(1); j++)
        {
            double sum = 0;
            for (int i = 0; i < a.GetLength(0); i++)
            {
                sum += Math.Abs(a[i, j]);
            }

            most = sum > most || double.IsNaN(sum) ? sum : most;
        }

        return most;
    }

    private static double[,] Identity(int n)
    {
        double[,] one = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            one[i, i] = 1;
        }

        return one;
    }

    private static double[,] Combine(double[,] a, double byA, double[,] b, double byB)
    {
        int n = a.GetLength(0);
        double[,] sum = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                sum[i, j] = byA * a[i, j] + byB * b[i, j];
            }
        }

        return sum;
    }

    private static double[,] Times(double[,] a, double[,] b)
    {
        int n = a.GetLength(0);
        double[,] product = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < n; k++)
            {
                for (int j = 0; j < n; j++)
                {
                    product[i, j] += a[i, k] * b[k, j];
                }
            }
        }

        return product;
    }

    private static double[,] Solve(double[,] left, double[,] right) =>
        MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseOfArray(left)
            .Solve(MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseOfArray(right)).ToArray();
}
