using System.Text.RegularExpressions;
using Heatwright.Quantities;

namespace Heatwright.Parts;

/// <summary>Pulls out of a seller's text what it claims, as candidates to confirm; what cannot be told is asked or left, never guessed.</summary>
public static partial class ListingReader
{
    /// <summary>A longer text is no listing.</summary>
    public const int LongestText = 20_000;

    /// <summary>Reads a text.</summary>
    /// <param name="text">As pasted.</param>
    /// <param name="kind">What the part is; null: as far as the text says.</param>
    public static Checked<ListingClaims> Read(string text, PartKind? kind = null)
    {
        if (text.Length > LongestText)
        {
            return new(new Problem("The text is too long for a listing.", "seller's text", $"{text.Length} characters", $"{LongestText} characters", "Paste only what is said about the part."));
        }

        if ((kind ?? ListingKinds.Of(text)) is not { } sure)
        {
            return new(new ListingClaims(null, text, [], new Dictionary<string, string>(), []));
        }

        var listing = ListingText.Of(text);
        var seen = ListingScan.Of(listing.Even);
        var around = ListingClauses.Around(listing.Even, seen);
        List<Claim> claims = [];
        List<UnreadValue> unread = [];
        string? taken = null; // words that told what the value before them is tell nothing of the value behind them
        for (int i = 0; i < seen.Count; i++)
        {
            var near = around[i].Before == taken && taken.Trim().Length > 0 ? around[i] with { Before = "" } : around[i];
            string words = listing.Words(seen[i].Start, seen[i].End);
            var told = ListingMeaning.Of(sure, seen, i, near, listing.Even, words);
            taken = told.UsedBehind ? near.Behind : null;
            foreach (var one in told.Claims.Where(one => !claims.Exists(other => Same(other, one))))
            {
                int pieces = one.Choices is [PartQuantities.Price] ? ListingPieces.Of(listing.Even, seen[i], around[i]) : 1;
                claims.Add(new(claims.Count + 1, one.Choices.Count == 1 ? one.Choices[0] : null, one.Choices.Count == 1 ? [] : one.Choices, one.Value / pieces, one.Unit, one.PlusMinus,
                    Snippet(listing, seen, i), listing.Origin(seen[i].Start))
                {
                    Pieces = pieces,
                });
            }

            if (told.Why.Length > 0)
            {
                unread.Add(new(words, told.Why));
            }
        }

        return new(new ListingClaims(sure, text, claims, ListingKinds.Words(sure, text), unread) { Pieces = ListingPieces.Of(listing.Even) });
    }

    private static bool Same(Claim claim, ToldClaim told) => claim.Unit.Measures(told.Unit) && claim.Unit.ToSi(claim.Value) == told.Unit.ToSi(told.Value)
        && claim.PlusMinus * claim.Unit.Factor == told.PlusMinus * told.Unit.Factor && (claim.Quantity is { } quantity ? told.Choices is [var only] && only == quantity : claim.Choices.SequenceEqual(told.Choices));

    /// <summary>The value with the words of its clause, so that a claim can be read by itself.</summary>
    private static string Snippet(ListingText listing, List<SeenValue> seen, int i)
    {
        int start = seen[i].Start, end = seen[i].End;
        int from = start;
        while (from > 0 && !";|,\n(!".Contains(listing.Even[from - 1], StringComparison.Ordinal) && start - from < 40 && !(i > 0 && from == seen[i - 1].End))
        {
            from--;
        }

        int to = end;
        while (to < listing.Even.Length && !";|,.\n()!".Contains(listing.Even[to], StringComparison.Ordinal) && to - end < 30 && !(i + 1 < seen.Count && to == seen[i + 1].Start))
        {
            to++;
        }

        // What stands between a size and the next value, and the word of a price before it, names that one.
        if (i + 1 < seen.Count && to == seen[i + 1].Start)
        {
            to = seen[i].Sizes.Count > 0 ? end : seen[i + 1].IsPrice && ListingScan.PriceWord().Match(listing.Even[end..to]) is { Success: true } word ? end + word.Index : to;
        }

        return Blanks().Replace(listing.Words(from, to), " ").Trim();
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
