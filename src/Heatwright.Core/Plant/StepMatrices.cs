using Heatwright.Numerics;

namespace Heatwright.Plant;

/// <summary>The linear part of the network with and without work pressed on, and its exact steps, one set a step length.</summary>
internal sealed class StepMatrices
{
    /// <summary>Steps that differ by less have the same matrices: edges of the clock are sums of steps, and not alike to the last digit.</summary>
    public const double SameS = 0.5e-10;

    private readonly double[] free;
    private readonly double[] pressed;
    private readonly Dictionary<(long Length, bool Pressed), ExponentialStep> kept = [];
    private readonly int size;
    private readonly int working;
    private (long Length, bool Pressed) lastKey;
    private ExponentialStep? last;

    public StepMatrices(ThermalNetwork network, double contactWPerK)
    {
        int nodes = network.Nodes.Count;
        bool lags = network.SensorLagS > 0;
        size = nodes + (lags ? 1 : 0);
        free = new double[size * size];
        for (int i = 0; i < nodes; i++)
        {
            free[(i * size) + i] -= network.Nodes[i].LinearWPerK / network.Nodes[i].CapacityJPerK;
        }

        foreach (var link in network.Links)
        {
            Join(link.A, link.B, link.WPerK / network.Nodes[link.A].CapacityJPerK);
            Join(link.B, link.A, link.WPerK / network.Nodes[link.B].CapacityJPerK);
        }

        if (lags)
        {
            Join(nodes, network.SensorNode, 1 / network.SensorLagS);
        }

        pressed = [.. free];
        working = network.WorkingNode;
        pressed[(working * size) + working] -= contactWPerK / network.Nodes[working].CapacityJPerK;

        void Join(int row, int column, double rate)
        {
            free[(row * size) + row] -= rate;
            free[(row * size) + column] += rate;
        }
    }

    public int Size => size;

    /// <summary>How each node moves with the rises of all, 1/s, row by row, nothing pressed on.</summary>
    public ReadOnlySpan<double> Linear => free;

    /// <summary>How the working node moves with the rises of all, 1/s.</summary>
    public double[] WorkingRow() => free.AsSpan(working * size, size).ToArray();

    public ExponentialStep For(double h, bool isPressed)
    {
        var key = ((long)Math.Round(h * (0.5 / SameS)), isPressed);
        if (last is not null && key == lastKey)
        {
            return last;
        }

        if (!kept.TryGetValue(key, out var step))
        {
            if (kept.Count > 64)
            {
                kept.Clear(); // event searches and odd log intervals leave lengths that never come again
            }

            step = new ExponentialStep(isPressed ? pressed : free, size, h);
            kept[key] = step;
        }

        (lastKey, last) = (key, step);
        return step;
    }
}
