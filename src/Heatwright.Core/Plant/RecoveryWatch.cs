namespace Heatwright.Plant;

/// <summary>Times the way back to the target after pieces of work.</summary>
/// <param name="targetRise">Target above the air, K; NaN: none.</param>
/// <param name="everyS">Time from piece to piece, s.</param>
/// <param name="pieces">It looks at so many.</param>
internal sealed class RecoveryWatch(double targetRise, double everyS, int pieces)
{
    private double sinceS = double.NaN, lastS, lastRise;
    private bool took;
    private int done;
    private double longestS = double.NaN;

    /// <summary>Looks at an instant; between two of them the way up is straight.</summary>
    /// <param name="now">Time, s.</param>
    /// <param name="takes">A piece takes heat from now on.</param>
    /// <param name="rise">Of the working node above the air, K.</param>
    public void See(double now, bool takes, double rise)
    {
        if (took && !takes && done++ < pieces)
        {
            longestS = double.IsNaN(longestS) ? 0 : longestS;
            sinceS = double.IsNaN(sinceS) && rise < targetRise ? now : sinceS;
        }

        if (!double.IsNaN(sinceS) && rise >= targetRise)
        {
            double at = rise > lastRise && lastRise < targetRise ? now - ((now - lastS) * (rise - targetRise) / (rise - lastRise)) : now;
            (longestS, sinceS) = (Math.Max(longestS, at - sinceS), double.NaN);
        }

        (took, lastS, lastRise) = (takes, now, rise);
    }

    /// <summary>The longest way back, s; infinite: it did not come back before the next piece and until the end; NaN: there was no piece.</summary>
    public double LongestS(double now) => !double.IsNaN(sinceS) && now - sinceS > everyS ? double.PositiveInfinity : longestS;
}
