using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Invented cooling run, count against probe at 1 °C; results by a second program (Python).</summary>
public class PolynomialCalibrationTests
{
    public static readonly double[] Counts = [848, 782, 718, 650, 586, 521, 457, 395, 331, 269, 206, 142, 98, 55];
    public static readonly double[] ProbeC = [418, 388, 361, 329, 300, 271, 237, 208, 180, 148, 119, 90, 69, 50];

    [Theory]
    [InlineData(1, new[] { 210.97639, 187.18819 }, new[] { 0.46296, 0.73073 }, 35.4075, 1.7177, 1.8729, 21.390)]
    [InlineData(2, new[] { 211.81402, 187.66209, -2.18337 }, new[] { 0.64211, 0.72745, 1.24835 }, 27.7034, 1.5870, 1.8466, 21.999)]
    [InlineData(3, new[] { 211.33403, 191.42473, -0.02725, -5.84978 }, new[] { 0.48114, 1.2277, 1.09764, 1.72839 }, 12.9123, 1.1363, 1.3002, 16.368)]
    [InlineData(4, new[] { 211.40875, 191.61649, -0.73315, -6.27202, 0.82323 }, new double[0], 12.8349, 1.1942, 1.5473, 22.784)]
    public void Every_order_agrees_with_the_second_program(
        int order, double[] coefficients, double[] errors, double residualSum, double scatterK, double leaveOneOutK, double information)
    {
        var fit = Fit(order);
        Assert.All(coefficients.Zip(fit.Coefficients), pair => Assert.Equal(pair.First, pair.Second, 1.1e-5));
        Assert.All(errors.Zip(fit.StandardErrors), pair => Assert.Equal(pair.First, pair.Second, 1e-4));
        Assert.Equal(residualSum, fit.ResidualSum, 1e-4);
        Assert.Equal(scatterK, fit.ScatterK, 5.1e-5);
        Assert.Equal(leaveOneOutK, fit.LeaveOneOutK, 5.1e-5);
        Assert.Equal(information, fit.InformationC, 5.1e-4);
    }

    [Theory]
    [InlineData(1, 351.3675, 4.017, 444.9616, 4.297)]
    [InlineData(2, 351.3324, 3.750, 442.9801, 4.723)]
    [InlineData(3, 352.4194, 2.811, 439.1470, 4.253)]
    [InlineData(4, 352.3232, 3.141, 439.5436, 5.952)]
    public void Predictions_and_their_intervals_agree(int order, double at700, double half700, double at900, double half900)
    {
        var fit = Fit(order);
        Assert.Equal(at700, fit.AtC(700), 5.1e-5);
        Assert.Equal(half700, fit.NewReadingK(700), 5.1e-4);
        Assert.Equal(at900, fit.AtC(900), 5.1e-5);
        Assert.Equal(half900, fit.NewReadingK(900), 5.1e-4);
    }

    /// <summary>A second way: each reading left out and the curve fitted again to the others.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void Leaving_one_out_is_what_it_says(int order)
    {
        double sum = 0;
        for (int left = 0; left < Counts.Length; left++)
        {
            var fit = PolynomialCalibration.Fit([.. Counts.Where((_, i) => i != left)], [.. ProbeC.Where((_, i) => i != left)], order, 400, 400);
            sum += Math.Pow(ProbeC[left] - fit.AtC(Counts[left]), 2);
        }

        Assert.Equal(Math.Sqrt(sum / Counts.Length), Fit(order).LeaveOneOutK, 1e-9);
    }

    [Fact]
    public void The_third_order_is_chosen_here_and_the_line_where_more_is_noise()
    {
        Assert.Equal(3, PolynomialCalibration.Choose(Counts, ProbeC, 400, 400, 1023).Order);
        double[] wobble = [0.3, -0.4, 0.1, 0.4, -0.2, -0.3, 0.2, 0.3, -0.4, 0.1, -0.1, 0.4, -0.3, -0.1];
        Assert.Equal(1, PolynomialCalibration.Choose(Counts, [.. Counts.Select((count, i) => 20 + (0.47 * count) + wobble[i])], 400, 400, 1023).Order);
    }

    [Fact]
    public void A_curve_that_turns_back_inside_the_converter_is_not_chosen()
    {
        double[] counts = [.. Enumerable.Range(0, 12).Select(i => 20.0 * i)];
        double[] bent = [.. counts.Select((count, i) => 30 + count - (0.001 * count * count) + (i % 2 == 0 ? 0.01 : -0.01))];   // turns at 500 counts
        Assert.Equal(1, PolynomialCalibration.Choose(counts, bent, 100, 100, 1023).Order);
        Assert.True(PolynomialCalibration.Choose(counts, bent, 100, 100, 400).Order > 1);
    }

    [Fact]
    public void Five_percent_beyond_the_last_reading_is_the_end()
    {
        var fit = Fit(3);
        Assert.True(fit.HoldsAt(848 + 39));
        Assert.False(fit.HoldsAt(900));
        Assert.False(fit.HoldsAt(0));
    }

    [Fact]
    public void A_polynomial_comes_back_from_its_own_points() => Gen.Double[-50, 50].Array[4].Sample(c =>
    {
        double[] x = [.. Enumerable.Range(0, 10).Select(i => 100.0 * i)];
        double[] y = [.. x.Select(count => c[0] + (c[1] * U(count)) + (c[2] * U(count) * U(count)) + (c[3] * Math.Pow(U(count), 3)))];
        var fit = PolynomialCalibration.Fit(x, y, 3, 450, 450);
        return fit.Coefficients.Zip(c).All(pair => Math.Abs(pair.First - pair.Second) < 1e-9);
        double U(double count) => (count - 450) / 450;
    });

    [Fact]
    public void The_interval_for_the_curve_is_narrower_than_that_for_a_reading() => Gen.Double[0, 1023].Sample(count =>
        Fit(2).CurveK(count) < Fit(2).NewReadingK(count));

    [Fact]
    public void Too_few_readings_are_refused() => Assert.Throws<ArgumentException>(() => PolynomialCalibration.Fit([1, 2, 3, 4], [1, 2, 3, 4], 1, 0, 1));

    private static PolynomialCalibration Fit(int order) => PolynomialCalibration.Fit(Counts, ProbeC, order, 400, 400);

    /// <summary>x from 0 to 1 over 1024 counts, 300·(2x − s·x²): at the top its slope is 600·(1 − s), a 256th of the converter before it 600·(1 − 0.99609·s).</summary>
    [Theory]
    [InlineData(0.99, 2)]
    [InlineData(1.002, 1)]
    public void A_curve_must_rise_up_to_the_last_count(double bend, int order) => Assert.Equal(order, Bent(x => (2 * x) - (bend * x * x)));

    /// <summary>300·(x² + s·x): at the bottom its slope is 300·s, a 256th of the converter above it 300·(s + 0.0078).</summary>
    [Theory]
    [InlineData(0.02, 2)]
    [InlineData(-0.003, 1)]
    public void A_curve_must_rise_from_the_first_count_on(double slope, int order) => Assert.Equal(order, Bent(x => (x * x) + (slope * x)));

    private static int Bent(Func<double, double> shape)
    {
        double[] counts = [.. Enumerable.Range(0, 11).Select(i => 102.4 * i)];
        double[] tC = [.. counts.Select((count, i) => (300 * shape(count / 1024)) + (i % 2 == 0 ? 0.001 : -0.001))];
        return PolynomialCalibration.Choose(counts, tC, 0, 1024, 1024).Order;
    }

    [Fact]
    public void Five_percent_beyond_the_readings_on_either_side()
    {
        var line = PolynomialCalibration.Fit([100, 200, 300, 400, 500], [10, 21, 30, 39, 50], 1, 0, 100);
        Assert.Equal([false, true, true, true, false], ((double[])[79.9, 80, 300, 520, 520.1]).Select(line.HoldsAt));   // 5 % of 400 is 20
        Assert.Throws<ArgumentException>(() => PolynomialCalibration.Fit([1, 2, 3, 4, 5], [1, 2, 3, 4], 1, 0, 1));
        Assert.Equal(3, line.DegreesOfFreedom);
    }

    /// <summary>Straight line through five points: s/√Σ(x − x̄)² for the slope, s·√(Σx²/(n·Σ(x − x̄)²)) for the height; x = 1 … 5.</summary>
    [Fact]
    public void Standard_errors_of_a_line_by_hand()
    {
        var line = PolynomialCalibration.Fit([100, 200, 300, 400, 500], [10, 21, 30, 39, 50], 1, 0, 100);
        Assert.Equal([line.ScatterK * Math.Sqrt(55 / 50.0), line.ScatterK * Math.Sqrt(0.1)], line.StandardErrors, (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(1, PolynomialCalibration.Choose([100, 200, 300, 400, 500], [10, 21, 30, 39, 50], 0, 100, 1023).Order);   // too few for more
    }
}
