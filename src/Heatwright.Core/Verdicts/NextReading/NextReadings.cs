using Heatwright.Arrangements;
using Heatwright.Numerics;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Verdicts;

/// <summary>A trial of one part that could be done next.</summary>
/// <param name="Plan">The trial.</param>
/// <param name="Part">Name of the part; empty: the work.</param>
/// <param name="Drop">Expected drop of the chance of choosing wrong, with the trial's real precision.</param>
/// <param name="DropIfPerfect">The same if it told the numbers exactly.</param>
public sealed record NextTrial(TrialPlan Plan, string Part, double Drop, double DropIfPerfect)
{
    /// <summary>Drop a minute of hands on.</summary>
    public double DropAMinute => Drop / Plan.HandsMinutes;

    /// <summary>As a maker says it.</summary>
    public string Words => Part.Length > 0 ? $"{Plan.Words}, {Part}" : Plan.Words;
}

/// <summary>A trial of an evening with its clock.</summary>
/// <param name="Trial">What to do.</param>
/// <param name="StartMinute">Hands on from here.</param>
/// <param name="EndMinute">Hands off here; rest or cooling of the part goes on while the next is done.</param>
public sealed record EveningStep(NextTrial Trial, double StartMinute, double EndMinute);

/// <summary>What to measure next, and when to stop.</summary>
/// <param name="Choice">Letter of the arrangement that is best now; empty: building none.</param>
/// <param name="WrongNow">Chance that this is the wrong choice.</param>
/// <param name="StopMeasuring">True: no reading here is worth its minutes.</param>
/// <param name="Advice">In a sentence.</param>
/// <param name="Trials">Every trial the shelf allows, best a minute first.</param>
/// <param name="Evening">The order for the minutes asked for; empty: none asked for.</param>
/// <param name="WrongAfter">Expected chance of choosing wrong after that evening.</param>
/// <param name="LeftOut">Arrangements that cannot be predicted yet, with the reading that would change that.</param>
public sealed record NextReadings(
    string Choice, double WrongNow, bool StopMeasuring, string Advice, IReadOnlyList<NextTrial> Trials, IReadOnlyList<EveningStep> Evening, double WrongAfter, IReadOnlyList<string> LeftOut)
{
    /// <summary>Nobody needs to be surer than this.</summary>
    public const double SureEnough = 0.05;

    /// <summary>A smaller drop is chance: with some hundred draws it is one or two of them.</summary>
    public const double WorthWhile = 0.005;

    /// <summary>The advice for a study.</summary>
    /// <param name="verdicts">All arrangements.</param>
    /// <param name="instruments">Instruments at hand.</param>
    /// <param name="seed">The study's seed.</param>
    /// <param name="minutes">Minutes of the evening; 0: no plan wanted.</param>
    public static NextReadings Of(IReadOnlyList<ArrangementVerdict> verdicts, IReadOnlyList<Instrument> instruments, ulong seed, double minutes)
    {
        // Of choices that are as seldom wrong, the one with the better word comes first.
        var known = verdicts.Where(verdict => verdict.Prediction is { Draws.Count: > 0 }).OrderBy(verdict => verdict.Word).ToArray();
        string[] leftOut = [.. verdicts.Except(known).Select(verdict => $"{verdict.Arrangement.Letter} cannot be predicted yet: {string.Join(" ", verdict.Problems.Take(1).Select(problem => $"{problem.What} {problem.Next}"))}")];
        if (known.Length == 0)
        {
            return new("", double.NaN, false, leftOut.Length > 0 ? leftOut[0] : "There is no arrangement to choose: wire one first.", [], [], double.NaN, leftOut);
        }

        int draws = known.Min(verdict => verdict.Prediction!.Draws.Count);
        double[][] keeps = [.. known.Select(verdict => KeepsAll(verdict, draws))];
        double[] none = [.. Enumerable.Range(0, draws).Select(i => keeps.All(row => row[i] == 0) ? 1.0 : 0)];
        var value = new ReadingValue([.. keeps, none]);
        var candidates = Candidates(known, instruments, seed, draws);
        NextTrial[] trials = [.. candidates.Select(one => (One: one, Shown: value.Drop(one.Shown)))
            // Both are estimates from the same draws; whatever they scatter, to know it exactly is worth no less than a reading of it.
            .Select(pair => new NextTrial(pair.One.Plan, pair.One.Part, pair.Shown, Math.Max(pair.Shown, value.Drop(pair.One.True))))
            .OrderByDescending(trial => trial.DropAMinute).ThenByDescending(trial => trial.Drop).ThenBy(trial => trial.Words, StringComparer.Ordinal)];
        string choice = value.Best < known.Length ? known[value.Best].Arrangement.Letter : "";
        bool stop = value.WrongNow <= SureEnough || trials.Length == 0 || trials.Max(trial => trial.Drop) < WorthWhile;
        var evening = minutes > 0 && !stop ? Choose(candidates, trials, value, minutes) : [];
        double after = evening.Count == 0 ? value.WrongNow
            : value.WrongNow - value.Drop([.. evening.SelectMany(step => candidates.First(one => one.Plan == step.Trial.Plan && one.Part == step.Trial.Part).Shown)]);
        string needs = value.Best < known.Length ? Needs(known[value.Best]) : "";
        string unknown = value.Best < known.Length ? NotKnown(known[value.Best], value.WrongNow > SureEnough) : "";
        return new(choice, value.WrongNow, stop, Sentence(choice, value.WrongNow, stop, trials, needs, unknown), trials, evening, after, leftOut);
    }

    /// <summary>What must be there, or known, before it is built; empty: nothing.</summary>
    private static string Needs(ArrangementVerdict verdict) => string.Join("; and ", (string[])
    [
        .. verdict.Safety.Conditions.Select(condition => $"there is {condition.Words} ({condition.Because})"),
        .. verdict.Word == VerdictWord.GoIf ? verdict.Requirements.Where(line => line.Requirement.Must && line.Word == VerdictWord.GoIf && line.Remedy.Length > 0 && line.Probability is not null).Select(line => line.Remedy).Distinct().Take(2) : [],
    ]);

    /// <summary>Musts that nothing tells yet, whatever the draws say, each with what would tell it; where the draws are not sure enough, those that hang on them too. Empty: none.</summary>
    private static string NotKnown(ArrangementVerdict verdict, bool unsure) => string.Join("; and ", verdict.Requirements
        .Where(line => line.Requirement.Must && line.Word == VerdictWord.NeedMoreReadings && (line.Probability is null || unsure) && line.Remedy.Length > 0)
        .Select(line => $"{line.Because}: {line.Remedy}").Distinct());

    private sealed record Candidate(TrialPlan Plan, string Part, double[][] True, double[][] Shown);

    private static string Sentence(string choice, double wrong, bool stop, NextTrial[] trials, string needs, string unknown)
    {
        string best = choice.Length > 0 ? $"{choice} is the best choice{(needs.Length > 0 ? $", once {needs}" : "")}" : "building none of these is the best choice";
        string odds = FormattableString.Invariant($"wrong in {Math.Round(100 * wrong)} of 100 draws");
        if (stop)
        {
            string why = wrong <= SureEnough ? odds : $"{odds}, and no trial here would change much";
            if (choice.Length > 0 && unknown.Length > 0)
            {
                return $"No reading here would change the choice, but not all that {choice} must keep is known: {unknown}. {char.ToUpperInvariant(best[0])}{best[1..]} ({why}).";
            }

            return choice.Length > 0 && needs.Length > 0 ? $"No reading here would change the choice, but do not build it as it stands: {best} ({why})." : $"Stop measuring{(choice.Length > 0 ? ", build it" : "")}: {best} ({why}).{(choice.Length > 0 ? "" : " What would have to be true stands under 'why' of each.")}";
        }

        return FormattableString.Invariant($"Next: {trials[0].Words} ({trials[0].Plan.HandsMinutes:0} min). Now {best}, {odds}; with this reading in about {Math.Round(100 * (wrong - trials[0].Drop))}.");
    }

    /// <summary>Which draws keep every must; lines that no run tells count by their verdict, so that a handle too thin rules a choice out in every draw.</summary>
    private static double[] KeepsAll(ArrangementVerdict verdict, int draws)
    {
        var musts = verdict.Requirements.Where(line => line.Requirement.Must).ToArray();
        bool never = musts.Any(line => line.Word == VerdictWord.NoGo && line.Drawn.Count < draws);
        var drawn = musts.Where(line => line.Drawn.Count == verdict.Prediction!.Draws.Count).ToArray();
        return [.. Enumerable.Range(0, draws).Select(i => !never && drawn.All(line => line.Requirement.AtMost ? line.Drawn[i] <= line.Requirement.Limit : line.Drawn[i] >= line.Requirement.Limit) ? 1.0 : 0)];
    }

    private static Candidate[] Candidates(ArrangementVerdict[] known, IReadOnlyList<Instrument> instruments, ulong seed, int draws)
    {
        double meter = instruments.SelectMany(one => one.Specs).Select(spec => spec.Percent / 100 / Math.Sqrt(3)).DefaultIfEmpty(0).Max();
        var inputs = known.SelectMany(verdict => verdict.Prediction!.Builder.Inputs).Where(input => input.Value.SiDoubt > 0).DistinctBy(input => (input.Key, input.Part, input.Name)).ToArray();
        return [.. inputs.Select(input => (Input: input, Plan: TrialPlan.All.FirstOrDefault(plan => plan.Keys.Contains(input.Key)))).Where(pair => pair.Plan is not null)
            .GroupBy(pair => (pair.Plan, Part: pair.Input.Part?.Name ?? ""))
            .Select(group =>
            {
                double share = Math.Sqrt((group.Key.Plan!.Share * group.Key.Plan.Share) + (meter * meter));
                double[][] real = [.. group.Select(pair => Enumerable.Range(0, draws).Select(i => pair.Input.Value.DrawnSi(new Draw(seed, i))).ToArray())];
                double[][] shown = [.. group.Select((pair, row) => real[row].Select((si, i) => si + (share * Math.Abs(pair.Input.Value.Si) * Scatter(seed, pair.Input.Name, i))).ToArray())];
                return new Candidate(group.Key.Plan, group.First().Input.PartName, real, shown);
            })];
    }

    private static double Scatter(ulong seed, string name, int draw) => new Draw(seed, draw).Of(Cause.Normal($"next reading of {name}", CauseGroup.Trial));

    /// <summary>Takes the trial that gains most a minute on top of those chosen, while the minutes last and it gains at all; then puts them in order.</summary>
    private static List<EveningStep> Choose(Candidate[] candidates, NextTrial[] trials, ReadingValue value, double minutes)
    {
        List<NextTrial> chosen = [];
        double spent = 0, dropped = 0;
        while (true)
        {
            var next = trials.Except(chosen).Where(trial => spent + trial.Plan.HandsMinutes <= minutes)
                .Select(trial => (Trial: trial, Drop: value.Drop(ShownBy([.. chosen, trial])))).OrderByDescending(pair => (pair.Drop - dropped) / pair.Trial.Plan.HandsMinutes).FirstOrDefault();
            if (next.Trial is null || next.Drop - dropped < WorthWhile || value.WrongNow - dropped <= SureEnough)
            {
                return InOrder(chosen);
            }

            chosen.Add(next.Trial);
            spent += next.Trial.Plan.HandsMinutes;
            dropped = next.Drop;
        }

        double[][] ShownBy(IEnumerable<NextTrial> picked) => [.. picked.SelectMany(trial => candidates.First(one => one.Plan == trial.Plan && one.Part == trial.Part).Shown)];
    }

    /// <summary>Cold before hot, risk last; while a part rests or cools, hands go to another.</summary>
    private static List<EveningStep> InOrder(List<NextTrial> chosen)
    {
        List<EveningStep> steps = [];
        var freeAt = new Dictionary<string, double>(StringComparer.Ordinal);
        double clock = 0;
        var open = chosen.OrderBy(trial => trial.Plan.Stage).ThenByDescending(trial => trial.DropAMinute).ToList();
        while (open.Count > 0)
        {
            // Within the stage that is due, the part that is free first.
            var stage = open.Min(trial => trial.Plan.Stage);
            var next = open.Where(trial => trial.Plan.Stage == stage).MinBy(trial => Math.Max(clock, freeAt.GetValueOrDefault(trial.Part)))!;
            double start = Math.Max(clock, freeAt.GetValueOrDefault(next.Part));
            clock = start + next.Plan.HandsMinutes;
            freeAt[next.Part] = clock + next.Plan.WaitMinutes;
            steps.Add(new(next, start, clock));
            open.Remove(next);
        }

        return steps;
    }
}
