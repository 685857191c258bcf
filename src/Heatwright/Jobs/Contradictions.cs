using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>Where a study contradicts itself: requirements that exclude each other, arrangements of parts that are not there.</summary>
public static class Contradictions
{
    /// <summary>All of them at once; empty: none.</summary>
    public static IReadOnlyList<Problem> Of(Study study)
    {
        List<Problem> problems = [];
        var parts = study.Parts.Select(part => part.Id).ToHashSet();
        foreach (var arrangement in study.Arrangements)
        {
            problems.AddRange(arrangement.Parts().Where(part => !parts.Contains(part)).Select(part => new Problem(
                $"Arrangement {arrangement.Letter} uses a part that is not on the shelf.", $"arrangement '{arrangement.Name}'", part.Name, "a part of the study", $"Add '{part}' to the shelf, or choose another part.")));
            if (arrangement.Series < 1 || arrangement.Parallel < 1)
            {
                problems.Add(new($"Arrangement {arrangement.Letter} has no cells.", $"arrangement '{arrangement.Name}'", $"{arrangement.Series}S{arrangement.Parallel}P", "1 or more each way", "Correct the cell count."));
            }
        }

        if (study.Brief is { } brief)
        {
            problems.AddRange(Opposed(brief));
            problems.AddRange(brief.Requirements.Where(line => Units.Find(line.Unit) is null).Select(line => new Problem(
                "The unit of a requirement is not known.", $"requirement '{line.Id}'", line.Unit, "a unit such as s, °C, mm, h", "Correct the unit.")));
            if (brief.Work.TargetC <= brief.AirC)
            {
                problems.Add(new("The target is no hotter than the air.", "brief", $"{brief.Work.TargetC} °C", $"above {brief.AirC} °C", "Correct target or air."));
            }

            if (brief.Work.EveryS <= brief.Work.ForS)
            {
                problems.Add(new("The next piece of work begins before the last is over.", "brief, duty", $"every {brief.Work.EveryS} s", $"longer than {brief.Work.ForS} s", "Correct the pattern."));
            }
        }

        return problems;
    }

    private static IEnumerable<Problem> Opposed(Brief brief) =>
        from most in brief.Requirements
        where most.AtMost && most.Must
        from least in brief.Requirements
        where !least.AtMost && least.Must && least.Quantity == most.Quantity
        let mostSi = Units.Find(most.Unit)?.ToSi(most.Limit) ?? most.Limit
        let leastSi = Units.Find(least.Unit)?.ToSi(least.Limit) ?? least.Limit
        where leastSi > mostSi
        select new Problem("Two musts exclude each other.", $"requirements '{most.Id}' and '{least.Id}'", $"at least {least.Limit} {least.Unit} and at most {most.Limit} {most.Unit}", "ranges that overlap", "Correct one of the two limits.");
}
