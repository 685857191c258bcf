using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using Heatwright.StudyFile;

namespace Heatwright.Tests.StudyFile;

/// <summary>Any record spelled out by its properties, so that two studies can be compared by something that knows neither JSON nor SQLite.</summary>
internal static class Spelled
{
    public static string Out(object? value) => value switch
    {
        null => "none",
        string text => $"\"{string.Join(' ', text.Select(c => ((int)c).ToString("x", CultureInfo.InvariantCulture)))}\"",
        double number => BitConverter.DoubleToInt64Bits(number).ToString("x", CultureInfo.InvariantCulture),
        bool or int or ulong or Enum => Convert.ToString(value, CultureInfo.InvariantCulture)!,
        IDictionary words => $"{{{string.Join(',', words.Keys.Cast<string>().Order(StringComparer.Ordinal).Select(key => $"{Out(key)}={Out(words[key])}"))}}}",
        IEnumerable list => $"[{string.Join(',', list.Cast<object?>().Select(Out))}]",
        _ => Properties(value),
    };

    private static string Properties(object value)
    {
        var text = new StringBuilder(value.GetType().Name);
        foreach (var property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.Name != nameof(KeptFile.Content)).OrderBy(property => property.Name, StringComparer.Ordinal))
        {
            text.Append(' ').Append(property.Name).Append(':').Append(Out(property.GetValue(value)));
        }
        return text.Append(';').ToString();
    }
}
