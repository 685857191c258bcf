using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>What the tests of converters and switches say, and at which readings.</summary>
public class PowerFitsTests
{
    /// <summary>By hand: 3 of 4 W, and 5.7 of 8 W, come out while it holds; 9.5 V are just 95 % of the 10 V set, 9.49 V are less.</summary>
    [Fact]
    public void Points_where_the_output_fell_count_for_the_limit_only()
    {
        var answer = Points([4, 4, 4, 4], [1, 2, 3, 2.5], [10, 9.5, 9.49, 8], [0.3, 0.6, 0.8, 0.9], ("set volts", 10));
        Assert.Equal("The output falls in 2 of 4 readings, at 3.00 A in: it holds up to about 5.7 W out. These readings count for the limit, not for the losses.", answer.Says[0]);
        Assert.Equal("falls", answer.Word);
        Assert.Equal("loss in proportion to the input", answer.Tried.Single().Name);
        Assert.InRange(answer.Value("efficiency"), 71.25, 75);
    }

    /// <summary>The highest volts out stand for the set ones where those are not said: 9.4 V are less than 95 % of 10 V. A reading without load has no efficiency.</summary>
    [Fact]
    public void Points_without_set_volts_are_held_against_the_highest()
    {
        var fallen = Points([4, 4, 4], [1, 2, 0.02], [10, 9.4, 10], [0.36, 0.6, 0]);
        Assert.StartsWith("The output falls in 1 of 2 readings, at 2.00 A in: it holds up to about 3.6 W", fallen.Says[0], StringComparison.Ordinal);
        Assert.Equal(90, fallen.Value("efficiency"), 1e-9); // 3.6 of 4 W
        var holds = Points([4], [1], [9], [0.4]);
        Assert.Equal("It held its output at every load, up to 1.00 A at its input: its limit lies above.", Assert.Single(holds.Says));
        Assert.Equal("holds", holds.Word);
        var never = Points([4, 4], [1, 2], [9, 8], [0.4, 0.8], ("set volts", 12));
        Assert.Equal("never held", never.Word);
        Assert.Equal("limit current", Assert.Single(never.Findings).Name);
        Assert.Contains("at 2.00 A in: it holds up to about 0.0 W out", Assert.Single(never.Says), StringComparison.Ordinal);
        Assert.Equal("Take readings at light load, where the output holds.", Assert.Single(never.Next));
        Assert.StartsWith("1 or more of", Refused.By("converter-points", [("volts in", [4]), ("amps in", [1]), ("volts out", [9]), ("amps out", [0])]).Limit, StringComparison.Ordinal);
    }

    /// <summary>By hand: the last digit of 10 mV or 10 mA, with a flicker of 0.3 of it, is 4.163e-3; 0.4 W of 4 W are lost, ± √(1² + 4² + 0.4² + 9²) of that and a thousandth of 4 W; the share of the loss moves by 0.1 · 4 V of it.</summary>
    [Fact]
    public void A_loss_is_known_as_well_as_its_four_readings()
    {
        double digit = 0.01 * Math.Sqrt((1 / 12.0) + 0.09);
        Assert.Equal(Math.Sqrt((digit * digit * (1 + 16 + 0.16 + 81 + 0.16)) + (0.004 * 0.004)) / 4 * 100, Points([4], [1], [9], [0.4]).Scatter("efficiency"), 1e-4);
    }

    /// <summary>By hand: 4 V and 1, 2, 3 A with a loss of 0.1 W + 0.2 V · amps: 0.3 of 4 W at the lightest, 0.7 of 12 W at the heaviest.</summary>
    [Fact]
    public void Three_points_tell_a_fixed_loss_and_a_share()
    {
        double[] amps = [2, 3, 1];
        var answer = Points([4, 4, 4], amps, [9, 9, 9], [.. amps.Select(a => ((4 * a) - 0.1 - (0.2 * a)) / 9)]);
        Assert.Equal(0.1, answer.Value("loss fixed"), 0.02);
        Assert.Equal(0.2, answer.Value("loss per ampere"), 0.03);
        Assert.Equal(0, answer.Value("loss per ampere squared"), 0.01); // what is usual beforehand draws a little
        Assert.Equal(100 * (1 - (0.3 / 4)), answer.Value("efficiency at the lightest load"), 0.1);
        Assert.Equal(100 * (1 - (0.7 / 12)), answer.Value("efficiency at the heaviest load"), 0.1);
        Assert.Equal("own needs, share and ohms", Assert.Single(answer.Tried).Name);
        Assert.Contains("a tenth of it", Assert.Single(answer.Next), StringComparison.Ordinal);
    }

    /// <summary>By hand: the same, and 0.3 Ω more; 9 V · 0.2 A of 4 V · 0.5 A is next to the best.</summary>
    [Fact]
    public void Many_points_tell_ohms_beside_the_share()
    {
        double[] amps = [1.5, 3, 0.5, 1, 2, 2.5, 0.75, 1.25, 1.75, 2.25, 2.75, 0.25];
        double[] volts = [.. amps.Select(a => 5 - (0.1 * a))]; // a source that sags
        double[] loss = [.. amps.Select(a => 0.1 + (0.2 * a) + (0.3 * a * a))];
        var answer = Points(volts, amps, [.. amps.Select(_ => 9.0)], [.. amps.Select((a, i) => ((volts[i] * a) - loss[i]) / 9)]);
        Assert.Equal("own needs, share and ohms", answer.Tried.Single(tried => tried.Chosen).Name);
        Assert.Equal(0.1, answer.Value("loss fixed"), 2e-3);
        Assert.Equal(0.2, answer.Value("loss per ampere"), 4e-3);
        Assert.Equal(0.3, answer.Value("loss per ampere squared"), 2e-3);
        Assert.Equal(100 * (1 - (3.4 / 14.1)), answer.Value("efficiency at the heaviest load"), 0.1); // 0.1 + 0.6 + 2.7 of 4.7 · 3
        Assert.Equal(100 * (1 - (0.16875 / 1.24375)), answer.Value("efficiency at the lightest load"), 0.1); // 0.1 + 0.05 + 0.01875 of 4.975 · 0.25
    }

    /// <summary>A volt a second from 0 to 10 V: 1 V at 1 s, 9 V at 9 s. By hand: the display's 0.01 V/√12 = 2.9 mV moves either crossing by itself. Were it settled by so much higher, the later crossing
    /// would lie where the curve through 8, 9, 10 and 10 V rises by 7/6 V a second: 0.9 · 6/7 later, the earlier one 0.1.</summary>
    [Fact]
    public void A_start_is_the_time_from_a_tenth_to_nine_tenths()
    {
        double[] volts = [.. Enumerable.Range(0, 40).Select(i => Math.Min(10.0, i))];
        var answer = Given.Fit("converter-start", [("time", [.. volts.Select((_, i) => (double)i)]), ("volts out", volts)]);
        double digit = 0.01 / Math.Sqrt(12);
        Assert.Equal(8, answer.Value("start time"), 1e-6);
        Assert.Equal(10, answer.Value("settled volts"), 1e-12);
        Assert.Equal(digit, answer.Scatter("settled volts"), 1e-9);
        Assert.Equal(digit * Math.Sqrt(Math.Pow((0.9 * 6 / 7) - 0.1, 2) + 2), answer.Scatter("start time"), 2e-5);
        Assert.Equal(0.008, Given.Fit("converter-start", [("time", [.. volts.Select((_, i) => 0.001 * i)]), ("volts out", volts)]).Value("start time"), 1e-9);
        Assert.Null(answer.Find("start current"));
        Assert.Empty(answer.Says);
        Assert.All(answer.Picture!.Fitted, fitted => Assert.Equal(10, fitted, 1e-12));
        Assert.StartsWith("5 or more", Refused.By("converter-start", [("time", [0, 1, 2, 3]), ("volts out", [0, 5, 9, 9])]).Limit, StringComparison.Ordinal);
    }

    /// <summary>By hand: t³/100 passes 1 V at ∛100 s and 9 V at ∛900 s; it overshoots and settles at 10 V.</summary>
    [Fact]
    public void A_crossing_lies_on_the_curve_through_two_readings_to_either_side()
    {
        double[] volts = [.. Enumerable.Range(0, 40).Select(i => i <= 11 ? i * i * i / 100.0 : i == 12 ? 13.0 : 10.0)];
        var answer = Given.Fit("converter-start", [("time", [.. volts.Select((_, i) => (double)i)]), ("volts out", volts), ("amps in", [.. volts.Select((_, i) => i == 5 ? 2.0 : i == 6 ? 2.5 : i == 7 ? 2.2 : i == 30 ? double.NaN : 0.2)])]);
        Assert.Equal(Math.Cbrt(900) - Math.Cbrt(100), answer.Value("start time"), 1e-5);
        Assert.Equal(2.5, answer.Value("start current"), 1e-12);
    }

    /// <summary>A log that begins at 2 V of 10 V has passed its tenth before: its time counts from the first reading. By hand: 6, 8, 10, 12 V are a line, 9 V lie at 3.5 s of it.</summary>
    [Fact]
    public void A_log_that_begins_late_counts_from_its_first_reading()
    {
        double[] volts = [2, 4, 6, 8, 10, 12, 11, .. Enumerable.Repeat(10.0, 33)];
        var answer = Given.Fit("converter-start", [("time", [.. volts.Select((_, i) => 5.0 + i)]), ("volts out", volts)]);
        Assert.Equal(3.5, answer.Value("start time"), 1e-6);
    }

    /// <summary>By hand: of the last ten of forty the middle six are five times 9.00 and once 9.01 V.</summary>
    [Fact]
    public void Settled_volts_are_the_mean_of_the_middle_of_the_last_quarter()
    {
        double[] last = [9.01, 9, 9, 9, 9.01, 9, 9, 9, 9.01, 9];
        double[] volts = [.. Enumerable.Range(0, 30).Select(i => i < 10 ? 0.9 * i : 9.05), .. last];
        double Scatter(double[] v) => Start(v).Scatter("settled volts");
        Assert.Equal(((5 * 9) + 9.01) / 6, Start(volts).Value("settled volts"), 1e-9);
        Assert.InRange(Scatter([.. volts[..30], 9.01, 9, 9.01, 9, 9.01, 9, 9.01, 9, 9.01, 9]), 0, 0.0018); // its flicker of half a digit rounds itself off
    }

    /// <summary>By hand: e = 1, −1, 0, −1, 1 mV on a parabola of 12 V at its top. Through all five its top is lower by 2 · 6/14 of e; where e is half as large again, the last digits do not explain
    /// what is left over, and the top is that of the three in the middle.</summary>
    [Theory]
    [InlineData(0.001, 2.999 - (0.001 * 6 / 7))]
    [InlineData(0.0015, 2.999)]
    public void A_flat_top_is_told_by_five_readings_a_sharp_one_by_three(double e, double over)
    {
        double[] top = [11.6 + e, 11.9 - e, 12, 11.9 - e, 11.6 + e];
        double[] volts = [0, 2.001, 4.001, 6.001, 8.001, .. top, .. Enumerable.Repeat(9.001, 50)];
        var answer = Start(volts);
        Assert.Equal(over, answer.Value("overshoot"), 2e-6);
        Assert.Equal("It jumps 3.0 V over its settled 9.0 V: keep the heater off until it has settled.", Assert.Single(answer.Says));
        if (e == 0.001)
        {
            // By hand: a third of what three readings would say otherwise; the digit u = 1 mV/√12 of the settled volts; a half of its square; 17, 12 and −3 of 35 of each reading at the top.
            double u = 0.001 / Math.Sqrt(12), third = 0.001 * 6 / 7 / 3;
            Assert.Equal(Math.Sqrt((third * third) + (u * u * (1 + 0.5 + (17.0 / 35)))), answer.Scatter("overshoot"), 5e-6);
        }
    }

    [Theory]
    [InlineData(10.9, false)]
    [InlineData(11.1, true)]
    public void A_jump_of_a_tenth_is_told(double top, bool told)
    {
        double[] volts = [0, 2.5, 5, 7.5, top - 0.15, top, top - 0.15, 10, .. Enumerable.Repeat(10.0, 32)];
        Assert.Equal(told, Start(volts).Says.Count == 1);
    }

    /// <summary>By hand: 9.5 V are just 95 % of 10 V. The lightest load that it does not hold is 6 V / 1.2 A = 5 Ω, which asks 2 A and 20 W of 10 V; it holds 1 A and 9.5 W.</summary>
    [Fact]
    public void A_collapse_lies_half_way_between_what_holds_and_what_does_not()
    {
        var answer = Collapse([1.2, 0.5, 1, 1.5], [6, 10, 9.5, 3], meters: "amps out=2%+1d");
        Assert.Equal(1.5, answer.Value("output amps it holds"), 1e-12);
        Assert.Equal(14.75, answer.Value("output watts it holds"), 1e-12);
        Assert.Equal("It holds 10.0 V at 1.00 A and gives way before 2.00 A.", Assert.Single(answer.Says));
        Assert.Equal(["A load of 1.41 A lies between and narrows it most.", "Read volts and amps at the input too: a loop and a prediction ask for the input current at which the module gives way."], answer.Next); // √(1 · 2)
        Assert.Equal("collapses", answer.Word);
        foreach (var (name, middle, half, perAmp) in new[] { ("amps", 1.5, 0.5, 1), ("watts", 14.75, 5.25, 10) })
        {
            Assert.Equal(half / Math.Sqrt(3), answer.Push($"output {name} it holds", $"output {name} it holds"), 1e-9);
            Assert.Equal(0.02 * middle / Math.Sqrt(3), answer.Push($"output {name} it holds", " A gain"), 1e-9);
            Assert.Equal(0.01 * perAmp / Math.Sqrt(3), answer.Push($"output {name} it holds", " A offset"), 1e-9);
        }
    }

    /// <summary>By hand: 9.4 V at 1.1 A are 8.545 Ω, 1.17 A at 10 V, near enough to 1 A. A lighter load that it does not hold tells nothing above what it holds: a thousandth more.</summary>
    [Theory]
    [InlineData(1.1, 9.4, 1.0851064, "1.17")]
    [InlineData(0.5, 9.0, 1.0005, "1.00")]
    public void A_collapse_that_is_narrow_asks_for_no_more(double amps, double volts, double middle, string before)
    {
        var answer = Collapse([0.4, 1, amps], [10, 10, volts]);
        Assert.Equal(middle, answer.Value("output amps it holds"), 1e-6);
        Assert.Equal(10 * middle, answer.Value("output watts it holds"), 1e-5);
        Assert.Equal($"It holds 10.0 V at 1.00 A and gives way before {before} A.", answer.Says[0]);
        Assert.StartsWith("Read volts and amps at the input too", Assert.Single(answer.Next), StringComparison.Ordinal);
    }

    [Fact]
    public void A_converter_that_never_gave_way_has_a_lower_bound_and_one_that_never_held_has_none()
    {
        var holds = Collapse([0.3, 0.9, 0.6], [10, 9.5, 10]);
        Assert.Equal("It held at every load, up to 0.90 A: a lower bound.", Assert.Single(holds.Says));
        Assert.Equal("Take a heavier load until it gives way, for a second only.", Assert.Single(holds.Next));
        Assert.Equal("never collapsed", holds.Word);
        Assert.Equal(["output amps it holds, at least", "output watts it holds, at least"], holds.Findings.Select(finding => finding.Name));
        Assert.Equal(0.9, holds.Value("output amps it holds, at least"), 1e-12); // what was seen, and nothing beyond
        Assert.Equal(8.55, holds.Value("output watts it holds, at least"), 1e-12); // 0.9 A at 9.5 V
        var read = Collapse([0.3, 0.9, 0.6], [10, 9.5, 10], meters: "amps out=2%");
        Assert.Equal(0.02 * 0.9 / Math.Sqrt(3), read.Push("output amps it holds, at least", " A gain"), 1e-9);
        var never = Collapse([0.3, 0.9, 0.6], [9.4, 8, 9]);
        Assert.Equal("It never held its volts.", Assert.Single(never.Says));
        Assert.Equal("Take a lighter load.", Assert.Single(never.Next));
        Assert.Equal("never held", never.Word);
        Assert.Empty(never.Findings);
        Assert.Equal("collapses", Given.Fit("converter-collapse", [("amps out", [0.3, 0.6, 0.9]), ("volts out", [10, 9.6, 9.4])]).Word); // held against the highest volts
        Assert.StartsWith("3 or more", Refused.By("converter-collapse", [("amps out", [0.3, 0.9]), ("volts out", [10, 5])]).Limit, StringComparison.Ordinal);
    }

    /// <summary>At 4.0 V and 4.0 A it holds; 85 % of the volts are 3.4 V, 115 % of the amps are 4.6 A.</summary>
    [Theory]
    [InlineData(3.29, 3.49, 4.4, "The input sags to 3.39 V while 4.4 A flow: the source gives way, not the module alone.")]
    [InlineData(3.3, 3.5, 4.4, "The input stays at 3.40 V and its current near 4.4 A: the module's own current limit.")]
    [InlineData(3.3, 3.5, 4.6, "What gives way, source or module, these readings do not tell.")]
    public void What_gives_way_is_told_by_the_input(double volts, double also, double amps, string says)
    {
        var answer = Collapse([0.5, 1, 1.2, 1.5], [10, 10, 6, 5], [("volts in", [4, 3.9, volts, also]), ("amps in", [2, 4, 3.8, amps])]);
        Assert.Equal(says, answer.Says[1]);

        // The limit lies between the most amps in of a load that it holds, 4.0 A, and the 4.4 A of one that it does not.
        bool own = says.EndsWith("own current limit.", StringComparison.Ordinal);
        Assert.Equal(own ? [4.2, 0.2 / Math.Sqrt(3)] : Array.Empty<double>(), answer.Find("limit current") is { } limit ? [limit.Value, limit.StandardDoubt] : Array.Empty<double>(), (one, other) => Math.Abs(one - other) < 1e-9);
        Assert.DoesNotContain(answer.Next, next => next.StartsWith("Read volts", StringComparison.Ordinal));
        Assert.Single(Collapse([0.5, 1, 1.2], [10, 10, 6], [("amps in", [1, 2, 2])]).Says);
        Assert.Single(Collapse([0.5, 1, 1.2], [10, 10, 6], [("volts in", [4, 4, 4])]).Says);
    }

    /// <summary>By hand: 10 mA + 2 mA a volt, at the mean of 4 V: 18 mA and 72 mW; 60 Ah last 3333 h. Where the volts differ by a fifth of a volt at most, no line is tried.</summary>
    [Fact]
    public void Idle_amps_that_follow_the_volts_are_told_at_their_mean()
    {
        TrialAnswer Idle(double[] volts, params (string, double)[] settings) => Given.Fit("converter-idle", [("volts in", volts), ("amps in", [.. volts.Select(v => 0.01 + (0.002 * v))])], settings);
        var wide = Idle([3, 3.4, 3.8, 4.2, 4.6, 5], ("capacity", 60));
        Assert.Equal("amps that follow the volts", wide.Tried.Single(tried => tried.Chosen).Name);
        Assert.Equal(18, wide.Value("idle amps"), 1e-6);
        Assert.Equal(0.072, wide.Value("idle watts"), 1e-8);
        Assert.Equal("Idle, it empties 60.00 Ah in 3333 h.", Assert.Single(wide.Says));
        var narrow = Idle([3.9, 4.1, 3.95, 4.05, 4, 4.0]);
        Assert.Equal("one value", Assert.Single(narrow.Tried).Name);
        Assert.Equal(18, narrow.Value("idle amps"), 1e-3);
        Assert.Empty(narrow.Says);
    }

    /// <summary>By hand: 76.02, 75.11 and 75.6 mW are 75.58 mW on the mean, 0.26 mW the standard deviation of it, times 2.2 for two degrees of freedom; at the mean of 3.633 V 20.80 mA. As the mean amps times the mean volts they were 77 ± 17 mW.</summary>
    [Fact]
    public void Idle_watts_that_stay_while_the_volts_fall_are_told_reading_by_reading()
    {
        var answer = Given.Fit("converter-idle", [("volts in", [4.2, 3.7, 3.0]), ("amps in", [0.0181, 0.0203, 0.0252])], [("capacity", 2.5)]);
        Assert.Equal(["idle amps", "idle watts"], answer.Findings.Select(finding => finding.Name));
        Assert.Equal(0.07558, answer.Value("idle watts"), 1e-4);
        Assert.InRange(answer.Find("idle watts")!.StandardDoubt, 0.0002, 0.001);
        Assert.Equal(20.80, answer.Value("idle amps"), 0.03);
        Assert.Equal(["It takes the same watts at all its input volts; the amps are those at 3.63 V.", "Idle, it empties 2.50 Ah in 120 h."], answer.Says);
    }

    /// <summary>By hand: 2 A · 0.1 V are 0.2 W, 10 K above the air. Last digits of 0.1 K, 10 mA and 1 mV, each with a flicker of 0.3 of itself, are 0.416 of themselves: 41.6 mK,
    /// and 50 K/W · √((2 · 0.416e-3)² + (0.1 · 4.16e-3)²) W = 46.5 mK.</summary>
    [Fact]
    public void A_switch_tells_ohms_for_each_gate_and_its_rise()
    {
        var answer = Switch([2.96, 3.04, 2, 4], [2, 4, 0, 2], [0.2, 0.4, 0.001, 0.1], [double.NaN, double.NaN, double.NaN, 30], ("air", 20));
        Assert.Equal(["ohms at 3.0 V gate", "ohms at 4.0 V gate", "rise per watt"], answer.Findings.Select(finding => finding.Name));
        Assert.Equal(0.1, answer.Value("ohms at 3.0 V gate"), 1e-9);
        Assert.Equal(0.05, answer.Value("ohms at 4.0 V gate"), 1e-9);
        Assert.Equal(50, answer.Value("rise per watt"), 1e-9);
        Assert.Equal(Math.Sqrt((0.041633 * 0.041633) + (0.046547 * 0.046547)) / 0.2, answer.Scatter("rise per watt"), 2e-4);
        Assert.Equal("At the lowest gate voltage it has 2.0 times the ohms of the highest: not fully on. The threshold on a sheet is where it just begins.", Assert.Single(answer.Says));
        Assert.Null(Switch([4], [2], [0.1], [30]).Find("rise per watt"));
        Assert.StartsWith("1 or more", Refused.By("switch-drop", [("gate volts", [4]), ("amps", [0]), ("drop", [0.1])]).Limit, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.129, 0)]
    [InlineData(0.131, 1)]
    public void A_switch_with_a_third_more_ohms_is_not_fully_on(double drop, int says) => Assert.Equal(says, Switch([3, 4], [1, 1], [drop, 0.1], [double.NaN, double.NaN]).Says.Count);

    /// <summary>By hand: 10 mΩ at 1 to 4 A are 10 to 160 mW and 50 K/W; a drop of 0.4 V instead of 0.04 V makes 1.6 W of it, and with a rise of 8 K a switch of 5 K/W. One of eight is put aside, two or one of five are not.</summary>
    [Theory]
    [InlineData(8, 1, "1.6 W and a rise of 8.0 K do not belong together: the other readings rise by 50 K a watt.")]
    [InlineData(8, 2, "")]
    [InlineData(5, 1, "")]
    public void A_slipped_drop_is_put_aside_where_enough_others_speak_against_it(int count, int slips, string words)
    {
        double[] amps = [4, 1, 2, 3, 4, 1, 2, 3], drops = [0.4, 0.01, 0.02, 0.03, slips == 2 ? 0.4 : 0.04, 0.01, 0.02, 0.03];
        var answer = Switch([.. Enumerable.Range(0, count).Select(i => 4.0 + i)], amps[..count], drops[..count], [.. amps[..count].Select(a => 20 + (50 * 0.01 * a * a))], ("air", 20));
        Assert.Equal(words, string.Join(" ", answer.Remarks.Where(remark => remark.LeftOut).Select(remark => remark.Words)));
        Assert.Equal(words.Length > 0, Math.Abs(answer.Value("rise per watt") - 50) < 1);
    }

    /// <summary>A drop of 3 mV on a display of millivolts is known to 0.289/3 of itself, and a tenth is allowed besides: √(0.096² + 0.1²) = 0.139 of the 0.45 K that 9 mW make. A rise of 0.7 times more than that is five times that off, and no slip.</summary>
    [Fact]
    public void A_drop_that_is_hardly_known_is_no_slip()
    {
        double[] amps = [3, 1, 2, 3, 4, 5, 6, 7], drops = [0.003, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7];
        var answer = Switch([.. amps.Select((_, i) => 4.0 + i)], amps, drops, [.. amps.Select((a, i) => 20 + (50 * a * drops[i] * (i == 0 ? 1.7 : 1)))], ("air", 20));
        Assert.DoesNotContain(answer.Remarks, remark => remark.LeftOut);
    }

    private static TrialAnswer Switch(double[] gate, double[] amps, double[] drop, double[] degrees, params (string, double)[] settings) =>
        Given.Fit("switch-drop", [("gate volts", gate), ("amps", amps), ("drop", drop), ("degrees", degrees)], settings);

    private static TrialAnswer Collapse(double[] amps, double[] volts, (string, double[])[]? also = null, string? meters = null) =>
        Given.Fit("converter-collapse", [("amps out", amps), ("volts out", volts), .. also ?? []], [("set volts", 10)], meters: meters);

    private static TrialAnswer Start(double[] volts) => Given.Fit("converter-start", [("time", [.. volts.Select((_, i) => (double)i)]), ("volts out", volts)]);

    private static TrialAnswer Points(double[] voltsIn, double[] ampsIn, double[] voltsOut, double[] ampsOut, params (string, double)[] settings) =>
        Given.Fit("converter-points", [("volts in", voltsIn), ("amps in", ampsIn), ("volts out", voltsOut), ("amps out", ampsOut)], settings);
}
