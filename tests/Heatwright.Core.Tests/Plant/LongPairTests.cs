using Heatwright.Plant;
using Heatwright.Trials;

namespace Heatwright.Tests.Plant;

/// <summary>The long pair of a cell where it holds a lagging current instead of volts. Expected values in closed form.</summary>
public class LongPairTests
{
    private const double Amps = 1.5, CapacityC = 1800, TauS = 100;

    private static readonly double[] Instants = [0, 30, 100, 400, 700, 900];

    [Fact]
    public void Its_volts_follow_the_ohms_at_the_charge_of_the_moment()
    {
        // 20 mΩ down to three tenths of the charge, then up to 620 mΩ at empty: manifold within less than a time constant.
        var run = Run(new ChargeCurve.Table([0, 0.3, 1], [0.62, 0.02, 0.02]), holdsAmps: true);
        for (int i = 0; i < Instants.Length; i++)
        {
            double charge = 1 - (Amps * Instants[i] / CapacityC);
            double ohm = charge >= 0.3 ? 0.02 : 0.62 - (2 * charge);
            double laggingA = Amps * (1 - Math.Exp(-Instants[i] / TauS));
            Assert.Equal(ohm * laggingA, run.Trace.LongV[i], 1e-9);
            Assert.Equal(3.7 - (0.1 * Amps) - (ohm * laggingA), run.Trace.TerminalV[i], 1e-9);
        }
    }

    [Fact]
    public void Ohms_that_do_not_change_give_the_volts_of_a_pair_that_holds_volts()
    {
        var (amps, volts) = (Run(new ChargeCurve.Flat(0.03), holdsAmps: true), Run(new ChargeCurve.Flat(0.03), holdsAmps: false));
        for (int i = 0; i < Instants.Length; i++)
        {
            Assert.Equal(0.03 * Amps * (1 - Math.Exp(-Instants[i] / TauS)), amps.Trace.LongV[i], 1e-9);
            Assert.Equal(volts.Trace.TerminalV[i], amps.Trace.TerminalV[i], 1e-12);
            Assert.Equal(volts.Trace.NodesK[0][i], amps.Trace.NodesK[0][i], 1e-9);
        }
    }

    /// <summary>A cell without temperature effect, 3.7 V open and 0.1 Ω at once, under a steady current.</summary>
    private static PlantRun Run(ChargeCurve longOhm, bool holdsAmps)
    {
        var cell = new CellModel(CapacityC, new ChargeCurve.Flat(3.7), new ChargeCurve.Flat(0.1), new ChargeCurve.Flat(0), 1, longOhm, TauS) { LongHoldsAmps = holdsAmps };
        return PlantRunner.Run(CellBench.Tool(cell, 45, 0.1, new Schedule([0, 1200], [Amps, Amps]), 1, 25, 25), new RunSettings { Instants = Instants, StepS = 10 });
    }
}
