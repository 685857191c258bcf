using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>How the ohms of a heater grow with heat where nobody read its degrees: a sweep tells ohms per watt, its loss tells kelvins per watt, and one over the other is ohms per kelvin.</summary>
internal static class OhmsOverWatts
{
    /// <summary>What the sweep says of the ohms over its watts.</summary>
    private const string PerWatt = "ohms per watt";

    /// <summary>The temperature coefficient; nothing where it is known already, or where one of the three numbers that it takes is not.</summary>
    /// <param name="part">The heater.</param>
    /// <param name="found">What its trials told, what counts first.</param>
    public static IEnumerable<PartFindings> Of(Part part, IReadOnlyList<Finding> found)
    {
        Input? Named(string quantity) => found.FirstOrDefault(finding => finding.Quantity == quantity) is { Value: var value } ? new Input(quantity, value) : null;
        if (part.Kind == PartKind.Heater && Named(PartQuantities.Alpha) is null && Named(PerWatt) is { } rise && Named(PartQuantities.LinearLoss) is { } loss && Named(PartQuantities.Ohms) is { Value.Si: > 0 } cold)
        {
            yield return new(part.Id, [new(part.Id, PartQuantities.Alpha, Propagate.Through((ohmPerW, wPerK, ohm) => ohmPerW * wPerK / ohm, Units.PerKelvin, "ohms per watt times watts per kelvin over cold ohms", rise, loss, cold))], [], []);
        }
    }
}
