using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>Readings of a sensor of unknown type against a probe.</summary>
/// <param name="VoltsV">Voltages at the terminals, V.</param>
/// <param name="ProbeC">What the probe said, °C.</param>
/// <param name="ColdC">Temperature of the cold junction, °C.</param>
/// <param name="ProbeDoubtK">Standard doubt of the probe, each reading for itself, K.</param>
/// <param name="ShareDoubt">Standard doubt of the voltmeter as a share of the reading.</param>
/// <param name="FixedDoubtV">Standard doubt of the voltmeter that always stands, V.</param>
/// <param name="ColdDoubtK">Standard doubt of the cold junction, one for all readings, K.</param>
public sealed record CoupleReadings(
    IReadOnlyList<double> VoltsV, IReadOnlyList<double> ProbeC, double ColdC, double ProbeDoubtK, double ShareDoubt, double FixedDoubtV, double ColdDoubtK);

/// <summary>How well a standard type explains the readings.</summary>
/// <param name="Type">Letter of the type.</param>
/// <param name="ChiSquare">Misfit rᵀC⁻¹r.</param>
/// <param name="Probability">How often chance alone misfits at least so badly.</param>
/// <param name="ReversedProbability">The same with the leads swapped.</param>
/// <param name="Gain">Readings over type, weighted: 1 for the true type.</param>
public sealed record CoupleMatch(string Type, double ChiSquare, double Probability, double ReversedProbability, double Gain);

/// <summary>What the readings allow to be said about the type.</summary>
public enum CoupleAnswer
{
    /// <summary>One type explains the readings and no other does.</summary>
    OneType,

    /// <summary>Two types or more explain them; a hotter reading would separate.</summary>
    CannotTell,

    /// <summary>One type explains them with its leads swapped.</summary>
    Reversed,

    /// <summary>No standard type explains them: keep an own table, never a standard one with a made-up gain.</summary>
    NoStandardType,
}

/// <summary>Which standard type an unknown thermocouple is, if any.</summary>
/// <remarks>Generalised least squares with shared causes kept shared: the tolerance class is common to all readings, and so is the
/// cold junction. Thresholds: common practice. Checked: UnknownCoupleTests.</remarks>
public static class UnknownCouple
{
    /// <summary>A type whose misfit chance alone brings less often than this is ruled out.</summary>
    public const double RuledOut = 1e-3;

    /// <summary>Compares the readings with one type.</summary>
    /// <param name="curve">The type.</param>
    /// <param name="toleranceDoubtK">Standard doubt of new wire of that type at a temperature in °C, K.</param>
    /// <param name="readings">The readings.</param>
    public static CoupleMatch Compare(ThermocoupleCurve curve, Func<double, double> toleranceDoubtK, CoupleReadings readings)
    {
        int n = readings.VoltsV.Count;
        double[] expected = [.. readings.ProbeC.Select(tC => ColdJunction.VoltageV(curve, tC, readings.ColdC))];
        double[] slopes = [.. readings.ProbeC.Select(curve.SlopeVPerK)];
        double[] wire = [.. readings.ProbeC.Select((tC, i) => slopes[i] * toleranceDoubtK(tC))];
        double coldV = curve.SlopeVPerK(readings.ColdC) * readings.ColdDoubtK;
        double[,] covariance = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                covariance[i, j] = (wire[i] * wire[j]) + (coldV * coldV) + (i == j ? OwnVariance(i) : 0);
            }
        }

        Cholesky weights = new(covariance);
        double[] measured = [.. readings.VoltsV];
        double chiSquare = Misfit(1);
        return new(curve.Type, chiSquare, ChiSquare.ShareAbove(chiSquare, n), ChiSquare.ShareAbove(Misfit(-1), n),
            weights.Form(expected, measured) / weights.Form(expected, expected));

        double OwnVariance(int i) => Square(slopes[i] * readings.ProbeDoubtK) + Square(readings.ShareDoubt * readings.VoltsV[i]) + Square(readings.FixedDoubtV);

        double Misfit(int sign)
        {
            double[] rest = [.. measured.Select((volts, i) => (sign * volts) - expected[i])];
            return weights.Form(rest, rest);
        }
    }

    /// <summary>What the matches allow to be said; they are compared whole, not only the best.</summary>
    public static CoupleAnswer Answer(IReadOnlyCollection<CoupleMatch> matches)
    {
        double[] sorted = [.. matches.Select(match => match.Probability).OrderDescending(), 0, 0];
        return (sorted[0], sorted[1]) switch
        {
            ( > 0.01, > 0.01) => CoupleAnswer.CannotTell,
            ( > 0.05, < RuledOut) => CoupleAnswer.OneType,
            ( > 0.01, _) => CoupleAnswer.CannotTell,
            _ => matches.Any(match => match.ReversedProbability > 0.05) ? CoupleAnswer.Reversed : CoupleAnswer.NoStandardType,
        };
    }

    /// <summary>Mean sensitivity and its standard error by a straight line through the readings, V/K.</summary>
    public static (double SlopeVPerK, double ErrorVPerK) StraightLine(IReadOnlyList<double> voltsV, IReadOnlyList<double> probeC)
    {
        int n = voltsV.Count;
        double meanC = probeC.Average(), meanV = voltsV.Average();
        double spread = probeC.Sum(tC => Square(tC - meanC));
        double slope = probeC.Zip(voltsV, (tC, volts) => (tC - meanC) * (volts - meanV)).Sum() / spread;
        double misfit = probeC.Zip(voltsV, (tC, volts) => Square(volts - meanV - (slope * (tC - meanC)))).Sum();
        return (slope, Math.Sqrt(misfit / (n - 2) / spread));
    }

    /// <summary>False where the sensitivity between neighbouring readings wanders by more than 40 % of its mean: no thermocouple.</summary>
    public static bool HasSteadySlope(IReadOnlyList<double> voltsV, IReadOnlyList<double> probeC)
    {
        double[] slopes = [.. Enumerable.Range(1, voltsV.Count - 1).Select(i => (voltsV[i] - voltsV[i - 1]) / (probeC[i] - probeC[i - 1]))];
        double mean = slopes.Average();
        return slopes.All(slope => Math.Abs(slope - mean) <= 0.4 * Math.Abs(mean));
    }

    private static double Square(double x) => x * x;
}
