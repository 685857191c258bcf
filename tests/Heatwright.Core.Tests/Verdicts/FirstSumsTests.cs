using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Physics;
using Heatwright.Plant;
using Heatwright.Quantities;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>The sums of the first answer, one after the other: 300 K of rise, a piece every 20 s that takes 40 J, 90 of them on one charge.</summary>
public sealed class FirstSumsTests
{
    private static readonly Duty Every20 = new(320, EveryS: 20, ForS: 4, FirstAfterS: 5, AboveC: 220, 0.22, 0, NeedJ: 40, NeedPlusMinusJ: 0, "by hand");

    private static readonly Requirement Ready = Most(RequirementQuantity.WarmUpTime, 30, "s"), Ninety = Least(RequirementQuantity.PiecesPerCharge, 90, "");

    private static Requirement Most(RequirementQuantity quantity, double limit, string unit) => new("most", "", quantity, limit, unit, true, true);

    private static Requirement Least(RequirementQuantity quantity, double limit, string unit) => new("least", "", quantity, limit, unit, false, true);

    private static StatedValue Value(string quantity, double value, string unit, double plusMinus = 0) => new(quantity, value, unit, plusMinus, "measured", "by hand");

    private static readonly StatedValue Heat = Value(PartQuantities.HeatCapacity, 10, "J/K"), Loss = Value(PartQuantities.LinearLoss, 0.02, "W/K");

    private static Part Tip(params StatedValue[] stated) => new(new("tip"), PartKind.Heater, "tip", stated);

    private static Part Cell(double mAh, string chemistry = "lithium") => new(new("pouch"), PartKind.Cell, "pouch", [Value(PartQuantities.Capacity, mAh, "mAh")]) { Words = new Dictionary<string, string> { ["chemistry"] = chemistry } };

    private static FirstAnswer Of(Duty? duty, Requirement[] lines, params Part[] parts) => FirstAnswer.Of(new Brief("", "blade", "cut", 20, lines) { Duty = duty }, parts, new Shelf(parts, []))[0];

    private static void Near(double leastW, double surelyW, double leastJ, double surelyJ, FirstAnswer answer)
    {
        Assert.Equal(leastW, answer.LeastW, 1e-6 * leastW);
        Assert.Equal(surelyW, answer.SurelyW, 1e-6 * surelyW);
        Assert.Equal(leastJ, answer.LeastWh * 3600, 1e-6 * leastJ);
        Assert.Equal(surelyJ, answer.SurelyWh * 3600, 1e-6 * surelyJ);
    }

    /// <summary>By hand: 10 · 300/30 = 100 W up, the loss 6 W, half of it on the way; the work 2 W; 3000 J up and 1800 s · 8 W = 14 400 J.</summary>
    [Fact]
    public void Heat_loss_and_work_are_summed() => Near(103, 106, 17_400, 17_400, Of(Every20, [Ready, Ninety], Tip(Heat, Loss)));

    /// <summary>By hand: 6 W of loss and 2 W of work hold it, where nobody waits for the warm-up.</summary>
    [Fact]
    public void Without_a_warm_up_time_only_holding_counts() => Near(8, 8, 17_400, 17_400, Of(Every20, [Ninety], Tip(Heat, Loss)));

    /// <summary>By hand, two standard doubts either way: 10 ± 2 · 1.5/√3 J/K and 0.02 ± 2 · 0.005/√3 W/K: 8.267949 to 11.732051 J/K, 0.0142265 to 0.0257735 W/K; of the work 40 ± 10 J.</summary>
    [Fact]
    public void What_is_in_doubt_goes_both_ways()
    {
        var answer = Of(Every20 with { NeedPlusMinusJ = 10 }, [Ready, Ninety], Tip(Value(PartQuantities.HeatCapacity, 10, "J/K", 1.5), Value(PartQuantities.LinearLoss, 0.02, "W/K", 0.005)));
        double lowLoss = 300 * 0.0142264973, highLoss = 300 * 0.0257735027;
        Near(82.67949192 + (lowLoss / 2), 117.32050808 + highLoss, (300 * 8.267949192) + (1800 * (lowLoss + 1.5)), (300 * 11.732050808) + (1800 * (highLoss + 2.5)), answer);
        var wide = Of(Every20 with { NeedPlusMinusJ = 100 }, [Ready, Ninety], Tip(Value(PartQuantities.HeatCapacity, 10, "J/K", 15), Value(PartQuantities.LinearLoss, 0.02, "W/K", 0.05)));
        Assert.Equal((0, 0), (wide.LeastW, wide.LeastWh)); // nothing is less than nothing
    }

    /// <summary>By hand: 20 g at 380 and 900 J/(kg·K) are 7.6 and 18 J/K: 76 and 180 W up.</summary>
    [Fact]
    public void A_mass_stands_for_the_heat_capacity_of_metals_and_ceramics() =>
        Near(79, 186, (7.6 * 300) + 14_400, (18 * 300) + 14_400, Of(Every20, [Ready, Ninety], Tip(Value(PartQuantities.Mass, 20, "g"), Loss)));

    /// <summary>By hand: σ·(593.15⁴ − 293.15⁴) = 5.670374·10⁻⁸ · 1.163968·10¹¹ = 6600.1 W/m²; 10 cm² of it are 6.6 W beside the 6 W.</summary>
    [Fact]
    public void Radiating_is_added_to_the_loss()
    {
        var answer = Of(Every20, [Ninety], Tip(Heat, Loss, Value(PartQuantities.Radiating, 10, "cm²")));
        Assert.Equal(6 + 6.6 + 2, answer.LeastW, 0.001);
        Assert.Equal(answer.LeastW, answer.SurelyW, 1e-9);
    }

    /// <summary>A wire of 1 mm by 100 mm: π · 1 mm · 100 mm = 3.14159 cm² of film and of σT⁴, film 0.8 to 1.3 times its law, emissivity 0.1 to 0.95.</summary>
    [Fact]
    public void A_cylinder_loses_by_its_film_and_its_glow()
    {
        const double area = Math.PI * 0.001 * 0.1, glow = 6600.1;
        double film = Convection.CylinderWPerM2K(0.001, 320, 20) * 300;
        var answer = Of(Every20, [Ninety], Tip(Heat, Value(PartQuantities.Diameter, 1, "mm"), Value(PartQuantities.Length, 100, "mm")));
        Assert.Equal((area * ((0.8 * film) + (0.1 * glow))) + 2, answer.LeastW, 0.001);
        Assert.Equal((area * ((1.3 * film) + (0.95 * glow))) + 2, answer.SurelyW, 0.001);
        Assert.Contains(answer.Rests, said => said.StartsWith("loss of a cylinder of 1", StringComparison.Ordinal) && said.Contains("by 100", StringComparison.Ordinal));
        Assert.DoesNotContain(answer.Rests, said => said.Contains("not known", StringComparison.Ordinal));
    }

    /// <summary>By hand: of half an hour at 8 W 14 400 J, of two hours 57 600 J; nothing promised leaves the 3000 J of one warm-up. Of two promises the harder counts.</summary>
    [Fact]
    public void Energy_follows_what_is_promised()
    {
        Near(8, 8, 17_400, 17_400, Of(Every20, [Least(RequirementQuantity.RunTime, 30, "min")], Tip(Heat, Loss)));
        Near(8, 8, 60_600, 60_600, Of(Every20, [Least(RequirementQuantity.RunTime, 2, "h"), Least(RequirementQuantity.RunTime, 30, "min"), Most(RequirementQuantity.RunTime, 9, "h")], Tip(Heat, Loss)));
        Near(8, 8, 17_400, 17_400, Of(Every20, [Ninety, Least(RequirementQuantity.RunTime, 2, "h"), Most(RequirementQuantity.PiecesPerCharge, 500, "")], Tip(Heat, Loss)));
        Near(203, 206, 17_400, 17_400, Of(Every20, [Ninety, Ready, Most(RequirementQuantity.WarmUpTime, 15, "s"), Least(RequirementQuantity.WarmUpTime, 5, "s")], Tip(Heat, Loss)));
        var open = Of(Every20, [Ready], Tip(Heat, Loss));
        Near(103, 106, 3000, 3000, open);
        Assert.Contains(open.Rests, said => said.Contains("energy for one warm-up only", StringComparison.Ordinal));
    }

    /// <summary>By hand: 10 pieces are 200 s, and 200 s off: half the time hot and at work; each piece takes 40 s of the clock, 3600 s for 90. Least 3000 + 3600 · (3 + 1);
    /// surely a warm-up more for every 400 s: 3000 · (1 + 9) + 14 400.</summary>
    [Fact]
    public void Pauses_save_loss_and_cost_warm_ups()
    {
        var answer = Of(Every20 with { Blocks = [new(DutyKind.Work) { Pieces = 10 }, new(DutyKind.Off) { LastsS = 200 }] }, [Ninety], Tip(Heat, Loss));
        Near(8, 8, 17_400, 44_400, answer);
        Assert.Contains("blocks of the duty: hot for 50 in 100 of the time, at work for 50", answer.Rests);
    }

    // By hand: a cell of Q mAh holds Q · 3.7 V (iron phosphate 3.25 V); 17 400 J are 4.8333 Wh, and of a label's energy seven tenths come out: 6.9048 Wh are surely enough.
    [Theory]
    [InlineData(2500, "lithium", 9.25, 1, 1, "one pouch holds 9.3 Wh (measured amp-hours at 3.7 V) and is enough of energy")]
    [InlineData(1500, "lithium", 5.55, 1, 2, "one pouch holds 5.5 Wh (measured amp-hours at 3.7 V) and may do, 2 are surely enough")]
    [InlineData(650, "lithium", 2.405, 3, 3, "one pouch holds 2.4 Wh (measured amp-hours at 3.7 V) and cannot, 3 are the fewest, 3 surely enough")]
    [InlineData(650, "lithium iron phosphate", 2.1125, 3, 4, "one pouch holds 2.1 Wh (measured amp-hours at 3.25 V) and cannot, 3 are the fewest, 4 surely enough")]
    public void Cells_are_counted_by_their_energy(double mAh, string chemistry, double wh, int least, int surely, string words)
    {
        var cell = Assert.Single(Of(Every20, [Ready, Ninety], Tip(Heat, Loss), Cell(mAh, chemistry)).Cells);
        Assert.Equal(wh, cell.EnergyWh, 1e-9);
        Assert.Equal((least, surely), (cell.Least, cell.Surely));
        Assert.Equal(words.Replace("5.5 Wh", cell.Words.Contains("5.6", StringComparison.Ordinal) ? "5.6 Wh" : "5.5 Wh", StringComparison.Ordinal), cell.Words); // 5.55 lies between two roundings
    }

    /// <summary>By hand: volts that fall straight from 4.2 V full to 3.0 V empty are 3.6 V in the middle: 2.5 Ah hold 9 Wh.</summary>
    [Fact]
    public void A_cell_whose_curve_was_found_holds_its_charge_at_its_own_volts()
    {
        Part[] parts = [Tip(Heat, Loss), Cell(2500)];
        var flat = new Heatwright.Plant.ChargeCurve.Flat(0.05);
        var model = new Heatwright.Plant.CellModel(9000, new Heatwright.Plant.ChargeCurve.Table([0, 1], [3.0, 4.2]), flat, flat, 10, flat, 100);
        var shelf = new Shelf(parts, [new(new("pouch"), [], [], []) { Cell = new(model, 45, 0.1, 0, 0, []) }]);
        var cell = Assert.Single(FirstAnswer.Of(new Brief("", "blade", "cut", 20, [Ready, Ninety]) { Duty = Every20 }, parts, shelf)[0].Cells);
        Assert.Equal(9, cell.EnergyWh, 1e-9);
        Assert.StartsWith("one pouch holds 9.0 Wh (measured amp-hours at its fitted volts without a load)", cell.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Cells_are_open_where_the_need_is()
    {
        // By hand: the work alone is 3600 J, 1 Wh: a cell of 650 mAh holds 2.405 Wh, one of 200 mAh 0.74 Wh.
        Assert.Equal("one pouch holds 2.4 Wh (measured amp-hours at 3.7 V); whether that is enough is open", Of(Every20, [Ninety], Tip(), Cell(650)).Cells[0].Words);
        Assert.Equal("one pouch holds 0.7 Wh (measured amp-hours at 3.7 V) and cannot, 2 are the fewest", Of(Every20, [Ninety], Tip(), Cell(200)).Cells[0].Words);
        var unknown = Of(Every20, [Ninety], Tip(), new Part(new("c"), PartKind.Cell, "dud", []));
        Assert.Equal((double.NaN, 0, 0, "the capacity of the dud is not known"), (unknown.Cells[0].EnergyWh, unknown.Cells[0].Least, unknown.Cells[0].Surely, unknown.Cells[0].Words));
    }

    [Fact]
    public void The_least_demanding_end_stands_first_and_an_empty_shelf_has_one_without_a_name()
    {
        Part heavy = new(new("b"), PartKind.Heater, "heavy", [Value(PartQuantities.HeatCapacity, 20, "J/K"), Loss]), light = new(new("c"), PartKind.Heater, "light", [Heat, Loss]), dearer = new(new("a"), PartKind.Heater, "even", [Heat, Loss]);
        Part[] parts = [heavy, light, dearer];
        Assert.Equal(["light", "even", "heavy"], FirstAnswer.Of(new Brief("", "blade", "cut", 20, [Ready, Ninety]) { Duty = Every20 }, parts, new Shelf(parts, [])).Select(answer => answer.Heater));
        Assert.Equal("", Of(Every20, [Ninety]).Heater);
        Assert.Empty(FirstAnswer.Of(new Brief("", "lamp", "use", 20, [Ninety]), [heavy], new Shelf([heavy], [])));
        Assert.Equal("Needs at least 103 W at the blade (light), 106 W is surely enough, and 4.8 to 4.8 Wh there on one charge.", Of(Every20, [Ready, Ninety], light).Sentence(new Brief("", "blade", "cut", 20, [])));
        Assert.Equal("Needs at least 2.0 W at the blade and 1.0 Wh there on one charge; how much is surely enough is not known yet.", Of(Every20, [Ninety]).Sentence(new Brief("", "blade", "cut", 20, [])));
    }

    // By hand: amps ± two doubts times volts ± two doubts at the least, amps times 4.2 V for each full cell that is needed at the most.
    [Theory]
    [InlineData(4.2, 0, 2.94, 2.94)]
    [InlineData(4.3, 0, 3.01, 5.88)]
    [InlineData(3.3, 0.0866025404, 1.98, 3.36)] // 2 · 0.0866/√3 = 0.1 A
    public void A_lamp_is_reckoned_at_its_volts(double volts, double plusMinus, double leastW, double surelyW)
    {
        Part lamp = new(new("l"), PartKind.Lamp, "l", [Value(PartQuantities.LoadCurrent, 0.7, "A", plusMinus), Value(PartQuantities.LeastInputVolts, volts, "V")]);
        Near(leastW, surelyW, leastW * 7200, surelyW * 7200, Of(null, [Least(RequirementQuantity.FullLightTime, 2, "h"), Least(RequirementQuantity.RunTime, 9, "h")], lamp));
        Near(leastW, surelyW, leastW * 7200, surelyW * 7200, Of(null, [Least(RequirementQuantity.RunTime, 2, "h")], lamp));
        var open = Of(null, [], lamp);
        Assert.Equal((0, 0), (open.LeastWh, open.SurelyWh));
        Assert.Contains("no time of light is promised: no energy is reckoned", open.Rests);
    }

    [Theory, InlineData(0.05, "0.05"), InlineData(0.1, "0.1"), InlineData(0.0994, "0.099"), InlineData(9.94, "9.9"), InlineData(10, "10"), InlineData(103.4, "103")]
    public void Small_figures_keep_their_places(double value, string said) => Assert.Equal(said, FirstAnswer.Say(value));
}
