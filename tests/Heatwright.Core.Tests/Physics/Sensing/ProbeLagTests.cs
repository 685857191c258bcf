using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

public class ProbeLagTests
{
    /// <summary>By hand: 375 K / 90 s = 4.167 K/s, times 4 s = 16.67 K.</summary>
    [Fact]
    public void A_probe_of_4_s_reads_17_K_high_while_a_tip_cools()
    {
        double rate = ProbeLag.CoolingKPerS(375, 90);
        Assert.Equal(-4.17, rate, 0.005);
        Assert.Equal(16.67, 400 - ProbeLag.CorrectedC(400, 4, rate), 0.005);
    }

    /// <summary>By hand: 4 s · (3 + 2) K/s = 20 K.</summary>
    [Fact]
    public void Heating_and_cooling_curves_differ_by_lag_times_both_rates()
    {
        Assert.Equal(20, ProbeLag.LoopGapK(4, 3, -2), 1e-12);
        Assert.Equal(4, ProbeLag.FromLoopS(20, 3, -2), 1e-12);
    }

    /// <summary>Second way: the probe's own equation, stepped finely, is put right by the law.</summary>
    [Fact]
    public void The_correction_undoes_the_lag_of_a_stepped_probe() => Gen.Select(Gen.Double[0.5, 5], Gen.Double[40, 200]).Sample((lagS, coolingS) =>
    {
        double shown = 400, before = 400, step = 1e-3;
        int steps = (int)(8 * lagS / step);
        for (int i = 0; i < steps; i++)
        {
            before = shown;
            shown += step * (True(i * step) - shown) / lagS;
        }

        return Math.Abs(ProbeLag.CorrectedC(before, lagS, (shown - before) / step) - True((steps - 1) * step)) < 1e-6;
        double True(double s) => 25 + (375 * Math.Exp(-s / coolingS));
    }, iter: 20);
}
