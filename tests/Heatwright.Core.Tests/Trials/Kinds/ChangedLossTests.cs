using Heatwright.DemoTruth.Campaign;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>A module that works in bursts at light load loses steeper above a current; others do not. Readings from laws that are worked out in the test.</summary>
public class ChangedLossTests
{
    private static readonly double[] Amps = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.9, 1.1, 1.3, 1.5, 1.7, 1.9, 2.1];

    /// <summary>3.6 V in, 9 V out; amps out to the last milliampere. By hand at 2.1 A: 0.02 + 0.21 + 0.39 = 0.62 of 7.56 W; at 0.1 A 0.03 of 0.36 W; best at 0.7 A, where 0.09 of 2.52 W are lost (at 0.8 A nothing was read).</summary>
    [Fact]
    public void A_change_of_slope_is_found_with_its_current()
    {
        var answer = Points(Amps, a => 0.02 + (0.1 * a) + (0.3 * Math.Max(0, a - 0.8)));
        Assert.Equal("own needs and share, more above a current", answer.Tried.Single(tried => tried.Chosen).Name);
        Assert.Equal(0.02, answer.Value("loss fixed"), 0.01);
        Assert.Equal(0.1, answer.Value("loss per ampere"), 0.015);
        Assert.Equal(0, answer.Value("loss per ampere squared"));
        Assert.Equal(0.3, answer.Value("loss above the change"), 0.015);
        Assert.Equal(0.8, answer.Value("current of the change"), 0.04);
        Assert.InRange(answer.Find("current of the change")!.StandardDoubt, 0.002, 0.05);
        Assert.Equal(100 * (1 - (0.62 / 7.56)), answer.Value("efficiency at the heaviest load"), 0.2);
        Assert.Equal(100 * (1 - (0.09 / 2.52)), answer.Value("efficiency"), 0.3);
        Assert.Contains(answer.Says, says => says.StartsWith("Above 0.8", StringComparison.Ordinal) && says.Contains("for each ampere more", StringComparison.Ordinal));
    }

    [Theory, InlineData(0.1, 0.2, 0), InlineData(0.1, 0.15, 0.06), InlineData(0.02, 0.05, 0.2)]
    public void A_module_without_a_change_gets_none(double own, double perAmp, double ohms)
    {
        var answer = Points(Amps, a => own + (perAmp * a) + (ohms * a * a));
        Assert.Equal("own needs, share and ohms", answer.Tried.Single(tried => tried.Chosen).Name);
        Assert.Null(answer.Find("loss above the change"));
        Assert.Equal(ohms, answer.Value("loss per ampere squared"), 0.01);
    }

    /// <summary>Twelve readings each of modules without a change, by meters that are off as they may be and with a slip now and then: chance makes one of fifty a change at most.</summary>
    [Fact]
    public void Noise_makes_hardly_any_change()
    {
        int made = Enumerable.Range(0, 300).Count(bench => TrialFits.Run("converter-points", Typed.Input(BenchLaws.Draw("converter-points", 20261127, bench))).Value.Find("loss above the change") is not null);
        Assert.InRange(made, 0, 6);
    }

    /// <summary>A loss that gets flatter is none that a converter has.</summary>
    [Fact]
    public void A_slope_that_falls_is_no_change() => Assert.Null(Points(Amps, a => 0.02 + (0.3 * a) - (0.2 * Math.Max(0, a - 0.8))).Find("loss above the change"));

    /// <summary>Two readings above 1.8 A, and eleven in all, are too few.</summary>
    [Fact]
    public void Three_readings_lie_on_either_side_and_twelve_in_all()
    {
        Assert.Null(Points(Amps[..11], a => 0.02 + (0.1 * a) + (0.3 * Math.Max(0, a - 0.8))).Find("loss above the change"));
        var late = Points(Amps, a => 0.02 + (0.1 * a) + (0.9 * Math.Max(0, a - 1.8)));
        Assert.False(late.Find("current of the change") is { Value: > 1.7 });
    }

    private static TrialAnswer Points(double[] amps, Func<double, double> loss) => Given.Fit("converter-points", [("volts in", [.. amps.Select(_ => 3.6)]), ("amps in", amps), ("volts out", [.. amps.Select(_ => 9.0)]), ("amps out", [.. amps.Select(a => Math.Round(((3.6 * a) - loss(a)) / 9, 3))])]);
}
