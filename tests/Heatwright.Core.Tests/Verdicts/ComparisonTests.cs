using Heatwright.Arrangements;
using Heatwright.Predictions;
using Heatwright.Verdicts;
using static Heatwright.Tests.Verdicts.WrittenVerdict;

namespace Heatwright.Tests.Verdicts;

/// <summary>Comparisons of verdicts written by hand.</summary>
public sealed class ComparisonTests
{
    private static readonly Requirement Must = Line("must"), Light = Line("light", must: false, weight: 1), Heavy = Line("heavy", must: false, weight: 3);

    private static readonly Brief Brief = new("", "tip", "cut", 20, [Light, Must, Heavy]);

    private static Comparison Compare(params ArrangementVerdict[] verdicts) => Comparison.Of(Brief, verdicts, new Shelf([], []));

    private static Contender One(params RequirementVerdict[] lines) => Compare(Of("A", VerdictWord.Go, lines)).Ranked[0];

    [Fact]
    public void Musts_stand_first() => Assert.Equal(["must", "light", "heavy"], Compare().Lines.Select(line => line.Id));

    /// <summary>By hand: weights 1 and 3; kept 0.5 and 0.9: (0.5 + 2.7)/4 = 0.8. With the heavy one unknown: 0.5 of what is known, 0.5/4 to 3.5/4.</summary>
    [Fact]
    public void Value_is_the_weighted_share_of_the_wants()
    {
        var both = One(Verdict(Light, VerdictWord.Go, 0.5), Verdict(Heavy, VerdictWord.Go, 0.9), Verdict(Must, VerdictWord.Go, 0.1));
        Assert.Equal((0.8, 0.8, 0.8), (both.Value, both.ValueLow, both.ValueHigh), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) + Math.Abs(a.Item3 - b.Item3) < 1e-9);
        var half = One(Verdict(Light, VerdictWord.Go, 0.5), Verdict(Heavy, VerdictWord.Go));
        Assert.Equal((0.5, 0.125, 0.875), (half.Value, half.ValueLow, half.ValueHigh));
        var none = One(Verdict(Heavy, VerdictWord.Go));
        Assert.Equal((double.NaN, 0, 1), (none.Value, none.ValueLow, none.ValueHigh));
        var nothing = One(Verdict(Line("free", must: false, weight: 0), VerdictWord.Go, 1));
        Assert.Equal((double.NaN, double.NaN, double.NaN), (nothing.Value, nothing.ValueLow, nothing.ValueHigh));
    }

    /// <summary>By hand: 0.5 · 0.4 where only chances are known.</summary>
    [Fact]
    public void Chances_of_musts_that_no_run_tells_are_multiplied()
    {
        Assert.Equal(0.2, One(Verdict(Must, VerdictWord.Go, 0.5), Verdict(Line("other"), VerdictWord.Go, 0.4), Verdict(Line("unknown"), VerdictWord.Go), Verdict(Light, VerdictWord.Go, 0.1)).Odds, 1e-12);
        Assert.True(double.IsNaN(One(Verdict(Light, VerdictWord.Go, 0.1)).Odds));
    }

    [Fact]
    public void The_word_ranks_first_then_value_then_odds_then_the_letter()
    {
        ArrangementVerdict Tool(string letter, VerdictWord word, double? want, double? must) => Of(letter, word, [Verdict(Light, VerdictWord.Go, want), Verdict(Must, word, must)]);
        var ranked = Compare(Tool("F", VerdictWord.NoGo, 1, 1), Tool("E", VerdictWord.Go, null, 0.9), Tool("D", VerdictWord.Go, 0.5, null), Tool("C", VerdictWord.Go, 0.5, 0.6), Tool("B", VerdictWord.Go, 0.5, 0.7), Tool("A", VerdictWord.Go, 0.5, 0.6), Tool("G", VerdictWord.Go, 0.0, 0.6)).Ranked;
        Assert.Equal("BACDGEF", string.Concat(ranked.Select(one => one.Verdict.Arrangement.Letter)));
    }

    /// <summary>By hand: cell, contacts, switch, leads, tip, handle are six parts; of 3 times 2 cells there are six.</summary>
    [Fact]
    public void Cells_are_counted_singly() => Assert.Equal(11, Compare(Of("A", VerdictWord.Go, [], series: 3, parallel: 2)).Ranked[0].PartsCount);

    [Fact]
    public void The_must_that_fails_most_kills()
    {
        Assert.Equal("", One(Verdict(Must, VerdictWord.NeedMoreReadings, 0.2), Verdict(Light, VerdictWord.NoGo, 0)).Kills);
        Assert.Equal("worse holds: worse because", One(Verdict(Must, VerdictWord.NoGo, 0.04), Verdict(Line("worse"), VerdictWord.NoGo, 0.01)).Kills);
        Assert.Equal("unknown holds: unknown because", One(Verdict(Must, VerdictWord.NoGo, 0.04), Verdict(Line("unknown"), VerdictWord.NoGo)).Kills);
    }

    /// <summary>By hand: of ten draws one beats the other in nine; where it is the other way round, in one.</summary>
    [Fact]
    public void Nine_of_ten_draws_are_a_clear_win()
    {
        double[] low = [1, 1, 1, 1, 1, 1, 1, 1, 1, 9], high = [2, 2, 2, 2, 2, 2, 2, 2, 2, 2];
        var most = Line("most", atMost: true);
        var duels = Compare(Of("A", VerdictWord.Go, [Verdict(Must, VerdictWord.Go, 1, low), Verdict(most, VerdictWord.Go, 1, low)]), Of("B", VerdictWord.Go, [Verdict(Must, VerdictWord.Go, 1, high), Verdict(most, VerdictWord.Go, 1, high)])).Duels;
        Assert.Equal([new Beats("A", "B", "most", 0.9), new("B", "A", "must", 0.9)], duels);
    }

    [Fact]
    public void Eight_of_ten_draws_equal_draws_and_unknown_lines_are_no_win()
    {
        double[] low = [1, 1, 1, 1, 1, 1, 1, 1, 9, 9], high = [2, 2, 2, 2, 2, 2, 2, 2, 2, 2];
        Assert.Empty(Compare(Of("A", VerdictWord.Go, [Verdict(Must, VerdictWord.Go, 1, low)]), Of("B", VerdictWord.Go, [Verdict(Must, VerdictWord.Go, 1, high)])).Duels);
        Assert.Empty(Compare(Of("A", VerdictWord.Go, [Verdict(Must, VerdictWord.Go, 1, high)]), Of("B", VerdictWord.Go, [Verdict(Must, VerdictWord.Go, 1, high)])).Duels);
        Assert.Empty(Compare(Of("A", VerdictWord.Go, [Verdict(Must, VerdictWord.Go, 1, high)]), Of("B", VerdictWord.Go, [Verdict(Must, VerdictWord.Go, 1)])).Duels);
        Assert.Empty(Compare(Of("A", VerdictWord.Go, [Verdict(Must, VerdictWord.Go, 1, high)]), Of("B", VerdictWord.Go, [])).Duels);
    }

    /// <summary>A tool of 4 W lasts longest and stays coolest since it never gets hot: on what the run tells it wins nothing, on its price it does.</summary>
    [Fact]
    public void What_never_gets_hot_wins_nothing_by_staying_cold()
    {
        var hotWork = Brief with { Duty = new(320, 20, 4, 5, 220, 0.2, 0, 40, 0, "") };
        var grip = Line("grip", RequirementQuantity.GripTemperature, 45, atMost: true, unit: "°C");
        var cost = Line("cost", RequirementQuantity.PartsCost, 30, atMost: true, unit: "money");
        static ArrangementVerdict Tool(string letter, double warmUpS, double runTime, double gripC, double price, Requirement grip, Requirement cost)
        {
            Outcome outcome = new(warmUpS, 0, gripC, 30, 60 * runTime, Heatwright.Plant.StopReason.Empty, default, 0);
            return Of(letter, VerdictWord.Go, [Verdict(Must, VerdictWord.Go, 1, runTime, runTime), Verdict(grip, VerdictWord.Go, 1, gripC, gripC), Verdict(cost, VerdictWord.Go, 1, price, price)],
                prediction: new(WrittenVerdict.Tool(letter), null!, null!, [outcome, outcome], []));
        }

        var duels = Comparison.Of(hotWork, [Tool("A", 20, 30, 40, 25, grip, cost), Tool("B", double.PositiveInfinity, 200, 25, 5, grip, cost)], new Shelf([], [])).Duels;
        Assert.Equal([new Beats("B", "A", "cost", 1)], duels);
        Assert.Equal(3, Comparison.Of(hotWork, [Tool("A", 20, 30, 40, 25, grip, cost), Tool("B", 21, 200, 25, 5, grip, cost)], new Shelf([], [])).Duels.Count);
    }

    /// <summary>80.05 min against 80.00 where the last piece of the work ends both: the longer one only warmed up more slowly. Where one runs empty, it is beaten.</summary>
    [Theory, InlineData(Heatwright.Plant.StopReason.WorkDone, 80.00, 0), InlineData(Heatwright.Plant.StopReason.TimeOver, 80.00, 0), InlineData(Heatwright.Plant.StopReason.Empty, 60.00, 1)]
    public void Where_the_work_ends_both_runs_neither_lasts_longer(Heatwright.Plant.StopReason other, double minutes, int wins)
    {
        ArrangementVerdict Tool(string letter, double lasts, Heatwright.Plant.StopReason stop)
        {
            Outcome outcome = new(4, 400, 40, 30, 60 * lasts, stop, default, 0.2);
            return Of(letter, VerdictWord.Go, [Verdict(Must, VerdictWord.Go, 1, lasts, lasts)], prediction: new(WrittenVerdict.Tool(letter), null!, null!, [outcome, outcome], []));
        }

        Assert.Equal(wins, Compare(Tool("C", 80.05, Heatwright.Plant.StopReason.WorkDone), Tool("A", minutes, other)).Duels.Count);
    }

    [Fact]
    public void Draws_are_compared_as_far_as_both_have_them() =>
        Assert.Equal([new Beats("A", "B", "must", 1)], Compare(Of("A", VerdictWord.Go, [Verdict(Must, VerdictWord.Go, 1, 3, 3)]), Of("B", VerdictWord.Go, [Verdict(Must, VerdictWord.Go, 1, 1, 1, 5, 5)])).Duels);
}
