using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Bench tests of converters and switches.</summary>
internal static class PowerFits
{
    public static readonly Dictionary<string, Func<TrialSheet, Checked<TrialAnswer>>> All = new(StringComparer.Ordinal)
    {
        ["converter-points"] = PointFits.Points,
        ["converter-start"] = Start,
        ["converter-collapse"] = Collapse,
        ["converter-idle"] = Idle,
        ["switch-drop"] = Switch,
        ["lamp-points"] = LampFits.Points,
    };

    private static double Sq(double x) => x * x;

    private static Checked<TrialAnswer> Start(TrialSheet read)
    {
        var (sheet, slips) = ReadOff.WithoutSlips(read.Whole("time", "volts out"), "volts out", "amps in");
        if (Curves.TooFew(sheet, 5, "time and volts out") is { } few)
        {
            return new(few);
        }

        double[] t = sheet["time"], v = sheet["volts out"];
        double end = Settled(sheet);
        int around = Around(sheet);
        double over = Over(sheet, around), digit = Digit(sheet);
        double Rises(TrialSheet s, int points, double off = 0) => Math.Max(0, Crossing(s, 0.9, points, off) - Crossing(s, 0.1, points, off));
        double rise = Rises(sheet, 4);

        // How far one reading fewer moves it says what the curve between the readings may hide; the few readings of a flat top share their last digit, too.
        List<(string, Unit, Func<TrialSheet, double>, double)> values =
        [
            ("start time", Units.Second, s => Rises(s, 4), Math.Max(Math.Abs(rise - Rises(sheet, 3)) / 3, Math.Abs(Rises(sheet, 4, digit) - rise))),
            ("settled volts", Units.Volt, Settled, digit),
            ("overshoot", Units.Volt, s => Over(s, around), Math.Sqrt(Sq((over - Over(sheet, 1)) / 3) + Sq(digit) + (Sq(Sample.Median(sheet.Own("volts out"))) / 2))),
        ];
        if (sheet.Has("amps in"))
        {
            values.Add(("start current", Units.Ampere, s => s["amps in"].Where(double.IsFinite).Max(), 0));
        }

        var found = ReadOff.Of(sheet, ["volts out", "amps in"], [.. values]);
        return new(new TrialAnswer(sheet.Card.Name, found, over > 0.1 * end ? [string.Create(CultureInfo.InvariantCulture, $"It jumps {over:0.0} V over its settled {end:0.0} V: keep the heater off until it has settled.")] : []) { Remarks = slips, Picture = new("time", "s", "volts out", "V", t, v, [.. v.Select(_ => end)]) });
    }

    /// <summary>Mean of the middle half of the last quarter's readings: a mean, for a display that shows two digits in turn says with both where it stands.</summary>
    private static double Settled(TrialSheet s)
    {
        double[] last = [.. LastQuarter(s).Order()];
        return last[(last.Length / 4)..(last.Length - (last.Length / 4))].Average();
    }

    private static IEnumerable<double> LastQuarter(TrialSheet s) => s["volts out"].Skip(s.Count * 3 / 4);

    /// <summary>Standard doubt of the settled volts from the last digit: where the display does not change, all its readings are off alike; where it goes to and fro over a digit, their mean is not.</summary>
    private static double Digit(TrialSheet s)
    {
        double[] last = [.. LastQuarter(s)];
        double middle = last.Average(), spread = Math.Sqrt(last.Average(v => (v - middle) * (v - middle)));
        return Math.Max(0, Sample.Median(s.Own("volts out")) - spread);
    }

    /// <summary>Readings to either side of the highest that tell the top of an overshoot: two, so that a flicker does not pass for it, where a parabola runs through all five but for their last digits; one on a sharper top.</summary>
    private static int Around(TrialSheet s) =>
        Top(s, 2) is { } top && top.Left.All(left => Math.Abs(left) <= 4 * Sample.Median(s.Own("volts out"))) ? 2 : 1;

    /// <summary>When the volts first pass a share of where they settle: on the curve through so many readings about that place.</summary>
    /// <param name="s">time, volts out.</param>
    /// <param name="share">Share of the settled volts.</param>
    /// <param name="points">How many readings carry the curve.</param>
    /// <param name="off">What is added to the settled volts.</param>
    private static double Crossing(TrialSheet s, double share, int points, double off)
    {
        double[] t = s["time"], v = s["volts out"];
        double level = share * (Settled(s) + off);
        int at = Array.FindIndex(v, x => x >= level);
        if (at <= 0)
        {
            return t[Math.Max(0, at)];
        }

        int from = Math.Max(0, at - (points / 2)), to = Math.Min(v.Length, from + points);
        double Curve(double time) => Enumerable.Range(from, to - from).Sum(i => v[i] * Enumerable.Range(from, to - from).Where(j => j != i).Aggregate(1.0, (part, j) => part * (time - t[j]) / (t[i] - t[j])));
        return Roots.Between(time => Curve(time) - level, t[at - 1], t[at]).X;
    }

    /// <summary>By how much the highest volts lie above the settled ones: the top of the best parabola through the highest reading and so many to either side.</summary>
    private static double Over(TrialSheet s, int around) => Math.Max(0, (Top(s, around)?.Volts ?? s["volts out"].Max()) - Settled(s));

    /// <summary>The top of that parabola, and what it leaves over at each reading; null: the highest lies too near to an end of the log.</summary>
    private static (double Volts, double[] Left)? Top(TrialSheet s, int around)
    {
        double[] v = s["volts out"];
        int top = Array.IndexOf(v, v.Max()), from = top - around, to = top + around;
        if (from < 0 || to >= v.Length)
        {
            return null;
        }

        double[] t = [.. s["time"][from..(to + 1)].Select(time => time - s["time"][top])], near = v[from..(to + 1)];
        double[] p = MathNet.Numerics.Fit.Polynomial(t, near, 2);
        double At(double time) => p[0] + (time * (p[1] + (time * p[2])));
        return (At(p[2] < 0 ? Math.Clamp(-p[1] / (2 * p[2]), t[0], t[^1]) : 0), [.. t.Zip(near, (time, volts) => At(time) - volts)]);
    }

    /// <summary>Where the output gives way as the load grows.</summary>
    private static Checked<TrialAnswer> Collapse(TrialSheet read)
    {
        var sheet = read.Whole("volts out", "amps out");
        if (Curves.TooFew(sheet, 3, "volts out and amps out, light to heavy") is { } few)
        {
            return new(few);
        }

        double set = sheet.Setting("set volts", sheet["volts out"].Max());
        var rows = Enumerable.Range(0, sheet.Count).OrderBy(i => sheet["volts out"][i] < 0.95 * set).ThenBy(i => sheet["amps out"][i]).ToArray();
        int[] held = [.. rows.Where(i => sheet["volts out"][i] >= 0.95 * set)], gone = [.. rows.Except(held)];
        if (held.Length == 0 || gone.Length == 0)
        {
            return new(new TrialAnswer(sheet.Card.Name, held.Length == 0 ? [] : Held(sheet),
                [held.Length == 0 ? "It never held its volts." : string.Create(CultureInfo.InvariantCulture, $"It held at every load, up to {held.Max(i => sheet["amps out"][i]):0.00} A: a lower bound.")])
            { Next = [held.Length == 0 ? "Take a lighter load." : "Take a heavier load until it gives way, for a second only."], Word = held.Length == 0 ? "never held" : "never collapsed" });
        }

        double last = held.Max(i => sheet["amps out"][i]);
        double lastW = held.Max(i => sheet["amps out"][i] * sheet["volts out"][i]);
        double firstOhm = gone.Max(i => sheet["volts out"][i] / Math.Max(1e-9, sheet["amps out"][i]));
        double nextA = Math.Max(last * 1.001, set / firstOhm);
        List<TrialFinding> found = [Between("output amps it holds", sheet, last, nextA, Units.Ampere, 1), Between("output watts it holds", sheet, lastW, Math.Max(lastW * 1.001, set * set / firstOhm), Units.Watt, set)];
        List<string> says = [string.Create(CultureInfo.InvariantCulture, $"It holds {set:0.0} V at {last:0.00} A and gives way before {nextA:0.00} A.")];
        if (sheet.Has("amps in") && sheet.Has("volts in"))
        {
            double before = held.Max(i => sheet["amps in"][i]), at = gone.Max(i => sheet["amps in"][i]);
            double inV = gone.Average(i => sheet["volts in"][i]), fullV = held.Max(i => sheet["volts in"][i]);
            if (inV >= 0.85 * fullV && at < 1.15 * before)
            {
                found.Add(Between(Parts.PartQuantities.LimitCurrent, sheet, Math.Min(before, at), Math.Max(before, at), Units.Ampere, 1, "amps in"));
            }

            says.Add(inV < 0.85 * fullV ? string.Create(CultureInfo.InvariantCulture, $"The input sags to {inV:0.00} V while {at:0.0} A flow: the source gives way, not the module alone.")
                : at < 1.15 * before ? string.Create(CultureInfo.InvariantCulture, $"The input stays at {inV:0.00} V and its current near {at:0.0} A: the module's own current limit.") : "What gives way, source or module, these readings do not tell.");
        }

        List<string> next = nextA > 1.2 * last ? [string.Create(CultureInfo.InvariantCulture, $"A load of {Math.Sqrt(last * nextA):0.00} A lies between and narrows it most.")] : [];
        if (!sheet.Has("amps in") || !sheet.Has("volts in"))
        {
            next.Add("Read volts and amps at the input too: a loop and a prediction ask for the input current at which the module gives way.");
        }

        return new(new TrialAnswer(sheet.Card.Name, found, says) { Word = "collapses", Next = next });
    }

    /// <summary>What it was seen to hold, where nothing gave way: what it can hold is that or more, and by how much more no reading says.</summary>
    private static TrialFinding[] Held(TrialSheet sheet)
    {
        int Most(Func<int, double> of) => Enumerable.Range(0, sheet.Count).MaxBy(of);
        int amps = Most(i => sheet["amps out"][i]), watts = Most(i => sheet["amps out"][i] * sheet["volts out"][i]);
        List<(string, Unit, Func<TrialSheet, double>, double)> seen =
        [
            (LowerBound.Of("output amps it holds"), Units.Ampere, s => s["amps out"][amps], 0),
            (LowerBound.Of("output watts it holds"), Units.Watt, s => s["amps out"][watts] * s["volts out"][watts], 0),
        ];
        return ReadOff.Of(sheet, ["amps out", "volts out"], [.. seen]);
    }

    /// <summary>Between the last load that it holds and the first that it does not; what is wrong with the amps as a whole moves both.</summary>
    private static TrialFinding Between(string name, TrialSheet sheet, double low, double high, Unit unit, double perAmp, string amps = "amps out")
    {
        TrialFinding found = new(name, Estimate.Within((low + high) / 2, (high - low) / 2, unit, $"{sheet.Card.Name} {name}", CauseGroup.Assumption, new Origin.Fitted(new TrialId(sheet.Card.Name), [new RunId(sheet.Card.Name)])), 0, double.PositiveInfinity);
        return sheet.Shared.Where(error => error.Column == amps).Aggregate(found, (all, error) => all.Wider(error.Cause, (error.Gain * found.Value.Value) + (error.Offset * perAmp)));
    }

    private static Checked<TrialAnswer> Idle(TrialSheet read)
    {
        var sheet = read.Whole("volts in", "amps in");
        if (Curves.TooFew(sheet, 1, "volts in and amps in, without load") is { } few)
        {
            return new(few);
        }

        // Most modules take the same watts whatever their input volts: then the amps differ from reading to reading and the watts hardly.
        var taken = Taken(sheet);
        bool sameWatts = taken["volts in"].Max() - taken["volts in"].Min() > OtherVolts && Uneven(taken["watts"]) < Uneven(taken["amps in"]);
        var watts = Curves.Mean("watts", Curves.Tell("idle amps", Units.Milliampere, (s, p) => p[0] / s["volts in"].Average()), Curves.Tell("idle watts", Units.Watt, 0));
        var mean = Curves.Mean("amps in", Curves.Tell("idle amps", Units.Milliampere, 0), Curves.Tell("idle watts", Units.Watt, (s, p) => p[0] * s["volts in"].Average()));
        var line = Curves.Line("amps that follow the volts", "amps in", "volts in", Curves.Tell("idle amps", Units.Milliampere, (s, p) => p[0] + (p[1] * s["volts in"].Average())), Curves.Tell("idle watts", Units.Watt, (s, p) => (p[0] + (p[1] * s["volts in"].Average())) * s["volts in"].Average()));
        var answer = sameWatts ? BenchFit.Run(taken, watts) : sheet["volts in"].Max() - sheet["volts in"].Min() > OtherVolts ? BenchFit.Run(sheet, mean, line) : BenchFit.Run(sheet, mean);
        double capacity = sheet.Setting("capacity"), amps = answer.Find("idle amps")!.Si;
        List<string> says = sameWatts ? [string.Create(CultureInfo.InvariantCulture, $"It takes the same watts at all its input volts; the amps are those at {sheet["volts in"].Average():0.00} V.")] : [];
        return new(answer with { Says = capacity > 0 ? [.. says, string.Create(CultureInfo.InvariantCulture, $"Idle, it empties {capacity / 3600:0.00} Ah in {capacity / amps / 3600:0} h.")] : says });
    }

    /// <summary>Input volts this far apart, V, tell whether amps or watts stay the same.</summary>
    private const double OtherVolts = 0.2;

    private static double Uneven(double[] values) => (values.Max() - values.Min()) / values.Average();

    /// <summary>The watts of each reading.</summary>
    private static TrialSheet Taken(TrialSheet s)
    {
        double[] v = s["volts in"], a = s["amps in"], uv = s.Own("volts in"), ua = s.Own("amps in");
        return s.Derived("watts", [.. v.Zip(a, (volts, amps) => volts * amps)], [.. Enumerable.Range(0, s.Count).Select(i => Math.Sqrt(Sq(v[i] * ua[i]) + Sq(a[i] * uv[i])))], Taken);
    }

    /// <summary>Leaves out rows whose watts and rise do not belong together: a drop written ten times as large stands so far out that a line through nothing follows it.</summary>
    private static (TrialSheet Sheet, List<TrialRemark> Slips) WithoutSlips(TrialSheet hot)
    {
        if (hot.Count is < 6 or > 200)
        {
            return (hot, []);
        }

        // The middle of all slopes between two rows: neither a slip nor the thermometer's offset moves it (Theil and Sen, from memory).
        double[] rise = hot["rise"], watts = hot["watts"];
        var pairs = Enumerable.Range(0, hot.Count).SelectMany(i => Enumerable.Range(0, i).Where(j => Math.Abs(watts[i] - watts[j]) > 1e-6).Select(j => (rise[i] - rise[j]) / (watts[i] - watts[j])));
        double usual = Sample.Median([.. pairs.DefaultIfEmpty(0)]), level = Sample.Median([.. rise.Zip(watts, (k, w) => k - (usual * w))]);
        double Doubt(int i) => Math.Sqrt(Sq(hot.Own("rise")[i]) + Sq(usual * hot.Own("watts")[i]) + Sq(0.1 * usual * watts[i]));
        int[] far = [.. Enumerable.Range(0, hot.Count).Where(i => Math.Abs(rise[i] - level - (usual * watts[i])) > 6 * Doubt(i))];
        return far.Length > hot.Count / 5 ? (hot, [])
            : (hot.Without(far), [.. far.Select(i => new TrialRemark(hot.Numbers[i], "S23", "E",
                string.Create(CultureInfo.InvariantCulture, $"{watts[i]:G3} W and a rise of {rise[i]:0.0} K do not belong together: the other readings rise by {usual:G3} K a watt."), "Look at the drop, its unit and its range.") { LeftOut = true })]);
    }

    /// <summary>Rise and watts beside the readings, worked out again when those are moved.</summary>
    private static TrialSheet Heated(TrialSheet s)
    {
        double[] own = [.. Enumerable.Range(0, s.Count).Select(i => Math.Sqrt(Sq(s["amps"][i] * s.Own("drop")[i]) + Sq(s["drop"][i] * s.Own("amps")[i])))];
        return s.With("rise", [.. s["degrees"].Select(c => c - s.Setting("air"))], s.Own("degrees")).Derived("watts", [.. s["amps"].Zip(s["drop"], (a, d) => a * d)], own, Heated);
    }

    /// <summary>Ohms of a switch at each gate voltage, and its rise per watt.</summary>
    private static Checked<TrialAnswer> Switch(TrialSheet read)
    {
        var sheet = read.Whole("gate volts", "amps", "drop");
        sheet = sheet.Rows([.. Enumerable.Range(0, sheet.Count).Where(i => sheet["amps"][i] > 0)]);
        if (Curves.TooFew(sheet, 1, "gate volts, amps and drop") is { } few)
        {
            return new(few);
        }

        List<TrialFinding> found = [];
        List<TrialRemark> remarks = [];
        TrialAnswer? last = null;
        foreach (double gate in sheet["gate volts"].Select(g => Math.Round(g, 1)).Distinct().Order())
        {
            var at = sheet.Rows([.. Enumerable.Range(0, sheet.Count).Where(i => Math.Round(sheet["gate volts"][i], 1) == gate)]);
            last = BenchFit.Run(at, Curves.Through("ohms at one gate voltage", "drop", "amps", Curves.Tell(string.Create(CultureInfo.InvariantCulture, $"ohms at {gate:0.0} V gate"), Units.Ohm, 0)));
            found.AddRange(last.Findings);
            remarks.AddRange(last.Remarks);
        }

        List<string> says = [];
        if (found.Count > 1 && found[0].Value.Value > 1.3 * found[^1].Value.Value)
        {
            says.Add(string.Create(CultureInfo.InvariantCulture, $"At the lowest gate voltage it has {found[0].Value.Value / found[^1].Value.Value:0.0} times the ohms of the highest: not fully on. The threshold on a sheet is where it just begins."));
        }

        if (sheet.Has("degrees") && double.IsFinite(sheet.Setting("air")))
        {
            var (hot, slips) = WithoutSlips(Heated(sheet.Whole("degrees")));
            remarks.AddRange(slips.Where(slip => remarks.All(remark => remark.Reading != slip.Reading)));
            found.AddRange(BenchFit.Run(hot, Curves.Through("rise per watt", "rise", "watts", Curves.Tell("rise per watt", Units.KelvinPerWatt, 0))).Findings);
        }

        return new(new TrialAnswer(sheet.Card.Name, found, says) { Remarks = remarks, Picture = last?.Picture, Tried = last?.Tried ?? [], Notes = sheet.Notes });
    }
}
