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

    /// <summary>When it was switched off, s; infinite: nobody said, and the power fell somewhere between two rows.</summary>
    public double OffS { get; init; } = double.PositiveInfinity;

    /// <summary>Numbers of the readings that its rows are.</summary>
    public IReadOnlyList<int> Numbers { get; init; } = [];

    /// <summary>Power as the plant takes it: mean of the two rows that bound each interval, and nothing from the instant on at which it was switched off.</summary>
    public Schedule Drive()
    {
        List<double> times = [], values = [];
        for (int i = 0; i < TimesS.Length; i++)
        {
            double from = TimesS[i], to = i + 1 < TimesS.Length ? TimesS[i + 1] : from;
            times.Add(from);
            values.Add(OffS <= from ? 0 : i + 1 == TimesS.Length || OffS <= to ? Watts[i] : (Watts[i] + Watts[i + 1]) / 2);
            if (OffS > from && OffS < to)
            {
                times.Add(OffS);
                values.Add(0);
            }
        }

        return new([.. times], [.. values]);
    }
}
