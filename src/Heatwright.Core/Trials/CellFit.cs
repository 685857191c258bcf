using Heatwright.Numerics;
using Heatwright.Plant;

namespace Heatwright.Trials;

/// <summary>A cell as its logs show it.</summary>
/// <param name="Cell">The fitted model.</param>
/// <param name="HeatCapacityJPerK">Assumed from its mass; the logs do not carry it alone.</param>
/// <param name="CoolingWPerK">Fitted where the logs hold cell degrees, else assumed.</param>
/// <param name="LogOhmsDoubt">Standard doubt of the logarithm of all ohms together, from the fit.</param>
/// <param name="MisfitV">RMS of what the fit leaves over, V.</param>
/// <param name="Parameters">What the search found, for the record.</param>
public sealed record CellFindings(
    CellModel Cell, double HeatCapacityJPerK, double CoolingWPerK, double LogOhmsDoubt, double MisfitV, IReadOnlyList<double> Parameters)
{
    /// <summary>Standard doubt of the logarithm of the ohms that a full cell shows in its first seconds, its instant ones and the short pair's: a short pulse tells them and leaves the long pair open.</summary>
    public double LogFirstOhmsDoubt { get; init; }

    /// <summary>Modelled volts at each row of each log, in the order of the logs given to the fit.</summary>
    public IReadOnlyList<double[]> ModelledV { get; init; } = [];

    /// <summary>Standard doubt of each of these, V, from the doubt of the numbers fitted; not a number at rows that the fit did not look at.</summary>
    public IReadOnlyList<double[]> ModelledDoubtV { get; init; } = [];
}

/// <summary>Draws open-circuit volts, capacity, instant ohms and two RC pairs over charge from a cell's logs, through the plant's own stepper.</summary>
/// <remarks>The slowest discharge gives capacity and, with the ohms' own drops added back, the open-circuit curve
/// (power handbook of the trade: OCV ≈ V + I·R on a slow discharge; common practice). All other logs give the ohms. Ohms are searched
/// as logarithms at fixed charges with a prior that neighbours are alike, so that a handful of pulses and a full campaign take the same road. The long pair holds amps (see CellModel): one that holds volts
/// can be made to fit a single discharge down to empty by ohms that grow too fast for it to fill, and then ends too late at every larger current.</remarks>
public sealed class CellFit
{
    /// <summary>Charges at which ohms are searched; closer towards empty, where they rise manifold over a twentieth of the charge.</summary>
    public static readonly double[] Knots = [0.01, 0.04, 0.06, 0.08, 0.10, 0.13, 0.20, 0.35, 0.50, 0.65, 0.80, 1.00];

    /// <summary>Activation energy of a whole cell, J/mol: 20 kJ/mol (15 to 30) above 10 °C, from memory.</summary>
    public const double ActivationJPerMol = 20_000;

    /// <summary>Specific heat of a cell, J/(kg·K), 900 to 1100, from memory.</summary>
    public const double SpecificHeatJPerKgK = 1000;

    /// <summary>A pair slower than this cannot be told from a slope of the open-circuit curve in a discharge of an hour.</summary>
    private const double LongestTauS = 1500;

    /// <summary>Place of half charge among <see cref="Knots"/>.</summary>
    private const int HalfCharge = 8;

    /// <summary>Standard difference of the logarithm of the short pair's ohms, at half charge, from a quarter of those of the first step.</summary>
    /// <remarks>The 18650-size cell in tests/reference has as much, the published model there 2.5 times as much (decision 0070).</remarks>
    private const double ShortPairDoubt = 0.7;

    /// <summary>The same for the long pair, from 0.4 of those of the first step.</summary>
    /// <remarks>That cell has half of it, that model 1.7 times as much.</remarks>
    private const double LongPairDoubt = 0.5;

    /// <summary>Standard difference of the logarithms of the instant ohms at neighbouring charges from a fifth up: cells there change by less than a tenth from one to the next.</summary>
    private const double InstantAlike = 0.1;

    private const double VoltsDoubt = 0.004;

    /// <summary>Standard difference of the logarithms of ohms between pieces of one purchase.</summary>
    private const double PieceToPiece = 0.15;

    private const double KelvinDoubt = 0.7;

    /// <summary>Rows of one log that count as one, but a step of current never less than one: what errs alike in a log is a meter's and a moment's, and a step is a moment of its own.</summary>
    private const double RowsThatCountAsOne = 40;

    /// <summary>Standard share by which the volts that a cell's ohms cost are missed at loads that the fit did not see, however well it fits: what two pairs and one law of warmth leave over.</summary>
    /// <remarks>From the second of the two pieces of an 18650-size cell whose logs stand in tests/reference: over its four logs at 1C, 2C and random loads the missed volts were 7 to 12 % of the lost ones,
    /// 9.8 % as root mean square, of which the doubt of the fit itself is 5.8 %. It was judged on the first piece (decision 0070).</remarks>
    public const double FormDoubt = 0.08;

    private readonly CellLog slow;
    private readonly IReadOnlyList<CellLog> others;
    private readonly double heatCapacityJPerK;
    private readonly double capacityC;
    private readonly int[][] rows;
    private readonly bool degrees;

    private CellFit(CellLog slow, IReadOnlyList<CellLog> others, double heatCapacityJPerK)
    {
        this.slow = slow;
        this.others = others;
        this.heatCapacityJPerK = heatCapacityJPerK;
        capacityC = slow.ChargeC()[^1];
        rows = [.. others.Select(log => Enumerable.Range(0, log.Count).Where(log.Steady).ToArray())];
        degrees = others.Any(log => log.CellC.Any(double.IsFinite));
    }

    /// <summary>Findings from a slow or steady discharge down to the cut-off, and any further logs.</summary>
    /// <param name="discharge">The slowest full discharge.</param>
    /// <param name="others">Pulses and faster discharges; at least one.</param>
    /// <param name="massKg">Mass of the cell, kg.</param>
    /// <param name="alike">Findings on another piece of the same purchase, whose ohms and times these are likely near; null: none.</param>
    public static CellFindings Fit(CellLog discharge, IReadOnlyList<CellLog> others, double massKg, CellFindings? alike = null) =>
        new CellFit(discharge, others, massKg * SpecificHeatJPerKgK).Search(alike);

    private CellFindings Search(CellFindings? alike)
    {
        int knots = Knots.Length;
        double ohm = FirstStepOhm();
        int count = rows.Sum(row => row.Length) * (degrees ? 2 : 1);
        int smooth = 4 * (knots - 1);
        double[] start = new double[(4 * knots) + 3];
        double[] priorMean = new double[start.Length];
        double[] priorDoubt = new double[start.Length];
        Array.Fill(priorDoubt, double.PositiveInfinity);
        for (int k = 0; k < knots; k++)
        {
            double rise = 1 + (0.03 / (Knots[k] + 0.02));
            start[k] = Math.Log(0.8 * ohm);
            start[knots + k] = Math.Log(0.25 * ohm * rise);
            start[(2 * knots) + k] = Math.Log(0.4 * ohm * rise);
        }

        for (int i = 0; i < 3 * knots; i++)
        {
            priorMean[i] = start[i];
            priorDoubt[i] = 2; // a factor of seven either way: only keeps unread charges from running off
        }

        // A short pulse sees a part of the short pair and nothing of the long one: what cells have of them is told once, at half charge, and neighbours are alike.
        priorDoubt[knots + HalfCharge] = ShortPairDoubt;
        priorDoubt[(2 * knots) + HalfCharge] = LongPairDoubt;

        // The slow discharge itself sags a little more than the ohms of a pulse say; rests in the pulse log show by how much.
        for (int k = 0; k < knots; k++)
        {
            priorDoubt[(3 * knots) + 3 + k] = 0.015;
        }

        int tau = 3 * knots;
        start[tau] = Math.Log(30);
        start[tau + 1] = Math.Log(400);
        start[tau + 2] = Math.Log(heatCapacityJPerK / 1000);
        (priorMean[tau], priorDoubt[tau]) = (start[tau], 0.7);
        (priorMean[tau + 1], priorDoubt[tau + 1]) = (start[tau + 1], 0.7);
        (priorMean[tau + 2], priorDoubt[tau + 2]) = (start[tau + 2], 0.5);
        if (alike is not null)
        {
            // Pieces of one purchase: ohms within a sixth, times within a fifth, the sag of the slow discharge within a few millivolts (our choice; common practice, no source).
            for (int i = 0; i < start.Length; i++)
            {
                start[i] = priorMean[i] = alike.Parameters[i];
                priorDoubt[i] = i < tau ? PieceToPiece : i < tau + 2 ? 0.2 : i == tau + 2 ? 0.5 : 0.004;
            }
        }

        var problem = new LeastSquaresProblem((p, r) => Residuals(p, r), count + smooth, start)
        {
            PriorMean = priorMean,
            PriorDoubt = priorDoubt,
            Lower = [.. start.Select((value, i) => i == tau ? Math.Log(5) : i == tau + 1 ? Math.Log(150) : i > tau + 2 ? -0.1 : value - 5)],
            Upper = [.. start.Select((value, i) => i == tau ? Math.Log(120) : i == tau + 1 ? Math.Log(LongestTauS) : i > tau + 2 ? 0.1 : value + 5)],
            MaxIterations = 40,
            EnoughFall = 1e-4,
        };
        var fit = LeastSquares.Fit(problem);
        return Report(fit, Covariance(fit, count, priorDoubt));
    }

    /// <summary>Covariance of the parameters with rows of one log that are not independent of each other: 40 at one current count as one reading, fewer at one current as one too
    /// (cautious; no source, decision 0070). What is known beforehand, and that neighbours are alike, counts whole.</summary>
    private double[,] Covariance(LeastSquaresFit fit, int readings, double[] priorDoubt)
    {
        int size = fit.Parameters.Length;
        var information = new double[size, size];
        double[] weights = Weights();
        for (int i = 0; i < fit.Jacobian.GetLength(0); i++)
        {
            double weight = i < readings ? weights[i] : 1;
            for (int a = 0; a < size; a++)
            {
                for (int b = 0; b < size; b++)
                {
                    information[a, b] += weight * fit.Jacobian[i, a] * fit.Jacobian[i, b];
                }
            }
        }

        for (int a = 0; a < size; a++)
        {
            information[a, a] += 1 / (priorDoubt[a] * priorDoubt[a]);
        }

        return new Cholesky(information).Inverse();
    }

    /// <summary>What each residual of a reading counts, in their order: one over the rows that stand at one current without a break, and at least a fortieth.</summary>
    private double[] Weights() => [.. others.SelectMany((log, l) => Stretches(log, rows[l])).SelectMany(stretch => Enumerable.Repeat(1 / Math.Min(stretch, RowsThatCountAsOne), stretch * (degrees ? 2 : 1)))];

    /// <summary>Lengths of the stretches of rows, in their order, in which the current stays the same.</summary>
    private static IEnumerable<int> Stretches(CellLog log, int[] rows)
    {
        double most = log.Amps.Max(Math.Abs);
        for (int from = 0, i = 1; i <= rows.Length; i++)
        {
            if (i == rows.Length || Enumerable.Range(rows[i - 1] + 1, rows[i] - rows[i - 1]).Any(row => Math.Abs(log.Amps[row] - log.Amps[row - 1]) > 0.02 * most))
            {
                yield return i - from;
                from = i;
            }
        }
    }

    private CellFindings Report(LeastSquaresFit fit, double[,] covariance)
    {
        double[] p = fit.Parameters;
        var cell = Build(p);
        var modelled = others.Select(log => Simulate(cell, p, log).Trace.TerminalV).ToArray();
        double sum = 0;
        int used = 0;
        for (int l = 0; l < others.Count; l++)
        {
            foreach (int row in rows[l].Where(row => double.IsFinite(modelled[l][row])))
            {
                double left = modelled[l][row] - others[l].Volts[row];
                sum += left * left;
                used++;
            }
        }

        return new(cell, heatCapacityJPerK, Math.Exp(p[(3 * Knots.Length) + 2]), LogDoubt(covariance, HalfCharge, [cell.R0Ohm.At(0.5), cell.R1Ohm.At(0.5), cell.R2Ohm.At(0.5)]), Math.Sqrt(sum / Math.Max(1, used)), p)
        {
            LogFirstOhmsDoubt = LogDoubt(covariance, Knots.Length - 1, [cell.R0Ohm.At(1), cell.R1Ohm.At(1)]),
            ModelledV = modelled,
            ModelledDoubtV = Bands(fit.Jacobian, covariance),
        };
    }

    /// <summary>How well the volts are known at each row of each log; rows of one log count as in <see cref="Covariance"/>.</summary>
    private double[][] Bands(double[,] slopes, double[,] covariance)
    {
        double[][] bands = [.. others.Select(log => log.TimesS.Select(_ => double.NaN).ToArray())];
        int at = 0;
        for (int l = 0; l < others.Count; l++)
        {
            foreach (int row in rows[l])
            {
                bands[l][row] = VoltsDoubt * FitBand.At(slopes, at, covariance);
                at += degrees ? 2 : 1;
            }
        }

        return bands;
    }

    /// <summary>Doubt of the logarithm of some of the ohms together at one of the charges, the instant ones first.</summary>
    private static double LogDoubt(double[,] covariance, int knot, double[] ohms)
    {
        double total = ohms.Sum();
        double variance = 0;
        for (int a = 0; a < ohms.Length; a++)
        {
            for (int b = 0; b < ohms.Length; b++)
            {
                variance += ohms[a] * ohms[b] * covariance[(a * Knots.Length) + knot, (b * Knots.Length) + knot] / (total * total);
            }
        }

        return Math.Max(0.01, Math.Sqrt(Math.Max(0, variance)));
    }

    private void Residuals(ReadOnlySpan<double> p, Span<double> residuals)
    {
        var cell = Build(p);
        double[] parameters = p.ToArray();
        int at = 0;
        for (int l = 0; l < others.Count; l++)
        {
            var trace = Simulate(cell, parameters, others[l]).Trace;
            foreach (int row in rows[l])
            {
                double volts = trace.TerminalV[row];
                residuals[at++] = double.IsFinite(volts) ? (volts - others[l].Volts[row]) / VoltsDoubt : 0;
                if (degrees)
                {
                    double read = others[l].CellC[row];
                    residuals[at++] = double.IsFinite(read) && double.IsFinite(volts)
                        ? (trace.NodesK[0][row] - 273.15 - read) / (KelvinDoubt * 3)
                        : 0;
                }
            }
        }

        for (int set = 0; set < 3; set++)
        {
            for (int k = 0; k + 1 < Knots.Length; k++)
            {
                double alike = Knots[k] < 0.15 ? 0.8 : set == 0 ? InstantAlike : 0.25;
                residuals[at++] = (p[(set * Knots.Length) + k + 1] - p[(set * Knots.Length) + k]) / alike;
            }
        }

        int lift = (3 * Knots.Length) + 3;
        for (int k = 0; k + 1 < Knots.Length; k++)
        {
            residuals[at++] = (p[lift + k + 1] - p[lift + k]) / 0.008;
        }
    }

    /// <summary>The cell for one set of searched logarithms; the open-circuit curve follows from the slow discharge and these ohms.</summary>
    private CellModel Build(ReadOnlySpan<double> p)
    {
        int knots = Knots.Length;
        var r0 = Curve(p[..knots]);
        var r1 = Curve(p.Slice(knots, knots));
        var r2 = Curve(p.Slice(2 * knots, knots));
        double tau1 = Math.Exp(p[3 * knots]);
        double tau2 = Math.Exp(p[(3 * knots) + 1]);
        var bare = new CellModel(capacityC, new ChargeCurve.Flat(0), r0, r1, tau1, r2, tau2) { ActivationJPerMol = ActivationJPerMol, ChargeTransfer = true, LongHoldsAmps = true };
        return bare with { OpenV = SlowDischarge.OpenCurve(slow, bare, new ChargeCurve.Table(Knots, p.Slice((3 * knots) + 3, knots).ToArray())) };
    }

    private static ChargeCurve.Table Curve(ReadOnlySpan<double> logs)
    {
        double[] values = new double[logs.Length];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = Math.Exp(logs[i]);
        }

        return new(Knots, values);
    }

    private PlantRun Simulate(CellModel cell, double[] p, CellLog log) =>
        PlantRunner.Run(CellBench.Tool(cell, heatCapacityJPerK, Math.Exp(p[(3 * Knots.Length) + 2]), log.Drive(),
            CellBench.StartCharge(cell, log), RestC(log), RestC(log)),
            new RunSettings { Instants = log.TimesS, StepS = 60 });

    /// <summary>A cell that rested before its run has the temperature of its air; its own first reading carries the probe's offset away.</summary>
    private static double RestC(CellLog log) => double.IsFinite(log.CellC[0]) ? log.CellC[0] : log.AirC;

    /// <summary>Ohms of the first large step of current in any log.</summary>
    private double FirstStepOhm()
    {
        foreach (var log in others)
        {
            double most = log.Amps.Max(Math.Abs);
            for (int i = 1; i < log.Count; i++)
            {
                double step = log.Amps[i] - log.Amps[i - 1];
                if (Math.Abs(step) > 0.5 * most)
                {
                    return Math.Clamp((log.Volts[i - 1] - log.Volts[i]) / step, 0.002, 2);
                }
            }
        }

        return 0.05;
    }
}
