using Heatwright.Safety;

namespace Heatwright.Tests.Safety;

/// <summary>Single faults of a tool whose heat flows can be summed by hand: 32 W on an end of 10 J/K.</summary>
/// <remarks>Settled, the end is P/(g + l·h/(l + h)) above the air, and the grip, with the cells in it, l/(l + h) of that: g loss of the end, l its link to the grip, h the grip's loss.</remarks>
public sealed class SingleFaultsTests
{
    /// <summary>By hand: 0.1 + 0.1 · 0.2/0.3 = 1/6 W/K, 192 K; the grip a third of it, 64 K.</summary>
    private static readonly SafetyTool Hot = new() { LinkWPerK = 0.1, CapacityAh = 20 };

    private static FaultCase Stuck(SafetyTool tool) => SingleFaults.Of(tool.Ask, 300, 1, 20)[0];

    [Fact]
    public void Stuck_on_a_hot_day_end_grip_and_cells_settle_at_the_sums_by_hand()
    {
        var fault = Stuck(Hot);
        Assert.Equal("switch stuck on", fault.Name);
        Assert.Equal((227, 99, 99), (fault.EndC, fault.GripC, fault.CellC), Near);
        Assert.Equal(fault.CellC, fault.HeldCellC);
        Assert.True(double.IsNaN(fault.CutOutS));
        Assert.InRange(fault.CellLimitS, 60, 3600);
        Assert.Equal(new Condition("a cut-out that works without the controller", "with the fault 'switch stuck on' the cells pass 60 °C and reach 99 °C at the worst corner"), fault.Missing);
    }

    [Fact]
    public void Cells_that_stay_under_their_limit_need_nothing()
    {
        var fault = Stuck(new SafetyTool { CapacityAh = 20 }); // the grip settles 24.6 K above 35 °C
        Assert.Equal((305.8, 59.6, 59.6), (fault.EndC, fault.GripC, fault.CellC), Near);
        Assert.True(double.IsNaN(fault.CellLimitS));
        Assert.Null(fault.Missing);
    }

    [Fact]
    public void Air_of_another_day_is_added()
    {
        var cool = SingleFaults.Of(Hot.Ask with { AirC = 10 }, 300, 1, 20)[0];
        Assert.Equal((202, 74, 74), (cool.EndC, cool.GripC, cool.CellC), Near);
    }

    /// <summary>The corner is where the heater's ohms are least: 64 V²/1.6 Ω = 40 W, 240 K.</summary>
    [Fact]
    public void The_worst_corner_is_the_end_of_the_range_that_heats_most() => Assert.Equal(275, Stuck(Hot with { OhmsPlusMinus = 0.4 }).EndC, 1.5);

    /// <summary>A link that may be 0.08 or 0.12 W/K: the less of it, the hotter the end, though the grip is colder for it. By hand 32/(0.1 + 0.08 · 0.2/0.28) = 203.6 K, the grip 0.08/0.28 of it.</summary>
    [Fact]
    public void The_worst_corner_is_that_of_the_working_end()
    {
        var fault = Stuck(Hot with { LinkPlusMinus = 0.02 });
        Assert.Equal((238.6, 93.2, 93.2), (fault.EndC, fault.GripC, fault.CellC), Near);
    }

    /// <summary>1.5 K above the air, 0.47 s at 32 W on 10 J/K: 15 J, which warm 120 J/K of grip and cells by 0.12 K at the most.</summary>
    [Fact]
    public void A_cut_out_that_opens_at_once_leaves_what_went_in_until_then() => Assert.InRange(Stuck(Hot with { CutOutC = 36.5 }).HeldCellC, 35.002, 35.15);

    [Fact]
    public void Without_a_cut_out_its_temperature_is_asked_for() => Assert.Contains("state its temperature", Stuck(Hot).Catches, StringComparison.Ordinal);

    /// <summary>By hand, while the grip is still cold: 115 K of 160 K at 10 J/K over 0.2 W/K take 50 s · ln(160/45) = 63 s. Until then 2.0 kJ were put in; what the end holds then, and what has
    /// gone into the grip, warms 120 J/K of grip and cells by 17 K at the most.</summary>
    [Fact]
    public void A_cut_out_that_opens_in_time_keeps_the_cells_whole()
    {
        var fault = Stuck(Hot with { CutOutC = 150 });
        Assert.Equal(63, fault.CutOutS, 4.0);
        Assert.Equal(99, fault.CellC, 1.5);
        Assert.InRange(fault.HeldCellC, 38, 52);
        Assert.Equal(227, fault.EndC, 1.5); // without the cut-out
        Assert.Equal(150, fault.Held!.Value.EndC, 1.5); // with it: the end is hottest as it opens
        Assert.InRange(fault.Held.Value.GripC, 38, 52);
        Assert.Null(fault.Missing);
        Assert.Contains("the independent cut-out", fault.Catches, StringComparison.Ordinal);
        Assert.DoesNotContain("state its temperature", fault.Catches, StringComparison.Ordinal);
    }

    /// <summary>Cells that stay under their limit anyway: what the cut-out holds is told all the same. By hand, while the grip is cold: 0.12 W/K and 32 W aim at 267 K, and 115 K of it are there after 83.3 s · ln(267/152) = 47 s.</summary>
    [Fact]
    public void What_a_cut_out_holds_is_told_where_the_cells_are_safe_without_it_too()
    {
        var fault = Stuck(new SafetyTool { CapacityAh = 20, CutOutC = 150 });
        Assert.Equal(47, fault.CutOutS, 3.0);
        Assert.Equal((305.8, 59.6, 59.6), (fault.EndC, fault.GripC, fault.CellC), Near);
        Assert.Equal(150, fault.Held!.Value.EndC, 1.5);
        Assert.InRange(fault.Held.Value.GripC, 35, 40); // a sixth of 1.5 kJ into 120 J/K are 2 K
    }

    [Fact]
    public void A_cut_out_that_opens_below_the_air_holds_everything_at_the_air() => Assert.Equal(35, Stuck(Hot with { CutOutC = 30 }).HeldCellC);

    [Theory, InlineData(400, "a cut-out that opens sooner than 'fuse'"), InlineData(double.NaN, "a stated opening temperature of 'fuse'")]
    public void A_cut_out_that_never_opens_or_opens_nobody_knows_when_is_no_help(double opensC, string needs)
    {
        var fault = Stuck(Hot with { CutOutC = opensC });
        Assert.True(double.IsNaN(fault.CutOutS));
        Assert.Equal(needs, fault.Missing?.Words);
    }

    /// <summary>By hand: half the duty is half the power, 96 K at the end; with all of it, the same as a stuck switch.</summary>
    [Fact]
    public void Hung_firmware_heats_as_hard_as_its_largest_duty()
    {
        var half = SingleFaults.Of(Hot.Ask, 300, 0.5, 20);
        Assert.Equal(["switch stuck on", "firmware hung with the heater on", "sensor open", "sensor shorted at the set point", "cooling of the grip blocked"], half.Select(fault => fault.Name));
        Assert.Equal((131, 67, 67), (half[1].EndC, half[1].GripC, half[1].CellC), Near);
        var whole = SingleFaults.Of(Hot.Ask, 300, 1, 20);
        Assert.Equal((whole[0].EndC, whole[0].CellC, whole[0].CellLimitS), (whole[1].EndC, whole[1].CellC, whole[1].CellLimitS));
        Assert.Equal(300, whole[2].EndC);
        Assert.All([whole[2].GripC, whole[2].CellC, whole[2].HeldCellC, whole[2].BoardS, whole[2].CutOutS, whole[2].CellLimitS], value => Assert.True(double.IsNaN(value)));
        Assert.Null(whole[2].Missing);
    }

    /// <summary>By hand, while the grip is cold: at 135 °C, 100 K, the end still has 60 K to go; 25 s later 60 K · e^(−25/50) = 36 K, so it is at 159 °C, and a little more by the warm grip.</summary>
    [Fact]
    public void A_shorted_sensor_heats_until_the_missing_rise_is_seen()
    {
        var shorted = SingleFaults.Of(Hot.Ask, 135, 1, 25)[3];
        Assert.InRange(shorted.EndC, 157, 165);
        Assert.Equal(135, SingleFaults.Of(Hot.Ask, 135, 1, 0)[3].EndC, 1.5);
        // A set point out of reach: the rise is missed from the start, 160 K · (1 − e^(−0.5)) = 63 K.
        Assert.InRange(SingleFaults.Of(Hot.Ask, 1000, 1, 25)[3].EndC, 96, 101);

        // A cut-out at 130 °C is there before the set point of 135 °C is.
        Assert.Equal(130, SingleFaults.Of((Hot with { CutOutC = 130 }).Ask, 135, 1, 25)[3].Held!.Value.EndC, 1.5);
    }

    /// <summary>By hand: 95 % of 32 W on 0.1 + 0.02 · 0.1/0.12 W/K are 260.6 K, short of the 310 °C that the controller aims at; the grip gets a sixth of that, 43.4 K, where only half of its 0.2 W/K is left.</summary>
    [Fact]
    public void A_blocked_grip_warms_the_cells_though_the_controller_works()
    {
        var blocked = SingleFaults.Of(new SafetyTool { CapacityAh = 40 }.Ask, 300, 1, 20)[4];
        Assert.Equal(78.4, blocked.CellC, 1.5);
        Assert.Equal("a sensor on the cells that stops the heater", blocked.Missing?.Words);
    }

    /// <summary>The same tool with a board that takes the load off at 50 °C of the cells. By hand: the end is 260.6 K above the air then and holds 2606 J, of which a sixth may go through the link; 434 J into grip and cells of 80 J/K are 5.4 K at most.</summary>
    [Fact]
    public void A_board_that_watches_the_cells_holds_a_blocked_grip()
    {
        var tool = new SafetyTool { CapacityAh = 40 };
        var blocked = SingleFaults.Of(tool.Ask with { CellSensorC = 50 }, 300, 1, 20)[4];
        Assert.Equal(78.4, blocked.CellC, 1.5); // without it
        Assert.InRange(blocked.HeldCellC, 50, 55.4);
        Assert.Null(blocked.Missing);
        Assert.Contains("at 50 °C of the cells", blocked.Catches, StringComparison.Ordinal);

        // One that opens at 59 °C is too late by what the end still holds.
        var late = SingleFaults.Of(tool.Ask with { CellSensorC = 59 }, 300, 1, 20)[4];
        Assert.Equal("a protection board that opens cooler than 'guard'", late.Missing?.Words);
    }

    /// <summary>A cut-out at 60 °C of the end opens within seconds, while the cells are still as warm as the air; a board at 58 °C of the cells much later, and at its own 58 °C at least.</summary>
    [Fact]
    public void What_opens_first_holds_the_fault()
    {
        var both = SingleFaults.Of(new SafetyTool { CapacityAh = 40, GripLossWPerK = 0.1, CutOutC = 60 }.Ask with { CellSensorC = 58 }, 300, 1, 20)[0];
        Assert.True(both.CellC > 60, $"{both.CellC}"); // left alone the cells pass their limit
        Assert.InRange(both.HeldCellC, 35, 45);
        Assert.InRange(SingleFaults.Of(new SafetyTool { CapacityAh = 40, GripLossWPerK = 0.1, CutOutC = 5000 }.Ask with { CellSensorC = 58 }, 300, 1, 20)[0].HeldCellC, 58, 75);
    }

    [Fact]
    public void The_board_is_asked_for_its_temperature()
    {
        var tool = new SafetyTool();
        Assert.Equal(0, tool.Ask.CellSensorC);
        Assert.Contains("state it on the board", SingleFaults.Of(new SafetyTool { CapacityAh = 40 }.Ask, 300, 1, 20)[4].Missing?.Because, StringComparison.Ordinal);
        var stated = tool.ShelfOf([.. tool.Parts.Select(part => part.Id.Name == "guard" ? part with { Stated = [.. part.Stated, new(Heatwright.Parts.PartQuantities.OpeningTemperature, 55, "°C", 0, "claimed", "sheet")] } : part)]);
        Assert.Equal(55, new FaultAsk(tool.Builder, tool.Arrangement, stated).CellSensorC, 9);
    }

    [Fact]
    public void Of_one_missing_thing_the_worst_fault_is_told()
    {
        static FaultCase Case(string name, double cellC, string needs) => new(name, 300, 50, cellC, double.NaN, double.NaN, "") { Needs = needs };
        var missing = SingleFaults.Missing([Case("a", 60, "x"), Case("b", 70, "x"), Case("c", 80, "x"), Case("d", 75, "x"), Case("e", 61, "y")]);
        Assert.Equal(["x", "y"], missing.Select(condition => condition.Words));
        Assert.Contains("'c' the cells pass 60 °C and reach 80 °C", missing[0].Because, StringComparison.Ordinal);
    }

    [Fact]
    public void The_quick_look_misses_what_the_long_one_misses()
    {
        var cancel = TestContext.Current.CancellationToken;
        Assert.Equal(["a cut-out that works without the controller", "a sensor on the cells that stops the heater"], SingleFaults.Missing(Hot.Ask, cancel).Select(condition => condition.Words));
        Assert.Contains("'switch stuck on'", SingleFaults.Missing(Hot.Ask, cancel)[0].Because, StringComparison.Ordinal);
        Assert.Contains("'cooling of the grip blocked'", SingleFaults.Missing(Hot.Ask, cancel)[1].Because, StringComparison.Ordinal);
        Assert.Empty(SingleFaults.Missing((Hot with { LinkWPerK = 0.001, CutOutC = 100 }).Ask, cancel));
    }

    [Fact]
    public void A_lamp_is_looked_at_left_on_and_covered()
    {
        var cool = new SafetyTool { IsLamp = true, Series = 1, SupervisionCells = "1", ChargerCells = "1" };
        var faults = SingleFaults.OfLamp(cool.Ask, TestContext.Current.CancellationToken);
        Assert.Equal(["left on until the pack is empty", "cooling of the grip blocked"], faults.Select(fault => fault.Name));
        Assert.True(faults[1].CellC > faults[0].CellC);
        Assert.Equal("a cut-out on the head of the lamp", faults[0].Needs);
        Assert.Equal("a sensor on the cells that stops the lamp", faults[1].Needs);
        Assert.Empty(SingleFaults.Missing(cool.Ask, TestContext.Current.CancellationToken));
    }

    [Fact]
    public void A_cut_out_without_a_temperature_is_asked_for_it_in_every_fault_that_it_would_end()
    {
        var none = SingleFaults.Of(Hot.Ask, 300, 1, 20);
        Assert.All([none[0], none[1], none[3]], fault => Assert.Contains("an independent cut-out: state its temperature with cut-out", fault.Catches, StringComparison.Ordinal));
        Assert.All([none[0], none[1], none[3]], fault => Assert.Equal("a cut-out that works without the controller", fault.Needs));
        Assert.Equal(0, Hot.Ask.CutOutC);
        Assert.Equal(1, (Hot with { CutOutC = 1 }).Ask.CutOutC, 1e-9);
        Assert.DoesNotContain("state its temperature", Stuck(Hot with { CutOutC = 0.5 }).Catches, StringComparison.Ordinal); // a stated one, however odd
        Assert.DoesNotContain("state its temperature", SingleFaults.Of((Hot with { CutOutC = 150 }).Ask, 300, 1, 20)[1].Catches, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_missing_names_the_fault_of_a_heater_or_of_a_lamp()
    {
        var cancel = TestContext.Current.CancellationToken;
        Assert.StartsWith("with the fault 'switch stuck on' the cells pass 60 °C", SingleFaults.Missing(Hot.Ask, cancel)[0].Because, StringComparison.Ordinal);
        Assert.StartsWith("with the fault 'cooling of the grip blocked' the cells pass 60 °C", SingleFaults.Missing(Hot.Ask, cancel)[1].Because, StringComparison.Ordinal);
        var lamp = new SafetyTool { IsLamp = true, Series = 2, CapacityAh = 20, GripLossWPerK = 0.01, LinkWPerK = 0.5 };
        var missing = SingleFaults.Missing(lamp.Ask, cancel);
        Assert.Equal(["a cut-out on the head of the lamp", "a sensor on the cells that stops the lamp"], missing.Select(condition => condition.Words));
        Assert.StartsWith("with the fault 'left on until the pack is empty'", missing[0].Because, StringComparison.Ordinal);
    }

    /// <summary>Just at 60 °C nothing is asked for, above it is.</summary>
    [Theory, InlineData(60, false), InlineData(60.5, true)]
    public void Cells_at_their_limit_are_whole(double cellC, bool missing) =>
        Assert.Equal(missing, new FaultCase("x", 100, 50, cellC, double.NaN, double.NaN, "") { Needs = "y" }.Missing is not null);

    /// <summary>By hand, as the least ohms heat most, the most grip loss cools most: the corner has 1.6 Ω and 0.16 W/K: 40 W on 0.1 + 0.1 · 0.16/0.26 = 0.161538 W/K, 247.6 K; the grip 0.1/0.26 of it, 95.2 K.</summary>
    [Fact]
    public void Every_number_goes_to_its_worse_end()
    {
        var fault = Stuck(Hot with { OhmsPlusMinus = 0.4, GripLossPlusMinus = 0.04 });
        Assert.Equal(282.6, fault.EndC, 2.0);
        Assert.Equal(130.2, fault.CellC, 2.0);
    }

    /// <summary>By hand: charge for 0.05 to 0.07 Ah at 4 A, the most of it 63 s, in which 10 J/K over 0.1 W/K take 1 − e^(−0.63) = 0.467 of 320 K.</summary>
    [Fact]
    public void Where_the_pack_is_empty_first_the_worst_corner_has_the_most_charge() =>
        Assert.Equal(184.6, Stuck(new SafetyTool { LinkWPerK = 0, CapacityAh = 0.06, CapacityPlusMinus = 0.01 }).EndC, 1.0);

    /// <summary>A heater of 1 to 3 Ω behind leads of 2.35 Ω has its most power where both are alike, 2.35 Ω, but never so little as at 1 Ω. By hand at 3 Ω: 64 V² · 3 Ω/(5.352 Ω)² = 6.70 W, 67 K; at 1 Ω 5.70 W, 57 K.</summary>
    [Fact]
    public void Between_two_ends_that_both_heat_less_than_the_middle_the_corner_is_the_hotter_one() =>
        Assert.Equal(102.0, Stuck(new SafetyTool { LinkWPerK = 0, OhmsPlusMinus = 1, LeadOhms = 2.35 }).EndC, 0.5);

    /// <summary>Stuck on, nothing guards the cells, not even where the heater leaves them 0.73 V of their eight: 64 V² · 0.2 Ω/(2.2 Ω)² = 2.64 W, 26.4 K.</summary>
    [Fact]
    public void A_heater_that_pulls_the_pack_below_a_volt_goes_on_heating() =>
        Assert.Equal(61.4, Stuck(new SafetyTool { LinkWPerK = 0, HeaterOhms = 0.2, CellOhms = 1 }).EndC, 0.5);

    private static bool Near((double, double, double) a, (double, double, double) b) => Math.Abs(a.Item1 - b.Item1) < 1.5 && Math.Abs(a.Item2 - b.Item2) < 1.5 && Math.Abs(a.Item3 - b.Item3) < 1.5;
}
