using Heatwright.DemoTruth.Campaign;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Made-up readings as a maker types them.</summary>
internal static class Typed
{
    /// <summary>The columns, settings and meters of a made-up trial.</summary>
    public static TrialInput Input(MadeUpTrial made)
    {
        var card = TrialCard.Find(made.Kind)!;
        var origin = new Origin.Assumed("made up");
        return new TrialInput(
            [.. made.Columns.Select(column => column.Words.Length > 0 ? new RawColumn(column.Name, null, [], column.Words) : new RawColumn(column.Name, Units.Find(card.Column(column.Name)!.Unit), column.Values, []))],
            made.Settings.ToDictionary(setting => setting.Name, setting => setting.HalfWidth > 0
                ? Estimate.Within(setting.Value, setting.HalfWidth, Units.Find(card.Settings.Single(s => s.Name == setting.Name).Unit)!, setting.Name, CauseGroup.Assumption, origin)
                : Estimate.Exact(setting.Value, Units.Find(card.Settings.Single(s => s.Name == setting.Name).Unit)!, origin), StringComparer.Ordinal),
            made.Columns.Where(column => column.Meter.Length > 0).ToDictionary(column => column.Name, column => new MeterSaid(column.Meter, column.Promise.Length > 0 ? AccuracySpec.Read(column.Promise).Value : null), StringComparer.Ordinal)
                .Append(new("all", new MeterSaid("exact", null))).ToDictionary(StringComparer.Ordinal));
    }
}
