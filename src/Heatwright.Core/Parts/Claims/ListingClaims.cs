using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.Parts;

/// <summary>A value that a seller's text states, as a candidate: nobody has confirmed it yet.</summary>
/// <param name="Number">1, 2, 3 in the order of the text: how a maker names it to confirm it.</param>
/// <param name="Quantity">A name from <see cref="PartQuantities"/>; null: the text leaves open which of <paramref name="Choices"/> is meant, and the maker says.</param>
/// <param name="Choices">What may be meant where the text leaves it open; empty where it does not.</param>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="Unit">As the text writes it.</param>
/// <param name="PlusMinus">Half of a stated range or the stated tolerance; 0: none.</param>
/// <param name="Words">The seller's words.</param>
/// <param name="At">Where they stand in the text.</param>
public sealed record Claim(int Number, string? Quantity, IReadOnlyList<string> Choices, double Value, Unit Unit, double PlusMinus, string Words, int At)
{
    /// <summary>Pieces that the text sells for one price, of which the value is that of one; 1: the value stands in the text as it is.</summary>
    public int Pieces { get; init; } = 1;

    /// <summary>The price as the text has it: 'of 2 for 4.80'; empty: the value is that of one piece.</summary>
    public string Together => Pieces > 1 ? string.Create(CultureInfo.InvariantCulture, $"of {Pieces} for {Pieces * Value:0.00}") : "";

    /// <summary>As a stated value of a part, once a maker confirmed it.</summary>
    public StatedValue Confirmed(string quantity) => new(quantity, Value, Unit.Symbol, PlusMinus, "claimed", Pieces > 1 ? $"{Words}; {Together}" : Words);
}

/// <summary>A number with a unit that was seen and not taken for a claim of the part.</summary>
/// <param name="Words">As written.</param>
/// <param name="Why">Why it is none, or why it cannot be told.</param>
public sealed record UnreadValue(string Words, string Why);

/// <summary>What a seller's text states, as candidates to confirm.</summary>
/// <param name="Kind">What the part seems to be; null: the text does not say, and the maker does.</param>
/// <param name="Text">The text as it was pasted, every character.</param>
/// <param name="Claims">Candidates.</param>
/// <param name="Words">Words that are no numbers: chemistry, cells, size, type.</param>
/// <param name="Unread">Numbers with units that were left.</param>
public sealed record ListingClaims(PartKind? Kind, string Text, IReadOnlyList<Claim> Claims, IReadOnlyDictionary<string, string> Words, IReadOnlyList<UnreadValue> Unread)
{
    /// <summary>Pieces that it sells for its price, 'pack of 2'; null: one, or it does not say.</summary>
    public int? Pieces { get; init; }
}
