namespace Heatwright.Numerics;

/// <summary>The distribution of a sum of squared standard normal numbers.</summary>
public static class ChiSquare
{
    /// <summary>Share of the distribution above x: how often chance alone misfits at least so badly.</summary>
    public static double ShareAbove(double x, double degreesOfFreedom) => x <= 0
        ? 1
        : MathNet.Numerics.SpecialFunctions.GammaUpperRegularized(degreesOfFreedom / 2, x / 2);
}
