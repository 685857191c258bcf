using Heatwright.Numerics;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Check values by a second program (Python), unless the line names a publication.</summary>
public class SensitivityTests
{
    private static readonly double[] Best = [29.4, 4.98, 3.92];
    private static readonly double[] Doubts = [0.6, 0.026, 0.083];

    [Fact]
    public void The_bars_of_a_tornado_agree()
    {
        var bars = Sensitivity.Tornado(Plateau, Best, Doubts);
        Assert.Equal(210.0030, Plateau(Best), 5.1e-5);
        Assert.Equal([2, 0, 1], bars.Select(bar => bar.Input));
        Assert.Equal((214.02652, 206.14633), (Math.Round(bars[0].AtLow, 5), Math.Round(bars[0].AtHigh, 5)));
        Assert.Equal((206.20702, 213.79898), (Math.Round(bars[1].AtLow, 5), Math.Round(bars[1].AtHigh, 5)));
        Assert.Equal((208.06587, 211.95027), (Math.Round(bars[2].AtLow, 5), Math.Round(bars[2].AtHigh, 5)));
    }

    [Fact]
    public void Local_shares_agree()
    {
        double rise = Plateau(Best) - 24;
        double[] slopes = [rise / 29.4, 2 * rise / 4.98, -rise / 3.92];
        double[] shares = Sensitivity.Shares(slopes, Doubts);
        Assert.Equal([0.42768, 0.11196, 0.46036], shares.Select(share => Math.Round(share, 5)));
        Assert.Equal(5.804484, Math.Sqrt(slopes.Zip(Doubts, (slope, doubt) => slope * slope * doubt * doubt).Sum()), 5.1e-7);
    }

    /// <summary>[ishigami-homma-1990] sin x₁ + a sin²x₂ + b x₃⁴ sin x₁; indices analytic. Tolerance 0.03 for 2¹⁵ pseudo-random points.</summary>
    [Theory]
    [InlineData(0.1, new[] { 0.3139052, 0.4424111, 0 }, new[] { 0.5575889, 0.4424111, 0.2436837 })]
    [InlineData(0.05, new[] { 0.2185186, 0.6868946, 0 }, new[] { 0.3131054, 0.6868946, 0.09458679 })]
    public void Variance_shares_of_a_published_function_agree(double b, double[] first, double[] total)
    {
        const int Points = 1 << 15;
        double[] answersA = new double[Points], answersB = new double[Points];
        for (int k = 0; k < Points; k++)
        {
            answersA[k] = Ishigami(b, X(k, 0), X(k, 1), X(k, 2));
            answersB[k] = Ishigami(b, X(k, 3), X(k, 4), X(k, 5));
        }

        for (int i = 0; i < 3; i++)
        {
            double[] mixed = [.. Enumerable.Range(0, Points).Select(k => Ishigami(b, X(k, i == 0 ? 3 : 0), X(k, i == 1 ? 4 : 1), X(k, i == 2 ? 5 : 2)))];
            Assert.Equal(first[i], Sensitivity.FirstOrder(answersA, answersB, mixed), 0.03);
            Assert.Equal(total[i], Sensitivity.Total(answersA, answersB, mixed), 0.03);
        }
    }

    private static double X(int point, int input) => ((2 * CounterRandom.Uniform(5, (ulong)input, (ulong)point)) - 1) * Math.PI;

    private static double Ishigami(double b, double x1, double x2, double x3) =>
        Math.Sin(x1) + (7 * Math.Sin(x2) * Math.Sin(x2)) + (b * Math.Pow(x3, 4) * Math.Sin(x1));

    private static double Plateau(double[] x) => 24 + (x[0] * x[1] * x[1] / x[2]);
}
