using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>An unknown part by meter, ice and boiling water; a new purchase against the old ones; a maker's own line.</summary>
internal static class PartFits
{
    public static readonly Dictionary<string, Func<TrialSheet, Checked<TrialAnswer>>> All = new(StringComparer.Ordinal)
    {
        ["unknown-part"] = Unknown,
        ["incoming"] = Incoming,
        ["own-line"] = OwnLine,
    };

    /// <summary>What each pair of wires of a part is: heater, sensor of which kind, open, shorted.</summary>
    /// <remarks>Bounds between classes: common practice, no source. Slopes of metals from their handbook values; a heater whose ohms hardly change cannot be told
    /// from a plain resistor except by what it stands.</remarks>
    private static Checked<TrialAnswer> Unknown(TrialSheet read)
    {
        string[] pair = read.Words("pair");
        List<TrialFinding> found = [];
        List<string> says = [], next = [], names = [];
        foreach (string name in pair.Distinct())
        {
            int[] rows = [.. Enumerable.Range(0, read.Count).Where(i => pair[i] == name)];
            var sheet = read.Rows(rows);
            string label = name.Length > 0 ? name : "the two wires";
            var ohms = sheet.Whole("ohms", "degrees");
            double[] volts = [.. sheet["volts"].Where(double.IsFinite)];
            double leads = sheet.Setting("leads", 0);
            if (ohms.Count == 0 && volts.Length == 0)
            {
                int said = sheet["degrees"].Count(double.IsFinite);
                names.Add(said > 0 ? "open" : "cannot tell");
                says.Add(said > 0 ? $"{label}: no ohms and no volts: open, or no pair." : $"{label}: nothing read.");
                continue;
            }

            double coldC = ohms.Count > 0 ? ohms["degrees"].Min() : 0, hotC = ohms.Count > 0 ? ohms["degrees"].Max() : 0;
            double cold = Mean(ohms, coldC) - leads, hot = Mean(ohms, hotC) - leads;
            double u = ohms.Count == 0 ? double.NaN : Math.Sqrt(2 * Math.Pow(ohms.Own("ohms").Max(), 2)) + (0.002 * Math.Abs(cold)) + (double.IsNaN(sheet.Setting("leads")) && cold < 20 ? 0.05 : 0);
            double span = hotC - coldC;
            bool warmVolts = volts.Any(v => Math.Abs(v) is var size && size > LeastCoupleV(sheet) && size < MostCoupleV) || (volts.Length >= 2 && volts.Max() - volts.Min() > LeastCoupleV(sheet));
            string word = Class(cold, hot, span, u, warmVolts);
            names.Add(word);
            if (ohms.Count > 0 && double.IsFinite(cold))
            {
                double Less(TrialSheet s, double degrees) => Mean(s, degrees) - s.Setting("leads", 0);
                double beside = double.IsNaN(sheet.Setting("leads")) && cold < 20 ? 0.05 : 0;
                found.AddRange(ReadOff.Of(ohms, ["ohms"], ($"{label}: ohms cold", Units.Ohm, s => Less(s, coldC), beside)));
                if (span > 20 && cold > 0)
                {
                    int[] low = Near(ohms, coldC), high = Near(ohms, hotC);
                    double Of(TrialSheet s, string column, int[] these) => these.Average(i => s[column][i]);
                    double Alpha(TrialSheet s)
                    {
                        double leads = s.Setting("leads", 0), coldAt = Of(s, "degrees", low);
                        double about = (((Of(s, "ohms", high) - leads) / (Of(s, "ohms", low) - leads)) - 1) / (Of(s, "degrees", high) - coldAt);
                        return about / (1 + (about * (20 - coldAt)));
                    }

                    found.AddRange(ReadOff.Of(ohms, ["ohms", "degrees"], ($"{label}: temperature coefficient", Units.PerKelvin, Alpha, beside / cold / span)));
                }
            }

            says.Add(string.Create(CultureInfo.InvariantCulture, $"{label}: {word}{(ohms.Count > 0 ? FormattableString.Invariant($", {cold:0.###} Ω at {coldC:0} °C") : "")}{(span > 20 ? FormattableString.Invariant($", {hot:0.###} Ω at {hotC:0} °C. Ohms cold are those at {coldC:0} °C, the temperature coefficient is that of the ohms at 20 °C") : "")}."));
            if (span < 50 && ohms.Count > 0)
            {
                next.Add($"{label}: read it in melting ice (0 °C) and in boiling water (100 °C less 1 K for every 300 m of height), and write the degrees beside.");
            }

            if (word == "thermocouple")
            {
                next.Add($"{label}: kind couple-type tells which: millivolts at three temperatures or more, and the degrees where its wires meet the meter.");
            }
            else if (cold < 30 && Math.Abs(hot - cold) < 3 * u && volts.Length == 0)
            {
                next.Add($"{label}: read millivolts with the far end in boiling water: about 4 mV says couple (kind couple-type tells which), nothing says heater or wire.");
            }
        }

        if (names.Count == 0)
        {
            return new(new Problem("No pair of wires was read.", "pair", "no lines", "one line a pair and temperature", "Read ohms between two wires, cold and warm."));
        }

        if (pair.Distinct().Count() == 3 && read.Whole("ohms").Count >= 3)
        {
            says.Add("Three wires: the pair with the most ohms spans both others; what they share is the common wire.");
        }

        return new(new TrialAnswer(read.Card.Name, found, says) { Word = string.Join(", ", names.Distinct()), Next = [.. next.Distinct()], Notes = read.Notes });
    }

    /// <summary>More than any couple gives: 80 mV is the most of a table (type E, [nist-srd60]).</summary>
    private const double MostCoupleV = 0.1;

    /// <summary>Volts that are no zero: 0.3 mV, some 10 K of a usual couple (our choice), or more than the meter may be off. The other end lies in the room, so one reading from a bath is enough.</summary>
    private static double LeastCoupleV(TrialSheet sheet)
    {
        double own = sheet.Own("volts").Where(double.IsFinite).DefaultIfEmpty(0).Max(), zero = sheet.Shared.Where(e => e.Column == "volts").Sum(e => e.Offset);
        return Math.Max(3e-4, 4 * Math.Sqrt((own * own) + (zero * zero)));
    }

    private static double Mean(TrialSheet sheet, double degrees) => Near(sheet, degrees).Select(i => sheet["ohms"][i]).DefaultIfEmpty(double.NaN).Average();

    private static int[] Near(TrialSheet sheet, double degrees) => [.. Enumerable.Range(0, sheet.Count).Where(i => Math.Abs(sheet["degrees"][i] - degrees) < 3)];

    private static string Class(double cold, double hot, double span, double u, bool warmVolts)
    {
        double alpha = span > 20 ? (hot / cold - 1) / span : double.NaN;
        double doubt = Math.Sqrt(2) * u / cold / span;
        return (cold, alpha) switch
        {
            _ when warmVolts && (cold < 100 || !double.IsFinite(cold)) => "thermocouple",
            ( < 0.05, _) => "wire or short",
            (_, double.NaN) => cold > 2000 ? "thermistor, or broken" : "cannot tell",
            (_, < -0.005) => "thermistor (NTC)",
            ( > 80 and < 1300, > 3.0e-3 and < 4.4e-3) when IsNear(cold, 100) => "platinum sensor Pt100",
            ( > 80 and < 1300, > 3.0e-3 and < 4.4e-3) when IsNear(cold, 1000) => "platinum sensor Pt1000",
            (_, > 0.05) => "self-limiting heater (PTC)",
            ( > 30, > 3e-3) => "metal sensor or heater of a pure metal",
            (_, > 1e-3) when alpha > 3 * doubt => "heater whose ohms rise with heat: it can sense itself",
            ( < 300, _) when Math.Abs(alpha) < 1e-3 + (2 * doubt) => doubt > 1.5e-3 ? "cannot tell" : "heater of a heating alloy, or a resistor",
            _ => "cannot tell",
        };
    }

    private static bool IsNear(double cold, double nominal) => cold > 0.93 * nominal && cold < 1.13 * nominal;

    private static TrialFinding Plain(string name, double value, double u, Unit unit, Origin origin) =>
        new(name, new Estimate(value, unit, Doubts.From(Cause.Normal($"{name} scatter", CauseGroup.Trial), Math.Max(u, 1e-12)), origin), u, double.PositiveInfinity);

    /// <summary>Does a new purchase belong to the old samples, and how large a change would this check miss?</summary>
    /// <remarks>The new mean lies with the old ones where it falls inside t·s·√(1/n_old + 1/n_new) of their mean ([jcgm-100] 4.2 for s and its degrees of
    /// freedom). The chance of missing a change d is that of a shifted normal inside those limits.</remarks>
    private static Checked<TrialAnswer> Incoming(TrialSheet read)
    {
        var sheet = read.Whole("value");
        string[] lot = sheet.Words("lot");
        double[] old = [.. sheet["value"].Where((_, i) => lot[i] == "old")], now = [.. sheet["value"].Where((_, i) => lot[i] == "new")];
        if (old.Length < 2 || now.Length < 1)
        {
            return new(new Problem("An incoming check compares a new purchase with old samples.", "lot", $"{old.Length} old, {now.Length} new", "2 old or more, 1 new or more", "Write old or new beside each value."));
        }

        double mean = old.Average(), other = now.Average();
        double spread = Math.Sqrt(old.Sum(x => (x - mean) * (x - mean)) / (old.Length - 1));
        double read1 = Math.Sqrt((sheet["reading doubt"].Where(double.IsFinite).DefaultIfEmpty(0).Average() is var d ? d * d : 0) + sheet.Own("value").Average(o => o * o));
        spread = Math.Max(spread, read1);
        if (spread == 0)
        {
            return new(new Problem("All old samples read alike and no doubt of a reading is said.", "value", FormattableString.Invariant($"{mean:G4}"), "some spread, or a doubt", "Add a column 'reading doubt'."));
        }

        double both = spread * Math.Sqrt((1.0 / old.Length) + (1.0 / now.Length));
        double t = Quantiles.StudentT(0.975, old.Length - 1);
        bool differs = Math.Abs(other - mean) > t * both;
        double change = sheet.Setting("change") * Math.Abs(mean);
        double miss = Quantiles.NormalShare(t - (change / both)) - Quantiles.NormalShare(-t - (change / both));
        var origin = new Origin.Fitted(new TrialId(sheet.Card.Name), [new RunId(sheet.Card.Name)]);
        double seen = (t + Quantiles.Normal(0.9)) * both;
        return new(new TrialAnswer(sheet.Card.Name,
            [
                Plain("old mean", mean, spread / Math.Sqrt(old.Length), Units.One, origin), Plain("spread between samples", spread, spread / Math.Sqrt(2.0 * (old.Length - 1)), Units.One, origin),
                new("new less old", new Estimate(other - mean, Units.One, Doubts.From(Cause.Normal("incoming difference", CauseGroup.Trial), both), origin), both, old.Length - 1), Plain("chance of missing the change", miss, 0, Units.One, origin),
            ],
            [
                string.Create(CultureInfo.InvariantCulture, $"New {other:G4}, old {mean:G4} ± {spread:G2} between samples: {(differs ? "it is not the same part any more" : "nothing shows a change")}."),
                string.Create(CultureInfo.InvariantCulture, $"A change of {100 * sheet.Setting("change"):0} % would be missed in {100 * miss:0} of 100 such checks; one of {100 * seen / Math.Abs(mean):0} % in 10 of 100."),
            ])
        {
            Word = differs ? "differs" : "no change seen",
            Next = miss > 0.1 ? [old.Length < 6 ? "More old samples narrow it most: their spread rests on too few." : "A second new sample narrows it most."] : [],
            Notes = sheet.Notes,
        });
    }

    private static Checked<TrialAnswer> OwnLine(TrialSheet read)
    {
        var sheet = read.Whole("x", "y");
        if ((Curves.TooFew(sheet, 2, "x and y") ?? Curves.OneLevel(sheet, "x", 0)) is { } few)
        {
            return new(few);
        }

        return new(BenchFit.Run(sheet, Curves.Line("a straight line", "y", "x", Curves.Tell("at x = 0", Units.One, 0), Curves.Tell("slope", Units.One, 1)),
            Curves.Bent("a line that bends", "y", "x", Curves.Tell("at x = 0", Units.One, 0), Curves.Tell("slope in the middle", Units.One, (s, p) => p[1] + (2 * p[2] * s["x"].Average()))) with { Decides = "Take a reading in the middle of x." }));
    }
}
