using System.Text;
using System.Text.RegularExpressions;

namespace Heatwright.Logs;

/// <summary>Lines that are no rows yet: a console's stamp before each, or label:value pairs. They become rows, line for line.</summary>
internal static partial class LineForms
{
    private const int MostLabels = 256;

    /// <summary>So many labels that hardly ever come are columns: what a boot says once. More of them are torn or garbled lines.</summary>
    private const int FewSeldom = 8;

    private const int SeldomIn = 1000;

    /// <summary>Rows made from such lines, with the names of their columns where the lines bring them.</summary>
    public sealed record Rows(byte[] Text, byte Separator, string[]? Names, bool Stamped);

    /// <summary>Null when the lines are ordinary rows.</summary>
    public static Rows? Find(ReadOnlySpan<byte> text, LogSample sample)
    {
        var lines = Strings(text, sample);
        bool stamped = lines.Count > 0 && lines.Count(line => Stamp(line, out _) is not null) * 10 >= lines.Count * 6;
        var inner = stamped ? [.. lines.Select(line => Stamp(line, out string rest) is null ? "" : rest).Where(rest => rest.Length > 0)] : lines;
        bool labelled = inner.Count > 0 && inner.Count(line => LabelledLine.Pairs(line) is not null) * 2 > inner.Count;
        return labelled ? Labelled(text, stamped) : stamped ? Stamped(text, inner) : null;
    }

    private static List<string> Strings(ReadOnlySpan<byte> text, LogSample sample)
    {
        var lines = new List<string>();
        foreach (var place in sample.Lines)
        {
            lines.Add(Encoding.UTF8.GetString(place.In(text)));
        }

        return lines;
    }

    public static string? Stamp(string line, out string rest)
    {
        rest = "";
        var match = StampForm().Match(line.Length > 64 ? line[..64] : line);
        if (!match.Success || !TimeCell.TryRead(match.Groups["time"].Value, false, out _))
        {
            return null;
        }

        rest = line[match.Length..];
        return match.Groups["time"].Value.Trim();
    }

    private static Rows Stamped(ReadOnlySpan<byte> text, List<string> inner)
    {
        byte[] bare = Encoding.UTF8.GetBytes(string.Join('\n', inner));
        byte separator = SeparatorFinder.Find(bare, LogSample.Take(bare))?.Separator ?? (byte)';';
        separator = separator == 0 ? (byte)';' : separator;
        var rows = new MemoryStream(text.Length);
        string mark = "\"" + (char)separator;
        EachLine(text, line => Write(rows, Stamp(line, out string rest) is { } stamp ? "\"" + stamp + mark + rest : line));
        return new(rows.ToArray(), separator, null, true);
    }

    /// <summary>Twice over the lines: the first time for the labels, the second for their values.</summary>
    private static Rows Labelled(ReadOnlySpan<byte> text, bool stamped)
    {
        var names = new List<string>();
        if (stamped)
        {
            names.Add("stamp");
        }

        var often = new Dictionary<string, int>(StringComparer.Ordinal);
        var room = new Dictionary<string, string>(StringComparer.Ordinal);
        int lines = 0;
        EachLine(text, line =>
        {
            var cells = LabelledCells(line, stamped, room, out _);
            lines++;
            foreach (string label in cells?.Keys ?? Enumerable.Empty<string>())
            {
                if (often.TryGetValue(label, out int seen))
                {
                    often[label] = seen + 1;
                }
                else if (names.Count < MostLabels)
                {
                    often.Add(label, 1);
                    names.Add(label);
                }
            }
        });
        LeaveOut(names, often, lines, text.Length);
        var rows = new MemoryStream(text.Length);
        EachLine(text, line => Write(rows, LabelledCells(line, stamped, room, out string stamp) is { } cells && names.Exists(cells.ContainsKey)
            ? string.Join('\t', names.Select((name, i) => stamped && i == 0 ? stamp : cells.GetValueOrDefault(name, ""))) : line));
        if (Torn(text, names.Count - (stamped ? 1 : 0), stamped) is { } torn)
        {
            // A capture that ends within a line: its last label has lost figures, or the labels behind it are gone.
            rows.SetLength(rows.Length - 1);
            rows.SetLength(rows.GetBuffer().AsSpan(0, (int)rows.Length).LastIndexOf((byte)'\n') + 1);
            rows.Write(Encoding.UTF8.GetBytes(torn));
        }

        return new(rows.ToArray(), (byte)'\t', [.. names], stamped);
    }

    /// <summary>Labels that are no columns: lines that hold nothing else are told as refused.</summary>
    private static void LeaveOut(List<string> names, Dictionary<string, int> often, int lines, int bytes)
    {
        bool IsSeldom(string name) => often.TryGetValue(name, out int seen) && seen * SeldomIn < lines;
        if (names.Count(IsSeldom) > FewSeldom)
        {
            names.RemoveAll(IsSeldom);
        }

        // Lines of a label or two, each time another: a column has room for a value in every line.
        int most = (int)Math.Clamp((long)bytes * ColumnFill.RoomForByte / sizeof(double) / Math.Max(1, lines), 1, MostLabels);
        foreach (string name in names.Where(often.ContainsKey).OrderByDescending(name => often[name]).Skip(most).ToList())
        {
            names.Remove(name);
        }
    }

    /// <summary>The last line, where it has no end and not all of the labels.</summary>
    private static string? Torn(ReadOnlySpan<byte> text, int labels, bool stamped)
    {
        var last = text[(text.LastIndexOf((byte)'\n') + 1)..];
        string line = Encoding.UTF8.GetString(last);
        return labels > 1 && LabelledCells(line, stamped, null, out _) is { } cells && cells.Count < labels ? line : null;
    }

    private static Dictionary<string, string>? LabelledCells(string line, bool stamped, Dictionary<string, string>? room, out string stamp)
    {
        stamp = "";
        if (!stamped)
        {
            return LabelledLine.Pairs(line, room);
        }

        if (Stamp(line, out string rest) is not { } found)
        {
            return null;
        }

        stamp = found;
        return LabelledLine.Pairs(rest, room);
    }

    private static void EachLine(ReadOnlySpan<byte> text, Action<string> act)
    {
        var walk = new LineWalk(text);
        while (walk.Next())
        {
            act(Encoding.UTF8.GetString(walk.Line));
        }
    }

    private static void Write(MemoryStream rows, string line)
    {
        rows.Write(Encoding.UTF8.GetBytes(line));
        rows.WriteByte((byte)'\n');
    }

    [GeneratedRegex(@"^\s*(?:\[(?<time>[0-9T:.,/ +-]{5,32}Z?)\]\s*:?\s*|(?<time>[0-9T:.,/ +-]{5,32}?Z?)\s*->\s?)", RegexOptions.CultureInvariant)]
    private static partial Regex StampForm();
}
