namespace Heatwright.Numerics;

/// <summary>Where a least-squares search ended, and how well the parameters are known there.</summary>
/// <param name="Parameters">Best values found.</param>
/// <param name="Covariance">(JᵀJ)⁻¹ for residuals of unit doubt, priors included. Rows of a parameter at a bound or held fixed are zero;
/// a parameter that nothing determines has an infinite variance and no covariance.</param>
/// <param name="ResidualSumOfSquares">Of the residuals alone, without the priors.</param>
/// <param name="DegreesOfFreedom">Residuals and priors, less parameters that were not held fixed.</param>
/// <param name="Converged">Whether a minimum was reached.</param>
/// <param name="Why">Why the search ended, in a sentence.</param>
/// <param name="Iterations">Steps of the search.</param>
/// <param name="Residuals">At the best values, without the priors.</param>
public sealed record LeastSquaresFit(
    double[] Parameters,
    double[,] Covariance,
    double ResidualSumOfSquares,
    int DegreesOfFreedom,
    bool Converged,
    string Why,
    int Iterations,
    double[] Residuals)
{
    /// <summary>Sum of squares of the priors: (value − mean)² / doubt².</summary>
    public double PriorSumOfSquares { get; init; }

    /// <summary>Parameters that a bound stopped: their error and those of their correlated neighbours hold only with the bound in force.</summary>
    public bool[] AtBound { get; init; } = new bool[Parameters.Length];

    /// <summary>Parameters that the readings and priors leave open.</summary>
    public bool[] Undetermined { get; init; } = new bool[Parameters.Length];

    /// <summary>How often the residual function was called.</summary>
    public int Evaluations { get; init; }

    /// <summary>Slopes of the residuals at the best values, one row a residual.</summary>
    public double[,] Jacobian { get; init; } = new double[0, 0];

    /// <summary>Sum of squares, priors included, over the degrees of freedom; not a number without any.</summary>
    public double ReducedChiSquare =>
        DegreesOfFreedom > 0 ? (ResidualSumOfSquares + PriorSumOfSquares) / DegreesOfFreedom : double.NaN;

    /// <summary>Standard errors if the doubts of the residuals are right; not a number for a parameter at a bound.</summary>
    public double[] UnscaledErrors => [.. Enumerable.Range(0, Parameters.Length)
        .Select(j => AtBound[j] ? double.NaN : Math.Sqrt(Covariance[j, j]))];

    /// <summary>Standard errors with the size of the doubts taken from the misfit itself: unscaled ones times √(reduced χ²).</summary>
    public double[] StandardErrors => [.. UnscaledErrors.Select(error => error * Math.Sqrt(ReducedChiSquare))];

    /// <summary>Correlation of two parameters; not a number where one of them has no error.</summary>
    public double Correlation(int j, int k) =>
        Covariance[j, k] / (Math.Sqrt(Covariance[j, j]) * Math.Sqrt(Covariance[k, k]));
}
