using System.Globalization;
using Heatwright.Jobs;
using Heatwright.Jobs.Trials;
using Heatwright.Quantities;
using Heatwright.Trials;
using Heatwright.Verdicts;
using Spectre.Console;

namespace Heatwright.Cli;

/// <summary>The result of the main job as a maker reads it in a terminal.</summary>
internal static class StudyTables
{
    public static void Write(Screen screen, StudyResult result)
    {
        screen.Say($"{result.Study.Name}{(result.Study.Invented ? "  (invented readings, for demonstration)" : "")}");
        if (result.Study.Brief is { } brief)
        {
            screen.Say(brief.Promise);
        }

        screen.Say("");
        if (result.Findings.Count > 0)
        {
            Findings(screen, result);
        }

        Remarks(screen, result);
        Untold(screen, result);
        Comparison(screen, result);
        foreach (var verdict in result.Verdicts)
        {
            screen.Say($"{verdict.Arrangement.Letter}  {verdict.Arrangement.Name}: {Word(verdict.Word)}");
            screen.Say($"   {Sentence(verdict.Because)}");
            screen.Say("");
        }

        foreach (var tool in result.Tools)
        {
            screen.Say($"{tool.Tool.Letter}  {tool.Tool.Name}, as read on it: {(tool.Word is { } word ? Word(word) : "no must was read")}");
            foreach (var line in tool.Lines.OfType<RequirementVerdict>())
            {
                screen.Say($"   {line.Requirement.Text}: {line.Shown}, {Word(line.Word)}");
            }

            screen.Say("");
        }

        foreach (string caution in result.Verdicts.SelectMany(verdict => verdict.Safety.Cautions.Select(text => text)).Distinct().Where(text => text.StartsWith("Lithium", StringComparison.Ordinal)))
        {
            screen.Say($"Caution. {caution}");
        }
    }

    /// <summary>What a study lacks before there is anything to judge, and the command that begins it; null: it has all of it.</summary>
    /// <param name="study">The study.</param>
    /// <param name="path">Its file.</param>
    public static string? Lacks(StudyFile.Study study, string path) =>
        study.Brief is null && study.Parts.Count == 0 ? $"The study is empty. Say what the tool must do: heatwright brief {path} --add 'blade at 320 °C within 25 s from 20 °C'; and what lies in the drawer: heatwright part add {path} PART KIND NAME."
        : study.Parts.Count == 0 ? $"The shelf is empty. Next: heatwright part add {path} PART KIND NAME."
        : study.Brief is null ? $"Nothing is asked of the tool yet. Next: heatwright brief {path} --add 'blade at 320 °C within 25 s from 20 °C'."
        : study.Trials.Count == 0 ? $"Nothing was measured yet. Next: 'heatwright trial kinds', then heatwright trial add {path} KIND --on PART."
        : study.Arrangements.Count == 0 ? $"No parts are wired into a tool yet. Next: heatwright arrange {path}, or let 'heatwright search {path}' try them all." : null;

    private static void Findings(Screen screen, StudyResult result)
    {
        var table = Plain("part", "quantity", "found", "claimed");
        foreach (var found in result.Findings)
        {
            var part = result.Shelf[found.Part];
            foreach (var finding in found.Findings)
            {
                string of = found.Findings.Count(one => one.Quantity == finding.Quantity) > 1 && finding.Value.Origin is Origin.Fitted fitted ? $", {string.Join(", ", fitted.Runs)}" : "";
                var claim = part.Best(LowerBound.Quantity(finding.Quantity)) is { } said ? Scaled(said) : null;
                table.AddRow(Safe(part.Name), Safe(finding.Quantity + of), Safe(Display.Rounded(SaidAndRead.Alike(claim, Scaled(finding.Value)))), Safe(claim is not null ? Claim(claim, finding.Value, finding.Quantity) : ""));
            }

            if (SaidAndRead.LabelPower(part, found.Find) is { } label)
            {
                table.AddRow(Safe(part.Name), Safe($"{label.Quantity}, by its ohms"), Safe(Display.Rounded(label.Read)), Safe(Claim(label.Said, label.Read, label.Quantity)));
            }
        }

        screen.Show(table);
        screen.Say("");
    }

    private static string Claim(Estimate claim, Estimate found, string quantity)
    {
        string value = Display.Rounded(claim.Value, 0, claim.Unit) + " " + claim.Origin.Word;
        return SaidAndRead.Of(quantity, claim, found) is { Agrees: false } apart ? $"{value}, contradicted ({apart.Off})" : value;
    }

    private static void Remarks(Screen screen, StudyResult result)
    {
        Remark[] remarks = [.. result.Findings.SelectMany(found => found.Remarks)];
        if (remarks.Length == 0)
        {
            return;
        }

        var table = Plain("run", "reading", "remark");
        foreach (var remark in RemarkLine.Of(remarks))
        {
            table.AddRow(Safe(remark.Run), Safe(remark.Readings), Safe($"{remark.Words} ({remark.Effect})"));
        }

        screen.Show(table);
        screen.Say("");
    }

    /// <summary>Trials whose readings told nothing, each with why.</summary>
    private static void Untold(Screen screen, StudyResult result)
    {
        var silent = result.Study.Trials.Select(trial => (trial.Id, Why: TrialRow.Untold(trial, result.Findings))).Where(one => one.Why is not null).ToArray();
        foreach (var (trial, why) in silent)
        {
            screen.Hang($"{trial}  ", $"told nothing. {why}");
        }

        if (silent.Length > 0)
        {
            screen.Say("");
        }
    }

    private static void Comparison(Screen screen, StudyResult result)
    {
        if (result.Verdicts.Count == 0)
        {
            return;
        }

        var table = Plain(["requirement", .. result.Verdicts.Select(verdict => verdict.Arrangement.Letter)]);
        for (int row = 0; row < result.Verdicts[0].Requirements.Count; row++)
        {
            var line = result.Verdicts[0].Requirements[row].Requirement;
            table.AddRow([Safe($"{line.Text}{(line.Must ? "" : " (want)")}"), .. result.Verdicts.Select(verdict => Safe(Cell(verdict.Requirements[row])))]);
        }

        table.AddRow([Safe("verdict"), .. result.Verdicts.Select(verdict => Safe(Word(verdict.Word)))]);
        screen.Show(table);
        screen.Say("");
    }

    private static string Cell(RequirementVerdict line) =>
        $"{line.Shown}\n{(line.Probability is { } probability ? $"{Odds(probability)} of 100, " : "")}{Word(line.Word)}";

    private static string Odds(double probability) => probability > 0.99 && probability < 1 ? "99+" : Math.Round(100 * probability).ToString(CultureInfo.InvariantCulture);

    private static string Word(VerdictWord word) => word == VerdictWord.NeedMoreReadings ? "need more readings" : ArrangementView.Word(word);

    /// <summary>Small ohms read as milliohms.</summary>
    private static Estimate Scaled(Estimate value) =>
        value.Unit == Units.Ohm && Math.Abs(value.Value) < 0.3 ? value.In(Units.Milliohm) : value.Unit == Units.SquareMetre ? value.In(Units.SquareCentimetre) : value;

    private static Table Plain(params string[] headings)
    {
        var table = new Table { Border = TableBorder.Simple };
        foreach (string heading in headings)
        {
            table.AddColumn(new TableColumn(new Cell(heading)));
        }

        return table;
    }

    private static string Sentence(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static Cell Safe(string text) => new(text);
}
