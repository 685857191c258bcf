using System.Globalization;

namespace Heatwright.Quantities;

/// <summary>A number as spelled: its value, one step of its last digit, the step that a rough mark stands for, and where it ends.</summary>
internal readonly record struct SpelledNumber(double Value, double Step, double RoughStep, int End);

/// <summary>Reads numbers with any decimal and thousand marks. Where marks leave two meanings, both are given.</summary>
internal static class NumberSpelling
{
    /// <summary>Every reading of an unsigned number that starts here.</summary>
    public static IEnumerable<SpelledNumber> At(string text, int start, DecimalMark mark)
    {
        int plain = PlainEnd(text, start);
        if (plain < 0)
        {
            yield break;
        }

        foreach (var number in From(text, start, plain, text[start..plain], mark))
        {
            yield return number;
        }

        int spaced = SpacedEnd(text, start, plain);
        if (spaced > plain)
        {
            // A space between groups of three is always a thousand mark, so one mark after it is always the decimal one.
            string body = text[start..spaced].Replace(" ", "", StringComparison.Ordinal);
            int at = body.IndexOfAny(['.', ',']);
            var (whole, decimals) = at < 0 ? (body, "") : (body[..at], body[(at + 1)..]);
            foreach (var number in WithPowers(text, spaced, whole, decimals, at >= 0))
            {
                yield return number;
            }
        }
    }

    /// <summary>Unsigned whole number; the end is the start where there is none.</summary>
    public static (int Value, int End) Whole(string text, int start)
    {
        int end = start;
        int value = 0;
        while (Letters.IsDigit(text, end) && end - start < 9)
        {
            value = (value * 10) + (text[end++] - '0');
        }

        return Letters.IsDigit(text, end) ? (0, start) : (value, end);
    }

    private static int PlainEnd(string text, int start)
    {
        int at = start;
        bool any = false;
        while (at < text.Length)
        {
            char c = text[at];
            bool digitNext = Letters.IsDigit(text, at + 1);
            if (char.IsAsciiDigit(c))
            {
                any = true;
            }
            else if (!(c is '.' or ',' && digitNext) && !(c == '\'' && any && digitNext))
            {
                break;
            }

            at++;
        }

        // '5.' is five; the first of two points belongs to a range such as 3..4.
        bool pointEnds = any && at < text.Length && text[at] == '.' && !(at + 1 < text.Length && text[at + 1] == '.')
            && text.AsSpan(start, at - start).IndexOfAny(".,'") < 0;
        return !any ? -1 : pointEnds ? at + 1 : at;
    }

    private static int SpacedEnd(string text, int start, int plain)
    {
        int first = plain - start;
        if (first > 3 || text[start] is '0' or '.' or ',' || text.AsSpan(start, first).IndexOfAnyExceptInRange('0', '9') >= 0)
        {
            return plain;
        }

        int at = plain;
        while (at < text.Length && text[at] == ' ' && Letters.IsDigit(text, at + 1) && Letters.IsDigit(text, at + 2)
            && Letters.IsDigit(text, at + 3) && !Letters.IsDigit(text, at + 4))
        {
            at += 4;
        }

        if (at > plain && at < text.Length && text[at] is '.' or ',' && Letters.IsDigit(text, at + 1))
        {
            for (at++; Letters.IsDigit(text, at); at++)
            {
            }
        }

        return at;
    }

    private static IEnumerable<SpelledNumber> From(string text, int start, int end, string body, DecimalMark mark) =>
        Splits(body, mark).SelectMany(split => WithPowers(text, end, split.Whole, split.Decimals, split.HasMark)
            .Take(split.HasMark || body.All(char.IsAsciiDigit) ? 2 : 1)); // before an exponent stands no thousand mark: 1,234E+01 is 12.34

    /// <summary>Where the decimal mark of this body may stand.</summary>
    private static IEnumerable<(string Whole, string Decimals, bool HasMark)> Splits(string body, DecimalMark mark)
    {
        char[] marks = [.. body.Where(c => !char.IsAsciiDigit(c))];
        char[] kinds = [.. marks.Distinct()];
        if (marks.Length == 0)
        {
            yield return (body, "", false);
        }
        else if (kinds.Length == 1 && marks.Length == 1 && kinds[0] != '\'')
        {
            int at = body.IndexOf(kinds[0], StringComparison.Ordinal);
            bool grouped = AreGroups(body, kinds[0]);
            // A point alone is a decimal point, unless the maker is known to write a comma there.
            bool asThousands = grouped && (kinds[0] == ',' ? mark != DecimalMark.Comma : mark == DecimalMark.Comma);
            bool asDecimals = !(grouped && kinds[0] == ',' && mark == DecimalMark.Point);
            if (asDecimals)
            {
                yield return (body[..at], body[(at + 1)..], true);
            }

            if (asThousands)
            {
                yield return (body.Remove(at, 1), "", false);
            }
        }
        else if (kinds.Length == 1 && AreGroups(body, kinds[0]))
        {
            yield return (string.Concat(body.Where(char.IsAsciiDigit)), "", false);
        }
        else if (kinds.Length == 2 && marks[^1] != '\'' && marks.Count(c => c == marks[^1]) == 1)
        {
            int at = body.LastIndexOf(marks[^1]);
            if (AreGroups(body[..at], marks[0]))
            {
                yield return (string.Concat(body[..at].Where(char.IsAsciiDigit)), body[(at + 1)..], true);
            }
        }
    }

    /// <summary>True where a mark parts the digits as thousands are parted: one to three first, no leading zero, then three each.</summary>
    private static bool AreGroups(string body, char mark)
    {
        string[] groups = body.Split(mark);
        return groups[0].Length is >= 1 and <= 3 && groups[0][0] != '0' && groups.Skip(1).All(group => group.Length == 3);
    }

    private static IEnumerable<SpelledNumber> WithPowers(string text, int end, string whole, string decimals, bool hasMark)
    {
        yield return Build(whole, decimals, hasMark, 0, end);
        int sign = end + 1;
        if (end < text.Length && text[end] is 'e' or 'E')
        {
            int digits = sign < text.Length && text[sign] is '+' or '-' ? sign + 1 : sign;
            var (power, after) = Whole(text, digits);
            bool isCode = digits == sign && text[end] == 'E' && whole.TrimStart('0').Length == 0; // 0E33 is a shunt of 0.33 ohms, not nothing
            if (after > digits && after - digits <= 3 && !isCode)
            {
                yield return Build(whole, decimals, hasMark, text[sign] == '-' ? -power : power, after);
            }
        }
    }

    private static SpelledNumber Build(string whole, string decimals, bool hasMark, int power, int end)
    {
        string spelled = $"{(whole.Length == 0 ? "0" : whole)}.{(decimals.Length == 0 ? "0" : decimals)}E{power.ToString(CultureInfo.InvariantCulture)}";
        double value = double.Parse(spelled, NumberStyles.Float, CultureInfo.InvariantCulture);
        int zeros = hasMark ? 0 : whole.Length - whole.TrimEnd('0').Length;
        bool allZeros = zeros == whole.Length;
        return new(value, Place(power - decimals.Length), Place(power - decimals.Length + (allZeros ? 0 : zeros)), end);
    }

    /// <summary>A power of ten as the nearest double: parsed, because a product of tenths is not.</summary>
    private static double Place(int power) =>
        double.Parse("1E" + power.ToString(CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);
}
