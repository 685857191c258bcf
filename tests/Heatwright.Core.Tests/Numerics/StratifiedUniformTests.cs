using Heatwright.Numerics;

namespace Heatwright.Tests.Numerics;

/// <summary>Even draws: one in each part by the definition of a Latin hypercube (McKay, Beckman and Conover 1979); independence and gain are counted.</summary>
public class StratifiedUniformTests
{
    [Theory]
    [InlineData(1UL, 7UL)]
    [InlineData(20251125UL, 99UL)]
    [InlineData(5UL, 1UL)]
    public void Every_256_in_a_row_have_one_number_in_each_part(ulong seed, ulong stream)
    {
        foreach (uint run in (uint[])[0, 1, 5, 400])
        {
            int[] seen = new int[256];
            for (uint i = 0; i < 256; i++)
            {
                double at = StratifiedUniform.At(seed, stream, (256 * run) + i);
                Assert.InRange(at, double.Epsilon, 1 - 1e-16);
                seen[(int)(at * 256)]++;
            }

            Assert.All(seen, count => Assert.Equal(1, count));
        }
    }

    [Fact]
    public void Streams_and_seeds_know_nothing_of_each_other()
    {
        // Chi-squared of 8 by 8 boxes with even margins: 49 degrees, of which 99.9 of 100 lie under 85.35 (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4).
        int over = 0;
        for (ulong pair = 0; pair < 200; pair++)
        {
            int[] boxes = new int[64];
            for (uint i = 0; i < 512; i++)
            {
                double x = StratifiedUniform.At(1, 2 * pair, i), y = pair < 100 ? StratifiedUniform.At(1, (2 * pair) + 1, i) : StratifiedUniform.At(2, 2 * pair, i);
                boxes[((int)(8 * x) * 8) + (int)(8 * y)]++;
            }

            over += boxes.Sum(count => (count - 8.0) * (count - 8.0) / 8) > 85.35 ? 1 : 0;
        }

        Assert.InRange(over, 0, 3);
    }

    /// <summary>The mean of a sum of ten causes through a curved law: plain draws err as 1/√n says, these by less than a third of it.</summary>
    [Fact]
    public void Means_settle_with_a_tenth_of_the_draws()
    {
        const int draws = 256, seeds = 60;
        double even = 0, plain = 0;
        for (ulong seed = 0; seed < seeds; seed++)
        {
            even += Math.Pow(Mean((stream, i) => StratifiedUniform.At(seed, stream, i)), 2) / seeds;
            plain += Math.Pow(Mean((stream, i) => CounterRandom.Uniform(seed, stream, i)), 2) / seeds;
        }

        Assert.InRange(Math.Sqrt(plain), 0.04, 0.09); // by hand: standard deviation of the sum of ten normal causes over √256, √10/16 = 0.198, times the slope 0.3
        Assert.True(Math.Sqrt(even) < Math.Sqrt(plain) / 3, $"{Math.Sqrt(even)} against {Math.Sqrt(plain)}");

        double Mean(Func<ulong, uint, double> at)
        {
            double sum = 0;
            for (uint i = 0; i < draws; i++)
            {
                double of = Enumerable.Range(0, 10).Sum(stream => Quantiles.Normal(at((ulong)stream, i)));
                sum += (0.3 * of) + (0.005 * ((of * of) - 10));
            }

            return sum / draws;
        }
    }
}
