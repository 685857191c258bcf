using Heatwright.Plant;

namespace Heatwright.Tests.Plant;

/// <summary>Benchmark mission 1, an invented cordless hot knife: 2 cells, 1.6 Ω heater, four nodes, PI control, a cut every 30 s.</summary>
internal static class Mission1
{
    public static readonly CellModel Cell = new(3.0 * 3600, new ChargeCurve.Formula(3.40, 0.80, 0, 0, -0.60, 25),
        new ChargeCurve.Flat(0.035), new ChargeCurve.Flat(0.015), 20, new ChargeCurve.Flat(0), 200);

    public static readonly ThermalNetwork Network = new(
        [
            new("heater", 1.2, 0),
            new("tip", 5.0, 0, 1.2e-3 * 2.2, 0.70 * 1.2e-3),
            new("shank", 9.0, 0.012),
            new("grip", 25.0, 0.15),
        ],
        [new(0, 1, 0.35), new(0, 2, 0.012), new(1, 2, 0.010), new(2, 3, 0.020)],
        298.15)
    {
        HeaterNode = 0,
        WorkingNode = 1,
        SensorNode = 1,
        SensorLagS = 0.8,
    };

    public static readonly AssembledTool Tool = new(
        new PackModel(Cell, 2, 1, 0.060),
        new PathModel.Direct(),
        new LoadModel.Heater(1.60, 8e-4, 293.15),
        Network,
        new ControllerModel.Pi(673.15, 0.25, 0.50, 0.020, 0.10, 1.60, 0.95))
    {
        Work = new WorkPattern(0.12, 260 + 273.15, 180, 30, 4, 0),
        CutoffV = 5.600,
        TargetK = 395 + 273.15,
        MaxS = 8000,
    };
}
