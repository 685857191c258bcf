using Heatwright.Arrangements;

namespace Heatwright.Verdicts;

/// <summary>When in an evening a trial comes: cold things first, what may kill a part last.</summary>
public enum TrialStage
{
    /// <summary>Nothing gets warm.</summary>
    Cold,
    /// <summary>Current flows, nothing gets hot.</summary>
    Loaded,
    /// <summary>The working end gets hot.</summary>
    Hot,
    /// <summary>The part may not live through it.</summary>
    Risky,
}

/// <summary>A bench trial that could be done next: what it tells, how well, and what it takes.</summary>
/// <param name="Words">As a maker says it.</param>
/// <param name="Keys">The numbers of a plant that it tells.</param>
/// <param name="Share">Standard doubt it leaves, as a share of the value, with ordinary hand meters.</param>
/// <param name="HandsMinutes">Minutes of hands on.</param>
/// <param name="WaitMinutes">Minutes before this part can be used again: rest, cooling, charging.</param>
/// <param name="Stage">When in an evening.</param>
/// <param name="Risk">What it may cost; empty: nothing.</param>
/// <remarks>Minutes and shares are common practice, no source.</remarks>
public sealed record TrialPlan(string Words, IReadOnlyList<PlantKey> Keys, double Share, double HandsMinutes, double WaitMinutes, TrialStage Stage, string Risk)
{
    /// <summary>Every trial that tells a number of a plant.</summary>
    public static readonly IReadOnlyList<TrialPlan> All =
    [
        new("cold ohms with the leads subtracted", [PlantKey.HeaterOhms], 0.01, 3, 0, TrialStage.Cold, ""),
        new("the drain with the heater off", [PlantKey.Drain], 0.02, 3, 0, TrialStage.Cold, ""),
        new("the drop across the contacts at working current", [PlantKey.ContactOhms], 0.05, 5, 0, TrialStage.Loaded, ""),
        new("the drop across the supervision board", [PlantKey.SupervisionOhms], 0.05, 5, 0, TrialStage.Loaded, ""),
        new("the drop across the switch at working current", [PlantKey.SwitchOhms], 0.05, 5, 0, TrialStage.Loaded, ""),
        new("the drop across the leads at working current", [PlantKey.LeadOhms], 0.05, 5, 0, TrialStage.Loaded, ""),
        new("a pulse run at working current", [PlantKey.CellOhms], 0.05, 10, 15, TrialStage.Loaded, ""),
        new("a discharge down to the cut-off", [PlantKey.Capacity, PlantKey.OpenVolts], 0.02, 15, 150, TrialStage.Loaded, ""),
        new("volts and amps of the hot heater", [PlantKey.HeaterAlpha], 0.1, 8, 15, TrialStage.Hot, ""),
        new("a warm-up at two power levels", [PlantKey.EndHeat, PlantKey.EndLoss, PlantKey.EndRadiating, PlantKey.SensorLag], 0.05, 15, 20, TrialStage.Hot, ""),
        new("a work trial: how far the working end droops in one piece", [PlantKey.WorkContact, PlantKey.WorkNeed], 0.08, 15, 15, TrialStage.Hot, ""),
        new("grip degrees during a long hold", [PlantKey.GripLink, PlantKey.GripHeat, PlantKey.GripLoss], 0.1, 10, 30, TrialStage.Hot, ""),
        new("cell degrees during a run in the closed handle", [PlantKey.CellHeat, PlantKey.CellToGrip], 0.15, 10, 30, TrialStage.Hot, ""),
        new("four readings of the module at five loads", [PlantKey.ModuleFixed, PlantKey.ModulePerAmp, PlantKey.ModulePerAmpSquared, PlantKey.ModuleAbove, PlantKey.ModuleChange, PlantKey.ModuleSet], 0.05, 15, 5, TrialStage.Loaded, ""),
        new("volts and amps of the lamp, turned down until it is dark", [PlantKey.LampAmps, PlantKey.LampLeastVolts, PlantKey.LampDarkVolts, PlantKey.LampLockOut], 0.01, 8, 2, TrialStage.Loaded, ""),
        new("the volts across the light itself, and a sheet that says its light", [PlantKey.LampForwardVolts, PlantKey.LampLightShare], 0.1, 10, 0, TrialStage.Loaded, ""),
        new("degrees of the lamp's head over half an hour of light", [PlantKey.HeadHeat, PlantKey.HeadLoss], 0.1, 10, 30, TrialStage.Hot, ""),
        new("the module loaded until its output falls", [PlantKey.ModuleLimit, PlantKey.ModuleLockOut], 0.03, 8, 5, TrialStage.Risky, "the module may not live through it"),
    ];
}
