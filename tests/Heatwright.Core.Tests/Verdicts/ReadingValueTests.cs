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
        List<int> advised = [], random = [], largest = [];
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
        }

        output.WriteLine($"seed {seed}: {open} open studies, median trials advised {Median(advised)}, random {Median(random)}, largest doubt {Median(largest)}, right {right}");
        Assert.True(open >= studies / 3);
        Assert.True(Median(advised) <= 0.5 * Median(random), $"{Median(advised)} against {Median(random)}");
        Assert.True(Median(advised) < Median(largest), $"{Median(advised)} against {Median(largest)}");
        Assert.True(right >= 0.85 * open, $"{right} of {open}");
    }

    private static double Median(List<int> counts) => Sample.Median([.. counts.Select(count => (double)count)]);

    private static double Normal(ulong stream, int i) => Quantiles.Normal(CounterRandom.Uniform(77, stream, (ulong)i));
}

/// <summary>Three choices over ten things in doubt, with their truth.</summary>
internal sealed class MadeUpStudy
{
    private const int Things = 10, Choices = 3, Draws = 400;
    private const double Scatter = 0.1;

    private readonly int number;
    private readonly double[][] leans = new double[Choices][];
    private readonly double[] offsets = new double[Choices];
    private readonly double[] doubts = new double[Things];
    private readonly double[] truth = new double[Things];

    public MadeUpStudy(int number)
    {
        this.number = number;
        for (int k = 0; k < Things; k++)
        {
            doubts[k] = 0.5 + Uniform(1, k);
            truth[k] = doubts[k] * Normal(2, k);
        }

        for (int c = 0; c < Choices; c++)
        {
            // Each choice leans strongly on two things and hardly on the rest, as tools do.
            int strong = (int)(Uniform(3, c) * Things), other = (int)(Uniform(4, c) * Things);
            leans[c] = [.. Enumerable.Range(0, Things).Select(k => (k == strong || k == other ? 1.0 : 0.05) * (Uniform(5, (c * Things) + k) < 0.5 ? -1 : 1))];
            offsets[c] = 1.6 * (Uniform(6, c) - 0.5);
        }
    }

    public bool SureAtOnce => new ReadingValue(Right(truth, [])).WrongNow <= NextReadings.SureEnough;

    /// <summary>Trials done before the choice is sure, in the order that a rule gives.</summary>
    public int TrialsUntilSure(Func<HashSet<int>, int> rule, out bool choseRight)
    {
        HashSet<int> done = [];
        while (true)
        {
            var value = new ReadingValue(Right(truth, done));
            if (value.WrongNow <= NextReadings.SureEnough || done.Count == Things)
            {
                double[][] real = Rows(truth.Select(t => new[] { t }).ToArray());
                choseRight = real[value.Best][0] == 1;
                return done.Count;
            }

            done.Add(rule(done));
        }
    }

    public int Advised(HashSet<int> done)
    {
        var value = new ReadingValue(Right(truth, done));
        double[][] drawn = Drawn(done);
        return Open(done).OrderByDescending(k => value.Drop([[.. drawn[k].Select((x, i) => x + (Scatter * doubts[k] * Normal(8, (k * Draws) + i)))]])).ThenByDescending(k => doubts[k]).First();
    }

    public int InAnyOrder(HashSet<int> done) => Open(done).OrderBy(k => Uniform(9, k)).First();

    public int LargestDoubt(HashSet<int> done) => Open(done).OrderByDescending(k => doubts[k]).First();

    private static IEnumerable<int> Open(HashSet<int> done) => Enumerable.Range(0, Things).Where(k => !done.Contains(k));

    /// <summary>A thing that was tried is known to the trial's scatter about what it showed; the others are as they were.</summary>
    private double[][] Drawn(HashSet<int> done) => [.. Enumerable.Range(0, Things).Select(k => Enumerable.Range(0, Draws)
        .Select(i => done.Contains(k) ? truth[k] + (Scatter * doubts[k] * (Normal(10, k) + Normal(11, (k * Draws) + i))) : doubts[k] * Normal(12, (k * Draws) + i)).ToArray())];

    private double[][] Right(double[] _, HashSet<int> done) => Rows(Drawn(done));

    private double[][] Rows(double[][] things)
    {
        int draws = things[0].Length;
        double[][] keeps = [.. Enumerable.Range(0, Choices).Select(c => Enumerable.Range(0, draws)
            .Select(i => offsets[c] + Enumerable.Range(0, Things).Sum(k => leans[c][k] * things[k][i]) > 0 ? 1.0 : 0).ToArray())];
        return [.. keeps, [.. Enumerable.Range(0, draws).Select(i => keeps.All(row => row[i] == 0) ? 1.0 : 0)]];
    }

    private double Uniform(ulong stream, int i) => CounterRandom.Uniform((ulong)number, stream, (ulong)i);

    private double Normal(ulong stream, int i) => Quantiles.Normal(Uniform(stream, i));
}
