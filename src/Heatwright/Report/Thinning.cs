namespace Heatwright.Report;

/// <summary>Fewer points that draw the same line.</summary>
internal static class Thinning
{
    /// <summary>Places in order of the points to draw: of each stretch its first, lowest, highest and last, so that no peak is lost; gaps stay gaps.</summary>
    public static int[] Of(IReadOnlyList<double> values, int most)
    {
        if (values.Count <= most)
        {
            return [.. Enumerable.Range(0, values.Count)];
        }

        const int EachStretch = 5; // first, lowest, highest, a gap, last
        int stretches = Math.Max(1, most / EachStretch);
        List<int> kept = new(most);
        for (int stretch = 0; stretch < stretches; stretch++)
        {
            int from = (int)((long)values.Count * stretch / stretches);
            int to = (int)((long)values.Count * (stretch + 1) / stretches);
            kept.AddRange(Marks(values, from, to).Distinct().Order());
        }

        return [.. kept];
    }

    private static int[] Marks(IReadOnlyList<double> values, int from, int to)
    {
        int lowest = from;
        int highest = from;
        int gap = from;
        for (int i = from; i < to; i++)
        {
            if (!double.IsFinite(values[i]))
            {
                gap = i;
                continue;
            }

            lowest = double.IsFinite(values[lowest]) && values[lowest] <= values[i] ? lowest : i;
            highest = double.IsFinite(values[highest]) && values[highest] >= values[i] ? highest : i;
        }

        return [from, lowest, highest, gap, to - 1];
    }
}
