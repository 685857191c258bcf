using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Bench tests of cells and packs.</summary>
internal static class CellKindFits
{
    public static readonly Dictionary<string, Func<TrialSheet, Checked<TrialAnswer>>> All = new(StringComparer.Ordinal)
    {
        ["capacity"] = Capacity,
        ["open-volts"] = OpenVolts,
        ["pulse"] = Pulse,
        ["two-load-sag"] = Sag,
        ["standby-drain"] = Standby,
        ["charge-log"] = Charge,
    };

    private static Checked<TrialAnswer> Capacity(TrialSheet read)
    {
        var (sheet, slips) = ReadOff.WithoutSlips(Rising(Loaded(read).Whole("time", "volts", "amps")), "volts", "amps");
        if (Curves.TooFew(sheet, 3, "time, volts and amps") is { } few)
        {
            return new(few);
        }

        double cut = sheet.Setting("cut-off");
        double[] volts = sheet["volts"];
        if (Below(sheet, cut) is { } below)
        {
            return new(below);
        }

        double missing = EndOfDischarge.Missing(volts, TakenC(sheet), cut);
        bool reached = double.IsFinite(missing);
        var answer = Summed(sheet, [("capacity", Units.AmpereHour, s => Taken(s, cut, false)), ("energy", Units.WattHour, s => Taken(s, cut, true)), ("mean volts", Units.Volt, s => Taken(s, cut, true) / Taken(s, cut, false))],
            (sheet["time"][^1] - sheet["time"][0]) / (sheet.Count - 1));
        double ah = answer.Find("capacity")!.Value, claim = sheet.Setting("claim") / 3600;
        List<string> says = [string.Create(CultureInfo.InvariantCulture, $"{(reached ? "It gave" : "So far it gave")} {ah:0.000} Ah down to {Math.Max(cut, volts.Min()):0.00} V at about {sheet["amps"].Average():0.00} A.")];
        if (claim > 0)
        {
            says.Add(string.Create(CultureInfo.InvariantCulture, $"That is {(reached ? "" : "at least ")}{100 * ah / claim:0} % of the {claim:0.00} Ah claimed."));
        }

        return new(answer with
        {
            Findings = reached ? Ending(answer.Findings, missing) : BrokenOff(answer.Findings),
            Says = says,
            Next = reached ? [] : [string.Create(CultureInfo.InvariantCulture, $"The log ends at {volts[^1]:0.00} V, above the cut-off of {cut:0.00} V: this is a lower bound. Go on until {cut:0.00} V, or say where this cell is empty with --set cut-off=...V.")],
            Picture = new("time", "s", "volts", "V", sheet["time"], volts, volts),
            Word = reached ? "measured" : "lower bound",
            Remarks = slips,
        });
    }

    /// <summary>What a discharge that was broken off tells: more than it gave is in the cell, and its mean volts are those of the first part.</summary>
    private static TrialFinding[] BrokenOff(IEnumerable<TrialFinding> findings) =>
        [.. findings.Select(finding => finding with { Name = finding.Name == "mean volts" ? "mean volts so far" : LowerBound.Of(finding.Name) })];

    /// <summary>What a discharge tells that ended a little above its cut-off: up to a share more than it gave.</summary>
    private static IReadOnlyList<TrialFinding> Ending(IReadOnlyList<TrialFinding> findings, double missing) => missing == 0 ? findings
        : [.. findings.Select(finding => finding.Value.Unit == Units.AmpereHour || finding.Value.Unit == Units.WattHour ? finding.Wider(EndOfDischarge.Cause(finding.Value.Origin), missing * finding.Value.Value / Math.Sqrt(3)) : finding)];

    private static double[] TakenC(TrialSheet sheet) => new CellLog("", sheet["time"], sheet["amps"], sheet["volts"], [], double.NaN).ChargeC();

    /// <summary>A discharge that begins at its end gives nothing: a cut-off for another cell, or a reading before the load was on.</summary>
    private static Problem? Below(TrialSheet sheet, double cut) => sheet["volts"][0] > cut ? null
        : new("The log begins at its cut-off: there is nothing to count.", "volts", FormattableString.Invariant($"{sheet["volts"][0]:0.00} V"), FormattableString.Invariant($"more than the cut-off of {cut:0.00} V"), "Say where this cell is empty with --set cut-off=...V, or leave out what was read before the discharge.");

    /// <summary>Amps through a known resistor where only volts were read.</summary>
    private static TrialSheet Loaded(TrialSheet read)
    {
        double load = read.Setting("load");
        return read.Has("amps") || !(load > 0) ? read
            : Through(read).Saying(string.Create(CultureInfo.InvariantCulture, $"Amps are worked out from the volts over {load:0.00} Ω."));
    }

    private static TrialSheet Through(TrialSheet sheet) => sheet.Derived("amps", [.. sheet["volts"].Select(v => v / sheet.Setting("load"))], [.. sheet.Own("volts").Select(u => u / sheet.Setting("load"))], Through);

    private static TrialSheet Rising(TrialSheet sheet)
    {
        double last = double.NegativeInfinity;
        List<int> rows = [];
        for (int i = 0; i < sheet.Count; i++)
        {
            if (sheet["time"][i] > last)
            {
                rows.Add(i);
                last = sheet["time"][i];
            }
        }

        return sheet.Rows(rows);
    }

    /// <summary>Charge, or energy, taken until the cut-off; straight lines between readings, the last piece cut where the volts pass it.</summary>
    private static double Taken(TrialSheet s, double cut, bool energy)
    {
        double[] t = s["time"], a = s["amps"], v = s["volts"];
        double sum = 0;
        for (int i = 1; i < t.Length; i++)
        {
            double share = v[i] <= cut && v[i - 1] > cut ? (v[i - 1] - cut) / (v[i - 1] - v[i]) : 1;
            double h = (t[i] - t[i - 1]) * share;
            double late = a[i - 1] + (share * (a[i] - a[i - 1])), lateV = v[i - 1] + (share * (v[i] - v[i - 1]));
            sum += h * (energy ? ((2 * a[i - 1] * v[i - 1]) + (2 * late * lateV) + (a[i - 1] * lateV) + (late * v[i - 1])) / 6 : (a[i - 1] + late) / 2);
            if (v[i] <= cut)
            {
                break;
            }
        }

        return sum;
    }

    /// <summary>Findings that are sums over a log; the moments of its first and last reading are known to a part of its step.</summary>
    private static TrialAnswer Summed(TrialSheet sheet, (string Name, Unit Unit, Func<TrialSheet, double> Of)[] sums, double step)
    {
        double first = sheet.Setting("time doubt", Math.Min(step, 1) / Math.Sqrt(12)), whole = sheet["time"][^1] - sheet["time"][0];
        return new(sheet.Card.Name, ReadOff.Of(sheet, ["volts", "amps"], [.. sums.Select(sum => (sum.Name, sum.Unit, sum.Of, sum.Unit == Units.Volt || sum.Unit == Units.Ampere || sum.Unit == Units.One ? 0 : first * Math.Abs(sum.Of(sheet)) / whole))]), []) { Notes = sheet.Notes };
    }

    private static Checked<TrialAnswer> OpenVolts(TrialSheet read)
    {
        var (sheet, slips) = ReadOff.WithoutSlips(Rising(Loaded(read).Whole("time", "volts", "amps")), "volts", "amps");
        if (Curves.TooFew(sheet, 10, "time, volts and amps down to empty") is { } few)
        {
            return new(few);
        }

        double cut = sheet.Setting("cut-off"), ohms = sheet.Setting("ohms", 0);
        if (Below(sheet, cut) is { } below)
        {
            return new(below);
        }

        double missing = EndOfDischarge.Missing(sheet["volts"], TakenC(sheet), cut);
        if (double.IsNaN(missing))
        {
            // Open volts stand over the share of the charge that is left, and of how much nobody knows.
            var broken = Summed(sheet, [("capacity", Units.AmpereHour, s => Taken(s, cut, false))], 1);
            return new(broken with
            {
                Findings = BrokenOff(broken.Findings),
                Says = [string.Create(CultureInfo.InvariantCulture, $"So far it gave {broken.Findings[0].Value.Value:0.000} Ah down to {sheet["volts"][^1]:0.00} V: how much is left at which volts is not known before it is empty.")],
                Next = [string.Create(CultureInfo.InvariantCulture, $"The log ends at {sheet["volts"][^1]:0.00} V, above the cut-off of {cut:0.00} V. Go on until {cut:0.00} V, or say where this cell is empty with --set cut-off=...V.")],
                Picture = new("time", "s", "volts", "V", sheet["time"], sheet["volts"], sheet["volts"]),
                Word = "lower bound",
                Remarks = slips,
            });
        }

        double all = Taken(sheet, cut, false);
        double rate = sheet["amps"].Average() * 3600 / all;
        double At(TrialSheet s, double left)
        {
            double total = Taken(s, cut, false), taken = 0;
            double[] t = s["time"], a = s["amps"], v = s["volts"];
            for (int i = 1; i < t.Length; i++)
            {
                double piece = (t[i] - t[i - 1]) * (a[i] + a[i - 1]) / 2;
                double want = (1 - left) * total;
                if (taken + piece >= want)
                {
                    double share = (want - taken) / piece;
                    return v[i - 1] + (share * (v[i] - v[i - 1])) + (s.Setting("ohms", 0) * (a[i - 1] + (share * (a[i] - a[i - 1]))));
                }

                taken += piece;
            }

            return v[^1];
        }

        var answer = Summed(sheet, [("capacity", Units.AmpereHour, s => Taken(s, cut, false)),
            .. ((int[])[100, 90, 80, 70, 60, 50, 40, 30, 20, 10, 5]).Select(percent => ($"open volts at {percent} %", Units.Volt, (Func<TrialSheet, double>)(s => At(s, percent / 100.0))))], 1);
        double sagOpen = ohms > 0 ? 0.002 : 0.1 * sheet["amps"].Average();
        return new(answer with
        {
            Findings = [.. Ending(answer.Findings, missing).Select(f => f.Name == "capacity" ? f : f.Wider(Cause.Rectangular("sag in a slow discharge", CauseGroup.Assumption), sagOpen / Math.Sqrt(3)))],
            Says = [string.Create(CultureInfo.InvariantCulture, $"Discharged at {rate:0.000} of its charge an hour{(ohms > 0 ? "; the drop in its ohms is added back" : "; its ohms are not known, so the volts are those under this load")}.")],
            Next = rate > 0.11 ? ["Too fast for open volts: discharge at a twentieth of the charge an hour, or give its ohms."] : [],
            Remarks = slips,
            Picture = new("time", "s", "volts", "V", sheet["time"], sheet["volts"], sheet["volts"]),
        });
    }

    /// <summary>Readings that lie so far apart, s, are taken by hand: our choice.</summary>
    private const double ByHandS = 2;

    private static Checked<TrialAnswer> Pulse(TrialSheet read)
    {
        var sheet = Rising(AmpsOnce.Filled(read).Whole("time", "volts", "amps"));
        if (Curves.TooFew(sheet, 3, "time, volts and amps around a step of load") is { } few)
        {
            return new(few);
        }

        double[] t = sheet["time"], v = sheet["volts"], a = sheet["amps"];
        double most = a.Max() - a.Min();
        int[] steps = [.. Enumerable.Range(1, sheet.Count - 1).Where(i => Math.Abs(a[i] - a[i - 1]) > 0.5 * most)];
        if (steps.Length == 0 || most < 0.01)
        {
            return new(new Problem("No step of the load stands in these readings.", "amps", FormattableString.Invariant($"{a.Min():0.00} to {a.Max():0.00} A"), "a step of half the largest load or more", "Switch the load on between two readings."));
        }

        double First(TrialSheet s) => steps.Average(i => (s["volts"][i - 1] - s["volts"][i]) / (s["amps"][i] - s["amps"][i - 1]));
        int[] on = [.. steps.Where(i => a[i] > a[i - 1])];
        double After(TrialSheet s, double wait) => on.Where(i => Late(i, wait) > 0).Select(i => (s["volts"][i - 1] - Between(s["volts"], i, wait)) / (Between(s["amps"], i, wait) - s["amps"][i - 1])).DefaultIfEmpty(double.NaN).Average();

        // The first reading at or after the wait, while the load is still on.
        int Late(int step, double wait) => Enumerable.Range(step, steps.FirstOrDefault(i => i > step, t.Length) - step).FirstOrDefault(i => t[i] - t[step - 1] >= wait * (1 - 1e-9), 0);
        double Between(double[] values, int step, double wait)
        {
            int at = Late(step, wait), from = Math.Max(step, at - 1);
            return at == from ? values[at] : values[from] + ((values[at] - values[from]) * (t[step - 1] + wait - t[from]) / (t[at] - t[from]));
        }

        double gap = steps.Average(i => t[i] - t[i - 1]);

        // Readings by hand leave open when between two of them the load came on: up to a gap later than the waits are counted from.
        double Slip(double wait, double shorter) => gap >= ByHandS && After(sheet, wait) - After(sheet, shorter) is var slip && double.IsFinite(slip) ? slip / Math.Sqrt(3) : 0;
        List<(string, Unit, Func<TrialSheet, double>, double)> sums = [($"ohms after {Display.Significant(gap, 2)} s", Units.Ohm, First, Slip(2 * gap, gap))];
        foreach (double wait in (double[])[10, 60, 600])
        {
            if (wait > 2 * gap && double.IsFinite(After(sheet, wait)))
            {
                sums.Add((string.Create(CultureInfo.InvariantCulture, $"ohms after {wait:0} s"), Units.Ohm, s => After(s, wait), Slip(wait, wait - gap)));
            }
        }

        double[] each = [.. steps.Select(i => (v[i - 1] - v[i]) / (a[i] - a[i - 1]))];
        double digit = Math.Sqrt(2) * sheet.Own("volts").Average() / most / Math.Sqrt(each.Length);
        double spread = each.Length > 2 ? Math.Sqrt(each.Sum(x => Math.Pow(x - each.Average(), 2)) / (each.Length - 1) / each.Length) : 0;

        // Steps that differ by more than their digits: what lies between them is theirs, and stays beside the digits.
        double beside = Math.Sqrt(Math.Max(0, (spread * spread) - (digit * digit)));
        TrialFinding[] findings = ReadOff.Of(sheet, ["volts", "amps"], [.. sums.Select(sum => (sum.Item1, sum.Item2, sum.Item3, Math.Sqrt((beside * beside) + (sum.Item4 * sum.Item4))))]);
        List<string> says = [string.Create(CultureInfo.InvariantCulture, $"{steps.Length} step{(steps.Length == 1 ? "" : "s")} of load, about {most:0.00} A each.")];
        if (findings.Length == 1)
        {
            says.Add("A short pulse understates the sag of a long burst by 1.5 to 2.5 times.");
        }

        return new(new TrialAnswer(sheet.Card.Name, findings, says)
        {
            Next = findings.Length == 1 ? ["Leave the load on for the length of your burst and read its end."] : [],
            Picture = new("time", "s", "volts", "V", t, v, v),
            Notes = sheet.Notes,
        });
    }

    private static Checked<TrialAnswer> Sag(TrialSheet read)
    {
        var sheet = read.Whole("volts", "amps");
        if ((Curves.TooFew(sheet, 2, "volts and amps") ?? Curves.OneLevel(sheet, "amps", 0.05)) is { } few)
        {
            return new(few);
        }

        var straight = Curves.Line("open volts less ohms times amps", "volts", "amps", Curves.Tell("open volts", Units.Volt, 0), Curves.Tell("ohms", Units.Ohm, (_, p) => -p[1]),
            Curves.Tell("most watts", Units.Watt, (_, p) => p[0] * p[0] / (4 * -p[1])));
        var bent = Curves.Bent("ohms that change with the load", "volts", "amps", Curves.Tell("open volts", Units.Volt, 0), Curves.Tell("ohms", Units.Ohm, (s, p) => -(p[1] + (2 * p[2] * s["amps"].Average()))));
        var answer = BenchFit.Run(sheet, straight, bent with { Decides = "Take a third load between the two." });
        double ohms = answer.Find("ohms")!.Value;
        List<string> says = sheet["amps"].Min() < 0.02 * sheet["amps"].Max() ? ["One point is without load: ohms from there take in what a rested cell has more than a working one. Two loads tell it better."] : [];
        return ohms <= 0
            ? new(new Problem("The volts rise with the load: no source does that.", "volts and amps", FormattableString.Invariant($"{-1000 * ohms:0} mΩ less than nothing"), "volts that fall under load", "Are columns or rows swapped? Read both loads again, each after the same seconds."))
            : new(answer with { Says = says });
    }

    private static Checked<TrialAnswer> Standby(TrialSheet read)
    {
        if (read.Has("amps"))
        {
            var now = read.Whole("amps");
            var mean = BenchFit.Run(now, Curves.Mean("amps", Curves.Tell("standby amps", Units.Microampere, 0)));
            return new(mean with { Says = Empties(mean, now.Setting("capacity")) });
        }

        var sheet = read.Whole("time", "volts");
        if (Curves.TooFew(sheet, 2, "amps, or time and volts over days") is { } few)
        {
            return new(few);
        }

        double slope = read.Setting("volts per charge"), all = read.Setting("capacity");
        if (!(slope > 0) || !(all > 0))
        {
            return new(new Problem("Volts alone do not tell a current.", "settings", "no capacity or no volts per charge", "both", "Read the standby current on a µA range, or add --set capacity=...Ah --set \"volts per charge=...V\" (fall of the open volts over the whole charge near here)."));
        }

        var drained = BenchFit.Run(sheet, Curves.Line("a steady drain", "volts", "time", Curves.Tell("standby amps", Units.Microampere, (s, p) => -p[1] / s.Setting("volts per charge") * s.Setting("capacity"))));
        return new(drained with { Says = Empties(drained, all) });
    }

    private static string[] Empties(TrialAnswer answer, double capacityC) => capacityC > 0 && answer.Findings[0].Value.Si is > 0 and var amps
        ? [string.Create(CultureInfo.InvariantCulture, $"It empties {capacityC / 3600:0.00} Ah in {capacityC / amps / 86400:0} days.")] : [];

    /// <summary>Below this share of its full current no charger charges: it has ended, and its meter shows its zero. Our choice; chargers end at a thirtieth or above.</summary>
    private const double Nothing = 0.01;

    private static Checked<TrialAnswer> Charge(TrialSheet read)
    {
        var (whole, slips) = ReadOff.WithoutSlips(Rising(read.Whole("time", "volts", "amps")), "volts", "amps");
        if (Curves.TooFew(whole, 5, "time, volts and amps") is { } few)
        {
            return new(few);
        }

        // The charge ends where its current falls to nothing and stays there: what a logger writes down after it belongs to no charge.
        double high = whole["amps"].Max();
        int ends = Array.FindLastIndex(whole["amps"], x => x > Nothing * high);
        double open = ends + 1 < whole.Count ? (whole["time"][ends + 1] - whole["time"][ends]) / 2 : 0;
        var sheet = whole.Rows([.. Enumerable.Range(0, ends + 1)]);
        if (Curves.TooFew(sheet, 5, "time, volts and amps while it charges") is { } short1)
        {
            return new(short1);
        }

        double[] t = sheet["time"], a = sheet["amps"];
        int hold = Array.FindLastIndex(a, x => x > 0.95 * high);
        double In(TrialSheet s, int to) => Enumerable.Range(1, to).Sum(i => (s["time"][i] - s["time"][i - 1]) * (s["amps"][i] + s["amps"][i - 1]) / 2);
        int last = t.Length - 1;
        var answer = Summed(sheet,
        [
            ("charge in", Units.AmpereHour, s => In(s, last) + (open * s["amps"][^1])), ("charge current", Units.Ampere, s => Sample.Median([.. s["amps"].Take(hold + 1)])),
            ("end volts", Units.Volt, s => Sample.Median([.. s["volts"].Skip(Math.Max(hold, last - 10))])), ("end current", Units.Ampere, s => s["amps"][^1]),
            ("share at full current", Units.One, s => In(s, hold) / In(s, last)), ("charge time", Units.Second, s => s["time"][^1] - s["time"][0] + open),
        ], 1);

        // It ended somewhere between two readings: at the middle of them, give or take as much.
        answer = open == 0 ? answer : answer with { Findings = [.. answer.Findings.Select(f => f.Name is "charge time" or "charge in" ? f.Wider(Cause.Rectangular("charge-log when it ended", CauseGroup.Trial), open * (f.Name == "charge time" ? 1 : a[^1] / 3600) / Math.Sqrt(3)) : f)] };
        double ratio = a[^1] / high;
        List<string> next = ratio > 0.12 && open == 0 ? [string.Create(CultureInfo.InvariantCulture, $"The current had only fallen to {100 * ratio:0} %: the charge was not at its end. Log on until it ends by itself.")] : [];
        return new(answer with { Says = [string.Create(CultureInfo.InvariantCulture, $"{t[hold] / 60:0} min at full current, then {(t[^1] + open - t[hold]) / 60:0} min while it falls.")], Next = next, Remarks = slips, Picture = new("time", "s", "amps", "A", t, a, a) });
    }
}
