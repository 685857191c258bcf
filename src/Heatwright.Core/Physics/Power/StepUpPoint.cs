namespace Heatwright.Physics;

/// <summary>Operating point of a step-up module between a source with resistance and a heater, with the region named.</summary>
/// <remarks>As the loop raises its duty from zero, input current and duty rise and the input voltage falls, so the point is the first event met:
/// the smallest of four input currents: regulated, switch current limit, largest duty, under-voltage. D = 1 − V_out/(R_h·I) from charge balance.
/// Derived here from the power balance of [erickson-fpe] chapter 3 (loss model) and the ripple of [hauke-slva372]. A cold heater must be solved on its own:
/// a regulated hot point does not promise a start.</remarks>
public static class StepUpPoint
{
    /// <summary>The point, from plain numbers.</summary>
    [Law("step-up-point", "power paths", "I = min(Ireg, Ilim − ΔI/2, Iduty, (V − Vuv)/Rs); Ireg = 2(P+a0)/(E + √(E² − 4A(P+a0))), E = V − a1, A = a2 + Rs, P = Vset²/R",
        Says = "where a step-up module on a battery comes to rest",
        Source = "definition", Where = "power and charge balance; ripple after [hauke-slva372]", Valid = "loss coefficients from readings at about the set voltage; continuous conduction",
        Example = "open=3.7V source=0.12ohm set=9V heater=8ohm fixed=0.12W drop=0.2V slope=90mohm limit=5.5A max-duty=90% lockout=2.5V")]
    public static PathPoint At(
        [In("V", "V", "rested battery voltage", Name = "open", Min = 0)] double openV,
        [In("Rs", "Ω", "source resistance: cells, links, protection, wires", Name = "source", Min = 0)] double sourceOhm,
        [In("Vset", "V", "set output", Name = "set", Min = 0)] double setV,
        [In("R", "Ω", "heater at its present temperature", Name = "heater", Min = 0)] double heaterOhm,
        [In("a0", "W", "loss without load", Name = "fixed", Min = 0, Default = 0.1)] double fixedW = 0.1,
        [In("a1", "V", "loss per ampere", Name = "drop", Min = 0, Default = 0.15)] double dropV = 0.15,
        [In("a2", "Ω", "loss per ampere squared", Name = "slope", Min = 0, Default = 0.06)] double slopeOhm = 0.06,
        [In("Ilim", "A", "peak switch current: the label", Name = "limit", Min = 0, Default = double.PositiveInfinity)] double limitA = double.PositiveInfinity,
        [In("Dmax", "", "largest duty", Name = "max-duty", Min = 0, Max = 1, Default = 0.9)] double maxDuty = 0.9,
        [In("Vuv", "V", "under-voltage lock-out", Name = "lockout", Min = 0, Default = 0)] double lockoutV = 0,
        [In("VD", "V", "rectifier drop", Name = "diode", Min = 0, Default = 0.4)] double diodeV = 0.4,
        [In("L", "H", "inductance", Name = "inductance", Min = 0, Default = double.PositiveInfinity)] double inductanceH = double.PositiveInfinity,
        [In("f", "Hz", "switching frequency", Name = "frequency", Min = 0, Default = double.PositiveInfinity)] double switchingHz = double.PositiveInfinity) =>
        At(openV, sourceOhm, heaterOhm, new StepUpModule(setV, new(fixedW, dropV, slopeOhm))
        {
            PeakLimitA = limitA,
            InductanceTimesHz = inductanceH * switchingHz,
            MaxDuty = maxDuty,
            LockoutV = lockoutV,
            DiodeV = diodeV,
        });

    /// <summary>The point.</summary>
    public static PathPoint At(double openV, double sourceOhm, double heaterOhm, StepUpModule module)
    {
        Impossible.UnlessPositive(openV, "V");
        Impossible.IfNegative(sourceOhm, "Ω");
        Impossible.UnlessPositive(heaterOhm, "Ω");
        var point = Solve(openV, sourceOhm, LoadLaw.Ohms(heaterOhm), module, out double limitA);
        return point.Boxed with
        {
            OffA = PassThroughA(openV, sourceOhm, heaterOhm, module),
            FoldA = FoldA(openV, sourceOhm, module),
            MostW = double.IsPositiveInfinity(FoldA(openV, sourceOhm, module)) ? double.PositiveInfinity : Math.Max(0, OutW(openV, sourceOhm, module, FoldA(openV, sourceOhm, module))),
            Margin = point.Region == PathRegion.Regulated ? limitA / point.InputA : null,
        };
    }

    /// <summary>Current through a module that is off or cannot limit: (OCV − V_D)/(R_s + R_L + R_D + R_h). A non-isolating step-up is never off by itself.</summary>
    public static double PassThroughA(double openV, double sourceOhm, double heaterOhm, StepUpModule module) =>
        Math.Max(0, openV - module.DiodeV) / (sourceOhm + module.ThroughOhm + heaterOhm);

    /// <summary>Output power at an input current; negative where the module does not cover its own loss.</summary>
    internal static double OutW(double openV, double sourceOhm, StepUpModule module, double inputA)
    {
        var (fixedW, dropV) = module.SideOf(inputA);
        return (inputA * (openV - dropV - ((module.Loss.SlopeOhm + sourceOhm) * inputA))) - fixedW;
    }

    /// <summary>Input current of the most output power: the vertex of the side on which it lies, else the change itself. Infinite for a stiff source and a module that loses no ohms.</summary>
    internal static double FoldA(double openV, double sourceOhm, StepUpModule module)
    {
        double ohms = module.Loss.SlopeOhm + sourceOhm;
        double Vertex(double dropV) => ohms > 0 ? Math.Max(0, openV - dropV) / (2 * ohms) : openV > dropV ? double.PositiveInfinity : 0;
        double below = Vertex(module.Below.DropV);
        return below <= module.ChangeA ? below : Math.Max(module.ChangeA, Vertex(module.Above.DropV));
    }

    /// <summary>Smallest input current that gives an output power; infinite: none does.</summary>
    private static double RegulatedA(double openV, double ohms, StepUpModule module, double outW)
    {
        double Side((double FixedW, double DropV) side)
        {
            double drive = openV - side.DropV, inW = outW + side.FixedW, radicand = (drive * drive) - (4 * ohms * inW);
            return drive > 0 && radicand >= 0 ? 2 * inW / (drive + Math.Sqrt(radicand)) : double.PositiveInfinity;
        }

        // What comes out is a bow over the input current: if it is not enough up to the change, it is so only where the bow still climbs there.
        double below = Side(module.Below);
        if (below <= module.ChangeA)
        {
            return below;
        }

        double above = Side(module.Above);
        return above >= module.ChangeA * (1 - Rounding) ? above : double.PositiveInfinity;
    }

    private const double Rounding = 1e-12;

    /// <summary>The point with any load, on the stack.</summary>
    /// <remarks>Pass-through ends where the loop can begin: duty, input current and output rise together from what passes at duty zero. So the input passes
    /// through when the set volts are no more than that, or when a limit is met at no more than that current; nowhere else.</remarks>
    internal static PathNumbers Solve(double openV, double sourceOhm, in LoadLaw load, StepUpModule module, out double limitA)
    {
        limitA = double.PositiveInfinity;
        if (openV <= Math.Max(module.LockoutV, module.StartV))
        {
            return PathNumbers.Without(PathRegion.LockedOut);
        }

        double offV = load.VoltsBehind(openV - module.DiodeV, sourceOhm + module.ThroughOhm);
        double offA = double.IsNaN(offV) ? 0 : load.AmpsAt(Math.Max(offV, 1e-12));
        if (module.SetV <= offV)
        {
            return Through(openV, sourceOhm, module, offA, offV);
        }

        double regulatedA = RegulatedA(openV, module.Loss.SlopeOhm + sourceOhm, module, module.SetV * load.AmpsAt(module.SetV));
        double currentA = CurrentLimitA(openV, sourceOhm, load, module);
        double dutyA = DutyLimitA(openV, sourceOhm, load, module);
        double lockoutA = sourceOhm > 0 && module.LockoutV > 0 ? (openV - module.LockoutV) / sourceOhm : double.PositiveInfinity;
        limitA = Math.Min(currentA, Math.Min(dutyA, lockoutA));
        if (limitA <= offA && limitA < regulatedA)
        {
            return Through(openV, sourceOhm, module, offA, offV);
        }

        double inputA = Math.Min(regulatedA, limitA);
        var region = inputA == regulatedA ? PathRegion.Regulated
            : inputA == lockoutA ? PathRegion.Hiccup
            : inputA == currentA ? PathRegion.CurrentLimited : PathRegion.DutyLimited;
        if (region == PathRegion.Hiccup)
        {
            return PathNumbers.Without(region);
        }

        double outW = double.IsFinite(inputA) ? OutW(openV, sourceOhm, module, inputA) : 0;
        double inputV = openV - (inputA * sourceOhm);
        double outV = region == PathRegion.Regulated ? module.SetV : load.VoltsFor(Math.Max(0, outW));
        return outW > 0 && outV > 0 && double.IsFinite(outV)
            ? new(region, inputA, inputV, outV, outW, (inputV * inputA) - outW, Math.Max(0, 1 - (outW / outV / inputA)))
            : PathNumbers.Without(PathRegion.SourceLimited);
    }

    private static PathNumbers Through(double openV, double sourceOhm, StepUpModule module, double amps, double outV) => new(
        PathRegion.PassThrough, amps, openV - (amps * sourceOhm), outV, amps * outV, amps * (module.DiodeV + (amps * module.ThroughOhm)), 0);

    /// <summary>Duty at an input current; 1 where the module does not cover its own loss, 0 where the input passes through.</summary>
    private static double DutyAt(double openV, double sourceOhm, in LoadLaw load, StepUpModule module, double inputA)
    {
        double outW = OutW(openV, sourceOhm, module, inputA);
        double outV = outW > 0 ? load.VoltsFor(outW) : 0;
        return outV > 0 ? Math.Clamp(1 - (outW / outV / inputA), 0, 1) : 1;
    }

    /// <summary>Mean input current at which its peak meets the limit: I + ΔI(I)/2 = I_lim, ripple of this very point.</summary>
    private static double CurrentLimitA(double openV, double sourceOhm, in LoadLaw load, StepUpModule module)
    {
        if (double.IsPositiveInfinity(module.PeakLimitA) || double.IsPositiveInfinity(module.InductanceTimesHz) || load.IsConstantPower)
        {
            return module.PeakLimitA;
        }

        // Halving instead of repeated substitution: that one does not settle when the ripple is large. The sum rises with the current.
        (double low, double high) = (Math.Min(module.PeakLimitA, 2 * module.Loss.FixedW / Math.Max(openV - module.Loss.DropV, 1e-9)), module.PeakLimitA);
        for (int i = 0; i < 80; i++)
        {
            double middle = (low + high) / 2;
            double inputV = Math.Max(0, openV - (middle * sourceOhm));
            double peak = middle + (inputV * DutyAt(openV, sourceOhm, load, module, middle) / module.InductanceTimesHz / 2);
            (low, high) = peak < module.PeakLimitA ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    /// <summary>Input current at the largest duty. Resistance: [E + √(E² − 4B·a0)]/(2B), B = A + R_h(1 − D_max)²; else where I_out = (1 − D_max)·I.</summary>
    private static double DutyLimitA(double openV, double sourceOhm, in LoadLaw load, StepUpModule module)
    {
        double drive = openV - module.Loss.DropV;
        double rest = 1 - module.MaxDuty;
        if (rest <= 0 || drive <= 0)
        {
            return double.PositiveInfinity;
        }

        double ohms = module.Loss.SlopeOhm + sourceOhm;
        if (!double.IsNaN(load.Ohm))
        {
            ohms += load.Ohm * rest * rest;
            double Largest((double FixedW, double DropV) side)
            {
                double push = openV - side.DropV, radicand = (push * push) - (4 * ohms * side.FixedW);
                return radicand >= 0 && ohms > 0 ? (push + Math.Sqrt(radicand)) / (2 * ohms) : double.PositiveInfinity;
            }

            // The largest root: above the change where there is one, else below it.
            double above = module.ChangeA < double.PositiveInfinity ? Largest(module.Above) : double.PositiveInfinity, below = Largest(module.Below);
            return above < double.PositiveInfinity && above >= module.ChangeA * (1 - Rounding) ? above : below <= module.ChangeA * (1 + Rounding) ? below : double.PositiveInfinity;
        }

        if (load.IsConstantPower)
        {
            // Held at its set volts or not at all: the duty there either suffices or nothing does.
            return load.AmpsAt(module.SetV) / rest;
        }

        // Duty rises with the input current for every load whose current does not fall with its volts.
        (double low, double high) = (0, Math.Max(drive / Math.Max(ohms, 1e-9), 1));
        for (int i = 0; i < 100; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = DutyAt(openV, sourceOhm, load, module, middle) < module.MaxDuty && OutW(openV, sourceOhm, module, middle) > 0 ? (middle, high)
                : middle * drive < 2 * module.Loss.FixedW ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
