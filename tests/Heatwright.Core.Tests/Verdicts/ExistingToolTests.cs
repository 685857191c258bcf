using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>A tool that exists, judged by its own readings, counted by hand.</summary>
public sealed class ExistingToolTests
{
    private static RequirementVerdict? Read(double value, double plusMinus, bool atMost = true, string unit = "s", double limit = 30, string lineUnit = "s") =>
        ToolVerdict.Of(new Brief("", "tip", "cut", 20, [WrittenVerdict.Line("ready", RequirementQuantity.WarmUpTime, limit, atMost, unit: lineUnit)]),
            new("old", "O", "old one", [new("WarmUpTime", value, unit, plusMinus, "clock")])).Lines[0];

    /// <summary>By hand: of 24 to 32 s, three quarters lie at or under 30 s.</summary>
    [Theory, InlineData(28, 4, true, 0.75, VerdictWord.NeedMoreReadings), InlineData(28, 4, false, 0.25, VerdictWord.NeedMoreReadings), InlineData(25, 4, true, 1.0, VerdictWord.Go), InlineData(35, 4, true, 0.0, VerdictWord.NoGo)]
    [InlineData(30, 0, true, 1.0, VerdictWord.Go), InlineData(30, 0, false, 1.0, VerdictWord.Go), InlineData(30.1, 0, true, 0.0, VerdictWord.NoGo)]
    [InlineData(26.4, 4, true, 0.95, VerdictWord.Go), InlineData(33.6, 4, true, 0.05, VerdictWord.NoGo)]
    public void The_chance_is_the_share_of_the_reading_inside_the_limit(double value, double plusMinus, bool atMost, double chance, VerdictWord word)
    {
        var line = Read(value, plusMinus, atMost)!;
        Assert.Equal(chance, line.Probability!.Value, 1e-9);
        Assert.Equal(word, line.Word);
        Assert.Equal(atMost ? 30 - value : value - 30, line.Margin, 1e-9);
        Assert.Equal(word == VerdictWord.NeedMoreReadings, line.Remedy.Length > 0);
    }

    /// <summary>By hand: 0.4 min are 24 s, 0.1 min either way are 6 s: 18 to 30 s, all of it kept; of 19.2 to 31.2 s, 0.9 is.</summary>
    [Fact]
    public void A_reading_in_another_unit_of_the_same_kind_is_turned_round()
    {
        Assert.Equal(1, Read(0.4, 0.1, unit: "min")!.Probability!.Value, 1e-9);
        Assert.Equal(0.9, Read(0.42, 0.1, unit: "min")!.Probability!.Value, 1e-9);
        Assert.Equal(25.2, Read(0.42, 0.1, unit: "min")!.Value!.Value, 1e-9);
        Assert.Null(Read(28, 4, unit: "A"));
        Assert.Null(Read(28, 4, unit: "no such unit"));
    }

    [Fact]
    public void What_was_never_read_neither_wins_nor_loses()
    {
        var brief = new Brief("", "tip", "cut", 20,
        [
            WrittenVerdict.Line("ready", RequirementQuantity.WarmUpTime, 30, atMost: true, unit: "s"), WrittenVerdict.Line("long", RequirementQuantity.RunTime, 10, unit: "min"),
            WrittenVerdict.Line("wish", RequirementQuantity.Mass, 1, atMost: true, must: false, unit: "kg"),
        ]);
        ToolVerdict Of(params ToolReading[] readings) => ToolVerdict.Of(brief, new("old", "O", "old one", readings));
        Assert.Null(Of().Word);
        Assert.Equal([null, null, null], Of().Lines);
        Assert.Equal(VerdictWord.Go, Of(new ToolReading("warmuptime", 20, "s", 0, ""), new("Mass", 5, "kg", 0, "scale")).Word);
        Assert.Equal(VerdictWord.NoGo, Of(new ToolReading("WarmUpTime", 20, "s", 0, ""), new("RunTime", 5, "min", 0, "")).Word);
        Assert.Equal("read on the tool itself", Of(new ToolReading("WarmUpTime", 20, "s", 0, "")).Lines[0]!.Because);
        Assert.Equal("read on the tool itself: scale", Of(new ToolReading("Mass", 5, "kg", 0, "scale")).Lines[2]!.Because);
    }

    [Theory, InlineData("mass", RequirementQuantity.Mass), InlineData("RunTime", RequirementQuantity.RunTime), InlineData("power", null), InlineData("3", null), InlineData("99", null)]
    public void A_reading_speaks_by_the_word_of_its_quantity(string word, RequirementQuantity? quantity) => Assert.Equal(quantity, ToolReading.Speaks(word));
}
