using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>One bad reading among good ones, where it would pull the law after it. Readings from laws that are worked out in the test.</summary>
public class SlipTests
{
    /// <summary>Twelve points of a module: 0.2 W for itself, 0.15 V, 0.15 Ω of the input current; 11 V out. A reading of amps out that was written at six tenths.</summary>
    [Theory, InlineData(6), InlineData(10), InlineData(1)]
    public void A_slip_at_the_heavy_end_does_not_take_the_ohms_of_a_module(int slipped)
    {
        var (volts, amps, outV, outA) = Module(0.2, 0.15, 0.15);
        outA[slipped] = Math.Round(0.6 * outA[slipped], 3);
        var answer = Given.Fit("converter-points", [("volts in", volts), ("amps in", amps), ("volts out", outV), ("amps out", outA)]);
        var remark = Assert.Single(answer.Remarks, remark => remark.LeftOut);
        Assert.Equal(slipped + 1, remark.Reading);
        Assert.Equal(0.15, answer.Value("loss per ampere squared"), 0.01);
        Assert.Equal(0.2, answer.Value("loss fixed"), 0.03);
    }

    /// <summary>A module that takes 5 mW for itself has its ohms all the same; and what it takes is told with a doubt, never as nothing without one.</summary>
    [Fact]
    public void A_loss_of_next_to_nothing_hides_no_ohms()
    {
        var (volts, amps, outV, outA) = Module(0.005, 0.12, 0.12);
        var answer = Given.Fit("converter-points", [("volts in", volts), ("amps in", amps), ("volts out", outV), ("amps out", outA)]);
        Assert.Equal("own needs, share and ohms", answer.Tried.Single(tried => tried.Chosen).Name);
        Assert.Equal(0.12, answer.Value("loss per ampere squared"), 0.01);
        Assert.True(answer.Find("loss fixed")!.StandardDoubt > 1e-3);
    }

    private static (double[] VoltsIn, double[] AmpsIn, double[] VoltsOut, double[] AmpsOut) Module(double own, double perAmp, double ohms)
    {
        double[] loads = [0.1, 0.3, 0.6, 1.0];
        double[] volts = [4.1, 4.1, 4.1, 4.1, 3.7, 3.7, 3.7, 3.7, 3.3, 3.3, 3.3, 3.3], outA = [.. volts.Select((_, i) => loads[i % 4])];
        double[] amps = [.. volts.Select((v, i) =>
        {
            // V·I − own − b·I − c·I² = 11·I_out, the smaller root.
            double push = v - perAmp, watts = (11 * outA[i]) + own;
            return Math.Round(2 * watts / (push + Math.Sqrt((push * push) - (4 * ohms * watts))), 3);
        })];
        return (volts, amps, [.. volts.Select(_ => 11.0)], outA);
    }

    /// <summary>0.70 A down to 3.30 V, nothing at 2.70 V: 0.70·(V − 2.70)/0.60 between.</summary>
    [Theory, InlineData(0, 10), InlineData(0, 0.6), InlineData(3, 10), InlineData(7, 10), InlineData(9, 10)]
    public void A_slip_does_not_make_a_driver_that_switches(int slipped, double by)
    {
        double[] volts = [.. Enumerable.Range(0, 13).Select(i => Math.Round(4.2 - (0.12 * i), 2))];
        double[] amps = [.. volts.Select(v => Math.Round(0.70 * Math.Clamp((v - 2.70) / 0.60, 0, 1), 4))];
        amps[slipped] *= by;
        var answer = Given.Fit("lamp-points", [("volts", volts), ("amps", amps)]);
        Assert.Contains(answer.Remarks, remark => remark.LeftOut && remark.Reading == slipped + 1);
        Assert.Equal(0.70, answer.Value("load current"), 0.003);
        Assert.Equal(3.30, answer.Value("least input volts"), 0.02);
    }

    /// <summary>2 W at every volt: amps that grow all the way down are no slip, with or without one.</summary>
    [Theory, InlineData(1), InlineData(10)]
    public void A_driver_that_switches_is_told_with_and_without_a_slip(double by)
    {
        double[] volts = [.. Enumerable.Range(0, 12).Select(i => 12.0 - (0.7 * i))];
        double[] amps = [.. volts.Select(v => Math.Round(2 / v, 4))];
        amps[4] *= by;
        var answer = TrialFits.Run("lamp-points", Given.Readings("lamp-points", [("volts", volts), ("amps", amps)]));
        Assert.Contains("switches", answer.Problems[0].What, StringComparison.Ordinal);
    }

    /// <summary>From 22 °C to 80 °C with 60 s; the first temperature ten times too large.</summary>
    [Fact]
    public void A_first_temperature_that_slipped_does_not_bend_the_way_to_rest()
    {
        double[] time = [.. Enumerable.Range(0, 30).Select(i => 8.0 * i)];
        double[] degrees = [.. time.Select(t => Math.Round(80 - (58 * Math.Exp(-t / 60)), 1))];
        degrees[0] *= 10;
        var answer = Given.Fit("converter-hot-spot", [("time", time), ("degrees", degrees)], [("watts", 2), ("air", 22)]);
        Assert.Equal(80, answer.Value("hot spot at rest"), 0.3);
        Assert.Equal(60, answer.Value("time constant"), 1);
        Assert.Contains(answer.Remarks, remark => remark.LeftOut && remark.Reading == 1);
    }
}
