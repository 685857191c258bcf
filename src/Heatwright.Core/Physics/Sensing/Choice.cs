namespace Heatwright.Physics;

/// <summary>Comparing options by several qualities at once.</summary>
/// <remarks>Pareto set and additive value: [keeney-raiffa-1976], from memory. Limits come first and are not weighed. Checked: ChoiceTests.</remarks>
public static class Choice
{
    /// <summary>True where the first is no worse in all qualities and better in one; all qualities: less is better.</summary>
    public static bool Dominates(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        bool better = false;
        for (int i = 0; i < first.Count; i++)
        {
            if (first[i] > second[i])
            {
                return false;
            }

            better |= first[i] < second[i];
        }

        return better;
    }

    /// <summary>Indices of the options that no other dominates.</summary>
    public static IReadOnlyList<int> ParetoSet(IReadOnlyList<IReadOnlyList<double>> options) =>
        [.. Enumerable.Range(0, options.Count).Where(i => !options.Any(other => Dominates(other, options[i])))];

    /// <summary>Value of one quality from 0 (worst acceptable) to 1 (good enough).</summary>
    public static double Scale(double x, double worst, double goodEnough) => Math.Clamp((x - worst) / (goodEnough - worst), 0, 1);

    /// <summary>Weighted value Σ wⱼvⱼ.</summary>
    public static double Weighted(IReadOnlyList<double> values, IReadOnlyList<double> weights) => values.Zip(weights, (value, weight) => value * weight).Sum();

    /// <summary>Weight of one quality at which two options are worth the same, the other weights kept in proportion; NaN where there is none.</summary>
    public static double FlipWeight(IReadOnlyList<double> first, IReadOnlyList<double> second, IReadOnlyList<double> weights, int quality)
    {
        double others = weights.Sum() - weights[quality];
        double rest = Enumerable.Range(0, weights.Count).Where(j => j != quality).Sum(j => weights[j] / others * (first[j] - second[j]));
        double own = first[quality] - second[quality];
        // w·own + (1 − w)·rest = 0
        double weight = rest / (rest - own);
        return weight is >= 0 and <= 1 ? weight : double.NaN;
    }
}
