using Heatwright.Numerics;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Readings of the worked warm-up: invented with a known truth, 12 W from 0 to 300 s, air 24 °C, rounded to 0.1 °C, noise 1.2 °C.</summary>
internal static class WorkedWarmUp
{
    public const double AirC = 24, PowerW = 12, OffS = 300;

    /// <summary>Every 15 s from 15 to 600 s; the first point at 0 s is not used.</summary>
    public static readonly double[] ReadC =
    [
        35.5, 53.0, 81.4, 97.7, 117.8, 134.1, 149.1, 166.2, 176.8, 193.0, 205.7, 215.3, 226.1, 238.0, 247.4, 254.0, 261.8, 273.7, 278.9, 284.9,
        277.7, 263.2, 248.0, 233.0, 219.0, 209.0, 195.0, 181.2, 172.8, 160.0, 152.0, 143.9, 137.4, 127.3, 121.6, 115.3, 107.3, 102.9, 99.1, 93.1,
    ];

    /// <summary>Fits a unit step response with parameters p (p₀ = K) to all readings.</summary>
    public static LeastSquaresFit Fit(Func<double[], double, double> unitStepKPerW, params double[] start) => LeastSquares.Fit(new LeastSquaresProblem(
        (p, residuals) =>
        {
            double[] at = p.ToArray();
            for (int i = 0; i < ReadC.Length; i++)
            {
                residuals[i] = AirC + PowerHistory.RiseK(t => unitStepKPerW(at, t), [(0, PowerW), (OffS, 0)], 15.0 * (i + 1)) - ReadC[i];
            }
        },
        ReadC.Length,
        start)
    {
        Lower = [.. start.Select(_ => 1e-3)],
        Upper = [.. start.Select(value => 100 * value)],
    });

    public static double OneNode(double[] p, double t) => p[0] * (1 - Math.Exp(-t / p[1]));

    public static double Delayed(double[] p, double t) => TwoNodeTool.DelayedRiseK(p[0], p[1], p[2], 1, t);

    public static double TwoNodes(double[] p, double t) => TwoNodeTool.TipRiseK(p[0], p[1], p[2], 1, t);
}

/// <summary>Standard doubt of anything computed from fitted parameters: slopes by differences, covariance from the fit.</summary>
internal static class Delta
{
    public static (double Value, double Doubt) Of(LeastSquaresFit fit, Func<double[], double> told)
    {
        int n = fit.Parameters.Length;
        double[] slope = new double[n];
        for (int j = 0; j < n; j++)
        {
            double step = 1e-5 * Math.Abs(fit.Parameters[j]);
            double[] up = [.. fit.Parameters], down = [.. fit.Parameters];
            up[j] += step;
            down[j] -= step;
            slope[j] = (told(up) - told(down)) / (2 * step);
        }

        double variance = 0;
        for (int j = 0; j < n; j++)
        {
            for (int k = 0; k < n; k++)
            {
                variance += slope[j] * slope[k] * fit.Covariance[j, k];
            }
        }

        return (told(fit.Parameters), Math.Sqrt(variance * fit.ReducedChiSquare));
    }
}
