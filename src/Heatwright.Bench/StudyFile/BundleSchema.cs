using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using Heatwright.Quantities;

namespace Heatwright.StudyFile;

/// <summary>The JSON schema of study.json, made from the very types that read it.</summary>
public static class BundleSchema
{
    /// <summary>The schema as docs/formats/bundle.schema.json holds it.</summary>
    public static string Text()
    {
        var schema = StudyJson.Pretty.GetJsonSchemaAsNode(typeof(BundleDocument), new JsonSchemaExporterOptions { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = Node }).AsObject();
        schema.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.Insert(1, "title", $"study.json of a bundle, {BundleDocument.Current}");
        return schema.ToJsonString(StudyJson.Pretty) + "\n";
    }

    // An id is written by a converter, which the exporter cannot look into. Null is refused where a field may simply be left out.
    private static JsonNode Node(JsonSchemaExporterContext context, JsonNode schema)
    {
        var type = Nullable.GetUnderlyingType(context.TypeInfo.Type) ?? context.TypeInfo.Type;
        return type == typeof(PartId) || type == typeof(TrialId) || type == typeof(RunId) || type == typeof(ArrangementId)
            ? new JsonObject { ["type"] = "string" } : schema;
    }
}
