using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>What the scatter of the readings leaves open in the values that a fit tells.</summary>
internal static class FitScatter
{
    /// <summary>Values in SI, their doubts from scatter, the same as plain numbers, and the degrees of freedom behind them.</summary>
    /// <remarks>Where the readings' own doubts are known and explain the misfit, they stand; where the misfit is larger than chance allows, or where they are
    /// not known, its own size takes their place, with the degrees of freedom that it has. Rows of a log that err alike tell less than their number:
    /// the variance grows by (1 + r)/(1 − r), r the correlation of what is left over with its neighbour, where that is beyond chance (a first-order process, from memory).</remarks>
    public static (double[] Values, Doubts[] Doubts, double[] Scatter, double Degrees) Of(TrialSheet sheet, BenchFit.Solved best)
    {
        bool known = sheet.Own(best.Model.Y).Any(u => u > 0) || best.Model.Doubt is not null || best.Model.X.Any(x => sheet.Own(x).Any(u => u > 0));
        int free = best.Free;
        double misfit = free > 0 ? best.Rss / free : 1;
        bool own = free > 0 && (!known || ChiSquare.ShareAbove(best.Rss, free) < 0.1);
        double scale = own ? misfit : 1;
        double degrees = own ? free : double.PositiveInfinity;
        if (best.Left.Length >= 20)
        {
            double r = InformationCriteria.Lag1(best.Left);
            if (r > 2 / Math.Sqrt(best.Left.Length))
            {
                double alike = Math.Min(r, 0.98);
                scale *= (1 + alike) / (1 - alike);
                degrees = double.IsInfinity(degrees) ? degrees : Math.Max(1, degrees * (1 - alike) / (1 + alike));
            }
        }

        // Few degrees of freedom: the same 95 % limits, told as a standard doubt.
        double few = degrees < 10 ? Coverage.Factor(0.95, Math.Max(1, degrees)) / Coverage.Factor(0.95, double.PositiveInfinity) : 1;
        var told = best.Model.Tells;
        double[] values = [.. told.Select(t => t.Si(sheet, best.P))];
        double[,] slopes = Slopes(p => [.. told.Select(t => t.Si(sheet, p))], best.P);
        double[,] covariance = new double[told.Count, told.Count];
        for (int i = 0; i < told.Count; i++)
        {
            for (int j = 0; j < told.Count; j++)
            {
                double form = scale * Form(slopes, i, j, best.Covariance);
                covariance[i, j] = double.IsFinite(form) ? form : 0;
            }
        }

        double[] scatter = [.. Enumerable.Range(0, told.Count).Select(i => Math.Sqrt(Math.Max(0, covariance[i, i])))];
        var doubts = FitDoubts.FromCovariance(new TrialId(sheet.Card.Name), Times(covariance, few * few), Unit(told.Count));
        return (values, doubts, scatter, degrees);
    }

    /// <summary>Slopes of values on the open numbers, by central differences.</summary>
    public static double[,] Slopes(Func<double[], double[]> values, double[] p)
    {
        double[,] slopes = new double[values(p).Length, p.Length];
        for (int j = 0; j < p.Length; j++)
        {
            double step = p[j] == 0 ? 1e-6 : 1e-4 * Math.Abs(p[j]);
            double[] up = [.. p], down = [.. p];
            up[j] += step;
            down[j] -= step;
            double[] high = values(up), low = values(down);
            for (int i = 0; i < high.Length; i++)
            {
                slopes[i, j] = (high[i] - low[i]) / (2 * step);
            }
        }

        return slopes;
    }

    /// <summary>slopesᵢ·covariance·slopesⱼᵀ.</summary>
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

    private static double[,] Times(double[,] matrix, double factor)
    {
        double[,] times = (double[,])matrix.Clone();
        for (int i = 0; i < matrix.GetLength(0); i++)
        {
            for (int j = 0; j < matrix.GetLength(1); j++)
            {
                times[i, j] *= factor;
            }
        }

        return times;
    }

    private static double[,] Unit(int n)
    {
        double[,] unit = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            unit[i, i] = 1;
        }

        return unit;
    }
}
