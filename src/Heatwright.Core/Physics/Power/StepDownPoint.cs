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
        var point = Heater(openV, sourceOhm, heaterOhm, module, out double foldOutA, out double limitA);
        return point.Region == PathRegion.LockedOut ? point.Boxed : point.Boxed with
        {
            FoldA = sourceOhm > 0 ? openV / (2 * sourceOhm) : double.PositiveInfinity,
            MostW = double.IsFinite(foldOutA) ? foldOutA * foldOutA * heaterOhm : double.PositiveInfinity,
            Margin = point.Region == PathRegion.Regulated ? limitA / (module.SetV / heaterOhm) : null,
        };
    }

    /// <summary>The point with any load, on the stack.</summary>
    internal static PathNumbers Solve(double openV, double sourceOhm, in LoadLaw load, StepDownModule module) =>
        double.IsNaN(load.Ohm) ? AnyLoad(openV, sourceOhm, load, module) : Heater(openV, sourceOhm, load.Ohm, module, out _, out _);

    private static PathNumbers Heater(double openV, double sourceOhm, double heaterOhm, StepDownModule module, out double foldOutA, out double limitA)
    {
        (foldOutA, limitA) = (double.PositiveInfinity, double.PositiveInfinity);
        if (openV <= module.LockoutV)
        {
            return PathNumbers.Without(PathRegion.LockedOut);
        }

        double fullW = sourceOhm > 0 ? openV * openV / (4 * sourceOhm) : double.PositiveInfinity;
        double lockoutW = module.LockoutV > openV / 2 && sourceOhm > 0 ? module.LockoutV * (openV - module.LockoutV) / sourceOhm : double.PositiveInfinity;
        foldOutA = OutAFor(fullW, heaterOhm, module.Loss);
        double lockoutOutA = OutAFor(lockoutW, heaterOhm, module.Loss);
        double regulatedA = module.SetV / heaterOhm;
        double dutyA = DutyLimitA(openV, sourceOhm, heaterOhm, module);
        bool nearSide = dutyA * module.MaxDuty * sourceOhm <= openV / 2;
        double outA = Math.Min(Math.Min(regulatedA, module.LimitA), nearSide ? Math.Min(dutyA, lockoutOutA) : lockoutOutA);
        limitA = Math.Min(Math.Min(module.LimitA, lockoutOutA), nearSide ? dutyA : foldOutA);
        return outA > foldOutA
            ? BeyondFold(openV, sourceOhm, heaterOhm, module, dutyA)
            : Near(openV, sourceOhm, outA, outA * heaterOhm, module, outA == lockoutOutA ? PathRegion.Hiccup
                : outA == regulatedA ? PathRegion.Regulated : outA == module.LimitA ? PathRegion.CurrentLimited : PathRegion.DutyLimited);
    }

    private static PathNumbers Near(double openV, double sourceOhm, double outA, double outV, StepDownModule module, PathRegion region)
    {
        double outW = outA * outV;
        double lossW = module.Loss.FixedW + (outA * (module.Loss.DropV + (module.Loss.SlopeOhm * outA)));
        double radicand = (openV * openV) - (4 * sourceOhm * (outW + lossW));
        return region == PathRegion.Hiccup || radicand < 0 || !(outA > 0)
            ? PathNumbers.Without(region == PathRegion.Hiccup ? region : PathRegion.SourceLimited)
            : 2 * (outW + lossW) / (openV + Math.Sqrt(radicand)) is var inputA && inputA > 0
                ? new(region, inputA, openV - (inputA * sourceOhm), outV, outW, lossW, inputA / outA) : PathNumbers.Without(PathRegion.SourceLimited);
    }

    /// <summary>Heater below the source resistance: the loop runs through the fold up to its largest duty, unless the lock-out comes first.</summary>
    private static PathNumbers BeyondFold(double openV, double sourceOhm, double heaterOhm, StepDownModule module, double outA)
    {
        double inputA = module.MaxDuty * outA;
        double inputV = openV - (inputA * sourceOhm);
        return inputV <= module.LockoutV
            ? PathNumbers.Without(PathRegion.Hiccup)
            : new(PathRegion.DutyLimited, inputA, inputV, outA * heaterOhm, outA * outA * heaterOhm,
                module.Loss.FixedW + (outA * (module.Loss.DropV + (module.Loss.SlopeOhm * outA))), module.MaxDuty);
    }

    /// <summary>A load that is no resistance: first the set volts, then the current limit, then the largest duty; a load that asks for more collapses.</summary>
    private static PathNumbers AnyLoad(double openV, double sourceOhm, in LoadLaw load, StepDownModule module)
    {
        if (openV <= module.LockoutV)
        {
            return PathNumbers.Without(PathRegion.LockedOut);
        }

        double outA = load.AmpsAt(module.SetV);
        var point = outA <= module.LimitA
            ? Near(openV, sourceOhm, outA, module.SetV, module, PathRegion.Regulated)
            : load.VoltsForAmps(module.LimitA) is var heldV && heldV < module.SetV
                ? Near(openV, sourceOhm, module.LimitA, heldV, module, PathRegion.CurrentLimited) : PathNumbers.Without(PathRegion.SourceLimited);
        if (!point.Exists || point.Duty > module.MaxDuty)
        {
            point = AtMaxDuty(openV, sourceOhm, load, module);
        }

        return point.Exists && point.InputV <= module.LockoutV ? PathNumbers.Without(PathRegion.Hiccup) : point;
    }

    /// <summary>Where V_out = D·OCV − a1 − (D²R_s + a2)·I − a0/I meets the load, by halving from the set volts down.</summary>
    /// <remarks>Next to no volts the fixed loss takes more than there is, so the two meet twice: halving starts where most is left over.</remarks>
    private static PathNumbers AtMaxDuty(double openV, double sourceOhm, in LoadLaw load, StepDownModule module)
    {
        double d = module.MaxDuty;
        var asked = load;
        (double low, double high) = (0, module.SetV);
        double from = 0, to = module.SetV;
        for (int i = 0; i < 60 && !(Over(low) > 0); i++)
        {
            double third = (to - from) / 3;
            (from, to) = Over(from + third) < Over(to - third) ? (from + third, to) : (from, to - third);
            low = (from + to) / 2;
        }

        low = Over(low) > 0 ? low : 0;
        for (int i = 0; i < 100; i++)
        {
            double volts = (low + high) / 2;
            (low, high) = Over(volts) > 0 ? (volts, high) : (low, volts);
        }

        double outA = load.AmpsAt(Math.Max(low, 1e-9));
        double inputV = openV - (d * outA * sourceOhm);
        return low < 1e-6 || outA > module.LimitA
            ? PathNumbers.Without(PathRegion.SourceLimited)
            : new(PathRegion.DutyLimited, d * outA, inputV, low, low * outA, module.Loss.FixedW + (outA * (module.Loss.DropV + (module.Loss.SlopeOhm * outA))), d);

        double Over(double volts)
        {
            double amps = Math.Max(asked.AmpsAt(Math.Max(volts, 1e-9)), 1e-12);
            return (d * openV) - module.Loss.DropV - (((d * d * sourceOhm) + module.Loss.SlopeOhm) * amps) - (module.Loss.FixedW / amps) - volts;
        }
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
