namespace Heatwright.StudyFile;

/// <summary>The unfinished file beside the one that is to appear whole.</summary>
internal static class Draft
{
    /// <summary>Takes away a draft after a failure; a failure of that must not hide the first one.</summary>
    public static void Remove(string draft)
    {
        try
        {
            File.Delete(draft);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // It stays behind under a name that nobody reads; the next draft takes its place.
        }
    }
}
