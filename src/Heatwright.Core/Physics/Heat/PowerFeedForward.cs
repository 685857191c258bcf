namespace Heatwright.Physics;

/// <summary>From watts wanted to duty, as the pack runs down.</summary>
/// <remarks>Mean power of pulse width is d times the on-power, never (dV)²/R. The voltage is read under load in the same frame.
/// Checked: ControlTests.</remarks>
public static class PowerFeedForward
{
    /// <summary>Duty for a power when heater watts are known at one voltage only: d = (s/P_nom)(V_nom/V)². Above 1: not within reach.</summary>
    [Law("duty-for-power", "control", "d = (s/P_nom)·(V_nom/V)²", Says = "duty for a wanted power when watts are known at one voltage", Source = "definition", Where = "resistive heater", Valid = "resistance as at the nominal point; above 1 the power is out of reach", Example = "power=30W nominal-power=35.4W nominal=8.2V volts=8.2V")]
    public static double Duty(
        [In("s", "W", "power wanted", Name = "power", Min = 0)] double powerW,
        [In("P_nom", "W", "full power at the nominal voltage", Name = "nominal-power", Min = 0)] double nominalW,
        [In("V_nom", "V", "nominal voltage", Name = "nominal", Min = 0)] double nominalV,
        [In("V", "V", "voltage under load in this frame", Name = "volts", Min = 0)] double volts) =>
        Impossible.IfNegative(powerW, "W") / Impossible.UnlessPositive(nominalW, "W") * Math.Pow(Impossible.UnlessPositive(nominalV, "V") / Impossible.UnlessPositive(volts, "V"), 2);

    /// <summary>Largest power at hand, W: the smaller of d_max·P_on and the current limit times the voltage.</summary>
    [Law("power-limit", "control", "P_max = min(d_max·V²/R, I_lim·V)", Says = "largest power at hand under duty and current limits", Unit = "W", Source = "definition", Where = "resistive heater, current limit of cells or converter", Valid = "V under load", Example = "volts=6.4V resistance=1.9Ω duty=1 limit=5A")]
    public static double MostW(
        [In("V", "V", "voltage under load", Name = "volts", Min = 0)] double volts,
        [In("R", "Ω", "heater, hot", Name = "resistance", Min = 0)] double heaterOhm,
        [In("d_max", "", "largest duty", Name = "duty", Min = 0, Max = 1, Default = 1)] double mostDuty,
        [In("I_lim", "A", "current limit", Name = "limit", Min = 0)] double limitA = double.PositiveInfinity)
    {
        double byDutyW = Impossible.UnlessFraction(mostDuty) * Impossible.IfNegative(volts, "V") * volts / Impossible.UnlessPositive(heaterOhm, "Ω");
        return double.IsPositiveInfinity(limitA) ? byDutyW : Math.Min(byDutyW, Impossible.IfNegative(limitA, "A") * volts);
    }

    /// <summary>Rest swing from the steps of the duty, K: one step of power times the thermal resistance.</summary>
    [Law("duty-step", "control", "ΔT = (P_on/2^n)·K", Says = "temperature swing left by the steps of the duty", Unit = "K", Source = "definition", Where = "quantised power", Valid = "unseen when below one step of the reading", Example = "power=30W bits=8 resistance=30K/W")]
    public static double DutyStepK(
        [In("P_on", "W", "full power", Name = "power", Min = 0)] double onW,
        [In("n", "", "bits of the duty", Name = "bits", Min = 1, Max = 32)] double bits,
        [In("K", "K/W", "thermal resistance to air", Name = "resistance", Min = 0)] double resistanceKPerW) =>
        Impossible.IfNegative(onW, "W") / Math.Pow(2, Impossible.Unless(bits, 1, 32, "bit")) * Impossible.UnlessPositive(resistanceKPerW, "K/W");

    /// <summary>Swing of the core to either side of its mean under pulse width, K: d(1 − d)·P·T_f/(2C).</summary>
    [Law("pwm-ripple", "control", "ΔT = ±d·(1 − d)·P_on·T_f/(2·C)", Says = "swing of the core to either side of its mean under pulse width", Unit = "K", Source = "definition", Where = "heat balance over one period", Valid = "period short against the core's time constant", Example = "duty=0.5 power=20W period=100ms core=1.2J/K")]
    public static double RippleK(
        [In("d", "", "duty", Name = "duty", Min = 0, Max = 1)] double duty,
        [In("P_on", "W", "power while on", Name = "power", Min = 0)] double onW,
        [In("T_f", "s", "period", Name = "period", Min = 0)] double periodS,
        [In("C", "J/K", "heat capacity of the core", Name = "core", Min = 0)] double coreJPerK) =>
        Impossible.UnlessFraction(duty) * (1 - duty) * Impossible.IfNegative(onW, "W") * Impossible.IfNegative(periodS, "s") / (2 * Impossible.UnlessPositive(coreJPerK, "J/K"));
}
