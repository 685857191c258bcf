using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>What a study finds of a bench test is what the test by itself finds: value and doubt, whatever is said of meters and leads.</summary>
public sealed class OneRoadTests
{
    private static readonly Instrument[] Meters = [new("bench", "", [new("Ω", 0.5, 0.02, 0.01), new("V", 0.5, 0.01, 0.001), new("A", 1, 0.005, 0.001)])];

    [Theory]
    [InlineData(TrialKind.ColdOhms, "", "")]
    [InlineData(TrialKind.ColdOhms, "", "leads=0.2")]
    [InlineData(TrialKind.ColdOhms, "bench", "")]
    [InlineData(TrialKind.ColdOhms, "bench", "leads=0.2")]
    [InlineData(TrialKind.TwoPointDrop, "", "touches=2")]
    [InlineData(TrialKind.TwoPointDrop, "bench", "")]
    [InlineData(TrialKind.ModulePoints, "bench", "")]
    public void A_study_and_a_test_by_itself_find_one_number(TrialKind kind, string meter, string setting)
    {
        var (columns, rows) = kind switch
        {
            TrialKind.ColdOhms => ("ohms Ω", "3.71|3.70|3.73"),
            TrialKind.TwoPointDrop => ("amps A,drop V", "1.002 0.0182|2.011 0.0371|3.004 0.0549"),
            _ => ("volts in V,amps in A,volts out V,amps out A", "3.701 1.110 9.012 0.412|3.652 2.301 8.994 0.821|3.601 3.702 8.981 1.240"),
        };
        Column[] read = [.. columns.Split(',').Select(one => one.LastIndexOf(' ') is var gap ? new Column(one[..gap], one[(gap + 1)..], meter) : null!)];
        Run run = new(new("r"), read, [.. rows.Split('|').Select((row, i) => new Reading(i + 1, row.Split(' ')))])
        {
            Settings = setting.Length == 0 ? [] : new Dictionary<string, double> { [setting.Split('=')[0]] = double.Parse(setting.Split('=')[1], System.Globalization.CultureInfo.InvariantCulture) },
        };
        Trial trial = new(new("t"), kind, new("p"), [run]);
        var card = TrialCard.Of(trial)!;
        InstrumentCauses instruments = new(Meters);
        var alone = TrialFits.Run(card.Name, CardBench.Input(card, run, instruments)).Value;
        var study = PartBench.One(new(new("p"), kind == TrialKind.ModulePoints ? PartKind.StepUp : PartKind.Heater, "p", []), [trial], instruments);
        Assert.NotEmpty(alone.Findings);
        Assert.All(alone.Findings, finding =>
        {
            var same = study.Find(finding.Name)!;
            Assert.Equal(finding.Value.Si, same.Si, 1e-9 * Math.Abs(finding.Value.Si));
            Assert.Equal(finding.Value.SiDoubt, same.SiDoubt, 1e-6 * finding.Value.SiDoubt);
        });
        Assert.Equal(meter.Length == 0, study.Remarks.Any(remark => remark.Words.StartsWith("No meter is named", StringComparison.Ordinal)));
    }

    /// <summary>A discharge of 1.00 A for an hour, by meters of which nobody said a word: 1.2 % and three digits of 0.01 A are one limit of 4.2 of 100, 2.42 over √3. A named meter of 1 % and 5 mA promises 1.5, 0.87 over √3.</summary>
    [Theory, InlineData("", 0.0242), InlineData("bench", 0.0087)]
    public void What_nobody_said_of_the_meters_is_assumed_in_a_study_too(string meter, double share)
    {
        Column[] columns = [new("time", "s", ""), new("volts", "V", meter), new("amps", "A", meter)];
        Reading[] rows = [.. Enumerable.Range(0, 61).Select(i => new Reading(i + 1, [$"{60 * i}", FormattableString.Invariant($"{4.1 - (0.018 * i):0.000}"), "1.00"]))];
        Trial trial = new(new("t"), TrialKind.Discharge, new("p"), [new(new("r"), columns, rows)]);
        var capacity = PartBench.One(new(new("p"), PartKind.Cell, "p", []), [trial], new InstrumentCauses(Meters)).Find(PartQuantities.Capacity)!;
        Assert.Equal(3600, capacity.Si, 40.0);
        double found = Math.Sqrt(capacity.Doubts.Pushes.Where(push => push.Cause.Group == CauseGroup.Instrument && push.Cause.Id.Contains(" A ", StringComparison.Ordinal)).Sum(push => push.By * push.By)) / capacity.Value;
        Assert.Equal(share, found, 0.0003);
    }

    private static readonly (TrialKind Kind, string? Card, PartKind Part, string Columns, string Setting)[] Typed =
    [
        (TrialKind.Bench, "cool-down", PartKind.Heater, "time s,degrees °C", "air=21"),
        (TrialKind.HotOhms, null, PartKind.Heater, "volts V,amps A", ""),
        (TrialKind.ColdOhms, null, PartKind.Heater, "ohms Ω", "leads=0.35"),
        (TrialKind.Pulse, null, PartKind.Cell, "time s,volts V,amps A", ""),
        (TrialKind.ModulePoints, null, PartKind.StepUp, "volts in V,amps in A,volts out V,amps out A", ""),
        (TrialKind.TwoPointDrop, null, PartKind.Contacts, "amps A,drop V", ""),
    ];

    /// <summary>The same promise of one meter, as a test by itself takes it from its leaflet's words and as a study keeps it of its meter: 1 % and 1 K, 0.5 % and two steps of 10 mV, 1.2 % and three of 10 mA, 0.8 % and three of 10 mΩ.</summary>
    [Theory, InlineData(0), InlineData(1), InlineData(2), InlineData(3), InlineData(4), InlineData(5)]
    public void One_promise_is_one_doubt_whichever_way_it_is_typed(int which)
    {
        var (kind, name, part, columns, setting) = Typed[which];
        string[] units = ["V", "A", "Ω", "°C"];
        string[] promises = ["0.5%+0.02V", "1.2%+0.03A", "0.8%+0.03ohm", "1%+1K"];
        InstrumentCauses instruments = new([new("bench", "", [new("V", 0.5, 0.02, 0.01), new("A", 1.2, 0.03, 0.01), new("Ω", 0.8, 0.03, 0.01), new("°C", 1, 1, 0.1)])]);
        Column[] read = [.. columns.Split(',').Select(one => one.LastIndexOf(' ') is var gap ? new Column(one[..gap], one[(gap + 1)..], one.EndsWith(" s", StringComparison.Ordinal) ? "" : "bench") : null!)];
        static string At(double value, string digits) => value.ToString(digits, System.Globalization.CultureInfo.InvariantCulture);
        string[][] rows = which switch
        {
            0 => [.. Enumerable.Range(0, 60).Select(i => new[] { At(10 * i, "0"), At(21 + (297 * Math.Exp(-10 * i / 193.44)), "0.0") })],
            1 => [["1.00", "0.31"], ["3.00", "0.88"], ["6.00", "1.66"], ["9.00", "2.35"], ["12.00", "2.98"]],
            2 => [["3.20"], ["3.18"], ["3.22"], ["3.17"]],
            3 => [["0", "4.10", "0.00"], ["1", "3.95", "2.00"], ["10", "3.93", "1.99"], ["11", "4.08", "0.00"]],
            4 => [["3.90", "0.33", "9.03", "0.08"], ["3.87", "0.72", "9.03", "0.23"], ["3.75", "2.12", "9.03", "0.73"], ["3.55", "4.60", "9.03", "1.48"]],
            _ => [["0.01", "0.0000"], ["2.00", "0.0501"], ["3.99", "0.1001"], ["4.99", "0.1251"]],
        };
        Run run = new(new("r"), read, [.. rows.Select((row, i) => new Reading(i + 1, row))])
        {
            Settings = setting.Length == 0 ? [] : new Dictionary<string, double> { [setting.Split('=')[0]] = double.Parse(setting.Split('=')[1], System.Globalization.CultureInfo.InvariantCulture) },
        };
        Trial trial = new(new("t"), kind, new("p"), [run]) { Card = name };
        var card = TrialCard.Of(trial)!;
        var typed = CardBench.Input(card, run, new([])) with
        {
            Meters = read.Where(column => column.Instrument.Length > 0).ToDictionary(column => column.Name, column => new MeterSaid("bench", AccuracySpec.Read(promises[Array.IndexOf(units, column.Unit)]).Value), StringComparer.Ordinal),
        };
        var alone = TrialFits.Run(card.Name, typed).Value;
        var study = PartBench.One(new(new("p"), part, "p", []), [trial], instruments);
        Assert.NotEmpty(alone.Findings);
        Assert.All(alone.Findings, finding =>
        {
            var same = study.Find(finding.Name)!;
            Assert.Equal(finding.Value.Si, same.Si, 1e-9 * Math.Abs(finding.Value.Si));
            Assert.Equal(finding.Value.SiDoubt, same.SiDoubt, 1e-6 * finding.Value.SiDoubt);
        });
    }
}
