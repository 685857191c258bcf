using System.Globalization;
using Microsoft.Data.Sqlite;

namespace Heatwright.StudyFile;

/// <summary>The tables of a study file, and the numbered steps that make them. A step is never changed once a file was made with it.</summary>
internal static class StudyTables
{
    /// <summary>Step n makes format n + 1 of format n; format 0 is a file without tables.</summary>
    public static readonly string[] Steps =
    [
        """
        CREATE TABLE record (kind TEXT NOT NULL, id TEXT NOT NULL, body TEXT NOT NULL, PRIMARY KEY (kind, id)) STRICT;
        CREATE TABLE change (number INTEGER PRIMARY KEY, at TEXT NOT NULL, what TEXT NOT NULL, state TEXT NOT NULL CHECK (state IN ('done', 'undone', 'left'))) STRICT;
        CREATE TABLE change_row (change INTEGER NOT NULL REFERENCES change, kind TEXT NOT NULL, id TEXT NOT NULL, before TEXT, after TEXT, PRIMARY KEY (change, kind, id)) STRICT;
        """,
        // Bytes of photos and raw logs lie once under their fingerprint; what was kept once stays, so that undo and redo find it.
        "CREATE TABLE content (sha256 TEXT PRIMARY KEY, bytes BLOB NOT NULL) STRICT;",
    ];

    /// <summary>Takes a file from its format to the last one, each step with its number in one transaction.</summary>
    public static void Upgrade(SqliteConnection connection, IReadOnlyList<string> steps)
    {
        for (int format = Format(connection); format < steps.Count; format++)
        {
            using var transaction = connection.BeginTransaction(deferred: false);
            Execute(connection, steps[format]);
            Execute(connection, $"PRAGMA user_version = {(format + 1).ToString(CultureInfo.InvariantCulture)}");
            transaction.Commit();
        }
    }

    public static int Format(SqliteConnection connection) => int.Parse(Scalar(connection, "PRAGMA user_version"), CultureInfo.InvariantCulture);

    /// <summary>Null: the file holds the tables of its format and nothing that acts by itself; else what is odd.</summary>
    public static string? Odd(SqliteConnection connection)
    {
        string[] found = [.. Rows(connection, "SELECT type || ' ' || name FROM sqlite_schema WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY 1").Select(row => row[0]!)];
        string[] ours = Format(connection) < 2 ? ["table change", "table change_row", "table record"] : ["table change", "table change_row", "table content", "table record"];
        return found.SequenceEqual(ours, StringComparer.Ordinal) ? null : $"tables: {string.Join(", ", found)}";
    }

    /// <summary>Puts the bytes of kept files in place where they are at hand and not there yet.</summary>
    /// <exception cref="InvalidOperationException">A file would be kept without its bytes: the study would not open any more.</exception>
    public static void Keep(SqliteConnection connection, IEnumerable<KeptFile> files)
    {
        foreach (var file in files)
        {
            if (file.Content is { } content)
            {
                Execute(connection, "INSERT INTO content (sha256, bytes) VALUES ($sha, $bytes) ON CONFLICT (sha256) DO NOTHING", ("$sha", file.Sha256), ("$bytes", content));
            }
            else if (!HasContent(connection, file.Sha256))
            {
                throw new InvalidOperationException($"The bytes of '{file.Id}' are not at hand: read the whole study.");
            }
        }
    }

    /// <summary>Whether there are bytes under a fingerprint.</summary>
    public static bool HasContent(SqliteConnection connection, string sha256) => Rows(connection, "SELECT sha256 FROM content WHERE sha256 = $sha", ("$sha", sha256)).Count > 0;

    /// <summary>The bytes under a fingerprint; null: there are none.</summary>
    public static byte[]? Content(SqliteConnection connection, string sha256)
    {
        using var command = Command(connection, "SELECT bytes FROM content WHERE sha256 = $sha", [("$sha", sha256)]);
        return command.ExecuteScalar() as byte[];
    }

    /// <summary>A packed piece of the file of past states.</summary>
    public static byte[] Piece(SqliteConnection connection, string sha256)
    {
        using var command = Command(connection, "SELECT packed FROM piece WHERE sha256 = $sha", [("$sha", sha256)]);
        return command.ExecuteScalar() as byte[] ?? throw new InvalidDataException($"Piece {sha256} is gone.");
    }

    public static void Execute(SqliteConnection connection, string text, params ReadOnlySpan<(string Name, object? Value)> values)
    {
        using var command = Command(connection, text, values);
        command.ExecuteNonQuery();
    }

    public static string Scalar(SqliteConnection connection, string text)
    {
        using var command = Command(connection, text, []);
        return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture) ?? "";
    }

    /// <summary>Rows of texts; a column may be null.</summary>
    public static List<string?[]> Rows(SqliteConnection connection, string text, params ReadOnlySpan<(string Name, object? Value)> values)
    {
        var rows = new List<string?[]>();
        using var command = Command(connection, text, values);
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            string?[] row = new string?[reader.FieldCount];
            for (int i = 0; i < row.Length; i++)
            {
                row[i] = reader.IsDBNull(i) ? null : reader.GetString(i);
            }
            rows.Add(row);
        }
        return rows;
    }

    private static SqliteCommand Command(SqliteConnection connection, string text, ReadOnlySpan<(string Name, object? Value)> values)
    {
        var command = connection.CreateCommand();
        command.CommandText = text;
        foreach (var (name, value) in values)
        {
            command.Parameters.AddWithValue(name, value ?? DBNull.Value);
        }
        return command;
    }
}
