namespace Heatwright.Numerics;

/// <summary>How well what follows from fitted parameters is known: their covariance, carried on by slopes (propagation of uncertainty, JCGM 100:2008, 5.2.2).</summary>
public static class FitBand
{
    /// <summary>Covariance of two values, slopesᵢ·covariance·slopesⱼᵀ.</summary>
    /// <param name="slopes">Slopes of the values on the parameters, a row each.</param>
    /// <param name="i">The one.</param>
    /// <param name="j">The other.</param>
    /// <param name="covariance">Of the parameters; a parameter that moves a value in nothing counts for nothing, however little is known of it.</param>
    /// <returns>Infinite where an undetermined parameter moves both.</returns>
    public static double Form(double[,] slopes, int i, int j, double[,] covariance)
    {
        double sum = 0;
        for (int a = 0; a < covariance.GetLength(0); a++)
        {
            for (int b = 0; b < covariance.GetLength(0); b++)
            {
                sum += slopes[i, a] == 0 || slopes[j, b] == 0 ? 0 : slopes[i, a] * covariance[a, b] * slopes[j, b];
            }
        }

        return sum;
    }

    /// <summary>Standard doubt of one value; of a residual in the doubts by which it was divided.</summary>
    /// <inheritdoc cref="Form"/>
    public static double At(double[,] slopes, int i, double[,] covariance) => Math.Sqrt(Math.Max(0, Form(slopes, i, i, covariance)));
}
