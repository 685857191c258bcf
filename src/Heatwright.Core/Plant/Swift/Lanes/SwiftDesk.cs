using System.Runtime.Intrinsics;

namespace Heatwright.Plant;

/// <summary>The lanes' state laid out number by number.</summary>
internal sealed class SwiftDesk
{
    public readonly double[] Alert = new double[8], Cut = new double[8], Gone = new double[8], LastA = new double[8], LastW = new double[8], NowS = new double[8], Charge = new double[8], LastCharge = new double[8], ShortV = new double[8], Long = new double[8];
    public readonly double[] T0 = new double[8], T1 = new double[8], T2 = new double[8], T3 = new double[8], LastT0 = new double[8], LastT1 = new double[8], LastT2 = new double[8], LastT3 = new double[8];
    public readonly double[] Sensor = new double[8], Duty = new double[8], PackV = new double[8], LastV = new double[8], PackA = new double[8], LoadJ = new double[8], WorkJ = new double[8];
    public readonly double[] High0 = new double[8], High1 = new double[8], High2 = new double[8], High3 = new double[8], LowV = new double[8], HighA = new double[8], LowAtWork = new double[8], StepLow = new double[8];

    /// <summary>A mask that is set.</summary>
    public static bool Is(double mask) => BitConverter.DoubleToInt64Bits(mask) != 0;

    public void Read(in SwiftState s)
    {
        s.Alert.CopyTo(Alert);
        s.Cut.CopyTo(Cut);
        s.Gone.CopyTo(Gone);
        s.LastA.CopyTo(LastA);
        s.LastW.CopyTo(LastW);
        s.NowS.CopyTo(NowS);
        s.Charge.CopyTo(Charge);
        s.LastCharge.CopyTo(LastCharge);
        s.ShortV.CopyTo(ShortV);
        s.Long.CopyTo(Long);
        s.T0.CopyTo(T0);
        s.T1.CopyTo(T1);
        s.T2.CopyTo(T2);
        s.T3.CopyTo(T3);
        s.LastT0.CopyTo(LastT0);
        s.LastT1.CopyTo(LastT1);
        s.LastT2.CopyTo(LastT2);
        s.LastT3.CopyTo(LastT3);
        s.Sensor.CopyTo(Sensor);
        s.Duty.CopyTo(Duty);
        s.PackV.CopyTo(PackV);
        s.LastV.CopyTo(LastV);
        s.PackA.CopyTo(PackA);
        s.LoadJ.CopyTo(LoadJ);
        s.WorkJ.CopyTo(WorkJ);
        s.High0.CopyTo(High0);
        s.High1.CopyTo(High1);
        s.High2.CopyTo(High2);
        s.High3.CopyTo(High3);
        s.LowV.CopyTo(LowV);
        s.HighA.CopyTo(HighA);
        s.LowAtWork.CopyTo(LowAtWork);
        s.StepLow.CopyTo(StepLow);
    }

    /// <summary>Highest rise of a node up to a share of the last step: a lane that ends within a step has not been as hot as the step would have made it.</summary>
    public double HighUntil(int place, int lane, double share)
    {
        var (high, now, last) = place switch
        {
            0 => (High0[lane], T0[lane], LastT0[lane]),
            1 => (High1[lane], T1[lane], LastT1[lane]),
            2 => (High2[lane], T2[lane], LastT2[lane]),
            _ => (High3[lane], T3[lane], LastT3[lane]),
        };
        return Math.Max(high, last + (share * (now - last)));
    }

    /// <summary>Rise of a node at a share of the last step.</summary>
    public double RiseAt(int place, int lane, double share)
    {
        var (now, last) = place switch { 0 => (T0[lane], LastT0[lane]), 1 => (T1[lane], LastT1[lane]), 2 => (T2[lane], LastT2[lane]), _ => (T3[lane], LastT3[lane]) };
        return last + (share * (now - last));
    }
}
