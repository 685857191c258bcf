namespace Heatwright.Physics;

/// <summary>A curve replaced by chords between some of its own points.</summary>
/// <param name="Breakpoints">Indices of the points kept, first and last included.</param>
/// <param name="MaxError">Largest distance between chords and curve, in units of y.</param>
public sealed record Chords(IReadOnlyList<int> Breakpoints, double MaxError);

/// <summary>Piecewise linear tables for a controller: how few chords keep a curve within a limit.</summary>
/// <remarks>Exact minimum by dynamic programming over the points of a grid: a greedy walk is not enough, because whether a chord fits
/// is not monotone across an inflection. Fewest chords first, then the smallest largest error. Checked: ChordTableTests.</remarks>
public static class ChordTable
{
    /// <summary>Upper bound of the error of one chord: max|f″|·h²/8.</summary>
    [Law("chord-error", "calibration", "e ≤ |f″|·h²/8", Says = "largest error of a straight piece of a table", Source = "definition", Where = "interpolation error",
        Valid = "twice differentiable curve", Example = "curvature=0.01 width=2")]
    public static double ErrorBound(
        [In("f″", "", "largest curvature", Name = "curvature", Min = 0)] double mostCurvature,
        [In("h", "", "width of the piece", Name = "width", Min = 0)] double width) => mostCurvature * width * width / 8;

    /// <summary>The fewest chords that stay within a limit.</summary>
    /// <param name="x">Grid of the input, rising; the breakpoints are taken from it.</param>
    /// <param name="y">The curve there.</param>
    /// <param name="limit">Largest error allowed, in units of y.</param>
    public static Chords Fewest(IReadOnlyList<double> x, IReadOnlyList<double> y, double limit)
    {
        int n = x.Count;
        double[] xs = [.. x], ys = [.. y];
        double[][] error = new double[n][];
        for (int i = 0; i < n; i++)
        {
            error[i] = new double[n];
            for (int j = i + 1; j < n; j++)
            {
                error[i][j] = ChordError(xs, ys, i, j);
            }
        }

        double[] best = [.. Enumerable.Repeat(double.PositiveInfinity, n)];
        best[0] = 0;
        List<int[]> cameFrom = [];
        while (!(best[n - 1] <= limit))
        {
            if (cameFrom.Count >= n)
            {
                throw new ArgumentOutOfRangeException(nameof(limit), limit, "No chords between these points stay within so small a limit.");
            }

            best = OneMoreChord(best, error, out int[] from);
            cameFrom.Add(from);
        }

        List<int> breakpoints = [n - 1];
        for (int chord = cameFrom.Count - 1; chord >= 0; chord--)
        {
            breakpoints.Insert(0, cameFrom[chord][breakpoints[0]]);
        }

        return new(breakpoints, best[n - 1]);
    }

    /// <summary>The straight line with the smallest largest error: y = intercept + slope·x.</summary>
    public static (double Intercept, double Slope, double MaxError) BestLine(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        // Half the height of the strip that holds all points is convex in the slope, so thirds find its lowest place.
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        for (int i = 1; i < x.Count; i++)
        {
            double slope = (y[i] - y[i - 1]) / (x[i] - x[i - 1]);
            (low, high) = (Math.Min(low, slope), Math.Max(high, slope));
        }

        for (int step = 0; step < 200; step++)
        {
            double third = (high - low) / 3;
            (low, high) = Strip(low + third).Half < Strip(high - third).Half ? (low, high - third) : (low + third, high);
        }

        double best = 0.5 * (low + high);
        var strip = Strip(best);
        return (strip.Middle, best, strip.Half);

        (double Middle, double Half) Strip(double slope)
        {
            double least = double.PositiveInfinity, most = double.NegativeInfinity;
            for (int i = 0; i < x.Count; i++)
            {
                double rest = y[i] - (slope * x[i]);
                (least, most) = (Math.Min(least, rest), Math.Max(most, rest));
            }

            return (0.5 * (least + most), 0.5 * (most - least));
        }
    }

    private static double[] OneMoreChord(double[] best, double[][] error, out int[] from)
    {
        int n = best.Length;
        double[] next = [.. Enumerable.Repeat(double.PositiveInfinity, n)];
        from = new int[n];
        for (int i = 0; i < n; i++)
        {
            for (int j = i + 1; j < n && double.IsFinite(best[i]); j++)
            {
                double worst = Math.Max(best[i], error[i][j]);
                if (worst < next[j])
                {
                    (next[j], from[j]) = (worst, i);
                }
            }
        }

        return next;
    }

    // Errors are looked at on the grid; a parabola through the worst point and its neighbours gives the top between them.
    private static double ChordError(double[] x, double[] y, int i, int j)
    {
        double slope = (y[j] - y[i]) / (x[j] - x[i]);
        int worst = i;
        double most = 0;
        for (int k = i + 1; k < j; k++)
        {
            double miss = Math.Abs(y[k] - y[i] - (slope * (x[k] - x[i])));
            (most, worst) = miss > most ? (miss, k) : (most, worst);
        }

        if (most == 0)
        {
            return 0;
        }

        double left = Miss(worst - 1), middle = Miss(worst), right = Miss(worst + 1);
        double bend = left - (2 * middle) + right;
        return bend == 0 ? most : Math.Max(most, Math.Abs(middle - ((right - left) * (right - left) / (8 * bend))));

        double Miss(int k) => y[k] - y[i] - (slope * (x[k] - x[i]));
    }
}
