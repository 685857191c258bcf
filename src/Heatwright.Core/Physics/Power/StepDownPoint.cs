namespace Heatwright.Physics;

/// <summary>A step-down module: what it is set to, what it loses, what limits it. Limits left out do not limit.</summary>
/// <param name="SetV">Set output voltage.</param>
/// <param name="Loss">Loss over output current.</param>
public sealed record StepDownModule(double SetV, LossCoefficients Loss)
{
    /// <summary>Set output voltage.</summary>
    public double SetV { get; } = Impossible.UnlessPositive(SetV, "V");

    /// <summary>Largest mean output current.</summary>
    public double LimitA { get; init => field = value > 0 ? value : throw Impossible.Outside(nameof(LimitA), value, "A", "more than 0"); } = double.PositiveInfinity;

    /// <summary>Largest duty.</summary>
    public double MaxDuty { get; init => field = Impossible.UnlessPositive(Impossible.UnlessFraction(value, nameof(MaxDuty)), "", nameof(MaxDuty)); } = 1;

    /// <summary>Input voltage at which it stops.</summary>
    public double LockoutV { get; init => field = Impossible.IfNegative(value, "V", nameof(LockoutV)); }
}

/// <summary>Operating point of a step-down module between a source with resistance and a heater, with the region named.</summary>
/// <remarks>Its loss goes with the output current, so W = I_out²·R_h + a0 + a1·I_out + a2·I_out² is known first and the input follows:
/// I_in = 2W/(OCV + √(OCV² − 4·R_s·W)). Source and module resistance carry different currents and are never added. The first event met as the loop
/// raises its output current is the point. Derived here from power and charge balance.</remarks>
public static class StepDownPoint
{
    /// <summary>The point, from plain numbers.</summary>
    [Law("step-down-point", "power paths", "Iin = 2W/(V + √(V² − 4 Rs W)), W = P + a0 + a1·Iout + a2·Iout², Iout = Vset/R", Says = "where a step-down module on a battery comes to rest", Source = "definition", Where = "power and charge balance",
        Valid = "loss coefficients from readings at about the set voltage", Example = "open=7.4V source=0.2ohm set=5V heater=2.5ohm fixed=0.05W drop=0.1V slope=50mohm")]
    public static PathPoint At(
        [In("V", "V", "rested battery voltage", Name = "open", Min = 0)] double openV,
        [In("Rs", "Ω", "source resistance", Name = "source", Min = 0)] double sourceOhm,
        [In("Vset", "V", "set output", Name = "set", Min = 0)] double setV,
        [In("R", "Ω", "heater at its present temperature", Name = "heater", Min = 0)] double heaterOhm,
        [In("a0", "W", "loss without load", Name = "fixed", Min = 0, Default = 0.05)] double fixedW = 0.05,
        [In("a1", "V", "loss per output ampere", Name = "drop", Min = 0, Default = 0.1)] double dropV = 0.1,
        [In("a2", "Ω", "loss per output ampere squared", Name = "slope", Min = 0, Default = 0.05)] double slopeOhm = 0.05,
        [In("Imax", "A", "largest output current", Name = "limit", Min = 0, Default = double.PositiveInfinity)] double limitA = double.PositiveInfinity,
        [In("Dmax", "", "largest duty", Name = "max-duty", Min = 0, Max = 1, Default = 1)] double maxDuty = 1,
        [In("Vuv", "V", "under-voltage lock-out", Name = "lockout", Min = 0, Default = 0)] double lockoutV = 0) =>
        At(openV, sourceOhm, heaterOhm, new StepDownModule(setV, new(fixedW, dropV, slopeOhm)) { LimitA = limitA, MaxDuty = maxDuty, LockoutV = lockoutV });

    /// <summary>The point.</summary>
    public static PathPoint At(double openV, double sourceOhm, double heaterOhm, StepDownModule module)
    {
        Impossible.UnlessPositive(openV, "V");
        Impossible.IfNegative(sourceOhm, "Ω");
        Impossible.UnlessPositive(heaterOhm, "Ω");
        if (openV <= module.LockoutV)
        {
            return PathPoint.Without(PathRegion.LockedOut);
        }

        double fullW = sourceOhm > 0 ? openV * openV / (4 * sourceOhm) : double.PositiveInfinity;
        double lockoutW = module.LockoutV > openV / 2 && sourceOhm > 0 ? module.LockoutV * (openV - module.LockoutV) / sourceOhm : double.PositiveInfinity;
        double foldOutA = OutAFor(fullW, heaterOhm, module.Loss);
        double lockoutOutA = OutAFor(lockoutW, heaterOhm, module.Loss);
        double regulatedA = module.SetV / heaterOhm;
        double dutyA = DutyLimitA(openV, sourceOhm, heaterOhm, module);
        bool nearSide = dutyA * module.MaxDuty * sourceOhm <= openV / 2;
        double outA = Math.Min(Math.Min(regulatedA, module.LimitA), nearSide ? Math.Min(dutyA, lockoutOutA) : lockoutOutA);
        PathPoint point = outA > foldOutA
            ? BeyondFold(openV, sourceOhm, heaterOhm, module, dutyA)
            : Near(openV, sourceOhm, heaterOhm, module, outA, outA == lockoutOutA ? PathRegion.Hiccup
                : outA == regulatedA ? PathRegion.Regulated : outA == module.LimitA ? PathRegion.CurrentLimited : PathRegion.DutyLimited);
        return point with
        {
            FoldA = sourceOhm > 0 ? openV / (2 * sourceOhm) : double.PositiveInfinity,
            MostW = double.IsFinite(foldOutA) ? foldOutA * foldOutA * heaterOhm : double.PositiveInfinity,
            Margin = point.Region == PathRegion.Regulated ? Math.Min(Math.Min(module.LimitA, lockoutOutA), nearSide ? dutyA : foldOutA) / regulatedA : null,
        };
    }

    private static PathPoint Near(double openV, double sourceOhm, double heaterOhm, StepDownModule module, double outA, PathRegion region)
    {
        double outW = outA * outA * heaterOhm;
        double inputA = TwoRcCell.CurrentAtPowerA(openV, sourceOhm, outW + module.Loss.AtW(outA)) ?? double.NaN;
        return region == PathRegion.Hiccup || !(inputA > 0)
            ? PathPoint.Without(region == PathRegion.Hiccup ? region : PathRegion.SourceLimited)
            : new(region, inputA, openV - (inputA * sourceOhm), outA * heaterOhm, outW, module.Loss.AtW(outA), inputA / outA);
    }

    /// <summary>Heater below the source resistance: the loop runs through the fold up to its largest duty, unless the lock-out comes first.</summary>
    private static PathPoint BeyondFold(double openV, double sourceOhm, double heaterOhm, StepDownModule module, double outA)
    {
        double inputA = module.MaxDuty * outA;
        double inputV = openV - (inputA * sourceOhm);
        return inputV <= module.LockoutV ? PathPoint.Without(PathRegion.Hiccup)
            : outA <= 0 ? PathPoint.Without(PathRegion.SourceLimited)
            : new(PathRegion.DutyLimited, inputA, inputV, outA * heaterOhm, outA * outA * heaterOhm, module.Loss.AtW(outA), module.MaxDuty);
    }

    /// <summary>Output current at which heater and loss together take a power.</summary>
    private static double OutAFor(double inputW, double heaterOhm, in LossCoefficients loss) => double.IsPositiveInfinity(inputW)
        ? double.PositiveInfinity
        : inputW <= loss.FixedW ? 0
        : 2 * (inputW - loss.FixedW) / (loss.DropV + Math.Sqrt((loss.DropV * loss.DropV) + (4 * (heaterOhm + loss.SlopeOhm) * (inputW - loss.FixedW))));

    /// <summary>Output current at the largest duty, where I_in = D·I_out: (R_h + a2 + D²R_s)·I² − (D·OCV − a1)·I + a0 = 0, larger root.</summary>
    private static double DutyLimitA(double openV, double sourceOhm, double heaterOhm, StepDownModule module)
    {
        double drive = (module.MaxDuty * openV) - module.Loss.DropV;
        double ohms = heaterOhm + module.Loss.SlopeOhm + (module.MaxDuty * module.MaxDuty * sourceOhm);
        double radicand = (drive * drive) - (4 * ohms * module.Loss.FixedW);
        return drive > 0 && radicand >= 0 ? (drive + Math.Sqrt(radicand)) / (2 * ohms) : 0;
    }
}
