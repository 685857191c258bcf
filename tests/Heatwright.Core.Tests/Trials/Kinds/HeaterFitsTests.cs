using System.Globalization;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>What the tests of a heater's ohms and of the power that holds a temperature say, and at which readings.</summary>
public class HeaterFitsTests
{
    /// <summary>A number with more digits than any display has: a column without a last digit.</summary>
    private const double Fine = 1e-9;

    [Theory]
    [InlineData(7.4, 7.1, true)]
    [InlineData(9.9, 9.6, true)]
    [InlineData(10, 10, false)]
    [InlineData(0.31, 0.01, true)]
    public void Leads_that_were_not_read_are_allowed_for_below_ten_ohms(double read, double ohms, bool allowed)
    {
        var answer = Given.Fit("cold-ohms", [("ohms", [read])]);
        Assert.Equal(ohms, answer.Value("ohms"), 1e-9);
        Assert.Equal(allowed ? 0.2 / Math.Sqrt(3) : 0, answer.Push("ohms", "leads not read"), 1e-9);
        Assert.StartsWith(allowed ? "The leads were not read: 0.3 ± 0.2 Ω is allowed" : "The leads were not read; above 10 Ω", Assert.Single(answer.Says), StringComparison.Ordinal);
    }

    [Fact]
    public void Leads_take_a_part_of_the_ohms_and_never_all()
    {
        Assert.StartsWith("Leads of 0.2 Ω, read on the same meter,", Assert.Single(Given.Fit("cold-ohms", [("ohms", [7.4])], [("leads", 0.2)]).Says), StringComparison.Ordinal);
        Assert.Equal("0.2 Ω of 0.1 Ω", Refused.By("cold-ohms", [("ohms", [0.1])], [("leads", 0.2)]).Value);
        Assert.Equal("0.2 Ω of 0.2 Ω", Refused.By("cold-ohms", [("ohms", [0.2])], [("leads", 0.2)]).Value);
        Assert.Equal(("0.3 Ω", "the shorted-lead reading"), (Refused.By("cold-ohms", [("ohms", [0.3])]).Value, Refused.By("cold-ohms", [("ohms", [0.3])]).Limit));
        Assert.StartsWith("1 or more", Refused.By("cold-ohms", [("ohms", [double.NaN])]).Limit, StringComparison.Ordinal);
    }

    /// <summary>By hand: 5 mV + 0.25 Ω · amps; for the two points of a cable 2 mV + 20 mΩ · amps, 10 mΩ a touch of two, and 20 mΩ · (3 A)².</summary>
    [Fact]
    public void A_zero_that_is_off_is_told_beside_the_ohms()
    {
        double[] amps = [0.5, 1, 1.5, 2, 2.5, 3];
        var four = Given.Fit("four-wire-ohms", [("volts", [.. amps.Select(a => 0.005 + (0.25 * a))]), ("amps", amps)]);
        Assert.Equal(0.25, four.Value("ohms"), 1e-6);
        Assert.Equal(0.005, four.Value("zero off"), 1e-6);
        Assert.StartsWith("Sense wires carry no current", Assert.Single(four.Says), StringComparison.Ordinal);
        var drop = Given.Fit("two-point-drop", [("drop", [.. amps.Select(a => 0.002 + (0.02 * a)), 0.002]), ("amps", [.. amps, 0])], [("touches", 2)]);
        Assert.Equal(0.01, drop.Value("ohms"), 1e-6);
        Assert.Equal(0.18, drop.Value("lost watts"), 1e-6);
        Assert.Equal(0.002, drop.Value("zero off"), 1e-6);
        Assert.Equal("At 3.0 A it loses 60 mV.", Assert.Single(drop.Says));
        Assert.Contains("Swap the current leads", Assert.Single(Given.Fit("four-wire-ohms", [("volts", [0.25, 0.5]), ("amps", [1, 2])]).Next), StringComparison.Ordinal);
        Assert.StartsWith("1 or more", Refused.By("four-wire-ohms", [("volts", [0.25]), ("amps", [double.NaN])]).Limit, StringComparison.Ordinal);
    }

    /// <summary>By hand: 20 mΩ at 5 A, either way round, are 100 mV and 0.5 W, 2.7 % of 3.7 V; over two touches 10 mΩ each; less than one touch is one.</summary>
    [Theory]
    [InlineData(2, 0.01)]
    [InlineData(0.5, 0.02)]
    public void A_drop_is_shared_by_its_touches(double touches, double ohms)
    {
        var answer = Given.Fit("two-point-drop", [("amps", [-5, 2.5, 0]), ("drop", [-0.1, 0.05, 0])], [("source volts", 3.7), ("touches", touches)]);
        Assert.Equal(ohms, answer.Value("ohms"), 1e-9);
        Assert.Equal(0.5, answer.Value("lost watts"), 1e-9);
        Assert.Equal("At 5.0 A it loses 100 mV, 2.7 % of 3.7 V.", Assert.Single(answer.Says));
        Assert.StartsWith("1 or more", Refused.By("two-point-drop", [("amps", [0]), ("drop", [0.1])]).Limit, StringComparison.Ordinal);
    }

    /// <summary>By hand: 2 Ω give 12.5 W at 5 V, 10.58 W at 4.6 V, 9.68 W at 4.4 V and 6.48 W at 3.6 V. The label is trusted to 10 %/√3, 0.577, 0.531, 0.508 and 0.416 W: 4.3, 2.6, 1.7 and 1.7 of that away.</summary>
    [Theory]
    [InlineData(5, 10, "W at 2.00 Ω; the label says 10 W, 2.50 Ω: they do not agree (z 4.3).")]
    [InlineData(4.6, 9.2, "W at 2.00 Ω; the label says 9.2 W, 2.30 Ω: doubtful (z 2.6).")]
    [InlineData(4.4, 8.8, "W at 2.00 Ω; the label says 8.8 W, 2.20 Ω: they agree (z 1.7).")]
    [InlineData(3.6, 7.2, "W at 2.00 Ω; the label says 7.2 W, 1.80 Ω: they agree (z 1.7).")]
    public void A_label_is_held_against_the_readings(double volts, double watts, string says)
    {
        var answer = Given.Fit("volts-amps", [("volts", [4 + Fine, 2, 0, 1]), ("amps", [2 + Fine, 1, 0, 0.5])], [("label volts", volts), ("label watts", watts)]);
        Assert.Equal(2, answer.Value("ohms"), 1e-6);
        Assert.Equal(8, answer.Value("watts at the highest volts"), 1e-6);
        Assert.Equal(volts * volts / 2, answer.Value("watts at the label volts"), 1e-5);
        Assert.StartsWith(string.Create(CultureInfo.InvariantCulture, $"At the label's {volts} V it gives "), answer.Says[0], StringComparison.Ordinal);
        Assert.EndsWith(says, Assert.Single(answer.Says), StringComparison.Ordinal);
        Assert.Empty(Given.Fit("volts-amps", [("volts", [4]), ("amps", [2])], [("label volts", volts)]).Says);
        Assert.Empty(Given.Fit("volts-amps", [("volts", [4]), ("amps", [2])], [("label watts", watts)]).Says);
    }

    /// <summary>A heater of 3 Ω cold and 20 mΩ/W, so V = 3·I/(1 − 0.02·I²): at 3 A 10.97561 V, 32.92683 W and 3.658537 Ω. A label of those watts at those volts agrees, though cold ohms would have given 40.2 W;
    /// read up to 2 A it follows from the law, with all of what the law leaves open.</summary>
    [Theory]
    [InlineData(3.2, 0)]
    [InlineData(2, 1)]
    public void A_label_is_held_against_the_hot_heater_not_the_cold_one(double mostA, int far)
    {
        double[] amps = [.. Enumerable.Range(1, 8).Select(i => mostA * i / 8)];
        var answer = Given.Fit("volts-amps", [("volts", [.. amps.Select(i => 3 * i / (1 - (0.02 * i * i)))]), ("amps", amps)], [("label volts", 10.97561), ("label watts", 32.92683)]);
        Assert.Equal(32.92683, answer.Value("watts at the label volts"), 0.02);
        Assert.Contains("3.66 Ω; the label says 32.93 W, 3.66 Ω: they agree (z 0.0).", Assert.Single(answer.Says), StringComparison.Ordinal);
        Assert.Equal(far, answer.Next.Count(next => next.StartsWith("The label's 10.98 V lie far above the highest volts read, 6.52 V", StringComparison.Ordinal)));
    }

    /// <summary>The label of 40 W at 12 V means 3.6 Ω, trusted to 0.36 Ω/√3 = 0.208 Ω, beside 0.024 Ω of a last digit read three times: 4.3 Ω lie 3.3 of that above, 4.2 Ω 2.9, 2.9 Ω 3.3 below. Cold ohms of 4.3 Ω take 144/4.3 = 33.5 W at most.</summary>
    [Theory]
    [InlineData(4.3, "Cold it has 4.30 Ω; the label's 40 W at 12 V mean 3.60 Ω at work: heating cannot bring these together, for the ohms of a heating alloy or a pure metal only rise. It gives 33.5 W at most. Look at clips and leads, then do not trust the label.")]
    [InlineData(4.2, "Cold it has 4.20 Ω; the label's 40 W at 12 V mean 3.60 Ω at work: they agree.")]
    [InlineData(2.9, "Cold it has 2.90 Ω; the label's 40 W at 12 V mean 3.60 Ω at work: heating may do that. Read volts and amps hot (kind volts-amps) before you trust the label.")]
    public void Cold_ohms_are_held_against_a_label(double ohms, string says)
    {
        var answer = Given.Fit("cold-ohms", [("ohms", [ohms, ohms, ohms])], [("leads", 0), ("label volts", 12), ("label watts", 40)]);
        Assert.Equal(says, answer.Says[^1]);
        Assert.Single(Given.Fit("cold-ohms", [("ohms", [ohms])], [("leads", 0), ("label volts", 12)]).Says);
    }

    /// <summary>By hand: R = 1 Ω + 80 mΩ a watt-ish lamp, 1.00, 1.25, 1.50, 1.75 and 2.00 Ω from 1 to 5 V. Five readings do not tell such a line; 5 V on 2.00 Ω are 12.5 W all the same, and nobody is told 1.73 Ω.</summary>
    [Theory, InlineData(5), InlineData(3), InlineData(2)]
    public void Ohms_that_rise_are_told_hot_only_where_the_readings_are_too_few(int count)
    {
        double[] volts = [.. new double[] { 5, 1, 3, 2, 4 }.Take(count)];
        var answer = Given.Fit("volts-amps", [("volts", volts), ("amps", [.. volts.Select(v => v / (0.75 + (0.25 * v)))])], meters: "volts=0.5%+1mV;amps=0.5%+1mA");
        Assert.Null(answer.Find("ohms"));
        Assert.Equal(2, answer.Value("hot ohms"), 1e-6);
        Assert.Equal(12.5, answer.Value("watts at the highest volts"), 1e-6);
        Assert.StartsWith("The ohms rise: 1.00 Ω at 1.0 W, 2.00 Ω at 12.5 W.", Assert.Single(answer.Says), StringComparison.Ordinal);
        Assert.NotEmpty(answer.Next);
    }

    /// <summary>1.00 and 1.04 Ω are taken as one; 1.00 and 1.10 Ω too where a zero of 0.1 A makes as much of the lowest amps.</summary>
    [Theory, InlineData(1.04, "1mA", true), InlineData(1.10, "1mA", false), InlineData(1.10, "100mA", true)]
    public void Ohms_that_hardly_rise_stay_one(double hotOhm, string zero, bool one)
    {
        var answer = Given.Fit("volts-amps", [("volts", [1, 4]), ("amps", [1, 4 / hotOhm])], meters: $"volts=0.5%+1mV;amps=0.5%+{zero}");
        Assert.Equal(one, answer.Find("ohms") is not null);
        Assert.Equal(!one, answer.Find("hot ohms") is not null);
    }

    [Fact]
    public void The_recipe_asks_for_as_many_settings_as_the_bend_needs() => Assert.Contains("six settings", string.Join(' ', TrialCard.Find("volts-amps")!.Recipe.TwoMeters), StringComparison.Ordinal);

    [Theory]
    [InlineData(4.89, 1)]
    [InlineData(4.9, 0)]
    public void A_supply_that_limits_is_told(double volts, int says)
    {
        var answer = Given.Fit("volts-amps", [("volts", [2.5, volts]), ("amps", [1.25, volts / 2])], [("set volts", 5)]);
        Assert.Equal(says, answer.Says.Count(said => said.StartsWith("The supply was in its current limit", StringComparison.Ordinal)));
        Assert.Contains("full volts", Assert.Single(answer.Next), StringComparison.Ordinal);
        Assert.StartsWith("1 or more", Refused.By("volts-amps", [("volts", [0, 5]), ("amps", [1, 0])]).Limit, StringComparison.Ordinal);
    }

    /// <summary>By hand: 3 Ω + 20 mΩ/W is V = 3·I/(1 − 0.02·I²), 10.97561 V at 3 A: 3.658537 Ω and 32.92683 W. Ammeter and leads of 150 mΩ take 0.45 V at 3 A.</summary>
    [Theory]
    [InlineData(2, 0, 0, "The volts were read at the supply, and what ammeter and leads take of them is not noted: it counts as nothing. Note 'burden' and 'leads'.")]
    [InlineData(2, 0.05, 0.1, "Ammeter and leads of 150 mΩ take up to 0.450 V: taken off the volts read.")]
    [InlineData(1, 0.05, 0.1, "")]
    [InlineData(double.NaN, 0.05, 0.1, "Ammeter and leads of 150 mΩ are noted; the volts count as read at the part and nothing is taken off. Were they read at the supply? Say 'volts at' = 2.")]
    public void Hot_ohms_and_watts_are_told_at_the_highest_volts_at_the_part(double at, double burden, double leads, string note)
    {
        double[] amps = [3, 0.5, 1, 1.5, 2, 2.5];
        var answer = Given.Fit("volts-amps", [("volts", [.. amps.Select(i => (3 * i / (1 - (0.02 * i * i))) + (at == 2 ? (burden + leads) * i : 0))]), ("amps", amps)], [("burden", burden), ("leads", leads), .. double.IsNaN(at) ? Array.Empty<(string, double)>() : [("volts at", at)]]);
        Assert.Equal(3.658537, answer.Value("hot ohms"), 1e-4);
        Assert.Equal(32.92683, answer.Value("watts at the highest volts"), 2e-3);
        Assert.Equal(note, string.Join(" ", answer.Notes));
    }

    /// <summary>By a second program: least squares with ohms that grow as the watts to the power of 0.95 find 1.988182 Ω, 0.0510353 Ω/W, 2.498772 Ω hot and 10.00491 W where R = 2 Ω + 0.05 Ω/W was read; each counts over √3.</summary>
    [Fact]
    public void How_ohms_follow_watts_stays_open()
    {
        double[] amps = [0.2, 0.5, 1, 1.3, 1.6, 2];
        var answer = Given.Fit("volts-amps", [("volts", [.. amps.Select(a => a * 2 / (1 - (0.05 * a * a)))]), ("amps", [.. amps.Select(a => a + Fine)])]);
        foreach (var (name, other, here) in new[] { ("ohms", 1.988182, 2), ("ohms per watt", 0.0510353, 0.05), ("hot ohms", 2.498772, 2.5), ("watts at the highest volts", 10.00491, 10) })
        {
            Assert.Equal((other - here) / Math.Sqrt(3), answer.Push(name, "how ohms follow watts"), 1e-5);
        }

        Assert.Equal(0, Given.Fit("volts-amps", [("volts", [1, 2, 3, 4, 5, 6]), ("amps", [0.5, 1, 1.5, 2, 2.5, 3])]).Push("ohms", "how ohms follow watts"));
    }

    /// <summary>By hand: 2 Ω at 20 °C and 0.4 % a kelvin are 4.4 Ω at 320 °C. Degrees that differ by 20 K tell nothing of it.</summary>
    [Fact]
    public void Ohms_that_rise_with_the_degrees_are_told_where_those_were_read()
    {
        double[] degrees = [320, 20, 70, 120, 170, 220], volts = [6, 2, 3, 3.5, 4, 4.5];
        (string, double[])[] Read(double scale) => [("volts", volts), ("amps", [.. degrees.Select((c, i) => volts[i] / (2 * (1 + (0.004 * (c - 20)))))]), ("degrees", [.. degrees.Select(c => 20 + (scale * (c - 20)))])];
        var answer = Given.Fit("volts-amps", Read(1));
        Assert.Equal(2, answer.Value("ohms at 20 °C"), 1e-4);
        Assert.Equal(0.004, answer.Value("temperature coefficient"), 1e-6);
        Assert.Equal(4.4, answer.Value("hot ohms"), 1e-4);
        Assert.Equal("ohms that rise with the watts", Given.Fit("volts-amps", Read(20.0 / 300)).Tried[1].Name);
        Assert.Equal("ohms that rise with the degrees", Given.Fit("volts-amps", Read(21.0 / 300)).Tried[1].Name);
        var labelled = Given.Fit("volts-amps", Read(1), [("label volts", 6), ("label watts", 10)]);
        Assert.Equal(36 / 4.4, labelled.Value("watts at the highest volts"), 1e-6); // 6 V on 2 Ω · (1 + 0.004 · 300)
        Assert.Contains("W at 4.40 Ω; the label says 10 W, 3.60 Ω: they do not agree", Assert.Single(labelled.Says), StringComparison.Ordinal);
        degrees[2] = double.NaN; // not every reading has its degrees
        Assert.Equal("ohms that rise with the watts", Given.Fit("volts-amps", [("volts", volts), ("amps", [3, 1, 1.5, 1.75, 2, 2.25]), ("degrees", degrees)]).Tried[1].Name);
    }

    /// <summary>By hand: 5 W hold 125 °C in 25 °C: 0.05 W/K. 4 V over 2 Ω · (1 + 0.004 · 100) = 2.8 Ω are 5.714 W; with amps they are volts times amps.</summary>
    [Fact]
    public void One_power_tells_the_loss_at_one_temperature()
    {
        var one = Hold([5, 5.7, 5], [125, 30, 124.9]);
        Assert.Equal(0.05, one.Value("linear loss"), 1e-4);
        Assert.Equal(2, one.Says.Count);
        Assert.Equal("One power tells the loss at one temperature only.", one.Says[0]);
        Assert.StartsWith("This loss belongs to a rise of about 100 K.", one.Says[1], StringComparison.Ordinal);
        Assert.StartsWith("Hold a second power, 1.5 times this one", Assert.Single(one.Next), StringComparison.Ordinal);
        Assert.Single(Hold([5], [124.4]).Says);
        Assert.Equal("loss in proportion to the rise", Assert.Single(Hold([10, 11.4], [100, 110]).Tried).Name);
        Assert.Equal(2, Hold([10, 11.5], [100, 110]).Tried.Count); // 1.15 times as much
        Assert.StartsWith("1 or more", Refused.By("hold-power", [("watts", [5, 0]), ("degrees", [30, 300])], [("air", 25)]).Limit, StringComparison.Ordinal);
        Assert.Equal(4 * 4 / 2.8 / 95, Volts(("volts", [4])).Value("linear loss"), 1e-7);
        Assert.Equal(4 * 1.5 / 95, Volts(("volts", [4]), ("amps", [1.5])).Value("linear loss"), 1e-7);

        static TrialAnswer Volts(params (string, double[])[] columns) => Given.Fit("hold-power", [.. columns, ("degrees", [120])], [("air", 25), ("ohms", 2), ("temperature coefficient", 0.004)]);
    }

    /// <summary>By hand, last digits with a flicker of 0.3 of them are 0.4163 of them: 4.163 mV, 4.163 mA and 41.63 mK. Over 2.8 Ω 2 · 4 · 4.163e-3/2.8 W; by amps √((4 · 4.163e-3)² + (1.5 · 4.163e-3)²) W.</summary>
    [Theory]
    [InlineData(double.NaN, 0.0118952, 0.0601504)]
    [InlineData(1.5, 0.0177858, 0.0631579)]
    public void Watts_that_are_worked_out_have_the_doubts_of_their_readings(double amps, double watts, double loss)
    {
        var answer = Given.Fit("hold-power", [("volts", [4]), ("amps", [amps]), ("degrees", [120])], [("air", 25), ("ohms", 2), ("temperature coefficient", 0.004)]);
        Assert.Equal(Math.Sqrt((watts * watts) + Math.Pow(loss * 0.041633, 2)) / 95, answer.Scatter("linear loss"), 1e-7);
    }

    /// <summary>By hand: four times the rise takes four, or eight, times the watts.</summary>
    [Theory]
    [InlineData(1, "is not ruled out")]
    [InlineData(1.5, "is ruled out")]
    public void Several_powers_tell_how_the_loss_grows(double exponent, string says)
    {
        double[] rise = [51, 76, 99, 152, 201, 249, 303];
        var answer = Hold([.. rise.Select(k => 0.01 * Math.Pow(k, exponent) * Math.Pow(100, 1 - exponent))], [.. rise.Select(k => 25 + k)]);
        Assert.Equal(exponent, answer.Value("loss exponent"), 1e-3);
        Assert.StartsWith("The loss grows as the rise to the power " + (exponent == 1 ? "1.0" : "1.50"), answer.Says[0], StringComparison.Ordinal);
        Assert.Contains("a loss in proportion to the rise " + says, answer.Says[0], StringComparison.Ordinal);
        Assert.Equal("for the exponent", answer.Tried[^1].Why);
        Assert.Single(answer.Tried, tried => tried.Chosen);
        if (exponent == 1)
        {
            Assert.Equal(0.01, answer.Value("linear loss"), 1e-4);
        }
    }

    /// <summary>Ten times the watts for half as much rise again is more than even radiation takes. With few plateaus the split goes through them, with six the simple law is tried first.</summary>
    [Fact]
    public void A_loss_below_nothing_is_told()
    {
        Assert.StartsWith("The part in proportion comes out below nothing", Hold([1, 10], [125, 175]).Says[1], StringComparison.Ordinal);
        Assert.Single(Hold([5, 8.45], [298, 391]).Says);
        Assert.Equal("loss in proportion and radiation", Hold([1, 2, 3, 4, 5], [60, 95, 130, 165, 200]).Tried[0].Name);
        Assert.Equal("loss in proportion to the rise", Hold([1, 2, 3, 4, 5, 6], [60, 95, 130, 165, 200, 235]).Tried[0].Name);
    }

    private static TrialAnswer Hold(double[] watts, double[] degrees) => Given.Fit("hold-power", [("watts", watts), ("degrees", degrees)], [("air", 25)]);
}
