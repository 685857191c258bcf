namespace Heatwright.Quantities;

/// <summary>Puts the spellings together: everything that a text may mean in a field, and from that an answer, a question or a refusal.</summary>
internal static class ValueReader
{
    /// <summary>Longer texts are no values; the limit keeps the work small whatever is pasted.</summary>
    private const int LongestText = 120;

    private const int MostValues = 6;

    /// <summary>More meanings than this are no question that anybody could answer.</summary>
    private const int MostMeanings = 12;

    public static Answer Read(string typed, Expect expect)
    {
        if (typed.Length > LongestText)
        {
            return Refusal.TooLong(typed, expect, LongestText);
        }

        string text = Letters.Even(typed);
        var meanings = Distinct(Meanings(text, expect, loose: false));
        meanings = meanings.Count > 0 ? meanings : Distinct(Meanings(text, expect, loose: true));
        return meanings.Count switch
        {
            0 => Refusal.Of(typed, text, expect),
            1 => new Answer.Fine(meanings[0]),
            _ => Question(typed, meanings, expect),
        };
    }

    private static IEnumerable<IReadOnlyList<TypedValue>> Meanings(string text, Expect expect, bool loose)
    {
        if (MissingSpelling.Of(text) is { } why)
        {
            yield return [new TypedValue.Missing(why)];
            if (text is not ("0.F" or "0.f"))
            {
                yield break; // '0.F' may also be a temperature of zero
            }
        }

        foreach (var values in Sequences(text, 0, expect, loose, 0))
        {
            if (InOrder(values, expect) is { } fit)
            {
                yield return fit;
            }
        }
    }

    /// <summary>All ways to read the text from here to its end as one value after the other.</summary>
    private static IEnumerable<IReadOnlyList<Item>> Sequences(string text, int start, Expect expect, bool loose, int depth)
    {
        foreach (var item in Items(text, start, expect, loose, depth))
        {
            if (item.End == text.Length)
            {
                yield return [item];
                continue;
            }

            int next = PastSeparator(text, item.End);
            bool mayGoOn = item.StandsAlone && (next > item.End || MayJoin(item.Value)) && depth + 1 < MostValues
                && expect.Kind is ExpectKind.Amount or ExpectKind.Label or ExpectKind.Anything;
            if (mayGoOn && next < text.Length)
            {
                foreach (var rest in Sequences(text, next, expect, loose, depth + 1).Where(rest => rest[0].StandsAlone && !IsTolerance(rest[0].Value)))
                {
                    yield return [item, .. rest];
                }
            }
        }
    }

    /// <summary>'24V60W' needs no space; '1m20s' and '4k7J' are no two values.</summary>
    private static bool MayJoin(TypedValue value) => value is TypedValue.Amount { UnitWasTyped: true } amount
        && (amount.Unit.Dimension == Units.Volt.Dimension || amount.Unit.Dimension == Units.Ampere.Dimension || amount.Unit.Dimension == Units.Watt.Dimension);

    /// <summary>A small percentage behind a value is its tolerance and no value of its own.</summary>
    private static bool IsTolerance(TypedValue value) =>
        value is TypedValue.Amount amount && amount.Unit == Units.Percent && amount.Si <= ToleranceSpelling.MostWithoutSign;

    private static IEnumerable<Item> Items(string text, int start, Expect expect, bool loose, int depth) => expect.Kind switch
    {
        ExpectKind.Pack => PackSpelling.Whole(text, expect),
        ExpectKind.Clock => TimeSpelling.Clock(text),
        ExpectKind.Tolerance => ToleranceSpelling.Alone(text, expect),
        ExpectKind.Money => MoneySpelling.Price(text, expect),
        ExpectKind.Count => MoneySpelling.Count(text, expect),
        _ => Own(text, start, expect, loose).Concat(Others(text, start, expect, loose, depth)),
    };

    private static IEnumerable<Item> Own(string text, int start, Expect expect, bool loose) =>
        AmountSpelling.At(text, start, expect, loose).Concat(TimeSpelling.At(text, start, expect)).Concat(GaugeSpelling.At(text, start, expect, loose))
            .Concat(expect.IsOpen ? PackSpelling.Counts(text, start, false) : []);

    /// <summary>Values of other kinds may stand beside the one that is asked for: '12V 40W' in a field of watts.</summary>
    private static IEnumerable<Item> Others(string text, int start, Expect expect, bool loose, int depth)
    {
        if (expect.Kind != ExpectKind.Amount)
        {
            return [];
        }

        var open = Expect.Label with { Mark = expect.Mark };
        return Own(text, start, open, loose).Where(item => item.StandsAlone && !Belongs(item.Value, expect) && !(expect.Takes(Units.Second) && IsMetres(item.Value))
            && (depth > 0 || item.End < text.Length));
    }

    /// <summary>The m of '90m 30s' is minutes: beside a time no metres are meant.</summary>
    private static bool IsMetres(TypedValue value) => value switch
    {
        TypedValue.Amount amount => amount.Unit == Units.Metre,
        TypedValue.Range range => range.Unit == Units.Metre,
        TypedValue.Bound bound => bound.Unit == Units.Metre,
        _ => false,
    };

    /// <summary>The value that the field asks for first; null where it is not there or there twice.</summary>
    private static TypedValue[]? InOrder(IReadOnlyList<Item> items, Expect expect)
    {
        TypedValue[] values = [.. items.Select(item => Overloaded(item.Value))];
        if (expect.Kind != ExpectKind.Amount || values.Length == 1)
        {
            bool isOne = expect.Kind == ExpectKind.Label || values.Length == 1;
            return isOne && values.All(IsPossible) && !IsRateInDegrees(values) ? values : null;
        }

        TypedValue[] own = [.. values.Where(value => Belongs(value, expect))];
        return own.Length == 1 && values.All(IsPossible) ? [own[0], .. values.Where(value => !ReferenceEquals(value, own[0]))] : null;
    }

    private static bool Belongs(TypedValue value, Expect expect) => value switch
    {
        TypedValue.Amount amount => expect.Takes(amount.Unit),
        TypedValue.Range range => expect.Takes(range.Unit),
        TypedValue.Bound bound => expect.Takes(bound.Unit),
        _ => false,
    };

    private static TypedValue Overloaded(TypedValue value) =>
        value is TypedValue.Amount amount && Math.Abs(amount.Value) >= MissingSpelling.NumberForOverload ? new TypedValue.Missing(MissingReason.Overload) : value;

    /// <summary>Nothing is colder than nothing, and what overflows is no number.</summary>
    private static bool IsPossible(TypedValue value) => value switch
    {
        TypedValue.Amount amount => double.IsFinite(amount.Si) && double.IsFinite(amount.PlusMinus) && (!amount.Unit.IsLevel || amount.Si >= 0),
        TypedValue.Range range => double.IsFinite(range.Unit.ToSi(range.Low)) && double.IsFinite(range.Unit.ToSi(range.High)) && (!range.Unit.IsLevel || range.Unit.ToSi(range.Low) >= 0),
        TypedValue.Bound bound => double.IsFinite(bound.Unit.ToSi(bound.Value)) && (!bound.Unit.IsLevel || bound.Unit.ToSi(bound.Value) >= 0),
        TypedValue.Tolerance tolerance => double.IsFinite(tolerance.Share),
        _ => true,
    };

    /// <summary>Beside a capacity '25C' is a rate: no label gives the temperature of its cell.</summary>
    private static bool IsRateInDegrees(TypedValue[] values) =>
        values.Any(value => value is TypedValue.Amount amount && amount.Unit.Dimension == Units.AmpereHour.Dimension)
        && values.Any(value => value is TypedValue.Amount { Unit.IsLevel: true });

    private static int PastSeparator(string text, int end)
    {
        int at = Letters.SkipSpace(text, end);
        return at < text.Length && text[at] is ',' or '/' or ';' or '@' ? Letters.SkipSpace(text, at + 1) : at;
    }

    private static List<IReadOnlyList<TypedValue>> Distinct(IEnumerable<IReadOnlyList<TypedValue>> meanings)
    {
        var distinct = new List<IReadOnlyList<TypedValue>>();
        foreach (var values in meanings)
        {
            if (!distinct.Exists(known => known.Count == values.Count && known.Zip(values).All(pair => pair.First.Means(pair.Second))))
            {
                distinct.Add(values);
                if (distinct.Count > MostMeanings)
                {
                    return [];
                }
            }
        }

        return distinct;
    }

    private static Answer.Question Question(string typed, List<IReadOnlyList<TypedValue>> meanings, Expect expect) =>
        new($"'{typed.Trim()}' may mean several things as {expect.What}. Which one?",
            [.. meanings.Select(values => new Choice(string.Join(", ", values.Select(value => TypedText.Of(value, expect))), values))]);
}
