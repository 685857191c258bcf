using System.Globalization;
using System.Text.Json;

namespace Heatwright.StudyFile;

/// <summary>The values in which two bodies of one record differ.</summary>
internal static class RecordDifference
{
    // Members by which the entries of a list are told apart, the first that all of them have without a double.
    private static readonly string[] Keys = ["id", "number", "name", "quantity"];

    /// <summary>The differing values; null stands for a record that is not there.</summary>
    public static IReadOnlyList<FieldChange> Of(string? before, string? after)
    {
        var (old, next) = (Leaves(before), Leaves(after));
        var fields = next.Where(leaf => old.GetValueOrDefault(leaf.Key) != leaf.Value).Select(leaf => new FieldChange(leaf.Key, old.GetValueOrDefault(leaf.Key), leaf.Value));
        return [.. old.Where(leaf => !next.ContainsKey(leaf.Key)).Select(leaf => new FieldChange(leaf.Key, leaf.Value, null)), .. fields];
    }

    private static OrderedDictionary<string, string> Leaves(string? body)
    {
        var leaves = new OrderedDictionary<string, string>(StringComparer.Ordinal);
        if (body is not null)
        {
            using var json = JsonDocument.Parse(body);
            Walk(json.RootElement, "", leaves);
        }

        return leaves;
    }

    private static void Walk(JsonElement element, string where, OrderedDictionary<string, string> leaves)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (var member in element.EnumerateObject())
                {
                    Walk(member.Value, where.Length == 0 ? member.Name : $"{where}.{member.Name}", leaves);
                }

                break;
            case JsonValueKind.Array:
                JsonElement[] entries = [.. element.EnumerateArray()];
                string[] names = Names(entries);
                for (int i = 0; i < entries.Length; i++)
                {
                    Walk(entries[i], $"{where}[{names[i]}]", leaves);
                }

                break;
            case JsonValueKind.Null or JsonValueKind.Undefined:
                break;
            default:
                leaves[where] = element.ValueKind == JsonValueKind.String ? element.GetString()! : element.GetRawText();
                break;
        }
    }

    private static string[] Names(JsonElement[] entries)
    {
        foreach (string key in Keys)
        {
            string[] names = [.. entries.Select(entry => entry.ValueKind == JsonValueKind.Object && entry.TryGetProperty(key, out var name)
                && name.ValueKind is JsonValueKind.String or JsonValueKind.Number ? name.ToString() : "")];
            if (names.Length > 0 && names.All(name => name.Length > 0) && names.Distinct(StringComparer.Ordinal).Count() == names.Length)
            {
                return names;
            }
        }

        return [.. Enumerable.Range(1, entries.Length).Select(i => i.ToString(CultureInfo.InvariantCulture))];
    }
}
