using System.Globalization;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>What the rules ask of the rows of a sheet: the row itself, its doubt, the ones before and behind it, and the run. Readings and expected figures by hand.</summary>
public sealed class RuleBookReadingsTests
{
    private static TrialSheet Sheet(string kind, (string Name, double[] Values)[] columns, (string Name, double Value)[]? settings = null, double own = 0, params SharedError[] shared) => new(TrialCard.Find(kind)!, [.. Enumerable.Range(11, columns[0].Values.Length)],
        columns.ToDictionary(column => column.Name, column => column.Values, StringComparer.Ordinal), columns.ToDictionary(column => column.Name, column => column.Values.Select(_ => own).ToArray(), StringComparer.Ordinal), [],
        (settings ?? []).ToDictionary(setting => setting.Name, setting => (setting.Value, 0.0), StringComparer.Ordinal), shared);

    private static TrialRemark[] Said(string rule, TrialSheet sheet) => [.. RuleBook.Readings(sheet).Where(remark => remark.Rule == rule)];

    /// <summary>4 V may be off by 0.04 + 0.02 + 0.03·√4 = 0.12 of one meter, 0.05 of another and 0.05 of its own, √(0.0144 + 0.0025 + 0.0025) = 0.1393; at 2 A without doubt 3·√((2·0.1393)² + 1e-6) = 0.8357 W.</summary>
    [Theory, InlineData(8, 0), InlineData(8.83, 0), InlineData(7.17, 0), InlineData(8.84, 1), InlineData(7.16, 1)]
    public void A_reading_is_doubted_by_all_that_acts_on_it(double watts, int said)
    {
        Cause Of(string name) => Cause.Normal(name, CauseGroup.Instrument);
        var sheet = Sheet("warm-up", [("time", [0]), ("volts", [4]), ("amps", [2]), ("watts", [watts])], null, 0, new(Of("a"), "volts", 0.01, 0.02, 0.03), new(Of("b"), "volts", 0, 0.05), new(Of("c"), "degrees", 1, 1))
            .With("volts", [4], [0.05]);
        Assert.Equal(said, Said("S01", sheet).Length);
        Assert.All(Said("S01", sheet), remark => Assert.Equal(11, remark.Reading));
    }

    /// <summary>The nearest readings that there are count as before and behind: 3.8 V lies 0.2 V under 4.0 V and 4.1 V.</summary>
    [Theory, InlineData("4 - 3.8 - 4.1", 13), InlineData("4 3.86 4", 0), InlineData("4 3.84 4", 12), InlineData("3.8 4 4", 0), InlineData("4 4 3.8", 0)]
    public void A_row_is_held_against_the_nearest_ones_that_were_read(string volts, int reading)
    {
        double[] read = [.. volts.Split(' ').Select(text => text == "-" ? double.NaN : double.Parse(text, CultureInfo.InvariantCulture))];
        var said = Said("loose", Sheet("capacity", [("volts", read), ("amps", [.. read.Select(_ => 1.0)])]));
        Assert.Equal(reading > 0 ? 1 : 0, said.Length);
        Assert.All(said, remark => Assert.Equal((reading, true, "E"), (remark.Reading, remark.LeftOut, remark.Level)));
        Assert.All(said, remark => Assert.Contains(reading == 13 ? "3.8 V lies 0.2 V under" : "3.84 V lies 0.16 V under", remark.Words, StringComparison.Ordinal));
    }

    /// <summary>3565 V is told by itself; 3.62 V before it falls as a cell does, and the run as a whole is asked without it. The median of 4, 3.9, 3.8, 3.62, 3565, 3.5 is 3.85.</summary>
    [Fact]
    public void A_slip_by_a_thousand_speaks_of_itself_alone()
    {
        var said = RuleBook.Readings(Sheet("capacity", [("volts", [4, 3.9, 3.8, 3.62, 3565, 3.5]), ("amps", [1, 1, 1, 1, 1, 1])])).ToArray();
        var slip = Assert.Single(said);
        Assert.Equal(("S29-volts", 15, true), (slip.Rule, slip.Reading, slip.LeftOut));
    }

    /// <summary>5.20 V and 1.29 A in the middle of all; the third has them the other way round. Nothing is said where all are so.</summary>
    [Theory, InlineData("warm-up"), InlineData("hold-power"), InlineData("volts-amps")]
    public void Volts_and_amps_changed_over_in_one_reading_are_told(string kind)
    {
        var swap = Assert.Single(Said("swap-row", Sheet(kind, [("volts", [5.2, 5.2, 1.29, 5.19]), ("amps", [1.29, 1.29, 5.2, 1.29])])));
        Assert.Equal((13, true), (swap.Reading, swap.LeftOut));
        Assert.StartsWith("1.29 V and 5.2 A are off the other readings, and changed round they are like those", swap.Words, StringComparison.Ordinal);
        Assert.StartsWith("Type it again as 5.2 V and 1.29 A", swap.Remedy, StringComparison.Ordinal);
        Assert.Empty(Said("swap-row", Sheet(kind, [("volts", [1.29, 1.29, 1.29]), ("amps", [5.2, 5.2, 5.2])])));
        Assert.Empty(Said("S15", Sheet(kind, [("volts", [5.2, 5.2, 5.19, 1.29]), ("amps", [1.29, 1.29, 1.29, 5.2])])));
    }

    /// <summary>By hand as Grubbs has it: of three readings, two alike, the third is always farther off than chance; a step or two of the last digit are the display's own.</summary>
    [Theory, InlineData("1.12 1.13 1.12", 0), InlineData("1.12 1.12 1.14", 0), InlineData("0.00112 0.00113 0.00112", 0), InlineData("2 2 3", 0), InlineData("1.12 1.19 1.12", 12), InlineData("1.12 - 1.12 1.30", 14)]
    public void The_ohms_that_stand_alone_are_named(string ohms, int reading)
    {
        var said = Said("S23", Sheet("cold-ohms", [("ohms", [.. ohms.Split(' ').Select(text => text == "-" ? double.NaN : double.Parse(text, CultureInfo.InvariantCulture))])]));
        Assert.Equal(reading > 0 ? [reading] : [], said.Select(remark => remark.Reading));
        Assert.All(said, remark => Assert.StartsWith($"{ohms.Split(' ')[reading - 11].TrimEnd('0')} Ω stands alone", remark.Words, StringComparison.Ordinal));
        Assert.All(said, remark => Assert.False(remark.LeftOut));
    }

    /// <summary>Settings hold for every row; only some kinds are asked.</summary>
    [Fact]
    public void A_limit_that_was_set_is_asked_of_its_kinds_and_told_where_it_is_passed()
    {
        var said = Said("S25", Sheet("stuck-on", [("degrees", [99, 100, 101, 110, 99, 104])], [("limit", 100)]));
        Assert.Equal([13, 16], said.Select(remark => remark.Reading));
        Assert.StartsWith("104 °C is above the limit of 100 °C", said[1].Words, StringComparison.Ordinal);
        Assert.False(said[1].LeftOut);
        Assert.Empty(Said("S25", Sheet("warm-up", [("degrees", [110])], [("limit", 100)])));
        Assert.Equal([12], Said("S05", Sheet("warm-up", [("degrees", [18, 17.9])], [("air", 20)])).Select(remark => remark.Reading));
    }

    /// <summary>Of the run as a whole something is said once, leaves nothing out, and nothing is said of a run without readings.</summary>
    [Fact]
    public void A_run_is_asked_once()
    {
        var rest = Assert.Single(Said("S30", Sheet("capacity", [("volts", [4, 3.9])], [("rest", 300)])));
        Assert.Equal((0, false), (rest.Reading, rest.LeftOut));
        Assert.StartsWith("It rested 5 min only", rest.Words, StringComparison.Ordinal);
        Assert.Empty(RuleBook.Readings(Sheet("capacity", [("volts", [])], [("rest", 300)])));
        Assert.Single(Said("S30", Sheet("capacity", [("volts", [4])], [("rest", 300)]))); // one reading is a run
        Assert.Empty(Said("T22", Sheet("switch-drop", [("gate volts", [3, 4]), ("amps", [1, 1])], [("specified gate volts", 4.5)]))); // what a single row shows is not what the run as a whole says
        Assert.Single(Said("S06", Sheet("warm-up", [("degrees", [24, 30]), ("time", [0, 9])], [("air", 20)])));
        Assert.Empty(Said("S06", Sheet("warm-up", [("degrees", [23, 30]), ("time", [0, 9])], [("air", 20)])));
    }

    /// <summary>A row of more than twice the one before it. Of the first two the third decides: 1 stands apart from 3 and 3.78, 2.39 from their middle against three times 0.78; not so from 3 and 3.82. Of later ones the row before both does.</summary>
    [Theory]
    [InlineData("1 3 3.78", 11), InlineData("1 3 3.82", 12), InlineData("3 1 3.5", 12), InlineData("3.9 1 3", 13), InlineData("1 3", 12), InlineData("1 1 3 3", 13), InlineData("3 3 1 3 3", 13), InlineData("3 3.1 3.2", 0)]
    public void Which_of_two_readings_slipped_is_told_by_a_third(string volts, int reading)
    {
        double[] read = [.. volts.Split(' ').Select(text => double.Parse(text, CultureInfo.InvariantCulture))];
        var said = Said("S22", Sheet("capacity", [("volts", read), ("amps", [.. read.Select(_ => 1.0)])]));
        Assert.Equal(reading > 0 ? [reading] : [], said.Select(remark => remark.Reading));
        bool before = read.Length > 0 && reading > 0 && read[reading - 11] == 1;
        Assert.All(said, remark => Assert.Equal(before, remark.Words.EndsWith("it is this one that stands apart.", StringComparison.Ordinal)));
    }

    [Fact]
    public void Plain_numbers_are_asked_by_name_and_a_number_alone_is_a_row_of_one()
    {
        Assert.Equal(["degrees", "limit"], RuleBook.NamesOf("S25"));
        var said = RuleBook.Of(new Dictionary<string, double> { ["degrees"] = 110, ["limit"] = 100 }).Single(remark => remark.Rule == "S25");
        Assert.Equal((0, false), (said.Reading, said.LeftOut));
        Assert.Contains(RuleBook.Of(new Dictionary<string, double> { ["degrees"] = 30, ["air"] = 20, ["time"] = 0 }), remark => remark.Rule == "S06"); // first of a row of one
        Assert.DoesNotContain(RuleBook.Of(new Dictionary<string, double> { ["degrees"] = 30, ["air"] = 20, ["time"] = 0 }, new Dictionary<string, double[]> { ["degrees"] = [21, 30] }), remark => remark.Rule == "S06");
        Assert.Contains(RuleBook.Of(new Dictionary<string, double> { ["volts"] = 4, ["amps"] = 2, ["watts"] = 9, ["volts doubt"] = 0.1, ["amps doubt"] = 0 }), remark => remark.Rule == "S01"); // 3·0.2 W
        Assert.DoesNotContain(RuleBook.Of(new Dictionary<string, double> { ["volts"] = 4, ["amps"] = 2, ["watts"] = 9, ["volts doubt"] = 0.2, ["amps doubt"] = 0 }), remark => remark.Rule == "S01");
    }
}
