using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>What the scatter of the readings leaves open in the values that a fit tells.</summary>
internal static class FitScatter
{
    /// <summary>With fewer degrees of freedom than this a misfit that is no more than luck would widen a doubt several times: it has to be rarer there.</summary>
    private const int Few = 3;

    /// <summary>Values in SI with their doubts from scatter and from the shared errors of the instruments.</summary>
    /// <remarks>Where the readings' own doubts are known and explain the misfit, they stand; where the misfit is larger than chance allows, or where they are
    /// not known, its own size takes their place, with the degrees of freedom that it has. Rows of a log that err alike tell less than their number:
    /// the variance grows by (1 + r)/(1 − r), r the correlation of what is left over with its neighbour, where that is beyond chance (a first-order process, from memory).</remarks>
    public static Values Of(TrialSheet sheet, BenchFit.Solved best)
    {
        if (sheet.Shared.Count > 0)
        {
            return SharedFit.Of(sheet, best);
        }

        var told = best.Model.Tells;
        double scale = Scale(sheet, best, best.Rss);
        return Told(sheet, best, [.. told.Select(t => t.Si(sheet, best.P))], Slopes(p => [.. told.Select(t => t.Si(sheet, p))], best.P), Times(best.Covariance, scale), best.P.Length, Alike(best.Left), Owns(sheet, best, scale));
    }

    /// <summary>What a fit tells.</summary>
    /// <param name="Si">Values in SI.</param>
    /// <param name="Doubts">Their doubts per cause.</param>
    /// <param name="Scatter">Standard doubt from scatter alone.</param>
    /// <param name="Degrees">Degrees of freedom behind it.</param>
    internal sealed record Values(double[] Si, Doubts[] Doubts, double[] Scatter, double Degrees);

    /// <summary>By how much the misfit widens the readings' own doubts: 1 where those explain it.</summary>
    public static double Scale(TrialSheet sheet, BenchFit.Solved best, double sum) =>
        best.Free > 0 && (!Known(sheet, best) || ChiSquare.ShareAbove(sum, best.Free) < (best.Free < Few ? 0.03 : 0.15)) ? sum / best.Free : 1;

    /// <summary>Degrees of freedom of the scatter; infinite where the readings' own doubts stand.</summary>
    public static double Owns(TrialSheet sheet, BenchFit.Solved best, double scale) => best.Free > 0 && (!Known(sheet, best) || scale != 1) ? best.Free : double.PositiveInfinity;

    private static bool Known(TrialSheet sheet, BenchFit.Solved best) => sheet.Own(best.Model.Y).Any(u => u > 0) || best.Model.Doubt is not null || best.Model.X.Any(x => sheet.Own(x).Any(u => u > 0));

    /// <summary>By how much rows that err alike widen the variance.</summary>
    public static double Alike(double[] left)
    {
        double r = left.Length >= 20 ? InformationCriteria.Lag1(left) : 0;
        return r > 2 / Math.Sqrt(left.Length) ? (1 + Math.Min(r, 0.98)) / (1 - Math.Min(r, 0.98)) : 1;
    }

    /// <summary>Doubts from a covariance of open numbers and, after them, of the shared errors.</summary>
    public static Values Told(TrialSheet sheet, BenchFit.Solved best, double[] values, double[,] slopes, double[,] covariance, int open, double alike, double degrees)
    {
        int count = values.Length, errors = covariance.GetLength(0) - open;
        degrees = double.IsInfinity(degrees) ? degrees : Math.Max(1, degrees / alike);

        // Few degrees of freedom: the same 95 % limits, told as a standard doubt.
        double few = degrees < 10 ? Coverage.Factor(0.95, Math.Max(1, degrees)) / Coverage.Factor(0.95, double.PositiveInfinity) : 1;
        double[,] pushes = new double[count, errors], scatter = new double[count, count];
        for (int i = 0; i < count; i++)
        {
            for (int k = 0; k < errors; k++)
            {
                // What cancels but for rounding has cancelled.
                double push = -Row(slopes, i, covariance, open + k);
                pushes[i, k] = double.IsFinite(push) && Math.Abs(push) > 1e-7 * Math.Sqrt(Math.Abs(FitBand.Form(slopes, i, i, covariance))) ? push : 0;
            }
        }

        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j < count; j++)
            {
                double form = FitBand.Form(slopes, i, j, covariance) - Enumerable.Range(0, errors).Sum(k => pushes[i, k] * pushes[j, k]);
                scatter[i, j] = double.IsFinite(form) ? alike * form : 0;
            }
        }

        var doubts = FitDoubts.FromCovariance(new TrialId(sheet.Card.Name), Times(scatter, few * few), Unit(count));
        var causes = SharedFit.Causes(sheet);
        for (int i = 0; i < count; i++)
        {
            for (int k = 0; k < errors; k++)
            {
                doubts[i] = doubts[i].With(causes[k], pushes[i, k]);
            }
        }

        double[] choice = new double[count];
        for (int i = 0; i < count; i++)
        {
            (double shift, choice[i]) = Choice(sheet, best, best.Model.Tells[i]);
            values[i] += shift;
        }

        return new(values, [.. doubts.Select((each, i) => each.With(Cause.Normal($"{sheet.Card.Name} choice of model", CauseGroup.Trial), choice[i]))],
            [.. Enumerable.Range(0, count).Select(i => Math.Sqrt(Math.Max(0, scatter[i, i]) + (choice[i] * choice[i])))], degrees);
    }

    /// <summary>A larger model that is not ruled out moves a value by how likely it is, and leaves that much open ([burnham-anderson-2002], averaging by weights).</summary>
    private static (double Shift, double Doubt) Choice(TrialSheet sheet, BenchFit.Solved best, Told told)
    {
        double all = 1 + best.Rivals.Sum(rival => rival.Likelihood), shift = 0, squares = 0, middle = told.Si(sheet, best.P);
        foreach (var (rival, likelihood) in best.Rivals)
        {
            double off = rival.Model.Tells.FirstOrDefault(each => each.Name == told.Name)?.Si(sheet, rival.P) - middle ?? 0;
            shift += double.IsFinite(off) ? likelihood / all * off : 0;
            squares += double.IsFinite(off) ? likelihood / all * off * off : 0;
        }

        return (shift, Math.Sqrt(Math.Max(0, squares - (shift * shift))));
    }

    private static double Row(double[,] slopes, int i, double[,] covariance, int column) =>
        Enumerable.Range(0, covariance.GetLength(0)).Sum(a => slopes[i, a] == 0 || covariance[a, column] == 0 ? 0 : slopes[i, a] * covariance[a, column]);

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
