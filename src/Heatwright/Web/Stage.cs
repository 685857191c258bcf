using System.Globalization;
using Heatwright.Jobs;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Web;

/// <summary>One of the nine stages of the work, as the rule at the head of each page shows it.</summary>
/// <param name="Number">1 to 9.</param>
/// <param name="Name">In lower case.</param>
/// <param name="Path">Its page.</param>
/// <param name="Fact">One fact about it.</param>
/// <param name="DoneTenths">How much of it is there, 0 to 10.</param>
public sealed record Stage(int Number, string Name, string Path, string Fact, int DoneTenths)
{
    /// <summary>The stages of a study.</summary>
    public static IReadOnlyList<Stage> Of(Study study, StudyResult? result)
    {
        int lines = study.Brief?.Requirements.Count ?? 0;
        int taken = study.Trials.Count(trial => trial.Runs.Count > 0);
        int predicted = result?.Verdicts.Count(verdict => verdict.Prediction is not null) ?? 0;
        return
        [
            new(1, "brief", "/brief", lines == 0 ? "none yet" : Count(lines, "line"), Share(lines, lines)),
            new(2, "shelf", "/shelf", Count(study.Parts.Count, "part"), Share(study.Parts.Count, study.Parts.Count)),
            new(3, "trials", "/trials", $"{taken.ToString(CultureInfo.InvariantCulture)} taken", Share(taken, study.Trials.Count)),
            new(4, "arrangements", "/arrangements", $"{study.Arrangements.Count.ToString(CultureInfo.InvariantCulture)} drawn", Share(study.Arrangements.Count, study.Arrangements.Count)),
            new(5, "predictions", "/predictions", study.Arrangements.Count == 0 || study.Brief is null ? "nothing yet" : result is null ? "at work" : $"{predicted.ToString(CultureInfo.InvariantCulture)} up to date", Share(predicted, study.Arrangements.Count)),
            new(6, "comparison", "/comparison", study.Arrangements.Count == 0 || study.Brief is null ? "nothing yet" : result is null ? "at work" : Words(result), Share(predicted, study.Arrangements.Count)),
            new(7, "decision", "/decision", study.Decisions is [.., var card] ? $"for {study.Arrangements.FirstOrDefault(one => one.Id == card.Chosen)?.Letter ?? card.Chosen.Name}, {card.On}" : "open", study.Decisions.Count > 0 ? 10 : 0),
            new(8, "build sheet", "/build-sheet", study.Arrangements.Count == 0 ? "nothing wired yet" : study.Decisions.Count > 0 ? "as decided" : "not decided yet", study.Decisions.Count > 0 ? 10 : 0),
            new(9, "check", "/check", study.PrototypeReadings.Count == 0 ? "no reading yet" : Count(study.PrototypeReadings.Count, "reading"), study.Decisions is [.., var last] ? Share(study.PrototypeReadings.Where(one => one.Decision == last.Id).Select(one => one.Requirement).Distinct().Count(), last.Lines.Count) : 0),
        ];
    }

    private static string Words(StudyResult result) => result.Verdicts.Count == 0
        ? "nothing yet"
        : string.Join(", ", result.Verdicts.GroupBy(verdict => verdict.Word).OrderBy(group => group.Key).Select(group =>
            $"{group.Count().ToString(CultureInfo.InvariantCulture)} {(group.Key == VerdictWord.NeedMoreReadings ? "open" : ArrangementView.Word(group.Key))}"));

    private static string Count(int count, string word) => $"{count.ToString(CultureInfo.InvariantCulture)} {word}{(count == 1 ? "" : "s")}";

    private static int Share(int part, int whole) => whole == 0 ? 0 : 10 * part / whole;
}
