using Heatwright.Quantities;

namespace Heatwright.Jobs.Keeping;

/// <summary>Writes files whole or not at all, never over something that is there.</summary>
internal static class WriteFile
{
    public static Checked<string> New(string path, ReadOnlySpan<byte> content)
    {
        if (Path.Exists(path))
        {
            return new(new Problem("This would replace a file.", path, "the file is there", "a name that is not taken", "Choose another name, or move the file away."));
        }

        string draft = path + ".draft";
        try
        {
            using (var file = File.Create(draft))
            {
                file.Write(content);
                file.Flush(flushToDisk: true);
            }

            File.Move(draft, path, overwrite: false);
            return new(Path.GetFullPath(path));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            Remove(draft);
            return new(new Problem("The file cannot be written.", path, error.Message, "a folder that may be written to, with room", "Choose another place, or free some room."));
        }
    }

    /// <summary>Takes away a draft after a failure; a failure of that must not hide the first one.</summary>
    public static void Remove(string draft)
    {
        try
        {
            File.Delete(draft);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // It stays behind under a name that nobody reads.
        }
    }
}
