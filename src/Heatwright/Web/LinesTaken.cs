using Heatwright.Jobs.Trials;
using Heatwright.Quantities;

namespace Heatwright.Web;

/// <summary>Lines that were taken lately, by the name that their page gave them: one whose answer was lost is sent again, and is taken once.</summary>
internal sealed class LinesTaken
{
    private const int MostKept = 2000;

    private readonly Lock gate = new();
    private readonly Dictionary<string, Lazy<Checked<ReadingTaken>>> taken = new(StringComparer.Ordinal);
    private readonly Queue<string> order = [];

    /// <summary>What came of a line, from the first time it was sent.</summary>
    public Checked<ReadingTaken> Once(string id, Func<Checked<ReadingTaken>> take)
    {
        if (id.Length is 0 or > 40)
        {
            return take();
        }

        Lazy<Checked<ReadingTaken>> one;
        lock (gate)
        {
            if (!taken.TryGetValue(id, out one!))
            {
                taken[id] = one = new(take);
                order.Enqueue(id);
                if (order.Count > MostKept)
                {
                    taken.Remove(order.Dequeue());
                }
            }
        }

        return one.Value;
    }
}
