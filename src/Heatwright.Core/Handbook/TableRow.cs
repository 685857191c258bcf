using Heatwright.Quantities;

namespace Heatwright.Handbook;

/// <summary>One row of a published table; cells are numbers, words or empty.</summary>
public sealed class TableRow
{
    private readonly Table table;
    private readonly object?[] cells;

    internal TableRow(Table table, object?[] cells, SourceKey source, Mark mark)
    {
        this.table = table;
        this.cells = cells;
        Source = source;
        Mark = mark;
    }

    /// <summary>What the first column says: the name of the row.</summary>
    public string Key => cells[0] switch
    {
        string word => word,
        double number => number.ToString(System.Globalization.CultureInfo.InvariantCulture),
        _ => "",
    };

    /// <summary>Where this row was published: the table's source unless the row names its own.</summary>
    public SourceKey Source { get; }

    /// <summary>How this row was obtained: the table's mark unless the row has its own.</summary>
    public Mark Mark { get; }

    /// <summary>Where a number of this row came from, with its mark, ready for an estimate.</summary>
    public Origin Origin => Mark == Mark.CommonPractice
        ? new Origin.Assumed($"common practice, no source: {table.Where}")
        : new Origin.Published(Source, Mark == Mark.Published ? table.Where : $"{table.Where} ({Mark.Word()})");

    /// <summary>The number in a column, in the column's unit; asking for an empty place is a bug.</summary>
    public double Number(string column) => NumberOrNull(column)
        ?? throw new InvalidOperationException($"Table '{table.Name}', row '{Key}': nothing stands under '{column}'.");

    /// <summary>The number in a column, in the column's unit, or null where the place is empty.</summary>
    public double? NumberOrNull(string column) => cells[table.IndexOf(column)] switch
    {
        null => null,
        double number => number,
        _ => throw new InvalidOperationException($"Table '{table.Name}', row '{Key}': words stand under '{column}'."),
    };

    /// <summary>The words in a column; '' where the place is empty.</summary>
    public string Word(string column) => cells[table.IndexOf(column)] switch
    {
        null => "",
        string word => word,
        _ => throw new InvalidOperationException($"Table '{table.Name}', row '{Key}': a number stands under '{column}'."),
    };
}
