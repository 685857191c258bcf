using System.Globalization;

namespace Heatwright.Quantities;

/// <summary>Letters in the place of the decimal mark: 4k7, R47, E330, 3V3, 1m20.</summary>
/// <remarks>R, K, M, G and the tolerance letters follow [iec-60062] (from memory); E for R and small letters are met on parts and in drawers.</remarks>
internal static class LetterCode
{
    /// <summary>Every coded value that starts here.</summary>
    public static IEnumerable<Quantity> At(string text, int start, Expect expect)
    {
        int letterAt = PastDigits(text, start);
        if (letterAt >= text.Length)
        {
            yield break;
        }

        char letter = text[letterAt];
        int end = PastDigits(text, letterAt + 1);
        string lead = text[start..letterAt];
        string tail = text[(letterAt + 1)..end];
        bool isExponent = letter == 'E' && tail.Length == 0 && end + 1 < text.Length && text[end] is '+' or '-' && Letters.IsDigit(text, end + 1);
        if (isExponent || lead.Length + tail.Length == 0 || lead.Length > 6 || tail.Length > 6 || !EndsHere(text, end))
        {
            yield break;
        }

        foreach (var unit in UnitsOf(letter, lead, tail, expect, Tolerance(text, end, true) is { Share: > 0 }))
        {
            string spelled = $"{(lead.Length == 0 ? "0" : lead)}.{(tail.Length == 0 ? "0" : tail)}";
            double step = double.Parse("1E-" + tail.Length.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
            double value = double.Parse(spelled, NumberStyles.Float, CultureInfo.InvariantCulture);
            int past = unit == Units.Ohm || unit.Dimension == Units.Ohm.Dimension ? PastOhmWord(text, end) : end;
            yield return new(value, step, step, UnitWord.Of(unit) with { End = past }, past) { IsCoded = tail.Length > 0 || letter is 'R' or 'r' or 'E' };
        }
    }

    /// <summary>A tolerance letter that ends a word here, directly or behind a space.</summary>
    public static (double Share, int End) Tolerance(string text, int at, bool isCoded)
    {
        int place = Letters.SkipSpace(text, at);
        if (place >= text.Length || (place + 1 < text.Length && (Letters.IsWordLetter(text[place + 1]) || char.IsAsciiDigit(text[place + 1]))))
        {
            return (0, at);
        }

        double share = text[place] switch
        {
            'D' => 0.005,
            'F' => 0.01,
            'G' => 0.02,
            'J' => 0.05,
            'B' when isCoded => 0.001,
            'C' when isCoded => 0.0025,
            'K' when isCoded => 0.1,
            'M' when isCoded => 0.2,
            _ => 0,
        };
        return share > 0 ? (share, place + 1) : (0, at);
    }

    private static IEnumerable<Unit> UnitsOf(char letter, string lead, string tail, Expect expect, bool toleranceFollows)
    {
        bool isInside = lead.Length > 0 && tail.Length > 0;
        if (expect.Takes(Units.Ohm))
        {
            string? prefix = letter switch
            {
                'R' or 'r' or 'E' => "",
                'k' or 'K' when isInside || toleranceFollows => "k",
                'M' when isInside || toleranceFollows => "M",
                'G' when isInside || toleranceFollows => "G",
                _ => null,
            };
            if (prefix is not null && !(letter == 'E' && lead.Length > 0 && tail.Length > 0 && lead.TrimStart('0').Length == 0 && lead.Length > 1))
            {
                yield return SiPrefix.Of(Units.Ohm, prefix);
            }

            if (letter == 'm' && isInside && !expect.IsOpen)
            {
                yield return Units.Milliohm;
                yield return Units.Megaohm;
            }
        }

        var plain = letter switch
        {
            'V' or 'v' => Units.Volt,
            'A' => Units.Ampere,
            'W' => Units.Watt,
            'm' when tail.Length == 2 => Units.Metre,
            _ => null,
        };
        if (isInside && plain is not null && expect.Takes(plain))
        {
            yield return plain;
        }
    }

    /// <summary>A code ends where its word ends, or with one tolerance letter more, or with the word ohm.</summary>
    private static bool EndsHere(string text, int end) =>
        Letters.EndsWord(text, end) || Tolerance(text, end, true).Share > 0 || PastOhmWord(text, end) > end;

    private static int PastOhmWord(string text, int end)
    {
        int at = Letters.SkipSpace(text, end);
        foreach (string word in new[] { "\u03A9", "ohms", "ohm" })
        {
            int past = Letters.After(text, at, word);
            if (past >= 0)
            {
                return past;
            }
        }

        return end;
    }

    private static int PastDigits(string text, int at)
    {
        while (Letters.IsDigit(text, at))
        {
            at++;
        }

        return at;
    }
}

/// <summary>A number and the unit word behind it, as spelled.</summary>
internal readonly record struct Quantity(double Value, double Step, double RoughStep, UnitWord Word, int End)
{
    /// <summary>Spelled with a letter in the place of the decimal mark.</summary>
    public bool IsCoded { get; init; }

    /// <summary>Spelled as a fraction.</summary>
    public bool IsFraction { get; init; }

    /// <summary>True where a unit or a prefix was spelled.</summary>
    public bool HasWord => Word.Kind != UnitWordKind.None;
}
