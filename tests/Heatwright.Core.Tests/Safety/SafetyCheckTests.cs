using Heatwright.Safety;

namespace Heatwright.Tests.Safety;

/// <summary>What is missing and what is to be minded, for arrangements written out by hand.</summary>
public sealed class SafetyCheckTests
{
    private static IEnumerable<string> Missing(SafetyTool tool) => tool.Found().Conditions.Select(condition => condition.Words);

    [Fact]
    public void Two_cells_with_their_guard_and_their_charger_miss_nothing()
    {
        var found = new SafetyTool().Found();
        Assert.Empty(found.Conditions);
        Assert.True(double.IsNaN(found.StuckOnC)); // no plant, no temperature
        Assert.Contains("never charge unattended", Assert.Single(found.Cautions), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_cells_need_a_guard_and_a_charger_of_their_own()
    {
        Assert.Equal(["per-cell supervision and a charger made for two lithium cells in series"], Missing(new SafetyTool { SupervisionCells = null, ChargerCells = null }));
        Assert.Equal(["per-cell supervision for two lithium cells in series"], Missing(new SafetyTool { SupervisionCells = null }));
        Assert.Equal(["a charger made for two lithium cells in series"], Missing(new SafetyTool { ChargerCells = null }));
        Assert.Equal(["per-cell supervision and a charger made for three lithium cells in series"], Missing(new SafetyTool { Series = 3 }));
    }

    [Theory, InlineData(1, "one lithium cell"), InlineData(2, "two lithium cells in series"), InlineData(3, "three lithium cells in series"), InlineData(4, "four lithium cells in series"), InlineData(5, "5 lithium cells in series")]
    public void A_missing_charger_is_asked_for_by_the_number_of_cells(int series, string pack) =>
        Assert.Equal([$"a charger made for {pack}"], Missing(new SafetyTool { Series = series, SupervisionCells = series.ToString(System.Globalization.CultureInfo.InvariantCulture), ChargerCells = null }));

    [Fact]
    public void One_cell_needs_a_protection_board_and_any_charger_without_a_number_suits_it()
    {
        Assert.Empty(Missing(new SafetyTool { Series = 1, SupervisionCells = "1", ChargerCells = "" }));
        Assert.Equal(["a protection board for the cell"], Missing(new SafetyTool { Series = 1, SupervisionCells = null, ChargerCells = "1" }));
        Assert.Equal(["a charger made for one lithium cell", "a protection board for the cell"], Missing(new SafetyTool { Series = 1, SupervisionCells = null, ChargerCells = "2" }));
        Assert.DoesNotContain("a protection board for the cell", Missing(new SafetyTool { SupervisionCells = null }));
    }

    [Theory, InlineData("lithium", "LITHIUM", true), InlineData("lithium", "", true), InlineData("LiFePO4", "lithium", false)]
    public void A_charger_suits_its_chemistry_only_however_it_is_written(string cell, string charger, bool suits)
    {
        var tool = new SafetyTool { CellChemistry = cell, ChargerChemistry = charger };
        Assert.Equal(suits, SafetyCheck.ChargerSuits(tool.Arrangement, tool.Shelf));
        Assert.Equal(suits ? [] : [$"a charger made for two {cell} cells in series"], Missing(tool));
    }

    [Fact]
    public void What_lies_on_the_shelf_and_suits_is_named()
    {
        // Charger and guard for two cells lie there, and an arrangement of two leaves them out.
        var tool = new SafetyTool();
        var bare = tool.Arrangement with { Charger = null, Supervision = null };
        var missing = Assert.Single(SafetyCheck.Of(bare, tool.Shelf, null).Conditions);
        Assert.EndsWith("; 'guard' on the shelf is made for it, and is not wired; 'charger' on the shelf is made for it, and is not wired", missing.Because, StringComparison.Ordinal);
        var gone = tool.ShelfOf([.. tool.Parts.Select(part => part.Id.Name == "charger" ? part with { From = "destroyed" } : part)]);
        Assert.DoesNotContain("'charger'", SafetyCheck.Of(bare, gone, null).Conditions[0].Because, StringComparison.Ordinal);
        // Of two that suit, the first on the shelf.
        var two = tool.ShelfOf([.. tool.Parts, tool.Parts.First(part => part.Id.Name == "charger") with { Id = new("other"), Name = "other" }]);
        Assert.EndsWith("'charger' on the shelf is made for it, and is not wired", SafetyCheck.Of(bare, two, null).Conditions[0].Because, StringComparison.Ordinal);
        // One that is wired and does not suit is not the one that is meant.
        var single = new SafetyTool { Series = 1, SupervisionCells = "1", ChargerCells = "2" };
        Assert.Equal("none on the shelf suits this pack", Assert.Single(single.Found().Conditions).Because);
    }

    [Fact]
    public void No_charger_suits_nothing()
    {
        var tool = new SafetyTool { ChargerCells = null };
        Assert.False(SafetyCheck.ChargerSuits(tool.Arrangement, tool.Shelf));
    }

    [Fact]
    public void Salvaged_cells_and_a_lamp_have_cautions_of_their_own()
    {
        Assert.Contains(new SafetyTool { From = "salvaged" }.Found().Cautions, said => said.StartsWith("'cell' is salvaged", StringComparison.Ordinal));
        Assert.DoesNotContain(new SafetyTool().Found().Cautions, said => said.Contains("salvaged", StringComparison.Ordinal));
        Assert.Contains(new SafetyTool { IsLamp = true }.Found().Cautions, said => said.Contains("dazzles", StringComparison.Ordinal));
        Assert.DoesNotContain(new SafetyTool().Found().Cautions, said => said.Contains("dazzles", StringComparison.Ordinal));
    }

    /// <summary>By hand: 8 V on 2 Ω are 32 W. The end gives 0.1 W/K to the air and, through 0.02 W/K and the grip's 0.2 W/K in series, 1/55 W/K more: 0.118182 W/K,
    /// 270.8 K above 20 °C. An hour of 4 A lasts 30 minutes with 2 Ah: the end, 10 J/K, has settled, the grip has warmed with its 40 + 80 J/K for 1800 s at 550 s a step of e: 96 %.</summary>
    [Fact]
    public void Stuck_on_the_end_goes_where_the_sum_by_hand_says()
    {
        var found = new SafetyTool().Found(built: true);
        Assert.Equal(20 + (32 / (0.1 + (1 / 55.0))), found.StuckOnC, 1.5);
        Assert.Contains(found.Cautions, said => said.Contains("goes to about 290 °C: fit a cut-out", StringComparison.Ordinal));
        Assert.Empty(found.Conditions);
    }

    [Theory, InlineData(0.89, true), InlineData(0.9, false)]
    public void A_heater_held_back_by_firmware_alone_needs_a_cut_out(double duty, bool needed)
    {
        var found = new SafetyTool { DutyCeiling = duty }.Found(built: true);
        Assert.Equal(needed ? ["a cut-out that works without the controller"] : [], found.Conditions.Select(condition => condition.Words));
        Assert.Equal(needed, !found.Cautions.Any(said => said.Contains("With the switch stuck on", StringComparison.Ordinal)));
        Assert.All(found.Conditions, condition => Assert.EndsWith("it passes 290 °C", condition.Because, StringComparison.Ordinal));
    }

    [Fact]
    public void With_a_cut_out_nothing_is_said_of_a_stuck_switch()
    {
        var found = new SafetyTool { CutOutC = 250, DutyCeiling = 0.5, WorkC = 200 }.Found(built: true);
        Assert.Empty(found.Conditions);
        Assert.Single(found.Cautions);
    }

    /// <summary>Work at 200 °C: what opens at 25 or at 200 °C opens in it, where it sits on the end; in the handle it does not.</summary>
    [Theory, InlineData(25, null, true), InlineData(200, null, true), InlineData(201, null, false), InlineData(double.NaN, null, false), InlineData(70, "handle", false)]
    public void A_cut_out_that_opens_in_normal_work_is_no_protection(double opensC, string? place, bool opens)
    {
        var found = new SafetyTool { CutOutC = opensC, CutOutPlace = place, WorkC = 200 }.Found(built: true);
        Assert.Equal(opens ? ["a cut-out that opens above the 200 °C of the work"] : [], found.Conditions.Select(condition => condition.Words));
        Assert.All(found.Conditions, condition => Assert.StartsWith($"'fuse' opens at {opensC} °C: on the working end it opens in normal work", condition.Because, StringComparison.Ordinal));
    }

    /// <summary>Stuck on, the end goes to 290 °C; only what opens between work and there holds it.</summary>
    [Theory, InlineData(25, null, 290), InlineData(250, null, 250), InlineData(350, null, 290), InlineData(70, "handle", 290)]
    public void Only_a_cut_out_above_the_work_holds_a_stuck_switch(double opensC, string? place, double heldC)
    {
        var tool = new SafetyTool { CutOutC = opensC, CutOutPlace = place };
        Assert.Equal(heldC + 273.15, SafetyCheck.HeldK(290, tool.Arrangement, tool.Shelf, 200), 1e-9);
    }

    [Fact]
    public void A_lamp_has_no_temperature_of_a_stuck_switch() => Assert.True(double.IsNaN(new SafetyTool { IsLamp = true, Series = 1, SupervisionCells = "1", ChargerCells = "1" }.Found(built: true).StuckOnC));

    [Fact]
    public void Without_a_plant_the_faults_add_nothing()
    {
        var tool = new SafetyTool { ChargerCells = null };
        Assert.Equal(tool.Found().Conditions, SafetyCheck.WithFaults(tool.Arrangement, tool.Shelf, null, double.NaN, TestContext.Current.CancellationToken).Conditions);
    }

    /// <summary>With the faults looked at, cells that a stuck switch heats too far ask for a cut-out.</summary>
    [Fact]
    public void With_a_plant_the_faults_add_what_they_need()
    {
        var tool = new SafetyTool { LinkWPerK = 0.1, CapacityAh = 20 };
        Assert.Contains("a cut-out that works without the controller", SafetyCheck.WithFaults(tool.Arrangement, tool.Shelf, tool.Builder, double.NaN, TestContext.Current.CancellationToken).Conditions.Select(condition => condition.Words));
    }

    [Fact]
    public void Nothing_more_missing_leaves_the_findings_as_they_are()
    {
        var found = new SafetyFindings([new("a", "b"), new("a", "c")], [], 1);
        Assert.Same(found, found.With([]));
        Assert.Equal([new Condition("a", "b; c")], found.With([new("a", "b")]).Conditions);
    }
}
