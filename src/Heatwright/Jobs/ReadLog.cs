using System.Text;
using Heatwright.Logs;
using Heatwright.Quantities;

namespace Heatwright.Jobs;

/// <summary>Reads a measurement log, and writes a clean copy of it.</summary>
public static class ReadLog
{
    /// <summary>Larger files are refused: their columns would not fit beside the program.</summary>
    private const long LargestBytes = 2_000_000_000;

    /// <summary>The log as columns, or why the file cannot be opened; what is odd inside it stands in the reading.</summary>
    /// <param name="path">The file.</param>
    /// <param name="remembered">How logs of this instrument were read before, or the answer to a question.</param>
    public static Checked<LogReading> Run(string path, LogMapping? remembered = null)
    {
        try
        {
            long size = new FileInfo(path).Length;
            return size > LargestBytes
                ? new(new Problem("The log is too large to be read at once.", path, $"{size / 1_000_000} MB", $"{LargestBytes / 1_000_000} MB", "Cut it into parts, each with its header."))
                : new(LogReader.Read(File.ReadAllBytes(path), remembered));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The log cannot be opened.", path, error.Message, "a file that may be read", "Check the name and the folder."));
        }
    }

    /// <summary>Writes the clean copy whole or not at all, never over something that is there.</summary>
    public static Checked<string> Copy(LogReading reading, string path)
    {
        if (File.Exists(path))
        {
            return new(new Problem("The clean copy would replace a file.", path, "the file is there", "a name that is not taken", "Choose another name, or move the file away."));
        }

        string draft = path + ".draft";
        try
        {
            using (var file = File.Create(draft))
            {
                file.Write(Encoding.UTF8.GetBytes(reading.ToCsv()));
                file.Flush(flushToDisk: true);
            }

            File.Move(draft, path, overwrite: false);
            return new(Path.GetFullPath(path));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            Keeping.WriteFile.Remove(draft);
            return new(new Problem("The clean copy cannot be written.", path, error.Message, "a folder that may be written to, with room", "Choose another place with --csv."));
        }
    }
}
