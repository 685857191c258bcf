using System.Buffers.Binary;
using System.Text.Json;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;
using Heatwright.Verdicts;
using Microsoft.Data.Sqlite;

namespace Heatwright.StudyFile;

/// <summary>What could be read of a damaged study file.</summary>
/// <param name="Study">A study that hangs together, made of it, with the bytes of its kept files.</param>
/// <param name="Lost">What is missing or was left out, in words.</param>
public sealed record Rescued(Study Study, IReadOnlyList<string> Lost);

/// <summary>Reads what can be read of a damaged study file; the file itself is not opened for writing and stays as it is.</summary>
public static class StudyRescue
{
    /// <summary>A head that claims more than this is not believed.</summary>
    private const long LargestBytes = 8L << 30;

    /// <summary>SQLite opens nothing that is shorter than it says: what was cut off becomes empty pages, which are then missed one by one.</summary>
    /// <remarks>Size of a page at byte 16, number of pages at 28: https://www.sqlite.org/fileformat.html, section 1.3.</remarks>
    private static void Lengthen(string copy)
    {
        using var file = new FileStream(copy, FileMode.Open, FileAccess.ReadWrite);
        byte[] head = new byte[32];
        if (file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false) == head.Length)
        {
            long page = BinaryPrimitives.ReadUInt16BigEndian(head.AsSpan(16)) is 1 ? 65_536 : BinaryPrimitives.ReadUInt16BigEndian(head.AsSpan(16));
            long whole = page * BinaryPrimitives.ReadUInt32BigEndian(head.AsSpan(28));
            if (file.Length < whole && whole < LargestBytes)
            {
                file.SetLength(whole);
            }
        }
    }

    /// <summary>What can be read, or why there is nothing.</summary>
    public static Checked<Rescued> Read(string path)
    {
        string folder = Directory.CreateTempSubdirectory("heatwright-rescue-").FullName;
        try
        {
            // A copy, so that its log can be played and nothing of the evidence is changed.
            string copy = Path.Combine(folder, "a.study");
            foreach (string end in (string[])["", "-wal"])
            {
                if (File.Exists(path + end))
                {
                    File.Copy(path + end, copy + end);
                }
            }

            Lengthen(copy);
            using var connection = StudyOpening.Connect(copy, SqliteOpenMode.ReadWrite);
            var found = new RescueRecords(connection);
            return found.Any ? new(new RescueAssembly(found).Study(path)) : new(SqliteFaults.Damaged(path, "no record can be read"));
        }
        catch (Exception error) when (SqliteFaults.IsExpected(error) || error is SqliteException)
        {
            return new(SqliteFaults.Problem(error, path));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}

/// <summary>The records that can be read; where one is gone, its last text in the history takes its place.</summary>
internal sealed class RescueRecords
{
    private readonly Dictionary<RecordKey, string> bodies = [];

    public RescueRecords(SqliteConnection connection)
    {
        var salvage = new Salvage(connection);
        var gone = new HashSet<RecordKey>();
        var history = new Dictionary<RecordKey, string>();
        var undone = salvage.Rows("change", "CAST(number AS TEXT), state").Where(row => row is [string, not "done"]).Select(row => (string)row[0]!).ToHashSet(StringComparer.Ordinal);
        foreach (object?[] row in salvage.Rows("change_row", "CAST(change AS TEXT), kind, id, after"))
        {
            if (row is [string change, string kind, string id, var after] && !undone.Contains(change))
            {
                var key = new RecordKey(kind, id);
                gone.Remove(key);
                if (after is string text)
                {
                    history[key] = text;
                }
                else
                {
                    gone.Add(key);
                }
            }
        }

        foreach (object?[] row in salvage.Rows("record", "kind, id, body"))
        {
            if (row is [string kind, string id, string body])
            {
                bodies[new(kind, id)] = body;
            }
        }

        Direct = bodies.Count;
        foreach (var (key, text) in history.Where(pair => !gone.Contains(pair.Key)))
        {
            bodies.TryAdd(key, text);
        }

        foreach (object?[] row in salvage.Rows("content", "sha256, bytes"))
        {
            if (row is [string sha256, byte[] bytes] && KeptFile.Fingerprint(bytes) == sha256)
            {
                Content[sha256] = bytes;
            }
        }
    }

    public bool Any => bodies.Count > 0;

    /// <summary>How many records came from their own place.</summary>
    public int Direct { get; }

    public int FromHistory => bodies.Count - Direct;

    public Dictionary<string, byte[]> Content { get; } = new(StringComparer.Ordinal);

    public IEnumerable<string> Ids(string kind) => bodies.Keys.Where(key => key.Kind == kind).Select(key => key.Id).Order(StringComparer.Ordinal);

    /// <summary>A record's body; null: not there, or no longer what it was.</summary>
    public T? Body<T>(string kind, string id)
        where T : class
    {
        try
        {
            return bodies.TryGetValue(new(kind, id), out string? body) ? JsonSerializer.Deserialize<T>(body, StudyJson.Options) : null;
        }
        catch (Exception error) when (error is JsonException or InvalidOperationException or NotSupportedException or ArgumentException)
        {
            return null;
        }
    }
}

/// <summary>Puts together what was read, and leaves out what would not hang together without the rest.</summary>
internal sealed class RescueAssembly(RescueRecords found)
{
    private const string LostReading = "lost with the damaged file";

    private readonly List<string> lost = [];
    private Study study = new("rescued", 1);

    public Rescued Study(string path)
    {
        var head = found.Body<StudyRecords.Head>("study", "");
        study = new(head is { Name.Length: > 0 } ? head.Name : Path.GetFileNameWithoutExtension(path), head?.Seed ?? 1) { Note = head?.Note ?? "", Invented = head?.Invented ?? false };
        if (head is null)
        {
            lost.Add("The name and note of the study, and the order of its things: they stand by their ids now.");
        }

        Each("instrument", head?.Instruments, id => found.Body<Instrument>("instrument", id), (now, one) => now with { Instruments = [.. now.Instruments, one] });
        Each("part", head?.Parts.Select(id => id.Name), id => found.Body<Part>("part", id), (now, one) => now with { Parts = [.. now.Parts, one] });
        Each("brief", found.Ids("brief").Any() || head is null ? found.Ids("brief") : [], id => found.Body<Brief>("brief", id), (now, one) => now with { Brief = one });
        Each("trial", head?.Trials.Select(id => id.Name), Trial, (now, one) => now with { Trials = [.. now.Trials, one] });
        Each("arrangement", head?.Arrangements.Select(id => id.Name), id => found.Body<Arrangement>("arrangement", id), (now, one) => now with { Arrangements = [.. now.Arrangements, one] });
        Each("plant", Listed(head, head?.Plants?.Select(id => id.Name)), id => found.Body<StatedPlant>("plant", id), (now, one) => now with { Plants = [.. now.Plants, one] });
        Each("decision", Listed(head, head?.Decisions), id => found.Body<DecisionCard>("decision", id), (now, one) => now with { Decisions = [.. now.Decisions, one] });
        Each("prototype reading", Listed(head, head?.PrototypeReadings), id => found.Body<PrototypeReading>("prototype reading", id), (now, one) => now with { PrototypeReadings = [.. now.PrototypeReadings, one] });
        Each("file", Listed(head, head?.Files), File, (now, one) => now with { Files = [.. now.Files, one] });
        Each("logWay", Listed(head, head?.LogWays), id => found.Body<LogWay>("logWay", id), (now, one) => now with { LogWays = [.. now.LogWays, one] });
        Each("tool", Listed(head, head?.Tools), id => found.Body<ExistingTool>("tool", id), (now, one) => now with { Tools = [.. now.Tools, one] });
        Each("own", found.Ids("own"), id => found.Body<OwnThings>("own", id), (now, one) => now with { Own = one });
        if (found.FromHistory > 0)
        {
            lost.Add($"{CheckDesk.Number(found.FromHistory)} records were taken from the history, because they cannot be read in their place.");
        }

        return new(study, lost);
    }

    /// <summary>A list that may be absent is empty where the head can be read, and unknown where it cannot.</summary>
    private static IEnumerable<string>? Listed(StudyRecords.Head? head, IEnumerable<string>? ids) => head is null ? null : ids ?? [];

    private void Each<T>(string kind, IEnumerable<string>? ids, Func<string, T?> read, Func<Study, T, Study> add)
        where T : class
    {
        foreach (string id in ids ?? found.Ids(kind))
        {
            if (read(id) is not { } one)
            {
                lost.Add($"{kind} '{id}': it cannot be read.");
                continue;
            }

            var next = add(study, one);
            var problems = StudyCheck.Of(next, "the study");
            if (problems.Count > 0)
            {
                lost.Add($"{kind} '{id}': {problems[0].What} ({problems[0].Value})");
            }
            else
            {
                study = next;
            }
        }
    }

    private KeptFile? File(string id) => found.Body<KeptFile>("file", id) is { } file && found.Content.TryGetValue(file.Sha256, out byte[]? bytes) ? file with { Content = bytes } : null;

    private Trial? Trial(string id)
    {
        if (found.Body<StudyRecords.TrialHead>("trial", id) is not { } head)
        {
            return null;
        }

        var runs = new List<Run>();
        foreach (var run in head.Runs)
        {
            if (found.Body<StudyRecords.RunHead>("run", run.Name) is { } one)
            {
                runs.Add(one.With(Readings(run, one.Columns.Count)));
            }
            else
            {
                lost.Add($"run '{run.Name}': it cannot be read.");
            }
        }

        return new(head.Id, head.Kind, head.Part, runs) { Purpose = head.Purpose, Card = head.Card };
    }

    /// <summary>Readings keep their numbers: where a block is gone, empty ones that are struck out stand in for it.</summary>
    private List<Reading> Readings(RunId run, int columns)
    {
        var readings = new List<Reading>();
        int blocks = found.Ids("readings").Select(id => id.Split('/') is [var name, var number] && name == run.Name && int.TryParse(number, System.Globalization.CultureInfo.InvariantCulture, out int block) ? block : 0).DefaultIfEmpty().Max();
        for (int block = 0; block < blocks; block++)
        {
            if (found.Body<Reading[]>("readings", StudyRecords.BlockId(run, block)) is { } whole && whole.Select(reading => reading.Number).SequenceEqual(Enumerable.Range((block * StudyRecords.BlockSize) + 1, whole.Length)))
            {
                readings.AddRange(whole);
                continue;
            }

            lost.Add($"run '{run.Name}': readings {CheckDesk.Number((block * StudyRecords.BlockSize) + 1)} to {CheckDesk.Number((block + 1) * StudyRecords.BlockSize)}.");
            readings.AddRange(Enumerable.Range((block * StudyRecords.BlockSize) + 1, StudyRecords.BlockSize).Select(number => new Reading(number, [.. Enumerable.Repeat("", columns)], LostReading)));
        }

        return readings;
    }
}
