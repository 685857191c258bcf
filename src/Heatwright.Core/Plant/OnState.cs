namespace Heatwright.Plant;

/// <summary>Volts, amps and watts while the switch is on.</summary>
/// <param name="PackA">Current out of the pack, A.</param>
/// <param name="TerminalV">Volts at the cells, behind their instant ohms.</param>
/// <param name="LoadW">Power into the load.</param>
/// <param name="LoadV">Volts at the load.</param>
/// <param name="PathLossW">Lost in the power path.</param>
/// <param name="Region">Where the path works.</param>
public readonly record struct OnState(double PackA, double TerminalV, double LoadW, double LoadV, double PathLossW, Region Region);

/// <summary>Solves the algebra from pack to load. Closed forms only: the radicand is tested before its root is taken.</summary>
internal static class PowerPath
{
    /// <param name="openV">Pack volts behind all instant ohms.</param>
    /// <param name="cellOhm">Instant ohms of the pack's cells.</param>
    /// <param name="loopOhm">Ohms between the cells and the path.</param>
    /// <param name="path">The path.</param>
    /// <param name="loadOhm">Load ohms at this moment; infinite: nothing to feed.</param>
    public static OnState Solve(double openV, double cellOhm, double loopOhm, PathModel path, double loadOhm) => path switch
    {
        PathModel.StepUp stepUp => StepUp(openV, cellOhm, loopOhm, stepUp, loadOhm),
        _ => Direct(openV, cellOhm, loopOhm, loadOhm, Region.Direct),
    };

    /// <summary>A load that draws a given current.</summary>
    public static OnState Drawing(double openV, double cellOhm, double loopOhm, double amps)
    {
        double loadV = openV - (amps * (cellOhm + loopOhm));
        return new(amps, openV - (amps * cellOhm), amps * loadV, loadV, 0, loadV > 0 ? Region.Direct : Region.SourceLimited);
    }

    private static OnState Direct(double openV, double cellOhm, double loopOhm, double loadOhm, Region region)
    {
        double amps = openV / (cellOhm + loopOhm + loadOhm);
        return new(amps, openV - (amps * cellOhm), amps * amps * loadOhm, amps * loadOhm, 0, region);
    }

    /// <remarks>The module raises its duty from zero; the first limit met on the way is where it works: the smallest of four
    /// input currents (regulated, current limit, duty limit, lock-out).</remarks>
    private static OnState StepUp(double openV, double cellOhm, double loopOhm, PathModel.StepUp module, double loadOhm)
    {
        double sourceOhm = cellOhm + loopOhm;
        double stiffV = openV - module.A1V;
        double allOhm = module.A2Ohm + sourceOhm;
        double wantW = module.SetV * module.SetV / loadOhm;
        double radicand = (stiffV * stiffV) - (4 * allOhm * (wantW + module.A0W));
        double regulatedA = radicand < 0 || stiffV <= 0 ? double.PositiveInfinity : 2 * (wantW + module.A0W) / (stiffV + Math.Sqrt(radicand));
        double dutyOhm = allOhm + (loadOhm * (1 - module.MaxDuty) * (1 - module.MaxDuty));
        double dutyRadicand = (stiffV * stiffV) - (4 * dutyOhm * module.A0W);
        double dutyA = dutyRadicand < 0 ? double.PositiveInfinity : (stiffV + Math.Sqrt(dutyRadicand)) / (2 * dutyOhm);
        double lockOutA = sourceOhm > 0 ? (openV - module.LockOutV) / sourceOhm : openV > module.LockOutV ? double.PositiveInfinity : 0;
        double amps = Math.Min(Math.Min(regulatedA, module.LimitA), Math.Min(dutyA, lockOutA));
        if (amps >= lockOutA || double.IsPositiveInfinity(amps))
        {
            double at = Math.Max(0, Math.Min(lockOutA, openV / (2 * Math.Max(sourceOhm, 1e-9))));
            return new(at, openV - (at * cellOhm), 0, 0, 0, Region.LockedOut);
        }

        double inputV = openV - (amps * sourceOhm);
        double loadW = Math.Max(0, (stiffV * amps) - (allOhm * amps * amps) - module.A0W);
        double loadV = Math.Sqrt(loadW * loadOhm);
        if (loadV < inputV - module.DiodeV)
        {
            double through = (openV - module.DiodeV) / (sourceOhm + loadOhm);
            double throughV = through * loadOhm;
            return new(through, openV - (through * cellOhm), through * throughV, throughV, through * module.DiodeV, Region.PassThrough);
        }

        // Beyond the fold more input current gives less output: there the source is the limit, whatever holds the current.
        var region = amps == regulatedA ? Region.Regulated
            : amps >= stiffV / (2 * allOhm) ? Region.SourceLimited
            : amps == module.LimitA ? Region.CurrentLimited : Region.DutyLimited;
        return new(amps, openV - (amps * cellOhm), loadW, loadV, (inputV * amps) - loadW, region);
    }
}
