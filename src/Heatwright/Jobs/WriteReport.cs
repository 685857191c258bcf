using System.Text;
using Heatwright.Quantities;
using Heatwright.Report;

namespace Heatwright.Jobs;

/// <summary>Writes the report of a study as one HTML file.</summary>
public static class WriteReport
{
    /// <summary>Writes the file whole or not at all, and tells where it is.</summary>
    public static Checked<string> To(string path, StudyResult result)
    {
        string draft = path + ".draft";
        try
        {
            using (var file = File.Create(draft))
            {
                file.Write(Encoding.UTF8.GetBytes(ReportHtml.Write(result)));
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
