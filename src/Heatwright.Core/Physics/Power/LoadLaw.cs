namespace Heatwright.Physics;

/// <summary>Volts and amps of a load that is no heater, as straight pieces; both rise.</summary>
/// <remarks>From the first point straight down to zero, after the last point the last current.</remarks>
public sealed class VoltsAmpsTable
{
    private readonly double[] volts;
    private readonly double[] amps;

    /// <summary>Points with rising volts above 0 and currents that do not fall.</summary>
    public VoltsAmpsTable(ReadOnlySpan<double> volts, ReadOnlySpan<double> amps)
    {
        Impossible.UnlessCounted(Math.Min(volts.Length, amps.Length), 1, nameof(volts));
        for (int i = 0; i < volts.Length; i++)
        {
            Impossible.IfNegative(amps[i], "A", nameof(amps));
            if (!(volts[i] > (i == 0 ? 0 : volts[i - 1])) || (i > 0 && amps[i] < amps[i - 1]))
            {
                throw new ArgumentException("Volts of a table rise from above 0, and its currents do not fall.", nameof(volts));
            }
        }

        this.volts = [0, .. volts];
        this.amps = [0, .. amps];
    }

    /// <summary>Current at a voltage.</summary>
    public double AmpsAt(double atV)
    {
        int i = Piece(atV, volts);
        return i == volts.Length ? amps[^1] : i == 0 ? 0 : amps[i - 1] + ((atV - volts[i - 1]) * Slope(i));
    }

    /// <summary>Voltage at which source volts behind ohms meet the table.</summary>
    internal double VoltsBehind(double openV, double ohm)
    {
        for (int i = 1; i < volts.Length; i++)
        {
            // Along piece i the current is a + k·V; the source gives (open − V)/ohm.
            double k = Slope(i);
            double meet = (openV - (ohm * (amps[i - 1] - (k * volts[i - 1])))) / (1 + (ohm * k));
            if (meet <= volts[i])
            {
                return meet;
            }
        }

        return openV - (ohm * amps[^1]);
    }

    /// <summary>Voltage at which it takes a power.</summary>
    internal double VoltsFor(double watts)
    {
        for (int i = 1; i < volts.Length; i++)
        {
            if (watts <= volts[i] * amps[i])
            {
                double k = Slope(i);
                double a = amps[i - 1] - (k * volts[i - 1]);
                return k > 0 ? 2 * watts / (a + Math.Sqrt((a * a) + (4 * k * watts))) : watts / a;
            }
        }

        return amps[^1] > 0 ? watts / amps[^1] : double.PositiveInfinity;
    }

    /// <summary>Voltage at which it takes a current; NaN where it never does.</summary>
    internal double VoltsForAmps(double atA)
    {
        int i = Piece(atA, amps);
        return i == 0 ? 0 : i == amps.Length ? double.NaN : volts[i - 1] + ((atA - amps[i - 1]) / Slope(i));
    }

    private double Slope(int i) => (amps[i] - amps[i - 1]) / (volts[i] - volts[i - 1]);

    private static int Piece(double at, double[] of)
    {
        int i = 0;
        while (i < of.Length && at > of[i])
        {
            i++;
        }

        return i;
    }
}

/// <summary>A load at one instant: what it draws at which volts.</summary>
public readonly record struct LoadLaw
{
    private enum Kind
    {
        Ohms,
        Amps,
        Watts,
        Table,
    }

    private readonly Kind kind;
    private readonly double value;
    private readonly VoltsAmpsTable? table;

    private LoadLaw(Kind kind, double value, VoltsAmpsTable? table = null) => (this.kind, this.value, this.table) = (kind, value, table);

    /// <summary>Ohms, or NaN where the load is no resistance.</summary>
    public double Ohm => kind == Kind.Ohms ? value : double.NaN;

    /// <summary>Draws its power whatever the volts: no current limit can hold it, it collapses.</summary>
    public bool IsConstantPower => kind == Kind.Watts;

    /// <summary>A resistance.</summary>
    public static LoadLaw Ohms(double ohm) => new(Kind.Ohms, ohm);

    /// <summary>The same current at any volts.</summary>
    public static LoadLaw Amps(double amps) => new(Kind.Amps, amps);

    /// <summary>The same power at any volts.</summary>
    public static LoadLaw Watts(double watts) => new(Kind.Watts, watts);

    /// <summary>A table.</summary>
    public static LoadLaw Of(VoltsAmpsTable table) => new(Kind.Table, 0, table);

    /// <summary>Current at a voltage above 0.</summary>
    public double AmpsAt(double volts) => kind switch
    {
        Kind.Ohms => volts / value,
        Kind.Amps => value,
        Kind.Watts => value / volts,
        _ => table!.AmpsAt(volts),
    };

    /// <summary>Voltage at which source volts behind ohms meet the load; for a constant power the higher of two. NaN: nowhere.</summary>
    public double VoltsBehind(double openV, double ohm)
    {
        switch (kind)
        {
            case Kind.Ohms:
                return openV * value / (ohm + value);
            case Kind.Amps:
                return openV - (ohm * value) is var volts and > 0 ? volts : double.NaN;
            case Kind.Watts:
                double radicand = (openV * openV) - (4 * ohm * value);
                return openV > 0 && radicand >= 0 ? (openV + Math.Sqrt(radicand)) / 2 : double.NaN;
            default:
                return table!.VoltsBehind(openV, ohm) is var meet and > 0 ? meet : double.NaN;
        }
    }

    /// <summary>Voltage at which it takes a power; NaN: at none.</summary>
    public double VoltsFor(double watts) => kind switch
    {
        Kind.Ohms => Math.Sqrt(watts * value),
        Kind.Amps => value > 0 ? watts / value : double.NaN,
        Kind.Watts => double.NaN,
        _ => table!.VoltsFor(watts),
    };

    /// <summary>Voltage at which it takes a current; NaN: at none.</summary>
    public double VoltsForAmps(double amps) => kind switch
    {
        Kind.Ohms => amps * value,
        Kind.Amps => double.NaN,
        Kind.Watts => amps > 0 ? value / amps : double.NaN,
        _ => table!.VoltsForAmps(amps),
    };
}

/// <summary>An operating point as bare numbers, without a heap object: what the plant solves a million times. NaN where there is no steady point.</summary>
internal readonly record struct PathNumbers(PathRegion Region, double InputA, double InputV, double OutV, double OutW, double LossW, double Duty)
{
    public bool Exists => !double.IsNaN(InputA);

    public static PathNumbers Without(PathRegion region) => new(region, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);

    public PathPoint Boxed => Exists ? new(Region, InputA, InputV, OutV, OutW, LossW, Duty) : PathPoint.Without(Region);
}
