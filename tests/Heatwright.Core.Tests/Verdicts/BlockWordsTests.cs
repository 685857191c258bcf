using Heatwright.Plant;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

public sealed class BlockWordsTests
{
    private static readonly Duty Plain = new(220, 20, 6, 5, 100, 0.1, 0, 30, 0, "");

    [Fact]
    public void Blocks_are_read_as_typed_and_said_so_that_they_read_the_same()
    {
        var duty = BlockWords.Read(Plain, "warm-up; work 12; stand-by 5min at 150C; Off 1h; hold 1:20; stand-by 90 s; again 3 times").Value;
        Assert.Equal([DutyKind.WarmUp, DutyKind.Work, DutyKind.StandBy, DutyKind.Off, DutyKind.Hold, DutyKind.StandBy], duty.Blocks!.Select(block => block.Does));
        Assert.Equal([null, null, 300, 3600, 80, 90], duty.Blocks!.Select(block => block.LastsS));
        Assert.Equal((12, 150.0, 4), (duty.Blocks![1].Pieces, duty.Blocks[2].HoldsC ?? 0, duty.Rounds));
        string said = BlockWords.Of(duty);
        Assert.Equal("warm-up; work 12; stand-by 5 min at 150 °C; off 60 min; hold 80 s; stand-by 90 s; again 3 times", said);
        Assert.Equal(duty.Blocks, BlockWords.Read(Plain, said).Value.Blocks);
        Assert.Null(BlockWords.Read(Plain, "work 3; off 60 s; again").Value.Rounds);
        Assert.Equal(1, BlockWords.Read(Plain, "work 3; off 60 s").Value.Rounds);
        Assert.Null(BlockWords.Read(duty, "").Value.Blocks);
    }

    [Theory]
    [InlineData("sleep 5min", "A block is not known.")]
    [InlineData("work", "How many pieces?")]
    [InlineData("work none", "How many pieces?")]
    [InlineData("hold", "How long?")]
    [InlineData("hold 0s", "A block lasts longer than 0 s.")]
    [InlineData("hold 5min at 150C", "Only stand-by has a temperature of its own; the others have the target or none.")]
    [InlineData("again; work 3", "'again' closes the list of blocks.")]
    [InlineData("again", "Again of what? No block is said.")]
    [InlineData("work 3; again often", "How often again?")]
    public void What_cannot_be_understood_is_asked_back_with_every_form(string text, string what)
    {
        var read = BlockWords.Read(Plain, text);
        Assert.Contains(read.Problems, problem => problem.What == what && problem.Limit.Contains("stand-by 5min at 150C", StringComparison.Ordinal));
    }

    [Fact]
    public void The_clock_of_a_piece_counts_the_pauses()
    {
        var duty = BlockWords.Read(Plain, "warm-up; work 12; stand-by 4min; again").Value;
        Assert.Equal(20 + (240.0 / 12), BriefPlan.PieceS(duty), 1e-9);
        Assert.Equal(20, BriefPlan.PieceS(Plain), 1e-9);
        var brief = new Brief("", "tip", "seal", 20, [new("n", "", RequirementQuantity.PiecesPerCharge, 600, "", false, true)]) { Duty = duty };
        Assert.Equal(600 * 40 * 1.5, BriefPlan.AtMostS(brief), 1e-6);
        Assert.Equal(900, BriefPlan.MostPieces(brief));
    }
}
