using System.Reflection;
using Heatwright.Jobs;
using Heatwright.Web.Frame;

namespace Heatwright.Report;

/// <summary>The report of a study as one HTML text that needs no program and no network.</summary>
public static class ReportHtml
{
    /// <summary>The report. Same result, same text: no clock, no path, no machine stands in it.</summary>
    public static string Write(StudyResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        using var pieces = new Pieces();
        bool compares = result.Verdicts.Count > 0 && result.Study.Brief is not null;
        return Html.Of($"""
            <!doctype html>
            <html lang="en" data-theme="light"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'">
            <title>{result.Study.Name}: report</title>
            <style>{Own("web/look.css")}{Own("report/report.css")}</style></head>
            <body class="report">{pieces.Of<Sprite>()}
            <main>
            {Head(result)}
            {Html.If(compares, () => Html.Of($"{ComparisonPart.Of(result, pieces)}{CurvesPart.Of(result)}{EnergyPart.Of(result)}{Html.Each(result.Verdicts, verdict => ArrangementPart.Of(result, verdict))}"))}
            {FindingsPart.Of(result, pieces)}
            {FitsPart.Of(result)}
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

    private static Html Head(StudyResult result)
    {
        var study = result.Study;
        return Html.Of($"""
            <div class="head"><div><h1>{study.Name}</h1></div></div>
            {Html.If(study.Brief is not null, () => Html.Of($"""<p class="promise">{study.Brief!.Promise}</p>"""))}
            {Html.If(study.Invented, () => new Html("""<div class="remark alone look invented"><span><b class="word"><svg aria-hidden="true"><use href="#r-look"></use></svg>Invented readings</b> The readings of this study are made up for demonstration. No verdict in this report says anything about a real part.</span></div>"""))}
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
