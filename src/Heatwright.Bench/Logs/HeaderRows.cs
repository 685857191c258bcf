using System.Text;
using System.Text.RegularExpressions;

namespace Heatwright.Logs;

/// <summary>The names row and the units row above the readings.</summary>
internal sealed partial record HeaderRows(string[]? Names, string[]? Units, string Line)
{
    /// <summary>Above a single column a longer line is a sentence, not a name.</summary>
    public const int LongestLoneName = 32;

    /// <summary>Looks upward from the readings: a units row, if any, then the names row.</summary>
    /// <param name="above">The lines before the readings, last one nearest; blank lines left out.</param>
    public static HeaderRows Find(IReadOnlyList<string> above, byte separator, int cells)
    {
        string[]? units = null;
        for (int i = above.Count - 1; i >= Math.Max(0, above.Count - 4); i--)
        {
            if (Cells(above[i], separator, cells) is not { } row)
            {
                // A free line between header and readings is rare, but a rule of dashes is not.
                if (above[i].AsSpan().Trim("-=_+| \t").Length == 0)
                {
                    continue;
                }

                break;
            }

            if (units is null && IsUnitsRow(row))
            {
                units = row;
                continue;
            }

            return new(row, units, above[i]);
        }

        // A lone row of units names the columns too: V;A;W.
        return new(units, units, units is null ? "" : above[^1]);
    }

    /// <summary>A header line without its remark mark.</summary>
    public static ReadOnlySpan<byte> Bare(ReadOnlySpan<byte> line) => LogSample.IsRemark(line) && !line.StartsWith("%RH"u8) ? line.TrimStart(" \t#/%"u8) : line;

    public static bool Fits(string[] row, int cells) => row.Length == cells
        || (row.Length > cells && row.Skip(cells).All(cell => cell.Length == 0))
        || (row.Length == cells - 1 && cells > 2);

    private static string[]? Cells(string line, byte separator, int cells)
    {
        byte[] bare = Bare(Encoding.UTF8.GetBytes(line)).ToArray();
        string[]? row = new CellCutter(separator).Texts(bare);
        if (row.Length < cells || row.Skip(cells).Any(cell => cell.Length > 0))
        {
            // Names of several words above columns of blanks, or a header cut at another mark than its readings.
            string text = Encoding.UTF8.GetString(bare).Trim();
            row = ((string[][])[row, Wide().Split(text), text.Split('\t'), text.Split(','), text.Split(';'), BlankRuns().Split(text)])
                .Select(parts => parts.Select(part => part.Trim().Trim('"')).ToArray())
                .OrderBy(parts => parts.Length == cells ? 0 : 1).FirstOrDefault(parts => Fits(parts, cells));
        }

        return row is not null && IsNames(row, cells) ? Sized(row, cells) : null;
    }

    /// <summary>Names are words: at least half of the cells that say something, and nothing torn.</summary>
    private static bool IsNames(string[] row, int cells)
    {
        int words = row.Count(cell => CellSorts.Of(cell) is CellSort.Word or CellSort.Torn);
        int said = row.Count(cell => cell.Length > 0);
        return words > 0 && words * 2 >= said && (cells > 1 || row[0].Length <= LongestLoneName);
    }

    private static string[] Sized(string[] row, int cells) => [.. Enumerable.Range(0, cells).Select(i => i < row.Length ? row[i] : "")];

    private static bool IsUnitsRow(string[] row)
    {
        int units = 0, said = 0;
        foreach (string cell in row.Where(cell => cell.Length > 0))
        {
            said++;
            bool bracketed = cell[0] is '(' or '[' && cell[^1] is ')' or ']';
            units += bracketed || UnitWords.Find(cell) is not null || cell is "-" or "--" ? 1 : 0;
        }

        return said > 0 && units == said;
    }

    [GeneratedRegex(@"\s{2,}|\t", RegexOptions.CultureInvariant)]
    private static partial Regex Wide();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex BlankRuns();
}
