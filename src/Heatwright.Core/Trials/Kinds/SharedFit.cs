using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>The last step of a fit: gains and offsets of the instruments become unknowns of their own, each known beforehand to lie inside what the instrument promises.</summary>
/// <remarks>Least squares over open numbers p and shared errors e together, with e as further readings of nothing, each with its standard size (generalised least squares,
/// [jcgm-102] 6 for the covariance). Where the readings say something of an error, such as the zero of a meter in a law through nothing, the numbers and their doubts take it in;
/// where they say nothing it stays as wide as promised. So few readings that finding an error leaves nothing over to see their scatter by are not asked for it: what looks like the
/// zero of a meter in two readings may as well be a part that warms; every error then stands as promised, and the misfit is scatter. The estimate's error is H·Aᵀ·(noise; −e): so each error keeps its own push, and what it shares with other trials stays shared.</remarks>
internal static class SharedFit
{
    /// <summary>What an error takes over is no misfit any more, so the misfit gets smaller and the readings speak louder, until neither moves.</summary>
    private const int Passes = 8;

    /// <summary>Degrees of freedom that have to be left once the errors were found.</summary>
    private const double Over = 0.5;

    /// <summary>Readings that lie on the law to the last digit leave over nothing to measure by.</summary>
    private const double Least = 1e-12;

    /// <summary>Values in SI, their doubts, the part from scatter, and the degrees of freedom behind that part.</summary>
    public static FitScatter.Values Of(TrialSheet sheet, BenchFit.Solved best)
    {
        var model = best.Model;
        var causes = Causes(sheet);
        int count = best.P.Length, errors = causes.Length;
        var (fit, left, size) = Fit(sheet, best);

        // Two columns read on one meter are moved together: one error, one unknown.
        TrialSheet[] moved = [.. causes.Select(cause => Moved(sheet, cause))];
        double[] p = fit.Parameters[..count], e = fit.Parameters[count..];
        double[,] covariance = fit.Covariance;
        double found = Enumerable.Range(count, errors).Sum(k => 1 - covariance[k, k]);
        if (best.Free > 0 && best.Free - found < Over)
        {
            size = FitScatter.Scale(sheet, best, best.Rss);
            (p, e, left, covariance) = (best.P, new double[errors], best.Left, AsPromised(best, moved, size));
        }

        var told = model.Tells;
        double[] values = [.. told.Select(t => t.Si(sheet, p))];
        double[,] slopes = new double[told.Count, count + errors], open = FitScatter.Slopes(at => [.. told.Select(t => t.Si(sheet, at))], p);
        for (int i = 0; i < told.Count; i++)
        {
            double middle = values[i];
            for (int j = 0; j < count; j++)
            {
                slopes[i, j] = open[i, j];
            }

            for (int k = 0; k < errors; k++)
            {
                slopes[i, count + k] = middle - told[i].Si(moved[k], p);
                values[i] += slopes[i, count + k] * e[k];
            }
        }

        return FitScatter.Told(sheet, best, values, slopes, covariance, count, FitScatter.Alike(left), FitScatter.Owns(sheet, best, size));
    }

    /// <summary>Covariance of the open numbers and, after them, of errors of which the readings are not asked: each moves the fit by what it moves the readings.</summary>
    private static double[,] AsPromised(BenchFit.Solved best, TrialSheet[] moved, double size)
    {
        int count = best.P.Length, errors = moved.Length;
        double[][] shifts = [.. moved.Select(sheet => best.P.Zip(BenchFit.Solve(best.Model, sheet, best.P).P, (at, to) => at - to).ToArray())];
        double[,] all = new double[count + errors, count + errors];
        for (int a = 0; a < count; a++)
        {
            for (int b = 0; b < count; b++)
            {
                all[a, b] = (size * best.Covariance[a, b]) + shifts.Sum(shift => shift[a] * shift[b]);
            }

            for (int k = 0; k < errors; k++)
            {
                (all[a, count + k], all[count + k, a]) = (shifts[k][a], shifts[k][a]);
            }
        }

        for (int k = 0; k < errors; k++)
        {
            all[count + k, count + k] = 1;
        }

        return all;
    }

    /// <summary>A model as it is to be judged beside others: by what it leaves over once the shared errors of the instruments had their say. A thermometer that reads 1 % high bends no curve,
    /// but what it leaves over would hide a second body.</summary>
    public static BenchFit.Solved Judged(TrialSheet sheet, BenchFit.Solved solved)
    {
        if (sheet.Shared.Count == 0)
        {
            return solved;
        }

        var (fit, left, size) = Fit(sheet, solved);
        int count = solved.P.Length;
        double[,] covariance = new double[count, count];
        for (int a = 0; a < count; a++)
        {
            for (int b = 0; b < count; b++)
            {
                covariance[a, b] = fit.Covariance[a, b] / size; // as of readings that are as good as they say
            }
        }

        return solved with { P = fit.Parameters[..count], Covariance = covariance, Left = left, Rss = left.Sum(r => r * r) + fit.Parameters.Skip(count).Sum(e => e * e * size) };
    }

    private static (LeastSquaresFit Fit, double[] Left, double Size) Fit(TrialSheet sheet, BenchFit.Solved best)
    {
        var model = best.Model;
        int count = best.P.Length;
        double[][] pulls = Pulls(sheet, best, Causes(sheet));
        double size = Math.Max(Least, FitScatter.Scale(sheet, best, best.Rss));
        LeastSquaresFit? fit = null;
        double[] left = best.Left;
        for (int pass = 0; pass < Passes; pass++)
        {
            double root = Math.Sqrt(size), before = size;
            fit = LeastSquares.Fit(Problem(sheet, best, pulls, root));
            left = [.. fit.Residuals.Select(r => r * root)];
            size = Math.Max(Least, FitScatter.Scale(sheet, best, left.Sum(r => r * r) + fit.Parameters.Skip(count).Sum(e => e * e * size)));
            if (Math.Abs(size - before) <= 0.01 * before)
            {
                break;
            }
        }

        return (fit!, left, size);
    }

    /// <summary>By how much each cause moves what the fit leaves over, for one standard size of it. It is worked out on the law, not on the readings: a gain acts on their noise too,
    /// and noise times the same noise has a mean, which would pull the gain to one side.</summary>
    private static double[][] Pulls(TrialSheet sheet, BenchFit.Solved best, Cause[] causes)
    {
        var model = best.Model;
        double[] law = model.Predict(sheet, best.P);
        var onLaw = sheet.With(model.Y, law, sheet.Own(model.Y));

        // What is worked out from other columns is worked out from their readings all the same.
        var from = onLaw.Redone()[model.Y].SequenceEqual(law) ? onLaw : sheet;
        double[] left = Left(model, from, best.P, best.Doubt);
        return [.. causes.Select(cause => Left(model, Moved(from, cause), best.P, best.Doubt).Zip(left, (a, b) => a - b).ToArray())];
    }

    /// <summary>The causes behind the shared errors, each once.</summary>
    public static Cause[] Causes(TrialSheet sheet) => [.. sheet.Shared.Select(error => error.Cause).DistinctBy(cause => cause.Id)];

    /// <summary>The sheet as it would read if one cause had one standard size, in all columns that it acts on.</summary>
    public static TrialSheet Moved(TrialSheet sheet, Cause cause) => sheet.Shared.Where(error => error.Cause.Id == cause.Id).Aggregate(sheet, (at, error) => at.Moved(error));

    private static LeastSquaresProblem Problem(TrialSheet sheet, BenchFit.Solved best, double[][] pulls, double root)
    {
        var model = best.Model;
        int count = best.P.Length, errors = pulls.Length;
        double[] Wide(double value) => [.. Enumerable.Repeat(value, count)];
        return new(
            (x, r) =>
            {
                double[] left = Left(model, sheet, x[..count].ToArray(), best.Doubt);
                for (int i = 0; i < r.Length; i++)
                {
                    double sum = left[i];
                    for (int k = 0; k < errors; k++)
                    {
                        sum -= pulls[k][i] * x[count + k];
                    }

                    r[i] = sum / root;
                }
            },
            best.Left.Length, [.. best.P, .. new double[errors]])
        {
            Lower = [.. model.Lower ?? Wide(double.NegativeInfinity), .. Enumerable.Repeat(double.NegativeInfinity, errors)],
            Upper = [.. model.Upper ?? Wide(double.PositiveInfinity), .. Enumerable.Repeat(double.PositiveInfinity, errors)],
            PriorMean = [.. model.Prior?.Mean ?? Wide(0), .. new double[errors]],
            PriorDoubt = [.. model.Prior?.Doubt ?? Wide(double.PositiveInfinity), .. Enumerable.Repeat(1.0, errors)],
            MaxIterations = 40,
        };
    }

    private static double[] Left(BenchModel model, TrialSheet sheet, double[] p, double[] doubt)
    {
        double[] modelled = model.Predict(sheet, p), y = sheet[model.Y];
        return [.. modelled.Select((value, i) => (value - y[i]) / doubt[i])];
    }
}
