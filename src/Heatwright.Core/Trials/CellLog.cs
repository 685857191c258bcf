namespace Heatwright.Trials;

/// <summary>A recorded load on a cell: seconds, amps out of the cell, volts, and degrees where they were taken.</summary>
/// <param name="Name">Run it came from.</param>
/// <param name="TimesS">Rising.</param>
/// <param name="Amps">Positive out of the cell.</param>
/// <param name="Volts">At the cell.</param>
/// <param name="CellC">Cell surface, °C; NaN where not read.</param>
/// <param name="AirC">Air around it, °C.</param>
public sealed record CellLog(string Name, double[] TimesS, double[] Amps, double[] Volts, double[] CellC, double AirC)
{
    /// <summary>Charge already taken out of the full cell when the log starts, coulomb; null: not known, the rested volts at the start tell it.</summary>
    /// <remarks>Volts cannot tell the charge of a lithium iron phosphate cell between 10 and 95 %; counted ampere-hours can.</remarks>
    public double? TakenBeforeC { get; init; }

    /// <summary>Rows.</summary>
    public int Count => TimesS.Length;

    /// <summary>Charge taken out since the start at each row, coulomb; straight lines between rows.</summary>
    public double[] ChargeC()
    {
        double[] charge = new double[Count];
        for (int i = 1; i < Count; i++)
        {
            charge[i] = charge[i - 1] + ((Amps[i] + Amps[i - 1]) / 2 * (TimesS[i] - TimesS[i - 1]));
        }

        return charge;
    }

    /// <summary>The current as the plant takes it: mean of the two rows that bound each interval, so that the charge is right.</summary>
    public Plant.Schedule Drive()
    {
        double[] values = new double[Count];
        for (int i = 0; i + 1 < Count; i++)
        {
            values[i] = (Amps[i] + Amps[i + 1]) / 2;
        }

        values[^1] = Amps[^1];
        return new(TimesS, values);
    }

    /// <summary>True at rows whose current is still the same at the next row: only there do volts and amps belong together.</summary>
    public bool Steady(int row)
    {
        double most = Amps.Max(Math.Abs);
        return row + 1 >= Count || Math.Abs(Amps[row + 1] - Amps[row]) <= 0.02 * most;
    }
}
