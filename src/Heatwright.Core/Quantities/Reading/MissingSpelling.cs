namespace Heatwright.Quantities;

/// <summary>Words and signs that say there is no value.</summary>
internal static class MissingSpelling
{
    private static readonly string[] NotTaken = ["n/a", "na", "n.a.", "n.a", "none", "not taken", "skipped", "unknown", "tbd"];

    /// <summary>'.0F' and '0.F' are what decoders of seven-segment displays make of OL.</summary>
    private static readonly string[] Overload =
        ["ol", "0l", "o.l", "0.l", ".ol", ".0l", "ol.", "0l.", "ovld", "overload", "overflow", "over range", "overrange", "inf", "infinity", ".0f", "0.f", "-inf", "+inf"];

    private static readonly string[] NotANumber = ["nan", "-nan", "#n/a", "null"];

    /// <summary>Instruments that answer in numbers say 9.9E37 when they have none (IEEE 488.2 tradition, from memory).</summary>
    public const double NumberForOverload = 9e36;

    /// <summary>Why the whole text is no value, or null where it may be one.</summary>
    public static MissingReason? Of(string text)
    {
        string word = text.ToLowerInvariant();
        return word.Length == 0 || word is "blank" ? MissingReason.Blank
            : word is "-" or "open" ? MissingReason.Open
            : word.Length > 1 && word.All(c => c is '-' or '.' or ':') && word.Contains('-', StringComparison.Ordinal) ? MissingReason.Dashes
            : word is "?" || NotTaken.Contains(word) ? MissingReason.NotTaken
            : NotANumber.Contains(word) ? MissingReason.NotANumber
            : IsOverload(word) ? MissingReason.Overload
            : null;
    }

    /// <summary>The spelling that gives this reason back.</summary>
    public static string Spell(MissingReason why) => why switch
    {
        MissingReason.Blank => "blank",
        MissingReason.NotTaken => "n/a",
        MissingReason.Overload => "OL",
        MissingReason.Open => "open",
        MissingReason.Dashes => "---",
        _ => "NaN",
    };

    /// <summary>OL, alone, signed, or with the unit that the display showed beside it.</summary>
    private static bool IsOverload(string word)
    {
        string bare = word.TrimStart('-', '+', '>').Trim();
        if (Overload.Contains(bare))
        {
            return true;
        }

        int space = bare.IndexOf(' ', StringComparison.Ordinal);
        return space > 0 && Overload.Contains(bare[..space]) && UnitSpelling.At(bare, space + 1, Expect.Anything, true).Any(unit => unit.End == bare.Length);
    }
}
