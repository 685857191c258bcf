namespace Heatwright.Trials;

/// <summary>Power between readings of it: with one meter it is read at the start and at the end of the heating, and degrees in between.</summary>
internal static class WattsBetween
{
    /// <summary>Two readings that differ by more than this share of the larger one may have a switch between them.</summary>
    private const double Steady = 0.3;

    /// <summary>The watts with what nobody read taken on the straight line between the readings about it; once the instant of switching off is known, as the last one up to that. What stays open is not a number.</summary>
    /// <param name="time">s; rising.</param>
    /// <param name="watts">W; not a number where none were read.</param>
    /// <param name="offS">When it was switched off, s; infinite or not a number: not said.</param>
    public static double[] Filled(double[] time, double[] watts, double offS)
    {
        double until = double.IsNaN(offS) ? double.PositiveInfinity : offS;
        int[] known = [.. Enumerable.Range(0, time.Length).Where(i => double.IsFinite(watts[i]) && time[i] < until)];
        return [.. watts.Select((own, i) => double.IsFinite(own) || !(time[i] < until) ? own : At(i))];

        double At(int i)
        {
            int[] before = [.. known.Where(k => k < i).TakeLast(1)], after = [.. known.Where(k => k > i).Take(1)];
            return (before, after) switch
            {
                ([var from], [var to]) when Math.Abs(watts[from] - watts[to]) <= Steady * Math.Max(watts[from], watts[to]) => watts[from] + ((watts[to] - watts[from]) * (time[i] - time[from]) / (time[to] - time[from])),
                ([var last], []) when double.IsFinite(until) => watts[last],
                _ => double.NaN,
            };
        }
    }
}
