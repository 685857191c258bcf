using Heatwright.BuildSheets;

namespace Heatwright.Tests.BuildSheets;

/// <summary>Parts lists as an ordering form wants them.</summary>
public sealed class PartsListTests
{
    private static readonly PartsList List = new(
    [
        new(["R1", "R2"], 2, "4.7 kΩ", "0805", "film resistor, 1 %") { Prices = [0.02, 0.015, 0.01], OnHand = 1, Note = "5\" reel" },
        new(["U1"], 1, "", "board", "=controller|board") { Prices = [8, null, 6] },
    ]);

    [Fact]
    public void Refs_with_commas_are_quoted_and_quotes_doubled()
    {
        string[] lines = List.Csv(PartsList.Usual).Split("\r\n");
        Assert.Equal("Refs,Qty,Value,Package,Description,Each at 1,Each at 10,Each at 100,On hand,To buy,Alternates,Note", lines[0]);
        Assert.Equal("\"R1, R2\",2,4.7 kΩ,0805,\"film resistor, 1 %\",0.02,0.015,0.01,1,1,,\"5\"\" reel\"", lines[1]);
        Assert.StartsWith("U1,1,,board,'=controller|board,8.00,,6.00", lines[2], StringComparison.Ordinal);
    }

    [Fact]
    public void The_maker_names_the_columns_and_adds_empty_ones()
    {
        var columns = PartsList.Headings("refs=Designator,qty=Quantity,=Supplier part,note").Value;
        Assert.StartsWith("Designator,Quantity,Supplier part,Note\r\n\"R1, R2\",2,,", List.Csv(columns), StringComparison.Ordinal);
        Assert.Contains("no such field", PartsList.Headings("refs=X,colour=Y").Problems[0].What, StringComparison.Ordinal);
    }

    [Fact]
    public void Markdown_keeps_bars_inside_a_cell() => Assert.Contains("controller\\|board", List.Markdown(PartsList.Usual), StringComparison.Ordinal);

    [Fact]
    public void A_missing_price_is_no_price_of_nothing()
    {
        Assert.Equal(8.04, List.Cost(0)!.Value, 1e-12);
        Assert.Null(List.Cost(1));
        Assert.Equal((0.03, 1), List.CostSoFar(1));
    }
}
