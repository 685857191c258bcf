using Heatwright.Numerics;

namespace Heatwright.Tests.Numerics;

public class FitBandTests
{
    /// <summary>A straight line through n points: variance of the line at x is s²(1/n + (x − x̄)²/Σ(x − x̄)²), any textbook of statistics.</summary>
    [Fact]
    public void A_straight_line_is_known_as_the_textbook_says()
    {
        double[] xs = [0, 1, 2, 5, 9], ys = [1.1, 2.9, 5.2, 10.8, 19.1];
        const double doubt = 0.3;
        var fit = LeastSquares.Fit(new LeastSquaresProblem((p, r) =>
        {
            for (int i = 0; i < xs.Length; i++)
            {
                r[i] = (p[0] + (p[1] * xs[i]) - ys[i]) / doubt;
            }
        }, xs.Length, [1, 1]));
        double mean = xs.Average(), square = xs.Sum(x => (x - mean) * (x - mean));
        for (int i = 0; i < xs.Length; i++)
        {
            Assert.Equal(doubt * Math.Sqrt((1.0 / xs.Length) + ((xs[i] - mean) * (xs[i] - mean) / square)), doubt * FitBand.At(fit.Jacobian, i, fit.Covariance), 1e-6);
        }
    }

    [Fact]
    public void What_nothing_determines_counts_only_where_it_moves_the_curve()
    {
        double[,] slopes = { { 2, 0 }, { 2, 1 } }, covariance = { { 0.25, 0 }, { 0, double.PositiveInfinity } };
        Assert.Equal(1, FitBand.At(slopes, 0, covariance), 1e-12);
        Assert.Equal(double.PositiveInfinity, FitBand.At(slopes, 1, covariance));
    }
}
