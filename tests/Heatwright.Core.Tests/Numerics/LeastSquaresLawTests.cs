using CsCheck;
using Heatwright.Numerics;

namespace Heatwright.Tests.Numerics;

/// <summary>What every fit must obey, on random problems whose answer is known by construction or by a closed form.</summary>
public class LeastSquaresLawTests
{
    private static readonly Gen<(double Rise, double Tau, double Offset)> Exponential =
        Gen.Select(Gen.Double[5, 400], Gen.Double[10, 600], Gen.Double[-20, 60]);

    private static readonly Gen<(double[] Slopes, double[] Truth)> Linear =
        Gen.Int[1, 4].SelectMany(n => Gen.Select(Gen.Double[-3, 3].Array[12 * n], Gen.Double[-50, 50].Array[n]));

    [Fact]
    public void A_noise_free_exponential_gives_its_own_parameters_back() =>
        Gen.Select(Exponential, Gen.Double[0.5, 2], Gen.Double[0.4, 2.5]).Sample((truth, riseOff, tauOff) =>
        {
            var fit = LeastSquares.Fit(Warming(truth, _ => 0, [truth.Rise * riseOff, truth.Tau * tauOff, truth.Offset + 5]));
            Assert.True(fit.Converged, fit.Why);
            Assert.Equal(truth.Rise, fit.Parameters[0], 1e-7 * truth.Rise);
            Assert.Equal(truth.Tau, fit.Parameters[1], 1e-7 * truth.Tau);
            Assert.Equal(truth.Offset, fit.Parameters[2], 1e-7 * truth.Rise);
        });

    [Fact]
    public void A_start_at_the_very_answer_settles_there() =>
        Exponential.Sample(truth =>
        {
            var fit = LeastSquares.Fit(Warming(truth, _ => 0, [truth.Rise, truth.Tau, truth.Offset]));
            Assert.True(fit.Converged, fit.Why);
            Assert.Equal(truth.Tau, fit.Parameters[1], 1e-7 * truth.Tau);
        });

    [Fact]
    public void A_noise_free_linear_model_gives_its_own_coefficients_back_both_ways() => Linear.Sample((slopes, truth) =>
    {
        double[,] design = Design(slopes, truth.Length);
        double[] readings = Times(design, truth);
        var bent = LeastSquares.Fit(LinearProblem(design, readings, new double[truth.Length]));
        var straight = LinearLeastSquares.Fit(design, readings);
        Assert.True(bent.Converged, bent.Why);
        for (int j = 0; j < truth.Length; j++)
        {
            double allowed = 1e-9 * (1 + straight.UnscaledErrors.Max()) * 50; // poorly separated random columns cost digits
            Assert.Equal(truth[j], straight.Coefficients[j], allowed);
            Assert.Equal(truth[j], bent.Parameters[j], allowed);
            Assert.Equal(straight.UnscaledErrors[j], bent.UnscaledErrors[j], 1e-6 * straight.UnscaledErrors[j]);
        }
    });

    [Fact]
    public void Changing_the_units_of_the_parameters_changes_the_covariance_by_the_square_and_nothing_else() =>
        Gen.Select(Exponential, Gen.Double[-6, 6], Gen.Double[-6, 6], Gen.UInt).Sample((truth, a, b, seed) =>
        {
            double[] units = [Math.Pow(10, a), Math.Pow(10, b), 1];
            var plain = Warming(truth, i => Noise(seed, i), [truth.Rise * 0.8, truth.Tau * 1.3, truth.Offset]);
            var other = new LeastSquaresProblem(
                (p, r) => plain.Residuals([p[0] / units[0], p[1] / units[1], p[2]], r),
                plain.ResidualCount,
                [plain.Start[0] * units[0], plain.Start[1] * units[1], plain.Start[2]]);
            var first = LeastSquares.Fit(plain);
            var second = LeastSquares.Fit(other);
            Assert.Equal(first.ResidualSumOfSquares, second.ResidualSumOfSquares, 1e-9 * first.ResidualSumOfSquares);
            for (int i = 0; i < 3; i++)
            {
                for (int j = 0; j < 3; j++)
                {
                    double size = first.UnscaledErrors[i] * first.UnscaledErrors[j];
                    Assert.Equal(first.Covariance[i, j] / size, second.Covariance[i, j] / (units[i] * units[j]) / size, 1e-6);
                }
            }
        });

    /// <summary>One level read n times with doubt u, known before as m ± s: weights 1/u² and 1/s² (JCGM 100:2008, weighted mean).</summary>
    [Fact]
    public void A_prior_pulls_like_one_more_reading() =>
        Gen.Select(Gen.Double[-100, 100], Gen.Double[0.1, 10], Gen.Double[0.1, 10], Gen.Double[-100, 100].Array[1, 9]).Sample((mean, s, u, readings) =>
        {
            var fit = LeastSquares.Fit(new LeastSquaresProblem(
                (p, r) =>
                {
                    for (int i = 0; i < readings.Length; i++)
                    {
                        r[i] = (p[0] - readings[i]) / u;
                    }
                },
                readings.Length,
                [1])
            {
                PriorMean = [mean],
                PriorDoubt = [s],
            });
            double weight = (readings.Length / (u * u)) + (1 / (s * s));
            double expected = ((readings.Sum() / (u * u)) + (mean / (s * s))) / weight;
            Assert.Equal(expected, fit.Parameters[0], 1e-8);
            Assert.Equal(1 / weight, fit.Covariance[0, 0], 1e-7 / weight);
            Assert.Equal(Math.Pow((expected - mean) / s, 2), fit.PriorSumOfSquares, 1e-6 * (1 + fit.PriorSumOfSquares));
            Assert.Equal(readings.Length, fit.DegreesOfFreedom);
        });

    [Fact]
    public void No_bound_is_ever_stepped_over_and_the_answer_is_that_of_the_active_set_method() => Linear.Sample((slopes, truth) =>
    {
        double[,] design = Design(slopes, truth.Length);
        double[] readings = [.. Times(design, truth).Select((value, i) => value + Noise(7, i))];
        double lowest = 0;
        var inner = LinearProblem(design, readings, [.. truth.Select(value => Math.Abs(value) + 1)]);
        var fit = LeastSquares.Fit(inner with
        {
            Residuals = (p, r) =>
            {
                lowest = Math.Min(lowest, p.ToArray().Min());
                inner.Residuals(p, r);
            },
            Lower = new double[truth.Length],
        });
        var (coefficients, sum) = NonNegativeLeastSquares.Fit(design, readings);
        Assert.True(fit.Converged, fit.Why);
        Assert.Equal(0, lowest);
        Assert.Equal(sum, fit.ResidualSumOfSquares, 1e-9 * (1 + sum));
        for (int j = 0; j < truth.Length; j++)
        {
            // Where the bound is just touched, the two may call it by either name; the sum above says that they agree.
            bool touches = coefficients[j] == 0 && fit.Parameters[j] < 1e-6;
            Assert.True(touches || (coefficients[j] == 0) == fit.AtBound[j], FormattableString.Invariant($"{j}: {coefficients[j]:R} {fit.Parameters[j]:R} {fit.Why} {sum:R} {fit.ResidualSumOfSquares:R}"));
            Assert.Equal(fit.AtBound[j], double.IsNaN(fit.StandardErrors[j]));
        }
    });

    private static double Noise(uint seed, int i) => Quantiles.Normal(CounterRandom.Uniform(seed, 1, (ulong)i));

    private static LeastSquaresProblem Warming((double Rise, double Tau, double Offset) truth, Func<int, double> noise, double[] start) => new(
        (p, r) =>
        {
            for (int i = 0; i < r.Length; i++)
            {
                double t = truth.Tau * 0.12 * i;
                r[i] = p[2] + (p[0] * (1 - Math.Exp(-t / p[1]))) - truth.Offset - (truth.Rise * (1 - Math.Exp(-t / truth.Tau))) - noise(i);
            }
        },
        25,
        start);

    private static LeastSquaresProblem LinearProblem(double[,] design, double[] readings, double[] start) => new(
        (p, r) => Times(design, p.ToArray()).Select((value, i) => value - readings[i]).ToArray().CopyTo(r), readings.Length, start);

    private static double[,] Design(double[] slopes, int count)
    {
        var design = new double[slopes.Length / count, count];
        Buffer.BlockCopy(slopes, 0, design, 0, slopes.Length * sizeof(double));
        return design;
    }

    private static double[] Times(double[,] design, double[] x) =>
        [.. Enumerable.Range(0, design.GetLength(0)).Select(i => x.Select((value, j) => value * design[i, j]).Sum())];
}
