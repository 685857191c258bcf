using Heatwright.Jobs;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Web;

/// <summary>The one thing to do next.</summary>
/// <param name="What">In a few words.</param>
/// <param name="Why">What it is good for.</param>
/// <param name="Where">Page to go to.</param>
/// <param name="Button">Words of the way there.</param>
internal sealed record NextStep(string What, string Why, string Where, string Button)
{
    /// <summary>A reading that would tell comes first, then a piece to buy, then the comparison.</summary>
    public static NextStep Of(StudyResult result)
    {
        foreach (var verdict in result.Verdicts.Where(verdict => verdict.Word is VerdictWord.NeedMoreReadings or VerdictWord.GoIf).OrderByDescending(verdict => verdict.Word))
        {
            string letter = verdict.Arrangement.Letter;
            if (verdict.Problems is [var problem, ..])
            {
                return new(PageWords.Of(problem.Next), $"{letter} cannot be predicted yet: {PageWords.Of(problem.What)}", $"/arrangements/{letter}", $"See arrangement {letter}");
            }

            var open = verdict.Requirements.FirstOrDefault(line => line.Requirement.Must && line.Word == VerdictWord.NeedMoreReadings && line.Remedy.Length > 0);
            if (open is not null)
            {
                int take = open.Remedy.LastIndexOf(": take ", StringComparison.Ordinal);
                string what = take < 0 ? open.Remedy : "Take " + open.Remedy[(take + ": take ".Length)..];
                bool stated = open.Remedy.StartsWith("state ", StringComparison.Ordinal) || open.Remedy.StartsWith("weigh ", StringComparison.Ordinal);
                return stated ? new(Say.Sentence(what), $"For {letter}, {verdict.Arrangement.Name}: {Say.Sentence(open.Because)}", "/shelf", "Go to the shelf")
                    : new(Say.Sentence(what), $"For {letter}, {verdict.Arrangement.Name}: {open.Remedy}. {Say.Sentence(open.Because)}", $"/predictions/{letter}", $"See the prediction of {letter}");
            }

            if (verdict.Safety.Conditions is [var condition, ..])
            {
                return new($"Get {condition.Words}.", $"For {letter}, {verdict.Arrangement.Name}: {condition.Because}.", $"/arrangements/{letter}", $"See arrangement {letter}");
            }
        }

        return result.Verdicts.Count == 0 ? Begin(result.Study)
            : new("Compare the arrangements.", "No reading is asked for: every must is told.", "/comparison", "Compare");
    }

    /// <summary>What a study lacks before there is anything to judge, in the order of the work.</summary>
    private static NextStep Begin(Study study) =>
        study.Brief is null ? new("Say what the tool must do.", "How hot and how fast, in one plain sentence: everything else is held against it.", "/brief", "Write the brief")
        : study.Parts.Count == 0 ? new("Put the parts on the shelf.", "With what their sellers say of them, and what you read on them.", "/shelf", "Go to the shelf")
        : new("Wire an arrangement.", "Cells, a heater or a lamp, and what stands between them: then there is something to judge.", "/arrangements", "Wire parts");
}
