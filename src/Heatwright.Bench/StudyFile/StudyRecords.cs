using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.StudyFile;

/// <summary>A study as the flat records that the file keeps: one row a thing, its place in its list first, its body as JSON.</summary>
internal static class StudyRecords
{
    private sealed record Head(string Name, ulong Seed, string Note, bool Invented);

    /// <summary>Kind, id and body of every record, in a fixed order.</summary>
    public static SortedDictionary<(string Kind, string Id), string> Of(Study study)
    {
        var records = new SortedDictionary<(string Kind, string Id), string>
        {
            [("study", "")] = Json(0, new Head(study.Name, study.Seed, study.Note, study.Invented)),
        };
        if (study.Brief is { } brief)
        {
            records[("brief", "")] = Json(0, brief);
        }

        Add("instrument", study.Instruments, instrument => instrument.Id, instrument => instrument);
        Add("part", study.Parts, part => part.Id.Name, part => part);
        Add("arrangement", study.Arrangements, arrangement => arrangement.Id.Name, arrangement => arrangement);
        Add("trial", study.Trials, trial => trial.Id.Name, trial => trial with { Runs = [] });
        foreach (var trial in study.Trials)
        {
            Add("run", trial.Runs, run => $"{trial.Id}\n{run.Id}", run => run);
        }

        return records;

        void Add<T>(string kind, IReadOnlyList<T> list, Func<T, string> id, Func<T, T> body)
        {
            for (int i = 0; i < list.Count; i++)
            {
                records[(kind, id(list[i]))] = Json(i, body(list[i]));
            }
        }
    }

    /// <summary>The study that records make.</summary>
    public static Study Join(IEnumerable<(string Kind, string Id, string Body)> rows)
    {
        var all = rows.ToArray();
        var head = Body<Head>(all.Single(row => row.Kind == "study").Body);
        var runs = all.Where(row => row.Kind == "run").Select(row => (Trial: row.Id.Split('\n')[0], Place: Place(row.Body), Run: Body<Run>(row.Body)))
            .ToLookup(row => row.Trial, StringComparer.Ordinal);
        return new Study(head.Name, head.Seed)
        {
            Note = head.Note,
            Invented = head.Invented,
            Brief = all.Where(row => row.Kind == "brief").Select(row => Body<Brief>(row.Body)).FirstOrDefault(),
            Instruments = List<Instrument>("instrument"),
            Parts = List<Part>("part"),
            Arrangements = List<Arrangement>("arrangement"),
            Trials = [.. List<Trial>("trial").Select(trial => trial with { Runs = [.. runs[trial.Id.Name].OrderBy(row => row.Place).Select(row => row.Run)] })],
        };

        T[] List<T>(string kind) => [.. all.Where(row => row.Kind == kind).OrderBy(row => Place(row.Body)).Select(row => Body<T>(row.Body))];
    }

    /// <summary>A fingerprint of the content: same content, same fingerprint, on any machine.</summary>
    public static string Fingerprint(SortedDictionary<(string Kind, string Id), string> records)
    {
        var text = new StringBuilder();
        foreach (var (key, body) in records)
        {
            text.Append(key.Kind).Append('\u001f').Append(key.Id).Append('\u001f').Append(body).Append('\u001e');
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..16];
    }

    /// <summary>Place in its list, a line break, the JSON.</summary>
    private static string Json<T>(int place, T value) => $"{place.ToString(System.Globalization.CultureInfo.InvariantCulture)}\n{JsonSerializer.Serialize(value, StudyJson.Options)}";

    private static int Place(string body) => int.Parse(body.AsSpan(0, body.IndexOf('\n', StringComparison.Ordinal)), System.Globalization.CultureInfo.InvariantCulture);

    private static T Body<T>(string body) => JsonSerializer.Deserialize<T>(body[(body.IndexOf('\n', StringComparison.Ordinal) + 1)..], StudyJson.Options)
        ?? throw new JsonException("A record of the study is empty.");
}
