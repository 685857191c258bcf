using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>Ohms of a cell where no discharge is there to make a model: from the steps of a pulse run, every number by hand.</summary>
public sealed class PulseOhmsTests
{
    private static readonly Part Cell = new(new("slim"), PartKind.Cell, "slim", []);

    internal static Trial Trial(string id, TrialKind kind, params (double TimeS, double Volts, double Amps)[] rows) => new(new(id), kind, Cell.Id,
        [new(new($"{id}-1"), [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", "")], [.. rows.Select((row, i) => new Reading(i + 1, [Text(row.TimeS), Text(row.Volts), Text(row.Amps)]))])]);

    private static string Text(double value) => value.ToString("0.#####", CultureInfo.InvariantCulture);

    private static PartFindings Found(params Trial[] trials) => PartBench.One(Cell, trials, new([]));

    /// <summary>4.0 V at rest, 3.94 V after 0.2 s of 2 A are 30 mΩ, 3.916 V after 10 s 42 mΩ.</summary>
    private static readonly Trial Step = Trial("step", TrialKind.Pulse, (0, 4.0, 0), (4.9, 4.0, 0), (5.1, 3.94, 2), (8, 3.92, 2), (14.9, 3.916, 2));

    [Fact]
    public void The_longest_step_tells_the_ohms_with_a_doubt_for_what_comes_after_and_the_shortest_those_of_the_first_seconds()
    {
        var found = Found(Step);
        var ohms = found.Find(PartQuantities.Ohms)!;
        Assert.Equal(0.042, ohms.Si, 1e-9);

        // By hand: a quarter for each tenfold of the time from 10 s to 120 s, log10(12) = 1.07918: 26.98 % of 42 mΩ.
        Assert.Equal(0.25 * 1.07918 * 0.042, Assert.Single(ohms.Doubts.Pushes, push => push.Cause.Id == "slim: ohms that a load longer than 10 s adds").By, 1e-7);
        Assert.Equal(0.030, found.Find(CellQuantities.FirstOhms)!.Si, 1e-9);
        Assert.Single(found.Remarks, remark => remark.Words.Contains("27 % are counted as doubt", StringComparison.Ordinal));
        Assert.DoesNotContain(PartNeeds.Missing(Cell, quantity => found.Find(quantity) is not null), need => need.Quantity == PartQuantities.Ohms);
    }

    [Fact]
    public void A_load_of_ten_minutes_leaves_nothing_to_come()
    {
        var found = Found(Trial("long", TrialKind.Pulse, (0, 4.0, 0), (1, 3.9, 2), (60, 3.88, 2), (600, 3.86, 2)));
        var ohms = found.Find(PartQuantities.Ohms)!;
        Assert.Equal(0.07, ohms.Si, 1e-6);
        Assert.DoesNotContain(ohms.Doubts.Pushes, push => push.Cause.Group == CauseGroup.Assumption);
        Assert.StartsWith("No meter is named: ±(0.5%+2d) for volts, ±(1.2%+3d) for amps are assumed", Assert.Single(found.Remarks).Words, StringComparison.Ordinal);
    }

    /// <summary>4.0 V at 0.5 A and 3.9 V at 2.5 A are 50 mΩ: two loads tell them by name, and a pulse run beside them does not take their place.</summary>
    [Fact]
    public void Two_loads_tell_the_ohms_by_themselves()
    {
        Trial sag = new(new("sag"), TrialKind.Bench, Cell.Id, [new(new("sag-1"), [new("volts", "V", ""), new("amps", "A", "")], [new(1, ["4.0", "0.5"]), new(2, ["3.9", "2.5"])])]) { Card = "two-load-sag" };
        Assert.Equal(0.05, Found(sag).Find(PartQuantities.Ohms)!.Si, 1e-9);
        Assert.Equal(0.05, Found(sag, Step).Find(PartQuantities.Ohms)!.Si, 1e-9);
    }

    private static (double, double, double)[] Emptied(double amps, double ohm, double forS) =>
        [.. Enumerable.Range(0, 31).Select(i => (forS * i / 30, 4.2 - (1.2 * amps * forS * i / 30 / 3600) - (ohm * amps), amps))];

    private static Trial Named(string card, string id, params (double, double, double)[] rows) => Trial(id, TrialKind.Bench, rows) with { Card = card };

    /// <summary>A discharge, whatever name it was planned under, and a pulse run make the model: 1 Ah, and the ohms are its own.</summary>
    [Theory, InlineData("capacity"), InlineData("open-volts"), InlineData(null)]
    public void A_discharge_under_any_name_feeds_the_model(string? card)
    {
        var slow = card is null ? Trial("slow", TrialKind.Discharge, Emptied(0.2, 0.1, 18000)) : Named(card, "slow", Emptied(0.2, 0.1, 18000));
        var found = Found(slow, Step);
        Assert.Equal(3600, found.Cell!.Cell.CapacityC, 1e-6);
        Assert.Empty(found.Problems);
        Assert.Equal("slow", Assert.IsType<Origin.Fitted>(found.Find(PartQuantities.Ohms)!.Origin).Trial.Name);
        Assert.Null(found.Find(CellQuantities.FirstOhms));
        Assert.Equal(card == "open-volts", found.Find("energy") is null);
    }

    [Fact]
    public void The_same_log_taken_in_twice_or_two_at_one_current_make_no_model()
    {
        var slow = Named("capacity", "slow", Emptied(0.2, 0.1, 18000));
        Assert.Null(Found(slow, Trial("again", TrialKind.Discharge, Emptied(0.2, 0.1, 18000))).Cell);
        var near = Found(slow, Trial("near", TrialKind.Discharge, Emptied(0.21, 0.1, 17000)));
        Assert.Null(near.Cell);
        Assert.Contains("another current", Assert.Single(near.Problems).Next, StringComparison.Ordinal);
        Assert.NotNull(Found(slow, Trial("fast", TrialKind.Discharge, Emptied(1, 0.1, 3600))).Cell);
    }

    /// <summary>With one meter the amps are noted once, 2 A: the run beside a discharge is a pulse run all the same, of 0.1 V by 2 A.</summary>
    [Fact]
    public void Amps_noted_once_make_a_pulse_run()
    {
        Trial once = new(new("once"), TrialKind.Pulse, Cell.Id, [new(new("once-1"), [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", "")],
            [.. ((string[][])[["0", "4.08", "-"], ["1", "3.98", "-"], ["10", "3.98", "2"]]).Select((row, i) => new Reading(i + 1, row))])]);
        var found = Found(Named("capacity", "slow", Emptied(0.2, 0.1, 18000)), once);
        Assert.NotNull(found.Cell);
        Assert.Equal(0.05, found.Find("ohms after 10 s")!.Value, 1e-9);
    }

    /// <summary>Without a second run the capacity still stands, through a resistor too: 3.6 V over 3.6 Ω are 1 A, for an hour 1 Ah at least; and a log that ends early says so, and makes no model.</summary>
    [Fact]
    public void A_discharge_through_a_resistor_needs_no_amps()
    {
        Trial read = new(new("r"), TrialKind.Discharge, Cell.Id, [new(new("r-1"), [new("time", "s", ""), new("volts", "V", "")], [.. Enumerable.Range(0, 5).Select(i => new Reading(i + 1, [Text(900 * i), "3.6"]))])
            { Settings = new Dictionary<string, double> { ["load"] = 3.6, ["cut-off"] = 3 } }]);
        var found = Found(read);
        Assert.Equal(1, found.Find(LowerBound.Of(PartQuantities.Capacity))!.In(Units.AmpereHour).Value, 1e-9);
        Assert.Single(found.Remarks, remark => remark.Words.Contains("lower bound", StringComparison.Ordinal));
        Assert.Null(Found(read, Step).Cell);
        Trial ended = read with { Runs = [read.Runs[0] with { Readings = [.. read.Runs[0].Readings.SkipLast(1), new(5, [Text(3600), "3.0"])] }] };
        Assert.Equal(3525, Found(ended, Step).Cell!.Cell.CapacityC, 1e-6); // the last quarter of an hour at 1 A to 0.83 A on the mean
    }

    /// <summary>Eight rows by hand beside a discharge: 30 mΩ at once and 12 mΩ that come with a time of 4 s. The model knows the first seconds within a sixth, and of a load of minutes no more than the run saw.</summary>
    [Fact]
    public void Few_rows_by_hand_speak()
    {
        double At(double s) => 3.98 - (3 * (0.030 + (0.012 * (1 - Math.Exp(-s / 4)))));
        var pulse = Trial("hand", TrialKind.Pulse, [(0, 3.98, 0), (4.9, 3.98, 0), .. new[] { 0.1, 1, 3, 5, 7, 10 }.Select(s => (5 + s, Math.Round(At(s), 3), 3.0))]);
        var found = Found(Trial("slow", TrialKind.Discharge, Emptied(1, 0.042, 14400 / 4)), pulse);
        var ohms = found.Find(PartQuantities.Ohms)!;
        Assert.InRange(ohms.SiDoubt / ohms.Si, 0.08, 0.20);
        Assert.InRange(Math.Abs(ohms.Si - 0.042) / ohms.SiDoubt, 0, 2);
        double first = found.Cell!.Cell.R0Ohm.At(1) + found.Cell.Cell.R1Ohm.At(1);
        Assert.InRange(found.Cell.LogFirstOhmsDoubt, 0.01, 0.18);
        Assert.InRange(Math.Abs(first - 0.0416) / (found.Cell.LogFirstOhmsDoubt * first), 0, 1); // 30 mΩ, and all of the 12 but what is left after 10 s and more
    }
}
