using System.Globalization;

namespace Heatwright.Quantities;

/// <summary>Rounds once, at the edge: two digits of doubt and the value to match.</summary>
public static partial class Display
{
    private const int MostPlaces = 60;

    private const string Powers = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    /// <summary>Value ± standard doubt and unit; the doubt to two digits, the value to the same place.</summary>
    public static string Rounded(Estimate estimate) => Rounded(estimate.Value, estimate.StandardDoubt, estimate.Unit);

    /// <summary>Value ± standard doubt and unit.</summary>
    public static string Rounded(double value, double standardDoubt, Unit unit)
    {
        string suffix = Behind(unit);
        return standardDoubt > 0
            ? $"{Number(value, standardDoubt)}\u00A0±\u00A0{Number(standardDoubt, standardDoubt)}{suffix}"
            : $"{Significant(value, 4)}{suffix}";
    }

    /// <summary>A count ± standard doubt in whole pieces; a doubt that is there is told as 1 at least.</summary>
    public static string Counted(double value, double standardDoubt) =>
        standardDoubt > 0 ? $"{ToPlace(value, 0)}\u00A0±\u00A0{ToPlace(Math.Max(1, standardDoubt), 0)}" : Significant(value, 4);

    /// <summary>A unit as it stands behind a number. Whose money it is nobody knows, and 'money' is no word on a bill: a price is a bare number.</summary>
    public static string Behind(Unit unit) => Behind(unit.Symbol);

    /// <summary>The same by the unit's symbol.</summary>
    public static string Behind(string symbol) => symbol.Length == 0 || symbol == Units.Money.Symbol ? "" : "\u00A0" + symbol;

    /// <summary>The value alone, to the place that its doubt allows; four digits where there is no doubt.</summary>
    public static string Value(double value, double standardDoubt) =>
        standardDoubt > 0 ? Number(value, standardDoubt) : Significant(value, 4);

    /// <summary>A typed value spelled so that it reads back as itself in its field: plain ASCII, every digit, no thousand marks.</summary>
    public static string Spelled(TypedValue value, Expect expect) => TypedText.Of(value, expect);

    /// <summary>A number to so many significant digits, without a power of ten between 1e-4 and 1e7.</summary>
    public static string Significant(double value, int digits)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return value == 0 ? "0" : value.ToString(CultureInfo.InvariantCulture);
        }

        if (Math.Abs(value) is < 1e-4 or >= 1e7)
        {
            int power = (int)Math.Floor(Math.Log10(Math.Abs(value)));
            string mantissa = Significant(value / Math.Pow(10, power), digits);
            return mantissa.TrimStart('\u2212') == "10" ? $"{mantissa[..^1]}×10{Raised(power + 1)}" : $"{mantissa}×10{Raised(power)}";
        }

        int place = digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        return ToPlace(value, place).TrimTrailingZeros();
    }

    private static string Number(double value, double doubt) => ToPlace(value, PlaceOf(doubt));

    /// <summary>Decimals that show a doubt with two digits.</summary>
    private static int PlaceOf(double doubt)
    {
        int place = 1 - (int)Math.Floor(Math.Log10(doubt));
        double rounded = Math.Round(doubt * Math.Pow(10, place), MidpointRounding.AwayFromZero);
        return rounded >= 100 ? place - 1 : place; // 0.0996 rounds up to 0.10, one place fewer
    }

    private static string ToPlace(double value, int place)
    {
        if (place < 0)
        {
            double unit = Math.Pow(10, -place);
            value = Math.Round(value / unit, MidpointRounding.AwayFromZero) * unit;
        }

        string text = value.ToString("F" + Math.Clamp(place, 0, MostPlaces).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        bool isNothing = text.All(c => c is '-' or '0' or '.');
        return isNothing ? text.TrimStart('-') : text.Replace('-', '\u2212'); // nothing has no sign
    }

    private static string Raised(int power) => string.Concat(power.ToString(CultureInfo.InvariantCulture).Select(c => c == '-' ? '⁻' : Powers[c - '0']));

    private static string TrimTrailingZeros(this string text) =>
        text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
}
