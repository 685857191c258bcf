using System.Globalization;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>One pair of a calibration: what the converter said and what the probe showed.</summary>
/// <param name="TimeS">When, s; NaN: not noted.</param>
/// <param name="Count">Counts of the converter.</param>
/// <param name="ProbeC">Probe, °C.</param>
public sealed record CalibrationPoint(double TimeS, double Count, double ProbeC);

/// <summary>Readings of a calibration, cleared of the lag between probe and sensor.</summary>
/// <param name="Points">Pairs with the probe's lag taken out.</param>
/// <param name="LagS">Lag taken out, s.</param>
/// <param name="GapK">Largest gap between heating and cooling that is left, K; NaN: only one of the two was taken.</param>
/// <param name="FirstGapK">Mean gap before, K.</param>
public sealed record CalibrationReadings(IReadOnlyList<CalibrationPoint> Points, double LagS, double GapK, double FirstGapK)
{
    /// <summary>Fewest pairs of a calibration: a line has two numbers, and its scatter needs more.</summary>
    public const int Fewest = 5;

    /// <summary>A loop that stays open by more than this is no lag: probe and sensor do not sit at one temperature.</summary>
    public const double OpenLoopK = 5;

    /// <summary>Clears readings of lag: a lag that the maker knows, or, from a warm-up and a cool-down together, the lag that closes the loop.</summary>
    /// <param name="points">In the order they were taken.</param>
    /// <param name="knownLagS">Lag of the probe behind the sensor; NaN: find it, or 0 where only one direction was taken.</param>
    public static Checked<CalibrationReadings> Clear(IReadOnlyList<CalibrationPoint> points, double knownLagS = double.NaN)
    {
        if (points.Count < Fewest)
        {
            return new(new Problem("Too few calibration points.", "calibration", Count(points.Count), $"at least {Count(Fewest)}, ten or more are better", "Heat, switch off, and note count and probe while it cools, down to a cold tip."));
        }

        bool timed = points.All(point => double.IsFinite(point.TimeS));
        double[] rates = timed ? Rates(points) : new double[points.Count];
        var loop = timed ? Loop(points, rates) : [];
        double lag = double.IsFinite(knownLagS) ? knownLagS : Lag(loop);
        CalibrationPoint[] cleared = [.. points.Select((point, i) => point with { ProbeC = ProbeLag.CorrectedC(point.ProbeC, lag, rates[i]) })];
        double left = loop.Length == 0 ? double.NaN : loop.Max(one => Math.Abs(one.GapK + (lag * one.RateKPerS)));
        double first = loop.Length == 0 ? double.NaN : loop.Average(one => one.GapK);
        if (left > OpenLoopK)
        {
            return new(new Problem("Heating and cooling do not give one curve, whatever the lag.", "calibration", string.Create(CultureInfo.InvariantCulture, $"{left:0.#} K apart at one count"),
                string.Create(CultureInfo.InvariantCulture, $"{OpenLoopK:0} K"), "Probe and sensor sit at different temperatures: wet the probe into the tip, or cool more slowly."));
        }

        return Backwards(cleared) is { } problem ? new(problem) : new(new CalibrationReadings(cleared, lag, left, first));
    }

    /// <summary>Lag that closes a loop of heating and cooling best: least squares on gap + lag·(difference of the rates).</summary>
    private static double Lag((double GapK, double RateKPerS)[] loop)
    {
        double square = loop.Sum(one => one.RateKPerS * one.RateKPerS);
        return square > 0 ? Math.Max(0, -loop.Sum(one => one.GapK * one.RateKPerS) / square) : 0;
    }

    /// <summary>Gap of heating over cooling and difference of their rates, at every count of the heating that the cooling passes too.</summary>
    private static (double GapK, double RateKPerS)[] Loop(IReadOnlyList<CalibrationPoint> points, double[] rates)
    {
        // A rate under this is a hold, not a direction.
        const double least = 0.02;
        int[] up = [.. Enumerable.Range(0, points.Count).Where(i => rates[i] > least)];
        int[] down = [.. Enumerable.Range(0, points.Count).Where(i => rates[i] < -least).OrderBy(i => points[i].Count)];
        List<(double, double)> loop = [];
        foreach (int i in up)
        {
            for (int k = 0; k + 1 < down.Length; k++)
            {
                var (low, high) = (points[down[k]], points[down[k + 1]]);
                if (low.Count <= points[i].Count && points[i].Count <= high.Count && high.Count > low.Count)
                {
                    double share = (points[i].Count - low.Count) / (high.Count - low.Count);
                    double cooledC = low.ProbeC + (share * (high.ProbeC - low.ProbeC));
                    double cooling = rates[down[k]] + (share * (rates[down[k + 1]] - rates[down[k]]));
                    loop.Add((points[i].ProbeC - cooledC, rates[i] - cooling));
                    break;
                }
            }
        }

        return [.. loop];
    }

    /// <summary>Rates of the probe, K/s, by the parabola through three neighbours.</summary>
    private static double[] Rates(IReadOnlyList<CalibrationPoint> points)
    {
        int n = points.Count;
        double[] rates = new double[n];
        for (int i = 0; i < n; i++)
        {
            int middle = Math.Clamp(i, 1, n - 2);
            var (a, b, c) = (points[middle - 1], points[middle], points[middle + 1]);
            double t = points[i].TimeS;
            rates[i] = (a.ProbeC * ((2 * t) - b.TimeS - c.TimeS) / ((a.TimeS - b.TimeS) * (a.TimeS - c.TimeS)))
                + (b.ProbeC * ((2 * t) - a.TimeS - c.TimeS) / ((b.TimeS - a.TimeS) * (b.TimeS - c.TimeS)))
                + (c.ProbeC * ((2 * t) - a.TimeS - b.TimeS) / ((c.TimeS - a.TimeS) * (c.TimeS - b.TimeS)));
        }

        return rates;
    }

    /// <summary>The first pair in which more counts say clearly less heat; null: none.</summary>
    private static Problem? Backwards(IReadOnlyList<CalibrationPoint> points)
    {
        var sorted = points.OrderBy(point => point.Count).ToArray();
        for (int i = 1; i < sorted.Length; i++)
        {
            if (sorted[i].Count > sorted[i - 1].Count && sorted[i].ProbeC < sorted[i - 1].ProbeC - OpenLoopK)
            {
                return new("More counts, less heat: the readings do not rise.", "calibration",
                    string.Create(CultureInfo.InvariantCulture, $"{sorted[i - 1].Count:0} counts at {sorted[i - 1].ProbeC:0.#} °C, {sorted[i].Count:0} counts at {sorted[i].ProbeC:0.#} °C"),
                    "degrees that rise with the counts", "Look for a slip in these two, swapped sensor wires, or a saturated amplifier.");
            }
        }

        return sorted[^1].Count - sorted[0].Count >= 2 ? null : new Problem("All calibration points lie at one count.", "calibration", Count((int)sorted[0].Count), "a span from cold to working heat", "Take points over the whole range.");
    }

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
