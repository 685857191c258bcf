using MathNet.Numerics.Distributions;

namespace Heatwright.Numerics;

/// <summary>Figures that say whether a larger model earned its further parameters.</summary>
public static class InformationCriteria
{
    /// <summary>Akaike's criterion for small samples, n·ln(RSS/n) + 2κ + 2κ(κ + 1)/(n − κ − 1), κ = parameters + 1 for the variance.</summary>
    /// <remarks>Hurvich and Tsai, Biometrika 76 (1989) 297; Burnham and Anderson, Model Selection and Multimodel Inference (2002).
    /// Smaller is better; positive infinity where there are too few readings for the correction.</remarks>
    public static double Aicc(double residualSumOfSquares, int count, int parameters)
    {
        double kappa = parameters + 1;
        return count - kappa - 1 > 0
            ? (count * Math.Log(residualSumOfSquares / count)) + (2 * kappa) + (2 * kappa * (kappa + 1) / (count - kappa - 1))
            : double.PositiveInfinity;
    }

    /// <summary>F = ((RSS₁ − RSS₂)/(k₂ − k₁)) / (RSS₂/(n − k₂)) of a small model inside a larger one, and the chance of an F so large.</summary>
    public static (double F, double P) NestedF(
        double smallSumOfSquares, int smallParameters, double largeSumOfSquares, int largeParameters, int count)
    {
        int gained = largeParameters - smallParameters, left = count - largeParameters;
        if (gained <= 0 || left <= 0)
        {
            throw new ArgumentException("The larger model needs more parameters than the smaller one and fewer than there are readings.");
        }

        double f = (smallSumOfSquares - largeSumOfSquares) / gained / (largeSumOfSquares / left);
        return (f, f > 0 ? UpperTail(f, gained, left) : 1);
    }

    /// <summary>The F that chance alone exceeds with the given probability.</summary>
    public static double CriticalF(double probability, int gained, int left) => FisherSnedecor.InvCDF(gained, left, 1 - probability);

    /// <summary>Σ(eᵢ − eᵢ₋₁)²/Σeᵢ²: 2 for independent residuals, near 0 where neighbours resemble each other.</summary>
    /// <remarks>Durbin and Watson, Biometrika 37 (1950) 409.</remarks>
    public static double DurbinWatson(ReadOnlySpan<double> residuals)
    {
        var steps = new double[Math.Max(0, residuals.Length - 1)];
        for (int i = 0; i < steps.Length; i++)
        {
            steps[i] = residuals[i + 1] - residuals[i];
        }

        return CompensatedSum.OfProducts(steps, steps) / CompensatedSum.OfProducts(residuals, residuals);
    }

    /// <summary>Σeᵢeᵢ₋₁/Σeᵢ²: correlation of neighbouring residuals about zero.</summary>
    public static double Lag1(ReadOnlySpan<double> residuals) => residuals.Length < 2 ? double.NaN
        : CompensatedSum.OfProducts(residuals[1..], residuals[..^1]) / CompensatedSum.OfProducts(residuals, residuals);

    // The complement is taken inside the beta function: 1 − CDF would lose every digit of a small probability.
    private static double UpperTail(double f, int gained, int left) =>
        MathNet.Numerics.SpecialFunctions.BetaRegularized(0.5 * left, 0.5 * gained, left / (left + (gained * f)));
}
