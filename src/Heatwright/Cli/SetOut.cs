using Spectre.Console;

namespace Heatwright.Cli;

/// <summary>Sets a table out within a width, broken at blanks alone: a name, or a number with its doubt and unit, is never cut.</summary>
internal static class SetOut
{
    /// <summary>Bars and blanks that a column takes beside its words, and the table at its edge.</summary>
    public const int Around = 3, Edge = 1;

    /// <summary>The same table with the words of its cells broken into lines.</summary>
    /// <param name="table">Of cells alone.</param>
    /// <param name="width">Columns there are; at least what the longest words need.</param>
    /// <param name="plain">The text as the screen can show it.</param>
    public static Table Within(Table table, int width, Func<string, string> plain)
    {
        string[] headings = [.. table.Columns.Select(column => plain(((Cell)column.Header).Words))];
        string[][] rows = [.. table.Rows.Select(row => row.Cast<Cell>().Select(cell => plain(cell.Words)).ToArray())];
        int[] least = [.. headings.Select((heading, i) => Column(i).SelectMany(Words).Max(word => word.Length))];
        int[] widths = [.. headings.Select((heading, i) => Column(i).SelectMany(Lines).Max(line => line.Length))];
        int room = width - Edge - (Around * headings.Length);
        while (widths.Sum() > room && Widest() is >= 0 and var widest)
        {
            widths[widest]--;
        }

        var set = new Table { Border = table.Border };
        for (int i = 0; i < headings.Length; i++)
        {
            set.AddColumn(new TableColumn(new Cell(Broken(headings[i], widths[i]))) { Alignment = table.Columns[i].Alignment, NoWrap = true });
        }

        foreach (string[] row in rows)
        {
            set.AddRow([.. row.Select((words, i) => new Cell(Broken(words, widths[i])))]);
        }

        return set;

        IEnumerable<string> Column(int i) => rows.Select(row => row[i]).Prepend(headings[i]);
        int Widest() => Enumerable.Range(0, widths.Length).Where(i => widths[i] > least[i]).OrderByDescending(i => widths[i]).DefaultIfEmpty(-1).First();
    }

    /// <summary>A number may stand on one line and its doubt on the next, where there is no room for both on one.</summary>
    public static string Apart(string text) => text.Replace("\u00A0±", " ±", StringComparison.Ordinal);

    /// <summary>What is broken at: a blank between words and the end of a line, and not the blank that holds a number and its unit together.</summary>
    public static string[] Words(string text) => text.Split([' ', '\n']);

    private static string[] Lines(string text) => text.Split('\n');

    private static string Broken(string text, int width) => string.Join('\n', Lines(text).Select(line =>
    {
        List<string> broken = [""];
        foreach (string word in line.Split(' '))
        {
            if (broken[^1].Length == 0)
            {
                broken[^1] = word;
            }
            else if (broken[^1].Length + 1 + word.Length <= width)
            {
                broken[^1] += " " + word;
            }
            else
            {
                broken.Add(word);
            }
        }

        return string.Join('\n', broken);
    }));
}
