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
}
