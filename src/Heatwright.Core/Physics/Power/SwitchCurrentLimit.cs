namespace Heatwright.Physics;

/// <summary>What the seller's amperes of a step-up module mean: the peak of its switch, not what comes out.</summary>
/// <remarks>D = 1 − V_in·η/V_out already holds the losses, so I_out = (I_lim − ΔI/2)·(1 − D) must not be multiplied by η again.
/// Source: [hauke-slva372], equations read in two agreeing transcriptions. Take the least specified limit, the lowest battery voltage under load, and
/// the inductance less 20 to 30 % for saturation (common practice, no source).</remarks>
public static class SwitchCurrentLimit
{
    /// <summary>Most a step-up gives before its switch current limit.</summary>
    [Law("step-up-limit", "power paths", "(Ilim − Vin·D/(2 L f))·(1 − D), D = 1 − Vin·η/Vout", Says = "most a step-up gives before its switch current limit", Source = "hauke-slva372", Where = "equations 1 to 4, transcriptions read",
        Valid = "continuous conduction; at the lowest battery voltage under load", Example = "limit=4A input-voltage=3.6V output-voltage=12V efficiency=88% inductance=10uH frequency=400kHz")]
    public static StepUpLimit StepUp(
        [In("Ilim", "A", "peak switch current: the label", Name = "limit", Min = 0)] double limitA,
        [In("Vin", "V", "input under load", Name = "input-voltage", Min = 0)] double inV,
        [In("Vout", "V", "set output", Name = "output-voltage", Min = 0)] double outV,
        [In("η", "", "efficiency", Name = "efficiency", Min = 0, Max = 1)] double efficiency,
        [In("L", "H", "inductance", Name = "inductance", Min = 0)] double inductanceH,
        [In("f", "Hz", "switching frequency", Name = "frequency", Min = 0)] double switchingHz)
    {
        double duty = Duty(inV, outV, efficiency);
        double ripple = RippleA(inV, duty, inductanceH, switchingHz);
        double most = Math.Max(0, Impossible.UnlessPositive(limitA, "A") - (ripple / 2)) * (1 - duty);
        return new(duty, ripple, most, most * outV);
    }

    /// <summary>Duty with losses in it: 1 − V_in·η/V_out.</summary>
    public static double Duty(double inV, double outV, double efficiency)
    {
        double rest = Impossible.UnlessPositive(inV, "V") * Impossible.UnlessPositive(Impossible.UnlessFraction(efficiency), "", nameof(efficiency)) / Impossible.UnlessPositive(outV, "V");
        return rest <= 1 ? 1 - rest : throw Impossible.Outside(nameof(outV), outV, "V", "at least the input times the efficiency: a step-up does not step down");
    }

    /// <summary>Peak-to-peak ripple of the inductor current: V_in·D/(L·f).</summary>
    public static double RippleA(double inV, double duty, double inductanceH, double switchingHz) =>
        Impossible.IfNegative(inV, "V") * Impossible.UnlessFraction(duty) / (Impossible.UnlessPositive(inductanceH, "H") * Impossible.UnlessPositive(switchingHz, "Hz"));

    /// <summary>Most an inverting or SEPIC stage gives: its switch carries input and output current together.</summary>
    [Law("inverting-limit", "power paths", "(Ilim − ΔI/2)·Vin·η/(Vin·η + Vout)", Says = "most output current of an inverting module or SEPIC", Unit = "A", Source = "definition", Where = "the switch carries input and output current",
        Valid = "continuous conduction", Example = "limit=4A ripple=0.6A input-voltage=3.6V output-voltage=12V efficiency=80%")]
    public static double InvertingMostA(
        [In("Ilim", "A", "switch current on the label", Name = "limit", Min = 0)] double limitA,
        [In("ΔI", "A", "ripple", Name = "ripple", Min = 0)] double rippleA,
        [In("Vin", "V", "input", Name = "input-voltage", Min = 0)] double inV,
        [In("Vout", "V", "output", Name = "output-voltage", Min = 0)] double outV,
        [In("η", "", "efficiency", Name = "efficiency", Min = 0, Max = 1)] double efficiency)
    {
        double given = Impossible.UnlessPositive(inV, "V") * Impossible.UnlessFraction(efficiency);
        return Math.Max(0, Impossible.UnlessPositive(limitA, "A") - (Impossible.IfNegative(rippleA, "A") / 2)) * given / (given + Impossible.UnlessPositive(outV, "V"));
    }
}

/// <summary>What a step-up gives before its switch current limit.</summary>
/// <param name="Duty">Duty at that point.</param>
/// <param name="RippleA">Peak-to-peak inductor ripple.</param>
/// <param name="MostOutA">Most output current.</param>
/// <param name="MostOutW">Most output power.</param>
public readonly record struct StepUpLimit(
    [property: Out("", "duty")] double Duty,
    [property: Out("A", "inductor ripple, peak to peak")] double RippleA,
    [property: Out("A", "most output current", Name = "most-output-current")] double MostOutA,
    [property: Out("W", "most output power", Name = "most-output-power")] double MostOutW);
