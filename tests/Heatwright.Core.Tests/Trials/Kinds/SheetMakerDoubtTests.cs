using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>What the sheet says may be wrong with each reading, and with all of a meter. By hand: a step s rounds with s/√12; of five readings or fewer a last digit may flicker by 0.3 s besides.</summary>
public sealed class SheetMakerDoubtTests
{
    private static readonly double Rounds = 1 / Math.Sqrt(12), Flickers = Math.Sqrt((1 / 12.0) + 0.09);

    private static TrialSheet Made(TrialColumn column, string? unit, double[] values, params (string Name, MeterSaid Meter)[] meters) => SheetMakerTests.Made(SheetMakerTests.Card([column]),
        SheetMakerTests.Input(SheetMakerTests.Raw(column.Name, unit, values)) with { Meters = meters.ToDictionary(pair => pair.Name, pair => pair.Meter, StringComparer.Ordinal) });

    public static TheoryData<string, string?, double, double[], double, bool> Steps => new()
    {
        { "V", "V", 0, [4.1, 4.25], 0.01, true },
        { "V", "V", 0, [4.1, 4.2, 4.3, 4.4, 4.5], 0.1, true },
        { "V", "V", 0, [4.1, 4.2, 4.3, 4.4, 4.5, double.NaN], 0.1, true }, // what was not read does not count
        { "V", "V", 0, [4.1, 4.2, 4.3, 4.4, 4.5, 4.6], 0.1, false },
        { "mV", "mV", 0, [4.1, 4.2], 1e-4, true },
        { "V", "mV", 0, [250.1, 250.2], 1e-4, true },
        { "V", "A", 0, [250.1, 250.2], 0.1, true }, // a unit of another kind says nothing
        { "V", "V", 0.01, [4.1, 4.2], 0.01, true }, // never coarser than a usual display
        { "V", "V", 0.01, [4.1, 4.205], 0.001, true },
        { "V", "V", 0, [4, 12], 0, true }, // whole numbers may be counted, or set
        { "V", "mV", 0, [4, 12], 0, true },
        { "V", "V", 0, [1.23456789], 0, true }, // eight digits and more are worked out, not shown
        { "V", "V", 0, [1.2345671], 1e-7, true },
        { "V", "V", 0, [2e15, 0.5], 0.1, true },
        { "V", "V", 0, [4.1, 4.2, 4.3, 4.4, 4.5, 4.6, 4.7, 4.8, 4.905], 0.001, false },
        { "V", "V", 0, [4.1, 4.2, 4.3, 4.4, 4.5, 4.6, 4.7, 4.8, 4.9, 5.1, 5.205], 0.1, false }, // of eleven, one that a hand divided by ten
        { "V", "V", 0, [4.1, 4.2, 4.3, 4.4, 4.5, 4.6, 4.7, 4.8, 4.9, 5.115, 5.205], 0.001, false },
        { "°C", "°C", 0.1, [200, 280, 310, 300, 290], 10, true }, // read off in tens, in fives
        { "°C", "°C", 0.1, [205, 280, 310, 300, 290, 250], 5, false },
        { "°C", "°C", 0.1, [205, 281, 310, 300, 290, 250], 0.1, false },
        { "°C", "°C", 0.1, [200, 280, 310, 300], 0.1, true },
        { "°C", "°C", 0.1, [200, 280, 310, 300, double.NaN], 0.1, true },
        { "°C", "°C", 0.1, [200, 280, double.NaN, 310, 300, 290], 10, true },
        { "V", "V", 0.1, [10, 20, 30, 40, 50], 0.1, true },
    };

    [Theory, MemberData(nameof(Steps))]
    public void The_last_digit_that_a_column_shows_is_the_doubt_of_each_reading(string unit, string? written, double usual, double[] values, double step, bool few) =>
        Assert.All(Made(new("x", unit, "x") { Step = usual }, written, values).Own("x"), own => Assert.Equal(step * (few ? Flickers : Rounds), own, 1e-12));

    /// <summary>By hand: 0.1 and 0.2 s of a hand on a watch, √(0.04 + 0.01·(1/12 + 0.09)); 200 ms of it are as much.</summary>
    [Theory, InlineData("s", 0.2, 0.1), InlineData("ms", 200, 1e-4)]
    public void A_hand_comes_on_top_of_the_last_digit(string unit, double hand, double step) =>
        Assert.Equal(Math.Sqrt(0.04 + (step * step * Flickers * Flickers)), Made(new("x", unit, "x") { Own = hand }, unit, [3.1, 3.2]).Own("x")[0], 1e-9);

    /// <summary>By hand: a meter that was moved allows 1 % more, as a limit: 4 V · 0.01/√3; of ohms there is but one reading.</summary>
    [Theory, InlineData("V", 1, 1.0), InlineData("A", 1, 1.0), InlineData("mV", 1e-3, 1.0), InlineData("Ω", 1, 0), InlineData("V", 1, 2.0)]
    public void One_meter_that_was_moved_allows_a_hundredth_more(string unit, double factor, double meters)
    {
        bool moves = meters == 1 && unit != "Ω";
        var sheet = SheetMakerTests.Made(SheetMakerTests.Card([new("x", unit, "x")], new TrialSetting("meters", "", "how many") { Default = unit == "Ω" ? 1 : meters }), SheetMakerTests.Input(SheetMakerTests.Raw("x", unit, 4, double.NaN)));
        Assert.Equal(moves ? 4 * factor * 0.01 / Math.Sqrt(3) : 0, sheet.Own("x")[0], 1e-12);
        Assert.Equal(0, sheet.Own("x")[1]);
        Assert.Equal(meters == 2 ? 0 : 1, sheet.Notes.Count(note => note.Contains("±1 %", StringComparison.Ordinal)));
    }

    /// <summary>By hand: shorted leads read in steps of 10 mΩ are known to √(0.05² + 0.01²/12) Ω where 0.05 Ω was said of them; a setting of another column keeps its doubt.</summary>
    [Fact]
    public void A_setting_read_on_the_same_display_is_rounded_to_its_step()
    {
        var card = SheetMakerTests.Card([new("ohms", "mΩ", "ohms")], new TrialSetting("leads", "Ω", "leads") { Default = 0.2, Doubt = 0.05, With = "ohms" }, new TrialSetting("other", "Ω", "other") { Default = 0.2, Doubt = 0.05 }, new TrialSetting("unsaid", "Ω", "none") { With = "ohms" });
        var sheet = SheetMakerTests.Made(card, SheetMakerTests.Input(SheetMakerTests.Raw("ohms", "Ω", 3.71, 3.72)));
        Assert.Equal(Math.Sqrt(0.0025 + (0.01 * 0.01 / 12)), sheet.SettingDoubt("leads"), 1e-12);
        Assert.Equal(0.05, sheet.SettingDoubt("other"));
        Assert.True(double.IsNaN(sheet.Setting("unsaid")));
    }

    /// <summary>Limits over √3; where both terms may be at their worst together, √(2·gain·offset) stands for that. Digits count in steps of the display, a fixed part in its own unit or in that of the column.</summary>
    [Theory]
    [InlineData("V", "V", "0.5%+2d", 0.005, 0.02, true), InlineData("V", "V", "0.5%", 0.005, 0, false), InlineData("V", "V", "0%+2d", 0, 0.02, false), InlineData("V", "mV", "0.5%+2d", 0.005, 2e-5, true)]
    [InlineData("mV", "mV", "0%+2d", 0, 2e-5, false), InlineData("V", "V", "0%+30mV", 0, 0.03, false), InlineData("mV", "mV", "0%+0.03V", 0, 0.03, false), InlineData("V", "V", "1%+3d+30mV", 0.01, 0.06, true)]
    public void What_a_meter_promises_becomes_errors_that_its_readings_share(string unit, string written, string promise, double gain, double offset, bool both)
    {
        var shared = Made(new("x", unit, "x"), written, [4.1, 4.25], ("x", new("bench", AccuracySpec.Read(promise).Value))).Shared;
        var expected = new List<(string, double, double, double)>();
        if (gain > 0)
        {
            expected.Add(("bench V gain", gain / Math.Sqrt(3), 0, 0));
        }

        if (offset > 0)
        {
            expected.Add(("bench V offset", 0, offset / Math.Sqrt(3), 0));
        }

        if (both)
        {
            expected.Add(("bench V gain with offset", 0, 0, Math.Sqrt(2 * gain * offset / 3)));
        }

        Assert.Equal(expected.Count, shared.Count);
        foreach (var (one, error) in expected.Zip(shared))
        {
            Assert.Equal(one.Item1, error.Cause.Id);
            Assert.Equal(one.Item2, error.Gain, 1e-12);
            Assert.Equal(one.Item3, error.Offset, 1e-12);
            Assert.Equal(one.Item4, error.Both, 1e-12);
            Assert.Equal((CauseGroup.Instrument, "x"), (error.Cause.Group, error.Column));
        }
    }

    [Fact]
    public void Terms_that_are_wrong_apart_bring_no_third_error_and_a_bare_fixed_part_is_in_the_unit_of_the_column()
    {
        var shared = Made(new("x", "mV", "x"), "mV", [4.1, 4.2], ("all", new("bench", new AccuracySpec(0.01, 0, 0, 3) { Terms = SpecTerms.Apart }))).Shared;
        Assert.Equal(["bench V gain", "bench V offset"], shared.Select(error => error.Cause.Id));
        Assert.Equal(3e-3 / Math.Sqrt(3), shared[1].Offset, 1e-12);

        // A fixed part in a unit of another kind is a bare number too.
        Assert.Equal(3e-3 / Math.Sqrt(3), Made(new("x", "mV", "x"), "mV", [4.1], ("x", new("bench", new AccuracySpec(0, 0, 0, 3) { FixedUnit = Units.Kelvin }))).Shared[0].Offset, 1e-12);
    }

    /// <summary>'2 °C or 1 %, whichever is larger': the middle of 100, 200 and −400 without its sign is 200, where 1 % are just 2.</summary>
    [Theory, InlineData(200, "gain"), InlineData(199, "offset"), InlineData(-200, "gain")]
    public void Whichever_is_larger_is_told_by_the_middle_reading(double middle, string which)
    {
        var error = Assert.Single(Made(new("x", "°C", "x"), "°C", [100, middle, -400, double.NaN], ("x", new("probe", new AccuracySpec(0.01, 0, 0, 2) { TakesLarger = true, FixedUnit = Units.Kelvin }))).Shared);
        Assert.EndsWith(which, error.Cause.Id, StringComparison.Ordinal);
        Assert.Equal(which == "gain" ? 0.01 / Math.Sqrt(3) : 0, error.Gain, 1e-12);
        Assert.Equal(which == "gain" ? 0 : 2 / Math.Sqrt(3), error.Offset, 1e-12);
    }

    [Fact]
    public void Digits_of_a_column_that_shows_none_count_in_the_usual_step() =>
        Assert.Equal(2 * 0.05 / Math.Sqrt(3), Made(new("x", "V", "x") { Step = 0.05 }, "V", [1.123456789], ("x", new("bench", AccuracySpec.Read("0%+2d").Value))).Shared[0].Offset, 1e-12);

    [Fact]
    public void Where_no_meter_is_named_a_usual_one_is_assumed_and_said()
    {
        TrialColumn column = new("x", "V", "x") { Usual = "0.5%+2d" };
        var assumed = Made(column, "V", [4.1, 4.25]);
        Assert.Equal(["made meter V gain", "made meter V offset", "made meter V gain with offset"], assumed.Shared.Select(error => error.Cause.Id));
        Assert.Contains("No meter is named for x: ±(0.5%+2d) is assumed", Assert.Single(assumed.Notes), StringComparison.Ordinal);

        // One that is named counts, be it for this column, for all, or as exact; a promise of nothing is none.
        var half = AccuracySpec.Read("1%").Value;
        Assert.Equal(["mine V gain"], Made(column, "V", [4.1], ("x", new("mine", half)), ("all", new("exact", null))).Shared.Select(error => error.Cause.Id));
        Assert.Equal(["mine V gain"], Made(column, "V", [4.1], ("all", new("mine", half))).Shared.Select(error => error.Cause.Id));
        foreach (var exact in (MeterSaid[])[new("exact", null), new("exact", new AccuracySpec(0, 0, 0, 0))])
        {
            var sheet = Made(column, "V", [4.1], ("all", exact));
            Assert.Empty(sheet.Shared);
            Assert.Empty(sheet.Notes);
        }

        Assert.Empty(Made(column with { Usual = "" }, "V", [4.1]).Shared);
    }
}
