using System.Text.RegularExpressions;
using Heatwright.Quantities;

namespace Heatwright.Logs;

/// <summary>A header cell taken apart: the name, its unit as written, the unit if it is known, and the order of a date if it says so.</summary>
internal sealed partial record HeaderName(string Name, string UnitText, Unit? Unit, DateOrder? DateOrder, bool? MinutesAndSeconds)
{
    private static readonly string[] TimeNames =
        ["time", "zeit", "temps", "tiempo", "tempo", "tijd", "tid", "t", "elapsed", "timestamp", "seconds", "secs", "millis", "runtime", "uptime", "clock", "uhrzeit", "duration", "dauer", "epoch"];

    public static HeaderName Split(string cell)
    {
        string text = cell.Trim();
        (string name, string unitText) = InBrackets(text) ?? InParentheses(text) ?? AfterMark(text) ?? (text, "");
        var pattern = Pattern().Match(text);
        var order = pattern.Success ? Order(pattern.Value) : null;
        bool? minutes = MinuteForm().IsMatch(text) ? !HourForm().IsMatch(text) : HourForm().IsMatch(text) ? false : null;
        if (order is not null || minutes is not null)
        {
            name = Braced().Replace(name, "").Trim();
            unitText = "";
        }

        unitText = unitText.Length == 0 && NamesUnit(text) ? text : unitText;
        return new(name.Trim(), unitText, UnitOf(unitText, name), order, minutes);
    }

    /// <summary>mA, Volts, degC: the unit is the name. Single letters name a column as often as a unit, and min, bar, deg are words of their own.</summary>
    private static bool NamesUnit(string text) => text.Length > 1 && UnitWords.Find(text) is { } unit
        && (unit.Dimension == Units.Volt.Dimension || unit.Dimension == Units.Ampere.Dimension || unit.Dimension == Units.Ohm.Dimension || unit.Dimension == Units.Watt.Dimension
            || unit.Dimension == Units.AmpereHour.Dimension || unit.Dimension == Units.Joule.Dimension || unit.Dimension == Units.Celsius.Dimension);

    /// <summary>C is a charge beside a capacity, F a capacitance; on everything else of a heated tool they are degrees.</summary>
    public static Unit? UnitOf(string unitText, string name) => unitText.Trim(' ', '(', ')', '[', ']') switch
    {
        "C" when name.Contains("charge", StringComparison.OrdinalIgnoreCase) => Units.Coulomb,
        _ => UnitWords.Find(unitText),
    };

    /// <summary>Does the name speak of time?</summary>
    public static bool IsTime(string name) => Words().Matches(name).Any(word => TimeNames.Contains(word.Value, StringComparer.OrdinalIgnoreCase));

    private static (string, string)? InBrackets(string text)
    {
        int open = text.LastIndexOf('['), close = text.LastIndexOf(']');
        if (open < 0 || close < open + 2 || text.AsSpan(open + 1, close - open - 1).Trim().IndexOfAnyExceptInRange('0', '9') < 0)
        {
            return null;
        }

        return (Joined(text[..open], text[(close + 1)..]), text[(open + 1)..close].Trim());
    }

    /// <summary>Parentheses hold units and much else; only what is known as a unit, or is built like one, is taken for one.</summary>
    private static (string, string)? InParentheses(string text)
    {
        foreach (Match match in Braced().Matches(text).Reverse())
        {
            string inside = match.Value[1..^1].Trim();
            if (UnitWords.Find(inside) is not null || (Quotient().IsMatch(inside) && UnitWords.Find(inside[(inside.IndexOf('/') + 1)..]) is not null))
            {
                string name = Joined(text[..match.Index], text[(match.Index + match.Length)..]);
                if (Misleads(inside, name))
                {
                    continue;
                }

                return (name, inside);
            }
        }

        return null;
    }

    /// <summary>U/V, Spannung in V, Temperature, °C, bat_mV, temp_C: a unit behind a mark, taken only when it cannot be a mere letter of the name.</summary>
    private static (string, string)? AfterMark(string text)
    {
        text = text.TrimEnd();
        int at = text.LastIndexOfAny(['/', ',', '_', ' ']);
        if (at <= 0 || at == text.Length - 1)
        {
            return null;
        }

        string unit = text[(at + 1)..].Trim(), name = text[..at].Trim(' ', ',');
        bool spaced = text[at] == ' ' && name.EndsWith('/'), said = text[at] == ' ' && name.EndsWith(" in", StringComparison.OrdinalIgnoreCase);
        name = spaced ? name[..^1].TrimEnd() : said ? name[..^3].TrimEnd() : name;
        bool hinted = spaced || said || text[at] is '/' or ',' || unit.Length > 1 || !char.IsAsciiLetter(unit[0]) || Speaks(name, unit);
        return hinted && unit[0] is not ('(' or '[') && !Misleads(unit, name) && !unit.StartsWith("day", StringComparison.OrdinalIgnoreCase) && UnitWords.Find(unit) is not null && name.Length > 0 ? (name, unit) : null;
    }

    /// <summary>min beside a temperature is its least value, not a minute.</summary>
    private static bool Misleads(string unit, string name) => unit.Equals("min", StringComparison.OrdinalIgnoreCase) && !IsTime(name);

    /// <summary>A single letter is a unit only where the name speaks of its quantity: 'Channel A' counts no amperes.</summary>
    private static bool Speaks(string name, string unit) => unit switch
    {
        "C" or "F" or "K" => TempLike().IsMatch(name),
        "V" => VoltLike().IsMatch(name),
        "A" => AmpLike().IsMatch(name),
        "W" => PowerLike().IsMatch(name),
        "s" => IsTime(name),
        _ => false,
    };

    private static string Joined(string before, string behind) => (before.Trim() + " " + behind.Trim()).Trim();

    private static DateOrder? Order(string pattern) => char.ToUpperInvariant(pattern[0]) switch
    {
        'D' or 'T' => Logs.DateOrder.DayMonthYear,
        'M' => Logs.DateOrder.MonthDayYear,
        _ => Logs.DateOrder.YearMonthDay,
    };

    [GeneratedRegex(@"\([^()]*\)", RegexOptions.CultureInvariant)]
    private static partial Regex Braced();

    [GeneratedRegex(@"^[%°µμA-Za-z0-9^²³ .·*-]{1,8}/[%°µμA-Za-z0-9^²³ .·*-]{1,8}$", RegexOptions.CultureInvariant)]
    private static partial Regex Quotient();

    [GeneratedRegex(@"\b(?:D{1,2}|T{1,2})[./-]M{1,3}[./-][YJ]{2,4}\b|\bM{1,2}[./-]D{1,2}[./-]Y{2,4}\b|\bY{2,4}[./-]M{1,2}[./-]D{1,2}\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Pattern();

    [GeneratedRegex(@"\bm{1,2}:ss\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex MinuteForm();

    [GeneratedRegex(@"\bh{1,2}:mm\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex HourForm();

    [GeneratedRegex(@"[A-Za-z]+", RegexOptions.CultureInvariant)]
    private static partial Regex Words();

    [GeneratedRegex(@"temp|tip|hot|cold|ambient|room|air|blade|band|grip|handle|jaw|head|plate|case|end$|^t\d*$|_t\d*$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex TempLike();

    [GeneratedRegex(@"volt|bat|pack|cell|heat|coil|wire|loop|ribbon|strip|rod|supply|charg|module|(?:^|[_ ])(?:in|out)$|^u|^v", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex VoltLike();

    [GeneratedRegex(@"curr|amp|load|loop|bat|pack|cell|heat|coil|wire|ribbon|strip|rod|module|supply|charg|(?:^|[_ ])(?:in|out)$|^i$|^i_|_i$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex AmpLike();

    [GeneratedRegex(@"pow|watt|heat|load|loop|bat|coil|wire|ribbon|strip|rod|supply|(?:^|[_ ])(?:in|out)$|^p$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex PowerLike();
}
