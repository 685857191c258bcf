using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Safety;

/// <summary>What single faults are looked at with.</summary>
/// <param name="Builder">Plant of the arrangement.</param>
/// <param name="Arrangement">The arrangement.</param>
/// <param name="Shelf">Parts and findings.</param>
public sealed record FaultAsk(PlantBuilder Builder, Arrangement Arrangement, Shelf Shelf)
{
    /// <summary>Air of the hot day, °C.</summary>
    public double AirC { get; init; } = SingleFaults.HotAirC;

    /// <summary>Temperature at which the independent cut-out opens, °C; 0: there is none, or it is not stated.</summary>
    public double CutOutC { get; init; } = SafetyCheck.OpensC(Shelf, Arrangement.CutOut) ?? 0;

    /// <summary>Where the cut-out feels: on the working end, or in the handle where it was said to sit there.</summary>
    internal int CutOutNode => Arrangement.CutOut is { } part && SafetyCheck.SitsElsewhere(Shelf[part]) ? 1 : 0;

    /// <summary>Temperature of the cells at which the protection board takes the load off them, °C; 0: none is stated.</summary>
    public double CellSensorC { get; init; } = SafetyCheck.OpensC(Shelf, Arrangement.Supervision) ?? 0;

    /// <summary>What a heater or lamp that nothing switches off asks for, beside what there is.</summary>
    internal string NeededCutOut => Arrangement.CutOut is not { } part ? Arrangement.Lamp is null ? "a cut-out that works without the controller" : "a cut-out on the head of the lamp"
        : CutOutC > 0 ? $"a cut-out that opens sooner than '{Shelf[part].Name}'" : $"a stated opening temperature of '{Shelf[part].Name}'";
}
