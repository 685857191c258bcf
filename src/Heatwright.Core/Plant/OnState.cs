using Heatwright.Physics;

namespace Heatwright.Plant;

/// <summary>Volts, amps and watts while the switch is on.</summary>
/// <param name="PackA">Current out of the pack into the path, A.</param>
/// <param name="TerminalV">Volts at the cells, behind their instant ohms.</param>
/// <param name="LoadW">Power into the load.</param>
/// <param name="LoadV">Volts at the load.</param>
/// <param name="PathLossW">Lost in the power path.</param>
/// <param name="Region">Where the path works.</param>
public readonly record struct OnState(double PackA, double TerminalV, double LoadW, double LoadV, double PathLossW, Region Region);

/// <summary>The algebra from pack to load, by the laws of Physics.</summary>
internal static class PowerPath
{
    /// <param name="openV">Pack volts behind all instant ohms.</param>
    /// <param name="cellOhm">Instant ohms of the pack's cells.</param>
    /// <param name="loopOhm">Ohms between the cells and the path.</param>
    /// <param name="path">The path.</param>
    /// <param name="load">The load at this moment.</param>
    public static OnState Solve(double openV, double cellOhm, double loopOhm, PathModel path, in LoadLaw load)
    {
        double sourceOhm = cellOhm + loopOhm;
        switch (path)
        {
            case PathModel.StepUp stepUp:
                return Of(StepUpPoint.Solve(openV, sourceOhm, load, stepUp.Module, out _), openV, cellOhm, sourceOhm, stepUp.Module.LockoutV, StepUpPoint.FoldA(openV, sourceOhm, stepUp.Module));
            case PathModel.StepDown stepDown:
                return Of(StepDownPoint.Solve(openV, sourceOhm, load, stepDown.Module), openV, cellOhm, sourceOhm, stepDown.Module.LockoutV, openV / (2 * sourceOhm));
            case PathModel.StepUpDown both:
                return Of(StepUpDownPoint.Solve(openV, sourceOhm, load, both.Module), openV, cellOhm, sourceOhm, both.Module.LockoutV,
                    (openV - both.Module.Loss.DropV) / (2 * (both.Module.Loss.SlopeOhm + sourceOhm)));
            case PathModel.Linear linear:
                return Of(LinearPoint.Solve(openV, sourceOhm, load, linear.Module), openV, cellOhm, sourceOhm, 0, double.PositiveInfinity);
            default:
                return Direct(openV, cellOhm, sourceOhm, load);
        }
    }

    /// <summary>A load that draws a recorded current, whatever comes of it: a log is not refused for what its cell could not have done.</summary>
    public static OnState Drawing(double openV, double cellOhm, double loopOhm, double amps)
    {
        double loadV = openV - (amps * (cellOhm + loopOhm));
        return new(amps, openV - (amps * cellOhm), amps * loadV, loadV, 0, loadV > 0 ? Region.Direct : Region.SourceLimited);
    }

    private static OnState Direct(double openV, double cellOhm, double sourceOhm, in LoadLaw load)
    {
        double volts = load.VoltsBehind(openV, sourceOhm);
        if (double.IsNaN(volts))
        {
            return Collapsed(openV, cellOhm, sourceOhm);
        }

        double amps = volts > 0 ? load.AmpsAt(volts) : 0;
        return new(amps, openV - (amps * cellOhm), amps * volts, volts, 0, Region.Direct);
    }

    private static OnState Of(in PathNumbers point, double openV, double cellOhm, double sourceOhm, double lockOutV, double foldA)
    {
        if (point.Exists)
        {
            // Beyond the fold more input current gives less output: there the source is the limit, whatever holds the current.
            var region = point.Region switch
            {
                PathRegion.Regulated => Region.Regulated,
                PathRegion.PassThrough => Region.PassThrough,
                _ when point.InputA >= foldA => Region.SourceLimited,
                PathRegion.CurrentLimited => Region.CurrentLimited,
                _ => Region.DutyLimited,
            };
            return new(point.InputA, openV - (point.InputA * cellOhm), point.OutW, point.OutV, point.LossW, region);
        }

        if (point.Region == PathRegion.SourceLimited)
        {
            return Collapsed(openV, cellOhm, sourceOhm);
        }

        // No steady point, so no power; the volts are those at which it gave up, which is what a cut-off beside it would have seen.
        double at = Math.Max(0, Math.Min((openV - lockOutV) / Math.Max(sourceOhm, 1e-9), openV / (2 * Math.Max(sourceOhm, 1e-9))));
        return new(at, openV - (at * cellOhm), 0, 0, 0, Region.LockedOut);
    }

    private static OnState Collapsed(double openV, double cellOhm, double sourceOhm)
    {
        double at = openV / (2 * Math.Max(sourceOhm, 1e-9));
        return new(at, openV - (at * cellOhm), 0, 0, 0, Region.Collapsed);
    }
}
