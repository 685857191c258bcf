using Heatwright.Numerics;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Four readings at a time of a step-up module: three loss coefficients, and the current at which it limits itself.</summary>
internal static class ModuleBench
{
    /// <summary>An output this far below the set volts is not regulated any more.</summary>
    private const double Regulated = 0.97;

    public static PartFindings Points(Trial trial, ReadingTable table, InstrumentCauses instruments)
    {
        double[] vin = table["volts in"], iin = table["amps in"], vout = table["volts out"], iout = table["amps out"];
        double set = table.Run.Setting("set", table.Run.Setting("set volts", vout.Where(double.IsFinite).DefaultIfEmpty(0).Max()));
        int[] whole = [.. Enumerable.Range(0, table.Count).Where(i => double.IsFinite(vin[i] * iin[i] * vout[i] * iout[i]))];
        List<Remark> remarks = [.. table.Remarks];
        foreach (int i in whole.Where(i => vout[i] * iout[i] > vin[i] * iin[i]))
        {
            remarks.Add(new(trial.Id, table.Run.Id, table.Numbers[i], "Output power exceeds input power: one meter or one pairing is wrong. Take the four readings again at the same moment.", Remark.LeftOut));
        }

        int[] fine = [.. whole.Where(i => vout[i] * iout[i] <= vin[i] * iin[i])];
        int[] held = [.. fine.Where(i => vout[i] >= Regulated * set)];
        int[] fallen = [.. fine.Where(i => vout[i] < Regulated * set)];
        if (held.Length < 3)
        {
            return OhmsBench.None(trial, table, "fewer than three whole readings with the output held are left", $"{held.Length}", "3 or more, light to heavy") with { Remarks = remarks };
        }

        const double rough = 0.01; // each loss is a small difference of two products of readings good to about 1 %
        double[,] covariance = new double[3, 3];
        double chi = 1;
        double[] Fit(string moved, double gain, double offset)
        {
            double Read(double value, string name) => name == moved ? (value * (1 + gain)) + offset : value;
            var fit = LeastSquares.Fit(new LeastSquaresProblem((p, r) =>
            {
                for (int k = 0; k < held.Length; k++)
                {
                    int i = held[k];
                    double inW = Read(vin[i], "volts in") * Read(iin[i], "amps in");
                    double loss = inW - (Read(vout[i], "volts out") * Read(iout[i], "amps out"));
                    double a = Read(iin[i], "amps in");
                    r[k] = (p[0] + (p[1] * a) + (p[2] * a * a) - loss) / (rough * inW);
                }
            }, held.Length, [0.1, 0.15, 0.05])
            {
                Lower = [0, 0, 0],
                PriorMean = [0.1, 0.15, 0.06],
                PriorDoubt = [0.2, 0.3, 0.15], // common practice: small modules lie inside 0.02–0.3 W, 0.05–0.5 V, 0.03–0.2 Ω
            });
            covariance = fit.Covariance;
            chi = fit.ResidualSumOfSquares / Math.Max(1, held.Length - 3);
            return fit.Parameters;
        }

        double[] middle = Fit("", 0, 0);
        double[,] own = (double[,])covariance.Clone();
        double scale = Math.Min(4, Math.Max(0.05, chi));
        for (int a = 0; a < 3; a++)
        {
            for (int b = 0; b < 3; b++)
            {
                own[a, b] *= scale;
            }
        }

        var doubts = FitDoubts.FromCovariance(trial.Id, own, new double[,] { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } });
        foreach (var (cause, push) in FitDoubts.FromInstruments(table.Run, instruments, middle, Fit))
        {
            for (int k = 0; k < 3; k++)
            {
                doubts[k] = doubts[k].With(cause, push[k]);
            }
        }

        var origin = new Origin.Fitted(trial.Id, [table.Run.Id]);
        List<Finding> findings =
        [
            new(trial.Part, PartQuantities.LossFixed, new Estimate(middle[0], Units.Watt, doubts[0], origin)),
            new(trial.Part, PartQuantities.LossPerAmp, new Estimate(middle[1], Units.Volt, doubts[1], origin)),
            new(trial.Part, PartQuantities.LossPerAmpSquared, new Estimate(middle[2], Units.Ohm, doubts[2], origin)),
        ];
        if (fallen.Length > 0)
        {
            double limit = fallen.Max(i => iin[i]);
            findings.Add(new(trial.Part, PartQuantities.LimitCurrent, Estimate.Within(limit, 0.1 * limit, Units.Ampere, $"{trial.Id} limit", CauseGroup.Trial, origin)));
            remarks.Add(new(trial.Id, table.Run.Id, table.Numbers[fallen[0]], "Here the output fell: the module was at a limit, and the reading counts for the limit and not for the losses.", Remark.Kept));
        }

        else
        {
            // Nothing fell: the limit was not met, and lies above the most that went in.
            findings.Add(new(trial.Part, PartQuantities.HeldCurrent, new Estimate(held.Max(i => iin[i]), Units.Ampere, Doubts.None, origin)));
        }

        double[] efficiency = [.. held.Select(i => 100 * vout[i] * iout[i] / (vin[i] * iin[i]))];
        double[] modelled = [.. held.Select(i => 100 * (1 - ((middle[0] + (middle[1] * iin[i]) + (middle[2] * iin[i] * iin[i])) / (vin[i] * iin[i]))))];
        return new(trial.Part, findings, remarks, [])
        {
            Pictures = [new($"Efficiency, {trial.Part}", "amps in", "A", "efficiency", "%", [.. held.Select(i => iin[i])], efficiency, modelled)],
        };
    }
}
