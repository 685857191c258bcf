using System.Text.RegularExpressions;
using Heatwright.Jobs;
using Heatwright.StudyFile;

namespace Heatwright.Tests.Report;

/// <summary>Both samples, worked out and reported once for all tests that read them.</summary>
internal static partial class WrittenReports
{
    private static readonly Lazy<(StudyResult Result, string Html)> knife = new(() => Written("rope-hot-knife"));
    private static readonly Lazy<(StudyResult Result, string Html)> logs = new(() => Written("measured-logs"));

    /// <summary>The sample with a brief and arrangements.</summary>
    public static (StudyResult Result, string Html) Knife => knife.Value;

    /// <summary>The sample of two measured cells, without brief.</summary>
    public static (StudyResult Result, string Html) Logs => logs.Value;

    /// <summary>Without vendored code and its licence, which nobody here wrote.</summary>
    public static string Own(string html)
    {
        string own = html;
        foreach (string name in new[] { "plotly-basic.min.js", "plotly-basic.LICENSE" })
        {
            using var stream = typeof(Heatwright.Report.ReportHtml).Assembly.GetManifestResourceStream("web/vendor/" + name)!;
            using var reader = new StreamReader(stream);
            string text = reader.ReadToEnd().ReplaceLineEndings("\n");
            Assert.Contains(text, own, StringComparison.Ordinal);
            own = own.Replace(text, "", StringComparison.Ordinal);
        }

        return own;
    }

    /// <summary>What a reader sees of a piece of HTML.</summary>
    public static string Seen(string html) => System.Net.WebUtility.HtmlDecode(Tag().Replace(html, ""));

    private static (StudyResult Result, string Html) Written(string sample)
    {
        var study = Bundle.Read(Path.Combine(Repository.Root, "samples", sample)).Value;
        var result = RunStudy.Run(study, "0123456789abcdef", cancel: TestContext.Current.CancellationToken);
        return (result, Heatwright.Report.ReportHtml.Write(result));
    }

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();
}
