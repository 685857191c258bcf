using Heatwright.Arrangements;
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
    /// <summary>What the page 'Next reading' says, in one step: a reading worth its minutes, else what the best choice still lacks, else the decision.</summary>
    /// <param name="result">What was worked out.</param>
    /// <param name="readings">What is worth reading next; null: still being asked.</param>
    public static NextStep Of(StudyResult result, NextView? readings)
    {
        if (result.Verdicts.Count == 0)
        {
            return Begin(result.Study);
        }

        if (result.Study.Decisions is [.., var card] && result.Study.Arrangements.FirstOrDefault(one => one.Id == card.Chosen) is { } chosen)
        {
            return result.Study.PrototypeReadings.Any(reading => reading.Decision == card.Id) ? Built(chosen, DecideTool.Lines(result), card)
                : new($"Build {chosen.Letter}, as decided.", "The build sheet has its parts, wiring, settings and limits. Then type what the prototype does on the page 'Check'.", $"/build-sheet/{chosen.Letter}", "Open the build sheet");
        }

        if (result.Verdicts.All(verdict => verdict.Prediction is null) && result.Verdicts.FirstOrDefault(verdict => verdict.Problems.Count > 0) is { } unknown)
        {
            string letter = unknown.Arrangement.Letter;
            return new(PageWords.Of(unknown.Problems[0].Next), $"{letter} cannot be predicted yet: {PageWords.Of(unknown.Problems[0].What)}", $"/arrangements/{letter}", $"See arrangement {letter}");
        }

        if (readings is null)
        {
            return new("One moment.", "Each reading is being asked what it would change.", "/next", "See the readings");
        }

        string advice = PageWords.Of(readings.Advice);
        return !readings.StopMeasuring && readings.Trials is [var trial, ..] ? new(Say.Sentence($"{trial.Trial}{(trial.Part.Length > 0 ? $", {trial.Part}" : "")}"), advice, "/next", "See the readings")
            : result.Verdicts.FirstOrDefault(verdict => verdict.Arrangement.Letter == readings.Choice) is { } best ? For(best, result.Study, advice)
            : new("Change an arrangement, or the brief.", advice, "/comparison", "See why");
    }

    /// <summary>No reading would change the choice: what must be known or there before it is built.</summary>
    private static NextStep For(ArrangementVerdict best, Study study, string advice)
    {
        string letter = best.Arrangement.Letter;
        var open = best.Requirements.FirstOrDefault(line => line.Requirement.Must && line.Word == VerdictWord.NeedMoreReadings && line.Probability is null && line.Remedy.Length > 0);
        if (open is not null)
        {
            int take = open.Remedy.LastIndexOf(": take ", StringComparison.Ordinal);
            string what = Say.Sentence(PageWords.Of(take < 0 ? open.Remedy : "Take " + open.Remedy[(take + ": take ".Length)..]));
            bool stated = open.Remedy.StartsWith("state ", StringComparison.Ordinal) || open.Remedy.StartsWith("weigh ", StringComparison.Ordinal);
            return stated ? new(what, advice, "/shelf", "Go to the shelf") : new(what, advice, $"/predictions/{letter}", $"See the prediction of {letter}");
        }

        return best.Safety.Conditions is [var condition, ..] ? new($"Get {condition.Words}.", $"For {letter}, {best.Arrangement.Name}: {PageWords.Of(condition.Because)}.", $"/arrangements/{letter}", $"See arrangement {letter}")
            : new($"Decide: {letter} is the best choice.", advice, "/decision", "Decide");
    }

    /// <summary>What was read on the prototype: a miss and what lies apart from its prediction come first, by name, then what is not read yet.</summary>
    private static NextStep Built(Arrangement chosen, IReadOnlyList<CheckLine> lines, DecisionCard card)
    {
        const string there = "/check", go = "Go to the check";
        string[] missed = [.. lines.Where(line => line.Promise == Kept.Missed).Select(line => line.Requirement)], apart = [.. PrototypeCheck.Apart(lines).Select(DecideTool.Off)];
        string[] open = [.. lines.Where(line => line.Promise == Kept.NotTested && card.BriefThen.Requirements.Any(one => one.Id == line.Requirement && one.Must)).Select(line => line.Requirement)];
        string miss = missed.Length > 0 ? $"It misses its promise: {string.Join(", ", missed)}. " : "";
        return apart.Length > 0 ? new($"Find why the prototype of {chosen.Letter} is not as predicted.", $"{miss}Apart from its prediction: {string.Join("; ", apart)}. The page 'Check' tells what would explain it; a bench reading of that settles it.", there, go)
            : missed.Length > 0 ? new($"Mend what the prototype of {chosen.Letter} misses: {string.Join(", ", missed)}.", "What was read agrees with the prediction: change the tool or the brief, and decide anew.", there, go)
            : open.Length > 0 || lines.Count == 0 ? new($"Check the prototype of {chosen.Letter}{(open.Length > 0 ? $": {string.Join(", ", open)}" : "")}.", "Type what it does beside what was predicted: what misses its prediction is told with what would explain it.", there, go)
            : new($"The prototype of {chosen.Letter} keeps what was promised.", "Every must was read on it, and the readings agree with the prediction.", "/share", "Show it");
    }

    /// <summary>What a study lacks before there is anything to judge, in the order of the work.</summary>
    private static NextStep Begin(Study study) =>
        study.Brief is null ? new("Say what the tool must do.", "How hot and how fast, in one plain sentence: everything else is held against it.", "/brief", "Write the brief")
        : study.Parts.Count == 0 ? new("Put the parts on the shelf.", "With what their sellers say of them, and what you read on them.", "/shelf", "Go to the shelf")
        : new("Wire an arrangement.", "Cells, a heater or a lamp, and what stands between them: then there is something to judge.", "/arrangements", "Wire parts");
}
