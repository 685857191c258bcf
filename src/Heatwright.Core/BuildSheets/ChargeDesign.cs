using Heatwright.Physics;

namespace Heatwright.BuildSheets;

/// <summary>A charge of one cell, or of a string on a charger made for it.</summary>
/// <param name="SetA">Charge current.</param>
/// <param name="SourceA">What the source must give at the most; where it is too weak, the current at which its cable gives the most power.</param>
/// <param name="Course">Constant current, then constant volts.</param>
/// <param name="HeatW">Heat of a linear charger at the start; 0: a switching charger.</param>
/// <param name="FoldBackA">Current at which a linear charger folds back at the start; infinite: never.</param>
/// <param name="SetOhm">Set-resistor by the law stated.</param>
public sealed record ChargeDesign(double SetA, double SourceA, ChargeCourse Course, double HeatW, double FoldBackA, double SetOhm)
{
    /// <summary>Charge a pack begins with, 0 to 1.</summary>
    public const double From = 0.05;

    /// <summary>The source cannot fill the pack: a linear charger needs more volts than a full cell, a switching one more power than the cable lets through.</summary>
    public bool SourceTooWeak { get; init; }

    /// <summary>The charge of a pack.</summary>
    /// <param name="cell">Rested volts of one cell.</param>
    /// <param name="capacityAs">Capacity of one string.</param>
    /// <param name="cellOhm">Ohms of one cell after minutes.</param>
    /// <param name="series">Cells in series.</param>
    /// <param name="fullV">Full volts of one cell.</param>
    /// <param name="setA">Charge current.</param>
    /// <param name="endShare">Ends at this share of it.</param>
    /// <param name="sourceV">Source.</param>
    /// <param name="cableOhm">Its cable, out and back.</param>
    /// <param name="efficiency">Of a switching charger.</param>
    /// <param name="lawV">Set-resistor law: amps = law/ohms.</param>
    /// <param name="heat">A linear charger's heat; null: switching.</param>
    public static ChargeDesign Of(
        OcvTable cell, double capacityAs, double cellOhm, int series, double fullV, double setA, double endShare, double sourceV, double cableOhm, double efficiency, double lawV, ChargerHeat? heat)
    {
        var course = Charging.OverTable(cell, capacityAs, cellOhm, setA, fullV, From, endShare * setA, heat);
        double startV = Math.Min(fullV, cell.VoltsAt(From) + (setA * cellOhm));
        double packW = series * fullV * setA / efficiency;
        double source = heat is not null ? setA : ThroughCableA(sourceV, cableOhm, packW);
        bool shed = heat is not null && sourceV > startV;
        return new(setA, source, course, shed ? ChargerHeat.HeatW(sourceV, startV, setA) : 0,
            shed ? ChargerHeat.FoldBackA(sourceV, heat!.RegulatesC, heat.AroundC, heat.ThermalKPerW, startV) : double.PositiveInfinity, lawV / setA)
        {
            SourceTooWeak = heat is not null ? sourceV <= fullV : sourceV * sourceV < 4 * cableOhm * packW,
        };
    }

    /// <summary>Current of a source that gives a power behind its cable: the lower root of I·(V − I·R) = P, written without cancellation.</summary>
    private static double ThroughCableA(double sourceV, double cableOhm, double watts)
    {
        double radicand = (sourceV * sourceV) - (4 * cableOhm * watts);
        return radicand >= 0 ? 2 * watts / (sourceV + Math.Sqrt(radicand)) : sourceV / (2 * cableOhm);
    }
}
