using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>One test a kind, on readings whose answer is worked out by hand beside it.</summary>
public class KindFitTests
{
    [Fact]
    public void Cold_ohms_lose_their_leads()
    {
        Assert.Equal(7.2, Given.Fit("cold-ohms", [("ohms", [7.4, 7.4, 7.4])], [("leads", 0.2)]).Value("ohms"), 1e-9);
        var bare = Given.Fit("cold-ohms", [("ohms", [7.4])]);
        Assert.Contains(bare.Says, says => says.Contains("leads were not read", StringComparison.Ordinal));
        Assert.True(bare.Find("ohms")!.StandardDoubt > 0.1);
    }

    /// <summary>The offset of the meter is in the leads too and leaves with them: 1 digit of 0.1 Ω would be 0.0577 Ω.</summary>
    [Fact]
    public void The_meters_offset_leaves_with_the_leads_and_its_gain_stays()
    {
        var doubts = Given.Fit("cold-ohms", [("ohms", [7.41, 7.42])], [("leads", 0.2)], meters: "ohms=1%+1d").Find("ohms")!.Doubts;
        Assert.DoesNotContain(doubts.Causes, cause => cause.Id.EndsWith("Ω offset", StringComparison.Ordinal));
        double gain = Math.Abs(doubts.Pushes.Single(push => push.Cause.Id.EndsWith(" gain", StringComparison.Ordinal)).By);
        Assert.Equal(0.01 * 7.215 / Math.Sqrt(3), gain, 1e-4);
    }

    [Fact]
    public void Four_wires_leave_no_leads() => Assert.Equal(0.25, Given.Fit("four-wire-ohms", [("volts", [0.25, 0.5]), ("amps", [1, 2])]).Value("ohms"), 1e-9);

    /// <summary>R = 3 + 0.02·P: at 1 A 3.06281 V by V = R/(1/I − 0.02·I)… worked the other way: V = 3·I/(1 − 0.02·I²).</summary>
    [Fact]
    public void A_sweep_of_volts_and_amps_finds_cold_ohms_and_their_rise()
    {
        double[] amps = [0.5, 1, 1.5, 2, 2.5, 3];
        double[] volts = [.. amps.Select(i => Math.Round(3 * i / (1 - (0.02 * i * i)), 4))];
        var answer = Given.Fit("volts-amps", [("volts", volts), ("amps", amps)]);
        Assert.Equal("ohms that rise with the watts", answer.Tried.Single(t => t.Chosen).Name);
        Assert.Equal(3, answer.Value("ohms"), 2e-3);
        Assert.Equal(0.02, answer.Value("ohms per watt"), 2e-4);
    }

    /// <summary>Burden 50 mΩ: 3.7 V at the supply, 1.64444 A through 2.2 Ω (published in the same figures as ME-3: corrected 2.2 Ω).</summary>
    [Fact]
    public void The_ammeters_burden_is_taken_off_volts_at_the_supply_and_said()
    {
        var answer = Given.Fit("volts-amps", [("volts", [3.7]), ("amps", [1.644444])], [("burden", 0.05), ("volts at", 2)]);
        Assert.Equal(2.2, answer.Value("ohms"), 1e-4);
        Assert.Contains(answer.Notes, note => note.Contains("50 mΩ", StringComparison.Ordinal));
    }

    [Fact]
    public void A_drop_of_a_tenth_volt_at_five_amps_is_twenty_milliohm()
    {
        var answer = Given.Fit("two-point-drop", [("amps", [5, 5]), ("drop", [0.1, 0.1])], [("source volts", 3.7)]);
        Assert.Equal(0.02, answer.Value("ohms"), 1e-9);
        Assert.Equal(0.5, answer.Value("lost watts"), 1e-9);
    }

    [Fact]
    public void A_cool_down_tells_its_time_constant()
    {
        double[] t = [.. Enumerable.Range(0, 30).Select(i => 20.0 * i)];
        double[] c = [.. t.Select(s => Math.Round(24 + (276 * Math.Exp(-s / 190)), 2))];
        Assert.Equal(190, Given.Fit("cool-down", [("time", t), ("degrees", c)], [("air", 24)]).Value("time constant"), 0.05);
        Assert.Equal(190, Given.Fit("cool-down", [("time", t), ("degrees", c)]).Value("time constant"), 0.5);
    }

    [Theory, InlineData("stuck-on", "plateau"), InlineData("grip-rise", "grip at rest"), InlineData("self-heating", "cell at rest"), InlineData("converter-hot-spot", "hot spot at rest")]
    public void A_rise_to_rest_tells_where_it_ends_before_it_is_there(string kind, string name)
    {
        double[] t = [.. Enumerable.Range(0, 25).Select(i => 30.0 * i)];
        double[] c = [.. t.Select(s => Math.Round(25 + (60 * (1 - Math.Exp(-s / 300))), 2))]; // 92 % of the way at the last reading
        var answer = Given.Fit(kind, [("time", t), ("degrees", c)], [("air", 25), ("watts", 2)]);
        Assert.Equal(85, answer.Value(name), 0.05);
        Assert.Equal(300, answer.Value("time constant"), 0.5);
        Assert.Equal(30, answer.Value("resistance to air"), 0.05); // 60 K / 2 W
        Assert.Equal(10, answer.Value("heat capacity"), 0.05);     // 300 s / 30 K/W
        Assert.Contains(answer.Says, says => says.StartsWith("Not a plateau yet", StringComparison.Ordinal));
    }

    /// <summary>Held at 300 °C, job from 10 to 15 s, lowest 260 °C; 12 W in, 0.03 W/K lost, 8 J/K: heat = ∫(12 − 0.03·Δ)dt + 8·40.</summary>
    [Fact]
    public void A_job_takes_what_the_heater_gave_less_the_loss_and_what_was_stored()
    {
        var answer = Given.Fit("work-trial", [("time", [0, 5, 10, 15, 20, 30, 40]), ("degrees", [300, 300, 300, 260, 280, 297, 300]), ("watts", [8.25, 8.25, 12, 12, 12, 12, 9])], [("air", 25), ("start", 10), ("end", 15), ("heat capacity", 8), ("linear loss", 0.03)]);
        Assert.Equal(40, answer.Value("droop"), 1e-9);
        double heat = (5 * (12 - (0.03 * (280 - 25)))) + (8 * 40); // mean of 300 and 260 is 280
        Assert.Equal(heat, answer.Value("heat taken"), 1e-6);
        Assert.Equal(heat / 5, answer.Value("heat rate under work"), 1e-6);
        Assert.InRange(answer.Value("recovery"), 12, 16); // 295 °C between 20 s and 30 s: (295 − 280)/1.7 + 20 − 15
    }

    [Fact]
    public void A_ladder_bounds_the_heat_rate_and_names_the_job_that_narrows_most()
    {
        var answer = Given.Fit("work-ladder", [("watts", [4, 8, 30, 40, 14, 60])], words: [("job", ["thin cord", "thick cord", "pad", "plane", "strap", "block"]), ("outcome", ["done", "done", "failed", "failed", "", ""])]);
        Assert.InRange(answer.Value("heat rate at the work"), 8, 25);
        Assert.Contains("'strap'", answer.Next[0], StringComparison.Ordinal); // the only open job inside the bounds
        var lower = Given.Fit("work-ladder", [("watts", [4, 8])], words: [("job", ["thin", "thick"]), ("outcome", ["done", "done"])]);
        Assert.Empty(lower.Findings);
        Assert.Contains("at least", lower.Says[0], StringComparison.Ordinal);
    }

    /// <summary>1 A for 7200 s is 2 Ah; volts fall straight from 4 to 3: mean 3.5 V, 7 Wh.</summary>
    [Fact]
    public void Capacity_is_the_charge_down_to_the_cut_off()
    {
        var answer = Given.Fit("capacity", [("time", [0, 3600, 7200, 7300]), ("volts", [4, 3.5, 3, 2.9]), ("amps", [1, 1, 1, 1])], [("cut-off", 3), ("claim", 2.5)]);
        Assert.Equal(2, answer.Value("capacity"), 1e-9);
        Assert.Equal(7, answer.Value("energy"), 1e-9);
        Assert.Contains(answer.Says, says => says.Contains("80 %", StringComparison.Ordinal));
        Assert.Equal("lower bound", Given.Fit("capacity", [("time", [0, 3600, 7200]), ("volts", [4, 3.8, 3.6]), ("amps", [1, 1, 1])], [("cut-off", 3)]).Word);
    }

    [Fact]
    public void Open_volts_get_their_drop_back()
    {
        double[] t = [.. Enumerable.Range(0, 21).Select(i => 3600.0 * i)];
        double[] v = [.. t.Select(s => 4.0 - (s / 72000) - 0.01)]; // 0.1 A through 0.1 Ω
        var answer = Given.Fit("open-volts", [("time", t), ("volts", v), ("amps", [.. t.Select(_ => 0.1)])], [("cut-off", 2.99), ("ohms", 0.1)]);
        Assert.Equal(2.0, answer.Value("capacity"), 1e-6);
        Assert.Equal(3.5, answer.Value("open volts at 50 %"), 1e-6);
    }

    /// <summary>4.00 V to 3.90 V by 2 A: 50 mΩ at once; 3.86 V after 10 s: 70 mΩ.</summary>
    [Fact]
    public void A_step_of_load_tells_ohms_at_once_and_after_ten_seconds()
    {
        var answer = Given.Fit("pulse", [("time", [0, 1, 2, 6, 11, 11.5]), ("volts", [4, 4, 3.9, 3.88, 3.86, 3.86]), ("amps", [0, 0, 2, 2, 2, 2])]);
        Assert.Equal(0.05, answer.Value("ohms after 1 s"), 1e-9);
        Assert.Equal(0.07, answer.Value("ohms after 10 s"), 1e-9);
    }

    /// <summary>Published figures of the direct-current method: 0.124 A 3.815 V, 0.620 A 3.763 V give 104.839 mΩ.</summary>
    [Fact]
    public void Two_loads_tell_the_ohms_of_a_cell() => Assert.Equal(0.104839, Given.Fit("two-load-sag", [("volts", [3.815, 3.763]), ("amps", [0.124, 0.620])]).Value("ohms"), 5e-7);

    [Fact]
    public void A_shared_gain_of_the_voltmeter_scales_ohms_and_open_volts_together()
    {
        var answer = Given.Fit("two-load-sag", [("volts", [3.9, 3.7]), ("amps", [1, 3])], meters: "volts=1%");
        var gain = answer.Find("ohms")!.Doubts.Causes.Single(cause => cause.Group == Heatwright.Quantities.CauseGroup.Instrument);
        Assert.Equal(0.01 / Math.Sqrt(3) * 0.1, answer.Find("ohms")!.Doubts.By(gain), 1e-6);
        Assert.Equal(0.01 / Math.Sqrt(3) * 4.0, answer.Find("open volts")!.Doubts.By(gain), 1e-5);
    }

    /// <summary>20 µA out of 2.5 Ah last 5208 days: 9000 C / 20e-6 A / 86400 s.</summary>
    [Fact]
    public void Standby_tells_days()
    {
        var answer = Given.Fit("standby-drain", [("amps", [20e-6, 20e-6])], [("capacity", 2.5)]);
        Assert.Equal(20, answer.Value("standby amps"), 1e-6);
        Assert.Contains(answer.Says, says => says.Contains("5208 days", StringComparison.Ordinal));
    }

    [Fact]
    public void A_charge_log_tells_current_end_and_how_much_went_in()
    {
        var answer = Given.Fit("charge-log", [("time", [0, 1800, 3600, 5400, 7200]), ("volts", [3.6, 3.9, 4.2, 4.2, 4.2]), ("amps", [1, 1, 1, 0.5, 0.1])]);
        Assert.Equal(1 + 0.375 + 0.15, answer.Value("charge in"), 1e-9); // trapezes: 1 Ah, 0.75·0.5, 0.3·0.5
        Assert.Equal(1, answer.Value("charge current"), 1e-9);
        Assert.Equal(4.2, answer.Value("end volts"), 1e-9);
    }

    /// <summary>Loss 0.1 + 0.2·I + 0.05·I² W, input 3.7 V, output 9 V, made exactly.</summary>
    [Fact]
    public void Converter_points_tell_the_loss_and_leave_fallen_ones_to_the_limit()
    {
        double[] amps = [0.3, 0.6, 1, 1.5, 2, 2.5, 3, 0.45, 0.8, 1.25, 1.75, 2.25];
        double[] output = [.. amps.Select(i => ((3.7 * i) - 0.1 - (0.2 * i) - (0.05 * i * i)) / 9)];
        var answer = Given.Fit("converter-points", [("volts in", [.. amps.Select(_ => 3.7), 3.3]), ("amps in", [.. amps, 4.2]), ("volts out", [.. amps.Select(_ => 9.0), 6.5]), ("amps out", [.. output, 1.2])], [("set volts", 9)]);
        double heaviest = 1 - ((0.1 + 0.6 + 0.45) / 11.1);
        Assert.Equal(100 * heaviest, answer.Value("efficiency at the heaviest load"), 0.5);
        Assert.Equal("falls", answer.Word);
    }

    [Fact]
    public void More_out_than_in_is_refused_as_a_reading()
    {
        var answer = TrialFits.Run("converter-points", Given.Readings("converter-points", [("volts in", [3.7, 3.7, 3.7, 3.7]), ("amps in", [1, 2, 3, 1]), ("volts out", [9, 9, 9, 9]), ("amps out", [0.35, 0.7, 1.0, 0.6])], [("set volts", 9)])).Value;
        Assert.Contains(answer.Remarks, remark => remark is { Rule: "T27", Reading: 4, LeftOut: true });
    }

    /// <summary>By hand: the parabola through 6, 13 and 11 V tops at 13 + (11 − 6)²/(8·9) V, between two readings.</summary>
    [Fact]
    public void A_converter_that_jumps_at_start_is_told()
    {
        var answer = Given.Fit("converter-start", [("time", [0, 0.001, 0.002, 0.003, 0.004, 0.005, 0.006, 0.007, 0.008, 0.009]), ("volts out", [0, 1, 6, 13, 11, 9.5, 9, 9, 9, 9])]);
        Assert.Equal(9, answer.Value("settled volts"), 1e-9);
        Assert.Equal(4 + (25.0 / 72), answer.Value("overshoot"), 1e-9);
    }

    [Fact]
    public void A_slip_that_shows_a_digit_more_does_not_make_the_display_finer()
    {
        (string, double[])[] Log(double slip) => [("time", [.. Enumerable.Range(0, 40).Select(i => 0.01 * i)]), ("volts out", [.. Enumerable.Range(0, 40).Select(i => i == 3 ? slip : i < 10 ? i : 9.01 + (0.01 * (i % 2)))])];
        double Offset(double slip) => Given.Fit("converter-start", Log(slip), meters: "volts out=0.5%+2d").Find("settled volts")!.Doubts.Pushes.Single(push => push.Cause.Id.EndsWith("offset", StringComparison.Ordinal) && !push.Cause.Id.Contains("gain", StringComparison.Ordinal)).By;
        Assert.Equal(0.02 / Math.Sqrt(3), Offset(3), 1e-6); // two digits of a display that shows hundredths
        Assert.Equal(0.02 / Math.Sqrt(3), Offset(0.317), 1e-6);
    }

    [Fact]
    public void A_first_temperature_that_slipped_does_not_bend_the_warm_up()
    {
        (string, double[])[] Log(double first) => [("time", [.. Enumerable.Range(0, 40).Select(i => 10.0 * i)]), ("watts", [.. Enumerable.Repeat(10.0, 40)]),
            ("degrees", [.. Enumerable.Range(0, 40).Select(i => i == 0 ? first : Math.Round(20 + (200 * (1 - Math.Exp(-i / 10.0))), 1))])];
        foreach (double first in (double[])[20, 200])
        {
            var answer = Given.Fit("warm-up", Log(first), [("air", 20)]);
            Assert.Equal(100, answer.Value("time constant"), 1.0);
            Assert.Equal(first == 200, answer.Remarks.Any(remark => remark is { Reading: 1, LeftOut: true }));
        }
    }

    /// <summary>By hand: 10 W and 20 K/W rise to 200 K with 100 s, and fall again; the thermometer reads 1.9 K too much all the while, as its promise lets it.</summary>
    [Fact]
    public void A_thermometer_that_is_off_by_what_it_may_be_is_no_warmth_that_leaves()
    {
        double Rise(int i) => i <= 20 ? 200 * (1 - Math.Exp(-i / 10.0)) : 200 * (1 - Math.Exp(-2)) * Math.Exp(-(i - 20) / 10.0);
        int[] rows = [.. Enumerable.Range(0, 41)];
        var answer = Given.Fit("warm-up", [("time", [.. rows.Select(i => 10.0 * i)]), ("watts", [.. rows.Select(i => i < 20 ? 10.0 : 0)]), ("degrees", [.. rows.Select(i => Math.Round(20 + 1.9 + Rise(i), 1))])],
            [("air", 20), ("off", 200)], meters: "degrees=0.5%+2degC");
        Assert.Equal(100, answer.Value("time constant"), 0.6);
        Assert.Equal(20, answer.Value("resistance to air"), 0.1);
        Assert.Equal("one body", answer.Tried.Single(tried => tried.Chosen).Name);
    }

    /// <summary>What the ohms would be if they grew a little slower than the watts stands among their doubts.</summary>
    [Fact]
    public void Ohms_that_rise_with_the_watts_are_known_no_better_than_how_they_rise()
    {
        double[] amps = [0.2, 0.5, 1, 1.3, 1.6, 2];
        var answer = Given.Fit("volts-amps", [("volts", [.. amps.Select(a => a * 2 / (1 - (0.05 * a * a)))]), ("amps", amps)]); // R = 2 + 0.05·V·I, by hand
        Assert.Equal(2, answer.Value("ohms"), 0.01);
        var push = answer.Find("ohms")!.Doubts.Pushes.Single(push => push.Cause.Id.Contains("how ohms follow watts", StringComparison.Ordinal));
        Assert.InRange(Math.Abs(push.By), 0.001, 0.03);
    }

    /// <summary>A display that shows the same digits at every volt leaves over nothing to choose a model by; its amps are told all the same.</summary>
    [Theory]
    [InlineData(0.0012)]
    [InlineData(0.02)]
    public void An_idle_module_whose_amps_do_not_move_is_told(double amps)
    {
        var answer = Given.Fit("converter-idle", [("volts in", [3.01, 3.29, 3.61, 3.88, 4.22, 4.49]), ("amps in", [amps, amps, amps, amps, amps, amps])], meters: "volts in=0.5%+2d;amps in=1.2%+3d");
        Assert.Equal(1000 * amps, answer.Value("idle amps"), 1e-3 * 1000 * amps);
        Assert.True(double.IsFinite(answer.Find("idle amps")!.StandardDoubt));
    }

    /// <summary>By hand: 10 mΩ at 1 to 4 A are 0.01 to 0.16 W, 50 K a watt; one drop is written ten times as large.</summary>
    [Fact]
    public void A_slipped_drop_does_not_rule_the_rise_of_a_switch()
    {
        double[] amps = [1, 2, 3, 4, 1, 2, 3, 4], drops = [0.01, 0.02, 0.03, 0.4, 0.01, 0.02, 0.03, 0.04];
        var answer = Given.Fit("switch-drop", [("gate volts", [4, 4, 4, 4, 5, 5, 5, 5]), ("amps", amps), ("drop", drops), ("degrees", [.. amps.Select(a => 20 + (50 * 0.01 * a * a))])], [("air", 20)]);
        Assert.Equal(50, answer.Value("rise per watt"), 1.0);
        Assert.Contains(answer.Remarks, remark => remark is { Reading: 4, LeftOut: true });
    }

    [Fact]
    public void A_collapse_lies_between_the_last_load_that_held_and_the_first_that_did_not()
    {
        var answer = Given.Fit("converter-collapse", [("amps out", [0.3, 0.6, 0.9, 1.0]), ("volts out", [9, 9, 8.9, 6]), ("volts in", [3.7, 3.6, 3.5, 2.4]), ("amps in", [1, 2, 3, 4])], [("set volts", 9)]);
        Assert.InRange(answer.Value("output amps it holds"), 0.9, 1.5); // 6 V / 1 A = 6 Ω would ask 1.5 A at 9 V
        Assert.Contains(answer.Says, says => says.Contains("the source gives way", StringComparison.Ordinal));
    }

    [Fact]
    public void An_idle_converter_draws_what_it_draws()
    {
        var answer = Given.Fit("converter-idle", [("volts in", [3.7, 3.7]), ("amps in", [0.02, 0.02])], [("capacity", 2)]);
        Assert.Equal(20, answer.Value("idle amps"), 1e-9);
        Assert.Equal(0.074, answer.Value("idle watts"), 1e-9);
    }

    [Fact]
    public void A_switch_has_its_ohms_at_each_gate_voltage()
    {
        var answer = Given.Fit("switch-drop", [("gate volts", [3, 3, 4.5, 4.5]), ("amps", [2, 4, 2, 4]), ("drop", [0.12, 0.24, 0.04, 0.08])]);
        Assert.Equal(0.06, answer.Value("ohms at 3.0 V gate"), 1e-9);
        Assert.Equal(0.02, answer.Value("ohms at 4.5 V gate"), 1e-9);
        Assert.Contains(answer.Says, says => says.Contains("not fully on", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("sensor", 0.00001, 0.003, -0.00298, 0.00302, null)]
    [InlineData("pick-up", 0.00001, 0.003, 0.003, 0.003, null)]
    [InlineData("cannot tell", 0.00001, 0.00002, 0.00001, 0.00002, null)]
    [InlineData("parasitic", 0.0, 0.003, -0.003, 0.003, 0.0028)]
    [InlineData("cannot tell", 0.0, 0.003, null, null, null)]
    public void Two_wires_are_a_sensor_or_not(string word, double level, double warm, double? swapped, double? again, double? joint)
    {
        (string State, double? Volts)[] all = [("level", level), ("warm", warm), ("swapped", swapped), ("again", again), ("joint", joint)];
        var said = all.Where(one => one.Volts is not null).ToArray();
        Assert.Equal(word, Given.Fit("sensor-test", [("volts", [.. said.Select(one => one.Volts!.Value)])], words: [("state", [.. said.Select(one => one.State)])]).Word);
    }

    /// <summary>Published: Pt100 109.7347 Ω at 25 °C, 138.5055 at 100, 175.8560 at 200 (IEC 60751). NTC 100 k, beta 3950: 6975.198 Ω at 100 °C, 744.6129 at 200.</summary>
    [Fact]
    public void Ohms_tell_platinum_from_a_thermistor()
    {
        var platinum = Given.Fit("sensor-ohms", [("ohms", [100, 109.7347, 138.5055, 175.856]), ("degrees", [0, 25, 100, 200])], [("leads", 0)]);
        Assert.Equal("Pt100", platinum.Word);
        Assert.Equal(100, platinum.Value("ohms at 0 °C"), 2e-3);
        var thermistor = Given.Fit("sensor-ohms", [("ohms", [100000, 6975.198, 744.6129]), ("degrees", [25, 100, 200])], [("leads", 0)]);
        Assert.Equal(3950, thermistor.Value("beta"), 1);
    }

    /// <summary>Worked calibration: type K, cold junction 28 °C, a 9.2020724, b 52.190117 counts/mV, computed by an independent script.</summary>
    [Fact]
    public void Counts_on_a_cool_down_give_offset_and_gain_of_the_chain()
    {
        double[] counts = [848, 782, 718, 650, 586, 521, 457, 395, 331, 269, 206, 142, 98, 55], degrees = [418, 388, 361, 329, 300, 271, 237, 208, 180, 148, 119, 90, 69, 50];
        var answer = Given.Fit("sensor-counts", [("counts", counts), ("degrees", degrees)], [("cold", 28)], [("type", [.. counts.Select(_ => "K")])]);
        Assert.Equal(9.2, answer.Value("offset counts"), 0.3);
        Assert.Equal(52.19, answer.Value("counts per mV"), 0.1);
    }

    [Fact]
    public void An_amplifier_has_gain_and_offset()
    {
        var answer = Given.Fit("amplifier", [("volts in", [0, 0.005, 0.01, 0.015, 0.02]), ("volts out", [0.01, 0.515, 1.02, 1.525, 3.3])], [("supply", 3.3), ("built gain", 101)]);
        Assert.Equal(101, answer.Value("gain"), 1e-6);
        Assert.Equal(10, answer.Value("output offset"), 1e-6);
        Assert.Contains(answer.Says, says => says.Contains("supply rail", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(100.0, 138.5, "platinum sensor Pt100")]
    [InlineData(327_000.0, 6975.0, "thermistor (NTC)")]
    [InlineData(2.1, 2.9, "heater whose ohms rise with heat: it can sense itself")]
    [InlineData(30.0, 30.1, "heater of a heating alloy, or a resistor")]
    public void An_unknown_part_is_told_by_ice_and_boiling_water(double ice, double boiling, string word) =>
        Assert.Equal(word, Given.Fit("unknown-part", [("ohms", [ice, boiling]), ("degrees", [0, 100])], [("leads", 0)]).Word);

    [Fact]
    public void Three_wires_are_told_pair_by_pair()
    {
        var answer = Given.Fit("unknown-part", [("ohms", [7.2, 7.25, 1.1, 1.12, 8.3, 8.37]), ("degrees", [0, 100, 0, 100, 0, 100]), ("volts", [double.NaN, double.NaN, 0, 0.0041, double.NaN, double.NaN])], [("leads", 0)], [("pair", ["ab", "ab", "bc", "bc", "ac", "ac"])]);
        Assert.Contains(answer.Says, says => says.StartsWith("bc: thermocouple", StringComparison.Ordinal));
        Assert.Contains(answer.Says, says => says.StartsWith("ab: heater", StringComparison.Ordinal));
    }

    /// <summary>Old 3.6 ± 0.05 of five, new 4.1: outside t(4) = 2.776 times 0.05·√1.2 = 0.152.</summary>
    [Fact]
    public void A_changed_purchase_is_seen_and_the_chance_of_missing_one_is_told()
    {
        double[] old = [3.55, 3.6, 3.65, 3.55, 3.65];
        TrialAnswer With(double now) => Given.Fit("incoming", [("value", [.. old, now])], words: [("lot", ["old", "old", "old", "old", "old", "new"])]);
        Assert.Equal("differs", With(4.1).Word);
        Assert.Equal("no change seen", With(3.68).Word);
        Assert.InRange(With(3.68).Value("chance of missing the change"), 0, 0.05); // 10 % of 3.6 is 7 spreads
    }

    [Fact]
    public void An_own_line_is_a_line()
    {
        var answer = Given.Fit("own-line", [("x", [0, 1, 2, 3]), ("y", [1, 3, 5, 7])]);
        Assert.Equal((2.0, 1.0), (Math.Round(answer.Value("slope"), 9), Math.Round(answer.Value("at x = 0"), 9)));
    }

    [Fact]
    public void A_reading_that_stands_alone_is_left_out_with_its_reason()
    {
        double[] x = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9], y = [1.01, 2.99, 5.01, 6.99, 9.01, 10.99, 20.0, 15.01, 16.99, 19.01];
        var answer = Given.Fit("own-line", [("x", x), ("y", y)]);
        Assert.Contains(answer.Remarks, remark => remark is { Reading: 7, LeftOut: true });
        Assert.Equal(2, answer.Value("slope"), 0.01);
    }

    [Theory]
    [InlineData(-3.0), InlineData(9.9e37), InlineData(double.NaN)]
    public void A_bad_reading_is_named_and_the_rest_kept(double bad)
    {
        var answer = TrialFits.Run("cold-ohms", Given.Readings("cold-ohms", [("ohms", [7.4, bad, 7.5])], [("leads", 0.2)])).Value;
        Assert.InRange(answer.Value("ohms"), 7.19, 7.31);
        Assert.Equal(!double.IsNaN(bad), answer.Remarks.Any(remark => remark is { Reading: 2, LeftOut: true }));
    }

    [Fact]
    public void Readings_at_one_level_are_refused_with_the_next_step()
    {
        var answer = TrialFits.Run("two-load-sag", Given.Readings("two-load-sag", [("volts", [3.8, 3.8, 3.81]), ("amps", [1, 1, 1])]));
        Assert.False(answer.IsFine);
        Assert.Contains("another level", answer.Problems[0].Next, StringComparison.Ordinal);
    }
}
