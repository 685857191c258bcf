using System.Globalization;
using System.Text.RegularExpressions;
using Heatwright.Jobs.Showing;
using Heatwright.Quantities;
using Heatwright.Report;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Report;

/// <summary>The page for a customer or viewer: requirement, result, margin, how tested, date.</summary>
public sealed partial class FirstPageTests
{
    private static readonly ReportAsk Asked = new("2026-03-01", "A", OnePage: true);

    private static string Page => ReportHtml.Write(WrittenReports.Knife.Result, Asked);

    [Fact]
    public void Each_requirement_of_the_arrangement_has_its_result_and_its_margin()
    {
        var verdict = WrittenReports.Knife.Result.Verdicts.Single(one => one.Arrangement.Letter == "A");
        string html = Page;
        int margins = 0;
        foreach (var line in verdict.Requirements)
        {
            string row = WrittenReports.Seen(Row(html, line.Requirement.Id));
            Assert.Contains(line.Requirement.Text, row, StringComparison.Ordinal);
            if (line.Value is not { } value)
            {
                Assert.Contains(line.Shown, row, StringComparison.Ordinal);
                continue;
            }

            // The margin by its own definition, in the requirement's unit: limit minus value, or the other way round.
            double margin = line.Requirement.AtMost ? line.Requirement.Limit - value.Value : value.Value - line.Requirement.Limit;
            Assert.Contains(Display.Value(value.Value, value.StandardDoubt), row, StringComparison.Ordinal);
            Assert.Contains((margin >= 0 ? "margin " : line.Requirement.AtMost ? "over by " : "short by ") + Display.Value(Math.Abs(margin), value.StandardDoubt), row, StringComparison.Ordinal);
            margins++;
        }

        Assert.InRange(margins, 5, 20);
        Assert.Contains("2026-03-01", html, StringComparison.Ordinal);
        Assert.Contains("Invented readings", html, StringComparison.Ordinal);
        Assert.Contains("Not decided yet.", WrittenReports.Seen(html), StringComparison.Ordinal);
    }

    /// <summary>A limit that the sentence names, in its unit or a time in whichever, is not said again; another number is.</summary>
    [Theory]
    [InlineData("stamp at 150C in 2 minutes", 2, "min", "")]
    [InlineData("stamp at 150C in 90 seconds", 1.5, "min", "")]
    [InlineData("blade at 320 °C within 25 s from 20 °C", 25, "s", "")]
    [InlineData("blade at 320 °C within 25 s from 20 °C", 30, "s", "≤ 30\u00A0s")] // mended later: the sentence is old
    [InlineData("ready in 20 °C air", 20, "s", "≤ 20\u00A0s")]
    [InlineData("grip at most 43C", 43, "°C", "")]
    [InlineData("mass at most 250 g", 250, "g", "")]
    [InlineData("mass at most 0,25 g", 0.25, "g", "")]
    [InlineData("fits the tube of 25 mm", 25, "s", "≤ 25\u00A0s")]
    [InlineData("30 marks on one charge", 30, "", "")]
    [InlineData("light enough", 250, "g", "≤ 250\u00A0g")]
    public void A_limit_is_said_once(string text, double limit, string unit, string beside) =>
        Assert.Equal(beside, Heatwright.Web.Say.LimitBeside(new("r", text, RequirementQuantity.WarmUpTime, limit, unit, AtMost: true, Must: true)));

    [Fact]
    public void Struck_readings_do_not_count_and_kinds_are_spelled_as_they_are_typed()
    {
        var result = WrittenReports.Knife.Result;
        var cold = result.Study.Trials.First(trial => trial.Kind == Heatwright.Trials.TrialKind.ColdOhms && result.Verdicts[0].Arrangement.Parts().Contains(trial.Part));
        int before = cold.Runs.Sum(run => run.Readings.Count(reading => reading.StruckBecause is null)), struck = cold.Runs.Sum(run => run.Readings.Count) - before;
        Assert.Contains($"cold-ohms ({before} readings{(struck > 0 ? $", {struck} more struck out" : "")})", WrittenReports.Seen(Page), StringComparison.Ordinal);

        // One more struck out: one less counts, and it is told beside.
        var first = cold.Runs[0].Readings.First(reading => reading.StruckBecause is null);
        var run = cold.Runs[0] with { Readings = [.. cold.Runs[0].Readings.Select(reading => reading == first ? reading with { StruckBecause = "typed twice" } : reading)] };
        var less = result with { Study = result.Study with { Trials = [.. result.Study.Trials.Select(trial => trial == cold ? trial with { Runs = [run, .. trial.Runs.Skip(1)] } : trial)] } };
        Assert.Contains($"cold-ohms ({before - 1} reading{(before == 2 ? "" : "s")}, {struck + 1} more struck out)", PageText.Markdown(less, Asked).Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_condition_stands_once()
    {
        var result = WrittenReports.Knife.Result;
        var verdict = result.Verdicts.First(one => one.Safety.Conditions.Count > 0 && one.Word == VerdictWord.GoIf);
        string words = verdict.Safety.Conditions[0].Words;
        string page = PageText.Markdown(result, Asked with { Arrangement = verdict.Arrangement.Letter }).Value;
        Assert.Equal(2, page.Split(words).Length);
    }

    [Fact]
    public void It_counts_the_bench_tests_that_the_opened_number_names()
    {
        var (result, whole) = WrittenReports.Knife;
        string id = result.Verdicts[0].Requirements.First(line => line.Requirement.Quantity == RequirementQuantity.WarmUpTime).Requirement.Id;
        string cell = whole[whole.IndexOf($"data-cell=\"A {id}\"", StringComparison.Ordinal)..];
        string[] named = [.. Trial().Matches(WrittenReports.Seen(cell[..cell.IndexOf("</td>", StringComparison.Ordinal)])).Select(match => match.Groups[1].Value).Distinct()];
        Assert.InRange(named.Length, 5, 20);
        Assert.Contains($"from {named.Length.ToString(CultureInfo.InvariantCulture)} bench tests", WrittenReports.Seen(Row(Page, id)), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_wish_it_is_about_the_one_decided_for_and_else_about_the_one_that_stands_best()
    {
        var result = WrittenReports.Knife.Result;
        Assert.Contains(FirstPage.Of(result, new()).Value.Verdict.Arrangement.Letter, (string[])["A", "D"]); // both are go-if; B is a no-go, C lacks readings
        Assert.Equal("C", FirstPage.Of(Decided("C"), new()).Value.Verdict.Arrangement.Letter);
        Assert.Contains("Decided for on 2026-02-28: The parts are here.", WrittenReports.Seen(ReportHtml.Write(Decided("C"), new("", "", OnePage: true))), StringComparison.Ordinal);
        var refused = FirstPage.Of(result, new("", "Q"));
        Assert.Equal("A, B, C, D", Assert.Single(refused.Problems).Limit);
    }

    [Fact]
    public void What_the_prototype_did_takes_the_place_of_what_was_predicted()
    {
        var line = WrittenReports.Knife.Result.Verdicts[0].Requirements.First(one => one.Requirement.Quantity == RequirementQuantity.WarmUpTime).Requirement;
        var decided = Decided("A");
        var read = decided with { Study = decided.Study with { PrototypeReadings = [new("prototype-1", "decision-1", "2026-03-05", line.Id, 27, 0.5, line.Unit)] } };
        string row = WrittenReports.Seen(Row(ReportHtml.Write(read, new("", "", OnePage: true)), line.Id));
        Assert.Equal(25, line.Limit); // the sample's brief
        Assert.Contains("27.00 ± 0.50\u00A0s", row, StringComparison.Ordinal);
        Assert.Contains("over by 2.00\u00A0s", row, StringComparison.Ordinal); // by hand: 27 − 25
        Assert.Contains("Read on the prototype, 2026-03-05; predicted was", row, StringComparison.Ordinal);

        // What was read is missed, whatever the prediction promised, and the head of the page says so.
        Assert.Contains("missed", row, StringComparison.Ordinal);
        Assert.DoesNotContain("of 100, go", row, StringComparison.Ordinal);
        Assert.Contains($"The prototype misses what was promised. {line.Text}: 27.00 ± 0.50\u00A0s, over by 2.00\u00A0s.", WrittenReports.Seen(ReportHtml.Write(read, new("", "", OnePage: true))), StringComparison.Ordinal);
        Assert.Contains("**The prototype misses what was promised.", PageText.Markdown(read, new("", "", OnePage: true)).Value, StringComparison.Ordinal);

        // Against the prediction as well, by name and how many doubts; by hand: (27 − 20)/√(0.5² + 1²) = 6.26.
        Assert.DoesNotContain("not as predicted", ReportHtml.Write(read, new("", "", OnePage: true)), StringComparison.Ordinal); // this card froze no number
        var frozen = read with { Study = read.Study with { Decisions = [read.Study.Decisions[0] with { Lines = [new(line.Id, line.Text, VerdictWord.Go, "s", 25, 20, 1)] }] } };
        string said = $"The prototype is not as predicted. {line.Id}, 6.3 standard doubts above what was predicted.";
        Assert.Contains(said, WrittenReports.Seen(ReportHtml.Write(frozen, new("", "", OnePage: true))), StringComparison.Ordinal);
        Assert.Contains($"**{said}**", PageText.Markdown(frozen, new("", "", OnePage: true)).Value, StringComparison.Ordinal);
        var kept = decided with { Study = decided.Study with { PrototypeReadings = [new("prototype-1", "decision-1", "2026-03-05", line.Id, 24.8, 0.5, line.Unit)] } };
        Assert.Contains("kept, within the doubt of the reading", WrittenReports.Seen(Row(ReportHtml.Write(kept, new("", "", OnePage: true)), line.Id)), StringComparison.Ordinal);
        Assert.DoesNotContain("misses what", ReportHtml.Write(kept, new("", "", OnePage: true)), StringComparison.Ordinal);
    }

    [Fact]
    public void The_Markdown_says_cell_by_cell_what_the_page_says()
    {
        string text = PageText.Markdown(WrittenReports.Knife.Result, Asked).Value;
        string[] rows = [.. text.Split('\n').Where(line => line.StartsWith("| ", StringComparison.Ordinal)).Skip(2)];
        string html = Page;
        Assert.Equal(WrittenReports.Knife.Result.Verdicts[0].Requirements.Count, rows.Length);
        string[] pageRows = [.. html.Split("data-row=\"").Skip(1).Select(row => WrittenReports.Seen(row[..row.IndexOf("</tr>", StringComparison.Ordinal)]))];
        Assert.All(rows.Zip(pageRows), pair =>
        {
            string[] cells = [.. pair.First.Split('|').Select(cell => cell.Trim())];
            Assert.Equal(7, cells.Length); // an empty one before the first bar and after the last
            Assert.Contains(cells[2], pair.Second, StringComparison.Ordinal);
            Assert.Contains(cells[3], pair.Second, StringComparison.Ordinal);
            Assert.Contains(cells[5][1..], pair.Second, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void The_whole_report_begins_with_it_and_shows_every_reading_as_typed()
    {
        string html = WrittenReports.Knife.Html;
        Assert.True(html.IndexOf("id=\"page\"", StringComparison.Ordinal) < html.IndexOf("id=\"comparison\"", StringComparison.Ordinal));
        string section = WrittenReports.Seen(html[html.IndexOf("id=\"readings\"", StringComparison.Ordinal)..]);
        foreach (string run in (string[])["stick-cold-1", "module-points-1", "round-pulses-1"])
        {
            Assert.Contains(File.ReadAllText(Path.Combine(Repository.Root, "samples", "rope-hot-knife", "runs", run + ".csv")).ReplaceLineEndings("\n").Trim(), section, StringComparison.Ordinal);
        }
    }

    private static Heatwright.Jobs.StudyResult Decided(string letter)
    {
        var result = WrittenReports.Knife.Result;
        var verdict = result.Verdicts.Single(one => one.Arrangement.Letter == letter);
        DecisionCard card = new("decision-1", "2026-02-28", "state", verdict.Arrangement.Id, verdict.Arrangement.Name, verdict.Word, "the parts are here", "", [], [], [], [], [], [], result.Study.Brief!);
        return result with { Study = result.Study with { Decisions = [card] } };
    }

    private static string Row(string html, string id)
    {
        int start = html.IndexOf($"data-row=\"{id}\"", StringComparison.Ordinal);
        Assert.InRange(start, 0, html.Length);
        return html[start..html.IndexOf("</tr>", start, StringComparison.Ordinal)];
    }

    [GeneratedRegex("itted from trial '([^']+)'")]
    private static partial Regex Trial();
}
