namespace Heatwright.Jobs;

/// <summary>A part as a maker types it.</summary>
/// <param name="Id">Its short name.</param>
public sealed record PartEntry(string Id)
{
    /// <summary>What it is for; empty: as the listing says.</summary>
    public string Kind { get; init; } = "";

    /// <summary>What the maker calls it; empty: its short name.</summary>
    public string Name { get; init; } = "";

    /// <summary>Pieces on hand; null: one, or as it was.</summary>
    public string? Count { get; init; }

    /// <summary>bought, salvaged, borrowed or destroyed; null: bought, or as it was.</summary>
    public string? From { get; init; }

    /// <summary>Origin and 'quantity=value (words)' of each value.</summary>
    public IReadOnlyList<(string Origin, string Typed)> Values { get; init; } = [];

    /// <summary>'name=word' of what is no number.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>The maker's note; null: as it was.</summary>
    public string? Note { get; init; }

    /// <summary>Name of a picture file; null: as it was.</summary>
    public string? Photo { get; init; }

    /// <summary>The piece that the values are of; null: all.</summary>
    public string? Sample { get; init; }

    /// <summary>How that piece is: sound, suspect, destroyed; null: as it was.</summary>
    public string? State { get; init; }

    /// <summary>A class to take estimates from, for a part that is not owned.</summary>
    public string? Class { get; init; }

    /// <summary>The seller's text; null: none.</summary>
    public string? Listing { get; init; }

    /// <summary>Which of its claims are confirmed: numbers, 'all', or 'number=quantity' where it was asked.</summary>
    public IReadOnlyList<string> Take { get; init; } = [];

    /// <summary>True: a value under an unknown name is told, and all else is kept; false: nothing is kept before all is right, as a form that shows it again wants it.</summary>
    public bool KeepsRest { get; init; }
}
