using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Stopwatch marks: a display that reads 'at', went 'passed', 'stuck', or a melt mark that gave way.</summary>
/// <remarks>A mark on the way up is a time with a doubt u² = u_stop² + (u_T/(dT/dt))², taken again at the solution; a mark where it stuck is a temperature,
/// the rest itself where nobody noted when. What was only passed bounds and rejects nothing.</remarks>
internal static class MarkFit
{
    /// <summary>A misfit that luck brings more often than this is none; our choice.</summary>
    private const double Luck = 0.05;

    public static Checked<TrialAnswer> Run(TrialSheet read)
    {
        var timed = read.Whole("degrees");
        string[] how = timed.Words("mark");
        if (timed.Count == 0)
        {
            return new(Curves.TooFew(timed, 2, "marks")!);
        }

        double air = timed.Setting("air");
        string? bad = how.FirstOrDefault(word => word.Length > 0 && word is not ("at" or "passed" or "stuck" or "melt"));
        if (bad is not null)
        {
            return new(new Problem("This is no mark.", "mark", bad, "at, passed, stuck or melt", "Say how the temperature was seen."));
        }

        var marks = timed.Rows([.. Enumerable.Range(0, timed.Count).Where(i => how[i] == "stuck" || (how[i] is "" or "at" or "melt" && double.IsFinite(timed["time"][i])))]);
        List<string> says = [.. Bounds(timed, how, air)];
        string[] without = [.. Enumerable.Range(0, timed.Count).Where(i => how[i] is "" or "at" or "melt" && !double.IsFinite(timed["time"][i])).Select(i => NoTime(timed, i))];
        int onTheWay = marks.Words("mark").Count(word => word is "" or "at" or "melt");
        if (marks.Count < 2 || onTheWay < 1)
        {
            return new(new TrialAnswer(read.Card.Name, [], says)
            {
                Next = [.. without, "Note a second moment: the time at which another temperature shows on the way up, or where it comes to rest."],
                Word = "bounds only",
            });
        }

        double top = marks["degrees"].Max();
        bool[] late = [.. marks.Words("mark").Select(word => word == "stuck")];
        double tau0 = Math.Max(1, marks["time"].Where((_, i) => !late[i]).Max() / 2);
        var model = new BenchModel("one body", "seen", [], _ => [1.02 * (top - air) + 1, tau0], Predict,
            [
                Curves.Tell("rise at rest", Units.Kelvin, 0), Curves.Tell("time constant", Units.Second, 1),
                new("resistance to air", Units.KelvinPerWatt, (s, p) => p[0] / Power(s)),
                new("heat capacity", Units.JoulePerKelvin, (s, p) => p[1] * Power(s) / p[0]),
            ])
        { Further = Curves.Spread(1), Lower = [0.5 * (top - air), 0.05], Upper = [20 * (top - air), 1e5], Doubt = Doubt };
        var sheet = Seen(marks, late);
        var answer = BenchFit.Run(sheet, model);
        return new(answer with
        {
            Says = [.. says, marks.Count < 3 ? "Two marks give the two numbers and no test of them." : Agreement(answer.Tried[0].Rss, marks.Count)],
            Next = [.. without, .. marks.Count < 3 ? new[] { late.Contains(true) ? "A third mark, on the way up, would test these two." : "A third mark, where it comes to rest, would test these two." } : marks.Count < 5 ? ["With one power and fewer than five marks the bend of the loss cannot be told from the time constant."] : []],
            Picture = Drawn(marks.Whole("time")),
        });

        // A mark at rest without a time has no place along the watch.
        TrialPicture Drawn(TrialSheet seen) => new("time", "s", "degrees", "°C", seen["time"], seen["degrees"], [.. seen["time"].Select(t => air + (answer.Find("rise at rest")!.Value * (1 - Math.Exp(-t / answer.Find("time constant")!.Value))))]);

        static string NoTime(TrialSheet timed, int row) => string.Create(CultureInfo.InvariantCulture, $"Mark {timed.Numbers[row]}, {timed["degrees"][row]:0.#} °C, has no time and takes no part in the fit: write when it showed, or 'stuck' where it came to rest.");

        // Two numbers are found from the marks; the rest of them test the law.
        static string Agreement(double misfit, int marks) => ChiSquare.ShareAbove(misfit, marks - 2) >= Luck ? $"The {marks} marks agree with each other within their doubts." : $"The {marks} marks lie farther off one curve than their doubts explain: look for a time or a temperature that is wrong.";

        // A mark on the way is a time, one at rest a temperature: both stand in one column, each with its own doubt.
        static TrialSheet Seen(TrialSheet marks, bool[] late) => marks.With("seen", [.. Enumerable.Range(0, marks.Count).Select(i => late[i] ? marks["degrees"][i] - marks.Setting("air") : marks["time"][i])], new double[marks.Count]);

        double[] Predict(TrialSheet s, double[] p) => [.. Enumerable.Range(0, s.Count).Select(i => late[i]
            ? p[0] * (double.IsFinite(s["time"][i]) ? 1 - Math.Exp(-s["time"][i] / p[1]) : 1) : Time(s["degrees"][i] - s.Setting("air"), p))];

        double[] Doubt(TrialSheet s, double[] p) => [.. Enumerable.Range(0, s.Count).Select(i => late[i] ? Kelvin(s, i)
            : Math.Sqrt(Math.Pow(s.Setting("stopwatch"), 2) + Math.Pow(Kelvin(s, i) / Math.Max(1e-3 * p[0] / p[1], (p[0] - (s["degrees"][i] - s.Setting("air"))) / p[1]), 2)))];

        static double Kelvin(TrialSheet s, int i) => s["doubt"][i] is var own && own > 0 ? own : s.Setting("degrees doubt");

        static double Power(TrialSheet s) => s.Has("watts") ? s["watts"].Where(double.IsFinite).Average() : s.Setting("watts");
    }

    private static double Time(double rise, double[] p) => rise < p[0] ? -p[1] * Math.Log(1 - (rise / p[0])) : 20 * p[1] * (1 + rise - p[0]);

    private static IEnumerable<string> Bounds(TrialSheet timed, string[] how, double air)
    {
        var marks = Enumerable.Range(0, timed.Count).Where(i => timed["degrees"][i] > air + 20 && timed["watts"][i] > 0)
            .Select(i => new StopwatchMark(timed["watts"][i], how[i] switch { "passed" => MarkKind.Passed, "stuck" => MarkKind.Stuck, _ => MarkKind.At }, timed["degrees"][i], double.IsFinite(timed["time"][i]) && timed["time"][i] > 0 ? timed["time"][i] : null)).ToArray();
        if (marks.Length < 2 || marks.Select(mark => mark.PowerW).Distinct().Count() < 2)
        {
            yield break;
        }

        var say = StopwatchMarks.Say(marks, air);
        foreach (var shape in say.Shapes)
        {
            yield return $"A loss {(shape.Shape == LossShape.Linear ? "in proportion to the rise" : "by radiation")} {(shape.Fits ? string.Create(CultureInfo.InvariantCulture, $"fits; heat capacity at least {shape.CapacityAtLeastJPerK:0.00} J/K") : "is ruled out by these marks")}.";
        }

        if (say.NextHold is { } hold)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"Hold {hold.PowerW:0.0} W until nothing moves: {(hold.Decides ? "it tells the shapes apart" : "it narrows most")}.");
        }
    }
}
