using Heatwright.Plant;

namespace Heatwright.Trials;

/// <summary>A recorded warm-up or cool-down of a working end.</summary>
/// <param name="Name">Run it came from.</param>
/// <param name="TimesS">Rising.</param>
/// <param name="Watts">Power that heats, at each row: all that a heater takes, of a lamp what does not leave as light.</param>
/// <param name="EndC">Working end, °C; NaN where not read.</param>
/// <param name="GripC">Grip, °C; NaN where not read.</param>
/// <param name="AirC">Air, °C.</param>
public sealed record WarmUpLog(string Name, double[] TimesS, double[] Watts, double[] EndC, double[] GripC, double AirC)
{
    /// <summary>Standard doubt of a row's time, s: where degrees run fast it is a doubt of degrees.</summary>
    public double TimeDoubtS { get; init; }

    /// <summary>Standard doubt of the degrees of each row: one kelvin, and what the doubt of its time makes of the slope it stands on.</summary>
    internal double[] DoubtK()
    {
        double[] doubt = new double[TimesS.Length];
        for (int i = 0; i < doubt.Length; i++)
        {
            int before = Math.Max(0, i - 1);
            int after = Math.Min(doubt.Length - 1, i + 1);
            double slope = after > before ? (EndC[after] - EndC[before]) / (TimesS[after] - TimesS[before]) : 0;
            doubt[i] = double.IsFinite(slope) ? Math.Sqrt(1 + (slope * slope * TimeDoubtS * TimeDoubtS)) : 1;
        }

        return doubt;
    }

    /// <summary>Power as the plant takes it: mean of the two rows that bound each interval.</summary>
    public Schedule Drive()
    {
        double[] values = new double[TimesS.Length];
        for (int i = 0; i + 1 < values.Length; i++)
        {
            values[i] = (Watts[i] + Watts[i + 1]) / 2;
        }

        values[^1] = Watts[^1];
        return new(TimesS, values);
    }
}
