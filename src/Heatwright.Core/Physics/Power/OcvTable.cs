using System.Globalization;

namespace Heatwright.Physics;

/// <summary>Voltage of a rested cell against charge left, as straight pieces between published or measured points.</summary>
/// <remarks>Charge left is a fraction of the cell's present full capacity. A table belongs to the capacity test it was made with:
/// a capacity measured down to another cut-off shifts the zero. Between points straight, outside the table the end value.</remarks>
public sealed class OcvTable
{
    private readonly double[] charges;
    private readonly double[] volts;

    /// <summary>Takes points in rising order; a curve that does not rise strictly is refused, since it could not be read backwards.</summary>
    public OcvTable(ReadOnlySpan<double> charges, ReadOnlySpan<double> volts)
    {
        Impossible.UnlessCounted(charges.Length, 2, nameof(charges));
        if (charges.Length != volts.Length)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{charges.Length} charges but {volts.Length} voltages."), nameof(volts));
        }

        for (int i = 0; i < charges.Length; i++)
        {
            Impossible.UnlessFraction(charges[i], nameof(charges));
            Impossible.UnlessPositive(volts[i], "V", nameof(volts));
            if (i > 0 && !(charges[i] > charges[i - 1] && volts[i] > volts[i - 1]))
            {
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                    $"Point {i + 1} ({charges[i]}, {volts[i]} V) does not rise above the point before it."), nameof(volts));
            }
        }

        this.charges = charges.ToArray();
        this.volts = volts.ToArray();
    }

    /// <summary>A straight line from empty to full: the idealisation that has closed-form run times.</summary>
    public static OcvTable Line(double emptyV, double fullV) => new([0, 1], [emptyV, fullV]);

    /// <summary>Charges of the points.</summary>
    public ReadOnlySpan<double> Charges => charges;

    /// <summary>Voltages of the points.</summary>
    public ReadOnlySpan<double> Volts => volts;

    /// <summary>Rested voltage at a charge left.</summary>
    public double VoltsAt(double charge)
    {
        if (charge <= charges[0])
        {
            return volts[0];
        }

        if (charge >= charges[^1])
        {
            return volts[^1];
        }

        int i = PieceOf(charges, charge);
        return volts[i] + (SlopeOf(i) * (charge - charges[i]));
    }

    /// <summary>Charge left at a rested voltage; outside the table the end value.</summary>
    public double ChargeAt(double restedV)
    {
        if (restedV <= volts[0])
        {
            return charges[0];
        }

        if (restedV >= volts[^1])
        {
            return charges[^1];
        }

        int i = PieceOf(volts, restedV);
        return charges[i] + ((restedV - volts[i]) / SlopeOf(i));
    }

    /// <summary>Slope in volts per unit of charge, of the piece above the given charge (below it at full).</summary>
    public double SlopeVAt(double charge) => SlopeOf(PieceOf(charges, Math.Clamp(charge, charges[0], charges[^1])));

    /// <summary>How far off a charge read from a voltage can be, for a given error of that voltage.</summary>
    /// <remarks>On the flat middle of LiFePO4 a millivolt is about a percent: there amp-hours must be counted instead.</remarks>
    public double ChargeDoubt(double charge, double voltsDoubtV) => Impossible.IfNegative(voltsDoubtV, "V") / SlopeVAt(charge);

    /// <summary>Mean rested voltage over a range of charge: the exact integral of the straight pieces.</summary>
    public double MeanV(double fromCharge, double toCharge)
    {
        Impossible.UnlessFraction(fromCharge);
        Impossible.UnlessFraction(toCharge);
        return fromCharge == toCharge ? VoltsAt(fromCharge) : (AreaTo(toCharge) - AreaTo(fromCharge)) / (toCharge - fromCharge);
    }

    private double AreaTo(double charge)
    {
        double area = volts[0] * Math.Min(charge, charges[0]);
        for (int i = 0; i + 1 < charges.Length && charge > charges[i]; i++)
        {
            double end = Math.Min(charge, charges[i + 1]);
            area += (end - charges[i]) * (volts[i] + VoltsAt(end)) / 2;
        }

        return area + (volts[^1] * Math.Max(0, charge - charges[^1]));
    }

    private double SlopeOf(int piece) => (volts[piece + 1] - volts[piece]) / (charges[piece + 1] - charges[piece]);

    private static int PieceOf(double[] ends, double value)
    {
        int found = Array.BinarySearch(ends, value);
        return Math.Clamp(found >= 0 ? found : ~found - 1, 0, ends.Length - 2);
    }
}
