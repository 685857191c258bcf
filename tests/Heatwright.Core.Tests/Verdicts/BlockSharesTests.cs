using Heatwright.Plant;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>How a duty spends its time, by hand: 320 °C asked in air of 20 °C, a piece every 20 s.</summary>
public sealed class BlockSharesTests
{
    private static BlockShares Of(params WorkBlock[]? blocks) => BlockShares.Of(new Duty(320, 20, 4, 5, 220, 0.2, 0, 40, 0, "") { Blocks = blocks }, 20);

    private static WorkBlock Work(int pieces) => new(DutyKind.Work) { Pieces = pieces };

    private static WorkBlock StandBy(double seconds, double? holdsC) => new(DutyKind.StandBy) { LastsS = seconds, HoldsC = holdsC };

    private static WorkBlock Off(double seconds) => new(DutyKind.Off) { LastsS = seconds };

    /// <summary>By hand: 10 pieces are 200 s, with 100 s of stand-by at 170 °C (half the rise), 100 s off and 60 s of hold 460 s; hot for 200 + 50 + 60; two pauses. A warm-up takes no time of its own.</summary>
    [Fact]
    public void Time_is_shared_among_work_pauses_and_stand_by()
    {
        var shares = Of(new WorkBlock(DutyKind.WarmUp) { LastsS = 500 }, Work(10), StandBy(100, 170), Off(100), new(DutyKind.Hold) { LastsS = 60 });
        Assert.Equal(200 / 460.0, shares.Working, 1e-12);
        Assert.Equal(310 / 460.0, shares.Hot, 1e-12);
        Assert.Equal(2 / 460.0, shares.WarmUpsPerS, 1e-12);
    }

    [Fact]
    public void A_duty_without_blocks_or_without_any_time_works_all_the_time()
    {
        var always = new BlockShares(1, 1, 0);
        Assert.Equal(always, Of(null));
        Assert.Equal(always, Of(new WorkBlock(DutyKind.WarmUp) { LastsS = 500 }));
        Assert.Equal(always, Of(new WorkBlock(DutyKind.Hold), new WorkBlock(DutyKind.Work)));
    }

    // By hand, 20 s of work beside 20 s of stand-by: half the time at work, and of the other half its share of the rise; only what is held at the target is no pause.
    [Theory]
    [InlineData(null, 0.5, 1)]
    [InlineData(20.0, 0.5, 1)]
    [InlineData(-50.0, 0.5, 1)]
    [InlineData(95.0, 0.625, 1)]
    [InlineData(170.0, 0.75, 1)]
    [InlineData(320.0, 1, 0)]
    [InlineData(400.0, 1, 0)]
    public void Stand_by_counts_by_its_share_of_the_rise(double? holdsC, double hot, int pauses)
    {
        var shares = Of(Work(1), StandBy(20, holdsC));
        Assert.Equal(0.5, shares.Working, 1e-12);
        Assert.Equal(hot, shares.Hot, 1e-12);
        Assert.Equal(pauses / 40.0, shares.WarmUpsPerS, 1e-12);
    }

    [Fact]
    public void Off_is_not_hot() => Assert.Equal(new BlockShares(0, 0, 0.1), Of(Off(10)));

    [Fact]
    public void Words_of_a_block_are_whole_words_and_numbers_have_limits()
    {
        var plain = new Duty(320, 20, 4, 5, 220, 0.2, 0, 40, 0, "");
        Assert.Equal(DutyKind.Work, Assert.Single(BlockWords.Read(plain, "work 1").Value.Blocks!).Does);
        Assert.Equal(99_999, BlockWords.Read(plain, "WORK 99999 cuts").Value.Blocks![0].Pieces);
        Assert.Equal(2, BlockWords.Read(plain, "work 1; again 1 times").Value.Rounds);
        Assert.Equal(100_000, BlockWords.Read(plain, "work 1; again 99999 times").Value.Rounds);
        Assert.Equal(3, BlockWords.Read(plain, "work 1; again 2").Value.Rounds);
        Assert.Null(BlockWords.Read(plain with { Rounds = 3 }, "").Value.Rounds);
        Assert.All(new[] { "work 0", "work 100000", "works 3", "offs 3s", "work 1; again 0 times", "work 1; again 100000", "hold -5s", "stand-by 5min at 5 V", "hold 5 V" },
            said => Assert.False(BlockWords.Read(plain, said).IsFine));
        Assert.Equal("block 2", Assert.Single(BlockWords.Read(plain, "work 1; hold 5 V").Problems).Where);
        Assert.Equal(2, BlockWords.Read(plain, "sleep; work").Problems.Count); // all of them at once

        // By hand: whole minutes are said as minutes from one on, everything else in seconds.
        string Said(double seconds, DutyKind kind = DutyKind.Hold) => BlockWords.Of(plain with { Blocks = [new(kind) { LastsS = seconds }], Rounds = 1 });
        Assert.Equal(["hold 59 s", "hold 1 min", "hold 61 s", "hold 90.5 s", "hold 2 min"], [Said(59), Said(60), Said(61), Said(90.5), Said(120)]);
        Assert.Equal("warm-up 30 s", Said(30, DutyKind.WarmUp));
        Assert.Equal("", BlockWords.Of(plain));
        Assert.Equal("work 3; again", BlockWords.Of(plain with { Blocks = [Work(3)] }));
        Assert.Equal("work 3; again 2 times", BlockWords.Of(plain with { Blocks = [Work(3)], Rounds = 3 }));
    }
}
