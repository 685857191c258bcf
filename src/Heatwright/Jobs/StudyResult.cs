using Heatwright.Arrangements;
using Heatwright.StudyFile;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>All that the main job works out of a study.</summary>
/// <param name="Study">What was entered.</param>
/// <param name="Fingerprint">Of what was entered.</param>
/// <param name="Shelf">Parts with their findings.</param>
/// <param name="Findings">Part by part.</param>
/// <param name="Verdicts">Arrangement by arrangement, in the order of the study.</param>
public sealed record StudyResult(Study Study, string Fingerprint, Shelf Shelf, IReadOnlyList<PartFindings> Findings, IReadOnlyList<ArrangementVerdict> Verdicts)
{
    /// <summary>Tools that exist, judged by their own readings.</summary>
    public IReadOnlyList<ToolVerdict> Tools { get; init; } = [];
}
