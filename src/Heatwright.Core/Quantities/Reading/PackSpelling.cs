namespace Heatwright.Quantities;

/// <summary>Packs: 3S2P, three in series, or the volts that makers say instead.</summary>
internal static class PackSpelling
{
    private const int MostCells = 200;

    /// <summary>Volts a lithium-ion cell goes by; common practice, no source.</summary>
    private static readonly (double Volts, PackVoltage From)[] CellVolts =
        [(3.6, PackVoltage.Nominal), (3.7, PackVoltage.Nominal), (4.2, PackVoltage.Full)];

    /// <summary>Counts that start here: 3S2P, 2P3S, 2S.</summary>
    public static IEnumerable<Item> Counts(string text, int start, bool loose)
    {
        if (Count(text, start) is not { End: > 0 } first)
        {
            yield break;
        }

        if (Count(text, Letters.SkipSpace(text, first.End)) is { End: > 0 } second && second.IsSeries != first.IsSeries)
        {
            yield return new(Pack(first, second), second.End, true);
        }
        else if (loose || char.IsUpper(text[first.End - 1]))
        {
            yield return new(Pack(first, (1, !first.IsSeries, 0)), first.End, true);
        }
    }

    /// <summary>Everything that may be typed into a field for a pack.</summary>
    public static IEnumerable<Item> Whole(string text, Expect expect)
    {
        foreach (var item in Counts(text, 0, true).Concat(Words(text)))
        {
            int end = item.End;
            var pack = (TypedValue.Pack)item.Value;
            foreach (var (word, from) in new[] { ("nominal", PackVoltage.Nominal), ("full", PackVoltage.Full) })
            {
                int past = Letters.After(text, Letters.SkipSpace(text, end), word);
                if (past >= 0)
                {
                    yield return new(pack with { From = from }, past, true);
                }
            }

            yield return item;
        }

        foreach (var item in Bare(text))
        {
            yield return item;
        }

        foreach (var item in AmountSpelling.At(text, 0, Expect.Volts with { Mark = expect.Mark }, true))
        {
            if (item.Value is TypedValue.Amount { UnitWasTyped: true, PlusMinus: 0 } amount)
            {
                foreach (var pack in FromVolts(amount.Si))
                {
                    yield return item with { Value = pack };
                }
            }
        }
    }

    /// <summary>A count of cells, without saying how they are joined.</summary>
    private static IEnumerable<Item> Bare(string text)
    {
        var (count, end) = NumberSpelling.Whole(text, 0);
        foreach (string single in new[] { "single cell", "one cell" })
        {
            if (Letters.After(text, 0, single) is >= 0 and var past)
            {
                yield return new(new TypedValue.Pack(1, 1), past, true);
            }
        }

        if (end == 0 || count is < 1 or > MostCells)
        {
            yield break;
        }

        int word = Letters.SkipSpace(text, end);
        int stop = Math.Max(Letters.After(text, word, "cells"), Letters.After(text, word, "cell"));
        stop = stop >= 0 ? stop : end;
        yield return new(new TypedValue.Pack(count, 1), stop, true);
        if (count > 1)
        {
            yield return new(new TypedValue.Pack(1, count), stop, true);
        }
    }

    /// <summary>'3 in series, 2 in parallel', '2 parallel'.</summary>
    private static IEnumerable<Item> Words(string text)
    {
        if (Worded(text, 0) is not { End: > 0 } first)
        {
            yield break;
        }

        yield return new(Pack(first, (1, !first.IsSeries, 0)), first.End, true);
        int next = first.End;
        next = next < text.Length && text[next] == ',' ? next + 1 : next;
        next = Letters.SkipSpace(text, next);
        next = Letters.After(text, next, "and") is >= 0 and var past ? Letters.SkipSpace(text, past) : next;
        if (Worded(text, next) is { End: > 0 } second && second.IsSeries != first.IsSeries)
        {
            yield return new(Pack(first, second), second.End, true);
        }
    }

    private static (int Count, bool IsSeries, int End) Worded(string text, int start)
    {
        var (count, end) = NumberSpelling.Whole(text, start);
        int at = Letters.SkipSpace(text, end);
        at = Letters.After(text, at, "in") is >= 0 and var past ? Letters.SkipSpace(text, past) : at;
        int series = Letters.After(text, at, "series");
        int parallel = Letters.After(text, at, "parallel");
        return end == start || count is < 1 or > MostCells ? (0, false, -1) : (count, series >= 0, Math.Max(series, parallel));
    }

    private static (int Count, bool IsSeries, int End) Count(string text, int start)
    {
        var (count, end) = NumberSpelling.Whole(text, start);
        int at = Letters.SkipSpace(text, end);
        bool isLetter = at < text.Length && text[at] is 'S' or 's' or 'P' or 'p' && Letters.EndsWord(text, at + 1);
        return end > start && isLetter && count is >= 1 and <= MostCells ? (count, text[at] is 'S' or 's', at + 1) : (0, false, -1);
    }

    private static TypedValue.Pack Pack((int Count, bool IsSeries, int End) a, (int Count, bool IsSeries, int End) b) =>
        a.IsSeries ? new(a.Count, b.Count) : new(b.Count, a.Count);

    private static IEnumerable<TypedValue.Pack> FromVolts(double volts)
    {
        bool any = false;
        foreach (var (cell, from) in CellVolts)
        {
            double count = Math.Round(volts / cell);
            if (count is >= 1 and <= MostCells && Math.Abs(volts - (count * cell)) < 0.051)
            {
                any = true;
                yield return new((int)count, 1, from);
            }
        }

        if (!any && volts is > 2 and < 3.6 * MostCells)
        {
            // 12 V is no multiple: between the counts whose nominal volts lie around it only the maker can tell.
            int below = Math.Max(1, (int)Math.Floor(volts / 3.7));
            yield return new(below, 1);
            yield return new(below + 1, 1);
        }
    }
}
