namespace Heatwright.Quantities;

/// <summary>The values that many draws gave, and what can be said of them.</summary>
public sealed class Spread
{
    private readonly double[] sorted;

    /// <summary>From the values of the draws, in their order.</summary>
    /// <param name="unit">Unit of the values.</param>
    /// <param name="values">At least two; a draw whose law has no answer is not a number and stays countable.</param>
    public Spread(Unit unit, IReadOnlyList<double> values)
    {
        Unit = unit;
        Values = values.Count >= 2 ? values : throw new ArgumentException("A spread needs at least 2 draws.", nameof(values));
        sorted = [.. values.Where(double.IsFinite).Order()];
    }

    /// <summary>Unit of the values.</summary>
    public Unit Unit { get; }

    /// <summary>The values in the order of their draws.</summary>
    public IReadOnlyList<double> Values { get; }

    /// <summary>How many draws gave an answer.</summary>
    public int Answered => sorted.Length;

    /// <summary>Mean of the draws that gave an answer; not a number where none did.</summary>
    public double Mean => sorted.Length == 0 ? double.NaN : sorted.Sum() / sorted.Length;

    /// <summary>Standard deviation of the draws that gave an answer.</summary>
    public double StandardDoubt
    {
        get
        {
            double mean = Mean;
            return Math.Sqrt(sorted.Sum(value => (value - mean) * (value - mean)) / (sorted.Length - 1));
        }
    }

    /// <summary>The value below which a share of the answers lies, interpolated between neighbours.</summary>
    /// <param name="share">From 0 to 1.</param>
    public double Quantile(double share)
    {
        if (!(share is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share lies between 0 and 1.");
        }

        if (sorted.Length == 0)
        {
            return double.NaN;
        }

        double place = Math.Clamp((share * sorted.Length) - 0.5, 0, sorted.Length - 1);
        int below = (int)Math.Floor(place);
        int above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + ((place - below) * (sorted[above] - sorted[below]));
    }

    /// <summary>The middle interval that holds a share of the answers, with equal shares left out on both sides.</summary>
    public (double Low, double High) Middle(double share) => (Quantile((1 - share) / 2), Quantile((1 + share) / 2));

    /// <summary>Share of all draws for which something holds; draws without an answer do not hold.</summary>
    public double ShareWhere(Func<double, bool> holds) => (double)sorted.Count(holds) / Values.Count;
}
