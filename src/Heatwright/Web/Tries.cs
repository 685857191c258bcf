using Heatwright.Arrangements;
using Heatwright.Jobs;
using Heatwright.Verdicts;

namespace Heatwright.Web;

/// <summary>What was worked out for changes that are being tried: sides as they stand, and verdicts by draws, as long as the study stays the same.</summary>
internal sealed class Tries
{
    /// <summary>More are not kept: they are quickly worked out again.</summary>
    private const int Most = 64;

    private readonly Lock gate = new();
    private readonly Dictionary<string, TriedSide> sides = [];
    private readonly Dictionary<string, ArrangementVerdict> drawn = [];
    private string fingerprint = "";

    /// <summary>Draws of one change at a time: they take all cores there are.</summary>
    public SemaphoreSlim OneAtATime { get; } = new(1, 1);

    /// <summary>A change by its middle values. The side as it stands is worked out once.</summary>
    public Quantities.Checked<Tried> Of(OpenedStudy opened, Shelf shelf, string letter, IReadOnlyList<KeyValuePair<string, string>> typed, CancellationToken cancel)
    {
        var was = Kept(opened.Fingerprint, sides, letter);
        var tried = Tried.Of(opened.Study, shelf, letter, typed, was, cancel);
        if (was is null && tried.IsFine)
        {
            Keep(opened.Fingerprint, sides, letter, tried.Value.Was);
        }

        return tried;
    }

    /// <summary>The verdict that was drawn for a change, or null.</summary>
    public ArrangementVerdict? Drawn(string state, Tried tried) => Kept(state, drawn, Key(tried));

    /// <summary>Keeps a verdict that was drawn.</summary>
    public void Keep(string state, Tried tried, ArrangementVerdict verdict) => Keep(state, drawn, Key(tried), verdict);

    private static string Key(Tried tried) => $"{tried.Change.From.Letter}\u001f{string.Join('\u001f', tried.Change.Values.Select(value => $"{value.Name}={value.Is}"))}";

    private T? Kept<T>(string state, Dictionary<string, T> from, string key)
        where T : class
    {
        lock (gate)
        {
            return state == fingerprint ? from.GetValueOrDefault(key) : null;
        }
    }

    private void Keep<T>(string state, Dictionary<string, T> into, string key, T one)
    {
        lock (gate)
        {
            if (state != fingerprint)
            {
                fingerprint = state;
                sides.Clear();
                drawn.Clear();
            }

            if (into.Count >= Most)
            {
                into.Clear();
            }

            into[key] = one;
        }
    }
}
