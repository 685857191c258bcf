using Microsoft.Data.Sqlite;

namespace Heatwright.StudyFile;

/// <summary>Reads the rows of a damaged file that can still be read: from the front, from the back, and one by one between.</summary>
internal sealed class Salvage(SqliteConnection connection)
{
    /// <summary>No more rows than this are asked for one by one.</summary>
    private const long MostProbes = 200_000;

    private readonly SortedDictionary<long, object?[]> rows = [];

    /// <summary>Rows that are known to have been there and cannot be read.</summary>
    public long Lost { get; private set; }

    /// <summary>Rows of a table in the order they were written.</summary>
    public IReadOnlyList<object?[]> Rows(string table, string columns)
    {
        rows.Clear();
        long front = Scan($"SELECT rowid, {columns} FROM {table} NOT INDEXED ORDER BY rowid", []) ?? 0;
        long back = Scan($"SELECT rowid, {columns} FROM {table} NOT INDEXED ORDER BY rowid DESC", []) ?? front;
        for (long row = front + 1; row < Math.Min(back, front + MostProbes); row++)
        {
            if (!rows.ContainsKey(row))
            {
                Scan($"SELECT rowid, {columns} FROM {table} NOT INDEXED WHERE rowid = $row", [("$row", row)]);
                Lost += rows.ContainsKey(row) ? 0 : 1;
            }
        }

        return [.. rows.Values];
    }

    /// <summary>Takes rows until the end or until the file gives no more; the last one's number, or null for none.</summary>
    private long? Scan(string query, ReadOnlySpan<(string Name, object Value)> values)
    {
        long? last = null;
        try
        {
            using var command = connection.CreateCommand();
            command.CommandText = query;
            foreach (var (name, value) in values)
            {
                command.Parameters.AddWithValue(name, value);
            }

            using var reader = command.ExecuteReader();
            while (reader.Read())
            {
                last = reader.GetInt64(0);
                rows[last.Value] = [.. Enumerable.Range(1, reader.FieldCount - 1).Select(i => reader.IsDBNull(i) ? null : reader.GetValue(i))];
            }
        }
        catch (Exception error) when (error is SqliteException or InvalidCastException or ArgumentException)
        {
            // The rows up to here are what this way gives.
        }

        return last;
    }
}
