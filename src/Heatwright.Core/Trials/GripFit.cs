using Heatwright.Numerics;
using Heatwright.Plant;

namespace Heatwright.Trials;

/// <summary>What reaches the grip, from its own readings, once the working end is known.</summary>
/// <remarks>At the working end, loss to the air and loss into a grip that stays cold look alike; fitted together, a shank that is no lump of the
/// model would decide between them. So the end is fitted first, with one linear loss, and only the grip's readings say what share of it goes
/// into the grip. Where the grip gets warm beside the end, both are taken in turn. Heat capacity and loss of a grip carry priors: hand-sized, 70 J/K within a factor of 1.5, and 0.18 W/K within 30 %
/// (bare handle 30 to 36 mm thick and 110 to 200 mm long in still air, 0.12 to 0.27 W/K, worked out with 12 W/(m²·K); common practice, no source).</remarks>
internal static class GripFit
{
    private const double DoubtK = 0.7;

    /// <summary>The findings with the grip's three numbers; unchanged where the grip was not read.</summary>
    public static WarmUpFindings Add(IReadOnlyList<WarmUpLog> logs, WarmUpFindings end)
    {
        int readings = logs.Sum(log => log.GripC.Count(double.IsFinite));
        if (readings < 3)
        {
            return end;
        }

        double[] start = [-1, Math.Log(70), Math.Log(0.18)];
        var fit = LeastSquares.Fit(new LeastSquaresProblem((p, r) => Residuals(logs, end, p, r), logs.Sum(log => log.TimesS.Length), start)
        {
            PriorMean = start,
            PriorDoubt = [1, 0.4, 0.3],
            Lower = [-7, start[1] - 3, start[2] - 2],
            Upper = [4, start[1] + 3, start[2] + 2],
            MaxIterations = 40,
            Jacobian = (p, slopes) => Slopes(logs, end, p, slopes),
        });
        double scale = Math.Max(1, fit.ResidualSumOfSquares / Math.Max(1, readings - 3));
        return With(end, fit.Parameters) with { Searched = [.. end.Searched, "grip link", "grip heat capacity", "grip loss"], LogCovariance = Joined(end, fit, scale) };
    }

    /// <param name="end">Findings of the working end alone.</param>
    /// <param name="p">Logit of the grip's share of the linear loss, logarithm of its heat capacity, logarithm of its loss.</param>
    private static WarmUpFindings With(WarmUpFindings end, ReadOnlySpan<double> p) => With(end, Share(p[0]), Math.Exp(p[1]), Math.Exp(p[2]));

    /// <summary>An end whose linear loss goes into a grip by a share.</summary>
    internal static WarmUpFindings With(WarmUpFindings end, double share, double gripJPerK, double gripWPerK) => end with
    {
        LinearWPerK = end.LinearWPerK * (1 - share),
        GripLinkWPerK = end.LinearWPerK * share,
        GripHeatCapacityJPerK = gripJPerK,
        GripLossWPerK = gripWPerK,
    };

    private static double Share(double logit) => 1 / (1 + Math.Exp(-logit));

    private static void Residuals(IReadOnlyList<WarmUpLog> logs, WarmUpFindings end, ReadOnlySpan<double> p, Span<double> residuals)
    {
        var found = With(end, p);
        int at = 0;
        foreach (var log in logs)
        {
            double[] grip = WarmUpFit.Simulate(found, log)[1];
            for (int row = 0; row < log.TimesS.Length; row++)
            {
                residuals[at++] = double.IsFinite(log.GripC[row]) ? (grip[row] - 273.15 - log.GripC[row]) / DoubtK : 0;
            }
        }
    }

    private static void Slopes(IReadOnlyList<WarmUpLog> logs, WarmUpFindings end, ReadOnlySpan<double> p, Span<double> slopes)
    {
        var found = With(end, p);
        double share = Share(p[0]);
        ThermalTerm[] terms = [new(ThermalQuantity.LinearLoss), new(ThermalQuantity.Link), new(ThermalQuantity.HeatCapacity, 1), new(ThermalQuantity.LinearLoss, 1)];
        slopes.Clear();
        int at = 0;
        foreach (var log in logs)
        {
            var moved = WarmUpFit.SlopesOf(found, log, terms);
            for (int row = 0; row < log.TimesS.Length; row++, at += 3)
            {
                if (double.IsFinite(log.GripC[row]))
                {
                    var grip = moved.At(1, row);
                    slopes[at] = (((1 - share) * grip[1]) - (share * grip[0])) / DoubtK;
                    slopes[at + 1] = grip[2] / DoubtK;
                    slopes[at + 2] = grip[3] / DoubtK;
                }
            }
        }
    }

    /// <summary>Covariance of the logarithms of all searched quantities: those of the end, then link, heat capacity and loss of the grip.</summary>
    private static double[,] Joined(WarmUpFindings end, LeastSquaresFit fit, double scale)
    {
        int n = end.Searched.Count;
        int loss = end.Searched.ToList().IndexOf("linear loss");
        double share = Share(fit.Parameters[0]);
        double[,] slopes = new double[n + 3, n + 3];
        for (int i = 0; i < n + 3; i++)
        {
            slopes[i, i] = 1;
        }

        slopes[loss, n] = -share;    // d ln(G(1 − s)) / d logit
        slopes[n, n] = 1 - share;    // d ln(G s) / d logit
        slopes[n, loss] = 1;         // the link is a share of the whole linear loss
        double[,] searched = new double[n + 3, n + 3];
        for (int i = 0; i < n + 3; i++)
        {
            for (int j = 0; j < n + 3; j++)
            {
                searched[i, j] = i < n && j < n ? end.LogCovariance[i, j] : i >= n && j >= n ? fit.Covariance[i - n, j - n] * scale : 0;
            }
        }

        double[,] covariance = new double[n + 3, n + 3];
        for (int v = 0; v < n + 3; v++)
        {
            for (int w = 0; w < n + 3; w++)
            {
                for (int a = 0; a < n + 3; a++)
                {
                    for (int b = 0; b < n + 3; b++)
                    {
                        covariance[v, w] += slopes[v, a] * searched[a, b] * slopes[w, b];
                    }
                }
            }
        }

        return covariance;
    }
}
