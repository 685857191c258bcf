using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Values that are read off or summed over the readings, without a law between them.</summary>
internal static class ReadOff
{
    /// <summary>Beyond so many readings, neighbours are pushed together: the sum of the squares stays the same where they count alike.</summary>
    private const int Singly = 400;

    /// <summary>Findings whose doubts come from each reading's own doubt, one by one, and from the shared errors of the instruments.</summary>
    /// <param name="sheet">The readings.</param>
    /// <param name="columns">Columns whose readings have doubts of their own.</param>
    /// <param name="values">Name, unit, how it is worked out in SI, and a standard doubt beside, in SI.</param>
    public static TrialFinding[] Of(TrialSheet sheet, string[] columns, params (string Name, Unit Unit, Func<TrialSheet, double> Si, double Beside)[] values)
    {
        var origin = new Origin.Fitted(new TrialId(sheet.Card.Name), [new RunId(sheet.Card.Name)]);
        double[] middle = [.. values.Select(value => value.Si(sheet))], own = [.. values.Select(value => value.Beside * value.Beside)];
        foreach (string column in columns.Where(sheet.Has))
        {
            double[] x = sheet[column], u = Flickering(sheet, column);
            int together = Math.Max(1, (x.Length + Singly - 1) / Singly);
            for (int from = 0; from < x.Length; from += together)
            {
                int to = Math.Min(from + together, x.Length);
                double[] pushed = [.. x.Select((value, i) => i >= from && i < to ? value + u[i] : value)];
                var moved = u[from] == 0 ? sheet : sheet.With(column, pushed, u).Redone();
                for (int k = 0; k < values.Length && u[from] != 0; k++)
                {
                    own[k] += Square(Finite(values[k].Si(moved) - middle[k])) / (to - from);
                }
            }
        }

        var causes = SharedFit.Causes(sheet);
        TrialSheet[] all = [.. causes.Select(cause => SharedFit.Moved(sheet, cause))];
        return [.. values.Select((value, k) =>
        {
            var doubts = Doubts.From(Cause.Normal($"{sheet.Card.Name} {value.Name} scatter", CauseGroup.Trial), Math.Sqrt(own[k]));
            for (int i = 0; i < causes.Length; i++)
            {
                doubts = doubts.With(causes[i], Finite(value.Si(all[i]) - middle[k]));
            }

            return new TrialFinding(value.Name, new Estimate(value.Unit.FromSi(middle[k]), value.Unit, doubts.Times(1 / value.Unit.Factor), origin), Math.Sqrt(own[k]) / value.Unit.Factor, double.PositiveInfinity);
        })];
    }

    /// <summary>A log without the readings that stand alone: far off the line between both their neighbours, which agree with each other.</summary>
    public static (TrialSheet Sheet, List<TrialRemark> Remarks) WithoutSlips(TrialSheet sheet, params string[] columns)
    {
        List<TrialRemark> remarks = [];
        HashSet<int> out1 = [];
        foreach (string column in columns.Where(column => sheet.Has(column) && sheet.Count >= 8))
        {
            double[] x = sheet[column], off = FromNeighbours(sheet, column);
            double usual = Math.Max(Spread(off), 2 * sheet.Own(column).Max());
            for (int i = 1; i < x.Length - 1; i++)
            {
                double far = Math.Abs(off[i]), beside = Math.Abs(x[i + 1] - x[i - 1]);
                // Beside one slip both neighbours lie off to the other side; over a peak that is round they bend the same way.
                bool round = off[i - 1] * off[i] > far * far / 4 || off[i + 1] * off[i] > far * far / 4;
                if (far > 12 * usual && far > 4 * beside && !round && far >= Math.Abs(off[i - 1]) && far >= Math.Abs(off[i + 1]) && far > 0.02 * Math.Abs(x[i - 1]))
                {
                    out1.Add(i);
                    remarks.Add(new(sheet.Numbers[i], "S23", "E", FormattableString.Invariant($"{column} {x[i]:G4} stands alone between {x[i - 1]:G4} and {x[i + 1]:G4}."), "Look at the clip, the range and the unit of this reading.") { LeftOut = true });
                }
            }
        }

        return (out1.Count == 0 || out1.Count > sheet.Count / 10 ? sheet : sheet.Rows([.. Enumerable.Range(0, sheet.Count).Where(i => !out1.Contains(i))]), out1.Count > sheet.Count / 10 ? [] : remarks);
    }

    /// <summary>Own doubts of a column, as large as its readings scatter about the line between their neighbours where that is more, half as much again at most: a display flickers before it rounds, and the bend of a curve is no flicker.</summary>
    private static double[] Flickering(TrialSheet sheet, string column)
    {
        double[] own = sheet.Own(column);
        double seen = sheet.Count >= 12 && sheet.Has("time") ? Spread(FromNeighbours(sheet, column)) / Math.Sqrt(1.5) : 0;
        return [.. own.Select(u => u > 0 ? Math.Clamp(seen, u, 1.5 * u) : 0)];
    }

    private static double[] FromNeighbours(TrialSheet sheet, string column)
    {
        double[] t = sheet["time"], x = sheet[column];
        return [.. x.Select((value, i) => i == 0 || i == x.Length - 1 ? 0 : value - (x[i - 1] + ((x[i + 1] - x[i - 1]) * (t[i] - t[i - 1]) / Math.Max(1e-300, t[i + 1] - t[i - 1]))))];
    }

    private static double Spread(double[] off) => off.Length < 3 ? 0 : Sample.Median([.. off[1..^1].Select(Math.Abs)]) / Quantiles.Normal(0.75);

    private static double Finite(double value) => double.IsFinite(value) ? value : 0;

    private static double Square(double value) => value * value;
}
