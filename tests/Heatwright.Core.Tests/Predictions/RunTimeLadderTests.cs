using Heatwright.Plant;
using Heatwright.Predictions;

namespace Heatwright.Tests.Predictions;

/// <summary>From label to stopwatch, on an invented tool whose rungs can be worked out by hand.</summary>
public class RunTimeLadderTests
{
    /// <summary>3.0 to 4.2 V straight, 1800 C (0.5 Ah) a cell; 0.1 Ω a cell, 0.2 Ω on the way, a heater of 4 Ω: two cells in series.</summary>
    private static AssembledTool Tool(PathModel path, double cutoffV, WorkPattern? work = null) => new(
        new PackModel(new CellModel(1800, new ChargeCurve.Table([0, 1], [3.0, 4.2]), new ChargeCurve.Flat(0.1), new ChargeCurve.Flat(0), 1, new ChargeCurve.Flat(0), 1), 2, 1, 0.2),
        path, new LoadModel.Heater(4, 0, 293.15), new ThermalNetwork([new("end", 5, 0.05)], [], 293.15), new ControllerModel.Fixed(1))
    { CutoffV = cutoffV, MaxS = 24 * 3600, Work = work };

    private static IReadOnlyList<Rung> Ladder(AssembledTool tool, double? labelC, double? labelW, double? labelV = null) =>
        RunTimeLadder.Of(tool, PlantRunner.Run(tool, new RunSettings { StepS = 0.5 }), labelC, labelW, labelV, TestContext.Current.CancellationToken);

    [Fact]
    public void Each_rung_is_what_a_hand_makes_of_it()
    {
        var rungs = Ladder(Tool(new PathModel.Direct(), 6.5), 3600, 10);

        // Labels: 1 Ah · 7.2 V / 10 W = 2592 s; cells as found: half of it; heater: 7.2²/4 = 12.96 W, so 1800 C / 1.8 A = 1000 s.
        // Falling volts: dq/dt = −(6 + 2.4 q)/(4·1800), so t = 4·1800/2.4 · ln(8.4/6). Ohms add to the 4 Ω. Under load at the cells V = E·4.2/4.4 with all ohms,
        // which is 6.5 V at E = 6.809524: t = 4.4·1800/2.4 · ln(8.4/6.809524).
        double[] byHand = [2592, 1296, 1000, 3000 * Math.Log(1.4), 3150 * Math.Log(1.4), 3300 * Math.Log(1.4), 3300 * Math.Log(8.4 / 6.809524)];
        Assert.Equal(byHand.Length, rungs.Count);
        for (int i = 0; i < byHand.Length; i++)
        {
            Assert.Equal(byHand[i], rungs[i].RunTimeS, 1e-3 * byHand[i]);
            Assert.Equal(i == 0 ? 0 : byHand[i] - byHand[i - 1], rungs[i].ChangeS, 1);
        }

        Assert.Equal(StopReason.CutOff, rungs[^1].Stop);
        Assert.Equal(StopReason.Empty, rungs[^2].Stop);
        Assert.Contains("cut-off", rungs[^1].Cause, StringComparison.Ordinal);
    }

    /// <summary>By hand: two cells of 1 Ah and 3.7 V over 10 W are 2664 s; of 0.5 Ah 1332 s; at the 3.6 V of half charge 1296 s.</summary>
    [Fact]
    public void The_first_rung_takes_the_volts_of_the_label()
    {
        var rungs = Ladder(Tool(new PathModel.Direct(), 6.5), 3600, 10, 3.7);
        Assert.Equal([2664, 1332, 1296, 1000], rungs.Take(4).Select(rung => Math.Round(rung.RunTimeS, 6)));
        Assert.Equal(["the labels of cells and heater", "the cells hold what they hold, not what their label says", "the cells have their volts at half charge, not those of their label"], rungs.Take(3).Select(rung => rung.Cause));
        Assert.DoesNotContain(Ladder(Tool(new PathModel.Direct(), 6.5), null, null, 3.7), rung => rung.Cause.Contains("label", StringComparison.Ordinal));
    }

    [Fact]
    public void The_losses_of_a_module_are_one_rung()
    {
        // One half of the input is lost where the drop is half the volts: flat 8 V, 4 V a drop; set 12 V on 4 Ω: 36 W, 4.5 A without loss, 9 A with.
        var tool = Tool(new PathModel.StepUp(12, 0, 4, 0, 100, 0.95, 0, 0), 0);
        var pack = new PackModel(tool.Pack!.Cell with { OpenV = new ChargeCurve.Flat(4), R0Ohm = new ChargeCurve.Flat(0) }, 2, 1, 0);
        var rungs = Ladder(tool with { Pack = pack }, null, null);
        Assert.Equal([400, 200], rungs.Select(rung => rung.RunTimeS), (a, b) => Math.Abs(a - b) < 0.5);
        Assert.Contains("module", rungs[1].Cause, StringComparison.Ordinal);
    }

    [Fact]
    public void The_last_rung_is_the_predicted_run()
    {
        var tool = Tool(new PathModel.Direct(), 6.5, new WorkPattern(0.05, 300, 20, 30, 10, 0)) with
        {
            Load = new LoadModel.Heater(4, 0.002, 293.15),
            Controller = new ControllerModel.Pi(420, 0.5, 0.5, 0.02, 0, 4, 0.9) { StartW = 5 },
            DrainOnA = 0.02,
            DrainOffA = 0.01,
        };
        var run = PlantRunner.Run(tool, new RunSettings { StepS = 0.5 });
        var rungs = RunTimeLadder.Of(tool, run, null, 10, null, TestContext.Current.CancellationToken);
        Assert.Equal((run.RunTimeS, run.Stop), (rungs[^1].RunTimeS, rungs[^1].Stop));
        Assert.Equal("the work takes its heat", rungs[^1].Cause);
        Assert.Equal(run.RunTimeS - rungs[0].RunTimeS, rungs.Sum(rung => rung.ChangeS), 1e-6);
        Assert.Equal(rungs.Count, rungs.Select(rung => rung.Cause).Distinct().Count());
    }

    [Fact]
    public void What_has_no_heater_or_no_pack_has_no_ladder()
    {
        var tool = Tool(new PathModel.Direct(), 6.5);
        var run = PlantRunner.Run(tool, new RunSettings());
        Assert.Empty(RunTimeLadder.Of(tool with { Load = new LoadModel.ConstantPower(5) }, run, 3600, 10, null, default));
        Assert.Empty(RunTimeLadder.Of(tool with { Pack = null }, run, 3600, 10, null, default));
    }
}
