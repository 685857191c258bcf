using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector256;
using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>Which piece of its work each lane is at, and which were done in time.</summary>
internal sealed class SwiftWork
{
    private const double Hair = 1e-9;

    private readonly AssembledTool[] tools;
    private readonly int[] pieces = new int[Lanes.Count];
    private readonly bool[] missed = new bool[Lanes.Count];
    private double firstS = double.PositiveInfinity;
    private readonly double[] zeroS = new double[Lanes.Count], startS = new double[Lanes.Count], endS = new double[Lanes.Count], leftJ = new double[Lanes.Count];

    /// <param name="tools">One a lane.</param>
    public SwiftWork(AssembledTool[] tools)
    {
        this.tools = tools;
        for (int i = 0; i < Lanes.Count; i++)
        {
            zeroS[i] = tools[i].Work is { } work && double.IsNaN(work.AfterTargetS) ? work.FirstS : double.PositiveInfinity;
            Next(i);
        }
    }

    /// <summary>When the piece at hand starts, s; infinite: never.</summary>
    public IReadOnlyList<double> StartS => startS;

    /// <summary>When the piece at hand is over, s.</summary>
    public IReadOnlyList<double> EndS => endS;

    public void Give(ref SwiftState s)
    {
        (s.WorkStartS, s.WorkEndS, s.WorkLeftJ) = (Create<double>(startS), Create<double>(endS), Create<double>(leftJ));
        firstS = startS.Min();
    }

    /// <summary>Steps, from now on, in which no lane is at work; at most so many.</summary>
    public int Rests(double nowS, double stepS, int most) => (int)Math.Clamp(Math.Floor(((firstS - nowS) / stepS) - 1e-6), 0, most);

    /// <summary>A lane that has ended works no more.</summary>
    public void Leave(int lane) => (startS[lane], endS[lane]) = (double.PositiveInfinity, double.PositiveInfinity);

    public void Read(in SwiftState s) => s.WorkLeftJ.CopyTo(leftJ);

    /// <summary>The work of a lane that waits for its target may begin.</summary>
    public void TargetReached(int lane, double atS, double nowS)
    {
        if (tools[lane].Work is { } work && !double.IsNaN(work.AfterTargetS))
        {
            zeroS[lane] = Math.Max(atS + work.AfterTargetS, nowS);
            Next(lane);
        }
    }

    /// <summary>Most looks are for pieces whose time is over, with others behind them and nothing else: those are closed here, which needs little of the lanes' state.</summary>
    /// <returns>Whether that was all.</returns>
    public bool ClosesAlone(in SwiftCoefs c, ref SwiftState s, Lanes workingRise, SwiftResult[] results)
    {
        Lanes other = BitwiseOr(BitwiseOr(s.Cut, s.Gone), BitwiseOr(LessThan(s.Charge, c.StretchEnd), LessThan(c.TargetRise, workingRise)));
        other = BitwiseOr(other, LessThanOrEqual(s.Charge, Create(0.0)));
        ulong over = s.Alert.ExtractMostSignificantBits();
        if (BitwiseAnd(other, s.Alert).ExtractMostSignificantBits() != 0 || AnyLast(over))
        {
            return false;
        }

        Read(in s);
        for (int i = 0; i < Lanes.Count; i++)
        {
            if (IsSet(over, i))
            {
                Close(i, ref results[i]);
            }
        }

        Give(ref s);
        return true;
    }

    /// <summary>Counts the piece whose time is over and takes up the next.</summary>
    /// <returns>Whether there is a next.</returns>
    public bool Close(int lane, ref SwiftResult result)
    {
        var work = tools[lane].Work!;
        if (work.NeedJ <= 0 || leftJ[lane] <= Hair)
        {
            Count(lane, ref result);
        }
        else
        {
            missed[lane] = true;
        }

        pieces[lane]++;
        if (pieces[lane] >= work.Count)
        {
            return false;
        }

        Next(lane);
        return true;
    }

    /// <summary>A piece that is not closed when its lane ends counts as the stepper counts it: done where it has its heat.</summary>
    public void CountOpen(int lane, double atS, ref SwiftResult result)
    {
        if (result.Stop != StopReason.WorkDone && tools[lane].Work is { NeedJ: > 0 } && startS[lane] < atS && leftJ[lane] <= Hair)
        {
            Count(lane, ref result);
        }
    }

    private static bool IsSet(ulong mask, int lane) => (mask & (1ul << lane)) != 0;

    private bool AnyLast(ulong over)
    {
        bool any = false;
        for (int i = 0; i < Lanes.Count; i++)
        {
            any |= IsSet(over, i) && !(tools[i].Work is { } work && pieces[i] + 1 < work.Count);
        }

        return any;
    }

    private void Count(int lane, ref SwiftResult result)
    {
        result.WorkDone++;
        result.WorkDoneInARow += missed[lane] ? 0 : 1;
    }

    private void Next(int lane)
    {
        var work = tools[lane].Work;
        startS[lane] = work is null ? double.PositiveInfinity : zeroS[lane] + (pieces[lane] * work.EveryS);
        endS[lane] = work is null ? double.PositiveInfinity : startS[lane] + work.ForS;
        leftJ[lane] = work is { NeedJ: > 0 } ? work.NeedJ : double.PositiveInfinity;
    }
}
