using System.Collections.Concurrent;
using System.Diagnostics;

namespace Heatwright.Proofs;

/// <summary>Edits that were acknowledged, and how long each of the other browsers on the same trial waited for its page to show them.</summary>
internal sealed class Sightings(Pauses pauses)
{
    private readonly ConcurrentDictionary<(int Watcher, string Text), long> awaited = new();
    private readonly ConcurrentBag<(long From, long To)> met = [];

    /// <summary>Waits that ended, in milliseconds, shortest first; without those across a pause of the machine.</summary>
    public IReadOnlyList<double> WaitsMs => [.. met.Where(one => !pauses.Touch(one.From, one.To)).Select(one => Stopwatch.GetElapsedTime(one.From, one.To).TotalMilliseconds).Order()];

    /// <summary>All that ended.</summary>
    public int Ended => met.Count;

    /// <summary>Waits that did not.</summary>
    public int Open => awaited.Count;

    /// <summary>It is sent now: from here on these browsers should come to see it. One may see it before its sender has the answer.</summary>
    public void Expect(string text, IEnumerable<int> watchers)
    {
        long now = Stopwatch.GetTimestamp();
        foreach (int watcher in watchers)
        {
            awaited[(watcher, text)] = now;
        }
    }

    /// <summary>It was refused: nobody will see it.</summary>
    public void Forget(string text)
    {
        foreach (var key in awaited.Keys.Where(key => key.Text == text))
        {
            awaited.TryRemove(key, out _);
        }
    }

    /// <summary>A browser's page as it is now.</summary>
    public void Look(int watcher, string page)
    {
        foreach (var (key, since) in awaited.Where(one => one.Key.Watcher == watcher && page.Contains(one.Key.Text, StringComparison.Ordinal)))
        {
            if (awaited.TryRemove(key, out _))
            {
                met.Add((since, Stopwatch.GetTimestamp()));
            }
        }
    }
}
