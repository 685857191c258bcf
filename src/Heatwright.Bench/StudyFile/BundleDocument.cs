using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.StudyFile;

/// <summary>study.json of a bundle: a study without its readings, which stand in runs/*.csv.</summary>
internal sealed record BundleDocument(string Format, string Name, ulong Seed)
{
    public const string Format1 = "heatwright-bundle-1";

    public string Note { get; init; } = "";

    public bool Invented { get; init; }

    public Brief? Brief { get; init; }

    public IReadOnlyList<Instrument> Instruments { get; init; } = [];

    public IReadOnlyList<Part> Parts { get; init; } = [];

    public IReadOnlyList<BundleTrial> Trials { get; init; } = [];

    public IReadOnlyList<Arrangement> Arrangements { get; init; } = [];
}

/// <summary>A trial of a bundle.</summary>
internal sealed record BundleTrial(TrialId Id, TrialKind Kind, PartId Part, IReadOnlyList<BundleRun> Runs)
{
    public string Purpose { get; init; } = "";
}

/// <summary>A run of a bundle, its readings elsewhere.</summary>
internal sealed record BundleRun(RunId Id, IReadOnlyList<Column> Columns)
{
    public IReadOnlyDictionary<string, double> Settings { get; init; } = new Dictionary<string, double>();

    public IReadOnlyList<BundleStrike> Struck { get; init; } = [];
}

/// <summary>A reading struck out.</summary>
internal sealed record BundleStrike(int Number, string Because);
