namespace Heatwright.Plant;

/// <summary>What one lane did.</summary>
internal struct SwiftResult
{
    public double RunTimeS;
    public double TargetS;
    public StopReason Stop;
    public Region LastRegion;
    public int WorkDone;
    public int WorkDoneInARow;
    public double ChargeLeft;
    public double LoadJ;
    public double WorkJ;
    public double LowestV;
    public double HighestA;

    /// <summary>Lowest rise of the working node in any piece of work; infinite: it never worked.</summary>
    public double LowestAtWork;

    /// <summary>Highest rises, in the order of the network's nodes.</summary>
    public double High0, High1, High2, High3;

    public readonly double HighRise(int node) => node switch { 0 => High0, 1 => High1, 2 => High2, _ => High3 };
}

/// <summary>Curves of the lanes at instants, in the order of the network's nodes; NaN where a lane has ended.</summary>
internal sealed class SwiftTrace(int instants, int lanes)
{
    private readonly float[] values = Filled(instants * lanes * Curves);

    /// <summary>Four nodes, sensor, terminal volts, mean load watts, charge left.</summary>
    public const int Curves = 8;

    public const int SensorAt = 4, PackVAt = 5, LoadWAt = 6, ChargeAt = 7;

    public int Instants { get; } = instants;

    /// <summary>Place of a node's curve, °C.</summary>
    public static int NodeAt(int node) => node;

    /// <summary>Takes over a trace of the stepper at the same instants.</summary>
    public void Take(Trace from, int lane)
    {
        for (int i = 0; i < Instants; i++)
        {
            for (int node = 0; node < Math.Min(4, from.NodesK.Length); node++)
            {
                At(lane, node, i) = (float)(from.NodesK[node][i] - 273.15);
            }

            At(lane, SensorAt, i) = (float)(from.SensorK[i] - 273.15);
            At(lane, PackVAt, i) = (float)from.TerminalV[i];
            At(lane, LoadWAt, i) = (float)from.LoadW[i];
            At(lane, ChargeAt, i) = (float)from.ChargeLeft[i];
        }
    }

    public ref float At(int lane, int curve, int instant) => ref values[((((lane * Curves) + curve) * Instants) + instant)];

    private static float[] Filled(int count)
    {
        float[] all = new float[count];
        Array.Fill(all, float.NaN);
        return all;
    }
}
