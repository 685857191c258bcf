using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector256;
using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>As many tools of one shape as there are lanes, run side by side from their start to whatever ends each.</summary>
internal sealed class SwiftRun
{
    private const double Hair = 1e-9;

    private readonly AssembledTool[] tools;
    private readonly double stepS;
    private readonly SwiftCoefs c;
    private readonly SwiftState s = new();
    private readonly SwiftResult[] results;
    private readonly SwiftCurves curves;
    private readonly int[] order;
    private readonly int working;
    private readonly bool plain;
    private readonly int[] pieces;
    private readonly double[] zeroS;
    private readonly bool[] missed;
    private readonly bool[] running;
    private readonly double[] stretchEnd;
    private readonly double[] targetRise;
    private readonly double[] workStart;
    private readonly double[] workEnd;
    private readonly double[] workLeft;
    private readonly SwiftDesk desk = new();
    private long step;
    private int alive;

    /// <param name="tools">One a lane, all of one shape.</param>
    /// <param name="stepS">A step that divides the control period.</param>
    public SwiftRun(AssembledTool[] tools, double stepS)
    {
        (this.tools, this.stepS) = (tools, stepS);
        c = SwiftFill.Coefs(tools, stepS);
        plain = PlainForm.Serves(c.Shape);
        order = SwiftPlan.Order(tools[0].Network);
        working = c.Shape.WorksAtSecond ? 1 : 0;
        curves = new SwiftCurves(tools);
        results = new SwiftResult[Lanes.Count];
        (pieces, missed, running) = (new int[Lanes.Count], new bool[Lanes.Count], new bool[Lanes.Count]);
        (zeroS, stretchEnd, targetRise) = (new double[Lanes.Count], new double[Lanes.Count], new double[Lanes.Count]);
        (workStart, workEnd, workLeft) = (new double[Lanes.Count], new double[Lanes.Count], new double[Lanes.Count]);
        alive = Lanes.Count;
        Begin();
    }

    public (SwiftCoefs Coefs, SwiftState State) Inside => (c, s);

    /// <summary>Runs to the end of every lane.</summary>
    /// <param name="instantSteps">Steps at whose start the trace is taken, rising.</param>
    /// <param name="trace">Where to; null: nowhere.</param>
    /// <param name="firstLane">Lane of the trace that the first lane here stands for.</param>
    /// <param name="lanes">How many lanes count; the rest only fill up.</param>
    /// <param name="cancel">Looked at every some thousand steps.</param>
    public SwiftResult[] Run(ReadOnlySpan<int> instantSteps, SwiftTrace? trace, int firstLane, int lanes, CancellationToken cancel)
    {
        double mostS = tools.Min(tool => tool.MaxS);
        long last = (long)Math.Ceiling((mostS / stepS) - Hair);
        int instant = 0;
        while (alive > 0 && step < last)
        {
            cancel.ThrowIfCancellationRequested();
            long until = Math.Min(last, step + 4096);
            bool takes = trace is not null && instant < instantSteps.Length;
            if (takes && instantSteps[instant] <= step)
            {
                Walk(step + 1);
                if (alive > 0)
                {
                    Take(trace!, instant, firstLane, lanes);
                }

                instant++;
                continue;
            }

            Walk(takes ? Math.Min(until, instantSteps[instant]) : until);
        }

        desk.Read(s);
        for (int i = 0; i < Lanes.Count; i++)
        {
            if (running[i])
            {
                End(i, StopReason.TimeOver, mostS, desk.Charge[i]);
            }
        }

        return results;
    }

    private void Walk(long until)
    {
        while (step < until && alive > 0)
        {
            step += plain ? SwiftKernel.Advance<PlainForm>(c, s, (int)(until - step)) : SwiftKernel.Advance<AnyForm>(c, s, (int)(until - step));
            if (step < until)
            {
                Look();
            }
        }
    }

    private void Begin()
    {
        Lanes Rise(int place) => place < order.Length
            ? SwiftFill.Each(i => tools[i].Network.StartK.Count > 0 ? tools[i].Network.StartK[order[place]] - tools[i].Network.AmbientK : 0) : Create(0.0);
        (s.T0, s.T1, s.T2, s.T3) = (Rise(0), Rise(1), Rise(2), Rise(3));
        s.Sensor = working == 0 ? s.T0 : s.T1;
        (s.High0, s.High1, s.High2, s.High3) = (s.T0, s.T1, s.T2, s.T3);
        s.Charge = SwiftFill.Each(i => tools[i].Pack!.StartCharge);
        s.IntegralW = SwiftFill.Each(i => tools[i].Controller is ControllerModel.Pi pi ? pi.StartW : 0);
        s.Duty = SwiftFill.Each(i => tools[i].Controller is ControllerModel.Fixed @fixed ? @fixed.Duty : 0);
        s.LowV = Create(double.PositiveInfinity);
        s.LowAtWork = s.LowV;
        s.LastV = Create(double.PositiveInfinity);
        s.LastCharge = s.Charge;
        for (int i = 0; i < Lanes.Count; i++)
        {
            running[i] = true;
            results[i].TargetS = double.NaN;
            targetRise[i] = double.IsNaN(tools[i].TargetK) ? double.PositiveInfinity : tools[i].TargetK - tools[i].Network.AmbientK;
            stretchEnd[i] = curves.Enter(i, tools[i].Pack!.StartCharge);
            zeroS[i] = tools[i].Work is { } work && double.IsNaN(work.AfterTargetS) ? work.FirstS : double.PositiveInfinity;
            Piece(i);
        }

        curves.Give(c);
        Post();
    }

    private void Post()
    {
        c.StretchEnd = Create<double>(stretchEnd);
        c.TargetRise = Create<double>(targetRise);
        (s.WorkStartS, s.WorkEndS, s.WorkLeftJ) = (Create<double>(workStart), Create<double>(workEnd), Create<double>(workLeft));
        s.Alive = SwiftFill.Each(i => running[i] ? BitConverter.Int64BitsToDouble(-1) : 0);
    }

    private void Piece(int lane)
    {
        var work = tools[lane].Work;
        workStart[lane] = work is null ? double.PositiveInfinity : zeroS[lane] + (pieces[lane] * work.EveryS);
        workEnd[lane] = work is null ? double.PositiveInfinity : workStart[lane] + work.ForS;
        workLeft[lane] = work is { NeedJ: > 0 } ? work.NeedJ : double.PositiveInfinity;
    }

    /// <summary>Sees to every lane that asked for it.</summary>
    private void Look()
    {
        desk.Read(s);
        s.WorkLeftJ.CopyTo(workLeft);
        bool bent = false;
        for (int i = 0; i < Lanes.Count; i++)
        {
            if (running[i] && BitConverter.DoubleToInt64Bits(desk.Alert[i]) != 0)
            {
                bent |= Look(i);
            }
        }

        if (bent)
        {
            curves.Give(c);
        }

        Post();
    }

    private bool Look(int i)
    {
        double now = desk.NowS[i], rise = working == 0 ? desk.T0[i] : desk.T1[i];
        double lastRise = working == 0 ? desk.LastT0[i] : desk.LastT1[i];
        if (rise > targetRise[i])
        {
            double at = now <= 0 || lastRise >= targetRise[i] ? now : now - (stepS * (rise - targetRise[i]) / (rise - lastRise));
            results[i].TargetS = at;
            targetRise[i] = double.PositiveInfinity;
            if (tools[i].Work is { } work && !double.IsNaN(work.AfterTargetS))
            {
                zeroS[i] = Math.Max(at + work.AfterTargetS, now);
                Piece(i);
            }
        }

        bool bent = false;
        if (desk.Charge[i] < stretchEnd[i])
        {
            stretchEnd[i] = curves.Enter(i, desk.Charge[i]);
            bent = true;
        }

        bool acts = !tools[i].CutoffOnlyWhileOn || Math.Max(desk.Duty[i], tools[i].Controller is ControllerModel.Fixed ? desk.Duty[i] : 1) > 0;
        if (desk.PackV[i] < tools[i].CutoffV && acts)
        {
            bool within = now > 0 && desk.LastV[i] > tools[i].CutoffV && (!tools[i].CutoffOnlyWhileOn || desk.Duty[i] > 0);
            double share = within ? (desk.LastV[i] - tools[i].CutoffV) / (desk.LastV[i] - desk.PackV[i]) : 1;
            End(i, StopReason.CutOff, now <= 0 ? 0 : now - (stepS * (1 - share)), desk.LastCharge[i] + (share * (desk.Charge[i] - desk.LastCharge[i])));
        }
        else if (desk.Charge[i] <= 0)
        {
            double over = desk.LastCharge[i] > 0 ? desk.Charge[i] / (desk.Charge[i] - desk.LastCharge[i]) : 0;
            End(i, StopReason.Empty, now - (stepS * over), 0);
        }
        else if (workEnd[i] < now + Hair)
        {
            ClosePiece(i);
        }
        else if (BitConverter.DoubleToInt64Bits(desk.NoPoint[i]) != 0 || desk.PackA[i] > tools[i].Pack!.TripA)
        {
            EndAtPath(i, now);
        }

        return bent;
    }

    private void ClosePiece(int i)
    {
        var work = tools[i].Work!;
        double endS = workEnd[i];
        if (work.NeedJ <= 0 || workLeft[i] <= Hair)
        {
            results[i].WorkDone++;
            results[i].WorkDoneInARow += missed[i] ? 0 : 1;
        }
        else
        {
            missed[i] = true;
        }

        pieces[i]++;
        Piece(i);
        if (pieces[i] >= work.Count)
        {
            End(i, StopReason.WorkDone, endS, desk.Charge[i]);
        }
    }

    private void EndAtPath(int i, double now)
    {
        var on = At(i);
        bool none = BitConverter.DoubleToInt64Bits(desk.NoPoint[i]) != 0;
        var stop = !none ? StopReason.Tripped : on.Region == Region.Collapsed ? StopReason.Collapsed : StopReason.LockedOut;
        End(i, stop, now, desk.Charge[i]);
        results[i].LastRegion = stop switch { StopReason.Tripped => Region.Tripped, StopReason.Collapsed => Region.Collapsed, _ => Region.LockedOut };
    }

    /// <summary>The operating point by the stepper's own algebra.</summary>
    private OnState At(int i)
    {
        var (pack, tool) = (tools[i].Pack!, tools[i]);
        double cellK = c.Shape.CellAt < 0 ? tool.Network.AmbientK : tool.Network.AmbientK + (c.Shape.CellAt == 1 ? desk.T1[i] : c.Shape.CellAt == 2 ? desk.T2[i] : desk.T3[i]);
        double cellOhm = pack.Cell.R0Ohm.At(desk.Charge[i]) * pack.Cell.OhmsFactor(cellK) * pack.Series / pack.Parallel;
        double openV = pack.Series * (pack.Cell.OpenV.At(desk.Charge[i]) - desk.ShortV[i] - desk.LongV[i]);
        return PowerPath.Solve(openV - (tool.DrainOnA * cellOhm), cellOhm, pack.LoopOhm, tool.Path, Physics.LoadLaw.Ohms(((LoadModel.Heater)tool.Load).OhmAt(tool.Network.AmbientK + desk.T0[i])));
    }

    private void End(int i, StopReason stop, double atS, double charge)
    {
        ref var r = ref results[i];
        (r.Stop, r.RunTimeS, r.ChargeLeft, r.LoadJ, r.WorkJ) = (stop, atS, charge, desk.LoadJ[i] - (Math.Max(0, desk.NowS[i] - atS) * desk.Duty[i] * desk.LoadW[i]), desk.WorkJ[i]);
        (r.LowestV, r.HighestA) = (Math.Min(desk.LowV[i], stop == StopReason.CutOff ? tools[i].CutoffV : desk.LowV[i]), desk.HighA[i]);
        (r.LowestAtWork, r.TargetS) = (desk.LowAtWork[i], r.TargetS > atS ? double.NaN : r.TargetS);
        r.LastRegion = At(i).Region;
        for (int place = 0; place < order.Length; place++)
        {
            double high = desk.HighUntil(place, i, Math.Clamp(1 - ((desk.NowS[i] - atS) / stepS), 0, 1));
            _ = order[place] switch { 0 => r.High0 = high, 1 => r.High1 = high, 2 => r.High2 = high, _ => r.High3 = high };
        }

        // A piece that was begun and not ended counts as the stepper counts it: done where it has its heat.
        if (stop != StopReason.WorkDone && tools[i].Work is { NeedJ: > 0 } && workStart[i] < atS && workLeft[i] <= Hair)
        {
            r.WorkDone++;
            r.WorkDoneInARow += missed[i] ? 0 : 1;
        }

        running[i] = false;
        alive--;
    }

    private void Take(SwiftTrace trace, int instant, int firstLane, int lanes)
    {
        desk.Read(s);
        for (int i = 0; i < lanes; i++)
        {
            if (running[i])
            {
                desk.Put(trace, firstLane + i, instant, i, order, tools[i].Network.AmbientK);
            }
        }
    }
}
