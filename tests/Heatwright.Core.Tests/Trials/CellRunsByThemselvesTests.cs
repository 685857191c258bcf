using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>What a run of a cell tells while no model of it can be made.</summary>
public sealed class CellRunsByThemselvesTests
{
    private static readonly Part Cell = new(new("slim"), PartKind.Cell, "slim", []);

    private static Trial Trial(string id, TrialKind kind, params (double TimeS, double Volts, double Amps)[] rows) => new(new(id), kind, Cell.Id,
        [new(new($"{id}-1"), [new("time", "s", "w"), new("volts", "V", "m"), new("amps", "A", "m")], [.. rows.Select((row, i) => new Reading(i + 1, [Text(row.TimeS), Text(row.Volts), Text(row.Amps)]))])]);

    private static string Text(double value) => value.ToString("0.#####", CultureInfo.InvariantCulture);

    private static PartFindings Found(params Trial[] trials) => PartBench.One(Cell, trials, new([]));

    private static readonly Trial Discharge = Trial("slow", TrialKind.Discharge, (0, 4.15, 1.08), (900, 3.85, 1.08), (1800, 3.7, 1.08), (2700, 3.5, 1.08), (3600, 3.0, 1.08));

    /// <summary>By hand: 1.08 A for an hour; the mean of 4.0, 3.775, 3.6 and 3.25 V is 3.65625 V, times 1.08 Ah 3.94875 Wh.</summary>
    [Fact]
    public void A_discharge_alone_tells_amp_hours_watt_hours_and_mean_volts()
    {
        var found = Found(Discharge);
        Assert.Equal(1.08, found.Find(PartQuantities.Capacity)!.In(Units.AmpereHour).Value, 1e-9);
        Assert.Equal(3.94875, found.Find("energy")!.In(Units.WattHour).Value, 1e-9);
        Assert.Equal(3.65625, found.Find("mean volts")!.Value, 1e-9);
        Assert.Null(found.Cell);
        Assert.Contains("pulse run", Assert.Single(found.Problems).Next, StringComparison.Ordinal);
        Assert.All(found.Remarks, remark => Assert.Contains("which promises nothing", remark.Words, StringComparison.Ordinal)); // it went to its end
    }

    /// <summary>By hand: 4.0 V at rest and 3.9 V after a second of 2 A are 50 mΩ, 3.88 V after ten 60 mΩ; no discharge is there to tell amp-hours.</summary>
    [Fact]
    public void A_pulse_alone_tells_ohms_after_seconds()
    {
        var found = Found(Trial("step", TrialKind.Pulse, (0, 4.0, 0), (5, 4.0, 0), (10, 4.0, 0), (11, 3.9, 2), (15, 3.89, 2), (20, 3.88, 2), (30, 3.87, 2)));
        Assert.Contains(found.Findings, finding => finding.Quantity.StartsWith("ohms after 1", StringComparison.Ordinal));
        Assert.All(found.Findings.Where(finding => finding.Quantity.StartsWith("ohms after", StringComparison.Ordinal)), finding => Assert.InRange(finding.Value.Si, 0.0499, 0.0651));
        Assert.Null(found.Find(PartQuantities.Capacity));
        Assert.Single(found.Problems);
    }
}
