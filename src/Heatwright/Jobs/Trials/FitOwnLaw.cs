using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>A maker's own trial by any law of the quick sums, from readings that no study holds.</summary>
public static class FitOwnLaw
{
    /// <summary>Findings with doubt.</summary>
    /// <param name="words">Readings, settings and meters, named as the law names its inputs and its result.</param>
    /// <param name="law">Name of the law, as 'sum' has it.</param>
    /// <param name="result">Which of its results was read; null: its first.</param>
    /// <param name="find">Inputs to find, apart by commas; null: those that are neither read nor said.</param>
    public static Checked<TrialAnswer> Run(TrialWords words, string law, string? result, string? find) =>
        OwnTrial.Of(law, result, find).Then(own => TrialReadings.Read(own.Card, words).Then(own.Fit));
}
