using Heatwright.Parts;
using Heatwright.Plant;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Arrangements;

/// <summary>One named number that the plant of an arrangement is built from.</summary>
/// <param name="Key">Which number.</param>
/// <param name="Name">As screens say it, with the part's name.</param>
/// <param name="Value">Value, doubt and origin.</param>
/// <param name="Part">The part it belongs to; null for the work.</param>
public sealed record PlantInput(PlantKey Key, string Name, Estimate Value, PartId? Part)
{
    /// <summary>Its name without the part's.</summary>
    public string Called => Part is null ? Name : Name[..Comma];

    /// <summary>Name of the part; empty for the work.</summary>
    public string PartName => Part is null ? "" : Name[(Comma + 2)..];

    private int Comma => Name.IndexOf(", ", StringComparison.Ordinal);

    /// <summary>The quantity of the part that it is; empty for the work.</summary>
    public string Quantity { get; init; } = "";
}

/// <summary>The numbers a plant is built from.</summary>
public enum PlantKey
{
    /// <summary>Charge of one cell.</summary>
    Capacity,
    /// <summary>Total ohms of one cell at half charge.</summary>
    CellOhms,
    /// <summary>Open volts of one cell at half charge.</summary>
    OpenVolts,
    /// <summary>Heat capacity of one cell.</summary>
    CellHeat,
    /// <summary>Conductance from one cell to the grip around it.</summary>
    CellToGrip,
    /// <summary>Ohms of one touch of the contacts.</summary>
    ContactOhms,
    /// <summary>Ohms of the supervision board.</summary>
    SupervisionOhms,
    /// <summary>Ohms of the switch.</summary>
    SwitchOhms,
    /// <summary>Ohms of the leads, out and back.</summary>
    LeadOhms,
    /// <summary>Heater ohms at 20 °C.</summary>
    HeaterOhms,
    /// <summary>Its temperature coefficient.</summary>
    HeaterAlpha,
    /// <summary>Heat capacity of the working end.</summary>
    EndHeat,
    /// <summary>Linear loss of the working end.</summary>
    EndLoss,
    /// <summary>Radiating area of the working end.</summary>
    EndRadiating,
    /// <summary>Lag of the sensor.</summary>
    SensorLag,
    /// <summary>Conductance from the working end into the grip.</summary>
    GripLink,
    /// <summary>Heat capacity of the grip.</summary>
    GripHeat,
    /// <summary>Loss of the grip to the air.</summary>
    GripLoss,
    /// <summary>Fixed loss of the module.</summary>
    ModuleFixed,
    /// <summary>Loss per input ampere.</summary>
    ModulePerAmp,
    /// <summary>Loss per input ampere squared.</summary>
    ModulePerAmpSquared,
    /// <summary>Loss per input ampere above the change of the module.</summary>
    ModuleAbove,
    /// <summary>Input current of that change.</summary>
    ModuleChange,
    /// <summary>Input current limit of the module.</summary>
    ModuleLimit,
    /// <summary>Lock-out volts of the module.</summary>
    ModuleLockOut,
    /// <summary>Set output volts of the module.</summary>
    ModuleSet,
    /// <summary>Always-on drain.</summary>
    Drain,
    /// <summary>Conductance into the work.</summary>
    WorkContact,
    /// <summary>Heat one piece needs.</summary>
    WorkNeed,
    /// <summary>Current that a lamp's driver holds.</summary>
    LampAmps,
    /// <summary>Least volts at which it holds it.</summary>
    LampLeastVolts,
    /// <summary>Volts at which a lamp takes no current any more.</summary>
    LampDarkVolts,
    /// <summary>Volts of the light itself.</summary>
    LampForwardVolts,
    /// <summary>Share of the light's power that leaves as light.</summary>
    LampLightShare,
    /// <summary>Volts below which a lamp switches itself off.</summary>
    LampLockOut,
    /// <summary>Heat capacity of a lamp's head.</summary>
    HeadHeat,
    /// <summary>Linear loss of a lamp's head.</summary>
    HeadLoss,
}
