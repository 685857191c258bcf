using Heatwright.Arrangements;

namespace Heatwright.Verdicts;

/// <summary>The reading that would tell a number of the plant.</summary>
internal static class WhichReading
{
    public static string Of(PlantKey key) => key switch
    {
        PlantKey.Capacity => "a discharge down to the cut-off",
        PlantKey.CellOhms => "a pulse run at working current",
        PlantKey.OpenVolts => "a slow discharge",
        PlantKey.CellHeat or PlantKey.CellToGrip => "cell degrees during a run in the closed handle",
        PlantKey.ContactOhms => "the drop across the contacts at working current",
        PlantKey.SupervisionOhms => "the drop across the supervision board",
        PlantKey.SwitchOhms => "the drop across the switch at working current",
        PlantKey.LeadOhms => "the drop across the leads at working current",
        PlantKey.HeaterOhms => "cold ohms with the leads subtracted",
        PlantKey.HeaterAlpha => "volts and amps of the hot heater",
        PlantKey.EndHeat or PlantKey.EndLoss or PlantKey.EndRadiating or PlantKey.SensorLag => "a warm-up at two power levels",
        PlantKey.GripLink or PlantKey.GripHeat or PlantKey.GripLoss => "grip degrees during a long hold",
        PlantKey.ModuleFixed or PlantKey.ModulePerAmp or PlantKey.ModulePerAmpSquared or PlantKey.ModuleAbove or PlantKey.ModuleChange => "four readings of the module at five loads",
        PlantKey.ModuleLimit or PlantKey.ModuleLockOut or PlantKey.ModuleSet => "the module loaded until its output falls",
        PlantKey.Drain => "the drain with the heater off",
        PlantKey.LampAmps or PlantKey.LampLeastVolts or PlantKey.LampDarkVolts or PlantKey.LampLockOut => "volts and amps of the lamp, turned down until it is dark",
        PlantKey.LampForwardVolts or PlantKey.LampLightShare => "the volts across the light itself, and a sheet that says its light",
        PlantKey.HeadHeat or PlantKey.HeadLoss => "degrees of the lamp's head over half an hour of light",
        _ => "a work trial: how far the working end droops in one piece",
    };
}
