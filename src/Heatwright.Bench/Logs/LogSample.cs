using System.Buffers;

namespace Heatwright.Logs;

/// <summary>A line of the text by its place.</summary>
internal readonly record struct LinePlace(int Start, int Length)
{
    public ReadOnlySpan<byte> In(ReadOnlySpan<byte> text) => text.Slice(Start, Length);
}

/// <summary>Some lines from the head, the middle and near the end: enough to see the form of a log of any length.</summary>
internal sealed class LogSample
{
    public const int HeadLines = 240;
    private const int DeepLines = 60;
    private const int LongestLine = 16384;
    private static readonly SearchValues<byte> RuleMarks = SearchValues.Create("|-:+= \t"u8);

    private LogSample(List<LinePlace> lines) => Lines = lines;

    public IReadOnlyList<LinePlace> Lines { get; }

    public static LogSample Take(ReadOnlySpan<byte> text)
    {
        var lines = new List<LinePlace>();
        int end = Take(text, 0, HeadLines, lines);
        foreach (int from in (int[])[text.Length / 4, text.Length / 2, text.Length / 10 * 9])
        {
            int start = text[from..].IndexOf((byte)'\n') + from + 1;
            if (start > end)
            {
                end = Take(text, start, DeepLines, lines);
            }
        }

        return new(lines);
    }

    private static int Take(ReadOnlySpan<byte> text, int from, int count, List<LinePlace> lines)
    {
        var walk = new LineWalk(text, from);
        int wanted = lines.Count + count;
        while (lines.Count < wanted && walk.Next())
        {
            if (!LineWalk.IsBlank(walk.Line) && !IsRule(walk.Line) && walk.Line.Length <= LongestLine)
            {
                lines.Add(new(walk.Start, walk.Line.Length));
            }
        }

        return walk.Start + walk.Line.Length;
    }

    /// <summary>The rule between the head and the rows of a table drawn with bars: |---:|---:|.</summary>
    public static bool IsRule(ReadOnlySpan<byte> line) => line.IndexOf("--"u8) >= 0 && line.IndexOfAny("|+"u8) >= 0 && line.IndexOfAnyExcept(RuleMarks) < 0;

    /// <summary>A remark of the instrument or the maker, no reading.</summary>
    public static bool IsRemark(ReadOnlySpan<byte> line)
    {
        var text = line.TrimStart(" \t"u8);
        return text.StartsWith("#"u8) || text.StartsWith("//"u8) || text.StartsWith("%"u8);
    }
}
