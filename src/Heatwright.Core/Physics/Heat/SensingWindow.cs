namespace Heatwright.Physics;

/// <summary>Heater and sensor on one pair of leads: heat, switch off, wait, read, next frame.</summary>
/// <remarks>Never read while heating: 3 A × 10 mΩ is 30 mV, hundreds of degrees of a thermocouple. Wait at least twice the worked-out time, and verify
/// by doubling the wait: the reading must not move. Checked: ControlTests.</remarks>
public static class SensingWindow
{
    /// <summary>Largest duty a frame leaves: 1 − (t_settle + t_read)/T_f.</summary>
    [Law("sensing-duty", "control", "d_max = 1 − (t_settle + t_read)/T_f", Says = "largest duty when the heater pauses to be read", Source = "definition", Where = "frame with an off window", Valid = "window shorter than the frame", Example = "settle=4ms read=1ms frame=100ms")]
    public static double MostDuty(
        [In("t_settle", "s", "wait after switching off", Name = "settle", Min = 0)] double settleS,
        [In("t_read", "s", "time the reading takes", Name = "read", Min = 0)] double readS,
        [In("T_f", "s", "frame", Name = "frame", Min = 0)] double frameS) =>
        1 - Impossible.Unless(Impossible.IfNegative(settleS, "s") + Impossible.IfNegative(readS, "s"), 0, Impossible.UnlessPositive(frameS, "s"), "s", "settle + read") / frameS;

    /// <summary>Time for a step to die away through a filter, s: RC·ln(V_step/V_error); 0 when the step is within the error.</summary>
    [Law("settle-time", "control", "t = R·C·ln(V_step/V_error)", Says = "wait after switching off until a reading is good", Unit = "s", Source = "definition", Where = "discharge of one RC", Valid = "one RC; add clamp release and amplifier recovery", Example = "resistance=1kΩ capacitance=100nF step=1V error=0.54mV")]
    public static double SettleS(
        [In("R", "Ω", "filter resistance", Name = "resistance", Min = 0)] double ohm,
        [In("C", "F", "filter capacitance", Name = "capacitance", Min = 0)] double farad,
        [In("V_step", "V", "step left by switching off", Name = "step", Min = 0)] double stepV,
        [In("V_error", "V", "error allowed", Name = "error", Min = 0)] double errorV) =>
        Impossible.IfNegative(ohm, "Ω") * Impossible.IfNegative(farad, "F") * Math.Max(0, Math.Log(Impossible.UnlessPositive(stepV, "V") / Impossible.UnlessPositive(errorV, "V")));

    /// <summary>Time constants until a full-scale step is within half a step of an n-bit reading: (n + 1)·ln 2.</summary>
    public static double TimeConstantsForBits(double bits) => (Impossible.UnlessPositive(bits, "bit") + 1) * Math.Log(2);

    /// <summary>How far the core cools during the window, K: q·t/C.</summary>
    [Law("window-droop", "control", "ΔT = q·t/C", Says = "how far the core cools while it is being read", Unit = "K", Source = "definition", Where = "heat balance", Valid = "window short against the core's time constant", Example = "heat=20W window=5ms core=1.2J/K")]
    public static double CoreDroopK(
        [In("q", "W", "heat that leaves the core", Name = "heat", Min = 0)] double heatW,
        [In("t", "s", "window", Name = "window", Min = 0)] double windowS,
        [In("C", "J/K", "heat capacity of the core", Name = "core", Min = 0)] double coreJPerK) =>
        Impossible.IfNegative(heatW, "W") * Impossible.IfNegative(windowS, "s") / Impossible.UnlessPositive(coreJPerK, "J/K");
}
