using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Tests.Safety;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>When draws are enough: intervals by hand from Wilson's formula (1927) at 2.576, the normal quantile of 99 in 100.</summary>
public class SettlingTests
{
    [Theory]
    [InlineData(256, 256, true)] // all kept: from 256/(256 + 6.636) = 0.9747 up
    [InlineData(250, 256, false)] // 0.9766: from 0.938 to 0.991
    [InlineData(243, 256, false)] // 0.949, and 0.95 within
    [InlineData(0, 256, true)]
    [InlineData(6, 256, false)] // 0.023: up to 0.062
    [InlineData(128, 256, true)] // a half: 0.42 to 0.58
    [InlineData(190, 256, false)] // 0.742: 0.75 within
    [InlineData(2000, 2048, true)] // 0.9766 of many: from 0.9664 up
    [InlineData(1950, 2048, false)] // 0.9521: from 0.939 to 0.963
    public void A_chance_is_clear_when_its_interval_holds_no_limit(int kept, int draws, bool clear) => Assert.Equal(clear, Settling.Clear(kept, draws));

    // Where the interval begins and ceases to hold a limit, worked out by a second program: up to 3 of 256 it ends at 0.0451, with 4 at 0.0511, and so on.
    [Theory]
    [InlineData(256, 3, 4)]
    [InlineData(256, 22, 21)]
    [InlineData(256, 174, 175)]
    [InlineData(256, 210, 209)]
    [InlineData(256, 234, 235)]
    [InlineData(256, 253, 252)]
    [InlineData(2048, 76, 77)]
    [InlineData(2048, 128, 127)]
    [InlineData(2048, 1485, 1486)]
    [InlineData(2048, 1587, 1586)]
    [InlineData(2048, 1920, 1921)]
    [InlineData(2048, 1972, 1971)]
    public void One_draw_more_or_less_makes_it_clear(int draws, int clear, int unclear)
    {
        Assert.True(Settling.Clear(clear, draws));
        Assert.False(Settling.Clear(unclear, draws));
    }

    private static readonly Requirement Long = new("long", "", RequirementQuantity.RunTime, 10, "min", false, true);

    /// <summary>So many of 256 draws run for ten minutes exactly with 6 A, the others a second less with a tenth of an ampere more.</summary>
    private static Outcome[] Draws(int kept) => [.. Enumerable.Range(0, 256).Select(i => new Outcome(double.PositiveInfinity, 0, 30, 30, i < kept ? 600 : 599, StopReason.Empty, default, 0) { HighestA = i < kept ? 6 : 6.1 })];

    private static bool Enough(int kept, int parallel, params Requirement[] lines) =>
        Settling.For(new Brief("", "tip", "cut", 20, lines), new SafetyTool().Arrangement with { Parallel = parallel }).Settled(Draws(kept));

    [Fact]
    public void Every_must_that_a_run_tells_is_to_be_clear()
    {
        var rounds = Settling.For(new Brief("", "tip", "cut", 20, [Long]), new SafetyTool().Arrangement);
        Assert.Equal((256, 2048, 512), (rounds.First, rounds.Most, rounds.MostOneByOne));
        Assert.Equal([true, false, true, false, true], new[] { 256, 250, 128, 190, 0 }.Select(kept => Enough(kept, 1, Long)));
        Assert.True(Enough(190, 1, Long with { Must = false })); // a want waits for nothing
        Assert.True(Enough(190, 1, new Requirement("cost", "", RequirementQuantity.PartsCost, 1, "money", true, true))); // nor what no run tells
        Assert.True(Enough(190, 1));

        // At most ten minutes keep all of them; at most 599 s those that fall short: 66 or, of 190 kept, 0.2578.
        Assert.True(Enough(190, 1, Long with { AtMost = true }));
        Assert.True(Enough(190, 1, Long with { AtMost = true, Limit = 599, Unit = "s" }));
        Assert.False(Enough(66, 1, Long with { AtMost = true, Limit = 599, Unit = "s" }));

        // One cell of two carries half: 3 A are kept by those with 6 A.
        var amps = new Requirement("amps", "", RequirementQuantity.CellCurrent, 3, "A", true, true);
        Assert.False(Enough(190, 2, amps));
        Assert.True(Enough(190, 1, amps));
        Assert.False(Enough(190, 1, amps with { Limit = 6 }, Long with { Limit = 1 }));
        Assert.False(Enough(190, 1, Long with { Limit = 1 }, amps with { Limit = 6 }));
    }

    [Fact]
    public void The_draws_taken_are_told_once_or_from_to()
    {
        static ArrangementVerdict With(int draws) => WrittenVerdict.Of("A", VerdictWord.Go, [], prediction: draws < 0 ? null : new Prediction(new SafetyTool().Arrangement, new SafetyTool().Builder, null!, new Outcome[draws], []));
        Assert.Equal("no draws yet", Settling.Taken([]));
        Assert.Equal("no draws yet", Settling.Taken([With(-1), With(0)]));
        Assert.Equal("256 draws each", Settling.Taken([With(256), With(-1), With(256)]));
        Assert.Equal("1 draws each", Settling.Taken([With(1)]));
        Assert.Equal("256 to 1024 draws each, more where a word was close", Settling.Taken([With(1024), With(256), With(512), With(0)]));
    }
}
