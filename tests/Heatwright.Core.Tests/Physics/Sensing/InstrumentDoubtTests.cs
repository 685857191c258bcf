using CsCheck;
using Heatwright.Numerics;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Check values by a second program (Python), or by hand where it is written out.</summary>
public class InstrumentDoubtTests
{
    [Fact]
    public void A_meter_of_half_a_percent_and_two_digits()
    {
        double limit = InstrumentDoubt.Limit(0.005, 4.20, 2, 0.01);
        Assert.Equal(0.041, limit, 1e-12);
        Assert.Equal(0.02367136, InstrumentDoubt.OfLimit(limit), 5.1e-9);
        Assert.Equal(0.01674316, InstrumentDoubt.OfSplitLimit(0.005, 4.20, 2, 0.01), 5.1e-9);
    }

    [Fact]
    public void A_power_and_a_resistance_from_the_same_two_meters()
    {
        double voltsDoubt = InstrumentDoubt.OfLimit(InstrumentDoubt.Limit(0.005, 4.98, 2, 0.01));
        double ampsDoubt = InstrumentDoubt.OfLimit(InstrumentDoubt.Limit(0.012, 1.27, 3, 0.01));
        Assert.Equal(0.02592303, voltsDoubt, 5.1e-9);
        Assert.Equal(0.02611933, ampsDoubt, 5.1e-9);
        Assert.Equal(0.1341759, InstrumentDoubt.OfPowerW(4.98, voltsDoubt, 1.27, ampsDoubt), 5.1e-8);
        Assert.Equal(0.08318925, InstrumentDoubt.OfResistanceOhm(4.98, voltsDoubt, 1.27, ampsDoubt), 5.1e-9);
    }

    /// <summary>A second way: volts and amps drawn, power and resistance correlated.</summary>
    [Fact]
    public void Power_and_resistance_of_one_reading_are_correlated()
    {
        const int Draws = 200_000;
        const double V = 4.98, I = 1.27, UV = 0.026, UI = 0.026;
        double sumPP = 0, sumRR = 0, sumPR = 0;
        for (ulong k = 0; k < Draws; k++)
        {
            double volts = V + (UV * Quantiles.Normal(CounterRandom.Uniform(3, 1, k))), amps = I + (UI * Quantiles.Normal(CounterRandom.Uniform(3, 2, k)));
            double p = (volts * amps) - (V * I), r = (volts / amps) - (V / I);
            (sumPP, sumRR, sumPR) = (sumPP + (p * p), sumRR + (r * r), sumPR + (p * r));
        }

        Assert.Equal(sumPR / Math.Sqrt(sumPP * sumRR), InstrumentDoubt.PowerResistanceCorrelation(V, UV, I, UI), 0.01);
        Assert.True(InstrumentDoubt.PowerResistanceCorrelation(V, UV, I, UI) < -0.8);
    }

    [Theory]
    [InlineData(1, 0.2887)]
    [InlineData(5, 1.443)]
    public void A_rounded_note_is_doubtful_by_its_step(double step, double doubt) => Assert.Equal(doubt, InstrumentDoubt.OfRounding(step), 5.1e-4);

    [Fact]
    public void A_hand_stopwatch_is_good_to_a_fifth_of_a_second()
    {
        Assert.Equal(0.2041241, InstrumentDoubt.OfStopwatchS(), 5.1e-8);
        // By hand: √(0.041667 + 0.25/12) = 0.25 s with a meter that updates twice a second.
        Assert.Equal(0.25, InstrumentDoubt.OfStopwatchS(0.25, 0.5), 1e-9);
        Assert.Equal(0.6, InstrumentDoubt.OnRampK(-3, 0.2), 1e-12);
        Assert.Equal(5 / Math.Sqrt(3), InstrumentDoubt.OfAbout(5), 1e-12);
    }

    [Fact]
    public void Repeats_narrow_the_mean_but_a_frozen_digit_does_not()
    {
        // By hand: 10, 11, 12: s = 1, over √3.
        Assert.Equal(1 / Math.Sqrt(3), InstrumentDoubt.OfMean([10, 11, 12], 0.1), 1e-12);
        Assert.Equal(0.1 / Math.Sqrt(12), InstrumentDoubt.OfMean([5.2, 5.2, 5.2], 0.1), 1e-12);
    }

    [Fact]
    public void Degrees_of_freedom_combine()
    {
        (double, double)[] parts = [(0.03, 5), (0.02, double.PositiveInfinity), (0.04, 9)];
        Assert.Equal(18.83773, InstrumentDoubt.EffectiveFreedom(parts), 5.1e-6);
        Assert.Equal(0.05385165, Math.Sqrt(parts.Sum(part => part.Item1 * part.Item1)), 5.1e-9);
        Assert.Equal(2.100922, InstrumentDoubt.CoverageFactor95(18.83773), 5.1e-7);
        Assert.Equal(double.PositiveInfinity, InstrumentDoubt.EffectiveFreedom([(0.1, double.PositiveInfinity)]));
    }

    /// <summary>[jcgm-100] table G.2, from memory: t for 95 %.</summary>
    [Theory]
    [InlineData(1, 12.7062)]
    [InlineData(2, 4.3027)]
    [InlineData(3, 3.1824)]
    [InlineData(4, 2.7764)]
    [InlineData(5, 2.5706)]
    [InlineData(9, 2.2622)]
    [InlineData(20, 2.0860)]
    [InlineData(double.PositiveInfinity, 1.9600)]
    public void Coverage_factors_are_those_of_Students_table(double freedom, double factor) =>
        Assert.Equal(factor, InstrumentDoubt.CoverageFactor95(freedom), 5.1e-5);

    /// <summary>[grubbs-1969] two-sided 5 %, from memory.</summary>
    [Theory]
    [InlineData(6, 1.8871)]
    [InlineData(10, 2.2900)]
    public void Grubbs_limits_agree(int n, double limit) => Assert.Equal(limit, InstrumentDoubt.GrubbsLimit(n), 5.1e-5);

    [Fact]
    public void Two_instruments_disagree_by_a_little()
    {
        Assert.Equal(1.024295, InstrumentDoubt.NormalisedError(4.98, 0.05, 5.06, 0.06), 5.1e-7);
        Assert.True(ReadingChecks.InstrumentsDisagree(4.98, 0.05, 5.06, 0.06));
        Assert.False(ReadingChecks.InstrumentsDisagree(4.98, 0.05, 5.05, 0.06));
    }

    /// <summary>By hand: 1.7 A through 60 mΩ is 102 mV, 2.8 % of 3.7 V (20 to 60 mV/A: common practice).</summary>
    [Fact]
    public void An_ammeter_takes_volts_away() => Assert.Equal(0.028, InstrumentDoubt.BurdenV(1.7, 0.060) / 3.7, 5e-4);

    [Fact]
    public void The_split_reading_of_a_specification_is_never_the_larger() =>
        Gen.Select(Gen.Double[0, 0.05], Gen.Double[-100, 100], Gen.Double[0, 10], Gen.Double[1e-4, 1]).Sample((share, reading, digits, digit) =>
            InstrumentDoubt.OfSplitLimit(share, reading, digits, digit) <= InstrumentDoubt.OfLimit(InstrumentDoubt.Limit(share, reading, digits, digit)) + 1e-15);
}
