namespace Heatwright.Physics;

/// <summary>Losses at the edges, gate power, overshoot and reverse-polarity parts.</summary>
/// <remarks>Straight edges. Resistive load: E = V·I·t/6 an edge; inductive: ½·V·I·t an edge. Integrals of V·I over straight ramps.</remarks>
public static class SwitchingLoss
{
    /// <summary>Energy of one edge into a resistance: V·I·t/6.</summary>
    public static double ResistiveEdgeJ(double supplyV, double currentA, double edgeS) =>
        Impossible.IfNegative(supplyV, "V") * Impossible.IfNegative(currentA, "A") * Impossible.IfNegative(edgeS, "s") / 6;

    /// <summary>Loss of a switch with a heater: f·V·I·(t_r + t_f)/6.</summary>
    [Law("switch-edges", "switch", "f·V·I·(tr + tf)/6", Says = "heat in a switch from its rising and falling edges", Unit = "W", Source = "definition", Where = "integral over straight edges", Valid = "resistive heater", Example = "supply=7.4V current=2A rise=1us fall=1us frequency=1kHz")]
    public static double ResistiveW(
        [In("V", "V", "supply", Name = "supply", Min = 0)] double supplyV,
        [In("I", "A", "current while on", Name = "current", Min = 0)] double currentA,
        [In("tr", "s", "rising edge", Name = "rise", Min = 0)] double riseS,
        [In("tf", "s", "falling edge", Name = "fall", Min = 0)] double fallS,
        [In("f", "Hz", "PWM frequency", Name = "frequency", Min = 0)] double hertz) =>
        Impossible.IfNegative(hertz, "Hz") * (ResistiveEdgeJ(supplyV, currentA, riseS) + ResistiveEdgeJ(supplyV, currentA, fallS));

    /// <summary>Loss of a converter's switch: ½·f·V·I·(t_r + t_f) + ½·C_oss·V²·f.</summary>
    public static double InductiveW(double supplyV, double currentA, double riseS, double fallS, double hertz, double outputF = 0) =>
        (3 * ResistiveW(supplyV, currentA, riseS, fallS, hertz)) + (Impossible.IfNegative(outputF, "F") * supplyV * supplyV * hertz / 2);

    /// <summary>Gate current while the edge runs: (V_drive − V_plateau)/(R_driver + R_gate).</summary>
    public static double GateA(double driveV, double plateauV, double driverOhm, double gateOhm) =>
        Impossible.UnlessPositive(driveV - plateauV, "V", nameof(driveV)) / Impossible.UnlessPositive(Impossible.IfNegative(driverOhm, "Ω") + Impossible.IfNegative(gateOhm, "Ω"), "Ω", nameof(gateOhm));

    /// <summary>Edge time: Q_gd/I_g.</summary>
    public static double EdgeS(double gateDrainC, double gateA) => Impossible.IfNegative(gateDrainC, "C") / Impossible.UnlessPositive(gateA, "A");

    /// <summary>Power to work the gate: Q_g·V_drive·f.</summary>
    public static double GateW(double gateC, double driveV, double hertz) =>
        Impossible.IfNegative(gateC, "C") * Impossible.IfNegative(driveV, "V") * Impossible.IfNegative(hertz, "Hz");

    /// <summary>Energy stored in lead inductance: ½·L·I².</summary>
    public static double LeadJ(double henry, double currentA) => Impossible.IfNegative(henry, "H") * currentA * currentA / 2;

    /// <summary>Voltage added by lead inductance at a straight edge: L·I/t.</summary>
    public static double SpikeV(double henry, double currentA, double edgeS) =>
        Impossible.IfNegative(henry, "H") * Impossible.IfNegative(currentA, "A") / Impossible.UnlessPositive(edgeS, "s");

    /// <summary>Loss of a reverse-polarity part: diode drop times current plus current squared times resistance.</summary>
    public static double ReversePolarityW(double currentA, double dropV, double onOhm) =>
        Impossible.IfNegative(currentA, "A") * (Impossible.IfNegative(dropV, "V") + (Impossible.IfNegative(onOhm, "Ω") * currentA));
}
