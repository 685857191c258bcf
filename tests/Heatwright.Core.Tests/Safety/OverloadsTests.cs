using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Safety;

namespace Heatwright.Tests.Safety;

/// <summary>What would have to stand more than it may, by hand: cells of 2 Ah, so 2 A where nobody states more.</summary>
public sealed class OverloadsTests
{
    private static readonly SafetyTool Tool = new();

    private static IReadOnlyList<Heatwright.Safety.Condition> Of(double mostA, double? cellA = null, double? leadsA = null, int parallel = 1)
    {
        var parts = Tool.Parts.Select(part => part.Id.Name switch
        {
            "cell" when cellA is { } rated => part with { Stated = [.. part.Stated, new(PartQuantities.RatedCurrent, rated, "A", 0, "claimed", "label")] },
            "leads" when leadsA is { } stands => part with { Stated = [.. part.Stated, new(PartQuantities.RatedCurrent, stands, "A", 0, "measured", "by hand")] },
            _ => part,
        }).ToArray();
        return Overloads.Of(Tool.Arrangement with { Parallel = parallel }, Tool.ShelfOf(parts), 7200, mostA);
    }

    [Fact]
    public void A_cell_without_a_rating_may_give_its_capacity_in_an_hour()
    {
        Assert.Empty(Of(2));
        var over = Assert.Single(Of(3.17));
        Assert.Equal("a cell that may give 3.17 A", over.Words);
        Assert.Equal("nobody stated the rated current of 'cell', and until then a cell may give its capacity in an hour, 2 A", over.Because);
        Assert.Empty(Of(3.17, parallel: 2)); // each gives half of it
    }

    [Fact]
    public void A_stated_rating_is_its_limit()
    {
        Assert.Empty(Of(3.17, cellA: 5));
        Assert.Equal("'cell' may give 3 A, claimed", Assert.Single(Of(3.17, cellA: 3)).Because);
    }

    [Fact]
    public void Leads_carry_the_current_of_the_pack_however_many_cells_share_it()
    {
        Assert.Empty(Of(4, cellA: 5, leadsA: 4));
        var over = Assert.Single(Of(4, cellA: 5, leadsA: 3.5, parallel: 2));
        Assert.Equal(("leads that stand 4 A", "of 'leads' 3.5 A is measured"), (over.Words, over.Because));
    }

    [Theory, InlineData(double.NaN), InlineData(0)]
    public void Of_a_current_that_nobody_knows_nothing_is_said(double mostA) => Assert.Empty(Of(mostA, cellA: 1));
}
