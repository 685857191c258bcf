namespace Heatwright.Physics;

/// <summary>Loss of a converter as a0 + a1·I + a2·I², I being its input current (step-up) or output current (step-down). All zero: ideal.</summary>
/// <remarks>a0: quiescent, gate drive, core. a1: diode drop and switching overlap. a2: copper and switch resistance. The three belong to the output
/// voltage of the readings they came from; for another one widen a1 and a2 by ±30 % (common practice, no source).</remarks>
public readonly record struct LossCoefficients
{
    /// <summary>Takes the three coefficients; none can be negative.</summary>
    public LossCoefficients(double fixedW, double dropV, double slopeOhm)
    {
        FixedW = Impossible.IfNegative(fixedW, "W");
        DropV = Impossible.IfNegative(dropV, "V");
        SlopeOhm = Impossible.IfNegative(slopeOhm, "Ω");
    }

    /// <summary>a0: loss without load.</summary>
    public double FixedW { get; }

    /// <summary>a1: loss per ampere.</summary>
    public double DropV { get; }

    /// <summary>a2: loss per ampere squared.</summary>
    public double SlopeOhm { get; }

    /// <summary>a0 + a1·I + a2·I².</summary>
    public double AtW(double currentA) => FixedW + (Impossible.IfNegative(currentA, "A") * (DropV + (SlopeOhm * currentA)));
}
