using Heatwright.Numerics;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>What a reading is worth, against closed forms and against truth that is known.</summary>
public sealed class ReadingValueTests(ITestOutputHelper output)
{
    private const int Draws = 20_000;

    /// <summary>One margin m = 2, s = 4, read with u = 2. Wrong choice now Φ(−m/s) = 0.3085; after it, on average, 0.1290: the integral of the two normal
    /// densities, worked out by hand quadrature after [raiffa-schlaifer-1961]. Second way here: the orthant formula. Margin θ and advice z = E[θ | reading] are jointly
    /// normal with correlation ρ = s/√(s² + u²); the chance that their signs differ is found by counting on a fine grid of z.</summary>
    [Fact]
    public void A_reading_of_a_single_margin_is_worth_what_the_closed_form_says()
    {
        const double m = 2, s = 4, u = 2;
        double[] margin = [.. Enumerable.Range(0, Draws).Select(i => m + (s * Normal(1, i)))];
        var value = new ReadingValue([[.. margin.Select(theta => theta > 0 ? 1.0 : 0)], [.. margin.Select(theta => theta > 0 ? 0.0 : 1)]]);
        Assert.Equal(0, value.Best);
        Assert.Equal(0.3085, value.WrongNow, 0.01);
        double drop = value.Drop([[.. margin.Select((theta, i) => theta + (u * Normal(2, i)))]]);
        Assert.Equal(0.3085 - 0.1290, drop, 0.015);
    }

    [Fact]
    public void A_reading_of_something_that_decides_nothing_is_worth_nothing()
    {
        double[] margin = [.. Enumerable.Range(0, Draws).Select(i => 0.3 + Normal(1, i))];
        var value = new ReadingValue([[.. margin.Select(theta => theta > 0 ? 1.0 : 0)], [.. margin.Select(theta => theta > 0 ? 0.0 : 1)]]);
        Assert.InRange(value.Drop([[.. Enumerable.Range(0, Draws).Select(i => Normal(3, i))]]), 0, 0.01);
        Assert.Equal(0, value.Drop([[.. Enumerable.Repeat(1.0, Draws)]]));
    }

    /// <summary>Made-up choices whose margins are sums of ten things in doubt, of which each leans on a few; truth is drawn, a trial shows one thing with a tenth of its
    /// spread. Trials are counted until the choice is wrong in less than one of twenty draws. Studies are drawn from a fixed number, and two numbers must pass.</summary>
    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    public void Following_the_advice_takes_at_most_half_the_trials_of_random_order_and_beats_the_simple_rules(int seed)
    {
        const int studies = 40;
        List<int> advised = [], random = [], largest = [], cheapest = [];
        int right = 0, open = 0;
        for (int study = 0; study < studies; study++)
        {
            var one = new MadeUpStudy((seed * 1000) + study);
            if (one.SureAtOnce)
            {
                continue; // nothing to advise
            }

            open++;
            advised.Add(one.TrialsUntilSure(one.Advised, out bool choseRight));
            right += choseRight ? 1 : 0;
            random.Add(one.TrialsUntilSure(one.InAnyOrder, out _));
            largest.Add(one.TrialsUntilSure(one.LargestDoubt, out _));
            cheapest.Add(one.TrialsUntilSure(one.Cheapest, out _));
        }

        output.WriteLine($"seed {seed}: {open} open studies, median trials advised {Median(advised)}, random {Median(random)}, largest doubt {Median(largest)}, cheapest {Median(cheapest)}, right {right}");
        Assert.True(open >= studies / 3);
        Assert.True(Median(advised) <= 0.5 * Median(random), $"{Median(advised)} against {Median(random)}");
        Assert.True(Median(advised) < Median(largest), $"{Median(advised)} against {Median(largest)}");
        Assert.True(Median(advised) < Median(cheapest), $"{Median(advised)} against {Median(cheapest)}");
        Assert.True(right >= 0.85 * open, $"{right} of {open}");
    }

    private static double[] Rightly(Func<int, bool> holds) => [.. Enumerable.Range(0, Draws).Select(i => holds(i) ? 1.0 : 0)];

    private static double[] Shown(ulong stream) => [.. Enumerable.Range(0, Draws).Select(i => Normal(stream, i))];

    /// <summary>By hand: whether |x| is above 0.6745 is even odds, and only the square of x tells; a quadratic of a normal number parts the two at x² = 1 at best for its mean, 0.68 of them right, so at least
    /// a tenth of the draws are gained.</summary>
    [Fact]
    public void What_lies_far_out_on_either_side_is_told_by_squares()
    {
        double[] x = Shown(4);
        var value = new ReadingValue([Rightly(i => Math.Abs(x[i]) > 0.6745), Rightly(i => Math.Abs(x[i]) <= 0.6745)]);
        Assert.Equal(0.5, value.WrongNow, 0.01);
        Assert.InRange(value.Drop([x]), 0.3, value.WrongNow);
        Assert.Equal(value.Drop([x]), value.Drop([[.. x.Select(one => 1e6 + (1e-3 * one))]]), 0.002); // in any unit, from any nought
        Assert.Equal(value.Drop([x]), value.Drop([x, x]), 0.002); // twice the same tells no more
        Assert.Equal(value.Drop([x]), value.Drop([[.. x.Select(_ => 7.0)], x]), 1e-12); // what never changes tells nothing
    }

    /// <summary>By hand: whether two numbers have one sign is told by their product and by neither alone; with three numbers products are taken, with four no more.</summary>
    [Fact]
    public void Two_numbers_that_only_tell_together_are_taken_together()
    {
        double[] x = Shown(5), y = Shown(6), other = Shown(7);
        var value = new ReadingValue([Rightly(i => x[i] * y[i] > 0), Rightly(i => x[i] * y[i] <= 0)]);
        Assert.InRange(value.Drop([x]), 0, 0.02);
        Assert.InRange(value.Drop([x, y]), 0.45, value.WrongNow);
        Assert.InRange(value.Drop([y, other, x]), 0.45, value.WrongNow);
        Assert.InRange(value.Drop([x, y, other, Shown(8)]), 0, 0.02);
    }

    /// <summary>By hand: of three choices that are right in 5, 3 and 2 of ten draws the first is best, and wrong in 5; the number that tells which leaves nothing to chance.</summary>
    [Fact]
    public void The_best_choice_is_the_one_that_is_right_most_often()
    {
        int[] which = [.. Enumerable.Range(0, Draws).Select(i => (i / 2 % 10) switch { < 3 => 0, < 8 => 1, _ => 2 })];
        var value = new ReadingValue([.. Enumerable.Range(0, 3).Select(choice => Rightly(i => which[i] == choice))]);
        Assert.Equal(1, value.Best);
        Assert.Equal(0.5, value.WrongNow, 1e-9);
        Assert.Equal(0.5, value.Drop([[.. which.Select(one => (double)one)]]), 1e-9);
        Assert.Equal(0, value.Drop([]));
    }

    private static double Median(List<int> counts) => Sample.Median([.. counts.Select(count => (double)count)]);

    private static double Normal(ulong stream, int i) => Quantiles.Normal(CounterRandom.Uniform(77, stream, (ulong)i));
}
