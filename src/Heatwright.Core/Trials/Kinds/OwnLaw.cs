using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>A number of a law that readings are to find.</summary>
/// <param name="Name">Its name in the law.</param>
/// <param name="Unit">Its unit; values are in SI, or in °C for a temperature.</param>
/// <param name="Start">A usual size.</param>
/// <param name="Low">Smallest that the law takes.</param>
/// <param name="High">Largest that the law takes.</param>
public sealed record SoughtNumber(string Name, Unit Unit, double Start, double Low, double High);

/// <summary>A law that a maker wants held against readings.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Result">Column that it explains.</param>
/// <param name="Inputs">Columns that it takes.</param>
/// <param name="Sought">Numbers to find.</param>
/// <param name="Value">The law: its result for named numbers; not a number where it has none.</param>
public sealed record OwnLaw(string Name, string Result, IReadOnlyList<string> Inputs, IReadOnlyList<SoughtNumber> Sought, Func<Func<string, double>, double> Value);

/// <summary>A maker's own trial: any law, some of its numbers read, the rest found.</summary>
internal static class OwnLawFit
{
    public static Checked<TrialAnswer> Run(TrialSheet read, OwnLaw law)
    {
        var sheet = read.Whole([law.Result, .. law.Inputs]);
        if (Curves.TooFew(sheet, law.Sought.Count, string.Join(", ", law.Inputs.Append(law.Result))) is { } few)
        {
            return new(few);
        }

        var place = law.Sought.Select((sought, j) => (sought.Name, j)).ToDictionary(pair => pair.Name, pair => pair.j, StringComparer.Ordinal);
        var columns = law.Inputs.ToHashSet(StringComparer.Ordinal);
        double[] Predict(TrialSheet s, double[] p) => [.. Enumerable.Range(0, s.Count).Select(row => law.Value(name =>
            place.TryGetValue(name, out int at) ? p[at] : columns.Contains(name) ? s[name][row] : s.Setting(name)))];
        double[] start = Start(sheet, law, Predict);
        if (Predict(sheet, start).Any(value => !double.IsFinite(value)))
        {
            return new(new Problem("The law has no answer for these readings.", law.Name, string.Join(", ", law.Sought.Select((sought, j) => string.Create(CultureInfo.InvariantCulture, $"{sought.Name} {start[j]:G3}"))), "readings inside what the law takes", "Look at the units and the settings; 'heatwright sum' says what the law takes."));
        }

        if (Tied(start, p => Predict(sheet, p)) is { Length: > 0 } tied)
        {
            string names = string.Join(" and ", tied.Select(j => law.Sought[j].Name));
            return new(new TrialAnswer(sheet.Card.Name, [], [$"These readings do not tell {names}: many values of them fit alike."])
            {
                Next = [$"Take readings at other {string.Join(" or ", law.Inputs)}, or say {(tied.Length > 1 ? "one of them" : "it")} with the run."],
            });
        }

        int[] all = [.. Enumerable.Range(0, start.Length)];
        var model = new BenchModel(law.Name, law.Result, [.. law.Inputs], _ => start, Predict, [.. law.Sought.Select((sought, j) => new Told(sought.Name, sought.Unit, (_, p) => sought.Unit.IsLevel ? p[j] + Units.ZeroCelsiusK : p[j]))])
        {
            Lower = [.. law.Sought.Select(sought => sought.Low)],
            Upper = [.. law.Sought.Select(sought => sought.High)],
            Further = Curves.Spread(all),
        };
        var answer = BenchFit.Run(sheet, model);
        string[] open = [.. answer.Findings.Where(finding => !(finding.Value.StandardDoubt < Math.Abs(finding.Value.Value))).Select(finding => finding.Name)];
        return new(answer with
        {
            Says = [.. answer.Says, string.Create(CultureInfo.InvariantCulture, $"What '{law.Name}' leaves over: {answer.Tried[0].Spread:G3} in the unit of {law.Result}{(answer.Tried[0].Rss > 4 * sheet.Count && sheet.Count > start.Length ? ", far more than the display's last digit. Is it the right law?" : ".")}")],
            Next = open.Length == 0 ? answer.Next : [.. answer.Next, $"These readings leave {string.Join(" and ", open)} open: take readings at other {string.Join(" or ", law.Inputs)}, or say it with the run."],
        });
    }

    /// <summary>Numbers whose change moves what is read just as changes of the others do, or not at all: no fit can tell them. By the slopes at a usual size, each freed of the others.</summary>
    private static int[] Tied(double[] at, Func<double[], double[]> predict)
    {
        const double Alike = 1e-6;
        double[][] slopes = [.. at.Select((value, j) =>
        {
            double step = 1e-4 * Math.Max(Math.Abs(value), 1e-9);
            double[] up = predict([.. at.Select((other, i) => i == j ? other + step : other)]), down = predict([.. at.Select((other, i) => i == j ? other - step : other)]);
            double[] slope = [.. up.Zip(down, (a, b) => (a - b) / 2)];
            double length = Math.Sqrt(slope.Sum(one => one * one));
            return slope.All(double.IsFinite) && length > 0 ? [.. slope.Select(one => one / length)] : slope;
        })];
        if (slopes.Any(slope => !slope.All(double.IsFinite)))
        {
            return [];
        }

        // Set last, what is left of a column across all the others stands at the end of the triangle.
        return [.. Enumerable.Range(0, at.Length).Where(j =>
        {
            double[] columns = [.. slopes.Where((_, i) => i != j).Append(slopes[j]).SelectMany(slope => slope)];
            return Math.Abs(new HouseholderQr(columns, slopes[j].Length, at.Length).R(at.Length - 1, at.Length - 1)) < Alike;
        })];
    }

    /// <summary>The usual size, or that times whole decades where the law lies nearer to the readings.</summary>
    private static double[] Start(TrialSheet sheet, OwnLaw law, Func<TrialSheet, double[], double[]> predict)
    {
        double[] best = [.. law.Sought.Select(sought => Math.Clamp(sought.Start, sought.Low, sought.High))];
        double Off(double[] p) => predict(sheet, p).Zip(sheet[law.Result], (a, b) => (a - b) * (a - b)).Sum() is var sum && double.IsFinite(sum) ? sum : double.PositiveInfinity;
        for (int pass = 0; pass < 2; pass++)
        {
            for (int j = 0; j < best.Length; j++)
            {
                best = Enumerable.Range(-6, 13).Select(decade => best.Select((value, i) => i == j ? Math.Clamp(value * Math.Pow(10, decade / (pass + 1.0)), law.Sought[j].Low, law.Sought[j].High) : value).ToArray()).MinBy(Off)!;
            }
        }

        return best;
    }
}
