using System.Security.Cryptography;
using System.Text.Json;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Safety;
using Heatwright.StudyFile;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>The main job: readings, checks, fits, findings, arrangements, predictions, verdicts.</summary>
public static class RunStudy
{
    /// <summary>A reading more asks for its own part's fits only, and a change that is taken back for nothing.</summary>
    private static readonly Remembered<PartFindings> Fitted = new(64);

    /// <summary>An arrangement more, a tool, a decision or a note asks for no other prediction.</summary>
    private static readonly Remembered<Foreseen> Predicted = new(24);

    private static readonly Remembered<StudyResult> Worked = new(3);

    /// <summary>Works a study out. Same study, same result, whatever the number of threads.</summary>
    /// <param name="study">What was entered.</param>
    /// <param name="fingerprint">Its fingerprint.</param>
    /// <param name="progress">Told what is being done; null: nobody listens.</param>
    /// <param name="cancel">Stops it between two steps of a prediction.</param>
    public static StudyResult Run(Study study, string fingerprint, Action<string>? progress = null, CancellationToken cancel = default) => Run(study, fingerprint, progress, null, cancel);

    /// <summary>As <see cref="Run(Study, string, Action{string}, CancellationToken)"/>, for callers that show findings while predictions are still being made.</summary>
    /// <param name="study">What was entered.</param>
    /// <param name="fingerprint">Its fingerprint.</param>
    /// <param name="progress">Told what is being done; null: nobody listens.</param>
    /// <param name="found">Given the findings as soon as they are there; null: nobody waits for them.</param>
    /// <param name="cancel">Stops it between two steps of a prediction.</param>
    public static StudyResult Run(Study study, string fingerprint, Action<string>? progress, Action<IReadOnlyList<PartFindings>>? found, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        progress?.Invoke("Checking readings and fitting trials");
        var findings = Findings(study, cancel);
        found?.Invoke(findings);
        return Worked.Of($"{fingerprint} {Hash(study with { Files = [] })}", () => Judged(study, fingerprint, findings, progress, cancel));
    }

    private static StudyResult Judged(Study study, string fingerprint, IReadOnlyList<PartFindings> findings, Action<string>? progress, CancellationToken cancel)
    {
        var shelf = new Shelf(study.Parts, findings);
        List<ArrangementVerdict> verdicts = [];
        if (study.Brief is { } brief)
        {
            var state = new StudyState(fingerprint);
            string bench = Hash(new { brief, study.Parts, study.Trials, study.Instruments, study.Seed });
            foreach (var arrangement in study.Arrangements)
            {
                progress?.Invoke(study.Arrangements.Count == 1 ? $"Working out arrangement {arrangement.Letter}, {arrangement.Name}"
                    : FormattableString.Invariant($"Working out {study.Arrangements.Count} arrangements: {arrangement.Letter}, {arrangement.Name}"));
                verdicts.Add(Judged(brief, shelf, Predicted.Of($"{bench} {Hash(arrangement)}", () => Foresee(brief, shelf, arrangement, study.Seed, cancel)), study.Seed, state, cancel));
            }
        }

        return new(study, fingerprint, shelf, findings, verdicts) { Tools = study.Brief is { } asked ? [.. study.Tools.Select(tool => ToolVerdict.Of(asked, tool))] : [] };
    }

    /// <summary>What the trials of a study told, part by part.</summary>
    public static IReadOnlyList<PartFindings> Findings(Study study, CancellationToken cancel = default)
    {
        Part[] tried = [.. study.Parts.Where(part => !Sharing.Twins.IsWaiting(study, part))];
        return [.. tried.AsParallel().AsOrdered().WithCancellation(cancel).Select(part => Findings(study, part)).OfType<PartFindings>()];
    }

    /// <summary>What the trials of one part told; null where it was not tried.</summary>
    public static PartFindings? Findings(Study study, Part part)
    {
        Trial[] trials = [.. study.Trials.Where(trial => trial.Part == part.Id)];
        return trials.Length == 0 ? null : Fitted.Of(Hash(new { part, trials, study.Instruments }), () => PartBench.One(part, trials, new InstrumentCauses(study.Instruments)));
    }

    private static string Hash<T>(T all) => Convert.ToHexString(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(all, StudyJson.Options)));

    /// <summary>The verdict on one arrangement, by as many draws as a word needs, or as are asked for.</summary>
    internal static ArrangementVerdict One(Brief brief, Shelf shelf, Arrangement arrangement, ulong seed, StudyState state, CancellationToken cancel, DrawRounds? draws = null, Action<int>? progress = null) =>
        Judged(brief, shelf, Foresee(brief, shelf, arrangement, seed, cancel, draws, progress), seed, state, cancel);

    /// <summary>What takes most of the time of a verdict: the runs of one arrangement.</summary>
    private static Foreseen Foresee(Brief brief, Shelf shelf, Arrangement arrangement, ulong seed, CancellationToken cancel, DrawRounds? draws = null, Action<int>? progress = null)
    {
        var built = PlantBuilder.For(arrangement, shelf, Plan(brief));
        var prediction = built.IsFine ? Predict.Charge(built.Value, arrangement, seed, draws ?? Settling.For(brief, arrangement), progress, cancel) : null;
        return new(arrangement, prediction, SafetyCheck.WithFaults(arrangement, shelf, built.IsFine ? built.Value : null, prediction?.MiddleOutcome.HighestA ?? double.NaN, cancel), built.Problems);
    }

    private static ArrangementVerdict Judged(Brief brief, Shelf shelf, Foreseen foreseen, ulong seed, StudyState state, CancellationToken cancel) =>
        Judge.Of(brief, shelf, foreseen.Arrangement, foreseen.Safety, foreseen.Prediction, foreseen.Problems, seed, state, cancel);

    /// <summary>How well the work takes its heat: as the brief states it; where it states a heat and no contact, as is usual.</summary>
    private static Estimate Contact(Brief brief, Origin stated)
    {
        const string cause = "brief: contact of the work";
        var duty = brief.Work;
        return BriefPlan.UsualContactWPerK(brief) is { } usual
            ? Estimate.Within(usual, usual / 2, Units.WattPerKelvin, cause, CauseGroup.Assumption, new Origin.Assumed("not stated: so that a piece takes its heat in half of its time, a third to all of it; state it with 'contact' in the brief"))
            : Estimate.Within(duty.Contact, duty.ContactPlusMinus, Units.WattPerKelvin, cause, CauseGroup.Assumption, stated);
    }

    /// <summary>Where a figure of the work comes from, and which limits were typed: pages show a standard doubt, and ±20 J that turns into ±12 J without a word looks like a slip.</summary>
    private static Origin.Assumed Stated(Duty duty, double plusMinus, Unit unit) => new(
        $"{(duty.Why == Duty.NothingSaid && duty.NeedJ > 0 ? EditBrief.WithoutWhy : duty.Why.TrimEnd('.'))}"
        + (plusMinus > 0 ? $"; typed as limits of ±{Display.Significant(plusMinus, 4)} {unit.Symbol}, which is ±{Display.Significant(plusMinus / Math.Sqrt(3), 2)} {unit.Symbol} as one standard doubt" : ""));

    /// <summary>The work of a brief, with its doubts.</summary>
    internal static WorkPlan Plan(Brief brief)
    {
        var duty = brief.Work;
        return new(duty.TargetC, brief.AirC, duty.EveryS, duty.ForS, duty.FirstAfterS, BriefPlan.TakesHeatAboveC(brief),
            Contact(brief, Stated(duty, duty.ContactPlusMinus, Units.WattPerKelvin)),
            Estimate.Within(duty.NeedJ, duty.NeedPlusMinusJ, Units.Joule, "brief: heat of one piece", CauseGroup.Assumption, Stated(duty, duty.NeedPlusMinusJ, Units.Joule)))
        {
            Blocks = BriefPlan.Blocks(duty),
            TimesRecovery = BriefPlan.TimesRecovery(brief),
            AimAboveK = duty.AimAboveK ?? PlantBuilder.UsualAimAboveK,
            AtMostS = BriefPlan.AtMostS(brief),
            MostPieces = BriefPlan.MostPieces(brief),
        };
    }

    /// <summary>What the runs of one arrangement came to, before they are held against the brief.</summary>
    private sealed record Foreseen(Arrangement Arrangement, Prediction? Prediction, SafetyFindings Safety, IReadOnlyList<Problem> Problems);
}
