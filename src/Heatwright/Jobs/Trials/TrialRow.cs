using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>A finding as a table shows it.</summary>
/// <param name="Name">The quantity.</param>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="StandardDoubt">In <paramref name="Unit"/>.</param>
/// <param name="Says">Rounded, with doubt and unit.</param>
public sealed record FoundRow(string Name, double Value, string Unit, double StandardDoubt, string Says);

/// <summary>One trial of a study and what came of it.</summary>
/// <param name="Trial">Its name.</param>
/// <param name="Kind">Name of its kind.</param>
/// <param name="Part">The part tried.</param>
/// <param name="Runs">Its runs.</param>
/// <param name="Readings">How many readings they hold.</param>
/// <param name="Findings">What was found.</param>
/// <param name="Problems">Why nothing was.</param>
public sealed record TrialRow(string Trial, string Kind, string Part, IReadOnlyList<string> Runs, int Readings, IReadOnlyList<FoundRow> Findings, IReadOnlyList<string> Problems)
{
    /// <summary>The row of a trial.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="found">What the trials of the study found.</param>
    public static TrialRow Of(Trial trial, IReadOnlyList<PartFindings> found)
    {
        var own = found.FirstOrDefault(one => one.Part == trial.Part);
        return new(trial.Id.Name, TrialKinds.Of(trial), trial.Part.Name, [.. trial.Runs.Select(run => run.Id.Name)], trial.Runs.Sum(run => run.Readings.Count),
            [.. (own?.Findings ?? []).Where(finding => RestsOn(finding.Value.Origin, trial.Id)).Select(finding => new FoundRow(finding.Quantity, finding.Value.Value, finding.Value.Unit.Symbol, finding.Value.StandardDoubt, Display.Rounded(finding.Value)))],
            [.. About(trial, own).Select(problem => problem.Where == CellTrials.Where ? $"{problem.What} {problem.Next}" : problem.What)]);
    }

    /// <summary>Why a trial that was read told nothing, and what to do; null: it told something, by itself or with the others of its part, or nothing is read yet.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="found">What the trials of the study found.</param>
    public static string? Untold(Trial trial, IReadOnlyList<PartFindings> found)
    {
        var own = found.FirstOrDefault(one => one.Part == trial.Part);
        var runs = trial.Runs.Select(run => run.Id).ToHashSet();
        bool told = (own?.Findings ?? []).Any(finding => trial.TellsHowVoltsFall() || finding.Value.Origin.Leaves().Any(leaf => leaf is Origin.Fitted fitted && fitted.Runs.Any(runs.Contains)));
        return told || trial.Runs.All(run => run.Readings.Count == 0) ? null
            : About(trial, own).FirstOrDefault() is { } problem ? $"{problem.What} {problem.Next}" : "No reading of it could be used: look at what is remarked on them.";
    }

    /// <summary>What stands in the way of a trial. What a cell still lacks is told of all its trials that were read.</summary>
    internal static IEnumerable<Problem> About(Trial trial, PartFindings? own)
    {
        bool read = trial.TellsHowVoltsFall() && trial.Runs.Any(run => run.Readings.Count > 0);
        return (own?.Problems ?? []).Where(problem => problem.Where.Contains(trial.Id.Name, StringComparison.Ordinal) || problem.Where.StartsWith("run '", StringComparison.Ordinal) && trial.Runs.Any(run => problem.Where.Contains($"'{run.Id}'", StringComparison.Ordinal)) || (read && problem.Where == CellTrials.Where));
    }

    /// <summary>True where a number was fitted from a trial's runs, or worked out of one that was.</summary>
    public static bool RestsOn(Origin origin, TrialId trial) => origin.Leaves().Any(leaf => leaf is Origin.Fitted fitted && fitted.Trial == trial);
}
