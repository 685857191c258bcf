using System.Globalization;

namespace Heatwright.Logs;

/// <summary>A finger on the text of a time cell.</summary>
internal ref struct TimeScan(ReadOnlySpan<char> text)
{
    private readonly ReadOnlySpan<char> text = text;
    private int at;

    public readonly bool AtEnd => at >= text.Length;

    public readonly char Peek => at < text.Length ? text[at] : '\0';

    public char Take() => at < text.Length ? text[at++] : '\0';

    public bool Skip(char c)
    {
        if (Peek != c)
        {
            return false;
        }

        at++;
        return true;
    }

    public void SkipAny(string chars)
    {
        while (at < text.Length && chars.Contains(text[at], StringComparison.Ordinal))
        {
            at++;
        }
    }

    /// <summary>What may stand between a date and a clock.</summary>
    public bool SkipBetween()
    {
        int from = at;
        SkipAny(" T,_;");
        return at > from;
    }

    public bool Digits(int atLeast, int atMost, out int value, out int length)
    {
        int from = at;
        value = 0;
        while (at < text.Length && char.IsAsciiDigit(text[at]) && at - from < atMost)
        {
            value = (value * 10) + text[at++] - '0';
        }

        length = at - from;
        return length >= atLeast && !char.IsAsciiDigit(Peek);
    }

    public bool Decimal(out double value)
    {
        int from = at;
        while (at < text.Length && (char.IsAsciiDigit(text[at]) || text[at] is '.' or ','))
        {
            at++;
        }

        return double.TryParse(text[from..at].ToString().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out value);
    }

    /// <summary>Up to three letters of a word in lower case; the rest of the word is passed over.</summary>
    public string Letters()
    {
        int from = at;
        while (at < text.Length && char.IsAsciiLetter(text[at]))
        {
            at++;
        }

        return at - from is >= 3 and <= 9 ? text.Slice(from, 3).ToString().ToLowerInvariant() : "";
    }

    /// <summary>A fraction of the last field: .141, ,141 or :141.</summary>
    public double Fraction(out bool had)
    {
        int from = at;
        had = false;
        if (Peek is not ('.' or ',' or ':') || at + 1 >= text.Length || !char.IsAsciiDigit(text[at + 1]))
        {
            return 0;
        }

        at++;
        long value = 0;
        double scale = 1;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            if (scale < 1e15)
            {
                value = (value * 10) + text[at] - '0';
                scale *= 10;
            }

            at++;
        }

        had = at > from;
        return value / scale;
    }

    public bool Half(out bool afternoon)
    {
        var rest = text[at..];
        afternoon = rest.Length > 0 && rest[0] is 'p' or 'P';
        if (rest.Length == 0 || rest[0] is not ('a' or 'A' or 'p' or 'P'))
        {
            return false;
        }

        int m = rest.Length > 1 && rest[1] == '.' ? 2 : 1;
        if (rest.Length <= m || rest[m] is not ('m' or 'M'))
        {
            return false;
        }

        at += m + 1;
        Skip('.');
        return true;
    }

    public bool Offset(out double seconds)
    {
        seconds = 0;
        bool named = text[at..].StartsWith("UTC", StringComparison.OrdinalIgnoreCase) || text[at..].StartsWith("GMT", StringComparison.OrdinalIgnoreCase);
        at += named ? 3 : 0;
        if (!named && (Skip('Z') || Skip('z')))
        {
            return true;
        }

        int sign = Peek is '-' or '\u2212' ? -1 : Peek == '+' ? 1 : 0;
        if (sign == 0)
        {
            return named;
        }

        at++;
        if (!Digits(1, 4, out int hours, out int length))
        {
            return false;
        }

        int minutes = 0;
        if (length == 4)
        {
            (hours, minutes) = (hours / 100, hours % 100);
        }
        else if (Skip(':') && !Digits(2, 2, out minutes, out _))
        {
            return false;
        }

        seconds = sign * ((hours * 3600.0) + (minutes * 60.0));
        return hours <= 14 && minutes < 60;
    }
}
