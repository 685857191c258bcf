using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>What the tests of cells say, and at which readings.</summary>
public class CellKindFitsTests
{
    /// <summary>A number with more digits than any display has: a column without a last digit.</summary>
    private const double Fine = 1e-9;

    /// <summary>By hand: the last piece counts to where it passes 3 V, half of it, at 1.5 A. Charge 3600 + 1800 · 1.25 C; energy ∫V·I of two straight lines, 3600 · 3.75 + 1800 · 24.25/6 J.</summary>
    [Fact]
    public void Capacity_ends_where_the_line_passes_the_cut_off()
    {
        var answer = Capacity([0, 3600, 7200, 9000], [4, 3.5, 2.5, 3.4], [1, 1, 2, 0], ("cut-off", 3), ("claim", 2.5));
        Assert.Equal(5850 / 3600.0, answer.Value("capacity"), 1e-9);
        Assert.Equal(20775 / 3600.0, answer.Value("energy"), 1e-9);
        Assert.Equal(20775 / 5850.0, answer.Value("mean volts"), 1e-9);
        Assert.Equal(["It gave 1.625 Ah down to 3.00 V at about 1.00 A.", "That is 65 % of the 2.50 Ah claimed."], answer.Says);
        Assert.Equal("That is 65 % of the 50.00 Ah claimed.", Capacity([0, 3600, 7200, 9000], [4, 3.5, 2.5, 3.4], [20, 20, 40, 0], ("claim", 50)).Says[1]);
        Assert.Equal("measured", answer.Word);
        Assert.Empty(answer.Next);
        Assert.Equal(("time", "s", "volts", "V"), (answer.Picture!.XName, answer.Picture.XUnit, answer.Picture.YName, answer.Picture.YUnit));
    }

    /// <summary>By hand: 1 A from 4.0 V to 3.8 V. A clock that goes back is not counted.</summary>
    [Fact]
    public void Capacity_above_the_cut_off_is_a_lower_bound()
    {
        var answer = Capacity([0, 1800, 1700, 3600], [4, 3.9, 3.0, 3.8], [1, 1, 50, 1]);
        Assert.Equal(["So far it gave 1.000 Ah down to 3.80 V at about 1.00 A."], answer.Says);
        Assert.Equal("The log ends at 3.80 V, above the cut-off of 3.00 V: this is a lower bound. Go on until 3.00 V, or say where this cell is empty with --set cut-off=...V.", Assert.Single(answer.Next));
        Assert.Equal(["capacity, at least", "energy, at least", "mean volts so far"], answer.Findings.Select(finding => finding.Name));
        Assert.Equal(1, answer.Value("capacity, at least"), 1e-9);
        Assert.Equal("That is at least 40 % of the 2.50 Ah claimed.", Capacity([0, 1800, 3600], [4, 3.9, 3.8], [1, 1, 1], ("claim", 2.5)).Says[1]);
        Assert.Equal("lower bound", answer.Word);
        Assert.Equal("measured", Capacity([0, 1800, 3600], [4, 3.5, 3], [1, 1, 1]).Word);
        Assert.StartsWith("3 or more", Refused.By("capacity", [("time", [0, 1800]), ("volts", [4, 3]), ("amps", [1, 1])]).Limit, StringComparison.Ordinal);
        var below = Refused.By("capacity", [("time", [0, 1800, 3600]), ("volts", [3.0, 2.9, 2.8]), ("amps", [1, 1, 1])]);
        Assert.Equal(("3.00 V", "more than the cut-off of 3.00 V"), (below.Value, below.Limit));
        Assert.Equal("2.50 V", Refused.By("capacity", [("time", [0, 1800, 3600]), ("volts", [2.5, 3.9, 3.5]), ("amps", [1, 1, 1])]).Value); // the first reading decides, not the next
        Assert.Equal("more than the cut-off of 3.00 V", Refused.By("open-volts", [("time", [.. Enumerable.Range(0, 12).Select(i => 60.0 * i)]), ("volts", [.. Enumerable.Repeat(1.2, 12)]), ("amps", [.. Enumerable.Repeat(1.0, 12)])]).Limit);
    }

    /// <summary>By hand: in the last twentieth of 1 Ah the volts fall by 0.2 V, so 0.1 V more are 25 mAh at most, and 0.2 V are 50: up to there the log went to the end, and 25 mAh over √3 are its doubt.</summary>
    [Theory, InlineData(3.1, "capacity", 0.025), InlineData(3.199, "capacity", 0.04975), InlineData(3.201, "capacity, at least", 0)]
    public void A_discharge_that_stops_just_above_its_cut_off_went_to_its_end(double last, string name, double missing)
    {
        var answer = Capacity([0, 1800, 3420, 3600], [4, 3.8, last + 0.2, last], [1, 1, 1, 1], ("cut-off", 3));
        Assert.Equal(1, answer.Value(name), 1e-9);
        Assert.Equal(missing / Math.Sqrt(3), answer.Push(name, "end of the discharge"), 1e-9);
        Assert.Equal(name == "capacity" ? "measured" : "lower bound", answer.Word);
        Assert.Equal("measured", Capacity([0, 1800, 3420, 3600, 3601, 3700], [4, 3.8, 3.25, 3.05, 3.3, 3.4], [1, 1, 1, 1, 0, 0], ("cut-off", 3)).Word); // it rests after its end
    }

    /// <summary>Eleven hours of 0.1 A down to 3.80 V: a lower bound of 1.0 Ah, and no open volts over a charge that nobody knows.</summary>
    [Fact]
    public void A_slow_discharge_that_was_broken_off_tells_no_open_volts()
    {
        int[] rows = [.. Enumerable.Range(0, 11)];
        var answer = Given.Fit("open-volts", [("time", [.. rows.Select(i => 3600.0 * i)]), ("volts", [.. rows.Select(i => 4 - (0.02 * i))]), ("amps", [.. rows.Select(_ => 0.1)])]);
        Assert.Equal(1, answer.Value("capacity, at least"), 1e-9);
        Assert.Single(answer.Findings);
        Assert.StartsWith("The log ends at 3.80 V, above the cut-off of 3.00 V.", Assert.Single(answer.Next), StringComparison.Ordinal);
    }

    /// <summary>By hand: 4 V over 2 Ω are 2 A, 1 Ah and 4 Wh in half an hour. A voltmeter that is 1 %/√3 high makes the amps as much higher, and the watts by both.</summary>
    [Fact]
    public void Volts_over_a_known_resistor_stand_for_amps()
    {
        const double gain = 0.0057735;
        var answer = Given.Fit("capacity", [("time", [0, 900, 1800]), ("volts", [4 + Fine, 4, 4])], [("load", 2)], meters: "volts=1%");
        Assert.Equal("Amps are worked out from the volts over 2.00 Ω.", Assert.Single(answer.Notes));
        Assert.Equal(1, answer.Value("capacity, at least"), 1e-8);
        Assert.Equal(gain, answer.Push("capacity, at least", "gain"), 1e-6);
        Assert.Equal(4 * ((2 * gain) + (gain * gain)), answer.Push("energy, at least", "gain"), 1e-6);
        Assert.Equal(4 * gain, answer.Push("mean volts so far", "gain"), 1e-6);
        Assert.StartsWith("No whole", Refused.By("capacity", [("time", [0, 900, 1800]), ("volts", [4, 4, 4])]).What, StringComparison.Ordinal);
        Assert.Empty(Given.Fit("capacity", [("time", [0, 900, 1800]), ("volts", [4, 4, 4]), ("amps", [1, 1, 1])], [("load", 2)]).Notes);
        Assert.Equal(4, Given.Fit("capacity", [("time", [0, 900, 1800]), ("volts", [4, 4, 4])], [("load", 0.5)]).Value("capacity, at least"), 1e-9);
    }

    /// <summary>The last digit of 10 mV is 10 mV/√12, and a flicker of 0.3 of it; each amp has half of it over 2 Ω. By hand: the outer readings count a quarter each, the middle one a half.</summary>
    [Fact]
    public void Amps_over_a_resistor_have_the_volts_last_digit()
    {
        var answer = Given.Fit("capacity", [("time", [0, 900, 1800]), ("volts", [4, 4, 4])], [("load", 2), ("time doubt", 0)]);
        double digit = 0.01 * Math.Sqrt((1 / 12.0) + 0.09);
        Assert.Equal(digit / 2 * 0.5 * Math.Sqrt(0.0625 + 0.25 + 0.0625), answer.Scatter("capacity, at least"), 1e-7);
    }

    /// <summary>The first and the last moment lie within a second, or within a step that is shorter, or as well as is said. By hand: 1 A for 2 h, and 1 A for a second.</summary>
    [Theory]
    [InlineData(3600, double.NaN, 0.288675)]
    [InlineData(0.5, double.NaN, 0.144338)]
    [InlineData(3600, 10, 10)]
    public void A_sum_over_a_log_is_known_no_better_than_its_moments(double step, double said, double seconds)
    {
        var answer = Capacity([0, step, 2 * step], [4 + Fine, 4, 4], [1 + Fine, 1, 1], double.IsNaN(said) ? [] : [("time doubt", said)]);
        Assert.Equal(seconds / 3600, answer.Scatter("capacity, at least"), 1e-9);
        Assert.Equal(4 * seconds / 3600, answer.Scatter("energy, at least"), 4e-9);
        Assert.Equal(0, answer.Scatter("mean volts so far"), 1e-12);
    }

    /// <summary>By hand: amps grow by 0.1 A an hour to 2 A, so a part of i²/400 is taken after i hours; a tenth between 6 h and 7 h, at (0.1 − 0.09)/0.0325 of it. 20 Ah, at 1 A on the mean.</summary>
    [Fact]
    public void Open_volts_lie_where_the_charge_was_taken()
    {
        double[] hours = [.. Enumerable.Range(0, 21).Select(i => (double)i)];
        TrialAnswer Fit(params (string, double)[] settings) => Given.Fit("open-volts", [("time", [.. hours.Select(h => 3600 * h)]), ("volts", [.. hours.Select(h => 4 - (0.05 * h) + Fine)]), ("amps", [.. hours.Select(h => (0.1 * h) + Fine)])], [("cut-off", 2.99), .. settings]);
        var answer = Fit(("ohms", 0.2));
        const double share = 0.01 / 0.0325;
        Assert.Equal("capacity,100,90,80,70,60,50,40,30,20,10,5", string.Join(",", answer.Findings.Select(finding => finding.Name.Replace("open volts at ", "", StringComparison.Ordinal).Replace(" %", "", StringComparison.Ordinal))));
        Assert.Equal(4, answer.Value("open volts at 100 %"), 1e-6);
        Assert.Equal(4 - (0.05 * (6 + share)) + (0.2 * (0.6 + (0.1 * share))), answer.Value("open volts at 90 %"), 1e-6);
        Assert.Equal("Discharged at 0.050 of its charge an hour; the drop in its ohms is added back.", Assert.Single(answer.Says));
        Assert.Equal(0.002 / Math.Sqrt(3), answer.Push("open volts at 50 %", "sag in a slow discharge"), 1e-9);
        Assert.Equal(0, answer.Push("capacity", "sag in a slow discharge"));
        Assert.Equal(0.288675 * 20 / 72000, answer.Scatter("capacity"), 1e-9);
        Assert.Equal(0, answer.Scatter("open volts at 50 %"), 1e-12);
        Assert.Empty(answer.Next);
        var under = Fit();
        Assert.Equal(4 - (0.05 * (6 + share)), under.Value("open volts at 90 %"), 1e-6);
        Assert.EndsWith("its ohms are not known, so the volts are those under this load.", Assert.Single(under.Says), StringComparison.Ordinal);
        Assert.Equal(0.1 / Math.Sqrt(3), under.Push("open volts at 50 %", "sag in a slow discharge"), 1e-6); // a tenth of an ohm at 1 A
    }

    [Theory]
    [InlineData(9.0, 1)]
    [InlineData(9.2, 0)]
    public void A_discharge_in_nine_hours_is_too_fast_for_open_volts(double hours, int next) =>
        Assert.Equal(next, Given.Fit("open-volts", [("time", [.. Enumerable.Range(0, 11).Select(i => 360 * hours * i)]), ("volts", [.. Enumerable.Range(0, 11).Select(i => 4 - (0.1 * i))]), ("amps", [.. Enumerable.Repeat(1.0, 11)])]).Next.Count); // 0.111 and 0.1087 of the charge an hour

    /// <summary>By hand: 0.1 V by 2 A, twice, and 0.12 V by 2 A off.</summary>
    [Fact]
    public void Steps_on_and_off_are_taken_together()
    {
        var two = Pulse([0, 0.1, 1, 1.3], [4, 3.9, 3.8, 3.92], [0, 2, 2, 0]);
        Assert.Equal(0.055, two.Value("ohms after 0.2 s"), 1e-9);
        Assert.Equal(["2 steps of load, about 2.00 A each.", "A short pulse understates the sag of a long burst by 1.5 to 2.5 times."], two.Says);
        Assert.Equal("Leave the load on for the length of your burst and read its end.", Assert.Single(two.Next));

        // 50, 50 and 60 mΩ: 53.33 ± 3.33 mΩ, whatever part of that the last digits explain.
        foreach (double fine in (double[])[0, Fine])
        {
            var three = Pulse([0, 0.1, 1, 1.1, 2, 2.1], [4 + fine, 3.9, 3.9, 4, 4, 3.88], [0, 2 + Fine, 2, 0, 0, 2]);
            Assert.Equal(0.16 / 3, three.Value("ohms after 0.1 s"), 1e-8);
            Assert.Equal(0.01 / 3, three.Scatter("ohms after 0.1 s"), 1e-6);
            Assert.StartsWith("3 steps of load", three.Says[0], StringComparison.Ordinal);
        }

        Assert.Equal(0, Pulse([0, 0.1, 1, 1.3], [4 + Fine, 3.9, 3.8, 3.92], [0, 2 + Fine, 2, 0]).Scatter("ohms after 0.2 s"), 1e-9); // two do not tell a spread
    }

    /// <summary>By hand: 4 V fall to 3.9, 3.88, 3.85 and 3.8 V under 2 A.</summary>
    [Fact]
    public void A_long_pulse_tells_ohms_after_ten_seconds_a_minute_and_ten()
    {
        var answer = Pulse([0, 1, 10, 60, 600, 700], [4, 3.9, 3.88, 3.85, 3.8, 3.85], [0, 2, 2, 2, 2, 2]);
        Assert.Equal([0.05, 0.06, 0.075, 0.1], ((string[])["1", "10", "60", "600"]).Select(wait => Math.Round(answer.Value($"ohms after {wait} s"), 9)));
        Assert.Equal("1 step of load, about 2.00 A each.", Assert.Single(answer.Says));
        Assert.Empty(answer.Next);
        Assert.Equal(["ohms after 1 s"], Names([0, 1, 5, 6, 10, 20], [0, 2, 2, 0, 0, 0])); // off before the ten seconds are over
        Assert.Equal(["ohms after 5 s"], Names([0, 5, 10], [0, 2, 2])); // a step that takes five seconds itself
        Assert.Equal(["ohms after 4.9 s", "ohms after 10 s"], Names([0, 4.9, 10], [0, 2, 2]));

        // Between 8 s and 12 s the tenth second is half way: 3.86 V and 1.95 A.
        Assert.Equal((4 - 3.86) / 1.95, Pulse([0, 1, 8, 12], [4, 3.9, 3.88, 3.84], [0, 2, 2, 1.9]).Value("ohms after 10 s"), 1e-9);

        static IEnumerable<string> Names(double[] time, double[] amps) => Pulse(time, [.. amps.Select(a => 4 - (0.05 * a))], amps).Findings.Select(finding => finding.Name);
    }

    /// <summary>Read every 5 s by hand, the load came on at any time of the first five: ten seconds in truth are 5 to 10. By hand the volts fall from 3.90 V at 5 s to 3.88 at 10 s under 2 A, 10 mΩ over √3 as a standard doubt. Read every second the instant is known.</summary>
    [Fact]
    public void When_the_load_came_on_between_two_readings_by_hand_is_a_doubt()
    {
        var hand = Pulse([0, 4.9, 10, 15, 20], [4, 3.9, 3.88, 3.87, 3.86], [0, 2, 2, 2, 2]);
        Assert.Equal((0.06 - (0.05 + (0.01 * 0.2 / 5.1))) / Math.Sqrt(3), hand.Scatter("ohms after 10 s"), 1e-4);
        Assert.InRange(hand.Scatter("ohms after 4.9 s"), 0.004, 0.006);
        var log = Pulse([0, 1, 2, 5, 10, 15, 20], [4, 3.91, 3.905, 3.9, 3.88, 3.87, 3.86], [0, 2, 2, 2, 2, 2, 2]);
        Assert.InRange(log.Scatter("ohms after 10 s"), 0, 0.0005); // last digits alone
    }

    [Fact]
    public void Without_a_step_of_the_load_there_is_no_pulse()
    {
        None(0.009, 0.009);
        None(1, 2); // half of the most is no step
        Assert.Equal(10, Pulse([0, 1, 2], [4, 3.9, 3.9], [0, 0.01, 0.01]).Value("ohms after 1 s"), 1e-6);
        Assert.StartsWith("3 or more", Refused.By("pulse", [("time", [0, 1]), ("volts", [4, 3.9]), ("amps", [0, 1])]).Limit, StringComparison.Ordinal);

        static void None(double second, double third)
        {
            var problem = Refused.By("pulse", [("time", [0, 1, 2]), ("volts", [4, 3.9, 3.9]), ("amps", [0, second, third])]);
            Assert.Equal(FormattableString.Invariant($"0.00 to {third:0.00} A"), problem.Value);
        }
    }

    /// <summary>By hand: 4.0 V and 0.1 Ω give at most 4²/(4 · 0.1) W.</summary>
    [Fact]
    public void A_cell_gives_most_watts_at_half_its_open_volts()
    {
        var answer = Sag([3.9, 3.7], [1, 3]);
        Assert.Equal(40, answer.Value("most watts"), 1e-6);
        Assert.Empty(answer.Says);
        Assert.StartsWith("One point is without load", Assert.Single(Sag([4, 3.7], [0.05, 3]).Says), StringComparison.Ordinal);
        Assert.Empty(Sag([4, 3.7], [0.06, 3]).Says); // a fiftieth of the other
        Assert.Equal("100 mΩ less than nothing", Refused.By("two-load-sag", [("volts", [3.7, 3.9]), ("amps", [1, 3])]).Value);
        Assert.StartsWith("All readings of amps", Refused.By("two-load-sag", [("volts", [3.9, 3.8]), ("amps", [1, 1.04])]).What, StringComparison.Ordinal);
        Assert.Equal(1, Sag([3.9, 3.84], [1, 1.06]).Value("ohms"), 1e-6);
        Assert.StartsWith("2 or more", Refused.By("two-load-sag", [("volts", [3.9]), ("amps", [1])]).Limit, StringComparison.Ordinal);
    }

    /// <summary>By hand: V = 4 − 0.1·I − 0.02·I² falls by 0.1 + 0.04 · 2.5 Ω at the mean of 2.5 A.</summary>
    [Fact]
    public void Ohms_that_change_with_the_load_are_told_at_its_mean()
    {
        double[] amps = [.. Enumerable.Range(1, 9).Select(i => 0.5 * i)];
        var answer = Sag([.. amps.Select(a => 4 - (0.1 * a) - (0.02 * a * a))], amps);
        Assert.Equal("ohms that change with the load", answer.Tried.Single(tried => tried.Chosen).Name);
        Assert.Equal(0.2, answer.Value("ohms"), 1e-6);
        Assert.Equal(4, answer.Value("open volts"), 1e-6);
        Assert.Contains("Take a third load between the two.", Sag([3.9, 3.8, 3.7], [1, 2, 3]).Next);
    }

    /// <summary>By hand: 10 mV a day of 0.5 V for a charge of 2 Ah are 0.02 · 7200 C / 86400 s.</summary>
    [Fact]
    public void Volts_over_days_tell_a_drain_where_charge_and_volts_are_said()
    {
        (string, double[])[] log = [("time", [0, 86400, 172800]), ("volts", [3.9, 3.89, 3.88])];
        Assert.Equal(0.02 * 7200 / 86400 * 1e6, Given.Fit("standby-drain", log, [("capacity", 2), ("volts per charge", 0.5)]).Value("standby amps"), 1e-3);
        Assert.Equal("no capacity or no volts per charge", Refused.By("standby-drain", log, [("capacity", 2)]).Value);
        Assert.Equal("no capacity or no volts per charge", Refused.By("standby-drain", log, [("volts per charge", 0.5)]).Value);
        Assert.Equal("It empties 2.00 Ah in 50 days.", Assert.Single(Given.Fit("standby-drain", log, [("capacity", 2), ("volts per charge", 0.5)]).Says)); // 0.01 of 0.5 V a day
        Assert.StartsWith("2 or more", Refused.By("standby-drain", [("time", [0]), ("volts", [3.9])]).Limit, StringComparison.Ordinal);
        Assert.Equal("It empties 2.50 Ah in 5208 days.", Assert.Single(Given.Fit("standby-drain", [("amps", [20e-6])], [("capacity", 2.5)]).Says));
        Assert.Equal("It empties 60.00 Ah in 125000 days.", Assert.Single(Given.Fit("standby-drain", [("amps", [20e-6])], [("capacity", 60)]).Says));
        Assert.Empty(Given.Fit("standby-drain", [("amps", [20e-6])]).Says);
    }

    /// <summary>By hand: 1.9 A are just 95 % of 2 A, and count as falling; 1.9 Ah and 1.45 Ah of trapezes.</summary>
    [Fact]
    public void A_charge_is_told_by_its_two_parts()
    {
        var answer = Charge([3.6, 3.9, 4.1, 4.2, 4.19], [1.96, 2, 1.9, 1, 0.26]);
        Assert.Equal("30 min at full current, then 90 min while it falls.", Assert.Single(answer.Says));
        double full = 0.25 * (1.96 + 2), all = full + (0.25 * (2 + 1.9 + 1.9 + 1 + 1 + 0.26));
        Assert.Equal(all, answer.Value("charge in"), 1e-9);
        Assert.Equal(full / all, answer.Value("share at full current"), 1e-9);
        Assert.Equal(1.98, answer.Value("charge current"), 1e-9);
        Assert.Equal(0.26, answer.Value("end current"), 1e-12);
        Assert.Equal(4.145, answer.Value("end volts"), 1e-9); // the middle of 3.9, 4.1, 4.19 and 4.2 V
        Assert.Equal(7200, answer.Value("charge time"), 1e-9);
        Assert.Equal(0.288675, answer.Scatter("charge time"), 1e-6);
        Assert.Equal("The current had only fallen to 13 %: the charge was not at its end. Log on until it ends by itself.", Assert.Single(answer.Next));
        Assert.StartsWith("The current had only fallen to 83 %", Assert.Single(Charge([3.6, 3.9, 4.1, 4.2, 4.2], [2, 2, 1.8, 1.7, 1.66]).Next), StringComparison.Ordinal);
        Assert.Empty(Charge([3.6, 3.9, 4.1, 4.2, 4.2], [2, 2, 1.8, 1, 0.24]).Next); // 12 %
        Assert.Equal(("amps", "A"), (answer.Picture!.YName, answer.Picture.YUnit));
        Assert.StartsWith("5 or more", Refused.By("charge-log", [("time", [0, 1, 2, 3]), ("volts", [4, 4, 4, 4]), ("amps", [1, 1, 1, 1])]).Limit, StringComparison.Ordinal);
    }

    /// <summary>A logger goes on to write zeros after the charger has ended between 7200 s and 9000 s: at 8100 ± 900/√3 s. By hand: 0.2 A flowed at the last reading before, and 0.2 A for the quarter of an hour more are 0.05 Ah.</summary>
    [Fact]
    public void What_a_logger_writes_after_the_charger_has_ended_is_no_charge()
    {
        var answer = Charge([3.6, 3.9, 4.1, 4.2, 4.21, 4.18, 4.17, 4.16], [2, 2, 1.5, 1, 0.2, 0, 0.01, 0]);
        Assert.Equal(0.2, answer.Value("end current"), 1e-12);
        Assert.Equal(8100, answer.Value("charge time"), 1e-9);
        Assert.Equal(900 / Math.Sqrt(3), answer.Push("charge time", "when it ended"), 1e-9);
        Assert.Equal(1 + 0.875 + 0.625 + 0.3 + 0.05, answer.Value("charge in"), 1e-9);
        Assert.Equal(4.15, answer.Value("end volts"), 1e-9); // the middle of 3.9, 4.1, 4.2 and 4.21 V
        Assert.Equal("30 min at full current, then 105 min while it falls.", Assert.Single(answer.Says));
        Assert.Empty(answer.Next);
    }

    /// <summary>By hand: 0.15 V by 2 A after a second, 0.17 V after ten. The amps were noted once, at ten seconds; at one second they may have been larger by as much as the volts are, 0.02 of 3.93, over √3 of it.</summary>
    [Fact]
    public void Amps_that_were_noted_once_serve_for_all_readings_under_load()
    {
        var once = Pulse([0, 1, 10, 11], [4.10, 3.95, 3.93, 4.09], [double.NaN, double.NaN, 2, double.NaN]);
        var all = Pulse([0, 1, 10, 11], [4.10, 3.95, 3.93, 4.09], [0, 2, 2, 0]);
        Assert.Equal(all.Findings.Select(finding => (finding.Name, Math.Round(finding.Value.Value, 9))), once.Findings.Select(finding => (finding.Name, Math.Round(finding.Value.Value, 9))));
        Assert.Equal(0.17 / 2, once.Value("ohms after 10 s"), 1e-9);
        double follow = 0.02 / 3.93 / Math.Sqrt(3) * 0.085;
        double zero = 0.01 * Math.Sqrt((1 / 12.0) + 0.09) * 0.085 / 2; // the last digit and flicker of the amps at rest, that nobody read
        Assert.Equal(follow, Math.Sqrt(Math.Pow(once.Scatter("ohms after 10 s"), 2) - Math.Pow(all.Scatter("ohms after 10 s"), 2) + (zero * zero)), 0.05 * follow);
        Assert.Contains("The amps were noted once", Assert.Single(once.Notes), StringComparison.Ordinal);
        Assert.Equal("1", Refused.By("pulse", [("time", [0, 1, 10]), ("volts", [3.9, 3.95, 4.1]), ("amps", [double.NaN, double.NaN, 2])]).Value); // noted at the highest volts: they tell no load
    }

    /// <summary>Eleven readings end the log: from the tenth on 4.00, 4.01 ... 4.10 V, their middle is 4.05 V.</summary>
    [Fact]
    public void End_volts_are_those_of_the_last_ten_steps()
    {
        int[] rows = [.. Enumerable.Range(0, 20)];
        var answer = Charge([.. rows.Select(i => i < 9 ? 3.5 : 4 + (0.01 * (i - 9)))], [.. rows.Select(i => 2 * Math.Exp(-i / 6.0))]);
        Assert.Equal(4.05, answer.Value("end volts"), 1e-9);
    }

    /// <summary>One volt written ten times as large is put aside: half way of 4 V to 3 V stays 3.5 V, and the ampere-hours of a charge stay.</summary>
    [Fact]
    public void A_slip_in_a_log_is_put_aside()
    {
        int[] rows = [.. Enumerable.Range(0, 21)];
        double[] time = [.. rows.Select(i => 3600.0 * i)], volts = [.. rows.Select(i => i == 7 ? 36.5 : 4 - (0.05 * i))];
        var open = Given.Fit("open-volts", [("time", time), ("volts", volts), ("amps", [.. rows.Select(_ => 0.1)])], [("cut-off", 3)]);
        var charge = Given.Fit("charge-log", [("time", time), ("volts", volts), ("amps", [.. rows.Select(_ => 0.1)])]);
        foreach (var (answer, words) in (ValueTuple<TrialAnswer, string>[])[(open, "36.5 V is about ten times off the other volts of this cell: decimal point?"), (charge, "volts 36.5 stands alone between 3.7 and 3.6.")])
        {
            var remark = Assert.Single(answer.Remarks, remark => remark.LeftOut);
            Assert.Equal((8, words), (remark.Reading, remark.Words));
        }

        Assert.Equal(3.5, open.Value("open volts at 50 %"), 1e-9);
        Assert.Equal(2, charge.Value("charge in"), 1e-9);
    }

    private static TrialAnswer Capacity(double[] time, double[] volts, double[] amps, params (string, double)[] settings) => Given.Fit("capacity", [("time", time), ("volts", volts), ("amps", amps)], settings);

    private static TrialAnswer Pulse(double[] time, double[] volts, double[] amps) => Given.Fit("pulse", [("time", time), ("volts", volts), ("amps", amps)]);

    private static TrialAnswer Sag(double[] volts, double[] amps) => Given.Fit("two-load-sag", [("volts", volts), ("amps", amps)]);

    private static TrialAnswer Charge(double[] volts, double[] amps) => Given.Fit("charge-log", [("time", [.. volts.Select((_, i) => 1800.0 * i)]), ("volts", volts), ("amps", amps)]);
}
