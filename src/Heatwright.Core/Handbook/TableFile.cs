using System.Text.Json;
using Heatwright.Quantities;

namespace Heatwright.Handbook;

/// <summary>Reads a table file; what does not cite a known source does not load.</summary>
/// <remarks>The format is described in data/README.md. A bad file is our slip, so it is an exception.</remarks>
internal static class TableFile
{
    private const string SourceColumn = "source";
    private const string MarkColumn = "mark";

    public static Table Parse(string json, Bibliography bibliography)
    {
        using var document = JsonDocument.Parse(json);
        var file = document.RootElement;
        string name = Text(file, "table", "?");
        var columns = Columns(file, name);
        List<TableRow> rows = [];
        Table table = new(name, Source(Text(file, "source", name), name, bibliography), Text(file, "where", name),
            MarkOf(file.TryGetProperty("mark", out var mark) ? mark.GetString() ?? "" : "published", name),
            file.TryGetProperty("note", out var note) ? note.GetString() ?? "" : "", columns, rows);
        foreach (var row in file.GetProperty("rows").EnumerateArray())
        {
            rows.Add(Row(table, row, bibliography));
        }

        return rows.Count > 0 ? Agreeing(table) : throw Bad(name, "has no rows");
    }

    private static List<Column> Columns(JsonElement file, string name)
    {
        string[] headings = [.. file.GetProperty("columns").EnumerateArray().Select(each => each.GetString() ?? "")];
        string[] units = [.. file.GetProperty("units").EnumerateArray().Select(each => each.GetString() ?? "")];
        return headings.Length == units.Length && headings.Distinct(StringComparer.Ordinal).Count() == headings.Length
            ? [.. headings.Zip(units, (heading, unit) => new Column(heading, unit))]
            : throw Bad(name, "needs one unit a column, and no heading twice");
    }

    private static TableRow Row(Table table, JsonElement row, Bibliography bibliography)
    {
        object?[] cells = [.. row.EnumerateArray().Select(Cell)];
        if (cells.Length != table.Columns.Count)
        {
            throw Bad(table.Name, $"has a row of {cells.Length} places for {table.Columns.Count} columns: {row.GetRawText()}");
        }

        SourceKey source = table.Source;
        Mark mark = table.Mark;
        for (int i = 0; i < cells.Length; i++)
        {
            if (cells[i] is not null && cells[i] is string != (table.Columns[i].Unit == Column.Word))
            {
                throw Bad(table.Name, $"has words for a number, or a number for words, under '{table.Columns[i].Name}': {row.GetRawText()}");
            }

            source = table.Columns[i].Name == SourceColumn && cells[i] is string key ? Source(key, table.Name, bibliography) : source;
            mark = table.Columns[i].Name == MarkColumn && cells[i] is string word ? MarkOf(word, table.Name) : mark;
        }

        return new(table, cells, source, mark);
    }

    private static object? Cell(JsonElement cell) => cell.ValueKind switch
    {
        JsonValueKind.Number => cell.GetDouble(),
        JsonValueKind.String => cell.GetString(),
        JsonValueKind.Null => null,
        _ => throw new FormatException($"A place in a table holds a number, words or null, not {cell.GetRawText()}."),
    };

    private static SourceKey Source(string key, string table, Bibliography bibliography) => bibliography.Knows(key)
        ? new(key)
        : throw Bad(table, $"cites '{key}', which does not stand in data/sources.json");

    private static Mark MarkOf(string word, string table) => Marks.Find(word) ?? throw Bad(table, $"has an unknown mark '{word}'");

    // Two ways to say 'nobody published it' must not contradict each other.
    private static Table Agreeing(Table table) =>
        table.Rows.All(row => (row.Source.Key == Bibliography.CommonPractice) == (row.Mark == Mark.CommonPractice))
            ? table
            : throw Bad(table.Name, "says 'common practice' in the source or in the mark, but not in both");

    private static string Text(JsonElement file, string field, string table) =>
        file.TryGetProperty(field, out var value) && value.GetString() is { Length: > 0 } text ? text : throw Bad(table, $"does not say its '{field}'");

    private static FormatException Bad(string table, string why) => new($"Table '{table}' {why}.");
}
