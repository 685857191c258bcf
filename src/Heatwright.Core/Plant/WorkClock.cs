namespace Heatwright.Plant;

/// <summary>The work on its way: when pieces begin and end, what they took, which were done.</summary>
internal sealed class WorkClock(AssembledTool tool, bool everyEvent, List<PlantEvent> events)
{
    private const double Instant = 1e-9;

    /// <summary>Joules by which a piece may miss its need: rounding of a sum of a whole charge.</summary>
    private const double Hair = 1e-9;

    private readonly WorkPattern? work = tool.Work;
    private double zeroS = tool.Duty is null && tool.Work is { } pattern && double.IsNaN(pattern.AfterTargetS) ? pattern.FirstS : double.PositiveInfinity;
    private int piece, from, most = int.MaxValue;
    private double beganJ;
    private double lowRise;
    private bool missed;
    private bool fed;

    public bool Working { get; private set; }

    /// <summary>The piece takes heat. One that has what it needs takes no more, but stays until its time is over.</summary>
    public bool Taking => Working && !fed;

    /// <summary>A piece was not done in its time.</summary>
    public bool Missed => missed;

    public int Done { get; private set; }

    public int DoneInARow { get; private set; }

    /// <summary>When work last ended; 0: it never did.</summary>
    public double LastEndS { get; private set; }

    public List<double> LowestK { get; } = [];

    public bool AllDone => work is not null && piece >= work.Count;

    public double NextS => work is null || AllDone || piece - from >= most ? double.PositiveInfinity : StartS + (Working ? work.ForS : 0);

    private double StartS => zeroS + ((piece - from) * work!.EveryS);

    /// <summary>So many pieces come, the first now.</summary>
    public void Come(double now, int pieces) => (zeroS, from, most) = (now, piece, pieces);

    /// <summary>The target was reached: work that waits for it is set.</summary>
    public void Ready(double atS, double notBeforeS)
    {
        if (work is not null && tool.Duty is null && !double.IsNaN(work.AfterTargetS))
        {
            zeroS = Math.Max(atS + work.AfterTargetS, notBeforeS);
        }
    }

    public void See(double rise, double takenJ)
    {
        lowRise = Working ? Math.Min(lowRise, rise) : lowRise;
        fed = fed || (Working && ToFed(takenJ) <= 0);
    }

    /// <summary>Heat that the piece still needs, J; infinite: it takes all it gets.</summary>
    public double ToFed(double takenJ) => work!.NeedJ > 0 ? work.NeedJ - (takenJ - beganJ) - Hair : double.PositiveInfinity;

    public void Edge(double now, double takenJ, double rise, Region region)
    {
        if (work is null || double.IsPositiveInfinity(zeroS))
        {
            return;
        }

        double start = StartS;
        if (!Working && piece < work.Count && piece - from < most && now >= start - Instant)
        {
            (Working, fed, beganJ, lowRise) = (true, false, takenJ, rise);
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
        if (work!.NeedJ > 0 ? ToFed(takenJ) <= 0 : complete)
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
