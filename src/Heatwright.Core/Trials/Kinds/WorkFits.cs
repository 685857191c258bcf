using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Bench tests under work: droop and recovery, and a ladder of jobs from light to brutal.</summary>
internal static class WorkFits
{
    /// <summary>Droop under a piece of work, and the way back.</summary>
    public static Checked<TrialAnswer> Droop(TrialSheet read)
    {
        var (sheet, slips) = ReadOff.WithoutSlips(read.Whole("time", "degrees"), "degrees", "watts");
        if (Curves.TooFew(sheet, 4, "time and degrees") is { } few)
        {
            return new(few);
        }

        double[] t = sheet["time"], c = sheet["degrees"];
        string[] state = sheet.Words("work");
        var (began, ended) = (Began(state, t), Ended(state, t));
        double from = sheet.Setting("start", began.At), to = sheet.Setting("end", ended.At);
        double beganHalf = double.IsNaN(sheet.Setting("start")) ? began.Half : 0, endedHalf = double.IsNaN(sheet.Setting("end")) ? ended.Half : 0;
        if (!(to > from))
        {
            return new(new Problem("It is not said when the tool worked.", "work", "no moment", "a start and an end", "Add --set start=...s --set end=...s, or a column 'work' with on and off."));
        }

        double Held(TrialSheet s, double from) => s["degrees"].Where((_, i) => t[i] <= from).DefaultIfEmpty(s["degrees"][0]).Average();
        double held = Held(sheet, from);
        int[] during = [.. Enumerable.Range(0, t.Length).Where(i => t[i] >= from && t[i] <= to + (0.5 * (to - from)))];
        int low = during.MinBy(i => c[i]);
        double back = sheet.Setting("band");
        double Low(TrialSheet s) => s["degrees"][low];
        double Recovery(TrialSheet s, double from, double to)
        {
            double level = Held(s, from) - back;
            double[] x = s["degrees"];
            int home = Enumerable.Range(low, t.Length - low).FirstOrDefault(i => x[i] >= level, -1);
            return home <= low ? double.NaN : t[home] - ((t[home] - t[home - 1]) * (x[home] - level) / (x[home] - x[home - 1])) - to;
        }

        List<(string, Unit, Func<TrialSheet, double>, double)> values = [];
        Tell("droop", Units.Kelvin, (s, from, _) => Held(s, from) - Low(s));
        List<string> says = [string.Create(CultureInfo.InvariantCulture, $"Under the job it fell from {held:0} to {c[low]:0} °C.")];
        List<string> next = [];
        if (c[low] >= held - back)
        {
            says.Add(string.Create(CultureInfo.InvariantCulture, $"It stayed within {back:0} K: there is nothing to recover from."));
        }
        else if (double.IsFinite(Recovery(sheet, from, to)))
        {
            Tell("recovery", Units.Second, Recovery);
        }
        else
        {
            next.Add(string.Create(CultureInfo.InvariantCulture, $"Go on reading until it is back within {back:0} K: its recovery is not in these readings."));
        }

        double capacity = sheet.Setting("heat capacity"), loss = sheet.Setting("linear loss");
        if (capacity > 0 && loss > 0 && sheet.Has("watts"))
        {
            double Heat(TrialSheet s, double from, double to) => Given(s, from, to) + (s.Setting("heat capacity") * (Held(s, from) - At(t, s["degrees"], to)));
            double gaps = beganHalf + endedHalf > 0 ? Gaps(sheet, from - beganHalf, to + endedHalf) : 0;
            Tell("heat taken", Units.Joule, Heat, gaps);
            Tell("heat rate under work", Units.Watt, (s, from, to) => Heat(s, from, to) / (to - from), gaps / (to - from));
        }
        else
        {
            next.Add("With heat capacity and linear loss from a warm-up, and the watts during the job, the heat that the job takes would be told.");
        }

        var findings = ReadOff.Of(sheet, ["degrees", "watts"], [.. values]);
        return new(new TrialAnswer(sheet.Card.Name, findings, says) { Next = next, Remarks = slips, Picture = new("time", "s", "degrees", "°C", t, c, [.. c.Select(_ => held)]) });

        // Where words tell it, the work began and ended anywhere between two readings.
        void Tell(string name, Unit unit, Func<TrialSheet, double, double, double> of, double beside = 0) => values.Add((name, unit, s => of(s, from, to), Math.Sqrt(
            Square(beside) + Square(Push(of(sheet, from + (beganHalf / 2), to), of(sheet, from - (beganHalf / 2), to))) + Square(Push(of(sheet, from, to + (endedHalf / 2)), of(sheet, from, to - (endedHalf / 2)))))));

        // From one end of the interval to the other, evenly spread: a standard doubt of that over √12. Told by the middle half of it, for a reading at its very end would count once and not twice.
        static double Push(double up, double down) => double.IsFinite(up - down) ? 2 * (up - down) / Math.Sqrt(12) : 0;
    }

    /// <summary>What readings alone leave open of the heater's heat, where no watch says when its power changed: at any moment between two of them.</summary>
    private static double Gaps(TrialSheet sheet, double from, double to)
    {
        double[] t = sheet["time"], w = sheet["watts"];
        return Math.Sqrt(Enumerable.Range(1, t.Length - 1).Where(i => t[i] > from && t[i - 1] < to).Sum(i => Square((w[i] - w[i - 1]) * (t[i] - t[i - 1])) / 12));
    }

    private static double Square(double x) => x * x;

    /// <summary>Heat from the heater less what is lost to the air. A power holds from one reading to the next; it changed where the work began and ended.</summary>
    private static double Given(TrialSheet s, double from, double to)
    {
        double[] t = s["time"], c = s["degrees"], w = s["watts"];
        double heat = 0;
        for (int i = 1; i < t.Length; i++)
        {
            double begin = Math.Max(t[i - 1], from), end = Math.Min(t[i], to);
            double watts = t[i - 1] <= from ? w[i] : t[i] > to ? w[i - 1] : (w[i - 1] + w[i]) / 2;
            heat += end > begin ? (end - begin) * (watts - (s.Setting("linear loss") * (((At(t, c, begin) + At(t, c, end)) / 2) - s.Setting("air")))) : 0;
        }

        return heat;
    }

    private static double At(double[] t, double[] x, double when)
    {
        int after = Array.FindIndex(t, each => each >= when);
        return after < 0 ? x[^1] : after == 0 ? x[0] : x[after - 1] + ((x[after] - x[after - 1]) * (when - t[after - 1]) / (t[after] - t[after - 1]));
    }

    /// <summary>The work began between the last reading without it and the first one with it: the middle, and half of what lies between.</summary>
    private static (double At, double Half) Began(string[] state, double[] t) => Array.FindIndex(state, s => s == "on") is >= 0 and var first ? Between(t, Math.Max(0, first - 1), first) : (double.NaN, 0);

    private static (double At, double Half) Ended(string[] state, double[] t) => Array.FindLastIndex(state, s => s == "on") is >= 0 and var last ? Between(t, last, Math.Min(t.Length - 1, last + 1)) : (double.NaN, 0);

    private static (double At, double Half) Between(double[] t, int one, int other) => ((t[one] + t[other]) / 2, (t[other] - t[one]) / 2);

    /// <summary>A job that is expected to leave more of the spread than this is not worth doing: our choice.</summary>
    private const double Worth = 0.95;

    /// <summary>A ladder of jobs, each with its heat demand and an outcome: the heat rate that the tool really delivers, and the job that narrows it most.</summary>
    /// <remarks>A job is done where the tool delivers at least its demand, failed where it delivers less than a part of it, slow between. Demands carry a
    /// doubt of their own: the chance of an outcome is a smooth step in the logarithm of delivered over demanded. Every outcome multiplies a flat weight over a
    /// grid of heat rates (Bayes); the next job is the one whose answer is expected to shrink the spread most.</remarks>
    public static Checked<TrialAnswer> Ladder(TrialSheet read)
    {
        double[] demand = Demand(read);
        string[] outcome = read.Words("outcome");
        int[] told = [.. Enumerable.Range(0, read.Count).Where(i => demand[i] > 0 && outcome[i] is "done" or "slow" or "failed")];
        if (told.Length == 0)
        {
            return new(new Problem("No job has both a heat demand and an outcome.", "outcome", $"{read.Count} lines", "done, slow or failed, beside watts or joules and seconds", "Write how each job went."));
        }

        double doubt = Math.Sqrt(Math.Pow(read.Setting("demand doubt"), 2) + 1e-4), slow = read.Setting("slow from");
        double[] grid = [.. Enumerable.Range(0, 400).Select(i => Math.Exp(Math.Log(demand.Where(d => d > 0).Min() / 30) + (i / 399.0 * Math.Log(900 * demand.Max() / demand.Where(d => d > 0).Min()))))];
        double[] weight = [.. grid.Select(_ => 1.0)];
        foreach (int i in told)
        {
            weight = [.. weight.Zip(grid, (w, watts) => w * Chance(outcome[i], watts, demand[i]))];
        }

        var (middle, low, high) = Limits(grid, weight);
        double spread = (Math.Log(high) - Math.Log(low)) / (2 * 1.96);
        var origin = new Origin.Fitted(new TrialId(read.Card.Name), [new RunId(read.Card.Name)]);
        bool bounded = told.Any(i => outcome[i] != "failed") && told.Any(i => outcome[i] != "done");
        List<string> says = [bounded ? string.Create(CultureInfo.InvariantCulture, $"It delivers between {low:0.0} and {high:0.0} W at the work (19 of 20).")
            : told.All(i => outcome[i] == "done") ? string.Create(CultureInfo.InvariantCulture, $"It delivers at least {low:0.0} W; nothing here bounds it from above.") : string.Create(CultureInfo.InvariantCulture, $"It delivers at most {high:0.0} W; nothing here bounds it from below.")];
        if (told.Any(i => told.Any(j => outcome[i] == "done" && outcome[j] == "failed" && demand[i] > 1.5 * demand[j])))
        {
            says.Add("A harder job was done and a lighter one failed: a demand is worked out wrongly, or the tool was not equally hot. Look at both.");
        }

        int[] open = [.. Enumerable.Range(0, read.Count).Where(i => demand[i] > 0 && !told.Contains(i))];
        double best = open.Length > 0 ? open.Select(i => demand[i]).MinBy(After) : middle;
        string name = open.Length > 0 ? read.Words("job")[open.First(i => demand[i] == best)] : "";
        double After(double next) => ((string[])["done", "slow", "failed"]).Sum(word =>
        {
            double[] then = [.. weight.Zip(grid, (w, watts) => w * Chance(word, watts, next))];
            double chance = then.Sum() / weight.Sum();
            return chance < 1e-9 ? 0 : chance * LogSpread(grid, then);
        });
        double now = LogSpread(grid, weight);
        string narrows = open.Length > 0 && After(best) < Worth * now ? Shrinks($"The job that narrows it most: {(name.Length > 0 ? $"'{name}', " : "the one of ")}", best)
            : After(middle) < Worth * now ? Shrinks(open.Length > 0 ? "None of the jobs left narrows it; one of about " : "The job that narrows it most: one of about ", middle)
            : string.Create(CultureInfo.InvariantCulture, $"The ladder is as narrow as jobs known to {100 * read.Setting("demand doubt"):0} % make it: work out the demands nearest to {middle:0.0} W more closely, and say so as 'demand doubt'.");
        return new(new TrialAnswer(read.Card.Name, bounded ? [new("heat rate at the work", new Estimate(middle, Units.Watt, Doubts.From(Cause.Normal("ladder", CauseGroup.Trial), spread * middle), origin), spread * middle, double.PositiveInfinity)] : [], says)
        {
            Next = [narrows],
            Word = bounded ? "bounded" : "bounds only",
        });

        string Shrinks(string job, double watts) => string.Create(CultureInfo.InvariantCulture, $"{job}{watts:0.0} W; the spread would shrink from {100 * spread:0} % to about {100 * After(watts):0} %.");

        double Chance(string word, double watts, double wanted)
        {
            double done = Quantiles.NormalShare(Math.Log(watts / wanted) / doubt), failed = Quantiles.NormalShare(Math.Log(slow * wanted / watts) / doubt);
            return word switch { "done" => done, "failed" => failed, _ => Math.Max(1e-12, 1 - done - failed) };
        }
    }

    private static double[] Demand(TrialSheet sheet) => [.. Enumerable.Range(0, sheet.Count).Select(i => sheet["watts"][i] is var w && w > 0 ? w : sheet["joules"][i] / sheet["seconds"][i])];

    private static (double Middle, double Low, double High) Limits(double[] grid, double[] weight)
    {
        double total = weight.Sum(), sum = 0;
        double low = double.NaN, middle = double.NaN, high = double.NaN;
        for (int i = 0; i < grid.Length; i++)
        {
            sum += weight[i] / total;
            low = double.IsNaN(low) && sum >= 0.025 ? grid[i] : low;
            middle = double.IsNaN(middle) && sum >= 0.5 ? grid[i] : middle;
            high = double.IsNaN(high) && sum >= 0.975 ? grid[i] : high;
        }

        return (middle, low, high);
    }

    private static double LogSpread(double[] grid, double[] weight)
    {
        double total = weight.Sum();
        double mean = grid.Zip(weight, (g, w) => Math.Log(g) * w).Sum() / total;
        return Math.Sqrt(grid.Zip(weight, (g, w) => Math.Pow(Math.Log(g) - mean, 2) * w).Sum() / total);
    }
}
