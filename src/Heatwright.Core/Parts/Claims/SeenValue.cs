using Heatwright.Quantities;

namespace Heatwright.Parts;

/// <summary>A number with a unit, or several that are sizes of one thing, as it was seen in a text.</summary>
/// <param name="Start">Where it begins in the even text.</param>
/// <param name="End">Where it ends.</param>
/// <param name="Meanings">What it may be; more than one only where the spelling leaves it open.</param>
/// <param name="Sizes">Sizes in millimetres where it is a size such as 36 x 17 x 14 mm; else empty.</param>
internal sealed record SeenValue(int Start, int End, IReadOnlyList<TypedValue> Meanings, IReadOnlyList<double> Sizes)
{
    /// <summary>True where the sizes began with a sign of diameter.</summary>
    public bool IsRound { get; init; }

    /// <summary>True for money.</summary>
    public bool IsPrice { get; init; }
}
