namespace Heatwright.Numerics;

/// <summary>A piecewise straight curve through points; its ends are held outside.</summary>
/// <remarks>Looking up allocates nothing. The caller keeps the hint, so one table serves many threads; with a hint near the last
/// place a walk through the table costs a comparison or two a step.</remarks>
public sealed class LinearTable
{
    private readonly double[] x;
    private readonly double[] y;
    private readonly int direction;

    /// <param name="x">Strictly increasing.</param>
    /// <param name="y">As many values.</param>
    /// <exception cref="ArgumentException">The points do not make a table.</exception>
    public LinearTable(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (x.Length != y.Length || x.Length == 0)
        {
            throw new ArgumentException($"A table needs as many values as places and at least one: {x.Length} places, {y.Length} values.");
        }

        for (int i = 0; i < x.Length; i++)
        {
            if (!double.IsFinite(x[i]) || !double.IsFinite(y[i]) || (i > 0 && !(x[i] > x[i - 1])))
            {
                throw new ArgumentException($"Places must rise strictly and all numbers be finite; entry {i} is not so.");
            }
        }

        this.x = x.ToArray();
        this.y = y.ToArray();
        direction = Direction(this.y);
    }

    /// <summary>First place.</summary>
    public double First => x[0];

    /// <summary>Last place.</summary>
    public double Last => x[^1];

    /// <summary>Whether the values only rise or only fall, so that <see cref="PlaceOf"/> has one answer.</summary>
    public bool IsMonotone => direction != 0;

    /// <summary>Whether x lies between the first and the last place; outside, the end value is held.</summary>
    public bool Covers(double at) => at >= First && at <= Last;

    /// <summary>Value at x, the end values outside.</summary>
    public double At(double at)
    {
        int hint = -1;
        return At(at, ref hint);
    }

    /// <summary>Value at x; the hint remembers the stretch for the next call (start with zero).</summary>
    public double At(double at, ref int hint)
    {
        if (!(at > x[0]))
        {
            return double.IsNaN(at) ? double.NaN : y[0];
        }

        if (at >= x[^1])
        {
            return y[^1];
        }

        hint = Stretch(at, hint);
        return Between(x, y, hint, at);
    }

    /// <summary>Slope at x: that of the stretch to the right at a point, zero outside.</summary>
    public double SlopeAt(double at)
    {
        if (!(at >= x[0]) || at >= x[^1])
        {
            return 0;
        }

        int i = Stretch(at, -1);
        return (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
    }

    /// <summary>Place where the curve has a value, the end places outside; not a number for a table that is not monotone.</summary>
    public double PlaceOf(double value)
    {
        if (direction == 0 || double.IsNaN(value))
        {
            return double.NaN;
        }

        int low = 0, high = y.Length - 1;
        if (direction * (value - y[0]) <= 0)
        {
            return x[0];
        }

        if (direction * (value - y[^1]) >= 0)
        {
            return x[^1];
        }

        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = direction * (value - y[middle]) >= 0 ? (middle, high) : (low, middle);
        }

        return Between(y, x, low, value);
    }

    /// <summary>Index i with x[i] ≤ at &lt; x[i + 1]: the hinted stretch, its neighbours, else by halving.</summary>
    private int Stretch(double at, int hint)
    {
        for (int i = hint - 1; i <= hint + 1; i++)
        {
            if (i >= 0 && i + 1 < x.Length && at >= x[i] && at < x[i + 1])
            {
                return i;
            }
        }

        int found = Array.BinarySearch(x, at);
        return found >= 0 ? found : ~found - 1;
    }

    private static double Between(double[] from, double[] to, int i, double at)
    {
        double share = (at - from[i]) / (from[i + 1] - from[i]);
        // From the nearer end: a + share·(b − a) may step over b by a rounding.
        return share < 0.5 ? to[i] + (share * (to[i + 1] - to[i])) : to[i + 1] - ((1 - share) * (to[i + 1] - to[i]));
    }

    /// <summary>1 for strictly rising values, −1 for strictly falling ones, else 0.</summary>
    private static int Direction(double[] values)
    {
        int way = values.Length < 2 ? 0 : Math.Sign(values[1] - values[0]);
        for (int i = 1; i < values.Length; i++)
        {
            if (Math.Sign(values[i] - values[i - 1]) != way)
            {
                return 0;
            }
        }

        return way;
    }
}
