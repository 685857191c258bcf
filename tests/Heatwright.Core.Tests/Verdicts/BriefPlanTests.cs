using Heatwright.Plant;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>What a brief asks of the plant, by hand.</summary>
public sealed class BriefPlanTests
{
    private static readonly Duty Every20 = new(320, EveryS: 20, ForS: 4, FirstAfterS: 5, AboveC: 220, 0.22, 0, NeedJ: 40, NeedPlusMinusJ: 0, "by hand");

    private static Brief Asks(Duty? duty, params (RequirementQuantity Quantity, double Limit, string Unit, bool AtMost)[] lines) =>
        new("", "tip", "cut", 20, [.. lines.Select((line, i) => new Requirement($"r{i}", "", line.Quantity, line.Limit, line.Unit, line.AtMost, true))]) { Duty = duty };

    /// <summary>Without hot work no piece comes, and none takes heat.</summary>
    [Fact]
    public void Without_hot_work_nothing_is_taken()
    {
        Assert.Equal((0.0, 0.0, 0.0, 0.0), (Duty.None.Contact, Duty.None.ContactPlusMinus, Duty.None.NeedJ, Duty.None.NeedPlusMinusJ));
        Assert.Equal((0.0, 0.0, double.PositiveInfinity), (Duty.None.ForS, Duty.None.FirstAfterS, Duty.None.EveryS));
    }

    /// <summary>By hand: half as long again as 10 h are 54 000 s; 1500 pieces every 20 s are 30 000 s, half as long again 45 000 s; four hours at least, three days at most.</summary>
    [Fact]
    public void Predictions_go_on_half_as_long_again_as_is_asked()
    {
        Assert.Equal(14_400, BriefPlan.AtMostS(Asks(Every20)));
        Assert.Equal(54_000, BriefPlan.AtMostS(Asks(null, (RequirementQuantity.RunTime, 10, "h", false))), 1e-6);
        Assert.Equal(45_000, BriefPlan.AtMostS(Asks(Every20, (RequirementQuantity.PiecesPerCharge, 1500, "", false))), 1e-6);
        Assert.Equal(54_000, BriefPlan.AtMostS(Asks(Every20, (RequirementQuantity.RunTime, 10, "h", false), (RequirementQuantity.PiecesPerCharge, 1500, "", false))), 1e-6);
        Assert.Equal(14_400, BriefPlan.AtMostS(Asks(null, (RequirementQuantity.PiecesPerCharge, 1500, "", false))));
        Assert.Equal(14_400, BriefPlan.AtMostS(Asks(null, (RequirementQuantity.RunTime, 10, "h", true)))); // at most: nothing that must be waited for
        Assert.Equal(259_200, BriefPlan.AtMostS(Asks(null, (RequirementQuantity.RunTime, 60, "h", false))));
    }

    [Theory, InlineData(100, 400), InlineData(400, 600), InlineData(1e9, 1_000_000)]
    public void The_plant_counts_half_as_many_pieces_again(double asked, int counted) => Assert.Equal(counted, BriefPlan.MostPieces(Asks(Every20, (RequirementQuantity.PiecesPerCharge, asked, "", false))));

    [Fact]
    public void The_way_back_is_timed_after_the_pieces_that_are_promised()
    {
        Assert.Equal(0, BriefPlan.TimesRecovery(Asks(Every20, (RequirementQuantity.PiecesPerCharge, 90, "", false))));
        Assert.Equal(90, BriefPlan.TimesRecovery(Asks(Every20, (RequirementQuantity.PiecesPerCharge, 90, "", false), (RequirementQuantity.RecoveryTime, 5, "s", true))));
        Assert.Equal(1, BriefPlan.TimesRecovery(Asks(Every20, (RequirementQuantity.PiecesPerCharge, 1, "", false), (RequirementQuantity.RecoveryTime, 5, "s", true))));
        Assert.Equal(int.MaxValue, BriefPlan.TimesRecovery(Asks(Every20, (RequirementQuantity.RecoveryTime, 5, "s", true))));
        Assert.Equal(int.MaxValue, BriefPlan.TimesRecovery(Asks(Every20, (RequirementQuantity.PiecesPerCharge, 1e6, "", false), (RequirementQuantity.RecoveryTime, 5, "s", true))));
    }

    /// <summary>By hand: 60 J in half of 10 s through 130 K, from air of 20 °C to 150 °C, are 120/(10 · 130) = 0.0923 W/K; above 100 °C, through 50 K, 0.24 W/K.</summary>
    [Fact]
    public void A_heat_that_is_stated_is_taken_from_the_air_on_where_nothing_else_is_said()
    {
        var duty = new Duty(150, EveryS: 45, ForS: 10, FirstAfterS: 5, AboveC: 150, 0, 0, NeedJ: 60, NeedPlusMinusJ: 0, "by hand");
        (double AboveC, double? WPerK) Taken(Duty of) => (BriefPlan.TakesHeatAboveC(Asks(of)), BriefPlan.UsualContactWPerK(Asks(of)));
        Assert.Equal((20, 120 / 1300.0), Taken(duty)); // only above its target it would take nothing
        Assert.Equal((20, 120 / 1300.0), Taken(duty with { AboveC = double.NaN }));
        Assert.Equal((100, 0.24), Taken(duty with { AboveC = 100 }));
        Assert.Equal((150, null), Taken(duty with { Contact = 0.3 })); // how well is stated: so is from where
        Assert.Equal((150, null), Taken(duty with { NeedJ = 0 }));
        Assert.Null(BriefPlan.UsualContactWPerK(Asks(duty with { ForS = 0 })));
    }

    /// <summary>By hand: 60 s of stand-by and 40 s off over 10 + 10 pieces are 5 s a piece; the warm-up counts for none.</summary>
    [Fact]
    public void A_piece_takes_its_share_of_the_pauses()
    {
        Assert.Equal(20, BriefPlan.PieceS(Every20));
        var blocks = Every20 with { Blocks = [new(DutyKind.WarmUp) { LastsS = 500 }, new(DutyKind.Work) { Pieces = 10 }, new(DutyKind.StandBy) { LastsS = 60, HoldsC = 150 }, new(DutyKind.Work) { Pieces = 10 }, new(DutyKind.Off) { LastsS = 40 }] };
        Assert.Equal(25, BriefPlan.PieceS(blocks));
        Assert.Equal(20, BriefPlan.PieceS(Every20 with { Blocks = [new(DutyKind.Off) { LastsS = 40 }] })); // no piece to share it
        var pattern = BriefPlan.Blocks(blocks)!;
        Assert.Equal([500, 0, 60, 0, 40], pattern.Blocks.Select(block => block.LastsS));
        Assert.Equal([0, 10, 0, 10, 0], pattern.Blocks.Select(block => block.Pieces));
        Assert.Equal([0, 0, 423.15, 0, 0], pattern.Blocks.Select(block => block.SetK));
        Assert.Equal(int.MaxValue, pattern.Rounds);
        Assert.Equal(3, BriefPlan.Blocks(blocks with { Rounds = 3 })!.Rounds);
        Assert.True(double.IsPositiveInfinity(BriefPlan.Blocks(Every20 with { Blocks = [new(DutyKind.Hold)] })!.Blocks[0].LastsS));
        Assert.Null(BriefPlan.Blocks(Every20));
        Assert.Null(BriefPlan.Blocks(Every20 with { Blocks = [] }));
    }
}
