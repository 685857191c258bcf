using Heatwright.Quantities;

namespace Heatwright.Handbook;

/// <summary>A column of a published table.</summary>
/// <param name="Name">Its heading.</param>
/// <param name="Unit">Unit symbol of its numbers; '' for a pure number, 'word' where it holds words.</param>
public sealed record Column(string Name, string Unit)
{
    /// <summary>The unit of columns that hold words.</summary>
    public const string Word = "word";
}

/// <summary>A published table: every number in it can say where it was printed.</summary>
/// <param name="Name">Short name, the name of its file.</param>
/// <param name="Source">Where it was published.</param>
/// <param name="Where">Place in the source.</param>
/// <param name="Mark">How it was obtained.</param>
/// <param name="Note">What a reader must know before using it; may be empty.</param>
/// <param name="Columns">Headings and units, the key column first.</param>
/// <param name="Rows">Its rows, in the order of the file.</param>
public sealed record Table(
    string Name, SourceKey Source, string Where, Mark Mark, string Note, IReadOnlyList<Column> Columns, IReadOnlyList<TableRow> Rows)
{
    /// <summary>The row whose first column says this, or null.</summary>
    public TableRow? FindRow(string key) => Rows.FirstOrDefault(row => row.Key == key);

    /// <summary>The row whose first column says this; asking for one that is not there is a bug.</summary>
    public TableRow Row(string key) => FindRow(key)
        ?? throw new KeyNotFoundException($"Table '{Name}' has no row '{key}'. It has: {string.Join(", ", Rows.Select(row => row.Key))}.");

    /// <summary>A column by its heading; asking for one that is not there is a bug.</summary>
    public Column Column(string name) => Columns[IndexOf(name)];

    /// <summary>The numbers of a column, top to bottom; an empty place is refused.</summary>
    public double[] Numbers(string column) => [.. Rows.Select(row => row.Number(column))];

    /// <summary>The number of a column between two rows, by a straight line over the first column, which must rise; outside is refused with the range.</summary>
    public double Interpolated(string column, double at)
    {
        double[] keys = Numbers(Columns[0].Name), values = Numbers(column);
        if (!(at >= keys[0] && at <= keys[^1]))
        {
            throw new ArgumentOutOfRangeException(nameof(at), at, string.Create(System.Globalization.CultureInfo.InvariantCulture,
                $"Table '{Name}' runs from {keys[0]} to {keys[^1]} {Columns[0].Unit}; {at} lies outside."));
        }

        int next = Math.Max(1, Array.FindIndex(keys, key => key >= at));
        return values[next - 1] + ((values[next] - values[next - 1]) * (at - keys[next - 1]) / (keys[next] - keys[next - 1]));
    }

    internal int IndexOf(string column)
    {
        for (int i = 0; i < Columns.Count; i++)
        {
            if (Columns[i].Name == column)
            {
                return i;
            }
        }

        throw new KeyNotFoundException($"Table '{Name}' has no column '{column}'. It has: {string.Join(", ", Columns.Select(each => each.Name))}.");
    }
}
