namespace Heatwright.Numerics;

/// <summary>The functions φ₁ and φ₂ of a plain number, and the share that a first-order rise has made, all without loss of digits near zero.</summary>
/// <remarks>For matrices see <see cref="ExponentialStep"/>. Checked: PhiTests.</remarks>
public static class Phi
{
    /// <summary>φ₁(z) = (e^z − 1)/z, with φ₁(0) = 1. Source: [hochbruck-2010].</summary>
    /// <remarks>Near zero the quotient loses all its digits, so the series Σ z^k/(k + 1)! takes over.</remarks>
    public static double One(double z) => Math.Abs(z) < 1 ? Series(z, 1) : (Math.Exp(z) - 1) / z;

    /// <summary>φ₂(z) = (φ₁(z) − 1)/z, with φ₂(0) = 1/2. Source: [hochbruck-2010].</summary>
    public static double Two(double z) => Math.Abs(z) < 1 ? Series(z, 2) : (One(z) - 1) / z;

    /// <summary>1 − e^(−x) without loss of digits for small x: the share of its end value that a first-order rise has made.</summary>
    public static double RisenShare(double x) => double.IsPositiveInfinity(x) ? 1 : x * One(-x);

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
}
