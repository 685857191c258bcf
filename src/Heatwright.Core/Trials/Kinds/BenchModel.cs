using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>A value that a model tells, in SI.</summary>
internal sealed record Told(string Name, Unit Unit, Func<TrialSheet, double[], double> Si);

/// <summary>A law with open numbers that may explain the readings of a column.</summary>
/// <param name="Name">Its name in trade words.</param>
/// <param name="Y">Column that it explains.</param>
/// <param name="X">Columns that it takes; their own doubts widen those of Y.</param>
/// <param name="Start">First guess of the open numbers.</param>
/// <param name="Predict">Modelled Y at each reading.</param>
/// <param name="Tells">Values that the open numbers tell.</param>
internal sealed record BenchModel(
    string Name, string Y, string[] X, Func<TrialSheet, double[]> Start, Func<TrialSheet, double[], double[]> Predict, IReadOnlyList<Told> Tells)
{
    /// <summary>Smallest allowed open numbers.</summary>
    public double[]? Lower { get; init; }

    /// <summary>Largest allowed open numbers.</summary>
    public double[]? Upper { get; init; }

    /// <summary>Further places to start from, seen from the first guess; null: the law is straight in its open numbers, one start finds the one valley.</summary>
    public Func<double[], IEnumerable<double[]>>? Further { get; init; }

    /// <summary>What was known of the open numbers before: mean and standard doubt, infinite where nothing was.</summary>
    public (double[] Mean, double[] Doubt)? Prior { get; init; }

    /// <summary>The reading that would decide between this model and the one before it.</summary>
    public string Decides { get; init; } = "";

    /// <summary>True where this model does not hold the one before it: only the criterion compares them.</summary>
    public bool Apart { get; init; }

    /// <summary>The numbers that have to be known for it to be chosen over a simpler one; null: all. Of a loss that changes its slope these are the change and the slope, whatever it loses at rest.</summary>
    public int[]? Needs { get; init; }

    /// <summary>Doubts of Y at a solution where they depend on it; otherwise the readings' own.</summary>
    public Func<TrialSheet, double[], double[]>? Doubt { get; init; }

    /// <summary>Slopes of Y on the open numbers by formula, row by row; by differences where absent.</summary>
    public Func<TrialSheet, double[], double[,]>? Slopes { get; init; }
}
