using System.Globalization;
using Heatwright.Jobs;
using Heatwright.Quantities;

namespace Heatwright.Web;

/// <summary>Two who change one value from two pages: both changes stay in the history, the later one stands, and whoever made it is told.</summary>
internal sealed class Meanwhile
{
    private const int MostKept = 200;

    private readonly Lock gate = new();
    private readonly Queue<(string Id, string Words)> told = [];
    private long count;

    /// <summary>Does a change, and finds what others did to the same values since the page was drawn.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="record">Name of what is changed, as the history knows it.</param>
    /// <param name="seen">Number of the last change that the page showed, as its form sent it.</param>
    /// <param name="job">The change.</param>
    /// <returns>What the job gave, and a mark for the page that follows; empty: nobody came between.</returns>
    public (Checked<T> Done, string Mark) Do<T>(string path, string record, string seen, Func<Checked<T>> job)
    {
        // One after the other: of two that come at the same moment the second must see the first.
        lock (gate)
        {
            bool known = long.TryParse(seen, NumberStyles.None, CultureInfo.InvariantCulture, out long last);
            long before = known ? Last(path) : 0;
            var done = job();
            if (!known || before <= last || !done.IsFine)
            {
                return (done, "");
            }

            var changes = ChangeStudy.History(path, record);
            var mine = changes.IsFine ? changes.Value.Where(one => one.Change.Number > before).SelectMany(one => one.Fields).ToArray() : [];
            string[] both =
            [
                .. (changes.IsFine ? changes.Value : []).Where(one => one.Change.Number > last && one.Change.Number <= before && !one.Change.Undone).SelectMany(one => one.Fields)
                    .Where(other => mine.Any(own => own.Where == other.Where)).Select(other => $"{other.Where} from {other.Before ?? "nothing"} to {other.After ?? "nothing"}; yours, {mine.Last(own => own.Where == other.Where).After ?? "nothing"}, stands now"),
            ];
            return (done, both.Length == 0 ? "" : Keep($"While your page was open, somebody else changed {string.Join("; and ", both)}. The history keeps both."));
        }
    }

    /// <summary>The words behind a mark; empty: none. Only what was said here is shown, not what a link says.</summary>
    public string Words(string mark)
    {
        lock (gate)
        {
            return told.FirstOrDefault(one => one.Id == mark).Words ?? "";
        }
    }

    private static long Last(string path) => OpenStudy.Read(path) is { IsFine: true, Value.Change: var number } ? number : 0;

    private string Keep(string words)
    {
        string id = (++count).ToString(CultureInfo.InvariantCulture);
        told.Enqueue((id, words));
        while (told.Count > MostKept)
        {
            told.Dequeue();
        }

        return id;
    }
}
