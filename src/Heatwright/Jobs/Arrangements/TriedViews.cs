using Heatwright.Plant;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>A value that can be tried otherwise, as machines get it.</summary>
/// <param name="Name">Name to type with --set.</param>
/// <param name="Group">Under which heading it stands.</param>
/// <param name="Owner">What it belongs to.</param>
/// <param name="Was">As it is now, in words.</param>
/// <param name="Value">As it is now, in the unit; absent: it is a choice.</param>
/// <param name="Low">Least value to try, in the unit; absent: it is a choice.</param>
/// <param name="High">Largest value to try, in the unit; absent: it is a choice.</param>
/// <param name="Step">Step of a slider, in the unit; absent: it is a choice.</param>
/// <param name="Choices">Words to choose from; absent: it is a number.</param>
public sealed record DialView(string Name, string Words, string Group, string Owner, string Was, string Unit, double? Value, double? Low, double? High, double? Step, string? Origin, IReadOnlyList<string>? Choices)
{
    /// <summary>The view of a dial.</summary>
    public static DialView Of(Dial dial)
    {
        bool number = dial.Kind != DialKind.Choice;
        return new(dial.Name, dial.Words, dial.Group, dial.Owner.ToString().ToLowerInvariant(), dial.Was, dial.Unit.Symbol, number ? dial.Value : null, number ? dial.Low : null, number ? dial.High : null, number ? dial.Step : null,
            dial.Origin?.Weakest().Word, number ? null : [.. dial.Choices.Select(choice => choice.Typed)]);
    }
}

/// <summary>One line of the brief before and after, by the middle run; the odds are there where draws were asked for.</summary>
/// <param name="Name">Short name of the line.</param>
/// <param name="LimitWas">The limit as it is, in the unit.</param>
/// <param name="Limit">The limit as tried, in the unit.</param>
/// <param name="Was">Value as it is, in the unit; absent: not known.</param>
/// <param name="Is">Value as tried, in the unit; absent: not known.</param>
/// <param name="KeptWas">Kept as it is; absent: not known.</param>
/// <param name="Kept">Kept as tried; absent: not known.</param>
/// <param name="ProbabilityWas">Chance that it is kept as it is, 0 to 1; absent: no draws.</param>
/// <param name="Probability">Chance that it is kept as tried, 0 to 1; absent: no draws.</param>
/// <param name="VerdictWas">Verdict as it is; absent: no draws.</param>
/// <param name="Verdict">Verdict as tried; absent: no draws.</param>
public sealed record TriedLineView(string Name, string Text, bool Must, string Unit, bool AtMost, double LimitWas, double Limit, double? Was, double? Is, bool? KeptWas, bool? Kept, double? ProbabilityWas, double? Probability, string? VerdictWas, string? Verdict);

/// <summary>A change that is tried, as machines get it.</summary>
/// <param name="Values">What is tried otherwise.</param>
/// <param name="ChangesArrangement">True: the arrangement would differ.</param>
/// <param name="ChangesBrief">True: the brief would differ.</param>
/// <param name="Lines">Line by line of the brief.</param>
/// <param name="Numbers">Numbers of the middle run and of the loop.</param>
/// <param name="EndedWas">What ends the run as it is; absent: no run.</param>
/// <param name="Ended">What ends it as tried; absent: no run.</param>
/// <param name="NeedsWas">What must be there for safety and is not, as it is.</param>
/// <param name="Needs">The same as tried.</param>
/// <param name="Problems">Why it cannot be run as tried.</param>
/// <param name="Draws">How many draws were taken; 0: none.</param>
/// <param name="VerdictWas">Verdict as it is; absent: no draws.</param>
/// <param name="Verdict">Verdict as tried; absent: no draws.</param>
/// <param name="Because">Why, as tried; absent: no draws.</param>
/// <param name="KeptAs">Letter that it was kept as, or 'brief'; absent: not kept.</param>
public sealed record TriedView(
    string Arrangement, IReadOnlyList<TriedValue> Values, bool ChangesArrangement, bool ChangesBrief, IReadOnlyList<TriedLineView> Lines, IReadOnlyList<TriedNumber> Numbers, string? EndedWas, string? Ended,
    IReadOnlyList<string> NeedsWas, IReadOnlyList<string> Needs, IReadOnlyList<string> Problems, int Draws, string? VerdictWas, string? Verdict, string? Because, string? KeptAs)
{
    /// <summary>The view of a change, with draws where there are any.</summary>
    /// <param name="tried">The change.</param>
    /// <param name="was">Verdict as it stands; null: no draws.</param>
    /// <param name="verdict">Verdict as it is tried; null: no draws.</param>
    /// <param name="keptAs">Letter it was kept as, or 'brief'; null: not kept.</param>
    public static TriedView Of(Tried tried, ArrangementVerdict? was, ArrangementVerdict? verdict, string? keptAs = null)
    {
        var change = tried.Change;
        return new(change.From.Letter, change.Values, change.ChangesArrangement, change.ChangesBrief,
            [.. tried.Was.Lines.Zip(tried.Is.Lines).Select((pair, i) => Line(pair.First, pair.Second, was?.Requirements[i], verdict?.Requirements[i], tried.Is.Study.Brief!))], tried.Numbers(), StopOf(tried.Was.Run), StopOf(tried.Is.Run),
            NeedsOf(tried.Was), NeedsOf(tried.Is), [.. tried.Is.Problems.Select(problem => $"{problem.What} {problem.Next}")], verdict?.Prediction?.Draws.Count ?? 0,
            was is null ? null : ArrangementView.Word(was.Word), verdict is null ? null : ArrangementView.Word(verdict.Word), verdict?.Because, keptAs);
    }

    /// <summary>What a side needs for safety that its parts do not give.</summary>
    public static IReadOnlyList<string> NeedsOf(TriedSide side) => [.. side.Safety.Conditions.Select(condition => condition.Words)];

    private static string? StopOf(PlantRun? run) => run?.Stop.ToString();

    private static TriedLineView Line(MiddleLine was, MiddleLine now, RequirementVerdict? drawnWas, RequirementVerdict? drawn, Brief brief)
    {
        var line = now.Requirement;
        return new(line.Id, line.Text + (BriefSentence.OtherThanSaid(line, brief) is { Length: > 0 } other ? $" ({other})" : ""), line.Must, line.Unit, line.AtMost, was.Requirement.Limit, line.Limit, was.Value, now.Value, was.Kept, now.Kept, drawnWas?.Probability, drawn?.Probability,
            drawnWas is null ? null : ArrangementView.Word(drawnWas.Word), drawn is null ? null : ArrangementView.Word(drawn.Word));
    }
}
