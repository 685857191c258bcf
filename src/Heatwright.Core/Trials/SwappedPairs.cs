using Heatwright.Numerics;

namespace Heatwright.Trials;

/// <summary>Volts and amps written into each other's places in one reading: as it stands it is off the others, and changed both round it is one of them.</summary>
/// <remarks>Compared as shares, so that volts and amps are judged alike. Limits: our choice.</remarks>
/// <param name="card">Name of the kind of trial.</param>
/// <param name="volts">Volts of all readings; not a number where none was read.</param>
/// <param name="amps">Amps of all readings.</param>
/// <param name="without">True for readings that count for nothing here; null: all count.</param>
internal sealed class SwappedPairs(string card, double[] volts, double[] amps, Func<int, bool>? without = null)
{
    /// <summary>So many usual spreads of the others off, as it stands.</summary>
    private const double Off = 5;

    /// <summary>No more usual spreads off, changed round.</summary>
    private const double Fits = 3;

    /// <summary>Spread of readings that are the same to a digit or two: volts and amps nearer to each other than five of it cannot be told apart.</summary>
    private const double LeastSpread = 0.01;

    /// <summary>And where the display is coarse, this share of a step of its last digit.</summary>
    private const double LeastDigit = 0.5;

    /// <summary>Changed round it lies so many times nearer than as it stands, where a change of load leaves it off the middle of the others.</summary>
    private const double Nearer = 5;

    /// <summary>And never farther off than this.</summary>
    private const double Near = 0.1;

    /// <summary>Below this share of the largest the load is off: both are the noise of their meters, and may be anything beside each other.</summary>
    private const double Noise = 0.02;

    /// <summary>Share within which volts are held.</summary>
    private const double HeldWithin = 0.03;

    /// <summary>Share beyond which a reading is none of them.</summary>
    private const double FarOff = 0.2;

    /// <summary>Readings on each side that a reading is held against.</summary>
    private const int Each = 4;

    /// <summary>Tests whose load is one resistor all along: there volts over amps stay what they are, however the supply is turned. What a cell or a module gives is the load's choice.</summary>
    private static readonly string[] OneResistor = ["volts-amps", "warm-up", "stuck-on", "hold-power"];

    private readonly double stepV = Step(volts), stepA = Step(amps);
    private readonly int[] largestV = Largest(volts, volts, amps, without), largestA = Largest(amps, volts, amps, without);

    /// <summary>True where a reading has volts and amps changed over.</summary>
    /// <param name="row">The reading.</param>
    public bool Is(int row)
    {
        double leastV = Noise * Largest(volts, largestV, row), leastA = Noise * Largest(amps, largestA, row);
        int[] around = [.. Enumerable.Range(row - Each, (2 * Each) + 1).Where(r => r != row && Counts(r, volts, amps, without) && Math.Abs(volts[r]) > leastV && Math.Abs(amps[r]) > leastA)];
        double v = Math.Log(Math.Abs(volts[row])), a = Math.Log(Math.Abs(amps[row]));
        if (!Counts(row, volts, amps, without) || around.Length < 2 || !double.IsFinite(v) || !double.IsFinite(a))
        {
            return false;
        }

        double[] theirV = [.. around.Select(r => Math.Log(Math.Abs(volts[r])))], theirA = [.. around.Select(r => Math.Log(Math.Abs(amps[r])))];
        double digitV = stepV / Math.Exp(Sample.Median(theirV)), digitA = stepA / Math.Exp(Sample.Median(theirA));
        return (Turned(v, a, theirV, digitV, Near) && Turned(a, v, theirA, digitA, Near))
            || Held(v, a, theirV)
            || (OneResistor.Contains(card) && Turned(v - a, a - v, [.. theirV.Zip(theirA, (volt, amp) => volt - amp)], digitV + digitA, near: 0));
    }

    /// <summary>Volts that something holds, whatever the amps: the others agree, this one is far off, and what stands in the place of the amps is just these volts.</summary>
    private static bool Held(double v, double a, double[] others) => others.Max() - others.Min() < HeldWithin && Sample.Median(others) is var middle && Math.Abs(a - middle) < HeldWithin && Math.Abs(v - middle) > FarOff;

    private static bool Counts(int r, double[] volts, double[] amps, Func<int, bool>? without) => r >= 0 && r < volts.Length && without?.Invoke(r) != true && double.IsFinite(volts[r]) && double.IsFinite(amps[r]);

    /// <summary>The two rows of the largest sizes of a column: of a log of ten thousand they are sought once.</summary>
    private static int[] Largest(double[] column, double[] volts, double[] amps, Func<int, bool>? without) => [.. Enumerable.Range(0, column.Length).Where(r => Counts(r, volts, amps, without)).OrderByDescending(r => Math.Abs(column[r])).Take(2)];

    private static double Largest(double[] column, int[] largest, int row) => largest.Where(r => r != row).Select(r => Math.Abs(column[r])).FirstOrDefault();

    /// <summary>What a display leaves open of what it shows.</summary>
    private static double Step(double[] column) => column.Where(double.IsFinite).ToArray() is { Length: > 0 } read ? LeastDigit * SheetMaker.LastDigit(read) : 0;

    /// <summary>True where one is off the others and the other is one of them.</summary>
    private static bool Turned(double stands, double turned, double[] others, double digit, double near)
    {
        double middle = Sample.Median(others);
        double spread = Math.Max(LeastSpread, Sample.Median([.. others.Select(other => Math.Abs(other - middle))]) / Quantiles.Normal(0.75));
        double off = Math.Abs(stands - middle);
        return off > Off * Math.Max(spread, digit) && Math.Abs(turned - middle) < Math.Max(Fits * spread, Math.Min(off / Nearer, near));
    }
}
