namespace Heatwright.Physics;

/// <summary>Resistance of a cell from current steps, and rested voltage from discharges.</summary>
/// <remarks>R = (U1 − U2)/(I2 − I1). Method: [iec-61960-3], direct-current method (10 s at 0.2 of the hourly current, then 1 s at 1.0 of it),
/// procedure read in an instrument maker's note, clause not checked. It reports near the series resistor and understates the sag of long bursts.</remarks>
public static class PulseOhms
{
    /// <summary>Resistance from two loads.</summary>
    [Law("pulse-resistance", "cells", "(U1 − U2)/(I2 − I1)", Says = "resistance of a cell from its voltage at two loads", Unit = "Ω", Source = "iec-61960-3", Where = "direct-current method, standard not read",
        Valid = "voltages at the cell's own terminals; a 1 s value understates long sag by 1.5 to 2.5 times", Example = "first-voltage=3.815V first-current=0.124A second-voltage=3.763V second-current=0.62A")]
    public static double Ohm(
        [In("U1", "V", "voltage at the smaller current", Name = "first-voltage", Min = 0)] double firstV,
        [In("I1", "A", "smaller current", Name = "first-current", Min = 0)] double firstA,
        [In("U2", "V", "voltage at the larger current", Name = "second-voltage", Min = 0)] double secondV,
        [In("I2", "A", "larger current", Name = "second-current", Min = 0)] double secondA) => secondA > firstA
            ? (firstV - secondV) / (secondA - firstA)
            : throw Impossible.Outside(nameof(secondA), secondA, "A", "more than the first current");

    /// <summary>Standard doubt of that resistance from the doubts of both voltages: √(u1² + u2²)/(I2 − I1).</summary>
    public static double DoubtOhm(double firstDoubtV, double secondDoubtV, double stepA) =>
        Math.Sqrt((Impossible.IfNegative(firstDoubtV, "V") * firstDoubtV) + (Impossible.IfNegative(secondDoubtV, "V") * secondDoubtV))
        / Impossible.UnlessPositive(stepA, "A");

    /// <summary>Rested voltage from two discharges at the same charge: V_a + I_a·R.</summary>
    [Law("rested-from-two", "cells", "V = Va + Ia·(Va − Vb)/(Ib − Ia)", Says = "rested voltage from readings at two currents", Unit = "V", Source = "definition", Where = "straight line to no current",
        Valid = "the same charge at both currents", Example = "first-voltage=3.74V first-current=0.1A second-voltage=3.6V second-current=1.4A")]
    public static double OpenV(
        [In("Va", "V", "voltage at the smaller current", Name = "first-voltage", Min = 0)] double firstV,
        [In("Ia", "A", "smaller current", Name = "first-current", Min = 0)] double firstA,
        [In("Vb", "V", "voltage at the larger current", Name = "second-voltage", Min = 0)] double secondV,
        [In("Ib", "A", "larger current", Name = "second-current", Min = 0)] double secondA) => firstV + (firstA * Ohm(firstV, firstA, secondV, secondA));

    /// <summary>Rested voltage from a slow charge and a slow discharge at the same charge: their mean.</summary>
    [Law("rested-between", "cells", "V = (Vd + Vc)/2", Says = "rested voltage between a slow charge and a slow discharge", Unit = "V", Source = "definition", Where = "mean",
        Valid = "both at C/20 or slower, at the same charge", Example = "discharge=3.742V charge=3.776V")]
    public static double OpenBetweenV(
        [In("Vd", "V", "voltage on slow discharge", Name = "discharge", Min = 0)] double dischargeV,
        [In("Vc", "V", "voltage on slow charge", Name = "charge", Min = 0)] double chargeV) => (dischargeV + chargeV) / 2;

    /// <summary>Rested voltage from one slow discharge and a known resistance: V + I·R.</summary>
    public static double OpenFromOneV(double dischargeV, double currentA, double ohm) => dischargeV + (currentA * Impossible.IfNegative(ohm, "Ω"));

    /// <summary>Resistance from a long heater run, with the fall of the rested voltage by the charge used taken out.</summary>
    public static double LongRunOhm(double restedV, double loadedV, double currentA, double usedShare, double slopeV) =>
        (restedV - loadedV - (Impossible.UnlessFraction(usedShare) * Impossible.IfNegative(slopeV, "V"))) / Impossible.UnlessPositive(currentA, "A");
}
