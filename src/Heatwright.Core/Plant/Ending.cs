namespace Heatwright.Plant;

/// <summary>What ends a run for the pack's sake: cut-offs, trip, lock-out, collapse, brown-out, the end of a charge.</summary>
internal sealed class Ending(AssembledTool tool)
{
    private readonly PackModel? pack = tool.Pack;
    private readonly double packV = Math.Max(tool.CutoffV, tool.BrownOutV);

    /// <summary>Ends that come with the region or the current.</summary>
    public StopReason? OfRegion(in OnState on) => on.Region switch
    {
        Region.LockedOut => StopReason.LockedOut,
        Region.Collapsed => StopReason.Collapsed,
        _ when tool.Load is LoadModel.Lamp lamp && lamp.IsGone(on) => StopReason.LightGone,
        _ => on.PackA > pack!.TripA ? StopReason.Tripped : null,
    };

    /// <summary>The end that is already there, or null.</summary>
    public StopReason? Of(Electrics at, Stepper.State state, double duty) =>
        Margin(at, duty) <= 0 ? Reason(at, duty)
        : tool.Charger is null && state.ChargeLeft <= 0 ? StopReason.Empty : null;

    /// <summary>How far the nearest threshold is; 0 or less: reached.</summary>
    public double Margin(Electrics at, double duty)
    {
        if (tool.Charger is { } charger)
        {
            return Math.Min(OverCurrent(at, charger), pack!.CellMostV - at.HighestGroupV(at.On.PackA));
        }

        bool looks = duty > 0 || !tool.CutoffOnlyWhileOn;
        double over = looks ? at.On.TerminalV - tool.CutoffV : 1;
        over = duty > 0 || looks ? Math.Min(over, at.On.TerminalV - (tool.BrownOutV > 0 ? tool.BrownOutV : double.NegativeInfinity)) : over;
        return pack!.CellCutoffV > 0 && looks ? Math.Min(over, at.LowestGroupV(at.On.PackA + tool.DrainOnA) - pack.CellCutoffV) : over;
    }

    /// <summary>Which threshold it was.</summary>
    public StopReason Reason(Electrics at, double duty)
    {
        if (tool.Charger is { } charger)
        {
            return OverCurrent(at, charger) <= 0 ? StopReason.Charged : StopReason.CellFull;
        }

        bool atPack = at.On.TerminalV <= packV;
        return atPack && tool.BrownOutV > tool.CutoffV ? StopReason.BrownOut
            : atPack || pack!.CellCutoffV <= 0 ? StopReason.CutOff : StopReason.CellCutOff;
    }

    private static double OverCurrent(Electrics at, ChargerModel charger) => at.On.Region == Region.ChargeVolts ? -at.On.PackA - charger.EndA : 1;
}
