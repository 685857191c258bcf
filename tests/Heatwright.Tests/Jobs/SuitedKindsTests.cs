using Heatwright.Jobs.Trials;
using Heatwright.Parts;
using Heatwright.Trials;

namespace Heatwright.Tests.Jobs;

/// <summary>Which bench test is for which part, and the paper that goes with it.</summary>
public sealed class SuitedKindsTests
{
    [Fact]
    public void Every_kind_of_test_says_which_parts_it_is_for_and_every_part_but_a_board_has_one_of_its_own()
    {
        string[] anyPart = ["unknown-part", "incoming", "own-line"];
        Assert.All(TrialCard.All, card => Assert.Equal(anyPart.Contains(card.Name), SuitedKinds.Of(card).Count == 0));
        Assert.All(Enum.GetValues<PartKind>(), kind => Assert.True(SuitedKinds.For(kind).Count > anyPart.Length, kind.ToString()));
    }

    [Theory]
    [InlineData("discharge", PartKind.Cell, true)]
    [InlineData("discharge", PartKind.Handle, false)]
    [InlineData("hot-ohms", PartKind.Heater, true)]
    [InlineData("hot-ohms", PartKind.Cell, false)]
    [InlineData("grip-rise", PartKind.Handle, true)]
    [InlineData("two-point-drop", PartKind.Leads, true)]
    [InlineData("incoming", PartKind.Controller, true)]
    public void A_test_suits_what_it_is_done_on(string kind, PartKind part, bool suits)
    {
        Assert.Equal(suits, SuitedKinds.Suits(TrialKinds.CardOf(kind)!, part));
        Assert.Equal(suits, SuitedKinds.For(part).Contains(kind));
    }

    [Fact]
    public void A_reading_sheet_has_as_many_rows_as_leave_it_on_one_page()
    {
        var cards = TrialCard.All.Select(card => RecipeView.Of(card, new Dictionary<string, double>())).ToArray();
        Assert.All(cards, view => Assert.InRange(TrialPaper.Boxes(view), 10, 24));
        string sheet = TrialPaper.Sheet(cards[0]);
        // The heading's row and one for each box.
        Assert.Equal(TrialPaper.Boxes(cards[0]) + 1, sheet.Split("<tr>").Length - 1);
        Assert.Contains("<style>", sheet, StringComparison.Ordinal);
    }
}
