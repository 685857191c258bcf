using Heatwright.Numerics;
using Heatwright.Plant;

namespace Heatwright.Trials;

/// <summary>Draws heat capacity, losses and lag of a working end from warm-up and cool-down logs, through the plant's own stepper.</summary>
/// <remarks>Temperature at one place carries three thermal numbers, not five: the models tried are loss alone, loss with a lag, and loss with
/// radiation and a lag. The corrected Akaike criterion chooses (Hurvich and Tsai [hurvich-1989]); a gain under 2 keeps the simpler.</remarks>
public sealed class WarmUpFit
{
    /// <summary>A grip that gets more than this share of the end's rise is no cold sink any more: our choice.</summary>
    private const double WarmShare = 0.1;

    /// <summary>Rounds of end and grip in turn: the second moves nothing that could be read.</summary>
    private const int Rounds = 3;

    /// <summary>Longest step of the plant where the end radiates, s.</summary>
    private const double LongestStepS = 2;

    private readonly IReadOnlyList<WarmUpLog> logs;
    private readonly bool radiates;
    private readonly bool lags;
    private readonly List<string> names = ["heat capacity", "linear loss"];
    private readonly double[][] weight;
    private readonly double[][] doubtK;
    private readonly WarmUpFindings? warmGrip;

    private WarmUpFit(IReadOnlyList<WarmUpLog> logs, bool radiates, bool lags, double[][] weight, WarmUpFindings? warmGrip = null)
    {
        (this.logs, this.radiates, this.lags, this.weight, this.warmGrip) = (logs, radiates, lags, weight, warmGrip);
        doubtK = [.. logs.Select(log => log.DoubtK())];
        if (radiates)
        {
            names.Add("radiating area");
        }

        if (lags)
        {
            names.Add("lag");
        }
    }

    /// <summary>Findings from one or more logs of the same working end.</summary>
    public static WarmUpFindings Fit(IReadOnlyList<WarmUpLog> logs)
    {
        double span = logs.Max(log => log.EndC.Where(double.IsFinite).Max() - log.AirC);
        double[][] weight = [.. logs.Select(log => log.EndC.Select(read => double.IsFinite(read) ? 1.0 : 0.0).ToArray())];
        List<(string Name, bool Radiates, bool Lags)> models = [("loss", false, false), ("loss and lag", false, true)];
        if (span > 80)
        {
            models.Add(("loss, radiation and lag", true, true)); // below that radiation is straight enough to hide in the loss
        }

        WarmUpFindings? best = null;
        double bestAicc = double.PositiveInfinity;
        List<(string, double)> tried = [];
        foreach (var (name, radiates, lags) in models)
        {
            var fit = new WarmUpFit(logs, radiates, lags, weight);
            var (found, aicc) = fit.Search(name);
            for (int pass = 0; pass < 2; pass++)
            {
                if (!fit.DropOutliers(found))
                {
                    break;
                }

                (found, aicc) = fit.Search(name);
            }

            tried.Add((name, aicc));
            if (aicc < bestAicc - 2)
            {
                (best, bestAicc) = (found, aicc);
            }
        }

        var first = GripFit.Add(logs, best! with { Tried = tried });
        return first.GripLinkWPerK > 0 && Rise(logs, log => log.GripC) > WarmShare * Rise(logs, log => log.EndC) ? Again(logs, first, weight) : first;
    }

    private static double Rise(IReadOnlyList<WarmUpLog> logs, Func<WarmUpLog, double[]> of) => logs.Max(log => of(log).Where(double.IsFinite).DefaultIfEmpty(log.AirC).Max() - log.AirC);

    /// <summary>The end once more beside the grip as it warms, then the grip beside that end, in turn. The share that goes into the grip is told by the grip's readings only, as before.</summary>
    private static WarmUpFindings Again(IReadOnlyList<WarmUpLog> logs, WarmUpFindings found, double[][] weight)
    {
        for (int round = 0; round < Rounds; round++)
        {
            var end = new WarmUpFit(logs, found.Searched.Contains("radiating area"), found.Searched.Contains("lag"), weight, found).Search(found.Model).Found;
            found = GripFit.Add(logs, end with { Tried = found.Tried }) with { GripIsWarm = true };
        }

        return found;
    }

    /// <summary>Fits again with the model and the left-out rows of an earlier fit: how a moved reading moves the findings.</summary>
    public static WarmUpFindings FitAs(IReadOnlyList<WarmUpLog> logs, WarmUpFindings like)
    {
        double[][] weight = [.. logs.Select((log, l) => log.EndC.Select((read, row) => double.IsFinite(read) && like.Scores[l][row] <= 6 ? 1.0 : 0.0).ToArray())];
        return like.GripIsWarm ? Again(logs, like, weight)
            : GripFit.Add(logs, new WarmUpFit(logs, like.Searched.Contains("radiating area"), like.Searched.Contains("lag"), weight).Search(like.Model).Found);
    }

    /// <summary>Takes rows that lie more than six robust spreads off out of the next search; true when there were any.</summary>
    private bool DropOutliers(WarmUpFindings found)
    {
        bool any = false;
        for (int l = 0; l < logs.Count; l++)
        {
            for (int row = 0; row < weight[l].Length; row++)
            {
                if (weight[l][row] > 0 && found.Scores[l][row] > 6)
                {
                    weight[l][row] = 0;
                    any = true;
                }
            }
        }

        return any;
    }

    private (WarmUpFindings Found, double Aicc) Search(string model)
    {
        double[] start = Start();
        int endRows = weight.Sum(rows => rows.Count(w => w > 0));
        int count = logs.Sum(log => log.TimesS.Length);
        double[] priorDoubt = [.. start.Select(_ => 3.0)];
        var fit = LeastSquares.Fit(new LeastSquaresProblem(Residuals, count, start)
        {
            PriorMean = start,
            PriorDoubt = priorDoubt,
            Lower = [.. start.Select(value => value - 7)],
            Upper = [.. start.Select(value => value + 7)],
            MaxIterations = 60,
            Jacobian = Slopes,
        });
        double[] p = fit.Parameters;
        double scale = Math.Max(1, fit.ResidualSumOfSquares / Math.Max(1, endRows - start.Length)) * Inflation(fit.Residuals);
        double[,] covariance = new double[start.Length, start.Length];
        for (int a = 0; a < start.Length; a++)
        {
            for (int b = 0; b < start.Length; b++)
            {
                covariance[a, b] = fit.Covariance[a, b] * scale;
            }
        }

        int n = endRows;
        int k = start.Length + 1;
        double aicc = (n * Math.Log(fit.ResidualSumOfSquares / n)) + (2 * k) + (2.0 * k * (k + 1) / Math.Max(1, n - k - 1));
        return (Report(p, model, covariance) with { ModelledDoubtK = Bands(fit.Jacobian, covariance) }, aicc);
    }

    /// <summary>How well the curve is known at each row of each log, K.</summary>
    private double[][] Bands(double[,] slopes, double[,] covariance)
    {
        int at = 0;
        return [.. logs.Select((log, l) => log.TimesS.Select((_, row) => FitBand.At(slopes, at++, covariance) * (weight[l][row] > 0 ? doubtK[l][row] : double.NaN)).ToArray())];
    }

    /// <summary>Rows of a log that err alike tell less than their number: variance times (1 + r)/(1 − r), r the correlation of what is left
    /// over with what is left over one row on (the rule of a first-order process, from memory).</summary>
    private static double Inflation(double[] residuals)
    {
        double[] used = [.. residuals.Where(left => left != 0)];
        double r = used.Length < 10 ? 0 : Math.Clamp(InformationCriteria.Lag1(used), 0, 0.98);
        return (1 + r) / (1 - r);
    }

    private WarmUpFindings Report(double[] p, string model, double[,] covariance)
    {
        var found = Read(p);
        double[][] modelled = new double[logs.Count][];
        double[][] left = new double[logs.Count][];
        for (int l = 0; l < logs.Count; l++)
        {
            modelled[l] = [.. Simulate(Beside(found), logs[l])[^1].Select(kelvin => kelvin - 273.15)];
            left[l] = [.. modelled[l].Zip(logs[l].EndC, (model, read) => model - read)];
        }

        double[] used = [.. left.SelectMany((rows, l) => rows.Where((value, row) => weight[l][row] > 0 && double.IsFinite(value)))];
        double spread = 1.4826 * (used.Length == 0 ? 0 : Sample.Median([.. used.Select(Math.Abs)]));
        return found with
        {
            Model = model,
            Searched = names,
            LogCovariance = covariance,
            MisfitK = Math.Sqrt(used.Sum(value => value * value) / Math.Max(1, used.Length)),
            ModelledC = modelled,
            Scores = [.. left.Select((rows, l) => Alone(rows, [.. doubtK[l].Select(own => Math.Max(spread, own))]))],
        };
    }

    /// <summary>How many spreads each row lies off what the rows around it are off: a reading is suspect when it stands alone, not
    /// where the model as a whole is off.</summary>
    private static double[] Alone(double[] left, double[] spread)
    {
        double[] scores = new double[left.Length];
        for (int i = 0; i < left.Length; i++)
        {
            double[] around = [.. Enumerable.Range(Math.Max(0, i - 3), Math.Min(left.Length, i + 4) - Math.Max(0, i - 3)).Where(k => k != i && double.IsFinite(left[k])).Select(k => left[k])];
            scores[i] = double.IsFinite(left[i]) && around.Length >= 3 ? Math.Abs(left[i] - Sample.Median(around)) / spread[i] : 0;
        }

        return scores;
    }

    private void Residuals(ReadOnlySpan<double> p, Span<double> residuals)
    {
        var found = Beside(Read(p));
        int at = 0;
        for (int l = 0; l < logs.Count; l++)
        {
            double[] sensorK = Simulate(found, logs[l])[^1];
            for (int row = 0; row < logs[l].TimesS.Length; row++)
            {
                residuals[at++] = weight[l][row] > 0 ? (sensorK[row] - 273.15 - logs[l].EndC[row]) / doubtK[l][row] : 0;
            }
        }
    }

    /// <summary>Slopes of the residuals, carried through the plant's own steps.</summary>
    private void Slopes(ReadOnlySpan<double> p, Span<double> slopes)
    {
        var found = Beside(Read(p));
        bool grip = found.GripLinkWPerK > 0;
        List<ThermalTerm> terms = [];
        List<int> parameter = [];
        for (int j = 0; j < names.Count; j++)
        {
            foreach (var term in Terms(names[j], grip))
            {
                terms.Add(term);
                parameter.Add(j);
            }
        }

        slopes.Clear();
        int at = 0;
        for (int l = 0; l < logs.Count; l++)
        {
            var moved = SlopesOf(found, logs[l], terms);
            for (int row = 0; row < logs[l].TimesS.Length; row++, at += names.Count)
            {
                var sensor = moved.At(grip ? 2 : 1, row);
                for (int t = 0; weight[l][row] > 0 && t < terms.Count; t++)
                {
                    slopes[at + parameter[t]] += sensor[t] / doubtK[l][row];
                }
            }
        }
    }

    /// <summary>What of the network a searched quantity scales: all of the linear loss is searched as one, a share of it goes into a warm grip.</summary>
    private static ThermalTerm[] Terms(string name, bool grip) => name switch
    {
        "heat capacity" => [new(ThermalQuantity.HeatCapacity)],
        "linear loss" when grip => [new(ThermalQuantity.LinearLoss), new(ThermalQuantity.Link)],
        "linear loss" => [new(ThermalQuantity.LinearLoss)],
        "radiating area" => [new(ThermalQuantity.RadiatingArea)],
        _ => [new(ThermalQuantity.SensorLag)],
    };

    /// <summary>The end with the warm grip beside it; without one, the end alone.</summary>
    private WarmUpFindings Beside(WarmUpFindings end) => warmGrip is null ? end : GripFit.With(end, warmGrip.GripLinkWPerK / (warmGrip.GripLinkWPerK + warmGrip.LinearWPerK), warmGrip.GripHeatCapacityJPerK, warmGrip.GripLossWPerK);

    private WarmUpFindings Read(ReadOnlySpan<double> p)
    {
        double Take(ReadOnlySpan<double> from, string name) => names.IndexOf(name) is >= 0 and var at ? Math.Exp(from[at]) : 0;
        return new(Take(p, "heat capacity"), Take(p, "linear loss"), Take(p, "radiating area"), Take(p, "lag"),
            0, 0, 0);
    }

    /// <summary>The plant's own run of a log with these findings, K at its times: the end, the grip where one is linked, and last the sensor.</summary>
    internal static double[][] Simulate(WarmUpFindings found, WarmUpLog log) => WarmingRun.Run(Network(found, log), log.Drive(), log.TimesS, LongestStepS);

    /// <summary>How the plant's own run of a log moves with the logarithm of each quantity, K; rows as <see cref="Simulate"/>.</summary>
    internal static WarmingSlopes SlopesOf(WarmUpFindings found, WarmUpLog log, IReadOnlyList<ThermalTerm> terms)
    {
        var network = Network(found, log);
        var slopes = new WarmingSlopes(network, terms, log.TimesS.Length);
        WarmingRun.Run(network, log.Drive(), log.TimesS, LongestStepS, slopes);
        return slopes;
    }

    private static ThermalNetwork Network(WarmUpFindings found, WarmUpLog log)
    {
        bool grip = found.GripLinkWPerK > 0;
        ThermalNode end = new("working end", found.HeatCapacityJPerK, found.LinearWPerK, 0, found.RadiatingM2);
        double startC = double.IsFinite(log.EndC[0]) ? log.EndC[0] : log.AirC;
        double gripStartC = grip && double.IsFinite(log.GripC[0]) ? log.GripC[0] : log.AirC;
        return new ThermalNetwork(
            grip ? [end, new ThermalNode("grip", found.GripHeatCapacityJPerK, found.GripLossWPerK)] : [end],
            grip ? [new ThermalLink(0, 1, found.GripLinkWPerK)] : [],
            273.15 + log.AirC)
        {
            SensorLagS = found.LagS,
            StartK = grip ? [273.15 + startC, 273.15 + gripStartC] : [273.15 + startC],
        };
    }

    /// <summary>First guesses from the log itself: capacity from the first rise, loss from the last power and rise.</summary>
    private double[] Start()
    {
        var log = logs.MaxBy(l => l.Watts.Sum())!;
        int on = Array.FindIndex(log.Watts, w => w > 0.5 * log.Watts.Max());
        int later = Math.Min(log.TimesS.Length - 1, on + Math.Max(2, (log.TimesS.Length - on) / 10));
        double energy = 0;
        for (int i = on; i < later; i++)
        {
            energy += log.Watts[i] * (log.TimesS[i + 1] - log.TimesS[i]);
        }

        double first = log.EndC.Where(double.IsFinite).First();
        double rise = Math.Max(1, LastFinite(log.EndC, later) - first);
        double hottest = log.EndC.Where(double.IsFinite).Max() - log.AirC;
        double capacity = Math.Max(1e-3, energy / rise);
        double loss = Math.Max(1e-4, log.Watts.Max() / Math.Max(1, hottest) / (radiates ? 2 : 1));
        List<double> start = [Math.Log(capacity), Math.Log(loss)];
        if (radiates)
        {
            start.Add(Math.Log(1e-4));
        }

        if (lags)
        {
            start.Add(Math.Log(2));
        }

        return [.. start];
    }

    private static double LastFinite(double[] values, int upTo)
    {
        for (int i = upTo; i >= 0; i--)
        {
            if (double.IsFinite(values[i]))
            {
                return values[i];
            }
        }

        return 0;
    }
}
