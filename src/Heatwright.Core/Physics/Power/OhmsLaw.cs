namespace Heatwright.Physics;

/// <summary>Volts, amperes, ohms and watts of one part: two of them say the others.</summary>
public static class OhmsLaw
{
    /// <summary>All four from any two.</summary>
    [Law("ohms-law", "heaters", "V = I·R, P = V·I", Says = "volts, amperes, ohms and watts from any two of them", Source = "definition", Where = "Ohm's law", Valid = "direct current, or effective values of one resistance",
        Example = "voltage=12V current=1.6A")]
    public static FourOfOhm From(
        [In("V", "V", "voltage", Name = "voltage", Min = 0)] double volts = double.NaN,
        [In("I", "A", "current", Name = "current", Min = 0)] double amps = double.NaN,
        [In("R", "Ω", "resistance", Name = "resistance", Min = 0)] double ohms = double.NaN,
        [In("P", "W", "power", Name = "power", Min = 0)] double watts = double.NaN)
    {
        int known = (double.IsNaN(volts) ? 0 : 1) + (double.IsNaN(amps) ? 0 : 1) + (double.IsNaN(ohms) ? 0 : 1) + (double.IsNaN(watts) ? 0 : 1);
        if (known != 2)
        {
            throw new ArgumentException($"{known} of voltage, current, resistance and power are given: it must be two of them.");
        }

        foreach (double value in (double[])[volts, amps, ohms, watts])
        {
            if (!double.IsNaN(value))
            {
                Impossible.UnlessPositive(value, "");
            }
        }

        double v = !double.IsNaN(volts) ? volts : double.IsNaN(ohms) ? watts / amps : double.IsNaN(amps) ? Math.Sqrt(watts * ohms) : amps * ohms;
        double i = !double.IsNaN(amps) ? amps : !double.IsNaN(ohms) ? v / ohms : watts / v;
        return new(v, i, v / i, v * i);
    }
}

/// <summary>Volts, amperes, ohms and watts of one part.</summary>
/// <param name="Volts">Voltage.</param>
/// <param name="Amps">Current.</param>
/// <param name="Ohms">Resistance.</param>
/// <param name="Watts">Power.</param>
public readonly record struct FourOfOhm(
    [property: Out("V", "voltage", Name = "voltage")] double Volts,
    [property: Out("A", "current", Name = "current")] double Amps,
    [property: Out("Ω", "resistance", Name = "resistance")] double Ohms,
    [property: Out("W", "power", Name = "power")] double Watts);
