namespace Heatwright.Plant;

/// <summary>The work on its way: when pieces begin and end, what they took, which were done.</summary>
internal sealed class WorkClock(AssembledTool tool, bool everyEvent, List<PlantEvent> events)
{
    private const double Instant = 1e-9;

    private readonly WorkPattern? work = tool.Work;
    private double zeroS = tool.Work is { } pattern && double.IsNaN(pattern.AfterTargetS) ? pattern.FirstS : double.PositiveInfinity;
    private int piece;
    private double beganJ;
    private double lowRise;
    private bool missed;

    public bool Working { get; private set; }

    public int Done { get; private set; }

    public int DoneInARow { get; private set; }

    /// <summary>When work last ended; 0: it never did.</summary>
    public double LastEndS { get; private set; }

    public List<double> LowestK { get; } = [];

    public bool AllDone => work is not null && piece >= work.Count;

    public double NextS => work is null || AllDone ? double.PositiveInfinity : zeroS + (piece * work.EveryS) + (Working ? work.ForS : 0);

    /// <summary>The target was reached: work that waits for it is set.</summary>
    public void Ready(double atS, double notBeforeS)
    {
        if (work is not null && !double.IsNaN(work.AfterTargetS))
        {
            zeroS = Math.Max(atS + work.AfterTargetS, notBeforeS);
        }
    }

    public void See(double rise) => lowRise = Working ? Math.Min(lowRise, rise) : lowRise;

    public void Edge(double now, double takenJ, double rise, Region region)
    {
        if (work is null || double.IsPositiveInfinity(zeroS))
        {
            return;
        }

        double start = zeroS + (piece * work.EveryS);
        if (!Working && piece < work.Count && now >= start - Instant)
        {
            (Working, beganJ, lowRise) = (true, takenJ, rise);
            Tell(Happening.WorkStarts, now, region);
        }
        else if (Working && now >= start + work.ForS - Instant)
        {
            End(now, takenJ, region, complete: true);
            piece++;
            Tell(Happening.WorkEnds, now, region);
        }
    }

    public void End(double now, double takenJ, Region region, bool complete)
    {
        if (!Working)
        {
            return;
        }

        Working = false;
        LastEndS = now;
        LowestK.Add(tool.Network.AmbientK + lowRise);
        if (work!.NeedJ > 0 ? takenJ - beganJ >= work.NeedJ : complete)
        {
            Done++;
            DoneInARow += missed ? 0 : 1;
        }
        else if (!missed)
        {
            missed = true;
            events.Add(new(Happening.WorkMissed, now, region));
        }
    }

    private void Tell(Happening what, double now, Region region)
    {
        if (everyEvent)
        {
            events.Add(new(what, now, region));
        }
    }
}
