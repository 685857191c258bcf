using Heatwright.Numerics;

namespace Heatwright.Tests.Numerics;

/// <summary>One synthetic warm-up and cool-down, fitted with three models. The readings were drawn from the two-node model with
/// K 29.41176 K/W, τ 216.1603 and 9.354443 s and 1.2 °C of noise, rounded to 0.1 °C; the expected figures were worked out
/// beforehand with another program and are given to the digits printed there.</summary>
public class ModelOrderTests
{
    private const double AirC = 24, PowerW = 12, OffS = 300;

    private static readonly double[] ReadC =
    [
        35.5, 53.0, 81.4, 97.7, 117.8, 134.1, 149.1, 166.2, 176.8, 193.0, 205.7, 215.3, 226.1, 238.0, 247.4, 254.0, 261.8, 273.7, 278.9, 284.9,
        277.7, 263.2, 248.0, 233.0, 219.0, 209.0, 195.0, 181.2, 172.8, 160.0, 152.0, 143.9, 137.4, 127.3, 121.6, 115.3, 107.3, 102.9, 99.1, 93.1,
    ];

    private static readonly LeastSquaresFit OneNode = Fit((t, p) => t > 0 ? 1 - Math.Exp(-t / p[1]) : 0, [20, 100]);
    private static readonly LeastSquaresFit Delayed = Fit((t, p) => t > p[2] ? 1 - Math.Exp(-(t - p[2]) / p[1]) : 0, [20, 100, 3]);
    private static readonly LeastSquaresFit TwoNodes = Fit(
        (t, p) => t > 0 ? 1 - (((p[1] * Math.Exp(-t / p[1])) - (p[2] * Math.Exp(-t / p[2]))) / (p[1] - p[2])) : 0, [20, 100, 3]);

    [Fact]
    public void The_one_node_fit_gives_the_figures_of_another_program() =>
        AssertFit(OneNode, [30.34217, 237.5098], [0.22531, 3.3863], 1020.13, 136.22, (9, 12, 28, -3.373), 0.303);

    [Fact]
    public void The_one_node_fit_with_delay_gives_the_figures_of_another_program() =>
        AssertFit(Delayed, [29.42205, 217.6169, 8.62979], [0.07715, 1.2930, 0.41824], 91.2885, 42.149, (24, 20, 20, 0.961), 2.484);

    [Fact]
    public void The_two_node_fit_gives_the_figures_of_another_program_and_correlations()
    {
        AssertFit(TwoNodes, [29.36911, 216.0372, 9.14589], [0.07597, 1.3574, 0.46411], 80.9913, 37.361, (20, 20, 20, -0.320), 2.434);
        Assert.Equal(0.8384, TwoNodes.Correlation(0, 1), 5e-5);
        Assert.Equal(-0.6252, TwoNodes.Correlation(0, 2), 5e-5);
        Assert.Equal(-0.7765, TwoNodes.Correlation(1, 2), 5e-5);
    }

    [Fact]
    public void The_second_node_earns_its_place()
    {
        var (f, p) = InformationCriteria.NestedF(OneNode.ResidualSumOfSquares, 2, TwoNodes.ResidualSumOfSquares, 3, ReadC.Length);
        Assert.Equal(429.04, f, 5e-3);
        Assert.Equal(6.0e-22, p, 5e-24);
        Assert.Equal(4.1055, InformationCriteria.CriticalF(0.05, 1, 37), 5e-5);
        Assert.Equal(17.8, RunsTest.Of(OneNode.Residuals).Expected, 1e-12); // by hand: 1 + 2·12·28/40
        Assert.True(RunsTest.Of(OneNode.Residuals).ChanceOfSoFew < 0.0005); // share of the normal below −3.29
    }

    /// <summary>By hand: n 10, RSS 20, k 2, κ 3: 10·ln 2 + 6 + 24/6.</summary>
    [Fact]
    public void The_criterion_for_small_samples_is_as_written_down() =>
        Assert.Equal(16.931472, InformationCriteria.Aicc(20, 10, 2), 1e-6);

    [Fact]
    public void Too_few_readings_for_the_criterion_never_win() =>
        Assert.Equal(double.PositiveInfinity, InformationCriteria.Aicc(1e-9, 5, 3));

    /// <summary>By hand: e = 1, −1, 2, −2: steps −2, 3, −4 give 29; squares give 10; neighbours −1 − 2 − 4.</summary>
    [Fact]
    public void Neighbouring_residuals_are_compared_by_hand()
    {
        Assert.Equal(2.9, InformationCriteria.DurbinWatson([1, -1, 2, -2]), 1e-12);
        Assert.Equal(-0.7, InformationCriteria.Lag1([1, -1, 2, -2]), 1e-12);
    }

    [Fact]
    public void Residuals_of_exactly_zero_have_no_sign_and_one_sign_alone_has_no_test()
    {
        var runs = RunsTest.Of([1, 0, 2, -1, 0, -3, 4]);
        Assert.Equal((3, 3, 2), (runs.Runs, runs.Positive, runs.Negative));
        Assert.Equal(3.4, runs.Expected, 1e-12); // by hand: 1 + 2·3·2/5
        Assert.True(double.IsNaN(RunsTest.Of([1, 2, 3]).Z));
    }

    private static LeastSquaresFit Fit(Func<double, double[], double> warming, double[] start) => LeastSquares.Fit(new LeastSquaresProblem(
        (parameters, residuals) =>
        {
            double[] p = parameters.ToArray();
            for (int i = 0; i < ReadC.Length; i++)
            {
                double t = 15.0 * (i + 1);
                residuals[i] = AirC + (PowerW * p[0] * (warming(t, p) - warming(t - OffS, p))) - ReadC[i];
            }
        },
        ReadC.Length,
        start));

    private static void AssertFit(
        LeastSquaresFit fit, double[] values, double[] errors, double sum, double aicc, (int Runs, int Positive, int Negative, double Z) signs, double durbinWatson)
    {
        Assert.True(fit.Converged, fit.Why);
        for (int j = 0; j < values.Length; j++)
        {
            Assert.Equal(values[j], fit.Parameters[j], 2e-6 * values[j]);
            Assert.Equal(errors[j], fit.StandardErrors[j], 1e-4 * errors[j]);
        }

        Assert.Equal(sum, fit.ResidualSumOfSquares, 1e-5 * sum);
        Assert.Equal(aicc, InformationCriteria.Aicc(fit.ResidualSumOfSquares, ReadC.Length, values.Length), 6e-3);
        double[] readingLessModel = [.. fit.Residuals.Select(residual => -residual)];
        var runs = RunsTest.Of(readingLessModel);
        Assert.Equal((signs.Runs, signs.Positive, signs.Negative), (runs.Runs, runs.Positive, runs.Negative));
        Assert.Equal(signs.Z, runs.Z, 5e-4);
        Assert.Equal(durbinWatson, InformationCriteria.DurbinWatson(fit.Residuals), 5e-4);
    }
}
