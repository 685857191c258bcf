namespace Heatwright.Trials;

/// <summary>Puts readings into the order of their times: one that was corrected and typed at the end belongs where its time is.</summary>
/// <remarks>A clock that was set back, or a test that was done again in the same run, is no correction: such a log keeps its order.</remarks>
internal static class TimeOrder
{
    /// <summary>So many readings at the end may belong before it, however short the run. Our choice.</summary>
    private const int Few = 2;

    /// <summary>From so many readings on, times that go back to the beginning may be a second go of the same test.</summary>
    private const int Again = 3;

    /// <summary>Rows in the order of their times, those of one time as they were typed; a row without a time stays behind the one before it.</summary>
    /// <param name="times">Times as they were typed; not a number where there is none.</param>
    /// <param name="struck">How many readings were struck out: so many may have been typed anew anywhere.</param>
    public static int[] Of(IReadOnlyList<double> times, int struck)
    {
        int[] typed = [.. Enumerable.Range(0, times.Count)];
        double[] timed = [.. times.Where(double.IsFinite)];
        int[] late = Late(timed);
        bool atTheEnd = late.Length > 0 && late[0] == timed.Length - late.Length && (late.Length <= Few || 3 * late.Length <= timed.Length) && !BeginsAnew(timed, late[0]);
        if (late.Length > struck && !atTheEnd)
        {
            return typed;
        }

        double last = double.NegativeInfinity;
        double[] key = [.. times.Select(time => last = double.IsFinite(time) ? time : last)];
        return [.. typed.OrderBy(row => key[row])];
    }

    /// <summary>Rows whose time lies before one that stands above them.</summary>
    public static int[] Late(double[] times)
    {
        double most = double.NegativeInfinity;
        List<int> late = [];
        for (int row = 0; row < times.Length; row++)
        {
            if (times[row] < most)
            {
                late.Add(row);
            }

            most = Math.Max(most, double.IsNaN(times[row]) ? most : times[row]);
        }

        return [.. late];
    }

    private static bool BeginsAnew(double[] times, int from)
    {
        double first = times[..from].Min(), span = times[..from].Max() - first;
        bool grows = Enumerable.Range(from + 1, times.Length - from - 1).All(row => times[row] >= times[row - 1]);
        return times.Length - from >= Again && grows && 2 * (times.Length - from) >= from && times[from] <= first + (span / 4);
    }
}
