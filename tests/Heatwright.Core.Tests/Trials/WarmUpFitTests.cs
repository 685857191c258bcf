using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>How well a warm-up is known, by the sums of least squares written out: T = 20 + R·(1 − e^(−x)), R = 10 W/0.1 W/K, x = t/200 s, so that ∂T/∂ln C = −R·x·e^(−x) and ∂T/∂ln G = R·x·e^(−x) − R·(1 − e^(−x)); 1 K a reading,
/// and a factor of e³ either way beforehand.</summary>
public sealed class WarmUpFitTests
{
    private const int Count = 51;

    private static readonly double[] Time = [.. Enumerable.Range(0, Count).Select(i => 24.0 * i)];

    /// <summary>Readings with an error; the first, from which the run begins, without.</summary>
    private static WarmUpLog Log(Func<int, double> error, double timeDoubtS = 0) => new("log", Time, [.. Time.Select(_ => 10.0)],
        [.. Time.Select((t, i) => 20 + (100 * (1 - Math.Exp(-t / 200))) + (i == 0 ? 0 : error(i)))], [.. Time.Select(_ => double.NaN)], 20)
    {
        TimeDoubtS = timeDoubtS,
    };

    private static double[,] Covariance(double[]? times = null)
    {
        double cc = 1 / 9.0, cg = 0, gg = 1 / 9.0;
        foreach (double x in (times ?? Time).Select(t => t / 200))
        {
            double c = -100 * x * Math.Exp(-x), g = -c - (100 * (1 - Math.Exp(-x)));
            (cc, cg, gg) = (cc + (c * c), cg + (c * g), gg + (g * g));
        }

        double determinant = (cc * gg) - (cg * cg);
        return new double[,] { { gg / determinant, -cg / determinant }, { -cg / determinant, cc / determinant } };
    }

    private static double Band(double[,] covariance)
    {
        double c = -600 * Math.Exp(-6), g = -c - (100 * (1 - Math.Exp(-6)));
        return Math.Sqrt((c * c * covariance[0, 0]) + (2 * c * g * covariance[0, 1]) + (g * g * covariance[1, 1]));
    }

    private static double[] Left(WarmUpFindings found, WarmUpLog log) => [.. found.ModelledC[0].Zip(log.EndC, (model, read) => model - read)];

    private static void Alike(double expected, double found) => Assert.Equal(expected, found, 0.02 * Math.Abs(expected));

    /// <summary>Errors of ±0.5 K in turn are less than the 1 K that is allowed: they do not narrow it. Of 51 readings for two numbers and a variance the criterion is 51·ln(Σe²/51) + 6 + 24/47.</summary>
    [Fact]
    public void A_fit_is_known_as_well_as_its_readings_are()
    {
        var log = Log(i => i % 2 == 0 ? 0.5 : -0.5);
        var found = WarmUpFit.Fit([log]);
        Assert.Equal("loss", found.Model);
        double[,] expected = Covariance();
        Alike(expected[0, 0], found.LogCovariance[0, 0]);
        Alike(expected[0, 1], found.LogCovariance[0, 1]);
        Alike(expected[1, 1], found.LogCovariance[1, 1]);
        double sum = Left(found, log).Sum(e => e * e);
        Assert.Equal(Math.Sqrt(sum / Count), found.MisfitK, 1e-9);
        Assert.Equal((Count * Math.Log(sum / Count)) + 6 + (24.0 / 47), found.Tried[0].Aicc, 1e-4);
        Assert.InRange(found.Tried[1].Aicc, found.Tried[0].Aicc - 2, found.Tried[0].Aicc + 4);

        // The curve itself is known by both slopes at the last reading, x = 6.
        Alike(Band(expected), found.ModelledDoubtK[0][^1]);
        Assert.Equal(0, found.ModelledDoubtK[0][0], 1e-9);
    }

    /// <summary>Errors of ±3 K in turn are more: the variance grows by Σe²/(51 − 2). Where they keep their sign for five readings on end it grows once more by (1 + r)/(1 − r), r the correlation with the next.</summary>
    [Theory, InlineData(1), InlineData(5)]
    public void What_is_left_over_widens_what_is_known(int together)
    {
        var log = Log(i => i / together % 2 == 0 ? 3 : -3);
        var found = WarmUpFit.FitAs([log], WarmUpFit.Fit([Log(i => i % 2 == 0 ? 0.5 : -0.5)]));
        double[] left = [.. Left(found, log).Skip(1)];
        double sum = left.Sum(e => e * e), r = Math.Max(0, left.Zip(left.Skip(1), (a, b) => a * b).Sum() / sum);
        Assert.Equal(together > 1, r > 0.5);
        Alike(Covariance()[1, 1] * sum / 49 * (1 + r) / (1 - r), found.LogCovariance[1, 1]);
        Alike(Band(found.LogCovariance), found.ModelledDoubtK[0][^1]);
    }

    /// <summary>Readings that stand alone by more than six spreads are left out of the fit, and what was left out stays out when the readings are moved.</summary>
    [Fact]
    public void A_reading_that_stands_alone_counts_nothing()
    {
        var log = Log(i => i == 30 ? 25 : i % 2 == 0 ? 0.5 : -0.5);
        var found = WarmUpFit.Fit([log]);
        Assert.Equal([30], Enumerable.Range(0, Count).Where(i => found.Scores[0][i] > 6));
        Assert.Equal(0.1, found.LinearWPerK, 0.0003);
        Assert.True(double.IsNaN(found.ModelledDoubtK[0][30]));
        Assert.InRange(found.MisfitK, 0.4, 0.6);
        Assert.Equal(found.LinearWPerK, WarmUpFit.FitAs([log], found).LinearWPerK, 1e-6);

        // It lies 25 K off what those around it are off, and spreads are 1 K at least.
        Assert.InRange(found.Scores[0][30], 23, 27);
    }

    /// <summary>A second of doubt in the times weighs a reading by 1/√(1 + slope²): the early ones, where it runs at up to half a kelvin a second, count less.</summary>
    [Fact]
    public void Times_in_doubt_weigh_less_where_degrees_run_fast()
    {
        double Capacity(double doubtS) => Math.Sqrt(WarmUpFit.Fit([Log(i => i % 2 == 0 ? 0.5 : -0.5, doubtS)]).LogCovariance[0, 0]);
        double sure = Capacity(0), late = Capacity(4);
        Assert.InRange(late / sure, 1.1, 2.1); // by √(1 + (4·0.46)²) = 2.1 at the first of them, by 1.0 at the last
    }

    /// <summary>ln(G·(1 − s)) and ln(G·s) share what is known of G; by s², (1 − s)² and −s·(1 − s) the share's own logit is in each. So (link − loss)/(loss − both) is (1 − 2s)/s, and what the heat capacity shares with the one it shares with the other.</summary>
    [Fact]
    public void What_goes_into_the_grip_shares_the_doubt_of_the_whole_loss()
    {
        double grip = 20;
        List<double> gripC = [], endC = [];
        double end = 20;
        for (int i = 0; i < Count; i++)
        {
            (double e, double g) = (end, grip);
            endC.Add(e + (i == 0 ? 0 : i % 2 == 0 ? 0.5 : -0.5));
            gripC.Add(g + (i == 0 ? 0 : i % 2 == 0 ? 0.3 : -0.3));
            for (int k = 0; k < 2400; k++) // steps of 0.01 s
            {
                double slope = (10 - (0.092 * (end - 20)) - (0.008 * (end - grip))) / 20;
                grip += 0.01 * ((0.008 * (end - grip)) - (0.18 * (grip - 20))) / 70;
                end += 0.01 * slope;
            }
        }

        var found = WarmUpFit.Fit([new("log", Time, [.. Time.Select(_ => 10.0)], [.. endC], [.. gripC], 20)]);
        Assert.False(found.GripIsWarm);
        int loss = found.Searched.ToList().IndexOf("linear loss"), link = found.Searched.ToList().IndexOf("grip link");
        double[,] c = found.LogCovariance;
        double s = found.GripLinkWPerK / (found.GripLinkWPerK + found.LinearWPerK);
        Assert.Equal(0.08, s, 0.01);
        Alike((1 - (2 * s)) / s, (c[link, link] - c[loss, loss]) / (c[loss, loss] - c[loss, link]));
        Assert.Equal(c[0, loss], c[0, link], 1e-9);
        Assert.Equal(c[link, loss], c[loss, link], 1e-12);
        Assert.True(c[link, link] > c[loss, loss]);
        Assert.Equal(-c[loss, link + 1] * (1 - s) / s, c[link, link + 1], 1e-7); // the logit's own with the grip's heat capacity, by −s and 1 − s
        Assert.NotEqual(0, c[link, link + 1]);
        Assert.Equal(Covariance()[0, 0], c[0, 0], 0.05 * c[0, 0]); // the end's own heat capacity is known as well as without a grip
    }

    /// <summary>Errors that swing once over the whole run: neighbours err alike by more than 0.98, which counts as 0.98 and widens by 1.98/0.02 = 99, those of 0.3 K being less than the 1 K that is allowed. No reading stands alone
    /// in such a swing, not even in one of 3 K: what the middle of its neighbours is off differs by little from what it is off itself, where it runs at 0.06 K a row.</summary>
    [Fact]
    public void An_error_that_swings_slowly_widens_no_more_than_a_hundred_times_and_hides_no_reading()
    {
        double[] time = [.. Enumerable.Range(0, 301).Select(i => 4.0 * i)];
        WarmUpLog Swinging(double k) => new("log", time, [.. time.Select(_ => 10.0)], [.. time.Select(t => 20 + (100 * (1 - Math.Exp(-t / 200))) + (k * Math.Sin(2 * Math.PI * t / 1200)))], [.. time.Select(_ => double.NaN)], 20);
        WarmUpFindings Loss(double k) => WarmUpFit.FitAs([Swinging(k)], WarmUpFit.Fit([Log(_ => 0)]) with { Scores = [[.. time.Select(_ => 0.0)]] });
        var found = Loss(0.3);
        double[] left = [.. Left(found, Swinging(0.3)).Skip(1)];
        Assert.InRange(left.Zip(left.Skip(1), (a, b) => a * b).Sum() / left.Sum(e => e * e), 0.98, 1);
        Alike(Covariance(time)[1, 1] * 99, found.LogCovariance[1, 1]);
        Assert.All(Loss(3).Scores[0], score => Assert.InRange(score, 0, 1));
    }

    /// <summary>A lag explains more than the loss alone only where the criterion falls by more than two: here it falls, but by less.</summary>
    [Fact]
    public void A_lag_that_gains_less_than_two_is_not_taken()
    {
        var found = WarmUpFit.Fit([Log(i => (i % 2 == 0 ? 0.5 : -0.5) - (0.4 * Math.Exp(-i / 4.0)))]);
        Assert.InRange(found.Tried[1].Aicc - found.Tried[0].Aicc, -2, 1.9);
        Assert.Equal("loss", found.Model);
    }

    /// <summary>A grip that was warm when the run began starts there, and not where it is read next.</summary>
    [Fact]
    public void A_grip_starts_where_it_was_read_first()
    {
        var log = new WarmUpLog("log", [0, 100, 200], [10, 10, 10], [20, 60, 80], [45, 30, 28], 20);
        Assert.Equal(318.15, WarmUpFit.Simulate(new(20, 0.09, 0, 0, 0.01, 70, 0.18), log)[1][0], 1e-9);
        Assert.Equal(293.15, WarmUpFit.Simulate(new(20, 0.09, 0, 0, 0.01, 70, 0.18), log with { GripC = [double.NaN, 30, 28] })[1][0], 1e-9);
    }
}
