using System.Text.Json;
using Heatwright.Quantities;
using Microsoft.Data.Sqlite;

namespace Heatwright.StudyFile;

/// <summary>Opens study files, or says why not.</summary>
internal static class StudyOpening
{
    /// <summary>How long another program is waited for.</summary>
    private const int PatienceS = 5;

    public static Checked<StudyBook> Open(string path, bool readOnly, TimeProvider clock) =>
        StudyDoor.Enter(path, (problem, name, fresh) => problem is null ? Open(path, name, readOnly, fresh, clock) : new Checked<StudyBook>(problem), opened => opened.IsFine);

    public static SqliteConnection Connect(string path, SqliteOpenMode mode) => ConnectTo(Path.GetFullPath(path), mode);

    private static Checked<StudyBook> Open(string path, string name, bool readOnly, bool fresh, TimeProvider clock)
    {
        SqliteConnection? connection = null;
        try
        {
            // A damaged file opened in earnest would get a log beside it. Where nobody has it open it is first looked through as it lies.
            bool lies = fresh && !Path.Exists(path + "-wal");
            if (lies && FaultsAsItLies(path) is { Count: > 0 } faults)
            {
                return new(faults);
            }
            connection = readOnly ? ConnectToRead(path) : Connect(path, SqliteOpenMode.ReadWrite);
            if (!lies && Faults(connection, path) is { Count: > 0 } problems)
            {
                connection.Dispose();
                return new(problems);
            }
            StudyTables.Execute(connection, readOnly ? "PRAGMA query_only = ON" : "PRAGMA synchronous = FULL");
            if (!readOnly)
            {
                StudyTables.Upgrade(connection, StudyTables.Steps);
                Writable(connection);
            }
            return new(new StudyBook(connection, path, name, readOnly, clock));
        }
        catch (Exception error) when (SqliteFaults.IsExpected(error))
        {
            connection?.Dispose();
            return new(SqliteFaults.Problem(error, path));
        }
    }

    private static IReadOnlyList<Problem> FaultsAsItLies(string path)
    {
        using var connection = AsItLies(Path.GetFullPath(path));
        return Faults(connection, path);
    }

    /// <summary>What makes a file unfit although it is marked as ours.</summary>
    private static IReadOnlyList<Problem> Faults(SqliteConnection connection, string path)
    {
        string whole = StudyTables.Scalar(connection, "PRAGMA quick_check(1)");
        if (whole != "ok" || StudyTables.Odd(connection) is { } odd && (whole = odd).Length > 0)
        {
            return [SqliteFaults.Damaged(path, whole)];
        }
        if (StudyDoor.Format(StudyTables.Format(connection), path) is { } newer)
        {
            return [newer];
        }
        try
        {
            var study = StudyRecords.Join(new ChangeLog(connection, TimeProvider.System).Load());
            return study.Files.FirstOrDefault(file => !StudyTables.HasContent(connection, file.Sha256)) is { } bare
                ? [SqliteFaults.Damaged(path, $"the bytes of '{bare.Id}' are gone")] : StudyCheck.Of(study, path);
        }
        catch (Exception error) when (error is JsonException or InvalidOperationException or NotSupportedException)
        {
            return [SqliteFaults.Damaged(path, error.Message)];
        }
    }

    // Reading alone would leave SQLite's two files behind where nobody else has the study open, because only a connection that may write
    // clears them away. So we read through one that may and that is told not to; where the file or its folder may not be written and nobody
    // has left a log, nothing can change under us and the file is read as it lies.
    private static SqliteConnection ConnectToRead(string path)
    {
        string full = Path.GetFullPath(path);
        if (new FileInfo(full + "-wal") is { Exists: true, Length: > 0 })
        {
            return ConnectTo(full, SqliteOpenMode.ReadOnly);
        }
        SqliteConnection? connection = null;
        try
        {
            connection = ConnectTo(full, SqliteOpenMode.ReadWrite);
            if (SQLitePCL.raw.sqlite3_db_readonly(connection.Handle, "main") == 0)
            {
                StudyTables.Scalar(connection, "SELECT count(*) FROM record");
                return connection;
            }
        }
        catch (SqliteException error) when (error.SqliteErrorCode is 8 or 10 or 13 or 14)
        {
            // Not to be written, or a disk without room for the log: falls through to reading the file as it lies.
        }
        connection?.Dispose();
        return AsItLies(full);
    }

    private static SqliteConnection AsItLies(string full) => ConnectTo($"file:{Uri.EscapeDataString(full)}?immutable=1", SqliteOpenMode.ReadOnly);

    // SQLite opens a file that may not be written for reading instead; the maker is told now, not at the first change.
    private static void Writable(SqliteConnection connection)
    {
        if (SQLitePCL.raw.sqlite3_db_readonly(connection.Handle, "main") != 0)
        {
            throw new UnauthorizedAccessException("The file may not be written.");
        }
        StudyTables.Execute(connection, "PRAGMA journal_mode = WAL");
    }

    private static SqliteConnection ConnectTo(string source, SqliteOpenMode mode)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = source, Mode = mode, Pooling = false, DefaultTimeout = PatienceS }.ToString());
        try
        {
            connection.Open();
            // A study may come by mail: nothing that its tables bring along is run.
            StudyTables.Execute(connection, "PRAGMA trusted_schema = OFF");
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }
}
