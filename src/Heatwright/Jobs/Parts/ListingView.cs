using Heatwright.Parts;

namespace Heatwright.Jobs;

/// <summary>A claim as machines get it.</summary>
/// <param name="Number">Number to confirm it by.</param>
/// <param name="Quantity">What it speaks of; absent: one of the choices.</param>
/// <param name="Choices">What it may speak of, where the text leaves that open.</param>
/// <param name="Words">As it stands in the text.</param>
/// <param name="At">Place in the text: characters before it.</param>
/// <param name="Pieces">Pieces that the text sells for one price, of which the value is that of one; 1: the value stands in the text as it is.</param>
public sealed record ClaimView(int Number, string? Quantity, IReadOnlyList<string> Choices, double Value, string Unit, double PlusMinus, string Words, int At, int Pieces)
{
    /// <summary>The view of a claim.</summary>
    public static ClaimView Of(Claim claim) => new(claim.Number, claim.Quantity, claim.Choices, claim.Value, claim.Unit.Symbol, claim.PlusMinus, claim.Words, claim.At, claim.Pieces);
}

/// <summary>The claims of a text as machines get them.</summary>
/// <param name="Kind">Kind of part.</param>
/// <param name="Words">Words that are no numbers, by name.</param>
/// <param name="Claims">Claims to confirm.</param>
/// <param name="Doubts">What the claims contradict.</param>
/// <param name="Unread">Numbers that were not understood.</param>
/// <param name="Pieces">Pieces that the text sells for its price; absent: one, or it does not say.</param>
public sealed record ListingView(string Kind, IReadOnlyDictionary<string, string> Words, IReadOnlyList<ClaimView> Claims, IReadOnlyList<ClaimDoubt> Doubts, IReadOnlyList<UnreadValue> Unread, int? Pieces)
{
    /// <summary>The view of a text's claims.</summary>
    public static ListingView Of(ListingClaims found) => new(found.Kind is { } kind ? EnterPart.Word(kind) : "", found.Words, [.. found.Claims.Select(ClaimView.Of)], ClaimChecks.Of(found), found.Unread, found.Pieces);
}
