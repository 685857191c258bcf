namespace Heatwright.BuildSheets;

/// <summary>What stands at the head of emitted code, so that a file found years later still says what it is.</summary>
/// <param name="Study">Name of the study.</param>
/// <param name="State">State of the study the numbers were drawn from.</param>
/// <param name="Date">Day it was written, as 2026-11-25.</param>
/// <param name="Rests">Where the numbers come from: runs, probe, conditions; one line each.</param>
public sealed record CodeNotes(string Study, string State, string Date, IReadOnlyList<string> Rests)
{
    /// <summary>The head of a file.</summary>
    public string Head(string what, params IEnumerable<string> more) =>
        string.Concat(new List<string>([$"{Study}: {what}", $"Written {Date} from study state {State}.", .. Rests, .. more]).Select(line => "// " + Plain(line) + "\n"));

    /// <summary>Comment text that every compiler takes: plain ASCII on one line, and no trailing backslash.</summary>
    internal static string Plain(string text)
    {
        string ascii = text.ReplaceLineEndings(" ").Replace("°C", "degC", StringComparison.Ordinal).Replace("µ", "u", StringComparison.Ordinal).Replace("Ω", "ohm", StringComparison.Ordinal)
            .Replace("±", "+-", StringComparison.Ordinal).Replace('−', '-').Replace('\u00A0', ' ').Replace('·', '*').Replace("²", "^2", StringComparison.Ordinal);
        return string.Concat(ascii.Select(c => c is >= ' ' and <= '~' ? c : '?')).Replace("\\", "/", StringComparison.Ordinal).Replace("??", "?", StringComparison.Ordinal);
    }
}
