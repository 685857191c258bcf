using System.Globalization;
using System.Text.RegularExpressions;
using Heatwright.Quantities;

namespace Heatwright.Parts;

/// <summary>Finds every number with a unit in a text; a number without one is no value here.</summary>
internal static partial class ListingScan
{
    /// <summary>A value is shorter than this, with its tolerance.</summary>
    private const int LongestValue = 40;

    public static List<SeenValue> Of(string text)
    {
        List<SeenValue> seen = [];
        for (int at = 0; at < text.Length;)
        {
            var found = Begins(text, at) ? Sizes(text, at) ?? Price(text, at) ?? Amount(text, at) : null;
            if (found is not null)
            {
                seen.Add(found);
                at = found.End;
            }
            else
            {
                at = Begins(text, at) && char.IsAsciiDigit(text[at]) ? PastNumber(text, at) : at + 1;
            }
        }

        return seen;
    }

    /// <summary>A value may begin where no word or number is going on.</summary>
    private static bool Begins(string text, int at)
    {
        char c = text[at];
        bool starts = char.IsAsciiDigit(c) || c is 'Ø' or '$' or '€' or '£' || (c is '-' or '+' && at + 1 < text.Length && char.IsAsciiDigit(text[at + 1]))
            || (c is '.' or ',' && at + 1 < text.Length && char.IsAsciiDigit(text[at + 1]))
            || string.Compare(text, at, "AWG", 0, 3, StringComparison.OrdinalIgnoreCase) == 0;
        if (!starts || at == 0)
        {
            return starts;
        }

        // '24V60W' goes on from one value to the next, 'B3950' and '1.5' do not.
        char before = text[at - 1];
        bool glued = char.IsAsciiDigit(c) && (before is 'V' or 'A' or 'W');
        return (!char.IsAsciiLetterOrDigit(before) || glued) && !(before is '.' or ',' && at > 1 && char.IsAsciiDigit(text[at - 2])) && !(c is '-' or '+' && before is '-' or '+');
    }

    private static int PastNumber(string text, int at)
    {
        while (at < text.Length && (char.IsAsciiLetterOrDigit(text[at]) || (text[at] is '.' or ',' && at + 1 < text.Length && char.IsAsciiDigit(text[at + 1]))))
        {
            at++;
        }

        return at;
    }

    /// <summary>36 x 17 x 14 mm, 43mm*21mm*14mm, Ø6x40mm: the last unit holds for those without.</summary>
    private static SeenValue? Sizes(string text, int at)
    {
        var match = SizeGroup().Match(text, at);
        if (!match.Success)
        {
            return null;
        }

        double perUnit = match.Groups["last"].Value.ToUpperInvariant() switch { "MM" => 1, "CM" => 10, _ => 25.4 };
        double[] sizes = [.. match.Groups["n"].Captures.Select(capture => perUnit * double.Parse(capture.Value.Replace(',', '.'), CultureInfo.InvariantCulture))];
        return new(at, at + match.Length, [], sizes) { IsRound = match.Value[0] == 'Ø' };
    }

    private static SeenValue? Price(string text, int at)
    {
        var match = CurrencyBefore().Match(text, at);
        match = match.Success ? match : CurrencyBehind().Match(text, at);
        if (!match.Success && BarePrice().Match(text, at) is { Success: true } bare && PriceWord().IsMatch(text[Math.Max(0, at - 24)..at]))
        {
            match = bare;
        }

        return match.Success && TypedValue.Read(match.Groups["n"].Value, PartUnits.Expected[PartQuantities.Price]) is Answer.Fine fine
            ? new(at, at + match.Length, [fine.Value], []) { IsPrice = true }
            : null;
    }

    /// <summary>The longest reading that carries a unit; all its meanings where there are several of that length.</summary>
    private static SeenValue? Amount(string text, int at)
    {
        int lineEnd = text.IndexOf('\n', at);
        string line = text[at..Math.Min(lineEnd < 0 ? text.Length : lineEnd, at + LongestValue)];
        foreach (bool loose in (bool[])[false, true])
        {
            var items = AmountSpelling.At(line, 0, Expect.Label, loose).Concat(GaugeSpelling.At(line, 0, Expect.Label, loose)).Where(item => item.End > 0 && HasUnit(item.Value)).ToArray();
            if (items.Length > 0)
            {
                int end = items.Max(item => item.End);
                return new(at, at + end, [.. items.Where(item => item.End == end).Select(item => item.Value)], []);
            }
        }

        return null;
    }

    private static bool HasUnit(TypedValue value) => value switch
    {
        TypedValue.Amount amount => amount.UnitWasTyped && amount.Unit != Units.One && amount.Unit.Symbol != "%" || (value is TypedValue.Amount { Unit.Symbol: "%" }),
        TypedValue.Range range => range.Unit != Units.One,
        TypedValue.Bound bound => bound.Unit != Units.One,
        _ => false,
    };

    [GeneratedRegex(@"\GØ? ?(?<n>\d+(?:[.,]\d+)?) ?(?:mm|cm)?(?: ?[x*] ?Ø?(?<n>\d+(?:[.,]\d+)?) ?(?<last>mm|cm|in)?){1,2}(?<=mm|cm|in)(?![a-z])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SizeGroup();

    [GeneratedRegex(@"\G[$€£] ?(?<n>\d+(?:[.,]\d+)?)", RegexOptions.CultureInvariant)]
    private static partial Regex CurrencyBefore();

    [GeneratedRegex(@"\G(?<n>\d+(?:[.,]\d+)?) ?(?:[$€£]|EUR\b|USD\b|GBP\b)", RegexOptions.CultureInvariant)]
    private static partial Regex CurrencyBehind();

    [GeneratedRegex(@"\G(?<n>\d+[.,]\d{2})(?![\d.,]*\d| ?(?!(?i:incl|excl|including|excluding|plus|with|free|each|total|shipping|shipped|delivered)\b)[A-Za-zΩ°µ%])", RegexOptions.CultureInvariant)]
    private static partial Regex BarePrice();

    [GeneratedRegex(@"\b(?:price|costs?|only|just)\b[^\d\n]*$|\b(?:(?:pack|set|lot|bag|box) of \d+|\d+ ?(?:pcs|pieces)(?: for)?)\s*[:,]?\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    internal static partial Regex PriceWord();
}
