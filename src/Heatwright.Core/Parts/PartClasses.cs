using Heatwright.Handbook;
using Heatwright.Quantities;

namespace Heatwright.Parts;

/// <summary>Parts that nobody owns yet, as estimates of their class: wide, assumed, with the source's mark.</summary>
public static class PartClasses
{
    private static Table Classes => Tables.Find("part-classes");

    /// <summary>Names of the classes of a kind.</summary>
    public static IReadOnlyList<string> Of(PartKind kind) => [.. Classes.Rows.Where(row => Kind(row) == kind).Select(row => row.Key).Distinct()];

    /// <summary>What a part of a class is assumed to be, none of it on hand; null: there is no such class of that kind.</summary>
    public static Part? Make(PartId id, PartKind kind, string name)
    {
        TableRow[] rows = [.. Classes.Rows.Where(row => Kind(row) == kind && string.Equals(row.Key, name, StringComparison.OrdinalIgnoreCase))];
        return rows.Length == 0 ? null : new Part(id, kind, rows[0].Key, [.. rows.Select(Assumed)]) { Count = 0, Words = Words(rows[0].Word("words")) };
    }

    private static StatedValue Assumed(TableRow row)
    {
        double low = row.Number("lowest"), high = row.Number("highest");
        return new(row.Word("quantity"), (low + high) / 2, row.Word("unit"), (high - low) / 2, "assumed", $"class '{row.Key}': {(row.Mark == Mark.CommonPractice ? "common practice, no source" : row.Source.Key)}");
    }

    private static SortedDictionary<string, string> Words(string words) => new(words.Split(';', StringSplitOptions.RemoveEmptyEntries)
        .Select(word => word.Split('=')).ToDictionary(pair => pair[0], pair => pair[1], StringComparer.Ordinal), StringComparer.Ordinal);

    private static PartKind Kind(TableRow row) => Enum.Parse<PartKind>(row.Word("kind"), ignoreCase: true);
}
