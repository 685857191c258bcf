using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>The shapes of what commands write with --json, as a JSON schema.</summary>
internal static class AnswerSchema
{
    /// <summary>The schema: one definition a command; a command that answers in several shapes has any of them.</summary>
    /// <param name="shapes">Words of a command, the types it writes, and how it writes them.</param>
    public static string Text(IEnumerable<(string Words, Type Shape, JsonSerializerOptions Options)> shapes)
    {
        var definitions = new JsonObject();
        foreach (var command in shapes.GroupBy(one => one.Words).OrderBy(group => group.Key, StringComparer.Ordinal))
        {
            JsonNode[] kinds = [.. command.Select(one => Of(one.Shape, one.Options).ToJsonString()).Distinct().Order(StringComparer.Ordinal).Select(text => JsonNode.Parse(text)!)];
            definitions[command.Key] = kinds.Length == 1 ? kinds[0] : new JsonObject { ["anyOf"] = new JsonArray(kinds) };
        }

        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "What Heatwright's commands write with --json; the definition of a command bears its words",
            ["$defs"] = definitions,
        };
        return schema.ToJsonString(Answers.Pretty).ReplaceLineEndings("\n") + "\n";
    }

    private static JsonNode Of(Type shape, JsonSerializerOptions options) => options.GetJsonSchemaAsNode(shape, new JsonSchemaExporterOptions
    {
        TreatNullObliviousAsNonNullable = true,
        TransformSchemaNode = (context, schema) => (Nullable.GetUnderlyingType(context.TypeInfo.Type) ?? context.TypeInfo.Type) == typeof(PartId) && schema is not JsonObject ? new JsonObject { ["type"] = "string" } : schema,
    });
}
