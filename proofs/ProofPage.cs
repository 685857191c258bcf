using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Heatwright.Proofs;

/// <summary>Writes the figures of all result files into the page that shows them, so that no figure is ever copied by hand.</summary>
public static class ProofPage
{
    /// <summary>What stands before the written part of the page.</summary>
    public const string Begin = "<!-- written from proofs/results by 'dotnet run --project proofs -- validation' -->";

    /// <summary>What stands after it.</summary>
    public const string End = "<!-- end of what is written from proofs/results -->";

    /// <summary>The page with its written part as the result files have it.</summary>
    /// <param name="page">The page as it stands, with both marks.</param>
    /// <param name="resultFolder">Folder of the result files.</param>
    public static string Written(string page, string resultFolder)
    {
        int begin = page.IndexOf(Begin, StringComparison.Ordinal), end = page.IndexOf(End, StringComparison.Ordinal);
        if (begin < 0 || end < begin)
        {
            throw new InvalidDataException($"The page lacks the line {Begin} or, after it, {End}.");
        }

        var text = new StringBuilder(page[..begin]).Append(Begin).Append('\n');
        foreach (string file in Directory.GetFiles(resultFolder, "*.json").Order(StringComparer.Ordinal))
        {
            using var json = JsonDocument.Parse(File.ReadAllText(file));
            Section(text, json.RootElement);
        }

        return text.Append('\n').Append(page[end..]).ToString();
    }

    private static void Section(StringBuilder text, JsonElement kept)
    {
        string command = kept.TryGetProperty("command", out var typed) ? typed.GetString()! : kept.GetProperty("proof").GetString()!;
        text.Append(CultureInfo.InvariantCulture, $"\n### {kept.GetProperty("proof").GetString()}\n\n`dotnet run -c Release --project proofs -- {command}`, {kept.GetProperty("date").GetString()}, seed {kept.GetProperty("seed")}, {kept.GetProperty("machine").GetString()}\n");
        foreach (var member in kept.GetProperty("result").EnumerateObject())
        {
            Value(text, member.Name, member.Value);
        }
    }

    private static void Value(StringBuilder text, string name, JsonElement value)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.Object when value.EnumerateObject().Any():
                Table(text, [Words(name)], [.. value.EnumerateObject().Select(member => (member.Name, member.Value))]);
                break;
            case JsonValueKind.Array when value.GetArrayLength() > 0 && value[0].ValueKind == JsonValueKind.Object:
                Table(text, [], [.. value.EnumerateArray().Select(row => ("", row))]);
                break;
            case JsonValueKind.Array:
                text.Append(CultureInfo.InvariantCulture, $"\n{Words(name)}: {(value.GetArrayLength() == 0 ? "none" : string.Join("; ", value.EnumerateArray().Select(Text)))}\n");
                break;
            default:
                text.Append(CultureInfo.InvariantCulture, $"\n{Words(name)}: {Text(value)}\n");
                break;
        }
    }

    private static void Table(StringBuilder text, string[] first, IReadOnlyList<(string Name, JsonElement Row)> rows)
    {
        string[] columns = rows[0].Row.ValueKind == JsonValueKind.Object ? [.. rows[0].Row.EnumerateObject().Select(member => member.Name)] : [];
        string[] heads = [.. first, .. columns.Length > 0 ? columns.Select(Words) : ["what was seen"]];
        text.Append(CultureInfo.InvariantCulture, $"\n| {string.Join(" | ", heads)} |\n|{string.Concat(Enumerable.Repeat(" --- |", heads.Length))}\n");
        foreach (var (name, row) in rows)
        {
            string[] cells = [.. first.Length > 0 ? [name] : Array.Empty<string>(), .. columns.Length > 0 ? columns.Select(column => row.TryGetProperty(column, out var cell) ? Text(cell) : "") : [Text(row)]];
            text.Append(CultureInfo.InvariantCulture, $"| {string.Join(" | ", cells.Select(cell => cell.Replace("|", "\\|", StringComparison.Ordinal)))} |\n");
        }
    }

    private static string Text(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Number when value.GetDouble() is var number && number != Math.Floor(number) => number.ToString("G4", CultureInfo.InvariantCulture),
        JsonValueKind.True => "yes",
        JsonValueKind.False => "no",
        JsonValueKind.Null => "",
        JsonValueKind.Object => string.Join(", ", value.EnumerateObject().Select(member => $"{Words(member.Name)} {Text(member.Value)}")),
        JsonValueKind.Array => string.Join(", ", value.EnumerateArray().Select(Text)),
        _ => value.ToString(),
    };

    /// <summary>'worstTailS' as 'worst tail s'.</summary>
    private static string Words(string name) => string.Concat(name.Select((letter, i) => char.IsUpper(letter) && i > 0 ? " " + char.ToLowerInvariant(letter) : letter.ToString()));
}
