using System.Globalization;
using Heatwright.Handbook;
using Heatwright.Numerics;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Bench tests of temperature sensors and their amplifier.</summary>
internal static class SensorFits
{
    public static readonly Dictionary<string, Func<TrialSheet, Checked<TrialAnswer>>> All = new(StringComparer.Ordinal)
    {
        ["sensor-test"] = IsSensor,
        ["couple-type"] = CoupleKind.Run,
        ["sensor-ohms"] = Ohms,
        ["sensor-counts"] = Counts,
        ["amplifier"] = Gain,
    };

    /// <summary>Volts a kelvin that every usual couple but type B gives well beyond: types R and S give 5.5 to 7.5 µV/K between 0 and 100 °C ([nist-srd60]); the half of it is our choice.</summary>
    private const double Weakest = 3e-6;

    /// <summary>Does this pair make volts from heat at all: sensor, no couple, parasitic, pick-up, or cannot tell.</summary>
    /// <remarks>A couple gives nothing where both ends are equally warm, gives volts when its far end is warmed, turns its sign with the leads, and gives the
    /// same again. Volts that appear when only a joint or the leads are warmed are parasitic; volts that come with the heater's current, or do not turn, are picked up.</remarks>
    private static Checked<TrialAnswer> IsSensor(TrialSheet read)
    {
        var sheet = read.Whole("volts");
        string[] state = sheet.Words("state");
        if (state.All(word => word.Length == 0))
        {
            return new(new Problem("It is not said what each reading was.", "state", "empty", "level, warm, swapped, again, joint or heater", "Write the state beside each reading."));
        }

        double digit = Math.Max(sheet.Own("volts").Max(), 1e-6);
        var zeroOff = sheet.Shared.Where(e => e.Column == "volts").Sum(e => e.Offset);
        double u = Math.Sqrt((digit * digit) + (zeroOff * zeroOff));
        double? Mean(string word) => Enumerable.Range(0, sheet.Count).Where(i => state[i] == word).Select(i => (double?)sheet["volts"][i]).Average();

        double? level = Mean("level"), warm = Mean("warm"), swapped = Mean("swapped"), again = Mean("again"), joint = Mean("joint"), heater = Mean("heater");
        List<string> says = [], next = [];
        string word;
        double zero = level ?? 0, rise = sheet.Setting("rise");
        if (heater is { } on && Math.Abs(on - zero) > Math.Max(5 * u, 0.5 * Math.Abs((warm ?? zero) - zero)))
        {
            word = "pick-up";
            says.Add(Micro("With only the heater's current on it shows", on - zero) + ": that is the current, not the heat.");
            next.Add("Read in the pauses of the heater, a millisecond after it goes off, and twist the sensor leads.");
        }
        else if (warm is not { } hot || level is null)
        {
            word = "cannot tell";
            next.Add(level is null ? "Read it once with both ends equally warm." : "Warm the far end and read again.");
        }
        else if (Math.Abs(hot - zero) < 4 * u && !(joint is { } other && Math.Abs(other - zero) > 4 * u) && Math.Abs(hot - zero) + (4 * u) < Weakest * rise)
        {
            word = "no couple";
            says.Add(Micro("Warmed, it changes by", hot - zero) + string.Create(CultureInfo.InvariantCulture, $" over {rise:0} K, less than {(Math.Abs(hot - zero) + (4 * u)) / rise * 1e6:0.0} µV/K whatever the meter is off: a couple gives 5 µV/K or more (type B alone gives next to nothing below 100 °C)."));
            next.Add("Read its ohms cold and warm (kind unknown-part): a heater, a resistance sensor or a plain wire.");
        }
        else if (Math.Abs(hot - zero) < 4 * u)
        {
            word = joint is { } at && Math.Abs(at - zero) > 4 * u ? "parasitic" : "cannot tell";
            says.Add(Micro("Warmed, it changes by", hot - zero) + $", within what the meter can be off ({u * 1e6:0} µV).".ToString(CultureInfo.InvariantCulture));
            next.Add("Warm it more, or read on a finer range: a couple gives 4 mV at 100 °C, this meter must show hundredths of that.");
        }
        else if (swapped is not { } turned)
        {
            word = "cannot tell";
            next.Add("Swap the meter leads and read again: a couple turns its sign.");
        }
        else if (Math.Abs((turned - zero) + (hot - zero)) > Math.Max(6 * u, 0.25 * Math.Abs(hot - zero)))
        {
            word = "pick-up";
            says.Add("With the leads swapped it does not turn its sign: something outside is picked up.");
            next.Add("Twist the leads, move away from lamps and chargers, and read again.");
        }
        else if (joint is { } only && Math.Abs(only - zero) > 0.5 * Math.Abs(hot - zero))
        {
            word = "parasitic";
            says.Add(Micro("Warming only the joint or the leads gives", only - zero) + ": the couple sits there, not in the tip.");
            next.Add("Keep both joints at one temperature, or take the leads of the same alloy to the board.");
        }
        else if (again is { } second && Math.Abs(second - hot) > Math.Max(6 * u, 0.3 * Math.Abs(hot - zero)))
        {
            word = "cannot tell";
            says.Add("The second warming does not repeat the first.");
            next.Add("Warm it to the same temperature, hold, and read twice.");
        }
        else
        {
            word = "sensor";
            says.Add(again is null ? "It turns its sign with the leads." : "It turns its sign with the leads and repeats.");
        }

        List<TrialFinding> found = [];
        if (word == "sensor")
        {
            // Leads swapped: half of the difference is free of the meter's zero.
            double Volts(TrialSheet s) => (Of(s, "warm") - Of(s, "swapped")) / 2;
            double Of(TrialSheet s, string name) => Enumerable.Range(0, s.Count).Where(i => state[i] == name).Average(i => s["volts"][i]);
            found.AddRange(ReadOff.Of(sheet, ["volts"], ("warm volts", Units.Millivolt, Volts, 0)));
            if (rise > 0)
            {
                double slope = Volts(sheet) / rise * 1e6;
                found.AddRange(ReadOff.Of(sheet, ["volts"], ("slope", Units.MicrovoltPerKelvin, s => Volts(s) / s.Setting("rise"), 0)));
                if (Physics.ReadingChecks.NotACoupleSlope(Math.Abs(slope) * 1e-6))
                {
                    word = Math.Abs(slope) < 5 ? "parasitic" : "pick-up";
                    says.Add(string.Create(CultureInfo.InvariantCulture, $"{slope:0.0} µV/K is no slope of a couple (5 to 90 µV/K)."));
                }
            }
        }

        return new(new TrialAnswer(sheet.Card.Name, found, [$"Answer: {word}.", .. says]) { Word = word, Next = next, Notes = sheet.Notes });

        static string Micro(string what, double volts) => string.Create(CultureInfo.InvariantCulture, $"{what} {volts * 1e6:0} µV");
    }

    /// <summary>Ohms against degrees: platinum, a metal, or a thermistor.</summary>
    private static Checked<TrialAnswer> Ohms(TrialSheet read)
    {
        var sheet = read.Whole("ohms", "degrees");
        sheet = sheet.Rows([.. Enumerable.Range(0, sheet.Count).Where(i => sheet["ohms"][i] > 0)]);
        if ((Curves.TooFew(sheet, 2, "ohms and degrees") ?? Curves.OneLevel(sheet, "degrees", 10)) is { } few)
        {
            return new(few);
        }

        static double K(double c) => c + 273.15;
        double leads = sheet.Setting("leads", 0);
        var rows = Enumerable.Range(0, sheet.Count).OrderBy(i => sheet["degrees"][i]).ToArray();
        double first = sheet["ohms"][rows[0]] - leads, last = sheet["ohms"][rows[^1]] - leads;
        bool falls = last < 0.9 * first;
        double[] At(TrialSheet s, Func<double, double> ohm) => [.. s["degrees"].Select(c => ohm(c) + s.Setting("leads", 0))];
        BenchModel[] models;
        if (falls)
        {
            double beta = Thermistor.BetaK((sheet["degrees"][rows[0]], first), (sheet["degrees"][rows[^1]], last));
            models =
            [
                new("thermistor by beta", "ohms", ["degrees"], _ => [Math.Log(first) + (beta * ((1 / Thermistor.NominalK) - (1 / K(sheet["degrees"][rows[0]])))), beta],
                    (s, p) => At(s, c => Math.Exp(p[0]) * Math.Exp(p[1] * ((1 / K(c)) - (1 / Thermistor.NominalK)))),
                    [Curves.Tell("ohms at 25 °C", Units.Ohm, (_, p) => Math.Exp(p[0])), Curves.Tell("beta", Units.Kelvin, 1)])
                { Lower = [-5, 100], Upper = [20, 20000] },
                new("thermistor that bends", "ohms", ["degrees"], _ => [Math.Log(first) + (beta * ((1 / Thermistor.NominalK) - (1 / K(sheet["degrees"][rows[0]])))), beta, 1e4],
                    (s, p) => At(s, c => ((1 / K(c)) - (1 / Thermistor.NominalK)) is var x ? Math.Exp(p[0] + (p[1] * x) + (p[2] * x * x)) : 0),
                    [Curves.Tell("ohms at 25 °C", Units.Ohm, (_, p) => Math.Exp(p[0])), Curves.Tell("beta at 25 °C", Units.Kelvin, 1)])
                { Lower = [-5, 100, -1e7], Upper = [20, 20000, 1e7], Decides = "Take one more reading in the middle of the span." },
            ];
        }
        else
        {
            var platinum = PlatinumSensors.Iec60751;
            double ratio = (last / first - 1) / (sheet["degrees"][rows[^1]] - sheet["degrees"][rows[0]]);
            var metal = new BenchModel("a metal", "ohms", ["degrees"], _ => [first, ratio], (s, p) => At(s, c => p[0] * (1 + (p[1] * (c - 20)))),
                [Curves.Tell("ohms at 20 °C", Units.Ohm, 0), Curves.Tell("temperature coefficient", Units.PerKelvin, 1)]);
            var bent = new BenchModel("a metal that bends", "ohms", ["degrees"], _ => [first, ratio, 1e-8], (s, p) => At(s, c => p[0] * (1 + (p[1] * (c - 20)) + (p[2] * (c - 20) * (c - 20)))),
                [Curves.Tell("ohms at 20 °C", Units.Ohm, 0), Curves.Tell("temperature coefficient", Units.PerKelvin, 1)]);
            double Ratio(double c) => Platinum.ResistanceOhm(platinum, 1, Math.Clamp(c, platinum.MinC, platinum.MaxC));
            var pt = new BenchModel("platinum", "ohms", ["degrees"], _ => [first / Ratio(sheet["degrees"][rows[0]])],
                (s, p) => At(s, c => Ratio(c) * p[0]), [Curves.Tell("ohms at 0 °C", Units.Ohm, 0)]);
            var found = BenchFit.Run(sheet, pt);

            // Platinum where the whole row lies within what an ice bath and a hand thermometer are off, and its ohms at 0 °C are those of a usual sensor.
            double zeroOhm = found.Findings[0].Value.Value;
            double offK = found.Tried[0].Spread / (zeroOhm * 3.9e-3), alpha = ((last / first) - 1) / (sheet["degrees"][rows[^1]] - sheet["degrees"][rows[0]]);
            double expected = (Ratio(sheet["degrees"][rows[^1]]) / Ratio(sheet["degrees"][rows[0]]) - 1) / (sheet["degrees"][rows[^1]] - sheet["degrees"][rows[0]]);
            models = offK < 1.5 && Math.Abs(alpha / expected - 1) < 0.05 && ((double[])[100, 200, 500, 1000]).Any(nominal => Math.Abs((zeroOhm / nominal) - 1) < 0.03) ? [pt] : [metal, bent];
        }

        var answer = BenchFit.Run(sheet, models);
        string word = answer.Tried.First(t => t.Chosen).Name;
        double? zero = answer.Find("ohms at 0 °C")?.Value;
        string nominal = zero is { } r ? ((double[])[100, 500, 1000]).Where(n => Math.Abs(r - n) < 0.03 * n).Select(n => string.Create(CultureInfo.InvariantCulture, $"Pt{n:0}")).FirstOrDefault("") : "";
        return new(answer with { Word = nominal.Length > 0 ? nominal : word, Says = [$"Answer: {(nominal.Length > 0 ? nominal : word)}."] });
    }

    /// <summary>Converter counts against degrees while cooling: offset and gain of the chain, or a plain curve for no standard type.</summary>
    private static Checked<TrialAnswer> Counts(TrialSheet read)
    {
        var sheet = read.Whole("counts", "degrees");
        if ((Curves.TooFew(sheet, 4, "counts and degrees") ?? Curves.OneLevel(sheet, "degrees", 30)) is { } few)
        {
            return new(few);
        }

        string type = sheet.Words("type").FirstOrDefault(word => word.Length > 0, "").ToUpperInvariant();
        var curve = type.Length > 0 ? Thermocouples.Find(type) : null;
        if (type.Length > 0 && curve is null)
        {
            return new(new Problem("There is no such type of couple.", "type", type, string.Join(", ", Thermocouples.All.Select(c => c.Type)), "Leave the column out for a plain curve."));
        }

        if (curve is null)
        {
            double[] counts = sheet["counts"];
            // The mean, not the middle of the outermost: of many counts it is known better than one.
            double middle = counts.Average(), half = Math.Max(1, (counts.Max() - counts.Min()) / 2);
            BenchModel Power(int order) => new($"a curve of order {order}", "degrees", ["counts"], s => [.. Curves.Guess([.. s["counts"].Select(c => (c - middle) / half)], s["degrees"]), .. Enumerable.Repeat(0.1, order - 1)],
                (s, p) => [.. s["counts"].Select(c => Enumerable.Range(0, order + 1).Sum(j => p[j] * Math.Pow((c - middle) / half, j)))],
                [new("degrees in the middle", Units.Celsius, (_, p) => p[0] + 273.15), Curves.Tell("kelvin over half the span", Units.Kelvin, 1)]);
            return new(BenchFit.Run(sheet, [.. Enumerable.Range(sheet.Count >= 9 ? 2 : 1, sheet.Count >= 12 ? 2 : 1).Select(Power)]) with { Says = ["No type is said: a plain curve, good between the readings and no further than 5 % beyond."] });
        }

        double Emf(TrialSheet s, double c) => ColdJunction.VoltageV(curve, c, s.Setting("cold"));
        var chain = new BenchModel($"offset and gain before a type {type}", "counts", ["degrees"], s => Curves.Guess([.. s["degrees"].Select(c => Emf(s, c))], s["counts"]),
            (s, p) => [.. s["degrees"].Select(c => p[0] + (p[1] * Emf(s, c)))], [Curves.Tell("offset counts", Units.One, 0), Curves.Tell("counts per mV", Units.One, (_, p) => p[1] / 1000)]);
        return new(BenchFit.Run(sheet, chain) with { Says = [$"Counts = offset + gain · (E(T) − E(T cold)), type {type}: safe beyond the last reading."] });
    }

    private static Checked<TrialAnswer> Gain(TrialSheet read)
    {
        var sheet = read.Whole("volts in", "volts out");
        if ((Curves.TooFew(sheet, 2, "volts in and volts out") ?? Curves.OneLevel(sheet, "volts in", 1e-5)) is { } few)
        {
            return new(few);
        }

        double top = sheet.Setting("supply");
        List<string> says = [];
        if (double.IsFinite(top))
        {
            int[] free = [.. Enumerable.Range(0, sheet.Count).Where(i => sheet["volts out"][i] < 0.98 * top)];
            says.AddRange(free.Length < sheet.Count ? [$"{sheet.Count - free.Length} readings sit at the supply rail: the amplifier is at its end there, they are not used."] : Array.Empty<string>());
            sheet = sheet.Rows(free);
        }

        if (Curves.TooFew(sheet, 2, "volts out below the rail") is { } none)
        {
            return new(none);
        }

        var line = Curves.Line("gain and offset", "volts out", "volts in", Curves.Tell("gain", Units.One, 1), Curves.Tell("output offset", Units.Millivolt, 0), Curves.Tell("input offset", Units.Microvolt, (_, p) => p[0] / p[1]));
        var bent = Curves.Bent("a gain that bends", "volts out", "volts in", Curves.Tell("gain", Units.One, (s, p) => p[1] + (2 * p[2] * s["volts in"].Average())), Curves.Tell("output offset", Units.Millivolt, 0)) with { Decides = "Take a reading near the top: does it bend there because the rail is near?" };
        var answer = BenchFit.Run(sheet, line, bent);
        double wanted = sheet.Setting("built gain");
        if (wanted > 0 && answer.Find("gain") is { } gain)
        {
            says.Add(string.Create(CultureInfo.InvariantCulture, $"Built for {wanted:0.#}, it has {gain.Value:0.0}: {(Math.Abs(gain.Value - wanted) < 2 * Math.Sqrt(Math.Pow(gain.StandardDoubt, 2) + Math.Pow(0.02 * wanted / Math.Sqrt(3), 2)) ? "as its resistors allow" : "a resistor is not what its print says, or the input is loaded")}."));
        }

        return new(answer with { Says = says });
    }
}
