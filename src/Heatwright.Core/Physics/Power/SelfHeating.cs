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

    /// <summary>Reversible heat at a Celsius temperature.</summary>
    [Law("cell-reversible-heat", "cells", "−I·T·dOCV/dT", Says = "heat that a cell makes or takes besides its resistance", Unit = "W", Source = "bernardi-1985", Where = "second term, from memory",
        Valid = "discharge current positive; about ±0.1 mV/K for lithium", Example = "current=5A cell=25degC slope=-0.1mV/K")]
    public static double ReversibleAtC(
        [In("I", "A", "discharge current", Name = "current")] double currentA,
        [In("T", "°C", "cell temperature", Name = "cell", Min = -60, Max = 120)] double cellC,
        [In("dOCV/dT", "V/K", "slope of the rested voltage over temperature", Name = "slope", Min = -0.01, Max = 0.01)] double openVPerK) =>
        ReversibleW(currentA, cellC + Constants.ZeroCelsiusK, openVPerK);

    /// <summary>Reversible heat: −I·T·dOCV/dT; positive warms. About ±0.1 mV/K for lithium cells, unknown sign.</summary>
    public static double ReversibleW(double currentA, double cellK, double openVPerK) => -currentA * Impossible.UnlessKelvin(cellK) * openVPerK;

    /// <summary>How a round cell loses its heat.</summary>
    [Law("cell-cooling", "cells", "A = π·D·(L + D/2), Rth = 1/(h·A), τ = m·c·Rth", Says = "surface, thermal resistance and time constant of a round cell", Source = "definition", Where = "heat balance of one lump",
        Valid = "h 8 to 12 W/(m²·K) bare in air, 3 to 6 in a closed handle (common practice)", Example = "diameter=18mm length=65mm loss=10W/(m²·K) mass=45g heat=1000J/(kg·K)")]
    public static CellCooling Cooling(
        [In("D", "m", "diameter", Name = "diameter", Min = 0)] double diameterM,
        [In("L", "m", "length", Name = "length", Min = 0)] double lengthM,
        [In("h", "W/(m²·K)", "loss coefficient", Name = "loss", Min = 0)] double filmWPerM2K,
        [In("m", "kg", "mass", Name = "mass", Min = 0)] double massKg,
        [In("c", "J/(kg·K)", "specific heat; 900 to 1200 (from memory)", Name = "heat", Min = 0, Default = 1000)] double heatJPerKgK = 1000)
    {
        double areaM2 = CylinderAreaM2(diameterM, lengthM);
        double thermal = KPerW(filmWPerM2K, areaM2);
        return new(areaM2, thermal, TauS(massKg, heatJPerKgK, thermal));
    }

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

/// <summary>How a cell loses its heat.</summary>
/// <param name="AreaM2">Whole surface.</param>
/// <param name="ThermalKPerW">Surface to surroundings.</param>
/// <param name="TauS">Time constant.</param>
public readonly record struct CellCooling(
    [property: Out("m²", "whole surface", Name = "area")] double AreaM2,
    [property: Out("K/W", "surface to surroundings", Name = "thermal")] double ThermalKPerW,
    [property: Out("s", "time constant", Name = "time-constant")] double TauS);
