using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>An arrangement that the search found.</summary>
/// <param name="Cell">Name of the cell.</param>
/// <param name="StepUp">Name of the step-up module; absent: none.</param>
/// <param name="Heater">Name of the heater or lamp.</param>
/// <param name="Contacts">Name of the contacts.</param>
/// <param name="Warnings">What to mind.</param>
/// <param name="Conditions">What must be there for safety and is not yet.</param>
/// <param name="Requirements">Each line of the brief.</param>
public sealed record FoundView(string Name, int Series, int Parallel, string Cell, string? StepUp, string Heater, string Contacts, double DutyCeiling, string Verdict, string Because,
    IReadOnlyList<string> Warnings, IReadOnlyList<string> Conditions, IReadOnlyList<RequirementView> Requirements)
{
    /// <summary>What must be bought before it can be built, as '6 × round cell'; empty: all of it is on hand.</summary>
    public IReadOnlyList<string> ToBuy { get; init; } = [];

    /// <summary>Letter of the study's arrangement that is the same; absent: none is.</summary>
    public string? Letter { get; init; }

    /// <summary>What it has and the study's arrangement has not: a board or a charger of the shelf.</summary>
    public IReadOnlyList<string> With { get; init; } = [];

    /// <summary>Which arrangement of the study it is, in words; empty: none.</summary>
    public string AsWired() => Letter is null ? "" : $"as arrangement {Letter}{(With.Count > 0 ? $", with {string.Join(" and ", With)}" : "")}";
}

/// <summary>What the shelf can do, as machines read it.</summary>
/// <param name="Tried">How many arrangements were tried.</param>
/// <param name="TooCold">How many of them were put aside at the first look: with the switch as much on as it may be, their end stands too cold.</param>
/// <param name="NoPoint">How many have no steady point with a full, a half or a nearly empty pack; they were run all the same.</param>
/// <param name="Best">The best handful.</param>
/// <param name="Discarded">Why others were put aside, family by family.</param>
/// <param name="Buy">What to buy.</param>
public sealed record SearchView(int Tried, int TooCold, int NoPoint, IReadOnlyList<FoundView> Best, IReadOnlyList<Discarded> Discarded, IReadOnlyList<string> Buy)
{
    /// <summary>Where the arrangements that are wired in the study stand among those tried, a sentence each; those among the best are not repeated.</summary>
    public IReadOnlyList<string> Wired { get; init; } = [];

    /// <summary>How many keep every must in the middle run too, with less margin than the best handful; none of them is shown.</summary>
    public int Behind { get; init; }

    /// <summary>What the first look told, and what is not shown, in sentences; none where it told nothing.</summary>
    public IEnumerable<string> FirstLook()
    {
        if (TooCold > 0)
        {
            yield return $"{RunWords.Number(TooCold, "0")} of them stand too cold with the switch as much on as it may be, and were put aside at once.";
        }

        if (NoPoint > 0)
        {
            yield return $"{RunWords.Number(NoPoint, "0")} have no steady point with a full, a half or a nearly empty pack; they were run all the same.";
        }

        if (Behind > 0)
        {
            yield return $"{RunWords.Number(Behind, "0")} more keep every must in the middle run, with less margin than the {RunWords.Number(Best.Count, "0")} shown.";
        }
    }
}

/// <summary>Searches the shelf of a study.</summary>
public static class SearchShelf
{
    /// <summary>Draws of each of the best: enough to tell 0.95 to about two hundredths.</summary>
    private const int Draws = 200;

    /// <summary>The search, or what the shelf lacks.</summary>
    public static Checked<SearchView> Of(OpenedStudy opened, Action<string>? progress = null)
    {
        var study = opened.Study;
        if (study.Brief is not { } brief)
        {
            return new(ReadBrief.Of(study).Problems);
        }

        progress?.Invoke("Checking readings and fitting trials");
        var shelf = new Arrangements.Shelf(study.Parts, RunStudy.Findings(study));
        progress?.Invoke("Trying every sensible arrangement of the shelf");
        return ShelfSearch.Of(brief, [.. study.Parts.Where(part => !Sharing.Twins.IsWaiting(study, part))], shelf, RunStudy.Plan(brief), study.Seed, Draws, new StudyState(opened.Fingerprint), study.Arrangements).Map(found => new SearchView(
            found.Tried, found.TooCold, found.NoPoint,
            [.. found.Best.Select(one => View(one, shelf, study))],
            found.Discards, found.Buy)
        {
            Behind = found.Behind,
            Wired = [.. study.Arrangements.Where(wired => !found.Best.Any(one => ShelfSearch.SameWay(wired, one.Verdict.Arrangement))).Select(wired => Place(study, wired, found))],
        });
    }

    private static string Place(Study study, Arrangements.Arrangement wired, SearchResult found)
    {
        string who = $"Arrangement {wired.Letter}{(study.Decisions is [.., var card] && card.Chosen == wired.Id ? $", decided for on {card.On}," : "")}";
        int passed = found.Places.Count(one => one.Reason.Length == 0);
        int at = found.Places.ToList().FindIndex(one => ShelfSearch.SameWay(wired, one.One));
        return at < 0 ? $"{who} is none of those that the search tries."
            : at < passed ? $"{who} keeps every must in the middle run too; by its margin it is {RunWords.Number(at + 1, "0")} of {RunWords.Number(passed, "0")} that do."
            : $"{who} was put aside: {found.Places[at].Reason}.";
    }

    private static FoundView View(Found found, Arrangements.Shelf shelf, Study study)
    {
        var one = found.Verdict.Arrangement;
        var same = study.Arrangements.FirstOrDefault(wired => ShelfSearch.SameWay(wired, one));
        return new(one.Name, one.Series, one.Parallel, shelf[one.Cell].Name, one.StepUp is { } module ? shelf[module].Name : null, shelf[one.Load].Name, shelf[one.Contacts].Name, one.DutyCeiling,
            ArrangementView.Word(found.Verdict.Word), found.Verdict.Because, found.Warnings, [.. found.Verdict.Safety.Conditions.Select(condition => condition.Words)], [.. found.Verdict.Requirements.Select(RequirementView.Of)])
        {
            ToBuy = found.ToBuy,
            Letter = same?.Letter,
            With = same is null ? [] : [.. one.Parts().Except(same.Parts()).Select(id => shelf[id].Name)],
        };
    }
}
