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

    private readonly float[] values;
    private readonly int width;

    /// <param name="instants">How many instants.</param>
    /// <param name="lanes">How many tools.</param>
    public SwiftTrace(int instants, int lanes)
    {
        Instants = instants;

        // So few never run in wide lanes.
        width = lanes > Vector256<double>.Count ? SwiftBatch.Width : Vector256<double>.Count;
        values = GC.AllocateUninitializedArray<float>(checked(instants * ((lanes + width - 1) / width) * width * Curves));
        Array.Fill(values, float.NaN);
    }

    public int Instants { get; }

    /// <summary>Place of a node's curve, °C.</summary>
    public static int NodeAt(int node) => node;

    public ref float At(int lane, int curve, int instant) => ref values[Place(lane / width, curve, instant) + (lane % width)];

    /// <summary>Values of a curve at an instant, of as many of the first tools as are asked for.</summary>
    public void Column(int curve, int instant, Span<float> column)
    {
        int batches = column.Length / width;
        if (width == Vector256<float>.Count)
        {
            Batches<Vector256<float>>(curve, instant, column);
        }
        else
        {
            Batches<Vector128<float>>(curve, instant, column);
        }

        for (int lane = batches * width; lane < column.Length; lane++)
        {
            column[lane] = At(lane, curve, instant);
        }
    }

    /// <summary>Puts the values of lanes that run as one; a lane that is not among the living keeps what it has.</summary>
    public void Put(int firstLane, int curve, int instant, Vector256<double> lanesOf, Vector256<double> alive)
    {
        ref float first = ref At(firstLane, curve, instant);
        var before = Vector128.LoadUnsafe(ref first);
        var now = Vector128.Narrow(lanesOf.GetLower(), lanesOf.GetUpper());
        var living = Vector128.Narrow(alive.AsInt64().GetLower(), alive.AsInt64().GetUpper()).AsSingle();
        Vector128.ConditionalSelect(living, now, before).StoreUnsafe(ref first);
    }

    /// <inheritdoc cref="Put(int, int, int, Vector256{double}, Vector256{double})"/>
    public void Put(int firstLane, int curve, int instant, Vector512<double> lanesOf, Vector512<double> alive)
    {
        ref float first = ref At(firstLane, curve, instant);
        var before = Vector256.LoadUnsafe(ref first);
        var now = Vector256.Narrow(lanesOf.GetLower(), lanesOf.GetUpper());
        var living = Vector256.Narrow(alive.AsInt64().GetLower(), alive.AsInt64().GetUpper()).AsSingle();
        Vector256.ConditionalSelect(living, now, before).StoreUnsafe(ref first);
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

    private void Batches<TBatch>(int curve, int instant, Span<float> column)
        where TBatch : struct
    {
        var from = MemoryMarshal.Cast<float, TBatch>(values);
        var to = MemoryMarshal.Cast<float, TBatch>(column);
        for (int batch = 0; batch < to.Length; batch++)
        {
            to[batch] = from[Place(batch, curve, instant) / width];
        }
    }

    private int Place(int batch, int curve, int instant) => ((((batch * Instants) + instant) * Curves) + curve) * width;
}
