using System.Buffers;
using System.Globalization;

namespace Heatwright.Logs;

/// <summary>Decimal and thousands marks: what one number proves, and a number read with a given decimal mark.</summary>
internal static class Marks
{
    private static readonly SearchValues<char> Exponential = SearchValues.Create("+-0123456789eE");

    /// <summary>Blanks and apostrophes that may stand between groups of three digits.</summary>
    public static bool IsBlankMark(char c) => c is ' ' or '\u00A0' or '\u2009' or '\u202F' or '\'' or '\u2019';

    /// <summary>Which decimal mark this number proves: '.' or ','; '?' when it holds one mark that could be either; '\0' when it proves nothing.</summary>
    public static char Proof(string number)
    {
        int dots = number.Count(c => c == '.'), commas = number.Count(c => c == ',');
        if (dots + commas == 0)
        {
            return '\0';
        }

        if (dots > 0 && commas > 0)
        {
            return number.LastIndexOf('.') > number.LastIndexOf(',') ? '.' : ',';
        }

        if (dots + commas > 1)
        {
            return dots > 1 ? ',' : '.';
        }

        char mark = dots > 0 ? '.' : ',';
        return Open(number, number.IndexOf(mark, StringComparison.Ordinal)) ? '?' : mark;
    }

    /// <summary>Could the mark here part thousands? Only with one to three digits before it, no leading nought, and just three digits behind.</summary>
    private static bool Open(string number, int at)
    {
        int start = number[0] is '+' or '-' or '\u2212' ? 1 : 0;
        return at - start is >= 1 and <= 3 && number[start] != '0' && number.Length - at == 4 && number.AsSpan(at + 1).IndexOfAnyExceptInRange('0', '9') < 0
            && number.AsSpan(start, at - start).IndexOfAnyExceptInRange('0', '9') < 0;
    }

    /// <summary>Reads a number; with no decimal mark given, one that could be either is undecided.</summary>
    public static CellValue Read(string number, char mark)
    {
        char proof = Proof(number);
        // A cell that proves its own mark is read by it: 12,5 is never 125.
        char decimalMark = proof is '.' or ',' ? proof : mark;
        if (proof == '?' && mark == '\0')
        {
            return new(CellKind.Undecided);
        }

        char thousands = decimalMark == ',' ? '.' : ',';
        string plain = number.Replace('\u2212', '-');
        // Hand meters send the sign apart from the digits: "-  1.5".
        plain = plain[0] is '+' or '-' && plain.Length > 1 && char.IsWhiteSpace(plain[1]) ? plain[0] + plain[1..].TrimStart() : plain;
        int point = plain.LastIndexOf(decimalMark);
        string whole = point >= 0 ? plain[..point] : plain;
        return Groups(ref whole, thousands) && double.TryParse(
            point >= 0 ? whole + "." + plain[(point + 1)..] : whole, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            ? new(CellKind.Number, value) : new(CellKind.Word);
    }

    /// <summary>Takes the thousands marks out, if each is followed by three digits and they are all alike.</summary>
    private static bool Groups(ref string whole, char thousands)
    {
        int first = whole.AsSpan().IndexOfAnyExcept(Exponential);
        if (first < 0)
        {
            return true;
        }

        char mark = whole[first];
        string[] groups = whole.TrimStart('+', '-').Split(mark);
        bool fine = (mark == thousands || IsBlankMark(mark)) && groups[0].Length is >= 1 and <= 3
            && groups.Skip(1).All(group => group.Length == 3 && group.All(char.IsAsciiDigit)) && groups[0].All(char.IsAsciiDigit);
        whole = whole.Replace(mark.ToString(), "", StringComparison.Ordinal);
        return fine;
    }
}
