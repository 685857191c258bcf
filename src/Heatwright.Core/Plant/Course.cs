namespace Heatwright.Plant;

/// <summary>One run on its way: clock, controller, work, events and trace around the stepper.</summary>
internal sealed class Course
{
    private const double Instant = 1e-9;

    private readonly AssembledTool tool;
    private readonly RunSettings settings;
    private readonly Stepper stepper;
    private readonly Stepper.State state;
    private readonly Stepper.State before;
    private readonly EventSearch search;
    private readonly ControlLoop control;
    private readonly WorkClock work;
    private readonly DutyClock duty;
    private readonly RecoveryWatch? recovery;
    private readonly Ending ending;
    private readonly Trace trace;
    private readonly EventNotes notes;
    private readonly Extremes extremes;
    private readonly MarkWatch marks;
    private readonly RecordedDrive record;
    private readonly LoadModel.Lamp? lamp;
    private readonly int workingNode;
    private readonly double ambientK;
    private Stepper.Tally tally;
    private double now;
    private int instant;
    private double targetS = double.NaN;
    private double fullLightS = double.NaN;

    public Course(AssembledTool tool, RunSettings settings)
    {
        this.tool = tool;
        this.settings = settings;
        (workingNode, ambientK) = (tool.Network.WorkingNode, tool.Network.AmbientK);
        stepper = new Stepper(tool);
        state = stepper.Begin();
        before = new Stepper.State(stepper.Size, stepper.Members);
        search = new EventSearch(stepper, before);
        control = new ControlLoop(tool);
        notes = new EventNotes(tool, settings.EveryEvent);
        work = new WorkClock(tool, settings.EveryEvent, notes.Events);
        duty = new DutyClock(tool, notes.NoteBlock);
        recovery = tool is { TimesRecovery: > 0, Work: { } pattern } ? new RecoveryWatch(tool.TargetK - ambientK, pattern.EveryS, tool.TimesRecovery) : null;
        ending = new Ending(tool);
        trace = new Trace(settings.Instants, tool.Network.Nodes.Count, stepper.Members);
        extremes = new Extremes(tool.Network.Nodes.Count);
        marks = new MarkWatch(tool, stepper);
        record = new RecordedDrive(tool.Load);
        lamp = tool.Load as LoadModel.Lamp;
    }

    private double Drive => record.Now;

    private bool Idle => !work.Working && now >= work.LastEndS + tool.Controller.IdleAfterS - Instant;

    /// <summary>Set point in place of the controller's own: what the block of the duty asks, else what lying idle asks; NaN: its own.</summary>
    private double AskedK => !double.IsNaN(duty.AskedK) ? duty.AskedK : Idle ? tool.Controller.IdleK : double.NaN;

    public PlantRun Run()
    {
        StopReason? stop = null;
        extremes.See(state);
        while (stop is null)
        {
            settings.Cancel.ThrowIfCancellationRequested();
            record.Move(now);
            duty.Move(now, state.Rises[workingNode] + ambientK, work);
            work.Edge(now, tally.WorkJ, state.Rises[workingNode], notes.Region);
            if (!work.Missed)
            {
                recovery?.See(now, work.Taking, state.Rises[workingNode]);
            }

            var on = stepper.OnStateAt(state, Drive);
            if (control.Act(now, stepper.SensorK(state), on, AskedK))
            {
                notes.NoteSaturation(now, on.Region, control.Saturated, !double.IsNaN(targetS));
            }

            stop = StopBefore(on);
            TakeTrace(on);
            if (stop is null)
            {
                stop = Step();
            }
        }

        if (tool.Pack is not null && control.Duty > 0)
        {
            extremes.See(stepper.OnStateAt(state, Drive));
        }

        work.End(now, tally.WorkJ, notes.Region, complete: false);
        notes.Events.Add(new(Happening.Stopped, now, notes.Region));
        trace.Count = instant;
        return Result(stop.Value);
    }

    private StopReason? StopBefore(in OnState on)
    {
        if (tool.Pack is not null)
        {
            if (control.Duty > 0)
            {
                extremes.See(on);
                notes.NoteRegion(now, on.Region);
                if (lamp is not null)
                {
                    NoteFullLight(on, 0);
                }

                if (ending.OfRegion(on) is { } reason)
                {
                    notes.Region = reason == StopReason.Tripped ? Region.Tripped : notes.Region;
                    return reason;
                }
            }

            if (ending.Of(stepper.ElectricsAt(state, Drive), state, control.Duty) is { } ended && (!record.IsThere || ended != StopReason.Empty))
            {
                return ended;
            }
        }

        return work.AllDone || duty.Over ? StopReason.WorkDone
            : now >= tool.MaxS - Instant ? StopReason.TimeOver
            : record.IsOver(now) ? StopReason.RecordOver : null;
    }

    /// <summary>The lamp's driver lets go of the current, once.</summary>
    private void NoteFullLight(in OnState on, double h)
    {
        if (control.Duty > 0 && double.IsNaN(fullLightS) && lamp!.AboveFullA(on) < 0)
        {
            fullLightS = now + (h > 0 ? Found(h, s => lamp.AboveFullA(stepper.OnStateAt(s, Drive))) : 0);
            notes.Events.Add(new(Happening.LightFalls, fullLightS, on.Region));
        }
    }

    private StopReason? Step()
    {
        double h = NextEdge() - now;
        before.CopyFrom(state);
        var tallyBefore = tally;
        Take(h);
        double at = h;
        StopReason? stop = null;
        if (tool.Pack is not null)
        {
            var end = stepper.ElectricsAt(state, Drive);
            if (ending.Margin(end, control.Duty) <= 0)
            {
                stop = ending.Reason(end, control.Duty);
                at = Found(h, s => ending.Margin(stepper.ElectricsAt(s, Drive), control.Duty));
            }
            else if (control.Duty > 0 && Turns(end.On))
            {
                at = Found(h, s => Turns(stepper.OnStateAt(s, Drive)) ? -1 : 1);
            }
        }

        if (tool.Pack is not null && tool.Charger is null && !record.IsThere && state.ChargeLeft <= 0)
        {
            double empty = Found(h, s => s.ChargeLeft);
            stop = empty < at || stop is null ? StopReason.Empty : stop;
            at = Math.Min(at, empty);
        }

        if (control.IsContinuous && control.ToSwitch(stepper.SensorK(state), AskedK) <= 0)
        {
            at = Earlier(at, Found(h, s => control.ToSwitch(stepper.SensorK(s), AskedK)), ref stop);
        }

        if (duty.WarmsUp && ToTarget(state) <= 0 && ToTarget(before) > 0)
        {
            at = Earlier(at, Found(h, ToTarget), ref stop);
        }

        if (work.Taking && work.ToFed(tally.WorkJ) <= 0)
        {
            at = Earlier(at, search.Find(h, control.Duty, work.Taking, Drive, (_, flowed) => work.ToFed(tallyBefore.WorkJ + flowed.WorkJ)), ref stop);
        }

        if (work.Taking && OverWork(before) != OverWork(state))
        {
            bool over = OverWork(before);
            at = Earlier(at, Found(h, s => (over ? 1 : -1) * (s.Rises[workingNode] + ambientK - tool.Work!.AboveK)), ref stop);
        }

        if (at < h)
        {
            at = Math.Max(at, Math.Min(Instant, h));
            state.CopyFrom(before);
            tally = tallyBefore;
            Take(at);
        }

        NoteStep(at);
        return stop;
    }

    /// <summary>The path gives up, or, where every event is told, changes its region.</summary>
    private bool Turns(in OnState on) => ending.OfRegion(on) is not null || (settings.EveryEvent && on.Region != notes.Region);

    private static double Earlier(double at, double other, ref StopReason? stop)
    {
        stop = other < at ? null : stop;
        return Math.Min(at, other);
    }

    private double Found(double h, Func<Stepper.State, double> g) => search.Find(h, control.Duty, work.Taking, Drive, g);

    private void Take(double h) => stepper.Advance(state, h, control.Duty, work.Taking, Drive, ref tally);

    private bool OverWork(Stepper.State at) => at.Rises[workingNode] + ambientK > tool.Work!.AboveK;

    private void NoteStep(double h)
    {
        if (double.IsNaN(targetS) && state.Rises[workingNode] + ambientK >= tool.TargetK)
        {
            double at = ToTarget(before) <= 0 ? 0 : Found(h, ToTarget);
            targetS = now + at;
            notes.Events.Add(new(Happening.TargetReached, targetS, notes.Region));
            work.Ready(targetS, now + h);
        }

        if (lamp is not null)
        {
            NoteFullLight(stepper.OnStateAt(state, Drive), h);
        }

        work.See(state.Rises[workingNode], tally.WorkJ);
        for (int i = 0; i < tool.Marks.Count; i++)
        {
            if (marks.Crosses(i, state))
            {
                var mark = tool.Marks[i];
                notes.Events.Add(new(Happening.Crossed, now + (marks.Above(mark, before) >= 0 ? 0 : Found(h, s => -marks.Above(mark, s))), notes.Region) { Name = mark.Name });
            }
        }

        now += h;
        extremes.See(state);
    }

    private double ToTarget(Stepper.State at) => tool.TargetK - ambientK - at.Rises[workingNode];

    private double NextEdge()
    {
        double next = Math.Min(Math.Min(tool.MaxS, now + settings.StepS), Math.Min(control.NextS, Math.Min(work.NextS, duty.NextS)));
        double idleS = work.LastEndS + tool.Controller.IdleAfterS;
        if (idleS > now + Instant)
        {
            next = Math.Min(next, idleS);
        }

        if (instant < settings.Instants.Length)
        {
            next = Math.Min(next, settings.Instants[instant]);
        }

        return Math.Max(Math.Min(next, record.NextS), now + Instant);
    }

    private void TakeTrace(in OnState on)
    {
        while (instant < settings.Instants.Length && settings.Instants[instant] <= now + Instant)
        {
            double meanA = (control.Duty * (on.PackA + tool.DrainOnA)) + ((1 - control.Duty) * tool.DrainOffA);
            trace.Take(instant, stepper.ElectricsAt(state, Drive), state, ambientK, stepper.SensorK(state), control.Duty, meanA, tool.Pack is null ? Drive : control.Duty * on.LoadW, control.IntegralW);
            instant++;
        }
    }

    private PlantRun Result(StopReason stop) =>
        new(now, stop, [.. notes.Events.OrderBy(happened => happened.AtS)], tally.Energies(tool.Network.StoredJ(state.Rises)), trace)
        {
            TargetS = targetS,
            FullLightS = lamp is not null && double.IsNaN(fullLightS) ? now : fullLightS,
            WorkDone = work.Done,
            WorkDoneInARow = work.DoneInARow,
            RecoveryS = recovery?.LongestS(now) ?? double.NaN,
            LowestAtWorkK = work.LowestK,
            HighestK = [.. extremes.HighestRise.Select(rise => ambientK + rise)],
            LowestV = extremes.LowestV,
            HighestA = extremes.HighestA,
            ChargeLeft = stop == StopReason.Empty ? Math.Max(0, state.ChargeLeft) : state.ChargeLeft, // empty is found to a billionth, on either side
            LastRegion = notes.Region,
        };
}
