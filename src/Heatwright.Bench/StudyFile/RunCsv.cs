using System.Globalization;
using System.Text;

namespace Heatwright.StudyFile;

/// <summary>The readings of one run as comma-separated text, field by field exactly as typed (RFC 4180, UTF-8).</summary>
/// <remarks>A reader of our own: what a maker typed has to come back to the last blank, and each slip has to be told with its line.</remarks>
internal static class RunCsv
{
    private const string Rule = "a field in quotes where it holds a comma, a quote or a line end";

    public static string Write(IEnumerable<IReadOnlyList<string>> lines)
    {
        var text = new StringBuilder();
        foreach (var fields in lines)
        {
            // A lone empty field is written as "" because an empty line is no reading.
            text.AppendJoin(',', fields is [""] ? ["\"\""] : fields.Select(Quoted)).Append('\n');
        }
        return text.ToString();
    }

    /// <summary>The lines with their numbers in the file; what cannot be read is told and skipped.</summary>
    public static IReadOnlyList<(int Line, IReadOnlyList<string> Fields)> Read(string text, string file, ProblemList problems)
    {
        var lines = new List<(int, IReadOnlyList<string>)>();
        string whole = text.TrimEnd('\r', '\n');
        int at = 0, line = 1;
        while (at < whole.Length)
        {
            int first = line;
            var fields = new List<string>();
            string? fault = ReadLine(whole, ref at, ref line, fields);
            if (fault is not null)
            {
                problems.Add(fault, $"{file}, line {Number(first)}", fields.Count > 0 ? fields[^1] : "", Rule, "Write the line anew, or export it again.");
                at = NextLine(whole, at, ref line);
            }
            else if (fields is [])
            {
                problems.Add("A line between readings is empty.", $"{file}, line {Number(first)}", "an empty line", "one reading a line; a reading that was left empty is \"\"", "Remove the line, or write \"\".");
            }
            else
            {
                lines.Add((first, fields));
            }
        }
        return lines;
    }

    private static string? ReadLine(string text, ref int at, ref int line, List<string> fields)
    {
        if (EndsLine(text, ref at, ref line))
        {
            return null;
        }
        while (true)
        {
            string? fault = at < text.Length && text[at] == '"' ? ReadQuoted(text, ref at, ref line, fields) : ReadBare(text, ref at, fields);
            if (fault is not null || at == text.Length || EndsLine(text, ref at, ref line))
            {
                return fault;
            }
            if (text[at] != ',')
            {
                fields.Add(text[at..Math.Min(text.Length, at + 20)]);
                return text[at] == '\r' ? "A carriage return stands alone in a field without quotes." : "Text follows a closing quote.";
            }
            at++;
        }
    }

    private static string? ReadBare(string text, ref int at, List<string> fields)
    {
        int end = text.AsSpan(at).IndexOfAny(",\r\n\"");
        end = end < 0 ? text.Length : at + end;
        fields.Add(text[at..end]);
        at = end;
        return at < text.Length && text[at] == '"' ? "A quote stands inside a field without quotes." : null;
    }

    private static string? ReadQuoted(string text, ref int at, ref int line, List<string> fields)
    {
        var field = new StringBuilder();
        at++;
        while (true)
        {
            int quote = text.IndexOf('"', at);
            if (quote < 0)
            {
                fields.Add(text[at..Math.Min(text.Length, at + 20)]);
                at = text.Length;
                return "A quote is never closed.";
            }
            field.Append(text, at, quote - at);
            at = quote + 1;
            if (at == text.Length || text[at] != '"')
            {
                break;
            }
            field.Append('"');
            at++;
        }
        string whole = field.ToString();
        line += whole.AsSpan().Count('\n');
        fields.Add(whole);
        return null;
    }

    private static bool EndsLine(string text, ref int at, ref int line)
    {
        int length = at >= text.Length ? 0 : text[at] == '\n' ? 1 : text[at] == '\r' && at + 1 < text.Length && text[at + 1] == '\n' ? 2 : 0;
        at += length;
        line += length > 0 ? 1 : 0;
        return length > 0;
    }

    private static int NextLine(string text, int at, ref int line)
    {
        int end = text.IndexOf('\n', at);
        line++;
        return end < 0 ? text.Length : end + 1;
    }

    private static string Quoted(string field) =>
        field.AsSpan().IndexOfAny(",\"\r\n") < 0 ? field : $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
