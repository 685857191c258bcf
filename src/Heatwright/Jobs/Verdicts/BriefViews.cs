using System.Text.RegularExpressions;
using Heatwright.Arrangements;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>A line of the brief as machines read it.</summary>
/// <param name="Id">Short name of the line.</param>
/// <param name="Sentence">The plain sentence that reads back as this line.</param>
/// <param name="Weight">Weight of a want.</param>
public sealed record PromiseView(string Id, string Sentence, string Quantity, double Limit, string Unit, bool AtMost, bool Must, double Weight, string Condition)
{
    /// <summary>The view of a requirement.</summary>
    public static PromiseView Of(Requirement line, Brief? brief)
    {
        string word = line.Quantity.ToString();
        return new(line.Id, BriefSentence.Say(line, brief), char.ToLowerInvariant(word[0]) + word[1..], line.Limit, line.Unit, line.AtMost, line.Must, line.Weight, line.Condition);
    }
}

/// <summary>What physics alone asks for, for one working end.</summary>
/// <param name="WorkingEnd">Kind of working end.</param>
/// <param name="LeastW">Power below which it cannot be, W.</param>
/// <param name="SurelyW">Power that surely suffices, W; absent: not known yet.</param>
/// <param name="LeastWh">Energy of a charge below which it cannot be, Wh.</param>
/// <param name="SurelyWh">Energy of a charge that surely suffices, Wh; absent: not known yet.</param>
/// <param name="Sentence">The same in words.</param>
/// <param name="RestsOn">What that rests on.</param>
public sealed record FirstAnswerView(string WorkingEnd, double LeastW, double? SurelyW, double LeastWh, double? SurelyWh, string Sentence, IReadOnlyList<string> RestsOn);

/// <summary>The brief of a study with the first answer to it.</summary>
/// <param name="Promise">The promise in one sentence.</param>
/// <param name="TargetC">Temperature at which the tool is ready, °C; absent: no hot work.</param>
/// <param name="AirC">Air around it, °C; absent: no hot work.</param>
/// <param name="Requirements">The lines.</param>
/// <param name="FirstAnswers">What physics alone asks for, for each kind of working end that it could have.</param>
/// <param name="Notes">What to mind.</param>
public sealed record BriefView(string Promise, double? TargetC, double? AirC, IReadOnlyList<PromiseView> Requirements, IReadOnlyList<FirstAnswerView> FirstAnswers, IReadOnlyList<string> Notes)
{
    /// <summary>Blocks of the duty as they are typed; empty: it works all the time.</summary>
    public string Blocks { get; init; } = "";

    /// <summary>The work as it stands, stated or usual, by the names of --set: 'every=60 s'; empty: no hot work.</summary>
    public IReadOnlyList<string> Work { get; init; } = [];
}

/// <summary>Shows the brief, reads sentences into it, and answers at once what physics asks.</summary>
public static class ReadBrief
{
    private static double? Known(double value) => double.IsNaN(value) ? null : value;

    /// <summary>The brief as it stands.</summary>
    public static Checked<BriefView> Of(Study study)
    {
        if (study.Brief is not { } brief)
        {
            return new(new Problem("The study has no brief.", study.Name, "none", "what the tool must do", "Say its warm-up first, for example: heatwright brief FILE --add 'blade at 320 °C within 25 s from 20 °C'; of a lamp, its light: --add 'full light for 5 h'."));
        }

        var findings = RunStudy.Findings(study);
        var shelf = new Shelf(study.Parts, findings);
        return new(new BriefView(brief.Promise, brief.Duty?.TargetC, brief.AirC, [.. brief.Requirements.Select(line => PromiseView.Of(line, brief))],
            [.. FirstAnswer.Of(brief, study.Parts, shelf).Select(answer => new FirstAnswerView(answer.Heater, answer.LeastW, Known(answer.SurelyW), answer.LeastWh, Known(answer.SurelyWh), answer.Sentence(brief), answer.Rests))],
            [.. Notes(brief)])
        {
            Blocks = BlockWords.Of(brief.Work),
            Work = brief.Duty is null ? [] : [.. EditBrief.Numbers(brief).Where(field => double.IsFinite(field.Value)).Join(EditBrief.Known(brief), field => field.Name, known => known.Name, (_, known) => known).Select(known => known.Name switch
            {
                "contact" when !(brief.Work.Contact > 0) => BriefPlan.UsualContactWPerK(brief) is { } usual ? FormattableString.Invariant($"contact not said (so that a piece has its heat in half of its time: {usual:0.##}W/K)") : "contact not said",
                "above" when brief.Work.AboveC != BriefPlan.TakesHeatAboveC(brief) => FormattableString.Invariant($"above not said (from the air on: {brief.AirC:0.#}C)"),
                _ => $"{known.Name}={known.Now}",
            })],
        });
    }

    /// <summary>What one sentence means, beside the brief that is there.</summary>
    public static Checked<PromiseView> Say(string sentence, Study? study) =>
        Read(sentence, study).Map(said => PromiseView.Of(said.Line, Meant(study?.Brief, said)));

    /// <summary>Puts a sentence into the brief of a study file.</summary>
    public static Checked<PromiseView> Add(string path, string sentence) => StudyBook.Open(path, readOnly: false).Then(book =>
    {
        using (book)
        {
            PromiseView? added = null;
            var change = book.Change($"Brief: {sentence}", study => Read(sentence, study).Then(said => Twice(study, said) is { } twice ? new(twice) : Started(study, said).Map(brief =>
            {
                var next = Meant(brief, said)!;
                added = PromiseView.Of(said.Line, next);
                return study with { Brief = next with { Requirements = [.. next.Requirements, said.Line] } };
            })));
            return change.Map(_ => added!);
        }
    });

    /// <summary>Short name of the line of the same kind that stood there before: an added one has a number behind it; null: it is the only one.</summary>
    /// <param name="added">The line as it was added.</param>
    public static string? Beside(PromiseView added) => char.IsAsciiDigit(added.Id[^1]) && added.Id.LastIndexOf('-') is > 0 and var dash ? added.Id[..dash] : null;

    /// <summary>The same requirement said again, in the same or in other words: a second line of it would count twice.</summary>
    private static Problem? Twice(Study study, SaidRequirement said)
    {
        double Si(Requirement line) => (Units.Find(line.Unit) ?? Units.One).ToSi(line.Limit);
        bool Same(Requirement line) => line.Quantity == said.Line.Quantity && line.AtMost == said.Line.AtMost && Math.Abs(Si(line) - Si(said.Line)) <= 1e-9 * Math.Abs(Si(line))
            && string.Equals(line.Condition, said.Line.Condition, StringComparison.OrdinalIgnoreCase);
        bool elsewhere = said.TargetC is { } target && study.Brief?.Duty is { } duty && Math.Abs(duty.TargetC - target) > 0.05; // as fast, but to another temperature
        if (elsewhere || study.Brief?.Requirements.FirstOrDefault(Same) is not { } there)
        {
            return null;
        }

        string how = there.Must ? "must" : "want";
        var problem = new Problem("The brief says this already.", "sentence", said.Line.Text, $"'{there.Text.TrimEnd('.')}' stands as {there.Id}, a {how}", $"Nothing was added. To say it otherwise, take that line out first: heatwright brief FILE --drop {there.Id}.");
        return problem with { OnPage = problem with { Limit = $"'{there.Text.TrimEnd('.')}' stands there, a {how}", Next = $"Nothing was added. To say it otherwise, take that line out first, with 'Take out' beside it." } };
    }

    /// <summary>A sentence beside the brief that is there: 'band at most 40 °C' means the working end where the brief calls it band.</summary>
    private static Checked<SaidRequirement> Read(string sentence, Study? study)
    {
        var read = BriefSentence.Read(sentence, Ids(study));
        if (read.IsFine || study?.Brief is not { WorkingEnd: { Length: > 0 } end } || end == EditBrief.AnyEnd)
        {
            return read;
        }

        string spoken = Regex.Replace(sentence, $@"\b{Regex.Escape(end)}\b", EditBrief.AnyEnd, RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);
        return spoken != sentence && BriefSentence.Read(spoken, Ids(study)) is { IsFine: true, Value: var said } ? new(said with { Line = said.Line with { Text = sentence.Trim() } }) : read;
    }

    private static string[] Ids(Study? study) => study?.Brief is { } brief ? [.. brief.Requirements.Select(line => line.Id)] : [];

    /// <summary>A brief begins with the temperature that the tool must reach; work is none until it is stated.</summary>
    private static Checked<Brief> Started(Study study, SaidRequirement said) => study.Brief is { } there ? Elsewhere(there, said) is { } elsewhere ? new(elsewhere) : new(there)
        : Meant(null, said) is { } begun ? new(begun)
        : new(new Problem("The study has no brief, and this sentence names no target temperature.", study.Name, said.Line.Text, "a warm-up first, or how long a lamp gives its full light",
            "Say first how hot and how fast, for example 'blade at 320 °C within 25 s from 20 °C', or 'full light for 5 h'."));

    /// <summary>A run time at another temperature than the work has: one prediction cannot tell of both.</summary>
    private static Problem? Elsewhere(Brief brief, SaidRequirement said) => said.Line.Quantity == RequirementQuantity.RunTime && said.TargetC is { } held && brief.Duty is { } duty && double.IsFinite(duty.TargetC) && Math.Abs(duty.TargetC - held) > 0.05
        ? new(FormattableString.Invariant($"The work of this brief is done at {duty.TargetC:0.#} °C."), "sentence", FormattableString.Invariant($"{held:0.#} °C"), FormattableString.Invariant($"{duty.TargetC:0.#} °C, or no temperature"),
            FormattableString.Invariant($"Leave the temperature out, or change that of the work: heatwright brief FILE --set target={held:0.#}C.")) : null;

    /// <summary>What a sentence calls the working end and the piece of work is theirs until another name is stated.</summary>
    private static Brief? Meant(Brief? brief, SaidRequirement said) => Stands(brief, said) is not { } meant ? null : meant with
    {
        WorkingEnd = said.End.Length > 0 && meant.WorkingEnd == EditBrief.AnyEnd ? said.End : meant.WorkingEnd,
        Piece = said.Piece.Length > 0 && meant.Piece == EditBrief.AnyPiece ? said.Piece : meant.Piece,
    };

    private static Brief? Stands(Brief? brief, SaidRequirement said) => brief is null
        ? said.TargetC is not null || said.Line.Quantity == RequirementQuantity.FullLightTime ? EditBrief.Begun(said) : null
        : brief with { AirC = said.AirC ?? brief.AirC, Duty = Paced(said.TargetC is { } target ? (brief.Duty ?? EditBrief.First(target, said.AirC ?? brief.AirC)) with { TargetC = target } : brief.Duty, said) };

    /// <summary>'One every 20 s' is said of the work: a promise and a work of two paces would be two tools.</summary>
    private static Duty? Paced(Duty? duty, SaidRequirement said) => duty is not null && said.EveryS is { } every ? duty with { EveryS = every } : duty;

    private static IEnumerable<string> Notes(Brief brief)
    {
        foreach (var line in brief.Requirements)
        {
            if (BriefSentence.OtherThanSaid(line, brief) is { Length: > 0 } other)
            {
                yield return $"'{line.Text}' is {other}: change the work, or take the sentence out and say it anew.";
            }
        }

        foreach (var line in brief.Requirements.Where(line => line.Condition.Length == 0 && line.Quantity is RequirementQuantity.RunTime or RequirementQuantity.PiecesPerCharge or RequirementQuantity.GripTemperature or RequirementQuantity.WarmUpTime))
        {
            yield return $"'{line.Text}' has no condition: say under what it holds, after a comma, for example ', from full cells, air at 20 °C'.";
        }
    }
}
