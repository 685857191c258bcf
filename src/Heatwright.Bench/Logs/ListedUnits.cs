using System.Globalization;
using System.Text.RegularExpressions;

namespace Heatwright.Logs;

/// <summary>Some preambles number the columns and give their units there: '# 2. TOA. Irradiation at the top (Wh/m2)'.</summary>
internal sealed partial class ListedUnits
{
    private readonly Dictionary<int, (string Text, string Unit)> listed = [];

    public static ListedUnits Find(IEnumerable<string> preamble)
    {
        var units = new ListedUnits();
        foreach (string line in preamble)
        {
            var match = Entry().Match(line.Length > 400 ? line[..400] : line);
            if (match.Success && UnitWords.Find(match.Groups["unit"].Value) is not null)
            {
                units.listed[int.Parse(match.Groups["number"].Value, CultureInfo.InvariantCulture)] = (match.Groups["text"].Value, match.Groups["unit"].Value);
            }
        }

        return units;
    }

    /// <summary>Number and name must both agree: a list that counts something else gives no units.</summary>
    public void GiveUnit(Draft draft, int number)
    {
        if (draft.UnitText.Length == 0 && listed.TryGetValue(number, out var entry) && entry.Text.StartsWith(draft.Name, StringComparison.OrdinalIgnoreCase))
        {
            (draft.UnitText, draft.Unit) = (entry.Unit, UnitWords.Find(entry.Unit));
        }
    }

    [GeneratedRegex(@"^[#\s]*(?<number>[0-9]{1,3})[.:)]\s+(?<text>.+)\((?<unit>[^()]{1,20})\)\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Entry();
}
