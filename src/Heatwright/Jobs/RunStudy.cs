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

    /// <summary>An arrangement more, a tool, a decision, a reading of the prototype or a note asks for no other prediction and no other verdict.</summary>
    private static readonly Remembered<ArrangementVerdict> Predicted = new(24);

    /// <summary>All verdicts of a study together: as long as they are the same ones, what was asked of them is too.</summary>
    private static readonly Remembered<IReadOnlyList<ArrangementVerdict>> Together = new(4);

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
        return new(study, fingerprint, shelf, findings, study.Brief is { } brief ? Verdicts(study, brief, shelf, progress, cancel) : new List<ArrangementVerdict>())
        {
            Tools = study.Brief is { } asked ? [.. study.Tools.Select(tool => ToolVerdict.Of(asked, tool))] : [],
        };
    }

    /// <summary>The verdicts, each made where nothing that it rests on was met before.</summary>
    private static IReadOnlyList<ArrangementVerdict> Verdicts(Study study, Brief brief, Shelf shelf, Action<string>? progress, CancellationToken cancel)
    {
        string bench = Hash(new { brief, study.Parts, study.Trials, study.Instruments, study.Seed });
        return Together.Of($"{bench} {Hash(study.Arrangements)}", () =>
        {
            List<ArrangementVerdict> verdicts = [];
            foreach (var arrangement in study.Arrangements)
            {
                progress?.Invoke(study.Arrangements.Count == 1 ? $"Working out arrangement {arrangement.Letter}, {arrangement.Name}"
                    : FormattableString.Invariant($"Working out {study.Arrangements.Count} arrangements: {arrangement.Letter}, {arrangement.Name}"));
                string rests = $"{bench} {Hash(arrangement)}";
                verdicts.Add(Predicted.Of(rests, () => One(brief, shelf, arrangement, study.Seed, new StudyState(bench), cancel)));
            }

            return verdicts;
        });
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
    internal static ArrangementVerdict One(Brief brief, Shelf shelf, Arrangement arrangement, ulong seed, StudyState state, CancellationToken cancel, DrawRounds? draws = null, Action<int>? progress = null)
    {
        var built = PlantBuilder.For(arrangement, shelf, Plan(brief));
        var prediction = built.IsFine ? Predict.Charge(built.Value, arrangement, seed, draws ?? Settling.For(brief, arrangement), progress, cancel) : null;
        var safety = SafetyCheck.WithFaults(arrangement, shelf, built.IsFine ? built.Value : null, prediction?.MiddleOutcome.HighestA ?? double.NaN, cancel);
        return Judge.Of(brief, shelf, arrangement, safety, prediction, built.Problems, seed, state, cancel);
    }

    /// <summary>How well the work takes its heat: as the brief states it; where it states a heat and no contact, as is usual.</summary>
    private static Estimate Contact(Brief brief, Origin stated)
    {
        const string cause = "brief: contact of the work";
        var duty = brief.Work;
        return BriefPlan.UsualContactWPerK(brief) is { } usual
            ? Estimate.Within(usual, usual / 2, Units.WattPerKelvin, cause, CauseGroup.Assumption, new Origin.Assumed("not stated: so that a piece takes its heat in half of its time, a third to all of it; state it with 'contact' in the brief"))
            : Estimate.Within(duty.Contact, duty.ContactPlusMinus, Units.WattPerKelvin, cause, CauseGroup.Assumption, stated);
    }

    /// <summary>Where a figure of the work comes from, and which limits were typed.</summary>
    private static Origin.Assumed Stated(Duty duty, double plusMinus, Unit unit) => new(
        $"{(duty.Why == Duty.NothingSaid && duty.NeedJ > 0 ? EditBrief.WithoutWhy : duty.Why.TrimEnd('.'))}"
        + (plusMinus > 0 ? $"; {EditBrief.Limits(plusMinus, unit)}" : ""));

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
}
