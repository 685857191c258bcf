using System.Text;

namespace Heatwright.Quantities;

/// <summary>Every spelling of every unit that a bench knows, and what it may stand for.</summary>
internal static class UnitSpelling
{
    private const int LongestWord = 20;

    private static readonly Unit Foot = new("ft", Units.Metre.Dimension, 0.3048);
    // 28.349523125 g: the avoirdupois pound of 0.45359237 kg, exact by the yard and pound agreement of 1959, over 16.
    private static readonly Unit Ounce = new("oz", Units.Kilogram.Dimension, 0.028349523125);
    // One ounce of copper on a square foot is called 35 µm: common practice, no source.
    private static readonly Unit CopperOunce = new("oz copper", Units.Metre.Dimension, 35e-6);
    private static readonly Unit PartsPerMillion = new("ppm", Dimension.None, 1e-6);

    private static readonly Dictionary<string, List<UnitWord>> Exact = new(StringComparer.Ordinal);
    private static readonly Dictionary<string, List<UnitWord>> Loose = new(StringComparer.OrdinalIgnoreCase);

    static UnitSpelling()
    {
        Family(Units.Volt, "nµmk", "V", "volt", "volts");
        Family(Units.Ampere, "nµmk", "A", "amp", "amps", "ampere", "amperes");
        Family(Units.Ohm, "µmkMG", "Ω", "ohm", "ohms", "Ohm", "Ohms", "R");
        Family(Units.Watt, "nµmk", "W", "watt", "watts");
        Family(Units.Joule, "mkM", "J", "joule", "joules");
        Family(Units.WattHour, "mk", "Wh", "watthour", "watthours");
        Family(Units.AmpereHour, "m", "Ah", "amphour", "amphours");
        Family(Units.Second, "nµm", "s", "sec", "secs", "second", "seconds");
        Family(Units.Hertz, "mkMG", "Hz");
        Family(Units.Metre, "nµm", "m", "metre", "metres", "meter", "meters");
        Family(Units.Gram, "mk", "g", "gram", "grams");
        Family(Units.Farad, "pnµm");
        Family(Units.Henry, "nµm", "H");
        foreach (string letter in new[] { "p", "n", "µ", "m" })
        {
            Add(UnitWord.Of(SiPrefix.Of(Units.Farad, letter)), letter + "F"); // a bare F is Fahrenheit, except in a field of farads
        }

        Add(UnitWord.Of(SiPrefix.Of(Units.Volt, "M")), "MV");
        Add(UnitWord.Of(SiPrefix.Of(Units.Ampere, "M")), "MA");
        Add(UnitWord.Of(SiPrefix.Of(Units.Watt, "M")), "MW");
        Add(UnitWord.Of(SiPrefix.Of(Units.Farad, "µ")), "uF");
        Add(UnitWord.Of(Units.Minute), "min", "mins", "minute", "minutes", "m");
        Add(UnitWord.Of(Units.Hour), "h", "hr", "hrs", "hour", "hours");
        Add(UnitWord.Of(Units.Day), "d", "day", "days");
        Add(UnitWord.Of(Units.Centimetre), "cm");
        Add(UnitWord.Of(Units.Inch), "in", "inch", "inches", "\"");
        Add(UnitWord.Of(Units.Mil), "mil", "mils", "thou");
        Add(UnitWord.Of(Foot), "ft", "foot", "feet");
        Add(UnitWord.Of(Units.SquareMetre), "m2", "sqm");
        Add(UnitWord.Of(Units.SquareCentimetre), "cm2", "sqcm");
        Add(UnitWord.Of(Units.SquareMillimetre), "mm2", "sqmm");
        Add(UnitWord.Of(Ounce), "oz", "ounce", "ounces");
        Add(UnitWord.Of(CopperOunce), "oz", "ozcopper", "oz/ft2", "ounce", "ounces");
        Add(UnitWord.Of(Units.Lumen), "lm", "lumen", "lumens");
        Add(UnitWord.Of(Units.Percent), "%", "percent");
        Add(UnitWord.Of(PartsPerMillion), "ppm");
        Add(UnitWord.Of(Units.PerKelvin), "1/K", "1/°C", "1/C");
        Add(UnitWord.Of(Units.PerHour), "1/h", "C-rate", "Crate");
        Add(UnitWord.Of(UnitWordKind.Celsius), "°C", "degC", "degreesC", "degreeC", "celsius", "°", "deg", "degrees");
        Add(UnitWord.Of(UnitWordKind.LetterC), "C");
        Add(UnitWord.Of(UnitWordKind.Fahrenheit), "°F", "degF", "degreesF", "fahrenheit", "F");
        Add(UnitWord.Of(UnitWordKind.Kelvin), "K", "kelvin", "kelvins", "°K");
        foreach (var (letter, spellings) in new[] { ("n", "n"), ("µ", "u µ"), ("m", "m"), ("k", "k K"), ("M", "M meg mega"), ("G", "G") })
        {
            foreach (string spelling in spellings.Split(' '))
            {
                Add(UnitWord.Prefix(letter), spelling);
            }
        }
    }

    /// <summary>Every unit word that may stand here, its own case of letters first; case is let go only where that gives nothing.</summary>
    public static List<UnitWord> At(string text, int start, Expect expect, bool loose)
    {
        var words = new List<UnitWord>();
        var key = new StringBuilder();
        for (int at = start; at < text.Length && at - start < LongestWord; at++)
        {
            if (text[at] != ' ')
            {
                key.Append(text[at]);
            }

            if (text[at] == ' ' || !(Letters.EndsWord(text, at + 1) || text[at] == '"' || IsCurrentKind(text, at + 1)))
            {
                continue;
            }

            string spelled = key.ToString();
            int end = at + 1;
            words.AddRange(Own(spelled, expect).Select(word => word with { End = end }));
            var known = Known(spelled, expect, loose);
            words.AddRange(known.Select(word => word with { End = end }));
            words.AddRange(CompoundUnit.After(known, text, end));
        }

        words.AddRange(CompoundUnit.After([UnitWord.None(start)], text, start));
        return words;
    }

    /// <summary>'VDC' ends its unit before DC.</summary>
    private static bool IsCurrentKind(string text, int at) => Letters.After(text, at, "DC") >= 0 || Letters.After(text, at, "AC") >= 0;

    private static IReadOnlyList<UnitWord> Known(string spelled, Expect expect, bool loose)
    {
        var exact = Spelled(spelled);
        return loose && Loose.TryGetValue(spelled, out var any) && !exact.Any(word => UnitScale.Fits(word, expect)) ? any : exact;
    }

    /// <summary>Simple units spelled exactly so, for denominators.</summary>
    public static IReadOnlyList<UnitWord> Spelled(string spelled) => Exact.TryGetValue(spelled, out var known) ? known : [];

    /// <summary>The field's own symbols, with and without prefixes, always stand for themselves, also those that no bench list knows.</summary>
    private static IEnumerable<UnitWord> Own(string spelled, Expect expect) =>
        expect.Units.Concat(expect.Units.SelectMany(SiPrefix.FamilyOf)).Where(unit => Key(unit.Symbol) == spelled || Key(Plain(unit.Symbol)) == spelled).Select(UnitWord.Of);

    private static string Key(string symbol) => Letters.Even(symbol).Replace(" ", "", StringComparison.Ordinal);

    /// <summary>A symbol in plain ASCII.</summary>
    public static string Plain(string symbol) => symbol.Replace("µ", "u", StringComparison.Ordinal).Replace("Ω", "ohm", StringComparison.Ordinal)
        .Replace("°", "deg", StringComparison.Ordinal).Replace("²", "2", StringComparison.Ordinal).Replace("³", "3", StringComparison.Ordinal)
        .Replace("·", "*", StringComparison.Ordinal);

    private static void Family(Unit root, string prefixes, params string[] names)
    {
        foreach (string name in names)
        {
            Add(UnitWord.Of(root), name);
            foreach (char letter in prefixes)
            {
                var unit = UnitWord.Of(Prefixed(root, letter.ToString()));
                string[] spelled = letter switch
                {
                    'µ' => ["µ", "u", "micro"],
                    'm' => ["m", "milli"],
                    'k' => ["k", "K", "kilo"],
                    'M' => ["M", "meg", "mega", "Meg"],
                    _ => [letter.ToString()],
                };
                Add(unit, [.. spelled.Select(prefix => prefix + name)]);
            }
        }
    }

    private static Unit Prefixed(Unit root, string letter) => (root.Symbol, letter) switch
    {
        ("g", "k") => Units.Kilogram,
        _ => SiPrefix.Of(root, letter),
    };

    private static void Add(UnitWord word, params string[] spellings)
    {
        foreach (string spelling in spellings)
        {
            AddTo(Exact, spelling, word);
            AddTo(Loose, spelling, word);
        }
    }

    private static void AddTo(Dictionary<string, List<UnitWord>> table, string spelling, UnitWord word)
    {
        if (!table.TryGetValue(spelling, out var words))
        {
            table[spelling] = words = [];
        }

        if (!words.Contains(word))
        {
            words.Add(word);
        }
    }
}
