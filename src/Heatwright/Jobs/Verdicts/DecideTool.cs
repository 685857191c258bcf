using System.Globalization;
using System.Runtime.CompilerServices;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>A decision card with what later findings say against it.</summary>
/// <param name="Id">Unique in the study.</param>
/// <param name="On">Date, year-month-day.</param>
/// <param name="Chosen">Id of the chosen arrangement.</param>
/// <param name="Because">The maker's reason.</param>
/// <param name="FirstLine">Hard safety limits that are not met; empty: all are.</param>
/// <param name="Lines">The brief with the frozen numbers.</param>
/// <param name="Rejected">What was not chosen.</param>
/// <param name="Accepted">What is missed and accepted.</param>
/// <param name="WouldChangeOurMind">What would turn the choice.</param>
/// <param name="OpenRisks">Risks that stay.</param>
/// <param name="NotTested">What no reading holds up.</param>
/// <param name="State">Fingerprint of the study when it was made.</param>
/// <param name="Flags">What later findings say against it.</param>
/// <param name="Letter">Letter of the chosen arrangement; empty: it is no longer in the study.</param>
public sealed record DecisionView(string Id, string On, string Chosen, string Name, string Verdict, string Because, string FirstLine, IReadOnlyList<FrozenLineView> Lines, IReadOnlyList<RejectedView> Rejected,
    IReadOnlyList<Accepted> Accepted, IReadOnlyList<string> WouldChangeOurMind, IReadOnlyList<string> OpenRisks, IReadOnlyList<string> NotTested, string State, IReadOnlyList<string> Flags, string Letter)
{
    /// <summary>The view of a card.</summary>
    public static DecisionView Of(DecisionCard card, IReadOnlyList<string> flags, Study study) => new(card.Id, card.On, card.Chosen.Name, card.Name, ArrangementView.Word(card.Word), card.Because, card.FirstLine,
        [.. card.Lines.Select(line => new FrozenLineView(line.Requirement, line.Text, ArrangementView.Word(line.Word), line.Value, line.StandardDoubt, line.Unit, line.Limit, line.Probability))],
        [.. card.Rejected.Select(one => new RejectedView(one.Arrangement.Name, one.Name, ArrangementView.Word(one.Word), one.Because))], card.Accepted, card.WouldChangeOurMind, card.OpenRisks, card.NotTested, card.State, flags,
        study.Arrangements.FirstOrDefault(one => one.Id == card.Chosen)?.Letter ?? "");
}

/// <summary>A frozen number.</summary>
public sealed record FrozenLineView(string Requirement, string Text, string Verdict, double? Value, double? StandardDoubt, string Unit, double Limit, double? Probability);

/// <summary>What was not chosen.</summary>
public sealed record RejectedView(string Arrangement, string Name, string Verdict, string Because);

/// <summary>One line of a check as machines read it.</summary>
/// <param name="Promise">Kept, missed or not tested.</param>
/// <param name="Read">What the prototype did, in the unit; absent: not read.</param>
/// <param name="PlusMinus">Standard doubt of what was read, in the unit.</param>
/// <param name="Predicted">The frozen prediction, in the unit; absent: there was none.</param>
/// <param name="PredictedDoubt">Its standard doubt, in the unit.</param>
/// <param name="DoubtsApart">How many joint standard doubts lie between both; absent: nothing to compare.</param>
/// <param name="Above">By how much it lies above a sum that leaves something out, and what that was; empty: nothing to say.</param>
public sealed record CheckLineView(string Requirement, string Text, string Promise, double? Read, double? PlusMinus, double? Predicted, double? PredictedDoubt, string Unit, double? DoubtsApart, string Above);

/// <summary>A prototype beside its frozen prediction.</summary>
/// <param name="Decision">Id of the decision card.</param>
/// <param name="FirstLine">Hard safety limits that are not met; empty: all are.</param>
/// <param name="Lines">Promise by promise.</param>
/// <param name="P">Chance of readings at least so far off if the prediction is right, 0 to 1.</param>
/// <param name="Sentence">What it means.</param>
/// <param name="Culprits">What would explain it, likeliest first.</param>
public sealed record CheckView(string Decision, string FirstLine, IReadOnlyList<CheckLineView> Lines, double P, string Sentence, IReadOnlyList<string> Culprits);

/// <summary>Decides and checks: what is written into the study, and what is shown of it.</summary>
public static class DecideTool
{
    /// <summary>A check seeks the culprit by hundreds of runs; a page that is opened again asks for none.</summary>
    private static readonly ConditionalWeakTable<StudyResult, CheckView> Checks = [];

    /// <summary>The last card of a study with its flags.</summary>
    public static Checked<DecisionView> Last(StudyResult result) => result.Study.Decisions is [.., var card]
        ? new(DecisionView.Of(card, Decide.Flags(card, result.Verdicts), result.Study))
        : new(new Problem("Nothing is decided yet.", result.Study.Name, "none", "a decision card", "Decide, for example: heatwright decide FILE A --because 'fastest, and the parts are here'."));

    /// <summary>Makes a card and freezes it into the study file, with the revised brief beside it.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="result">The study worked out.</param>
    /// <param name="letter">Chosen arrangement.</param>
    /// <param name="because">The reason.</param>
    /// <param name="accept">'ID=reason', each.</param>
    /// <param name="on">Date, year-month-day.</param>
    public static Checked<DecisionView> Make(string path, StudyResult result, string letter, string because, IReadOnlyList<string> accept, string on)
    {
        if (string.IsNullOrWhiteSpace(because))
        {
            return new(new Problem("A decision has no reason.", "decide", "none", "--because 'your reason'", "Say why, so that it can be defended in a year."));
        }

        if (!DateOnly.TryParseExact(on, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
        {
            return new(new Problem("The date cannot be read.", "--on", on, "year-month-day, such as 2026-03-01", "Correct it."));
        }

        var accepted = accept.Select(text => text.Split('=', 2)).Select(pair => new Accepted(pair[0].Trim(), pair.Length > 1 ? pair[1].Trim() : "")).ToArray();
        string id = $"decision-{(result.Study.Decisions.Count + 1).ToString(CultureInfo.InvariantCulture)}";
        return Decide.Make(id, on, result.Fingerprint, result.Study.Brief!, result.Verdicts, letter, because, accepted).Then(card => StudyBook.Open(path, readOnly: false).Then(book =>
        {
            using (book)
            {
                return book.Change($"Decided for {letter}: {because}", study => new Checked<Study>(study with { Decisions = [.. study.Decisions, card], Brief = Decide.Revised(study.Brief!, card) }))
                    .Map(_ => DecisionView.Of(card, [], result.Study));
            }
        }));
    }

    /// <summary>Takes prototype readings in: 'ready=27.1 s ± 0.3', each; all of them, or none where one cannot be read.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="texts">As typed.</param>
    /// <param name="on">Date, year-month-day.</param>
    /// <returns>What was taken for readings that were typed without a doubt, in words.</returns>
    public static Checked<IReadOnlyList<string>> Read(string path, IReadOnlyList<string> texts, string on) => StudyBook.Open(path, readOnly: false).Then(book =>
    {
        using (book)
        {
            List<string> notes = [];
            var changed = book.Change($"Prototype: {string.Join(", ", texts)}", study => study.Decisions is [.., var card]
                ? Typed(study, card, texts, on, notes).Map(readings => study with { PrototypeReadings = [.. study.PrototypeReadings, .. readings] })
                : new(new Problem("Nothing is decided yet, so nothing was predicted to be checked.", study.Name, "none", "a decision card", "Decide first: heatwright decide FILE A --because '...'.")));
            return changed.Map<IReadOnlyList<string>>(_ => notes);
        }
    });

    /// <summary>The prototype beside the frozen prediction of the last decision.</summary>
    public static Checked<CheckView> Check(StudyResult result)
    {
        if (result.Study.Decisions is not [.., var card])
        {
            return new(Last(result).Problems);
        }

        if (result.Verdicts.FirstOrDefault(one => one.Arrangement.Id == card.Chosen)?.Prediction is not { } prediction)
        {
            return new(new Problem("The chosen arrangement can no longer be predicted.", card.Name, card.Chosen.Name, "an arrangement of the study", "Put it back as it was decided."));
        }

        return new(Checks.GetValue(result, _ => Against(card, result.Verdicts.First(one => one.Arrangement.Id == card.Chosen), prediction, result.Study.PrototypeReadings)));
    }

    /// <summary>The last decision's lines beside what was read, without seeking what would explain them; empty: nothing is decided.</summary>
    public static IReadOnlyList<CheckLine> Lines(StudyResult result) => result.Study.Decisions is [.., var card]
        ? PrototypeCheck.Lines(card, Latest(card, result.Study.PrototypeReadings), result.Verdicts.FirstOrDefault(one => one.Arrangement.Id == card.Chosen)?.Requirements) : [];

    /// <summary>How far a reading is from its prediction, by the line's name: 'run-time, 15.6 standard doubts below what was predicted'.</summary>
    public static string Off(CheckLine line) => FormattableString.Invariant($"{line.Requirement}, {Math.Abs(line.Doubts):0.0} standard doubts {(line.Doubts > 0 ? "above" : "below")} what was predicted");

    /// <summary>A later reading of the same line stands for the earlier one, which stays in the study.</summary>
    private static PrototypeReading[] Latest(DecisionCard card, IReadOnlyList<PrototypeReading> all) => [.. all.Where(one => one.Decision == card.Id).Reverse().DistinctBy(one => one.Requirement)];

    private static CheckView Against(DecisionCard card, ArrangementVerdict chosen, Prediction prediction, IReadOnlyList<PrototypeReading> all)
    {
        var check = PrototypeCheck.Of(card, prediction, Latest(card, all), chosen.Requirements);
        return new(card.Id, card.FirstLine, [.. check.Lines.Select(Line)], check.P, Sentence(check), [.. check.Culprits.Select(one => one.Words)]);
    }

    private static CheckLineView Line(CheckLine line) => new(line.Requirement, line.Predicted.Text, line.Promise switch { Kept.Kept => "kept", Kept.Missed => "missed", _ => "not tested" },
        line.Read?.Value, line.Read?.PlusMinus, line.Predicted.Value, line.Predicted.StandardDoubt, line.Predicted.Unit, double.IsFinite(line.Doubts) ? line.Doubts : null, line.Above);

    private static string Sentence(CheckResult check)
    {
        int kept = check.Lines.Count(line => line.Promise == Kept.Kept), missed = check.Lines.Count(line => line.Promise == Kept.Missed), untested = check.Lines.Count(line => line.Promise == Kept.NotTested);
        if (kept + missed == 0)
        {
            // Nothing that was read agrees with everything.
            return FormattableString.Invariant($"nothing of the prototype is read yet; {untested} not tested.");
        }

        string fit = check.P >= PrototypeCheck.Odd ? FormattableString.Invariant($"the readings agree with the prediction (p = {check.P:0.00})")
            : FormattableString.Invariant($"the readings do not agree with the prediction (p = {check.P:0.0000})") + Explained(check);
        return FormattableString.Invariant($"{kept} kept, {missed} missed, {untested} not tested; {fit}.");
    }

    private static string Explained(CheckResult check) => check switch
    {
        { Sought: 0 } => $"; farthest off: {Farthest(check)}",
        { Culprits.Count: 0 } => $"; no single number would explain them; farthest off: {Farthest(check)}",
        { Sought: 1, Culprits: [var only] } => $"; {only.Words}",
        { Sought: 1, Culprits.Count: var all } => FormattableString.Invariant($"; {check.Culprits[0].Words}, and so would {all - 1} other {(all == 2 ? "number" : "numbers")}: one reading cannot tell them apart, another promise read can"),
        _ => $"; {check.Culprits[0].Words}",
    };

    private static string Farthest(CheckResult check) => check.Lines.Where(line => double.IsFinite(line.Doubts)).MaxBy(line => Math.Abs(line.Doubts)) is { } line
        ? FormattableString.Invariant($"{line.Requirement}, by {Math.Abs(line.Doubts):0.0} standard doubts") : "none";

    /// <summary>A reading of the prototype as it may be typed, of the first line of the brief.</summary>
    public static string Example(DecisionCard card) => card.BriefThen.Requirements is [var first, ..] ? Example(first) : "";

    private static string Example(Requirement line) =>
        FormattableString.Invariant($"{line.Id}={line.Limit:0.###}{Behind(line.Unit)} ± {line.Limit * 0.02:0.##}{Behind(line.Unit)}").Replace("± 0 ", "± 0.01 ", StringComparison.Ordinal);

    private static string Behind(string unit) => unit.Length > 0 ? " " + unit : "";

    /// <summary>The line of the brief by its id, by its sentence, or by what everybody calls it where only one line speaks of that.</summary>
    private static Requirement? Called(DecisionCard card, string typed)
    {
        string name = Plain(typed);
        var lines = card.BriefThen.Requirements;
        return lines.FirstOrDefault(one => one.Id == typed.Trim()) ?? lines.FirstOrDefault(one => Plain(one.Id) == name || Plain(one.Text) == name)
            ?? (lines.Where(one => Plain(one.Quantity.ToString()) == name || IsPiece(card.BriefThen, one, name) || (Everyday.TryGetValue(one.Quantity, out string[]? words) && words.Any(word => Plain(word) == name))).ToArray() is [var only] ? only : null);
    }

    /// <summary>The brief's own word for a piece, one or many of it: 'seal' and 'seals'.</summary>
    private static bool IsPiece(Brief brief, Requirement line, string name) => line.Quantity == RequirementQuantity.PiecesPerCharge && brief.Piece.Length > 0 && (name == Plain(brief.Piece) || name == Plain(brief.Piece + "s"));

    private static readonly Dictionary<RequirementQuantity, string[]> Everyday = new()
    {
        [RequirementQuantity.WarmUpTime] = ["ready", "hot", "warm-up"],
        [RequirementQuantity.PiecesPerCharge] = ["pieces"],
        [RequirementQuantity.GripTemperature] = ["grip", "handle"],
        [RequirementQuantity.CellTemperature] = ["cell"],
        [RequirementQuantity.CaseTemperature] = ["case"],
        [RequirementQuantity.InsideDiameter] = ["diameter"],
        [RequirementQuantity.ChargeTime] = ["charge", "charging"],
        [RequirementQuantity.PartsCost] = ["cost", "price"],
        [RequirementQuantity.RunTime] = ["runs", "lasts"],
        [RequirementQuantity.FullLightTime] = ["light", "full light"],
        [RequirementQuantity.Steadiness] = ["steady"],
        [RequirementQuantity.RecoveryTime] = ["recovery", "recovers"],
        [RequirementQuantity.Mass] = ["weight"],
        [RequirementQuantity.ToolLength] = ["length"],
    };

    private static string Plain(string text) => string.Concat(text.Where(char.IsLetterOrDigit)).ToUpperInvariant();

    private static Checked<IReadOnlyList<PrototypeReading>> Typed(Study study, DecisionCard card, IReadOnlyList<string> texts, string on, List<string> notes)
    {
        List<Problem> problems = [];
        List<PrototypeReading> readings = [];
        foreach (string text in texts)
        {
            string[] pair = text.Split('=', 2);
            var line = Called(card, pair[0]);
            if (pair.Length != 2 || line is null)
            {
                problems.Add(new("A prototype reading names no requirement.", "--read", text, $"REQUIREMENT=VALUE ± DOUBT, of: {string.Join(", ", card.BriefThen.Requirements.Select(one => one.Id))}", $"Correct it, for example '{Example(card)}'."));
                continue;
            }

            var unit = Units.Find(line.Unit) ?? Units.One;
            if (TypedValue.Read(pair[1].Trim(), Expect.Of(unit, line.Id)) is not Answer.Fine { Value: TypedValue.Amount amount } || !amount.Unit.Measures(unit))
            {
                problems.Add(new("A prototype reading cannot be read.", $"--read {pair[0]}", pair[1], $"one number in {(line.Unit.Length > 0 ? line.Unit : "pieces")}, with its doubt where it is known", $"Correct it, for example '{Example(line)}'."));
                continue;
            }

            double scale = amount.Unit.Factor / unit.Factor, doubt = amount.PlusMinus * scale / (amount.IsStandard ? 1 : Math.Sqrt(3)), value = unit.FromSi(amount.Si);
            if (doubt == 0 && Usual(amount, unit) is { } usual)
            {
                doubt = usual * scale;
                notes.Add($"{line.Id} {Display.Significant(value, 6)}{Display.Behind(line.Unit)}: no doubt was said, so ± {Display.Significant(doubt, 2)}{Display.Behind(line.Unit)} is taken, {(unit.Measures(Units.Second) ? "its last digit and a hand's two presses of a watch" : "its last digit")}.");
            }

            if (!amount.UnitWasTyped && OtherUnit(card, line, value) is { } slip)
            {
                notes.Add(slip);
            }

            if (doubt > 0)
            {
                readings.Add(new(string.Create(CultureInfo.InvariantCulture, $"prototype-{study.PrototypeReadings.Count + readings.Count + 1}"), card.Id, on, line.Id, value, doubt, line.Unit));
            }
            else
            {
                problems.Add(new("A prototype reading has no doubt.", $"--read {pair[0]}", pair[1], "VALUE ± DOUBT", $"Say how far it may be off, for example '{Example(line)}'."));
            }
        }

        return problems.Count == 0 ? new(readings)
            : new([.. problems.Select(problem => texts.Count == 1 ? problem : problem with { Next = $"{problem.Next} None of the {texts.Count.ToString(CultureInfo.InvariantCulture)} readings is kept yet." })]);
    }

    /// <summary>What to ask of a bare number that is a thousandth, a sixtieth or so of what was predicted, or as many times that: it was read in grams or minutes, and the line counts in others.</summary>
    private static string? OtherUnit(DecisionCard card, Requirement line, double value)
    {
        const double Near = 1.3;
        double told = card.Lines.FirstOrDefault(one => one.Requirement == line.Id)?.Value ?? double.NaN, apart = value > told ? value / told : told / value;
        return new[] { 60.0, 1000, 3600 }.Any(factor => apart > factor / Near && apart < factor * Near)
            ? $"{line.Id} {Display.Significant(value, 6)}{Display.Behind(line.Unit)} beside a prediction of {Display.Significant(told, 4)}{Display.Behind(line.Unit)}: was it read in another unit? Type it again with its unit; the later reading counts." : null;
    }

    /// <summary>Standard doubt of a reading of which nothing was said, in its unit: within its last digit it may be anywhere, and a time was taken by hand. A count is off by no more than its last digit either.</summary>
    private static double? Usual(TypedValue.Amount amount, Unit unit)
    {
        double press = unit.Measures(Units.Second) ? UsualDoubts.Stopwatch("prototype").Combined / amount.Unit.Factor : 0;
        return amount.Step > 0 ? Math.Sqrt((amount.Step * amount.Step / 12) + (press * press)) : null;
    }
}
