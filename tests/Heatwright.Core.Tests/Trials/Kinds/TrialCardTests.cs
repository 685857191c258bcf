using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Every kind of bench test is whole.</summary>
public class TrialCardTests
{
    public static TheoryData<string> Names => [.. TrialCard.All.Select(card => card.Name)];

    [Theory, MemberData(nameof(Names))]
    public void A_kind_has_purpose_recipe_columns_and_a_fit(string name)
    {
        var card = TrialCard.Find(name)!;
        Assert.True(card.Purpose[^1] is '.' or '?', card.Purpose);
        Assert.Contains(card.Columns, column => column.Needed || card.Columns.Count > 1);
        Assert.All(new[] { card.Recipe.Picture, card.Recipe.OneMeter, card.Recipe.TwoMeters, card.Recipe.Ranges, card.Recipe.Loads, card.Recipe.Stops, card.Recipe.Rests }, Assert.NotEmpty);
        Assert.Contains(name, TrialFits.Kinds);
        Assert.NotEmpty(card.Finds);
        Assert.True(card.Fewest >= 1);
        Assert.All(card.Columns.Where(column => column.Usual.Length > 0), column => Assert.True(Heatwright.Quantities.AccuracySpec.Read(column.Usual).IsFine));
    }

    /// <summary>Whoever empties a cell is told a number to stop at: common practice for a cell without a sheet.</summary>
    [Theory, InlineData("pulse"), InlineData("two-load-sag"), InlineData("open-volts"), InlineData("converter-collapse")]
    public void A_red_stop_of_a_cell_has_numbers(string kind)
    {
        string stop = Assert.Single(TrialCard.Find(kind)!.Recipe.Stops, one => one.Contains("lowest volts", StringComparison.Ordinal));
        Assert.Contains("3.0 V a lithium-ion cell", stop, StringComparison.Ordinal);
        Assert.Contains("2.5 V a LiFePO4 cell", stop, StringComparison.Ordinal);
        Assert.EndsWith("common practice, no source.", stop, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_fit_belongs_to_a_kind_and_names_are_used_once()
    {
        Assert.Equal(TrialFits.Kinds.Order(StringComparer.Ordinal), TrialCard.All.Select(card => card.Name).Order(StringComparer.Ordinal));
        Assert.Equal(TrialCard.All.Count, TrialCard.All.Select(card => card.Name).Distinct().Count());
    }

    /// <summary>By hand: 12 V and 40 W mean 144/40 = 3.6 Ω.</summary>
    [Fact]
    public void The_claim_tells_what_to_expect() =>
        Assert.Equal(3.6, Expectations.Of(TrialCard.Find("cold-ohms")!, new Dictionary<string, double> { ["label volts"] = 12, ["label watts"] = 40 }).Single().Value, 1e-12);

    [Theory, MemberData(nameof(Names))]
    public void Without_readings_a_kind_says_what_is_missing(string name)
    {
        var answer = TrialFits.Run(name, new TrialInput([], new Dictionary<string, Heatwright.Quantities.Estimate>(), new Dictionary<string, MeterSaid>()));
        Assert.False(answer.IsFine);
        Assert.All(answer.Problems, problem => Assert.All(new[] { problem.What, problem.Where, problem.Value, problem.Limit, problem.Next }, Assert.NotEmpty));
    }
}
