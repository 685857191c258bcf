using System.Reflection;
using Heatwright.Jobs;
using Heatwright.Web.Frame;

namespace Heatwright.Report;

/// <summary>The report of a study as one HTML text that needs no program and no network.</summary>
public static class ReportHtml
{
    /// <summary>The report. Same result and ask, same text: no clock, no path, no machine stands in it.</summary>
    /// <param name="result">The study worked out.</param>
    /// <param name="ask">How it is wanted; null: undated, whole.</param>
    public static string Write(StudyResult result, ReportAsk? ask = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        ask ??= new();
        using var pieces = new Pieces();
        bool compares = result.Verdicts.Count > 0 && result.Study.Brief is not null;
        var page = compares ? FirstPage.Of(result, ask).Value : null;
        if (ask.OnePage && page is not null)
        {
            return Html.Of($"""
                <!doctype html>
                <html lang="en" data-theme="light"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
                <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
                <title>{result.Study.Name}: the page</title>
                <style>{Own("web/look.css")}{Own("report/report.css")}</style></head>
                <body class="report">{pieces.Of<Sprite>()}
                <main>
                {FirstPagePart.Of(result, page, ask)}
                </main>
                </body></html>

                """).Text.ReplaceLineEndings("\n");
        }

        return Html.Of($"""
            <!doctype html>
            <html lang="en" data-theme="light"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'">
            <title>{result.Study.Name}: report</title>
            <style>{Own("web/look.css")}{Own("report/report.css")}</style></head>
            <body class="report">{pieces.Of<Sprite>()}
            <main>
            {Html.If(page is not null, () => FirstPagePart.Of(result, page!, ask))}
            {Head(result, page is not null)}
            {Html.If(compares, () => Html.Of($"{ComparisonPart.Of(result, pieces)}{CurvesPart.Of(result)}{EnergyPart.Of(result)}{Html.Each(result.Verdicts, verdict => ArrangementPart.Of(result, verdict))}"))}
            {FindingsPart.Of(result, pieces)}
            {FitsPart.Of(result)}
            {ReadingsPart.Of(result)}
            {CautionsPart.Of()}
            {UntestedPart.Of(result)}
            </main>
            <noscript><p class="note">Pictures need the script in this file; the numbers behind them do not.</p></noscript>
            <script>{Own("web/vendor/plotly-basic.min.js")}</script>
            <script type="text/plain" id="licence">{Own("web/vendor/plotly-basic.LICENSE")}</script>
            <script>{Own("report/figure.js")}</script>
            </body></html>

            """).Text.ReplaceLineEndings("\n");
    }

    /// <summary>The mark of a study of invented readings; nothing for a real one.</summary>
    internal static Html Invented(StudyResult result) => Html.If(result.Study.Invented, () => new("""<div class="remark alone look invented"><span><b class="word"><svg aria-hidden="true"><use href="#r-look"></use></svg>Invented readings</b> The readings of this study are made up for demonstration. No verdict in this report says anything about a real part.</span></div>"""));

    /// <summary>What heads the whole: where a page stands before it, name and promise are said already.</summary>
    private static Html Head(StudyResult result, bool isPaged)
    {
        var study = result.Study;
        return Html.Of($"""
            {Html.If(!isPaged, () => Html.Of($"""
                <div class="head"><div><h1>{study.Name}</h1></div></div>
                {Html.If(study.Brief is not null, () => Html.Of($"""<p class="promise">{study.Brief!.Promise}</p>"""))}
                {Invented(result)}
                """))}
            {Html.If(study.Note.Length > 0, () => Html.Of($"""<p class="because">{study.Note}</p>"""))}
            <p class="note">{study.Parts.Count} parts, {study.Trials.Count} trials, {study.Arrangements.Count} arrangements. State of the study {result.Fingerprint[..Math.Min(12, result.Fingerprint.Length)]}, seed {study.Seed.ToString(System.Globalization.CultureInfo.InvariantCulture)}.</p>

            """);
    }

    private static Html Own(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name) ?? throw new InvalidOperationException($"'{name}' is not in this build.");
        using var reader = new StreamReader(stream);
        return new(reader.ReadToEnd());
    }
}
