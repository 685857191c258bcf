using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>Rise of a linear tool when the power was not constant: switched off, or sagging with the pack.</summary>
/// <remarks>Superposition of step responses. Checked: IdentificationTests.</remarks>
public static class PowerHistory
{
    /// <summary>Rise of one body heated from 0 to <paramref name="offS"/> and cooling after: KP[S(t) − S(t − t_off)], K.</summary>
    [Law("heat-then-cool", "warm-up", "Δ = K·P·[S(t) − S(t − t_off)], S(t) = 1 − e^(−t/τ)", Says = "rise of a tool heated for a while and then cooling", Unit = "K", Source = "definition", Where = "superposition of a linear tool",
        Valid = "loss in proportion to the rise", Example = "resistance=29.4K/W time-constant=216s power=12W off=300s time=600s")]
    public static double HeatThenCoolK(
        [In("K", "K/W", "thermal resistance to air", Name = "resistance", Min = 0)] double resistanceKPerW,
        [In("τ", "s", "time constant", Name = "time-constant", Min = 0)] double timeConstantS,
        [In("P", "W", "power while on", Name = "power", Min = 0)] double powerW,
        [In("t_off", "s", "when it is switched off", Name = "off", Min = 0)] double offS,
        [In("t", "s", "time since switching on", Name = "time", Min = 0)] double timeS)
    {
        Impossible.UnlessPositive(timeConstantS, "s");
        Impossible.IfNegative(offS, "s");
        double on = Phi.RisenShare(Impossible.IfNegative(timeS, "s") / timeConstantS);
        double off = timeS > offS ? Phi.RisenShare((timeS - offS) / timeConstantS) : 0;
        return Impossible.UnlessPositive(resistanceKPerW, "K/W") * Impossible.IfNegative(powerW, "W") * (on - off);
    }

    /// <summary>Rise after pulses of power on any unit step response: Σ (P_i − P_{i−1})·S(t − t_i).</summary>
    /// <param name="unitStepKPerW">Rise per watt at a time after a step from cold.</param>
    /// <param name="levels">Time from which each power holds, in order, and that power.</param>
    /// <param name="timeS">When the rise is wanted.</param>
    public static double RiseK(Func<double, double> unitStepKPerW, IReadOnlyList<(double FromS, double PowerW)> levels, double timeS)
    {
        double rise = 0;
        double before = 0;
        double last = double.NegativeInfinity;
        foreach (var (fromS, powerW) in levels)
        {
            last = ImpossibleHeat.UnlessAbove(fromS, last, "s");
            rise += timeS > fromS ? (powerW - before) * unitStepKPerW(timeS - fromS) : 0;
            before = powerW;
        }

        return rise;
    }

    /// <summary>Rise of one body while the power runs in a straight line P₀ + bt: K[P₀(1 − e^(−t/τ)) + b(t − τ(1 − e^(−t/τ)))], K.</summary>
    /// <remarks>Late power counts more than early power: neither the starting nor the mean power gives this rise.</remarks>
    [Law("sagging-warm-up", "warm-up", "Δ = K·[P₀(1 − e^(−t/τ)) + b(t − τ(1 − e^(−t/τ)))], b = (P₁ − P₀)/t", Says = "rise of a tool while its battery sags", Unit = "K", Source = "definition", Where = "response of a linear tool to a ramp",
        Valid = "power in a straight line from P₀ to P₁, loss in proportion to the rise", Example = "resistance=29.4K/W time-constant=190s start-power=12.6W end-power=11.4W time=300s")]
    public static double RampK(
        [In("K", "K/W", "thermal resistance to air", Name = "resistance", Min = 0)] double resistanceKPerW,
        [In("τ", "s", "time constant", Name = "time-constant", Min = 0)] double timeConstantS,
        [In("P₀", "W", "power at the start", Name = "start-power", Min = 0)] double startW,
        [In("P₁", "W", "power at the end", Name = "end-power", Min = 0)] double endW,
        [In("t", "s", "length of the warm-up", Name = "time", Min = 0)] double timeS)
    {
        Impossible.UnlessPositive(resistanceKPerW, "K/W");
        double x = Impossible.UnlessPositive(timeS, "s") / Impossible.UnlessPositive(timeConstantS, "s");

        // t − τ(1 − e^(−x)) = t·x·φ₂(−x): the difference itself would lose its digits for short times.
        double level = Impossible.IfNegative(startW, "W") * Phi.RisenShare(x);
        return resistanceKPerW * (level + (Impossible.IfNegative(endW, "W") - startW) * x * Phi.Two(-x));
    }
}
