using System.Globalization;
using Heatwright.Quantities;
using Microsoft.Data.Sqlite;

namespace Heatwright.StudyFile;

/// <summary>A change as the history tells it.</summary>
/// <param name="Number">Rising number.</param>
/// <param name="At">When, UTC.</param>
/// <param name="What">What was done, in a maker's words.</param>
/// <param name="Undone">True while it is taken back.</param>
public sealed record StudyChange(long Number, DateTimeOffset At, string What, bool Undone);

/// <summary>One study file, open: a SQLite file in which every change is one transaction with its own undo record.</summary>
/// <remarks>Write-ahead log and full synchronisation: when <see cref="Write"/> has returned, what was typed is on the disk.</remarks>
public sealed class StudyBook : IDisposable
{
    /// <summary>Marks a SQLite file as a study: 'HtWr'.</summary>
    public const int ApplicationId = 0x48745772;

    /// <summary>Format that this version writes.</summary>
    public const int Format = 1;

    private readonly SqliteConnection connection;
    private readonly TimeProvider clock;

    private StudyBook(SqliteConnection connection, TimeProvider clock)
    {
        this.connection = connection;
        this.clock = clock;
    }

    /// <summary>Fingerprint of the content as it stands.</summary>
    public string Fingerprint => StudyRecords.Fingerprint(Records());

    /// <summary>Creates a study file; never over something that is there.</summary>
    public static Checked<StudyBook> Create(string path, Study study, TimeProvider clock)
    {
        if (File.Exists(path) || Directory.Exists(path))
        {
            return new(new Problem("There is something with this name already.", path, "present", "a name that is free", "Choose another name; nothing was changed."));
        }

        string draft = path + ".draft";
        try
        {
            File.Delete(draft);
            using (var making = new SqliteConnection(Connection(draft, SqliteOpenMode.ReadWriteCreate)))
            {
                making.Open();
                Execute(making, $"PRAGMA application_id = {ApplicationId}; PRAGMA user_version = {Format}; PRAGMA synchronous = FULL;");
                Execute(making, """
                    CREATE TABLE record (kind TEXT NOT NULL, id TEXT NOT NULL, body TEXT NOT NULL, PRIMARY KEY (kind, id)) WITHOUT ROWID;
                    CREATE TABLE change (number INTEGER PRIMARY KEY, at TEXT NOT NULL, what TEXT NOT NULL, undone INTEGER NOT NULL DEFAULT 0);
                    CREATE TABLE change_row (change INTEGER NOT NULL REFERENCES change, kind TEXT NOT NULL, id TEXT NOT NULL, before TEXT, after TEXT, PRIMARY KEY (change, kind, id)) WITHOUT ROWID;
                    """);
                using var book = new StudyBook(making, clock);
                book.Write("Study begun", study);
            }

            SqliteConnection.ClearAllPools();
            File.Move(draft, path);
        }
        catch (Exception error) when (error is SqliteException or IOException or UnauthorizedAccessException)
        {
            File.Delete(draft);
            return new(new Problem("The study file cannot be created.", path, error.Message, "a folder that may be written to, with room", "Choose another folder, or free some room."));
        }

        return Open(path, readOnly: false, clock);
    }

    /// <summary>Opens a study file, or says why not; a file that is refused is not touched.</summary>
    public static Checked<StudyBook> Open(string path, bool readOnly, TimeProvider? clock = null)
    {
        if (FileProblem(path) is { } problem)
        {
            return new(problem);
        }

        SqliteConnection? connection = null;
        try
        {
            connection = new SqliteConnection(Connection(path, readOnly ? SqliteOpenMode.ReadOnly : SqliteOpenMode.ReadWrite));
            connection.Open();
            string whole = Scalar(connection, "PRAGMA quick_check(1);");
            if (whole != "ok")
            {
                connection.Dispose();
                return new(Damaged(path, whole));
            }

            if (!readOnly)
            {
                Execute(connection, "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;");
            }

            return new(new StudyBook(connection, clock ?? TimeProvider.System));
        }
        catch (SqliteException error)
        {
            connection?.Dispose();
            return new(error.SqliteErrorCode is 5 or 6
                ? new Problem("The study file is in use.", path, error.Message, "a file that nothing else holds locked", "Close the other program, then try again.")
                : error.SqliteErrorCode is 8 or 14
                    ? new Problem("The study file cannot be opened.", path, error.Message, "a file that may be read and written", "Check its permissions, or copy it elsewhere.")
                    : Damaged(path, error.Message));
        }
    }

    /// <summary>The study as it stands.</summary>
    public Study Read() => StudyRecords.Join(Records().Select(row => (row.Key.Kind, row.Key.Id, row.Value)));

    /// <summary>Makes the file hold <paramref name="next"/>: one transaction, whole or absent, with what stood there before kept.</summary>
    /// <param name="what">What was done, in a maker's words.</param>
    /// <param name="next">The study as it shall stand.</param>
    public void Write(string what, Study next)
    {
        using var transaction = connection.BeginTransaction(deferred: false);
        var before = Records();
        var after = StudyRecords.Of(next);
        var touched = before.Keys.Union(after.Keys).Where(key => before.GetValueOrDefault(key) != after.GetValueOrDefault(key)).ToArray();
        if (touched.Length > 0)
        {
            long number = Change(what);
            foreach (var key in touched)
            {
                Keep(number, key, before.GetValueOrDefault(key), after.GetValueOrDefault(key));
                Put(key, after.GetValueOrDefault(key));
            }
        }

        transaction.Commit();
    }

    /// <summary>Takes the last change back; null: there is none.</summary>
    public StudyChange? Undo() => Step("SELECT max(number) FROM change WHERE undone = 0 AND number > (SELECT min(number) FROM change)", undo: true);

    /// <summary>Makes the change that was taken back last again; null: there is none, or something else was changed since.</summary>
    public StudyChange? Redo() => Step("SELECT min(number) FROM change WHERE undone = 1 AND number > (SELECT max(number) FROM change WHERE undone = 0)", undo: false);

    /// <summary>All changes, oldest first.</summary>
    public IReadOnlyList<StudyChange> History()
    {
        List<StudyChange> changes = [];
        using var command = Command(connection, "SELECT number, at, what, undone FROM change ORDER BY number");
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            changes.Add(new(reader.GetInt64(0), DateTimeOffset.Parse(reader.GetString(1), CultureInfo.InvariantCulture), reader.GetString(2), reader.GetInt64(3) != 0));
        }

        return changes;
    }

    /// <summary>Closes the file.</summary>
    public void Dispose() => connection.Dispose();

    private StudyChange? Step(string which, bool undo)
    {
        using var transaction = connection.BeginTransaction(deferred: false);
        if (!long.TryParse(Scalar(connection, which), CultureInfo.InvariantCulture, out long number))
        {
            return null;
        }

        List<((string, string) Key, string? Body)> rows = [];
        using (var command = Command(connection, $"SELECT kind, id, {(undo ? "before" : "after")} FROM change_row WHERE change = $number", ("$number", number)))
        using (var reader = command.ExecuteReader())
        {
            while (reader.Read())
            {
                rows.Add(((reader.GetString(0), reader.GetString(1)), reader.IsDBNull(2) ? null : reader.GetString(2)));
            }
        }

        foreach (var (key, body) in rows)
        {
            Put(key, body);
        }

        using (var mark = Command(connection, "UPDATE change SET undone = $undone WHERE number = $number", ("$undone", undo ? 1 : 0), ("$number", number)))
        {
            mark.ExecuteNonQuery();
        }

        transaction.Commit();
        return History().Single(change => change.Number == number);
    }

    private SortedDictionary<(string Kind, string Id), string> Records()
    {
        var records = new SortedDictionary<(string Kind, string Id), string>();
        using var command = Command(connection, "SELECT kind, id, body FROM record");
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            records[(reader.GetString(0), reader.GetString(1))] = reader.GetString(2);
        }

        return records;
    }

    private long Change(string what)
    {
        using var command = Command(connection, "INSERT INTO change (at, what) VALUES ($at, $what); SELECT last_insert_rowid();",
            ("$at", clock.GetUtcNow().ToString("O", CultureInfo.InvariantCulture)), ("$what", what));
        return (long)command.ExecuteScalar()!;
    }

    private void Keep(long change, (string Kind, string Id) key, string? before, string? after)
    {
        using var command = Command(connection, "INSERT INTO change_row (change, kind, id, before, after) VALUES ($change, $kind, $id, $before, $after)",
            ("$change", change), ("$kind", key.Kind), ("$id", key.Id), ("$before", before), ("$after", after));
        command.ExecuteNonQuery();
    }

    private void Put((string Kind, string Id) key, string? body)
    {
        using var command = body is null
            ? Command(connection, "DELETE FROM record WHERE kind = $kind AND id = $id", ("$kind", key.Kind), ("$id", key.Id))
            : Command(connection, "INSERT INTO record (kind, id, body) VALUES ($kind, $id, $body) ON CONFLICT (kind, id) DO UPDATE SET body = excluded.body",
                ("$kind", key.Kind), ("$id", key.Id), ("$body", body));
        command.ExecuteNonQuery();
    }

    /// <summary>Looks at the head of the file itself, before SQLite does, so that a file that is not ours is not touched.</summary>
    private static Problem? FileProblem(string path)
    {
        if (Directory.Exists(path))
        {
            return new("This is a folder, not a study file.", path, "folder", "a file ending in .study", "Name the study file; a bundle folder is read by 'heatwright import'.");
        }

        if (!File.Exists(path))
        {
            return new("There is no study file with this name.", path, "absent", "a study file", "Check the name, or create one with 'heatwright new'.");
        }

        byte[] head = new byte[100];
        int read;
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            read = file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new("The study file cannot be read.", path, error.Message, "a file that may be read", "Check its permissions.");
        }

        if (read < head.Length || !head.AsSpan(0, 16).SequenceEqual("SQLite format 3\0"u8))
        {
            return new("This is not a study file.", path, read == 0 ? "empty" : $"{new FileInfo(path).Length} bytes of something else", "a study file", "Choose the right file; readings in a text file go in through a bundle.");
        }

        int format = System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(head.AsSpan(60));
        int application = System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(head.AsSpan(68));
        if (application != ApplicationId)
        {
            return new("This file belongs to another program.", path, $"application {application:x8}", $"application {ApplicationId:x8}", "Choose a file that Heatwright made.");
        }

        return format <= Format && format >= 1 ? null
            : new("This study file is of a newer format.", path, $"format {format}", $"format {Format}", "Get a newer Heatwright; nothing was changed.");
    }

    private static Problem Damaged(string path, string said) => new("The study file is damaged.", path, said, "a whole file", "Take the last copy of it; do not write to this one.");

    private static string Connection(string path, SqliteOpenMode mode) => new SqliteConnectionStringBuilder { DataSource = path, Mode = mode, Pooling = false, DefaultTimeout = 5 }.ToString();

    private static SqliteCommand Command(SqliteConnection connection, string text, params ReadOnlySpan<(string Name, object? Value)> values)
    {
        var command = connection.CreateCommand();
        command.CommandText = text;
        foreach (var (name, value) in values)
        {
            command.Parameters.AddWithValue(name, value ?? DBNull.Value);
        }

        return command;
    }

    private static void Execute(SqliteConnection connection, string text)
    {
        using var command = Command(connection, text);
        command.ExecuteNonQuery();
    }

    private static string Scalar(SqliteConnection connection, string text)
    {
        using var command = Command(connection, text);
        return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture) ?? "";
    }
}
