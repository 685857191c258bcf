using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Check values by a second program (Python).</summary>
public class ConverterTests
{
    [Fact]
    public void A_step_of_ten_bits_on_1_1_V()
    {
        Assert.Equal(1.074219e-3, Converter.StepV(1.1, 10), 5.1e-10);
        Assert.Equal(0.4577556, Converter.KelvinPerStep(1.1 / 1024, 56, 41.90551e-6), 2e-7);
        Assert.Equal(0.28867513, Converter.RoundingDoubt(1), 5.1e-9);
    }

    [Fact]
    public void Rounding_doubt_is_the_spread_of_many_rounded_values()
    {
        double sum = 0;
        const int Draws = 200_000;
        for (ulong i = 0; i < Draws; i++)
        {
            double value = Heatwright.Numerics.CounterRandom.Uniform(7, 1, i) * 1000;
            double miss = Math.Round(value) - value;
            sum += miss * miss;
        }

        Assert.Equal(Converter.RoundingDoubt(1), Math.Sqrt(sum / Draws), 0.002);
    }

    [Fact]
    public void A_count_lies_inside_its_step() => Gen.Select(Gen.Double[0, 1.09], Gen.Int[6, 20]).Sample((volts, bits) =>
    {
        int count = Converter.Count(volts, 1.1, bits);
        double step = Converter.StepV(1.1, bits);
        return count * step <= volts + 1e-12 && volts < ((count + 1) * step) + 1e-12;
    });

    [Theory]
    [InlineData(-0.3, 0, true)]
    [InlineData(0.55, 512, false)]
    [InlineData(2.0, 1023, true)]
    public void Beyond_its_ends_a_converter_says_only_at_most_or_at_least(double volts, int count, bool saturated)
    {
        Assert.Equal(count, Converter.Count(volts, 1.1, 10));
        Assert.Equal(saturated, Converter.IsSaturated(count, 10));
    }
}
