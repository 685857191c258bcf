using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Tests.Parts;

/// <summary>Thirty invented sellers' texts with what they claim, both written by hand before the reader (tests/reference/listings).</summary>
public class ListingReaderTests(ITestOutputHelper output)
{
    private const string OfWhat = "amps of what?";

    private sealed record Row(string File, string Kind, string Quantity, double Si, double SiPlusMinus, string Text);

    private static readonly Row[] Expected = Rows();

    [Fact]
    public void At_least_95_of_100_claims_are_right_and_none_is_invented()
    {
        List<string> missed = [], invented = [];
        foreach (var file in Expected.GroupBy(row => row.File))
        {
            var found = Read(file.Key);
            missed.AddRange(file.Where(row => !found.Claims.Any(claim => Is(claim, row))).Select(row => $"{row.File}: {row.Text}"));
            invented.AddRange(found.Claims.Where(claim => !file.Any(row => Is(claim, row))).Select(claim =>
                $"{file.Key}: {claim.Quantity ?? string.Join(" or ", claim.Choices)} {claim.Value} {claim.Unit} ±{claim.PlusMinus} of '{claim.Words}'"));
        }

        output.WriteLine($"{Expected.Length - missed.Count} of {Expected.Length}");
        output.WriteLine(string.Join('\n', missed));
        Assert.Empty(invented);
        Assert.True(missed.Count <= 0.05 * Expected.Length, string.Join('\n', missed));
    }

    [Fact]
    public void There_are_thirty_texts_and_each_tells_its_kind()
    {
        Assert.Equal(30, Expected.Select(row => row.File).Distinct().Count());
        Assert.All(Expected.DistinctBy(row => row.File), row => Assert.Equal(row.Kind, Read(row.File).Kind.ToString(), ignoreCase: true));
    }

    /// <summary>An invented text; kind and values written down by hand.</summary>
    [Fact]
    public void A_lamp_tells_its_light_its_amps_and_its_volts()
    {
        var found = ListingReader.Read("White LED module with driver, 900 lm, 1A constant current. Input 3.2-9V. Stand-by 150uA. 32mm x 40mm, 42 g").Value;
        Assert.Equal(PartKind.Lamp, found.Kind);
        (string, double)[] told = [.. found.Claims.Select(claim => (claim.Quantity ?? "", Math.Round(claim.Unit.ToSi(claim.Value), 9)))];
        Assert.All(new[] { ("luminous flux", 900.0), ("load current", 1), ("least input volts", 3.2), ("most input volts", 9), ("drain", 150e-6), ("diameter", 0.032), ("length", 0.040), ("mass", 0.042) }, expected => Assert.Contains(expected, told));
    }

    [Fact]
    public void The_text_stays_as_it_was_pasted_and_every_claim_points_into_it() => Assert.All(Expected.Select(row => row.File).Distinct(), file =>
    {
        string text = File.ReadAllText(Repository.Reference($"listings/{file}.txt"));
        var found = Read(file);
        Assert.Equal(text, found.Text);
        Assert.All(found.Claims, claim => Assert.InRange(claim.At, 0, text.Length - 1));
        Assert.All(found.Claims, claim => Assert.Contains(claim.Words, string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal));
        Assert.Equal(Enumerable.Range(1, found.Claims.Count), found.Claims.Select(claim => claim.Number));
    });

    [Theory]
    [InlineData("03-pouch", "chemistry", "lithium-ion")]
    [InlineData("04-iron-cell", "chemistry", "lithium iron phosphate")]
    [InlineData("05-penlight", "chemistry", "nickel-metal hydride")]
    [InlineData("01-round-cell", "size", "18650")]
    [InlineData("19-protection-two", "cells", "2")]
    [InlineData("20-charger-one", "cells", "1")]
    [InlineData("21-charger-two", "cells", "2")]
    [InlineData("22-couple", "type", "K")]
    public void Words_that_are_no_numbers_are_found(string file, string word, string meaning) => Assert.Equal(meaning, Read(file).Words[word]);

    [Theory]
    [InlineData("DC-DC boost module, size 36 x 22 x 9 mm   price $3.40", "size 36 x 22 x 9 mm", "price $3.40")]
    [InlineData("DC-DC boost module, size 36 x 22 x 9 mm weight 12 g, price $3.40", "size 36 x 22 x 9 mm", "price $3.40")]
    [InlineData("DC-DC boost module 36 x 22 mm, 10A max only $3.40", "DC-DC boost module 36 x 22 mm", "only $3.40")]
    public void What_a_seller_says_of_a_size_ends_where_the_next_value_is_named(string text, string size, string price)
    {
        var found = ListingReader.Read(text).Value;
        Assert.Equal(size, Assert.Single(found.Claims, claim => claim.Quantity == PartQuantities.Width).Words);
        Assert.Equal(price, Assert.Single(found.Claims, claim => claim.Quantity == PartQuantities.Price).Words);
        Assert.All(found.Claims.Where(claim => claim.Value == 10), claim => Assert.Equal("10A max", claim.Words));
    }

    [Fact]
    public void A_text_that_does_not_say_what_it_sells_is_not_guessed_at()
    {
        var found = ListingReader.Read("Very good quality 12V 3A, 2 pieces").Value;
        Assert.Null(found.Kind);
        Assert.Empty(found.Claims);
        Assert.Equal(2, ListingReader.Read("Very good quality 12V 3A, 2 pieces", PartKind.Heater).Value.Claims.Count);
    }

    /// <summary>By hand: 4.80 of two is 2.40 each, 13.50 of three 4.50, 8.00 of four 2.00.</summary>
    [Theory]
    [InlineData("Round cell 3600mAh. Pack of 2, only 4.80", 2, 2.40, "of 2 for 4.80")]
    [InlineData("Round cell 3600mAh. Pack of 2: 7.20.", 2, 3.60, "of 2 for 7.20")]
    [InlineData("Round cell 3600mAh, 5 pcs for 6.00", 5, 1.20, "of 5 for 6.00")]
    [InlineData("Round cell 3600mAh, 3 pcs 13,50", 3, 4.50, "of 3 for 13.50")]
    [InlineData("Round cell 3600mAh, 3 pcs 13,50 EUR", 3, 4.50, "of 3 for 13.50")]
    [InlineData("Li-ion cell 3600mAh set of 4 for $8", 4, 2.00, "of 4 for 8.00")]
    [InlineData("Li-ion cell 3600mAh, 2-pack, price 4.80", 2, 2.40, "of 2 for 4.80")]
    [InlineData("Round cell 3600mAh, lot of 3 pcs 6.60 incl. shipping", 3, 2.20, "of 3 for 6.60")]
    [InlineData("Round cell 3600mAh, lot of 3 pcs 6.60 total", 3, 2.20, "of 3 for 6.60")]
    [InlineData("Li-ion cell 3600mAh, 2 pcs, $2.40 each", 2, 2.40, "")]
    [InlineData("Li-ion cell 3600mAh\n1 pc $2.90\n2 pcs $5.00", null, 2.90, "")]
    [InlineData("Li-ion cell 3600mAh\n2 pcs $5.00\n4 pcs $9.00", null, 2.50, "of 2 for 5.00")]
    [InlineData("Holder for 2 pcs cells, only 1.20", null, 1.20, "")]
    [InlineData("Li-ion cell 3600mAh, 1-9 pcs: $2.40", null, 2.40, "")]
    [InlineData("Li-ion cell 3600mAh, only 4.80", null, 4.80, "")]
    public void A_price_for_several_is_told_for_one_with_what_they_cost_together(string text, int? pieces, double each, string together)
    {
        var found = ListingReader.Read(text).Value;
        var price = found.Claims.First(claim => claim.Quantity == PartQuantities.Price);
        Assert.Equal((pieces, together), (found.Pieces, price.Together));
        Assert.Equal(each, price.Value, 1e-9);
        Assert.EndsWith(together, price.Confirmed(PartQuantities.Price).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_claim_of_the_part_is_told_as_left()
    {
        Assert.Contains(Read("19-protection-two").Unread, left => left.Words.Contains("60mA", StringComparison.Ordinal));
        Assert.Contains(Read("25-holder").Unread, left => left.Words.Contains("150 mm", StringComparison.Ordinal));
    }

    [Fact]
    public void Hostile_texts_are_read_without_a_stumble()
    {
        string[] odd = ["", "\n\n\n", "18650 cell (((", ")))) cell 3V", "cell 99999999999999999999999999999999mAh", "cell " + new string('9', 500) + "V", "heater Ø", "heater $", "heater AWG", "heater 3 x x 4 mm", "cell -", "🔥 heater 12V🔥40W", "heater 1/0 V 1e400W"];
        Assert.All(odd, text => Assert.NotNull(ListingReader.Read(text).Value));
        Assert.False(ListingReader.Read(new string('x', ListingReader.LongestText + 1)).IsFine);
    }

    private static ListingClaims Read(string file) => ListingReader.Read(File.ReadAllText(Repository.Reference($"listings/{file}.txt"))).Value;

    private static bool Is(Claim claim, Row row) =>
        (row.Quantity == OfWhat ? claim.Quantity is null && claim.Choices.Contains(PartQuantities.OutputCurrent) && claim.Choices.Contains(PartQuantities.SwitchCurrent) : claim.Quantity == row.Quantity)
        && Near(claim.Unit.ToSi(claim.Value), row.Si) && Near(claim.PlusMinus * claim.Unit.Factor, row.SiPlusMinus);

    // Gauge areas are printed to five digits; all else is exact.
    private static bool Near(double a, double b) => Math.Abs(a - b) <= 2e-5 * Math.Abs(b) + 1e-12;

    private static Row[] Rows() => [.. ReferenceCsv.Read("listings/expected.csv") is var csv ? csv.Rows.Select(row =>
    {
        var unit = Units.Find(csv.Word(row, "unit"))!;
        return new Row(csv.Word(row, "file"), csv.Word(row, "kind"), csv.Word(row, "quantity"), unit.ToSi(csv.Number(row, "value")), csv.Number(row, "plusMinus") * unit.Factor, string.Join(' ', row.Skip(2)));
    }) : []];
}
