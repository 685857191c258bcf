namespace Heatwright.Physics;

/// <summary>One bar of a tornado: the answer with one input at its low and its high end, the others at their best values.</summary>
public sealed record Swing(int Input, double AtLow, double AtHigh)
{
    /// <summary>Length of the bar.</summary>
    public double Width => Math.Abs(AtHigh - AtLow);
}

/// <summary>Which input a result hangs on.</summary>
/// <remarks>Local shares (cᵢuᵢ)²/u²: [jcgm-100] 5.1, from memory. First-order index by Saltelli's 2010 estimator [saltelli-2010], total
/// index by Jansen's [jansen-1999], from memory. Inputs that are correlated must be grouped first. Checked: SensitivityTests.</remarks>
public static class Sensitivity
{
    /// <summary>Bars of a tornado at ± one standard doubt, longest first.</summary>
    public static IReadOnlyList<Swing> Tornado(Func<double[], double> answer, IReadOnlyList<double> best, IReadOnlyList<double> doubts) =>
    [
        .. Enumerable.Range(0, best.Count)
            .Select(i => new Swing(i, answer(Moved(best, i, -doubts[i])), answer(Moved(best, i, doubts[i]))))
            .OrderByDescending(swing => swing.Width),
    ];

    /// <summary>Shares of the variance by slopes: (cᵢuᵢ)² over their sum.</summary>
    public static double[] Shares(IReadOnlyList<double> slopes, IReadOnlyList<double> doubts)
    {
        double[] squares = [.. slopes.Zip(doubts, (slope, doubt) => slope * doubt * slope * doubt)];
        double sum = squares.Sum();
        return [.. squares.Select(square => square / sum)];
    }

    /// <summary>Share of the variance that one input makes alone: mean[f_B(f_AB − f_A)]/V.</summary>
    /// <param name="a">Answers for the first sample.</param>
    /// <param name="b">Answers for the second sample.</param>
    /// <param name="mixed">Answers for the first sample with this input taken from the second.</param>
    public static double FirstOrder(IReadOnlyList<double> a, IReadOnlyList<double> b, IReadOnlyList<double> mixed)
    {
        double sum = 0;
        for (int i = 0; i < a.Count; i++)
        {
            sum += b[i] * (mixed[i] - a[i]);
        }

        return sum / a.Count / Variance(a, b);
    }

    /// <summary>Share of the variance that would go if this input alone stayed open: mean[(f_A − f_AB)²]/(2V).</summary>
    public static double Total(IReadOnlyList<double> a, IReadOnlyList<double> b, IReadOnlyList<double> mixed)
    {
        double sum = 0;
        for (int i = 0; i < a.Count; i++)
        {
            sum += (a[i] - mixed[i]) * (a[i] - mixed[i]);
        }

        return sum / (2.0 * a.Count) / Variance(a, b);
    }

    private static double Variance(IReadOnlyList<double> a, IReadOnlyList<double> b)
    {
        double mean = (a.Sum() + b.Sum()) / (a.Count + b.Count);
        return (a.Sum(x => (x - mean) * (x - mean)) + b.Sum(x => (x - mean) * (x - mean))) / (a.Count + b.Count);
    }

    private static double[] Moved(IReadOnlyList<double> best, int input, double by)
    {
        double[] moved = [.. best];
        moved[input] += by;
        return moved;
    }
}
