using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Worked case by a second program (Python): type K, tip 450 °C, cold end 10 °C, offset 0.15 mV, reference 1.1 V less 1 %.</summary>
public class GainChoiceTests
{
    private static readonly double FullScaleV = ColdJunction.VoltageV(Thermocouples.TypeK, 450, 10);
    private static readonly double Allowed = GainChoice.LargestAllowed(FullScaleV, 0.15e-3, 1.1 * 0.99);

    [Fact]
    public void The_largest_gain_follows_from_the_hottest_tip_and_the_lowest_reference()
    {
        Assert.Equal(18.11895e-3, FullScaleV, 5.1e-9);
        Assert.Equal(59.60935, Allowed, 5.1e-6);
    }

    [Theory]
    [InlineData("E24", 0.01, 58.4468, 0.99997, 571)]
    [InlineData("E96", 0.01, 58.4453, 0.99994, 8599)]
    [InlineData("E24", 0.001, 59.0645, 0.99281, 573)]
    [InlineData("E96", 0.001, 58.8571, 0.98932, 8688)]
    public void The_best_pair_of_a_series_is_found_among_all(string series, double tolerance, double gain, double use, int feasible)
    {
        var pairs = Pairs(series, tolerance);
        Assert.Equal(feasible, pairs.Count);
        Assert.Equal(gain, pairs[0].Gain, 5.1e-5);
        Assert.Equal(use, pairs[0].Use, 5.1e-6);
    }

    [Theory]
    [InlineData("E24", 0.01, 270e3, 4.7e3)]
    [InlineData("E96", 0.01, 78.7e3, 1.37e3)]
    [InlineData("E24", 0.001, 36e3, 620)]
    [InlineData("E96", 0.001, 162e3, 2.8e3)]
    public void The_pair_named_makes_the_best_gain(string series, double tolerance, double feedback, double ground) =>
        Assert.Contains(Pairs(series, tolerance), pair => pair.FeedbackOhm == feedback && pair.GroundOhm == ground
            && Math.Abs(pair.Gain - Pairs(series, tolerance)[0].Gain) < 1e-9);

    [Fact]
    public void Headroom_and_the_limit_of_the_parallel_pair_shrink_the_choice()
    {
        Assert.Equal(Allowed * 0.95, GainChoice.LargestAllowed(FullScaleV, 0.15e-3, 1.089, 0.95), 1e-9);
        var quiet = GainChoice.Feasible(Values("E24", 10e3, 330e3), Values("E24", 470, 4.7e3), 0.01, Allowed, mostParallelOhm: 1000);
        Assert.NotEmpty(quiet);
        Assert.All(quiet, pair => Assert.True(1 / ((1 / pair.FeedbackOhm) + (1 / pair.GroundOhm)) <= 1000));
    }

    [Fact]
    public void No_chosen_pair_ever_clips() => Assert.All(Pairs("E24", 0.01), pair => Assert.True(pair.LargestGain * (FullScaleV + 0.15e-3) <= 1.089 + 1e-12));

    /// <summary>9 kΩ over 1 kΩ, exact parts: a gain of 10, 900 Ω in parallel.</summary>
    [Fact]
    public void A_pair_exactly_at_its_limits_may_be_used()
    {
        Assert.Equal(new GainPair(9000, 1000, 10, 10, 1), Assert.Single(GainChoice.Feasible([9000], [1000], 0, 10, 900)));
        Assert.Empty(GainChoice.Feasible([9000], [1000], 0, 9.99, 900));
        Assert.Empty(GainChoice.Feasible([9000], [1000], 0, 10, 899));
        // Off by 10 %: 1 + 9900/900 = 12, half of 24.
        GainPair loose = Assert.Single(GainChoice.Feasible([9000], [1000], 0.1, 24));
        Assert.Equal((12, 0.5), (Math.Round(loose.LargestGain, 9), Math.Round(loose.Use, 9)));
        Assert.Equal(50, GainChoice.LargestAllowed(0.018, 0.002, 2, 0.5), 1e-9);
    }

    /// <summary>Equal gains stand in rising order of the ground resistor, also where a rounding parts them; others by falling gain.</summary>
    [Fact]
    public void Larger_gains_first_and_equal_ones_by_the_ground_resistor()
    {
        IReadOnlyList<GainPair> pairs = GainChoice.Feasible([270e3, 27e3, 100e3], [4.7e3, 470], 0, 1000);
        Assert.Equal([470, 470, 470, 4700, 4700, 4700], pairs.Select(pair => pair.GroundOhm));      // 575, 214, 58.4, 58.4, 22.3, 6.7
        Assert.Equal([270e3, 100e3, 27e3, 270e3, 100e3, 27e3], pairs.Select(pair => pair.FeedbackOhm));
    }

    private static IReadOnlyList<GainPair> Pairs(string series, double tolerance) =>
        GainChoice.Feasible(Values(series, 10e3, 330e3), Values(series, 470, 4.7e3), tolerance, Allowed);

    private static IReadOnlyList<double> Values(string series, double low, double high) => PreferredNumbers.Between(series, low, high);
}
