using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>What the tests of warming and cooling say, and at which readings. One body: 10 W and 20 K/W, so 200 K above 20 °C, with 100 s.</summary>
public class HeatFitsTests
{
    /// <summary>By hand: at 390 s it has 200 · (1 − e^−3.9) = 196 K.</summary>
    [Fact]
    public void A_warm_up_says_where_it_would_come_to_rest()
    {
        var answer = WarmUp(40, _ => 10, t => Rise(t));
        Assert.Equal("One body explains these readings.", answer.Says[0]);
        Assert.Equal("At 10.0 W it would come to rest at 220 °C.", answer.Says[1]);
        Assert.StartsWith("This loss belongs to a rise of about 196 K.", answer.Says[2], StringComparison.Ordinal);
        Assert.Equal("Switch off and log the cooling too: it has no error of the power and tells the air apart.", answer.Next[^1]);
        Assert.Equal(20, answer.Value("resistance to air"), 0.05);
        Assert.Equal(1 / 20.0, answer.Value("linear loss"), 2e-4);
        Assert.Equal(5, answer.Value("heat capacity"), 0.02); // 100 s / 20 K/W
        Assert.Empty(answer.Notes);
        double[] time = [0, 50, 100, 150, 200, 250];
        var worked = Given.Fit("warm-up", [("time", time), ("degrees", [.. time.Select(t => Math.Round(20 + Rise(t), 1))]), ("volts", [.. time.Select(_ => 5.0)]), ("amps", [.. time.Select(_ => 2.0)])]);
        Assert.Equal(20, worked.Value("resistance to air"), 0.1); // 5 V · 2 A; the first reading stands for the air
        Assert.Equal("At 10.0 W it would come to rest at 220 °C.", worked.Says[1]);
        Assert.Equal("0 W", Refused.By("warm-up", [("time", time), ("degrees", time), ("watts", [0, 0, 0, 0, 0, 0])]).Value);
        Assert.StartsWith("3 or more", Refused.By("warm-up", [("time", [0, 10]), ("degrees", [20, 30]), ("watts", [10, 10])]).Limit, StringComparison.Ordinal);
    }

    [Fact]
    public void A_loss_is_said_to_belong_to_its_rise_from_a_hundred_kelvin_up()
    {
        Assert.Null(HeatFits.Cooler(99.9));
        Assert.StartsWith("This loss belongs to a rise of about 100 K.", HeatFits.Cooler(100), StringComparison.Ordinal);
    }

    /// <summary>By hand: until it is switched off it rises, then what it has goes with e^(−t/100 s).</summary>
    [Theory]
    [InlineData(190, "at the earlier reading")]
    [InlineData(195, "in their middle")]
    [InlineData(200, "at the later reading")]
    public void When_the_power_changed_is_found(double off, string where)
    {
        var answer = WarmUp(24, t => t < 195 ? 10 : 0, t => 0.35 * (t <= off ? Rise(t) : Rise(off) * Math.Exp(-(t - off) / 100)));
        Assert.Equal($"When the power changed between two readings is not noted: {where} fits best. Add --set off=...s to say it.", Assert.Single(answer.Notes));
        Assert.DoesNotContain(answer.Next, next => next.StartsWith("Switch off", StringComparison.Ordinal));
        Assert.Equal(7, answer.Value("resistance to air"), 0.05);
        if (off == 195)
        {
            Assert.Empty(WarmUp(24, t => t < 195 ? 10 : 0, t => 0.35 * (t <= off ? Rise(t) : Rise(off) * Math.Exp(-(t - off) / 100)), ("off", off)).Notes);
        }
    }

    /// <summary>By hand: 14 J/K and 85 mW/K, a time constant of 164.7 s; 10 W until 100 s, 5 W until 300 s, then nothing. Each row holds its own watts, and when it was switched off is said.</summary>
    [Theory, InlineData(false), InlineData(true)]
    public void A_power_that_changed_before_it_was_switched_off_counts_as_it_was_read(bool now)
    {
        const double Tau = 14 / 0.085;
        double First(double t) => 10 / 0.085 * (1 - Math.Exp(-t / Tau));
        double Second(double t) => (5 / 0.085) + ((First(100) - (5 / 0.085)) * Math.Exp(-(t - 100) / Tau));
        double Rise(double t) => t <= 100 ? First(t) : t <= 300 ? Second(t) : Second(300) * Math.Exp(-(t - 300) / Tau);
        double[] time = [.. Enumerable.Range(0, 61).Select(i => 10.0 * i)];
        var answer = Given.Fit("warm-up", [("time", time), ("watts", [.. time.Select((t, i) => now && i % 5 > 0 && t is not (100 or 110 or 290) ? double.NaN : t <= 100 ? 10.0 : t <= 300 ? 5 : 0)]), ("degrees", [.. time.Select(t => 18.5 + Rise(t))])], [("air", 18.5), ("off", 300)]);
        Assert.Equal(0.085, answer.Value("linear loss"), 0.0005);
        Assert.Equal(14, answer.Value("heat capacity"), 0.15);
    }

    /// <summary>A power that drifts by less than three tenths was not switched; one that stays above a fiftieth was not switched off.</summary>
    [Theory]
    [InlineData(7.0, 0, 1)]
    [InlineData(6.9, 1, 1)]
    [InlineData(0.3, 1, 1)]
    [InlineData(0.2, 1, 0)]
    public void A_power_that_fell_was_switched_or_drifted(double last, int notes, int next)
    {
        var answer = WarmUp(12, t => t < 105 ? 10 : last, t => Rise(t));
        Assert.Equal(notes, answer.Notes.Count);
        Assert.Equal(next, answer.Next.Count(says => says.StartsWith("Switch off and log the cooling too", StringComparison.Ordinal)));
        Assert.DoesNotContain(WarmUp(12, _ => 10, t => Rise(t), ("off", 1000)).Next, says => says.StartsWith("Switch off", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(8, 100, false, false)]
    [InlineData(9, 80, false, false)]
    [InlineData(9, 80.2, true, false)]
    [InlineData(24, 60, false, false)]
    [InlineData(25, 60, false, true)]
    public void Models_are_tried_where_the_readings_may_tell_them(int count, double rise, bool radiates, bool three)
    {
        double Part(double t) => (1 - Math.Exp(-0.3 * t / (count - 1))) / (1 - Math.Exp(-3));
        var tried = WarmUp(count, _ => 10, t => rise * Part(t)).Tried;
        Assert.Equal(radiates, tried.Any(model => model.Name == "one body that radiates"));
        Assert.Equal(three, tried.Any(model => model.Name == "two bodies behind a dead time"));
    }

    /// <summary>By hand: 70 K by 10 W through two bodies in a row, of 100 s and 10 s. A core of a tenth to three quarters of its tip leaves (100 − 0.425 · 10)/7 J/K, ± 0.325 · 10/√3/7; at most 110/7.</summary>
    [Fact]
    public void Two_bodies_leave_the_share_of_the_core_open()
    {
        var answer = WarmUp(24, _ => 10, t => 70 * (1 - (((100 * Math.Exp(-t / 100)) - (10 * Math.Exp(-t / 10))) / 90)));
        Assert.Equal("two bodies", answer.Tried.Single(tried => tried.Chosen).Name);
        Assert.Equal(100, answer.Value("time constant"), 0.2);
        Assert.Equal(10, answer.Value("second time constant"), 0.1);
        Assert.Equal(95.75 / 7, answer.Value("heat capacity"), 0.02);
        Assert.Equal(110 / 7.0, answer.Value("most heat capacity"), 0.02);
        Assert.Equal(0.268056, answer.Push("heat capacity", "share of core and tip"), 3e-3);
        Assert.Equal(0, answer.Push("time constant", "share of core and tip"));
    }

    /// <summary>By hand: nothing for 25 s, then one body. (100 − 0.425 · 25)/20 J/K ± 0.325 · 25/√3/20; the time constant ± 25/√3/30.</summary>
    [Fact]
    public void A_dead_time_leaves_the_share_of_the_core_open_too()
    {
        var answer = WarmUp(24, _ => 10, t => t < 25 ? 0 : Rise(t - 25), step: 15);
        Assert.Equal("one body behind a dead time", answer.Tried.Single(tried => tried.Chosen).Name);
        Assert.StartsWith("Temperature at one place carries three thermal numbers", answer.Says[0], StringComparison.Ordinal);
        Assert.Equal(100, answer.Value("time constant"), 0.1);
        Assert.Equal(25, answer.Value("dead time"), 0.1);
        Assert.Equal(4.46875, answer.Value("heat capacity"), 0.01);
        Assert.Equal(0.234549, answer.Push("heat capacity", "share of core and tip"), 2e-3);
        Assert.Equal(0.481125, answer.Push("time constant", "share of core and tip"), 4e-3);
    }

    /// <summary>By hand: (200·e^(−t/200) − 20·e^(−t/20))/180 of 200 K, seen from 50 s of the clock on.</summary>
    [Fact]
    public void A_cooling_through_two_bodies_tells_both_times()
    {
        double[] time = [.. Enumerable.Range(0, 40).Select(i => 12.0 * i)];
        var answer = Cool([.. time.Select(t => t + 50)], [.. time.Select(t => 20 + (200 * ((200 * Math.Exp(-t / 200)) - (20 * Math.Exp(-t / 20))) / 180))], ("air", 20));
        Assert.Equal("two bodies", answer.Tried.Single(tried => tried.Chosen).Name);
        Assert.Equal(200, answer.Value("time constant"), 0.2);
        Assert.Equal(20, answer.Value("second time constant"), 0.2);
        Assert.Equal("A cooling alone tells times: heat capacity and loss need a known power.", Assert.Single(answer.Says));
        Assert.DoesNotContain(answer.Next, next => next.StartsWith("Note the air", StringComparison.Ordinal));
        var airless = Cool(time, [.. time.Select(t => 20 + (200 * Math.Exp(-t / 100)))]);
        Assert.Equal(100, airless.Value("time constant"), 0.2);
        Assert.Equal("Note the air temperature: a cooling that has to find it too tells its time less well.", airless.Next[^1]);
        Assert.Null(airless.Find("air"));
        Assert.StartsWith("3 or more", Refused.By("cool-down", [("time", [0, 10]), ("degrees", [200, 100])]).Limit, StringComparison.Ordinal);
    }

    /// <summary>85 °C at rest, a thermometer that may be 2 °C/√3 off: ± 1.155 °C. Beyond 1.645 of that, 1.9 °C, a limit is kept or exceeded.</summary>
    [Theory]
    [InlineData(82, "exceeded")]
    [InlineData(84, "cannot be told")]
    [InlineData(86, "cannot be told")]
    [InlineData(88, "kept")]
    public void A_limit_is_kept_exceeded_or_cannot_be_told(double limit, string word)
    {
        double[] time = [.. Enumerable.Range(0, 25).Select(i => 30.0 * i)];
        var answer = Given.Fit("stuck-on", [("time", time), ("degrees", [.. time.Select(t => Warm(t))])], [("limit", limit)], meters: "degrees=0.001%+2degC");
        Assert.Equal("It would come to rest at 85 ± 1.2 °C.", answer.Says[0]);
        Assert.Equal(FormattableString.Invariant($"Limit {limit} °C: {word}."), answer.Says[^1]);
        Assert.Equal("Limit 60 °C: exceeded.", Given.Fit("self-heating", [("time", time), ("degrees", [.. time.Select(t => Warm(t))])]).Says[^1]);
        Assert.Equal("Limit 100 °C: kept.", Given.Fit("converter-hot-spot", [("time", time), ("degrees", [.. time.Select(t => Warm(t))])]).Says[^1]);
    }

    /// <summary>85 °C at rest with 300 s, read for 240 s, up to 25 + 60·(1 − e^−0.8) = 58 °C: nobody is told to wait for a rest beyond the limit, nor once it is behind.</summary>
    [Theory]
    [InlineData(50, "Switch it off: it read 58 °C, beyond the limit of 50 °C. The curve tells where it would go.")]
    [InlineData(70, "Switch it off at 70 °C and do not wait for the rest. The curve tells where it would go.")]
    [InlineData(100, "Wait three time constants and read once more.")]
    public void A_rest_beyond_the_limit_is_not_waited_for(double limit, string next)
    {
        double[] time = [.. Enumerable.Range(0, 25).Select(i => 10.0 * i)];
        var answer = Given.Fit("stuck-on", [("time", time), ("degrees", [.. time.Select(t => Warm(t))])], [("limit", limit)]);
        Assert.Equal([next], answer.Next);
        Assert.Equal(limit < 85 ? FormattableString.Invariant($"Limit {limit} °C: exceeded.") : "Limit 100 °C: kept.", answer.Says[^1]);
    }

    /// <summary>By hand: after 3.8 time constants 60 · e^−3.8 = 1.34 K are left, more than a fiftieth of 60 K; after four 1.10 K, less.</summary>
    [Theory]
    [InlineData(3.8, true)]
    [InlineData(4, false)]
    public void A_plateau_is_one_where_a_fiftieth_is_left(double times, bool rises)
    {
        double[] time = [.. Enumerable.Range(0, 25).Select(i => 300 * times * i / 24)];
        var answer = Given.Fit("grip-rise", [("time", time), ("degrees", [.. time.Select(t => Warm(t))])]);
        Assert.Equal(rises ? "Not a plateau yet: still about 1 K to go." : "", string.Join(" ", answer.Says.Skip(1)));
        Assert.Equal(rises ? 1 : 0, answer.Next.Count(next => next == "Wait three time constants and read once more."));
    }

    /// <summary>By hand: 60 K by 4 W on the mean are 15 K/W, 300 s of that 20 J/K; without air or watts nothing is told of them.</summary>
    [Fact]
    public void A_rise_to_rest_is_told_a_watt_where_the_watts_are_known()
    {
        double[] time = [.. Enumerable.Range(0, 25).Select(i => 50.0 * i)];
        TrialAnswer Rest(double[]? watts, params (string, double)[] settings) =>
            Given.Fit("grip-rise", [("time", time), ("degrees", [.. time.Select(t => Warm(t))]), .. watts is null ? Array.Empty<(string, double[])>() : [("watts", watts)]], settings);
        var answer = Rest([.. time.Select((_, i) => i == 3 ? double.NaN : i % 2 == 0 ? 3.0 : 5.0)], ("air", 25));
        Assert.Equal(60 / (94 / 24.0), answer.Value("resistance to air"), 0.02); // thirteen of 3 W and eleven of 5 W
        Assert.Equal(300 * (94 / 24.0) / 60, answer.Value("heat capacity"), 0.02);
        Assert.Equal(30, Rest(null, ("air", 25), ("watts", 2)).Value("resistance to air"), 0.02);
        Assert.Null(Rest(null, ("watts", 2)).Find("resistance to air"));
        Assert.Null(Rest(null, ("air", 25)).Find("resistance to air"));
        Assert.Null(Rest(null, ("air", 25), ("watts", 0)).Find("resistance to air"));
        Assert.Equal(30, Given.Fit("stuck-on", [("time", time), ("degrees", [.. time.Select(t => Warm(t))]), ("volts", [.. time.Select(_ => 4.0)]), ("amps", [.. time.Select(_ => 0.5)])], [("air", 25)]).Value("resistance to air"), 0.02);
        // An end that comes to rest at 420 °C is found as one that stays cool.
        double[] hot = [.. Enumerable.Range(0, 13).Select(i => 40.0 * i)];
        Assert.Equal(420, Given.Fit("stuck-on", [("time", hot), ("degrees", [.. hot.Select(t => 420 - (400 * Math.Exp(-t / 100)))])]).Value("plateau"), 0.5);
        Assert.StartsWith("4 or more", Refused.By("grip-rise", [("time", [0, 10, 20]), ("degrees", [25, 30, 33])]).Limit, StringComparison.Ordinal);
        Assert.StartsWith("All readings of degrees", Refused.By("grip-rise", [("time", [0, 10, 20, 30]), ("degrees", [25, 25.3, 25.4, 25.5])]).What, StringComparison.Ordinal);
    }

    /// <summary>By hand: 30 and 31 °C ask for 29 °C before them, give or take 5 K and four times the 1 K between them.</summary>
    [Theory]
    [InlineData(38, 8, false)]
    [InlineData(38.1, 8, true)]
    [InlineData(20, 8, false)]
    [InlineData(19.9, 8, true)]
    [InlineData(60, 6, true)]
    [InlineData(60, 5, false)]
    public void A_first_reading_that_stands_alone_is_put_aside(double first, int count, bool aside)
    {
        double[] degrees = [first, 30, 31, 31.8, 32.4, 32.9, 33.3, 33.6];
        var remarks = Given.Fit("grip-rise", [("time", [.. Enumerable.Range(0, count).Select(i => 10.0 * i)]), ("degrees", degrees[..count])]).Remarks.Where(remark => remark.LeftOut && remark.Words.Contains("stand alone before", StringComparison.Ordinal)).ToArray();
        Assert.Equal(aside ? 1 : 0, remarks.Length);
        Assert.All(remarks, remark => Assert.Equal((1, FormattableString.Invariant($"degrees {first:0.0} stand alone before 30.0 and 31.0.")), (remark.Reading, remark.Words)));
    }

    private static double Rise(double t) => 200 * (1 - Math.Exp(-t / 100));

    private static double Warm(double t) => Math.Round(25 + (60 * (1 - Math.Exp(-t / 300))), 2);

    private static TrialAnswer WarmUp(int count, Func<double, double> watts, Func<double, double> rise, (string, double)? off = null, double step = 10)
    {
        double[] time = [.. Enumerable.Range(0, count).Select(i => step * i)];
        return Given.Fit("warm-up", [("time", time), ("watts", [.. time.Select(watts)]), ("degrees", [.. time.Select(t => Math.Round(20 + rise(t), 2))])], off is { } said ? [("air", 20), said] : [("air", 20)]);
    }

    private static TrialAnswer Cool(double[] time, double[] degrees, params (string, double)[] settings) => Given.Fit("cool-down", [("time", time), ("degrees", [.. degrees.Select(c => Math.Round(c, 2))])], settings);
}
