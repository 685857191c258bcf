using System.Globalization;
using System.Text.RegularExpressions;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>What the tests under work say, and at which readings.</summary>
public partial class WorkFitsTests
{
    private static readonly (string, double)[] TenToFifteen = [("start", 10), ("end", 15)];

    /// <summary>By hand: held at the mean of 320, 250 and 330 °C; work from 10 s to 15 s, the lowest within half as long again, at 17.5 s, not before and not later.
    /// The way back passes 295 °C at 20 + 10 · 15/17 s.</summary>
    [Fact]
    public void Droop_is_from_the_mean_before_to_the_lowest_soon_after()
    {
        var answer = Droop([0, 5, 10, 15, 17.5, 18, 20, 30, 40], [320, 250, 330, 262, 260, 258, 280, 297, 300], TenToFifteen);
        Assert.Equal(40, answer.Value("droop"), 1e-9);
        Assert.Equal("Under the job it fell from 300 to 260 °C.", Assert.Single(answer.Says));
        Assert.Equal(20 + (150.0 / 17) - 15, answer.Value("recovery"), 1e-9);
        Assert.Equal("With heat capacity and linear loss from a warm-up, and the watts during the job, the heat that the job takes would be told.", Assert.Single(answer.Next));
        Assert.All(answer.Picture!.Fitted, held => Assert.Equal(300, held, 1e-9));
        Assert.Equal(("degrees", "°C"), (answer.Picture.YName, answer.Picture.YUnit));
        Assert.StartsWith("4 or more", Refused.By("work-trial", [("time", [0, 5, 10]), ("degrees", [300, 290, 300])], TenToFifteen).Limit, StringComparison.Ordinal);
    }

    /// <summary>By hand: 290 °C, 10 K less, are passed at 20 + 10 · 10/17 s; and a droop of 3 K, within the band, has no way back.</summary>
    [Fact]
    public void The_way_back_ends_within_the_band()
    {
        double[] time = [0, 5, 10, 15, 20, 30, 40], degrees = [300, 300, 300, 260, 280, 297, 300];
        Assert.Equal(20 + (100.0 / 17) - 15, Droop(time, degrees, [.. TenToFifteen, ("band", 10)]).Value("recovery"), 1e-9);
        var little = Droop(time, [300, 300, 300, 297, 300, 300, 300], [("start", 10), ("end", 13.4)]);
        Assert.Null(little.Find("recovery"));
        Assert.Equal("It stayed within 5 K: there is nothing to recover from.", little.Says[1]);
        Assert.DoesNotContain(little.Next, next => next.StartsWith("Go on reading", StringComparison.Ordinal));
        var open = Droop(time[..5], degrees[..5], TenToFifteen);
        Assert.Null(open.Find("recovery"));
        Assert.Equal("Go on reading until it is back within 5 K: its recovery is not in these readings.", open.Next[0]);
        var late = Droop([10, 15, 20, 30, 40], [300, 260, 280, 297, 300], [("start", 5), ("end", 15)]); // no reading before the work: the first one stands
        Assert.Equal(40, late.Value("droop"), 1e-9);
        Assert.Equal("Under the job it fell from 300 to 260 °C.", late.Says[0]);
    }

    /// <summary>A thermometer that is off by 1 %/√3 of what it reads is off by that of the difference; what it is off by throughout leaves with it.</summary>
    [Fact]
    public void A_thermometers_offset_leaves_with_the_droop()
    {
        var answer = Given.Fit("work-trial", [("time", [0, 5, 10, 15, 20, 30, 40]), ("degrees", [300, 300, 300, 260, 280, 297, 300])], TenToFifteen, meters: "degrees=1%+2degC");
        Assert.Equal(0.4 / Math.Sqrt(3), Math.Abs(answer.Push("droop", "C gain")), 1e-6);
        Assert.Equal(0, answer.Push("droop", "C offset"), 1e-9);
    }

    /// <summary>By hand: words at 10 s apart, on at 60 s and 70 s: it began at 55 ± 5 s and ended at 75 ± 5 s, each evenly spread, 10/√12 s. What is told by the end alone has that, what is told by a power that holds throughout
    /// has 20 W of it at each end: no loss, no fall, 20 W for 20 s. The recovery ends at 80 s.</summary>
    [Fact]
    public void Where_words_tell_it_both_ends_lie_somewhere_between_two_readings()
    {
        double[] time = [.. Enumerable.Range(0, 13).Select(i => 10.0 * i)];
        var answer = Given.Fit("work-trial", [("time", [.. time.Select(t => t + 1e-9)]), ("degrees", [.. time.Select(t => t == 70 ? 280 : t == 80 ? 295 + 1e-9 : 300)]), ("watts", [.. time.Select(_ => 20 + 1e-9)])],
            [("air", 20), ("heat capacity", 1e-9), ("linear loss", 1e-9)], [("work", [.. time.Select(t => t is 60 or 70 ? "on" : "off")])]);
        Assert.Equal(5, answer.Value("recovery"), 1e-6);
        Assert.Equal(10 / Math.Sqrt(12), answer.Scatter("recovery"), 1e-3); // beside 0.03 s of the last digit of the degrees
        Assert.Equal(400, answer.Value("heat taken"), 1e-4);
        Assert.Equal(Math.Sqrt(2) * 200 / Math.Sqrt(12), answer.Scatter("heat taken"), 1e-3);
        Assert.Equal(20, answer.Value("heat rate under work"), 1e-5);
        Assert.Equal(0, answer.Scatter("heat rate under work"), 1e-3);

        // A power that went up by 6 W at some moment between 60 s and 70 s: 60/√12 J beside.
        var powered = Given.Fit("work-trial", [("time", [.. time.Select(t => t + 1e-9)]), ("degrees", [.. time.Select(t => t == 70 ? 280 : t == 80 ? 295 + 1e-9 : 300)]), ("watts", [.. time.Select(t => t >= 70 ? 26 : 20 + 1e-9)])],
            [("air", 20), ("heat capacity", 1e-9), ("linear loss", 1e-9)], [("work", [.. time.Select(t => t is 60 or 70 ? "on" : "off")])]);
        Assert.Equal(Math.Sqrt(((60 * 60) + (200 * 200) + (260 * 260)) / 12.0), powered.Scatter("heat taken"), 0.5); // 10 s at 20 W where it began, 10 s at 26 W where it ended

        // A watch beside it tells the ends, and nothing is open.
        var watched = Given.Fit("work-trial", [("time", [.. time.Select(t => t + 1e-9)]), ("degrees", [.. time.Select(t => t == 70 ? 280 : t == 80 ? 295 + 1e-9 : 300)])],
            [("start", 60), ("end", 75)], [("work", [.. time.Select(t => t is 60 or 70 ? "on" : "off")])]);
        Assert.InRange(watched.Scatter("recovery"), 0, 0.1);
    }

    /// <summary>By hand: on from half way between 5 s and 10 s to half way between 15 s and 20 s, or to the last reading: 20 + 10 · 15/17 s are 11.32 s and 3.82 s later.</summary>
    [Theory]
    [InlineData("off,off,on,on,off,off,off", 11.323529)]
    [InlineData("off,off,on,off,on,off,off", 3.823529)]
    public void Words_tell_when_the_tool_worked(string words, double recovery)
    {
        var answer = Given.Fit("work-trial", [("time", [0, 5, 10, 15, 20, 30, 40]), ("degrees", [300, 300, 300, 260, 280, 297, 300])], words: [("work", words.Split(','))]);
        Assert.Equal(recovery, answer.Value("recovery"), 1e-5);
        Assert.Equal("no moment", Refused.By("work-trial", [("time", [0, 5, 10, 15]), ("degrees", [300, 290, 280, 300])], words: [("work", ["off", "off", "off", "off"])]).Value);
        Assert.Equal("no moment", Refused.By("work-trial", [("time", [0, 5, 10, 15]), ("degrees", [300, 290, 280, 300])], [("start", 10), ("end", 10)]).Value);
        var last = Given.Fit("work-trial", [("time", [0, 5, 10, 15]), ("degrees", [300, 300, 280, 298])], words: [("work", ["off", "on", "on", "on"])]);
        Assert.Equal((15 * 15.0 / 18) + (10 * 3.0 / 18) - 15, last.Value("recovery"), 1e-9); // 295 °C on the way from 10 s to 15 s, against an end at 15 s
    }

    /// <summary>By hand: from 2 s to 18 s, 12 W from the second reading on and 8 W before; a power read before the work began held until then, one read after it ended did not count,
    /// between them the mean of both. Loss of 0.03 W/K to 25 °C; 8 J/K fell from 300 °C to 272 °C at 18 s.</summary>
    [Fact]
    public void Heat_taken_is_the_power_less_the_loss_and_what_was_stored()
    {
        (string, double)[] all = [("start", 2), ("end", 18), ("air", 25), ("heat capacity", 8), ("linear loss", 0.03)];
        var answer = Droop([0, 5, 10, 15, 20, 30], [300, 300, 300, 260, 280, 300], all, [6, 8, 10, 12, 14, 16]);
        double heat = (3 * (8 - 8.25)) + (5 * (9 - 8.25)) + (5 * (11 - 7.65)) + (3 * (12 - 7.23)) + (8 * 28); // 0.03 · 275, 275, 255 and 241 K
        Assert.Equal(heat, answer.Value("heat taken"), 1e-9);
        Assert.Equal(heat / 16, answer.Value("heat rate under work"), 1e-9);
        Assert.Empty(answer.Next);
        Assert.Null(Droop([0, 5, 10, 15, 20, 30], [300, 300, 300, 260, 280, 300], all).Find("heat taken"));
        foreach (string left in (string[])["heat capacity", "linear loss"])
        {
            var less = Droop([0, 5, 10, 15, 20, 30], [300, 300, 300, 260, 280, 300], [.. all.Where(setting => setting.Item1 != left)], [6, 8, 10, 12, 14, 16]);
            Assert.Null(less.Find("heat taken"));
            Assert.StartsWith("With heat capacity and linear loss", Assert.Single(less.Next), StringComparison.Ordinal);
        }

        // Work that went on past the last reading: what was stored is told by that. 10 W and 0.03 · 270 W for 5 s, then 10 W and 0.03 · 255 W.
        var past = Droop([0, 5, 10, 15], [300, 300, 290, 270], [("start", 5), ("end", 20), ("air", 25), ("heat capacity", 8), ("linear loss", 0.03)], [10, 10, 10, 10]);
        Assert.Equal((5 * (10 - 8.1)) + (5 * (10 - 7.65)) + (8 * 30), past.Value("heat taken"), 1e-9);
    }

    /// <summary>Degrees and watts without a last digit, at moments that are known, leave no doubt of the heat.</summary>
    [Fact]
    public void Heat_of_readings_without_doubt_is_known_without_doubt()
    {
        const double Fine = 1e-9;
        var answer = Droop([0, 5, 10, 15, 20, 30], [300 + Fine, 300, 300, 260, 280, 300], [("start", 5), ("end", 15), ("air", 25), ("heat capacity", 8), ("linear loss", 0.03)], [10 + Fine, 10, 10, 10, 10, 10]);
        Assert.InRange(answer.Scatter("heat taken"), 0, 0.01);
        Assert.InRange(answer.Scatter("droop"), 0, 0.01);
    }

    /// <summary>Jobs lie a hundred times apart, one of them without an outcome: the other's outcome is still weighed from a thirtieth of the least to thirty times the most. By hand, a flat weight of the logarithm: done at 100 W says 100 to 3000 W,
    /// and at the least a fortieth of the way up, 100·30^0.025 = 109 W, with the demand's own doubt 100 W or a little less; failed at 1 W says 0.033 W to the slow part of 1 W at the most.</summary>
    [Theory, InlineData("done", 80, 112, "", "It delivers at least "), InlineData("", 0.4, 1, "failed", "It delivers at most ")]
    public void A_job_far_off_from_the_others_is_weighed_as_any(string hard, double from, double to, string light, string says)
    {
        var answer = Given.Fit("work-ladder", [("watts", [1, 100])], words: [("job", ["a", "b"]), ("outcome", [light, hard])]);
        Assert.StartsWith(says, answer.Says[0], StringComparison.Ordinal);
        Assert.InRange(Numbers(answer.Says[0])[0], from, to);
    }

    /// <summary>Done at 10 W, failed at 40 W, which is less than 24 W delivered: in the logarithm symmetric about √240 = 15.5 W. By a second program, an integral over 20 000 steps: 8.43 to 28.5 W,
    /// 31 % known, 21 % after a job of 15.5 W. The grid has steps of 2 %.</summary>
    [Fact]
    public void A_ladder_between_done_and_failed_lies_half_way_in_the_logarithm()
    {
        var answer = Given.Fit("work-ladder", [("watts", [10, double.NaN]), ("joules", [double.NaN, 400]), ("seconds", [double.NaN, 10])], words: [("job", ["a", "b"]), ("outcome", ["done", "failed"])]);
        Near([15.494], [answer.Value("heat rate at the work")], 0.021);
        Near([0.3105], [answer.Find("heat rate at the work")!.StandardDoubt / answer.Value("heat rate at the work")], 0.03);
        Near([8.4285, 28.4705], Numbers(answer.Says[0])[..2], 0.026);
        Assert.Matches("^It delivers between .* W at the work \\(19 of 20\\)\\.$", Assert.Single(answer.Says));
        Assert.Equal("bounded", answer.Word);
        Near([15.494, 31.05, 21.34], Numbers(Assert.Single(answer.Next)), 0.035);
        Assert.StartsWith("The job that narrows it most: one of about ", answer.Next[0], StringComparison.Ordinal);
    }

    /// <summary>By the second program: a job that went slowly at 20 W says between 12 W and 20 W, with the doubts 9.56 to 25.1 W; a job done alone leaves it open upwards (to thirty times), a failed one downwards.</summary>
    [Theory]
    [InlineData("slow", 20, "^It delivers between ", "bounded", 9.556, 25.114)]
    [InlineData("done", 10, "^It delivers at least (.*) W; nothing here bounds it from above\\.$", "bounds only", 10.10, double.NaN)]
    [InlineData("failed", 40, "^It delivers at most (.*) W; nothing here bounds it from below\\.$", "bounds only", 24.38, double.NaN)]
    public void One_job_bounds_what_it_can(string outcome, double watts, string says, string word, double first, double second)
    {
        var answer = Given.Fit("work-ladder", [("watts", [watts])], words: [("job", ["a"]), ("outcome", [outcome])]);
        Assert.Matches(says, Assert.Single(answer.Says));
        Assert.Equal(word, answer.Word);
        Assert.Equal(outcome == "slow", answer.Findings.Count == 1);
        double[] numbers = Numbers(answer.Says[0]);
        Near(double.IsNaN(second) ? [first] : [first, second], double.IsNaN(second) ? numbers : numbers[..2], 0.026);
    }

    /// <summary>By the second program: of jobs at 12, 20, 35 and 300 W, after done at 10 and failed at 40 W, the one at 20 W leaves 20.4 %, those at 12 W and 35 W 24 and 25 %, that at 300 W all 32 %.</summary>
    [Fact]
    public void The_job_that_narrows_most_is_named()
    {
        var answer = Given.Fit("work-ladder", [("watts", [10, 40, 12, 35, 20, 300, double.NaN])], words: [("job", ["a", "b", "twelve", "more", "twenty", "much", "?"]), ("outcome", ["done", "failed", "", "", "", "", ""])]);
        Assert.StartsWith("The job that narrows it most: 'twenty', 20.0 W; the spread would shrink from 3", answer.Next[0], StringComparison.Ordinal);
        Near([20, 31.05, 20.36], Numbers(answer.Next[0]), 0.045);
    }

    /// <summary>A job of 300 W after done at 10 W and failed at 40 W leaves all 32 % (by the second program): it is not advised. One of 15.5 W, half way in the logarithm, leaves 21 %.
    /// Where sixteen jobs about one demand were done, each known to 20 %, by hand a seventeenth leaves no less than √(16/17) = 97 %: then the demands have to be known better.</summary>
    [Fact]
    public void A_job_that_narrows_nothing_is_not_advised()
    {
        var answer = Given.Fit("work-ladder", [("watts", [10, 40, 300])], words: [("job", ["a", "b", "much"]), ("outcome", ["done", "failed", ""])]);
        Assert.StartsWith("None of the jobs left narrows it; one of about ", Assert.Single(answer.Next), StringComparison.Ordinal);
        Near([15.494, 31.05, 21.34], Numbers(answer.Next[0]), 0.035);
        var known = Given.Fit("work-ladder", [("watts", [.. Enumerable.Range(0, 16).Select(i => i < 8 ? 15.0 : 27.0)])], words: [("job", [.. Enumerable.Repeat("a", 16)]), ("outcome", [.. Enumerable.Range(0, 16).Select(i => i < 8 ? "done" : "failed")])]);
        Assert.StartsWith("The ladder is as narrow as jobs known to 20 % make it: work out the demands nearest to ", Assert.Single(known.Next), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(30, 20, false)]
    [InlineData(31, 20, true)]
    [InlineData(20, 31, false)]
    public void A_harder_job_done_and_a_lighter_one_failed_do_not_go_together(double done, double failed, bool told)
    {
        var answer = Given.Fit("work-ladder", [("watts", [done, failed])], words: [("job", ["a", "b"]), ("outcome", ["done", "failed"])]);
        Assert.Equal(told, answer.Says.Any(says => says.StartsWith("A harder job was done", StringComparison.Ordinal)));
        Assert.Equal("2 lines", Refused.By("work-ladder", [("watts", [double.NaN, 10])], words: [("job", ["a", "b"]), ("outcome", ["done", ""])]).Value);
    }

    private static void Near(double[] expected, double[] found, double share)
    {
        Assert.Equal(expected.Length, found.Length);
        Assert.All(expected.Zip(found), pair => Assert.InRange(pair.Second / pair.First, 1 - share, 1 + share));
    }

    private static double[] Numbers(string sentence) => [.. Figure().Matches(sentence).Select(match => double.Parse(match.Value, CultureInfo.InvariantCulture))];

    [GeneratedRegex("[0-9]+(\\.[0-9]+)?")]
    private static partial Regex Figure();

    private static TrialAnswer Droop(double[] time, double[] degrees, (string, double)[] settings, double[]? watts = null) =>
        Given.Fit("work-trial", [("time", time), ("degrees", degrees), .. watts is null ? Array.Empty<(string, double[])>() : [("watts", watts)]], settings);
}
