using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Bench tests of a heater's ohms and of the power that holds a temperature.</summary>
internal static class HeaterFits
{
    public static readonly Dictionary<string, Func<TrialSheet, Checked<TrialAnswer>>> All = new(StringComparer.Ordinal)
    {
        ["cold-ohms"] = ColdOhms,
        ["four-wire-ohms"] = FourWire,
        ["volts-amps"] = VoltsAmps,
        ["hold-power"] = HoldPower,
        ["two-point-drop"] = Drop,
    };

    private static Checked<TrialAnswer> ColdOhms(TrialSheet read)
    {
        var sheet = read.Whole("ohms");
        if (Curves.TooFew(sheet, 1, "ohms") is { } few)
        {
            return new(few);
        }

        bool bare = double.IsNaN(sheet.Setting("leads"));
        double leads = bare ? 0 : sheet.Setting("leads");
        double middle = Sample.Median(sheet["ohms"]) - leads;
        if (middle <= 0)
        {
            return new(new Problem("The shorted leads read more than the part with them.", "leads", FormattableString.Invariant($"{leads:G4} Ω of {middle + leads:G4} Ω"), "less than the reading", "Press the probe tips together hard and read the leads again."));
        }

        var answer = BenchFit.Run(sheet, Curves.Mean("ohms", Curves.Tell("ohms", Units.Ohm, (s, p) => p[0] - s.Setting("leads", 0))));
        bool allow = bare && middle < 10;
        if (allow)
        {
            // Common practice, no source: test leads of unknown age are 0.1 to 0.5 Ω.
            answer = answer with { Findings = [.. answer.Findings.Select(f => f with { Value = new Estimate(f.Value.Value - 0.3, f.Value.Unit, f.Value.Doubts.With(Cause.Rectangular("leads not read", CauseGroup.Assumption), 0.2 / Math.Sqrt(3)), f.Value.Origin) })] };
            if (middle - 0.3 <= 0)
            {
                return new(new Problem("So few ohms cannot be told from the leads.", "leads", FormattableString.Invariant($"{middle:G3} Ω"), "the shorted-lead reading", "Press the probes together, note what they read, and add --set leads=...; or take the four-wire test."));
            }
        }

        return new(answer with
        {
            Says =
            [
                !bare ? string.Create(CultureInfo.InvariantCulture, $"Leads of {leads:0.###} Ω, read on the same meter, are taken off; its offset leaves with them.")
                : allow ? "The leads were not read: 0.3 ± 0.2 Ω is allowed for them. Short the probes and add what they read: below 10 Ω it decides." : "The leads were not read; above 10 Ω they hardly count.",
                .. Label(sheet, answer.Find("ohms")!),
            ],
        });
    }

    /// <summary>Cold ohms beside those that a label means at work: from cold to hot the ohms of a heating alloy or of a pure metal can only rise.</summary>
    private static IEnumerable<string> Label(TrialSheet sheet, Estimate cold)
    {
        double volts = sheet.Setting("label volts"), ohm = volts * volts / sheet.Setting("label watts");
        if (!(volts > 0 && ohm > 0 && double.IsFinite(ohm)))
        {
            yield break;
        }

        double z = (cold.Value - ohm) / Math.Sqrt(Square(cold.StandardDoubt) + Square(ohm * LabelShare / Math.Sqrt(3)));
        yield return string.Create(CultureInfo.InvariantCulture, $"Cold it has {cold.Value:0.00} Ω; the label's {sheet.Setting("label watts"):0.##} W at {volts:0.##} V mean {ohm:0.00} Ω at work: ")
            + (z > 3 ? string.Create(CultureInfo.InvariantCulture, $"heating cannot bring these together, for the ohms of a heating alloy or a pure metal only rise. It gives {volts * volts / cold.Value:0.0} W at most. Look at clips and leads, then do not trust the label.")
            : z < -3 ? "heating may do that. Read volts and amps hot (kind volts-amps) before you trust the label."
            : "they agree.");
    }

    private static Checked<TrialAnswer> FourWire(TrialSheet read)
    {
        var sheet = read.Whole("volts", "amps");
        if (Curves.TooFew(sheet, 1, "volts and amps") is { } few)
        {
            return new(few);
        }

        var plain = Curves.Through("ohms alone", "volts", "amps", Curves.Tell("ohms", Units.Ohm, 0));
        var offset = Curves.Line("ohms and a zero that is off", "volts", "amps", Curves.Tell("ohms", Units.Ohm, 1), Curves.Tell("zero off", Units.Volt, 0)) with
        {
            Decides = "Swap the current leads and read again: half of the difference is free of any zero.",
        };
        return new(BenchFit.Run(sheet, plain, offset) with { Says = ["Sense wires carry no current: neither leads nor clips are in these ohms."] });
    }

    private static Checked<TrialAnswer> VoltsAmps(TrialSheet read)
    {
        var sheet = Corrected(read.Whole("volts", "amps"));
        sheet = sheet.Rows([.. Enumerable.Range(0, sheet.Count).Where(i => sheet["volts"][i] > 0 && sheet["amps"][i] > 0)]);
        if (Curves.TooFew(sheet, 1, "volts and amps above nothing") is { } few)
        {
            return new(few);
        }

        double[] volts = sheet["volts"], amps = sheet["amps"];
        double most = Enumerable.Range(0, sheet.Count).Max(i => volts[i] * amps[i]);
        double labelV = sheet.Setting("label volts"), labelW = sheet.Setting("label watts");
        Told[] AtLabel(Func<TrialSheet, double[], double> watts) => labelV > 0 ? [Curves.Tell(LabelWatts, Units.Watt, watts)] : [];
        var steady = new BenchModel("the same ohms at all powers", "amps", ["volts"], s => [Guess(s)], (s, p) => [.. s["volts"].Select(v => v / p[0])],
            [Curves.Tell("ohms", Units.Ohm, 0), Curves.Tell("watts at the highest volts", Units.Watt, (s, p) => Square(s["volts"].Max()) / p[0]), .. AtLabel((_, p) => Square(labelV) / p[0])])
        { Lower = [1e-4], Upper = [1e7] };
        BenchModel Rising(double power) => new("ohms that rise with the watts", "amps", ["volts"], s => [Guess(s) * 0.95, Guess(s) * 0.05 / most],
            (s, p) => [.. s["volts"].Select(v => Current(v, p[0], p[1], power, most))],
            [
                Curves.Tell("ohms", Units.Ohm, 0), Curves.Tell("ohms per watt", Units.Ohm, 1),
                Curves.Tell("hot ohms", Units.Ohm, (s, p) => s["volts"].Max() / Current(s["volts"].Max(), p[0], p[1], power, most)),
                Curves.Tell("watts at the highest volts", Units.Watt, (s, p) => s["volts"].Max() * Current(s["volts"].Max(), p[0], p[1], power, most)),
                .. AtLabel((_, p) => labelV * Current(labelV, p[0], p[1], power, most)),
            ])
        { Further = Curves.Spread(1), Lower = [1e-4, -1e4], Upper = [1e7, 1e4], Decides = "Take one more point at the lowest volts that the meter reads well, and one at full volts when nothing moves any more." };
        BenchModel[] models = [steady, Rising(1)];
        if (sheet.Has("degrees") && sheet.Whole("degrees").Count == sheet.Count && sheet["degrees"].Max() - sheet["degrees"].Min() > 20)
        {
            models = [steady, Tempered(AtLabel((s, p) => Square(labelV) / (p[0] * (1 + (p[1] * (s["degrees"].Max() - 20))))))];
        }

        var answer = BenchFit.Run(sheet, models);
        if (answer.Find("ohms per watt") is not null)
        {
            answer = Bent(answer, BenchFit.Run(sheet, Rising(Slower)));
        }

        List<string> says = [];
        if (sheet.Count < EnoughToBend && Bend(sheet) is var (low, high))
        {
            // The mean of cold and hot ohms is neither; what the hottest reading says alone stands.
            answer = BenchFit.Run(sheet.Rows([high]), steady with { Tells = [Curves.Tell("hot ohms", Units.Ohm, 0), .. steady.Tells.Skip(1)] }) with { Next = answer.Next };
            says.Add(string.Create(CultureInfo.InvariantCulture, $"The ohms rise: {volts[low] / amps[low]:0.00} Ω at {volts[low] * amps[low]:0.0} W, {volts[high] / amps[high]:0.00} Ω at {volts[high] * amps[high]:0.0} W. Of {sheet.Count} readings only the hot ohms are told; the cold ones need {EnoughToBend}, from low to full volts, or cold ohms on an ohmmeter."));
        }

        if (Physics.ReadingChecks.SupplyLimits(volts.Max(), sheet.Setting("set volts")))
        {
            says.Add("The supply was in its current limit: these are not the volts that were set.");
        }

        List<string> next = [.. answer.Next];
        if (answer.Find(LabelWatts) is { } gives && labelW > 0)
        {
            // Ohms at work, not cold ones: a label speaks of the heater at its volts.
            double z = Math.Abs(gives.Value - labelW) / Math.Sqrt(Square(gives.StandardDoubt) + Square(labelW * LabelShare / Math.Sqrt(3)));
            says.Add(string.Create(CultureInfo.InvariantCulture, $"At the label's {labelV:0.##} V it gives {Display.Rounded(gives)} at {labelV * labelV / gives.Value:0.00} Ω; the label says {labelW:0.##} W, {labelV * labelV / labelW:0.00} Ω: {(z < 2 ? "they agree" : z < 3 ? "doubtful" : "they do not agree")} (z {z:0.0})."));
            if (labelV > FarAbove * volts.Max())
            {
                next.Add(string.Create(CultureInfo.InvariantCulture, $"The label's {labelV:0.##} V lie far above the highest volts read, {volts.Max():0.00} V: read nearer to them before you judge the label."));
            }
        }

        return new(answer with { Says = says, Next = next });
    }

    private const string LabelWatts = "watts at the label volts";

    /// <summary>A label may be off by a tenth and still be meant: common practice, no source.</summary>
    private const double LabelShare = 0.1;

    /// <summary>A law of the ohms is good for so many times the highest volts read: our choice.</summary>
    private const double FarAbove = 1.5;

    /// <summary>Three readings for each of the two numbers of a bent line, as every larger model asks.</summary>
    private const int EnoughToBend = 6;

    /// <summary>Ohms that differ by less between low and full watts are taken as one: our choice.</summary>
    private const double LeastBend = 0.05;

    /// <summary>Rows of the least and the most watts, where their ohms differ by more than three times what the readings and the zeros of their meters may be off; null: they do not.</summary>
    private static (int Low, int High)? Bend(TrialSheet sheet)
    {
        double[] volts = sheet["volts"], amps = sheet["amps"];
        int[] rows = [.. Enumerable.Range(0, sheet.Count).OrderBy(i => volts[i] * amps[i])];
        int low = rows[0], high = rows[^1];
        double rise = Math.Log(volts[high] / amps[high] * amps[low] / volts[low]), squares = 0;
        foreach (string column in new[] { "volts", "amps" })
        {
            double[] read = sheet[column], own = sheet.Own(column);
            squares += Square(own[low] / read[low]) + Square(own[high] / read[high]);
            squares += sheet.Shared.Where(error => error.Column == column).Sum(error => Square(error.Offset * ((1 / read[low]) - (1 / read[high]))));
        }

        return rise > LeastBend && rise > 3 * Math.Sqrt(squares) ? (low, high) : null;
    }

    private static BenchModel Tempered(Told[] atLabel) => new("ohms that rise with the degrees", "amps", ["volts", "degrees"], s => [Guess(s), 1e-3],
        (s, p) => [.. s["volts"].Zip(s["degrees"], (v, c) => v / (p[0] * (1 + (p[1] * (c - 20)))))],
        [Curves.Tell("ohms at 20 °C", Units.Ohm, 0), Curves.Tell("temperature coefficient", Units.PerKelvin, 1),
            Curves.Tell("hot ohms", Units.Ohm, (s, p) => p[0] * (1 + (p[1] * (s["degrees"].Max() - 20)))),
            Curves.Tell("watts at the highest volts", Units.Watt, (s, p) => Square(s["volts"].Max()) / (p[0] * (1 + (p[1] * (s["degrees"][Array.IndexOf(s["volts"], s["volts"].Max())] - 20))))), .. atLabel])
    { Lower = [1e-4, -0.05], Upper = [1e7, 0.05], Decides = "Take one more pair of volts and amps 100 K hotter." };

    /// <summary>I from V = I·(R + s·W·(V·I/W)ⁿ), W the most watts: for n = 1 the root that goes to V/R for small s, else by halves from there.</summary>
    private static double Current(double v, double ohm, double perWatt, double power, double mostW)
    {
        double root = (ohm * ohm) + (4 * perWatt * v * v);
        double amps = root <= 0 ? double.NaN : 2 * v / (ohm + Math.Sqrt(root));
        for (int i = 0; power != 1 && i < Halves; i++)
        {
            amps = 0.5 * (amps + (v / (ohm + (perWatt * mostW * Math.Pow(Math.Max(0, v * amps) / mostW, power)))));
        }

        return amps;
    }

    /// <summary>Steps by halves: more than a number has digits for.</summary>
    private const int Halves = 40;

    /// <summary>A hot thing loses more a kelvin the hotter it is, so its degrees and its ohms grow slower than its watts, if not much: the power of 0.95 stands for what a small heater in air does (our choice).</summary>
    private const double Slower = 0.95;

    /// <summary>What each finding would be where the ohms grow slower than the watts is a doubt of it.</summary>
    private static TrialAnswer Bent(TrialAnswer answer, TrialAnswer slower)
    {
        var cause = Cause.Rectangular($"{answer.Kind} how ohms follow watts", CauseGroup.Assumption);
        return answer with
        {
            Findings = [.. answer.Findings.Select(finding => slower.Find(finding.Name) is { } other
                ? finding.Wider(cause, (other.Value - finding.Value.Value) / Math.Sqrt(3)) : finding)],
        };
    }

    private static double Guess(TrialSheet s) => Sample.Median([.. s["volts"].Zip(s["amps"], (v, a) => v / a)]);

    /// <summary>Volts at the part from volts at the supply: the ammeter's burden and the leads take their share.</summary>
    public static TrialSheet Corrected(TrialSheet sheet)
    {
        double ohm = VoltsAt.BesideOhm(sheet.Setting);
        if (!(ohm > 0) || sheet.Count == 0)
        {
            return sheet.Has("amps") && VoltsAt.Open(sheet.Setting) is { } open ? sheet.Saying(open) : sheet;
        }

        double[] volts = [.. sheet["volts"].Zip(sheet["amps"], (v, a) => v - (a * ohm))];
        double most = sheet["amps"].Max() * ohm;
        return sheet.With("volts", volts, sheet.Own("volts")).Saying(string.Create(CultureInfo.InvariantCulture, $"Ammeter and leads of {ohm * 1000:0} mΩ take up to {most:0.000} V: taken off the volts read."));
    }

    private static Checked<TrialAnswer> HoldPower(TrialSheet read)
    {
        var sheet = Watts(read).Whole("watts", "degrees");
        double air = sheet.Setting("air");
        sheet = sheet.Rows([.. Enumerable.Range(0, sheet.Count).Where(i => sheet["degrees"][i] > air + 5 && sheet["watts"][i] > 0)]);
        if (Curves.TooFew(sheet, 1, "watts and degrees, clearly above the air") is { } few)
        {
            return new(few);
        }

        static double Fourth(double c) => Math.Pow(c + 273.15, 4);
        var linear = new BenchModel("loss in proportion to the rise", "watts", ["degrees"], s => [s["watts"].Max() / (s["degrees"].Max() - s.Setting("air"))],
            (s, p) => [.. s["degrees"].Select(c => p[0] * (c - s.Setting("air")))], [Curves.Tell("linear loss", Units.WattPerKelvin, 0)]);
        var power = new BenchModel("loss as a power of the rise", "watts", ["degrees"], s => [s["watts"].Max() / Math.Pow(s["degrees"].Max() - s.Setting("air"), 1.5) * 1e3, 1.5],
            (s, p) => [.. s["degrees"].Select(c => p[0] * 1e-3 * Math.Pow(Math.Max(0, c - s.Setting("air")), p[1]))],
            [Curves.Tell("loss exponent", Units.One, 1)])
        { Further = first => [[first[0], 1], [first[0], 3]], Lower = [1e-9, 0.3], Upper = [1e6, 4.5] };
        var radiating = new BenchModel("loss in proportion and radiation", "watts", ["degrees"],
            s => [0.5 * s["watts"].Max() / (s["degrees"].Max() - s.Setting("air")), 0.5e11 * s["watts"].Max() / (Fourth(s["degrees"].Max()) - Fourth(s.Setting("air")))],
            (s, p) => [.. s["degrees"].Select(c => (p[0] * (c - s.Setting("air"))) + (p[1] * 1e-11 * (Fourth(c) - Fourth(s.Setting("air")))))],
            [
                Curves.Tell("linear loss", Units.WattPerKelvin, 0), Curves.Tell("radiating area", Units.SquareMetre, (_, p) => p[1] * 1e-11 / Constants.StefanBoltzmann),
            ])
        { Decides = "Hold one more power, 1.5 times the highest or half the lowest, until nothing moves." };
        double span = sheet["watts"].Max() / sheet["watts"].Min();
        if (span < 1.15)
        {
            return new(BenchFit.Run(sheet, linear) with { Says = ["One power tells the loss at one temperature only.", .. HeatFits.Cooler(sheet["degrees"].Max() - air) is { } cooler ? new[] { cooler } : []], Next = ["Hold a second power, 1.5 times this one, until nothing moves: it tells whether the loss bends."] });
        }

        // Two plateaus are as many as the numbers sought: the split goes through both, and its doubt comes from the readings' own.
        var answer = sheet.Count < 6 ? BenchFit.Run(sheet, radiating) : BenchFit.Run(sheet, linear, radiating);
        var bend = BenchFit.Run(sheet, power);
        var n = bend.Findings[0];
        bool bends = n.Value.Value - (2 * n.Value.StandardDoubt) > 1;
        List<string> says = [string.Create(CultureInfo.InvariantCulture, $"The loss grows as the rise to the power {Display.Rounded(n.Value)}: {(bends ? "a loss in proportion to the rise is ruled out" : "a loss in proportion to the rise is not ruled out")}.")];
        if (answer.Find("linear loss") is { Value: < 0 })
        {
            says.Add("The part in proportion comes out below nothing: these plateaus do not fit this form. Were both waited for, and are the watts hot ones?");
        }

        return new(answer with { Findings = [.. answer.Findings, n], Says = says, Tried = [.. answer.Tried, .. bend.Tried.Select(t => t with { Chosen = false, Why = "for the exponent" })] });
    }

    /// <summary>Watts as read, or volts times amps.</summary>
    public static TrialSheet Watts(TrialSheet read)
    {
        if (read.Has("watts") || !read.Has("volts"))
        {
            return read;
        }

        return Worked(Corrected(read));
    }

    private static TrialSheet Worked(TrialSheet sheet)
    {
        double[] v = sheet["volts"], a = sheet["amps"], uv = sheet.Own("volts"), ua = sheet.Own("amps");
        double[] ohms = [.. Enumerable.Range(0, sheet.Count).Select(i => sheet.Setting("ohms") * (1 + (sheet.Setting("temperature coefficient", 0) * (sheet["degrees"][i] - 20))))];
        double[] watts = [.. Enumerable.Range(0, sheet.Count).Select(i => double.IsFinite(a[i]) ? v[i] * a[i] : v[i] * v[i] / ohms[i])];
        double[] doubts = [.. Enumerable.Range(0, sheet.Count).Select(i => double.IsFinite(a[i]) ? Math.Sqrt(Square(v[i] * ua[i]) + Square(a[i] * uv[i])) : 2 * v[i] * uv[i] / ohms[i])];
        return sheet.Derived("watts", watts, [.. doubts.Select(d => double.IsFinite(d) ? d : 0)], moved => Worked(moved));
    }

    private static Checked<TrialAnswer> Drop(TrialSheet read)
    {
        var sheet = read.Whole("amps", "drop");
        sheet = sheet.Rows([.. Enumerable.Range(0, sheet.Count).Where(i => sheet["amps"][i] != 0)]);
        if (Curves.TooFew(sheet, 1, "amps and drop") is { } few)
        {
            return new(few);
        }

        double most = sheet["amps"].Max(Math.Abs);
        static double Each(TrialSheet s) => Math.Max(1, s.Setting("touches", 1));
        var plain = Curves.Through("ohms alone", "drop", "amps", Curves.Tell("ohms", Units.Ohm, (s, p) => p[0] / Each(s)), Curves.Tell("lost watts", Units.Watt, (s, p) => p[0] * Square(s["amps"].Max(Math.Abs))));
        var zero = Curves.Line("ohms and a zero that is off", "drop", "amps", Curves.Tell("ohms", Units.Ohm, (s, p) => p[1] / Each(s)), Curves.Tell("lost watts", Units.Watt, (s, p) => p[1] * Square(s["amps"].Max(Math.Abs))), Curves.Tell("zero off", Units.Volt, 0)) with
        {
            Decides = "Read the drop with the current off: that is the zero of the meter.",
        };
        var off = read.Whole("amps", "drop");
        bool zeroRead = off.Count > sheet.Count && sheet.Count >= 2;

        // Where the zero was read, it is taken off whatever the fit would find by itself.
        var answer = zeroRead ? BenchFit.Run(off, zero with { Decides = "" }) : BenchFit.Run(sheet, plain, zero);
        double volts = sheet.Setting("source volts", double.NaN), drop = most * (answer.Find("ohms")?.Value ?? 0) * Each(sheet);
        return new(answer with { Says = volts > 0 ? [string.Create(CultureInfo.InvariantCulture, $"At {most:0.0} A it loses {drop * 1000:0} mV, {100 * drop / volts:0.0} % of {volts:0.0} V.")] : [string.Create(CultureInfo.InvariantCulture, $"At {most:0.0} A it loses {drop * 1000:0} mV.")] });
    }

    private static double Square(double x) => x * x;
}
