using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Heatwright.Quantities;

namespace Heatwright.StudyFile;

/// <summary>How study records are written as JSON, in the study file and in bundles alike.</summary>
public static class StudyJson
{
    /// <summary>camelCase names and words, ids as plain text, numbers with every digit, unknown fields refused.</summary>
    public static JsonSerializerOptions Options { get; } = Make(indented: false);

    /// <summary>The same, with line breaks.</summary>
    public static JsonSerializerOptions Pretty { get; } = Make(indented: true);

    private static JsonSerializerOptions Make(bool indented)
    {
        var options = new JsonSerializerOptions
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            WriteIndented = indented,
            NewLine = "\n",
            NumberHandling = JsonNumberHandling.Strict,
            UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
            RespectRequiredConstructorParameters = true,
            RespectNullableAnnotations = true,
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        };
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false));
        options.Converters.Add(new IdConverter<PartId>(name => new PartId(name), id => id.Name));
        options.Converters.Add(new IdConverter<TrialId>(name => new TrialId(name), id => id.Name));
        options.Converters.Add(new IdConverter<RunId>(name => new RunId(name), id => id.Name));
        options.Converters.Add(new IdConverter<ArrangementId>(name => new ArrangementId(name), id => id.Name));
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    private sealed class IdConverter<T>(Func<string, T> make, Func<T, string> name) : JsonConverter<T>
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            make(reader.GetString() is { Length: > 0 } text ? text : throw new JsonException("A name is missing."));

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(name(value));
    }
}
