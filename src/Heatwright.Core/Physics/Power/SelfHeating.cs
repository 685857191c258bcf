namespace Heatwright.Physics;

/// <summary>Heat a cell makes in itself and how warm that makes it.</summary>
/// <remarks>q = I·(OCV − V) − I·T·dOCV/dT. Source: [bernardi-1985], from memory. Lumped: m·cp·dT/dt = q − h·A·(T − T_amb).
/// h = 8 to 12 W/(m²K) bare in air, 3 to 6 inside a closed plastic handle (common practice, no source).</remarks>
public static class SelfHeating
{
    /// <summary>Warn above this while charging. Common practice, no source.</summary>
    public const double ChargingLimitC = 45;

    /// <summary>Warn above this while discharging. Common practice, no source.</summary>
    public const double DischargingLimitC = 60;

    /// <summary>Loss in the resistance: I²·R once settled.</summary>
    [Law("cell-heat", "cells", "I²·R", Says = "heat that a current makes inside a cell", Unit = "W", Source = "bernardi-1985", Where = "first term, from memory", Valid = "settled current; above twice the capacity per hour the reversible part may be left out",
        Example = "current=5A cell=40mohm")]
    public static double LossW(
        [In("I", "A", "current")] double currentA,
        [In("R", "Ω", "resistance after minutes", Name = "cell", Min = 0)] double cellOhm) => currentA * currentA * Impossible.IfNegative(cellOhm, "Ω");

    /// <summary>Reversible heat: −I·T·dOCV/dT; positive warms. About ±0.1 mV/K for lithium cells, unknown sign.</summary>
    public static double ReversibleW(double currentA, double cellK, double openVPerK) => -currentA * Impossible.UnlessKelvin(cellK) * openVPerK;

    /// <summary>Whole surface of a round cell.</summary>
    public static double CylinderAreaM2(double diameterM, double lengthM) =>
        Math.PI * Impossible.UnlessPositive(diameterM, "m") * (Impossible.UnlessPositive(lengthM, "m") + (diameterM / 2));

    /// <summary>Thermal resistance from surface to surroundings, 1/(h·A).</summary>
    public static double KPerW(double filmWPerM2K, double areaM2) =>
        1 / (Impossible.UnlessPositive(filmWPerM2K, "W/(m²K)") * Impossible.UnlessPositive(areaM2, "m²"));

    /// <summary>Time constant m·cp/(h·A).</summary>
    public static double TauS(double massKg, double heatJPerKgK, double thermalKPerW) =>
        Impossible.UnlessPositive(massKg, "kg") * Impossible.UnlessPositive(heatJPerKgK, "J/(kg·K)") * Impossible.UnlessPositive(thermalKPerW, "K/W");

    /// <summary>Rise above the surroundings after a time at constant heat: q·R_th·(1 − e^(−t/τ)).</summary>
    [Law("cell-rise", "cells", "q·Rth·(1 − exp(-t/τ))", Says = "how far a cell warms after a time at constant heat", Unit = "K", Source = "definition", Where = "one lump", Valid = "heat from the hot end comes on top", Example = "heat=1W thermal=23.9K/W time-constant=1075s after=600s")]
    public static double RiseK(
        [In("q", "W", "heat made in the cell", Name = "heat", Min = 0)] double heatW,
        [In("Rth", "K/W", "cell to surroundings", Name = "thermal", Min = 0)] double thermalKPerW,
        [In("τ", "s", "time constant", Name = "time-constant", Min = 0)] double tauS,
        [In("t", "s", "time since start", Name = "after", Min = 0)] double afterS) =>
        Impossible.IfNegative(heatW, "W") * Impossible.UnlessPositive(thermalKPerW, "K/W")
        * -TwoRcCell.Grown(Impossible.IfNegative(afterS, "s"), Impossible.UnlessPositive(tauS, "s"));
}
