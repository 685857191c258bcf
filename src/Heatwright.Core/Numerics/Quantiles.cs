
namespace Heatwright.Numerics;

/// <summary>Values below which a given share of a distribution lies.</summary>
public static class Quantiles
{
    /// <summary>Standard normal; p strictly between 0 and 1.</summary>
    public static double Normal(double p) => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, p);

    /// <summary>Student's t; p strictly between 0 and 1.</summary>
    public static double StudentT(double p, double degreesOfFreedom) =>
        MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, degreesOfFreedom, p);

    /// <summary>Share of the standard normal below x.</summary>
    public static double NormalShare(double x) => MathNet.Numerics.Distributions.Normal.CDF(0, 1, x);
}
