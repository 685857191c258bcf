namespace Heatwright.Physics;

/// <summary>The two time constants of a core that heats a tip.</summary>
/// <param name="SlowS">Longer one: tool to air.</param>
/// <param name="FastS">Shorter one: core to tip.</param>
public sealed record TwoTimes(
    [property: Out("s", "slow time constant, tool to air")] double SlowS,
    [property: Out("s", "fast time constant, core to tip")] double FastS);

/// <summary>A tool taken as two bodies: a core that holds the heater, and the working tip.</summary>
/// <remarks>Source: the same balance as <see cref="HeatNetwork"/>, solved by hand. Checked: WarmUpTests.</remarks>
public static class TwoNodeTool
{
    /// <summary>Both time constants from capacities and conductances.</summary>
    [Law("two-node-times", "warm-up", "a₁ = (G₁₂+G₁)/C₁ + (G₁₂+G₂)/C₂, a₀ = (G₁₂G₁+G₁₂G₂+G₁G₂)/(C₁C₂), τ = 2/(a₁ ∓ √(a₁² − 4a₀))",
        Says = "slow and fast time constant of a core with a tip",
        Source = "definition", Where = "roots of the heat balance of two bodies", Valid = "losses in proportion to the rise",
        Example = "core=1.5J/K tip=6J/K between=0.25W/K core-loss=0.004W/K tip-loss=0.03W/K")]
    public static TwoTimes Times(
        [In("C₁", "J/K", "heat capacity of the core", Name = "core", Min = 0)] double coreJPerK,
        [In("C₂", "J/K", "heat capacity of the tip", Name = "tip", Min = 0)] double tipJPerK,
        [In("G₁₂", "W/K", "conductance core to tip", Name = "between", Min = 0)] double betweenWPerK,
        [In("G₁", "W/K", "conductance core to air", Name = "core-loss", Min = 0, Default = 0)] double coreLossWPerK,
        [In("G₂", "W/K", "conductance tip to air", Name = "tip-loss", Min = 0)] double tipLossWPerK)
    {
        Impossible.UnlessPositive(betweenWPerK, "W/K");
        Impossible.IfNegative(coreLossWPerK, "W/K");
        Impossible.IfNegative(tipLossWPerK, "W/K");
        Impossible.UnlessPositive(coreLossWPerK + tipLossWPerK, "W/K");
        double core = (betweenWPerK + coreLossWPerK) / Impossible.UnlessPositive(coreJPerK, "J/K");
        double tip = (betweenWPerK + tipLossWPerK) / Impossible.UnlessPositive(tipJPerK, "J/K");
        double sum = core + tip;
        double product = (betweenWPerK * (coreLossWPerK + tipLossWPerK) + coreLossWPerK * tipLossWPerK) / (coreJPerK * tipJPerK);

        // a₁² − 4a₀ written as a sum of squares: it cannot turn negative by rounding, so the roots stay real.
        double root = Math.Sqrt((core - tip) * (core - tip) + 4 * betweenWPerK * betweenWPerK / (coreJPerK * tipJPerK));
        double fastRate = 0.5 * (sum + root);
        return new TwoTimes(fastRate / product, 1 / fastRate);
    }

    /// <summary>Rise of the tip under constant power when all heat leaves by the tip:
    /// Δ = KP[1 − (τ₁e^(−t/τ₁) − τ₂e^(−t/τ₂))/(τ₁ − τ₂)].</summary>
    [Law("two-node-rise", "warm-up", "Δ = K·P·[1 − (τ₁·e^(−t/τ₁) − τ₂·e^(−t/τ₂))/(τ₁ − τ₂)]", Says = "rise of a tip behind its core after a time", Unit = "K", Source = "definition", Where = "step response of two bodies",
        Valid = "all heat leaves by the tip; losses in proportion to the rise", Example = "resistance=29.4K/W slow=216s fast=9.35s power=12W time=300s")]
    public static double TipRiseK(
        [In("K", "K/W", "thermal resistance to air", Name = "resistance", Min = 0)] double resistanceKPerW,
        [In("τ₁", "s", "slow time constant", Name = "slow", Min = 0)] double slowS,
        [In("τ₂", "s", "fast time constant", Name = "fast", Min = 0)] double fastS,
        [In("P", "W", "power", Name = "power", Min = 0)] double powerW,
        [In("t", "s", "time", Name = "time", Min = 0)] double timeS)
    {
        Impossible.UnlessPositive(resistanceKPerW, "K/W");
        Impossible.UnlessPositive(slowS, "s");
        Impossible.IfNegative(fastS, "s");
        Impossible.IfNegative(timeS, "s");
        return resistanceKPerW * powerW * UnitStep(slowS, fastS, timeS);
    }

    /// <summary>Rise of a tip taken as one body behind a dead time: nothing until θ, then a first-order rise.</summary>
    public static double DelayedRiseK(double resistanceKPerW, double slowS, double delayS, double powerW, double timeS) =>
        timeS <= Impossible.IfNegative(delayS, "s")
            ? 0
            : Impossible.UnlessPositive(resistanceKPerW, "K/W") * powerW * Numerics.Phi.RisenShare((timeS - delayS) / Impossible.UnlessPositive(slowS, "s"));

    /// <summary>Core above tip in the steady state: heat through the joint over its conductance, K.</summary>
    [Law("core-above-tip", "warm-up", "Δ = q/G₁₂", Says = "how much hotter the core is than the tip", Unit = "K", Source = "definition", Where = "conductance", Valid = "steady state",
        Example = "heat=12W between=0.25W/K")]
    public static double CoreAboveTipK(
        [In("q", "W", "heat from core to tip", Name = "heat")] double heatW,
        [In("G₁₂", "W/K", "conductance core to tip", Name = "between", Min = 0)] double betweenWPerK) =>
        Impossible.UnlessFinite(heatW, "W") / Impossible.UnlessPositive(betweenWPerK, "W/K");

    /// <summary>What a sensor at the tip alone can tell of the heat capacities: (τ₁ + τ₂)/K = C₁ + C₂ + C₁G₂/G₁₂, J/K.</summary>
    /// <remarks>C₁, C₂ and G₁₂ by themselves cannot be told apart from the tip: one more fact is needed.</remarks>
    [Law("tool-capacity", "warm-up", "C = (τ₁ + τ₂)/K", Says = "heat capacity of a whole tool from its time constants", Unit = "J/K", Source = "definition", Where = "sum of the capacities of two bodies, nearly",
        Valid = "all heat leaves by the tip", Example = "resistance=29.4K/W slow=216s fast=9.35s")]
    public static double ApparentCapacityJPerK(
        [In("K", "K/W", "thermal resistance to air", Name = "resistance", Min = 0)] double resistanceKPerW,
        [In("τ₁", "s", "slow time constant", Name = "slow", Min = 0)] double slowS,
        [In("τ₂", "s", "fast time constant", Name = "fast", Min = 0)] double fastS) =>
        (Impossible.UnlessPositive(slowS, "s") + Impossible.IfNegative(fastS, "s")) / Impossible.UnlessPositive(resistanceKPerW, "K/W");

    private static double UnitStep(double slowS, double fastS, double timeS)
    {
        if (Math.Abs(slowS - fastS) < 1e-6 * slowS)
        {
            // Equal roots: the quotient of differences becomes the slope of τe^(−t/τ).
            double x = timeS / (0.5 * (slowS + fastS));
            return 1 - (1 + x) * Math.Exp(-x);
        }

        double fast = fastS == 0 ? 0 : fastS * Math.Exp(-timeS / fastS);
        return 1 - (slowS * Math.Exp(-timeS / slowS) - fast) / (slowS - fastS);
    }
}
