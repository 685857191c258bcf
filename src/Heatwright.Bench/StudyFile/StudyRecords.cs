using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.StudyFile;

/// <summary>Kind and id of one record of the file.</summary>
internal readonly record struct RecordKey(string Kind, string Id);

/// <summary>A study as the flat records that the file keeps: JSON by kind and id, one a thing that can change by itself.</summary>
internal static class StudyRecords
{
    /// <summary>Readings kept in one record. A typed or captured reading rewrites its own block only, and the history grows by so much.</summary>
    public const int BlockSize = 50;

    internal sealed record Head(string Name, ulong Seed, string Note, bool Invented, IReadOnlyList<string> Instruments, IReadOnlyList<PartId> Parts, IReadOnlyList<TrialId> Trials, IReadOnlyList<ArrangementId> Arrangements)
    {
        public IReadOnlyList<string>? Decisions { get; init; }

        public IReadOnlyList<string>? PrototypeReadings { get; init; }

        /// <summary>Null where there is none, so that studies without them keep their bytes.</summary>
        public IReadOnlyList<ArrangementId>? Plants { get; init; }

        public IReadOnlyList<string>? Files { get; init; }

        public IReadOnlyList<string>? LogWays { get; init; }

        /// <summary>Null where there is none, so that studies without them keep their bytes.</summary>
        public IReadOnlyList<string>? Tools { get; init; }
    }

    internal sealed record TrialHead(TrialId Id, TrialKind Kind, PartId Part, string Purpose, IReadOnlyList<RunId> Runs)
    {
        /// <summary>Null where there is none, so that studies without them keep their bytes.</summary>
        public string? Card { get; init; }
    }

    internal sealed record RunHead(RunId Id, IReadOnlyList<Column> Columns, IReadOnlyDictionary<string, double> Settings)
    {
        /// <summary>Null where none was said, so that studies without them keep their bytes.</summary>
        public IReadOnlyDictionary<string, double>? SettingsPlusMinus { get; init; }

        public static RunHead Of(Run run) => new(run.Id, run.Columns, BundleDocument.InOrder(run.Settings))
        {
            SettingsPlusMinus = run.SettingsPlusMinus.Count > 0 ? BundleDocument.InOrder(run.SettingsPlusMinus) : null,
        };

        public Run With(IReadOnlyList<Reading> readings) => new(Id, Columns, readings) { Settings = Settings, SettingsPlusMinus = SettingsPlusMinus ?? new Dictionary<string, double>() };
    }

    /// <summary>The records of a study.</summary>
    public static ImmutableSortedDictionary<RecordKey, string> Of(Study study)
    {
        var records = ImmutableSortedDictionary.CreateBuilder<RecordKey, string>(Order);
        Add("study", "", new Head(study.Name, study.Seed, study.Note, study.Invented, [.. study.Instruments.Select(one => one.Id)], [.. study.Parts.Select(one => one.Id)],
            [.. study.Trials.Select(one => one.Id)], [.. study.Arrangements.Select(one => one.Id)])
        {
            Decisions = study.Decisions.Count > 0 ? [.. study.Decisions.Select(one => one.Id)] : null,
            PrototypeReadings = study.PrototypeReadings.Count > 0 ? [.. study.PrototypeReadings.Select(one => one.Id)] : null,
            Plants = study.Plants.Count > 0 ? [.. study.Plants.Select(one => one.Id)] : null,
            Files = study.Files.Count > 0 ? [.. study.Files.Select(one => one.Id)] : null,
            LogWays = study.LogWays.Count > 0 ? [.. study.LogWays.Select(one => one.Instrument)] : null,
            Tools = study.Tools.Count > 0 ? [.. study.Tools.Select(one => one.Id)] : null,
        });
        if (study.Brief is { } brief)
        {
            Add("brief", "", brief);
        }
        if (study.Own is { } own && !own.IsEmpty())
        {
            Add("own", "", own);
        }
        foreach (var instrument in study.Instruments)
        {
            Add("instrument", instrument.Id, instrument);
        }
        foreach (var part in study.Parts)
        {
            Add("part", part.Id.Name, part with { Words = BundleDocument.InOrder(part.Words) });
        }
        foreach (var arrangement in study.Arrangements)
        {
            Add("arrangement", arrangement.Id.Name, arrangement);
        }
        foreach (var card in study.Decisions)
        {
            Add("decision", card.Id, card);
        }
        foreach (var reading in study.PrototypeReadings)
        {
            Add("prototype reading", reading.Id, reading);
        }
        foreach (var plant in study.Plants)
        {
            Add("plant", plant.Id.Name, plant);
        }
        foreach (var file in study.Files)
        {
            Add("file", file.Id, file);
        }
        foreach (var way in study.LogWays)
        {
            Add("logWay", way.Instrument, way);
        }
        foreach (var tool in study.Tools)
        {
            Add("tool", tool.Id, tool);
        }
        foreach (var trial in study.Trials)
        {
            Add("trial", trial.Id.Name, new TrialHead(trial.Id, trial.Kind, trial.Part, trial.Purpose, [.. trial.Runs.Select(run => run.Id)]) { Card = trial.Card });
            foreach (var run in trial.Runs)
            {
                Add("run", run.Id.Name, RunHead.Of(run));
                for (int block = 0; block * BlockSize < run.Readings.Count; block++)
                {
                    Add("readings", BlockId(run.Id, block), run.Readings.Skip(block * BlockSize).Take(BlockSize));
                }
            }
        }
        return records.ToImmutable();

        void Add<T>(string kind, string id, T body) => records.Add(new(kind, id), JsonSerializer.Serialize(body, StudyJson.Options));
    }

    /// <summary>The study that records make; throws where they do not make one.</summary>
    public static Study Join(IReadOnlyDictionary<RecordKey, string> records)
    {
        var head = Body<Head>("study", "");
        return new Study(head.Name, head.Seed)
        {
            Note = head.Note,
            Invented = head.Invented,
            Brief = records.ContainsKey(new("brief", "")) ? Body<Brief>("brief", "") : null,
            Own = records.ContainsKey(new("own", "")) ? Body<OwnThings>("own", "") : null,
            Instruments = [.. head.Instruments.Select(id => Body<Instrument>("instrument", id))],
            Parts = [.. head.Parts.Select(id => Body<Part>("part", id.Name))],
            Arrangements = [.. head.Arrangements.Select(id => Body<Arrangement>("arrangement", id.Name))],
            Decisions = [.. (head.Decisions ?? []).Select(id => Body<DecisionCard>("decision", id))],
            PrototypeReadings = [.. (head.PrototypeReadings ?? []).Select(id => Body<PrototypeReading>("prototype reading", id))],
            Plants = [.. (head.Plants ?? []).Select(id => Body<StatedPlant>("plant", id.Name))],
            Tools = [.. (head.Tools ?? []).Select(id => Body<ExistingTool>("tool", id))],
            Trials = [.. head.Trials.Select(TrialOf)],
            Files = [.. (head.Files ?? []).Select(id => Body<KeptFile>("file", id))],
            LogWays = [.. (head.LogWays ?? []).Select(id => Body<LogWay>("logWay", id))],
        };

        Trial TrialOf(TrialId id)
        {
            var trial = Body<TrialHead>("trial", id.Name);
            return new(trial.Id, trial.Kind, trial.Part, [.. trial.Runs.Select(RunOf)]) { Purpose = trial.Purpose, Card = trial.Card };
        }

        Run RunOf(RunId id)
        {
            var run = Body<RunHead>("run", id.Name);
            var readings = new List<Reading>();
            for (int block = 0; records.ContainsKey(new("readings", BlockId(id, block))); block++)
            {
                readings.AddRange(Body<Reading[]>("readings", BlockId(id, block)));
            }
            return run.With(readings);
        }

        T Body<T>(string kind, string id) => JsonSerializer.Deserialize<T>(records.TryGetValue(new(kind, id), out string? body) ? body : throw new JsonException($"The file lacks {kind} '{id}'."), StudyJson.Options)
            ?? throw new JsonException($"In the file {kind} '{id}' is empty.");
    }

    /// <summary>A fingerprint of the content: same content, same fingerprint, on any machine, at any time, in any file.</summary>
    public static string Fingerprint(ImmutableSortedDictionary<RecordKey, string> records)
    {
        var text = new StringBuilder();
        foreach (var (key, body) in records)
        {
            text.Append(key.Kind).Append('\u001f').Append(key.Id).Append('\u001f').Append(body).Append('\u001e');
        }
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..16];
    }

    /// <summary>Keys in one order, whatever the culture.</summary>
    public static IComparer<RecordKey> Order { get; } = Comparer<RecordKey>.Create((a, b) =>
        string.CompareOrdinal(a.Kind, b.Kind) is not 0 and var kind ? kind : string.CompareOrdinal(a.Id, b.Id));

    // No id holds a slash, so a block's id is never that of another run.
    internal static string BlockId(RunId run, int block) => $"{run.Name}/{(block + 1).ToString(CultureInfo.InvariantCulture)}";
}
