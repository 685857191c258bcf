using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>What the tests of sensors and their amplifier answer, to either side of each limit.</summary>
public class SensorFitsTests
{
    /// <summary>A number with more digits than any display has: a column without a last digit.</summary>
    private const double Fine = 1e-9;

    private const string Swap = "Swap the meter leads and read again: a couple turns its sign.";

    /// <summary>Level 1 mV and warm 5 mV: 4 mV of warmth, turned −3 mV. Limits by hand: with the heater's current half of it, turned within a quarter of it, at the joint a half, again three tenths.</summary>
    [Theory]
    [InlineData("heater", 0.0029, "sensor", "It turns its sign with the leads.")]
    [InlineData("heater", 0.0031, "pick-up", "With only the heater's current on it shows 2100 µV: that is the current, not the heat.")]
    [InlineData("heater", -0.0011, "pick-up", "With only the heater's current on it shows -2100 µV: that is the current, not the heat.")]
    [InlineData("swapped", -0.0021, "sensor", "It turns its sign with the leads.")]
    [InlineData("swapped", -0.0039, "sensor", "It turns its sign with the leads.")]
    [InlineData("swapped", -0.0019, "pick-up", "With the leads swapped it does not turn its sign: something outside is picked up.")]
    [InlineData("swapped", -0.0041, "pick-up", "With the leads swapped it does not turn its sign: something outside is picked up.")]
    [InlineData("joint", 0.0029, "sensor", "It turns its sign with the leads.")]
    [InlineData("joint", 0.0031, "parasitic", "Warming only the joint or the leads gives 2100 µV: the couple sits there, not in the tip.")]
    [InlineData("joint", -0.0011, "parasitic", "Warming only the joint or the leads gives -2100 µV: the couple sits there, not in the tip.")]
    [InlineData("again", 0.0061, "sensor", "It turns its sign with the leads and repeats.")]
    [InlineData("again", 0.0063, "cannot tell", "The second warming does not repeat the first.")]
    [InlineData("again", 0.0037, "cannot tell", "The second warming does not repeat the first.")]
    public void Each_reading_speaks_for_a_sensor_or_against_it(string state, double volts, string word, string says)
    {
        var answer = Test((state == "swapped" ? [] : [("swapped", -0.003)]), ("level", 0.001), ("warm", 0.005), (state, volts));
        Assert.Equal(word, answer.Word);
        Assert.Equal([$"Answer: {word}.", says], answer.Says);
        Assert.Equal(word == "sensor" ? 0 : 1, answer.Next.Count);
        Assert.Equal(word == "sensor", answer.Find("warm volts") is not null);
    }

    /// <summary>Of few readings to 10 µV one is known to 0.416 of that, 4.2 µV: 10 µV are less than four times that, 20 µV are more, and less than five times; 30 µV are more.</summary>
    [Theory]
    [InlineData("warm", 0.00101, "cannot tell", "Warm it more, or read on a finer range: a couple gives 4 mV at 100 °C, this meter must show hundredths of that.")]
    [InlineData("warm", 0.00099, "cannot tell", "Warm it more, or read on a finer range: a couple gives 4 mV at 100 °C, this meter must show hundredths of that.")]
    [InlineData("warm", 0.00102, "cannot tell", Swap)]
    [InlineData("heater", 0.00102, "cannot tell", "Warm the far end and read again.")]
    [InlineData("heater", 0.00103, "pick-up", "Read in the pauses of the heater, a millisecond after it goes off, and twist the sensor leads.")]
    public void What_the_last_digit_may_be_off_by_is_no_answer(string state, double volts, string word, string next)
    {
        var answer = Test([], ("level", 0.001), (state, volts));
        Assert.Equal(word, answer.Word);
        Assert.Equal(next, Assert.Single(answer.Next));
    }

    /// <summary>10 µV more by a meter known to 4.2 µV: no more than 10 + 4 · 4.16 = 26.6 µV. Over 75 K that is 0.36 µV/K, and no couple; over 8 K it is 3.3 µV/K, which a weak one may come to.</summary>
    [Theory]
    [InlineData(75, "no couple", "less than 0.4 µV/K")]
    [InlineData(8, "cannot tell", "within what the meter can be off (4 µV)")]
    public void A_warmth_that_a_couple_would_show_and_this_pair_does_not_says_no_couple(double rise, string word, string says)
    {
        TrialAnswer With(params (string State, double Volts)[] read) => Given.Fit("sensor-test", [("volts", [.. read.Select(one => one.Volts)])], [("rise", rise)], [("state", [.. read.Select(one => one.State)])]);
        var answer = With(("level", 0.00001), ("warm", 0.00002));
        Assert.Equal(word, answer.Word);
        Assert.Contains(says, answer.Says[1], StringComparison.Ordinal);
        Assert.Equal("parasitic", With(("level", 0.00001), ("warm", 0.00002), ("joint", 0.00005)).Word); // it sits at the joint
        Assert.Equal("cannot tell", Given.Fit("sensor-test", [("volts", [0.00001, 0.00002])], words: [("state", ["level", "warm"])]).Word); // nobody said how warm
    }

    [Fact]
    public void A_warmth_that_shows_at_the_joint_alone_is_parasitic()
    {
        var answer = Test([], ("level", 0.001), ("warm", 0.00101), ("joint", 0.00102));
        Assert.Equal("parasitic", answer.Word);
        Assert.Equal("Warmed, it changes by 10 µV, within what the meter can be off (4 µV).", answer.Says[1]);
        Assert.Equal("cannot tell", Test([], ("level", 0.001), ("warm", 0.00101), ("joint", 0.00101)).Word);
        Assert.Equal("Read it once with both ends equally warm.", Assert.Single(Test([], ("warm", 0.005), ("swapped", -0.003)).Next));
        Assert.Equal("Warm the far end and read again.", Assert.Single(Test([], ("level", 0.001)).Next));
        Assert.Equal("empty", Refused.By("sensor-test", [("volts", [0.001])], words: [("state", [""])]).Value);
        Assert.Equal("empty", Refused.By("sensor-test", [("volts", [double.NaN])], words: [("state", ["warm"])]).Value);
        Assert.Equal("sensor", Test([], ("", 0.9), ("level", 0.001), ("warm", 0.005), ("swapped", -0.003)).Word); // one line without a state is passed over
    }

    /// <summary>A meter that may be 0.1 mV/√3 off is off by 58 µV: 200 µV of warmth are less than four times that.</summary>
    [Fact]
    public void A_meters_zero_counts_as_its_last_digit_does()
    {
        TrialAnswer With(string? meters) => Given.Fit("sensor-test", [("volts", [0, 0.0002])], words: [("state", ["level", "warm"])], meters: meters);
        Assert.Equal(Swap, Assert.Single(With(null).Next));
        Assert.EndsWith("(58 µV).", With("volts=1%+0.1mV").Says[1], StringComparison.Ordinal);
    }

    /// <summary>By hand: half of 5 mV and 3 mV is 4 mV, over 100 K 40 µV/K. Of a meter's gain they take 1 %/√3, of its zero nothing.</summary>
    [Theory]
    [InlineData(100, 40, "sensor", "")]
    [InlineData(45, 88.889, "sensor", "")]
    [InlineData(40, 100, "pick-up", "100.0 µV/K is no slope of a couple (5 to 90 µV/K).")]
    [InlineData(1000, 4, "parasitic", "4.0 µV/K is no slope of a couple (5 to 90 µV/K).")]
    public void Volts_free_of_any_zero_tell_the_slope(double rise, double slope, string word, string says)
    {
        var answer = Given.Fit("sensor-test", [("volts", [0.001, 0.005 + Fine, -0.003])], [("rise", rise)], [("state", ["level", "warm", "swapped"])], "volts=1%+0.02mV");
        Assert.Equal(4, answer.Value("warm volts"), 1e-5);
        Assert.Equal(slope, answer.Value("slope"), 1e-3);
        Assert.Equal(0.04 / Math.Sqrt(3), answer.Push("warm volts", "V gain"), 1e-6);
        Assert.Equal(0, answer.Push("warm volts", "V offset"), 1e-12);
        Assert.Equal(word, answer.Word);
        Assert.Equal($"Answer: {word}.", answer.Says[0]);
        Assert.Equal(says, answer.Says.Count > 2 ? answer.Says[2] : "");
        Assert.Null(Test([], ("level", 0.001), ("warm", 0.005), ("swapped", -0.003)).Find("slope"));
    }

    /// <summary>By hand: 10 Ω · (1 + 0.00393 · (T − 20 °C)), and bent by 2e-6 of a kelvin squared; 11 readings.</summary>
    [Fact]
    public void A_metal_is_told_by_its_ohms_at_twenty_degrees()
    {
        double[] degrees = [.. Enumerable.Range(0, 11).Select(i => 20.0 + (21 * i))];
        var straight = Ohms([.. degrees.Select(c => 10 * (1 + (0.00393 * (c - 20))))], degrees);
        Assert.Equal("a metal", straight.Word);
        Assert.Equal("Answer: a metal.", Assert.Single(straight.Says));
        var bent = Ohms([.. degrees.Select(c => 10.5 + (10 * ((0.00393 * (c - 20)) + (2e-6 * (c - 20) * (c - 20)))))], degrees, leads: 0.5);
        Assert.Equal("a metal that bends", bent.Word);
        foreach (var answer in (TrialAnswer[])[straight, bent])
        {
            Assert.Equal(10, answer.Value("ohms at 20 °C"), 1e-4);
            Assert.Equal(0.00393, answer.Value("temperature coefficient"), 1e-6);
        }
    }

    /// <summary>IEC 60751: 1.385055 at 100 °C and 1.758560 at 200 °C of the ohms at 0 °C. A usual sensor has 100, 500 or 1000 Ω within 3 %; 200 Ω has no usual name.</summary>
    [Theory]
    [InlineData(102.9, 1, "Pt100")]
    [InlineData(97.1, 1, "Pt100")]
    [InlineData(103.1, 1, "a metal")]
    [InlineData(96.9, 1, "a metal")]
    [InlineData(500, 1, "Pt500")]
    [InlineData(1000, 1, "Pt1000")]
    [InlineData(200, 1, "platinum")]
    [InlineData(100, 1.04, "a metal")]
    public void Platinum_is_told_by_its_curve_and_its_ohms(double ohms, double steeper, string word)
    {
        var answer = Ohms([ohms, ohms * (1 + (0.385055 * steeper)), ohms * (1 + (0.758560 * steeper))], [0, 100, 200]);
        Assert.Equal(word, answer.Word);
        Assert.Equal($"Answer: {word}.", Assert.Single(answer.Says));
        if (word != "a metal")
        {
            Assert.Equal(ohms, answer.Value("ohms at 0 °C"), 1e-3 * ohms);
        }
    }

    /// <summary>Two readings lie on either law: a slope that is 4 % off platinum's, 11.673 % over 30 K, passes, one of 6 % does not. Ohms that fall by a tenth are a thermistor's.</summary>
    [Theory]
    [InlineData(100, 112.14, 30, "Pt100")]
    [InlineData(100, 111.21, 30, "Pt100")]
    [InlineData(100, 112.37, 30, "a metal")]
    [InlineData(100, 110.97, 30, "a metal")]
    [InlineData(100, 90.1, 100, "a metal")]
    [InlineData(100, 89.9, 100, "thermistor by beta")]
    public void Two_readings_tell_what_they_can(double cold, double hot, double degrees, string word)
    {
        Assert.Equal(word, Ohms([hot, cold, 0], [degrees, 0, 50]).Word);
        Assert.StartsWith("All readings of degrees", Refused.By("sensor-ohms", [("ohms", [100, 104]), ("degrees", [0, 10])]).What, StringComparison.Ordinal);
        Assert.Equal("a metal", Ohms([10, 14, 18, 22], [0, 400, 800, 1200]).Word); // hotter than platinum is defined for
        Assert.StartsWith("2 or more", Refused.By("sensor-ohms", [("ohms", [100, 0]), ("degrees", [0, 100])]).Limit, StringComparison.Ordinal);
    }

    /// <summary>By hand: ln R = ln 10 kΩ + 3500·x + 6e4·x², x = 1/T − 1/298.15 K; behind 50 Ω of leads.</summary>
    [Theory]
    [InlineData(0, "thermistor by beta", "beta")]
    [InlineData(6e4, "thermistor that bends", "beta at 25 °C")]
    public void A_thermistor_is_told_at_twenty_five_degrees(double bend, string word, string beta)
    {
        double[] degrees = [.. Enumerable.Range(0, 12).Select(i => 3.0 + (11 * i))];
        double X(double c) => (1 / (c + 273.15)) - (1 / 298.15);
        var answer = Ohms([.. degrees.Select(c => 50 + (10000 * Math.Exp((3500 * X(c)) + (bend * X(c) * X(c)))))], degrees, leads: 50);
        Assert.Equal(word, answer.Word);
        Assert.Equal(10000, answer.Value("ohms at 25 °C"), 5);
        Assert.Equal(3500, answer.Value(beta), 2);
    }

    /// <summary>By hand: counts of 300 on the mean are 170 °C, and 250 counts, half of the span, 125 K.</summary>
    [Fact]
    public void Counts_without_a_type_are_a_plain_curve()
    {
        double[] counts = [100, 600, 200, 300];
        var answer = Given.Fit("sensor-counts", [("counts", counts), ("degrees", [.. counts.Select(c => 20 + (0.5 * c))])]);
        Assert.Equal(170, answer.Value("degrees in the middle"), 1e-6);
        Assert.Equal(125, answer.Value("kelvin over half the span"), 1e-6);
        Assert.StartsWith("No type is said: a plain curve", Assert.Single(answer.Says), StringComparison.Ordinal);
        Assert.StartsWith("4 or more", Refused.By("sensor-counts", [("counts", counts[..3]), ("degrees", [50, 100, 200])]).Limit, StringComparison.Ordinal);
        Assert.StartsWith("All readings of degrees", Refused.By("sensor-counts", [("counts", counts), ("degrees", [50, 60, 70, 80])]).What, StringComparison.Ordinal);
        var unknown = Refused.By("sensor-counts", [("counts", counts), ("degrees", [50, 80, 100, 200])], words: [("type", ["", "q", "q", "q"])]);
        Assert.Equal("Q", unknown.Value);
        Assert.Contains("K", unknown.Limit, StringComparison.Ordinal);
        Assert.StartsWith("Counts = offset + gain · (E(T) − E(T cold)), type K:", Given.Fit("sensor-counts", [("counts", counts), ("degrees", [50, 250, 100, 150])], words: [("type", ["k", "k", "k", "k"])]).Says[0], StringComparison.Ordinal);
    }

    /// <summary>By hand: 20 + 0.5·n + 0.001·n² of n = 200 on the mean is 160 °C, and rises there by 0.9 K a count over 100 counts.</summary>
    [Theory]
    [InlineData(8, "a curve of order 1")]
    [InlineData(9, "a curve of order 2")]
    [InlineData(11, "a curve of order 2")]
    [InlineData(12, "a curve of order 2, a curve of order 3")]
    public void More_counts_carry_a_curve_of_higher_order(int rows, string names)
    {
        double[] counts = [.. Enumerable.Range(0, rows).Select(i => 100 + (200.0 * i / (rows - 1)))];
        var answer = Given.Fit("sensor-counts", [("counts", counts), ("degrees", [.. counts.Select(c => 20 + (0.5 * c) + (0.001 * c * c))])]);
        Assert.Equal(names, string.Join(", ", answer.Tried.Select(tried => tried.Name)));
        if (rows > 8)
        {
            Assert.Equal(160, answer.Value("degrees in the middle"), 1e-3);
            Assert.Equal(90, answer.Value("kelvin over half the span"), 1e-2);
        }
    }

    /// <summary>By hand: 10 mV of 101 times are 99.01 µV at the input. 98 % of 5 V are 4.9 V: a reading there stands at the rail.</summary>
    [Theory]
    [InlineData(4.9, 1)]
    [InlineData(4.89, 0)]
    public void Readings_at_the_rail_are_not_used(double top, int rail)
    {
        var answer = Gain([0, 0.01, 0.02, rail == 1 ? 0.07 : (4.89 - 0.01) / 101], [0.01, 1.02, 2.03, top], ("supply", 5));
        Assert.Equal(101, answer.Value("gain"), 1e-6);
        Assert.Equal(10, answer.Value("output offset"), 1e-5);
        Assert.Equal(1e4 / 101, answer.Value("input offset"), 1e-3);
        Assert.Equal(rail == 1 ? "1 readings sit at the supply rail: the amplifier is at its end there, they are not used." : "", string.Join(" ", answer.Says));
        Assert.StartsWith("2 or more", Refused.By("amplifier", [("volts in", [0, 0.1]), ("volts out", [0.01, 4.95])], [("supply", 5)]).Limit, StringComparison.Ordinal);
        Assert.StartsWith("2 or more", Refused.By("amplifier", [("volts in", [0]), ("volts out", [0.01])]).Limit, StringComparison.Ordinal);
        Assert.StartsWith("All readings of volts in", Refused.By("amplifier", [("volts in", [0, 0.00001]), ("volts out", [0.01, 1])]).What, StringComparison.Ordinal);
    }

    /// <summary>By hand: resistors of 2 %/√3 each way allow 2 · 1.155 of 100.</summary>
    [Theory]
    [InlineData(102.2, "Built for 100, it has 102.2: as its resistors allow.")]
    [InlineData(102.4, "Built for 100, it has 102.4: a resistor is not what its print says, or the input is loaded.")]
    [InlineData(97.6, "Built for 100, it has 97.6: a resistor is not what its print says, or the input is loaded.")]
    public void A_gain_is_held_against_what_it_was_built_for(double gain, string says)
    {
        double[] volts = [0, 0.01 + Fine, 0.02, 0.03];
        Assert.Equal(says, Assert.Single(Gain(volts, [.. volts.Select(v => (gain * v) + Fine)], ("built gain", 100)).Says));
        Assert.Empty(Gain(volts, [.. volts.Select(v => gain * v)]).Says);
    }

    /// <summary>By hand: 0.01 + 100·v − 500·v² has a gain of 100 − 1000 · 0.02 at the mean of 20 mV.</summary>
    [Fact]
    public void A_gain_that_bends_is_told_at_the_mean()
    {
        double[] volts = [.. Enumerable.Range(0, 9).Select(i => 0.005 * i)];
        var answer = Gain(volts, [.. volts.Select(v => 0.01 + (100 * v) - (500 * v * v))]);
        Assert.Equal("a gain that bends", answer.Tried.Single(tried => tried.Chosen).Name);
        Assert.Equal(80, answer.Value("gain"), 1e-4);
        Assert.Equal(10, answer.Value("output offset"), 1e-3);
    }

    private static TrialAnswer Test((string State, double Volts)[] first, params (string State, double Volts)[] then) =>
        Given.Fit("sensor-test", [("volts", [.. first.Concat(then).Select(one => one.Volts)])], words: [("state", [.. first.Concat(then).Select(one => one.State)])]);

    private static TrialAnswer Ohms(double[] ohms, double[] degrees, double leads = 0) => Given.Fit("sensor-ohms", [("ohms", ohms), ("degrees", degrees)], [("leads", leads)]);

    private static TrialAnswer Gain(double[] into, double[] from, params (string, double)[] settings) => Given.Fit("amplifier", [("volts in", into), ("volts out", from)], settings);
}
