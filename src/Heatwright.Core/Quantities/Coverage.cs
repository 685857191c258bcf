using Heatwright.Numerics;

namespace Heatwright.Quantities;

/// <summary>From a standard doubt to limits that hold with a stated share.</summary>
public static class Coverage
{
    /// <summary>Degrees of freedom of a combined doubt: u⁴ / Σ(uᵢ⁴/νᵢ) (Welch–Satterthwaite, [jcgm-100] G.4.1).</summary>
    /// <param name="parts">Standard doubts and their degrees of freedom; infinite for what is known well.</param>
    public static double EffectiveDegrees(IEnumerable<(double StandardDoubt, double Degrees)> parts)
    {
        double variance = 0;
        double sum = 0;
        foreach (var (doubt, degrees) in parts)
        {
            variance += doubt * doubt;
            sum += double.IsInfinity(degrees) ? 0 : Math.Pow(doubt, 4) / degrees;
        }

        return sum == 0 ? double.PositiveInfinity : variance * variance / sum;
    }

    /// <summary>Degrees of freedom of doubts kept per cause; causes that are not of a t shape count as known well.</summary>
    /// <remarks>A t cause carries its full standard deviation, which is √(ν/(ν−2)) of the doubt that [jcgm-100] would state.</remarks>
    public static double EffectiveDegrees(Doubts doubts) => EffectiveDegrees(doubts.Pushes.Select(push => push.Cause.Shape is Shape.StudentT t
        ? (push.By * Math.Sqrt((t.DegreesOfFreedom - 2.0) / t.DegreesOfFreedom), (double)t.DegreesOfFreedom)
        : (push.By, double.PositiveInfinity)));

    /// <summary>Factor on the standard doubt for limits that hold with this share, degrees of freedom cut down to a whole number ([jcgm-100] G.4.1).</summary>
    /// <param name="share">For example 0.95.</param>
    /// <param name="degrees">At least 1.</param>
    public static double Factor(double share, double degrees)
    {
        if (!(share is > 0 and < 1) || !(degrees >= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share lies between 0 and 1, and at least 1 degree of freedom is needed.");
        }

        double p = (1 + share) / 2;
        return double.IsInfinity(degrees) ? Quantiles.Normal(p) : Quantiles.StudentT(p, Math.Floor(degrees));
    }

    /// <summary>Distance of two results against their limits taken together, |a − b| / √(U₁² + U₂²): up to 1 they agree.</summary>
    /// <param name="a">First result.</param>
    /// <param name="limitA">Its limits either side, at a stated share.</param>
    /// <param name="b">Second result, read independently.</param>
    /// <param name="limitB">Its limits at the same share.</param>
    public static double Distance(double a, double limitA, double b, double limitB) =>
        Math.Abs(a - b) / Math.Sqrt((limitA * limitA) + (limitB * limitB));
}
