using Heatwright.Physics;
using Heatwright.Plant;

namespace Heatwright.Timings;

/// <summary>Every arrangement of an invented shelf at three charge states: how hot its end stands with the switch always on, with the ohms that the heater has at that heat.
/// Once by the stepper's own algebra, one by one; once in lanes. Both take the same steps.</summary>
internal sealed class Screening
{
    private const double AirK = 295.15, BesideK = 0.01;

    private static readonly double[] Charges = [1, 0.5, 0.1];

    private readonly List<Case> cases = [];
    private readonly ScreenTable table;

    public Screening()
    {
        Fill();

        // So many of each path as lie in lanes; a few are left out for that.
        var straight = cases.Where(one => one.Module is null).ToArray();
        var steppedUp = cases.Where(one => one.Module is not null).ToArray();
        straight = straight[..(straight.Length / ScreenTable.Together * ScreenTable.Together)];
        steppedUp = steppedUp[..(steppedUp.Length / ScreenTable.Together * ScreenTable.Together)];
        cases = [.. straight, .. steppedUp];
        double[] Of(Func<Case, double> number) => [.. cases.Select(number)];
        table = ScreenTable.Of([.. cases.Select(one => one.Module)], AirK, [.. Charges.SelectMany(charge => Of(one => one.Series * one.Cell.OpenV.At(charge)))], [.. Charges.SelectMany(charge => Of(one => one.CellOhm(charge)))],
            Of(one => one.LoopOhm), Of(one => one.HeaterOhm), Of(one => one.HeaterOhm * one.AlphaPerK), Of(one => one.LossWPerK), Of(one => Constants.StefanBoltzmann * one.RadiatingM2));
        Rises = new double[cases.Count * Charges.Length];
        Slow = new double[Rises.Length];
    }

    /// <summary>Arrangements.</summary>
    public int Count => cases.Count;

    /// <summary>Rise of each at each charge state; NaN: no steady point, or none found.</summary>
    public double[] Rises { get; }

    /// <summary>The same by the stepper's algebra.</summary>
    public double[] Slow { get; }

    /// <summary>Worst difference of both, K; infinite: one has found what the other has not.</summary>
    public double Worst => Rises.Zip(Slow, (lanes, one) => double.IsNaN(lanes) && double.IsNaN(one) ? 0 : double.IsNaN(lanes) || double.IsNaN(one) ? double.PositiveInfinity : Math.Abs(lanes - one)).Max();

    /// <summary>All of them in lanes.</summary>
    public void InLanes() => SwiftBatch.Rises(table, Rises);

    /// <summary>All of them, one by one.</summary>
    public void OneByOne()
    {
        for (int i = 0; i < cases.Count; i++)
        {
            double rise = ScreenRules.FirstK;
            for (int at = i; at < Slow.Length; at += cases.Count)
            {
                rise = Rise(cases[i], table.OpenV[at], table.CellOhm[at], double.IsNaN(rise) ? ScreenRules.FirstK : rise);
                Slow[at] = rise;
            }
        }
    }

    private static double Rise(Case one, double openV, double cellOhm, double rise)
    {
        double low = 0, high = ScreenRules.MostK;
        for (int step = 0; step < ScreenRules.MostSteps; step++)
        {
            double beside = Over(one, openV, cellOhm, rise + BesideK, out _);
            double over = Over(one, openV, cellOhm, rise, out bool exists);
            (low, high) = over > 0 ? (rise, high) : (low, rise);
            double next = rise - (over * BesideK / (beside - over));
            next = low <= next && next <= high ? next : (low + high) / 2;
            if (Math.Abs(next - rise) < ScreenRules.CloseK)
            {
                return exists && Math.Abs(over) <= ScreenRules.MostOverW ? next : double.NaN;
            }

            rise = next;
        }

        return double.NaN;
    }

    /// <summary>Watts given less watts lost at a rise.</summary>
    private static double Over(Case one, double openV, double cellOhm, double rise, out bool exists)
    {
        var on = PowerPath.Solve(openV, cellOhm, one.LoopOhm, one.Path, LoadLaw.Ohms(one.HeaterOhm * (1 + (one.AlphaPerK * rise))));
        exists = on.Region is not (Region.LockedOut or Region.Collapsed);
        double square = (AirK + rise) * (AirK + rise);
        return on.LoadW - (one.LossWPerK * rise) - (Constants.StefanBoltzmann * one.RadiatingM2 * ((square * square) - (AirK * AirK * AirK * AirK)));
    }

    /// <summary>An invented shelf: 5 cells, up to 4 in series and 2 side by side, straight or through one of 4 modules that steps them up, 12 heaters, 3 contacts, 3 switches, 3 wires.</summary>
    private void Fill()
    {
        // Limits that are no round numbers, or some points lie on the very border between two regions, where a rounding decides.
        StepUpModule?[] modules = [null, .. new[] { (9.0, 6.07), (12.0, 9.11), (12.0, 5.03), (19.0, 10.3) }.Select(one => new PathModel.StepUp(one.Item1, 0.12, 0.15, 0.05, one.Item2, 0.92, 2.4, 0.35).Module)];
        for (int kind = 0; kind < 5; kind++)
        {
            var cell = new CellModel(3600 * (1.5 + (0.5 * kind)), new ChargeCurve.Table([0, 0.05, 0.1, 0.2, 0.4, 0.6, 0.8, 1], [2.9, 3.3, 3.44, 3.55, 3.65, 3.78, 3.97, 4.18]),
                new ChargeCurve.Table([0.05, 0.3, 1], [0.06 - (0.008 * kind), 0.045 - (0.007 * kind), 0.04 - (0.006 * kind)]), new ChargeCurve.Flat(0.02), 5, new ChargeCurve.Flat(0.015), 80);
            foreach (var module in modules)
            {
                for (int count = 0; count < 8; count++)
                {
                    int series = 1 + (count % 4), parallel = 1 + (count / 4);
                    if (module is not null && 4.3 * series >= module.SetV)
                    {
                        continue; // nothing to step up
                    }

                    for (int heater = 0; heater < 12; heater++)
                    {
                        for (int rest = 0; rest < 27; rest++)
                        {
                            double loop = 0.02 + (0.02 * (rest % 3) * series) + (0.01 * (rest / 3 % 3)) + (0.015 * (rest / 9));
                            cases.Add(new(cell, series, parallel, loop, module, module is null ? new PathModel.Direct() : new PathModel.StepUp(module), 0.7 * Math.Pow(1.3, heater), 0.0004 * (heater % 4), 0.03 + (0.01 * (heater % 3)), 4e-4));
                        }
                    }
                }
            }
        }
    }

    private sealed record Case(CellModel Cell, int Series, int Parallel, double LoopOhm, StepUpModule? Module, PathModel Path, double HeaterOhm, double AlphaPerK, double LossWPerK, double RadiatingM2)
    {
        public double CellOhm(double charge) => Cell.R0Ohm.At(charge) * Series / Parallel;
    }
}
