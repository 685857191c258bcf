using System.Globalization;
using Heatwright.Quantities;
using Microsoft.Data.Sqlite;

namespace Heatwright.StudyFile;

/// <summary>Makes study files.</summary>
internal static class StudyMaking
{
    /// <summary>What SQLite may leave beside a file.</summary>
    private static readonly string[] Beside = ["-journal", "-wal", "-shm"];

    /// <summary>What must not be there where a study file is to be made.</summary>
    private static readonly string[] Taken = ["", "-journal", "-wal"];

    /// <summary>Makes a study file under a draft's name, closes it and gives it its own; empty: done.</summary>
    public static IReadOnlyList<Problem> Make(string path, Study study, TimeProvider clock)
    {
        // The log of a file that was deleted would be played into a new file of the same name.
        if (Taken.Select(end => path + end).FirstOrDefault(Path.Exists) is { } there)
        {
            return [new OpenProblem(OpenFault.Taken, "There is something with this name already.", path, there, "a name that is free", "Choose another name; nothing was changed.")];
        }
        if (StudyCheck.Of(study, "the study") is { Count: > 0 } problems)
        {
            return problems;
        }
        string draft = path + ".draft";
        try
        {
            Clear(draft);
            Fill(draft, study, clock);
            File.Move(draft, path);
            return [];
        }
        catch (Exception error) when (SqliteFaults.IsExpected(error))
        {
            Clear(draft);
            return [SqliteFaults.Problem(error, path)];
        }
    }

    private static void Fill(string draft, Study study, TimeProvider clock)
    {
        using var connection = StudyOpening.Connect(draft, SqliteOpenMode.ReadWriteCreate);
        // Not yet a write-ahead log: the marks that other programs and our own door look for have to stand in the file itself.
        StudyTables.Execute(connection, "PRAGMA synchronous = FULL");
        StudyTables.Execute(connection, $"PRAGMA application_id = {StudyBook.ApplicationId.ToString(CultureInfo.InvariantCulture)}");
        StudyTables.Upgrade(connection, StudyTables.Steps);
        using (var transaction = connection.BeginTransaction(deferred: false))
        {
            var log = new ChangeLog(connection, clock);
            StudyTables.Keep(connection, study.Files);
            log.Append("Study begun", StudyRecords.Of(study).ToDictionary(row => row.Key, row => (string?)row.Value), log.Load());
            transaction.Commit();
        }
        StudyTables.Execute(connection, "PRAGMA journal_mode = WAL");
    }

    private static void Clear(string draft)
    {
        foreach (string file in Beside.Select(end => draft + end).Prepend(draft))
        {
            Draft.Remove(file);
        }
    }
}
