namespace Heatwright.Physics;

/// <summary>Loss of capacity and gain of resistance of one published 2.15 Ah NMC 18650, by storage and by use.</summary>
/// <remarks>Source: [schmalstieg-2014], coefficients checked against a public transcription. Cycling was tested near 1 C and 35 °C; storage at 50 °C over charge
/// and at half charge over temperature, so 25 °C is extrapolated. Not below 10 °C charging, not for pouch or LiFePO4 cells:
/// there design to 80 % capacity and 1.5 times the resistance (common practice, no source).</remarks>
public static class Ageing
{
    /// <summary>Capacity of the published cell, C.</summary>
    public const double PublishedCapacityAs = 2.15 * 3600;

    /// <summary>Rule of thumb for the end of life: capacity left. Common practice, no source.</summary>
    public const double EndOfLifeCapacity = 0.8;

    /// <summary>Rule of thumb for the end of life: resistance over new. Common practice, no source.</summary>
    public const double EndOfLifeOhms = 1.5;

    private const double DayS = 86400;

    /// <summary>Storage factor of capacity, 1/day^0.75: (7.543·V − 23.75)·10⁶·e^(−6976/T), not below zero.</summary>
    public static double StorageCapacityFactor(double storedV, double cellK) =>
        Math.Max(0, (7.543 * Impossible.UnlessPositive(storedV, "V")) - 23.75) * 1e6 * Math.Exp(-6976 / Impossible.UnlessKelvin(cellK));

    /// <summary>Fraction of capacity lost in storage: α·t^0.75, t in days.</summary>
    [Law("storage-fade", "cells", "(7.543 V − 23.75)·1e6·exp(-6976/T)·t^0.75", Says = "share of its capacity that a lithium cell loses lying in storage", Unit = "", Source = "schmalstieg-2014", Where = "calendar ageing law, capacity; place not noted",
        Valid = "one 2.15 Ah NMC 18650; tested at 35 to 50 °C, colder is extrapolated", Example = "stored=3.7V cell=25degC time=365d")]
    public static double StorageFadeAtC(
        [In("V", "V", "rested voltage it is stored at", Name = "stored", Min = 2.5, Max = 4.3, SoftMin = 3.3, SoftMax = 4.2)] double storedV,
        [In("T", "°C", "storage temperature", Name = "cell", Min = -40, Max = 90, SoftMin = 35, SoftMax = 50)] double cellC,
        [In("t", "s", "time in storage", Name = "time", Min = 0)] double timeS) =>
        StorageCapacityFactor(storedV, cellC + Constants.ZeroCelsiusK) * Days75(timeS);

    /// <summary>Relative gain of resistance in storage at a Celsius temperature.</summary>
    [Law("storage-ohms-gain", "cells", "(5.270 V − 16.32)·1e5·exp(-5986/T)·t^0.75", Says = "share by which the resistance of a lithium cell grows in storage", Source = "schmalstieg-2014", Where = "calendar ageing law, resistance; place not noted",
        Valid = "one 2.15 Ah NMC 18650; tested at 35 to 50 °C, colder is extrapolated", Example = "stored=3.7V cell=25degC time=365d")]
    public static double StorageOhmsGainAtC(
        [In("V", "V", "rested voltage it is stored at", Name = "stored", Min = 2.5, Max = 4.3, SoftMin = 3.3, SoftMax = 4.2)] double storedV,
        [In("T", "°C", "storage temperature", Name = "cell", Min = -40, Max = 90, SoftMin = 35, SoftMax = 50)] double cellC,
        [In("t", "s", "time in storage", Name = "time", Min = 0)] double timeS) =>
        StorageOhmsGain(storedV, cellC + Constants.ZeroCelsiusK, timeS);

    /// <summary>Relative gain of resistance in storage: (5.270·V − 16.32)·10⁵·e^(−5986/T)·t^0.75.</summary>
    public static double StorageOhmsGain(double storedV, double cellK, double timeS) =>
        Math.Max(0, (5.270 * Impossible.UnlessPositive(storedV, "V")) - 16.32) * 1e5 * Math.Exp(-5986 / Impossible.UnlessKelvin(cellK)) * Days75(timeS);

    /// <summary>Charge and discharge throughput of a number of cycles, referred to the published cell's size.</summary>
    public static double PublishedThroughputAs(double cycles, double depth) =>
        2 * Impossible.IfNegative(cycles, "") * Impossible.UnlessFraction(depth) * PublishedCapacityAs;

    /// <summary>Fraction of capacity lost by a number of cycles.</summary>
    [Law("cycle-fade", "cells", "[7.348e-3·(V − 3.667)² + 7.6e-4 + 4.081e-3·DoD]·√(Ah)", Says = "share of its capacity that a lithium cell loses by cycles", Source = "schmalstieg-2014", Where = "cycle ageing law, capacity; place not noted",
        Valid = "one 2.15 Ah NMC 18650 near 1 C and 35 °C; Ah is charge and discharge of that cell", Example = "mean=3.7V depth=80% cycles=300")]
    public static double CycleFadeOf(
        [In("V", "V", "mean voltage over a cycle", Name = "mean", Min = 3, Max = 4.3, SoftMin = 3.4, SoftMax = 4.1)] double meanV,
        [In("DoD", "", "share of the charge used in a cycle", Name = "depth", Min = 0, Max = 1)] double depth,
        [In("N", "", "full cycles", Name = "cycles", Min = 0, SoftMax = 2000)] double cycles) =>
        CycleFade(meanV, depth, PublishedThroughputAs(cycles, depth));

    /// <summary>Fraction of capacity lost by use: [7.348·10⁻³(V̄ − 3.667)² + 7.6·10⁻⁴ + 4.081·10⁻³·DoD]·√Ah.</summary>
    public static double CycleFade(double meanV, double depth, double throughputAs)
    {
        double off = Impossible.UnlessPositive(meanV, "V") - 3.667;
        return ((7.348e-3 * off * off) + 7.6e-4 + (4.081e-3 * Impossible.UnlessFraction(depth))) * Math.Sqrt(Impossible.IfNegative(throughputAs, "C") / 3600);
    }

    /// <summary>Relative gain of resistance by a number of cycles.</summary>
    [Law("cycle-ohms-gain", "cells", "[2.153e-4·(V − 3.725)² − 1.521e-5 + 2.798e-4·DoD]·Ah", Says = "share by which the resistance of a lithium cell grows by cycles", Source = "schmalstieg-2014", Where = "cycle ageing law, resistance; place not noted",
        Valid = "one 2.15 Ah NMC 18650 near 1 C and 35 °C; Ah is charge and discharge of that cell", Example = "mean=3.7V depth=80% cycles=300")]
    public static double CycleOhmsGainOf(
        [In("V", "V", "mean voltage over a cycle", Name = "mean", Min = 3, Max = 4.3, SoftMin = 3.4, SoftMax = 4.1)] double meanV,
        [In("DoD", "", "share of the charge used in a cycle", Name = "depth", Min = 0, Max = 1)] double depth,
        [In("N", "", "full cycles", Name = "cycles", Min = 0, SoftMax = 2000)] double cycles) =>
        CycleOhmsGain(meanV, depth, PublishedThroughputAs(cycles, depth));

    /// <summary>Relative gain of resistance by use: [2.153·10⁻⁴(V̄ − 3.725)² − 1.521·10⁻⁵ + 2.798·10⁻⁴·DoD]·Ah, not below zero.</summary>
    public static double CycleOhmsGain(double meanV, double depth, double throughputAs)
    {
        double off = Impossible.UnlessPositive(meanV, "V") - 3.725;
        double perAh = (2.153e-4 * off * off) - 1.521e-5 + (2.798e-4 * Impossible.UnlessFraction(depth));
        return Math.Max(0, perAh) * Impossible.IfNegative(throughputAs, "C") / 3600;
    }

    private static double Days75(double timeS) => Math.Pow(Impossible.IfNegative(timeS, "s") / DayS, 0.75);
}
