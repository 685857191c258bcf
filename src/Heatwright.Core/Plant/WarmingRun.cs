using Heatwright.Numerics;
using Heatwright.Physics;

namespace Heatwright.Plant;

/// <summary>A network that a recorded power warms, and nothing else: the steps of the plant (<see cref="Stepper"/>) without the clocks, controllers and events that a bench trial does not have.</summary>
/// <remarks>Where no loss curves, a step from one instant to the next is exact however long it is; where one does, the step of second order is no longer than asked. Checked against <see cref="PlantRunner"/>.</remarks>
internal static class WarmingRun
{
    /// <summary>Temperatures at the instants, K: a row a node, and behind them the sensor's.</summary>
    /// <param name="network">Nodes, links, air, where they begin.</param>
    /// <param name="watts">Power into the heater's node; from nothing on its first value.</param>
    /// <param name="instants">Rising, s, none before 0.</param>
    /// <param name="stepS">Longest step where a loss curves, s.</param>
    /// <param name="slopes">Carried along where wanted; made for the same network and instants.</param>
    public static double[][] Run(ThermalNetwork network, Schedule watts, double[] instants, double stepS, WarmingSlopes? slopes = null)
    {
        int nodes = network.Nodes.Count;
        var matrices = new StepMatrices(network, 0);
        int size = matrices.Size;
        double[][] kelvin = [.. Enumerable.Range(0, nodes + 1).Select(_ => new double[instants.Length])];
        bool curves = network.Nodes.Any(node => node.RadiatingM2 > 0 || node.ConvectionWPerK125 > 0);
        Span<double> rises = stackalloc double[size], push = stackalloc double[size], later = stackalloc double[size], guess = stackalloc double[size];
        for (int i = 0; i < size; i++)
        {
            int node = i < nodes ? i : network.SensorNode;
            rises[i] = network.StartK.Count > 0 ? network.StartK[node] - network.AmbientK : 0;
        }

        double now = 0, heater = network.Nodes[network.HeaterNode].CapacityJPerK, last = double.NaN;
        var exact = matrices.For(0, false);
        int piece = 0;
        double[] edges = watts.Times, values = watts.Values;
        for (int k = 0; k < instants.Length; k++)
        {
            while (instants[k] - now > StepMatrices.SameS)
            {
                while (piece + 1 < edges.Length && edges[piece + 1] <= now + StepMatrices.SameS)
                {
                    piece++;
                }

                double to = piece + 1 < edges.Length && edges[piece + 1] < instants[k] ? edges[piece + 1] : instants[k], h = curves ? Math.Min(to - now, stepS) : to - now;
                if (h != last)
                {
                    (exact, last) = (matrices.For(h, false), h);
                }

                if (curves)
                {
                    Pushes(network, rises, values[piece] / heater, push);
                    Apply(exact.Exp, rises, guess, clear: true);
                    Apply(exact.Phi1, push, guess, clear: false);
                    Pushes(network, guess, values[piece] / heater, later);
                    for (int i = 0; i < size; i++)
                    {
                        later[i] -= push[i];
                    }

                    slopes?.Move(exact, h, rises, push, guess, later);
                    Apply(exact.Phi2, later, guess, clear: false);
                    guess.CopyTo(rises);
                }
                else
                {
                    slopes?.Move(exact, h, rises, values[piece] / heater);
                    Warm(exact, rises, network.HeaterNode, values[piece] / heater);
                }

                now += h;
            }

            for (int i = 0; i < nodes; i++)
            {
                kelvin[i][k] = network.AmbientK + rises[i];
            }

            kelvin[nodes][k] = network.AmbientK + (size > nodes ? rises[nodes] : rises[network.SensorNode]);
            slopes?.Keep(k);
        }

        return kelvin;
    }

    /// <summary>One exact step where nothing but the heater moves the nodes beside their linear exchange; of one and two lumps, as bench trials have them, without a loop.</summary>
    private static void Warm(ExponentialStep exact, Span<double> rises, int at, double heated)
    {
        ReadOnlySpan<double> e = exact.Exp, f = exact.Phi1;
        int size = rises.Length;
        if (size == 1)
        {
            rises[0] = (e[0] * rises[0]) + (f[0] * heated);
        }
        else if (size == 2)
        {
            double a = rises[0], b = rises[1];
            rises[0] = (e[0] * a) + (e[1] * b) + (f[at] * heated);
            rises[1] = (e[2] * a) + (e[3] * b) + (f[2 + at] * heated);
        }
        else
        {
            Span<double> next = stackalloc double[size];
            for (int row = 0; row < size; row++)
            {
                double sum = f[(row * size) + at] * heated;
                for (int column = 0; column < size; column++)
                {
                    sum += e[(row * size) + column] * rises[column];
                }

                next[row] = sum;
            }

            next.CopyTo(rises);
        }
    }

    /// <summary>What moves the nodes beside their linear exchange, K/s.</summary>
    private static void Pushes(ThermalNetwork network, ReadOnlySpan<double> rises, double heated, Span<double> push)
    {
        push.Clear();
        push[network.HeaterNode] = heated;
        for (int i = 0; i < network.Nodes.Count; i++)
        {
            var node = network.Nodes[i];
            double hot = network.AmbientK + rises[i], cold = network.AmbientK * network.AmbientK;
            hot *= hot;
            push[i] -= ((node.ConvectionWPerK125 * rises[i] * Math.Sqrt(Math.Sqrt(Math.Abs(rises[i])))) + (node.RadiatingM2 * Constants.StefanBoltzmann * ((hot * hot) - (cold * cold)))) / node.CapacityJPerK;
        }
    }

    private static void Apply(double[] matrix, ReadOnlySpan<double> from, Span<double> to, bool clear)
    {
        int size = from.Length;
        for (int row = 0; row < size; row++)
        {
            double sum = clear ? 0 : to[row];
            for (int column = 0; column < size; column++)
            {
                sum += matrix[(row * size) + column] * from[column];
            }

            to[row] = sum;
        }
    }
}
