using System.Globalization;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Stopwatch marks. One body that comes to rest 200 K above 20 °C with 100 s: 100 K up after 100·ln 2 s, 150 K after twice that. Every expected value by hand from that law.</summary>
public sealed class MarkFitTests
{
    private const double T1 = 69.31471805599453, T2 = 2 * T1;

    private static TrialAnswer Fit(string how, double[] time, double[] degrees, double[]? watts = null, double[]? doubt = null, double? power = null) => TrialFits.Run("warm-up-marks", Input(how, time, degrees, watts, doubt, power)).Value;

    private static TrialInput Input(string how, double[] time, double[] degrees, double[]? watts = null, double[]? doubt = null, double? power = null) =>
        Given.Readings("warm-up-marks", [("time", time), ("degrees", degrees), .. watts is null ? Array.Empty<(string, double[])>() : [("watts", watts)], .. doubt is null ? Array.Empty<(string, double[])>() : [("doubt", doubt)]],
            [("air", 20), ("stopwatch", 1), ("degrees doubt", 1), .. power is { } w ? [("watts", w)] : Array.Empty<(string, double)>()], [("mark", how.Split(' '))]);

    private static double Doubt(TrialAnswer answer, string name) => answer.Find(name)!.StandardDoubt;

    /// <summary>u² of a time is 1 s² and that of a kelvin over the slope: 1 K/s at 120 °C, 0.5 K/s at 170 °C, so 2 and 5 s². With ∂t/∂D = −0.5 and −1.5, ∂t/∂τ = ln 2 and 2·ln 2:
    /// var D = 4·(4·2 + 5) and var τ = (9·2 + 5)/ln²2; with 2 K at the first mark 5 s² there, var D = 4·25.</summary>
    [Theory, InlineData("at at"), InlineData("at melt"), InlineData("melt at")]
    public void Two_marks_on_the_way_give_two_numbers_and_no_test_of_them(string how)
    {
        var answer = Fit(how, [T1, T2], [120, 170]);
        Assert.Equal(200, answer.Value("rise at rest"), 0.01);
        Assert.Equal(100, answer.Value("time constant"), 0.01);
        Assert.Equal(Math.Sqrt(52), Doubt(answer, "rise at rest"), 0.01);
        Assert.Equal(Math.Sqrt(23) / Math.Log(2), Doubt(answer, "time constant"), 0.01);
        Assert.Equal(10, Doubt(Fit(how, [T1, T2], [120, 170], doubt: [2, double.NaN]), "rise at rest"), 0.01);
        Assert.Equal(["rise at rest", "time constant"], answer.Findings.Select(finding => finding.Name)); // of nobody's watts nothing is told
        Assert.Equal("Two marks give the two numbers and no test of them.", answer.Says[^1]);
        Assert.StartsWith("A third mark", Assert.Single(answer.Next), StringComparison.Ordinal);
        Assert.Null(answer.Picture);
    }

    /// <summary>At rest after five time constants 200·(1 − e⁻⁵) are reached. There ∂/∂D = 1 − e⁻⁵ and ∂/∂τ = −10·e⁻⁵ K/s, with 1 K; on the way as above: by hand the variances are 1.14178 and 5.18521.</summary>
    [Fact]
    public void A_mark_where_it_came_to_rest_is_a_temperature()
    {
        var answer = Fit("at stuck", [T1, 500], [120, 20 + (200 * (1 - Math.Exp(-5)))]);
        Assert.Equal(200, answer.Value("rise at rest"), 0.01);
        Assert.Equal(100, answer.Value("time constant"), 0.01);
        Assert.Equal(Math.Sqrt(1.14178), Doubt(answer, "rise at rest"), 0.002);
        Assert.Equal(Math.Sqrt(5.18521), Doubt(answer, "time constant"), 0.003);
    }

    /// <summary>10 W: 200 K are 20 K/W, and 100 s of that are 5 J/K. A column of watts is averaged over the marks that have one, and goes before the setting.</summary>
    [Theory, InlineData(null, 10.0), InlineData("9 11", 99.0), InlineData("10 NaN", null)]
    public void Watts_turn_rise_and_time_into_resistance_and_heat_capacity(string? column, double? setting)
    {
        double[]? watts = column?.Split(' ').Select(text => text == "NaN" ? double.NaN : double.Parse(text, CultureInfo.InvariantCulture)).ToArray();
        var answer = Fit("at at", [T1, T2], [120, 170], watts, power: setting);
        Assert.Equal(20, answer.Value("resistance to air"), 0.001);
        Assert.Equal(5, answer.Value("heat capacity"), 0.001);
        Assert.Equal(Math.Sqrt(52) / 10, Doubt(answer, "resistance to air"), 0.001);
    }

    [Theory, InlineData(3), InlineData(4), InlineData(5)]
    public void More_marks_are_a_test_of_the_law(int count)
    {
        double[] rise = [60, 100, 130, 150, 170];
        var answer = Fit(string.Join(' ', Enumerable.Repeat("at", count)), [.. rise.Take(count).Select(r => -100 * Math.Log(1 - (r / 200)))], [.. rise.Take(count).Select(r => 20 + r)]);
        Assert.Equal($"The {count} marks agree with each other within their doubts.", answer.Says[^1]);
        Assert.Equal(200, answer.Value("rise at rest"), 0.02);
        Assert.Equal(count < 5 ? 1 : 0, answer.Next.Count);
        Assert.All(answer.Next, next => Assert.Contains("fewer than five marks", next, StringComparison.Ordinal));
    }

    /// <summary>Of 200 K with 100 s: 60 K at 35.67 s and 100 K at 69.31 s; 130 K belong to 104.98 s, and nothing that loses heat climbs faster than before.</summary>
    [Fact]
    public void Marks_that_lie_off_one_curve_are_told()
    {
        var answer = Fit("at at at", [35.67, 69.31, 71], [80, 120, 150]);
        Assert.Equal("The 3 marks lie farther off one curve than their doubts explain: look for a time or a temperature that is wrong.", answer.Says[^1]);
    }

    [Theory, InlineData("at passed"), InlineData("stuck stuck"), InlineData("passed passed"), InlineData("passed stuck")]
    public void What_was_only_passed_or_only_came_to_rest_gives_bounds(string how)
    {
        var answer = Fit(how, [T1, T2], [120, 170]);
        Assert.Empty(answer.Findings);
        Assert.Equal("bounds only", answer.Word);
        Assert.StartsWith("Note a second moment", Assert.Single(answer.Next), StringComparison.Ordinal);
    }

    [Theory, InlineData("at"), InlineData("melt")]
    public void A_mark_without_a_time_takes_no_part_and_says_so(string how)
    {
        var answer = Fit($"{how} {how}", [T1, double.NaN], [120, 170]);
        Assert.Equal("bounds only", answer.Word);
        Assert.Equal("Mark 2, 170 °C, has no time and takes no part in the fit: write when it showed, or 'stuck' where it came to rest.", answer.Next[0]);
    }

    /// <summary>Where it came to rest needs no time: 220 °C are the 200 K themselves, with their own 1 K. By hand: half of the way after 100·ln 2 s, so 100 s; ∂τ/∂D = −0.5/ln 2 · 1 s/K
    /// beside the mark's own √2 s over ln 2: u²τ = (2 + 0.25)/ln² 2.</summary>
    [Fact]
    public void Where_it_stuck_is_the_rest_and_needs_no_time()
    {
        var answer = Fit("at stuck", [T1, double.NaN], [120, 220]);
        Assert.Equal(200, answer.Value("rise at rest"), 0.01);
        Assert.Equal(100, answer.Value("time constant"), 0.01);
        Assert.Equal(1, Doubt(answer, "rise at rest"), 0.002);
        Assert.Equal(1.5 / Math.Log(2), Doubt(answer, "time constant"), 0.01);
        Assert.Equal("A third mark, on the way up, would test these two.", Assert.Single(answer.Next));
        var three = Fit("at at stuck", [T1, T2, double.NaN], [120, 170, 220]);
        Assert.Equal("The 3 marks agree with each other within their doubts.", three.Says[^1]);
        Assert.InRange(Doubt(three, "rise at rest"), 0.9, 1); // on the way up alone ± 7.2 K, as above
        Assert.Equal("bounds only", Fit("stuck stuck", [double.NaN, double.NaN], [220, 221]).Word); // rests alone tell no time
    }

    [Fact]
    public void A_word_that_is_no_mark_and_marks_without_degrees_are_told()
    {
        var problem = Assert.Single(TrialFits.Run("warm-up-marks", Input("at hot", [T1, T2], [120, 170])).Problems);
        Assert.Equal(("This is no mark.", "hot", "at, passed, stuck or melt"), (problem.What, problem.Value, problem.Limit));
        Assert.Contains("No whole readings", Assert.Single(TrialFits.Run("warm-up-marks", Input("at at", [T1, T2], [double.NaN, double.NaN])).Problems).What, StringComparison.Ordinal);
        Assert.Equal(200, Fit(" ", [T1, T2], [120, 170]).Value("rise at rest"), 0.01); // no word at all is 'at'
    }

    /// <summary>Powers to 5 %, degrees to 10 K. 8.45 W stuck at 366 K above 20 °C allow 0.02135 to 0.02492 W/K in proportion. By hand, 5 W at 266 °C: passed, at most 5.25/246 = 0.02134 W/K, so no loss in proportion keeps both;
    /// at, 5.25/236 = 0.02225 does; stuck, 4.75/256 = 0.01856 at least, does too, but not by radiation, where 8.45 W allow 5.21e-11 of the fourth powers at most and 5 W ask for 5.68e-11.</summary>
    [Theory]
    [InlineData("passed", 266, "ruled out", "fits", ""), InlineData("at", 266, "fits", "fits", "Hold 5.0 W until nothing moves: it tells the shapes apart."), InlineData("stuck", 266, "fits", "ruled out", ""), InlineData("at", 100, "fits", "fits", "Hold 5.0 W until nothing moves: it narrows most.|Hold 5.0 W until nothing moves: it tells the shapes apart.")]
    [InlineData("at", 40, "", "", "")] // not 20 K above the air
    [InlineData("at", 41, "fits", "fits", "Hold 5.0 W until nothing moves: it narrows most.|Hold 5.0 W until nothing moves: it tells the shapes apart.")]
    public void Two_powers_tell_which_shape_of_loss_is_left(string how, double degrees, string linear, string radiation, string hold)
    {
        var says = Fit($"{how} stuck", [double.NaN, double.NaN], [degrees, 386], [5, 8.45]).Says;
        Assert.Equal((linear.Length > 0 ? 2 : 0) + (hold.Length > 0 ? 1 : 0), says.Count);
        Assert.All(says.Take(1), one => Assert.StartsWith("A loss in proportion to the rise", one, StringComparison.Ordinal));
        Assert.All(says.Take(1), one => Assert.Contains(linear, one, StringComparison.Ordinal));
        Assert.All(says.Skip(1).Take(1), one => Assert.StartsWith("A loss by radiation " + (radiation == "fits" ? "fits" : "is ruled out"), one, StringComparison.Ordinal));
        Assert.All(says.Skip(2), one => Assert.Contains(one, hold.Split('|')));
        Assert.All(says.Where(one => one.Contains(" fits", StringComparison.Ordinal)), one => Assert.Contains("at least 0.00 J/K", one, StringComparison.Ordinal));
    }

    /// <summary>At 5 W a time bounds the heat capacity from below where 276 °C are reached at all by 4.75 W: with a loss in proportion of 0.02135 W/K they may not be, 4.75/0.02135 is 222 K; by radiation they are.</summary>
    [Theory, InlineData(60, true), InlineData(0, false), InlineData(double.NaN, false)]
    public void A_time_bounds_the_heat_capacity(double seconds, bool bounds)
    {
        var says = Fit("at stuck", [seconds, double.NaN], [266, 386], [5, 8.45]).Says;
        Assert.Equal(bounds ? 1 : 2, says.Count(one => one.Contains("at least 0.00 J/K", StringComparison.Ordinal)));
    }

    [Theory, InlineData(5, 5), InlineData(0, 8.45), InlineData(double.NaN, 8.45)]
    public void One_power_tells_no_shapes_apart(double first, double second) => Assert.Empty(Fit("at stuck", [double.NaN, double.NaN], [266, 386], [first, second]).Says);
}
