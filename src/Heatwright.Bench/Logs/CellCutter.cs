using System.Text;

namespace Heatwright.Logs;

/// <summary>Cuts a line into cells at one separator; a blank as separator means runs of blanks and tabs, NUL means the whole line is one cell.</summary>
internal sealed class CellCutter(byte separator)
{
    private int[] starts = new int[64];
    private int[] ends = new int[64];

    public byte Separator => separator;

    public int Count { get; private set; }

    public ReadOnlySpan<byte> Cell(ReadOnlySpan<byte> line, int index) => line[starts[index]..ends[index]];

    public int Start(int index) => starts[index];

    public int End(int index) => ends[index];

    /// <summary>The cell as text, with doubled quotes made single.</summary>
    public string Text(ReadOnlySpan<byte> line, int index)
    {
        string text = Encoding.UTF8.GetString(Cell(line, index)).Trim();
        return text.Contains("\"\"", StringComparison.Ordinal) ? text.Replace("\"\"", "\"", StringComparison.Ordinal) : text;
    }

    public string[] Texts(ReadOnlySpan<byte> line)
    {
        int count = Cut(line);
        string[] texts = new string[count];
        for (int i = 0; i < count; i++)
        {
            texts[i] = Text(line, i);
        }

        return texts;
    }

    public int Cut(ReadOnlySpan<byte> line)
    {
        Count = 0;
        if (separator == ' ')
        {
            CutAtBlanks(line);
        }
        else if (separator == 0)
        {
            CutNowhere(line);
        }
        else
        {
            CutAtMarks(line);
        }

        return Count;
    }

    /// <summary>The whole line, or what stands in its quotes: a table of one column with decimal commas is written so.</summary>
    private void CutNowhere(ReadOnlySpan<byte> line)
    {
        int at = 0;
        var text = line.TrimEnd(" \t\r"u8);
        if (text.Length < 2 || text[0] != '"' || !AddQuoted(text, ref at) || at < text.Length)
        {
            Count = 0;
            Add(line, 0, line.Length);
        }
    }

    private void CutAtMarks(ReadOnlySpan<byte> line)
    {
        int at = 0;
        while (true)
        {
            int start = at;
            while (at < line.Length && line[at] == ' ')
            {
                at++;
            }

            if (at < line.Length && line[at] == '"' && AddQuoted(line, ref at))
            {
                while (at < line.Length && line[at] != separator)
                {
                    at++;
                }
            }
            else
            {
                while (at < line.Length && line[at] != separator)
                {
                    at++;
                }

                Add(line, start, at);
            }

            if (at >= line.Length)
            {
                return;
            }

            at++;
        }
    }

    private void CutAtBlanks(ReadOnlySpan<byte> line)
    {
        int at = 0;
        while (true)
        {
            while (at < line.Length && line[at] is (byte)' ' or (byte)'\t')
            {
                at++;
            }

            if (at >= line.Length)
            {
                return;
            }

            if (line[at] == '"' && AddQuoted(line, ref at))
            {
                continue;
            }

            int start = at;
            while (at < line.Length && line[at] is not ((byte)' ' or (byte)'\t'))
            {
                at++;
            }

            Add(line, start, at);
        }
    }

    /// <summary>A quoted cell ends at a quote that is not doubled; a quote that never closes is an ordinary character.</summary>
    private bool AddQuoted(ReadOnlySpan<byte> line, ref int at)
    {
        int end = at + 1;
        while (end < line.Length)
        {
            if (line[end] == '"')
            {
                if (end + 1 < line.Length && line[end + 1] == '"')
                {
                    end++;
                }
                else
                {
                    Add(line, at + 1, end);
                    at = end + 1;
                    return true;
                }
            }

            end++;
        }

        return false;
    }

    private void Add(ReadOnlySpan<byte> line, int start, int end)
    {
        while (start < end && line[start] <= ' ')
        {
            start++;
        }

        while (end > start && line[end - 1] <= ' ')
        {
            end--;
        }

        if (Count == starts.Length)
        {
            Array.Resize(ref starts, Count * 2);
            Array.Resize(ref ends, Count * 2);
        }

        starts[Count] = start;
        ends[Count++] = end;
    }
}
