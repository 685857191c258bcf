using Heatwright.Numerics;

namespace Heatwright.Tests.Numerics;

/// <summary>Rows four at a time, of every length up to nine, against plain loops; what is no number is not lost among the lanes.</summary>
public sealed class LanesTests
{
    [Theory, InlineData(0), InlineData(1), InlineData(3), InlineData(4), InlineData(5), InlineData(8), InlineData(9)]
    public void Every_length_is_summed_added_and_divided(int length)
    {
        double[] a = [.. Enumerable.Range(1, length).Select(i => (double)i)], b = [.. Enumerable.Range(1, length).Select(i => i * 10.0)];
        Assert.Equal(10.0 * length * (length + 1) * ((2 * length) + 1) / 6, Lanes.Dot(a, b)); // 10·Σi²
        Assert.Equal(10.0 * length * (length + 1) * ((2 * length) + 1) / 6, CompensatedSum.OfProducts(a, b));
        Assert.Equal(length, Lanes.Largest(a.Select(value => -value).ToArray()));
        double[] sum = [.. b];
        Lanes.AddScaled(sum, -3, a);
        Assert.Equal(a.Select(value => 7 * value), sum);
        Lanes.Divide(b, 5, sum);
        Assert.Equal(a.Select(value => 2 * value), sum);
    }

    [Theory, InlineData(double.NaN), InlineData(double.PositiveInfinity), InlineData(double.NegativeInfinity)]
    public void What_is_no_number_shows_wherever_it_stands(double odd)
    {
        for (int at = 0; at < 6; at++)
        {
            double[] row = [1, 2, 3, 4, 5, 6];
            row[at] = odd;
            Assert.False(double.IsFinite(Lanes.Largest(row)));
            Assert.False(double.IsFinite(Lanes.Dot(row, [1, 1, 1, 1, 1, 1])));
            Assert.False(double.IsFinite(CompensatedSum.OfProducts(row, [1, 1, 1, 1, 1, 1])));
        }
    }

    /// <summary>1e16, 1, −1e16 in one lane: plain sums lose the 1.</summary>
    [Fact]
    public void Sums_of_products_keep_what_rounding_drops()
    {
        double[] row = [1e16, 0, 0, 0, 1, 0, 0, 0, -1e16, 0, 0, 0];
        Assert.Equal(1, CompensatedSum.OfProducts(row, [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1]));
        Assert.Equal(2, CompensatedSum.OfProducts([1e16, 1, 1, -1e16, 0], [1, 1, 1, 1, 1]));
    }
}
