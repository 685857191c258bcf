using System.Globalization;

namespace Heatwright.Quantities;

/// <summary>Reads composed units such as W/(m·K), J/kgK, m²/s or 1/K into a factor to SI and a dimension.</summary>
/// <remarks>Products by ·, *, blank; powers by ², ³, ^n; one division may be followed by a bracket or by all that comes after it.
/// Temperatures in composed units are differences: °C and K are the same step.</remarks>
public static class UnitExpression
{
    private static readonly Dimension Length = new(1, 0, 0, 0, 0);
    private static readonly Dimension Power = new(2, 1, -3, 0, 0);
    private static readonly Dimension Current = new(0, 0, 0, 1, 0);
    private static readonly Dimension Time = new(0, 0, 1, 0, 0);

    private static readonly (string Symbol, double Factor, Dimension Dimension)[] Bases =
    [
        ("degC", 1, new(0, 0, 0, 0, 1)), ("°C", 1, new(0, 0, 0, 0, 1)), ("mol", 1, Dimension.None), ("min", 60, Time), ("ohm", 1, Power / Current / Current),
        ("Pa", 1, new(-1, 1, -2, 0, 0)), ("Hz", 1, Dimension.None / Time), ("kg", 1, new(0, 1, 0, 0, 0)), ("K", 1, new(0, 0, 0, 0, 1)), ("W", 1, Power), ("J", 1, Power * Time),
        ("V", 1, Power / Current), ("A", 1, Current), ("Ω", 1, Power / Current / Current), ("F", 1, Current * Time / (Power / Current)), ("H", 1, Power / Current * Time / Current),
        ("C", 1, Current * Time), ("g", 1e-3, new(0, 1, 0, 0, 0)), ("m", 1, Length), ("s", 1, Time), ("h", 3600, Time), ("d", 86400, Time), ("1", 1, Dimension.None), ("%", 0.01, Dimension.None),
    ];

    private static readonly (string Symbol, double Factor)[] Prefixes =
        [("p", 1e-12), ("n", 1e-9), ("µ", 1e-6), ("μ", 1e-6), ("u", 1e-6), ("m", 1e-3), ("c", 1e-2), ("k", 1e3), ("M", 1e6), ("G", 1e9)];

    /// <summary>Factor to SI and dimension, or null where the text is no unit.</summary>
    public static (double Factor, Dimension Dimension)? Read(string text)
    {
        text = text.Trim();
        if (text.Length == 0)
        {
            return (1, Dimension.None);
        }

        int slash = text.IndexOf('/', StringComparison.Ordinal);
        var top = Product(slash < 0 ? text : text[..slash]);
        if (slash < 0 || top is null)
        {
            return top;
        }

        string under = text[(slash + 1)..].Trim();
        if (under.StartsWith('(') && under.EndsWith(')'))
        {
            under = under[1..^1];
        }

        return Product(under) is var (factor, dimension) ? (top.Value.Factor / factor, top.Value.Dimension / dimension) : null;
    }

    /// <summary>A number with a composed unit, in SI; a bare number is taken in the expected unit. Null where it is none, or of another kind.</summary>
    public static double? Amount(string text, string expected)
    {
        int end = 0;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] is '.' or ',' or '-' or '+' || (text[end] is 'e' or 'E' && end + 1 < text.Length && (char.IsAsciiDigit(text[end + 1]) || text[end + 1] is '-' or '+'))))
        {
            end++;
        }

        string digits = text[..end];
        string number = digits.Contains('.', StringComparison.Ordinal) ? digits : digits.Replace(',', '.');
        return double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && Read(expected) is var (own, kind)
            ? text[end..].Trim() is { Length: > 0 } typed
                ? Read(typed) is var (factor, dimension) && dimension == kind ? value * factor : null
                : value * own
            : null;
    }

    private static (double Factor, Dimension Dimension)? Product(string text)
    {
        double factor = 1;
        var dimension = Dimension.None;
        string left = text.Replace("·", "", StringComparison.Ordinal).Replace("*", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal);
        while (left.Length > 0)
        {
            if (Take(left) is not var (size, of, used))
            {
                return null;
            }

            left = left[used..];
            double power = Power1(ref left);
            factor *= Math.Pow(size, power);
            dimension = power == 0.5 ? dimension : Enumerable.Range(0, (int)Math.Abs(power)).Aggregate(dimension, (sum, _) => power > 0 ? sum * of : sum / of);
        }

        return (factor, dimension);
    }

    /// <summary>The unit at the head of the text: plain before prefixed, so that m is metre and min is minute.</summary>
    private static (double Factor, Dimension Dimension, int Used)? Take(string text)
    {
        foreach (var (symbol, factor, dimension) in Bases)
        {
            if (text.StartsWith(symbol, StringComparison.Ordinal) && !(symbol is "m" && Prefixed(text)))
            {
                return (factor, dimension, symbol.Length);
            }
        }

        foreach (var (prefix, size) in Prefixes)
        {
            foreach (var (symbol, factor, dimension) in Bases)
            {
                if (symbol is not ("1" or "%" or "kg" or "min" or "d" or "h") && text.StartsWith(prefix + symbol, StringComparison.Ordinal))
                {
                    return (size * factor, dimension, prefix.Length + symbol.Length);
                }
            }
        }

        return null;
    }

    /// <summary>An m that stands before another unit without a sign between is milli when it opens the text: mm, mV, mJ; but m·K is written with its dot.</summary>
    private static bool Prefixed(string text) => text.Length > 1 && text[1] is 'm' or 'V' or 'A' or 'W' or 's' or 'Ω' or 'g' or 'J' or 'H' or 'F';

    private static double Power1(ref string left)
    {
        if (left.StartsWith('²'))
        {
            left = left[1..];
            return 2;
        }

        if (left.StartsWith('³'))
        {
            left = left[1..];
            return 3;
        }

        if (left.StartsWith("^½", StringComparison.Ordinal) || left.StartsWith('½'))
        {
            left = left.TrimStart('^')[1..];
            return 0.5;
        }

        if (left.StartsWith('^') && left.Length > 1 && char.IsAsciiDigit(left[1]))
        {
            double power = left[1] - '0';
            left = left[2..];
            return power;
        }

        if (left.Length > 0 && left[0] is '2' or '3')
        {
            double power = left[0] - '0';
            left = left[1..];
            return power;
        }

        return 1;
    }
}
