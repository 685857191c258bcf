namespace Heatwright.Physics;

/// <summary>What leads, meters and supplies do to a reading of a low resistance.</summary>
/// <remarks>Ohm's law. Two-wire leads 0.1 to 0.5 Ω, ammeter burden 20 to 60 mΩ on the 10 A range and 1 to 5 Ω on milliampere ranges:
/// common practice, no source.</remarks>
public static class OhmReading
{
    /// <summary>Below this subtract the shorted-lead reading. Common practice, no source.</summary>
    public const double SubtractLeadsBelowOhm = 10;

    /// <summary>Heater from a two-wire reading: reading less shorted leads.</summary>
    [Law("less-leads", "heaters", "Rread − Rleads", Says = "ohmmeter reading with the leads taken off", Unit = "Ω", Source = "definition", Where = "resistances in series",
        Valid = "leads read with shorted tips", Example = "reading=9.3ohm leads=0.2ohm")]
    public static double LessLeadsOhm(
        [In("Rread", "Ω", "reading", Name = "reading", Min = 0)] double readOhm,
        [In("Rleads", "Ω", "reading with shorted tips", Name = "leads", Min = 0)] double leadsOhm) => readOhm > Impossible.IfNegative(leadsOhm, "Ω")
        ? readOhm - leadsOhm
        : throw Impossible.Outside(nameof(readOhm), readOhm, "Ω", "more than the shorted leads");

    /// <summary>Heater from volts and amperes with the ammeter in the same loop: V/I − R_burden.</summary>
    [Law("ohms-from-readings", "heaters", "V/I − Rburden", Says = "resistance of a heater from volts and amps read at work", Unit = "Ω", Source = "definition", Where = "Ohm's law", Valid = "direct current at full duty; voltage before the ammeter", Example = "volts=3.7V current=1.644A burden=50mohm")]
    public static double FromVoltAmpOhm(
        [In("V", "V", "voltage read", Name = "volts", Min = 0)] double readV,
        [In("I", "A", "current read", Name = "current", Min = 0)] double readA,
        [In("Rburden", "Ω", "ammeter and its leads; 0 when the voltage is read at the heater", Name = "burden", Min = 0, Default = 0)] double burdenOhm = 0)
    {
        double ohm = Impossible.UnlessPositive(readV, "V") / Impossible.UnlessPositive(readA, "A");
        return ohm > Impossible.IfNegative(burdenOhm, "Ω") ? ohm - burdenOhm : throw Impossible.Outside(nameof(burdenOhm), burdenOhm, "Ω", "less than V/I");
    }

    /// <summary>Share of the power that arrives in the heater: R_h/(R_h + R_leads).</summary>
    [Law("lead-share", "heaters", "R/(R + Rleads)", Says = "share of the power that reaches the heater", Source = "definition", Where = "divider",
        Valid = "leads and contacts of one current path", Example = "heater=2.2ohm leads=0.15ohm")]
    public static double HeaterShare(
        [In("R", "Ω", "heater", Name = "heater", Min = 0)] double heaterOhm,
        [In("Rleads", "Ω", "leads and contacts", Name = "leads", Min = 0)] double leadsOhm) => DirectDrive.Efficiency(heaterOhm, leadsOhm);

    /// <summary>What a heater gets from a supply that may be in current limit.</summary>
    [Law("current-limited", "heaters", "I = min(V/R, Ilim), V = I·R, P = I²·R", Says = "what a heater gets from a supply in current limit", Source = "definition", Where = "Ohm's law",
        Valid = "supply with a sharp limit", Example = "set=18V limit=1.2A heater=9.6ohm")]
    public static LimitedSupply Limited(
        [In("V", "V", "set voltage", Name = "set", Min = 0)] double setV,
        [In("Ilim", "A", "current limit", Name = "limit", Min = 0)] double limitA,
        [In("R", "Ω", "heater", Name = "heater", Min = 0)] double heaterOhm)
    {
        (double volts, double amps, double watts, bool limited) = BehindLimit(setV, limitA, heaterOhm);
        return new(volts, amps, watts, limited);
    }

    /// <summary>What a supply with a current limit really puts on a heater.</summary>
    public static (double Volts, double Amps, double Watts, bool Limited) BehindLimit(double setV, double limitA, double heaterOhm)
    {
        double free = Impossible.UnlessPositive(setV, "V") / Impossible.UnlessPositive(heaterOhm, "Ω");
        double amps = Math.Min(free, Impossible.UnlessPositive(limitA, "A"));
        return (amps * heaterOhm, amps, amps * amps * heaterOhm, amps < free);
    }

    /// <summary>Whether readings were taken in current limit: voltage more than 2 % below set and current within 1 % of the limit.</summary>
    public static bool InLimit(double readV, double setV, double readA, double limitA) =>
        readV < 0.98 * Impossible.UnlessPositive(setV, "V") && Math.Abs(readA - limitA) <= 0.01 * Impossible.UnlessPositive(limitA, "A");
}

/// <summary>A heater on a supply with a current limit.</summary>
/// <param name="Volts">Voltage that is left.</param>
/// <param name="Amps">Current.</param>
/// <param name="Watts">Power in the heater.</param>
/// <param name="Active">Whether the limit acts.</param>
public readonly record struct LimitedSupply(
    [property: Out("V", "voltage at the supply", Name = "voltage")] double Volts,
    [property: Out("A", "current", Name = "current")] double Amps,
    [property: Out("W", "power in the heater", Name = "power")] double Watts,
    [property: Out("", "whether the limit acts", Name = "limited")] bool Active);
