using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Errors that all readings of a meter share, and the search for the right valley.</summary>
public class SharedErrorTests
{
    /// <summary>A law through nothing shows the zero of the meter. By hand, weighted least squares with the covariance V = u²·I + z²·1·1ᵀ and its inverse by Sherman and Morrison:
    /// b = xᵀV⁻¹y/xᵀV⁻¹x, variance 1/xᵀV⁻¹x. Drop at 1 to 5 A in steps of 0.1 mV, amps in steps of 10 mA, which are
    /// another 0.1 mV at 10 mΩ; of so few readings a last digit may flicker by 0.3 of its step besides; meter ±3 steps.</summary>
    [Fact]
    public void A_zero_that_the_readings_show_is_taken_out_as_far_as_they_show_it()
    {
        double[] amps = [1, 2, 3, 4, 5], drop = [0.0102, 0.0202, 0.0302, 0.0402, 0.0502];
        double own = Math.Sqrt(2 * 1e-4 * 1e-4 * ((1 / 12.0) + 0.09)), zero = 3e-4 / Math.Sqrt(3);
        double share = zero * zero / ((own * own) + (5 * zero * zero)), sumX = amps.Sum(), sumY = drop.Sum();
        double xx = (amps.Sum(x => x * x) - (share * sumX * sumX)) / (own * own), xy = (amps.Zip(drop, (x, y) => x * y).Sum() - (share * sumX * sumY)) / (own * own);
        var ohms = Given.Fit("two-point-drop", [("amps", amps), ("drop", drop)], meters: "drop=0%+3d").Find("ohms")!;
        Assert.Equal(xy / xx, ohms.Value, 1e-4 * ohms.Value);
        Assert.Equal(Math.Sqrt(1 / xx), ohms.StandardDoubt, 0.01 * ohms.StandardDoubt);
    }

    /// <summary>A cooling of 100 s behind 3 s, 228 K above the air, with 0.04 K of noise and a thermometer that is right but promises no better than 1 % + 1 K. A gain acts on the noise of the readings too;
    /// if that were taken for what the gain does to the law, the squares of the noise would pull the time constant to one side, by a fifth of its doubt.</summary>
    [Fact]
    public void Noise_times_a_gain_pulls_nothing_to_one_side()
    {
        var random = new Random(20261127);
        double[] time = [.. Enumerable.Range(0, 40).Select(i => Math.Round(300.0 / 39 * i))];
        double sum = 0, doubt = 0;
        const int pairs = 30;
        for (int i = 0; i < pairs; i++)
        {
            double[] noise = [.. time.Select(_ => 0.04 * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble()))];

            // Each noise once with either sign: what it does in proportion cancels, what its square does stays.
            foreach (int sign in new[] { 1, -1 })
            {
                double[] degrees = [.. time.Select((t, k) => Math.Round(22 + (228 * ((100 * Math.Exp(-t / 100)) - (3 * Math.Exp(-t / 3))) / 97) + (sign * noise[k]), 1))];
                var found = Given.Fit("cool-down", [("time", time), ("degrees", degrees)], [("air", 22)], meters: "degrees=1%+1degC").Find("time constant")!;
                (sum, doubt) = (sum + found.Value - 100, found.StandardDoubt);
            }
        }

        Assert.InRange(sum / (2 * pairs) / doubt, -0.07, 0.07);
    }

    /// <summary>By hand: a gain of ±1 % moves every reading of a mean alike, so nothing is learnt of it: 1 % of 2 A over √3.</summary>
    [Fact]
    public void A_gain_that_the_readings_cannot_show_stays_as_wide_as_promised()
    {
        var amps = Given.Fit("standby-drain", [("amps", [2.0001, 2.0002, 2.0003])], meters: "amps=1%+0d").Find("standby amps")!;
        double gain = amps.Doubts.Pushes.Single(push => push.Cause.Id.EndsWith(" gain", StringComparison.Ordinal)).By;
        Assert.Equal(0.01 * 2.0002e6 / Math.Sqrt(3), Math.Abs(gain), 5.0);
    }

    /// <summary>A display that shows the same three times was rounded the same way three times: its last digit, 0.1/√12, is no smaller for that.</summary>
    [Fact]
    public void Three_equal_readings_tell_no_more_of_the_last_digit_than_one()
    {
        double one = Given.Fit("cold-ohms", [("ohms", [7.4])], [("leads", 0)]).Find("ohms")!.StandardDoubt;
        double three = Given.Fit("cold-ohms", [("ohms", [7.4, 7.4, 7.4])], [("leads", 0)]).Find("ohms")!.StandardDoubt;
        Assert.Equal(one, three, 1e-9);
    }

    /// <summary>sin(t) read over three turns, searched from sin(4·t): that start ends in another valley, a quarter of it does not.</summary>
    [Fact]
    public void A_search_from_several_starts_leaves_the_wrong_valley()
    {
        double[] time = [.. Enumerable.Range(0, 40).Select(i => 0.47 * i)];
        var sheet = Sheet(time, [.. time.Select(Math.Sin)]);
        var one = new BenchModel("a turn", "y", ["x"], _ => [4.0], (s, p) => [.. s["x"].Select(t => Math.Sin(p[0] * t))], [Curves.Tell("turns", Units.One, 0)]) { Lower = [0.01], Upper = [100] };
        Assert.True(BenchFit.Solve(one, sheet).Rss > 1);
        var several = BenchFit.Solve(one with { Further = Curves.Spread(0) }, sheet);
        Assert.Equal(1, several.P[0], 1e-6);
    }

    private static TrialSheet Sheet(double[] x, double[] y)
    {
        List<TrialRemark> remarks = [];
        return SheetMaker.Make(TrialCard.Find("own-line")!, Given.Readings("own-line", [("x", x), ("y", y)]), remarks).Value;
    }

    /// <summary>By hand: a row 4.1, 4.0, 3.9 ... V of a cell with one 38 among them.</summary>
    [Fact]
    public void A_log_reading_that_stands_alone_takes_no_part_in_a_sum()
    {
        double[] time = [.. Enumerable.Range(0, 12).Select(i => 100.0 * i)], volts = [.. Enumerable.Range(0, 12).Select(i => Math.Round(4.1 - (0.1 * i), 2))];
        double clean = Given.Fit("capacity", [("time", time), ("volts", volts), ("amps", [.. time.Select(_ => 1.0)])]).Value("energy");
        volts[4] *= 10;
        var answer = Given.Fit("capacity", [("time", time), ("volts", volts), ("amps", [.. time.Select(_ => 1.0)])]);
        Assert.Equal(clean, answer.Value("energy"), 0.001 * clean);
        Assert.Equal(5, answer.Remarks.Single(remark => remark.LeftOut).Reading);
    }
}
