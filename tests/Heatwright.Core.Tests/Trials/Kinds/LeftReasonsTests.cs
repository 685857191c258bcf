using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Where too few readings are left, why the others do not count is what is told; and slips of whole columns, signs and displays are seen. Readings and figures by hand.</summary>
public sealed class LeftReasonsTests
{
    [Fact]
    public void Millivolts_typed_as_volts_are_the_reason()
    {
        var problem = Refused.By("couple-type", [("volts", [1.36, 3.95, 6.36, 8.62]), ("degrees", [60, 120, 180, 240])], [("cold", 27)]);
        Assert.StartsWith("No whole readings are left", problem.What, StringComparison.Ordinal);
        Assert.Equal("0; 4 of 4 readings are left out", problem.Value);
        Assert.StartsWith("Reading 1: volts 1.36 V cannot be", problem.Next, StringComparison.Ordinal);
        Assert.Contains("above 1 V. In mV it could be.", problem.Next, StringComparison.Ordinal);
        Assert.DoesNotContain("Reading 2", problem.Next, StringComparison.Ordinal);

        // Nothing is left out where nothing was read.
        Assert.Equal("1", Refused.By("couple-type", [("volts", [1.36e-3]), ("degrees", [60])], [("cold", 27)]).Value);
    }

    [Fact]
    public void A_drop_of_twenty_volts_is_no_drop_of_a_contact() =>
        Assert.Contains("above 2 V. In mV it could be.", Refused.By("two-point-drop", [("amps", [2, 4, 5]), ("drop", [20, 40, 50])]).Next, StringComparison.Ordinal);

    [Fact]
    public void A_warm_up_without_any_power_asks_for_it()
    {
        var problem = Refused.By("warm-up", [("time", [0, 20, 40, 60]), ("degrees", [22, 80, 120, 150])]);
        Assert.Equal(("neither volts nor amps nor watts", "a column watts, or volts and amps"), (problem.Value, problem.Limit));
        Assert.Contains("Add the amps", Refused.By("warm-up", [("time", [0, 20, 40, 60]), ("degrees", [22, 80, 120, 150]), ("volts", [5, 5, 5, 5])]).Next, StringComparison.Ordinal);
    }

    [Theory, InlineData("capacity"), InlineData("two-load-sag")]
    public void Columns_changed_round_are_not_fitted(string kind)
    {
        (string, double[])[] read = [("volts", [1.0, 1.01, 1.0, 0.99]), ("amps", [4.1, 3.9, 3.7, 3.5])];
        var problem = Refused.By(kind, kind == "capacity" ? [("time", [0, 600, 1200, 1800]), .. read] : read);
        Assert.StartsWith("The columns look swapped", problem.What, StringComparison.Ordinal);
        Assert.Equal("Swap the two headers.", problem.Next);
    }

    /// <summary>4 Ω throughout; of the last reading the ammeter's leads were changed round. Ohms of the rest do not fall.</summary>
    [Fact]
    public void Amps_below_nothing_are_told_and_say_nothing_of_the_heater()
    {
        var answer = Given.Fit("volts-amps", [("volts", [2, 4, 6, 8]), ("amps", [0.5, 1, 1.5, -2])]);
        Assert.Equal(("polarity-amps", 4), Assert.Single(answer.Remarks.Where(remark => remark.LeftOut).Select(remark => (remark.Rule, remark.Reading))));
        Assert.DoesNotContain(answer.Remarks, remark => remark.Rule == "S02");
        Assert.Equal(4, answer.Value("ohms"), 0.001);
    }

    /// <summary>3.14 Ω that hardly change, and from the fifth line on 0.16 Ω of a lead and an ammeter more, up and down: 5 of 100 of the middle. A heater whose ohms rise by a fifth with its watts, read upward and down again, was not moved, nor one read upward alone.</summary>
    [Fact]
    public void A_meter_moved_in_mid_run_is_told_where_it_was()
    {
        double[] volts = [1.006, 2.007, 3.010, 4.010, 5.203, 5.725, 4.682, 3.647];
        var told = Assert.Single(Said([.. volts.Select((v, i) => v / (i < 4 ? 3.14 : 3.30))]));
        Assert.Equal(5, told.Reading);
        Assert.StartsWith("From this reading on volts over amps lie 4.9", told.Words, StringComparison.Ordinal);
        Assert.Empty(Said([.. volts.Select(v => v / (3 + (0.06 * v * v / 3.3)))]));
        volts = [1, 2, 3, 4, 5, 6, 7, 8];
        Assert.Empty(Said([.. volts.Select((v, i) => v / (i < 4 ? 3.14 : 3.30))])); // at other watts it may be the heater

        IEnumerable<TrialRemark> Said(double[] amps) => TrialFits.Check("volts-amps", Given.Readings("volts-amps", [("volts", volts), ("amps", [.. amps.Select(a => Math.Round(a, 3))])])).Value.Where(remark => remark.Rule == "moved");
    }

    [Fact]
    public void The_zero_of_a_drop_is_no_slip_and_is_taken_off()
    {
        // 18 mΩ and a meter that shows 0.5 mV too much.
        var answer = Given.Fit("two-point-drop", [("amps", [0, 1, 2, 3]), ("drop", [0.0005, 0.0185, 0.0365, 0.0545])]);
        Assert.DoesNotContain(answer.Remarks, remark => remark.LeftOut);
        Assert.Equal(0.018, answer.Value("ohms"), 1e-6);
        Assert.Equal(0.0005, answer.Value("zero off"), 1e-6);
        Assert.Empty(answer.Next);
        Assert.Equal(0.018, Given.Fit("two-point-drop", [("amps", [0, 1, 2, 3]), ("drop", [-1e-4, 0.0179, 0.0359, 0.0539])]).Value("ohms"), 1e-6);
    }

    [Fact]
    public void A_display_that_stands_still_cools_nothing()
    {
        (string, double[])[] still = [("time", [.. Enumerable.Range(0, 30).Select(i => 10.0 * i)]), ("degrees", [.. Enumerable.Repeat(121.3, 30)])];
        Assert.StartsWith("It does not cool", Refused.By("cool-down", still, [("air", 22)]).What, StringComparison.Ordinal);
        Assert.Contains(TrialFits.Check("cool-down", Given.Readings("cool-down", still, [("air", 22)])).Value, remark => remark.Rule == "S13");
        Assert.StartsWith("It does not cool", Refused.By("cool-down", [("time", [0, 10, 20, 30]), ("degrees", [50, 52, 54, 56])], [("air", 22)]).What, StringComparison.Ordinal);
    }

    /// <summary>5.51 V at every load; one line has its volts and amps out in each other's places.</summary>
    [Fact]
    public void Volts_that_a_module_holds_are_known_again_in_the_place_of_its_amps()
    {
        var answer = Given.Fit("converter-points", [("volts in", [3.824, 3.705, 3.583, 3.461, 3.370]), ("amps in", [0.502, 1.157, 1.899, 2.715, 3.379]), ("volts out", [5.513, 5.516, 1.093, 5.513, 5.516]), ("amps out", [0.304, 0.698, 5.516, 1.492, 1.792])]);
        var told = Assert.Single(answer.Remarks, remark => remark.LeftOut);
        Assert.Equal(("swap-row-out", 3), (told.Rule, told.Reading));
        Assert.Null(answer.Find("limit current"));
    }

    /// <summary>Hotter in front when it is switched off: 20 + 250·e^(−t/450) + 30·e^(−t/9), to a tenth of a degree.</summary>
    [Fact]
    public void A_body_that_was_hotter_in_front_falls_by_two_times()
    {
        double[] time = [.. Enumerable.Range(0, 300).Select(i => 3.0 * i)];
        double[] degrees = [.. time.Select((t, i) => Math.Round(20 + (250 * Math.Exp(-t / 450)) + (30 * Math.Exp(-t / 9)) + (0.04 * Math.Sin(7.0 * i)), 1))];
        var answer = Given.Fit("cool-down", [("time", time), ("degrees", degrees)], [("air", 20)]);
        Assert.DoesNotContain(answer.Remarks, remark => remark.Rule == "S23");
        Assert.Equal(450, answer.Value("time constant"), 1.0);
        Assert.Equal(9, answer.Value("second time constant"), 0.3);
    }

    /// <summary>2 + 3·e^(−((t − 25)/2.3)²) A at each millisecond: the top stands 0.5 A over both sides of it, and so bends the curve beside it.</summary>
    [Fact]
    public void A_round_peak_of_a_start_is_no_slip()
    {
        double[] time = [.. Enumerable.Range(0, 120).Select(i => i / 1000.0)], volts = [.. time.Select(t => t < 0.02 ? 0 : Math.Round(12 * (1 - Math.Exp(-(t - 0.02) / 0.008)), 2))];
        double[] amps = [.. Enumerable.Range(0, 120).Select(i => Math.Round(2 + (3 * Math.Exp(-Math.Pow((i - 25) / 2.3, 2))), 2))];
        var answer = Given.Fit("converter-start", [("time", time), ("volts out", volts), ("amps in", amps)]);
        Assert.DoesNotContain(answer.Remarks, remark => remark.LeftOut);
        Assert.Equal(5, answer.Value("start current"), 0.01);
        amps[60] = 9;
        Assert.Equal(61, Assert.Single(Given.Fit("converter-start", [("time", time), ("volts out", volts), ("amps in", amps)]).Remarks, remark => remark.LeftOut).Reading);
    }

    /// <summary>A probe behind a plug stands still for a moment before it follows: readings of one stretch are the law's fault, not slips. 20 + 180·e^(−t/200) from the seventh second on.</summary>
    [Fact]
    public void A_stretch_off_the_law_is_not_struck()
    {
        double[] time = [.. Enumerable.Range(0, 80).Select(i => (double)i * 2)];
        double[] degrees = [.. time.Select((t, i) => Math.Round(20 + (180 * Math.Exp(-Math.Max(0, t - 12) / 200)) + (0.05 * (i % 3)), 1))];
        Assert.DoesNotContain(Given.Fit("cool-down", [("time", time), ("degrees", degrees)], [("air", 20)]).Remarks, remark => remark.LeftOut);

        // One slip by itself is struck all the same.
        degrees[40] += 30;
        Assert.Equal(41, Assert.Single(Given.Fit("cool-down", [("time", time), ("degrees", degrees)], [("air", 20)]).Remarks, remark => remark.LeftOut).Reading);
    }
}
