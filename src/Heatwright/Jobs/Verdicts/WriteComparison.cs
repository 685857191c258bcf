using System.Text;
using Heatwright.Quantities;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>Writes a comparison as the file's ending asks.</summary>
public static class WriteComparison
{
    /// <summary>The path that was written, or why not.</summary>
    public static Checked<string> To(string path, Comparison comparison)
    {
        string? text = Path.GetExtension(path).ToLowerInvariant() switch
        {
            ".md" => ComparisonText.Markdown(comparison),
            ".csv" => ComparisonText.Csv(comparison),
            ".svg" => ComparisonPicture.Svg(comparison),
            _ => null,
        };
        if (text is null)
        {
            return new(new Problem("A comparison cannot be written as that.", "--to", path, "a name that ends in .md, .csv or .svg", "Give another ending."));
        }

        try
        {
            string draft = path + ".draft";
            File.WriteAllText(draft, text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
            File.Move(draft, path, overwrite: true);
            return new(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The comparison could not be written.", path, error.Message, "a place that may be written to", "Choose another place."));
        }
    }
}
