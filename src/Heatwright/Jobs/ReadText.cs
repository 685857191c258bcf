using System.Text;
using Heatwright.Quantities;

namespace Heatwright.Jobs;

/// <summary>Reads a pasted text from a file or from what is piped in.</summary>
public static class ReadText
{
    private const long LargestBytes = 1_000_000;

    /// <summary>The text, or why it cannot be read.</summary>
    public static Checked<string> Of(string path)
    {
        try
        {
            if (path == "-")
            {
                return new(Console.In.ReadToEnd());
            }

            long size = new FileInfo(path).Length;
            return size > LargestBytes
                ? new(new Problem("The text is too large for a listing.", path, $"{size} bytes", $"{LargestBytes} bytes", "Give a file with the seller's text only."))
                : new(File.ReadAllText(path, Encoding.UTF8));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The text cannot be read.", path, error.Message, "a text file", "Check the name and the folder."));
        }
    }
}
