using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>Makes decision cards, and tells when later findings contradict one.</summary>
public static class Decide
{
    /// <summary>Two standard doubts: 95 of 100 normal values lie nearer.</summary>
    private const double Apart = 2;

    /// <summary>Limits that keep people and cells whole: they can be carried, not accepted.</summary>
    public static bool IsHard(RequirementQuantity quantity) => quantity is RequirementQuantity.GripTemperature or RequirementQuantity.CaseTemperature or RequirementQuantity.CellTemperature
        or RequirementQuantity.CellCurrent or RequirementQuantity.ProtectionTrips or RequirementQuantity.StuckSwitchTemperature or RequirementQuantity.ChargerHeat;

    /// <summary>The card, or which missed requirement still needs a reason.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="on">Date.</param>
    /// <param name="state">Fingerprint of the study.</param>
    /// <param name="brief">The brief as it stands.</param>
    /// <param name="verdicts">All arrangements.</param>
    /// <param name="letter">Letter or id of the chosen one.</param>
    /// <param name="because">The maker's reason.</param>
    /// <param name="accepted">Missed requirements with reasons.</param>
    public static Checked<DecisionCard> Make(string id, string on, string state, Brief brief, IReadOnlyList<ArrangementVerdict> verdicts, string letter, string because, IReadOnlyList<Accepted> accepted)
    {
        var chosen = verdicts.FirstOrDefault(one => string.Equals(one.Arrangement.Letter, letter, StringComparison.OrdinalIgnoreCase) || one.Arrangement.Id.Name == letter);
        if (chosen is null)
        {
            return new(new Problem("There is no such arrangement.", "decide", letter, string.Join(", ", verdicts.Select(one => one.Arrangement.Letter)), "Choose one of them."));
        }

        var missed = chosen.Requirements.Where(line => line.Requirement.Must && line.Word is VerdictWord.NoGo or VerdictWord.NeedMoreReadings).ToArray();
        List<Problem> problems =
        [
            .. accepted.Where(one => chosen.Requirements.All(line => line.Requirement.Id != one.Requirement)).Select(one => new Problem(
                "The brief has no such requirement.", "--accept", one.Requirement, string.Join(", ", chosen.Requirements.Select(line => line.Requirement.Id)), "Name one of them.")),
            .. accepted.Where(one => chosen.Requirements.Any(line => line.Requirement.Id == one.Requirement && IsHard(line.Requirement.Quantity))).Select(one => new Problem(
                "A hard safety limit cannot be accepted as missed.", $"requirement '{one.Requirement}'", one.Reason, "it is carried on the first line of all that follows", "Leave it out; it stays on the card as it is.")),
            .. accepted.Where(one => string.IsNullOrWhiteSpace(one.Reason)).Select(one => new Problem("A missed requirement is accepted without a reason.", $"requirement '{one.Requirement}'", "none", "a reason", "Say why.")),
            .. missed.Where(line => !IsHard(line.Requirement.Quantity) && accepted.All(one => one.Requirement != line.Requirement.Id)).Select(line => new Problem(
                $"{chosen.Arrangement.Letter} does not surely keep '{line.Requirement.Text.TrimEnd('.')}'.", $"requirement '{line.Requirement.Id}'", line.Because, "kept, or a reason for accepting it",
                $"Choose another arrangement, or add --accept '{line.Requirement.Id}=why it is acceptable'.")),
        ];
        if (problems.Count > 0)
        {
            return new(problems);
        }

        string hard = string.Join("; ", missed.Where(line => IsHard(line.Requirement.Quantity)).Select(line => $"{line.Requirement.Text.TrimEnd('.')}: {line.Because}"));
        string conditions = string.Join("; ", chosen.Safety.Conditions.Select(condition => $"needs {condition.Words} ({condition.Because})"));
        return new(new DecisionCard(id, on, state, chosen.Arrangement.Id, chosen.Arrangement.Name, chosen.Word, because,
            string.Join("; ", new[] { hard.Length > 0 ? $"Not safe as it stands: {hard}" : "", conditions }.Where(text => text.Length > 0)),
            [.. chosen.Requirements.Select(Frozen)],
            [.. verdicts.Where(one => one != chosen).Select(one => new Rejected(one.Arrangement.Id, one.Arrangement.Name, one.Word, one.Word == VerdictWord.Go ? $"it would do too: {one.Because}" : one.Because))],
            accepted, Flips(chosen, brief), [.. chosen.Word == VerdictWord.GoIf ? new[] { chosen.Because } : [], .. chosen.Safety.Cautions],
            [.. (chosen.Prediction?.Builder.Inputs ?? []).Where(input => input.Value.Origin.Weakest() is Origin.Claimed or Origin.Assumed).Select(input => $"{input.Name}: {Display.Rounded(input.Value)} ({input.Value.Origin.Weakest().Word})")],
            brief));
    }

    /// <summary>The brief after a decision: what was accepted is no longer a must, and says since when and why. The earlier brief stays on the card.</summary>
    public static Brief Revised(Brief brief, DecisionCard card) => brief with
    {
        Requirements = [.. brief.Requirements.Select(line => card.Accepted.FirstOrDefault(one => one.Requirement == line.Id) is { } accepted && line.Must
            ? line with { Must = false, Condition = $"{(line.Condition.Length > 0 ? line.Condition + "; " : "")}accepted as missed on {card.On}: {accepted.Reason}" } : line)],
    };

    /// <summary>What later findings say against the card; empty: nothing.</summary>
    public static IReadOnlyList<string> Flags(DecisionCard card, IReadOnlyList<ArrangementVerdict> now)
    {
        var chosen = now.FirstOrDefault(one => one.Arrangement.Id == card.Chosen);
        if (chosen is null)
        {
            return [$"The chosen arrangement '{card.Name}' is no longer in the study."];
        }

        List<string> flags = [];
        foreach (var then in card.Lines.Where(line => card.Accepted.All(one => one.Requirement != line.Requirement)))
        {
            var line = chosen.Requirements.FirstOrDefault(one => one.Requirement.Id == then.Requirement);
            if (line is null)
            {
                flags.Add($"'{then.Text}' is no longer in the brief.");
                continue;
            }

            if (line.Word > then.Word)
            {
                flags.Add($"'{then.Text.TrimEnd('.')}' was {Say(then.Word)} and is now {Say(line.Word)}: {line.Because}.");
            }
            else if (then is { Value: { } before, StandardDoubt: { } doubt } && line.Value is { } value && Math.Abs(value.Value - before) > Apart * Math.Sqrt((doubt * doubt) + (value.StandardDoubt * value.StandardDoubt)) && doubt > 0)
            {
                flags.Add(string.Create(CultureInfo.InvariantCulture, $"'{then.Text.TrimEnd('.')}' was predicted as {Display.Significant(before, 3)} {then.Unit} and is now {Display.Rounded(value)}."));
            }
        }

        flags.AddRange(now.Where(one => one.Arrangement.Id != card.Chosen && one.Word < chosen.Word && card.Rejected.Any(old => old.Arrangement == one.Arrangement.Id && old.Word > one.Word))
            .Select(one => $"{one.Arrangement.Letter}, '{one.Arrangement.Name}', was rejected and now stands better: {Say(one.Word)} against {Say(chosen.Word)}."));
        return flags;
    }

    private static string Say(VerdictWord word) => word switch
    {
        VerdictWord.Go => "go",
        VerdictWord.GoIf => "go-if",
        VerdictWord.NoGo => "no-go",
        _ => "need more readings",
    };

    private static FrozenLine Frozen(RequirementVerdict line) => new(line.Requirement.Id, line.Requirement.Text, line.Word, line.Requirement.Unit, line.Requirement.Limit, line.Value?.Value, line.Value?.StandardDoubt, line.Probability);

    /// <summary>For each must that a run tells, the verdict's own condition, else the nearest number that would turn it and that can be what it would have to be; those that none turns together in one line.</summary>
    private static List<string> Flips(ArrangementVerdict chosen, Brief brief)
    {
        if (chosen.Prediction is not { } prediction)
        {
            return [];
        }

        List<string> flips = [], none = [];
        foreach (var verdict in chosen.Requirements.Where(one => one.Requirement.Must))
        {
            var line = verdict.Requirement;
            if (verdict is { Word: VerdictWord.GoIf, Remedy.Length: > 0 })
            {
                // What the verdict asks for is what turns it: another number beside it would be a second condition.
                flips.Add($"{line.Id}: it holds if {verdict.Remedy}");
            }
            else if (Told.ByRun(line, brief, chosen.Arrangement.Parallel) is { } quantity)
            {
                // Far outside what readings and seller leave open, another part is meant: no finding about this one would say so.
                var flip = WouldHaveToBeTrue.Of(prediction.Builder, line, quantity).FirstOrDefault(one => one.Believable);
                (flip is null ? none : flips).Add(flip is null ? line.Id : $"{line.Id}: {flip.Words}");
            }
        }

        return none.Count > 0 ? [.. flips, $"{string.Join(", ", none)}: no single number, within what is still open of it, would turn {(none.Count == 1 ? "it" : "them")}"] : flips;
    }
}
