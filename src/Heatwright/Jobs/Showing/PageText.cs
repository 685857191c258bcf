using System.Text;
using Heatwright.Quantities;
using Heatwright.Report;

namespace Heatwright.Jobs.Showing;

/// <summary>The first page of a report as text that can be pasted: a table and sentences in Markdown.</summary>
public static class PageText
{
    /// <summary>The page, or why there is none.</summary>
    public static Checked<string> Markdown(StudyResult result, ReportAsk ask) => FirstPage.Of(result, ask).Map(page =>
    {
        var verdict = page.Verdict;
        var text = new StringBuilder();
        Line($"**{result.Study.Name}**{(ask.On.Length > 0 ? $", {ask.On}" : "")}");
        Line(result.Study.Brief!.Promise);
        if (result.Study.Invented)
        {
            Line("*Invented readings, for demonstration: nothing here says anything about a real part.*");
        }

        if (page.Card is { FirstLine.Length: > 0 } card)
        {
            Line($"**{card.FirstLine}**");
        }

        if (page.Missed.Length > 0)
        {
            Line($"**{page.Missed}**");
        }

        if (page.Apart.Length > 0)
        {
            Line($"**{page.Apart}**");
        }

        Line($"{verdict.Arrangement.Letter}, {verdict.Arrangement.Name}: **{ComparisonText.Word(verdict.Word)}**. {Web.Say.Sentence(page.Because)}".TrimEnd());
        text.Append("| requirement | result | margin | kept in | how tested |\n| --- | --- | --- | --- | --- |\n");
        foreach (var row in page.Rows)
        {
            text.AppendJoin("", ((string[])[$"{row.Asked}{(row.Limit.Length > 0 ? " " + row.Limit : "")}{(row.Line.Requirement.Must ? "" : " (want)")}", row.Result, row.Margin, $"{row.Chance}, {ComparisonText.Word(row.Word)}", row.Tested]).Select(cell => $"| {ComparisonText.Bar(cell)} ")).Append("|\n");
        }

        text.Append('\n');
        if (page.OnlyWith.Count > 0)
        {
            Line($"Only with: {string.Join(" ", page.OnlyWith.Select(Web.Say.Sentence))}");
        }

        if (page.Tests.Count > 0)
        {
            Line($"Bench tests: {string.Join("; ", page.Tests)}.");
        }

        Line("± is one standard doubt. Lithium cells, hot surfaces, fumes and charging can hurt: follow sheets and local codes.");
        return text.ToString();

        void Line(string words) => text.Append(words).Append("\n\n");
    });
}
