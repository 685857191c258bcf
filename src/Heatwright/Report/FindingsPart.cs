using System.Globalization;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Trials;
using Heatwright.Web;

namespace Heatwright.Report;

/// <summary>Findings beside what was stated, and what was said of single readings.</summary>
internal static class FindingsPart
{
    public static Html Of(StudyResult result, Pieces pieces) => Html.Of($"""
        <section class="piece" id="findings"><header><h2>Findings</h2><span class="aside">what the readings told, beside what was stated of the part</span></header>
        {Html.If(result.Verdicts.Count == 0, () => pieces.Of<Web.Pieces.Origins>())}
        {Html.If(!result.Findings.Any(found => found.Findings.Count > 0), () => new Html("""<p class="empty">No finding yet. A trial with readings gives the first.</p>"""))}
        {Html.Each(result.Findings.Where(found => found.Findings.Count + found.Problems.Count > 0), found => Part(result, found))}</section>
        {Remarks(result)}
        """);

    private static Html Part(StudyResult result, PartFindings found) => Html.Of($"""
        <h3>{result.Shelf[found.Part].Name}</h3>
        {Html.Each(found.Problems, ArrangementPart.Problem)}
        {Html.If(found.Findings.Count > 0, () => Html.Of($"""
            <table class="values"><thead><tr><th scope="col">quantity</th><th scope="col">from readings</th><th scope="col">stated</th><th scope="col">beside each other</th></tr></thead><tbody>
            {Html.Each(found.Findings, finding => Row(result, finding))}
            {(SaidAndRead.LabelPower(result.Shelf[found.Part], found.Find) is { } label ? Label(label) : Html.None)}</tbody></table>
            """))}

        """);

    private static Html Label(SaidAndRead label) => Html.Of($"""
            <tr><th scope="row">{label.Quantity}, by its ohms</th><td>{Origins.Number(label.Read)}</td><td>{Origins.Number(label.Said)}</td><td>{Beside(label.Said, label.Read, label.Quantity)}</td></tr>

            """);

    private static Html Row(StudyResult result, Finding finding)
    {
        var stated = result.Shelf[finding.Part].All(LowerBound.Quantity(finding.Quantity));
        return Html.Of($"""
            <tr><th scope="row">{finding.Quantity}</th><td>{Origins.Number(SaidAndRead.Alike(stated is [var first, ..] ? first : null, finding.Value))}</td><td>{Html.Each(stated, claim => Origins.Number(claim))}</td><td>{Html.Each(stated, claim => Beside(claim, finding.Value, finding.Quantity))}</td></tr>

            """);
    }

    /// <summary>Two apart by more than twice their joint doubt contradict each other.</summary>
    private static Html Beside(Estimate claim, Estimate found, string quantity)
    {
        return SaidAndRead.Of(quantity, claim, found) is not { } pair ? Html.None
            : pair.IsOpen ? Html.Of($"""<span>{pair.Words}</span> """)
            : pair.Agrees ? Html.Of($"""<span class="agrees">agrees with what is {claim.Origin.Word}</span> """)
            : Html.Of($"""<b class="contradicted"><svg aria-hidden="true"><use href="#r-look"></use></svg>contradicted, {pair.Off} against what is {claim.Origin.Word}</b> """);
    }

    private static Html Remarks(StudyResult result)
    {
        Remark[] remarks = [.. result.Findings.SelectMany(found => found.Remarks)];
        var struck = result.Study.Trials.SelectMany(trial => trial.Runs).SelectMany(run => run.Readings.Where(reading => reading.StruckBecause is not null).GroupBy(reading => reading.StruckBecause!, StringComparer.Ordinal).Select(group => (Run: run, Readings: group.ToArray()))).ToArray();
        var told = RemarkLine.Of(remarks.Where(remark => !Struck(result, remark)));
        return Html.If(told.Count + struck.Length > 0, () => Html.Of($"""
            <section class="piece" id="remarks"><header><h2>Readings that do not fit</h2><span class="aside">nothing is erased: what is left out of a fit stays in the study</span></header>
            <table class="remarks"><thead><tr><th scope="col">run</th><th scope="col" class="r">reading</th><th scope="col">remark</th><th scope="col">effect</th></tr></thead><tbody>
            {Html.Each(told, remark => Html.Of($"""<tr><th scope="row">{remark.Run}</th><td class="r">{remark.Readings}</td><td>{Say.Sentence(remark.Words)}</td><td>{remark.Effect}</td></tr>"""))}
            {Html.Each(struck, one => Html.Of($"""<tr><th scope="row">{one.Run.Id.Name}</th><td class="r">{NumberSpans.Told(one.Readings.Select(reading => reading.Number))}</td><td><s>{Raw(one.Readings)}</s> {Say.Sentence(one.Readings[0].StruckBecause!)}</td><td>struck out by the maker</td></tr>"""))}</tbody></table></section>

            """));
    }

    /// <summary>Struck-out readings stand in lines of their own, with what was read.</summary>
    private static bool Struck(StudyResult result, Remark remark) => remark.Reading > 0 && result.Study.Trials.SelectMany(trial => trial.Runs).FirstOrDefault(run => run.Id == remark.Run)?.Readings.FirstOrDefault(reading => reading.Number == remark.Reading)?.StruckBecause is { } because
        && remark.Words == $"struck out: {because}";

    /// <summary>What was read; of many the first and the last, all of them stand with the readings of the run.</summary>
    private static string Raw(Reading[] readings) => readings.Length <= MostShown ? string.Join(" / ", readings.Select(reading => string.Join("; ", reading.Raw))) : $"{string.Join("; ", readings[0].Raw)} … {string.Join("; ", readings[^1].Raw)}";

    private const int MostShown = 3;
}
