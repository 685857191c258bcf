using System.Text;
using Heatwright.Quantities;
using Heatwright.Report;

namespace Heatwright.Jobs.BuildSheets;

/// <summary>Writes a build sheet as a folder: the page to print, code, parts list, drawing.</summary>
public static class WriteBuildSheet
{
    /// <summary>Name of the page in the folder.</summary>
    public const string PageName = "build-sheet.html";

    /// <summary>Writes all files; never over something that is there. Tells the files, the page first.</summary>
    /// <param name="folder">A folder that is not there yet, or is empty.</param>
    /// <param name="made">The sheet.</param>
    public static Checked<IReadOnlyList<string>> To(string folder, MadeSheet made)
    {
        try
        {
            if (File.Exists(folder) || (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any()))
            {
                return new(new Problem("The folder of the build sheet holds something already.", folder, "not empty", "a folder that is not there yet, or is empty", "Choose another with --out, or move the old one away: it is not written over."));
            }

            List<string> written = [];
            foreach (var (name, text) in made.Files.Select(file => (file.Name, file.Text)).Prepend((PageName, SheetHtml.Write(made))))
            {
                string path = Path.Combine(folder, name.Replace('/', Path.DirectorySeparatorChar));
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                File.WriteAllBytes(path, Encoding.UTF8.GetBytes(text));
                written.Add(Path.GetFullPath(path));
            }

            return new(written);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The build sheet cannot be written.", folder, error.Message, "a place that may be written to, with room", "Choose another place with --out."));
        }
    }
}
