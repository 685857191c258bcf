namespace Heatwright.Physics;

/// <summary>Run times in closed form, for quick sums: a constant current, a plain heater, a regulated load.</summary>
/// <remarks>Rested voltage taken as a straight line from full to empty and one source resistance; the real curve is walked piece by piece by <see cref="Discharge"/>.
/// A duty below 1: solve at full duty and divide the time by the duty, unless a capacitor smooths the battery current.</remarks>
public static class RunTime
{
    /// <summary>Time at a constant current: Q·usable/I.</summary>
    [Law("runtime", "packs", "Q·usable/(I·duty)", Says = "run time at a constant battery current", Unit = "s", Source = "definition", Where = "charge over current", Valid = "the current that leaves the cell: of a step-up its input current, not the heater's",
        Example = "capacity=0.62Ah current=1.3A")]
    public static double AtCurrentS(
        [In("Q", "C", "capacity", Name = "capacity", Min = 0)] double capacityAs,
        [In("I", "A", "battery current while on", Min = 0)] double currentA,
        [In("usable", "", "share of the capacity that can be used", Min = 0, Max = 1, Default = 1)] double usable = 1,
        [In("duty", "", "share of the time that the heater is on", Min = 0, Max = 1, Default = 1)] double duty = 1) =>
        Impossible.UnlessPositive(capacityAs, "C") * Impossible.UnlessFraction(usable)
        / (Impossible.UnlessPositive(currentA, "A") * Impossible.UnlessPositive(Impossible.UnlessFraction(duty), "", nameof(duty)));

    /// <summary>Time of a heater wired straight to the pack: its power fades with the square of the voltage.</summary>
    [Law("runtime-direct", "packs", "Q·(RL+Rs)/(V0-V1)·ln(V0/Ve)", Says = "run time of a heater wired straight to the pack", Source = "definition", Where = "integral of Q dV/((V0-V1) I)", Valid = "rested voltage a straight line from full to empty, constant resistances",
        Example = "capacity=2Ah full=4.1V empty=3.3V source=0.1ohm load=2.2ohm cutoff=3.2V")]
    public static DischargeResult Direct(
        [In("Q", "C", "capacity", Name = "capacity", Min = 0)] double capacityAs,
        [In("V0", "V", "rested voltage when full", Name = "full", Min = 0)] double fullV,
        [In("V1", "V", "rested voltage when empty", Name = "empty", Min = 0)] double emptyV,
        [In("Rs", "Ω", "source resistance", Name = "source", Min = 0)] double sourceOhm,
        [In("RL", "Ω", "heater", Name = "load", Min = 0)] double loadOhm,
        [In("Vcut", "V", "cut-off at the pack's terminals", Name = "cutoff", Min = 0)] double cutoffV) =>
        Discharge.ThroughHeater(OcvTable.Line(emptyV, fullV), capacityAs, sourceOhm, loadOhm, cutoffV);

    /// <summary>Time of a load that takes a constant power at the terminals: it holds, then stops at the cut-off or at the fold, whichever comes first.</summary>
    [Law("runtime-regulated", "packs", "Q/(2 P (V0-V1))·(F(V0) − F(Ve)), F(v) = v²/2 + v/2·√(v²-a²) − a²/2·ln(v+√(v²-a²)), a² = 4 Rs P",
        Says = "run time of a load that takes constant power",
        Source = "definition", Where = "integral of Q dV/((V0-V1) I) on the low-current branch", Valid = "rested voltage a straight line from full to empty, constant resistance",
        Example = "capacity=2Ah full=4.1V empty=3.3V source=0.1ohm power=6W cutoff=3V")]
    public static DischargeResult Regulated(
        [In("Q", "C", "capacity", Name = "capacity", Min = 0)] double capacityAs,
        [In("V0", "V", "rested voltage when full", Name = "full", Min = 0)] double fullV,
        [In("V1", "V", "rested voltage when empty", Name = "empty", Min = 0)] double emptyV,
        [In("Rs", "Ω", "source resistance", Name = "source", Min = 0)] double sourceOhm,
        [In("P", "W", "power at the pack's terminals", Name = "power", Min = 0)] double powerW,
        [In("Vcut", "V", "cut-off at the pack's terminals", Name = "cutoff", Min = 0)] double cutoffV) =>
        Discharge.AtPower(OcvTable.Line(emptyV, fullV), capacityAs, sourceOhm, default, powerW, cutoffV);

    /// <summary>Share of the chemical energy that arrives at the terminals, first order: 1 − I·R/mean voltage.</summary>
    [Law("energy-share", "packs", "1 − I·R/V", Says = "share of a cell's energy that reaches the terminals", Source = "definition", Where = "Ohm's law on the mean voltage",
        Valid = "before the loss at the cut-off", Example = "current=2A source=80mohm mean=3.72V")]
    public static double FirstOrderShare(
        [In("I", "A", "current", Name = "current", Min = 0)] double currentA,
        [In("R", "Ω", "resistance after minutes", Name = "source", Min = 0)] double sourceOhm,
        [In("V", "V", "mean rested voltage", Name = "mean", Min = 0)] double meanOpenV) =>
        1 - (Impossible.IfNegative(currentA, "A") * Impossible.IfNegative(sourceOhm, "Ω") / Impossible.UnlessPositive(meanOpenV, "V"));

    /// <summary>Energy at the terminals under a constant current: charge given times (mean rested voltage − I·R).</summary>
    public static double GivenJ(double givenAs, double meanOpenV, double currentA, double sourceOhm) =>
        Impossible.IfNegative(givenAs, "C") * (Impossible.UnlessPositive(meanOpenV, "V") - (currentA * Impossible.IfNegative(sourceOhm, "Ω")));
}
