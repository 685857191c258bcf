namespace Heatwright.Physics;

/// <summary>Cell protection: when it trips, and whether a cell is asked for more than it may give.</summary>
/// <remarks>I_trip = V_det/(2·R_ds(on)): two switches in series are the shunt. Source: [protection-ic-guide]. A common single-cell part detects 0.150 V
/// (published value; its ±0.03 V from memory). The trip falls when the switches heat: about ÷ 1.3 at 85 °C (common practice, no source).</remarks>
public static class Protection
{
    /// <summary>Rise of the switches' resistance from 25 to 85 °C. Common practice, no source.</summary>
    public const double HotSwitchFactor = 1.3;

    /// <summary>Labels above this are not believed; editable where they are shown. Common practice, no source.</summary>
    public const double MostJPerM3 = 800 * 3600 * 1000.0;

    /// <summary>Labels above this are not believed; editable where they are shown. Common practice, no source.</summary>
    public const double MostJPerKg = 300 * 3600.0;

    /// <summary>Current at which the protection opens.</summary>
    [Law("protection-trip", "packs", "Vdet/(2·Rds)/hot", Says = "current at which a protection board opens", Unit = "A", Source = "protection-ic-guide", Where = "detection voltage over two switches", Valid = "two like switches in series; hot = 1.3 near 85 °C is common practice",
        Example = "detect=0.15V switch=25mohm hot=1.3")]
    public static double TripA(
        [In("Vdet", "V", "detection voltage", Name = "detect", Min = 0)] double detectV,
        [In("Rds", "Ω", "resistance of one switch at 25 °C", Name = "switch", Min = 0)] double switchOhm,
        [In("hot", "", "rise of that resistance when warm", Name = "hot", Min = 1, Max = 3, Default = 1)] double hotFactor = 1) =>
        Impossible.UnlessPositive(detectV, "V") / (2 * Impossible.UnlessPositive(switchOhm, "Ω") * Impossible.Unless(hotFactor, 1, 3, ""));

    /// <summary>Whether a peak comes so near to the warm trip that the protection may cut out: above 0.7 of it. Common practice, no source.</summary>
    public static bool MayTrip(double peakA, double hotTripA) => Impossible.IfNegative(peakA, "A") > 0.7 * Impossible.UnlessPositive(hotTripA, "A");

    /// <summary>Current in multiples of the capacity per hour.</summary>
    [Law("c-rate", "cells", "I·3600 s/Q", Says = "current of a cell in multiples of its capacity per hour", Unit = "1/h", Source = "definition", Where = "current over capacity", Valid = "energy cells usually 1 to 2, power cells 8 to 15 (common practice)", Example = "current=1.3A capacity=0.62Ah")]
    public static double PerHour(
        [In("I", "A", "current of one cell", Min = 0)] double currentA,
        [In("Q", "C", "capacity of one cell", Name = "capacity", Min = 0)] double capacityAs) =>
        3600 * Impossible.IfNegative(currentA, "A") / Impossible.UnlessPositive(capacityAs, "C");

    /// <summary>What a cell current means against its continuous rating; with the rating unknown, one capacity per hour is the limit.</summary>
    /// <remarks>Common practice, no source: above the rating an error, above 0.8 of it a warning.</remarks>
    public static CellLoad LoadOf(double cellA, double capacityAs, double? ratedA = null)
    {
        double limit = ratedA ?? (Impossible.UnlessPositive(capacityAs, "C") / 3600);
        double share = Impossible.IfNegative(cellA, "A") / Impossible.UnlessPositive(limit, "A");
        return share > 1 ? CellLoad.TooMuch : share > 0.8 ? CellLoad.NearLimit : CellLoad.Fine;
    }

    /// <summary>Volume of a round cell.</summary>
    [Law("cell-volume", "cells", "π/4·d²·L", Says = "volume of a round cell", Unit = "m³", Source = "definition", Where = "cylinder", Valid = "the bare can; sleeve and tabs come on top", Example = "diameter=18mm length=65mm")]
    public static double CylinderM3(
        [In("d", "m", "diameter", Min = 0)] double diameterM,
        [In("L", "m", "length", Min = 0)] double lengthM) =>
        Math.PI / 4 * Impossible.UnlessPositive(diameterM, "m") * diameterM * Impossible.UnlessPositive(lengthM, "m");

    /// <summary>Energy of a label over the size and mass of the cell.</summary>
    [Law("label-density", "cells", "E/V, E/m; credible up to 800 Wh/L and 300 Wh/kg", Says = "whether a cell can hold what its label says", Source = "common practice", Where = "limits of what is sold; edit as cells get better",
        Valid = "whole cell with can", Example = "capacity=9900mAh voltage=3.7V volume=16.54cm3 mass=45g")]
    public static LabelDensity Density(
        [In("Q", "C", "capacity on the label", Name = "capacity", Min = 0)] double capacityAs,
        [In("V", "V", "nominal voltage", Name = "voltage", Min = 0, Default = 3.7)] double nominalV,
        [In("Vol", "m³", "volume of the cell", Name = "volume", Min = 0)] double volumeM3,
        [In("m", "kg", "mass; 0 where it was not weighed", Name = "mass", Min = 0, Default = 0)] double massKg = 0)
    {
        double joule = Impossible.UnlessPositive(capacityAs, "C") * Impossible.UnlessPositive(nominalV, "V");
        return new(joule / 3.6e6 / Impossible.UnlessPositive(volumeM3, "m³"), massKg > 0 ? joule / 3600 / massKg : null, LabelIsCredible(joule, volumeM3, massKg));
    }

    /// <summary>Whether a labelled energy fits in the volume and mass of the thing it is printed on. A mass of zero means not weighed.</summary>
    public static bool LabelIsCredible(double claimedJ, double volumeM3, double massKg = 0) =>
        Impossible.UnlessPositive(claimedJ, "J") <= MostJPerM3 * Impossible.UnlessPositive(volumeM3, "m³")
        && (Impossible.IfNegative(massKg, "kg") == 0 || claimedJ <= MostJPerKg * massKg);
}

/// <summary>How hard a cell is worked.</summary>
public enum CellLoad
{
    /// <summary>Below 0.8 of the limit.</summary>
    Fine,

    /// <summary>Above 0.8 of the limit.</summary>
    NearLimit,

    /// <summary>Above the limit.</summary>
    TooMuch,
}

/// <summary>Energy that a label claims over size and mass.</summary>
/// <param name="WhPerL">Watt-hours a litre.</param>
/// <param name="WhPerKg">Watt-hours a kilogram; none without a mass.</param>
/// <param name="Credible">Whether cells of this kind exist.</param>
public readonly record struct LabelDensity(
    [property: Out("Wh/L", "energy over volume", Name = "per-volume")] double WhPerL,
    [property: Out("Wh/kg", "energy over mass", Name = "per-mass")] double? WhPerKg,
    [property: Out("", "whether the label can be true", Name = "credible")] bool Credible);
