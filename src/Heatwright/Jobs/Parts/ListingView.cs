using Heatwright.Parts;

namespace Heatwright.Jobs;

/// <summary>A claim as machines get it.</summary>
public sealed record ClaimView(int Number, string? Quantity, IReadOnlyList<string> Choices, double Value, string Unit, double PlusMinus, string Words, int At)
{
    /// <summary>The view of a claim.</summary>
    public static ClaimView Of(Claim claim) => new(claim.Number, claim.Quantity, claim.Choices, claim.Value, claim.Unit.Symbol, claim.PlusMinus, claim.Words, claim.At);
}

/// <summary>The claims of a text as machines get them.</summary>
public sealed record ListingView(string Kind, IReadOnlyDictionary<string, string> Words, IReadOnlyList<ClaimView> Claims, IReadOnlyList<ClaimDoubt> Doubts, IReadOnlyList<UnreadValue> Unread)
{
    /// <summary>The view of a text's claims.</summary>
    public static ListingView Of(ListingClaims found) => new(found.Kind is { } kind ? EnterPart.Word(kind) : "", found.Words, [.. found.Claims.Select(ClaimView.Of)], ClaimChecks.Of(found), found.Unread);
}
