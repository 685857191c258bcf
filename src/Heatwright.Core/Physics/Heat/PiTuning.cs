namespace Heatwright.Physics;

/// <summary>Settings of a PI or PID controller whose output is watts.</summary>
/// <param name="GainWPerK">K_c.</param>
/// <param name="IntegralS">τ_I.</param>
/// <param name="DerivativeS">τ_D; 0 for PI.</param>
public sealed record PiSettings(
    [property: Out("W/K", "gain")] double GainWPerK,
    [property: Out("s", "integral time", Name = "integral-time")] double IntegralS,
    [property: Out("s", "derivative time, 0 for PI", Name = "derivative-time")] double DerivativeS = 0);

/// <summary>Controller settings from a first-order model with dead time, k·e^(−θs)/(τs + 1).</summary>
/// <remarks>Source: [skogestad-2003] and [skogestad-2006]; rules from memory, restated on the author's page. τ_c = θ is the tightest advised; larger is
/// smoother. Checked: ControlTests.</remarks>
public static class PiTuning
{
    /// <summary>PI: K_c = τ/(k(τ_c + θ)), τ_I = min(τ, 4(τ_c + θ)).</summary>
    [Law("pi-tuning", "control", "K_c = τ/(k·(τ_c + θ)), τ_I = min(τ, 4·(τ_c + θ)), τ_c = factor·θ", Says = "gain and integral time of a PI controller for a heated tool", Source = "skogestad-2003", Where = "SIMC rules, from memory", Valid = "first order with dead time; factor 1 or more",
        Example = "resistance=30K/W time-constant=180s delay=3s factor=1")]
    public static PiSettings Pi(
        [In("k", "K/W", "thermal resistance to air", Name = "resistance", Min = 0)] double resistanceKPerW,
        [In("τ", "s", "time constant", Name = "time-constant", Min = 0)] double timeConstantS,
        [In("θ", "s", "dead time", Name = "delay", Min = 0)] double delayS,
        [In("f", "", "wanted closed-loop time constant over dead time", Name = "factor", Min = 0, SoftMin = 1, Default = 1)] double factor) =>
        PiForSpeed(resistanceKPerW, timeConstantS, delayS, Impossible.UnlessPositive(factor, "") * Impossible.UnlessPositive(delayS, "s"));

    /// <summary>PI for a wanted closed-loop time constant.</summary>
    public static PiSettings PiForSpeed(double resistanceKPerW, double timeConstantS, double delayS, double closedLoopS)
    {
        double loop = Impossible.UnlessPositive(Impossible.IfNegative(closedLoopS, "s") + Impossible.IfNegative(delayS, "s"), "s", nameof(closedLoopS));
        return new PiSettings(Impossible.UnlessPositive(timeConstantS, "s") / (Impossible.UnlessPositive(resistanceKPerW, "K/W") * loop), Math.Min(timeConstantS, 4 * loop));
    }

    /// <summary>PID settings for a dominant second lag, in the parallel sum that a program runs.</summary>
    [Law("pid-tuning", "control", "K_c = τ/(k·(τ_c + θ))·f, τ_I = min(τ, 4·(τ_c + θ))·f, τ_D = τ₂/f, f = 1 + τ₂/τ_I", Says = "PID constants from resistance, two time constants and dead time", Source = "skogestad-2003", Where = "SIMC rules, from memory",
        Valid = "parallel form; τ₂ above the dead time", Example = "resistance=30K/W slow=180s fast=9s delay=3s speed=3s")]
    public static PiSettings Parallel(
        [In("k", "K/W", "thermal resistance to air", Name = "resistance", Min = 0)] double resistanceKPerW,
        [In("τ", "s", "slow time constant", Name = "slow", Min = 0)] double slowS,
        [In("τ₂", "s", "second time constant", Name = "fast", Min = 0)] double fastS,
        [In("θ", "s", "dead time", Name = "delay", Min = 0)] double delayS,
        [In("τ_c", "s", "wanted closed-loop time constant", Name = "speed", Min = 0)] double closedLoopS) =>
        ToParallel(SeriesPid(resistanceKPerW, new ReducedLags(slowS, Impossible.IfNegative(fastS, "s"), delayS), closedLoopS));

    /// <summary>PID in series form for a dominant second lag: the PI of τ₁ with τ_D = τ₂.</summary>
    public static PiSettings SeriesPid(double resistanceKPerW, ReducedLags lags, double closedLoopS) =>
        PiForSpeed(resistanceKPerW, lags.SlowS, lags.DelayS, closedLoopS) with { DerivativeS = lags.FastS };

    /// <summary>Series form to the parallel sum that a program runs: f = 1 + τ_D/τ_I; K_c·f, τ_I·f, τ_D/f.</summary>
    public static PiSettings ToParallel(PiSettings series)
    {
        double f = 1 + (series.DerivativeS / Impossible.UnlessPositive(series.IntegralS, "s"));
        return new PiSettings(series.GainWPerK * f, series.IntegralS * f, series.DerivativeS / f);
    }

    /// <summary>Least gain that keeps a disturbance within a deviation: K_c ≥ u₀/y_max, W/K. [skogestad-2006]</summary>
    [Law("least-gain", "control", "K_c ≥ u₀/y_max", Says = "least controller gain that keeps a disturbance small", Unit = "W/K", Source = "skogestad-2006", Where = "bound restated on the author's page",
        Valid = "slow disturbance", Example = "disturbance=5W deviation=5K")]
    public static double LeastGainWPerK(
        [In("u₀", "W", "disturbance", Name = "disturbance", Min = 0)] double disturbanceW,
        [In("y_max", "K", "largest deviation allowed", Name = "deviation", Min = 0)] double deviationK) => Impossible.IfNegative(disturbanceW, "W") / Impossible.UnlessPositive(deviationK, "K");
}
