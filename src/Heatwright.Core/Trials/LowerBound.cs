using Heatwright.Parts;

namespace Heatwright.Trials;

/// <summary>Findings of which only the lower end is known: what a cell gave before its discharge was broken off, the heaviest load that a module was seen to hold. They stand beside the quantity under
/// a name of their own, so that nothing takes them for it.</summary>
public static class LowerBound
{
    private const string Words = ", at least";

    /// <summary>The name of a lower bound of a quantity: 'capacity, at least'.</summary>
    /// <param name="quantity">The quantity.</param>
    public static string Of(string quantity) => quantity + Words;

    /// <summary>True for the name of a lower bound.</summary>
    /// <param name="quantity">Name of a finding.</param>
    public static bool Is(string quantity) => quantity == PartQuantities.HeldCurrent || quantity.EndsWith(Words, StringComparison.Ordinal);

    /// <summary>The quantity that a finding speaks of, a lower bound or not.</summary>
    /// <param name="quantity">Name of a finding.</param>
    public static string Quantity(string quantity) => quantity == PartQuantities.HeldCurrent ? PartQuantities.LimitCurrent : Is(quantity) ? quantity[..^Words.Length] : quantity;
}
