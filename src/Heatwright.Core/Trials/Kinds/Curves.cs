using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Laws that many bench tests share: a mean, a line, a rise to a plateau.</summary>
internal static class Curves
{
    /// <summary>Times nearer to each other than this share are one: their difference divides.</summary>
    public const double Alike = 1e-6;

    private static readonly double[] Fourfold = [0.25, 4];

    public static Told Tell(string name, Unit unit, int j) => new(name, unit, (_, p) => p[j]);

    public static Told Tell(string name, Unit unit, Func<TrialSheet, double[], double> si) => new(name, unit, si);

    /// <summary>One value behind all readings of a column.</summary>
    public static BenchModel Mean(string y, params Told[] tells) => new("one value", y, [], sheet => [Sample.Median(sheet[y])],
        (sheet, p) => [.. Enumerable.Repeat(p[0], sheet.Count)], tells)
    {
        // Where a display shows the same every time, all readings were rounded alike: more of them tell no more of the last digit.
        Doubt = (sheet, _) => sheet[y].Max() - sheet[y].Min() > 1e-12 * Math.Abs(sheet[y][0]) ? sheet.Own(y) : [.. sheet.Own(y).Select(own => own * Math.Sqrt(sheet.Count))],
    };

    /// <summary>y = b·x.</summary>
    public static BenchModel Through(string name, string y, string x, params Told[] tells) => new(name, y, [x],
        sheet => [sheet[x].Zip(sheet[y], (a, b) => a * b).Sum() / Math.Max(1e-300, sheet[x].Sum(a => a * a))],
        (sheet, p) => [.. sheet[x].Select(a => p[0] * a)], tells);

    /// <summary>y = a + b·x.</summary>
    public static BenchModel Line(string name, string y, string x, params Told[] tells) => new(name, y, [x], sheet => Guess(sheet[x], sheet[y]),
        (sheet, p) => [.. sheet[x].Select(a => p[0] + (p[1] * a))], tells);

    /// <summary>y = a + b·x + c·x².</summary>
    public static BenchModel Bent(string name, string y, string x, params Told[] tells) => new(name, y, [x], sheet => [.. Guess(sheet[x], sheet[y]), 1e-3 * Sample.Mean(sheet[y]) / Math.Max(1e-12, sheet[x].Max(a => a * a))],
        (sheet, p) => [.. sheet[x].Select(a => p[0] + (p[1] * a) + (p[2] * a * a))], tells);

    public static double[] Guess(double[] x, double[] y)
    {
        double mx = x.Average(), my = y.Average();
        double spread = x.Sum(a => (a - mx) * (a - mx));
        double slope = spread > 0 ? x.Zip(y, (a, b) => (a - mx) * (b - my)).Sum() / spread : 0;
        return [my - (slope * mx), slope];
    }

    /// <summary>y = end − (end − start)·e^(−t/τ): a temperature that comes to rest.</summary>
    public static BenchModel ToRest(string y, params Told[] tells) => new("one body that comes to rest", y, ["time"],
        sheet => RestGuess(sheet["time"], sheet[y]),
        (sheet, p) => [.. sheet["time"].Select(t => p[0] + ((p[1] - p[0]) * Math.Exp(-(t - sheet["time"][0]) / p[2])))], tells)
    {
        Further = Spread(2),
        Lower = [-300, -300, 1e-3],
        Upper = [5000, 5000, 1e7],
    };

    /// <summary>The same seen by a probe, or through a body, that follows late: a second, short time.</summary>
    public static BenchModel ToRestLate(string y, params Told[] tells) => new("one body seen late", y, ["time"],
        sheet => [.. RestGuess(sheet["time"], sheet[y]), 0.03 * RestGuess(sheet["time"], sheet[y])[2]],
        (sheet, p) => [.. sheet["time"].Select(t => p[0] + ((p[1] - p[0]) * Late(t - sheet["time"][0], p[2], p[3])))], tells)
    {
        Further = Spread(2, 3),
        Lower = [-300, -300, 1e-3, 1e-4],
        Upper = [5000, 5000, 1e7, 1e6],
        Decides = "Read the first seconds closer together: they tell how late the probe follows.",
    };

    /// <summary>What is left of a step after a time, behind two bodies in a row; of two alike it is (1 + t/τ)·e^(−t/τ).</summary>
    public static double Late(double t, double slow, double fast) => fast <= 0 ? Math.Exp(-t / slow)
        : Math.Abs(slow - fast) < Alike * slow ? (1 + (t / slow)) * Math.Exp(-t / slow)
        : ((slow * Math.Exp(-t / slow)) - (fast * Math.Exp(-t / fast))) / (slow - fast);

    /// <summary>Further starts: each of these numbers a quarter and four times the first guess, one at a time. Times and exponents guessed wrongly lead into a wrong valley.</summary>
    public static Func<double[], IEnumerable<double[]>> Spread(params int[] which) => first =>
        which.SelectMany(j => Fourfold.Select(by => first.Select((value, i) => i == j ? value * by : value).ToArray()));

    /// <summary>The same for numbers held as logarithms.</summary>
    public static Func<double[], IEnumerable<double[]>> SpreadLogs(params int[] which) => first =>
        which.SelectMany(j => Fourfold.Select(by => first.Select((value, i) => i == j ? value + Math.Log(by) : value).ToArray()));

    private static double[] RestGuess(double[] t, double[] y)
    {
        double half = (y[0] + y[^1]) / 2;
        int past = Array.FindIndex(y, value => y[^1] > y[0] ? value >= half : value <= half);
        double tau = Math.Max(1e-2, (t[Math.Clamp(past, 1, t.Length - 1)] - t[0]) / 0.7);
        return [y[^1] + (0.05 * (y[^1] - y[0])), y[0], tau];
    }

    /// <summary>Enough readings, or a word why not.</summary>
    public static Problem? TooFew(TrialSheet sheet, int need, string what) => sheet.Count >= need ? null
        : new($"{(sheet.Count == 0 ? "No" : "Too few")} {LeftForKind} {sheet.Card.Name}.", "the readings", $"{sheet.Count}", $"{need} or more of {what}", "Take the missing readings; those that are there are kept.");

    /// <summary>The same where a power is needed, and nothing of the readings tells one.</summary>
    public static Problem? NoPower(TrialSheet sheet) => sheet.Has("watts") || (sheet.Has("volts") && sheet.Has("amps")) || (sheet.Has("volts") && sheet.Setting("ohms") > 0) ? null
        : new("Nothing tells what went in: there are no watts, and no volts with amps.", $"readings for {sheet.Card.Name}", sheet.Has("volts") ? "volts alone" : sheet.Has("amps") ? "amps alone" : "neither volts nor amps nor watts", "a column watts, or volts and amps", sheet.Has("volts") ? "Add the amps; or state the heater's ohms with --set ohms=..., where they hardly change." : "Add a column of watts, or of volts and amps: without them no heat capacity and no loss can be told.");

    /// <summary>Words of the problem that too few readings are left.</summary>
    public const string LeftForKind = "whole readings are left for";

    /// <summary>Readings that all sit at one level tell no slope.</summary>
    public static Problem? OneLevel(TrialSheet sheet, string x, double least) =>
        sheet[x].Max() - sheet[x].Min() > least ? null
        : new($"All readings of {x} sit at one level: no slope can be told.", "the readings", FormattableString.Invariant($"{sheet[x].Min():G4} to {sheet[x].Max():G4}"), "two levels well apart", $"Take a reading at another level of {x}, twice as large or half as large.");
}
