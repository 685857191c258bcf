namespace Heatwright.Physics;

/// <summary>What four readings at a step-up say about its state.</summary>
public enum PathSign
{
    /// <summary>Holds its set voltage.</summary>
    Holds,

    /// <summary>Below its set voltage near or beyond the fold of the source.</summary>
    NearFold,

    /// <summary>Below its set voltage, source not near the fold: a limit of the module.</summary>
    ModuleLimit,
}

/// <summary>Reads the state of a module from the bench. The thresholds are common practice, no source.</summary>
public static class PathDiagnosis
{
    /// <summary>Below 0.95 of the set voltage with more than 0.7 of the fold current: at or beyond the fold.</summary>
    public static PathSign Of(double outV, double setV, double inputA, double foldA) =>
        Impossible.IfNegative(outV, "V") >= 0.95 * Impossible.UnlessPositive(setV, "V") ? PathSign.Holds
        : Impossible.IfNegative(inputA, "A") > 0.7 * Impossible.UnlessPositive(foldA, "A") ? PathSign.NearFold
        : PathSign.ModuleLimit;

    /// <summary>The same input current with two heaters, within 3 %: the current limit is what was read.</summary>
    public static bool SameLimit(double firstA, double secondA) =>
        Math.Abs(firstA - secondA) <= 0.03 * Math.Max(Impossible.UnlessPositive(firstA, "A"), Impossible.UnlessPositive(secondA, "A"));

    /// <summary>How a four-switch module works: step-up, step-down, or in between within 10 % of the output, where it loses 2 to 4 % more.</summary>
    public static StepMode ModeOf(double inV, double outV) =>
        Impossible.UnlessPositive(inV, "V") < 0.9 * Impossible.UnlessPositive(outV, "V") ? StepMode.Up : inV > 1.1 * outV ? StepMode.Down : StepMode.Between;
}

/// <summary>Working mode of a module that can step both ways.</summary>
public enum StepMode
{
    /// <summary>Input well below the output.</summary>
    Up,

    /// <summary>Input well above the output.</summary>
    Down,

    /// <summary>Input near the output.</summary>
    Between,
}
