using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Verdicts;
using Heatwright.Web;
using Heatwright.Web.Pieces;

namespace Heatwright.Report;

/// <summary>Requirements against arrangements, and the verdict on each arrangement in a sentence.</summary>
internal static class ComparisonPart
{
    public static Html Of(StudyResult result, Pieces pieces) => Html.Of($"""
        <section class="piece" id="comparison"><header><h2>Comparison</h2><span class="aside">same work, same air, {Settling.Taken(result.Verdicts)}; strip: the line is the limit, right of it is kept; dot and bar: value and where 90 of 100 draws lie</span></header>
        {pieces.Of<Web.Pieces.Origins>()}
        <table class="compare stack compare-head" role="table"><colgroup><col class="what">{Html.Each(result.Verdicts, _ => new Html("<col>"))}{Html.Each(result.Tools, _ => new Html("<col>"))}</colgroup>
        <thead role="rowgroup"><tr role="row"><th role="columnheader" scope="col">requirement</th>{Html.Each(result.Verdicts, verdict => Html.Of(
            $"""<th role="columnheader" scope="col"><a class="letter" href="#arrangement-{verdict.Arrangement.Letter}">{verdict.Arrangement.Letter}</a>{Word(verdict.Word)}<small>{verdict.Arrangement.Name}</small></th>"""))}{Html.Each(result.Tools, tool => Html.Of(
            $"""<th role="columnheader" scope="col"><span class="letter">{tool.Tool.Letter}</span>{Html.If(tool.Word is not null, () => Word(tool.Word!.Value))}<small>{tool.Tool.Name}, as read on it</small></th>"""))}</tr></thead>
        <tbody role="rowgroup">
        {Html.Each(Enumerable.Range(0, result.Verdicts[0].Requirements.Count), row => Row(result, row, pieces))}</tbody></table></section>
        {Tools(result)}
        <section class="piece" id="verdicts"><header><h2>Verdicts</h2><span class="aside">the worst word of an arrangement's musts</span></header>
        {Html.Each(result.Verdicts, Sentence)}</section>

        """);

    /// <summary>Mark and word of a verdict.</summary>
    public static Html Word(VerdictWord word) => Html.Of($"""<span class="verdict {Say.Mark(word)}"><svg aria-hidden="true"><use href="#v-{Say.Mark(word)}"></use></svg>{Say.Word(word)}</span>""");

    /// <summary>Letter, word and reason.</summary>
    public static Html Sentence(ArrangementVerdict verdict) => Html.Of($"""
        <div class="stands"><p class="stand"><span class="letter">{verdict.Arrangement.Letter}</span>{Word(verdict.Word)} <span>{verdict.Arrangement.Name}</span></p><p class="because">{Say.Sentence(verdict.Because)}</p></div>

        """);

    /// <summary>Tools that exist, by all that was read on them, asked for or not.</summary>
    private static Html Tools(StudyResult result) => Html.If(result.Tools.Count > 0, () => Html.Of($"""
        <section class="piece" id="tools"><header><h2>Tools that exist</h2><span class="aside">known by their own readings; where none was taken the cell stays empty and nothing is lost by it</span></header>
        {Html.Each(result.Tools, tool => Html.Of($"""<p class="because"><span class="letter">{tool.Tool.Letter}</span> {tool.Tool.Name}: {string.Join("; ", tool.Tool.Readings.Select(EnterTool.Said))}.</p>"""))}</section>
        """));

    private static Html Row(StudyResult result, int row, Pieces pieces)
    {
        var line = result.Verdicts[0].Requirements[row].Requirement;
        return Html.Of($"""
            <tr role="row"><th scope="row" role="rowheader"><b>{Say.Asked(line)}</b> <span class="nb">{Say.LimitBeside(line)}</span><span class="why"><span class="{(line.Must ? "must" : "want")}">{(line.Must ? "must" : "want")}</span>{(line.Condition.Length > 0 ? " · " + line.Condition : "")}</span></th>{Html.Each(result.Verdicts, verdict => Cell(verdict.Arrangement.Letter, verdict.Requirements[row], pieces))}{Html.Each(result.Tools, tool => tool.Lines[row] is { } read ? Cell(tool.Tool.Letter, read, pieces) : Html.Of($"""<td role="cell" data-cell="{tool.Tool.Letter} {line.Id}"></td>"""))}</tr>

            """);
    }

    private static Html Cell(string letter, RequirementVerdict line, Pieces pieces)
    {
        var value = line.Value is { } estimate ? Origins.Number(estimate, scaled: false) : Html.Of($"<b>{line.Shown}</b>");
        string reason = Say.Sentence(line.Because) + (line.Remedy.Length > 0 ? " " + Say.Sentence(line.Remedy) : "");
        return Html.Of($"""
            <td role="cell" data-cell="{letter} {line.Requirement.Id}"><div class="row1"><span class="tag letter">{letter}</span>{pieces.Of<Strip>("Of", line)}</div><div class="why"><div class="said"><span class="odds {Say.Mark(line.Word)}">{Odds(line)}</span>{Word(line.Word)}</div>{value} <span class="margin">{Margin(line)}</span><span class="reason">{reason}</span></div></td>
            """);
    }

    private static string Odds(RequirementVerdict line) => line.Probability is { } probability ? $"{(probability is > 0.99 and < 1 ? "99+" : Say.Number(100 * probability, "0"))} of 100" : "—";

    private static string Margin(RequirementVerdict line) => line.Value is { } value ? FirstPage.Margin(line, line.Margin, value.StandardDoubt) : "";
}
