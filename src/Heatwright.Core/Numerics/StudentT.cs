namespace Heatwright.Numerics;

/// <summary>Student's t distribution: a mean of few readings.</summary>
public static class StudentT
{
    /// <summary>Share of the distribution below x.</summary>
    public static double ShareBelow(double x, double degreesOfFreedom) => MathNet.Numerics.Distributions.StudentT.CDF(0, 1, degreesOfFreedom, x);
}
