namespace Heatwright.Physics;

/// <summary>Where a power path works.</summary>
public enum PathRegion
{
    /// <summary>At its set voltage.</summary>
    Regulated,

    /// <summary>Steady, but held below the set voltage by the switch current limit.</summary>
    CurrentLimited,

    /// <summary>Steady, but held below the set voltage by the largest duty.</summary>
    DutyLimited,

    /// <summary>The source cannot carry the load and nothing stops the collapse: no steady point.</summary>
    SourceLimited,

    /// <summary>The input sags to the lock-out, the module stops, recovers and starts again: average unknown.</summary>
    Hiccup,

    /// <summary>Below its lock-out from the start: it never runs.</summary>
    LockedOut,

    /// <summary>A step-up whose input passes straight through to the heater: nothing limits it.</summary>
    PassThrough,
}

/// <summary>Operating point of a power path with a heater on it. Numbers are there only where a steady point is.</summary>
/// <param name="Region">Where it works.</param>
/// <param name="InputA">Battery current.</param>
/// <param name="InputV">Voltage at the module's input.</param>
/// <param name="OutV">Voltage at the heater.</param>
/// <param name="OutW">Power in the heater.</param>
/// <param name="LossW">Lost in the module.</param>
/// <param name="Duty">Duty of the main switch.</param>
public sealed record PathPoint(
    [property: Out("", "region")] PathRegion Region,
    [property: Out("A", "battery current")] double? InputA,
    [property: Out("V", "module input")] double? InputV,
    [property: Out("V", "at the heater")] double? OutV,
    [property: Out("W", "in the heater")] double? OutW,
    [property: Out("W", "lost in the module")] double? LossW,
    [property: Out("", "duty")] double? Duty)
{
    /// <summary>Most power the source can push through the module.</summary>
    [Out("W", "most power before the fold", Name = "most-power")]
    public double? MostW { get; init; }

    /// <summary>Battery current of that point.</summary>
    [Out("A", "battery current at the fold", Name = "fold-current")]
    public double? FoldA { get; init; }

    /// <summary>How much more battery current the first limit allows, as a factor; only when regulated.</summary>
    [Out("", "first limit over present current")]
    public double? Margin { get; init; }

    /// <summary>Current through the heater when the module is off but not disconnected.</summary>
    [Out("A", "passes through while off", Name = "off-current")]
    public double? OffA { get; init; }

    /// <summary>Beyond the fold: more current gives less output.</summary>
    [Out("", "beyond the fold")]
    public bool BeyondFold => Region != PathRegion.PassThrough && InputA > FoldA;

    /// <summary>A region without a steady point.</summary>
    internal static PathPoint Without(PathRegion region) => new(region, null, null, null, null, null, null);
}
