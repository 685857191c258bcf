using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>Several trials of one part: which of their findings counts, and what is said of single readings.</summary>
public class PartBenchTests
{
    private static readonly Part Stick = new(new("stick"), PartKind.Heater, "stick", []);

    /// <summary>A cheap meter of 5 of 100, and a better one of 0.5 of 100.</summary>
    private static readonly Instrument[] Meters = [new("cheap", "cheap", [new("Ω", 5, 0.2, 0.1)]), new("better", "better", [new("Ω", 0.5, 0.01, 0.01)])];

    private static Trial Cold(string id, string meter, params string[] ohms) =>
        new(new(id), TrialKind.ColdOhms, Stick.Id, [new(new(id + "-1"), [new("ohms", "Ω", meter)], [.. ohms.Select((raw, i) => new Reading(i + 1, [raw]))]) { Settings = new Dictionary<string, double> { ["leads"] = 0.1 } }]);

    [Theory, InlineData(true), InlineData(false)]
    public void The_surer_of_two_findings_counts_whichever_was_read_first(bool vagueFirst)
    {
        Trial vague = Cold("vague", "cheap", "3.9", "3.8"), sure = Cold("sure", "better", "3.70", "3.71");
        var found = PartBench.One(Stick, vagueFirst ? [vague, sure] : [sure, vague], new InstrumentCauses(Meters));
        var counts = found.Find(PartQuantities.Ohms)!;
        Assert.Equal("sure", Assert.IsType<Origin.Fitted>(counts.Origin).Trial.Name);

        // By hand: 3.705 less 0.1 of leads.
        Assert.Equal(3.605, counts.Si, 1e-9);

        // The other stays among the findings, and it is said which counts.
        Assert.Equal(2, found.Findings.Count(finding => finding.Quantity == PartQuantities.Ohms));
        Assert.Contains(found.Remarks, remark => remark.Trial.Name == "vague" && remark.Words.Contains("Predictions take the one of sure", StringComparison.Ordinal));
    }

    /// <summary>The bad run says nothing and lacks nothing; by hand, the good one: 3.70 less 0.1 of leads. Struck whole by itself, the trial tells nothing, and asks for no missing readings.</summary>
    [Fact]
    public void A_run_of_which_every_line_is_struck_is_no_problem()
    {
        static Run Struck(Run run) => run with { Id = new("bad"), Readings = [.. run.Readings.Select(reading => reading with { StruckBecause = "clip loose" })] };
        var good = Cold("cold", "better", "3.70", "3.70");
        var both = PartBench.One(Stick, [good with { Runs = [Struck(good.Runs[0]), .. good.Runs] }], new InstrumentCauses(Meters));
        Assert.Empty(both.Problems);
        Assert.Equal(3.6, both.Find(PartQuantities.Ohms)!.Si, 1e-9);
        Assert.Equal([1, 2], both.Remarks.Where(remark => remark.Run.Name == "bad" && remark.Words == "struck out: clip loose").Select(remark => remark.Reading));
        Assert.Empty(PartBench.One(Stick, [good with { Runs = [Struck(good.Runs[0])] }], new InstrumentCauses(Meters)).Problems);

        Trial marks = new(new("marks"), TrialKind.Bench, Stick.Id, [new(new("marks-1"), [new("degrees", "°C", ""), new("time", "s", ""), new("mark", "", "")], [new(1, ["80", "2.1", "at"], "wrong start"), new(2, ["120", "4.2", "at"], "wrong start")])]) { Card = "warm-up-marks" };
        Assert.Empty(PartBench.One(Stick, [marks], new InstrumentCauses(Meters)).Problems);
    }

    /// <summary>By hand: 4.00 Ω at 220 °C over 3.70 Ω by two wires is 0.0811 in 200 K, over the surer 3.60 Ω by four wires 0.1111: the surer cold ohms count for both.</summary>
    [Fact]
    public void The_surer_cold_ohms_tell_how_they_grow_with_heat()
    {
        Trial hot = new(new("hot"), TrialKind.HotOhms, Stick.Id, [new(new("hot-1"), [new("volts", "V", ""), new("amps", "A", ""), new("degrees", "°C", "")], [new(1, ["8.00", "2.00", "220"])])]);
        Trial four = new(new("four"), TrialKind.Bench, Stick.Id, [new(new("four-1"), [new("volts", "V", "v"), new("amps", "A", "a")], [.. new[] { 0.2, 0.4, 0.6 }.Select((amps, i) => new Reading(i + 1, [(3.6 * amps).ToString("0.0000", CultureInfo.InvariantCulture), amps.ToString("0.0000", CultureInfo.InvariantCulture)]))])]) { Card = "four-wire-ohms" };
        Instrument[] meters = [.. Meters, new("v", "v", [new("V", 0.1, 0.0001, 0.0001)]), new("a", "a", [new("A", 0.1, 0.0001, 0.0001)])];
        double Alpha(params Trial[] trials) => PartBench.One(Stick, trials, new(meters)).Find(PartQuantities.Alpha)!.Si;
        Assert.Equal(0.0811 / 200, Alpha(Cold("rough", "cheap", "3.80", "3.80"), hot), 2e-6);
        Assert.Equal(0.1111 / 200, Alpha(Cold("rough", "cheap", "3.80", "3.80"), hot, four), 2e-6);
    }

    /// <summary>By hand: 0.84 Ω at every pair; nobody held a probe to it.</summary>
    [Theory, InlineData(false), InlineData(true)]
    public void Hot_ohms_without_degrees_tell_the_ohms_by_themselves(bool dashes)
    {
        double[] amps = [0.6, 1.2, 1.8, 2.4, 3.0];
        Column[] columns = [new("volts", "V", ""), new("amps", "A", ""), .. dashes ? [new Column("degrees", "°C", "")] : Array.Empty<Column>()];
        Reading[] readings = [.. amps.Select((a, i) => new Reading(i + 1, [(0.84 * a).ToString("0.000", CultureInfo.InvariantCulture), a.ToString("0.000", CultureInfo.InvariantCulture), .. dashes ? ["-"] : Array.Empty<string>()]))];
        var found = PartBench.One(Stick, [new(new("hot"), TrialKind.HotOhms, Stick.Id, [new(new("hot-1"), columns, readings)])], new([]));
        Assert.Empty(found.Problems);
        Assert.Equal(0.84, found.Find(PartQuantities.Ohms)!.Si, 1e-3);
    }

    [Fact]
    public void A_decimal_point_that_slipped_among_the_same_ohms_is_left_out()
    {
        var found = PartBench.One(Stick, [Cold("slip", "better", "3.70", "37.1", "3.71")], new InstrumentCauses(Meters));
        Assert.Equal(3.605, found.Find(PartQuantities.Ohms)!.Si, 1e-9);
        Assert.Contains(found.Remarks, remark => remark is { Reading: 2, Effect: Remark.LeftOut } && remark.Words.Contains("decimal point", StringComparison.Ordinal));
    }

    [Fact]
    public void A_hot_trial_leans_on_the_surer_cold_ohms()
    {
        Trial hot = new(new("hot"), TrialKind.HotOhms, Stick.Id, [new(new("hot-1"), [new("volts", "V", ""), new("amps", "A", ""), new("degrees", "°C", "")], [new(1, ["8.00", "2.00", "220"])])]);
        var found = PartBench.One(Stick, [Cold("sure", "better", "3.70", "3.71"), Cold("vague", "cheap", "3.9", "3.8"), hot], new InstrumentCauses(Meters));

        // By hand: 4.000 Ω at 220 °C against 3.605 Ω at 20 °C is 0.10957 over 200 K.
        Assert.Equal(0.10957 / 200, found.Find(PartQuantities.Alpha)!.Si, 1e-7);
    }

    /// <summary>Ohms that grow by 0.0005 a kelvin from 3.605 at 20 °C, in the volts and amps of a warm-up that nears 110 °C: nobody took hot ohms, and nothing need be assumed.</summary>
    [Fact]
    public void A_warm_up_tells_hot_ohms_where_no_trial_of_them_was_taken()
    {
        Column[] columns = [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", ""), new("degrees", "°C", "")];
        Reading[] readings = [.. Enumerable.Range(0, 20).Select(i => new Reading(i + 1, [Text(30 * i), "6", Text(6 / (3.605 * (1 + (0.0005 * (Degrees(30 * i) - 20))))), Text(Degrees(30 * i))]))];
        Trial up = new(new("up"), TrialKind.WarmUp, Stick.Id, [new(new("up-1"), columns, readings) { Settings = new Dictionary<string, double> { ["air"] = 20 } }]);
        var cold = Cold("sure", "better", "3.70", "3.71");
        var alpha = PartBench.One(Stick, [cold, up], new InstrumentCauses(Meters)).Find(PartQuantities.Alpha)!;
        Assert.Equal(0.0005, alpha.Si, 2e-6);

        // The cold ohms are known to 0.5 of 100 and 0.01 Ω: by hand 0.6 of 100 over about 85 K is 0.00007, halved as a standard doubt of even limits.
        // Volts and amps of usual meters, 0.5 and 1.2 % as even limits, are 0.75 of 100 more over those 85 K: 0.00009.
        Assert.InRange(alpha.SiDoubt, 0.00008, 0.00012);
        Assert.Equal("up", Assert.IsType<Origin.Fitted>(alpha.Origin).Trial.Name);

        // One taken for it counts; without cold ohms there is nothing to compare with.
        Trial hot = new(new("hot"), TrialKind.HotOhms, Stick.Id, [new(new("hot-1"), [new("volts", "V", ""), new("amps", "A", ""), new("degrees", "°C", "")], [new(1, ["8.00", "2.00", "220"])])]);
        Assert.Equal("hot", Assert.IsType<Origin.Fitted>(PartBench.One(Stick, [cold, up, hot], new InstrumentCauses(Meters)).Find(PartQuantities.Alpha)!.Origin).Trial.Name);
        Assert.Null(PartBench.One(Stick, [up], new InstrumentCauses(Meters)).Find(PartQuantities.Alpha));

        static double Degrees(double s) => 20 + (90 * (1 - Math.Exp(-s / 120)));
    }

    /// <summary>A tip of 20 J/K that loses 0.1 W/K under 10 W; one of twelve temperatures written at a tenth, or with the probe off the tip.</summary>
    [Theory, InlineData("9.02", "decimal point"), InlineData("41.3", "probe off its place")]
    public void A_temperature_that_leaps_there_and_back_is_left_out_of_a_warm_up(string typed, string why)
    {
        Column[] columns = [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", ""), new("degrees", "°C", "")];
        Reading[] readings = [.. Enumerable.Range(0, 12).Select(i => new Reading(i + 1, [Text(24 * i), "5", "2", i == 10 ? typed : Text(Math.Round(20 + (100 * (1 - Math.Exp(-24 * i / 200.0))), 1))]))];
        var found = PartBench.One(Stick, [new(new("up"), TrialKind.WarmUp, Stick.Id, [new(new("up-1"), columns, readings) { Settings = new Dictionary<string, double> { ["air"] = 20 } }])], new InstrumentCauses([]));
        Assert.Contains(found.Remarks, remark => remark is { Reading: 11, Effect: Remark.LeftOut } && remark.Words.Contains(why, StringComparison.Ordinal));
        Assert.Equal(20, found.Find(PartQuantities.HeatCapacity)!.Si, 0.4);
        Assert.Equal(0.1, found.Find(PartQuantities.LinearLoss)!.Si, 0.004);
    }

    /// <summary>A tip of 20 J/K that loses 0.1 W/K, 10 W for 120 s, then off for as long; degrees by the exact exponential.</summary>
    [Fact]
    public void Off_said_as_a_setting_tells_more_than_noughts_typed()
    {
        Column[] columns = [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", ""), new("degrees", "°C", "")];
        PartFindings Found(string after, Dictionary<string, double> settings) => PartBench.One(Stick,
            [new(new("up"), TrialKind.WarmUp, Stick.Id, [new(new("up-1"), columns, [.. Enumerable.Range(0, 25).Select(i => new Reading(i + 1, [Text(10 * i), i < 12 ? "5" : after, i < 12 ? "2" : after, Text(Degrees(10 * i))]))]) { Settings = settings }])], new InstrumentCauses([]));
        var typed = Found("0", new() { ["air"] = 20 });
        foreach (string left in (string[])["5", "-"])
        {
            var said = Found(left, new() { ["air"] = 20, ["off"] = 120, ["rest"] = 3600 });
            Assert.Equal(20, said.Find(PartQuantities.HeatCapacity)!.Si, 0.01);
            Assert.Equal(0.1, said.Find(PartQuantities.LinearLoss)!.Si, 0.0002);
        }

        // Readings stand ten seconds apart, and where between two of them it was switched off nothing tells: 3 of 100.
        Assert.Equal(20, typed.Find(PartQuantities.HeatCapacity)!.Si, 0.6);

        static double Degrees(double s) => s <= 120 ? 20 + (100 * (1 - Math.Exp(-s / 200))) : 20 + ((Degrees(120) - 20) * Math.Exp(-(s - 120) / 200));
    }

    [Fact]
    public void Ohms_of_meter_and_leads_are_taken_off_a_hot_heater()
    {
        Trial Hot(Dictionary<string, double> settings) => new(new("hot"), TrialKind.HotOhms, Stick.Id, [new(new("hot-1"), [new("volts", "V", ""), new("amps", "A", ""), new("degrees", "°C", "")], [new(1, ["8.20", "2.00", "220"])]) { Settings = settings }]);
        var found = PartBench.One(Stick, [Cold("sure", "better", "3.70", "3.71"), Hot(new() { ["burden"] = 0.06, ["leads"] = 0.04, ["volts at"] = 2 })], new InstrumentCauses(Meters));

        // By hand: 4.1 Ω less 0.1 Ω is 4.0 Ω, as above.
        Assert.Equal(0.10957 / 200, found.Find(PartQuantities.Alpha)!.Si, 1e-7);
    }

    [Theory]
    [InlineData("volts", "3.90 0.39 3.88 3.87", 2)]
    [InlineData("volts", "0.39 3.88 3.87 3.86", 1)]
    [InlineData("volts", "3.90 3.89 0.388 3.87", 3)]
    [InlineData("degrees", "20 60 650 70 80", 3)]
    [InlineData("degrees", "20 60 100 14 150", 4)]
    public void The_reading_that_slipped_is_told_and_not_the_one_behind_it(string column, string readings, int slipped)
    {
        string[] raw = readings.Split(' ');
        bool heats = column == "degrees";
        Column[] columns = heats ? [new("time", "s", ""), new("degrees", "°C", ""), new("watts", "W", "")] : [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", "")];
        var run = new Run(new("run"), columns, [.. raw.Select((text, i) => new Reading(i + 1, heats ? [Text(10 * i), text, "10"] : [Text(60 * i), text, "1.00"]))]) { Settings = new Dictionary<string, double> { ["air"] = 20 } };
        Trial trial = heats ? new(new("trial"), TrialKind.Bench, Stick.Id, [run]) { Card = "stuck-on" } : new(new("trial"), TrialKind.Discharge, Stick.Id, [run]);
        int[] told = [.. RunChecks.Of(trial, run, new InstrumentCauses([]), TrialCard.Of(trial)).Where(remark => remark.Reading > 0).Select(remark => remark.Reading).Distinct()];
        Assert.Equal([slipped], told);
    }

    private static string Text(double value) => value.ToString("0.0000", CultureInfo.InvariantCulture);

    /// <summary>Rehearsed in the browser: 36.99 V of one cell stood in a discharge without a remark, and squashed its picture.</summary>
    [Theory, InlineData("36.9"), InlineData("0.369")]
    public void Volts_of_a_cell_that_slipped_by_ten_are_left_out_and_told_once(string slip)
    {
        string[] volts = ["3.90", "3.85", "3.80", "3.76", "3.72", slip, "3.66", "3.62", "3.58", "3.02", "3.50"];
        Run run = new(new("d-1"), [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", "")], [.. volts.Select((raw, i) => new Reading(i + 1, [(360 * i).ToString(CultureInfo.InvariantCulture), raw, "1.00"]))]);
        var read = ReadingTable.Read(run, new(new("d"), TrialKind.Discharge, new("cell"), [run]));
        var remark = Assert.Single(read.Remarks, remark => remark.Reading == 6);
        Assert.Equal(Remark.LeftOut, remark.Effect);
        Assert.Contains("decimal point", remark.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(6, read.Numbers);
    }

    [Fact]
    public void Volts_of_a_supply_that_slipped_by_ten_while_the_amps_stood_are_left_out()
    {
        string[] volts = ["4.00", "4.01", "40.0", "4.00", "3.99"];
        Run run = new(new("w-1"), [new("volts", "V", ""), new("amps", "A", "")], [.. volts.Select((raw, i) => new Reading(i + 1, [raw, "1.21"]))]);
        Assert.Equal([1, 2, 4, 5], ReadingTable.Read(run, new(new("w"), TrialKind.WarmUp, new("heater"), [run])).Numbers);
    }

    /// <summary>A heater that is switched off and on, or stepped from 1 V to 10 V, has not slipped.</summary>
    [Theory, InlineData("0.4", "0.4", "4.0", "4.0", "4.0"), InlineData("1.0", "2.0", "4.0", "7.0", "10.0")]
    public void Volts_that_are_changed_on_purpose_stay(params string[] volts)
    {
        Run run = new(new("h-1"), [new("volts", "V", ""), new("amps", "A", "")], [.. volts.Select((raw, i) => new Reading(i + 1, [raw, (double.Parse(raw, CultureInfo.InvariantCulture) / 3.3).ToString("0.00", CultureInfo.InvariantCulture)]))]);
        Assert.Empty(ReadingTable.Read(run, new(new("h"), TrialKind.HotOhms, new("heater"), [run])).Remarks);
    }

    /// <summary>26 mV at 1 A and 53 mV at 2 A are 26 and 26.5 mΩ. By hand: 5.4 mV at 2 A are 2.7 mΩ, 0.54 mV are 0.27 mΩ, 530 mV are 265 mΩ.</summary>
    [Theory, InlineData("5.4mV", "a tenth", true), InlineData("0.54mV", "a hundredth", true), InlineData("530mV", "ten times", false), InlineData("50mV", "", false)]
    public void A_drop_is_held_against_the_ohms_of_the_same_contact(string drop, string words, bool leftOut)
    {
        Run run = new(new("c-1"), [new("amps", "A", ""), new("drop", "V", "")], [new(1, ["1.00", "26mV"]), new(2, ["2.00", "53mV"]), new(3, ["2.00", drop])]);
        var read = ReadingTable.Read(run, new(new("c"), TrialKind.TwoPointDrop, new("holder"), [run]));
        Assert.Equal(leftOut ? [1, 2] : [1, 2, 3], read.Numbers);
        if (words.Length == 0)
        {
            Assert.Empty(read.Remarks);
            return;
        }

        // A contact is never ten times better for one reading; a worse one may be the truth, and counts until it is struck out.
        var remark = Assert.Single(read.Remarks);
        Assert.Equal((3, leftOut ? Remark.LeftOut : Remark.Kept), (remark.Reading, remark.Effect));
        Assert.Contains(words, remark.Words, StringComparison.Ordinal);
    }
}
