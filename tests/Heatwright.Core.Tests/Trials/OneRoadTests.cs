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

    /// <summary>A discharge of 1.00 A for an hour, by meters of which nobody said a word: 1.2 % and three digits of 0.01 A as even limits are 1.2 and 3 of 100 over √3, 1.87 of 100 together. A named meter of 1 % and 5 mA promises 0.65.</summary>
    [Theory, InlineData("", 0.0187), InlineData("bench", 0.0065)]
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
}
