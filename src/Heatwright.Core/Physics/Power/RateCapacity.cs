namespace Heatwright.Physics;

/// <summary>Less charge at more current, by one of two ways that must never be used together.</summary>
/// <remarks>Emergent: the sag reaches the cut-off earlier; needs a resistance. Peukert: t = H·(Q_H/(I·H))^k, for two or more constant-current
/// discharges without a known resistance. Typical k from memory: lithium 1.02 to 1.08, nickel-metal hydride 1.05 to 1.15. Limits of Peukert under
/// changing load and temperature: [doerffel-2006], from memory.</remarks>
public static class RateCapacity
{
    /// <summary>Charge a cell gives down to a cut-off under a constant current: Q·(1 − s_end), OCV(s_end) = V_cut + I·R.</summary>
    /// <remarks>One settled resistance is optimistic near empty, where it rises steeply.</remarks>
    public static double GivenAs(OcvTable cell, double capacityAs, double settledOhm, double currentA, double cutoffV)
    {
        double stopV = Impossible.UnlessPositive(cutoffV, "V") + (Impossible.IfNegative(currentA, "A") * Impossible.IfNegative(settledOhm, "Ω"));
        return Impossible.UnlessPositive(capacityAs, "C") * (1 - cell.ChargeAt(stopV));
    }

    /// <summary>Share of its 25 °C capacity that a cell gives in the cold, straight between −10, 0 and 25 °C; flat outside.</summary>
    /// <remarks>Ranges from memory in data/cells/cell-cold-capacity. Multiply the capacity by it and leave the cut-off alone: changing both counts the cold twice.</remarks>
    public static double ColdShare(double cellC, double shareAtZero, double shareAtMinusTen)
    {
        Impossible.UnlessFraction(shareAtZero);
        Impossible.UnlessFraction(shareAtMinusTen);
        return Impossible.UnlessFinite(cellC, "°C") >= 0
            ? shareAtZero + ((1 - shareAtZero) * Math.Min(1, cellC / 25))
            : shareAtZero - ((shareAtZero - shareAtMinusTen) * Math.Min(1, -cellC / 10));
    }

    /// <summary>Run time by Peukert: H·(Q_H/(I·H))^k.</summary>
    [Law("peukert", "cells", "H·(Q/(I·H))^k", Says = "run time when a lead or nickel battery gives less at high current", Unit = "s", Source = "doerffel-2006", Where = "form and limits, from memory", Valid = "constant current within twice the tested range, same temperature; not together with a known resistance",
        Example = "capacity=2Ah rated-time=5h current=4A exponent=1.05")]
    public static double PeukertS(
        [In("Q", "C", "capacity at the rated time", Name = "capacity", Min = 0)] double capacityAs,
        [In("H", "s", "rated time", Name = "rated-time", Min = 0)] double ratedTimeS,
        [In("I", "A", "current", Min = 0)] double currentA,
        [In("k", "", "exponent", Min = 1, Max = 2, SoftMax = 1.3)] double exponent) =>
        Impossible.UnlessPositive(ratedTimeS, "s") * Math.Pow(
            Impossible.UnlessPositive(capacityAs, "C") / (Impossible.UnlessPositive(currentA, "A") * ratedTimeS), Impossible.Unless(exponent, 1, 2, ""));

    /// <summary>Exponent from two discharges at constant current: ln(t1/t2)/ln(I2/I1).</summary>
    [Law("peukert-exponent", "cells", "k = ln(t1/t2)/ln(I2/I1)", Says = "exponent of a battery from two full discharges", Source = "doerffel-2006", Where = "form, from memory",
        Valid = "two constant currents at one temperature", Example = "first=1A first-time=2.95h second=3A second-time=0.93h")]
    public static double PeukertExponent(
        [In("I1", "A", "first current", Name = "first", Min = 0)] double firstA,
        [In("t1", "s", "its run time", Name = "first-time", Min = 0)] double firstS,
        [In("I2", "A", "second current", Name = "second", Min = 0)] double secondA,
        [In("t2", "s", "its run time", Name = "second-time", Min = 0)] double secondS)
    {
        double span = Math.Log(Impossible.UnlessPositive(secondA, "A") / Impossible.UnlessPositive(firstA, "A"));
        return span == 0
            ? throw Impossible.Outside(nameof(secondA), secondA, "A", "another current than the first")
            : Math.Log(Impossible.UnlessPositive(firstS, "s") / Impossible.UnlessPositive(secondS, "s")) / span;
    }
}
