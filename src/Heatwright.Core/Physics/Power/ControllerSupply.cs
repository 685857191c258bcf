namespace Heatwright.Physics;

/// <summary>The controller's own supply: regulator drop-out, hold-up, brown-out when the heater starts, stand-by.</summary>
/// <remarks>Circuit algebra. Reset loop: heater on, voltage sags, reset, heater off, recovery, start, heater on: a pulsing lamp and a warm, not hot, tip.</remarks>
public static class ControllerSupply
{
    /// <summary>Voltage kept above the brown-out level. Common practice, no source.</summary>
    public const double BrownOutMarginV = 0.1;

    /// <summary>One month of a self-discharge figure: 730.5 h, a twelfth of a year of 365.25 days.</summary>
    public const double MonthS = 730.5 * 3600;

    /// <summary>Rested voltage that the regulator needs: V_out + V_drop + I·R_s.</summary>
    [Law("regulator-needs", "controller supply", "Vout + Vdo + I·Rs", Says = "rested voltage the controller's regulator needs", Unit = "V", Source = "definition", Where = "Ohm's law", Valid = "Rs: what heater and regulator share; tap before the heater wiring to make it small", Example = "output-voltage=3.3V dropout=0.2V heater=1.4A source=0.25ohm")]
    public static double NeededOpenV(
        [In("Vout", "V", "controller voltage", Name = "output-voltage", Min = 0)] double outV,
        [In("Vdo", "V", "drop-out", Name = "dropout", Min = 0)] double dropOutV,
        [In("I", "A", "heater current", Name = "heater", Min = 0, Default = 0)] double heaterA = 0,
        [In("Rs", "Ω", "source resistance before the tap", Name = "source", Min = 0, Default = 0)] double sourceOhm = 0) =>
        Impossible.UnlessPositive(outV, "V") + Impossible.IfNegative(dropOutV, "V") + (Impossible.IfNegative(heaterA, "A") * Impossible.IfNegative(sourceOhm, "Ω"));

    /// <summary>Charge that stays unused because the regulator gives up first.</summary>
    public static double StrandedCharge(OcvTable cell, double neededOpenV) => cell.ChargeAt(Impossible.UnlessPositive(neededOpenV, "V"));

    /// <summary>Capacitor that carries the controller through a dip: I·t/ΔV.</summary>
    [Law("hold-up", "controller supply", "I·t/ΔV", Says = "capacitor that carries the controller through a dip", Unit = "F", Source = "definition", Where = "charge balance of a capacitor", Valid = "steady current; count the capacitor at this voltage, not at its label (ceramic ones lose much)", Example = "current=10mA time=20ms droop=0.3V")]
    public static double HoldUpF(
        [In("I", "A", "controller current", Name = "current", Min = 0)] double currentA,
        [In("t", "s", "length of the dip", Name = "time", Min = 0)] double seconds,
        [In("ΔV", "V", "droop allowed", Name = "droop", Min = 0)] double droopV) =>
        Impossible.IfNegative(currentA, "A") * Impossible.IfNegative(seconds, "s") / Impossible.UnlessPositive(droopV, "V");

    /// <summary>Largest heater current without a reset: (OCV − V_do − V_bor − margin)/R_s. Compare with the cold current.</summary>
    [Law("brown-out-current", "controller supply", "(V − Vdo − Vbor − margin)/Rs", Says = "largest heater current that does not reset the controller", Unit = "A", Source = "definition", Where = "Ohm's law", Valid = "compare with the cold, inrush current at the end of the charge", Example = "open=3.6V dropout=0.15V reset=2.7V source=0.25ohm")]
    public static double MostHeaterA(
        [In("V", "V", "rested voltage at the end of the charge", Name = "open", Min = 0)] double openV,
        [In("Vdo", "V", "drop-out of the regulator", Name = "dropout", Min = 0)] double dropOutV,
        [In("Vbor", "V", "brown-out level", Name = "reset", Min = 0)] double resetV,
        [In("Rs", "Ω", "source resistance before the tap", Name = "source", Min = 0)] double sourceOhm,
        [In("margin", "V", "kept above", Name = "margin", Min = 0, Default = BrownOutMarginV)] double marginV = BrownOutMarginV) => Math.Max(0,
        (Impossible.UnlessPositive(openV, "V") - Impossible.IfNegative(dropOutV, "V") - Impossible.IfNegative(resetV, "V") - Impossible.IfNegative(marginV, "V"))
        / Impossible.UnlessPositive(sourceOhm, "Ω"));

    /// <summary>Self-discharge as a current: fraction a month of the capacity over 730.5 h.</summary>
    [Law("self-discharge-current", "controller supply", "I = share·Q/730.5 h", Says = "current that self-discharge amounts to", Unit = "A", Source = "definition", Where = "charge over a month",
        Valid = "1 to 3 % a month for lithium (from memory)", Example = "capacity=620mAh share=2%")]
    public static double SelfDischargeA(
        [In("Q", "C", "capacity", Name = "capacity", Min = 0)] double capacityAs,
        [In("share", "", "share lost in a month", Name = "share", Min = 0, Max = 1)] double fractionAMonth) =>
        Impossible.UnlessPositive(capacityAs, "C") * Impossible.UnlessFraction(fractionAMonth) / MonthS;

    /// <summary>Time on the shelf until empty: s·Q/(I_q + I_sd).</summary>
    [Law("shelf-life", "controller supply", "s·Q/(Iq + month·Q/730.5 h)", Says = "how long a charge lasts while the tool lies switched off", Unit = "s", Source = "definition", Where = "charge over the sum of the currents; a month is 730.5 h", Valid = "warn below 6 months from 40 % charge", Example = "charge=40% capacity=0.62Ah standby=50uA self-discharge=2%")]
    public static double ShelfLifeS(
        [In("s", "", "charge left", Name = "charge", Min = 0, Max = 1)] double charge,
        [In("Q", "C", "capacity", Name = "capacity", Min = 0)] double capacityAs,
        [In("Iq", "A", "stand-by current: regulator, controller, protection, dividers, module left enabled", Name = "standby", Min = 0)] double standbyA,
        [In("month", "", "self-discharge a month", Name = "self-discharge", Min = 0, Max = 1, Default = 0.02)] double fractionAMonth = 0.02) =>
        Impossible.UnlessFraction(charge) * Impossible.UnlessPositive(capacityAs, "C")
        / Impossible.UnlessPositive(Impossible.IfNegative(standbyA, "A") + SelfDischargeA(capacityAs, fractionAMonth), "A", nameof(standbyA));
}
