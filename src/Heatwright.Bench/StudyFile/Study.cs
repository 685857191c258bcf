using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.StudyFile;

/// <summary>All that one study holds: what a maker entered, nothing that was computed from it.</summary>
/// <param name="Name">As the maker calls it.</param>
/// <param name="Seed">Makes all draws reproducible.</param>
public sealed record Study(string Name, ulong Seed)
{
    /// <summary>The maker's note.</summary>
    public string Note { get; init; } = "";

    /// <summary>True: the readings are invented, and every page says so.</summary>
    public bool Invented { get; init; }

    /// <summary>What the tool must do; null: a study of parts only.</summary>
    public Brief? Brief { get; init; }

    /// <summary>Instruments.</summary>
    public IReadOnlyList<Instrument> Instruments { get; init; } = [];

    /// <summary>Parts on the shelf.</summary>
    public IReadOnlyList<Part> Parts { get; init; } = [];

    /// <summary>Trials with their runs and readings.</summary>
    public IReadOnlyList<Trial> Trials { get; init; } = [];

    /// <summary>Arrangements.</summary>
    public IReadOnlyList<Arrangement> Arrangements { get; init; } = [];

    /// <summary>Decision cards, oldest first; frozen.</summary>
    public IReadOnlyList<DecisionCard> Decisions { get; init; } = [];

    /// <summary>What prototypes did, in the order it was read.</summary>
    public IReadOnlyList<PrototypeReading> PrototypeReadings { get; init; } = [];

    /// <summary>Tools of which every number is stated.</summary>
    public IReadOnlyList<StatedPlant> Plants { get; init; } = [];

    /// <summary>Photos, raw logs and other files that are kept with it.</summary>
    public IReadOnlyList<KeptFile> Files { get; init; } = [];

    /// <summary>How the logs of its instruments are read.</summary>
    public IReadOnlyList<LogWay> LogWays { get; init; } = [];

    /// <summary>Tools that exist, known only by their own readings.</summary>
    public IReadOnlyList<ExistingTool> Tools { get; init; } = [];

    /// <summary>Drawer, prices and constants of the maker, on an own shelf; null: none.</summary>
    public OwnThings? Own { get; init; }
}
