using Heatwright.Trials;

namespace Heatwright.Jobs;

/// <summary>A remark as it is shown: on one reading, on several of a run alike, or on all of it.</summary>
/// <param name="Run">The run.</param>
/// <param name="Readings">'3', '1 to 22', 'all'.</param>
/// <param name="Words">What and what to do.</param>
/// <param name="Effect">Left out of the fit, or kept.</param>
public sealed record RemarkLine(string Run, string Readings, string Words, string Effect)
{
    /// <summary>Remarks one by one, those with the same words on readings of one run as one line, where the first stood.</summary>
    public static IReadOnlyList<RemarkLine> Of(IEnumerable<Remark> remarks) => [.. remarks.GroupBy(remark => (remark.Trial, remark.Run, remark.Words, remark.Effect, All: remark.Reading == 0))
        .Select(group => new RemarkLine(group.Key.Run.Name, group.Key.All ? "all" : NumberSpans.Told(group.Select(remark => remark.Reading)), group.Key.Words, group.Key.Effect))];
}
