using System.Text.RegularExpressions;

namespace Heatwright.Parts;

/// <summary>Names sizes such as 36 x 17 x 14 mm by the letters that stand with them, and by the shape of the part where there are none.</summary>
internal static partial class ListingSizes
{
    /// <summary>Quantities in the order of the sizes; null: they are of something else.</summary>
    public static string[]? Of(PartKind kind, SeenValue seen, Surroundings around, string text)
    {
        if (OfSomethingElse().IsMatch(around.Before))
        {
            return null;
        }

        int count = seen.Sizes.Count;
        string near = around.Clause + " " + text[seen.End..Math.Min(text.Length, seen.End + 12)].ToLowerInvariant();
        if (Letters().Match(near) is { Success: true } letters && letters.Value.Split('x', '*') is { } names && names.Length == count)
        {
            return [.. names.Select(name => Named(name.Trim()))];
        }

        string[]? shaped = count == 3 ? [PartQuantities.Height, PartQuantities.Width, PartQuantities.Length]
            : IsRound(kind, seen, text) ? [PartQuantities.Diameter, PartQuantities.Length]
            : Strip().IsMatch(text) ? [PartQuantities.Height, PartQuantities.Width]
            : [PartQuantities.Width, PartQuantities.Length];
        int[] rank = [.. seen.Sizes.Select((size, i) => (size, i)).OrderBy(pair => pair.size).Select(pair => pair.i)];
        string[] ordered = new string[count];
        for (int i = 0; i < count; i++)
        {
            ordered[rank[i]] = shaped[i];
        }

        return ordered;
    }

    /// <summary>True for a cell that is no pouch: its height is its length.</summary>
    public static bool IsRoundCell(PartKind kind, string text) => kind == PartKind.Cell && !Flat().IsMatch(text);

    private static bool IsRound(PartKind kind, SeenValue seen, string text) => seen.IsRound || IsRoundCell(kind, text)
        || kind is PartKind.CutOut or PartKind.Sensor or PartKind.Handle or PartKind.Lamp || (kind == PartKind.Heater && !Flat().IsMatch(text));

    private static string Named(string letter) => letter switch
    {
        "l" => PartQuantities.Length,
        "w" or "b" => PartQuantities.Width,
        "d" or "ø" => PartQuantities.Diameter,
        _ => PartQuantities.Height,
    };

    [GeneratedRegex(@"\b(leads?|wires?|cables?|holes?|box|package|packing)\b[^a-z]*$", RegexOptions.CultureInvariant)]
    private static partial Regex OfSomethingElse();

    [GeneratedRegex(@"(?<=^|[ (])[lwhtbdø] ?[x*] ?[lwhtbdø](?: ?[x*] ?[lwhtbdø])?(?=$|[ ):.])", RegexOptions.CultureInvariant)]
    private static partial Regex Letters();

    [GeneratedRegex(@"\b(ribbon|strip|tape)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Strip();

    [GeneratedRegex(@"\b(pouch|li-?po|prismatic|ribbon|strip|film|pad|plate|foil|flat heater|mat|sheet)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Flat();
}
