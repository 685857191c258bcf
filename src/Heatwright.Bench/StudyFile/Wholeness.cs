using System.Collections;
using System.Text.Json.Serialization.Metadata;

namespace Heatwright.StudyFile;

/// <summary>Whether every text of a study can be written down and read again as it is, every number is one, and nothing is null that may not be.</summary>
/// <remarks>Walks the same properties that the JSON has, so a field added later is looked at too.</remarks>
internal static class Wholeness
{
    public static void Check(Study study, CheckDesk desk) => Check(study, StudyJson.Options.GetTypeInfo(typeof(Study)), "", desk);

    private static void Check(object? value, JsonTypeInfo type, string path, CheckDesk desk)
    {
        switch (value)
        {
            case string text when !IsWhole(text):
                desk.Say(path, "A text holds half of a character.", text.Replace("\0", "", StringComparison.Ordinal), "whole characters (no lone surrogate)", "Type the text again.");
                break;
            case double number when !double.IsFinite(number):
                desk.Say(path, "A number is none.", CheckDesk.Number(number), "a finite number", "Correct the number.");
                break;
            case not null when type.Kind == JsonTypeInfoKind.Object:
                foreach (var property in type.Properties.Where(property => property.Get is not null))
                {
                    Check(property.Get!(value), type.Options.GetTypeInfo(property.PropertyType), path.Length == 0 ? property.Name : $"{path}.{property.Name}", desk);
                }
                break;
            case IDictionary words when type.Kind == JsonTypeInfoKind.Dictionary:
                foreach (DictionaryEntry entry in words)
                {
                    Check(entry.Key, type.Options.GetTypeInfo(typeof(string)), path, desk);
                    Check(entry.Value, type.Options.GetTypeInfo(type.ElementType!), $"{path}.{entry.Key}", desk);
                }
                break;
            case IEnumerable list when type.Kind == JsonTypeInfoKind.Enumerable:
                int i = 0;
                foreach (object? item in list)
                {
                    Check(item, type.Options.GetTypeInfo(type.ElementType!), CheckDesk.At(path, i++), desk);
                }
                break;
            case not null when type.Kind == JsonTypeInfoKind.None && value.ToString() is { } id && !IsWhole(id):
                desk.Say(path, "An id holds half of a character.", "", "whole characters (no lone surrogate)", "Choose another id.");
                break;
        }
    }

    internal static bool IsWhole(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsSurrogate(text[i]))
            {
                if (i + 1 == text.Length || !char.IsSurrogatePair(text[i], text[i + 1]))
                {
                    return false;
                }
                i++;
            }
        }
        return true;
    }
}
