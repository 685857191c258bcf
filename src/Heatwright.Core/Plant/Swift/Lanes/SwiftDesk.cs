using System.Runtime.Intrinsics;

namespace Heatwright.Plant;

/// <summary>The lanes' state laid out number by number.</summary>
internal sealed class SwiftDesk
{
    public readonly double[] Alert = new double[8], NoPoint = new double[8], NowS = new double[8], Charge = new double[8], LastCharge = new double[8], ShortV = new double[8], LongV = new double[8];
    public readonly double[] T0 = new double[8], T1 = new double[8], T2 = new double[8], T3 = new double[8], LastT0 = new double[8], LastT1 = new double[8], LastT2 = new double[8], LastT3 = new double[8];
    public readonly double[] Sensor = new double[8], Duty = new double[8], PackV = new double[8], LastV = new double[8], PackA = new double[8], LoadW = new double[8], LoadJ = new double[8], WorkJ = new double[8];
    public readonly double[] High0 = new double[8], High1 = new double[8], High2 = new double[8], High3 = new double[8], LowV = new double[8], HighA = new double[8], LowAtWork = new double[8];

    public void Read(SwiftState s)
    {
        s.Alert.CopyTo(Alert);
        s.NoPoint.CopyTo(NoPoint);
        s.NowS.CopyTo(NowS);
        s.Charge.CopyTo(Charge);
        s.LastCharge.CopyTo(LastCharge);
        s.ShortV.CopyTo(ShortV);
        s.LongV.CopyTo(LongV);
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
        s.LoadW.CopyTo(LoadW);
        s.LoadJ.CopyTo(LoadJ);
        s.WorkJ.CopyTo(WorkJ);
        s.High0.CopyTo(High0);
        s.High1.CopyTo(High1);
        s.High2.CopyTo(High2);
        s.High3.CopyTo(High3);
        s.LowV.CopyTo(LowV);
        s.HighA.CopyTo(HighA);
        s.LowAtWork.CopyTo(LowAtWork);
    }
}
