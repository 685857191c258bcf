using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>What a warm-up at constant power takes.</summary>
/// <param name="TimeS">Time to the target; infinite when the power does not reach it.</param>
/// <param name="EnergyJ">Heat put in by then.</param>
/// <param name="StoredJ">Heat stored in the tool by then.</param>
/// <param name="Efficiency">Stored over put in.</param>
/// <param name="HoldW">Power that holds the target.</param>
public sealed record WarmUpNeeds(
    [property: Out("s", "time to the target")] double TimeS,
    [property: Out("J", "heat put in")] double EnergyJ,
    [property: Out("J", "heat stored in the tool")] double StoredJ,
    [property: Out("", "share of the heat that is stored")] double Efficiency,
    [property: Out("W", "power that holds the target", Name = "hold-power")] double HoldW);

/// <summary>Warm-up of a tool taken as one body that stores heat and loses it in proportion to its rise.</summary>
/// <remarks>C dΔ/dt = P − G Δ. Source: [incropera-dewitt] ch. 5, lumped capacitance, from memory. Checked: WarmUpTests.</remarks>
public static class WarmUp
{
    /// <summary>Time constant τ = C/G, s.</summary>
    [Law("time-constant", "warm-up", "τ = C/G", Says = "time constant of a tool from heat capacity and loss", Unit = "s", Source = "incropera-dewitt", Where = "ch. 5, from memory",
        Valid = "one body, loss in proportion to the rise", Example = "capacity=8J/K conductance=0.03W/K")]
    public static double TimeConstantS(
        [In("C", "J/K", "heat capacity", Name = "capacity", Min = 0)] double capacityJPerK,
        [In("G", "W/K", "conductance to air", Name = "conductance", Min = 0)] double conductanceWPerK) =>
        Impossible.UnlessPositive(capacityJPerK, "J/K") / Impossible.UnlessPositive(conductanceWPerK, "W/K");

    /// <summary>Rise over air after a time at constant power, K: Δ = (P/G)(1 − e^(−t/τ)).</summary>
    [Law("warm-up-rise", "warm-up", "Δ = (P/G)·(1 − e^(−tG/C))", Says = "rise after a time at constant power", Unit = "K", Source = "incropera-dewitt", Where = "ch. 5, from memory",
        Valid = "one body, loss in proportion to the rise, started cold", Example = "power=12W capacity=8J/K conductance=0.03W/K time=60s")]
    public static double RiseK(
        [In("P", "W", "power at the heater", Name = "power", Min = 0)] double powerW,
        [In("C", "J/K", "heat capacity", Name = "capacity", Min = 0)] double capacityJPerK,
        [In("G", "W/K", "conductance to air", Name = "conductance", Min = 0)] double conductanceWPerK,
        [In("t", "s", "time since switching on", Name = "time", Min = 0)] double timeS) =>
        Impossible.IfNegative(powerW, "W") / conductanceWPerK
            * Phi.RisenShare(Impossible.IfNegative(timeS, "s") / TimeConstantS(capacityJPerK, conductanceWPerK));

    /// <summary>Time to a rise at constant power, s: t = −τ ln(1 − ΔG/P); infinite when the plateau P/G lies at or below it.</summary>
    [Law("warm-up-time", "warm-up", "t = −(C/G)·ln(1 − ΔG/P)", Says = "time to a rise at constant power", Unit = "s", Source = "incropera-dewitt", Where = "ch. 5, from memory",
        Valid = "one body, loss in proportion to the rise, started cold; infinite means never", Example = "rise=325K power=12W capacity=8J/K conductance=0.03W/K")]
    public static double TimeToRiseS(
        [In("Δ", "K", "rise to reach", Name = "rise", Min = 0)] double riseK,
        [In("P", "W", "power at the heater", Name = "power", Min = 0)] double powerW,
        [In("C", "J/K", "heat capacity", Name = "capacity", Min = 0)] double capacityJPerK,
        [In("G", "W/K", "conductance to air", Name = "conductance", Min = 0)] double conductanceWPerK)
    {
        double plateauK = Impossible.UnlessPositive(powerW, "W") / Impossible.UnlessPositive(conductanceWPerK, "W/K");
        double share = Impossible.IfNegative(riseK, "K") / plateauK;
        return share < 1 ? -TimeConstantS(capacityJPerK, conductanceWPerK) * LogOfRest(share) : double.PositiveInfinity;
    }

    /// <summary>Time, energy, stored heat, efficiency and hold power of a warm-up to a temperature.</summary>
    [Law("warm-up", "warm-up", "t = −(C/G)·ln(1 − ΔG/P), E = P·t, efficiency = CΔ/E, hold = GΔ, Δ = T − T_a", Says = "time, energy and hold power of a warm-up to a temperature", Source = "incropera-dewitt",
        Where = "ch. 5, from memory", Valid = "one body, loss in proportion to the rise, started at air temperature",
        Example = "target=350°C around=25°C power=12W capacity=6J/K conductance=0.03W/K")]
    public static WarmUpNeeds To(
        [In("T", "°C", "temperature to reach", Name = "target", Min = -273.15)] double targetC,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -273.15, Default = 25)] double aroundC,
        [In("P", "W", "power at the heater", Name = "power", Min = 0)] double powerW,
        [In("C", "J/K", "heat capacity", Name = "capacity", Min = 0)] double capacityJPerK,
        [In("G", "W/K", "conductance to air", Name = "conductance", Min = 0)] double conductanceWPerK)
    {
        double riseK = ImpossibleHeat.UnlessAbove(targetC, aroundC, "°C") - aroundC;
        double timeS = TimeToRiseS(riseK, powerW, capacityJPerK, conductanceWPerK);
        double energyJ = powerW * timeS;
        return new WarmUpNeeds(timeS, energyJ, capacityJPerK * riseK, capacityJPerK * riseK / energyJ, conductanceWPerK * riseK);
    }

    /// <summary>Warm-up time in time constants from the margin ratio m = P_max/P_hold: t/τ = ln(m/(m − 1)).</summary>
    [Law("margin-time", "warm-up", "t/τ = ln(m/(m − 1)), m = P_max/P_hold", Says = "warm-up time in time constants from the power margin", Source = "definition", Where = "warm-up of one body, solved for t/τ",
        Valid = "loss in proportion to the rise; near m = 1 the time explodes: quote a range", Example = "margin=1.5")]
    public static double TimeConstantsForMargin([In("m", "", "power at hand over power to hold", Name = "margin", Min = 1, SoftMin = 1.2)] double marginRatio) =>
        -LogOfRest(1 / ImpossibleHeat.UnlessAbove(marginRatio, 1, ""));

    /// <summary>Change of the warm-up time per watt, s/W: −(τ/P)/(m − 1).</summary>
    [Law("warm-up-slope", "warm-up", "∂t/∂P = −(τ/P)/(m − 1)", Says = "how much a watt more shortens a warm-up", Unit = "s/W", Source = "definition", Where = "derivative of the warm-up time",
        Valid = "near m = 1 it explodes: quote a range", Example = "time-constant=200s power=12W margin=1.5")]
    public static double TimeSlopeSPerW(
        [In("τ", "s", "time constant", Name = "time-constant", Min = 0)] double timeConstantS,
        [In("P", "W", "power", Name = "power", Min = 0)] double powerW,
        [In("m", "", "power at hand over power to hold", Name = "margin", Min = 1, SoftMin = 1.2)] double marginRatio) =>
        -Impossible.UnlessPositive(timeConstantS, "s") / Impossible.UnlessPositive(powerW, "W") / (ImpossibleHeat.UnlessAbove(marginRatio, 1, "") - 1);

    /// <summary>Time from one rise to another when net power is any function of the rise: t = ∫ C dΔ / (P(Δ) − q(Δ)).</summary>
    /// <remarks>Infinite when the net power is not positive all the way. Composite Gauss rule with 5 points, halved until it stands still;
    /// near a plateau the integrand grows like 1/x, which halving towards the end resolves.</remarks>
    public static double TimeToRiseS(double capacityJPerK, Func<double, double> netPowerW, double fromRiseK, double toRiseK)
    {
        Impossible.UnlessPositive(capacityJPerK, "J/K");
        Impossible.UnlessFinite(fromRiseK, "K");
        Impossible.Unless(toRiseK, fromRiseK, double.MaxValue, "K");
        return netPowerW(toRiseK) > 0 && netPowerW(fromRiseK) > 0
            ? capacityJPerK * Quadrature.Integral(rise => netPowerW(rise) is > 0 and var net ? 1 / net : double.PositiveInfinity, fromRiseK, toRiseK)
            : double.PositiveInfinity;
    }

    /// <summary>ln(1 − x) without loss of digits for small x.</summary>
    internal static double LogOfRest(double x) => Math.Abs(x) < 1e-4 ? -x * (1 + x * (0.5 + x * (1.0 / 3 + x * 0.25))) : Math.Log(1 - x);
}
