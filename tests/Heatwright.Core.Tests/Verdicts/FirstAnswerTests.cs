using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>The first answer against sums by hand.</summary>
public sealed class FirstAnswerTests
{
    private static readonly Brief Knife = new("", "blade", "cut", 20,
    [
        new("ready", "", RequirementQuantity.WarmUpTime, 30, "s", AtMost: true, Must: true),
        new("pieces", "", RequirementQuantity.PiecesPerCharge, 90, "", AtMost: false, Must: true),
    ])
    {
        Duty = new(320, EveryS: 20, ForS: 4, FirstAfterS: 5, AboveC: 220, 0.22, 0, NeedJ: 40, NeedPlusMinusJ: 0, "by hand"),
    };

    private static Part Heater(params StatedValue[] stated) => new(new("tip"), PartKind.Heater, "tip", stated);

    private static Part Cell(double mAh) => new(new("pouch"), PartKind.Cell, "pouch cell", [new(PartQuantities.Capacity, mAh, "mAh", 0, "claimed", "label")]);

    /// <summary>By hand: 0.70 A at 3.3 V are 2.31 W, over 5 h 11.55 Wh; a full cell of 4.2 V reaches 3.3 V, so 0.70 A · 4.2 V = 2.94 W are surely enough, 14.7 Wh.
    /// A cell of 2500 mAh holds 2.5 · 3.7 = 9.25 Wh: two are the fewest, and 14.7/0.7 = 21 Wh need three.</summary>
    [Fact]
    public void A_lamp_needs_the_watts_of_its_amps_and_volts()
    {
        var brief = new Brief("", "lamp head", "use", 20, [new("light", "", RequirementQuantity.FullLightTime, 5, "h", AtMost: false, Must: true)]);
        Part lamp = new(new("l"), PartKind.Lamp, "l", [new(PartQuantities.LoadCurrent, 0.70, "A", 1e-9, "measured", "by hand"), new(PartQuantities.LeastInputVolts, 3.3, "V", 1e-9, "measured", "by hand")]);
        Part[] parts = [lamp, Cell(2500)];
        var answer = Assert.Single(FirstAnswer.Of(brief, parts, new Shelf(parts, [])));
        Assert.Equal((2.31, 2.94), (Math.Round(answer.LeastW, 6), Math.Round(answer.SurelyW, 6)));
        Assert.Equal((11.55, 14.7), (Math.Round(answer.LeastWh, 6), Math.Round(answer.SurelyWh, 6)));
        Assert.Equal((2, 3), (answer.Cells[0].Least, answer.Cells[0].Surely));
    }

    private static FirstAnswer Answer(params Part[] parts) => FirstAnswer.Of(Knife, parts, new Shelf(parts, []))[0];

    /// <summary>By hand: 10 J/K over 300 K in 30 s are 100 W, and half of 0.02 W/K times 300 K is 3 W more. Energy: 10 · 300 = 3000 J up, 90 · 20 s = 1800 s at
    /// 6 W loss and 40 J / 20 s = 2 W work are 14 400 J; together 17 400 J = 4.8333 Wh.</summary>
    [Fact]
    public void Power_and_energy_are_those_of_the_sum_by_hand()
    {
        var answer = Answer(Heater(new(PartQuantities.HeatCapacity, 10, "J/K", 1e-9, "measured", "by hand"), new(PartQuantities.LinearLoss, 0.02, "W/K", 1e-12, "measured", "by hand")), Cell(650));
        Assert.Equal(103, answer.LeastW, 0.01);
        Assert.Equal(106, answer.SurelyW, 0.01);
        Assert.Equal(17_400 / 3600.0, answer.LeastWh, 0.001);
    }

    /// <summary>650 mAh at 3.7 V are 2.405 Wh: one cannot give 4.83 Wh, three are the fewest.</summary>
    [Fact]
    public void One_small_cell_cannot_and_the_sentence_says_so()
    {
        var answer = Answer(Heater(new(PartQuantities.HeatCapacity, 10, "J/K", 1e-9, "measured", "by hand"), new(PartQuantities.LinearLoss, 0.02, "W/K", 1e-12, "measured", "by hand")), Cell(650));
        var pouch = Assert.Single(answer.Cells);
        Assert.Equal(2.405, pouch.EnergyWh, 0.001);
        Assert.Equal(3, pouch.Least);
        Assert.Contains("one pouch cell holds 2.4 Wh (claimed amp-hours at 3.7 V) and cannot, 3 are the fewest", answer.Sentence(Knife), StringComparison.Ordinal);
        Assert.StartsWith("Needs at least 103 W at the blade (tip)", answer.Sentence(Knife), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_known_widens_the_answer_and_is_named()
    {
        var weighed = Answer(Heater(new StatedValue(PartQuantities.Mass, 20, "g", 0, "measured", "scale")));
        Assert.Equal((double.NaN, double.NaN), (weighed.SurelyW, weighed.SurelyWh)); // without the loss nobody knows what is surely enough
        Assert.Contains("how much is surely enough is not known yet", weighed.Sentence(Knife), StringComparison.Ordinal);
        // By hand: the work alone takes 40 J every 20 s, and 90 pieces 3600 J.
        Assert.Equal("Needs at least 2.0 W at the blade (tip) and 1.0 Wh there on one charge; how much is surely enough is not known yet.", Answer(Heater()).Sentence(Knife));
        Assert.Equal("What it needs at the blade (tip) is not known yet.", FirstAnswer.Of(Knife with { Duty = Knife.Duty! with { NeedJ = 0 } }, [Heater()], new Shelf([Heater()], []))[0].Sentence(Knife));
        // By hand: 20 g at 380 J/(kg·K) over 300 K in 30 s, no loss known: 76 W.
        Assert.Equal(76, weighed.LeastW, 0.1);
        Assert.Contains(weighed.Rests, said => said.Contains("loss of the working end not known", StringComparison.Ordinal));
        Assert.Contains(Answer(Heater()).Rests, said => said.Contains("weigh it", StringComparison.Ordinal));
    }
}
