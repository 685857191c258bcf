using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Readings that give no finding, and the parts of a finding's doubt.</summary>
internal static class Refused
{
    /// <summary>What stands in the way of a fit.</summary>
    public static Problem By(string kind, (string Name, double[] Values)[] columns, (string Name, double Value)[]? settings = null, (string Name, string[] Words)[]? words = null)
    {
        var answer = TrialFits.Run(kind, Given.Readings(kind, columns, settings, words));
        Assert.False(answer.IsFine);
        return answer.Problems[0];
    }

    /// <summary>The one sentence, or next step, that begins so.</summary>
    public static string Begins(this IEnumerable<string> sentences, string with) => Assert.Single(sentences, says => says.StartsWith(with, StringComparison.Ordinal));

    /// <summary>Standard doubt from the readings alone.</summary>
    public static double Scatter(this TrialAnswer answer, string name) => answer.Findings.Single(finding => finding.Name == name).ScatterDoubt;

    /// <summary>By how much the one cause whose name ends so pushes a finding; 0: it does not.</summary>
    public static double Push(this TrialAnswer answer, string name, string cause) =>
        answer.Find(name)!.Doubts.Pushes.SingleOrDefault(push => push.Cause.Id.EndsWith(cause, StringComparison.Ordinal)) is { Cause: not null } push ? push.By : 0;
}
