using System.Globalization;

namespace Heatwright.Tests;

/// <summary>A published file of tests/reference: comment lines, one header row, then rows; commas only between places.</summary>
internal sealed class ReferenceCsv
{
    private readonly string[] header;

    private ReferenceCsv(string[] header, string[][] rows)
    {
        this.header = header;
        Rows = rows;
    }

    public string[][] Rows { get; }

    public static ReferenceCsv Read(string path)
    {
        string[] lines = [.. File.ReadLines(Repository.Reference(path)).Where(line => line.Length > 0 && line[0] != '#')];
        return new(lines[0].Split(','), [.. lines.Skip(1).Select(line => line.Split(','))]);
    }

    public string Word(string[] row, string column) => row[Array.IndexOf(header, column)];

    public double Number(string[] row, string column) => double.Parse(Word(row, column), NumberStyles.Float, CultureInfo.InvariantCulture);
}
