namespace Heatwright.Physics;

/// <summary>A published small polymer lithium cell (850 mAh, room temperature) in closed form: a stand-in until the maker's own cell has been measured.</summary>
/// <remarks>Source: [chen-2006] extraction section, equations (2) to (7); coefficients found alike in public transcriptions.
/// Both fitted capacitances turn negative near empty (short pair below 0.50 %, long pair below 1.12 % charge),
/// so resistances and capacitances are taken at no less than <see cref="FloorCharge"/>, the rested voltage at no less than empty.</remarks>
public static class ClosedFormCell
{
    /// <summary>Charge below which resistances and capacitances stay as they are here.</summary>
    public const double FloorCharge = 0.02;

    /// <summary>Capacity of the published cell: 850 mAh in coulombs.</summary>
    public const double CapacityAs = 0.85 * 3600;

    /// <summary>Rested voltage.</summary>
    [Law("polymer-cell-volts", "cells", "-1.031·exp(-35 s) + 3.685 + 0.2156 s − 0.1178 s² + 0.3201 s³", Says = "rested voltage of a small polymer lithium cell at a charge left", Unit = "V", Source = "chen-2006",
        Where = "eq. (2)", Valid = "one 850 mAh polymer lithium cell at room temperature; another cell of the kind within about 70 mV", Example = "charge=50%")]
    public static double OpenV([In("s", "", "charge left", Min = 0, Max = 1)] double charge)
    {
        double s = Math.Max(Impossible.Unless(charge, double.NegativeInfinity, 1, ""), 0);
        return (-1.031 * Math.Exp(-35 * s)) + 3.685 + (s * (0.2156 + (s * (-0.1178 + (0.3201 * s)))));
    }

    /// <summary>Resistors and capacitors at a charge left.</summary>
    public static TwoRcCircuit Circuit(double charge)
    {
        double s = Math.Max(Impossible.Unless(charge, double.NegativeInfinity, 1, ""), FloorCharge);
        return new(
            SeriesOhm: (0.1562 * Math.Exp(-24.37 * s)) + 0.07446,
            ShortOhm: (0.3208 * Math.Exp(-29.14 * s)) + 0.04669,
            ShortF: (-752.9 * Math.Exp(-13.51 * s)) + 703.6,
            LongOhm: (6.603 * Math.Exp(-155.2 * s)) + 0.04984,
            LongF: (-6056 * Math.Exp(-27.12 * s)) + 4475);
    }

    /// <summary>Sag per ampere of this cell, t seconds after a step from rest.</summary>
    [Law("polymer-cell-ohms", "cells", "R0 + R1·(1 − exp(-t/τ₁)) + R2·(1 − exp(-t/τ₂))", Says = "sag per ampere of a small polymer lithium cell, seconds after a load", Unit = "Ω", Source = "chen-2006",
        Where = "eqs. (3) to (6)", Valid = "one 850 mAh polymer lithium cell at room temperature; scale to a measured 10 s resistance", Example = "charge=50% after=10s")]
    public static double OhmAfter([In("s", "", "charge left", Min = 0, Max = 1, SoftMin = 0.05)] double charge,
        [In("t", "s", "time since the current step", Name = "after", Min = 0)] double afterS) => Circuit(charge).OhmAfter(afterS);
}
