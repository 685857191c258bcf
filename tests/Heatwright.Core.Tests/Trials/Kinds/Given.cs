using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Readings as a test states them.</summary>
internal static class Given
{
    /// <summary>Columns in the units of the kind's card; settings in theirs; meters without any error unless the test names one.</summary>
    public static TrialInput Readings(string kind, (string Name, double[] Values)[] columns, (string Name, double Value)[]? settings = null, (string Name, string[] Words)[]? words = null, string? meters = null)
    {
        var card = TrialCard.Find(kind)!;
        return new TrialInput(
            [
                .. columns.Select(column => new RawColumn(column.Name, Units.Find(card.Column(column.Name)!.Unit), column.Values, [])),
                .. (words ?? []).Select(column => new RawColumn(column.Name, null, [], column.Words)),
            ],
            (settings ?? []).ToDictionary(setting => setting.Name, setting => Estimate.Exact(setting.Value, Units.Find(card.Settings.Single(s => s.Name == setting.Name).Unit)!, new Origin.Assumed("test")), StringComparer.Ordinal),
            meters is null
                ? new Dictionary<string, MeterSaid> { ["all"] = new("exact", null) }
                : meters.Split(';').Select(said => said.Split('=')).ToDictionary(pair => pair[0].Trim(), pair => new MeterSaid("bench " + pair[0].Trim(), AccuracySpec.Read(pair[1]).Value), StringComparer.Ordinal).Append(new("all", new MeterSaid("exact", null))).ToDictionary(StringComparer.Ordinal));
    }

    public static TrialAnswer Fit(string kind, (string Name, double[] Values)[] columns, (string Name, double Value)[]? settings = null, (string Name, string[] Words)[]? words = null, string? meters = null)
    {
        var answer = TrialFits.Run(kind, Readings(kind, columns, settings, words, meters));
        Assert.True(answer.IsFine, answer.IsFine ? "" : answer.Problems[0].ToString());
        return answer.Value;
    }

    public static double Value(this TrialAnswer answer, string name) => answer.Find(name)?.Value ?? throw new KeyNotFoundException($"{name}: {string.Join(", ", answer.Findings.Select(f => f.Name))}");
}
