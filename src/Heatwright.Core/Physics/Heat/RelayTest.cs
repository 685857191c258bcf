using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>The swing that a relay test shows.</summary>
/// <param name="AmplitudeK">Half of peak to peak.</param>
/// <param name="PeriodS">Period.</param>
/// <param name="UltimateGainWPerK">K_u by the describing function 4h/(πa): low on a tool with a long lag, so on the safe side.</param>
public sealed record RelaySwing(
    [property: Out("K", "amplitude, half of peak to peak")] double AmplitudeK,
    [property: Out("s", "period")] double PeriodS,
    [property: Out("W/K", "ultimate gain by the describing function")] double UltimateGainWPerK);

/// <summary>What a relay test found.</summary>
/// <param name="TimeConstantS">τ.</param>
/// <param name="DelayS">θ.</param>
public sealed record RelayFinding(
    [property: Out("s", "time constant")] double TimeConstantS,
    [property: Out("s", "dead time")] double DelayS);

/// <summary>Finding time constant and dead time by switching the power up and down around a bias each time the reading crosses the set point.</summary>
/// <remarks>First order with dead time: a = kh(1 − e^(−θ/τ)), P_u = 2τ·ln(2e^(θ/τ) − 1). Source: [astrom-hagglund-1984], from memory. Checked: ControlTests.</remarks>
public static class RelayTest
{
    /// <summary>Swing to expect; with a hysteresis ±ε the rise goes on for the dead time after the band is passed.</summary>
    [Law("relay-test", "control", "a = k·h − (k·h − ε)·e^(−θ/τ), P_u = 2·τ·ln[(k·h + a)/(k·h − a)], K_u = 4·h/(π·a)", Says = "swing to expect from switching power up and down", Source = "astrom-hagglund-1984", Where = "from memory; exact response of first order with dead time",
        Valid = "relay even about a bias that holds the set point", Example = "step=10W resistance=30K/W time-constant=180s delay=3s hysteresis=0K")]
    public static RelaySwing Swing(
        [In("h", "W", "step of power up and down from the bias", Name = "step", Min = 0)] double stepW,
        [In("k", "K/W", "thermal resistance to air", Name = "resistance", Min = 0)] double resistanceKPerW,
        [In("τ", "s", "time constant", Name = "time-constant", Min = 0)] double timeConstantS,
        [In("θ", "s", "dead time", Name = "delay", Min = 0)] double delayS,
        [In("ε", "K", "hysteresis to either side", Name = "hysteresis", Min = 0, Default = 0)] double hysteresisK)
    {
        double reach = Impossible.UnlessPositive(stepW, "W") * Impossible.UnlessPositive(resistanceKPerW, "K/W");
        ImpossibleHeat.UnlessAbove(reach, Impossible.IfNegative(hysteresisK, "K"), "K", "step × resistance");
        double stays = Math.Exp(-Impossible.UnlessPositive(delayS, "s") / Impossible.UnlessPositive(timeConstantS, "s"));
        double amplitude = reach - ((reach - hysteresisK) * stays);
        return new RelaySwing(amplitude, 2 * timeConstantS * Math.Log((reach + amplitude) / (reach - amplitude)), 4 * stepW / (Math.PI * amplitude));
    }

    /// <summary>Time constant and dead time from a swing without hysteresis: θ/τ = −ln(1 − a/(kh)), τ from the period.</summary>
    [Law("relay-finding", "control", "θ/τ = −ln(1 − a/(k·h)), τ = P_u/(2·ln(2·e^(θ/τ) − 1))", Says = "time constant and dead time from a swing of on and off", Source = "astrom-hagglund-1984", Where = "from memory; solved for τ and θ", Valid = "no hysteresis; k from the bias",
        Example = "amplitude=4.96K period=11.9s step=10W resistance=30K/W")]
    public static RelayFinding Finding(
        [In("a", "K", "amplitude, half of peak to peak", Name = "amplitude", Min = 0)] double amplitudeK,
        [In("P_u", "s", "period", Name = "period", Min = 0)] double periodS,
        [In("h", "W", "step of power up and down from the bias", Name = "step", Min = 0)] double stepW,
        [In("k", "K/W", "thermal resistance to air", Name = "resistance", Min = 0)] double resistanceKPerW)
    {
        double reach = Impossible.UnlessPositive(stepW, "W") * Impossible.UnlessPositive(resistanceKPerW, "K/W");
        double ratio = -WarmUp.LogOfRest(Impossible.UnlessPositive(amplitudeK, "K") / ImpossibleHeat.UnlessAbove(reach, amplitudeK, "K", "step × resistance"));
        double tau = Impossible.UnlessPositive(periodS, "s") / (2 * Math.Log((2 * Math.Exp(ratio)) - 1));
        return new RelayFinding(tau, ratio * tau);
    }

    /// <summary>True ultimate gain and period.</summary>
    [Law("ultimate-point", "control", "∠ = −180° of k·e^(−jωθ)/(1 + jωτ)", Says = "gain and period at which a plain controller starts to swing", Source = "definition", Where = "phase crossover of a first-order tool with dead time",
        Valid = "one time constant and a dead time", Example = "resistance=30K/W time-constant=180s delay=3s")]
    public static UltimatePoint Ultimate(
        [In("k", "K/W", "thermal resistance to air", Name = "resistance", Min = 0)] double resistanceKPerW,
        [In("τ", "s", "time constant", Name = "time-constant", Min = 0)] double timeConstantS,
        [In("θ", "s", "dead time", Name = "delay", Min = 0)] double delayS)
    {
        var (gain, period) = TrueUltimate(resistanceKPerW, timeConstantS, delayS);
        return new UltimatePoint(gain, period);
    }

    /// <summary>True ultimate gain and period of a first-order tool with dead time under a plain gain: where its phase is −180°.</summary>
    public static (double GainWPerK, double PeriodS) TrueUltimate(double resistanceKPerW, double timeConstantS, double delayS)
    {
        Impossible.UnlessPositive(resistanceKPerW, "K/W");
        Impossible.UnlessPositive(timeConstantS, "s");
        Impossible.UnlessPositive(delayS, "s");
        double w = Roots.Monotone(x => Math.Atan(x * timeConstantS) + (x * delayS) - Math.PI, 0.5 * Math.PI / delayS, Math.PI / delayS).X;
        return (Math.Sqrt(1 + Math.Pow(w * timeConstantS, 2)) / resistanceKPerW, 2 * Math.PI / w);
    }
}

/// <summary>Where a plain controller starts to swing.</summary>
/// <param name="GainWPerK">Ultimate gain.</param>
/// <param name="PeriodS">Its period.</param>
public sealed record UltimatePoint(
    [property: Out("W/K", "ultimate gain")] double GainWPerK,
    [property: Out("s", "period")] double PeriodS);
