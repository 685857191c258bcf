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
        double from = sheet.Setting("start", First(state, t, "on")), to = sheet.Setting("end", After(state, t));
        if (!(to > from))
        {
            return new(new Problem("It is not said when the tool worked.", "work", "no moment", "a start and an end", "Add --set start=...s --set end=...s, or a column 'work' with on and off."));
        }

        double Held(TrialSheet s) => s["degrees"].Where((_, i) => t[i] <= from).DefaultIfEmpty(s["degrees"][0]).Average();
        double held = Held(sheet);
        int[] during = [.. Enumerable.Range(0, t.Length).Where(i => t[i] >= from && t[i] <= to + (0.5 * (to - from)))];
        int low = during.MinBy(i => c[i]);
        double back = sheet.Setting("band");
        double Low(TrialSheet s) => s["degrees"][low];
        double Recovery(TrialSheet s)
        {
            double level = Held(s) - back;
            double[] x = s["degrees"];
            int home = Enumerable.Range(low, t.Length - low).FirstOrDefault(i => x[i] >= level, -1);
            return home < 0 ? double.NaN : home == low ? t[home] - to : t[home] - ((t[home] - t[home - 1]) * (x[home] - level) / (x[home] - x[home - 1])) - to;
        }

        List<(string, Unit, Func<TrialSheet, double>, double)> values = [("droop", Units.Kelvin, s => Held(s) - Low(s), 0)];
        List<string> says = [string.Create(CultureInfo.InvariantCulture, $"Under the job it fell from {held:0} to {c[low]:0} °C.")];
        List<string> next = [];
        if (double.IsFinite(Recovery(sheet)))
        {
            values.Add(("recovery", Units.Second, Recovery, 0));
        }
        else
        {
            next.Add(string.Create(CultureInfo.InvariantCulture, $"Go on reading until it is back within {back:0} K: its recovery is not in these readings."));
        }

        double capacity = sheet.Setting("heat capacity"), loss = sheet.Setting("linear loss");
        if (capacity > 0 && loss > 0 && sheet.Has("watts"))
        {
            double Heat(TrialSheet s) => Given(s, from, to) + (s.Setting("heat capacity") * (Held(s) - At(t, s["degrees"], to)));
            values.Add(("heat taken", Units.Joule, Heat, 0));
            values.Add(("heat rate under work", Units.Watt, s => Heat(s) / (to - from), 0));
        }
        else
        {
            next.Add("With heat capacity and linear loss from a warm-up, and the watts during the job, the heat that the job takes would be told.");
        }

        var findings = ReadOff.Of(sheet, ["degrees", "watts"], [.. values]);
        return new(new TrialAnswer(sheet.Card.Name, findings, says) { Next = next, Remarks = slips, Picture = new("time", "s", "degrees", "°C", t, c, [.. c.Select(_ => held)]) });
    }

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

    private static double First(string[] state, double[] t, string word) => Array.FindIndex(state, s => s == word) is >= 0 and var i ? t[i] : double.NaN;

    private static double After(string[] state, double[] t)
    {
        int last = Array.FindLastIndex(state, s => s == "on");
        return last < 0 ? double.NaN : last + 1 < t.Length ? (t[last] + t[last + 1]) / 2 : t[last];
    }

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
        return new(new TrialAnswer(read.Card.Name, bounded ? [new("heat rate at the work", new Estimate(middle, Units.Watt, Doubts.From(Cause.Normal("ladder", CauseGroup.Trial), spread * middle), origin), spread * middle, double.PositiveInfinity)] : [], says)
        {
            Next = [string.Create(CultureInfo.InvariantCulture, $"The job that narrows it most: {(name.Length > 0 ? $"'{name}', " : "one of about ")}{best:0.0} W; the spread would shrink from {100 * spread:0} % to about {100 * After(best):0} %.")],
            Word = bounded ? "bounded" : "bounds only",
        });

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
