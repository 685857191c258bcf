using Heatwright.Physics;
using Heatwright.Plant;

namespace Heatwright.Tests.Plant;

/// <summary>The quick look at many tools against what each comes to when it is run for long on a pack that hardly empties.</summary>
public class SteadyRisesTests
{
    [Fact]
    public void Each_tool_stands_where_a_long_run_of_it_comes_to_rest()
    {
        AssembledTool[] tools = [Tool(8, 0.95, null, 1), Tool(3, 0.6, null, 2), Tool(12, 0.9, new StepUpModule(9, new(0.1, 0.2, 0.05)) { PeakLimitA = 6, LockoutV = 2.2, MaxDuty = 0.92, DiodeV = 0.35 }, 1), Tool(5, 0.95, null, 3)];
        var rises = SteadyRises.Of(tools);
        for (int i = 0; i < tools.Length; i++)
        {
            for (int charge = 0; charge < SteadyRises.Charges.Count; charge++)
            {
                // The same pack at that charge, with a controller that always gives its most.
                var held = tools[i] with { Pack = tools[i].Pack! with { StartCharge = SteadyRises.Charges[charge] }, Controller = new ControllerModel.Fixed(((ControllerModel.Pi)tools[i].Controller).MaxDuty), MaxS = 40_000, Work = null };
                var run = PlantRunner.Run(held, new RunSettings { StepS = 20, Instants = [40_000] });
                Assert.Equal(run.Trace.NodesK[0][0] - 295.15, rises[i]![charge], 0.01);
            }
        }
    }

    [Fact]
    public void A_pack_that_cannot_carry_the_module_has_no_steady_point_and_a_curved_grip_is_not_looked_at()
    {
        var asked = new StepUpModule(12, new(0.12, 0.20, 0.09)) { LockoutV = 3.0, PeakLimitA = 20, MaxDuty = 0.95, DiodeV = 0.35 };
        var curved = Tool(8, 0.9, null, 1);
        curved = curved with { Network = new ThermalNetwork([curved.Network.Nodes[0], new("grip", 80, 0.15, 0.01), curved.Network.Nodes[2]], curved.Network.Links, 295.15) { CellNode = 2 } };
        var rises = SteadyRises.Of([Tool(4, 0.95, asked, 1), curved]);
        Assert.Equal([double.NaN, double.NaN, double.NaN], rises[0]!);
        Assert.Null(rises[1]);
        Assert.Empty(SteadyRises.Of([]));
    }

    private static AssembledTool Tool(double heaterOhm, double mostDuty, StepUpModule? module, int series)
    {
        // A pack of ten thousand million coulombs: its charge stays where it is.
        var cell = new CellModel(1e10, new ChargeCurve.Table([0, 0.1, 0.5, 1], [3.0, 3.4, 3.7, 4.15]), new ChargeCurve.Table([0, 1], [0.06, 0.03]), new ChargeCurve.Flat(0), 5, new ChargeCurve.Flat(0), 50);
        return new(new PackModel(cell, series, 1, 0.05), module is null ? new PathModel.Direct() : new PathModel.StepUp(module), new LoadModel.Heater(heaterOhm, 0.0004, 293.15),
            new ThermalNetwork([new("end", 1.2, 0.012, 0, 5e-4), new("grip", 80, 0.15), new("cells", 45, 0.2)], [new(0, 1, 0.005), new(1, 2, 0.03)], 295.15) { CellNode = -1 },
            new ControllerModel.Pi(600, 0.25, 0.2, 0.01, 0, heaterOhm, mostDuty))
        { CutoffV = 0.5 };
    }
}
