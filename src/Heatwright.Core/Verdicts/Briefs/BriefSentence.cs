using System.Globalization;
using System.Text.RegularExpressions;
using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>A requirement as it was read from a sentence, with what the sentence said of the work.</summary>
/// <param name="Line">The requirement.</param>
/// <param name="TargetC">Temperature at which the tool is ready, where the sentence named one.</param>
/// <param name="AirC">Air, where the sentence named it.</param>
public sealed record SaidRequirement(Requirement Line, double? TargetC, double? AirC)
{
    /// <summary>What the sentence calls the working end: blade, wire; empty: it has no name for it.</summary>
    public string End { get; init; } = "";

    /// <summary>What the sentence calls one piece of work: cut, stroke; empty: it names none.</summary>
    public string Piece { get; init; } = "";

    /// <summary>Seconds from piece to piece, where the sentence says 'one every 20 s'.</summary>
    public double? EveryS { get; init; }
}

/// <summary>Plain sentence in, requirement out, and back.</summary>
/// <remarks>'blade at 320 °C within 25 s from 20 °C', '40 cuts on one charge', 'grip at most 43 °C, held longer than 10 min', 'want 2: parts cost at most 30'.
/// What follows the first comma is the condition.</remarks>
public static partial class BriefSentence
{
    /// <summary>Words that stand where a working end is named, and name none.</summary>
    private static readonly string[] NoNames = ["it", "this", "tool", "the tool", "everything"];

    private const string AtLeast = "at least|not less than|no less than|above|over|min|minimum|>=|≥";
    private const string AtMost = "at most|stays at most|not more than|no more than|below|under|up to|within|hotter than|of|in|max|maximum|<=|≤";

    /// <summary>The requirement that a sentence means, or why it means none.</summary>
    /// <param name="sentence">As typed.</param>
    /// <param name="taken">Ids that the brief has already.</param>
    public static Checked<SaidRequirement> Read(string sentence, IReadOnlyCollection<string>? taken = null)
    {
        string text = sentence.Trim().TrimEnd('.').Trim();
        var rank = Rank().Match(text);
        bool must = !rank.Success || rank.Groups["rank"].Value.Equals("must", StringComparison.OrdinalIgnoreCase);
        double weight = rank.Groups["weight"].Success ? double.Parse(rank.Groups["weight"].Value, CultureInfo.InvariantCulture) : 1;
        text = rank.Success ? text[rank.Length..].Trim() : text;
        int comma = text.IndexOf(", ", StringComparison.Ordinal);
        string condition = comma < 0 ? "" : text[(comma + 2)..].Trim();
        string main = comma < 0 ? text : text[..comma].Trim();
        var read = WarmUp(main) ?? RunTime(main) ?? Pieces(main) ?? Plain(main, sentence);
        return read.Map(found => found with
        {
            Line = found.Line with { Id = Free(found.Line.Id, taken ?? []), Text = sentence.Trim(), Must = must, Weight = weight, Condition = Condition(found.Line, condition) },
            EveryS = found.Line.Quantity == RequirementQuantity.PiecesPerCharge ? PaceS(condition) : null,
        });
    }

    /// <summary>Seconds from piece to piece that a condition names, as in 'one every 20 s'; null: none.</summary>
    internal static double? PaceS(string condition) =>
        Pace().Match(condition) is { Success: true } pace && OptionReader.Amount("every", pace.Groups["s"].Value, Expect.Seconds) is { IsFine: true, Value.Si: > 0 } every ? every.Value.Si : null;

    /// <summary>What to say of a promise whose sentence names another pace than the work has; empty: it names none, or the same.</summary>
    private static string OtherPace(Requirement line, Brief brief) =>
        line.Quantity == RequirementQuantity.PiecesPerCharge && brief.Duty is { } duty && PaceS(line.Condition) is { } said && Math.Abs(said - duty.EveryS) > 0.005 * said
            ? string.Create(CultureInfo.InvariantCulture, $"reckoned with one every {duty.EveryS:0.##} s, the pace of the work, and not one every {said:0.##} s, as the sentence says") : "";

    /// <summary>Degrees Celsius that a warm-up begins from by its condition, as in 'from 20 °C'; null: it names none.</summary>
    private static double? StartC(Requirement line) => line.Quantity == RequirementQuantity.WarmUpTime && line.AtMost && StartForm().Match(line.Condition) is { Success: true } start
        ? double.Parse(start.Groups["c"].Value, CultureInfo.InvariantCulture) : null;

    /// <summary>What to say of a warm-up whose sentence begins at another temperature than the air has; empty: it names none, or the same.</summary>
    private static string OtherStart(Requirement line, Brief brief) => StartC(line) is { } said && Math.Abs(said - brief.AirC) > 0.05
        ? $"reckoned from {Number(brief.AirC)} °C, the air, and not from {Number(said)} °C, as the sentence says" : "";

    /// <summary>What to say of a warm-up whose sentence names another target than the work has; empty: it names none, or the same.</summary>
    private static string OtherTarget(Requirement line, Brief brief) =>
        line.Quantity == RequirementQuantity.WarmUpTime && brief.Duty is { } duty && Read(line.Text) is { IsFine: true, Value.TargetC: { } said } && Math.Abs(said - duty.TargetC) > 0.05
            ? $"reckoned to {Number(duty.TargetC)} °C, the target of the work, and not to {Number(said)} °C, as the sentence says" : "";

    /// <summary>What is reckoned otherwise than a line's sentence says, for the work was stated anew since; empty: nothing.</summary>
    public static string OtherThanSaid(Requirement line, Brief brief) => string.Join("; ", new[] { OtherPace(line, brief), OtherTarget(line, brief), OtherStart(line, brief) }.Where(said => said.Length > 0));

    /// <summary>What follows the comma; the temperature of a run time stays beside it.</summary>
    private static string Condition(Requirement line, string behind) =>
        behind.Length == 0 ? line.Condition : line.Quantity == RequirementQuantity.RunTime && line.Condition.Length > 0 ? $"{line.Condition}, {behind}" : behind;

    /// <summary>The sentence that reads back as this requirement.</summary>
    public static string Say(Requirement line, Brief? brief)
    {
        string limit = line.Limit.ToString("0.################", CultureInfo.InvariantCulture);
        string value = $"{limit} {line.Unit}".TrimEnd();
        string rank = line.Must ? "" : line.Weight == 1 ? "want: " : $"want {line.Weight.ToString("0.####", CultureInfo.InvariantCulture)}: ";
        string from = brief is null ? "" : $"from {Number(StartC(line) ?? brief.AirC)} °C";
        string condition = line.Condition.Length > 0 && (brief is null || StartC(line) is null) ? $", {line.Condition}" : "";
        string main = line.Quantity switch
        {
            RequirementQuantity.WarmUpTime when brief is not null && line.AtMost =>
                $"{brief.WorkingEnd} at {Number(brief.Work.TargetC)} °C within {value} {from}",
            RequirementQuantity.WarmUpTime => $"warm-up time {Side(line)} {value}",
            RequirementQuantity.PiecesPerCharge when !line.AtMost => $"{limit} {brief?.Piece ?? "piece"}s on one charge",
            RequirementQuantity.PiecesPerCharge => $"pieces on one charge at most {limit}",
            _ => $"{PromiseWords.All.First(words => words.Quantity == line.Quantity).Phrase} {Side(line)} {(line.Unit == "money" ? limit : value)}",
        };
        return rank + main + condition;
    }

    private static string Side(Requirement line) => line.AtMost ? "at most" : "at least";

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    private static Checked<SaidRequirement>? WarmUp(string main)
    {
        var match = WarmUpForm().Match(main);
        if (!match.Success)
        {
            var bare = WarmUpBare().Match(main);
            return bare.Success ? Value(bare.Groups["s"].Value, Expect.Seconds, "warm-up time", out var only) is { } wrong ? new(wrong) : new(new SaidRequirement(
                new("warm-up", main, RequirementQuantity.WarmUpTime, only!.Value, only.Unit.Symbol, !bare.Groups["side"].Value.Contains("least", StringComparison.OrdinalIgnoreCase), true), null, null)) : null;
        }

        List<Problem> problems = [];
        Take(match.Groups["t"].Value, Expect.Temperature, "temperature", problems, out var target);
        Take(match.Groups["s"].Value, Expect.Seconds, "time", problems, out var time);
        TypedValue.Amount? air = null;
        if (match.Groups["a"].Success)
        {
            Take(match.Groups["a"].Value, Expect.Temperature, "temperature", problems, out air);
        }

        return problems.Count > 0 ? new(problems) : new(new SaidRequirement(
            new("warm-up", main, RequirementQuantity.WarmUpTime, time!.Value, time.Unit.Symbol, AtMost: true, Must: true)
            {
                Condition = air is null ? "" : $"from {Number(air.Si - Units.ZeroCelsiusK)} °C",
            },
            target!.Si - Units.ZeroCelsiusK, air?.Si - Units.ZeroCelsiusK)
        { End = match.Groups["end"].Value is var end && NoNames.Contains(end, StringComparer.OrdinalIgnoreCase) ? "" : end });
    }

    /// <summary>'6 h on one charge' counts hours, not pieces that are called h.</summary>
    private static Checked<SaidRequirement>? RunTime(string main)
    {
        var match = RunTimeForm().Match(main);
        if (!match.Success)
        {
            return null;
        }

        string unit = match.Groups["u"].Value.ToUpperInvariant() switch { ['H', ..] => "h", ['M', ..] => "min", _ => "s" };
        List<Problem> problems = [];
        Take($"{match.Groups["n"].Value} {unit}", Expect.Of(Units.Minute, "run time"), "run time", problems, out var time);
        TypedValue.Amount? held = null;
        if (match.Groups["t"].Success)
        {
            Take(match.Groups["t"].Value, Expect.Temperature, "temperature", problems, out held);
        }

        double? heldC = held is null ? null : Math.Round(held.Si - Units.ZeroCelsiusK, 9);
        return problems.Count > 0 ? new(problems) : new(new SaidRequirement(new("run-time", main, RequirementQuantity.RunTime, time!.Value, time.Unit.Symbol, AtMost: false, Must: true)
        {
            Condition = heldC is { } at ? $"at {Number(at)} °C" : "",
        }, heldC, null));
    }

    private static Checked<SaidRequirement>? Pieces(string main)
    {
        var match = PiecesForm().Match(main);
        if (match.Success)
        {
            double count = double.Parse(match.Groups["n"].Value, CultureInfo.InvariantCulture);
            return new(new SaidRequirement(new("pieces", main, RequirementQuantity.PiecesPerCharge, count, "", AtMost: false, Must: true), null, null) { Piece = match.Groups["piece"].Value.TrimEnd('s') });
        }

        var most = PiecesMost().Match(main);
        return !most.Success ? null : new(new SaidRequirement(
            new("pieces", main, RequirementQuantity.PiecesPerCharge, double.Parse(most.Groups["n"].Value, CultureInfo.InvariantCulture), "", AtMost: true, Must: true), null, null));
    }

    private static Checked<SaidRequirement> Plain(string main, string sentence)
    {
        foreach (var words in PromiseWords.All)
        {
            var match = Regex.Match(main, $"^(?:{Regex.Escape(words.Phrase)}|{words.AlsoSaid})\\s+(?:is\\s+)?(?:(?<least>{AtLeast})\\s*|(?<most>{AtMost})\\s*)?(?<v>\\S.*)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);
            if (!match.Success)
            {
                continue;
            }

            string said = InsideDiameter().Replace(match.Groups["v"].Value, "");
            return Value(said, words.Unit == Units.Money ? Expect.Money : Expect.Of(words.Unit, words.Phrase), words.Phrase, out var amount) is { } wrong ? new(wrong) : new(new SaidRequirement(
                new(words.Phrase.Replace(' ', '-'), main, words.Quantity, amount!.Value, amount.Unit.Symbol, match.Groups["most"].Success || (!match.Groups["least"].Success && words.AtMost), Must: true), null, null));
        }

        string known = string.Join(", ", PromiseWords.All.Select(words => words.Phrase).Order(StringComparer.Ordinal));
        return new(new Problem("The sentence says no requirement that is known.", "sentence", sentence, $"'blade at 320 °C within 25 s', '40 cuts on one charge', or one of: {known}; then 'at most' or 'at least' and a value with its unit",
            "Say it in one of these ways, for example 'grip at most 43 °C, held longer than 10 min'."));
    }

    private static void Take(string typed, Expect expect, string what, List<Problem> problems, out TypedValue.Amount? amount)
    {
        if (Value(typed, expect, what, out amount) is { } wrong)
        {
            problems.Add(wrong);
        }
    }

    private static Problem? Value(string typed, Expect expect, string what, out TypedValue.Amount? amount)
    {
        amount = null;
        switch (TypedValue.Read(typed.Trim(), expect))
        {
            case Answer.Fine { Value: TypedValue.Amount found } when found.Unit.Measures(expect.Bare):
                amount = found;
                return null;
            case Answer.Fine { Value: TypedValue.Amount other }:
                return new($"A {what} is not measured in {other.Unit.Symbol}.", "sentence", typed, $"a unit like {expect.Bare.Symbol}", "Correct the unit.");
            case Answer.Refused refused:
                return refused.Problem with { Where = "sentence" };
            case Answer.Question question:
                return new(question.Asks, "sentence", typed, "one meaning", $"Type one of: {string.Join(", ", question.Choices.Select(choice => choice.Spelling))}.");
            default:
                return new($"The {what} is no single value.", "sentence", typed, $"one number in {expect.Bare.Symbol}", "Type one number with its unit.");
        }
    }

    private static string Free(string id, IReadOnlyCollection<string> taken) =>
        !taken.Contains(id) ? id : Enumerable.Range(2, taken.Count + 1).Select(i => $"{id}-{i.ToString(CultureInfo.InvariantCulture)}").First(next => !taken.Contains(next));

    [GeneratedRegex(@"^(?<rank>must|want|nice)(?:\s+(?<weight>\d+(?:\.\d+)?))?\s*:\s*", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Rank();

    [GeneratedRegex(@"\b(?:one|a piece)\s+every\s+(?<s>[^,]+?)\s*(?:,|$)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Pace();

    [GeneratedRegex(@"^(?:the\s+)?(?<end>[\p{L} -]+?)\s+(?:is\s+)?(?:at|to|reaches|hot\s+at)\s+(?<t>\S.*?)\s+(?:within|in\s+at\s+most|in|after\s+at\s+most)\s+(?<s>\S.*?)(?:\s+of\s+switching\s+on)?(?:\s+from\s+(?<a>\S.*))?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex WarmUpForm();

    [GeneratedRegex(@"^from (?<c>-?\d+(?:\.\d+)?) °C$", RegexOptions.CultureInvariant)]
    private static partial Regex StartForm();

    [GeneratedRegex(@"^(?:warm-?up(?:\s+time)?|hot|ready)\s+(?<side>at\s+most|at\s+least|within|in|under)\s+(?<s>\S.*)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex WarmUpBare();

    [GeneratedRegex(@"^(?:it\s+)?(?:(?:runs?|works?|lasts?|heats?|stays?\s+hot)\s+(?:for\s+)?)?(?:at\s+least\s+)?(?<n>\d[\d.,]*)\s*(?<u>s|seconds?|min|minutes?|h|hrs?|hours?)\s+(?:at\s+(?<t>\S.*?)\s+)?(?:per|on|each|with|from)\s+(?:one\s+|a\s+)?charge$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex RunTimeForm();

    [GeneratedRegex(@"^(?:at\s+least\s+)?(?<n>\d+)(?:\s+times)?(?:\s+an?)?\s+(?<piece>\p{L}+?)(?:\s+in\s+a\s+row)?\s+(?:per|on|each|with)\s+(?:one\s+|a\s+)?charge$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PiecesForm();

    [GeneratedRegex(@"^pieces\s+(?:per|on)\s+(?:one\s+|a\s+)?charge\s+at\s+most\s+(?<n>\d+)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PiecesMost();

    [GeneratedRegex(@"\s+(?:inside\s+diameter|inside|diameter|long|of\s+length|in\s+parts)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex InsideDiameter();
}
