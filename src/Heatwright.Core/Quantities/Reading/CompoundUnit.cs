namespace Heatwright.Quantities;

/// <summary>Units with a 'per' in them: W/in, µV/°C, mV per 100 °C, K/W, ppm/K.</summary>
internal static class CompoundUnit
{
    private const int LongestDenominator = 8;

    /// <summary>Every compound that the numerators form with what follows here.</summary>
    public static IEnumerable<UnitWord> After(IReadOnlyList<UnitWord> numerators, string text, int end)
    {
        var (times, start) = PastPer(text, end);
        if (start < 0)
        {
            yield break;
        }

        foreach (var (bottom, stop) in Denominators(text, start))
        {
            foreach (var word in numerators)
            {
                if (Top(word) is { } top)
                {
                    yield return new UnitWord(UnitWordKind.Plain, Divide(top, times, bottom), "", stop);
                }
            }
        }
    }

    /// <summary>Past '/' or 'per', and the number of units that 'per' may name.</summary>
    private static (double Times, int At) PastPer(string text, int end)
    {
        int at = Letters.SkipSpace(text, end);
        int per = Letters.After(text, at, "per");
        if (per >= 0)
        {
            at = Letters.SkipSpace(text, per);
            var (times, after) = NumberSpelling.Whole(text, at);
            return after > at && times > 0 ? (times, Letters.SkipSpace(text, after)) : (1, at);
        }

        return at < text.Length && text[at] == '/' ? (1, Letters.SkipSpace(text, at + 1)) : (1, -1);
    }

    private static IEnumerable<(Unit Bottom, int End)> Denominators(string text, int start)
    {
        for (int end = start + 1; end <= text.Length && end - start <= LongestDenominator; end++)
        {
            if (!Letters.EndsWord(text, end))
            {
                continue;
            }

            foreach (var word in UnitSpelling.Spelled(text[start..end].Replace(" ", "", StringComparison.Ordinal)))
            {
                if (Top(word) is { } bottom)
                {
                    yield return (bottom, end);
                }
            }
        }
    }

    /// <summary>A unit that may stand above or below the stroke; degrees are differences there.</summary>
    private static Unit? Top(UnitWord word) => word.Kind switch
    {
        UnitWordKind.Plain => word.Unit,
        UnitWordKind.Celsius or UnitWordKind.LetterC or UnitWordKind.Kelvin => Units.Kelvin,
        UnitWordKind.Fahrenheit => new Unit("°F", Units.Kelvin.Dimension, Units.Fahrenheit.Factor),
        UnitWordKind.None => Units.One,
        _ => null,
    };

    private static Unit Divide(Unit top, double times, Unit bottom)
    {
        string symbol = $"{(top.Symbol.Length == 0 ? "1" : top.Symbol)}/{bottom.Symbol}";
        var dimension = top.Dimension / bottom.Dimension;
        double factor = top.Factor / bottom.Factor / times;
        return Units.Find(symbol) is { } known && known.Dimension == dimension && known.Factor == factor
            ? known
            : new Unit(times == 1 ? symbol : $"{top.Symbol} per {times.ToString("0", System.Globalization.CultureInfo.InvariantCulture)} {bottom.Symbol}", dimension, factor);
    }
}
