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
    private readonly Ending ending;
    private readonly Trace trace;
    private readonly List<PlantEvent> events = [];
    private readonly double[] highestRise;
    private readonly bool[] crossed;
    private readonly Schedule? record;
    private readonly LoadModel.Lamp? lamp;
    private readonly int workingNode;
    private readonly double ambientK;
    private Stepper.Tally tally;
    private double now;
    private int instant;
    private int recordAt;
    private double targetS = double.NaN;
    private double fullLightS = double.NaN;
    private double lowestV = double.PositiveInfinity;
    private double highestA;
    private Region region;
    private bool regionKnown;
    private bool saturated;
    private bool everSaturated;

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
        work = new WorkClock(tool, settings.EveryEvent, events);
        ending = new Ending(tool);
        trace = new Trace(settings.Instants, tool.Network.Nodes.Count, stepper.Members);
        highestRise = new double[tool.Network.Nodes.Count];
        Array.Fill(highestRise, double.NegativeInfinity);
        crossed = new bool[tool.Marks.Count];
        lamp = tool.Load as LoadModel.Lamp;
        record = (tool.Load as LoadModel.RecordedCurrent)?.Amps ?? (tool.Load as LoadModel.RecordedPower)?.Watts;
    }

    private double Drive => record is null ? 0 : record.Values[recordAt];

    private bool Idle => !work.Working && now >= work.LastEndS + tool.Controller.IdleAfterS - Instant;

    public PlantRun Run()
    {
        StopReason? stop = null;
        NoteHighest();
        while (stop is null)
        {
            settings.Cancel.ThrowIfCancellationRequested();
            MoveRecord();
            work.Edge(now, tally.WorkJ, state.Rises[workingNode], region);
            var on = stepper.OnStateAt(state, Drive);
            if (control.Act(now, stepper.SensorK(state), on, Idle))
            {
                NoteSaturation(on.Region);
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
            NoteExtremes(stepper.OnStateAt(state, Drive));
        }

        work.End(now, tally.WorkJ, region, complete: false);
        events.Add(new(Happening.Stopped, now, region));
        trace.Count = instant;
        return Result(stop.Value);
    }

    private StopReason? StopBefore(in OnState on)
    {
        if (tool.Pack is not null)
        {
            if (control.Duty > 0)
            {
                NoteExtremes(on);
                NoteRegion(on.Region);
                if (lamp is not null)
                {
                    NoteFullLight(on, 0);
                }

                if (ending.OfRegion(on) is { } reason)
                {
                    region = reason == StopReason.Tripped ? Region.Tripped : region;
                    return reason;
                }
            }

            if (ending.Of(stepper.ElectricsAt(state, Drive), state, control.Duty) is { } ended && (record is null || ended != StopReason.Empty))
            {
                return ended;
            }
        }

        return work.AllDone ? StopReason.WorkDone
            : now >= tool.MaxS - Instant ? StopReason.TimeOver
            : record is not null && now >= record.Times[^1] - Instant ? StopReason.RecordOver : null;
    }

    private void NoteExtremes(in OnState on)
    {
        if (on.Region is not (Region.LockedOut or Region.Collapsed))
        {
            lowestV = Math.Min(lowestV, on.TerminalV);
            highestA = Math.Max(highestA, Math.Abs(on.PackA));
        }
    }

    /// <summary>The lamp's driver lets go of the current, once.</summary>
    private void NoteFullLight(in OnState on, double h)
    {
        if (control.Duty > 0 && double.IsNaN(fullLightS) && lamp!.AboveFullA(on) < 0)
        {
            fullLightS = now + (h > 0 ? Found(h, s => lamp.AboveFullA(stepper.OnStateAt(s, Drive))) : 0);
            events.Add(new(Happening.LightFalls, fullLightS, on.Region));
        }
    }

    private void NoteRegion(Region at)
    {
        // The first region is told once; the start value of the field is one of them too.
        if (at != region || (settings.EveryEvent && !regionKnown))
        {
            events.Add(new(Happening.RegionChanged, now, at));
            region = at;
        }

        regionKnown = true;
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

        if (tool.Pack is not null && tool.Charger is null && record is null && state.ChargeLeft <= 0)
        {
            double empty = Found(h, s => s.ChargeLeft);
            stop = empty < at || stop is null ? StopReason.Empty : stop;
            at = Math.Min(at, empty);
        }

        if (control.IsContinuous && control.ToSwitch(stepper.SensorK(state), Idle) <= 0)
        {
            at = Earlier(at, Found(h, s => control.ToSwitch(stepper.SensorK(s), Idle)), ref stop);
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
    private bool Turns(in OnState on) => ending.OfRegion(on) is not null || (settings.EveryEvent && on.Region != region);

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
            double at = before.Rises[workingNode] + ambientK >= tool.TargetK ? 0 : Found(h, s => tool.TargetK - ambientK - s.Rises[workingNode]);
            targetS = now + at;
            events.Add(new(Happening.TargetReached, targetS, region));
            work.Ready(targetS, now + h);
        }

        if (lamp is not null)
        {
            NoteFullLight(stepper.OnStateAt(state, Drive), h);
        }

        work.See(state.Rises[workingNode], tally.WorkJ);
        for (int i = 0; i < crossed.Length; i++)
        {
            if (!crossed[i] && Above(tool.Marks[i], state) >= 0)
            {
                var mark = tool.Marks[i];
                crossed[i] = true;
                events.Add(new(Happening.Crossed, now + (Above(mark, before) >= 0 ? 0 : Found(h, s => -Above(mark, s))), region) { Name = mark.Name });
            }
        }

        now += h;
        NoteHighest();
    }

    /// <summary>How far past a mark, in its direction.</summary>
    private double Above(HeatMark mark, Stepper.State at)
    {
        double kelvin = mark.Node < 0 ? stepper.SensorK(at) : ambientK + at.Rises[mark.Node];
        return mark.Falling ? mark.Kelvin - kelvin : kelvin - mark.Kelvin;
    }

    private void NoteHighest()
    {
        for (int i = 0; i < highestRise.Length; i++)
        {
            highestRise[i] = Math.Max(highestRise[i], state.Rises[i]);
        }
    }

    private void NoteSaturation(Region at)
    {
        bool isNow = control.Saturated;
        bool onOff = tool.Controller is ControllerModel.OnOff;
        if (settings.EveryEvent ? isNow != saturated : !onOff && isNow && !everSaturated && !double.IsNaN(targetS))
        {
            everSaturated = true;
            events.Add(new(onOff ? (isNow ? Happening.SwitchedOn : Happening.SwitchedOff) : isNow ? Happening.Saturated : Happening.Unsaturated, now, at));
        }

        saturated = isNow;
    }

    private double NextEdge()
    {
        double next = Math.Min(Math.Min(tool.MaxS, now + settings.StepS), Math.Min(control.NextS, work.NextS));
        double idleS = work.LastEndS + tool.Controller.IdleAfterS;
        if (idleS > now + Instant)
        {
            next = Math.Min(next, idleS);
        }

        if (instant < settings.Instants.Length)
        {
            next = Math.Min(next, settings.Instants[instant]);
        }

        if (record is not null && recordAt + 1 < record.Times.Length)
        {
            next = Math.Min(next, record.Times[recordAt + 1]);
        }

        return Math.Max(next, now + Instant);
    }

    private void MoveRecord()
    {
        while (record is not null && recordAt + 1 < record.Times.Length && record.Times[recordAt + 1] <= now + Instant)
        {
            recordAt++;
        }
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

    private PlantRun Result(StopReason stop)
    {
        double storedJ = 0;
        for (int i = 0; i < highestRise.Length; i++)
        {
            storedJ += tool.Network.Nodes[i].CapacityJPerK * state.Rises[i];
        }

        return new(now, stop, [.. events.OrderBy(happened => happened.AtS)], new Energies
        {
            LoadJ = tally.LoadJ,
            LightJ = tally.LightJ,
            TerminalJ = tally.TerminalJ,
            BehindOhmsJ = tally.BehindOhmsJ,
            CellLossJ = tally.CellLossJ,
            LoopLossJ = tally.LoopLossJ,
            PathLossJ = tally.PathLossJ,
            DrainJ = tally.DrainJ,
            WorkJ = tally.WorkJ,
            AirJ = tally.AirJ,
            StoredJ = storedJ,
            ChargeC = tally.ChargeC,
        }, trace)
        {
            TargetS = targetS,
            FullLightS = lamp is not null && double.IsNaN(fullLightS) ? now : fullLightS,
            WorkDone = work.Done,
            WorkDoneInARow = work.DoneInARow,
            LowestAtWorkK = work.LowestK,
            HighestK = [.. highestRise.Select(rise => ambientK + rise)],
            LowestV = lowestV,
            HighestA = highestA,
            ChargeLeft = state.ChargeLeft,
            LastRegion = region,
        };
    }
}
