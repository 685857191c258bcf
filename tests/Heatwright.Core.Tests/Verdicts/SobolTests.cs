using Heatwright.Numerics;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>[ishigami-homma-1990]: f = sin x₁ + a·sin² x₂ + b·x₃⁴·sin x₁ on (−π, π)³, whose indices are known in closed form:
/// V = a²/8 + bπ⁴/5 + b²π⁸/18 + ½, V₁ = ½(1 + bπ⁴/5)², V₂ = a²/8, V₁₃ = b²π⁸(1/18 − 1/50).</summary>
public sealed class SobolTests
{
    [Theory]
    [InlineData(7, 0.1)]
    [InlineData(7, 0.05)]
    public void Ishigami_indices_come_to_a_hundredth(double a, double b)
    {
        const int draws = 1 << 17; // scatter of the first-order estimator is about 0.004 there
        double[] fA = Run(_ => 0), fB = Run(_ => 1);
        double[][] fAB = [.. Enumerable.Range(0, 3).Select(group => Run(input => input == group ? 1 : 0))];
        var indices = SobolIndices.Of(fA, fB, fAB);

        double p4 = Math.Pow(Math.PI, 4), p8 = Math.Pow(Math.PI, 8);
        double v = (a * a / 8) + (b * p4 / 5) + (b * b * p8 / 18) + 0.5;
        double v1 = 0.5 * Math.Pow(1 + (b * p4 / 5), 2), v2 = a * a / 8, v13 = b * b * p8 * ((1 / 18.0) - (1 / 50.0));
        double[] first = [v1 / v, v2 / v, 0], total = [(v1 + v13) / v, v2 / v, v13 / v];
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(first[i], indices.First[i], 0.01);
            Assert.Equal(total[i], indices.Total[i], 0.01);
        }

        double[] Run(Func<int, int> setOf) => [.. Enumerable.Range(0, draws).Select(i =>
        {
            double X(int input) => Math.PI * ((2 * CounterRandom.Uniform(20_251_125, (ulong)(input + (10 * setOf(input))), (ulong)i)) - 1);
            return Math.Sin(X(0)) + (a * Math.Pow(Math.Sin(X(1)), 2)) + (b * Math.Pow(X(2), 4) * Math.Sin(X(0)));
        })];
    }

    [Fact]
    public void What_nothing_moves_has_no_shares()
    {
        var indices = SobolIndices.Of([4, 4, 4], [4, 4, 4], [[4, 4, 4]]);
        Assert.Equal(0, indices.Variance);
        Assert.Equal([0.0], indices.Total);
    }

    /// <summary>By hand: f_A 1, 3 and f_B 2, 6: mean 3, variance (4 + 0 + 1 + 9)/4 = 3.5. Rows that change f_A by 1, 0 and by 0, 3: alone (2 − 3) · 1 = −1 and (6 − 3) · 3 = 9 over 2 · 3.5,
    /// with everything 1 and 9 over 4 · 3.5.</summary>
    [Fact]
    public void Two_draws_are_summed_by_hand()
    {
        var indices = SobolIndices.Of([1, 3], [2, 6], [[2, 3], [1, 6]]);
        Assert.Equal((3, 3.5), (indices.Mean, indices.Variance));
        Assert.Equal([-1 / 7.0, 9 / 7.0], indices.First, (a, b) => Math.Abs(a - b) < 1e-15);
        Assert.Equal([1 / 14.0, 9 / 14.0], indices.Total, (a, b) => Math.Abs(a - b) < 1e-15);
    }

    /// <summary>A spread of 1e-11 of the value is a spread, one of 1e-13 is rounding; about a mean of nothing any is.</summary>
    [Theory, InlineData(1, 1e-11, true), InlineData(1, 1e-13, false), InlineData(1000, 1e-8, true), InlineData(1000, 1e-10, false), InlineData(0, 1e-13, true)]
    public void Rounding_is_no_spread(double about, double by, bool moves)
    {
        var indices = SobolIndices.Of([about - by, about + by], [about + by, about - by], [[about + by, about - by]]);
        Assert.Equal(moves, indices.Variance > 0);
        Assert.Equal(moves, indices.Total[0] > 0.9); // one group that is everything
        Assert.Equal(about, indices.Mean, 1e-9);
    }
}
