namespace Heatwright.Physics;

/// <summary>A probe that follows late while a tool warms up or cools down.</summary>
/// <remarks>First-order lag, T = T_p + τ·dT_p/dt: definition of a time constant. Checked: ProbeLagTests.</remarks>
public static class ProbeLag
{
    /// <summary>Temperature of the thing from what the probe shows and how fast it changes, °C.</summary>
    [Law("probe-lag-corrected", "calibration", "T = T_p + τ·ΔT_p/dt", Says = "what a thing's temperature is while its slow probe is still changing", Unit = "°C", Source = "definition", Where = "first-order lag",
        Valid = "two or three time constants after a change", Example = "shown=300C lag=4s rate=-4.17K/s")]
    public static double CorrectedC(
        [In("T_p", "°C", "temperature the probe shows", Name = "shown")] double shownC,
        [In("τ", "s", "time constant of the probe", Name = "lag", Min = 0)] double lagS,
        [In("ΔT_p/dt", "K/s", "rate of what the probe shows", Name = "rate")] double rateKPerS) => shownC + (lagS * rateKPerS);

    /// <summary>Rate of a free cooling, K/s, negative: −rise/τ.</summary>
    public static double CoolingKPerS(double riseK, double timeConstantS) => -riseK / timeConstantS;

    /// <summary>Lag between probe and sensor from the gap of heating and cooling curves at one count, s: gap/(rate up + rate down).</summary>
    [Law("loop-lag", "calibration", "τ = gap/(r_up + r_down)", Says = "lag between probe and sensor from a loop that does not close", Unit = "s", Source = "definition", Where = "first-order lag on two ramps",
        Valid = "one lag; where it does not close with one, there is a gradient", Example = "gap=20K heating=3K/s cooling=2K/s")]
    public static double FromLoopS(
        [In("gap", "K", "gap between heating and cooling at one count", Name = "gap", Min = 0)] double gapK,
        [In("r_up", "K/s", "rate while heating", Name = "heating", Min = 1e-300)] double heatingKPerS,
        [In("r_down", "K/s", "rate while cooling", Name = "cooling")] double coolingKPerS) => gapK / (heatingKPerS + Math.Abs(coolingKPerS));

    /// <summary>Gap of heating and cooling curves at one count, K.</summary>
    public static double LoopGapK(double lagS, double heatingKPerS, double coolingKPerS) => lagS * (heatingKPerS + Math.Abs(coolingKPerS));
}
