using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Safety;
using Heatwright.Verdicts;
using Condition = Heatwright.Safety.Condition;

namespace Heatwright.Tests.Verdicts;

/// <summary>What no run decides, summed by hand: mass, length, money, charging and standing by.</summary>
public sealed class StandingLinesTests
{
    private static Part Part(string id, PartKind kind, params (string Quantity, double Value, string Unit)[] stated) => new(new(id), kind, id, [.. stated.Select(one => new StatedValue(one.Quantity, one.Value, one.Unit, 0, "measured", "by hand"))]);

    private static readonly Dictionary<string, string> ForTwo = new() { ["cells"] = "2" };

    /// <summary>Two in series and three strings: six cells.</summary>
    private static readonly Arrangement Six = WrittenVerdict.Tool("A", 2, 3) with { Controller = new("board"), Charger = new("charger") };

    private static Part[] Parts(Func<Part, Part>? change = null) =>
    [
        .. new[]
        {
            Part("cell", PartKind.Cell, (PartQuantities.Mass, 45, "g"), (PartQuantities.Capacity, 2, "Ah"), (PartQuantities.Price, 3, "money")),
            Part("switch", PartKind.Switch, (PartQuantities.Mass, 1, "g"), (PartQuantities.Price, 0.5, "money")),
            Part("leads", PartKind.Leads, (PartQuantities.Mass, 6, "g"), (PartQuantities.Price, 0.25, "money")),
            Part("contacts", PartKind.Contacts, (PartQuantities.Mass, 8, "g"), (PartQuantities.Price, 1, "money")) with { Name = "holder for one cell" },
            Part("handle", PartKind.Handle, (PartQuantities.Mass, 50, "g"), (PartQuantities.Length, 130, "mm"), (PartQuantities.Price, 2, "money")),
            Part("tip", PartKind.Heater, (PartQuantities.Mass, 12, "g"), (PartQuantities.Length, 70, "mm"), (PartQuantities.Price, 4, "money")),
            Part("board", PartKind.Controller, (PartQuantities.Mass, 5, "g"), (PartQuantities.Drain, 10, "mA"), (PartQuantities.Price, 6, "money")),
            Part("charger", PartKind.Charger, (PartQuantities.ChargeCurrent, 1, "A"), (PartQuantities.Price, 5, "money")) with { Words = ForTwo },
        }.Select(part => change is null ? part : change(part)),
    ];

    private static Func<Part, Part> Without(string id, string quantity) => part => part.Id.Name == id ? part with { Stated = [.. part.Stated.Where(one => one.Quantity != quantity)] } : part;

    private static Func<Part, Part> With(string id, StatedValue stated) => part => part.Id.Name == id ? part with { Stated = [.. part.Stated.Where(one => one.Quantity != stated.Quantity), stated] } : part;

    private static RequirementVerdict? Line(RequirementQuantity quantity, double limit, string unit, bool atMost = true, Func<Part, Part>? change = null, Arrangement? of = null, Condition[]? missing = null, bool must = true) =>
        new StandingLines(new Shelf(Parts(change), []), of ?? Six, new SafetyFindings(missing ?? [], [], double.NaN), 1).Line(new("r", "", quantity, limit, unit, atMost, must));

    /// <summary>By hand: a holder has two touches to a cell; six touches are three holders of one cell, two of two and one of three; clips are counted by the touch.</summary>
    [Theory, InlineData("holder", "", 6, 3), InlineData("holder", "1", 6, 3), InlineData("holder", "2", 6, 2), InlineData("holder", "3", 6, 1), InlineData("holder", "2", 4, 1), InlineData("clip", "2", 6, 6)]
    public void Holders_are_counted_by_their_cells_and_clips_by_their_touches(string name, string cells, int touches, int pieces)
    {
        var part = Part("contacts", PartKind.Contacts) with { Name = name, Words = new[] { cells }.Where(word => word.Length > 0).ToDictionary(_ => "cells") };
        Assert.Equal(pieces, (Six with { ContactCount = touches }).Pieces(part));
    }

    /// <summary>By hand: 6 · 45 + 1 + 6 + 8 + 50 + 12 + 5 = 352 g; the charger stays at home.</summary>
    [Theory, InlineData(352.1, true, VerdictWord.Go), InlineData(351.9, true, VerdictWord.NoGo), InlineData(351.9, false, VerdictWord.Go)]
    public void Mass_is_the_sum_of_what_is_carried(double limit, bool atMost, VerdictWord word)
    {
        var line = Line(RequirementQuantity.Mass, limit, "g", atMost)!;
        Assert.Equal(352, line.Value!.Value, 1e-6);
        Assert.Equal((word, atMost ? limit - 352 : 352 - limit), (line.Word, line.Margin), (a, b) => a.Item1 == b.Item1 && Math.Abs(a.Item2 - b.Item2) < 1e-6);
        Assert.Equal(word == VerdictWord.Go ? 1 : 0, line.Probability);
        Assert.Equal(word == VerdictWord.Go ? "" : "lighter or fewer cells", line.Remedy);
        Assert.Equal("7 parts weighed, joints and case not counted; charger stands outside and is not weighed", line.Because);
    }

    /// <summary>By hand: 352 g; a charger of 80 g that stands outside adds nothing, one that is built in does, and one that is built in and was never weighed is asked for.</summary>
    [Fact]
    public void A_charger_is_carried_only_where_its_words_say_so()
    {
        Part Heavy(Part part) => With("charger", new(PartQuantities.Mass, 80, "g", 0, "measured", "by hand"))(part);
        Part In(Part part) => part.Id.Name == "charger" ? part with { Words = new Dictionary<string, string>(ForTwo) { ["place"] = "handle" } } : part;
        Assert.Equal(352, Line(RequirementQuantity.Mass, 1000, "g", change: Heavy)!.Value!.Value, 1e-6);
        var inside = Line(RequirementQuantity.Mass, 1000, "g", change: part => In(Heavy(part)))!;
        Assert.Equal((432, "8 parts weighed, joints and case not counted"), (Math.Round(inside.Value!.Value, 6), inside.Because));
        Assert.Equal("the mass of charger is not known", Line(RequirementQuantity.Mass, 1000, "g", change: In)!.Because);
    }

    /// <summary>By hand: four touches are two holders of two touches, or four clips: 352 + 8 g, or + 24 g; a price of 1 once or thrice more.</summary>
    [Theory, InlineData("spring holder", 360), InlineData("clip", 376)]
    public void Contacts_are_counted_by_their_touches(string name, double mass)
    {
        var four = Six with { ContactCount = 4 };
        Part named(Part part) => part.Id.Name == "contacts" ? part with { Name = name } : part;
        Assert.Equal(mass, Line(RequirementQuantity.Mass, 1000, "g", change: named, of: four)!.Value!.Value, 1e-6);
        Assert.Equal(36.75 + ((mass - 352) / 8), Line(RequirementQuantity.PartsCost, 1000, "money", change: named, of: four)!.Value!.Value, 1e-6); // 6 · 3 + 0.5 + 0.25 + 1 + 2 + 4 + 6 + 5
    }

    [Fact]
    public void A_mass_that_is_not_known_is_asked_for()
    {
        var line = Line(RequirementQuantity.Mass, 1000, "g", change: Without("tip", PartQuantities.Mass))!;
        Assert.Equal((VerdictWord.NeedMoreReadings, null, "the mass of tip is not known", "not known"), (line.Word, line.Probability, line.Because, line.Shown));
    }

    /// <summary>By hand: 130 + 70 mm.</summary>
    [Fact]
    public void Length_is_handle_and_working_end_in_line()
    {
        Assert.Equal(200, Line(RequirementQuantity.ToolLength, 210, "mm")!.Value!.Value, 1e-9);
        Assert.Equal(VerdictWord.NoGo, Line(RequirementQuantity.ToolLength, 199, "mm")!.Word);
        Assert.Equal(VerdictWord.NeedMoreReadings, Line(RequirementQuantity.ToolLength, 210, "mm", change: Without("handle", PartQuantities.Length))!.Word);
        Assert.Equal(VerdictWord.NeedMoreReadings, Line(RequirementQuantity.ToolLength, 210, "mm", change: Without("tip", PartQuantities.Length))!.Word);
    }

    /// <summary>By hand: six holders that state 74 · 20 · 15 mm, 25 mm across, are shortest three side by side: 2 · 74 + 30 + 30 = 208 mm, and 2.1547 · 25 mm. A charger in the handle takes 30 mm more.</summary>
    [Fact]
    public void Holders_and_a_built_in_charger_take_room_in_the_handle()
    {
        Part Long(Part part) => With("handle", new(PartQuantities.Length, 210, "mm", 0, "measured", "by hand"))(part);
        Part Sized(Part part) => part.Id.Name != "contacts" ? Long(part) : part with { Stated = [.. part.Stated, .. new[] { (PartQuantities.Length, 74.0), (PartQuantities.Width, 20), (PartQuantities.Height, 15) }.Select(side => new StatedValue(side.Item1, side.Item2, "mm", 0, "measured", "by hand"))] };
        var twelve = Six with { ContactCount = 12 };
        Assert.Equal(53.868, Line(RequirementQuantity.InsideDiameter, 60, "mm", change: Sized, of: twelve)!.Value!.Value, 1e-3);
        Part In(Part part) => part.Id.Name == "charger" ? part with { Words = new Dictionary<string, string>(ForTwo) { ["place"] = "handle" } } : Sized(part);
        Assert.Null(Line(RequirementQuantity.InsideDiameter, 60, "mm", change: In, of: twelve)!.Value);
    }

    /// <summary>By hand: six cells of 18.5 · 65.2 mm on tabs are shortest three or four side by side, 2 · 65.2 · 1.1 mm, 30 mm of board and 30 mm to the hot end: 203.4 mm. Three go into 2.1547 · 18.5 mm; into 130 mm none do.</summary>
    [Fact]
    public void Cells_go_into_the_handle_or_they_do_not()
    {
        static Part Tabs(Part part) => part.Id.Name == "contacts" ? part with { Name = "welded tabs" } : part;
        var fits = Line(RequirementQuantity.InsideDiameter, 45, "mm", change: part => Tabs(With("handle", new(PartQuantities.Length, 210, "mm", 0, "measured", "by hand"))(part)))!;
        Assert.Equal(39.862, fits.Value!.Value, 1e-3);
        Assert.Equal(VerdictWord.Go, fits.Word);
        var none = Line(RequirementQuantity.InsideDiameter, 45, "mm", change: Tabs)!;
        Assert.Equal((VerdictWord.NoGo, null, "does not fit"), (none.Word, none.Value, none.Shown));
        Assert.Equal("cells and boards do not go into this handle: does not go in at this length", none.Because);

        // A holder of no stated size makes no verdict, and is told.
        Func<Part, Part> long210 = With("handle", new(PartQuantities.Length, 210, "mm", 0, "measured", "by hand"));
        var held = Line(RequirementQuantity.InsideDiameter, 45, "mm", change: long210)!;
        Assert.Equal(39.862, held.Value!.Value, 1e-3);
        Assert.EndsWith("mm length used; 'holder for one cell' not counted, its size is not stated", held.Because, StringComparison.Ordinal);
    }

    /// <summary>By hand: three strings of 2 Ah over 10 mA are 600 h.</summary>
    [Fact]
    public void Standing_by_lasts_charge_over_drain()
    {
        Assert.Equal(600, Line(RequirementQuantity.StandByTime, 500, "h", atMost: false)!.Value!.Value, 1e-6);
        Assert.Equal(VerdictWord.Go, Line(RequirementQuantity.StandByTime, 500, "h", atMost: false)!.Word);
        Assert.Equal(VerdictWord.NeedMoreReadings, Line(RequirementQuantity.StandByTime, 500, "h", atMost: false, change: Without("board", PartQuantities.Drain))!.Word);
        Assert.Equal(VerdictWord.NeedMoreReadings, Line(RequirementQuantity.StandByTime, 500, "h", atMost: false, change: Without("cell", PartQuantities.Capacity))!.Word);
    }

    /// <summary>By hand: 6 · 3 + 0.5 + 0.25 + 1 + 2 + 4 + 6 + 5 = 36.75.</summary>
    [Fact]
    public void Cost_is_the_sum_of_prices_each_cell_for_itself()
    {
        var line = Line(RequirementQuantity.PartsCost, 36.75, "money")!;
        const string counted = "with 6 × cell, among them still to be bought 5 × cell"; // one cell is on hand, six are wired, and all six are in the sum
        Assert.Equal((36.75, VerdictWord.Go, $"8 parts priced, {counted}"), (line.Value!.Value, line.Word, line.Because));
        Assert.Equal(VerdictWord.NoGo, Line(RequirementQuantity.PartsCost, 36.7, "money")!.Word);
        Assert.Equal($"8 parts priced, {counted}, what its conditions ask for beside them not counted", Line(RequirementQuantity.PartsCost, 40, "money", missing: [new("a fuse", "it burns")])!.Because);
    }

    [Fact]
    public void What_has_no_price_is_not_free()
    {
        var change = Without("tip", PartQuantities.Price);
        var open = Line(RequirementQuantity.PartsCost, 32.75, "money", change: change)!;
        Assert.Equal((VerdictWord.NeedMoreReadings, "1 of 8 parts have no price: tip"), (open.Word, open.Because));
        var over = Line(RequirementQuantity.PartsCost, 32, "money", change: change)!;
        Assert.Equal((VerdictWord.NoGo, "7 parts priced, 1 without a price, with 6 × cell, among them still to be bought 5 × cell"), (over.Word, over.Because));
        Assert.Equal(VerdictWord.Go, Line(RequirementQuantity.PartsCost, 30, "money", atMost: false, change: change)!.Word);
        Assert.Equal(VerdictWord.NeedMoreReadings, Line(RequirementQuantity.CostAtTen, 30, "money")!.Word);
        Assert.Equal(VerdictWord.NeedMoreReadings, Line(RequirementQuantity.CostAtHundred, 30, "money")!.Word);
    }

    /// <summary>By hand: three strings of 2 Ah at 1 A take 6 h, times 1.1 to 1.4 (1.25 ± 0.15): 7.5 h; of 6.6 to 8.4 h three quarters lie under 7.95 h.</summary>
    [Fact]
    public void Charging_takes_charge_over_current_with_its_tail()
    {
        var line = Line(RequirementQuantity.ChargeTime, 7.95, "h")!;
        Assert.Equal(7.5, line.Value!.Value, 1e-9);
        Assert.Equal(0.9 / Math.Sqrt(3), line.Value.StandardDoubt, 1e-6);
        Assert.Equal(0.75, line.Probability!.Value, 0.03);
        Assert.Equal((VerdictWord.NeedMoreReadings, "a stronger charger the cell may take"), (line.Word, line.Remedy));
        Assert.Equal(VerdictWord.Go, Line(RequirementQuantity.ChargeTime, 8.5, "h")!.Word);
        Assert.Equal(VerdictWord.NoGo, Line(RequirementQuantity.ChargeTime, 6.5, "h")!.Word);
        Assert.Equal(2000, Line(RequirementQuantity.ChargeTime, 8.5, "h")!.Drawn.Count * 5);
    }

    [Fact]
    public void Charging_without_a_suiting_charger_or_its_current_is_not_known()
    {
        var none = Line(RequirementQuantity.ChargeTime, 8, "h", of: Six with { Charger = null })!;
        Assert.Equal((VerdictWord.GoIf, null, "a charger made for it is bought"), (none.Word, none.Probability, none.Remedy));
        Assert.Equal(VerdictWord.GoIf, Line(RequirementQuantity.ChargeTime, 8, "h", of: Six with { Series = 3 })!.Word);
        Assert.Equal(VerdictWord.NeedMoreReadings, Line(RequirementQuantity.ChargeTime, 8, "h", change: Without("charger", PartQuantities.ChargeCurrent))!.Word);
        Assert.Equal(VerdictWord.NeedMoreReadings, Line(RequirementQuantity.ChargeTime, 8, "h", change: Without("cell", PartQuantities.Capacity))!.Word);
    }

    /// <summary>By hand: a step-up charger loses 0.15/0.85 of 2 · 3.2 V · 1 A, 1.129 W; a linear one the 1.8 V between 5 V and 3.2 V at 1 A.</summary>
    [Fact]
    public void A_charger_gives_off_what_it_loses()
    {
        Assert.Equal(0.15 / 0.85 * 6.4, Line(RequirementQuantity.ChargerHeat, 2, "W")!.Value!.Value, 1e-6);
        var one = Six with { Series = 1 };
        Assert.Equal(1.8, Line(RequirementQuantity.ChargerHeat, 3, "W", of: one, change: part => part.Kind == PartKind.Charger ? part with { Words = new Dictionary<string, string>() } : part)!.Value!.Value, 1e-6);
        Assert.Equal(VerdictWord.NeedMoreReadings, Line(RequirementQuantity.ChargerHeat, 3, "W", of: one)!.Word); // made for two
        Assert.Equal(VerdictWord.NeedMoreReadings, Line(RequirementQuantity.ChargerHeat, 3, "W", change: Without("charger", PartQuantities.ChargeCurrent))!.Word);
    }

    /// <summary>What a seller claims keeps a must only once a reading confirms it; a want is a wish, claimed or not.</summary>
    [Fact]
    public void Claims_are_to_be_confirmed_for_musts()
    {
        var claimed = With("charger", new(PartQuantities.ChargeCurrent, 1, "A", 0.001, "claimed", "label"));
        var must = Line(RequirementQuantity.ChargeTime, 9, "h", change: claimed)!;
        Assert.Equal((VerdictWord.GoIf, "a reading confirms what the seller claims of charge current"), (must.Word, must.Remedy));
        Assert.Equal((VerdictWord.Go, ""), (Line(RequirementQuantity.ChargeTime, 9, "h", change: claimed, must: false)!.Word, Line(RequirementQuantity.ChargeTime, 9, "h", change: claimed, must: false)!.Remedy));
        Assert.Equal(VerdictWord.NoGo, Line(RequirementQuantity.ChargeTime, 5, "h", change: claimed)!.Word);
    }

    [Fact]
    public void What_a_run_tells_is_left_to_it() => Assert.Null(Line(RequirementQuantity.RunTime, 1, "h"));
}
