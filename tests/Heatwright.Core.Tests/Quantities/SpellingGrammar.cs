using System.Globalization;
using CsCheck;
using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

/// <summary>Writes values the way makers do, from the value towards the text. Knows nothing of the reader: it only puts characters together.</summary>
internal static class SpellingGrammar
{
    /// <summary>A text, its field, and the value it stands for as an exact decimal in SI units.</summary>
    internal sealed record Spelt(string Text, string Field, decimal Si);

    private static readonly (string Field, string[] Spellings, decimal Factor)[] UnitsByField =
    [
        ("ohms", ["\u03A9", "\u2126", "ohm", "Ohm", "ohms", "R"], 1m),
        ("ohms", ["k\u03A9", "k\u2126", "kohm", "Kohm", "kR", "k", "K"], 1000m),
        ("ohms", ["m\u03A9", "mohm", "mR", "m"], 0.001m),
        ("ohms", ["M\u03A9", "Mohm", "megohm", "M"], 1_000_000m),
        ("volts", ["V", "v", "volt", "volts", ""], 1m),
        ("volts", ["mV", "m V"], 0.001m),
        ("volts", ["\u00B5V", "\u03BCV", "uV"], 0.000001m),
        ("amps", ["A", "amp", "amps", "a"], 1m),
        ("amps", ["mA"], 0.001m),
        ("watts", ["W", "watts", "w"], 1m),
        ("watts", ["kW", "KW"], 1000m),
        ("time", ["s", "sec", "seconds"], 1m),
        ("time", ["min", "minutes"], 60m),
        ("time", ["h", "hours", "hrs"], 3600m),
        ("capacity", ["Ah", "AH"], 3600m),
        ("capacity", ["mAh", "MAH", "mah"], 3.6m),
        ("length", ["mm"], 0.001m),
        ("length", ["in", "inch", "\""], 0.0254m),
        ("seebeck", ["uV/C", "\u00B5V/K", "\u03BCV/\u00B0C", "uV/K"], 0.000001m),
        ("jpk", ["J/K", "J/C", "J/\u00B0C"], 1m),
        ("mass", ["g", "grams"], 0.001m),
    ];

    /// <summary>A plain number: digits, then decimals, in one of the notations that leave no doubt.</summary>
    private static Gen<(string Text, decimal Value)> Numbers =>
        from whole in Gen.Int[0, 99_999]
        from decimals in Gen.Int[0, 5]
        from fraction in Gen.Int[0, 99_999]
        from style in Gen.Int[0, 7]
        select Write(whole, decimals, fraction, style);

    internal static Gen<Spelt> Amounts =>
        from number in Numbers
        from unit in Gen.Int[0, UnitsByField.Length - 1]
        from spelling in Gen.Int[0, 20]
        from space in Gen.Int[0, 3]
        from sign in Gen.Int[0, 5]
        let row = UnitsByField[unit]
        let word = row.Spellings[spelling % row.Spellings.Length]
        let gap = word.Length == 0 ? "" : space switch { 0 => " ", 1 => "\u00A0", _ => "" }
        let minus = sign switch { 0 => "-", 1 => "\u2212", 2 => "+", _ => "" }
        select new Spelt(minus + number.Text + gap + word, row.Field, (minus is "-" or "\u2212" ? -1 : 1) * number.Value * row.Factor);

    /// <summary>4k7: the letter in the place of the point.</summary>
    internal static Gen<Spelt> Codes =>
        from whole in Gen.Int[0, 999]
        from tail in Gen.Int[0, 99]
        from letter in Gen.Int[0, 3]
        let sign = "RKkM"[letter]
        let factor = sign switch { 'R' => 1m, 'M' => 1_000_000m, _ => 1000m }
        let digits = tail.ToString(CultureInfo.InvariantCulture)
        select new Spelt(whole.ToString(CultureInfo.InvariantCulture) + sign + digits, "ohms",
            factor * (whole + (tail / (digits.Length == 1 ? 10m : 100m))));

    private static (string Text, decimal Value) Write(int whole, int decimals, int fraction, int style)
    {
        string front = whole.ToString(CultureInfo.InvariantCulture);
        string back = decimals == 0 ? "" : fraction.ToString("00000", CultureInfo.InvariantCulture)[..decimals];
        decimal value = decimal.Parse(front + "." + (back.Length == 0 ? "0" : back), CultureInfo.InvariantCulture);
        string comma = back.Length == 0 ? "" : "," + back;
        string point = back.Length == 0 ? "" : "." + back;
        return (style switch
        {
            // A comma with three digits behind may be a thousand mark: that spelling is asked back and stands in the hand list.
            0 when back.Length is not (0 or 3) => front + comma,
            1 when front.Length > 3 => Grouped(front, " ") + point,
            2 when front.Length > 3 => Grouped(front, "\u202F") + comma,
            3 when front.Length > 3 && back.Length > 0 => Grouped(front, ".") + comma,
            4 when front.Length > 3 && back.Length > 0 => Grouped(front, ",") + point,
            5 when whole == 0 && back.Length > 0 => point,
            6 when back.Length == 0 => front + ".",
            7 => front + point + "e0",
            _ => front + point,
        }, value);
    }

    private static string Grouped(string digits, string mark) => digits[..^3] + mark + digits[^3..];
}
