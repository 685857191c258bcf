namespace Heatwright.Plant;

/// <summary>Where within its last step a lane's path or pack gave up: the operating point by the stepper's own algebra, between the states at both ends of that step.</summary>
internal sealed class SwiftPoint(AssembledTool[] tools, int cellAt, SwiftDesk desk)
{
    private const double Hair = 1e-9;

    /// <summary>Share of the last step at which something first is so that is so at its end: halved on the stepper's own algebra, between the states at its ends.</summary>
    public double First(int i, Func<OnState, bool> so)
    {
        double low = 0;
        double share = 1;
        while (share - low > Hair)
        {
            double middle = (low + share) / 2;
            (low, share) = so(At(i, middle)) ? (low, middle) : (middle, share);
        }

        return share;
    }

    public StopReason? Gone(int i, in OnState on) => on.Region switch
    {
        Region.LockedOut => StopReason.LockedOut,
        Region.Collapsed => StopReason.Collapsed,
        _ => on.PackA > tools[i].Pack!.TripA ? StopReason.Tripped : null,
    };

    /// <summary>The operating point at a share of the last step, by the stepper's own algebra.</summary>
    public OnState At(int i, double share)
    {
        var (pack, tool) = (tools[i].Pack!, tools[i]);
        double Factor(double of) => pack.Cell.OhmsFactor(tool.Network.AmbientK + (cellAt < 0 ? 0 : desk.RiseAt(cellAt, i, of)));
        double OhmAt(double charge, double of) => pack.Cell.R0Ohm.At(charge) * Factor(of) * pack.Series / pack.Parallel;
        double charge = desk.LastCharge[i] + (share * (desk.Charge[i] - desk.LastCharge[i]));
        double cellOhm = OhmAt(charge, share);
        double longV = pack.Cell.LongHoldsAmps ? desk.Long[i] * pack.Cell.R2Ohm.At(desk.Charge[i]) * Factor(1) : desk.Long[i];
        double openV = pack.Series * (pack.Cell.OpenV.At(desk.Charge[i]) - desk.ShortV[i] - longV);
        if (share < 1)
        {
            double lastOpenV = desk.LastV[i] + ((desk.LastA[i] + tool.DrainOnA) * OhmAt(desk.LastCharge[i], 0));
            openV = lastOpenV + (share * (openV - lastOpenV));
        }

        double heaterK = tool.Network.AmbientK + desk.RiseAt(0, i, share);
        return PowerPath.Solve(openV - (tool.DrainOnA * cellOhm), cellOhm, pack.LoopOhm, tool.Path, Physics.LoadLaw.Ohms(((LoadModel.Heater)tool.Load).OhmAt(heaterK)));
    }
}
