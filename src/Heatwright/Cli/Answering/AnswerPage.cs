using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace Heatwright.Cli.Answering;

/// <summary>docs/formats/answers.md: the answers for machines, field by field, for people.</summary>
internal static class AnswerPage
{
    /// <summary>The page of a document of schemas.</summary>
    public static string Of(JsonObject document)
    {
        var page = new StringBuilder();
        page.Append("# Answers for machines\n\n");
        page.Append("What each command writes with `--json`, field by field. Made from the very types that are written, by `heatwright help --write-schemas docs/formats`; a test fails when\n");
        page.Append("it is stale, and another runs every command and holds its answer against the schema.\n\n");
        page.Append("[answers.schema.json](answers.schema.json) is the whole as JSON Schema 2020-12: a definition for each command (its words with dashes between) and one for each record.\n");
        page.Append("`heatwright help --schemas FOLDER` writes one file for each command that needs no other.\n\n");
        page.Append("Numbers are SI or in the unit that stands beside them; a name that ends in S, J, W, C, or in _s, _J, is in seconds, joules, watts, degrees Celsius. A decimal point is a point\n");
        page.Append("whatever the machine's language. A field in *italics* is left out where there is nothing to say. Fields may be added: read those you know. What goes wrong is written to the\n");
        page.Append("error output as [problems](#problems), and the command ends with 1, 2 or 3.\n\n## Commands\n\n| command | answer |\n|---|---|\n");
        var all = document["$defs"]!.AsObject();
        foreach (var (name, schema) in all.Where(pair => char.IsLower(pair.Key[0]) && pair.Key != AnswerSchemas.Problems))
        {
            string words = schema!["title"]!.GetValue<string>();
            string told = schema["anyOf"] is JsonArray forms
                ? string.Join("; ", forms.Select(form => $"{form!["description"]!.GetValue<string>().TrimEnd('.').ToLowerFirst()}: {Kind(form)}")) : Kind(schema);
            page.Append(CultureInfo.InvariantCulture, $"| [`{words}`](../commands.md#{name}) | {told} |\n");
        }

        page.Append(CultureInfo.InvariantCulture, $"\n## Problems\n\n{Kind(all[AnswerSchemas.Problems]!)}: one object on the error output.\n\n## Records\n");
        foreach (var (name, schema) in all.Where(pair => char.IsUpper(pair.Key[0])))
        {
            Record(page, name, schema!.AsObject());
        }

        return page.ToString();
    }

    private static void Record(StringBuilder page, string name, JsonObject record)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n### {name}\n\n{Safe(record["description"]!.GetValue<string>())}\n\n| field | is | means |\n|---|---|---|\n");
        string[] always = [.. record["required"]!.AsArray().Select(one => one!.GetValue<string>())];
        foreach (var (field, schema) in record["properties"]!.AsObject())
        {
            string shown = always.Contains(field) ? $"`{field}`" : $"*{field.Replace("_", "\\_", StringComparison.Ordinal)}*";
            page.Append(CultureInfo.InvariantCulture, $"| {shown} | {Kind(schema!)} | {Safe(schema!["description"]!.GetValue<string>())} |\n");
        }
    }

    private static string Kind(JsonNode schema)
    {
        if (schema["$ref"] is { } at)
        {
            string name = at.GetValue<string>().Split('/')[^1];
            return $"[{name}](#{name.ToLowerInvariant()})";
        }

        if (schema["anyOf"] is JsonArray any)
        {
            return string.Join(" or ", any.Select(one => Kind(one!)));
        }

        if (schema["enum"] is JsonArray words)
        {
            return string.Join(", ", words.Select(word => $"`{word!.GetValue<string>()}`"));
        }

        return schema["type"] switch
        {
            JsonArray several => string.Join(" or ", several.Select(one => one!.GetValue<string>())),
            { } one when one.GetValue<string>() == "array" => $"list of {Kind(schema["items"]!)}",
            { } one when one.GetValue<string>() == "object" => $"{Kind(schema["additionalProperties"]!)} by name",
            { } one => one.GetValue<string>(),
            _ => "",
        };
    }

    private static string Safe(string text) => text.Replace("<", "&lt;", StringComparison.Ordinal).Replace("|", "\\|", StringComparison.Ordinal).Replace("*", "\\*", StringComparison.Ordinal);

    private static string ToLowerFirst(this string text) => text.Length > 0 ? char.ToLowerInvariant(text[0]) + text[1..] : text;
}
