using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Tests.Safety;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>The shelf of <see cref="SafetyTool"/>, whose every run is a sum by hand: S cells of 4 V in series on 2 Ω at a duty of 0.95 empty P strings of 360 C in 189.5 s · P/S, for the 2000 °C that are asked are out of reach.</summary>
public sealed class ShelfSearchTests
{
    private static readonly SafetyTool Tool = new() { CapacityAh = 0.1 };

    private static readonly Duty Hot = new(2000, 20, 4, 5, 220, 0, 0, 0, 0, "none");

    private static Requirement Lasts(double seconds) => new("long", "it lasts.", RequirementQuantity.RunTime, seconds, "s", false, true);

    private static SearchResult Search(double seconds, Duty? duty, Func<Part, Part>? changed = null)
    {
        Part[] parts = [.. Tool.Parts.Select(part => changed?.Invoke(part) ?? part)];
        var work = new WorkPlan(2000, 20, 20, 4, 5, 220, Estimate.Exact(0, Units.WattPerKelvin, new Origin.Assumed("none")), Estimate.Exact(0, Units.Joule, new Origin.Assumed("none")));
        return ShelfSearch.Of(new Brief("", "blade", "cut", 20, [Lasts(seconds)]) { Duty = duty }, parts, Tool.ShelfOf(parts), work, 1, 6, new("s")).Value;
    }

    private static string[] Families(SearchResult found) => [.. found.Discards.Select(one => one.Family)];

    /// <summary>By hand: 100 s are kept by 1S1P (189 s), 1S2P (379 s), 2S2P (189 s) and 3S2P (126 s); 2S1P and 4S2P last 95 s, 3S1P 63 s and 4S1P 47 s.</summary>
    [Fact]
    public void Every_way_to_join_the_cells_is_tried()
    {
        var found = Search(100, Hot);
        Assert.Equal((8, 0, 0), (found.Tried, found.TooCold, found.NoPoint));
        Assert.Equal(0, found.Behind); // four are shown, four put aside
        Assert.Equal(["1S1P", "1S2P", "2S2P", "3S2P"], found.Best.Select(one => one.Verdict.Arrangement.Name[..4]).Order(StringComparer.Ordinal));
        Assert.Equal(["2S1P cell, straight, tip", "3S1P cell, straight, tip", "4S1P cell, straight, tip", "4S2P cell, straight, tip"], Families(found));
        Assert.All(found.Discards, one => Assert.Equal(1, one.Count));
        Assert.StartsWith("it lasts: 94.", found.Discards[0].Reason, StringComparison.Ordinal);
        Assert.StartsWith("it lasts: 63.", found.Discards[1].Reason, StringComparison.Ordinal);
        Assert.Equal("1S1P", found.Best[0].Verdict.Arrangement.Name[..4]); // one cell is on hand: what needs no buying comes first
        Assert.Equal(found.Best.Skip(1).Select(one => one.Verdict.Word).Order(), found.Best.Skip(1).Select(one => one.Verdict.Word));
        Assert.Equal((8, 4), (found.Places.Count, found.Places.Count(place => place.Reason.Length == 0)));
        foreach (var one in found.Best)
        {
            var arrangement = one.Verdict.Arrangement;
            int cells = arrangement.Series * arrangement.Parallel;
            Assert.Equal((new PartId("tip"), null, 0.95, 2 * arrangement.Series), (arrangement.Heater!.Value, arrangement.Lamp, arrangement.DutyCeiling, arrangement.ContactCount));
            Assert.Equal((new PartId("probe"), new PartId("board")), (arrangement.Sensor, arrangement.Controller));
            Assert.Equal(arrangement.Series == 2, arrangement.Supervision is not null && arrangement.Charger is not null); // the board and the charger are made for two
            Assert.Equal(cells > 1 ? [$"{cells - 1} × cell"] : [], one.ToBuy);
            Assert.Equal(6, one.Verdict.Prediction!.Draws.Count);
        }
    }

    /// <summary>By hand: a heater for 5 V stands 8.4 V at (5/8.4)² = 35 % and 12.6 V at 15.7 %; one full cell of 4.2 V is less than 5 % above it.</summary>
    [Fact]
    public void A_heater_above_its_label_is_held_back_and_told()
    {
        var found = Search(100, Hot, part => part.Kind == PartKind.Heater ? part with { Stated = [.. part.Stated, new(PartQuantities.RatedVolts, 5, "V", 0, "claimed", "label")] } : part);
        double Duty(int series) => found.Best.First(one => one.Verdict.Arrangement.Series == series).Verdict.Arrangement.DutyCeiling;
        Assert.Equal(5, found.Best.Count); // of eight that last longer now, no more than a handful
        Assert.Equal((8, 3), (found.Tried, found.Behind)); // the other three are counted
        Assert.Equal(25 / (8.4 * 8.4), Duty(2), 1e-12);
        Assert.All(found.Best, one => Assert.Equal(one.Verdict.Arrangement.Series > 1, one.Warnings.Any(said => said.StartsWith("the heater runs above its label under a duty of ", StringComparison.Ordinal))));
        Assert.Contains(found.Best.First(one => one.Verdict.Arrangement.Series == 2).Warnings, said => said.Contains("a duty of 35 %", StringComparison.Ordinal));
    }

    /// <summary>By hand: 4 V · S/2 Ω/P through one cell: 4 A in 2S1P and 4S2P, 6 and 8 A in 3S1P and 4S1P, 3 A just not in 3S2P for its loop.</summary>
    [Fact]
    public void Cells_are_not_asked_for_more_than_they_stand()
    {
        var found = Search(10, Hot, part => part.Kind == PartKind.Cell ? part with { Count = 2, Stated = [.. part.Stated, new(PartQuantities.RatedCurrent, 3, "A", 0, "claimed", "label")] } : part);
        Assert.Equal(["2S1P", "3S1P", "4S1P", "4S2P"], Families(found).Select(family => family[..4]));
        Assert.Equal("4.0 A through one cell that is to stand 3.0 A (claimed)", found.Discards[0].Reason);
        Assert.Equal("6.0 A through one cell that is to stand 3.0 A (claimed)", found.Discards[1].Reason);
        Assert.All(found.Best, one => Assert.Equal(one.Verdict.Arrangement is { Series: 1, Parallel: 1 or 2 }, one.ToBuy.Count == 0)); // two are at hand
    }

    /// <summary>By hand: 0.7 A empty 360 C in 514 s and 720 C in 1029 s, however many are in series.</summary>
    [Fact]
    public void Without_hot_work_lamps_are_looked_for()
    {
        var found = Search(600, null);
        Assert.Equal(8, found.Tried);
        Assert.Equal(["1S2P", "2S2P", "3S2P", "4S2P"], found.Best.Select(one => one.Verdict.Arrangement.Name[..4]).Order(StringComparer.Ordinal));
        Assert.All(found.Best, one => Assert.Equal((null, new PartId("light"), null, null, null, 1.0),
            (one.Verdict.Arrangement.Heater, one.Verdict.Arrangement.Lamp, one.Verdict.Arrangement.Sensor, one.Verdict.Arrangement.Controller, one.Verdict.Arrangement.CutOut, one.Verdict.Arrangement.DutyCeiling)));
        Assert.Equal(["1S1P", "2S1P", "3S1P", "4S1P"], Families(found).Select(family => family[..4]));
        Assert.All(found.Discards, one => Assert.StartsWith("it lasts: 514 s", one.Reason, StringComparison.Ordinal));
    }

    /// <summary>By hand: 9 V is less than three full cells of 4.2 V, 12.6 V.</summary>
    [Fact]
    public void A_lamp_is_not_put_on_more_volts_than_it_stands()
    {
        var found = Search(10, null, part => part.Kind == PartKind.Lamp ? part with { Stated = [.. part.Stated, new(PartQuantities.MostInputVolts, 9, "V", 0, "claimed", "label")] } : part);
        Assert.Equal(["3S1P", "3S2P", "4S1P", "4S2P"], Families(found).Select(family => family[..4]));
        Assert.Equal("12.6 V at a lamp that is to stand 9.0 V (claimed)", found.Discards[0].Reason);
        Assert.Equal("16.8 V at a lamp that is to stand 9.0 V (claimed)", found.Discards[2].Reason);
    }

    /// <summary>By hand: 5000 s are missed by all; 720 C over 5000 s would be 0.144 A, 360 C 0.072 A: the nearest three are turned round.</summary>
    [Fact]
    public void Where_nothing_will_do_the_nearest_misses_say_what_to_buy()
    {
        var found = Search(5000, null);
        Assert.Empty(found.Best);
        Assert.Equal(3, found.Buy.Count);
        Assert.All(found.Buy, said => Assert.Contains("S2P cell, straight, light, contacts misses 'it lasts'; it would do with ", said, StringComparison.Ordinal));
        Assert.Contains(found.Buy, said => said.Contains("the current that its driver holds, light at most 0.14", StringComparison.Ordinal));
        Assert.DoesNotContain(Search(600, null).Discards, one => one.Family.Contains("2P", StringComparison.Ordinal));
    }

    /// <summary>A lamp is followed until a tenth of its light is left, 12 times its 514 s or 1029 s: no number of any part makes a thousand million seconds of it.</summary>
    [Fact]
    public void Where_nothing_would_do_nothing_is_to_be_bought() => Assert.Empty(Search(1e9, null).Buy);

    /// <summary>By hand: two full cells are 8.4 V, more than the 5 V that a step-up makes of one; and of two of a kind the first on the shelf is built in.</summary>
    [Fact]
    public void A_step_up_is_not_fed_with_more_than_it_makes()
    {
        Part[] parts = [.. Tool.Parts, new(new("boost"), PartKind.StepUp, "boost", [new(PartQuantities.SetVolts, 5, "V", 0, "measured", "by hand")]), new(new("probe-2"), PartKind.Sensor, "probe 2", []), new(new("board-2"), PartKind.Controller, "board 2", [])];
        var work = new WorkPlan(2000, 20, 20, 4, 5, 220, Estimate.Exact(0, Units.WattPerKelvin, new Origin.Assumed("none")), Estimate.Exact(0, Units.Joule, new Origin.Assumed("none")));
        var found = ShelfSearch.Of(new Brief("", "blade", "cut", 20, [Lasts(100)]) { Duty = Hot }, parts, Tool.ShelfOf(parts), work, 1, 6, new("s")).Value;
        Assert.Equal("the full pack, 8.4 V, lies above what the step-up is set to, 5.0 V", found.Discards.Single(one => one.Family == "2S1P cell, boost, tip").Reason);
        Assert.DoesNotContain(found.Discards, one => one.Family.StartsWith("1S", StringComparison.Ordinal) && one.Reason.StartsWith("the full pack", StringComparison.Ordinal));
        Assert.All(found.Best, one => Assert.Equal((new PartId("probe"), new PartId("board")), (one.Verdict.Arrangement.Sensor, one.Verdict.Arrangement.Controller)));
    }

    private static SearchResult Among(Part[] parts, params Arrangement[] wired)
    {
        var work = new WorkPlan(2000, 20, 20, 4, 5, 220, Estimate.Exact(0, Units.WattPerKelvin, new Origin.Assumed("none")), Estimate.Exact(0, Units.Joule, new Origin.Assumed("none")));
        return ShelfSearch.Of(new Brief("", "blade", "cut", 20, [Lasts(100)]) { Duty = Hot }, parts, Tool.ShelfOf(parts), work, 1, 6, new("s"), wired).Value;
    }

    private static Part OnlyAClass(string id, PartKind kind) => new(new(id), kind, id, [new(PartQuantities.Mass, 3, "g", 1, "assumed", "class")]) { Count = 0 };

    [Fact]
    public void What_is_only_thought_of_as_its_class_stands_back_behind_a_real_part()
    {
        var found = Among([OnlyAClass("any-sensor", PartKind.Sensor), OnlyAClass("any-contacts", PartKind.Contacts), .. Tool.Parts]);
        Assert.Equal(8, found.Tried); // and not twice as many for the other contacts
        Assert.All(found.Best, one => Assert.Equal(new PartId("probe"), one.Verdict.Arrangement.Sensor));
        Part[] none = [.. Tool.Parts.Where(part => part.Kind != PartKind.Sensor), OnlyAClass("any-sensor", PartKind.Sensor)];
        Assert.All(Among(none).Best, one => Assert.Equal(new PartId("any-sensor"), one.Verdict.Arrangement.Sensor));
    }

    [Fact]
    public void Where_the_search_comes_to_what_is_wired_it_takes_the_rest_from_there()
    {
        Part[] parts = [.. Tool.Parts, new(new("probe-2"), PartKind.Sensor, "probe 2", []), new(new("tube-2"), PartKind.Handle, "tube 2", [])];
        var wired = Among(parts).Best[0].Verdict.Arrangement with { Id = new("mine"), Letter = "B", Sensor = new PartId("probe-2"), Handle = new("tube-2"), DutyCeiling = 0.5 };
        var found = Among(parts, wired).Best.Select(one => one.Verdict.Arrangement).ToArray();
        var same = Assert.Single(found, one => ShelfSearch.SameWay(one, wired));
        Assert.Equal((new PartId("probe-2"), new PartId("tube-2"), 0.5), (same.Sensor, same.Handle, same.DutyCeiling));
        Assert.StartsWith("#", same.Letter, StringComparison.Ordinal);
        Assert.All(found.Where(one => one != same), one => Assert.Equal(new PartId("probe"), one.Sensor));
    }

    [Fact]
    public void A_shelf_that_lacks_a_kind_says_which()
    {
        var brief = new Brief("", "blade", "cut", 20, [Lasts(1)]);
        string[] Lacking(Brief of, Part[] parts) => [.. ShelfSearch.Of(of, parts, new Shelf(parts, []), null!, 1, 6, new("s")).Problems.Select(problem => problem.What)];
        Assert.Equal(["The shelf has no cell.", "The shelf has no heater.", "The shelf has no switch.", "The shelf has no pair of leads.", "The shelf has no cell contact.", "The shelf has no sensor.", "The shelf has no controller.", "The shelf has no handle."],
            Lacking(brief with { Duty = Hot }, []));
        Assert.Equal(["The shelf has no cell.", "The shelf has no lamp.", "The shelf has no switch.", "The shelf has no pair of leads.", "The shelf has no cell contact.", "The shelf has no handle."], Lacking(brief, []));
        Assert.Equal(["The shelf has no cell."], Lacking(brief with { Duty = Hot }, [.. Tool.Parts.Select(part => part.Kind == PartKind.Cell ? part with { From = "destroyed" } : part)]));
    }
}
