using System.Text;

namespace Heatwright.Logs;

/// <summary>Walks the lines of a text, each without its line end and outer blanks, counting from 1.</summary>
internal ref struct LineWalk(ReadOnlySpan<byte> text, int from = 0, int lineBefore = 0)
{
    private readonly ReadOnlySpan<byte> text = text;
    private int next = from;

    public int Number { get; private set; } = lineBefore;

    /// <summary>Where the current line starts in the text.</summary>
    public int Start { get; private set; }

    /// <summary>Where the line after the current one starts.</summary>
    public readonly int Following => Math.Min(next, text.Length);

    public ReadOnlySpan<byte> Line { get; private set; }

    /// <summary>True when the current line has a line end: the last line of a cut file has none.</summary>
    public bool Ended { get; private set; }

    public bool Next()
    {
        if (next >= text.Length)
        {
            return false;
        }

        Start = next;
        var rest = text[next..];
        int end = rest.IndexOf((byte)'\n');
        Ended = end >= 0;
        Line = Ended ? rest[..end] : rest;
        next += Line.Length + 1;
        // Tabs stay: a trailing tab may be an empty cell.
        Line = Line.TrimEnd((byte)'\r');
        Number++;
        return true;
    }

    /// <summary>The next line that is not blank.</summary>
    public bool NextSaying()
    {
        while (Next())
        {
            if (!IsBlank(Line))
            {
                return true;
            }
        }

        return false;
    }

    public static bool IsBlank(ReadOnlySpan<byte> line) => line.IndexOfAnyExcept(" \t\r\f\v"u8) < 0;

    public static string Show(ReadOnlySpan<byte> line) => Encoding.UTF8.GetString(line.Length > 80 ? Cut(line) : line).Trim();

    private static ReadOnlySpan<byte> Cut(ReadOnlySpan<byte> line)
    {
        int end = 80;
        while (end > 70 && (line[end] & 0xC0) == 0x80)
        {
            end--;
        }

        return line[..end];
    }
}
