using Heatwright.Parts;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>A meter that is named and promises nothing for what a column reads is told of, and a usual one assumed.</summary>
public sealed class SilentMeterTests
{
    [Theory]
    [InlineData("C", "degrees is read with 'probe', which promises nothing for °C: ±(1%+2degC) is assumed, as a usual one has it. State it with 'heatwright meter add FILE probe --reads \"degC=...\"'")]
    [InlineData("V", "degrees is read with 'probe', which promises nothing for °C")]
    [InlineData("°C", "")]
    [InlineData("K", "")]
    public void A_column_without_a_promise_is_told_once(string promised, string told)
    {
        Run run = new(new("r"), [new("time", "s", "watch"), new("degrees", "°C", "probe"), new("volts", "V", "")], [.. Enumerable.Range(0, 4).Select(i => new Reading(i + 1, [$"{i}", $"{20 + i}", "5"]))]);
        Trial trial = new(new("t"), TrialKind.WarmUp, new("p"), [run]);
        var instruments = new InstrumentCauses([new("probe", "probe", [new(promised, 1, 1, 0)]), new("watch", "watch", [new("s", 0, 0, 0)])]);
        var said = RunChecks.Of(trial, run, instruments, null).Where(remark => remark.Words.Contains("promises nothing", StringComparison.Ordinal)).ToArray();
        Assert.Equal(told.Length > 0 ? 1 : 0, said.Length);
        Assert.All(said, remark => Assert.StartsWith(told, remark.Words, StringComparison.Ordinal));
        Assert.Equal(said, PartBench.One(new(new("p"), PartKind.Heater, "p", []), [trial], instruments).Remarks.Where(remark => remark.Words.Contains("promises nothing", StringComparison.Ordinal)));
        Assert.Empty(RunChecks.Of(trial, run with { Readings = [] }, instruments, null));
    }
}
