using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>A table from counts to sixteenths of a degree, in whole numbers only, with a bound that holds at every count.</summary>
/// <remarks>t = start[i] + (((count − at[i])·slope[i] + 2048) &gt;&gt; 12). No number becomes negative before the shift, so that every compiler does the same.
/// Checked: CountTableTests, by trying all tables of small cases and all counts of large ones.</remarks>
public sealed record CountTable
{
    /// <summary>Bits behind the point of a slope.</summary>
    public const int Shift = 12;

    private const long Half = 1L << (Shift - 1);
    private const long One = 1L << Shift;

    private CountTable(IReadOnlyList<int> at, IReadOnlyList<int> starts, IReadOnlyList<int> slopes, int last, double worstK)
    {
        (At, Starts, Slopes, Last, WorstK) = (at, starts, slopes, last, worstK);
    }

    /// <summary>First count of each piece, rising.</summary>
    public IReadOnlyList<int> At { get; }

    /// <summary>Sixteenths of a degree there.</summary>
    public IReadOnlyList<int> Starts { get; }

    /// <summary>Sixteenths of a degree per count, times 4096.</summary>
    public IReadOnlyList<int> Slopes { get; }

    /// <summary>Last count of the table.</summary>
    public int Last { get; }

    /// <summary>Largest distance from the law over every count of the table, K.</summary>
    public double WorstK { get; }

    /// <summary>Sixteenths of a degree at a count inside the table, exactly as the controller works it out.</summary>
    public int SixteenthsAt(int count)
    {
        int piece = At.Count - 1;
        while (piece > 0 && count < At[piece])
        {
            piece--;
        }

        return Value(Starts[piece], Slopes[piece], count - At[piece]);
    }

    /// <summary>The table of fewest pieces that keeps the bound at every count and never falls; among those with as few, the one with the smallest largest miss.</summary>
    /// <param name="law">Degrees at a count.</param>
    /// <param name="first">First count.</param>
    /// <param name="last">Last count.</param>
    /// <param name="boundK">Largest miss allowed.</param>
    /// <remarks>For a piece that begins at one count every later count allows the slope a range; the ranges only shrink, so one walk tells how far each piece can
    /// reach, and the fewest pieces come out exactly by dynamic programming. A greedy walk is not enough: reaching far may begin the next piece badly.</remarks>
    public static Checked<CountTable> Fewest(Func<double, double> law, int first, int last, double boundK)
    {
        double[] wanted = [.. Enumerable.Range(first, last - first + 1).Select(count => 16 * law(count))];
        if (Pieces(wanted, boundK) is not { } pieces)
        {
            return new(new Problem("No table in sixteenths of a degree can be so exact.", "calibration table", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{boundK:0.###} K"),
                "above 0.13 K, and degrees that rise from -2000 to 2000 °C", "Allow the table a larger miss."));
        }

        double low = 0, high = boundK;
        for (int i = 0; i < 12; i++)
        {
            double middle = 0.5 * (low + high);
            if (Pieces(wanted, middle) is { } tighter && tighter.Count == pieces.Count)
            {
                (pieces, high) = (tighter, middle);
            }
            else
            {
                low = middle;
            }
        }

        int[] at = [.. pieces.Select(piece => piece.From + first)];
        int[] starts = [.. pieces.Select(piece => Start(wanted[piece.From]))];
        int[] slopes = [.. pieces.Select(piece => piece.Slope)];
        double worst = 0;
        var table = new CountTable(at, starts, slopes, last, 0);
        for (int k = 0; k < wanted.Length; k++)
        {
            worst = Math.Max(worst, Math.Abs(table.SixteenthsAt(first + k) - wanted[k]) / 16);
        }

        return new(new CountTable(at, starts, slopes, last, worst));
    }

    private static int Value(int start, int slope, int delta) => start + (int)((((long)delta * slope) + Half) >> Shift);

    private static int Start(double sixteenths) => (int)Math.Round(sixteenths);

    private static List<(int From, int Slope)>? Pieces(double[] wanted, double boundK)
    {
        int n = wanted.Length;
        double bound = 16 * boundK;
        if (wanted.Any(value => !(Math.Abs(value) < 32_000)) || bound < 0.5)
        {
            return null;
        }

        int[] fewest = new int[n + 1];
        (int From, int Slope)[] came = new (int, int)[n + 1];
        Array.Fill(fewest, int.MaxValue);
        fewest[0] = 0;
        for (int i = 0; i < n; i++)
        {
            if (fewest[i] == int.MaxValue)
            {
                continue;
            }

            int start = Start(wanted[i]);
            long low = 0, high = int.MaxValue;
            Reach(i, i + 1, (int)low);
            for (int k = i + 1; k < n; k++)
            {
                // Whole numbers t with |t − wanted| ≤ bound, turned into whole slopes that give them.
                long delta = k - i;
                long least = (long)Math.Ceiling(wanted[k] - bound) - start, most = (long)Math.Floor(wanted[k] + bound) - start;
                low = Math.Max(low, CeilingOf((One * least) - Half, delta));
                high = Math.Min(high, Math.Min(FloorOf((One * (most + 1)) - Half - 1, delta), (int.MaxValue - Half) / delta));
                if (low > high)
                {
                    break;
                }

                // The next piece begins at its own start; a piece must not end above that.
                long top = k + 1 < n ? FloorOf((One * (Start(wanted[k + 1]) - start + 1)) - Half - 1, delta) : high;
                if (low <= Math.Min(high, top))
                {
                    Reach(i, k + 1, (int)(low + ((Math.Min(high, top) - low) / 2)));
                }
            }

            void Reach(int from, int to, int slope)
            {
                if (fewest[from] + 1 < fewest[to])
                {
                    (fewest[to], came[to]) = (fewest[from] + 1, (from, slope));
                }
            }
        }

        List<(int, int)> pieces = [];
        for (int to = n; to > 0; to = came[to].From)
        {
            pieces.Insert(0, came[to]);
        }

        return pieces;
    }

    private static long FloorOf(long a, long b) => a >= 0 ? a / b : -((-a + b - 1) / b);

    private static long CeilingOf(long a, long b) => -FloorOf(-a, b);
}
