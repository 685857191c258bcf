using System.Globalization;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>Bench tests that are done by a card, several runs of one, and what is said of two trials of one quantity. Every expected value by hand.</summary>
public sealed class CardBenchTests
{
    private static readonly InstrumentCauses Meter = new([new("m", "m", [new("Ω", 1, 0, 0.001)])]);

    private static Run Ohms(string id, params string[] ohms) => new(new(id), [new("ohms", "Ω", "m")], [.. ohms.Select((raw, i) => new Reading(i + 1, [raw]))]) { Settings = new Dictionary<string, double> { ["leads"] = 0 } };

    private static PartFindings Found(string card, params Run[] runs) => CardBench.Findings(new(new("t"), TrialKind.Bench, new("p"), runs) { Card = card }, Meter);

    private static double By(Estimate estimate, string cause) => estimate.Doubts.Pushes.Where(push => push.Cause.Id == cause).Select(push => push.By).SingleOrDefault();

    /// <summary>36, 38 and 40 Ω: the mean is 38, the standard deviation 2, that of the mean 2/√3. The gain of the one meter stays one cause: 1 %/√3 of 38.</summary>
    [Fact]
    public void Several_runs_are_averaged_and_what_lies_between_them_is_a_doubt()
    {
        var found = Found("cold-ohms", Ohms("a", "36.00"), Ohms("b", "38.00"), Ohms("c", "40.00"), Ohms("empty"));
        var ohms = found.Find("ohms")!;
        Assert.Equal(38, ohms.Value, 1e-9);
        Assert.Equal(2 / Math.Sqrt(3), Math.Sqrt(ohms.Doubts.Pushes.Where(push => push.Cause.Group == CauseGroup.Trial).Sum(push => push.By * push.By)), 1e-9);
        Assert.InRange(By(ohms, "t ohms between runs"), 1.15, 2 / Math.Sqrt(3));
        Assert.Equal(0.38 / Math.Sqrt(3), Math.Abs(ohms.Doubts.Pushes.Single(push => push.Cause.Id == "m Ω gain").By), 1e-6);
        Assert.Equal(["a", "b", "c"], Assert.IsType<Origin.Fitted>(ohms.Origin).Runs.Select(run => run.Name));
        Assert.Equal(["a", "b", "c"], ohms.Doubts.Pushes.Where(push => push.Cause.Group == CauseGroup.Trial && !push.Cause.Id.StartsWith('t')).Select(push => push.Cause.Id[..1]).Distinct());
    }

    /// <summary>One body, 200 K above 20 °C with 100 s: 120 °C after 69.3 s, 170 °C after 138.6 s. Where it stuck no time is written: it is the 200 K to the 4 K of a mark; on the way up alone they would be known to 29 K (√52 times that of 1 K).</summary>
    [Fact]
    public void A_mark_that_stuck_needs_no_time_in_a_study_either()
    {
        string[][] rows = [["69.3", "120", "at"], ["138.6", "170", "at"], ["", "220", "stuck"]];
        var found = Found("warm-up-marks", new Run(new("a"), [new("time", "s", "m"), new("degrees", "°C", "m"), new("mark", "", "")], [.. rows.Select((row, i) => new Reading(i + 1, row))]) { Settings = new Dictionary<string, double> { ["air"] = 20, ["watts"] = 10 } });
        var rise = found.Find("rise at rest")!;
        Assert.Equal(200, rise.Value, 0.5);
        Assert.InRange(rise.StandardDoubt, 3.5, 4.1);
    }

    [Fact]
    public void Two_runs_that_differ_lie_half_of_it_off_their_mean_and_one_run_has_nothing_between()
    {
        Assert.Equal(1, Math.Sqrt(Found("cold-ohms", Ohms("a", "36.00"), Ohms("b", "38.00")).Find("ohms")!.Doubts.Pushes.Where(push => push.Cause.Group == CauseGroup.Trial).Sum(push => push.By * push.By)), 1e-9);
        var alike = Found("cold-ohms", Ohms("a", "36.00"), Ohms("b", "36.00")).Find("ohms")!;
        Assert.Equal(0, By(alike, "t ohms between runs"));

        // Each of two runs alone is known to u; their mean to u/√2.
        var one = Found("cold-ohms", Ohms("a", "36.00")).Find("ohms")!;
        double Own(Estimate of) => Math.Sqrt(of.Doubts.Pushes.Where(push => push.Cause.Group == CauseGroup.Trial).Sum(push => push.By * push.By));
        Assert.Equal(Own(one) / Math.Sqrt(2), Own(alike), 1e-9);
        Assert.True(Own(one) > 0);
        Assert.Equal(0, By(one, "t ohms between runs"));
    }

    /// <summary>27.0 mV at 3.00 A and 45.5 mV at 5.00 A: by least squares (3·27 + 5·45.5)/34 = 9.074 mΩ. Both the zero of the meter and a part that warms would explain what is left over, and two readings
    /// do not say which: the zero stands as promised, 2 mV/√3·8/34 = 0.272 mΩ, and the misfit of (0.220² + 0.132²) mV² is scatter of one degree of freedom: √0.0660/√34 = 0.0441 mΩ, its 95 % limits 12.706 for 1.960.</summary>
    [Theory, InlineData("V", "0.027", "0.0455"), InlineData("V", "27mV", "45.5mV"), InlineData("V;mV", "0.027", "0.0455")]
    public void Two_readings_do_not_find_the_zero_of_their_meter(string promised, string first, string second)
    {
        var found = Switch(promised, first, second);
        Assert.Equal(9.0735e-3, found.Value, 2e-6);
        Assert.Equal(0.2717e-3, Math.Abs(By(found, "m V offset")), 2e-6);
        Assert.Equal(0.0441e-3 * 12.706 / 1.960, Math.Sqrt(found.Doubts.Pushes.Where(push => push.Cause.Group == CauseGroup.Trial).Sum(push => push.By * push.By)), 3e-6);
        Assert.InRange(found.StandardDoubt, 0.38e-3, 0.42e-3);
    }

    /// <summary>Typed with mV they were read on that range: 0.1 mV/√3·8/34 = 0.0136 mΩ of it.</summary>
    [Fact]
    public void Readings_typed_with_their_own_unit_take_the_promise_of_that_range() =>
        Assert.Equal(0.0136e-3, Math.Abs(By(Switch("V;mV", "27mV", "45.5 mV"), "m V offset")), 1e-6);

    private static Estimate Switch(string promised, string first, string second)
    {
        Run run = new(new("r"), [new("gate volts", "V", ""), new("amps", "A", "m"), new("drop", "V", "m")], [new(1, ["4.5", "3.00", first]), new(2, ["4.5", "5.00", second])]);
        InstrumentSpec[] specs = [new("V", 0.5, 0.002, 0), new("A", 1, 0.005, 0), .. promised.Contains("mV", StringComparison.Ordinal) ? [new InstrumentSpec("mV", 0.5, 0.1, 0)] : Array.Empty<InstrumentSpec>()];
        return CardBench.Findings(new(new("t"), TrialKind.Bench, new("p"), [run]) { Card = "switch-drop" }, new([new("m", "m", specs)])).Find("ohms at 4.5 V gate")!;
    }

    /// <summary>One reading or two show no course; three do.</summary>
    [Theory, InlineData(1, false), InlineData(2, false), InlineData(3, true)]
    public void A_picture_needs_three_readings(int count, bool shown) => Assert.Equal(shown, Found("cold-ohms", Ohms("a", [.. Enumerable.Range(0, count).Select(i => "36.0" + i)])).Pictures.Count == 1);

    [Theory, InlineData("no-such-card", "'no-such-card'", "no-such-card"), InlineData(null, "''", "none")]
    public void A_card_that_there_is_not_is_told(string? card, string named, string value)
    {
        var problem = Assert.Single(CardBench.Findings(new(new("t"), TrialKind.Bench, new("p"), [Ohms("a", "36")]) { Card = card }, Meter).Problems);
        Assert.Contains(named, problem.What, StringComparison.Ordinal);
        Assert.Equal(value, problem.Value);
    }

    [Fact]
    public void A_run_that_lacks_a_column_is_told_by_name_and_the_others_count()
    {
        var found = Found("cold-ohms", new Run(new("odd"), [new("volts", "V", "")], [new(1, ["3"])]), Ohms("b", "38.00"));
        Assert.Equal(38, found.Find("ohms")!.Value, 1e-9);
        Assert.Equal("trial t, run odd", Assert.Single(found.Problems).Where);
        Assert.Equal("t, b", Found("own-line", Line("b", "1", "2", "3")).Pictures.Single().Title);
    }

    private static Run Line(string id, params string[] y) => new(new(id), [new("x", "", ""), new("y", "", "")], [.. y.Select((raw, i) => new Reading(i + 1, [(i + 1).ToString(CultureInfo.InvariantCulture), raw]))]);

    [Fact]
    public void A_struck_reading_says_why_and_nothing_else()
    {
        Run run = new(new("a"), [new("ohms", "Ω", "m")], [new(1, ["36.00"]), new(2, ["-5"], "leads swapped"), new(3, ["OL"], "no contact"), new(4, ["OL"])]) { Settings = new Dictionary<string, double> { ["leads"] = 0 } };
        var found = Found("cold-ohms", run);
        Assert.Equal([(2, "struck out: leads swapped"), (3, "struck out: no contact")], found.Remarks.Where(remark => remark.Reading is 1 or 2 or 3).Select(remark => (remark.Reading, remark.Words)));
        var over = Assert.Single(found.Remarks, remark => remark.Reading == 4);
        Assert.Equal(Remark.LeftOut, over.Effect);
        Assert.Contains("over range", over.Words, StringComparison.Ordinal);
        Assert.Equal(36, found.Find("ohms")!.Value, 1e-9);
    }

    [Fact]
    public void Readings_settings_and_meters_of_a_run_reach_the_fit_in_the_units_of_the_run()
    {
        var card = TrialCard.Find("warm-up-marks")!;
        Run run = new(new("a"), [new("degrees", "°C", "none"), new("time", "min", ""), new("mark", "", ""), new("watts", "mW", "m")], [new(1, ["200", "2", "at", "5000"]), new(2, ["OL", "3", "stuck", "1"], "slip"), new(3, ["OL", "4", "stuck", "5 W"])])
        {
            Settings = new Dictionary<string, double> { ["air"] = 18, ["stopwatch"] = 0.5, ["no such setting"] = 3 },
        };
        var input = CardBench.Input(card, run, new([new("m", "m", [new("W", 2, 0.5, 0.1)])]));
        Assert.Equal([200, double.NaN, double.NaN], input.Columns[0].Values);
        Assert.Equal([false, false, true], input.Columns[0].Overload);
        Assert.Equal([2, double.NaN, 4], input.Columns[1].Values); // as typed, in minutes
        Assert.Equal(["at", "", "stuck"], input.Columns[2].Texts);
        Assert.Null(input.Columns[2].Unit);
        Assert.Equal([5000, double.NaN, 5000], input.Columns[3].Values);
        Assert.Equal(["air", "stopwatch"], input.Settings.Keys.Order(StringComparer.Ordinal));
        Assert.Equal((18.0, 0.5), (input.Settings["air"].Value, input.Settings["stopwatch"].Value));
        var (name, said) = Assert.Single(input.Meters);
        Assert.Equal(("watts", "m", 0.02, 0.5), (name, said.Name, said.Promise!.OfReading, said.Promise.Fixed));
    }

    /// <summary>What is typed behind ± is a limit: 0.1 Ω of leads push the ohms by 0.1/√3, beside the last digit of the meter that read them, 0.01/√12; a setting of which nobody said it keeps the digit alone.</summary>
    [Theory, InlineData(0.1), InlineData(0)]
    public void What_a_setting_may_be_off_by_is_a_doubt_of_the_finding(double plusMinus)
    {
        var run = Ohms("a", "1.83", "1.82", "1.83") with { Settings = new Dictionary<string, double> { ["leads"] = 0.2 } };
        var ohms = Found("cold-ohms", plusMinus > 0 ? run with { SettingsPlusMinus = new Dictionary<string, double> { ["leads"] = plusMinus } } : run).Find("ohms")!;
        Assert.Equal(1.8267 - 0.2, ohms.Value, 1e-3);
        Assert.Equal(Math.Sqrt((plusMinus * plusMinus / 3) + (0.01 * 0.01 / 12)), Math.Abs(By(ohms, "cold-ohms leads")), 1e-6);
    }

    /// <summary>3 K either way of 18 °C are 3/√3 K of standard doubt, and 360 A·s of a claim are 0.1/√3 Ah.</summary>
    [Theory, InlineData("warm-up-marks", "air", 18, 3, 18, 3), InlineData("capacity", "claim", 7200, 360, 2, 0.1)]
    public void A_doubt_held_in_SI_is_given_in_the_unit_of_the_card(string card, string setting, double si, double plusMinusSi, double value, double plusMinus)
    {
        var run = new Run(new("a"), [new("time", "s", "")], [new(1, ["0"])]) { Settings = new Dictionary<string, double> { [setting] = si }, SettingsPlusMinus = new Dictionary<string, double> { [setting] = plusMinusSi } };
        var given = CardBench.Input(TrialCard.Find(card)!, run, Meter).Settings[setting];
        Assert.Equal(value, given.Value, 1e-12);
        Assert.Equal(plusMinus / Math.Sqrt(3), given.StandardDoubt, 1e-12);
    }

    /// <summary>Settings are held in SI: a claim of 2 Ah is 7200 C.</summary>
    [Fact]
    public void A_setting_held_in_SI_is_given_in_the_unit_of_the_card()
    {
        var run = new Run(new("a"), [new("time", "s", "")], [new(1, ["0"])]) { Settings = new Dictionary<string, double> { ["claim"] = 7200 } };
        Assert.Equal(2, CardBench.Input(TrialCard.Find("capacity")!, run, Meter).Settings["claim"].Value, 1e-12);
    }

    /// <summary>4.0 ± 0.3 and 4.4 ± 0.4 Ω are 0.4 apart, by hand √(0.09 + 0.16) = 0.5: 0.8 standard doubts. Two are still agreement.</summary>
    [Theory]
    [InlineData(4.4, "agrees with first, 0.8 standard doubts apart"), InlineData(3.6, "agrees with first, 0.8 standard"), InlineData(5.0, "agrees with first, 2.0 standard"), InlineData(5.01, "contradicts first, 2.0 standard"), InlineData(2.5, "contradicts first, 3.0 standard")]
    public void Two_trials_of_one_quantity_are_held_against_each_other(double second, string words)
    {
        var remark = Assert.Single(CardBench.Compared([Ohms("first", 4, 0.3), Ohms("second", second, 0.4)], Trials("first", "second")));
        Assert.Contains(words, remark.Words, StringComparison.Ordinal);
        Assert.Contains("Predictions take the one of first, 4", remark.Words, StringComparison.Ordinal);
        Assert.Equal(("second", "second-1", 0, Remark.Kept), (remark.Trial.Name, remark.Run.Name, remark.Reading, remark.Effect));
    }

    /// <summary>What both share cancels: 4.0 and 4.4 Ω on one meter whose gain moves both by 0.4 are 0.4 apart without any doubt between them.</summary>
    [Fact]
    public void What_both_trials_share_is_no_excuse_for_a_difference()
    {
        Finding On(string trial, double value, double own) => new(new("p"), "ohms", new Estimate(value, Units.Ohm, Doubts.From(Cause.Normal("gain", CauseGroup.Instrument), 0.4).With(Cause.Normal(trial, CauseGroup.Trial), own), new Origin.Fitted(new(trial), [])));
        Assert.Contains("contradicts first, 4.0 standard", Assert.Single(CardBench.Compared([On("first", 4, 0.06), On("second", 4.4, 0.08)], Trials("first", "second"))).Words, StringComparison.Ordinal);
        Assert.Contains("contradicts first, without doubt", Assert.Single(CardBench.Compared([Ohms("first", 4, 0), Ohms("second", 4.4, 0)], Trials("first", "second"))).Words, StringComparison.Ordinal);
        Assert.Contains("agrees with first, without doubt", Assert.Single(CardBench.Compared([Ohms("first", 4, 0), Ohms("second", 4, 0)], Trials("first", "second"))).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_trials_of_the_same_quantity_that_were_taken_apart_are_compared()
    {
        var trials = Trials("first", "second", "third");
        Assert.Empty(CardBench.Compared([Ohms("first", 4, 1), Ohms("first", 5, 1)], trials));
        Assert.Empty(CardBench.Compared([Ohms("first", 4, 1), Ohms("second", 5, 1) with { Quantity = "mass" }], trials));
        Assert.Empty(CardBench.Compared([Ohms("first", 4, 1), Ohms("unknown", 5, 1)], trials));
        Assert.Empty(CardBench.Compared([Ohms("first", 4, 1), Ohms("second", 5, 1)], [trials[0], trials[1] with { Runs = [] }]));
        var guess = Ohms("second", 5, 1);
        Assert.Empty(CardBench.Compared([Ohms("first", 4, 1), guess with { Value = guess.Value with { Origin = new Origin.Assumed("test") } }], trials));
        Assert.Equal(["second", "third"], CardBench.Compared([Ohms("first", 4, 1), Ohms("second", 5, 1), Ohms("third", 6, 1)], trials).Select(remark => remark.Trial.Name));
    }

    private static Finding Ohms(string trial, double value, double doubt) => new(new("p"), "ohms", new Estimate(value, Units.Ohm, doubt > 0 ? Doubts.From(Cause.Normal(trial, CauseGroup.Trial), doubt) : Doubts.None, new Origin.Fitted(new(trial), [])));

    private static Trial[] Trials(params string[] names) => [.. names.Select(name => new Trial(new(name), TrialKind.Bench, new("p"), [new(new(name + "-1"), [], [])]))];
}
