using Heatwright.Parts;

namespace Heatwright.Arrangements;

/// <summary>Volts that cells of a chemistry stand at: common practice, no source; used only where nothing was stated or found.</summary>
/// <param name="FullV">Volts of a rested full cell.</param>
/// <param name="FullPlusMinus">Half width of it.</param>
/// <param name="CutOffV">Volts under load at which it counts as empty.</param>
/// <param name="Why">Said beside the value.</param>
internal sealed record Chemistry(double FullV, double FullPlusMinus, double CutOffV, string Why)
{
    /// <summary>True for a cell whose chemistry names iron.</summary>
    public static bool IsIron(Part cell) => cell.Word("chemistry").Contains("iron", StringComparison.OrdinalIgnoreCase);

    public static Chemistry Of(Part cell) => cell.Word("chemistry").ToUpperInvariant() switch
    {
        "LITHIUM IRON PHOSPHATE" => new(3.4, 0.1, 2.5, "usual volts of lithium iron phosphate, common practice, no source"),
        "NICKEL-METAL HYDRIDE" => new(1.35, 0.07, 1.0, "usual volts of nickel-metal hydride, common practice, no source"),
        _ => new(4.15, 0.07, 3.0, "usual volts of lithium-ion, common practice, no source"),
    };
}
