using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>The result of the main job as machines read it. No clock times, no paths.</summary>
/// <param name="Invented">True: its readings are invented.</param>
/// <param name="Fingerprint">Fingerprint of its content.</param>
/// <param name="Arrangements">Its arrangements with their verdicts.</param>
/// <param name="Findings">What its trials found.</param>
public sealed record StudyView(string Study, bool Invented, string Fingerprint, IReadOnlyList<ArrangementView> Arrangements, IReadOnlyList<FindingView> Findings, IReadOnlyList<RemarkView> Remarks)
{
    /// <summary>Tools that exist, known by their own readings; absent where there is none.</summary>
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<ExistingToolView>? Tools { get; init; }

    /// <summary>The view of a result.</summary>
    public static StudyView Of(StudyResult result) => new(
        result.Study.Name, result.Study.Invented, result.Fingerprint,
        [.. result.Verdicts.Select(ArrangementView.Of)],
        [.. result.Findings.SelectMany(found => found.Findings).Select(finding => new FindingView(finding.Part.Name, finding.Quantity, finding.Value.Value, finding.Value.Unit.Symbol, finding.Value.StandardDoubt, finding.Value.Origin.Word))],
        [.. result.Findings.SelectMany(found => found.Remarks).Select(remark => new RemarkView(remark.Trial.Name, remark.Run.Name, remark.Reading, remark.Words, remark.Effect))])
    {
        Tools = result.Tools.Count > 0 ? [.. result.Tools.Select(ExistingToolView.Of)] : null,
    };
}

/// <summary>A tool that exists: a line of the brief where it was read, null where it was not.</summary>
/// <param name="Verdict">go, go-if, no-go or need-more-readings; null: none of the musts was read.</param>
/// <param name="Requirements">Each line of the brief, in its order; null: it was not read on this tool.</param>
/// <param name="Readings">What was read on it.</param>
public sealed record ExistingToolView(string Letter, string Name, string? Verdict, IReadOnlyList<RequirementView?> Requirements, IReadOnlyList<ToolReading> Readings)
{
    /// <summary>The view of a tool's verdict.</summary>
    public static ExistingToolView Of(ToolVerdict verdict) => new(verdict.Tool.Letter, verdict.Tool.Name, verdict.Word is { } word ? ArrangementView.Word(word) : null,
        [.. verdict.Lines.Select(line => line is null ? null : RequirementView.Of(line))], verdict.Tool.Readings);
}

/// <summary>One arrangement.</summary>
/// <param name="Requirements">Each line of the brief.</param>
/// <param name="Conditions">What must be there for safety and is not yet.</param>
/// <param name="Cautions">What to mind, whatever the verdict.</param>
/// <param name="Prediction">The middle run; null: it could not be predicted.</param>
public sealed record ArrangementView(
    string Name, string Letter, string Verdict, string Because, IReadOnlyList<RequirementView> Requirements, IReadOnlyList<string> Conditions, IReadOnlyList<string> Cautions, PredictionView? Prediction)
{
    /// <summary>The view of a verdict.</summary>
    public static ArrangementView Of(ArrangementVerdict verdict) => new(
        verdict.Arrangement.Name, verdict.Arrangement.Letter, Word(verdict.Word), verdict.Because,
        [.. verdict.Requirements.Select(RequirementView.Of)],
        [.. verdict.Safety.Conditions.Select(condition => condition.Words)], verdict.Safety.Cautions,
        verdict.Prediction is { } prediction ? PredictionView.Of(prediction) : null);

    /// <summary>The verdict's word as files write it.</summary>
    public static string Word(VerdictWord word) => word switch
    {
        VerdictWord.Go => "go",
        VerdictWord.GoIf => "go-if",
        VerdictWord.NoGo => "no-go",
        _ => "need-more-readings",
    };
}

/// <summary>One requirement of one arrangement.</summary>
public sealed record RequirementView(
    string Name, string Text, bool Must, double? Value, string Unit, double? StandardDoubt, double Limit, bool AtMost, double? Probability, string Verdict, string Because, string Remedy)
{
    /// <summary>The view of a requirement's verdict.</summary>
    public static RequirementView Of(RequirementVerdict line) => new(
        line.Requirement.Id, line.Requirement.Text, line.Requirement.Must, line.Value?.Value, line.Requirement.Unit, line.Value?.StandardDoubt,
        line.Requirement.Limit, line.Requirement.AtMost, line.Probability, ArrangementView.Word(line.Word), line.Because, line.Remedy);
}

/// <summary>The middle run of a prediction.</summary>
/// <param name="RunTimeS">How long it runs, seconds.</param>
/// <param name="ChargeLeft">Share of the charge that is then left, 0 to 1.</param>
/// <param name="WarmUpS">Until the target is reached, seconds; null: never, or no hot work.</param>
/// <param name="Pieces">Pieces of work done in a row.</param>
/// <param name="EnergiesJ">Energies by where they went, joules.</param>
/// <param name="Draws">How often what is not known exactly was drawn.</param>
public sealed record PredictionView(double RunTimeS, string StopReason, double ChargeLeft, double? WarmUpS, int Pieces, IReadOnlyDictionary<string, double> EnergiesJ, int Draws)
{
    /// <summary>The view of a prediction.</summary>
    public static PredictionView Of(Predictions.Prediction prediction)
    {
        var run = prediction.Middle;
        var energies = run.Energies;
        return new(run.RunTimeS, run.Stop.ToString(), run.ChargeLeft, double.IsNaN(run.TargetS) ? null : run.TargetS, run.WorkDoneInARow, new Dictionary<string, double>
        {
            ["load"] = energies.LoadJ,
            ["light"] = energies.LightJ,
            ["cells"] = energies.CellLossJ,
            ["loop"] = energies.LoopLossJ,
            ["path"] = energies.PathLossJ,
            ["work"] = energies.WorkJ,
            ["air"] = energies.AirJ,
            ["stored"] = energies.StoredJ,
        }, prediction.Draws.Count);
    }
}

/// <summary>One finding.</summary>
public sealed record FindingView(string Part, string Name, double Value, string Unit, double StandardDoubt, string Origin);

/// <summary>One remark of the checks.</summary>
/// <param name="Reading">Number of the reading; 0: the run as a whole.</param>
/// <param name="Words">What and what to do.</param>
/// <param name="Effect">Left out of the fit, or kept.</param>
public sealed record RemarkView(string Trial, string Run, int Reading, string Words, string Effect);
