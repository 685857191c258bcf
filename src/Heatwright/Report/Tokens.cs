using System.Reflection;
using System.Text.RegularExpressions;

namespace Heatwright.Report;

/// <summary>The colours and faces of the house for pictures that leave it: read from the style sheet of the pages, so that they have one home.</summary>
internal static partial class Tokens
{
    private static readonly Lazy<IReadOnlyDictionary<string, string>> light = new(Read);

    /// <summary>A token of the light look: '--ink'.</summary>
    public static string Of(string name) => light.Value[name];

    /// <summary>Colour of a slot, 1 to 6.</summary>
    public static string Slot(int slot) => Of("--c" + slot.ToString(System.Globalization.CultureInfo.InvariantCulture));

    private static Dictionary<string, string> Read()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("web/look.css") ?? throw new InvalidOperationException("'look.css' is not in this build.");
        using var reader = new StreamReader(stream);
        string sheet = reader.ReadToEnd();
        int from = sheet.IndexOf(":root {", StringComparison.Ordinal);
        return Token().Matches(sheet[from..sheet.IndexOf('}', from)]).ToDictionary(match => match.Groups[1].Value, match => match.Groups[2].Value.Trim(), StringComparer.Ordinal);
    }

    [GeneratedRegex("(--[a-z0-9-]+):([^;]+);")]
    private static partial Regex Token();
}
