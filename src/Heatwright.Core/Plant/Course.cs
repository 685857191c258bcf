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
    private readonly Stepper.State trial;
    private readonly Trace trace;
    private readonly List<PlantEvent> events = [];
    private readonly List<double> lowestAtWork = [];
    private readonly double[] highestRise;
    private readonly ControllerModel.Pi? pi;
    private readonly Schedule? record;
    private Stepper.Tally tally;
    private double now;
    private double duty;
    private double integral;
    private long sample;
    private int instant;
    private int recordAt;
    private int piece;
    private double workZeroS;
    private double pieceJ;
    private double pieceLowRise;
    private bool working;
    private bool fed;
    private int done;
    private int doneInARow;
    private bool missed;
    private double targetS = double.NaN;
    private double lowestV = double.PositiveInfinity;
    private double highestA;
    private Region region;
    private bool saturated;
    private bool everSaturated;
    private readonly bool[] crossed;

    public Course(AssembledTool tool, RunSettings settings)
    {
        this.tool = tool;
        this.settings = settings;
        stepper = new Stepper(tool);
        state = stepper.Begin();
        before = new Stepper.State(stepper.Size);
        trial = new Stepper.State(stepper.Size);
        trace = new Trace(settings.Instants, tool.Network.Nodes.Count);
        highestRise = new double[tool.Network.Nodes.Count];
        Array.Fill(highestRise, double.NegativeInfinity);
        crossed = new bool[tool.Marks.Count];
        pi = tool.Controller as ControllerModel.Pi;
        integral = pi?.StartW ?? 0;
        record = (tool.Load as LoadModel.RecordedCurrent)?.Amps ?? (tool.Load as LoadModel.RecordedPower)?.Watts;
        duty = tool.Controller is ControllerModel.Fixed @fixed ? @fixed.Duty : 0;
        workZeroS = tool.Work is null ? double.PositiveInfinity : double.IsNaN(tool.Work.AfterTargetS) ? tool.Work.FirstS : double.PositiveInfinity;
    }

    private double Drive => record is null ? 0 : record.Values[recordAt];

    public PlantRun Run()
    {
        StopReason? stop = null;
        NoteHighest();
        while (stop is null)
        {
            settings.Cancel.ThrowIfCancellationRequested();
            MoveRecord();
            Sample();
            EdgeOfWork();
            var on = stepper.OnStateAt(state, Drive);
            stop = StopBefore(on);
            TakeTrace(on);
            if (stop is null)
            {
                stop = Step();
            }
        }

        if (working)
        {
            EndPiece(complete: false);
        }

        events.Add(new(Happening.Stopped, now, region));
        trace.Count = instant;
        return Result(stop.Value);
    }

    private StopReason? StopBefore(OnState on)
    {
        if (tool.Pack is { } pack)
        {
            lowestV = Math.Min(lowestV, on.TerminalV);
            if (duty > 0)
            {
                highestA = Math.Max(highestA, on.PackA);
                if (on.Region != region)
                {
                    events.Add(new(Happening.RegionChanged, now, on.Region));
                    region = on.Region;
                }

                if (on.Region == Region.LockedOut)
                {
                    return StopReason.LockedOut;
                }

                if (on.PackA > pack.TripA)
                {
                    region = Region.Tripped;
                    return StopReason.Tripped;
                }
            }

            if (OverCutoff(on.TerminalV) <= 0)
            {
                return StopReason.CutOff;
            }

            if (state.ChargeLeft <= 0 && record is null)
            {
                return StopReason.Empty;
            }
        }

        if (tool.Work is { } work && piece >= work.Count)
        {
            return StopReason.WorkDone;
        }

        return now >= tool.MaxS - Instant ? StopReason.TimeOver
            : record is not null && now >= record.Times[^1] - Instant ? StopReason.RecordOver : null;
    }

    private double OverCutoff(double terminalV) => tool.CutoffOnlyWhileOn && duty <= 0 ? 1 : terminalV - tool.CutoffV;

    private StopReason? Step()
    {
        double h = NextEdge() - now;
        before.CopyFrom(state);
        var tallyBefore = tally;
        stepper.Advance(state, h, duty, working && !fed, Drive, ref tally);
        double cut = tool.Pack is null ? 1 : OverCutoff(stepper.OnStateAt(state, Drive).TerminalV);
        if (cut <= 0 && tool.Pack is not null)
        {
            double at = Locate(h, s => OverCutoff(stepper.OnStateAt(s, Drive).TerminalV));
            state.CopyFrom(before);
            tally = tallyBefore;
            stepper.Advance(state, at, duty, working && !fed, Drive, ref tally);
            NoteStep(at);
            return StopReason.CutOff;
        }

        NoteStep(h);
        return null;
    }

    private void NoteStep(double h)
    {
        int node = tool.Network.WorkingNode;
        double ambientK = tool.Network.AmbientK;
        if (double.IsNaN(targetS) && state.Rises[node] + ambientK >= tool.TargetK)
        {
            double at = before.Rises[node] + ambientK >= tool.TargetK ? 0 : Locate(h, s => tool.TargetK - ambientK - s.Rises[node]);
            targetS = now + at;
            events.Add(new(Happening.TargetReached, targetS, region));
            if (tool.Work is { } work && !double.IsNaN(work.AfterTargetS))
            {
                workZeroS = Math.Max(targetS + work.AfterTargetS, now + h);
            }
        }

        if (working)
        {
            fed = fed || (tool.Work is { NeedJ: > 0 } pattern && tally.WorkJ - pieceJ >= pattern.NeedJ); // a piece that has its heat takes no more
            pieceLowRise = Math.Min(pieceLowRise, state.Rises[node]);
        }

        for (int i = 0; i < crossed.Length; i++)
        {
            if (!crossed[i] && Above(tool.Marks[i], state) >= 0)
            {
                var mark = tool.Marks[i];
                crossed[i] = true;
                events.Add(new(Happening.Crossed, now + (Above(mark, before) >= 0 ? 0 : Locate(h, s => -Above(mark, s))), region) { Name = mark.Name });
            }
        }

        now += h;
        NoteHighest();
    }

    /// <summary>How far past a mark, in its direction.</summary>
    private double Above(HeatMark mark, Stepper.State at)
    {
        double kelvin = mark.Node < 0 ? stepper.SensorK(at) : tool.Network.AmbientK + at.Rises[mark.Node];
        return mark.Falling ? mark.Kelvin - kelvin : kelvin - mark.Kelvin;
    }

    private void NoteHighest()
    {
        for (int i = 0; i < highestRise.Length; i++)
        {
            highestRise[i] = Math.Max(highestRise[i], state.Rises[i]);
        }
    }

    /// <summary>Where in a step g falls to zero: false position on steps taken again from the step's start (Illinois variant).</summary>
    private double Locate(double h, Func<Stepper.State, double> g)
    {
        double low = 0;
        double high = h;
        double gLow = g(before);
        double gHigh = At(h);
        if (gLow <= 0)
        {
            return 0;
        }

        double at = h;
        for (int i = 0; i < 30 && high - low > 1e-9; i++)
        {
            at = Math.Clamp(low + ((high - low) * gLow / (gLow - gHigh)), low, high);
            double value = At(at);
            if (Math.Abs(value) < 1e-13)
            {
                break;
            }

            if (value > 0)
            {
                low = at;
                gLow = value;
                gHigh /= 2;
            }
            else
            {
                high = at;
                gHigh = value;
                gLow /= 2;
            }
        }

        return at;

        double At(double t)
        {
            trial.CopyFrom(before);
            var dropped = default(Stepper.Tally);
            stepper.Advance(trial, t, duty, working && !fed, Drive, ref dropped);
            return g(trial);
        }
    }

    private double NextEdge()
    {
        double next = Math.Min(tool.MaxS, now + settings.StepS);
        if (pi is not null)
        {
            next = Math.Min(next, sample * pi.PeriodS);
        }

        if (tool.Work is { } work && !double.IsPositiveInfinity(workZeroS))
        {
            double start = workZeroS + (piece * work.EveryS);
            next = Math.Min(next, working ? start + work.ForS : start);
            if (working && !fed && work.NeedJ > 0)
            {
                next = Math.Min(next, WhenFed(work));
            }
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

    /// <summary>When the piece will have its heat at the present rate, rounded up to a tenth of a second, so that few step lengths occur.</summary>
    private double WhenFed(WorkPattern work)
    {
        double rateW = work.ContactWPerK * (state.Rises[tool.Network.WorkingNode] + tool.Network.AmbientK - work.AboveK);
        double leftS = (work.NeedJ - (tally.WorkJ - pieceJ)) / rateW;
        return rateW > 0 && leftS < work.ForS ? now + (Math.Max(1, Math.Ceiling(10 * leftS)) / 10) : double.PositiveInfinity;
    }

    private void MoveRecord()
    {
        while (record is not null && recordAt + 1 < record.Times.Length && record.Times[recordAt + 1] <= now + Instant)
        {
            recordAt++;
        }
    }

    private void Sample()
    {
        if (pi is null || sample * pi.PeriodS > now + Instant)
        {
            return;
        }

        sample++;
        var on = stepper.OnStateAt(state, Drive);
        double volts = tool.Path is PathModel.Direct ? on.TerminalV : on.LoadV;
        double nominalW = Math.Max(volts * volts / pi.NominalOhm, 1e-9);
        double error = pi.TargetK - stepper.SensorK(state);
        double wanted = (pi.GainWPerK * error) + integral;
        double mostW = pi.MaxDuty * nominalW;
        double givenW = Math.Clamp(wanted, 0, mostW);
        bool stands = pi.TrackingPerS == 0 && ((wanted > mostW && error > 0) || (wanted < 0 && error < 0));
        integral += stands ? 0 : pi.PeriodS * ((pi.IntegralWPerKS * error) + (pi.TrackingPerS * (givenW - wanted)));
        duty = givenW / nominalW;
        NoteSaturation(wanted > mostW, on.Region);
    }

    private void NoteSaturation(bool isSaturated, Region at)
    {
        if (settings.EveryEvent ? isSaturated != saturated : isSaturated && !everSaturated && !double.IsNaN(targetS))
        {
            everSaturated = true;
            events.Add(new(isSaturated ? Happening.Saturated : Happening.Unsaturated, now, at));
        }

        saturated = isSaturated;
    }

    private void EdgeOfWork()
    {
        if (tool.Work is not { } work || double.IsPositiveInfinity(workZeroS))
        {
            return;
        }

        double start = workZeroS + (piece * work.EveryS);
        if (!working && piece < work.Count && now >= start - Instant)
        {
            working = true;
            fed = false;
            pieceJ = tally.WorkJ;
            if (settings.EveryEvent)
            {
                events.Add(new(Happening.WorkStarts, now, region));
            }

            pieceLowRise = state.Rises[tool.Network.WorkingNode];
        }
        else if (working && now >= start + work.ForS - Instant)
        {
            EndPiece(complete: true);
            piece++;
            if (settings.EveryEvent)
            {
                events.Add(new(Happening.WorkEnds, now, region));
            }
        }
    }

    private void EndPiece(bool complete)
    {
        working = false;
        lowestAtWork.Add(tool.Network.AmbientK + pieceLowRise);
        bool isDone = tool.Work!.NeedJ > 0 ? tally.WorkJ - pieceJ >= tool.Work.NeedJ : complete;
        if (isDone)
        {
            done++;
            doneInARow += missed ? 0 : 1;
        }
        else if (!missed)
        {
            missed = true;
            events.Add(new(Happening.WorkMissed, now, region));
        }
    }

    private void TakeTrace(OnState on)
    {
        while (instant < settings.Instants.Length && settings.Instants[instant] <= now + Instant)
        {
            trace.ChargeLeft[instant] = state.ChargeLeft;
            trace.ShortV[instant] = state.ShortV;
            trace.LongV[instant] = state.LongV;
            trace.IntegralW[instant] = integral;
            trace.TerminalV[instant] = on.TerminalV;
            trace.PackA[instant] = MeanA(on);
            trace.Duty[instant] = duty;
            trace.LoadW[instant] = tool.Pack is null ? Drive : duty * on.LoadW;
            trace.SensorK[instant] = stepper.SensorK(state);
            trace.Regions[instant] = on.Region;
            for (int i = 0; i < trace.NodesK.Length; i++)
            {
                trace.NodesK[i][instant] = tool.Network.AmbientK + state.Rises[i];
            }

            instant++;
        }
    }

    private double MeanA(OnState on) => (duty * (on.PackA + tool.DrainOnA)) + ((1 - duty) * tool.DrainOffA);

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
            TerminalJ = tally.TerminalJ,
            BehindOhmsJ = tally.BehindOhmsJ,
            CellLossJ = tally.CellLossJ,
            LoopLossJ = tally.LoopLossJ,
            PathLossJ = tally.PathLossJ,
            WorkJ = tally.WorkJ,
            AirJ = tally.AirJ,
            StoredJ = storedJ,
            ChargeC = tally.ChargeC,
        }, trace)
        {
            TargetS = targetS,
            WorkDone = done,
            WorkDoneInARow = doneInARow,
            LowestAtWorkK = lowestAtWork,
            HighestK = [.. highestRise.Select(rise => tool.Network.AmbientK + rise)],
            LowestV = lowestV,
            HighestA = highestA,
            ChargeLeft = state.ChargeLeft,
            LastRegion = region,
        };
    }
}
