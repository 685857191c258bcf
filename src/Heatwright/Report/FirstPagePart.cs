using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Web;

namespace Heatwright.Report;

/// <summary>The first page as it is printed: for a customer or viewer, one sheet of A4 or Letter.</summary>
internal static class FirstPagePart
{
    private const int MostWeak = 6;

    public static Html Of(StudyResult result, FirstPage page, ReportAsk ask)
    {
        var verdict = page.Verdict;
        return Html.Of($"""
            <section class="piece one-page" id="page">
            <div class="head"><div><h1>{result.Study.Name}</h1></div><p>{Dated(ask)}</p></div>
            <p class="promise">{result.Study.Brief!.Promise}</p>
            {ReportHtml.Invented(result)}
            {Html.If(page.Card is { FirstLine.Length: > 0 }, () => Html.Of($"""<div class="problem breaks" role="alert"><b>{page.Card!.FirstLine}</b></div>"""))}
            {Html.If(page.Missed.Length > 0, () => Html.Of($"""<div class="problem breaks" role="alert"><b>{page.Missed}</b></div>"""))}
            {Html.If(page.Apart.Length > 0, () => Html.Of($"""<div class="problem breaks" role="alert"><b>{page.Apart}</b></div>"""))}
            <p class="stand"><span class="letter">{verdict.Arrangement.Letter}</span>{ComparisonPart.Word(verdict.Word)} <span>{verdict.Arrangement.Name}</span></p>
            <p class="because">{Decided(page)} {Say.Sentence(page.Because)}</p>
            <table class="page-rows stack"><thead><tr><th scope="col">requirement</th><th scope="col">result</th><th scope="col">margin</th><th scope="col">kept in</th><th scope="col">how tested</th></tr></thead><tbody>
            {Html.Each(page.Rows, Row)}</tbody></table>
            {Html.If(page.OnlyWith.Count > 0, () => Html.Of($"""<p class="because"><b>Only with:</b> {string.Join(" ", page.OnlyWith.Select(Say.Sentence))}</p>"""))}
            {Html.If(page.Tests.Count > 0, () => Html.Of($"""<p class="note"><b>Bench tests.</b> {string.Join("; ", page.Tests)}.</p>"""))}
            <p class="note"><b>Not tested.</b> {Weak(page)}</p>
            <p class="note"><b>Caution.</b> {Html.Each(verdict.Safety.Cautions.Take(1), words => Html.Of($"{Say.Sentence(words)} "))}The working end burns skin long before it glows. These numbers are guidance for a prototype and replace neither sheets, local codes nor licensed practice.</p>
            <p class="note">± is one standard doubt. State of the study {result.Fingerprint[..Math.Min(12, result.Fingerprint.Length)]}, seed {result.Study.Seed.ToString(System.Globalization.CultureInfo.InvariantCulture)}{(ask.OnePage ? "; the whole report shows readings, fits and where each number comes from" : "; readings, fits and where each number comes from follow")}.</p>
            </section>

            """);
    }

    private static Html Row(PageRow row) => Html.Of($"""
        <tr data-row="{row.Line.Requirement.Id}"><th scope="row">{row.Asked}{Html.If(row.Limit.Length > 0, () => Html.Of($""" <span class="nb">{row.Limit}</span>"""))} · <span class="{(row.Line.Requirement.Must ? "must" : "want")}">{(row.Line.Requirement.Must ? "must" : "want")}</span></th><td class="nb result">{row.Result}</td><td class="nb">{row.Margin}</td><td>{ComparisonPart.Word(row.Word)}<span class="nb">{row.Chance}</span></td><td class="tested">{Say.Sentence(row.Tested)}</td></tr>

        """);

    private static string Dated(ReportAsk ask) => ask.On.Length > 0 ? ask.On : "";

    private static string Decided(FirstPage page) => page.Card is { } card ? $"Decided for on {card.On}: {Say.Sentence(card.Because)}" : "Not decided yet.";

    /// <summary>Numbers that rest on a claim or a guess, in the order in which they went in.</summary>
    private static string Weak(FirstPage page)
    {
        string[] weak = [.. (page.Verdict.Prediction?.Builder.Inputs ?? []).Where(input => input.Value.Origin.Weakest() is Origin.Assumed or Origin.Claimed).Select(input => input.Name).Distinct()];
        string more = weak.Length > MostWeak ? $" and {Say.Number(weak.Length - MostWeak)} more" : "";
        return weak.Length == 0 ? "Every number of the prediction was read or fitted." : $"Assumed or claimed, not read: {string.Join(", ", weak.Take(MostWeak))}{more}. Drops, damp, wear and ageing were not asked.";
    }
}
