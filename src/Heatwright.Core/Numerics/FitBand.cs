namespace Heatwright.Numerics;

/// <summary>How well a fitted curve is known where it was fitted: the doubt of its parameters, carried to the curve by its slopes.</summary>
public static class FitBand
{
    /// <summary>Standard doubt of the curve at one residual, in the doubts by which that residual was divided: √(j·C·jᵀ), the propagation of uncertainty of JCGM 100:2008, 5.2.2.</summary>
    /// <param name="slopes">Slopes of the residuals, a row each.</param>
    /// <param name="row">The residual.</param>
    /// <param name="covariance">Of the parameters; a parameter that moves this residual in nothing counts for nothing, however little is known of it.</param>
    /// <returns>Infinite where an undetermined parameter moves it.</returns>
    public static double At(double[,] slopes, int row, double[,] covariance)
    {
        int count = covariance.GetLength(0);
        double sum = 0;
        for (int a = 0; a < count; a++)
        {
            for (int b = 0; b < count && slopes[row, a] != 0; b++)
            {
                sum += slopes[row, b] == 0 ? 0 : slopes[row, a] * slopes[row, b] * covariance[a, b];
            }
        }

        return Math.Sqrt(Math.Max(0, sum));
    }
}
