using Heatwright.Physics;

namespace Heatwright.Handbook;

/// <summary>Burn thresholds of surfaces by contact time, from the table.</summary>
/// <remarks>Source: [iso-13732-1], from memory: a bought copy rules. Checked: TouchTests, HandbookSumsTests.</remarks>
public static class TouchLimits
{
    /// <summary>Lower bound of the threshold for a contact, always the row of the next longer contact.</summary>
    [Law("touch-threshold", "heat flow", "table by surface and contact time, the next longer contact", Says = "surface temperature that burns skin in a contact", Unit = "°C", Source = "iso-13732-1", Where = "burn thresholds, from memory",
        Valid = "healthy adult skin; no limit of comfort; verify with a bought copy before any claim", Example = "surface=metal contact=10s")]
    public static double ThresholdC(
        [In("surface", "word", "what is touched", Words = "metal coated ceramic plastic wood")] string surface,
        [In("t", "s", "contact time", Name = "contact", Min = 0.5, Max = 86400)] double contactS)
    {
        string key = surface?.Trim().ToUpperInvariant() switch
        {
            "METAL" => "bare metal",
            "COATED" => "coated metal",
            "CERAMIC" => "ceramic, glass, stone",
            "PLASTIC" => "plastic",
            "WOOD" => "wood",
            _ => throw new ArgumentOutOfRangeException(nameof(surface), surface, "The table has metal, coated, ceramic, plastic and wood."),
        };
        return Touch.ThresholdC([.. Tables.Find("touch-thresholds").Rows.Where(row => row.Key == key).Select(row => (row.Number("contact"), row.Number("threshold")))], contactS);
    }
}
