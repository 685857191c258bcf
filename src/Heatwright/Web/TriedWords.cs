using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Verdicts;

namespace Heatwright.Web;

/// <summary>Words about a change that is tried.</summary>
internal static class TriedWords
{
    /// <summary>All of it in one line, for eyes and for a screen reader.</summary>
    public static string Told(Tried tried)
    {
        if (tried.Is.Run is null)
        {
            return $"It cannot be predicted: {(tried.Is.Problems.Count > 0 ? tried.Is.Problems[0].What : "something is not known.")}";
        }

        string kept = $"The middle run keeps {Kept(tried.Is)} of {Say.Number(tried.Is.Lines.Count)} lines of the brief";
        return tried.Change.Values.Count == 0 ? $"{kept}. Nothing is moved yet."
            : $"{kept}{(Kept(tried.Is) == Kept(tried.Was) ? ", as many as before" : $"; {Kept(tried.Was)} before")}. {Turned(tried)}It runs {Say.Time(tried.Is.Run.RunTimeS)}{(tried.Was.Run is { } was ? $"; {Say.Time(was.RunTimeS)} before" : "")}.";
    }

    /// <summary>What the button that keeps a change says.</summary>
    public static string Keep(Tried tried) => tried.Change.Values.Count == 0 ? "Nothing to keep yet"
        : !tried.Change.ChangesArrangement ? "Keep it in the brief, for all arrangements"
        : $"Keep it as {tried.Change.Arrangement.Letter}{(tried.Change.ChangesBrief ? ", and change the brief for all" : "")}";

    /// <summary>A value of a line; what is none is said.</summary>
    public static string Shown(MiddleLine line) => line.Value is { } value ? $"{Display.Significant(value, 4)}{Say.Unit(line.Requirement.Unit)}" : line.Shown;

    /// <summary>How a line stands now, and whether that turned.</summary>
    public static (string Words, bool Turned) Stands(MiddleLine was, MiddleLine now) => (was.Kept, now.Kept) switch
    {
        (false, true) => ("now kept", true),
        (true, false) => ("now missed", true),
        (_, true) => ("kept", false),
        (_, false) => ("missed", false),
        _ => ("not known", false),
    };

    private static string Kept(TriedSide side) => Say.Number(side.Lines.Count(line => line.Kept == true));

    private static string Turned(Tried tried) => string.Concat(tried.Was.Lines.Zip(tried.Is.Lines).Select(pair => (pair.Second.Requirement, Stands(pair.First, pair.Second))).Where(pair => pair.Item2.Turned)
        .Select(pair => $"{pair.Item2.Words[4..].ToUpperInvariant()[0]}{pair.Item2.Words[5..]} now: {pair.Requirement.Text.TrimEnd('.')}. "));
}
