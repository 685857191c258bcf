using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Heatwright.StudyFile;

/// <summary>Compares JSON with the type it is to become, tells every difference, and writes a mended copy that can be read.</summary>
/// <remarks>The serializer stops at the first fault. A maker who typed study.json by hand wants all of them, those in meaning too:
/// so a faulty field is told, filled with a stand-in and its path kept, and the checks that follow are silent about that path.</remarks>
internal sealed class JsonMend(string file, ProblemList problems, Utf8JsonWriter mended)
{
    private readonly HashSet<string> standIns = new(StringComparer.Ordinal);

    /// <summary>True: something is not there at all that no stand-in can take the place of.</summary>
    public bool Hopeless { get; private set; }

    /// <summary>True for the path of a field whose value is a stand-in.</summary>
    public bool StandsIn(string path) => standIns.Contains(path);

    public void Mend(JsonElement element, JsonTypeInfo type, string path)
    {
        switch (type.Kind)
        {
            case JsonTypeInfoKind.Object when Is(element, JsonValueKind.Object, "an object { … }", path):
                MendObject(element, type, path);
                break;
            case JsonTypeInfoKind.Enumerable when Is(element, JsonValueKind.Array, "a list [ … ]", path):
                MendList(element, type, path);
                break;
            case JsonTypeInfoKind.Dictionary when Is(element, JsonValueKind.Object, "names with values { … }", path):
                MendDictionary(element, type, path);
                break;
            case JsonTypeInfoKind.None:
                MendLeaf(element, type.Type, path);
                break;
            default:
                Hopeless = true;
                mended.WriteNullValue();
                break;
        }
    }

    private bool Is(JsonElement element, JsonValueKind kind, string limit, string path)
    {
        if (element.ValueKind == kind)
        {
            return true;
        }
        Tell("A field is of the wrong kind.", path, element.GetRawText(), limit, "Write the field as docs/formats/bundle.md shows it.");
        return false;
    }

    private void MendObject(JsonElement element, JsonTypeInfo type, string path)
    {
        var known = type.Properties.ToDictionary(property => property.Name, StringComparer.Ordinal);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        mended.WriteStartObject();
        foreach (var member in element.EnumerateObject())
        {
            string at = Under(path, member.Name);
            if (!seen.Add(member.Name))
            {
                Tell("A field stands twice.", at, member.Value.GetRawText(), "once", "Remove one of the two.");
            }
            else if (!known.TryGetValue(member.Name, out var property))
            {
                Tell("A field is not known.", at, member.Value.GetRawText(), string.Join(", ", known.Keys), "Correct its name or remove it; nothing is dropped silently.");
            }
            else if (member.Value.ValueKind != JsonValueKind.Null)
            {
                mended.WritePropertyName(member.Name);
                Mend(member.Value, type.Options.GetTypeInfo(property.PropertyType), at);
            }
            else if (!MayBeNull(property))
            {
                Tell("A field is null.", at, "null", "a value", "Write a value, or leave the field out where it may be absent.");
                WriteStandIn(property, at);
            }
        }
        foreach (var property in type.Properties.Where(property => IsNeeded(property) && !seen.Contains(property.Name)))
        {
            string at = Under(path, property.Name);
            Tell("A field is missing.", at, "absent", "present", "Add it, as docs/formats/bundle.md shows it.");
            WriteStandIn(property, at);
        }
        mended.WriteEndObject();
    }

    private void WriteStandIn(JsonPropertyInfo property, string at)
    {
        mended.WritePropertyName(property.Name);
        var type = property.Options.GetTypeInfo(property.PropertyType);
        switch (type.Kind)
        {
            case JsonTypeInfoKind.Enumerable:
                mended.WriteStartArray();
                mended.WriteEndArray();
                break;
            case JsonTypeInfoKind.Dictionary:
                mended.WriteStartObject();
                mended.WriteEndObject();
                break;
            case JsonTypeInfoKind.None:
                StandIn(property.PropertyType, at);
                break;
            default:
                Hopeless = true;
                mended.WriteNullValue();
                break;
        }
    }

    private void MendList(JsonElement element, JsonTypeInfo type, string path)
    {
        var inner = type.Options.GetTypeInfo(type.ElementType!);
        mended.WriteStartArray();
        int number = 0;
        foreach (var item in element.EnumerateArray())
        {
            Mend(item, inner, $"{path}[{number.ToString(CultureInfo.InvariantCulture)}]");
            number++;
        }
        mended.WriteEndArray();
    }

    private void MendDictionary(JsonElement element, JsonTypeInfo type, string path)
    {
        var inner = type.Options.GetTypeInfo(type.ElementType!);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        mended.WriteStartObject();
        foreach (var member in element.EnumerateObject())
        {
            string at = Under(path, member.Name);
            if (!seen.Add(member.Name))
            {
                Tell("A name stands twice.", at, member.Value.GetRawText(), "once", "Remove one of the two.");
                continue;
            }
            mended.WritePropertyName(member.Name);
            Mend(member.Value, inner, at);
        }
        mended.WriteEndObject();
    }

    private void MendLeaf(JsonElement element, Type declared, string path)
    {
        var type = Nullable.GetUnderlyingType(declared) ?? declared;
        string? limit = Fits(element, type);
        if (limit is null)
        {
            element.WriteTo(mended);
            return;
        }
        Tell(type.IsEnum ? "A word is not known." : "A value is not what its field takes.", path, element.GetRawText(), limit, "Correct the value.");
        StandIn(declared, path);
    }

    /// <summary>Null where the value fits; else what would.</summary>
    private static string? Fits(JsonElement element, Type type) => type switch
    {
        _ when type == typeof(bool) => element.ValueKind is JsonValueKind.True or JsonValueKind.False ? null : "true or false",
        _ when type == typeof(double) => IsNumber(element) && double.IsFinite(element.GetDouble()) ? null : "a number such as 3.82, with a decimal point and without quotes",
        _ when type == typeof(int) => IsNumber(element) && element.TryGetInt32(out _) ? null : "a whole number",
        _ when type == typeof(ulong) => IsNumber(element) && element.TryGetUInt64(out _) ? null : "a whole number from 0 to 18446744073709551615",
        { IsEnum: true } => element.ValueKind == JsonValueKind.String && Words(type).Contains(element.GetString(), StringComparer.Ordinal) ? null : string.Join(", ", Words(type)),
        _ => element.ValueKind == JsonValueKind.String ? null : "text in quotes",
    };

    private static bool IsNumber(JsonElement element) => element.ValueKind == JsonValueKind.Number;

    private void StandIn(Type declared, string path)
    {
        standIns.Add(path);
        var type = Nullable.GetUnderlyingType(declared) ?? declared;
        if (type != declared)
        {
            mended.WriteNullValue();
        }
        else if (type == typeof(bool))
        {
            mended.WriteBooleanValue(false);
        }
        else if (type == typeof(double) || type == typeof(int) || type == typeof(ulong))
        {
            mended.WriteNumberValue(0);
        }
        else
        {
            mended.WriteStringValue(type.IsEnum ? Words(type)[0] : "");
        }
    }

    private static string[] Words(Type type) => [.. Enum.GetNames(type).Select(JsonNamingPolicy.CamelCase.ConvertName)];

    // Required by its constructor, or, for a field with a default, never null where the type says so.
    private static bool IsNeeded(JsonPropertyInfo property) => property.AssociatedParameter is { HasDefaultValue: false } || property.IsRequired;

    private static bool MayBeNull(JsonPropertyInfo property) =>
        property.PropertyType.IsValueType ? Nullable.GetUnderlyingType(property.PropertyType) is not null
        : property.AssociatedParameter is { } parameter ? parameter.IsNullable : property.IsSetNullable;

    private static string Under(string path, string name) => path.Length == 0 ? name : $"{path}.{name}";

    private void Tell(string what, string path, string value, string limit, string next) =>
        problems.Add(what, path.Length == 0 ? file : $"{file}, {path}", value, limit, next);
}
