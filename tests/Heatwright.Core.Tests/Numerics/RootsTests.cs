using CsCheck;
using Heatwright.Numerics;

namespace Heatwright.Tests.Numerics;

public class RootsTests
{
    /// <summary>Wallis's cubic, root as printed in textbooks of numerical analysis (from memory; checked by hand: 2.0945515³ − 2·2.0945515 − 5 ≈ 0).</summary>
    [Fact]
    public void A_classic_cubic_is_solved_to_all_digits()
    {
        var root = Roots.Between(x => (x * x * x) - (2 * x) - 5, 2, 3);
        Assert.True(root.Found);
        Assert.Equal(2.0945514815423265, root.X, 1e-15 * 4);
        Assert.InRange(root.Evaluations, 3, 15);
    }

    [Fact]
    public void Both_methods_find_the_known_root_of_a_rising_curve_and_the_fast_one_needs_fewer_calls() =>
        Gen.Select(Gen.Double[-9, 9], Gen.Double[0.1, 3]).Sample((truth, steepness) =>
        {
            double Curve(double x) => Math.Sinh(steepness * (x - truth) / 3) + (0.1 * (x - truth));
            var fast = Roots.Between(Curve, -10, 10);
            var steady = Roots.Monotone(Curve, 10, -10); // ends may stand either way round
            Assert.Equal(truth, fast.X, 1e-12);
            Assert.Equal(truth, steady.X, 1e-12);
            Assert.True(fast.Low <= truth + 1e-14 && fast.High >= truth - 1e-14);
            Assert.True(fast.Evaluations < steady.Evaluations || steady.Evaluations < 40); // a root on a halving point is met by luck
        });

    [Fact]
    public void A_jump_through_zero_is_found_by_both()
    {
        double Jump(double x) => x < 0.3 ? -1 : 2;
        Assert.Equal(0.3, Roots.Between(Jump, 0, 1).X, 1e-12);
        Assert.Equal(0.3, Roots.Monotone(Jump, 0, 1).X, 1e-12);
    }

    [Fact]
    public void Equal_signs_at_both_ends_are_said_so()
    {
        Assert.Equal(RootOutcome.NoSignChange, Roots.Between(x => 1 + (x * x), -1, 1).Outcome);
        Assert.Equal(RootOutcome.NoSignChange, Roots.Monotone(x => 5 + x, -1, 1).Outcome);
        Assert.True(double.IsNaN(Roots.Between(x => 1 + (x * x), -1, 1).X));
    }

    [Fact]
    public void A_function_without_value_is_said_so()
    {
        Assert.Equal(RootOutcome.NoValue, Roots.Between(Math.Sqrt, -1, 1).Outcome);
        Assert.Equal(RootOutcome.NoValue, Roots.Monotone(x => Math.Abs(x) < 0.4 ? double.NaN : x, -1, 1).Outcome);
        Assert.Equal(RootOutcome.NoValue, Roots.Between(x => Math.Abs(x) < 0.4 ? double.NaN : x, -1, 1).Outcome);
    }

    [Fact]
    public void A_root_at_an_end_counts()
    {
        Assert.Equal(1, Roots.Between(x => x - 1, 1, 2).X);
        Assert.Equal(2, Roots.Monotone(x => x - 2, 1, 2).X);
    }

    [Fact]
    public void Running_out_of_steps_leaves_the_root_between_the_ends()
    {
        var root = Roots.Between(x => Math.Pow(x, 9) - 1e-9, -1, 4, maxEvaluations: 6);
        Assert.Equal(RootOutcome.OutOfSteps, root.Outcome);
        Assert.InRange(0.1, root.Low, root.High); // by hand: (1e-9)^(1/9)
    }

    [Fact]
    public void A_tolerance_saves_calls_and_is_kept()
    {
        var rough = Roots.Between(x => Math.Exp(x) - 2, 0, 5, tolerance: 1e-3);
        Assert.Equal(Math.Log(2), rough.X, 1e-3);
        Assert.True(rough.Evaluations < Roots.Between(x => Math.Exp(x) - 2, 0, 5).Evaluations);
    }
}
