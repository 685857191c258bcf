using System.Buffers;
using System.Text.RegularExpressions;

namespace Heatwright.Logs;

/// <summary>A line of label:value pairs.</summary>
internal static partial class LabelledLine
{
    private const int LongestLine = 4096, LongestLabel = 41, LongestUnit = 6;

    private static readonly SearchValues<char> Digits = SearchValues.Create("0123456789");
    private static readonly SearchValues<char> UnitLetters = SearchValues.Create("%°ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyzµμΩ/²");
    private static readonly SearchValues<char> LabelLetters = SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_.");

    /// <summary>The pairs of a line that holds nothing else, in order; null for any other line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="room">Filled and given back in place of a new dictionary; null: a new one.</param>
    /// <param name="byExpressionAlone">Leaves out the short cut, so that a test can hold both equal.</param>
    public static Dictionary<string, string>? Pairs(string line, Dictionary<string, string>? room = null, bool byExpressionAlone = false)
    {
        string text = line.Trim().Trim('{', '}', ' ', ',', ';');
        if (text.Length is 0 or > LongestLine || text.AsSpan().IndexOfAny(':', '=') < 0)
        {
            return null;
        }

        var cells = room ?? new Dictionary<string, string>(StringComparer.Ordinal);
        cells.Clear();
        int at = 0;
        bool clock = false;
        if (char.IsAsciiDigit(text[0]) && LeadingClock().Match(text) is { Success: true } time)
        {
            (clock, cells["time"], at) = (true, time.Groups["time"].Value, time.Length);
        }

        while (at < text.Length)
        {
            if (!byExpressionAlone && Plain(text, ref at, cells))
            {
                continue;
            }

            var match = Pair().Match(text, at, text.Length - at);
            if (!match.Success || match.Index != at || (match.Groups["unit"].Length > 0 && UnitWords.Find(match.Groups["unit"].Value) is null))
            {
                return null;
            }

            cells[match.Groups["label"].Value.Trim()] = (match.Groups["value"].Value + " " + match.Groups["unit"].Value).Trim();
            at += match.Length;
        }

        return cells.Count > (clock ? 1 : 0) ? cells : null;
    }

    /// <summary>The commonest pair, a bare label, a number and perhaps a unit with nothing between, without the regular expression, which would find the same and leave far more behind to be collected.</summary>
    private static bool Plain(ReadOnlySpan<char> text, ref int at, Dictionary<string, string> cells)
    {
        var rest = text[at..];
        int label = Run(rest, LabelLetters);
        if (label is 0 or > LongestLabel || label == rest.Length || !char.IsAsciiLetter(rest[0]) || rest[label] is not (':' or '='))
        {
            return false;
        }

        var value = rest[(label + 1)..];
        int number = Number(value);
        int unit = Run(value[number..], UnitLetters);
        int end = number + unit;
        bool ends = end == value.Length || value[end] is ',' or ';' or '|';
        if (number == 0 || unit > LongestUnit || !ends || (unit > 0 && UnitWords.Find(value.Slice(number, unit).ToString()) is null))
        {
            return false;
        }

        string said = unit == 0 ? value[..number].ToString() : $"{value[..number]} {value.Slice(number, unit)}";
        cells.GetAlternateLookup<ReadOnlySpan<char>>()[rest[..label]] = said;
        at += label + 1 + end;
        at += at < text.Length ? 1 : 0;
        while (at < text.Length && char.IsWhiteSpace(text[at]))
        {
            at++;
        }

        return true;
    }

    private static int Run(ReadOnlySpan<char> text, SearchValues<char> letters)
    {
        int end = text.IndexOfAnyExcept(letters);
        return end < 0 ? text.Length : end;
    }

    /// <summary>Length of a number at the start, a power of ten included; 0: none that is plain.</summary>
    private static int Number(ReadOnlySpan<char> text)
    {
        int at = text.Length > 0 && text[0] is '+' or '-' ? 1 : 0;
        int digits = Run(text[at..], Digits);
        at += digits;
        if (digits > 0 && at + 1 < text.Length && text[at] is '.' or ',' && char.IsAsciiDigit(text[at + 1]))
        {
            at += 1 + Run(text[(at + 1)..], Digits);
        }

        // A power of ten, and what might be one and is a unit, is left to the expression.
        return digits == 0 || (at < text.Length && text[at] is 'e' or 'E') ? 0 : at;
    }

    [GeneratedRegex(@"^(?<time>(?:\d{4}-\d\d-\d\d[ T])?\d{1,2}:\d\d(?::\d\d(?:[.,]\d+)?)?)[ ,;\t]+", RegexOptions.CultureInvariant)]
    private static partial Regex LeadingClock();

    [GeneratedRegex(@"\G""?(?<label>[A-Za-zµΩ°_](?:[\w.#/%°()\[\] -]{0,39}?[\w.#/%°()\[\]-])?)""?\s*[:=]\s*""?(?<value>\d{1,4}:\d\d:\d\d(?:[.,]\d+)?|[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)(?:[eE][+-]?\d+)?|nan|NaN|-?inf|-?INF|OL|OVER|null|---?)""?\s*(?<unit>[%°A-Za-zµμΩ/²]{0,6}?)(?:\s*[,;|\t]\s*|\s+|$)", RegexOptions.CultureInvariant)]
    private static partial Regex Pair();
}
