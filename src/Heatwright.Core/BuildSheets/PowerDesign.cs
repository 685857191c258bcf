using Heatwright.Handbook;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>Currents and volts of the heater's path at both ends of a charge, as numbers with doubt.</summary>
/// <param name="FullV">Pack at the start, under load.</param>
/// <param name="EmptyV">Pack at its cut-off, under load.</param>
/// <param name="FullA">Pack current while on, full.</param>
/// <param name="EmptyA">Pack current while on, at the cut-off.</param>
/// <param name="LoopOhm">Everything in series, cells left out.</param>
/// <param name="CellOhm">Cells of the pack together.</param>
/// <param name="Duty">Mean duty at work, 0 to 1.</param>
/// <param name="OpenEmptyV">Rested pack volts at the cut-off.</param>
public sealed record PowerPoint(Estimate FullV, Estimate EmptyV, Estimate FullA, Estimate EmptyA, Estimate LoopOhm, Estimate CellOhm, Estimate Duty, Estimate OpenEmptyV)
{
    /// <summary>The larger of the two currents: through a module it rises as the pack empties.</summary>
    public Estimate MostA => FullA.Value >= EmptyA.Value ? FullA : EmptyA;

    /// <summary>The larger share of the pack volts that the loop takes, and when: amps and volts of one moment.</summary>
    internal (double Share, string When) WorstDrop()
    {
        double full = FullA.Si * LoopOhm.Si / FullV.Si, empty = EmptyA.Si * LoopOhm.Si / EmptyV.Si;
        return full >= empty ? (full, "full") : (empty, "at the cut-off");
    }

    /// <summary>True where the load asks more of the emptiest pack than the controller lasts through; on the brink to a millionth it does not.</summary>
    internal bool Resets(double brinkA) => EmptyA.Si > brinkA * (1 + 1e-6);
}

/// <summary>Fuse, switch, wires, traces and supply of the controller.</summary>
public static class PowerDesign
{
    /// <summary>Fuse ratings that are made, A (round figures of small fuses, common practice, no source).</summary>
    private static readonly double[] Ratings = [0.5, 0.63, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 6.3, 7, 7.5, 8, 10, 12, 12.5, 15, 20, 25, 30];

    /// <summary>The next rating that is made at or above an ampere value.</summary>
    public static double RatingA(double leastA) => Ratings.Where(rating => rating >= leastA).DefaultIfEmpty(Math.Ceiling(leastA / 5) * 5).First();

    /// <summary>The thinnest wire of the trade's table that carries a current; the thickest there is where none does.</summary>
    public static (double Gauge, double CarriesA) WireFor(double amps)
    {
        var rows = Tables.Find("lead-currents").Rows.OrderByDescending(row => row.Number("gauge")).ToArray();
        var row = rows.FirstOrDefault(one => one.Number("current") >= amps) ?? rows[^1];
        return (row.Number("gauge"), row.Number("current"));
    }

    /// <summary>On-resistance at the gate volts there are, from one sheet point and the largest threshold: the channel part grows as 1/(V − V_th).</summary>
    /// <remarks>Below the sheet's gate volts the whole on-resistance is taken as channel, above them nothing is gained: the answer is never too good.</remarks>
    public static double OnOhm(double sheetOhm, double sheetGateV, double gateV, double thresholdV) =>
        gateV > thresholdV && sheetGateV > thresholdV
            ? Math.Max(sheetOhm, MosfetLaw.OnOhm(sheetOhm * (sheetGateV - thresholdV), 0, gateV, thresholdV))
            : double.PositiveInfinity;

    /// <summary>Heater current while on at given pack volts behind the cells.</summary>
    public static Estimate DirectA(string name, Input volts, Input heater, Input loop) =>
        Propagate.Through((v, r, l) => v / (r + l), Units.Ampere, name, volts, heater, loop);

    /// <summary>A width on the next tenth of a millimetre, at least 0.2 mm: what is drawn.</summary>
    public static double DrawnM(double widthM) => Math.Max(0.2e-3, Math.Ceiling((widthM * 1e4) - 1e-9) / 1e4);
}
