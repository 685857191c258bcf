using System.Text;
using Heatwright.Jobs.Showing;
using Heatwright.Quantities;
using Heatwright.Report;

namespace Heatwright.Jobs;

/// <summary>Writes the report of a study as one HTML file.</summary>
public static class WriteReport
{
    /// <summary>Writes the file whole or not at all, and tells where it is.</summary>
    /// <param name="path">The report; '.md' at its end: the first page as Markdown.</param>
    /// <param name="result">The study worked out.</param>
    /// <param name="ask">How it is wanted.</param>
    public static Checked<string> To(string path, StudyResult result, ReportAsk ask)
    {
        if (Refused(path) is { } refused)
        {
            return new(refused);
        }

        if (path.EndsWith(".md", StringComparison.OrdinalIgnoreCase))
        {
            return PageText.Markdown(result, ask).Then(text => Whole(path, text));
        }

        // A study of parts only has a report without a first page; a page that was asked for must be there.
        bool isAsked = ask.OnePage || ask.Arrangement.Length > 0;
        return isAsked && FirstPage.Of(result, ask) is { IsFine: false } none ? new(none.Problems) : Whole(path, ReportHtml.Write(result, ask));
    }

    /// <summary>Why a report cannot be written under that name; null: it can.</summary>
    /// <param name="path">As typed.</param>
    public static Problem? Refused(string path) => Path.GetExtension(path).ToUpperInvariant() is ".HTML" or ".HTM" or ".MD" ? null
        : new("A report cannot be written as that.", "--to", path, "a name that ends in .html, or in .md for the first page as Markdown", path.EndsWith(".pdf", StringComparison.OrdinalIgnoreCase) ? "Write it as .html, open it and print it into a PDF from the browser." : "Give another ending.");

    private static Checked<string> Whole(string path, string text)
    {
        string draft = path + ".draft";
        try
        {
            using (var file = File.Create(draft))
            {
                file.Write(Encoding.UTF8.GetBytes(text));
                file.Flush(flushToDisk: true);
            }

            File.Move(draft, path, overwrite: true);
            return new(Path.GetFullPath(path));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The report cannot be written.", path, error.Message, "a folder that may be written to, with room", "Choose another place with --to."));
        }
    }
}
