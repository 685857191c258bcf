using Heatwright.Numerics;

namespace Heatwright.Tests.Numerics;

public class LeastSquaresTests
{
    private static readonly double[] Times = [.. Enumerable.Range(0, 20).Select(i => 10.0 * i)];

    [Fact]
    public void A_parameter_held_fixed_stays_and_counts_as_known()
    {
        var fit = LeastSquares.Fit(Line(5, 2, [4, 0]) with { Lower = [4, double.NegativeInfinity], Upper = [4, double.PositiveInfinity] });
        // By hand: y = 5 + 2t against 4 + s·t: s = 2 + Σt/Σt², t = 0, 10 … 190: Σt 1900, Σt² 247 000.
        Assert.Equal(4, fit.Parameters[0]);
        Assert.Equal(2 + (1900.0 / 247000), fit.Parameters[1], 1e-10);
        Assert.Equal(19, fit.DegreesOfFreedom);
        Assert.Equal(0, fit.UnscaledErrors[0]);
        Assert.Equal(1 / Math.Sqrt(247000), fit.UnscaledErrors[1], 1e-12);
        Assert.False(fit.AtBound[0]);
    }

    [Fact]
    public void Parameters_that_only_act_together_are_said_to_be_open()
    {
        var fit = LeastSquares.Fit(Each((p, i) => (p[0] * p[1] * Times[i]) + p[2] - (3 * Times[i]) - 1, Times.Length, [1, 1, 0]));
        Assert.True(fit.Converged, fit.Why);
        Assert.Equal([true, true, false], fit.Undetermined);
        Assert.Equal(double.PositiveInfinity, fit.UnscaledErrors[0]);
        Assert.Equal(3, fit.Parameters[0] * fit.Parameters[1], 1e-8);
        Assert.Contains("open", fit.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_prior_closes_what_the_readings_leave_open()
    {
        var fit = LeastSquares.Fit(Each((p, i) => (p[0] * p[1] * Times[i]) - (3 * Times[i]), Times.Length, [1, 1]) with
        {
            PriorMean = [2, 0],
            PriorDoubt = [0.1, double.PositiveInfinity],
        });
        Assert.True(fit.Converged, fit.Why);
        Assert.Equal(2, fit.Parameters[0], 1e-6);
        Assert.Equal(1.5, fit.Parameters[1], 1e-6);
        Assert.Equal(0.1, fit.UnscaledErrors[0], 1e-6);
        Assert.Equal(19, fit.DegreesOfFreedom);
    }

    [Fact]
    public void A_search_that_is_told_what_is_enough_ends_a_hundredth_of_a_doubt_from_the_minimum()
    {
        // y = e^(-t/τ) read at 0, 10 … 190 s, off by a hundredth up and down in turn, each known to a hundredth.
        double[] read = [.. Times.Select((time, i) => Math.Exp(-time / 60) + (i % 2 == 0 ? 0.01 : -0.01))];
        var problem = Each((p, i) => (Math.Exp(-Times[i] / p[0]) - read[i]) / 0.01, Times.Length, [20]);
        var digits = LeastSquares.Fit(problem);
        var enough = LeastSquares.Fit(problem with { EnoughFall = 1e-4 });
        Assert.True(enough.Converged, enough.Why);
        Assert.InRange(Math.Abs(enough.Parameters[0] - digits.Parameters[0]), 0, 0.01 * digits.UnscaledErrors[0]);
        Assert.True(enough.Iterations < digits.Iterations, $"{enough.Iterations} and {digits.Iterations}");
    }

    [Fact]
    public void A_model_without_value_at_the_start_is_refused_with_a_reason()
    {
        var fit = LeastSquares.Fit(Each((p, i) => Math.Log(p[0]), 3, [-1]));
        Assert.False(fit.Converged);
        Assert.Contains("start", fit.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void The_search_turns_back_from_where_the_model_has_no_value()
    {
        // ln p and √p end at zero; the first full step from 5 leads far below it.
        var fit = LeastSquares.Fit(Each((p, i) => Math.Log(p[0]) + (1e-3 * i * Math.Sqrt(p[0])) + 2, 3, [5]));
        Assert.True(fit.Converged, fit.Why);
        Assert.Equal(Math.Exp(-2), fit.Parameters[0], 1e-3);
    }

    [Fact]
    public void A_model_that_jumps_away_from_its_promise_is_not_called_settled()
    {
        // Slope says down, value says up: a step in the model just beside the start.
        var fit = LeastSquares.Fit(Each((p, i) => p[0] < 0.999999 ? 100 : p[0], 3, [1]) with
        {
            Jacobian = (_, slopes) => slopes.Fill(1),
        });
        Assert.False(fit.Converged);
        Assert.Contains("jumps", fit.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_noisy_model_settles_within_its_noise()
    {
        // The sixth digit of the model is rubbish, as from a solver with a loose tolerance.
        double Noisy(double value) => Math.Round(value, 5);
        var problem = Each(
            (p, i) => Noisy(p[0] * Math.Exp(-Times[i] / p[1])) - (3 * Math.Exp(-Times[i] / 70)) - (0.01 * Math.Cos(i)), Times.Length, [2, 100]);
        var fit = LeastSquares.Fit(problem with { RelativeNoise = 3e-6 });
        Assert.True(fit.Converged, fit.Why);
        Assert.Equal(3, fit.Parameters[0], 0.02);
        Assert.Equal(70, fit.Parameters[1], 1.0);
    }

    [Fact]
    public void Slopes_by_formula_and_by_differences_lead_to_the_same_fit()
    {
        var differences = Each((p, i) => (p[0] * Math.Exp(-Times[i] / p[1])) - 3 + (0.01 * Times[i]) + (0.1 * Math.Cos(i)), Times.Length, [2, 300]);
        var formula = differences with
        {
            Jacobian = (p, slopes) =>
            {
                for (int i = 0; i < Times.Length; i++)
                {
                    double decay = Math.Exp(-Times[i] / p[1]);
                    slopes[2 * i] = decay;
                    slopes[(2 * i) + 1] = p[0] * decay * Times[i] / (p[1] * p[1]);
                }
            },
        };
        var one = LeastSquares.Fit(differences);
        var other = LeastSquares.Fit(formula);
        Assert.Equal(other.Parameters[1], one.Parameters[1], 1e-8);
        Assert.Equal(other.StandardErrors[1], one.StandardErrors[1], 1e-8);
        Assert.Equal(other.Jacobian[7, 1], one.Jacobian[7, 1], 1e-9);
        Assert.True(other.Evaluations < one.Evaluations);
    }

    [Fact]
    public void Several_starts_find_the_deeper_of_two_hollows()
    {
        // A sine read over many turns: from 0.02 the search ends in a side hollow.
        var problem = Each((p, i) => Math.Sin(p[0] * Times[i]) - Math.Sin(0.11 * Times[i]), Times.Length, [0.02]) with
        {
            Lower = [0.01],
            Upper = [0.3],
        };
        Assert.True(LeastSquares.Fit(problem).ResidualSumOfSquares > 1);
        var best = LeastSquares.FitFromSeveralStarts(problem, furtherStarts: 30, seed: 3);
        Assert.Equal(0.11, best.Parameters[0], 1e-8);
        Assert.Equal(best.Parameters[0], LeastSquares.FitFromSeveralStarts(problem, 30, 3).Parameters[0]); // same seed, same answer
        Assert.Equal(0.11, LeastSquares.FitFromSeveralStarts(problem, [[0.25], [0.105]]).Parameters[0], 1e-8);
    }

    [Fact]
    public void A_search_without_steps_left_says_so()
    {
        var fit = LeastSquares.Fit(Each((p, i) => (p[0] * Math.Exp(-Times[i] / p[1])) - i, Times.Length, [2, 300]) with { MaxIterations = 1 });
        Assert.False(fit.Converged);
        Assert.Contains("steps", fit.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_search_ends_when_it_is_told_to()
    {
        using var source = new CancellationTokenSource();
        var line = Line(1, 1, [0, 0]);
        var problem = line with
        {
            Residuals = (p, r) =>
            {
                source.Cancel();
                line.Residuals(p, r);
            },
            Cancellation = source.Token,
        };
        Assert.Throws<OperationCanceledException>(() => LeastSquares.Fit(problem));
    }

    [Fact]
    public void More_parameters_than_residuals_leave_no_degrees_of_freedom_and_no_reduced_chi_square()
    {
        var fit = LeastSquares.Fit(new LeastSquaresProblem((p, r) => r[0] = p[0] + p[1] - 3, 1, [0, 0]));
        Assert.True(double.IsNaN(fit.ReducedChiSquare));
        Assert.Equal([true, true], fit.Undetermined);
        Assert.Equal(3, fit.Parameters.Sum(), 1e-9);
    }

    [Fact]
    public void Arrays_that_do_not_fit_together_are_refused()
    {
        Assert.Throws<ArgumentException>(() => LeastSquares.Fit(Line(1, 1, [0, 0]) with { Lower = [0] }));
        Assert.Throws<ArgumentException>(() => LeastSquares.Fit(Line(1, 1, [0, 0]) with { Lower = [0, 1], Upper = [0, 0] }));
        Assert.Throws<ArgumentException>(() => LeastSquares.Fit(Line(1, 1, [0, 0]) with { PriorMean = [0, 1] }));
        Assert.Throws<ArgumentException>(() => LeastSquares.Fit(Line(1, 1, [0, 0]) with { PriorMean = [0, 1], PriorDoubt = [0, 1] }));
    }

    private static LeastSquaresProblem Line(double offset, double slope, double[] start) =>
        Each((p, i) => p[0] + (p[1] * Times[i]) - offset - (slope * Times[i]), Times.Length, start);

    private static LeastSquaresProblem Each(Func<double[], int, double> residual, int count, double[] start) => new(
        (parameters, residuals) =>
        {
            double[] p = parameters.ToArray();
            for (int i = 0; i < residuals.Length; i++)
            {
                residuals[i] = residual(p, i);
            }
        },
        count,
        start);
}
