namespace Heatwright.Physics;

/// <summary>What a socket gives to a cell: switching charger, cable drop, power beside a running heater.</summary>
/// <remarks>Power balance. Allowed currents of sockets: data/charging/usb-sources. Cable 0.1 to 0.5 Ω round trip (common practice, no source).</remarks>
public static class ChargePower
{
    /// <summary>Current into the battery through a switching charger: η·V_in·I_in/V_batt.</summary>
    [Law("charge-current", "charging", "η·Vin·Iin/Vbat", Says = "current into the battery through a switching charger", Unit = "A", Source = "definition", Valid = "switching charger; a linear one passes its input current on", Where = "power balance", Example = "input-voltage=5V input-current=0.5A efficiency=90% battery=3.7V")]
    public static double BatteryA(
        [In("Vin", "V", "socket voltage", Name = "input-voltage", Min = 0)] double inV,
        [In("Iin", "A", "socket current", Name = "input-current", Min = 0)] double inA,
        [In("η", "", "efficiency", Name = "efficiency", Min = 0, Max = 1)] double efficiency,
        [In("Vbat", "V", "battery", Name = "battery", Min = 0)] double batteryV) =>
        Impossible.UnlessFraction(efficiency) * Impossible.UnlessPositive(inV, "V") * Impossible.IfNegative(inA, "A") / Impossible.UnlessPositive(batteryV, "V");

    /// <summary>Current out of the socket for a wanted charge current: V_batt·I/(η·V_in).</summary>
    [Law("charger-input-current", "charging", "I = Vbat·Ibat/(η·Vin)", Says = "current that a charger draws from its socket", Unit = "A", Source = "definition", Where = "power balance",
        Valid = "efficiency at this point", Example = "battery=8.4V current=1A efficiency=88% input-voltage=5V")]
    public static double SocketA(
        [In("Vbat", "V", "battery", Name = "battery", Min = 0)] double batteryV,
        [In("Ibat", "A", "charge current", Name = "current", Min = 0)] double batteryA,
        [In("η", "", "efficiency", Name = "efficiency", Min = 0, Max = 1)] double efficiency,
        [In("Vin", "V", "socket", Name = "input-voltage", Min = 0)] double inV) =>
        Impossible.UnlessPositive(batteryV, "V") * Impossible.IfNegative(batteryA, "A") / (Impossible.UnlessPositive(Impossible.UnlessFraction(efficiency), "", nameof(efficiency)) * Impossible.UnlessPositive(inV, "V"));

    /// <summary>Voltage at the end of a cable.</summary>
    [Law("cable-voltage", "charging", "V = Vin − I·R", Says = "voltage left after a cable", Unit = "V", Source = "definition", Where = "Ohm's law",
        Valid = "out and return together, 0.1 to 0.5 Ω (common practice)", Example = "socket=5V current=3A cable=0.25ohm")]
    public static double AfterCableV(
        [In("Vin", "V", "socket", Name = "socket", Min = 0)] double socketV,
        [In("I", "A", "current", Name = "current", Min = 0)] double currentA,
        [In("R", "Ω", "cable, out and return", Name = "cable", Min = 0)] double cableOhm) =>
        Impossible.UnlessPositive(socketV, "V") - (Impossible.IfNegative(currentA, "A") * Impossible.IfNegative(cableOhm, "Ω"));

    /// <summary>Power left for charging beside a running load; negative: the battery helps out.</summary>
    [Law("charge-while-used", "charging", "P = η·Vin·Iin − Pload", Says = "power left for the cell while the tool runs", Unit = "W", Source = "definition", Where = "power balance",
        Valid = "negative: the battery empties all the same", Example = "input-voltage=5V current=1.5A efficiency=100% load=6.2W")]
    public static double LeftW(
        [In("Vin", "V", "socket", Name = "input-voltage", Min = 0)] double inV,
        [In("Iin", "A", "socket current", Name = "current", Min = 0)] double inA,
        [In("η", "", "efficiency", Name = "efficiency", Min = 0, Max = 1)] double efficiency,
        [In("Pload", "W", "load", Name = "load", Min = 0)] double loadW) =>
        (Impossible.UnlessPositive(inV, "V") * Impossible.IfNegative(inA, "A") * Impossible.UnlessFraction(efficiency)) - Impossible.IfNegative(loadW, "W");

    /// <summary>Whether a charger ever ends: a load above its end current keeps it going until a safety timer trips.</summary>
    public static bool NeverEnds(double loadA, double endA) => Impossible.IfNegative(loadA, "A") > Impossible.UnlessPositive(endA, "A");
}
