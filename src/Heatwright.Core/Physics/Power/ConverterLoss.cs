namespace Heatwright.Physics;

/// <summary>A converter as three loss coefficients on a source with resistance: input current, efficiency, best point, fold.</summary>
/// <remarks>Power balance (OCV − I·R_s)·I = P + a0 + a1·I + a2·I², the loss going with the input current (step-up). With E = OCV − a1 and A = a2 + R_s:
/// I = 2(P + a0)/(E + √(E² − 4A(P + a0))); the form without cancellation, the radicand looked at first. Derived here. A step-down's loss goes with its
/// output current instead: see <see cref="StepDownPoint"/>.</remarks>
public static class ConverterLoss
{
    /// <summary>Input current for a wanted output power; none above the fold.</summary>
    public static double? InputA(double openV, double sourceOhm, in LossCoefficients loss, double outW)
    {
        double drive = Impossible.UnlessPositive(openV, "V") - loss.DropV;
        double wanted = Impossible.IfNegative(outW, "W") + loss.FixedW;
        double radicand = (drive * drive) - (4 * (loss.SlopeOhm + Impossible.IfNegative(sourceOhm, "Ω")) * wanted);
        return drive > 0 && radicand >= 0 ? 2 * wanted / (drive + Math.Sqrt(radicand)) : null;
    }

    /// <summary>Output power at an input current: E·I − A·I² − a0. Negative when the module does not even cover its own loss.</summary>
    public static double OutW(double openV, double sourceOhm, in LossCoefficients loss, double inputA) =>
        (inputA * (Impossible.UnlessPositive(openV, "V") - loss.DropV - ((loss.SlopeOhm + Impossible.IfNegative(sourceOhm, "Ω")) * inputA))) - loss.FixedW;

    /// <summary>Input current of the most output power: E/(2A). Infinite for a stiff source and a lossless module.</summary>
    public static double FoldA(double openV, double sourceOhm, in LossCoefficients loss)
    {
        double ohms = loss.SlopeOhm + Impossible.IfNegative(sourceOhm, "Ω");
        double drive = Math.Max(0, Impossible.UnlessPositive(openV, "V") - loss.DropV);
        return ohms > 0 ? drive / (2 * ohms) : double.PositiveInfinity;
    }

    /// <summary>Most output power: E²/(4A) − a0, not below zero.</summary>
    public static double MostW(double openV, double sourceOhm, in LossCoefficients loss) => double.IsPositiveInfinity(FoldA(openV, sourceOhm, loss))
        ? double.PositiveInfinity
        : Math.Max(0, OutW(openV, sourceOhm, loss, FoldA(openV, sourceOhm, loss)));

    /// <summary>Most output power of a step-up on a source, in plain numbers.</summary>
    [Law("step-up-fold", "power paths", "(V − a1)²/(4 (a2 + Rs)) − a0", Says = "most output power of a step-up before its input folds", Unit = "W", Source = "definition", Where = "power balance, derivative set to zero",
        Valid = "loss coefficients from readings at about this output voltage", Example = "open=3.7V source=0.12ohm fixed=0.1W drop=0.15V slope=60mohm")]
    public static double FoldW(
        [In("V", "V", "rested voltage", Name = "open", Min = 0)] double openV,
        [In("Rs", "Ω", "source resistance", Name = "source", Min = 0)] double sourceOhm,
        [In("a0", "W", "loss without load", Name = "fixed", Min = 0)] double fixedW,
        [In("a1", "V", "loss per ampere", Name = "drop", Min = 0)] double dropV,
        [In("a2", "Ω", "loss per ampere squared", Name = "slope", Min = 0)] double slopeOhm) =>
        MostW(openV, sourceOhm, new LossCoefficients(fixedW, dropV, slopeOhm));

    /// <summary>Where a module is best, in plain numbers.</summary>
    [Law("converter-best-load", "power paths", "I = √(a0/a2), η = 1 − (a1 + 2·√(a0·a2))/Vin", Says = "input current and efficiency where a module is best", Source = "definition", Where = "loss balance, derivative set to zero",
        Valid = "stiff source; loss coefficients from readings", Example = "input-voltage=3.7V fixed=0.1W drop=0.15V slope=60mohm")]
    public static BestLoad Best(
        [In("Vin", "V", "input", Name = "input-voltage", Min = 0)] double inV,
        [In("a0", "W", "loss without load", Name = "fixed", Min = 0)] double fixedW,
        [In("a1", "V", "loss per ampere", Name = "drop", Min = 0)] double dropV,
        [In("a2", "Ω", "loss per ampere squared", Name = "slope", Min = 0)] double slopeOhm)
    {
        LossCoefficients loss = new(fixedW, dropV, slopeOhm);
        return new(BestA(loss), BestEfficiency(loss, inV));
    }

    /// <summary>Input current of the best efficiency at the terminals: √(a0/a2).</summary>
    public static double BestA(in LossCoefficients loss) => loss.SlopeOhm > 0 ? Math.Sqrt(loss.FixedW / loss.SlopeOhm) : double.PositiveInfinity;

    /// <summary>Best efficiency at the terminals: 1 − (a1 + 2√(a0·a2))/V_in.</summary>
    public static double BestEfficiency(in LossCoefficients loss, double inV) =>
        1 - ((loss.DropV + (2 * Math.Sqrt(loss.FixedW * loss.SlopeOhm))) / Impossible.UnlessPositive(inV, "V"));

    /// <summary>Loss of one set of four readings.</summary>
    public static double ReadLossW(double inV, double inA, double outV, double outA) => (inV * inA) - (outV * outA);

    /// <summary>Standard doubt of such a loss, a small difference of two powers: √((V_in·I_in·r)² + (V_out·I_out·r)²).</summary>
    /// <param name="inV">Input voltage.</param>
    /// <param name="inA">Input current.</param>
    /// <param name="outV">Output voltage.</param>
    /// <param name="outA">Output current.</param>
    /// <param name="relativeDoubt">Combined relative doubt of one product of volts and amperes.</param>
    public static double ReadLossDoubtW(double inV, double inA, double outV, double outA, double relativeDoubt) =>
        Impossible.IfNegative(relativeDoubt, "") * Math.Sqrt((inV * inA * inV * inA) + (outV * outA * outV * outA));
}

/// <summary>Where a module loses least for what it passes.</summary>
/// <param name="InputA">Input current.</param>
/// <param name="Efficiency">Efficiency there.</param>
public readonly record struct BestLoad(
    [property: Out("A", "input current", Name = "input-current")] double InputA,
    [property: Out("", "efficiency there")] double Efficiency);
