using Heatwright.Plant;

namespace Heatwright.Trials;

/// <summary>What the slowest discharge of a cell tells once its ohms are known.</summary>
internal static class SlowDischarge
{
    /// <summary>Volts of the slow discharge with the ohms' drops added back, over charge; beyond full it goes on as steeply as just below.</summary>
    /// <param name="slow">The discharge.</param>
    /// <param name="bare">Ohms, times and capacity of the cell.</param>
    /// <param name="lift">What is added to the open volts besides, over charge.</param>
    public static ChargeCurve.Table OpenCurve(CellLog slow, CellModel bare, ChargeCurve lift)
    {
        double[] taken = slow.ChargeC();
        List<double> charges = [];
        List<double> volts = [];
        double shortV = 0;
        double longA = 0;
        for (int i = 0; i < slow.Count; i++)
        {
            double s = 1 - (taken[i] / bare.CapacityC);
            double factor = bare.OhmsFactor(273.15 + (double.IsFinite(slow.CellC[i]) ? slow.CellC[i] : slow.AirC));
            if (i > 0)
            {
                double h = slow.TimesS[i] - slow.TimesS[i - 1];
                double amps = (slow.Amps[i] + slow.Amps[i - 1]) / 2;
                shortV += ((bare.ShortOhm(bare.R1Ohm.At(s) * factor, amps, bare.ReferenceK) * amps) - shortV) * (1 - Math.Exp(-h / bare.Tau1S));
                longA += (amps - longA) * (1 - Math.Exp(-h / bare.Tau2S));
            }

            if (charges.Count == 0 || s < charges[^1] - 1e-6)
            {
                // Open volts fall as charge goes; where the searched ohms say otherwise near empty, the curve wins.
                double open = slow.Volts[i] + (slow.Amps[i] * bare.R0Ohm.At(s) * factor) + shortV + (bare.R2Ohm.At(s) * factor * longA) + lift.At(s);
                charges.Add(s);
                volts.Add(volts.Count == 0 ? open : Math.Min(open, volts[^1] - 1e-5));
            }
        }

        charges.Reverse();
        volts.Reverse();
        int near = charges.FindIndex(s => s > 0.97);
        double slope = Math.Max(0.1, (volts[^1] - volts[near]) / Math.Max(0.005, charges[^1] - charges[near]));
        charges.Add(charges[^1] + 0.05);
        volts.Add(volts[^1] + (0.05 * slope));
        return new([.. charges], [.. volts]);
    }
}
