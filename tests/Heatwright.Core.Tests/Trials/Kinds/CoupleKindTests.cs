using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Which type it is: words, next steps and the slope. Type K from the table of [nist-srd60], in mV against 25 °C: 1.023 at 50 °C, 3.096, 5.138, 7.138, 9.153 and 11.209 at 300 °C.</summary>
public class CoupleKindTests
{
    private static readonly double[] Fifties = [50, 100, 150, 200, 250, 300], TypeK = [0.001023, 0.003096, 0.005138, 0.007138, 0.009153, 0.011209];

    [Fact]
    public void A_known_type_is_named_and_marked()
    {
        var answer = Couple(TypeK, Fifties);
        Assert.Equal("K", answer.Word);
        Assert.Equal("Answer: K.", Assert.Single(answer.Says));
        Assert.Empty(answer.Next);
        var chosen = answer.Tried.Single(tried => tried.Chosen);
        Assert.Equal(("type K", "gain 1.000; leads swapped 0.000"), (chosen.Name, chosen.Why));
        Assert.Equal(answer.Tried[0], chosen);
        var swapped = Couple([.. TypeK.Select(v => -v)], Fifties);
        Assert.Equal("K with its leads swapped", swapped.Word);
        Assert.Contains(swapped.Tried, tried => tried is { Name: "type K", Chosen: true });
        Assert.Contains("3 or more", Refused.By("couple-type", [("volts", TypeK[..2]), ("degrees", Fifties[..2])]).Limit, StringComparison.Ordinal);
        Assert.StartsWith("All readings of degrees", Refused.By("couple-type", [("volts", TypeK[..3]), ("degrees", [50, 60, 65])]).What, StringComparison.Ordinal);
        Assert.Equal("cannot tell", Couple([0.00102, 0.00127, 0.00168], [50, 56, 66]).Word); // 16 K are enough for a first answer
    }

    /// <summary>Read twice at one temperature, or nearly so, a couple is a couple.</summary>
    [Theory]
    [InlineData(50, 0.00103)]
    [InlineData(52, 0.00102)]
    public void Two_readings_at_one_temperature_make_no_slope(double degrees, double volts) => Assert.Equal("K", Couple([.. TypeK, volts], [.. Fifties, degrees]).Word);

    /// <summary>By hand: a probe that is known to 30 K tells no type; the next reading is as far above the hottest as that above the coldest, at least 100 K, to whole fifties.</summary>
    [Theory]
    [InlineData(50, 100, 150, 200, "350", 0)]
    [InlineData(51, 100, 150, 200, "350", 1)]
    [InlineData(50, 100, 120, 130, "250", 1)]
    public void What_cannot_be_told_asks_for_a_hotter_reading(double first, double second, double third, double fourth, string near, int narrow)
    {
        double[] degrees = [first, second, third, fourth];
        var answer = Given.Fit("couple-type", [("volts", [.. degrees.Select(c => Math.Round(4.08e-5 * (c - 25), 5))]), ("degrees", degrees)], [("probe doubt", 30)]);
        Assert.Equal("cannot tell", answer.Word);
        Assert.StartsWith($"Take a reading near {near} °C, and read the probe to a degree: it separates ", answer.Next[0], StringComparison.Ordinal);
        string names = answer.Next[0][(answer.Next[0].IndexOf("separates ", StringComparison.Ordinal) + 10)..^1];
        Assert.Equal(3, names.Split(" or ").Length); // of several the three likeliest
        Assert.Contains("K", names, StringComparison.Ordinal);
        Assert.Equal($"{names}: these readings do not tell them apart.", answer.Says[1]);
        Assert.Equal(narrow, answer.Next.Count(next => next == "Readings over 150 K or more tell types apart far better."));
    }

    /// <summary>Type S by its reference function of [nist-srd60], read to 10 µV against 27 °C: S fits, and R, 3.5 % more, is not ruled out at one in a thousand.</summary>
    [Fact]
    public void Two_types_that_stay_are_both_named()
    {
        var answer = Given.Fit("couple-type", [("volts", [0.00020, 0.00063, 0.00111, 0.00162, 0.00216, 0.00262]), ("degrees", [59.1, 118.9, 178.8, 238.6, 298.5, 348.4])], [("cold", 27)], meters: "volts=0.5%+0.03mV");
        Assert.Equal("cannot tell", answer.Word);
        Assert.Equal("S or R: these readings do not tell them apart.", answer.Says[1]);
        Assert.Equal("Take a reading near 650 °C, and read the probe to a degree: it separates S or R.", answer.Next[0]);
    }

    /// <summary>Seven hundredths less than type K all along is no type: 0.93 of it, which is nearest.</summary>
    [Fact]
    public void Another_pair_is_no_standard_type()
    {
        var answer = Couple([.. TypeK.Select(v => 0.93 * v)], Fifties);
        Assert.Equal("not a standard type", answer.Word);
        Assert.Equal("Nearest is K, 0.930 of it: keep your own table; a standard one times a number is wrong elsewhere.", answer.Says[1]);
        Assert.DoesNotContain(answer.Tried, tried => tried.Chosen);
    }

    [Theory]
    [InlineData(100, true)]
    [InlineData(-100, true)]
    [InlineData(94, false)]
    [InlineData(3.9, true)]
    [InlineData(4.1, false)]
    public void A_slope_that_no_couple_has_is_said(double slope, bool none)
    {
        var answer = Couple([.. Fifties.Select(c => slope * 1e-6 * (c - 25))], Fifties);
        Assert.Equal(none, answer.Word == "not a thermocouple");
        if (none)
        {
            Assert.Equal(FormattableString.Invariant($"{slope:0.0} µV/K on the mean, and it wanders: clip, probe or meter?"), answer.Says[1]);
            Assert.StartsWith("Do the sensor test first", answer.Next[0], StringComparison.Ordinal);
        }
    }

    /// <summary>By hand: from 100 to 150 °C it rises by 16 µV/K, then by 65 µV/K: 24 off the mean of 41, more than four tenths. Three readings, or less than 60 K, are too few to say so.</summary>
    [Theory]
    [InlineData(4, 50, true)]
    [InlineData(3, 50, false)]
    [InlineData(4, 19, false)]
    [InlineData(4, 20, true)]
    public void A_slope_that_wanders_is_no_couples(int count, double step, bool none)
    {
        double[] degrees = [.. Enumerable.Range(1, count).Select(i => 50 + (step * (i - 1)))];
        double[] volts = [.. ((double[])[0.001, 0.001 + (4.1e-5 * step), 0.001 + (5.7e-5 * step), 0.001 + (1.22e-4 * step)])[..count]];
        Assert.Equal(none, Couple(volts, degrees).Word == "not a thermocouple");
    }

    /// <summary>By hand: 40 µV/K over 50, 100, 150 and 200 °C, with e, −e, −e, e beside, which turns no line. The probe's 2 K are 80 µV, the last digit 4.16 µV: √(80² + 4.16²)/√12500 = 0.7165 µV/K are promised.
    /// e = 80 µV scatters by √(4·e²/2/12500) = 1.012, within 1.6 times what is promised and told as 1.1 times; 100 µV by 1.265, beyond.</summary>
    [Theory]
    [InlineData(0, 0.716511, double.PositiveInfinity)]
    [InlineData(8e-5, 0.788162, double.PositiveInfinity)]
    [InlineData(1e-4, 1.264911, 2)]
    public void The_slopes_doubt_is_the_promise_unless_the_scatter_is_more(double e, double doubt, double degrees)
    {
        var answer = Couple([0.001 + e, 0.003 - e, 0.005 - e, 0.007 + e], [50, 100, 150, 200]);
        Assert.Equal(40, answer.Value("slope"), 1e-9);
        Assert.Equal(doubt, answer.Scatter("slope"), 2e-6);
        Assert.Equal(degrees, answer.Findings[0].Degrees);
        Assert.Equal([0.001, 0.003, 0.005, 0.007], answer.Picture!.Fitted.Select(v => Math.Round(v, 12)));
    }

    /// <summary>By hand: three readings have the scatter that they have, d·√(6/5000); a probe of no said doubt has its last degree, 0.416 K of it: √(16.65² + 4.16²)/√12500 µV/K. A meter's gain moves it by 1 %/√3.</summary>
    [Fact]
    public void Three_readings_scatter_as_they_do_and_a_probe_has_its_last_digit()
    {
        var three = Couple([0.00101, 0.00298, 0.00501], [50, 100, 150]);
        Assert.Equal(10 * Math.Sqrt(6 / 5000.0), three.Scatter("slope"), 1e-6);
        Assert.Equal(double.PositiveInfinity, three.Findings[0].Degrees);
        (string, double[])[] line = [("volts", [0.001, 0.003, 0.005, 0.007]), ("degrees", [50, 100, 150, 200])];
        Assert.Equal(0.153537, Given.Fit("couple-type", line, [("probe doubt", 0)]).Scatter("slope"), 2e-6);
        Assert.Equal(0.4 / Math.Sqrt(3), Given.Fit("couple-type", line, meters: "volts=1%").Push("slope", "gain"), 1e-9);
    }

    /// <summary>By hand: seven readings show a bend, and it is no scatter: 0.3026 µV/K stay promised, √(80² + 2.89²)/√70000. What is left beside it, 3, −7, 1, 6, 1, −7 and 3 of e, turns no line and no bend:
    /// √(154·e²/4/70000) is 0.516 for e = 22 µV, more than 1.6 times the promise, and 0.469 for 20 µV.</summary>
    [Theory]
    [InlineData(0, 0.302569, double.PositiveInfinity)]
    [InlineData(2e-5, 0.302569, double.PositiveInfinity)]
    [InlineData(2.2e-5, 0.515946, 4)]
    public void A_bend_of_many_readings_is_no_scatter(double e, double doubt, double degrees)
    {
        double[] beside = [3, -7, 1, 6, 1, -7, 3], at = [50, 100, 150, 200, 250, 300, 350];
        var answer = Couple([.. at.Select((c, i) => (4e-5 * (c - 25)) + (2e-8 * (c - 200) * (c - 200)) + (beside[i] * e))], at);
        Assert.Equal(40, answer.Value("slope"), 1e-6);
        Assert.Equal(doubt, answer.Scatter("slope"), 3e-4);
        Assert.Equal(degrees, answer.Findings[0].Degrees);
    }

    /// <summary>A meter of which nothing is said is taken as right to half a per cent, as one with a promise of that is: a couple of 0.4 % more than type K is off by as much of it.</summary>
    [Fact]
    public void A_meter_of_no_said_promise_is_taken_as_right_to_half_a_per_cent()
    {
        (string, double[])[] readings = [("volts", [.. TypeK.Select(v => 1.004 * v)]), ("degrees", Fifties)];
        double Misfit(string? meters) => Given.Fit("couple-type", readings, meters: meters).Tried.Single(tried => tried.Name == "type K").Rss;
        Assert.Equal(Misfit("volts=0.5%"), Misfit(null), 1e-9);
    }

    private static TrialAnswer Couple(double[] volts, double[] degrees) => Given.Fit("couple-type", [("volts", volts), ("degrees", degrees)]);
}
