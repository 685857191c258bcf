using Heatwright.Handbook;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Tests.Parts;

/// <summary>Claims that cannot be, on invented labels; expected numbers by hand.</summary>
public class ClaimChecksTests
{
    [Fact]
    public void An_18650_above_three_and_a_half_amp_hours_is_doubted()
    {
        // By hand: 9.9 Ah · 3.7 V / 16.5405 mL = 2215 Wh/L (18 × 65 mm); / 38 g = 964 Wh/kg.
        var doubts = ClaimChecks.Of(Listing("02-wishful-cell"));
        Assert.Contains(doubts, doubt => doubt.Rule == "18650 charge" && doubt.Why.Contains("9.9 Ah", StringComparison.Ordinal) && doubt.Source == "common practice, no source");
        Assert.Contains(doubts, doubt => doubt.Rule == "charge in its size" && doubt.Why.Contains("2210 Wh/L", StringComparison.Ordinal));
        Assert.Contains(doubts, doubt => doubt.Rule == "charge in its mass" && doubt.Why.Contains("964 Wh/kg", StringComparison.Ordinal));
        Assert.Empty(ClaimChecks.Of(Listing("01-round-cell")));
    }

    [Theory]
    [InlineData(900, false, true)] // by hand: 900 lm / (1 A · 3 V) = 300 lm/W
    [InlineData(2000, true, true)] // 667 lm/W; white light carries 250 to 370 [murphy-2012]
    [InlineData(300, false, false)] // 100 lm/W
    public void Light_that_its_watts_cannot_give_is_doubted(double lumens, bool beyondLight, bool beyondLamps)
    {
        var lamp = new Part(new PartId("l"), PartKind.Lamp, "l", [new("luminous flux", lumens, "lm", 0, "claimed", "label"), new("load current", 1, "A", 0, "claimed", "label"), new("forward volts", 3, "V", 0, "assumed", "by hand")]);
        var doubts = ClaimChecks.Of(lamp);
        Assert.Equal(beyondLight, doubts.Any(doubt => doubt.Rule == "light of its amps" && doubt.Source == "murphy-2012"));
        Assert.Equal(beyondLamps, doubts.Any(doubt => doubt.Rule == "light of small lamps by amps" && doubt.Source == "common practice, no source"));
    }

    /// <summary>An invented text. By hand: 1200 lm / (1 A · 3.2 V) = 375 lm/W, above the 370 lm/W that white light carries at most [murphy-2012].</summary>
    [Fact]
    public void Light_that_its_least_volts_cannot_give_is_doubted()
    {
        var listing = ListingReader.Read("Bright white LED module, 1200 lumens, 1A constant current, input 3.2V-9V").Value;
        Assert.Contains(ClaimChecks.Of(listing), doubt => doubt.Rule == "light of its least volts" && doubt.Why.Contains("375 lm", StringComparison.Ordinal));
        Assert.Empty(ClaimChecks.Of(ListingReader.Read("Bright white LED module, 300 lumens, 1A constant current, input 3.2V-9V").Value));
    }

    [Fact]
    public void A_hundred_watts_on_a_thin_cartridge_are_doubted()
    {
        // By hand: 100 W / (π · 0.3 cm · 2 cm) = 53.05 W/cm².
        Assert.Contains(ClaimChecks.Of(Listing("12-wishful-cartridge")), doubt => doubt.Rule == "watts on a surface" && doubt.Why.Contains("53.1 W/cm²", StringComparison.Ordinal));
        Assert.Empty(ClaimChecks.Of(Listing("11-cartridge")));
    }

    [Fact]
    public void Watts_on_a_thin_heater_of_unknown_length_are_doubted_by_the_length_they_would_need()
    {
        // By hand: 100 W / (25 W/cm² · π · 0.3 cm) = 4.244 cm.
        Part Heater(params StatedValue[] stated) => new(new PartId("h"), PartKind.Heater, "h", stated);
        StatedValue watts = new("rated power", 100, "W", 0, "claimed", "100W"), across = new("diameter", 3, "mm", 0, "measured", "");
        Assert.Contains(ClaimChecks.Of(Heater(watts, across)), doubt => doubt.Rule == "watts without a length" && doubt.Why.Contains("42.4 mm long", StringComparison.Ordinal));

        // A length settles it: 60 mm carry them at 17.7 W/cm²; and half the watts need no more than 21 mm.
        Assert.Empty(ClaimChecks.Of(Heater(watts, across, new("length", 60, "mm", 0, "measured", ""))));
        Assert.Empty(ClaimChecks.Of(Heater(watts with { Value = 50 }, across)));
    }

    [Fact]
    public void Claims_that_contradict_each_other_are_told_with_the_next_step()
    {
        // By hand: 144 V² / 7 Ω = 20.57 W, 0.514 times 40 W.
        var doubt = Assert.Single(ClaimChecks.Of(ListingReader.Read("Heater 12V 40W, resistance 7 ohm").Value));
        Assert.Contains("0.514 times", doubt.Why, StringComparison.Ordinal);
        Assert.Contains("ohms", doubt.Next, StringComparison.Ordinal);
        Assert.Contains(ClaimChecks.Of(ListingReader.Read("18650 cell 2600 mAh\nlabel says 3400 mAh").Value), two => two.Rule == "two claims" && two.Why.Contains("2600 mAh and 3400 mAh", StringComparison.Ordinal));
        // By hand: 9.6 Wh / (3.5 Ah · 3.7 V) = 0.741.
        Assert.Contains(ClaimChecks.Of(ListingReader.Read("18650 cell 3500mAh 3.7V 9.6Wh").Value), wrong => wrong.Rule == "energy and charge" && wrong.Why.Contains("0.741 times", StringComparison.Ordinal));
    }

    [Fact]
    public void A_step_up_that_would_empty_a_cell_at_once_is_doubted()
    {
        // By hand: 150 W / 3 V = 50 A.
        Assert.Contains(ClaimChecks.Of(ListingReader.Read("150W step-up, input 3-32V").Value), doubt => doubt.Rule == "amps from one cell" && doubt.Why.Contains("50 A", StringComparison.Ordinal));
    }

    [Fact]
    public void A_switch_is_doubted_at_its_label_amps()
    {
        // By hand: 100² A² · 3.3 mΩ = 33 W.
        Assert.Contains(ClaimChecks.Of(Listing("16-transistor")), doubt => doubt.Why.Contains("33 W", StringComparison.Ordinal));
    }

    /// <summary>6 Ah · 3.7 V are 22.2 Wh. Claimed: 68 g and 21.2 · 70.5 mm, 326 Wh/kg and 892 Wh/L; measured 40 g: 555 Wh/kg, and 50 mm: 22.2 Wh/17.65 mL = 1258 Wh/L.</summary>
    [Fact]
    public void What_was_measured_counts_in_place_of_a_claim_of_the_same()
    {
        StatedValue Said(string quantity, double value, string unit, string origin = "claimed") => new(quantity, value, unit, 0, origin, "label");
        StatedValue[] claims = [Said("capacity", 6000, "mAh"), Said("rated volts", 3.7, "V"), Said("mass", 68, "g"), Said("diameter", 21.2, "mm"), Said("length", 70.5, "mm")];
        Part claimed = new(new PartId("c"), PartKind.Cell, "c", claims), measured = claimed with { Stated = [.. claims, Said("mass", 40, "g", "measured"), Said("length", 50, "mm", "measured")] };
        Assert.Equal(["892 Wh/L", "326 Wh/kg"], ClaimChecks.Of(claimed).Where(doubt => doubt.Rule.StartsWith("charge in", StringComparison.Ordinal)).Select(doubt => string.Join(' ', doubt.Why.Split(' ')[..2])));
        var doubts = ClaimChecks.Of(measured).Where(doubt => doubt.Rule.StartsWith("charge in", StringComparison.Ordinal)).ToArray();
        Assert.Equal(["1260 Wh/L", "555 Wh/kg"], doubts.Select(doubt => string.Join(' ', doubt.Why.Split(' ')[..2])));
        Assert.All(doubts, doubt => Assert.Contains("ischarge one before you count on it", doubt.Next, StringComparison.Ordinal));
    }

    [Fact]
    public void Once_a_discharge_has_told_nobody_is_sent_to_discharge_one()
    {
        Part cell = new(new PartId("c"), PartKind.Cell, "c", [new("capacity", 6000, "mAh", 0, "claimed", "label"), new("rated volts", 3.7, "V", 0, "claimed", "label")]) { Words = new Dictionary<string, string> { ["size"] = "21700" } };
        var before = ClaimChecks.Of(cell);
        Assert.Equal(["21700 charge", "charge in its size"], before.Select(doubt => doubt.Rule)); // 22.2 Wh in 24.2 mL: 916 Wh/L
        Assert.Equal("Take 3 to 4 Ah until a discharge has told.", before[0].Next);
        var told = ClaimChecks.Of(cell, quantity => quantity == "capacity" ? Estimate.Exact(3.1, Units.AmpereHour, new Origin.Assumed("by hand")) : null);
        Assert.Equal(before.Select(doubt => doubt.Why), told.Select(doubt => doubt.Why));
        Assert.All(told, doubt => Assert.StartsWith("Measured: capacity 3.1", doubt.Next, StringComparison.Ordinal));
    }

    [Fact]
    public void Measured_values_alone_are_never_doubted()
    {
        var part = new Part(new PartId("c"), PartKind.Cell, "c", [new("capacity", 9.9, "Ah", 0, "measured", "meter")]) { Words = new Dictionary<string, string> { ["size"] = "18650" } };
        Assert.Empty(ClaimChecks.Of(part));
    }

    [Fact]
    public void Every_rule_names_what_parts_have_and_says_its_number() => Assert.All(Tables.Find("claim-limits").Rows, row =>
    {
        Assert.Contains("{value}", row.Word("says"), StringComparison.Ordinal);
        Assert.NotEmpty(row.Word("next"));
        Assert.True(row.NumberOrNull("least") is not null || row.NumberOrNull("most") is not null);
        Assert.True(Enum.TryParse<PartKind>(row.Word("kind"), ignoreCase: true, out _));
    });

    private static ListingClaims Listing(string file) => ListingReader.Read(File.ReadAllText(Repository.Reference($"listings/{file}.txt"))).Value;
}
