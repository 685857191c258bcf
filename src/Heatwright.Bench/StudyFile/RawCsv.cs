using System.Text;

namespace Heatwright.StudyFile;

/// <summary>Comma-separated raw texts, quotes where needed (RFC 4180). Texts come back exactly as they were written; no value is read.</summary>
internal static class RawCsv
{
    public static string Write(IEnumerable<IReadOnlyList<string>> rows)
    {
        var text = new StringBuilder();
        foreach (var row in rows)
        {
            text.AppendJoin(',', row.Select(Quoted)).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Rows of fields; null where a quote is never closed.</summary>
    public static List<List<string>>? Read(string text)
    {
        List<List<string>> rows = [];
        List<string> row = [];
        var field = new StringBuilder();
        bool quoted = false;
        bool any = false;
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (quoted)
            {
                if (c != '"')
                {
                    field.Append(c);
                }
                else if (i + 1 < text.Length && text[i + 1] == '"')
                {
                    field.Append('"');
                    i++;
                }
                else
                {
                    quoted = false;
                }
            }
            else if (c == '"' && field.Length == 0)
            {
                quoted = any = true;
            }
            else if (c == ',')
            {
                EndField();
                any = true;
            }
            else if (c == '\n')
            {
                EndRow();
            }
            else if (c != '\r' || i + 1 >= text.Length || text[i + 1] != '\n')
            {
                field.Append(c);
                any = true;
            }
        }

        if (quoted)
        {
            return null;
        }

        EndRow();
        return rows;

        void EndField()
        {
            row.Add(field.ToString());
            field.Clear();
        }

        void EndRow()
        {
            if (any)
            {
                EndField();
                rows.Add(row);
                row = [];
                any = false;
            }
        }
    }

    private static string Quoted(string text) =>
        text.AsSpan().IndexOfAny("\",\r\n") >= 0 || text.Length == 0 ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
}
