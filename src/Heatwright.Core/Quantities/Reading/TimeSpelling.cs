namespace Heatwright.Quantities;

/// <summary>Times with more than one unit in them, and times of day.</summary>
internal static class TimeSpelling
{
    /// <summary>Every stretch of time with a colon or several units that starts here.</summary>
    public static IEnumerable<Item> At(string text, int start, Expect expect)
    {
        if (!expect.Takes(Units.Second))
        {
            yield break;
        }

        var before = MarkSpelling.Before(text, start);
        foreach (var (seconds, step, end) in Colons(text, before.End, expect).Concat(Worded(text, before.End, expect.Mark)))
        {
            var after = MarkSpelling.After(text, end, false);
            bool isRough = before.IsRough || after.IsRough;
            if (before.IsAbove is { } above)
            {
                yield return new(new TypedValue.Bound(seconds, Units.Second, above), after.End, true);
                continue;
            }

            foreach (var tail in ToleranceSpelling.Tails(text, after.End, default, Expect.Seconds, false))
            {
                foreach (double limit in tail.LimitsIn(new UnitScale(Units.Second), seconds))
                {
                    yield return new(
                        new TypedValue.Amount(seconds, Units.Second)
                        {
                            PlusMinus = limit == 0 && isRough ? Math.Max(step, seconds / 50) : limit,
                            IsRough = isRough,
                            Step = step,
                            UnitWasTyped = true,
                        },
                        tail.End,
                        true);
                }
            }
        }
    }

    /// <summary>A time of day as seconds after midnight.</summary>
    public static IEnumerable<Item> Clock(string text)
    {
        string even = text.Replace('h', ':');
        var (hours, past) = NumberSpelling.Whole(even, 0);
        if (past == 0 || past > 2 || past >= even.Length || even[past] != ':'
            || Part(even, past + 1, DecimalMark.Unknown, false) is not { End: > 0 } minutes || minutes.Value >= 60)
        {
            yield break;
        }

        double seconds = 0;
        double step = 60;
        int end = minutes.End;
        if (end < even.Length && even[end] == ':')
        {
            var part = Part(even, end + 1, DecimalMark.Unknown, true);
            if (part.End < 0 || part.Value >= 60)
            {
                yield break;
            }

            (seconds, step, end) = part;
        }

        int word = Letters.SkipSpace(even, end);
        int afterNoon = Letters.After(even, word, "pm");
        int beforeNoon = Letters.After(even, word, "am");
        if (afterNoon >= 0 || beforeNoon >= 0)
        {
            hours = hours is >= 1 and <= 12 ? (hours % 12) + (afterNoon >= 0 ? 12 : 0) : 99;
            end = Math.Max(afterNoon, beforeNoon);
        }

        if (hours < 24)
        {
            yield return new(new TypedValue.Amount((hours * 3600) + (minutes.Value * 60) + seconds, Units.Second) { Step = step, UnitWasTyped = true }, end, true);
        }
    }

    /// <summary>1:20, 0:12.4, 00:01:20.</summary>
    private static IEnumerable<(double Seconds, double Step, int End)> Colons(string text, int start, Expect expect)
    {
        var (first, colon) = NumberSpelling.Whole(text, start);
        if (colon == start || colon >= text.Length || text[colon] != ':' || Part(text, colon + 1, expect.Mark, true) is not { End: > 0 } second || second.Value >= 60)
        {
            yield break;
        }

        if (second.End < text.Length && text[second.End] == ':')
        {
            if (second.Step >= 1 && Part(text, second.End + 1, expect.Mark, true) is { End: > 0, Value: < 60 } third)
            {
                yield return ((first * 3600) + (second.Value * 60) + third.Value, third.Step, third.End);
            }

            yield break;
        }

        // Two groups: a field of seconds means minutes and seconds, a field of hours hours and minutes; else nobody can know.
        bool hasFraction = second.Step < 1;
        bool mayBeMinutes = hasFraction || expect.IsOpen || expect.Bare != Units.Hour;
        bool mayBeHours = !hasFraction && (expect.IsOpen || expect.Bare == Units.Hour || expect.Bare == Units.Minute);
        if (mayBeMinutes)
        {
            yield return ((first * 60) + second.Value, second.Step, second.End);
        }

        if (mayBeHours)
        {
            yield return ((first * 3600) + (second.Value * 60), 60, second.End);
        }
    }

    /// <summary>1m20, 1h15, 1 h 15 min 30 s: each unit smaller than the one before, each count below a whole of it.</summary>
    private static IEnumerable<(double Seconds, double Step, int End)> Worded(string text, int start, DecimalMark mark)
    {
        double total = 0;
        double unit = double.PositiveInfinity;
        int at = start;
        int parts = 0;
        while (at < text.Length)
        {
            var part = Part(text, at, mark, true);
            if (part.End < 0 || (parts > 0 && part.Value >= 60))
            {
                break;
            }

            var (size, end) = UnitAt(text, Letters.SkipSpace(text, part.End));
            bool isBare = size == 0;
            size = isBare ? unit / 60 : size;
            if (size >= unit || (isBare && (parts == 0 || unit < 60)) || (part.Step < 1 && size > 1))
            {
                break;
            }

            total += part.Value * size;
            unit = size;
            parts++;
            at = isBare ? part.End : end;
            if (parts >= 2)
            {
                yield return (total, size * part.Step, at);
            }

            if (isBare)
            {
                break;
            }

            at = Letters.SkipSpace(text, at);
        }
    }

    private static (double Size, int End) UnitAt(string text, int at)
    {
        foreach (var (word, size) in new[] { ("hours", 3600.0), ("hour", 3600), ("hrs", 3600), ("hr", 3600), ("h", 3600), ("minutes", 60), ("minute", 60), ("mins", 60), ("min", 60), ("m", 60), ("seconds", 1), ("sec", 1), ("s", 1) })
        {
            int end = Letters.After(text, at, word);
            if (end >= 0)
            {
                return (size, end);
            }
        }

        return (0, at);
    }

    /// <summary>A whole number of any width, or with decimals where they may stand.</summary>
    private static (double Value, double Step, int End) Part(string text, int at, DecimalMark mark, bool mayHaveDecimals)
    {
        var (whole, end) = NumberSpelling.Whole(text, at);
        if (end == at)
        {
            return (0, 1, -1);
        }

        bool hasDecimals = end < text.Length && (text[end] == '.' || (text[end] == ',' && mark != DecimalMark.Point)) && Letters.IsDigit(text, end + 1);
        if (!hasDecimals || !mayHaveDecimals)
        {
            return (whole, 1, end);
        }

        // Decimals of seconds: never a thousand mark.
        int stop = end + 1;
        double step = 1;
        while (Letters.IsDigit(text, stop) && stop - end <= 9)
        {
            stop++;
            step /= 10;
        }

        double value = double.Parse(text[at..stop].Replace(',', '.'), System.Globalization.CultureInfo.InvariantCulture);
        return (value, step, stop);
    }
}
