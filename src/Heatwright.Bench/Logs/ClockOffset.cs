namespace Heatwright.Logs;

/// <summary>A series of readings by one clock.</summary>
/// <param name="TimeS">Seconds, rising.</param>
/// <param name="Values">One value a time; NaN: none.</param>
public sealed record ClockedSeries(double[] TimeS, double[] Values);

/// <summary>By how much one log's clock is ahead of another's.</summary>
/// <param name="AheadS">Add this to the second log's seconds to get the first one's.</param>
/// <param name="Match">How well the two then go together: 1 is in step.</param>
/// <param name="NextBest">The same for the best other offset far from it.</param>
/// <param name="OverlapS">Seconds that both logs then cover.</param>
public sealed record ClockMatch(double AheadS, double Match, double NextBest, double OverlapS)
{
    /// <summary>True where the data tell: a good match, and no other nearly as good.</summary>
    public bool IsClear => Match >= 0.5 && NextBest <= 0.85 * Match;
}

/// <summary>Finds the offset between the clocks of two logs from what both saw: steps and swings at the same moments.</summary>
/// <remarks>Correlation of the changes from one moment to the next, so that slow drifts and different levels have no say; of all offsets at which the logs
/// overlap for a fifth of the shorter one. Coarse over the whole range, then fine around the best.</remarks>
public static class ClockOffset
{
    private const int MostPoints = 4000;
    private const int FineSteps = 40;
    private const double LeastOverlap = 0.2;

    /// <summary>The best offset; null where the logs are too short or do not change.</summary>
    public static ClockMatch? Find(ClockedSeries first, ClockedSeries second)
    {
        var (a, b) = (Clean(first), Clean(second));
        if (a.TimeS.Length < 8 || b.TimeS.Length < 8)
        {
            return null;
        }

        double spanA = a.TimeS[^1] - a.TimeS[0], spanB = b.TimeS[^1] - b.TimeS[0];
        double step = Math.Max(Math.Max(Typical(a.TimeS), Typical(b.TimeS)), Math.Max(spanA, spanB) / MostPoints);
        double[] changesA = Changes(a, a.TimeS[0], step, (int)(spanA / step)), changesB = Changes(b, b.TimeS[0], step, (int)(spanB / step));
        int least = Math.Max(8, (int)(LeastOverlap * Math.Min(changesA.Length, changesB.Length)));
        var lags = Enumerable.Range(-changesB.Length, changesA.Length + changesB.Length).Select(lag => (Lag: lag, Match: Match(changesA, changesB, lag, least))).Where(one => one.Match is not null).ToArray();
        if (lags.Length == 0)
        {
            return null;
        }

        var best = lags.MaxBy(one => one.Match!.Value);
        double next = lags.Where(one => Math.Abs(one.Lag - best.Lag) > 3).Select(one => one.Match!.Value).DefaultIfEmpty(0).Max();
        double coarse = a.TimeS[0] + (best.Lag * step) - b.TimeS[0];
        double fine = Finer(a, b, coarse, step, best.Match!.Value);
        double overlap = Math.Min(a.TimeS[^1], b.TimeS[^1] + fine) - Math.Max(a.TimeS[0], b.TimeS[0] + fine);
        return new(fine, best.Match.Value, Math.Max(0, next), overlap);
    }

    /// <summary>Around the coarse offset the second log is read anew between its readings.</summary>
    private static double Finer(ClockedSeries a, ClockedSeries b, double coarse, double step, double match)
    {
        (double best, double at) = (match, coarse);
        for (int i = -FineSteps; i <= FineSteps; i++)
        {
            double offset = coarse + (step * i / (FineSteps / 1.5));
            double from = Math.Max(a.TimeS[0], b.TimeS[0] + offset), to = Math.Min(a.TimeS[^1], b.TimeS[^1] + offset);
            int count = (int)((to - from) / step);
            if (count >= 8 && Match(Changes(a, from, step, count), Changes(b, from - offset, step, count), 0, 8) is { } there && there > best)
            {
                (best, at) = (there, offset);
            }
        }

        return at;
    }

    private static double? Match(double[] a, double[] b, int lag, int least)
    {
        int from = Math.Max(0, lag), to = Math.Min(a.Length, b.Length + lag);
        if (to - from < least)
        {
            return null;
        }

        double sumA = 0, sumB = 0, squareA = 0, squareB = 0, product = 0;
        for (int i = from; i < to; i++)
        {
            (double x, double y) = (a[i], b[i - lag]);
            sumA += x;
            sumB += y;
            squareA += x * x;
            squareB += y * y;
            product += x * y;
        }

        double count = to - from;
        double spread = (squareA - (sumA * sumA / count)) * (squareB - (sumB * sumB / count));
        // Current and volts of one load move against each other: in step is in step, whatever the sign.
        return spread > 0 ? Math.Abs(product - (sumA * sumB / count)) / Math.Sqrt(spread) : null;
    }

    private static double[] Changes(ClockedSeries series, double from, double step, int count)
    {
        double[] changes = new double[Math.Max(0, count)];
        int at = 0;
        double before = At(series, from, ref at);
        for (int i = 0; i < changes.Length; i++)
        {
            double now = At(series, from + ((i + 1) * step), ref at);
            changes[i] = now - before;
            before = now;
        }

        return changes;
    }

    private static double At(ClockedSeries series, double time, ref int at)
    {
        double[] times = series.TimeS;
        while (at > 0 && times[at] > time)
        {
            at--;
        }

        while (at + 2 < times.Length && times[at + 1] < time)
        {
            at++;
        }

        double share = times[at + 1] > times[at] ? Math.Clamp((time - times[at]) / (times[at + 1] - times[at]), 0, 1) : 1;
        return series.Values[at] + (share * (series.Values[at + 1] - series.Values[at]));
    }

    private static double Typical(double[] times)
    {
        double[] gaps = [.. times.Zip(times.Skip(1), (a, b) => b - a).Where(gap => gap > 0).Order()];
        return gaps.Length > 0 ? gaps[gaps.Length / 2] : 1;
    }

    private static ClockedSeries Clean(ClockedSeries series)
    {
        var times = new List<double>();
        var values = new List<double>();
        for (int i = 0; i < Math.Min(series.TimeS.Length, series.Values.Length); i++)
        {
            if (double.IsFinite(series.TimeS[i]) && double.IsFinite(series.Values[i]) && (times.Count == 0 || series.TimeS[i] > times[^1]))
            {
                times.Add(series.TimeS[i]);
                values.Add(series.Values[i]);
            }
        }

        return new([.. times], [.. values]);
    }
}
