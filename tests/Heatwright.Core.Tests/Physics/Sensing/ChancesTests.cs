using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Check values by a second program (Python).</summary>
public class ChancesTests
{
    [Fact]
    public void A_best_value_of_62_against_60()
    {
        Assert.Equal(0.6914625, Chances.AtLeast(62, 4, 60), 5.1e-8);
        Assert.Equal(0.6783350, Chances.AtLeast(62, 4, 60, freedom: 4), 5.1e-8);
        Assert.Equal(0.7339144, Chances.FirstIsLarger(62, 4, 58, 5), 5.1e-8);
    }

    [Fact]
    public void A_guard_band_of_95_percent_is_1_64_doubts_wide() => Assert.Equal(62 - (1.644854 * 4), Chances.GuardedLow(62, 4), 5e-6);

    [Fact]
    public void At_the_guarded_limit_the_chance_is_the_coverage() => Gen.Select(Gen.Double[-100, 100], Gen.Double[0.1, 10], Gen.Double[0.6, 0.99]).Sample((mean, doubt, coverage) =>
        Math.Abs(Chances.AtLeast(mean, doubt, Chances.GuardedLow(mean, doubt, coverage)) - coverage) < 1e-9);

    [Fact]
    public void A_chance_and_its_opposite_make_one() => Gen.Select(Gen.Double[-5, 5], Gen.Double[0.1, 3], Gen.Double[-5, 5]).Sample((mean, doubt, limit) =>
        Math.Abs(Chances.AtLeast(mean, doubt, limit) + Chances.AtLeast(-mean, doubt, -limit) - 1) < 1e-12);

    [Fact]
    public void Few_readings_are_less_sure_than_many() => Gen.Select(Gen.Double[0.1, 3], Gen.Double[1, 30]).Sample((margin, freedom) =>
        Chances.AtLeast(margin, 1, 0, freedom) < Chances.AtLeast(margin, 1, 0));

    [Fact]
    public void Few_readings_in_plain_numbers_are_the_same() => Assert.Equal(0.6783350, Chances.AtLeastFromFew(62, 4, 60, 4), 5.1e-8);
}
