using Heatwright.Cli;
using Heatwright.Tests.Journeys;

namespace Heatwright.Tests.Cli;

/// <summary>Names as a maker types them and as a screen says them: kinds with a hyphen, readings with a blank, a column's name beside each value.</summary>
public sealed class TypedNamesTests : IDisposable
{
    private readonly Bench bench = new();

    private string Study => bench.In("band.study");

    public TypedNamesTests() => Assert.Equal(0, bench.Type("new", Study).Exit);

    public void Dispose() => bench.Dispose();

    [Theory]
    [InlineData("step-up"), InlineData("step up"), InlineData("stepUp"), InlineData("Step-Up"), InlineData("step-up module")]
    public void A_kind_is_typed_with_a_hyphen_a_blank_or_neither(string typed)
    {
        Assert.Equal(0, bench.Type("part", "add", Study, "module", typed, "blue module").Exit);
        Assert.Contains("step-up", bench.Type("part", "list", Study).Out, StringComparison.Ordinal);
        string shown = bench.Type("part", "show", Study, "module").Out;
        Assert.Contains("blue module: step-up,", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("stepUp", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_and_refusals_name_the_kinds_so()
    {
        string help = bench.Type("part", "add", "--help").Out;
        Assert.Contains("step-up", help, StringComparison.Ordinal);
        Assert.Contains("cut-out", help, StringComparison.Ordinal);
        Assert.Contains("lamp", help, StringComparison.Ordinal);
        string refused = bench.Type("part", "add", Study, "module").Error;
        Assert.Contains("cut-out", refused, StringComparison.Ordinal);
        Assert.Contains("heatwright part add", refused, StringComparison.Ordinal);
        Assert.All(new[] { help, refused }, said => Assert.DoesNotContain("stepUp", said, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("gate volts=4.5 drop=27mV amps=3")]
    [InlineData("gate-volts=4.5 drop=27mV amps=3")]
    [InlineData("drop=27mV amps=3 gate volts=4.5")]
    public void A_reading_is_typed_by_the_name_that_the_recipe_has(string reading)
    {
        var (exit, output, error) = bench.Type("trial", "fit", "switch-drop", "--read", reading, "--read", reading.Replace("27mV", "45mV", StringComparison.Ordinal).Replace("amps=3", "amps=5", StringComparison.Ordinal));
        Assert.True(exit == 0, error);
        Assert.Contains("ohms", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("gat volts=4.5 drop=27mV amps=3", "'gat volts=4.5' is no reading")]
    [InlineData("drop=27 mV amps=3", "'mV' is no reading")]
    [InlineData("drop=27mV amps=3 about", "'about' is no reading")]
    public void A_name_that_is_none_is_told_once(string reading, string told)
    {
        string error = bench.Type("trial", "fit", "switch-drop", "--read", reading).Error;
        Assert.Contains(told, string.Join(' ', error.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Equal(2, error.Split("is no reading").Length);
    }

    /// <summary>A class alone is a part to be bought; what is said of the part itself is said of one that is there.</summary>
    [Fact]
    public void A_part_of_a_class_with_a_mass_of_its_own_is_on_hand()
    {
        Assert.Contains("0 on hand", bench.Type("part", "add", Study, "bead", "sensor", "--class", "bare thermocouple bead").Out, StringComparison.Ordinal);
        Assert.Contains("1 on hand", bench.Type("part", "add", Study, "own", "sensor", "--class", "bare thermocouple bead", "--measured", "mass=1g", "price=2").Out, StringComparison.Ordinal);
        Assert.Contains("0 on hand", bench.Type("part", "add", Study, "wanted", "sensor", "--class", "bare thermocouple bead", "--measured", "mass=1g", "--count", "0").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void In_a_narrow_window_every_value_has_the_name_of_its_column()
    {
        Assert.Equal(0, bench.Type("part", "add", Study, "grey", "cell", "grey cell", "--claimed", "capacity=3600mAh (a long text of the seller that says much about it)").Exit);
        using var output = new StringWriter();
        Assert.Equal(0, CommandLine.Run(["part", "show", Study, "grey"], new Screen(output, TextWriter.Null, false, false, 40)));
        string[] lines = output.ToString().Split('\n', StringSplitOptions.TrimEntries);
        Assert.DoesNotContain("*", lines);
        Assert.Contains(lines, line => line.StartsWith("counts", StringComparison.Ordinal) && line.EndsWith('*'));
    }

    /// <summary>Two lines of one cell, as value and odds of a comparison are, stay behind its heading.</summary>
    [Fact]
    public void The_odds_of_a_comparison_stay_behind_their_letter()
    {
        var table = Answers.Table("requirement", "A", "B");
        table.Row("ready", "21.0 s\n98 of 100, go", "29.0 s\n3 of 100, no-go");
        var row = Assert.Single(Stacked.Of(table, text => text)!.Rows);
        Assert.Equal([("requirement", "ready"), ("A", "21.0 s"), ("A", "98 of 100, go"), ("B", "29.0 s"), ("B", "3 of 100, no-go")], row);
    }

    [Fact]
    public void A_wired_holder_is_counted_aloud()
    {
        foreach (string[] part in (string[][])[["grey", "cell", "--count", "2", "--measured", "ohms=50mohm"], ["coil", "heater", "--measured", "ohms=3ohm"], ["two", "contacts", "spring holder", "--word", "cells=2"], ["one", "contacts", "spring holder"]])
        {
            Assert.Equal(0, bench.Type(["part", "add", Study, .. part]).Exit);
        }

        Assert.Contains("Counted: 2 × spring holder, one to a cell, for 4 touches.", bench.Type("arrange", Study, "--cell", "grey", "--heater", "coil", "--contacts", "one", "--pack", "2S1P").Out, StringComparison.Ordinal);
        Assert.Contains("Counted: 1 × spring holder, each for 2 cells, for 4 touches.", bench.Type("arrange", Study, "--cell", "grey", "--heater", "coil", "--contacts", "two", "--pack", "2S1P").Out, StringComparison.Ordinal);
    }
}
