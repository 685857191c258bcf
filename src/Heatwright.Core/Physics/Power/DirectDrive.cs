namespace Heatwright.Physics;

/// <summary>A heater straight on the pack, through a switch only; and the plain linear regulator for small sense loads.</summary>
/// <remarks>P = (V/(R_h + R_s + R_on))²·R_h. Ohm's law. Power goes with the square of the voltage: it falls over the charge.</remarks>
public static class DirectDrive
{
    /// <summary>Mean heater power at a PWM duty while the battery sees the pulses (no smoothing capacitor).</summary>
    [Law("heater-power", "power paths", "d·(V/(R + Rseries))²·R", Says = "power of a heater on a pack, with duty", Unit = "W", Source = "definition", Where = "Ohm's law, mean over the pulses", Valid = "pulses reach the battery; with a smoothing capacitor see pwm-smoothed",
        Example = "supply=3.7V heater=2.2ohm series=0.25ohm duty=60%")]
    public static double HeaterW(
        [In("V", "V", "rested pack or stiff supply", Name = "supply", Min = 0)] double openV,
        [In("R", "Ω", "heater at its present temperature", Name = "heater", Min = 0)] double heaterOhm,
        [In("Rseries", "Ω", "source, wires and switch", Name = "series", Min = 0, Default = 0)] double seriesOhm = 0,
        [In("d", "", "duty", Min = 0, Max = 1, Default = 1)] double duty = 1)
    {
        double amps = CurrentA(openV, heaterOhm, seriesOhm);
        return Impossible.UnlessFraction(duty) * amps * amps * heaterOhm;
    }

    /// <summary>Current while on.</summary>
    [Law("heater-current", "power paths", "V/(R + Rseries)", Says = "current of a heater while on", Unit = "A", Source = "definition", Where = "Ohm's law", Valid = "heater at its present temperature, full duty", Example = "supply=5V heater=2.5ohm")]
    public static double CurrentA(
        [In("V", "V", "rested pack or stiff supply", Name = "supply", Min = 0)] double openV,
        [In("R", "Ω", "heater at its present temperature", Name = "heater", Min = 0)] double heaterOhm,
        [In("Rseries", "Ω", "source, wires and switch", Name = "series", Min = 0, Default = 0)] double seriesOhm = 0) =>
        Impossible.IfNegative(openV, "V") / (Impossible.UnlessPositive(heaterOhm, "Ω") + Impossible.IfNegative(seriesOhm, "Ω"));

    /// <summary>Share of the battery's power that reaches the heater, at any duty without smoothing: R_h/(R_h + R_s).</summary>
    public static double Efficiency(double heaterOhm, double seriesOhm) =>
        Impossible.UnlessPositive(heaterOhm, "Ω") / (heaterOhm + Impossible.IfNegative(seriesOhm, "Ω"));

    /// <summary>Heater that takes a wanted power on the side where most of it arrives; none when the source cannot give it.</summary>
    /// <remarks>The larger root of P·(R + R_s)² = V²·R. The smaller root is a heater below the source resistance, which heats the battery instead.</remarks>
    [Law("heater-for-power", "power paths", "R = b + √(b² − Rs²), b = V²/(2P) − Rs", Says = "heater resistance that takes a wanted power", Unit = "Ω", Source = "definition", Where = "Ohm's law, the higher of two answers",
        Valid = "straight on the pack, always on", Example = "open=7.4V series=0.22ohm power=10W")]
    public static double? HeaterOhmFor(
        [In("V", "V", "rested pack or stiff supply", Name = "open", Min = 0)] double openV,
        [In("Rs", "Ω", "everything in series", Name = "series", Min = 0)] double seriesOhm,
        [In("P", "W", "wanted in the heater", Name = "power", Min = 0)] double wantedW)
    {
        double half = (Impossible.UnlessPositive(openV, "V") * openV) - (2 * Impossible.UnlessPositive(wantedW, "W") * Impossible.IfNegative(seriesOhm, "Ω"));
        double radicand = (half * half) - (4 * wantedW * wantedW * seriesOhm * seriesOhm);
        return half > 0 && radicand >= 0 ? (half + Math.Sqrt(radicand)) / (2 * wantedW) : null;
    }

    /// <summary>Efficiency of a linear regulator: V_out/V_in, quiescent current left out.</summary>
    [Law("linear-efficiency", "power paths", "Vout/Vin", Says = "efficiency of a linear regulator", Source = "definition", Where = "same current in and out",
        Valid = "its own supply current left out", Example = "input-voltage=4.2V output-voltage=3.3V")]
    public static double LinearEfficiency(
        [In("Vin", "V", "input", Name = "input-voltage", Min = 0)] double inV,
        [In("Vout", "V", "output", Name = "output-voltage", Min = 0)] double outV) =>
        outV <= Impossible.UnlessPositive(inV, "V") ? Impossible.IfNegative(outV, "V") / inV : throw Impossible.Outside(nameof(outV), outV, "V", "no more than the input voltage");

    /// <summary>Heat in a linear regulator: (V_in − V_out)·I.</summary>
    [Law("linear-heat", "power paths", "(Vin − Vout)·I", Says = "heat in a linear regulator", Unit = "W", Source = "definition", Where = "power balance", Valid = "the regulator's own current left out", Example = "input-voltage=4.2V output-voltage=3.3V current=50mA")]
    public static double LinearHeatW(
        [In("Vin", "V", "input", Name = "input-voltage", Min = 0)] double inV,
        [In("Vout", "V", "output", Name = "output-voltage", Min = 0)] double outV,
        [In("I", "A", "load current", Min = 0)] double currentA) =>
        inV * (1 - LinearEfficiency(inV, outV)) * Impossible.IfNegative(currentA, "A");
}
