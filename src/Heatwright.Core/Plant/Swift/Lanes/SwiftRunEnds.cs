namespace Heatwright.Plant;

/// <summary>How lanes end.</summary>
internal sealed partial class SwiftRun
{
    private void ClosePiece(int i)
    {
        double endS = work.EndS[i];
        if (!work.Close(i, ref results[i]))
        {
            End(i, StopReason.WorkDone, 1 - ((desk.NowS[i] - endS) / stepS));
        }
    }

    private void EndAtPath(int i)
    {
        double share = desk.NowS[i] > 0 && desk.Duty[i] > 0 ? point.First(i, on => point.Gone(i, on) is not null) : 1;

        // What the lanes' own algebra found, and the stepper's does not by a hair, has its reason from the amps.
        End(i, point.Gone(i, point.At(i, share)) ?? (desk.PackA[i] > tools[i].Pack!.TripA ? StopReason.Tripped : StopReason.LockedOut), share);
    }

    private void End(int i, StopReason stop, double shareOfStep)
    {
        ref var r = ref results[i];
        double share = desk.NowS[i] > 0 ? Math.Clamp(shareOfStep, 0, 1) : 1;
        double atS = stop == StopReason.TimeOver ? mostS : desk.NowS[i] - (stepS * (1 - share));
        if (stop != StopReason.TimeOver && atS > mostS)
        {
            End(i, StopReason.TimeOver, 1 - ((desk.NowS[i] - mostS) / stepS));
            return;
        }

        // A piece whose time was over before that is closed first; it may be the last of all.
        if (stop is not (StopReason.WorkDone or StopReason.TimeOver) && work.EndS[i] < atS)
        {
            ClosePiece(i);
            if (!running[i])
            {
                return;
            }
        }

        (r.Stop, r.RunTimeS, r.ChargeLeft) = (stop, atS, desk.LastCharge[i] + (share * (desk.Charge[i] - desk.LastCharge[i])));
        r.LoadJ = desk.LoadJ[i] - ((1 - share) * stepS * desk.Duty[i] * desk.LastW[i]);
        r.WorkJ = desk.WorkJ[i];
        r.TargetS = r.TargetS > atS ? double.NaN : r.TargetS;
        var on = point.At(i, share);
        bool loaded = desk.Duty[i] > 0 && stop is not (StopReason.LockedOut or StopReason.Collapsed);
        r.LowestV = loaded ? Math.Min(desk.LowV[i], on.TerminalV) : desk.LowV[i];
        r.HighestA = loaded ? Math.Max(desk.HighA[i], on.PackA) : desk.HighA[i];
        r.LastRegion = stop == StopReason.Tripped ? Region.Tripped : on.Region;
        for (int place = 0; place < order.Length; place++)
        {
            double high = desk.HighUntil(place, i, share);
            _ = order[place] switch { 0 => r.High0 = high, 1 => r.High1 = high, 2 => r.High2 = high, _ => r.High3 = high };
        }

        // A step that was lived through counts with its lowest; of one that was not, where it began, or the work in it, and where the lane ended.
        r.LowestAtWork = share < 1 ? desk.LowAtWork[i] : Math.Min(desk.LowAtWork[i], desk.StepLow[i]);
        if (share < 1 && double.IsFinite(desk.StepLow[i]) && work.StartS[i] < atS)
        {
            double began = Math.Max(0, 1 - ((desk.NowS[i] - work.StartS[i]) / stepS));
            r.LowestAtWork = Math.Min(r.LowestAtWork, Math.Min(desk.RiseAt(working, i, began), desk.RiseAt(working, i, share)));
        }

        work.CountOpen(i, atS, ref r);
        work.Leave(i);
        running[i] = false;
        alive--;
    }
}
