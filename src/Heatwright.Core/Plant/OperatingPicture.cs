using Heatwright.Physics;

namespace Heatwright.Plant;

/// <summary>The power path at one moment: what would come to the load at every current that the pack could be asked for, and where it stands.</summary>
/// <param name="AtS">When, s.</param>
/// <param name="ChargeLeft">Charge left, 0 to 1.</param>
/// <param name="OpenV">Pack volts behind the ohms that show at once.</param>
/// <param name="SourceOhm">Those ohms, with all up to the path.</param>
/// <param name="AskedW">What the load takes where the path does all it is set to; straight on the pack: not a number.</param>
/// <param name="Point">Where it stands with the switch on.</param>
/// <param name="LockOutA">Current at which a module's input is at its lock-out; not a number: none.</param>
/// <param name="Amps">Currents out of the pack, rising, A.</param>
/// <param name="LoadW">Watts that come to the load at each; as far as the path passes them.</param>
public sealed record OperatingMoment(double AtS, double ChargeLeft, double OpenV, double SourceOhm, double AskedW, OnState Point, double LockOutA, double[] Amps, double[] LoadW);

/// <summary>Operating point of the power path over the charge, as a picture: watts at the load against amps out of the pack.</summary>
/// <remarks>P(I) = (V − I·R)·I − (a0 + a1·I + a2·I²), the loss model of the step-up's operating point; straight on the pack a0, a1 and a2 are none. The hill has its top at the fold: beyond it more current gives less.</remarks>
/// <param name="Moments">First, middle and last.</param>
/// <param name="LimitA">Mean input current at which a module's own limit holds; not a number: none stated.</param>
/// <param name="TripA">Current at which the protection opens; infinite: none.</param>
/// <param name="LoadOhm">The load's ohms where it is a heater that stands straight on the pack: it takes I²·R; else not a number.</param>
public sealed record OperatingPicture(IReadOnlyList<OperatingMoment> Moments, double LimitA, double TripA, double LoadOhm)
{
    private const int Points = 121;

    /// <summary>Of a run whose trace goes from its start to its end; null where the load is no heater or the path no module that steps up.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="trace">The trace of its run.</param>
    public static OperatingPicture? Of(AssembledTool tool, Trace trace)
    {
        if (tool.Pack is not { Groups.Count: 0 } pack || tool.Load is not LoadModel.Heater heater || tool.Path is not (PathModel.Direct or PathModel.StepUp) || trace.Count < 2)
        {
            return null;
        }

        var module = (tool.Path as PathModel.StepUp)?.Module;

        // By the clock: a trace has most of its points in the first minutes.
        double halfS = (trace.TimesS[0] + trace.TimesS[trace.Count - 1]) / 2;
        int middle = Enumerable.Range(0, trace.Count).MinBy(i => Math.Abs(trace.TimesS[i] - halfS));
        var moments = new[] { 0, middle, trace.Count - 1 }.Select(i =>
        {
            var (openV, cellOhm) = Source(tool, pack, trace, i);
            double heaterOhm = heater.OhmAt(trace.NodesK[tool.Network.HeaterNode][i]), sourceOhm = cellOhm + pack.LoopOhm;
            double lockOutA = module is { LockoutV: > 0 } ? Math.Max(0, (openV - module.LockoutV) / Math.Max(sourceOhm, 1e-9)) : double.NaN;
            return (HeaterOhm: heaterOhm, Stands: new OperatingMoment(trace.TimesS[i], trace.ChargeLeft[i], openV, sourceOhm, module is null ? double.NaN : module.SetV * module.SetV / heaterOhm,
                PowerPath.Solve(openV, cellOhm, pack.LoopOhm, tool.Path, LoadLaw.Ohms(heaterOhm)), lockOutA, [], []));
        }).ToArray();

        // As far as any of them stands, and the module's own limit where that is near.
        double most = 1.3 * moments.Max(one => one.Stands.Point.PackA);
        double limitA = module is { PeakLimitA: < double.PositiveInfinity, InductanceTimesHz: double.PositiveInfinity } ? module.PeakLimitA : double.NaN;
        most = double.IsFinite(limitA) && limitA < 2 * most ? Math.Max(most, 1.1 * limitA) : most;
        double[] amps = [.. Enumerable.Range(0, Points).Select(i => most * i / (Points - 1))];
        return new([.. moments.Select(one => one.Stands with { Amps = amps, LoadW = [.. amps.Select(a => a > one.Stands.LockOutA ? double.NaN : Through(one.Stands.OpenV, one.Stands.SourceOhm, module, a))] })],
            limitA, pack.TripA, module is null ? moments[^1].HeaterOhm : double.NaN);
    }

    /// <summary>Watts that come to the load at a current; below none there is nothing to draw.</summary>
    private static double Through(double openV, double sourceOhm, StepUpModule? module, double amps)
    {
        double watts = module is null ? ConverterLoss.OutW(openV, sourceOhm, default, amps) : StepUpPoint.OutW(openV, sourceOhm, module, amps);
        return watts >= 0 ? watts : double.NaN;
    }

    /// <summary>The pack as the path sees it at an instant of the trace: open volts less what stands over the slow pairs, and the ohms that show at once.</summary>
    private static (double OpenV, double CellOhm) Source(AssembledTool tool, PackModel pack, Trace trace, int at)
    {
        double charge = trace.ChargeLeft[at], cellK = tool.Network.CellNode < 0 ? tool.Network.AmbientK : trace.NodesK[tool.Network.CellNode][at];
        double cellOhm = pack.Cell.R0Ohm.At(charge) * pack.Cell.OhmsFactor(cellK) * pack.Series / pack.Parallel;
        return ((pack.Series * (pack.Cell.OpenV.At(charge) - trace.ShortV[at] - trace.LongV[at])) - (tool.DrainOnA * cellOhm), cellOhm);
    }
}
