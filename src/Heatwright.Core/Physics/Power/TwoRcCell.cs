namespace Heatwright.Physics;

/// <summary>Laws of a cell drawn as one resistor and two resistor-capacitor pairs.</summary>
/// <remarks>V = OCV(s) − v1 − v2 − I·R0; dv/dt = (I − v/R)/C; ds/dt = −I/Q. Discharge current is positive.
/// Source: [chen-2006] circuit of fig. 2; the update over a step is exact for a current and a circuit that hold still within it.
/// Valid between about 5 % charge and full, up to the cell's rated current; not below 0 °C without a cold factor.</remarks>
public static class TwoRcCell
{
    /// <summary>e^(−t/τ) − 1, and −1 for a pair without capacitor, which settles at once.</summary>
    internal static double Grown(double seconds, double tauS) => tauS > 0 ? Math.Exp(-seconds / tauS) - 1 : seconds > 0 ? -1 : 0;

    /// <summary>Voltage over one pair after a step: v·e^(−Δt/τ) + R·I·(1 − e^(−Δt/τ)).</summary>
    [Law("rc-step", "cells", "v = v₀·e^(−t/τ) + R·I·(1 − e^(−t/τ))", Says = "voltage of one slow pair of a cell after a time", Unit = "V", Source = "definition", Where = "exact step of one pair, constant current",
        Valid = "constant current; the cell's charge held", Example = "start=0V resistance=46.69mohm time-constant=32.81s current=1.5A time=10s")]
    public static double PairV(
        [In("v₀", "V", "voltage of the pair at the start", Name = "start")] double pairV,
        [In("R", "Ω", "resistance of the pair", Name = "resistance", Min = 0)] double pairOhm,
        [In("τ", "s", "time constant of the pair", Name = "time-constant", Min = 0)] double tauS,
        [In("I", "A", "current", Name = "current")] double currentA,
        [In("t", "s", "time", Name = "time", Min = 0)] double stepS)
    {
        Impossible.IfNegative(pairOhm, "Ω");
        Impossible.IfNegative(stepS, "s");
        double grown = Math.Exp(-stepS / Impossible.UnlessPositive(tauS, "s")) - 1;
        return pairV + (grown * (pairV - (pairOhm * currentA)));
    }

    /// <summary>State after a step at constant current. The charge may pass below 0: the caller looks for the end inside the step.</summary>
    public static TwoRcState Advance(TwoRcState state, in TwoRcCircuit circuit, double currentA, double capacityAs, double stepS) => new(
        state.Charge - (currentA * Impossible.IfNegative(stepS, "s") / Impossible.UnlessPositive(capacityAs, "C")),
        PairV(state.ShortV, circuit.ShortOhm, circuit.ShortS, currentA, stepS),
        PairV(state.LongV, circuit.LongOhm, circuit.LongS, currentA, stepS));

    /// <summary>Voltage behind the series resistor: what is left of the rested voltage after both pairs.</summary>
    public static double EmfV(double openV, in TwoRcState state) => openV - state.ShortV - state.LongV;

    /// <summary>Terminal voltage under a current.</summary>
    public static double TerminalV(double openV, in TwoRcState state, double seriesOhm, double currentA) =>
        EmfV(openV, state) - (currentA * Impossible.IfNegative(seriesOhm, "Ω"));

    /// <summary>Current into a resistance: e/(R_load + R0).</summary>
    public static double CurrentThroughA(double emfV, double seriesOhm, double loadOhm) =>
        emfV / (Impossible.UnlessPositive(loadOhm, "Ω") + Impossible.IfNegative(seriesOhm, "Ω"));

    /// <summary>Current into a load that takes a constant power, on the stable side; none when the cell cannot give that power.</summary>
    /// <remarks>I = 2P/(e + √(e² − 4·R0·P)): the form without cancellation. The radicand is looked at first.</remarks>
    public static double? CurrentAtPowerA(double emfV, double seriesOhm, double powerW)
    {
        double radicand = (emfV * emfV) - (4 * Impossible.IfNegative(seriesOhm, "Ω") * Impossible.IfNegative(powerW, "W"));
        return emfV > 0 && radicand >= 0 ? 2 * powerW / (emfV + Math.Sqrt(radicand)) : null;
    }
}
