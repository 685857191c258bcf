using Heatwright.Arrangements;
using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Safety;

namespace Heatwright.Verdicts;

/// <summary>One line of the brief by the middle run alone.</summary>
/// <param name="Requirement">Which line.</param>
/// <param name="Value">In the line's unit; null: never reached, or not known.</param>
/// <param name="Kept">Whether the middle run keeps it; null: not known.</param>
/// <param name="Shown">The value in words: a number, 'never', or 'not known'.</param>
public sealed record MiddleLine(Requirement Requirement, double? Value, bool? Kept, string Shown);

/// <summary>How the middle run stands to a brief: there at once, without a single draw. A verdict needs the draws.</summary>
public static class MiddleLines
{
    /// <summary>All lines of a brief.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="shelf">Parts and findings.</param>
    /// <param name="arrangement">The arrangement.</param>
    /// <param name="safety">What it needs for safety.</param>
    /// <param name="run">The middle run; null: it cannot be predicted.</param>
    /// <param name="seed">The study's seed.</param>
    public static IReadOnlyList<MiddleLine> Of(Brief brief, Shelf shelf, Arrangement arrangement, SafetyFindings safety, PlantRun? run, ulong seed)
    {
        var standing = new StandingLines(shelf, arrangement, safety, seed);
        Outcome? outcome = run is null ? null : Outcome.Of(run);
        return [.. brief.Requirements.Select(line => Of(line, brief, shelf, arrangement, safety, standing, outcome))];
    }

    /// <summary>The lines of a brief that a run tells, for any one run.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="arrangement">The arrangement.</param>
    /// <param name="outcome">What the run did.</param>
    internal static IReadOnlyList<MiddleLine> ByRun(Brief brief, Arrangement arrangement, Outcome outcome) =>
        [.. brief.Requirements.Where(line => Suits(line.Quantity, arrangement.Lamp is not null)).Select(line => (Line: line, Told: Told.ByRun(line, brief, arrangement.Parallel)))
            .Where(pair => pair.Told is not null).Select(pair => By(pair.Line, pair.Told!(outcome)))];

    private static MiddleLine Of(Requirement line, Brief brief, Shelf shelf, Arrangement arrangement, SafetyFindings safety, StandingLines standing, Outcome? outcome)
    {
        if (standing.Line(line) is { } known)
        {
            return new(line, known.Value?.Value, known.Value is { } value ? Keeps(line, value.Value) : known.Probability is 0 ? false : null, known.Shown);
        }

        if (outcome is null)
        {
            return new(line, null, null, "not known");
        }

        if (!Suits(line.Quantity, arrangement.Lamp is not null))
        {
            return new(line, null, false, arrangement.Lamp is null ? "no light" : "no hot end");
        }

        return By(line, line.Quantity == RequirementQuantity.StuckSwitchTemperature ? SafetyCheck.HeldK(safety.StuckOnC, arrangement, shelf, brief.Duty?.TargetC ?? double.NaN) : Told.ByRun(line, brief, arrangement.Parallel)!(outcome.Value));
    }

    /// <summary>A line by the value of it, SI.</summary>
    internal static MiddleLine By(Requirement line, double si)
    {
        var unit = Units.Find(line.Unit) ?? Units.One;
        double middle = unit.FromSi(si);
        return double.IsFinite(middle) ? new(line, middle, Keeps(line, middle), Display.Rounded(middle, 0, unit)) : new(line, null, Keeps(line, middle), "never");
    }

    private static bool Keeps(Requirement line, double value) => line.AtMost ? value <= line.Limit : value >= line.Limit;

    /// <summary>What only a hot end does is not asked of a lamp, nor light of a heater.</summary>
    private static bool Suits(RequirementQuantity quantity, bool lamp) => quantity switch
    {
        RequirementQuantity.FullLightTime => lamp,
        RequirementQuantity.WarmUpTime or RequirementQuantity.PiecesPerCharge or RequirementQuantity.Steadiness or RequirementQuantity.WorkRate or RequirementQuantity.RecoveryTime or RequirementQuantity.StuckSwitchTemperature => !lamp,
        _ => true,
    };
}
