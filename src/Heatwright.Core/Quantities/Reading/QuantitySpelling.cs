namespace Heatwright.Quantities;

/// <summary>Numbers, fractions and letter codes with the unit words behind them.</summary>
internal static class QuantitySpelling
{
    /// <summary>Every quantity that starts here, signed or not.</summary>
    public static IEnumerable<Quantity> At(string text, int start, Expect expect, bool loose)
    {
        int at = start;
        double sign = 1;
        if (at < text.Length && text[at] is '+' or '-')
        {
            sign = text[at] == '-' ? -1 : 1;
            at = Letters.SkipSpace(text, at + 1);
        }

        return Unsigned(text, at, expect, loose).Select(quantity => quantity with { Value = sign * quantity.Value });
    }

    private static IEnumerable<Quantity> Unsigned(string text, int start, Expect expect, bool loose)
    {
        foreach (var coded in LetterCode.At(text, start, expect))
        {
            yield return coded;
        }

        foreach (var (value, end) in Fractions(text, start))
        {
            foreach (var word in UnitSpelling.At(text, Letters.SkipSpace(text, end), expect, loose))
            {
                yield return new(value, 0, value / 10, word, word.End) { IsFraction = true };
            }
        }

        foreach (var number in NumberSpelling.At(text, start, expect.Mark).Where(number => double.IsFinite(number.Value)))
        {
            yield return new(number.Value, number.Step, number.RoughStep, UnitWord.None(number.End), number.End);
            foreach (var word in UnitSpelling.At(text, Letters.SkipSpace(text, number.End), expect, loose))
            {
                yield return new(number.Value, number.Step, number.RoughStep, word, word.End);
            }
        }

        // C/10: a tenth of the capacity each hour.
        if (expect.Names(Units.PerHour) && start + 2 < text.Length && text[start] == 'C' && text[start + 1] == '/')
        {
            var (parts, end) = NumberSpelling.Whole(text, start + 2);
            if (parts > 0)
            {
                yield return new(1.0 / parts, 0, 0.1 / parts, UnitWord.Of(Units.PerHour) with { End = end }, end);
            }
        }
    }

    /// <summary>1/4, 1 1/4 and 1-1/4.</summary>
    private static IEnumerable<(double Value, int End)> Fractions(string text, int start)
    {
        var (first, end) = NumberSpelling.Whole(text, start);
        if (end == start || end >= text.Length)
        {
            yield break;
        }

        if (Part(text, first, end) is { End: > 0 } part)
        {
            yield return part;
        }
        else if (text[end] is ' ' or '-')
        {
            var (top, past) = NumberSpelling.Whole(text, end + 1);
            if (past > end + 1 && Part(text, top, past) is { End: > 0, Value: < 1 } rest)
            {
                yield return (first + rest.Value, rest.End);
            }
        }
    }

    private static (double Value, int End) Part(string text, int top, int stroke)
    {
        if (stroke >= text.Length || text[stroke] != '/')
        {
            return (0, -1);
        }

        var (bottom, end) = NumberSpelling.Whole(text, stroke + 1);
        return bottom > 0 ? ((double)top / bottom, end) : (0, -1);
    }
}
