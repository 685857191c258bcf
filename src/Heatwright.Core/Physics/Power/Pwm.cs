namespace Heatwright.Physics;

/// <summary>PWM of a heater as the battery feels it: pulses, or a steady current behind a capacitor.</summary>
/// <remarks>Case A, no smoothing: heater d·I_on²·R_h, I_on = V/(R_s + R_h), battery loss d·I_on²·R_s. Case B, full smoothing: the battery gives d·I' steadily,
/// I' = V/(R_h + d·R_s), loss (d·I')²·R_s. Never (d·V)²/R. Circuit algebra. Mean current counts for run time, peak for trip and brown-out, rms for heating.</remarks>
public static class Pwm
{
    /// <summary>Case A: the battery sees the pulses.</summary>
    [Law("pwm-pulsed", "switch", "Ion = V/(Rs + R), heater d·Ion²·R, pack d·Ion²·Rs", Says = "currents and losses when the battery sees the pulses", Source = "definition", Where = "Ohm's law, mean over the pulses", Valid = "Rs*C*f far below 1: no smoothing capacitor", Example = "supply=3.7V source=0.15ohm heater=1.5ohm duty=50%")]
    public static PwmState Pulsed(
        [In("V", "V", "rested voltage", Name = "supply", Min = 0)] double openV,
        [In("Rs", "Ω", "source resistance", Name = "source", Min = 0)] double sourceOhm,
        [In("R", "Ω", "heater", Name = "heater", Min = 0)] double heaterOhm,
        [In("d", "", "duty", Name = "duty", Min = 0, Max = 1)] double duty)
    {
        double onA = DirectDrive.CurrentA(openV, heaterOhm, sourceOhm);
        double square = Impossible.UnlessFraction(duty) * onA * onA;
        return new(onA, duty * onA, onA * Math.Sqrt(duty), square * heaterOhm, square * sourceOhm);
    }

    /// <summary>Case B: a capacitor at the switch carries the pulses.</summary>
    [Law("pwm-smoothed", "switch", "I' = V/(R + d·Rs), heater d·I'²·R, pack (d·I')²·Rs", Says = "currents and losses when a capacitor carries the pulses", Source = "definition", Where = "Ohm's law, mean over the pulses", Valid = "Rs*C*f of 1 or more", Example = "supply=3.7V source=0.15ohm heater=1.5ohm duty=50%")]
    public static PwmState Smoothed(
        [In("V", "V", "rested voltage", Name = "supply", Min = 0)] double openV,
        [In("Rs", "Ω", "source resistance", Name = "source", Min = 0)] double sourceOhm,
        [In("R", "Ω", "heater", Name = "heater", Min = 0)] double heaterOhm,
        [In("d", "", "duty", Name = "duty", Min = 0, Max = 1)] double duty)
    {
        double onA = DirectDrive.CurrentA(openV, heaterOhm, Impossible.UnlessFraction(duty) * Impossible.IfNegative(sourceOhm, "Ω"));
        double mean = duty * onA;
        return new(onA, mean, mean, mean * onA * heaterOhm, mean * mean * sourceOhm);
    }

    /// <summary>Between the two cases, exactly: pack loss with a capacitor C at a frequency, the settled two-interval solution of one capacitor.</summary>
    /// <remarks>On: the capacitor moves towards V·R_h/(R_h + R_s) with C·(R_h ∥ R_s); off: towards V with C·R_s. Loss is the mean of (V − v)²/R_s.</remarks>
    [Law("pwm-pack-loss", "switch", "exact RC answer between pulsed and smoothed", Says = "loss in the pack with a real smoothing capacitor", Unit = "W", Source = "definition", Where = "steady state of one RC circuit",
        Valid = "no resistance in the capacitor", Example = "open=3.7V source=150mohm heater=1.5ohm duty=50% capacitor=470uF frequency=20kHz")]
    public static double PackLossW(
        [In("V", "V", "rested voltage", Name = "open", Min = 0)] double openV,
        [In("Rs", "Ω", "source resistance", Name = "source", Min = 0)] double sourceOhm,
        [In("R", "Ω", "heater", Name = "heater", Min = 0)] double heaterOhm,
        [In("d", "", "duty", Name = "duty", Min = 0, Max = 1)] double duty,
        [In("C", "F", "capacitor", Name = "capacitor", Min = 0)] double farad,
        [In("f", "Hz", "frequency", Name = "frequency", Min = 0)] double hertz)
    {
        double source = Impossible.UnlessPositive(sourceOhm, "Ω");
        double heater = Impossible.UnlessPositive(heaterOhm, "Ω");
        double onS = Impossible.UnlessFraction(duty) / Impossible.UnlessPositive(hertz, "Hz");
        double offS = (1 - duty) / hertz;
        double onTau = Impossible.UnlessPositive(farad, "F") * heater * source / (heater + source);
        double offTau = farad * source;

        // Sag below the rested voltage: towards Full while on, towards 0 while off; it repeats after one period.
        double full = Impossible.UnlessPositive(openV, "V") * source / (heater + source);
        double onLeft = Math.Exp(-onS / onTau);
        double offLeft = Math.Exp(-offS / offTau);
        double top = full * (1 - onLeft) / (1 - (onLeft * offLeft));
        double bottom = top * offLeft;
        double gap = bottom - full;
        double squares = (full * full * onS) + (2 * full * gap * onTau * (1 - onLeft)) + (gap * gap * onTau * (1 - (onLeft * onLeft)) / 2)
            + (top * top * offTau * (1 - (offLeft * offLeft)) / 2);
        return squares * hertz / source;
    }

    /// <summary>Duty for a wanted heater power when the battery sees the pulses; above 1 it cannot be had.</summary>
    [Law("pwm-pulsed-duty", "switch", "d = P·(Rs + R)²/(V²·R)", Says = "duty for a power when the battery sees the pulses", Source = "definition", Where = "Ohm's law, mean over the pulses",
        Valid = "above 1 the power cannot be reached", Example = "open=3.7V source=150mohm heater=1.5ohm power=4W")]
    public static double PulsedDutyFor(
        [In("V", "V", "rested voltage", Name = "open", Min = 0)] double openV,
        [In("Rs", "Ω", "source resistance", Name = "source", Min = 0)] double sourceOhm,
        [In("R", "Ω", "heater", Name = "heater", Min = 0)] double heaterOhm,
        [In("P", "W", "mean power wanted", Name = "power", Min = 0)] double wantedW) =>
        Impossible.IfNegative(wantedW, "W") / DirectDrive.HeaterW(openV, heaterOhm, sourceOhm);

    /// <summary>Duty for a wanted heater power behind a capacitor: the smaller root of d·V²·R/(R + d·R_s)² = P; none when it cannot be had.</summary>
    [Law("pwm-smoothed-duty", "switch", "d from P = d·R·(V/(R + d·Rs))²", Says = "duty for a power behind a smoothing capacitor", Source = "definition", Where = "Ohm's law, steady battery current",
        Valid = "none: the power cannot be reached", Example = "open=3.7V source=150mohm heater=1.5ohm power=4W")]
    public static double? SmoothedDutyFor(
        [In("V", "V", "rested voltage", Name = "open", Min = 0)] double openV,
        [In("Rs", "Ω", "source resistance", Name = "source", Min = 0)] double sourceOhm,
        [In("R", "Ω", "heater", Name = "heater", Min = 0)] double heaterOhm,
        [In("P", "W", "mean power wanted", Name = "power", Min = 0)] double wantedW)
    {
        // P·R_s²·d² + (2P·R·R_s − V²R)·d + P·R² = 0.
        double half = (openV * openV * Impossible.UnlessPositive(heaterOhm, "Ω") / 2) - (Impossible.IfNegative(wantedW, "W") * heaterOhm * Impossible.IfNegative(sourceOhm, "Ω"));
        double radicand = (half * half) - (wantedW * wantedW * heaterOhm * heaterOhm * sourceOhm * sourceOhm);
        if (half <= 0 || radicand < 0)
        {
            return null;
        }

        double duty = wantedW * heaterOhm * heaterOhm / (half + Math.Sqrt(radicand));
        return duty <= 1 ? duty : null;
    }

    /// <summary>Largest duty when the heater must be off for a time in each period, to read a sensor in its circuit: 1 − t/T.</summary>
    public static double DutyCeiling(double offS, double periodS) => offS <= Impossible.UnlessPositive(periodS, "s")
        ? 1 - (Impossible.IfNegative(offS, "s") / periodS)
        : throw Impossible.Outside(nameof(offS), offS, "s", "no more than the period");

    /// <summary>Rms current of the smoothing capacitor: I_on·√(d(1 − d)).</summary>
    [Law("capacitor-current", "switch", "I·√(d·(1 − d))", Says = "current that a smoothing capacitor must stand", Unit = "A", Source = "definition", Where = "rms of the pulses less their mean",
        Valid = "full smoothing", Example = "current=1.4A duty=50%")]
    public static double CapacitorA(
        [In("I", "A", "current while on", Name = "current", Min = 0)] double onA,
        [In("d", "", "duty", Name = "duty", Min = 0, Max = 1)] double duty) => Impossible.IfNegative(onA, "A") * Math.Sqrt(Impossible.UnlessFraction(duty) * (1 - duty));

    /// <summary>Ripple over the smoothing capacitor, peak to peak: I_on·d(1 − d)/(f·C) + I_on·ESR.</summary>
    [Law("capacitor-ripple", "switch", "I·d·(1 − d)/(f·C) + I·ESR", Says = "ripple that a smoothing capacitor leaves", Unit = "V", Source = "definition", Where = "charge balance",
        Valid = "full smoothing: Rs·C·f above 1", Example = "current=1.4A duty=50% frequency=20kHz capacitor=470uF")]
    public static double RippleV(
        [In("I", "A", "current while on", Name = "current", Min = 0)] double onA,
        [In("d", "", "duty", Name = "duty", Min = 0, Max = 1)] double duty,
        [In("f", "Hz", "frequency", Name = "frequency", Min = 0)] double hertz,
        [In("C", "F", "capacitor", Name = "capacitor", Min = 0)] double farad,
        [In("ESR", "Ω", "series resistance of the capacitor", Name = "series", Min = 0, Default = 0)] double seriesOhm = 0) =>
        (Impossible.IfNegative(onA, "A") * Impossible.UnlessFraction(duty) * (1 - duty) / (Impossible.UnlessPositive(hertz, "Hz") * Impossible.UnlessPositive(farad, "F")))
        + (onA * Impossible.IfNegative(seriesOhm, "Ω"));

    /// <summary>Capacitor for a wanted ripple: I_on·d(1 − d)/(f·ΔV).</summary>
    [Law("smoothing-capacitor", "switch", "Ion·d·(1 − d)/(f·ΔV)", Says = "capacitor for a wanted ripple under pulse width", Unit = "F", Source = "definition", Where = "charge balance", Valid = "good only where Rs*C*f comes out at 1 or more", Example = "current=1.4A duty=50% frequency=20kHz ripple=50mV")]
    public static double FaradForRipple(
        [In("Ion", "A", "current while on", Name = "current", Min = 0)] double onA,
        [In("d", "", "duty", Name = "duty", Min = 0, Max = 1)] double duty,
        [In("f", "Hz", "PWM frequency", Name = "frequency", Min = 0)] double hertz,
        [In("ΔV", "V", "ripple allowed, peak to peak", Name = "ripple", Min = 0)] double rippleV) =>
        RippleV(onA, duty, hertz, Impossible.UnlessPositive(rippleV, "V"));

    /// <summary>Temperature ripple of slow PWM, peak to peak: P·d(1 − d)/(f·C_th).</summary>
    [Law("pwm-temperature-ripple", "switch", "P·d·(1 − d)/(f·C)", Says = "temperature ripple of slow pulse width, peak to peak", Unit = "K", Source = "definition", Where = "heat balance", Valid = "period short against the warm-up time", Example = "power=20W duty=50% frequency=10Hz capacity=2J/K")]
    public static double RippleK(
        [In("P", "W", "heater power while on", Name = "power", Min = 0)] double onW,
        [In("d", "", "duty", Name = "duty", Min = 0, Max = 1)] double duty,
        [In("f", "Hz", "PWM frequency", Name = "frequency", Min = 0)] double hertz,
        [In("C", "J/K", "heat capacity that follows the pulses", Name = "capacity", Min = 0)] double capacityJPerK) =>
        Impossible.IfNegative(onW, "W") * Impossible.UnlessFraction(duty) * (1 - duty) / (Impossible.UnlessPositive(hertz, "Hz") * Impossible.UnlessPositive(capacityJPerK, "J/K"));
}

/// <summary>A heater under PWM.</summary>
/// <param name="OnA">Heater current while on; of pulses also the battery's peak.</param>
/// <param name="MeanA">Mean battery current.</param>
/// <param name="RmsA">Rms battery current.</param>
/// <param name="HeaterW">Mean heater power.</param>
/// <param name="PackW">Mean loss in the source resistance.</param>
public readonly record struct PwmState(
    [property: Out("A", "heater current while on", Name = "on-current")] double OnA,
    [property: Out("A", "mean battery current", Name = "mean-current")] double MeanA,
    [property: Out("A", "rms battery current", Name = "rms-current")] double RmsA,
    [property: Out("W", "mean heater power", Name = "heater-power")] double HeaterW,
    [property: Out("W", "mean loss in pack and leads", Name = "pack-loss")] double PackW)
{
    /// <summary>Share of the battery's power in the heater.</summary>
    [Out("", "share in the heater")]
    public double Efficiency => HeaterW + PackW > 0 ? HeaterW / (HeaterW + PackW) : 0;
}
