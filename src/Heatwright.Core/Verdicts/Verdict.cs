using Heatwright.Arrangements;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Safety;

namespace Heatwright.Verdicts;

/// <summary>The four words, best first.</summary>
public enum VerdictWord
{
    /// <summary>Holds with a probability of at least 0.95, and no unchecked claim could turn it.</summary>
    Go,
    /// <summary>Would hold under a named condition that can be measured or bought before building.</summary>
    GoIf,
    /// <summary>The readings cannot tell yet.</summary>
    NeedMoreReadings,
    /// <summary>Fails with a probability of at least 0.95, and no value inside its range lifts it.</summary>
    NoGo,
}

/// <summary>How a requirement stands with an arrangement.</summary>
/// <param name="Requirement">The line of the brief.</param>
/// <param name="Word">The verdict.</param>
/// <param name="Value">The predicted value with doubt in the requirement's unit; null: never reached, or not predictable.</param>
/// <param name="Shown">The value in words: a number, 'never', or 'not known'.</param>
/// <param name="Probability">That it is kept, from the draws; null: not predictable.</param>
/// <param name="Because">What limits it, in a maker's sentence with numbers.</param>
/// <param name="Remedy">What would lift it, or the reading that would tell; empty: nothing to add.</param>
public sealed record RequirementVerdict(
    Requirement Requirement, VerdictWord Word, Estimate? Value, string Shown, double? Probability, string Because, string Remedy)
{
    /// <summary>Values over all draws in the requirement's unit, for pictures; empty where there are none.</summary>
    public IReadOnlyList<double> Drawn { get; init; } = [];

    /// <summary>What a mass or cost leaves out, in words: the value is the least it can be; empty: nothing is left out.</summary>
    public string LeftOut { get; init; } = "";

    /// <summary>Margin in the requirement's own unit: positive is kept; NaN: none.</summary>
    public double Margin { get; init; } = double.NaN;
}

/// <summary>How far one input moves a requirement when it goes from one end of its range to the other.</summary>
public sealed record Swing(PlantInput Input, double LowValue, double HighValue, double LowInput, double HighInput);

/// <summary>How an arrangement stands.</summary>
/// <param name="Arrangement">Which.</param>
/// <param name="Word">The worst word of its musts.</param>
/// <param name="Because">Why, in a maker's sentence.</param>
/// <param name="Requirements">Line by line.</param>
/// <param name="Safety">Missing pieces, cautions, stuck switch.</param>
/// <param name="Prediction">The prediction; null where the plant cannot be built.</param>
/// <param name="Problems">Why it cannot be built.</param>
public sealed record ArrangementVerdict(
    Arrangement Arrangement, VerdictWord Word, string Because, IReadOnlyList<RequirementVerdict> Requirements, SafetyFindings Safety,
    Prediction? Prediction, IReadOnlyList<Problem> Problems)
{
    private readonly Lazy<IReadOnlyList<WorstCase>> worst = new([]);

    /// <summary>What a bad day does to it, worked out when first asked for; empty where it cannot be predicted.</summary>
    public IReadOnlyList<WorstCase> WorstCases => worst.Value;

    /// <summary>How the worst cases are found.</summary>
    internal Func<IReadOnlyList<WorstCase>> FindWorst
    {
        init => worst = new(value);
    }
}
