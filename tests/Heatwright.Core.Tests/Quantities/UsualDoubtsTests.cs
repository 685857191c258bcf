using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

/// <summary>Doubts of hand and scatter, and the factors that make limits of them.</summary>
public class UsualDoubtsTests
{
    /// <summary>Hand stopwatch ±0.25 s an edge, common practice: an interval has √2·0.25/√3 = 0.2041241 s.</summary>
    [Fact]
    public void A_hand_stopwatch_is_off_at_both_ends()
    {
        Assert.Equal(0.2041241, UsualDoubts.Stopwatch("t").Combined, 5e-8);
        Assert.Equal(0.2500000, UsualDoubts.Stopwatch("t", 0.5).Combined, 5e-8); // by hand: √(0.0416667 + 0.25/12) = 0.25
        Assert.Equal(0.8504, UsualDoubts.OnRamp(4.166, UsualDoubts.Stopwatch("t")).Combined, 5e-5); // 4.166 K/s · 0.2041241 s
    }

    [Fact]
    public void A_note_rounded_to_five_degrees_has_a_doubt_of_1_443() => Assert.Equal(1.443, UsualDoubts.Noted(5, "T").Combined, 5e-4);

    [Fact]
    public void Readings_that_agree_keep_the_doubt_of_their_last_digit() =>
        Assert.Equal(0.00288675, UsualDoubts.Repeated([3.82, 3.82, 3.82], 0.01, "set").Doubts.Combined, 5e-9);

    [Fact]
    public void Five_readings_have_the_scatter_of_their_mean_and_t_limits()
    {
        // By hand: 1, 2, 3, 4, 5: mean 3, s = √2.5, s/√5 = 0.7071068; ν 4, so the cause carries √(4/2) of it.
        var (mean, doubts) = UsualDoubts.Repeated([1, 2, 3, 4, 5], 0.01, "set");
        Assert.Equal(3, mean, 1e-15);
        Assert.Equal(1.0, doubts.Combined, 1e-12);
        Assert.Equal(4, Coverage.EffectiveDegrees(doubts), 1e-12);

        // Draws reach the t limits: 95 % within 2.7764·0.7071 = 1.9632 (t from the table of [jcgm-100] annex G.2).
        var cause = doubts.Causes.Single();
        double[] drawn = [.. Enumerable.Range(0, 20_000).Select(i => Math.Abs(new Draw(3, i).Of(cause) * doubts.By(cause)))];
        Assert.Equal(0.95, drawn.Count(x => x <= 1.9632) / 20_000.0, 0.006); // four standard errors of a share of 20 000
    }

    [Fact]
    public void Two_readings_have_limits_as_wide_as_t_says()
    {
        // By hand: 1 and 3, s/√2 = 1, t95(1) = 12.7062: the bell shape has 12.7062/1.95996.
        Assert.Equal(12.7062 / 1.959964, UsualDoubts.Repeated([1, 3], 0.01, "set").Doubts.Combined, 5e-5);
    }

    [Theory]
    [InlineData(1, 12.7062)]
    [InlineData(2, 4.3027)]
    [InlineData(3, 3.1824)]
    [InlineData(9, 2.2622)]
    [InlineData(20, 2.0860)]
    public void Factors_are_those_of_the_t_table(double degrees, double factor) => Assert.Equal(factor, Coverage.Factor(0.95, degrees), 5e-5); // [jcgm-100] table G.2, more digits by a second program

    /// <summary>By hand: −0.25/√3 at the first press, +0.25/√3 at the second, 0.5/√12 for a display that follows twice a second.</summary>
    [Fact]
    public void A_late_first_press_shortens_and_a_late_second_lengthens()
    {
        var by = UsualDoubts.Stopwatch("t", 0.5).Pushes.ToDictionary(push => push.Cause.Id, push => push.By);
        Assert.Equal(-0.1443376, by["t start press"], 5e-8);
        Assert.Equal(0.1443376, by["t stop press"], 5e-8);
        Assert.Equal(0.1443376, by["t display update"], 5e-8);
        Assert.Equal(1.4433757, Assert.Single(UsualDoubts.Noted(-5, "T").Pushes).By, 5e-8);
        Assert.Equal(0.3, Assert.Single(UsualDoubts.OnRamp(-3, Doubts.From(Cause.Normal("t", CauseGroup.Trial), -0.1)).Pushes).By, 1e-15);
    }

    /// <summary>Three readings have two degrees of freedom, four have three, from where a t spread has a width. By hand: 1, 2, 6: s² = 7, s/√3 = 1.527525; t95(2) = 4.302653.</summary>
    [Fact]
    public void Few_readings_widen_a_bell_shape_and_more_are_a_t_spread()
    {
        var (mean, three) = UsualDoubts.Repeated([1, 2, 6], 0.01, "set");
        Assert.Equal(3, mean, 1e-15);
        Assert.Equal(1.527525 * 4.302653 / 1.959964, Assert.Single(three.Pushes).By, 5e-6);
        Assert.IsType<Shape.Normal>(Assert.Single(three.Causes).Shape);

        // By hand: 1, 1, 1, 5: mean 2, s² = 12/3 = 4, s/√4 = 1, times √(3/1).
        var four = UsualDoubts.Repeated([1, 1, 1, 5], 0.01, "set");
        Assert.Equal(2, four.Mean, 1e-15);
        Assert.Equal(new Shape.StudentT(3), Assert.Single(four.Doubts.Causes).Shape);
        Assert.Equal(1.7320508, Assert.Single(four.Doubts.Pushes).By, 5e-8);
        Assert.Throws<ArgumentException>(() => UsualDoubts.Repeated([1], 0.01, "set"));
        Assert.Equal(3.5, UsualDoubts.Repeated([3.5, 3.5], 0.01, "set").Mean, 1e-15);
    }

    [Theory]
    [InlineData(2.99, 4.3027)]
    [InlineData(double.PositiveInfinity, 1.95996)]
    public void Degrees_are_cut_to_a_whole_number(double degrees, double factor) => Assert.Equal(factor, Coverage.Factor(0.95, degrees), 5e-5);

    [Theory, InlineData(0, 5), InlineData(1, 5), InlineData(double.NaN, 5), InlineData(0.95, 0.99), InlineData(0.95, double.NaN)]
    public void No_factor_exists_for_no_share_or_no_freedom(double share, double degrees) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Coverage.Factor(share, degrees));

    /// <summary>By hand: nothing scattered is known without end; one part keeps its own degrees: 1⁴/(1⁴/1) = 1.</summary>
    [Fact]
    public void What_is_known_well_has_no_end_of_degrees()
    {
        Assert.Equal(double.PositiveInfinity, Coverage.EffectiveDegrees([]));
        Assert.Equal(double.PositiveInfinity, Coverage.EffectiveDegrees([(0, 5)]));
        Assert.Equal(double.PositiveInfinity, Coverage.EffectiveDegrees([(2, double.PositiveInfinity)]));
        Assert.Equal(1, Coverage.EffectiveDegrees([(1, 1)]), 1e-15);
        Assert.Equal(double.PositiveInfinity, Coverage.EffectiveDegrees(Doubts.From(Cause.Normal("n", CauseGroup.Trial), 2)));
    }

    /// <summary>0.03 (ν 5), 0.02 (∞), 0.04 (9): ν 18.83773; worked out by a second program.</summary>
    [Fact]
    public void Effective_degrees_follow_Welch_and_Satterthwaite() =>
        Assert.Equal(18.83773, Coverage.EffectiveDegrees([(0.03, 5), (0.02, double.PositiveInfinity), (0.04, 9)]), 5e-6);

    [Fact]
    public void Two_results_further_apart_than_their_limits_disagree() =>
        Assert.Equal(1.024295, Coverage.Distance(4.98, 0.05, 5.06, 0.06), 5e-7); // by hand: 0.08/√(0.0025 + 0.0036)

    [Fact]
    public void The_distance_is_the_same_both_ways() => Assert.Equal(2, Coverage.Distance(20, 3, 10, 4), 1e-15); // by hand: 10/√(9 + 16)
}
