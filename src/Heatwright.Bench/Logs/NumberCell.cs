using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace Heatwright.Logs;

/// <summary>What a cell turned out to be.</summary>
internal enum CellKind
{
    Missing,
    Number,
    Overload,
    /// <summary>A number whose only mark could be decimal or thousands.</summary>
    Undecided,
    Word,
}

/// <summary>A cell as read: a number may bring a unit.</summary>
internal readonly record struct CellValue(CellKind Kind, double Value = double.NaN, string Unit = "");

/// <summary>Numbers as they come: marks of thousands, units behind, over range, nothing at all.</summary>
internal static class NumberCell
{
    private static readonly FrozenSet<string> Nothing = Set(
    [
        "-", "--", "---", "----", "--.--", "-.--", "--.-", "---.-", "-.---", "n/a", "na", "#n/a", "nan", "-nan", "nan(ind)", "-nan(ind)", "null",
        "none", "nil", "(null)", ".", "..", "?", "*", "\u2013", "\u2014", "no data", "nodata", "missing",
    ]);

    /// <summary>Over range as displays write it, letters or the digit nought for the O. Common practice, no source.</summary>
    private static readonly FrozenSet<string> Over = Set(
    [
        "ol", "o.l", ".ol", "o.l.", "ol.", "0l", "0.l", ".0l", "0l.", "00l", "0.0l",
        ".0f", "0.f", ".of", "o.f", "ovl", "ovld", "ovflw", "over", "overload",
        "over range", "overrange", "overflow", "ofl", "o/l", "inf", "infinity", "infinite", "\u221e", "1.#inf", "1.#inf00",
    ]);

    public static CellValue Read(string cell, char mark)
    {
        string text = cell.Trim();
        if (text.Length == 0 || Is(Nothing, text))
        {
            return new(CellKind.Missing);
        }

        string unsigned = text.TrimStart('+', '-', '>', '<', ' ');
        if (Is(Over, unsigned) || OverWithUnit(unsigned))
        {
            return new(CellKind.Overload);
        }

        int length = NumberLength(text);
        return length == 0 ? new(CellKind.Word) : WithUnit(text[..length].TrimEnd(), text[length..].Trim(), mark);
    }

    /// <summary>Above any bench: 9.9E37 is the number that stands for infinity, 9.91E37 for 'not a number'.</summary>
    /// <remarks>Standard Commands for Programmable Instruments 1999, vol. 1, 7.2.1.4 and 7.2.1.5, from memory.</remarks>
    public static CellKind KindOf(double value) => Math.Abs(value) switch
    {
        double.NaN => CellKind.Missing,
        >= 9.9099e37 and <= 9.9101e37 => CellKind.Missing,
        >= 9.8e37 => CellKind.Overload,
        _ => CellKind.Number,
    };

    private static CellValue WithUnit(string number, string unit, char mark)
    {
        if (unit.Length > 0 && UnitWords.Find(unit) is null)
        {
            return new(CellKind.Word);
        }

        var read = Marks.Read(number, mark);
        return read.Kind != CellKind.Number ? read with { Unit = unit }
            : KindOf(read.Value) == CellKind.Number ? read with { Unit = unit } : new(KindOf(read.Value));
    }

    /// <summary>The part of the cell that is its number, without unit; empty when it does not start with one.</summary>
    public static string NumberPart(string cell)
    {
        string text = cell.Trim();
        return text.Length == 0 ? "" : text[..NumberLength(text)].TrimEnd();
    }

    /// <summary>How much of the text can belong to a number: digits, marks, blanks between digits, an exponent.</summary>
    private static int NumberLength(string text)
    {
        int at = text[0] is '+' or '-' or '\u2212' ? 1 : 0;
        int lastDigit = -1;
        for (; at < text.Length; at++)
        {
            char c = text[at];
            if (char.IsAsciiDigit(c))
            {
                lastDigit = at;
            }
            else if (c is 'e' or 'E' && lastDigit >= 0 && ExponentLength(text, at) is > 0 and int more)
            {
                return at + more;
            }
            else if (c is not ('.' or ',') && !Marks.IsBlankMark(c))
            {
                break;
            }
        }

        return lastDigit < 0 ? 0 : lastDigit + 1 + (lastDigit + 1 < text.Length && text[lastDigit + 1] is '.' or ',' ? 1 : 0);
    }

    private static int ExponentLength(string text, int at)
    {
        int end = at + 1;
        end += end < text.Length && text[end] is '+' or '-' ? 1 : 0;
        int digits = end;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
        {
            end++;
        }

        return end > digits ? end - at : 0;
    }

    private static bool OverWithUnit(string text)
    {
        int blank = text.IndexOf(' ', StringComparison.Ordinal);
        return blank > 0 && Is(Over, text[..blank]) && UnitWords.Find(text[blank..]) is not null;
    }

    private static bool Is(FrozenSet<string> words, string text) => text.Length <= 12 && words.Contains(text);

    private static FrozenSet<string> Set(string[] words) => words.ToFrozenSet(StringComparer.OrdinalIgnoreCase);
}
