using System.Collections.Immutable;
using System.Globalization;
using Microsoft.Data.Sqlite;

namespace Heatwright.StudyFile;

/// <summary>The records of an open file and the changes that led to them. Callers hold the transaction.</summary>
internal sealed class ChangeLog(SqliteConnection connection, TimeProvider clock)
{
    public ImmutableSortedDictionary<RecordKey, string> Load() => StudyTables.Rows(connection, "SELECT kind, id, body FROM record")
        .ToImmutableSortedDictionary(row => new RecordKey(row[0]!, row[1]!), row => row[2]!, StudyRecords.Order);

    public IReadOnlyList<StudyChange> History() => [.. StudyTables.Rows(connection, "SELECT CAST(number AS TEXT), at, what, state FROM change ORDER BY number").Select(row =>
        new StudyChange(long.Parse(row[0]!, CultureInfo.InvariantCulture), DateTimeOffset.Parse(row[1]!, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind), row[2]!, row[3] != "done"))];

    /// <summary>Number of the last change; 0: none.</summary>
    public long Last() => long.Parse(StudyTables.Scalar(connection, "SELECT CAST(coalesce(max(number), 0) AS TEXT) FROM change"), CultureInfo.InvariantCulture);

    /// <summary>What each change did to the records of one name: those of an id, with the blocks of readings of a run, or those of a kind.</summary>
    public IReadOnlyList<RecordChange> HistoryOf(string name)
    {
        var changes = History().ToDictionary(change => change.Number);
        return [.. StudyTables.Rows(connection, """
            SELECT CAST(change AS TEXT), kind, id, before, after FROM change_row
            WHERE id = $name OR kind = $name OR (kind = 'readings' AND substr(id, 1, length($name) + 1) = $name || '/') ORDER BY change, kind, id
            """, ("$name", name)).Select(row => new RecordChange(changes[long.Parse(row[0]!, CultureInfo.InvariantCulture)], row[1]!, row[2]!, row[3] is null, row[4] is null, RecordDifference.Of(row[3], row[4])))];
    }

    /// <summary>Puts records in place (null: takes them away) and keeps what stood there. What was undone before can no longer be redone, but stays readable.</summary>
    public StudyChange Append(string what, IReadOnlyDictionary<RecordKey, string?> next, ImmutableSortedDictionary<RecordKey, string> current)
    {
        StudyTables.Execute(connection, "UPDATE change SET state = 'left' WHERE state = 'undone'");
        var at = clock.GetUtcNow().ToUniversalTime();
        StudyTables.Execute(connection, "INSERT INTO change (at, what, state) VALUES ($at, $what, 'done')", ("$at", at.ToString("O", CultureInfo.InvariantCulture)), ("$what", what));
        string number = StudyTables.Scalar(connection, "SELECT max(number) FROM change");
        foreach (var (key, body) in next)
        {
            StudyTables.Execute(connection, "INSERT INTO change_row (change, kind, id, before, after) VALUES ($change, $kind, $id, $before, $after)",
                ("$change", long.Parse(number, CultureInfo.InvariantCulture)), ("$kind", key.Kind), ("$id", key.Id), ("$before", current.GetValueOrDefault(key)), ("$after", body));
            Put(key, body);
        }
        return new(long.Parse(number, CultureInfo.InvariantCulture), at, what, Undone: false);
    }

    /// <summary>Adds to a change that is still the last one: a capture that goes on is one change, taken back in one step.</summary>
    /// <returns>Null: something else was done since, and it has to be a change of its own.</returns>
    public StudyChange? Extend(long number, IReadOnlyDictionary<RecordKey, string?> next, ImmutableSortedDictionary<RecordKey, string> current)
    {
        if (StudyTables.Scalar(connection, "SELECT CAST(max(number) AS TEXT) || state FROM change") != $"{number.ToString(CultureInfo.InvariantCulture)}done")
        {
            return null;
        }
        foreach (var (key, body) in next)
        {
            StudyTables.Execute(connection, "INSERT INTO change_row (change, kind, id, before, after) VALUES ($change, $kind, $id, $before, $after) ON CONFLICT (change, kind, id) DO UPDATE SET after = excluded.after",
                ("$change", number), ("$kind", key.Kind), ("$id", key.Id), ("$before", current.GetValueOrDefault(key)), ("$after", body));
            Put(key, body);
        }
        return History().Single(change => change.Number == number);
    }

    /// <summary>The last change that stands is taken back; the first one, which began the study, stays. Null: there is none.</summary>
    public StudyChange? Undo() => Step("SELECT max(number) FROM change WHERE state = 'done' AND number > 1", "before", "undone");

    /// <summary>The change taken back last stands again. Null: there is none.</summary>
    public StudyChange? Redo() => Step("SELECT min(number) FROM change WHERE state = 'undone'", "after", "done");

    private StudyChange? Step(string which, string side, string state)
    {
        if (!long.TryParse(StudyTables.Scalar(connection, which), CultureInfo.InvariantCulture, out long number))
        {
            return null;
        }
        foreach (string?[] row in StudyTables.Rows(connection, $"SELECT kind, id, {side} FROM change_row WHERE change = $number", ("$number", number)))
        {
            Put(new(row[0]!, row[1]!), row[2]);
        }
        StudyTables.Execute(connection, "UPDATE change SET state = $state WHERE number = $number", ("$state", state), ("$number", number));
        return History().Single(change => change.Number == number);
    }

    private void Put(RecordKey key, string? body) => StudyTables.Execute(connection, body is null
        ? "DELETE FROM record WHERE kind = $kind AND id = $id AND $body IS NULL"
        : "INSERT INTO record (kind, id, body) VALUES ($kind, $id, $body) ON CONFLICT (kind, id) DO UPDATE SET body = excluded.body",
        ("$kind", key.Kind), ("$id", key.Id), ("$body", body));
}
