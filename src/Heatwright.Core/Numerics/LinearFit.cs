namespace Heatwright.Numerics;

/// <summary>Result of a linear least-squares fit.</summary>
/// <param name="Coefficients">Best values, one a column of the design.</param>
/// <param name="Covariance">(AᵀA)⁻¹ of the weighed design: the covariance if the doubts given are right.</param>
/// <param name="Residuals">Reading less fit, divided by the doubt where doubts were given.</param>
/// <param name="ResidualSumOfSquares">Of those residuals.</param>
/// <param name="DegreesOfFreedom">Readings less coefficients.</param>
/// <param name="Leverages">How far each reading pulls its own fit, from 0 to 1; they add up to the number of coefficients.</param>
public sealed record LinearFit(
    double[] Coefficients,
    double[,] Covariance,
    double[] Residuals,
    double ResidualSumOfSquares,
    int DegreesOfFreedom,
    double[] Leverages)
{
    /// <summary>Scatter of the residuals; not a number without degrees of freedom.</summary>
    public double ResidualStandardDeviation =>
        DegreesOfFreedom > 0 ? Math.Sqrt(ResidualSumOfSquares / DegreesOfFreedom) : double.NaN;

    /// <summary>Standard errors if the doubts given are right.</summary>
    public double[] UnscaledErrors => [.. Enumerable.Range(0, Coefficients.Length).Select(j => Math.Sqrt(Covariance[j, j]))];

    /// <summary>Standard errors with the size of the doubts taken from the scatter itself.</summary>
    public double[] StandardErrors => [.. UnscaledErrors.Select(error => error * ResidualStandardDeviation)];
}
