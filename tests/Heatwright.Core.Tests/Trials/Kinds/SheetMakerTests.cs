using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>From columns as they came to a sheet in SI: names, units, what cannot be. Cards and readings are made up, every expected value by hand.</summary>
public sealed class SheetMakerTests
{
    private static readonly TrialRecipe NoRecipe = new([], [], [], [], [], [], [], []);

    internal static TrialCard Card(TrialColumn[] columns, params TrialSetting[] settings) => new("made", "a made thing", "nothing", columns, settings, NoRecipe, [], 1);

    internal static RawColumn Raw(string name, string? unit, params double[] values) => new(name, unit is null ? null : Units.Find(unit), values, []);

    internal static TrialInput Input(params RawColumn[] columns) => new(columns, new Dictionary<string, Estimate>(), new Dictionary<string, MeterSaid>());

    internal static TrialSheet Made(TrialCard card, TrialInput input) => SheetMaker.Make(card, input, []).Value;

    private static TrialColumn Volts => new("volts", "V", "volts at the part");

    [Fact]
    public void Every_needed_column_that_is_missing_is_told_with_what_is_there()
    {
        var card = Card([Volts with { Needed = true }, new("amps", "mA", "amps through it") { Needed = true }, new("time", "s", "when")]);
        var made = SheetMaker.Make(card, Input(Raw("time", "s", 1), Raw("odd", null, 2)), []);
        Assert.Equal(["The column 'volts' (volts at the part) is missing.", "The column 'amps' (amps through it) is missing."], made.Problems.Select(problem => problem.What));
        Assert.Equal(["time, odd", "time, odd"], made.Problems.Select(problem => problem.Value));
        Assert.Equal(["a column of that name, in V", "a column of that name, in mA"], made.Problems.Select(problem => problem.Limit));
        Assert.Equal("no columns", SheetMaker.Make(card, Input(), []).Problems[0].Value);
        Assert.True(SheetMaker.Make(card, Input(Raw("volts", "V", 1), Raw("amps", "A", 2)), []).IsFine);
    }

    [Fact]
    public void Columns_none_of_which_belongs_to_the_kind_are_told_once()
    {
        var card = Card([Volts, new("time", "s", "when")]);
        var problem = Assert.Single(SheetMaker.Make(card, Input(Raw("odd", null, 2)), []).Problems);
        Assert.Equal(("None of the columns belongs to made.", "odd", "volts, time"), (problem.What, problem.Value, problem.Limit));
        Assert.Equal("no columns", Assert.Single(SheetMaker.Make(card, Input(), []).Problems).Value);

        // Where something else is in the way already, that alone is told.
        var needs = Card([Volts], new TrialSetting("air", "°C", "the air") { Needed = true });
        Assert.StartsWith("air (the air) is not said", Assert.Single(SheetMaker.Make(needs, Input(Raw("odd", null, 2)), []).Problems).What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("grip degrees", true), InlineData(" Grip_Degrees ", true), InlineData("GRIP-DEGREES", true), InlineData("temp c", true), InlineData("Temp_C", true), InlineData("grips", false), InlineData("tempc", false)]
    public void A_column_goes_by_its_name_or_by_another_that_loggers_give_it(string name, bool found)
    {
        var card = Card([new("grip degrees", "°C", "the grip") { Also = ["handle", "temp c"] }]);
        Assert.Equal(found, SheetMaker.Make(card, Input(Raw(name, "°C", 30)), []).IsFine);
    }

    [Fact]
    public void The_own_name_goes_before_another_and_what_is_said_goes_before_both()
    {
        var card = Card([Volts with { Also = ["v"] }]);
        var input = Input(Raw("v", "V", 1), Raw("volts", "V", 2), Raw("cell_volts", "V", 3));
        Assert.Equal([2], Made(card, input)["volts"]);
        Assert.Equal([3], Made(card, input with { Mapping = new Dictionary<string, string> { ["volts"] = "Cell Volts" } })["volts"]);

        // Of two columns of one name the first counts.
        Assert.Equal([1], Made(card, Input(Raw("volts", "V", 1), Raw("Volts", "V", 2)))["volts"]);
        Assert.Equal([1], Made(card, Input(Raw("v", "V", 1), Raw("V", "V", 2)))["volts"]);
        Assert.Equal([1], Made(card, Input(Raw("a b", "V", 1), Raw("A_B", "V", 2)) with { Mapping = new Dictionary<string, string> { ["volts"] = "a b" } })["volts"]);
        var problem = Assert.Single(SheetMaker.Make(card, input with { Mapping = new Dictionary<string, string> { ["volts"] = "pack" } }, []).Problems, problem => problem.Where == "--column");
        Assert.Equal(("There is no column 'pack' to take volts from.", "pack", "v, volts, cell_volts"), (problem.What, problem.Value, problem.Limit));
    }

    [Fact]
    public void Columns_of_unlike_length_are_filled_up_with_nothing()
    {
        var card = Card([Volts, new("amps", "A", "amps"), new("mark", "word", "a word"), new("how", "word", "a word")]);
        var sheet = Made(card, Input(Raw("volts", "V", 1, 2, 3), Raw("amps", "A", 4, 5), new RawColumn("mark", null, [], [" At ", "STUCK", "", "melt"]), Raw("how", null, 3.5, double.NaN)));
        Assert.Equal([1, 2, 3, 4], sheet.Numbers);
        Assert.Equal([1, 2, 3, double.NaN], sheet["volts"]);
        Assert.Equal([4, 5, double.NaN, double.NaN], sheet["amps"]);
        Assert.Equal(["at", "stuck", "", "melt"], sheet.Words("mark"));
        Assert.Equal(["3.5", "", "", ""], sheet.Words("how"));
        Assert.Equal([1, 2, 3], Made(card, Input(Raw("volts", "V", 1, 2), new RawColumn("mark", null, [], ["at"]), Raw("amps", "A", 1, 2, 3))).Numbers);
    }

    /// <summary>A unit of another kind says nothing; kelvin are differences, so that a bare number of them is taken as degrees.</summary>
    [Theory]
    [InlineData("V", "mV", 250, 0.25), InlineData("V", "A", 3, 3), InlineData("mA", null, 5, 0.005), InlineData("mA", "A", 5, 5), InlineData("°C", null, 30, 30), InlineData("°C", "°C", 30, 30), InlineData("°C", "K", 30, 30), InlineData("s", "h", 2, 7200)]
    public void Numbers_are_turned_into_the_units_of_the_sheet(string unit, string? written, double value, double expected) =>
        Assert.Equal(expected, Made(Card([new("x", unit, "x")]), Input(Raw("x", written, value)))["x"][0], 1e-12);

    [Fact]
    public void What_an_instrument_sends_for_over_range_is_no_number()
    {
        List<TrialRemark> remarks = [];
        var sheet = SheetMaker.Make(Card([Volts]), Input(new RawColumn("volts", Units.Volt, [1, 9.9e37, -9.9e37, double.NaN, 9e36], []) { Overload = [false, false, false, true] }), remarks).Value;
        Assert.Equal([1, double.NaN, double.NaN, double.NaN, 9e36], sheet["volts"]);
        Assert.Equal([(2, "overload"), (3, "overload"), (4, "overload")], remarks.Select(remark => (remark.Reading, remark.Rule)));
        Assert.All(remarks, remark => Assert.True(remark.LeftOut && remark.Level == "E"));
        Assert.StartsWith("volts was over range", remarks[2].Words, StringComparison.Ordinal);
    }

    /// <summary>Limits of the card are in its unit and still allowed themselves.</summary>
    [Theory]
    [InlineData("mV", "mV", -5, ""), InlineData("mV", "mV", -5.01, "x −5.01 mV cannot be on a made thing: it lies below -5 mV"), InlineData("mV", "mV", 50, ""), InlineData("mV", "mV", 50.004, "x 50 mV cannot be on a made thing: it lies above 50 mV")]
    [InlineData("mV", "V", 0.06, "x 60 mV"), InlineData("mV", "V", 0.04, ""), InlineData("°C", "°C", 50.1, "x 50.1 °C"), InlineData("°C", "°C", 50, ""), InlineData("°C", "°C", -5.1, "below -5 °C")]
    public void What_lies_beyond_the_limits_of_the_card_is_left_out(string unit, string written, double value, string told)
    {
        List<TrialRemark> remarks = [];
        var sheet = SheetMaker.Make(Card([new("x", unit, "x") { Low = -5, High = 50 }]), Input(Raw("x", written, 0.01, value)), remarks).Value;
        Assert.Equal(told.Length > 0, double.IsNaN(sheet["x"][1]));
        Assert.Equal(told.Length > 0 ? 1 : 0, remarks.Count);
        Assert.All(remarks, remark => Assert.Equal((2, "impossible", "E", true), (remark.Reading, remark.Rule, remark.Level, remark.LeftOut)));
        Assert.All(remarks, remark => Assert.Contains(told, remark.Words, StringComparison.Ordinal));
    }

    [Fact]
    public void A_card_without_limits_takes_any_number() => Assert.Equal([-1e9, 1e9], Made(Card([Volts]), Input(Raw("volts", "V", -1e9, 1e9)))["volts"]);

    /// <summary>By hand: 250 mA are 0.25 A; a level stays in °C, and its doubt in K; the default of 20 mA ± 4 mA is 0.02 A ± 0.004 A.</summary>
    [Fact]
    public void Settings_are_taken_as_given_else_as_usual()
    {
        TrialSetting[] settings = [new("rest amps", "mA", "amps") { Default = 20, Doubt = 4 }, new("air", "°C", "the air") { Default = 25, Doubt = 2 }, new("leads", "Ω", "leads"), new("load", "Ω", "load") { Needed = true, Default = 5 }];
        var usual = Made(Card([Volts], settings), Input(Raw("volts", "V", 1)));
        Assert.Equal((0.02, 0.004, 25.0, 2.0), (usual.Setting("rest amps"), usual.SettingDoubt("rest amps"), usual.Setting("air"), usual.SettingDoubt("air")));
        Assert.True(double.IsNaN(usual.Setting("leads")));
        Estimate Given(double value, double half, string unit) => Estimate.Within(value, half, Units.Find(unit)!, "cause", CauseGroup.Assumption, new Origin.Assumed("test"));
        var given = Made(Card([Volts], settings), Input(Raw("volts", "V", 1)) with { Settings = new Dictionary<string, Estimate> { ["rest amps"] = Given(250, 30, "mA"), ["air"] = Given(30, 1.5, "°C"), ["leads"] = Given(200, 0, "mΩ") } });
        Assert.Equal(0.25, given.Setting("rest amps"), 1e-12);
        Assert.Equal(0.03 / Math.Sqrt(3), given.SettingDoubt("rest amps"), 1e-12);
        Assert.Equal(30, given.Setting("air"), 1e-9);
        Assert.Equal(1.5 / Math.Sqrt(3), given.SettingDoubt("air"), 1e-9);
        Assert.Equal((0.2, 0.0), (given.Setting("leads"), given.SettingDoubt("leads")));

        // Each doubt of a setting is one error beside those of the columns; a setting without doubt is none.
        Assert.Equal([("made rest amps", "rest amps", 0, given.SettingDoubt("rest amps")), ("made air", "air", 0, given.SettingDoubt("air"))], given.Shared.Select(error => (error.Cause.Id, error.Column, error.Gain, error.Offset)));
        Assert.All(given.Shared, error => Assert.Equal((CauseGroup.Assumption, 0), (error.Cause.Group, error.From)));
    }

    [Fact]
    public void A_needed_setting_that_is_not_said_is_asked_for_with_its_unit()
    {
        var problem = Assert.Single(SheetMaker.Make(Card([Volts], new TrialSetting("load", "Ω", "the resistor") { Needed = true }, new TrialSetting("claim", "Ah", "label")), Input(Raw("volts", "V", 1)), []).Problems);
        Assert.Equal(("load (the resistor) is not said.", "a value in Ω"), (problem.What, problem.Limit));
    }

    /// <summary>A film of 25 frames a second: 1/25 s wide is 0.04/√12; the time behind a cut of 40 ± 5 s may be 5/√3 s off, from the third row on. A cut of exactly 10 s brings no doubt.</summary>
    [Fact]
    public void Times_off_a_film_share_the_doubt_of_its_cuts()
    {
        var film = FilmTimes.Of(["10:00:00", "cut+40±5s", "10:06:00", "cut+10s", "10:09:00"], 25);
        var sheet = Made(Card([new("time", "s", "when") { Own = 0.3 }]), Input(new RawColumn("time", Units.Second, [.. film.Read.Select(read => read.Value)], []) { Film = film }));
        Assert.Equal(0.04 / Math.Sqrt(12), sheet.Own("time")[2], 1e-12);
        var error = Assert.Single(sheet.Shared);
        Assert.Equal(("made film cut 1", "time", 0.0, 3), (error.Cause.Id, error.Column, error.Gain, error.From));
        Assert.Equal(5 / Math.Sqrt(3), error.Offset, 1e-9);
        Assert.Equal(CauseGroup.Assumption, error.Cause.Group);

        // What it moves: the rows behind it, and nothing before.
        double[] moved = sheet.Moved(error)["time"];
        Assert.Equal(sheet["time"][0], moved[0]);
        Assert.Equal(sheet["time"][2] + (5 / Math.Sqrt(3)), moved[2], 1e-9);
    }
}
