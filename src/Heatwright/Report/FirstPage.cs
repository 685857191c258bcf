using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Verdicts;
using Heatwright.Web;

namespace Heatwright.Report;

/// <summary>One line of the first page: what was asked, what came out, by how much it is kept, and how it was tested.</summary>
/// <param name="Line">The verdict behind it.</param>
/// <param name="Asked">The requirement as a sentence.</param>
/// <param name="Limit">Its limit, with sign and unit; empty where the sentence says it.</param>
/// <param name="Result">What the prototype did where it was read, else what is predicted.</param>
/// <param name="Margin">How far that is on the right side of the limit, or on the wrong one.</param>
/// <param name="Chance">In how many of 100 draws it is kept.</param>
/// <param name="Tested">What the result rests on.</param>
/// <param name="Read">True: a reading of the prototype, no prediction.</param>
internal sealed record PageRow(RequirementVerdict Line, string Asked, string Limit, string Result, string Margin, string Chance, string Tested, bool Read)
{
    /// <summary>The word of the line: what was read on the prototype is kept or missed, whatever was predicted.</summary>
    public VerdictWord Word { get; init; } = Line.Word;
}

/// <summary>The page for a customer or viewer: one arrangement against the brief.</summary>
/// <param name="Verdict">The arrangement.</param>
/// <param name="Card">The decision it was chosen by; null: it is not decided.</param>
/// <param name="Rows">Line by line, musts first.</param>
/// <param name="Tests">Bench tests behind the numbers, part by part.</param>
internal sealed record FirstPage(ArrangementVerdict Verdict, DecisionCard? Card, IReadOnlyList<PageRow> Rows, IReadOnlyList<string> Tests)
{
    /// <summary>What the prototype misses; empty: nothing that was read on it.</summary>
    public string Missed => Rows.Where(row => row.Read && row.Word == VerdictWord.NoGo).Select(row => $"{row.Asked}: {row.Result}, {row.Margin}").ToArray() is { Length: > 0 } missed ? $"The prototype misses what was promised. {string.Join("; ", missed)}." : "";

    /// <summary>What was read on the prototype and lies apart from its prediction; empty: nothing.</summary>
    public string Apart { get; init; } = "";

    /// <summary>Why it stands as it does; a condition that the first line of the page carries already is not said again.</summary>
    public string Because
    {
        get
        {
            string said = Card?.FirstLine ?? "", why = Verdict.Because;
            foreach (string there in Verdict.Safety.Conditions.Where(condition => said.Contains(condition.Words, StringComparison.Ordinal)).Select(condition => $"there is {condition.Words} ({condition.Because})"))
            {
                why = why.Replace(there + "; and ", "", StringComparison.Ordinal).Replace("; and " + there, "", StringComparison.Ordinal).Replace(there, "", StringComparison.Ordinal);
            }

            return why is "it works if ." ? "" : why;
        }
    }

    /// <summary>Conditions that neither the first line nor the reason says.</summary>
    public IReadOnlyList<string> OnlyWith => [.. Verdict.Safety.Conditions.Select(condition => condition.Words).Where(words => !Verdict.Because.Contains(words, StringComparison.Ordinal) && Card?.FirstLine.Contains(words, StringComparison.Ordinal) != true)];

    /// <summary>The page, or why there is none.</summary>
    public static Checked<FirstPage> Of(StudyResult result, ReportAsk ask)
    {
        if (result.Study.Brief is not { } brief || result.Verdicts.Count == 0)
        {
            return new(new Problem("There is no arrangement to show against a brief.", result.Study.Name, $"{result.Verdicts.Count} arrangements, {(result.Study.Brief is null ? "no brief" : "a brief")}", "a brief and one arrangement",
                "Write the brief ('heatwright brief FILE --add ...') and wire a tool ('heatwright arrange FILE ...')."));
        }

        var card = result.Study.Decisions is [.., var last] && result.Verdicts.Any(one => one.Arrangement.Id == last.Chosen) ? last : null;
        string wanted = ask.Arrangement.Length > 0 ? ask.Arrangement : card?.Chosen.Name ?? Comparison.Of(brief, result.Verdicts, result.Shelf).Ranked[0].Verdict.Arrangement.Id.Name;
        if (result.Verdicts.FirstOrDefault(one => one.Arrangement.Letter == wanted || one.Arrangement.Id.Name == wanted) is not { } verdict)
        {
            return new(new Problem("The study has no such arrangement.", "--arrangement", wanted, string.Join(", ", result.Verdicts.Select(one => one.Arrangement.Letter)), "Choose one of them."));
        }

        var chosen = card?.Chosen == verdict.Arrangement.Id ? card : null;
        var rows = verdict.Requirements.OrderByDescending(line => line.Requirement.Must).Select(line => Row(result, chosen, line, verdict.Prediction?.Draws.Count ?? 0)).ToArray();
        string[] apart = chosen is null ? [] : [.. PrototypeCheck.Apart(DecideTool.Lines(result)).Select(DecideTool.Off)];
        return new(new FirstPage(verdict, chosen, rows, TestsOf(result, verdict)) { Apart = apart.Length > 0 ? $"The prototype is not as predicted. {string.Join("; ", apart)}." : "" });
    }

    /// <summary>How far a value is on the right side of a limit, to the place that its doubt allows.</summary>
    public static string Margin(RequirementVerdict line, double margin, double doubt) => !double.IsFinite(margin) ? ""
        : $"{(margin >= 0 ? "margin" : line.Requirement.AtMost ? "over by" : "short by")} {Display.Value(Math.Abs(margin), doubt)}{Say.Unit(line.Requirement.Unit == "°C" ? "K" : line.Requirement.Unit)}";

    private static PageRow Row(StudyResult result, DecisionCard? card, RequirementVerdict line, int draws)
    {
        var asked = line.Requirement;
        string chance = line.Probability is { } probability ? $"{(probability is > 0.99 and < 1 ? "99+" : Say.Number(100 * probability, "0"))} of 100" : "not known";
        string predicted = line.Value is { } value ? Shown(value.Value, value.StandardDoubt, asked.Unit) : line.Shown;
        if (card is not null && result.Study.PrototypeReadings.LastOrDefault(one => one.Decision == card.Id && one.Requirement == asked.Id) is { } read)
        {
            double margin = asked.AtMost ? asked.Limit - read.Value : read.Value - asked.Limit;
            string word = $"{(margin >= 0 ? "kept" : "missed")}{(Math.Abs(margin) < read.PlusMinus ? ", within the doubt of the reading" : "")}";
            return new(line, Say.Asked(asked), Say.LimitBeside(asked), Shown(read.Value, read.PlusMinus, asked.Unit), Margin(line, margin, read.PlusMinus), word, $"read on the prototype, {read.On}; predicted was {predicted}, kept in {chance}", true)
            {
                Word = margin >= 0 ? VerdictWord.Go : VerdictWord.NoGo,
            };
        }

        return new(line, Say.Asked(asked), Say.LimitBeside(asked), predicted, line.Value is { } known ? Margin(line, line.Margin, known.StandardDoubt) : "", chance, line.Value is { } leaf ? Rests(leaf.Origin, draws) : "nothing to reckon it from", false);
    }

    private static string Shown(double value, double doubt, string unit) => $"{Display.Value(value, doubt)}{(doubt > 0 ? $" ± {Display.Value(doubt, doubt)}" : "")}{Say.Unit(unit)}";

    /// <summary>What a number rests on, counted: trials first, guesses last.</summary>
    private static string Rests(Origin origin, int draws)
    {
        Origin[] leaves = [.. origin.Leaves().Distinct()];
        int trials = leaves.OfType<Origin.Fitted>().Select(one => one.Trial).Distinct().Count();
        (int Count, string One, string Many)[] kinds =
        [
            (trials, "bench test", "bench tests"),
            (leaves.OfType<Origin.Measured>().Count(), "reading", "readings"),
            (leaves.Count(leaf => leaf is Origin.Sheet or Origin.Published), "sheet or table", "sheets or tables"),
            (leaves.OfType<Origin.Claimed>().Count(), "seller's claim", "sellers' claims"),
            (leaves.OfType<Origin.Assumed>().Count(), "assumption", "assumptions"),
        ];
        string words = string.Join(", ", kinds.Where(kind => kind.Count > 0).Select(kind => $"{Say.Number(kind.Count)} {(kind.Count == 1 ? kind.One : kind.Many)}"));
        return origin is Origin.Predicted ? $"predicted, {Say.Number(draws)} draws, from {words}" : words.Length > 0 ? $"added up from {words}" : origin.Word;
    }

    /// <summary>Trials with readings that count, of the parts that the arrangement is made of; what was struck out is told beside.</summary>
    private static string[] TestsOf(StudyResult result, ArrangementVerdict verdict) => [.. verdict.Arrangement.Parts().Distinct()
        .Select(part => (Part: part, Trials: result.Study.Trials.Where(trial => trial.Part == part && Count(trial, struck: false) > 0).ToArray())).Where(pair => pair.Trials.Length > 0)
        .Select(pair => $"{result.Shelf[pair.Part].Name}: {string.Join(", ", pair.Trials.Select(trial => $"{Jobs.Trials.TrialKinds.Of(trial)} ({Counted(trial)})"))}")];

    private static string Counted(Heatwright.Trials.Trial trial)
    {
        int count = Count(trial, struck: false), struck = Count(trial, struck: true);
        return $"{Say.Number(count)} reading{(count == 1 ? "" : "s")}{(struck > 0 ? $", {Say.Number(struck)} more struck out" : "")}";
    }

    private static int Count(Heatwright.Trials.Trial trial, bool struck) => trial.Runs.Sum(run => run.Readings.Count(reading => reading.StruckBecause is not null == struck));
}
