namespace Heatwright.Physics;

/// <summary>A first- or second-order model with dead time.</summary>
/// <param name="SlowS">Largest time constant.</param>
/// <param name="FastS">Second time constant; 0 in a first-order model.</param>
/// <param name="DelayS">Dead time.</param>
public sealed record ReducedLags(
    [property: Out("s", "time constant")] double SlowS,
    [property: Out("s", "second time constant, 0 in a first-order model")] double FastS,
    [property: Out("s", "dead time")] double DelayS);

/// <summary>Reduces many lags to one or two and a dead time: half of the largest lag left out goes to the lag kept last, half to the dead time.</summary>
/// <remarks>Source: [skogestad-2003], from memory; also restated on the author's page. Checked: ControlTests.</remarks>
public static class HalfRule
{
    /// <summary>First-order model of any lags.</summary>
    /// <param name="lagsS">Lags, in any order.</param>
    /// <param name="delayS">Dead time already there, half a sample and half a frame included.</param>
    /// <param name="inverseS">Inverse responses (−T s + 1): they add to the dead time.</param>
    /// <param name="leadsS">Small leads (T s + 1): they take from it.</param>
    public static ReducedLags ToFirstOrder(IEnumerable<double> lagsS, double delayS = 0, IEnumerable<double>? inverseS = null, IEnumerable<double>? leadsS = null) =>
        Reduce(1, lagsS, delayS, inverseS, leadsS);

    /// <summary>Second-order model of any lags.</summary>
    public static ReducedLags ToSecondOrder(IEnumerable<double> lagsS, double delayS = 0, IEnumerable<double>? inverseS = null, IEnumerable<double>? leadsS = null) =>
        Reduce(2, lagsS, delayS, inverseS, leadsS);

    /// <summary>First-order model of a two-node tool with its delays: τ = τ₁ + τ₂/2, θ = τ₂/2 + delays + half a sample + half a frame.</summary>
    [Law("half-rule", "control", "τ = τ₁ + τ₂/2, θ = τ₂/2 + delays + T_s/2 + T_f/2", Says = "a two-body tool and its delays as one time constant and one dead time", Source = "skogestad-2003", Where = "half rule, from memory", Valid = "τ₂ well below τ₁",
        Example = "slow=216s fast=9.3s delay=0.8s sample=0.25s frame=0.1s")]
    public static ReducedLags OfTool(
        [In("τ₁", "s", "slow time constant", Name = "slow", Min = 0)] double slowS,
        [In("τ₂", "s", "fast time constant", Name = "fast", Min = 0)] double fastS,
        [In("θ₀", "s", "sensor lag and other delays", Name = "delay", Min = 0, Default = 0)] double delayS,
        [In("T_s", "s", "sample period", Name = "sample", Min = 0, Default = 0)] double sampleS,
        [In("T_f", "s", "frame", Name = "frame", Min = 0, Default = 0)] double frameS) =>
        ToFirstOrder([slowS, fastS], delayS + (0.5 * Impossible.IfNegative(sampleS, "s")) + (0.5 * Impossible.IfNegative(frameS, "s")));

    private static ReducedLags Reduce(int keep, IEnumerable<double> lagsS, double delayS, IEnumerable<double>? inverseS, IEnumerable<double>? leadsS)
    {
        double[] lags = [.. lagsS.Select(lag => Impossible.IfNegative(lag, "s", nameof(lagsS))).OrderDescending()];
        Impossible.UnlessPositive(lags.FirstOrDefault(), "s", nameof(lagsS));
        double half = 0.5 * lags.ElementAtOrDefault(keep);
        double delay = Impossible.IfNegative(delayS, "s") + half + lags.Skip(keep + 1).Sum() + (inverseS?.Sum() ?? 0) - (leadsS?.Sum() ?? 0);
        return keep == 1
            ? new ReducedLags(lags[0] + half, 0, Impossible.IfNegative(delay, "s"))
            : new ReducedLags(lags[0], lags.ElementAtOrDefault(1) + half, Impossible.IfNegative(delay, "s"));
    }
}
