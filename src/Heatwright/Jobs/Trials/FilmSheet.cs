using System.Globalization;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>A table typed off a film: its times are time codes, which no logger writes.</summary>
/// <param name="Text">The table with the number of each row, from 0, in place of its time, so that a reader of logs reads the rest.</param>
/// <param name="Times">The times, row by row.</param>
internal sealed record FilmSheet(string Text, FilmTimes.Times Times)
{
    private static readonly char[] Separators = ['\t', ';', ','];

    /// <summary>The sheet; null where no column holds time codes.</summary>
    /// <param name="text">A head, and a reading a line; lines that begin with '#' are remarks.</param>
    /// <param name="framesPerS">Frames a second.</param>
    public static FilmSheet? Read(string text, double framesPerS)
    {
        string[] lines = [.. text.Split('\n').Select(line => line.TrimEnd('\r').TrimStart('\uFEFF'))];
        int head = Array.FindIndex(lines, line => line.Trim().Length > 0 && !line.StartsWith('#'));
        if (head < 0 || Separators.FirstOrDefault(each => lines[head].Contains(each, StringComparison.Ordinal)) is not (not '\0' and var separator))
        {
            return null;
        }

        string[] names = lines[head].Split(separator);
        string[][] rows = [.. lines.Skip(head + 1).Where(line => line.Trim().Length > 0 && !line.StartsWith('#')).Select(line => line.Split(separator))];
        int time = Enumerable.Range(0, names.Length).FirstOrDefault(column => rows.Any(row => row.Length > column && Cell(row, column).Count(sign => sign == ':') >= 2), -1);
        if (time < 0)
        {
            return null;
        }

        string[] texts = [.. rows.Select(row => row.Length <= time || (row.Length < names.Length && FilmTimes.IsCut(row[0])) ? row[0] : Cell(row, time))];
        string[] numbered = [.. rows.Select((row, number) => string.Join(separator, names.Select((_, column) => column == time ? number.ToString(CultureInfo.InvariantCulture) : column < row.Length && !FilmTimes.IsCut(texts[number]) ? row[column] : "")))];
        names[time] = "time";
        return new(string.Join('\n', [string.Join(separator, names), .. numbered]) + "\n", FilmTimes.Of(texts, framesPerS));
    }

    private static string Cell(string[] row, int column) => row[column].Trim().Trim('"');
}
