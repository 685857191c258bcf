using Heatwright.Plant;

namespace Heatwright.Trials;

/// <summary>One cell on the bench under a recorded current: the plant that cell logs are fitted and predicted with.</summary>
public static class CellBench
{
    /// <summary>The plant of one cell in air.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="heatCapacityJPerK">Its heat capacity.</param>
    /// <param name="coolingWPerK">Its conductance to the air.</param>
    /// <param name="drive">Current out of it.</param>
    /// <param name="startCharge">Charge left at the start.</param>
    /// <param name="startC">Its temperature at the start, °C.</param>
    /// <param name="airC">The air, °C.</param>
    public static AssembledTool Tool(CellModel cell, double heatCapacityJPerK, double coolingWPerK, Schedule drive, double startCharge, double startC, double airC) =>
        new(new PackModel(cell, 1, 1, 0) { StartCharge = startCharge }, new PathModel.Direct(), new LoadModel.RecordedCurrent(drive),
            new ThermalNetwork([new ThermalNode("cell", heatCapacityJPerK, coolingWPerK)], [], 273.15 + airC)
            {
                CellNode = 0,
                HeaterNode = -1,
                StartK = [273.15 + startC],
            },
            new ControllerModel.Fixed(1))
        {
            CutoffV = double.NegativeInfinity,
            MaxS = drive.Times[^1] + 1,
        };

    /// <summary>Charge left when a log starts: counted since full where that is known, else told by its first volts.</summary>
    public static double StartCharge(CellModel cell, CellLog log) =>
        log.TakenBeforeC is { } taken ? 1 - (taken / cell.CapacityC) : ChargeAt(cell, log.Volts[0], log.Amps[0]);

    /// <summary>Charge left at which the open volts are those read at rest; the instant ohms are added where a current already flows.</summary>
    public static double ChargeAt(CellModel cell, double volts, double amps)
    {
        double low = 0;
        double high = 1.05;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = cell.OpenV.At(middle) - (amps * cell.R0Ohm.At(middle)) < volts ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
