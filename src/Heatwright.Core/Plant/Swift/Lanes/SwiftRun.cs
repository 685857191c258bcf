using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector256;
using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>As many tools of one shape as there are lanes, run side by side from their start to whatever ends each.</summary>
internal sealed partial class SwiftRun
{
    private const double Hair = 1e-9;

    private readonly AssembledTool[] tools;
    private readonly double stepS, mostS;
    private readonly SwiftStore store = SwiftStore.Take();
    private readonly SwiftResult[] results;
    private readonly SwiftCurves curves;
    private readonly SwiftWork work;
    private readonly int[] order;
    private readonly int working;
    private readonly Form form;
    private readonly bool[] running = new bool[Lanes.Count];
    private readonly double[] stretchEnd = new double[Lanes.Count], targetRise = new double[Lanes.Count];
    private readonly SwiftDesk desk = new();
    private readonly SwiftPoint point;
    private long step;
    private int alive;

    /// <param name="tools">One a lane, all of one shape.</param>
    /// <param name="stepS">A step that divides the control period.</param>
    public SwiftRun(AssembledTool[] tools, double stepS)
    {
        (this.tools, this.stepS, mostS) = (tools, stepS, tools.Min(tool => tool.MaxS));
        SwiftFill.Coefs(ref c, tools, stepS);
        form = PlainForm.Serves(c.Shape) ? Form.Plain : BuiltForm<Straight>.Serves(c.Shape) ? Form.Straight : BuiltForm<SteppedUp>.Serves(c.Shape) ? Form.SteppedUp : Form.Any;
        point = new SwiftPoint(tools, c.Shape.CellAt, desk);
        order = SwiftPlan.Order(tools[0].Network);
        working = c.Shape.WorksAtSecond ? 1 : 0;
        curves = new SwiftCurves(tools);
        results = new SwiftResult[Lanes.Count];
        work = new SwiftWork(tools);
        alive = Lanes.Count;
        Begin();
    }

    private enum Form
    {
        Any,
        Plain,
        Straight,
        SteppedUp,
    }

    /// <summary>Where its numbers stand.</summary>
    public SwiftStore Inside => store;

    private ref SwiftCoefs c => ref store.Coefs;

    private ref SwiftState s => ref store.State;

    /// <summary>Runs to the end of every lane.</summary>
    /// <param name="instantSteps">Steps at whose start the trace is taken, rising.</param>
    /// <param name="trace">Where to; null: nowhere.</param>
    /// <param name="firstLane">Lane of the trace that the first lane here stands for.</param>
    /// <param name="lanes">How many lanes count; the rest only fill up.</param>
    /// <param name="cancel">Looked at every some thousand steps.</param>
    public SwiftResult[] Run(ReadOnlySpan<int> instantSteps, SwiftTrace? trace, int firstLane, int lanes, CancellationToken cancel)
    {
        // One step more than the time holds, so that what happens in the last one is seen before it counts as over.
        long last = (long)Math.Ceiling((mostS / stepS) - Hair) + 1;
        int instant = 0;
        int slot = firstLane % Lanes.Count;
        var counted = SwiftFill.Each(i => i >= slot && i < slot + lanes ? BitConverter.Int64BitsToDouble(-1) : 0);
        for (int i = 0; i < Lanes.Count; i++)
        {
            // What only fills up is looked at no more. The results are those of the first lanes, wherever their curves go.
            if (i >= lanes && (i < slot || i >= slot + lanes))
            {
                running[i] = false;
                work.Leave(i);
                alive--;
            }
        }

        Post();
        while (alive > 0 && step < last)
        {
            cancel.ThrowIfCancellationRequested();
            long until = Math.Min(last, step + 4096);

            // What stands at the start of a step is known once the step is taken.
            bool takes = trace is not null && instant < instantSteps.Length && instantSteps[instant] < until;
            Walk(takes ? Math.Max(step, instantSteps[instant]) + 1 : until);
            if (takes)
            {
                Put(trace!, instant, firstLane, counted);
                instant++;
            }
        }

        desk.Read(in s);
        for (int i = 0; i < Lanes.Count; i++)
        {
            if (running[i])
            {
                End(i, StopReason.TimeOver, 1 - ((desk.NowS[i] - mostS) / stepS));
            }
        }

        store.GiveBack();
        return results;
    }

    /// <summary>Lanes that still run, as they stood at the start of the last step. A tool that runs alone fills all lanes and has the slot of its own number.</summary>
    private void Put(SwiftTrace trace, int instant, int firstLane, Lanes counted)
    {
        int first = firstLane - (firstLane % Lanes.Count);
        Lanes which = BitwiseAnd(counted, s.Alive);
        for (int place = 0; place < order.Length; place++)
        {
            trace.Put(first, order[place], instant, c.AirC + (place switch { 0 => s.LastT0, 1 => s.LastT1, 2 => s.LastT2, _ => s.LastT3 }), which);
        }

        trace.Put(first, SwiftTrace.SensorAt, instant, c.AirC + (c.Shape.Lags ? s.LastSensor : working == 0 ? s.LastT0 : s.LastT1), which);
        trace.Put(first, SwiftTrace.PackVAt, instant, s.LastV, which);
        trace.Put(first, SwiftTrace.LoadWAt, instant, s.Duty * s.LastW, which);
        trace.Put(first, SwiftTrace.ChargeAt, instant, s.LastCharge, which);
    }

    private void Walk(long until)
    {
        while (step < until && alive > 0)
        {
            // The first step has none before it.
            int most = step == 0 ? 1 : (int)(until - step);
            int rest = c.Shape.Works ? work.Rests(s.NowS.GetElement(0), stepS, most) : most;
            int steps = rest > 0 ? rest : most;
            int taken = form switch
            {
                Form.Plain => Advance<PlainForm>(steps, rest > 0),
                Form.Straight => Advance<BuiltForm<Straight>>(steps, rest > 0),
                Form.SteppedUp => Advance<BuiltForm<SteppedUp>>(steps, rest > 0),
                _ => Advance<AnyForm>(steps, rest > 0),
            };
            step += taken;
            (s.Onward, s.MinusOnward) = step > 0 ? (Create(0.5), Create(-0.5)) : (s.Onward, s.MinusOnward);
            if (taken < steps)
            {
                Look();
            }
        }
    }

    private int Advance<TForm>(int steps, bool rests)
        where TForm : struct, ISwiftForm => rests ? SwiftKernel.Advance<TForm, AtRest>(in c, ref s, steps) : SwiftKernel.Advance<TForm, AtHand>(in c, ref s, steps);

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
        int cells = c.Shape.CellAt;
        s.PerCellK = Create(1.0) / (c.AirK + (cells == 1 ? s.T1 : cells == 2 ? s.T2 : cells == 3 ? s.T3 : Create(0.0)));
        s.Factor = Exp(c.Activation * (s.PerCellK - c.PerReferenceK));
        s.LowV = Create(double.PositiveInfinity);
        s.LowAtWork = s.LowV;
        s.StepLow = s.LowV;
        s.LastV = Create(double.PositiveInfinity);
        s.LastCharge = s.Charge;
        for (int i = 0; i < Lanes.Count; i++)
        {
            running[i] = true;
            results[i].TargetS = double.NaN;
            targetRise[i] = double.IsNaN(tools[i].TargetK) ? double.PositiveInfinity : tools[i].TargetK - tools[i].Network.AmbientK;
            stretchEnd[i] = curves.Enter(i, tools[i].Pack!.StartCharge);
        }

        curves.Give(ref c);
        Post();
    }

    private void Post()
    {
        // A lane that has ended asks for nothing more.
        c.StretchEnd = SwiftFill.Each(i => running[i] ? stretchEnd[i] : double.NegativeInfinity);
        c.TargetRise = SwiftFill.Each(i => running[i] ? targetRise[i] : double.PositiveInfinity);
        c.CutoffV = SwiftFill.Each(i => running[i] ? tools[i].CutoffV : double.NegativeInfinity);
        c.TripA = SwiftFill.Each(i => running[i] ? tools[i].Pack!.TripA : double.PositiveInfinity);
        work.Give(ref s);
        s.Alive = SwiftFill.Each(i => running[i] ? BitConverter.Int64BitsToDouble(-1) : 0);
    }

    /// <summary>Sees to every lane that asked for it.</summary>
    private void Look()
    {
        if (work.ClosesAlone(in c, ref s, working == 0 ? s.T0 : s.T1, results))
        {
            return;
        }

        desk.Read(in s);
        work.Read(in s);
        bool bent = false;
        for (int i = 0; i < Lanes.Count; i++)
        {
            if (running[i] && SwiftDesk.Is(desk.Alert[i]))
            {
                bent |= Look(i);
            }
        }

        if (bent)
        {
            curves.Give(ref c);
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
            work.TargetReached(i, at, now);
        }

        bool bent = false;
        if (desk.Charge[i] < stretchEnd[i])
        {
            stretchEnd[i] = curves.Enter(i, desk.Charge[i]);
            bent = true;
        }

        if (SwiftDesk.Is(desk.Cut[i]))
        {
            bool within = now > 0 && desk.LastV[i] > tools[i].CutoffV && (!tools[i].CutoffOnlyWhileOn || desk.Duty[i] > 0);
            End(i, StopReason.CutOff, within ? point.First(i, on => on.TerminalV <= tools[i].CutoffV) : 1);
        }
        else if (desk.Charge[i] <= 0)
        {
            End(i, StopReason.Empty, desk.LastCharge[i] > 0 ? desk.LastCharge[i] / (desk.LastCharge[i] - desk.Charge[i]) : 1);
        }
        else if (work.EndS[i] < now + Hair)
        {
            ClosePiece(i);
        }
        else if (SwiftDesk.Is(desk.Gone[i]))
        {
            EndAtPath(i);
        }

        return bent;
    }
}
