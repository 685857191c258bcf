namespace Heatwright.Physics;

/// <summary>Watt-hours against the small-battery provisions of transport.</summary>
/// <remarks>Cell up to 20 Wh, battery up to 100 Wh; every type tested after the manual's section 38.3. Source: [un-38-3], read in transport guides.
/// The rules change yearly: check the current edition and the carrier.</remarks>
public static class TransportCheck
{
    /// <summary>Largest cell, J.</summary>
    public const double CellJ = 20 * 3600;

    /// <summary>Largest battery, J.</summary>
    public const double BatteryJ = 100 * 3600;

    /// <summary>Whether a pack of like cells stays within both.</summary>
    public static bool IsSmall(int series, int parallel, double cellV, double capacityAs) =>
        Pack.RatedJ(1, 1, cellV, capacityAs) <= CellJ && Pack.RatedJ(series, parallel, cellV, capacityAs) <= BatteryJ;
}
