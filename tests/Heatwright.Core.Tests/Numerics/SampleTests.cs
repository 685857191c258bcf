using CsCheck;
using Heatwright.Numerics;

namespace Heatwright.Tests.Numerics;

public class SampleTests
{
    /// <summary>Neumaier's own example: plain summing loses the 2, Kahan's form too.</summary>
    [Fact]
    public void What_rounding_drops_is_kept() => Assert.Equal(2, CompensatedSum.Of([1, 1e100, 1, -1e100]));

    [Fact]
    public void Products_are_summed_without_rounding_them_first() =>
        // By hand: (1 + 2⁻³⁰)² − 1 − 2⁻²⁹ = 2⁻⁶⁰; the rounded product has lost it.
        Assert.Equal(Math.ScaleB(1, -60), CompensatedSum.OfProducts([1 + Math.ScaleB(1, -30), -1, -Math.ScaleB(1, -29)], [1 + Math.ScaleB(1, -30), 1, 1]));

    [Fact]
    public void A_sum_in_any_order_is_that_of_exact_integers() => Gen.Long[-(1L << 52), 1L << 52].Array[1, 50].Sample(terms =>
    {
        Int128 exact = 0;
        foreach (long term in terms)
        {
            exact += term;
        }

        Assert.Equal((double)exact, CompensatedSum.Of([.. terms.Select(term => (double)term)]));
    });

    [Fact]
    public void Infinite_and_missing_terms_stay_visible()
    {
        Assert.Equal(double.PositiveInfinity, CompensatedSum.Of([1, double.PositiveInfinity, 2]));
        Assert.True(double.IsNaN(CompensatedSum.Of([1, double.NaN, 2])));
    }

    [Fact]
    public void Too_few_readings_have_no_statistics()
    {
        Assert.True(double.IsNaN(Sample.Mean([])));
        Assert.True(double.IsNaN(Sample.StandardDeviation([1])));
        Assert.True(double.IsNaN(Sample.Median([])));
    }

    /// <summary>By hand: values 1 2 3 4 100, median 3, offsets 2 1 0 1 97, their median 1; 97·0.67449 = 65.4.</summary>
    [Fact]
    public void One_reading_far_off_is_seen_and_does_not_hide_itself()
    {
        double[] scores = OutlierScores.Of([1, 2, 3, 4, 100]);
        Assert.Equal(65.4255, scores[4], 1e-3);
        Assert.Equal(-1.34898, scores[0], 1e-4);
        Assert.Single(scores, score => Math.Abs(score) > OutlierScores.Suspicious);
    }

    /// <summary>By hand: median 5, offsets 0 (nine times) and 1, mean 0.1; 1/(0.1·√(π/2)) = 7.979.</summary>
    [Fact]
    public void One_odd_reading_among_equal_ones_is_seen_too()
    {
        double[] scores = OutlierScores.Of([5, 5, 5, 5, 6, 5, 5, 5, 5, 5]);
        Assert.Equal(7.979, scores[4], 5e-4);
        Assert.Equal(0, OutlierScores.Of([5, 5, 5])[0]);
    }

    /// <summary>By hand, straight line: 1/n + (x − x̄)²/Σ(x − x̄)²; x = 0 1 2 10: x̄ 3.25, Σ 62.75.</summary>
    [Fact]
    public void A_lonely_reading_pulls_its_own_fit()
    {
        double[] leverages = LinearLeastSquares.Leverages(new double[,] { { 1, 0 }, { 1, 1 }, { 1, 2 }, { 1, 10 } });
        Assert.Equal(0.25 + (6.75 * 6.75 / 62.75), leverages[3], 1e-12);
        Assert.Equal(0.25 + (1.25 * 1.25 / 62.75), leverages[2], 1e-12);
    }

    [Fact]
    public void The_best_coefficients_without_a_negative_one_are_the_best_of_all_subsets() =>
        Gen.Int[1, 4].SelectMany(n => Gen.Select(Gen.Double[-3, 3].Array[8 * n], Gen.Double[-10, 10].Array[8], Gen.Const(n))).Sample((slopes, readings, n) =>
        {
            double[,] Columns(int[] chosen)
            {
                var design = new double[8, chosen.Length];
                for (int i = 0; i < 8; i++)
                {
                    for (int k = 0; k < chosen.Length; k++)
                    {
                        design[i, k] = slopes[(i * n) + chosen[k]];
                    }
                }

                return design;
            }

            // Second way: every subset of columns freely fitted; the best of those without a negative coefficient.
            double best = readings.Sum(reading => reading * reading);
            for (int mask = 1; mask < 1 << n; mask++)
            {
                var free = LinearLeastSquares.Fit(Columns([.. Enumerable.Range(0, n).Where(j => (mask & (1 << j)) != 0)]), readings);
                best = free.Coefficients.All(value => value >= 0) ? Math.Min(best, free.ResidualSumOfSquares) : best;
            }

            var (coefficients, sum) = NonNegativeLeastSquares.Fit(Columns([.. Enumerable.Range(0, n)]), readings);
            Assert.All(coefficients, value => Assert.True(value >= 0));
            Assert.Equal(best, sum, 1e-9 * (1 + best));
        });

    [Fact]
    public void Columns_that_say_the_same_are_refused_by_name()
    {
        var error = Assert.Throws<ArgumentException>(() => LinearLeastSquares.Fit(new double[,] { { 1, 2 }, { 2, 4 }, { 3, 6 } }, [1, 2, 3]));
        Assert.Contains("Column 1", error.Message, StringComparison.Ordinal);
    }

    /// <summary>By hand: readings 1 ± 1 and 4 ± 2 of one level: (1 + 4/4)/(1 + 1/4) = 1.6, doubt 1/√1.25.</summary>
    [Fact]
    public void Doubtful_readings_weigh_less()
    {
        var fit = LinearLeastSquares.Polynomial([0, 0], [1, 4], degree: 0, doubts: [1, 2]);
        Assert.Equal(1.6, fit.Coefficients[0], 1e-12);
        Assert.Equal(1 / Math.Sqrt(1.25), fit.UnscaledErrors[0], 1e-12);
    }
}
