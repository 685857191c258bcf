namespace Heatwright.Report;

/// <summary>The report of a study as one HTML text that needs no program and no network.</summary>
public static class ReportHtml
{
    /// <summary>The report.</summary>
    public static string Write(Jobs.StudyResult result) => $"<!doctype html><title>{System.Net.WebUtility.HtmlEncode(result.Study.Name)}</title>";
}
