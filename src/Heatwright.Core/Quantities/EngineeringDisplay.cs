using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Heatwright.Quantities;

/// <summary>A column of numbers in one common unit, for tables and axes.</summary>
/// <param name="Unit">The unit to stand in the heading.</param>
/// <param name="Cells">Value ± standard doubt of each, without unit.</param>
public sealed record ColumnText(Unit Unit, IReadOnlyList<string> Cells);

/// <summary>Numbers with engineering prefixes, grouped digits, and in plain ASCII.</summary>
public static partial class Display
{
    /// <summary>The narrow space that does not break; it parts groups of three digits.</summary>
    private const char Thin = '\u202F';

    /// <summary>From here on digits are grouped: four digits are still read at a glance.</summary>
    private const int DigitsToGroup = 5;

    /// <summary>Value ± standard doubt with the prefix that leaves 1 to 999 before the point.</summary>
    public static string Engineering(Estimate estimate) => Engineering(estimate.Value, estimate.StandardDoubt, estimate.Unit);

    /// <summary>Value ± standard doubt with the prefix that leaves 1 to 999 before the point; units without prefixes keep theirs.</summary>
    public static string Engineering(double value, double standardDoubt, Unit unit)
    {
        var shown = SiPrefix.For(unit, Size(value, standardDoubt));
        string suffix = shown.Symbol.Length == 0 ? "" : "\u00A0" + shown.Symbol;
        return Cell(value, standardDoubt, unit, shown) + suffix;
    }

    /// <summary>A whole column under one prefix, chosen for its largest number.</summary>
    public static ColumnText Column(IReadOnlyList<(double Value, double StandardDoubt)> numbers, Unit unit)
    {
        double largest = numbers.Select(number => Size(number.Value, number.StandardDoubt)).Where(double.IsFinite).DefaultIfEmpty(0).Max();
        var shown = SiPrefix.For(unit, largest);
        return new(shown, [.. numbers.Select(number => Cell(number.Value, number.StandardDoubt, unit, shown))]);
    }

    /// <summary>The same text in plain ASCII, for terminals and code: +- for ±, ohm for Ω, u for µ, no grouping.</summary>
    public static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (char c in PowerOfTen().Replace(text, "e"))
        {
            plain.Append(c switch
            {
                '±' => "+-",
                '\u2212' or '\u2013' => "-",
                'Ω' or '\u2126' => "ohm",
                'µ' or '\u03BC' => "u",
                '°' => "deg",
                '⁻' => "-",
                _ when Powers.IndexOf(c, StringComparison.Ordinal) is >= 0 and var digit => digit.ToString(CultureInfo.InvariantCulture),
                '·' or '×' => "*",
                'Δ' => "delta ",
                '\u2264' => "<=",
                '\u2265' => ">=",
                Thin or '\u2009' => "",
                '\u00A0' => " ",
                _ when char.IsAscii(c) => c.ToString(),
                _ => "?",
            });
        }

        return plain.ToString();
    }

    [GeneratedRegex("×10(?=[⁻⁰¹²³⁴⁵⁶⁷⁸⁹])")]
    private static partial Regex PowerOfTen();

    private static string Cell(double value, double doubt, Unit unit, Unit shown)
    {
        double ratio = unit.Factor / shown.Factor;
        return doubt > 0
            ? $"{Grouped(Number(value * ratio, doubt * ratio))}\u00A0±\u00A0{Grouped(Number(doubt * ratio, doubt * ratio))}"
            : Grouped(Significant(value * ratio, 4));
    }

    /// <summary>The larger of value and doubt, rounded as it will be shown: 999.7 ± 12 is shown as 1000 and belongs under the next prefix.</summary>
    private static double Size(double value, double doubt)
    {
        double size = Math.Max(Math.Abs(value), doubt);
        if (size == 0 || !double.IsFinite(size))
        {
            return 0;
        }

        double step = doubt > 0 ? Math.Pow(10, -PlaceOf(doubt)) : Math.Pow(10, Math.Floor(Math.Log10(size)) - 3);
        return Math.Round(size / step, MidpointRounding.AwayFromZero) * step is var rounded && rounded > 0 ? rounded : size;
    }

    /// <summary>Digits before the point in groups of three, from ten thousand on.</summary>
    private static string Grouped(string number)
    {
        int start = number.StartsWith('\u2212') ? 1 : 0;
        int point = number.IndexOf('.', StringComparison.Ordinal);
        int end = point < 0 ? number.Length : point;
        if (end - start < DigitsToGroup || !number.AsSpan(start, end - start).ContainsOnlyDigits())
        {
            return number;
        }

        var grouped = new StringBuilder(number);
        for (int at = end - 3; at > start; at -= 3)
        {
            grouped.Insert(at, Thin);
        }

        return grouped.ToString();
    }

    private static bool ContainsOnlyDigits(this ReadOnlySpan<char> text) => text.IndexOfAnyExceptInRange('0', '9') < 0;
}
