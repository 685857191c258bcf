using Heatwright.Tests.Physics;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>The worked examples of identification, this time through the bench tests themselves. Every figure by an independent script; tolerance: half of the last printed digit.</summary>
public class WorkedTrialTests
{
    [Fact]
    public void A_warm_up_and_cool_down_choose_two_bodies_and_find_their_numbers()
    {
        double[] time = [.. Enumerable.Range(1, 40).Select(i => 15.0 * i)];
        var answer = Given.Fit("warm-up", [("time", time), ("watts", [.. time.Select(t => t <= 300 ? 12.0 : 0)]), ("degrees", WorkedWarmUp.ReadC)], [("air", 24), ("off", 300)]);
        Assert.Equal("two bodies", answer.Tried.Single(tried => tried.Chosen).Name);
        Printed.Agree("K, tau1, tau2", Printed.Computed, "29.36911, 216.0372, 9.14589", answer.Value("resistance to air"), answer.Value("time constant"), answer.Value("second time constant"));
        // 1.3573: the script printed 1.3574, mended by a second program.
        Printed.Agree("errors", Printed.Computed, "0.07597, 1.3573, 0.46411", Doubt(answer, "resistance to air"), Doubt(answer, "time constant"), Doubt(answer, "second time constant"));
        Printed.Agrees("(τ₁ + τ₂)/K", Printed.Computed, "7.6673", answer.Value("most heat capacity"));
        Printed.Agrees("its doubt", Printed.Computed, "0.0224", Doubt(answer, "most heat capacity"));

        // The readings were made from 2.2 and 5.0 J/K, 7.2 together: (τ₁ + τ₂)/K holds C₁·G₂/G₁₂ more, and one place cannot tell how much that is.
        var (low, high) = answer.Findings.Single(finding => finding.Name == "heat capacity").Middle(0.95);
        Assert.InRange(7.2, low, high);
        Assert.True(answer.Value("most heat capacity") > high);
        Printed.Agree("spread", Printed.Computed, "5.1813, 1.4795, 1.5708", Spread("one body"), Spread("two bodies"), Spread("one body behind a dead time"));
        double u = 0.1 / Math.Sqrt(12); // the readings' own last digit divides the sums of squares
        Printed.Agree("RSS", Printed.Computed, "1020.13, 80.9913, 91.2885", Rss("one body") * u * u, Rss("two bodies") * u * u, Rss("one body behind a dead time") * u * u);
        Printed.Agree("z", Printed.Computed, "-3.373, -0.320, 0.961", Model("one body").RunsZ, Model("two bodies").RunsZ, Model("one body behind a dead time").RunsZ);
        Printed.Agrees("p", Printed.Computed, "6.0e-22", Model("two bodies").P);
        Assert.Contains(answer.Says, says => says.StartsWith("Temperature at one place carries three thermal numbers", StringComparison.Ordinal));
        TriedModel Model(string name) => answer.Tried.Single(tried => tried.Name == name);
        double Rss(string name) => Model(name).Rss;
        double Spread(string name) => Model(name).Spread;
    }

    [Fact]
    public void The_moment_of_switching_is_found_where_nobody_noted_it()
    {
        double[] time = [.. Enumerable.Range(1, 40).Select(i => 15.0 * i)];
        foreach (double last in (double[])[299, 300])
        {
            var answer = Given.Fit("warm-up", [("time", time), ("watts", [.. time.Select(t => t <= last ? 12.0 : 0)]), ("degrees", WorkedWarmUp.ReadC)], [("air", 24)]);
            Printed.Agrees("K", Printed.Computed, "29.36911", answer.Value("resistance to air"));
        }
    }

    /// <summary>Invented marks: 200 °C at 44 s, 280 °C at 102 s, stuck at 298 °C, read at 420 s.</summary>
    [Fact]
    public void Three_stopwatch_marks_give_a_first_answer()
    {
        var answer = Given.Fit("warm-up-marks", [("time", [44, 102, 420]), ("degrees", [200, 280, 298])], [("air", 25), ("stopwatch", 1.5), ("degrees doubt", 4)], [("mark", ["at", "at", "stuck"])]);
        Printed.Agree("D, tau", Printed.Computed, "275.2175, 42.11459", answer.Value("rise at rest"), answer.Value("time constant"));
        Printed.Agree("doubts", Printed.Computed, "3.606, 2.376", Doubt(answer, "rise at rest"), Doubt(answer, "time constant"));
        Printed.Agrees("chi²", Printed.Computed, "1.605", answer.Tried[0].Rss);
        double[,] covariance = answer.Covariance();
        Printed.Agrees("correlation", Printed.Computed, "0.634", covariance[0, 1] / Math.Sqrt(covariance[0, 0] * covariance[1, 1]));
    }

    [Fact]
    public void Two_plateaus_rule_out_a_loss_in_proportion()
    {
        var answer = Given.Fit("hold-power", [("watts", [5.00, 8.45]), ("degrees", [298, 391])], [("air", 25)]);
        Printed.Agrees("n", Printed.Computed, "1.789896", answer.Value("loss exponent"));
        Printed.Agrees("G", Printed.Computed, "0.006769223", answer.Value("linear loss"));
        Printed.Agrees("εA", Printed.Computed, "5.642658", answer.Value("radiating area") * 1e4);
        Assert.Contains(answer.Says, says => says.Contains("is ruled out", StringComparison.Ordinal));
    }

    private static readonly double[] FiveWatts = [103, 166, 214, 247, 267, 280, 289, 291, 293, 300, 299, 300, 300, 298, 302];
    private static readonly double[] MoreWatts = [142, 234, 295, 327, 352, 364, 368, 368, 369, 373, 373, 372, 372, 373, 373];

    [Fact]
    public void Two_power_levels_tell_radiation_from_a_loss_in_proportion()
    {
        double[] time = [.. Enumerable.Range(1, 15).Select(i => 20.0 * i)];
        var answer = Given.Fit("warm-up", [("time", [.. time, .. time]), ("watts", [.. time.Select(_ => 5.0), .. time.Select(_ => 7.5)]), ("degrees", [.. FiveWatts, .. MoreWatts])], [("air", 25)]);
        Assert.Equal("one body that radiates", answer.Tried.Single(tried => tried.Chosen).Name);

        // The plant's stepper is good to a few parts in 1e5 at its own step; the script's figures have seven digits.
        Assert.Equal(1.142704, answer.Value("heat capacity"), 5e-4);
        Assert.Equal(0.007059, answer.Value("linear loss"), 2e-5);
        Assert.Equal(3.041367e-11 / 5.670374419e-8, answer.Value("radiating area"), 2e-6);
        Assert.Equal(0.00726, Doubt(answer, "heat capacity"), 2e-4);
        Assert.Equal(0.000279, Doubt(answer, "linear loss"), 5e-6);
    }

    /// <summary>Worked readings of a K pair and of a mixed pair that a careless fit calls N; cold end 27 °C, probe 2 K, meter 0.5 % and 20 µV.</summary>
    [Fact]
    public void A_type_is_named_and_a_mixed_pair_is_not()
    {
        double[] degrees = [60, 120, 180, 240, 300, 360];
        TrialAnswer Type(params double[] millivolts) => Given.Fit("couple-type", [("volts", [.. millivolts.Select(mv => mv / 1000)]), ("degrees", degrees)], [("cold", 27), ("cold doubt", 1.5), ("probe doubt", 2)], meters: "volts=0.866%+0.035mV");
        var known = Type(1.36, 3.95, 6.36, 8.62, 11.10, 13.59);
        Assert.Equal("K", known.Word);
        Assert.Equal(40.41, known.Value("slope"), 0.005);
        Assert.Equal(0.34, known.Findings[0].ScatterDoubt, 0.005);
        Assert.Equal("not a standard type", Type(0.99, 2.82, 4.68, 6.57, 8.49, 10.43).Word);
        Assert.Equal("K with its leads swapped", Type(-1.36, -3.95, -6.36, -8.62, -11.10, -13.59).Word);
    }

    private static double Doubt(TrialAnswer answer, string name) => answer.Find(name)!.StandardDoubt;
}
