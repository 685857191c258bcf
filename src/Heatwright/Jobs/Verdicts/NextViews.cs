using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>One trial that could be done next.</summary>
public sealed record NextTrialView(string Trial, string Part, double Minutes, double WaitMinutes, string Stage, string Risk, double Drop, double DropIfPerfect, double DropAMinute);

/// <summary>One step of an evening.</summary>
public sealed record EveningStepView(string Trial, double StartMinute, double EndMinute, double WaitMinutes);

/// <summary>What to measure next, as machines read it.</summary>
public sealed record NextView(
    string Choice, double? WrongNow, bool StopMeasuring, string Advice, IReadOnlyList<NextTrialView> Trials, IReadOnlyList<EveningStepView> Evening, double? WrongAfterEvening, IReadOnlyList<string> LeftOut)
{
    /// <summary>The view of the advice.</summary>
    public static NextView Of(NextReadings next) => new(next.Choice, Finite(next.WrongNow), next.StopMeasuring, next.Advice,
        [.. next.Trials.Select(trial => new NextTrialView(trial.Plan.Words, trial.Part, trial.Plan.HandsMinutes, trial.Plan.WaitMinutes, StageWord(trial.Plan.Stage), trial.Plan.Risk, trial.Drop, trial.DropIfPerfect, trial.DropAMinute))],
        [.. next.Evening.Select(step => new EveningStepView(step.Trial.Words, step.StartMinute, step.EndMinute, step.Trial.Plan.WaitMinutes))], Finite(next.WrongAfter), next.LeftOut);

    internal static string StageWord(TrialStage stage) => stage switch
    {
        TrialStage.Cold => "cold",
        TrialStage.Loaded => "loaded",
        TrialStage.Hot => "hot",
        _ => "risky",
    };

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
