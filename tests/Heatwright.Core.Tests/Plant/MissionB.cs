using Heatwright.Plant;

namespace Heatwright.Tests.Plant;

/// <summary>Mission B, invented: one cell with two RC pairs, a heater, four nodes, PI every 0.1 s on a reading of 500/1023 K, work for 4 s every 20 s.</summary>
internal static class MissionB
{
    private static readonly double[] Charges = [0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0];
    private static readonly double[] Open = [2.90, 3.30, 3.44, 3.55, 3.61, 3.65, 3.70, 3.78, 3.87, 3.97, 4.06, 4.18];

    /// <summary>The mission, every doubtful number times a factor near 1 in the order of <see cref="Doubtful"/>.</summary>
    public static AssembledTool Tool(double heaterOhm = 0.7, double[]? factors = null)
    {
        double F(int i) => factors is null ? 1 : factors[i];
        var cell = new CellModel(2.6 * 3600 * F(0), new ChargeCurve.Table(Charges, Open), new ChargeCurve.Flat(0.035 * F(1)), new ChargeCurve.Flat(0.012 * F(1)), 3.0, new ChargeCurve.Flat(0.018 * F(1)), 90);
        return new(
            new PackModel(cell, 1, 1, 0.060 * F(2)),
            new PathModel.Direct(),
            new LoadModel.Heater(heaterOhm * F(3), 0.0008, 293.15),
            new ThermalNetwork(
                [new("core", 1.2 * F(4), 0), new("tip", 2.5 * F(5), 0.012 * F(6), 0, 0.8 * 4e-4 * F(7)), new("shank", 6, 0.008), new("grip", 25, 0.02)],
                [new(0, 1, 0.35 * F(8)), new(0, 2, 0.05), new(2, 3, 0.03)], 295.15)
            { HeaterNode = 0, WorkingNode = 1, SensorNode = 1 },
            // The duty itself is what the mission's PI puts out: one watt of full power. It adds its integral before it acts, hence the gain 0.03 + 0.003·0.1.
            new ControllerModel.Pi(553.15, 0.1, 0.0303, 0.003, 0, 1, 1) { NominalV = 1, ReadingStepK = 500.0 / 1023 })
        {
            Work = new WorkPattern(0.03 * F(9), 333.15, 16, 20, 4, 0),
            CutoffV = 3.0,
            MaxS = 40_000,
            TargetK = 545.15,
        };
    }

    /// <summary>How many numbers are in doubt, and by how much each, relative.</summary>
    public static readonly double[] Doubtful = [0.03, 0.10, 0.15, 0.03, 0.05, 0.05, 0.10, 0.10, 0.10, 0.15];
}
