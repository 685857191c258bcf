using System.Globalization;
using System.Text.RegularExpressions;

namespace Heatwright.Parts;

/// <summary>How many pieces a seller's text sells for one price: 'pack of 2', 'set of 4', '3 pcs'.</summary>
internal static partial class ListingPieces
{
    /// <summary>Pieces that the text sells together; null: one, or the text says several counts.</summary>
    /// <param name="text">The even text.</param>
    public static int? Of(string text) => Told(text).Select(one => one.Count).Distinct().ToArray() is [var only and > 1] ? only : null;

    /// <summary>Pieces that a price is for: those that its own line names before it, else those of the whole text.</summary>
    /// <param name="text">The even text.</param>
    /// <param name="price">The price.</param>
    /// <param name="around">The words around it.</param>
    public static int Of(string text, SeenValue price, Surroundings around)
    {
        if (Each().IsMatch(around.Before) || Each().IsMatch(around.Behind))
        {
            return 1;
        }

        int line = text.LastIndexOf('\n', Math.Max(0, price.Start - 1)) + 1;
        return Told(text).Where(one => one.At >= line && one.At < price.Start).Select(one => (int?)one.Count).LastOrDefault() ?? Of(text) ?? 1;
    }

    private static IEnumerable<(int Count, int At)> Told(string text) => Together().Matches(text)
        .Select(match => (int.Parse(match.Groups["n"].Value, CultureInfo.InvariantCulture), match.Index)).Where(one => one.Item1 > 0);

    /// <summary>'For 2 pcs' is what a holder takes, '10 pcs or more' and '1-9 pcs' a price at that many.</summary>
    [GeneratedRegex(@"(?<!\b(?:for|holds?|takes?|fits|from|at) |\d ?- ?)\b(?:(?:pack|set|lot|bag|box) of (?<n>\d{1,3})\b(?! ?(?:cells? )?in series)|(?<n>\d{1,3}) ?-?(?:pcs?|pieces?|pack)\b(?! ?(?:\+|or more|up|/)))",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Together();

    [GeneratedRegex(@"\beach\b|\bapiece\b|\bea\b|\b(?:a|per) (?:piece|pc|cell)\b|/ ?(?:pc|piece|ea)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Each();
}
