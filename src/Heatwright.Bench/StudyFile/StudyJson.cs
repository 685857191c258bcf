using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using System.Text.Unicode;
using Heatwright.Quantities;

namespace Heatwright.StudyFile;

/// <summary>How everything of a study is written as JSON: camelCase names and words, bare ids, every digit of a number, nothing unknown.</summary>
public static class StudyJson
{
    /// <summary>How deep lists may stand in lists.</summary>
    internal const int MaxDepth = 32;

    /// <summary>One line, characters that mean something to a page escaped: for records and for machines.</summary>
    public static JsonSerializerOptions Options { get; } = Make(indented: false, JavaScriptEncoder.Create(UnicodeRanges.All));

    /// <summary>Indented and unescaped, for files that people read; never put into a page, where an unescaped &lt; would begin a tag.</summary>
    public static JsonSerializerOptions Pretty { get; } = Make(indented: true, JavaScriptEncoder.UnsafeRelaxedJsonEscaping);

    private static JsonSerializerOptions Make(bool indented, JavaScriptEncoder encoder)
    {
        var options = new JsonSerializerOptions
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            NumberHandling = JsonNumberHandling.Strict,
            UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
            AllowDuplicateProperties = false,
            RespectNullableAnnotations = true,
            RespectRequiredConstructorParameters = true,
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            MaxDepth = MaxDepth,
            WriteIndented = indented,
            NewLine = "\n",
            Encoder = encoder,
            TypeInfoResolver = new DefaultJsonTypeInfoResolver(),
        };
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false));
        options.Converters.Add(new IdConverter<PartId>(name => new(name), id => id.Name));
        options.Converters.Add(new IdConverter<TrialId>(name => new(name), id => id.Name));
        options.Converters.Add(new IdConverter<RunId>(name => new(name), id => id.Name));
        options.Converters.Add(new IdConverter<ArrangementId>(name => new(name), id => id.Name));
        options.MakeReadOnly();
        return options;
    }

    /// <summary>An id as the bare word it is, in values and as a name.</summary>
    private sealed class IdConverter<T>(Func<string, T> make, Func<T, string> word) : JsonConverter<T>
        where T : struct
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.String ? make(reader.GetString()!) : throw new JsonException("An id is a word in quotes.");

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(word(value));

        public override T ReadAsPropertyName(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => make(reader.GetString()!);

        public override void WriteAsPropertyName(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WritePropertyName(word(value));
    }
}
