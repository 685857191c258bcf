namespace Heatwright.Quantities;

/// <summary>Wire by gauge number or by diameter.</summary>
internal static class GaugeSpelling
{
    private const int HighestGauge = 60;

    /// <summary>Highest number that a maker may mean as a gauge when nothing else is said.</summary>
    private const int HighestBareGauge = 40;

    private static readonly string[] Names = ["AWG", "gauge", "ga.", "ga"];

    /// <summary>Every wire size that starts here.</summary>
    public static IEnumerable<Item> At(string text, int start, Expect expect, bool loose)
    {
        bool asArea = expect.Takes(Units.SquareMillimetre);
        if (!asArea && !expect.Takes(Units.Millimetre))
        {
            yield break;
        }

        foreach (var (gauge, end) in Gauges(text, start, expect))
        {
            // [astm-b258]: 36 is 0.127 mm, 0000 is 11.684 mm, 39 equal ratios between (from memory).
            double diameterMm = 0.127 * Math.Pow(92, (36 - gauge) / 39.0);
            yield return new(
                asArea
                    ? new TypedValue.Amount(Math.PI / 4 * diameterMm * diameterMm, Units.SquareMillimetre) { UnitWasTyped = true }
                    : new TypedValue.Amount(diameterMm, Units.Millimetre) { UnitWasTyped = true },
                end,
                true);
        }

        if (!expect.IsOpen && asArea)
        {
            foreach (var item in AmountSpelling.At(text, start, Expect.Length with { Mark = expect.Mark }, loose))
            {
                if (item.Value is TypedValue.Amount { Condition: Condition.Diameter, UnitWasTyped: true } across)
                {
                    double mm = across.In(Units.Millimetre);
                    double limit = across.PlusMinus * across.Unit.Factor / Units.Millimetre.Factor;
                    yield return item with
                    {
                        Value = new TypedValue.Amount(Math.PI / 4 * mm * mm, Units.SquareMillimetre)
                        {
                            PlusMinus = Math.PI / 2 * mm * limit,
                            IsRough = across.IsRough,
                            UnitWasTyped = true,
                        },
                    };
                }
            }
        }
    }

    private static double In(this TypedValue.Amount amount, Unit unit) => amount.Unit == unit ? amount.Value : unit.FromSi(amount.Si);

    /// <summary>AWG24, AWG 24, #24, 24AWG, 24 ga, 4/0 AWG, AWG 0000; a bare whole number where wire is asked for.</summary>
    private static IEnumerable<(int Gauge, int End)> Gauges(string text, int start, Expect expect)
    {
        int past = Letters.After(text, start, "AWG") is >= 0 and var spaced ? spaced
            : start < text.Length && text[start] == '#' ? start + 1
            : -1;
        if (past >= 0 && Number(text, Letters.SkipSpace(text, past)) is { End: > 0 } named)
        {
            yield return named;
            yield break;
        }

        if (Number(text, start) is not { End: > 0 } number)
        {
            yield break;
        }

        int word = Letters.SkipSpace(text, number.End);
        int end = Names.Select(name => Letters.After(text, word, name)).Max();
        if (end >= 0)
        {
            yield return (number.Gauge, end);
        }
        else if (expect.Bare == Units.SquareMillimetre && !expect.IsOpen && number.Gauge is > 0 and <= HighestBareGauge
            && number.End == text.Length && start == 0)
        {
            yield return number;
        }
    }

    /// <summary>24, 0, 00, 0000 and 4/0: each further nought is one below zero.</summary>
    private static (int Gauge, int End) Number(string text, int start)
    {
        var (value, end) = NumberSpelling.Whole(text, start);
        if (end == start || end - start > 4)
        {
            return (0, -1);
        }

        bool isNought = end + 1 < text.Length && text[end] == '/' && text[end + 1] == '0' && value is >= 1 and <= 4;
        int gauge = isNought ? 1 - value : value == 0 ? 1 - (end - start) : value;
        return gauge > HighestGauge ? (0, -1) : (gauge, isNought ? end + 2 : end);
    }
}
