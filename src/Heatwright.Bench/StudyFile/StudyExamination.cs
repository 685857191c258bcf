using System.Globalization;
using Heatwright.Quantities;
using Microsoft.Data.Sqlite;

namespace Heatwright.StudyFile;

/// <summary>How a study file is: looked through without changing a byte of it.</summary>
/// <param name="Path">The file.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Beside">Files of its own that lie beside it: while it is open, or after a crash.</param>
/// <param name="Format">Its format; null: it cannot be told.</param>
/// <param name="Problems">What is wrong with it; empty: it is whole.</param>
/// <param name="Records">How many records of each kind there are.</param>
/// <param name="Changes">How many changes its history holds.</param>
/// <param name="Kept">How many files are kept in it.</param>
/// <param name="KeptBytes">Their bytes, each content once.</param>
/// <param name="Openings">How many past openings are kept beside it.</param>
public sealed record Examined(
    string Path, long Bytes, IReadOnlyList<string> Beside, int? Format, IReadOnlyList<Problem> Problems, IReadOnlyDictionary<string, int> Records, int Changes, int Kept, long KeptBytes, int Openings)
{
    /// <summary>True: everything in it can be read and hangs together.</summary>
    public bool IsWhole => Problems.Count == 0;
}

/// <summary>Examines study files.</summary>
public static class StudyExamination
{
    /// <summary>How the file is; a file that is not there or not ours is a problem of its own.</summary>
    public static Checked<Examined> Of(string path)
    {
        // Before our own look: a study opened for reading may have files beside it for a moment.
        string[] beside = [.. ((string[])["-wal", "-shm", "-journal"]).Select(end => path + end).Where(File.Exists)];
        var opening = StudyBook.Open(path, readOnly: true);
        using var book = opening.IsFine ? opening.Value : null;
        var problems = opening.Problems;
        if (problems is [OpenProblem { Fault: OpenFault.Missing or OpenFault.Folder or OpenFault.NotSqlite or OpenFault.OtherProgram or OpenFault.Empty or OpenFault.NoAccess or OpenFault.Locked }])
        {
            return new(problems);
        }

        var examined = new Examined(path, new FileInfo(path).Length, beside, null, problems, new Dictionary<string, int>(), 0, 0, 0, PastStates.List(path) is { IsFine: true } past ? past.Value.Count : 0);
        return new(book is null ? examined : Counted(examined, book));
    }

    private static Examined Counted(Examined examined, StudyBook book) => book.Counts(connection => examined with
    {
        Format = StudyTables.Format(connection),
        Records = StudyTables.Rows(connection, "SELECT kind, CAST(count(*) AS TEXT) FROM record GROUP BY kind ORDER BY kind").ToDictionary(row => row[0]!, row => Whole(row[1]), StringComparer.Ordinal),
        Changes = Whole(StudyTables.Scalar(connection, "SELECT count(*) FROM change")),
        Kept = Whole(StudyTables.Scalar(connection, "SELECT count(*) FROM record WHERE kind = 'file'")),
        KeptBytes = StudyTables.Format(connection) < 2 ? 0 : long.Parse(StudyTables.Scalar(connection, "SELECT coalesce(sum(length(bytes)), 0) FROM content"), CultureInfo.InvariantCulture),
    });

    private static int Whole(string? text) => int.Parse(text!, CultureInfo.InvariantCulture);
}
