using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.StudyFile;

/// <summary>study.json of a bundle: a study without its readings, which stand in one CSV a run.</summary>
internal sealed record BundleDocument(string Format, string Name, ulong Seed)
{
    /// <summary>The format that this program writes.</summary>
    public const string Current = "heatwright-bundle-1";

    public string Note { get; init; } = "";

    public bool Invented { get; init; }

    public Brief? Brief { get; init; }

    public IReadOnlyList<Instrument> Instruments { get; init; } = [];

    public IReadOnlyList<Part> Parts { get; init; } = [];

    public IReadOnlyList<BundleTrial> Trials { get; init; } = [];

    public IReadOnlyList<Arrangement> Arrangements { get; init; } = [];

    /// <summary>Null where none was made.</summary>
    public IReadOnlyList<DecisionCard>? Decisions { get; init; }

    /// <summary>Null where none was read.</summary>
    public IReadOnlyList<PrototypeReading>? PrototypeReadings { get; init; }

    /// <summary>Null where there is none, so that studies without them keep their bytes.</summary>
    public IReadOnlyList<StatedPlant>? Plants { get; init; }

    /// <summary>Null where there is none, so that studies without them keep their bytes.</summary>
    public IReadOnlyList<BundleFile>? Files { get; init; }

    /// <summary>Null where there is none, so that studies without them keep their bytes.</summary>
    public IReadOnlyList<LogWay>? LogWays { get; init; }

    public OwnThings? Own { get; init; }

    /// <summary>Null where there is none, so that studies without them keep their bytes.</summary>
    public IReadOnlyList<ExistingTool>? Tools { get; init; }

    /// <summary>What of a study stands in study.json.</summary>
    public static BundleDocument Of(Study study) => new(Current, study.Name, study.Seed)
    {
        Note = study.Note,
        Invented = study.Invented,
        Brief = study.Brief,
        Instruments = study.Instruments,
        Parts = [.. study.Parts.Select(part => part with { Words = InOrder(part.Words) })],
        Trials = [.. study.Trials.Select(BundleTrial.Of)],
        Arrangements = study.Arrangements,
        Decisions = study.Decisions.Count > 0 ? study.Decisions : null,
        PrototypeReadings = study.PrototypeReadings.Count > 0 ? study.PrototypeReadings : null,
        Plants = study.Plants.Count > 0 ? study.Plants : null,
        Files = study.Files.Count > 0 ? [.. study.Files.Select(BundleFile.Of)] : null,
        LogWays = study.LogWays.Count > 0 ? study.LogWays : null,
        Own = study.Own,
        Tools = study.Tools.Count > 0 ? study.Tools : null,
    };

    /// <summary>The study, given the readings of each run and the bytes of each file.</summary>
    public Study With(Func<BundleRun, IReadOnlyList<Reading>> readings, Func<BundleFile, byte[]> content) => new(Name, Seed)
    {
        Note = Note,
        Invented = Invented,
        Brief = Brief,
        Instruments = Instruments,
        Parts = Parts,
        Trials = [.. Trials.Select(trial => new Trial(trial.Id, trial.Kind, trial.Part, [.. trial.Runs.Select(run => run.With(readings(run)))]) { Purpose = trial.Purpose, Card = trial.Card })],
        Arrangements = Arrangements,
        Decisions = Decisions ?? [],
        PrototypeReadings = PrototypeReadings ?? [],
        Plants = Plants ?? [],
        Files = [.. (Files ?? []).Select(file => file.With(content(file)))],
        LogWays = LogWays ?? [],
        Own = Own,
        Tools = Tools ?? [],
    };

    /// <summary>The same names and values in one order, so that equal studies give equal bytes.</summary>
    internal static SortedDictionary<string, T> InOrder<T>(IReadOnlyDictionary<string, T> words) =>
        new(words.ToDictionary(StringComparer.Ordinal), StringComparer.Ordinal);
}

/// <summary>A trial in study.json.</summary>
internal sealed record BundleTrial(TrialId Id, TrialKind Kind, PartId Part, IReadOnlyList<BundleRun> Runs)
{
    public string Purpose { get; init; } = "";

    public string? Card { get; init; }

    public static BundleTrial Of(Trial trial) => new(trial.Id, trial.Kind, trial.Part, [.. trial.Runs.Select(BundleRun.Of)]) { Purpose = trial.Purpose, Card = trial.Card };
}

/// <summary>A run in study.json.</summary>
internal sealed record BundleRun(RunId Id, IReadOnlyList<Column> Columns)
{
    public IReadOnlyDictionary<string, double> Settings { get; init; } = new Dictionary<string, double>();

    /// <summary>Null where none was said, so that studies without them keep their bytes.</summary>
    public IReadOnlyDictionary<string, double>? SettingsPlusMinus { get; init; }

    public IReadOnlyList<Struck> Struck { get; init; } = [];

    /// <summary>Where its readings stand in the bundle.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public string FileName => FileNameOf(Id);

    public static string FileNameOf(RunId id) => $"runs/{id.Name}.csv";

    public static BundleRun Of(Run run) => new(run.Id, run.Columns)
    {
        Settings = BundleDocument.InOrder(run.Settings),
        SettingsPlusMinus = run.SettingsPlusMinus.Count > 0 ? BundleDocument.InOrder(run.SettingsPlusMinus) : null,
        Struck = [.. run.Readings.Where(reading => reading.StruckBecause is not null).Select(reading => new Struck(reading.Number, reading.StruckBecause!))],
    };

    public Run With(IReadOnlyList<Reading> readings) => new(Id, Columns, readings) { Settings = Settings, SettingsPlusMinus = SettingsPlusMinus ?? new Dictionary<string, double>() };
}

/// <summary>A reading that no longer counts, and why.</summary>
internal sealed record Struck(int Number, string Because);

/// <summary>A kept file in study.json; its bytes lie beside it.</summary>
internal sealed record BundleFile(string Id)
{
    public string Name { get; init; } = "";

    public KeptAbout About { get; init; }

    public string Subject { get; init; } = "";

    public string Note { get; init; } = "";

    /// <summary>Where its bytes stand in the bundle.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public string FileName => FileNameOf(Id);

    public static string FileNameOf(string id) => $"files/{id}";

    public static BundleFile Of(KeptFile file) => new(file.Id) { Name = file.Name, About = file.About, Subject = file.Subject, Note = file.Note };

    public KeptFile With(byte[] content) => KeptFile.Of(Id, Name, About, Subject, Note, content);
}
