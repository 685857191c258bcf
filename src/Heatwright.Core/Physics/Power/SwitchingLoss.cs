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
    [Law("switch-edges-inductive", "switch", "½·f·V·I·(tr + tf) + ½·Coss·V²·f", Says = "heat in a converter switch from its edges", Unit = "W", Source = "definition", Where = "integral over straight edges",
        Valid = "current does not change during an edge", Example = "supply=7.4V current=2A rise=1us fall=1us frequency=1kHz")]
    public static double InductiveW(
        [In("V", "V", "voltage across the open switch", Name = "supply", Min = 0)] double supplyV,
        [In("I", "A", "current", Name = "current", Min = 0)] double currentA,
        [In("tr", "s", "rise", Name = "rise", Min = 0)] double riseS,
        [In("tf", "s", "fall", Name = "fall", Min = 0)] double fallS,
        [In("f", "Hz", "frequency", Name = "frequency", Min = 0)] double hertz,
        [In("Coss", "F", "output capacitance", Name = "output", Min = 0, Default = 0)] double outputF = 0) =>
        (3 * ResistiveW(supplyV, currentA, riseS, fallS, hertz)) + (Impossible.IfNegative(outputF, "F") * supplyV * supplyV * hertz / 2);

    /// <summary>Gate current and edge time of a pin or driver.</summary>
    [Law("gate-edge", "switch", "Ig = (Vdrive − Vplateau)/(Rdriver + Rgate), t = Qgd/Ig", Says = "how fast a pin or driver switches a transistor", Source = "definition", Where = "constant gate current on the plateau",
        Valid = "plateau voltage from the data sheet", Example = "drive=3.3V plateau=2V driver=65ohm gate=100ohm charge=6nC")]
    public static GateEdge Gate(
        [In("Vdrive", "V", "drive voltage", Name = "drive", Min = 0)] double driveV,
        [In("Vplateau", "V", "plateau voltage", Name = "plateau", Min = 0)] double plateauV,
        [In("Rdriver", "Ω", "resistance of the pin", Name = "driver", Min = 0)] double driverOhm,
        [In("Rgate", "Ω", "gate resistor", Name = "gate", Min = 0)] double gateOhm,
        [In("Qgd", "C", "gate-drain charge", Name = "charge", Min = 0)] double gateDrainC)
    {
        double gateA = GateA(driveV, plateauV, driverOhm, gateOhm);
        return new(gateA, EdgeS(gateDrainC, gateA));
    }

    /// <summary>Gate current while the edge runs: (V_drive − V_plateau)/(R_driver + R_gate).</summary>
    public static double GateA(double driveV, double plateauV, double driverOhm, double gateOhm) =>
        Impossible.UnlessPositive(driveV - plateauV, "V", nameof(driveV)) / Impossible.UnlessPositive(Impossible.IfNegative(driverOhm, "Ω") + Impossible.IfNegative(gateOhm, "Ω"), "Ω", nameof(gateOhm));

    /// <summary>Edge time: Q_gd/I_g.</summary>
    public static double EdgeS(double gateDrainC, double gateA) => Impossible.IfNegative(gateDrainC, "C") / Impossible.UnlessPositive(gateA, "A");

    /// <summary>Power to work the gate: Q_g·V_drive·f.</summary>
    [Law("gate-power", "switch", "P = Qg·Vdrive·f", Says = "power that driving a gate takes", Unit = "W", Source = "definition", Where = "charge times voltage, once a period",
        Valid = "total gate charge at this drive", Example = "charge=12nC drive=3.3V frequency=20kHz")]
    public static double GateW(
        [In("Qg", "C", "total gate charge", Name = "charge", Min = 0)] double gateC,
        [In("Vdrive", "V", "drive voltage", Name = "drive", Min = 0)] double driveV,
        [In("f", "Hz", "frequency", Name = "frequency", Min = 0)] double hertz) =>
        Impossible.IfNegative(gateC, "C") * Impossible.IfNegative(driveV, "V") * Impossible.IfNegative(hertz, "Hz");

    /// <summary>Energy stored in lead inductance: ½·L·I².</summary>
    [Law("lead-energy", "switch", "E = ½·L·I²", Says = "energy in lead inductance at switch-off", Unit = "J", Source = "definition", Where = "inductor law",
        Valid = "compare with the avalanche rating", Example = "inductance=1uH current=5A")]
    public static double LeadJ(
        [In("L", "H", "inductance of leads", Name = "inductance", Min = 0)] double henry,
        [In("I", "A", "current", Name = "current")] double currentA) => Impossible.IfNegative(henry, "H") * currentA * currentA / 2;

    /// <summary>Voltage added by lead inductance at a straight edge: L·I/t.</summary>
    [Law("lead-spike", "switch", "V = L·I/t", Says = "overshoot that lead inductance makes at switch-off", Unit = "V", Source = "definition", Where = "inductor law",
        Valid = "0.5 to 1 µH a metre of wire (from memory)", Example = "inductance=1uH current=5A edge=100ns")]
    public static double SpikeV(
        [In("L", "H", "inductance of leads", Name = "inductance", Min = 0)] double henry,
        [In("I", "A", "current", Name = "current", Min = 0)] double currentA,
        [In("t", "s", "time of the edge", Name = "edge", Min = 0)] double edgeS) =>
        Impossible.IfNegative(henry, "H") * Impossible.IfNegative(currentA, "A") / Impossible.UnlessPositive(edgeS, "s");

    /// <summary>Loss of a reverse-polarity part: diode drop times current plus current squared times resistance.</summary>
    [Law("reverse-protection", "switch", "P = V·I + R·I²", Says = "heat in a reverse-polarity diode or transistor", Unit = "W", Source = "definition", Where = "Ohm's law",
        Valid = "a diode has a drop, a transistor a resistance", Example = "current=1.4A drop=0V on-resistance=30mohm")]
    public static double ReversePolarityW(
        [In("I", "A", "current", Name = "current", Min = 0)] double currentA,
        [In("V", "V", "drop of a diode; 0 for a transistor", Name = "drop", Min = 0)] double dropV,
        [In("R", "Ω", "on-resistance of a transistor; 0 for a diode", Name = "on-resistance", Min = 0)] double onOhm) =>
        Impossible.IfNegative(currentA, "A") * (Impossible.IfNegative(dropV, "V") + (Impossible.IfNegative(onOhm, "Ω") * currentA));
}

/// <summary>One edge of a gate.</summary>
/// <param name="GateA">Gate current.</param>
/// <param name="EdgeS">Time of the edge.</param>
public readonly record struct GateEdge(
    [property: Out("A", "gate current", Name = "gate-current")] double GateA,
    [property: Out("s", "time of one edge", Name = "edge")] double EdgeS);
