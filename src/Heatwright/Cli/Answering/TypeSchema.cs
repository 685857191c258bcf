using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Heatwright.Quantities;

namespace Heatwright.Cli.Answering;

/// <summary>Schemas of record types, one definition each, made from the very contract by which they are written.</summary>
/// <remarks>A field is required where it is always written: it cannot be null, or null is written. Fields may be added later, so that unknown ones are not forbidden.</remarks>
internal sealed class TypeSchema(FieldWords words)
{
    private readonly Dictionary<(Type Type, bool Nulls), string> names = [];

    private readonly NullabilityInfoContext nullability = new();

    /// <summary>The definitions that were needed so far, by name.</summary>
    public SortedDictionary<string, JsonObject> Definitions { get; } = new(StringComparer.Ordinal);

    /// <summary>The schema of a type, with its definitions put beside those that are there.</summary>
    /// <param name="type">The type.</param>
    /// <param name="written">How it is written.</param>
    public JsonObject Of(Type type, JsonSerializerOptions written)
    {
        written.MakeReadOnly(populateMissingResolver: true); // as the first answer would do
        return Of(type, null, written);
    }

    private JsonObject Of(Type type, NullabilityInfo? known, JsonSerializerOptions written)
    {
        if (Nullable.GetUnderlyingType(type) is { } inner)
        {
            return OrNull(Of(inner, null, written));
        }

        if (Plain(type) is { } plain)
        {
            return plain;
        }

        if (type.IsEnum)
        {
            return new() { ["type"] = "string", ["enum"] = new JsonArray([.. Enum.GetValues(type).Cast<object>().Select(one => JsonSerializer.SerializeToNode(one, type, written))]) };
        }

        var contract = written.GetTypeInfo(type);
        return contract.Kind switch
        {
            JsonTypeInfoKind.Enumerable => new() { ["type"] = "array", ["items"] = Element(contract.ElementType!, known?.ElementType ?? known?.GenericTypeArguments.LastOrDefault(), written) },
            JsonTypeInfoKind.Dictionary => new() { ["type"] = "object", ["additionalProperties"] = Element(contract.ElementType!, known?.GenericTypeArguments.LastOrDefault(), written) },
            JsonTypeInfoKind.Object => new() { ["$ref"] = "#/$defs/" + Defined(contract, written) },
            _ => throw new NotSupportedException($"No schema is known for {type}."),
        };
    }

    private static JsonObject? Plain(Type type) => Type.GetTypeCode(type) switch
    {
        _ when type.IsEnum => null,
        TypeCode.Boolean => new() { ["type"] = "boolean" },
        TypeCode.Int32 or TypeCode.Int64 => new() { ["type"] = "integer" },
        TypeCode.Double => new() { ["type"] = "number" },
        TypeCode.String or TypeCode.Char => new() { ["type"] = "string" },
        _ when type == typeof(DateTimeOffset) => new() { ["type"] = "string", ["format"] = "date-time" },
        _ when type == typeof(PartId) => new() { ["type"] = "string" }, // a converter of Answers writes its name
        _ => null,
    };

    private JsonObject Element(Type type, NullabilityInfo? known, JsonSerializerOptions written) =>
        Of(type, known, written) is var schema && !type.IsValueType && known?.ReadState == NullabilityState.Nullable ? OrNull(schema) : schema;

    private static JsonObject OrNull(JsonObject schema)
    {
        if (schema["type"] is JsonValue type)
        {
            schema["type"] = new JsonArray(type.GetValue<string>(), "null");
            return schema;
        }

        return new() { ["anyOf"] = new JsonArray(schema, new JsonObject { ["type"] = "null" }) };
    }

    private string Defined(JsonTypeInfo contract, JsonSerializerOptions written)
    {
        bool nulls = written.DefaultIgnoreCondition != JsonIgnoreCondition.WhenWritingNull;
        if (names.TryGetValue((contract.Type, nulls), out string? there))
        {
            return there;
        }

        string name = Name(contract.Type);
        names[(contract.Type, nulls)] = name;
        var definition = Definitions[name] = new() { ["type"] = "object", ["description"] = words.Of(contract.Type) };
        var (fields, required) = (new JsonObject(), new JsonArray());
        foreach (var field in contract.Properties.Where(field => field.Get is not null))
        {
            var property = (PropertyInfo)field.AttributeProvider!;
            var known = nullability.Create(property);
            bool nullable = known.ReadState == NullabilityState.Nullable;
            bool left = property.GetCustomAttribute<JsonIgnoreAttribute>()?.Condition is { } own ? own == JsonIgnoreCondition.WhenWritingNull : !nulls;
            var bare = Nullable.GetUnderlyingType(field.PropertyType) ?? field.PropertyType;
            var schema = Of(bare, known, written);
            if (nullable && !left)
            {
                schema = OrNull(schema);
            }

            if (!nullable || !left)
            {
                required.Add(field.Name);
            }

            string said = words.Of(property, field.Name);
            schema.Insert(0, "description", said);
            fields.Add(field.Name, schema);
        }

        definition["properties"] = fields;
        definition["required"] = required;
        return name;
    }

    /// <summary>The record's name without the word for a view; the folder goes before it where two are called the same.</summary>
    private string Name(Type type)
    {
        string bare = type.Name.Replace("JsonView", "", StringComparison.Ordinal);
        bare = bare.EndsWith("View", StringComparison.Ordinal) ? bare[..^"View".Length] : bare;
        return !Definitions.ContainsKey(bare) ? bare : type.Namespace!.Split('.')[^1] + bare is var longer && !Definitions.ContainsKey(longer) ? longer : longer + "Nulls";
    }
}
