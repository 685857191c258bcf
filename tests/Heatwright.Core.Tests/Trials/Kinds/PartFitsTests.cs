using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>What an unknown part is, whether a purchase changed, and a maker's own line: words, limits and sentences.</summary>
public class PartFitsTests
{
    private const string Heater = "heater whose ohms rise with heat: it can sense itself", Alloy = "heater of a heating alloy, or a resistor", Metal = "metal sensor or heater of a pure metal";

    /// <summary>Ohms in ice and in boiling water, to either side of each limit. By hand: the slope is (hot/cold − 1)/100 K.</summary>
    [Theory]
    [InlineData(0.049, 0.049, "wire or short")]
    [InlineData(0.05, 0.05, "cannot tell")]
    [InlineData(10000, 4900, "thermistor (NTC)")]
    [InlineData(10000, 5100, "cannot tell")]
    [InlineData(92.9, 128.7, Metal)]
    [InlineData(93.1, 129, "platinum sensor Pt100")]
    [InlineData(112.9, 156, "platinum sensor Pt100")]
    [InlineData(113.1, 156, Metal)]
    [InlineData(929, 1286, Metal)]
    [InlineData(931, 1289, "platinum sensor Pt1000")]
    [InlineData(1129, 1563, "platinum sensor Pt1000")]
    [InlineData(1131, 1566, Metal)]
    [InlineData(100, 129.9, Heater)]
    [InlineData(100, 130.1, "platinum sensor Pt100")]
    [InlineData(100, 143.9, "platinum sensor Pt100")]
    [InlineData(100, 144.1, Metal)]
    [InlineData(1000, 1440.5, Metal)]
    [InlineData(10, 61, "self-limiting heater (PTC)")]
    [InlineData(10, 59, Heater)]
    [InlineData(30.1, 39.2, Metal)]
    [InlineData(30, 39.2, Heater)]
    [InlineData(0.5, 0.6, "cannot tell")] // 0.0020 a kelvin, ± √2 · (√2 · 0.0416 Ω + 0.001 Ω)/0.5 Ω/100 K = 0.0017
    [InlineData(0.5, 0.7, "cannot tell")] // 0.0040, less than three times that
    [InlineData(0.5, 0.8, Heater)]
    [InlineData(0.6, 0.7, Alloy)] // 0.0017 ± 0.0014
    [InlineData(299.9, 299.9, Alloy)]
    [InlineData(300, 300, "cannot tell")]
    [InlineData(100, 85, "cannot tell")]
    [InlineData(100, 95, Alloy)]
    [InlineData(1500, 1530, "cannot tell")]
    public void A_part_is_told_by_its_ohms_and_their_slope(double cold, double hot, string word) => Assert.Equal(word, Part([cold, hot], [0, 100]).Word);

    [Theory]
    [InlineData(2000, 2000, 20, "cannot tell")]
    [InlineData(2001, 2001, 20, "thermistor, or broken")]
    [InlineData(100, 107.7, 20, "cannot tell")]
    [InlineData(100, 108.1, 21, "platinum sensor Pt100")]
    public void Over_twenty_kelvin_no_slope_is_told(double cold, double hot, double at, string word)
    {
        var answer = Part([cold, hot], [0, at]);
        Assert.Equal(word, answer.Word);
        Assert.Equal(at > 20, answer.Find("the two wires: temperature coefficient") is not null);
        Assert.Equal(at > 20, answer.Says[0].Contains("108.1 Ω at 21 °C", StringComparison.Ordinal));
    }

    /// <summary>By hand: 2.1 and 2.9 Ω behind leads of 0.5 Ω; from 10 °C to 110 °C the slope is 0.381 % of the ohms at 10 °C, so 0.0038095/(1 + 0.0038095 · 10) of those at 20 °C.</summary>
    [Fact]
    public void Leads_are_taken_off_and_the_slope_is_told_at_twenty_degrees()
    {
        var answer = Part([2.6, 3.4], [10, 110], leads: 0.5);
        Assert.Equal("the two wires: heater whose ohms rise with heat: it can sense itself, 2.1 Ω at 10 °C, 2.9 Ω at 110 °C. Ohms cold are those at 10 °C, the temperature coefficient is that of the ohms at 20 °C.", Assert.Single(answer.Says));
        Assert.Equal(2.1, answer.Value("the two wires: ohms cold"), 1e-9);
        Assert.Equal(0.0038095 / 1.038095, answer.Value("the two wires: temperature coefficient"), 1e-7);
        Assert.Empty(answer.Next);
        Assert.Equal("wire or short", Part([0.54, 0.54], [0, 100], leads: 0.5).Word);
        Assert.Equal(7.2, Part([7.2], [25]).Value("the two wires: ohms cold"), 1e-9);
        Assert.Equal(0.006 / 1.12, Part([0.5, 0.8], [0, 100]).Value("the two wires: temperature coefficient"), 1e-7); // 0.6 % of 0.5 Ω, of 0.56 Ω at 20 °C
    }

    /// <summary>Readings within 3 K of the coldest stand for it: 10 and 10.2 Ω, not the 20 Ω at just 3 K.</summary>
    [Fact]
    public void Readings_at_one_temperature_are_taken_together() =>
        Assert.Contains(", 10.1 Ω at 0 °C, 14.3 Ω at 100 °C.", Part([10, 10.2, 20, 14, 14.6], [0, 2.9, 3, 100, 97.5]).Says[0], StringComparison.Ordinal);

    /// <summary>Leads that were not read leave 0.05 Ω open, below 20 Ω. By hand: 0.05 of 10 Ω over 100 K.</summary>
    [Theory]
    [InlineData(10, 10.1, double.NaN, 0.05)]
    [InlineData(10, 10.1, 0, 0)]
    [InlineData(19.9, 20.1, double.NaN, 0.05)]
    [InlineData(20, 20.2, double.NaN, 0)]
    public void Leads_that_were_not_read_stay_open(double cold, double hot, double leads, double doubt)
    {
        var answer = Part([cold, hot + 1e-9], [1e-9, 100], leads);
        Assert.Equal(doubt, answer.Scatter("the two wires: ohms cold"), 1e-9);
        Assert.Equal(doubt / cold / 100, answer.Scatter("the two wires: temperature coefficient"), 1e-9);
    }

    /// <summary>Last digit of two readings: 0.1 Ω, with a flicker of 0.3 of it 42 mΩ; with the leads, √2 · 0.042 + 0.002 · 10 + 0.05 Ω, three times 0.129 Ω.</summary>
    [Theory]
    [InlineData(10, 10.3, double.NaN, true)]
    [InlineData(10, 10.4, double.NaN, false)]
    [InlineData(10, 10.3, 0, false)] // three times 0.079 Ω
    [InlineData(10, 10.2, 0, true)]
    [InlineData(10, 9.8, 0, true)]
    [InlineData(10, 9.6, 0, false)]
    [InlineData(29.9, 29.9, 0, true)]
    [InlineData(30, 30, 0, false)]
    public void Few_ohms_that_do_not_change_may_be_a_couple(double cold, double hot, double leads, bool asks) =>
        Assert.Equal(asks, Part([cold, hot], [0, 100], leads).Next.Any(next => next.StartsWith("the two wires: read millivolts", StringComparison.Ordinal)));

    [Theory]
    [InlineData(49, 1)]
    [InlineData(50, 0)]
    public void A_narrow_span_asks_for_ice_and_boiling_water(double span, int asks) =>
        Assert.Equal(asks, Part([100, 119.3], [0, span]).Next.Count(next => next.StartsWith("the two wires: read it in melting ice (0 °C)", StringComparison.Ordinal)));

    [Theory]
    [InlineData(0.0003, 1.1, "cannot tell")]
    [InlineData(0.00031, 1.1, "thermocouple")]
    [InlineData(0.004, 99.9, "thermocouple")]
    [InlineData(0.004, 100, "platinum sensor Pt100")]
    [InlineData(0.004, double.NaN, "thermocouple")]
    public void Volts_that_come_with_warmth_tell_a_couple(double volts, double ohms, string word)
    {
        double[] both = double.IsNaN(ohms) ? [ohms, ohms] : [ohms, ohms < 50 ? ohms + 0.1 : ohms * 1.385];
        var answer = Given.Fit("unknown-part", [("ohms", both), ("degrees", [0, ohms < 50 ? 15 : 100]), ("volts", [0, volts])], [("leads", 0)]);
        Assert.Equal(word, answer.Word);
        Assert.Equal(word == "thermocouple", answer.Next.Any(next => next.Contains("kind couple-type", StringComparison.Ordinal)));
        Assert.Equal(double.IsNaN(ohms), answer.Says[0] == "the two wires: thermocouple.");
    }

    /// <summary>The meter and the other ends lie in the room: millivolts from boiling water alone, as the recipe asks, tell a couple, whichever way its leads lie; more than 0.1 V is none.</summary>
    [Theory]
    [InlineData(0.0031, "thermocouple")]
    [InlineData(-0.0031, "thermocouple")]
    [InlineData(0.0003, Alloy)]
    [InlineData(0.11, Alloy)]
    public void One_reading_of_millivolts_from_boiling_water_is_enough(double volts, string word)
    {
        var answer = Given.Fit("unknown-part", [("ohms", [1.7, 1.7]), ("degrees", [0.2, 99.5]), ("volts", [double.NaN, volts])], [("leads", 0.2)]);
        Assert.Equal(word, answer.Word);
        Assert.Equal(word == "thermocouple" ? ["the two wires: kind couple-type tells which: millivolts at three temperatures or more, and the degrees where its wires meet the meter."] : [], answer.Next);
    }

    /// <summary>By hand: 100.2 Ω at 0.2 °C and 138.71 Ω at 99.5 °C less 0.2 Ω are 0.0038781 a kelvin, of the ohms at 20 °C 0.0038781/(1 + 0.0038781 · 19.8) = 0.0036016; a probe that reads 1 %/√3 high spreads both
    /// by that and takes 0.577 % of the slope, less 7 % of that for the way to 20 °C: its slope goes as α/(1 + α·19.8).</summary>
    [Fact]
    public void What_the_probe_may_be_off_is_a_doubt_of_the_temperature_coefficient()
    {
        var answer = Given.Fit("unknown-part", [("ohms", [100.2, 138.71]), ("degrees", [0.2, 99.5])], [("leads", 0.2)], meters: "degrees=1%+2degC");
        const string Slope = "the two wires: temperature coefficient";
        Assert.Equal(0.0036016, answer.Value(Slope), 1e-7);
        Assert.Equal(0.0036016 * 0.00577 / 1.0768, Math.Abs(answer.Push(Slope, "C gain")), 2e-7);
    }

    [Fact]
    public void A_pair_without_numbers_is_open_or_was_not_read()
    {
        Assert.Equal("the two wires: no ohms and no volts: open, or no pair.", Assert.Single(Given.Fit("unknown-part", [("ohms", [double.NaN]), ("degrees", [25])]).Says));
        var answer = Given.Fit("unknown-part", [("ohms", [double.NaN, double.NaN, 7.2]), ("degrees", [double.NaN, 25, 25])], [("leads", 0)], [("pair", ["ab", "bc", "ac"])]);
        Assert.Equal("cannot tell, open", answer.Word); // ab was not read, bc is open, and one reading of ac tells nothing
        Assert.Equal(["ab: nothing read.", "bc: no ohms and no volts: open, or no pair.", "ac: cannot tell, 7.2 Ω at 25 °C."], answer.Says);
        Assert.Equal("no lines", Refused.By("unknown-part", [("ohms", []), ("degrees", [])]).Value);
    }

    [Theory]
    [InlineData("ab", "bc", "ac", 3, true)]
    [InlineData("ab", "bc", "bc", 3, false)]
    [InlineData("ab", "bc", "ac", 2, false)]
    public void Three_pairs_make_three_wires(string first, string second, string third, int read, bool told) =>
        Assert.Equal(told, Given.Fit("unknown-part", [("ohms", [7, 2, read == 3 ? 9 : double.NaN]), ("degrees", [25, 25, 25])], [("leads", 0)], [("pair", [first, second, third])]).Says.Any(says => says.StartsWith("Three wires:", StringComparison.Ordinal)));

    /// <summary>Old ones 3.6 ± 0.05, five of them, by hand: a new one belongs to them inside t(4) · 0.05 · √1.2 = 2.7764 · 0.05477 = 0.1521.</summary>
    [Theory]
    [InlineData(3.75, "no change seen")]
    [InlineData(3.76, "differs")]
    [InlineData(3.44, "differs")]
    public void A_purchase_differs_beyond_what_the_old_ones_spread(double now, string word)
    {
        var answer = Incoming([3.55, 3.6, 3.65, 3.55, 3.65], [now]);
        Assert.Equal(word, answer.Word);
        Assert.Equal(3.6, answer.Value("old mean"), 1e-9);
        Assert.Equal(0.05 / Math.Sqrt(5), answer.Scatter("old mean"), 1e-9);
        Assert.Equal(0.05, answer.Value("spread between samples"), 1e-9);
        Assert.Equal(0.05 / Math.Sqrt(8), answer.Scatter("spread between samples"), 1e-9); // of four degrees of freedom: s/√(2 · 4)
        Assert.Equal(now - 3.6, answer.Value("new less old"), 1e-9);
        Assert.Equal(0.05 * Math.Sqrt(1.2), answer.Scatter("new less old"), 1e-9);
        Assert.Equal(4, answer.Findings[2].Degrees);
        Assert.Equal(FormattableString.Invariant($"New {now}, old 3.6 ± 0.05 between samples: {(word == "differs" ? "it is not the same part any more" : "nothing shows a change")}."), answer.Says[0]);
        Assert.Equal("A change of 10 % would be missed in 0 of 100 such checks; one of 6 % in 10 of 100.", answer.Says[1]); // (2.7764 + 1.2816) · 0.05477/3.6 = 6.2 %
        Assert.Empty(answer.Next);
    }

    /// <summary>By hand and the table of the normal: no change at all is missed in Φ(2.7764) − Φ(−2.7764) = 0.9945, one of 2 % in Φ(2.7764 − 0.072/0.05477) = 0.9281.</summary>
    [Theory]
    [InlineData(0, 0.9945043, "A change of 0 % would be missed in 99 of 100")]
    [InlineData(0.02, 0.9280957, "A change of 2 % would be missed in 93 of 100")]
    public void The_chance_of_missing_a_change_is_told(double change, double chance, string says)
    {
        var answer = Incoming([3.55, 3.6, 3.65, 3.55, 3.65], [3.6], ("change", change));
        Assert.Equal(chance, answer.Value("chance of missing the change"), 1e-6);
        Assert.StartsWith(says, answer.Says[1], StringComparison.Ordinal);
        Assert.StartsWith("More old samples", Assert.Single(answer.Next), StringComparison.Ordinal);
        Assert.StartsWith("A second new sample", Assert.Single(Incoming([3.55, 3.6, 3.65, 3.55, 3.65, 3.6], [3.6], ("change", change)).Next), StringComparison.Ordinal);
    }

    /// <summary>By hand: a last digit of 0.01 with a flicker of 0.3 of it is 4.16 thousandths; a said doubt of 0.2 beside it leaves 0.20004.</summary>
    [Fact]
    public void Samples_spread_no_less_than_they_are_read()
    {
        Assert.Equal(0.01 * Math.Sqrt((1 / 12.0) + 0.09), Incoming([3.61, 3.61], [3.71]).Value("spread between samples"), 1e-9);
        var said = Given.Fit("incoming", [("value", [3.61, 3.61, 3.71]), ("reading doubt", [0.1, double.NaN, 0.3])], words: [("lot", ["old", "old", "new"])]);
        Assert.Equal(Math.Sqrt(0.04 + (1e-4 * ((1 / 12.0) + 0.09))), said.Value("spread between samples"), 1e-9);
        Assert.Equal("4", Refused.By("incoming", [("value", [4, 4, 5])], words: [("lot", ["old", "old", "new"])]).Value);
        Assert.Equal("1 old, 2 new", Refused.By("incoming", [("value", [4, 4, 5])], words: [("lot", ["old", "new", "new"])]).Value);
        Assert.Equal("3 old, 0 new", Refused.By("incoming", [("value", [4, 4, 5])], words: [("lot", ["old", "old", "old"])]).Value);
    }

    /// <summary>By hand: 1 + 2·x + x²/2 has 1 at nothing and 2 + 4.5 at the mean of 4.5.</summary>
    [Fact]
    public void An_own_line_that_bends_is_told_in_its_middle()
    {
        double[] x = [.. Enumerable.Range(0, 10).Select(i => (double)i)];
        var answer = Given.Fit("own-line", [("x", x), ("y", [.. x.Select(a => 1 + (2 * a) + (0.5 * a * a))])]);
        Assert.Equal(1, answer.Value("at x = 0"), 1e-6);
        Assert.Equal(6.5, answer.Value("slope in the middle"), 1e-6);
        Assert.StartsWith("All readings of x", Refused.By("own-line", [("x", [2, 2]), ("y", [1, 3])]).What, StringComparison.Ordinal);
        Assert.StartsWith("2 or more", Refused.By("own-line", [("x", [2]), ("y", [1])]).Limit, StringComparison.Ordinal);
        var two = Given.Fit("own-line", [("x", [2, 2.5]), ("y", [1, 3])]);
        Assert.Equal(4, two.Value("slope"), 1e-9);
        Assert.Equal("Take a reading in the middle of x.", Assert.Single(two.Next));
    }

    private static TrialAnswer Part(double[] ohms, double[] degrees, double leads = 0) =>
        Given.Fit("unknown-part", [("ohms", ohms), ("degrees", degrees)], double.IsNaN(leads) ? [] : [("leads", leads)]);

    private static TrialAnswer Incoming(double[] old, double[] now, params (string, double)[] settings) =>
        Given.Fit("incoming", [("value", [.. old, .. now])], settings, [("lot", [.. old.Select(_ => "old"), .. now.Select(_ => "new")])]);
}
