using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Heatwright.Plant;

/// <summary>Curves of the lanes at instants, in the order of the network's nodes; NaN where a lane has ended.</summary>
/// <remarks>Lanes that run as one lie side by side, so that a batch writes into one stretch of memory, and all curves of an instant are read together.</remarks>
internal sealed class SwiftTrace
{
    /// <summary>Four nodes, sensor, terminal volts, mean load watts, charge left.</summary>
    public const int Curves = 8;

    public const int SensorAt = 4, PackVAt = 5, LoadWAt = 6, ChargeAt = 7;

    private static readonly int Width = SwiftBatch.Width;

    private readonly float[] values;

    /// <param name="instants">How many instants.</param>
    /// <param name="lanes">How many tools.</param>
    public SwiftTrace(int instants, int lanes)
    {
        Instants = instants;
        values = GC.AllocateUninitializedArray<float>(checked(instants * ((lanes + Width - 1) / Width) * Width * Curves));
        Array.Fill(values, float.NaN);
    }

    public int Instants { get; }

    /// <summary>Place of a node's curve, °C.</summary>
    public static int NodeAt(int node) => node;

    public ref float At(int lane, int curve, int instant) => ref values[Place(lane / Width, curve, instant) + (lane % Width)];

    /// <summary>Values of a curve at an instant, of as many of the first tools as are asked for.</summary>
    public void Column(int curve, int instant, Span<float> column)
    {
        var from = MemoryMarshal.Cast<float, Vector128<float>>(values);
        var to = MemoryMarshal.Cast<float, Vector128<float>>(column);
        for (int batch = 0; batch < to.Length; batch++)
        {
            to[batch] = from[Place(batch, curve, instant) / Width];
        }

        for (int lane = to.Length * Width; lane < column.Length; lane++)
        {
            column[lane] = At(lane, curve, instant);
        }
    }

    /// <summary>Puts the values of a whole batch; a lane that is not among the living keeps what it has.</summary>
    public void Put(int batch, int curve, int instant, Vector256<double> lanesOf, Vector256<double> alive)
    {
        ref float first = ref values[Place(batch, curve, instant)];
        var before = Vector128.LoadUnsafe(ref first);
        var now = Vector128.Narrow(lanesOf.GetLower(), lanesOf.GetUpper());
        var living = Vector128.Narrow(alive.AsInt64().GetLower(), alive.AsInt64().GetUpper()).AsSingle();
        Vector128.ConditionalSelect(living, now, before).StoreUnsafe(ref first);
    }

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

    private int Place(int batch, int curve, int instant) => ((((batch * Instants) + instant) * Curves) + curve) * Width;
}
