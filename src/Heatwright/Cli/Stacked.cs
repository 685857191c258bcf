using Spectre.Console;

namespace Heatwright.Cli;

/// <summary>A table as lines of heading and cell, for windows too narrow to set it out.</summary>
/// <param name="Least">Columns that the table needs so that no word is cut.</param>
/// <param name="Headings">Width of the longest heading.</param>
/// <param name="Rows">Lines of cells that hold something, each with its heading.</param>
internal sealed record Stacked(int Least, int Headings, IReadOnlyList<IReadOnlyList<(string Heading, string Words)>> Rows)
{
    /// <summary>None where a cell holds more than words.</summary>
    public static Stacked? Of(Table table, Func<string, string> plain)
    {
        var headings = table.Columns.Select(column => column.Header).OfType<Cell>().Select(cell => plain(cell.Words)).ToArray();
        string[][] rows = [.. table.Rows.Select(row => row.OfType<Cell>().Select(cell => plain(cell.Words)).ToArray())];
        if (headings.Length < table.Columns.Count || rows.Any(row => row.Length != headings.Length))
        {
            return null;
        }

        int least = SetOut.Edge + Enumerable.Range(0, headings.Length).Sum(i => SetOut.Around + rows.Select(row => row[i]).Prepend(headings[i]).SelectMany(SetOut.Words).Max(word => word.Length));
        return new(least, headings.DefaultIfEmpty("").Max(heading => heading.Length), [.. rows.Select(row => headings.Zip(row).SelectMany(pair => pair.Second.Split('\n').Select(line => (pair.First, line))).Where(pair => pair.line.Length > 0).ToList())]);
    }
}
