using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>One trial that could be done next.</summary>
/// <param name="Trial">What to do.</param>
/// <param name="Part">Name of the part; empty: the work.</param>
/// <param name="Minutes">Minutes of hands on.</param>
/// <param name="WaitMinutes">Minutes that it then stands by itself.</param>
/// <param name="Stage">cold, loaded, hot or risky.</param>
/// <param name="Risk">What it risks; empty: nothing.</param>
/// <param name="Drop">Expected drop of the chance of choosing wrong.</param>
/// <param name="DropIfPerfect">The same if it told the numbers exactly.</param>
/// <param name="DropAMinute">Drop for each minute of hands on.</param>
public sealed record NextTrialView(string Trial, string Part, double Minutes, double WaitMinutes, string Stage, string Risk, double Drop, double DropIfPerfect, double DropAMinute);

/// <summary>One step of an evening.</summary>
/// <param name="Trial">What to do.</param>
/// <param name="StartMinute">Minutes from the beginning of the evening.</param>
/// <param name="EndMinute">Minutes from the beginning of the evening.</param>
/// <param name="WaitMinutes">Minutes that it then stands by itself.</param>
public sealed record EveningStepView(string Trial, double StartMinute, double EndMinute, double WaitMinutes);

/// <summary>What to measure next, as machines read it.</summary>
/// <param name="Choice">Name of the arrangement that would be chosen now; empty: none can be.</param>
/// <param name="WrongNow">Chance of choosing wrong now, 0 to 1; absent: not known.</param>
/// <param name="StopMeasuring">True: it is time to build.</param>
/// <param name="Advice">What to do.</param>
/// <param name="Trials">Trials that could be done, most worth a minute first.</param>
/// <param name="Evening">The order for the minutes that were said.</param>
/// <param name="WrongAfterEvening">Expected chance of choosing wrong after that; absent: not known.</param>
/// <param name="LeftOut">Arrangements that cannot be predicted yet, with the reading that would change that.</param>
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
