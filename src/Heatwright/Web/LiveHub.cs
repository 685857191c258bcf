using System.Globalization;
using System.Text.Json;
using System.Threading.Channels;
using Heatwright.Instruments;
using Heatwright.Jobs;
using Heatwright.Quantities;

namespace Heatwright.Web;

/// <summary>A value as the live page shows it.</summary>
/// <param name="Source">The instrument.</param>
/// <param name="Name">Name in its lines.</param>
/// <param name="Unit">Unit, empty where it is not known.</param>
/// <param name="AtS">When it came.</param>
/// <param name="Value">The number; null: over range, none, or words.</param>
/// <param name="Text">What the instrument itself shows; empty: the number tells more.</param>
public sealed record LiveValue(string Source, string Name, string Unit, double AtS, double? Value, string Text);

/// <summary>Gathers what is heard and tells it to every open page four times a second: thinned for the eye, with the peaks kept. A slow page misses some; the listening never waits for one.</summary>
internal sealed class LiveHub : IHeardTaker
{
    /// <summary>Points of a curve in one message.</summary>
    private const int MostPoints = 24;

    /// <summary>Points of a curve that a page gets when it opens.</summary>
    private const int MostKept = 1200;

    private const int MostNotes = 30;
    private const int LongestFigure = 9;
    private const int MostChannels = 48;
    private const int MostBehind = 8;

    /// <summary>A gap in a curve goes as the word NaN.</summary>
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { NumberHandling = System.Text.Json.Serialization.JsonNumberHandling.AllowNamedFloatingPointLiterals };

    private readonly Lock gate = new();
    private readonly List<Channel<string>> pages = [];
    private readonly Dictionary<string, LiveChannel> channels = new(StringComparer.Ordinal);
    private readonly List<object> notes = [];
    private readonly List<object> newNotes = [];

    public Problem? Take(Heard heard)
    {
        lock (gate)
        {
            switch (heard)
            {
                case Heard.Line line:
                    foreach (var one in line.Readouts.Where(one => one.Kind != ReadoutKind.Time))
                    {
                        string key = $"{line.Source}\u001f{one.Name}";
                        if (!channels.TryGetValue(key, out var channel) && channels.Count < MostChannels)
                        {
                            channels[key] = channel = new();
                        }

                        channel?.Take(line, one);
                    }

                    break;
                case Heard.Note note:
                    var said = new { note.AtS, note.Source, State = note.State.ToString().ToLowerInvariant(), note.Words };
                    newNotes.Add(said);
                    notes.Add(said);
                    notes.RemoveRange(0, Math.Max(0, notes.Count - MostNotes));
                    break;
            }
        }

        return null;
    }

    public Problem? Settle(bool last)
    {
        lock (gate)
        {
            var fresh = channels.Values.Where(channel => channel.HasFresh).Select(channel => channel.Message(channel.Fresh())).ToArray();
            if (fresh.Length > 0 || newNotes.Count > 0 || last)
            {
                string message = JsonSerializer.Serialize(new { Channels = fresh, Notes = newNotes, Over = last }, Json);
                newNotes.Clear();
                pages.ForEach(page => page.Writer.TryWrite(message));
            }

            if (last)
            {
                pages.ForEach(page => page.Writer.TryComplete());
            }
        }

        return null;
    }

    /// <summary>The values as they stand, for a page without script.</summary>
    public IReadOnlyList<LiveValue> Now()
    {
        lock (gate)
        {
            return [.. channels.Values.Select(channel => channel.Latest)];
        }
    }

    /// <summary>All that a page needs at first, then each message as it comes.</summary>
    public async IAsyncEnumerable<string> Messages([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancel)
    {
        var page = Channel.CreateBounded<string>(new BoundedChannelOptions(MostBehind) { FullMode = BoundedChannelFullMode.DropOldest, SingleReader = true });
        string first;
        lock (gate)
        {
            first = JsonSerializer.Serialize(new { Channels = channels.Values.Select(channel => channel.Message(channel.Kept)), Notes = notes, Over = false }, Json);
            pages.Add(page);
        }

        try
        {
            yield return first;
            await foreach (string message in page.Reader.ReadAllAsync(cancel).ConfigureAwait(false))
            {
                yield return message;
            }
        }
        finally
        {
            lock (gate)
            {
                pages.Remove(page);
            }
        }
    }

    /// <summary>One value of one instrument over time.</summary>
    private sealed class LiveChannel
    {
        private readonly List<double[]> fresh = [];
        private bool inGap = true;

        public LiveValue Latest { get; private set; } = new("", "", "", 0, null, "");

        public List<double[]> Kept { get; } = [];

        public bool HasFresh { get; private set; }

        public void Take(Heard.Line line, Readout one)
        {
            HasFresh = true;
            bool number = one.Kind == ReadoutKind.Number && double.IsFinite(one.Value);
            string text = one.Kind == ReadoutKind.Overload ? "OL" : one.Kind == ReadoutKind.Words ? one.Raw : number ? AsSent(one) : "-";
            Latest = new(line.Source, one.Name, one.Unit?.Symbol ?? "", line.AtS, number ? one.Value : null, text);
            if (number || !inGap)
            {
                fresh.Add([line.AtS, number ? one.Value : double.NaN]);
            }

            inGap = !number;
        }

        /// <summary>The figures that the instrument itself shows, noughts at the end included, so that a figure does not change its width; empty where they are long or in another unit.</summary>
        private static string AsSent(Readout one) =>
            one.Raw.Length <= LongestFigure && double.TryParse(one.Raw, NumberStyles.Float, CultureInfo.InvariantCulture, out double raw) && raw == one.Value && !one.Raw.Contains('e', StringComparison.OrdinalIgnoreCase) ? one.Raw.TrimStart('+') : "";

        public List<double[]> Fresh()
        {
            HasFresh = false;
            var thin = Thin(fresh, MostPoints);
            fresh.Clear();
            Kept.AddRange(thin);
            if (Kept.Count > 2 * MostKept)
            {
                var half = Thin(Kept, MostKept);
                Kept.Clear();
                Kept.AddRange(half);
            }

            return thin;
        }

        public object Message(IReadOnlyList<double[]> points) => new { Latest.Source, Latest.Name, Latest.Unit, Latest.AtS, Latest.Value, Latest.Text, Points = points };

        /// <summary>The least and the greatest of each bin, in their order, and a gap: neither a short peak nor an overload is ever thinned away.</summary>
        private static List<double[]> Thin(List<double[]> points, int most)
        {
            if (points.Count <= most)
            {
                return [.. points];
            }

            var thin = new List<double[]>(most);
            int bins = most / 2;
            for (int bin = 0; bin < bins; bin++)
            {
                int from = (int)((long)points.Count * bin / bins), to = (int)((long)points.Count * (bin + 1) / bins);
                int least = -1, greatest = -1, gap = -1;
                for (int i = from; i < to; i++)
                {
                    if (double.IsNaN(points[i][1]))
                    {
                        gap = i;
                        continue;
                    }

                    least = least < 0 || points[i][1] < points[least][1] ? i : least;
                    greatest = greatest < 0 || points[i][1] > points[greatest][1] ? i : greatest;
                }

                thin.AddRange(new SortedSet<int> { least, greatest, gap }.Where(i => i >= 0).Select(i => points[i]));
            }

            return thin;
        }
    }
}
