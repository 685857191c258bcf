using Microsoft.Data.Sqlite;

namespace Heatwright.StudyFile;

/// <summary>What SQLite and the disk say, told as a problem that a maker can act on.</summary>
internal static class SqliteFaults
{
    // Result codes: https://www.sqlite.org/rescode.html
    private const int Busy = 5, Locked = 6, ReadOnly = 8, InputOutput = 10, Corrupt = 11, Full = 13, CannotOpen = 14, NotADatabase = 26;

    public static bool IsExpected(Exception error) => error is SqliteException { SqliteErrorCode: Busy or Locked or ReadOnly or InputOutput or Corrupt or Full or CannotOpen or NotADatabase }
        or IOException or UnauthorizedAccessException;

    public static OpenProblem Problem(Exception error, string path) => (error as SqliteException)?.SqliteErrorCode switch
    {
        Busy or Locked => new(OpenFault.Locked, "Another program is using the study file.", path, error.Message, "a file that nothing else holds", "Close the other program, or wait for it; then try again. Nothing was changed."),
        Corrupt or NotADatabase => Damaged(path, error.Message),
        _ when Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder && !Directory.Exists(folder) =>
            new(OpenFault.NoAccess, "The folder of the study file is not there.", path, folder, "a folder that is there", "Make it first, with 'mkdir', or name another. Nothing was changed."),
        ReadOnly or CannotOpen => NoAccess(path, error.Message),
        null when error is UnauthorizedAccessException => NoAccess(path, error.Message),
        _ => new(OpenFault.Disk, "The disk does not take or give the study file.", path, error.Message, "a working disk with room", "Free some room or choose another disk; nothing was changed."),
    };

    public static OpenProblem Damaged(string path, string said) =>
        new(OpenFault.Damaged, "The study file is damaged.", path, ProblemList.Short(said), "a whole study file", "See what can be read with 'heatwright examine FILE --rescue COPY', and earlier copies with 'heatwright openings FILE'; this one was not changed.");

    private static OpenProblem NoAccess(string path, string said) =>
        new(OpenFault.NoAccess, "The study file cannot be opened for this.", path, said, "a file and a folder that may be read and written", "Check the permissions, or copy the file to a folder of your own. Nothing was changed.");
}
