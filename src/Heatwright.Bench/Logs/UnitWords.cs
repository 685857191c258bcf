using System.Collections.Frozen;
using System.Text.RegularExpressions;
using Heatwright.Quantities;

namespace Heatwright.Logs;

/// <summary>Recognises units as log headers and meters write them: degC, ( mV ), Ohm, V DC, kWhr/m^2, Wh m-2.</summary>
internal static partial class UnitWords
{
    private sealed record Atom(string Symbol, Dimension Dimension, double Factor, double Offset, bool Prefixes, string[] Spellings);

    /// <summary>No unit with brackets and blanks around it is longer; what garbage holds may be, and is not searched.</summary>
    private const int LongestText = 64;

    private static readonly Dimension Length = new(1, 0, 0, 0, 0);
    private static readonly Dimension Mass = new(0, 1, 0, 0, 0);
    private static readonly Dimension Time = new(0, 0, 1, 0, 0);
    private static readonly Dimension Current = new(0, 0, 0, 1, 0);
    private static readonly Dimension Heat = new(0, 0, 0, 0, 1);
    private static readonly Dimension Force = Mass * Length / Time / Time;
    private static readonly Dimension Pressure = Force / Length / Length;
    private static readonly Dimension Energy = Force * Length;
    private static readonly Dimension Power = Energy / Time;
    private static readonly Dimension Volts = Power / Current;

    /// <remarks>Factors: SI brochure (BIPM, 9th edition, 2019), tables 4, 5, 7 and 8; °F from t[°C] = (t[°F] − 32)·5/9.</remarks>
    private static readonly Atom[] Atoms =
    [
        new("V", Volts, 1, 0, true, ["V", "volt", "volts"]),
        new("A", Current, 1, 0, true, ["A", "amp", "amps", "ampere", "amperes"]),
        new("Ω", Volts / Current, 1, 0, true, ["Ω", "\u2126", "ohm", "ohms"]),
        new("W", Power, 1, 0, true, ["W", "watt", "watts"]),
        new("J", Energy, 1, 0, true, ["J", "joule", "joules"]),
        new("Wh", Energy, 3600, 0, true, ["Wh", "Whr", "W·h"]),
        new("Ah", Current * Time, 3600, 0, true, ["Ah", "Ahr", "A·h"]),
        new("s", Time, 1, 0, true, ["s", "sec", "secs", "second", "seconds", "sekunde", "sekunden", "seconde", "secondes"]),
        new("min", Time, 60, 0, false, ["min", "mins", "minute", "minutes", "minuten"]),
        new("h", Time, 3600, 0, false, ["h", "hr", "hrs", "hour", "hours", "std", "stunde", "stunden"]),
        new("d", Time, 86400, 0, false, ["day", "days"]),
        new("m", Length, 1, 0, true, ["m", "metre", "metres", "meter", "meters"]),
        new("g", Mass, 1e-3, 0, true, ["g", "gram", "grams"]),
        new("N", Force, 1, 0, true, ["N", "newton"]),
        new("Pa", Pressure, 1, 0, true, ["Pa", "pascal"]),
        new("bar", Pressure, 1e5, 0, true, ["bar"]),
        new("Hz", Dimension.None / Time, 1, 0, true, ["Hz", "hertz"]),
        new("K", Heat, 1, 0, true, ["K", "kelvin"]),
        new("°C", Heat, 1, Units.ZeroCelsiusK, false, ["°C", "ºC", "˚C", "℃", "degC", "deg.C", "celsius", "degcelsius", "oC", "gradC"]),
        new("°F", Heat, 5.0 / 9, 459.67 * 5 / 9, false, ["°F", "ºF", "℉", "degF", "deg.F", "fahrenheit"]),
        new("%", Dimension.None, 0.01, 0, false, ["%", "percent", "pct", "%rh", "rh%", "%rF", "%r.h."]),
        new("F", Current * Time / Volts, 1, 0, true, ["farad"]),
        new("H", Volts * Time / Current, 1, 0, true, ["henry"]),
        new("deg", Dimension.None, Math.PI / 180, 0, false, ["deg", "degree", "degrees"]),
        new("rad", Dimension.None, 1, 0, false, ["rad"]),
        new("rpm", Dimension.None / Time, 1.0 / 60, 0, false, ["rpm", "1/min"]),
        new("l", Length * Length * Length, 1e-3, 0, true, ["l", "L"]),
        new("C", Current * Time, 1, 0, false, ["coulomb", "coulombs"]),
    ];

    private static readonly (string Text, string Symbol, double Factor)[] Prefixes =
    [
        ("p", "p", 1e-12), ("n", "n", 1e-9), ("u", "µ", 1e-6), ("µ", "µ", 1e-6), ("μ", "µ", 1e-6), ("m", "m", 1e-3), ("c", "c", 1e-2),
        ("h", "h", 1e2), ("k", "k", 1e3), ("K", "k", 1e3), ("M", "M", 1e6), ("G", "G", 1e9),
        ("milli", "m", 1e-3), ("micro", "µ", 1e-6), ("kilo", "k", 1e3), ("mega", "M", 1e6),
    ];

    /// <summary>Words that mean the same in any case; those shorter than three letters only as written.</summary>
    private static readonly FrozenDictionary<string, Unit> AnyCase = Table(length => length >= 3, StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenDictionary<string, Unit> Exact = Table(_ => true, StringComparer.Ordinal);

    /// <summary>The unit that this text means, or null; a bare C is °C and a bare F is °F, as on any log of a heated tool.</summary>
    public static Unit? Find(string text)
    {
        if (text.Length > LongestText)
        {
            return null;
        }

        if (Exact.TryGetValue(text, out var plain))
        {
            return plain;
        }

        string word = Kind().Replace(text.Trim().TrimStart('~', '=', '⎓', '[', '(').TrimEnd(']', ')').Trim(), "$1$2");
        if (word.Length is 0 or > 24)
        {
            return null;
        }

        string close = word.Replace(" ", "", StringComparison.Ordinal);
        return close switch
        {
            "C" => Units.Celsius,
            "F" => Exact["°F"],
            "uF" or "µF" or "μF" or "nF" or "pF" or "mF" => Exact[close[..1] + "farad"],
            "S" => Units.Second,
            // Sketches on small controllers write them without capitals; nobody logs milli-atoms.
            "mv" => Exact["mV"],
            "ma" => Exact["mA"],
            "mw" => Exact["mW"],
            "mah" => Exact["mAh"],
            "mwh" => Exact["mWh"],
            _ => One(close) ?? Compound(word),
        };
    }

    /// <summary>True where the text could only be a unit, even without anything around it.</summary>
    public static bool IsPlainly(string text) => Find(text) is not null && (text.Trim().Length > 1 || text.Trim() is "V" or "A" or "W" or "Ω" or "%" or "s" or "K");

    private static Unit? One(string word) => Exact.GetValueOrDefault(word) ?? (word.Length >= 3 ? AnyCase.GetValueOrDefault(word) : null)
        ?? (word.Length >= 4 && word[0] is 'm' or 'M' ? Exact.GetValueOrDefault(word[0] + word[1..].ToLowerInvariant()) : null);

    /// <summary>Quotients and products of units with powers: W/m^2, Wh m-2, J/(kg K) without its brackets.</summary>
    private static Unit? Compound(string word)
    {
        var dimension = Dimension.None;
        double factor = 1;
        bool below = false;
        var parts = Part().Matches(word);
        if (parts.Count < 2 && word[^1] is not ('2' or '²' or '3')
            && !word.StartsWith("1/", StringComparison.Ordinal))
        {
            return null;
        }

        int covered = 0;
        foreach (Match part in parts)
        {
            covered += part.Length;
            below |= part.Groups["over"].Value.Contains('/', StringComparison.Ordinal);
            if (One(part.Groups["unit"].Value) is not { IsLevel: false } unit)
            {
                return null;
            }

            int power = Power10(part.Groups["power"].Value) * (below ? -1 : 1);
            for (int i = 0; i < Math.Abs(power); i++)
            {
                dimension = power > 0 ? dimension * unit.Dimension : dimension / unit.Dimension;
                factor = power > 0 ? factor * unit.Factor : factor / unit.Factor;
            }
        }

        return covered + (word.StartsWith("1/", StringComparison.Ordinal) ? 1 : 0) == word.Length ? Units.Find(word) ?? new Unit(word, dimension, factor) : null;
    }

    private static int Power10(string power) => power.TrimStart('^') switch
    {
        "" or "1" => 1,
        "2" or "²" => 2,
        "3" or "³" => 3,
        "-1" => -1,
        "-2" => -2,
        _ => -3,
    };

    private static FrozenDictionary<string, Unit> Table(Func<int, bool> wanted, StringComparer comparer)
    {
        var table = new Dictionary<string, Unit>(comparer);
        foreach (var atom in Atoms)
        {
            foreach (string spelling in atom.Spellings.Where(spelling => wanted(spelling.Length)))
            {
                table[spelling] = Known(atom.Symbol, atom, 1);
            }
        }

        foreach (var (atom, prefix, spelling) in from atom in Atoms
                                                 where atom.Prefixes
                                                 from prefix in Prefixes
                                                 from spelling in atom.Spellings
                                                 where wanted(spelling.Length) && (comparer == StringComparer.Ordinal || prefix.Text is not ("m" or "M"))
                                                 select (atom, prefix, spelling))
        {
            table.TryAdd(prefix.Text + spelling, Known(prefix.Symbol + atom.Symbol, atom, prefix.Factor));
        }

        return table.ToFrozenDictionary(comparer);
    }

    private static Unit Known(string symbol, Atom atom, double prefix) =>
        Units.Find(symbol) ?? new Unit(symbol, atom.Dimension, atom.Factor * prefix, atom.Offset);

    /// <summary>What kind of volt or ampere it is does not change the unit: V DC, mV AC, DCV, Vrms.</summary>
    [GeneratedRegex(@"^(?:(?:DC|AC)\s*(?=[munµμk]?[VA]$))?(.*?)(?:(?<=[VvA])\s+(?:AC\+DC|DC|AC|RMS|rms|dc|ac)|(?<=V)(?:DC|AC|rms))?()$", RegexOptions.CultureInvariant)]
    private static partial Regex Kind();

    [GeneratedRegex(@"(?<over>[/*·. ]*)(?<unit>[%°A-Za-zµμΩ\u2126]+)(?<power>\^?-?[123]|[²³])?", RegexOptions.CultureInvariant)]
    private static partial Regex Part();
}
