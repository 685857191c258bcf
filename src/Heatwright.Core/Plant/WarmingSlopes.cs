using Heatwright.Numerics;
using Heatwright.Physics;

namespace Heatwright.Plant;

/// <summary>How the temperatures of a <see cref="WarmingRun"/> move with what its network is made of: K per unit of the natural logarithm of each quantity, carried along with the steps.</summary>
/// <remarks>The slope of a step is that of its own formulas: that of a function of a matrix L along E is the upper right block of the same function of [L E; 0 L] (Higham, Functions of Matrices, SIAM 2008, theorem 3.6, from memory).
/// Checked against differences of whole runs.</remarks>
internal sealed class WarmingSlopes
{
    private readonly ThermalNetwork network;
    private readonly IReadOnlyList<ThermalTerm> terms;
    private readonly double[][] linear;
    private readonly double[][] moved;
    private readonly Dictionary<ExponentialStep, ExponentialStep[]> kept = [];
    private readonly int size;
    private readonly int nodes;
    private ExponentialStep? last;
    private ExponentialStep[] lastSlopes = [];

    /// <summary>Nothing has moved yet: every run begins where it was read to begin.</summary>
    public WarmingSlopes(ThermalNetwork network, IReadOnlyList<ThermalTerm> terms, int instants)
    {
        (this.network, this.terms) = (network, terms);
        nodes = network.Nodes.Count;
        var matrices = new StepMatrices(network, 0);
        size = matrices.Size;
        linear = [.. terms.Select(term => Beside(matrices.Linear, term))];
        moved = [.. terms.Select(_ => new double[size])];
        ByLogarithm = [.. terms.Select(_ => Enumerable.Range(0, nodes + 1).Select(_ => new double[instants]).ToArray())];
    }

    /// <summary>A block a term, a row a node and last the sensor's, a column an instant.</summary>
    public double[][][] ByLogarithm { get; }

    /// <summary>One exact step under a power that holds; the rises are those before it.</summary>
    public void Move(ExponentialStep exact, double h, ReadOnlySpan<double> rises, double heated)
    {
        var slopes = For(exact, h);
        int at = network.HeaterNode;
        Span<double> next = stackalloc double[size];
        for (int t = 0; t < moved.Length; t++)
        {
            double[] from = moved[t];
            double own = terms[t] == new ThermalTerm(ThermalQuantity.HeatCapacity, at) ? -heated : 0;
            var (exp, phi1) = (slopes[t].Exp, slopes[t].Phi1);
            for (int row = 0; row < size; row++)
            {
                int beside = (row * 2 * size) + size;
                double sum = (phi1[beside + at] * heated) + (exact.Phi1[(row * size) + at] * own);
                for (int column = 0; column < size; column++)
                {
                    sum += (exact.Exp[(row * size) + column] * from[column]) + (exp[beside + column] * rises[column]);
                }

                next[row] = sum;
            }

            next.CopyTo(from);
        }
    }

    /// <summary>One step of second order where a loss curves: from the rises before it, what pushes there, the rises of its first stage, and by how much that changes what pushes.</summary>
    public void Move(ExponentialStep exact, double h, ReadOnlySpan<double> rises, ReadOnlySpan<double> push, ReadOnlySpan<double> guess, ReadOnlySpan<double> change)
    {
        var slopes = For(exact, h);
        Span<double> first = stackalloc double[size], pushed = stackalloc double[size], later = stackalloc double[size];
        Span<double> after = stackalloc double[nodes];
        for (int i = 0; i < nodes; i++)
        {
            after[i] = push[i] + change[i];
        }

        for (int t = 0; t < moved.Length; t++)
        {
            Pushed(terms[t], rises, push, moved[t], pushed);
            for (int row = 0; row < size; row++)
            {
                double sum = 0;
                int beside = (row * 2 * size) + size, own = row * size;
                for (int column = 0; column < size; column++)
                {
                    sum += (exact.Exp[own + column] * moved[t][column]) + (slopes[t].Exp[beside + column] * rises[column])
                        + (exact.Phi1[own + column] * pushed[column]) + (slopes[t].Phi1[beside + column] * push[column]);
                }

                first[row] = sum;
            }

            Pushed(terms[t], guess, after, first, later);
            for (int row = 0; row < size; row++)
            {
                double sum = first[row];
                int beside = (row * 2 * size) + size, own = row * size;
                for (int column = 0; column < size; column++)
                {
                    sum += (exact.Phi2[own + column] * (later[column] - pushed[column])) + (slopes[t].Phi2[beside + column] * change[column]);
                }

                moved[t][row] = sum;
            }
        }
    }

    /// <summary>Keeps what stands now as that of an instant.</summary>
    public void Keep(int instant)
    {
        for (int t = 0; t < moved.Length; t++)
        {
            for (int i = 0; i < nodes; i++)
            {
                ByLogarithm[t][i][instant] = moved[t][i];
            }

            ByLogarithm[t][nodes][instant] = moved[t][size > nodes ? nodes : network.SensorNode];
        }
    }

    /// <summary>How what pushes the nodes moves, K/s, where the rises move so.</summary>
    private void Pushed(ThermalTerm term, ReadOnlySpan<double> rises, ReadOnlySpan<double> push, ReadOnlySpan<double> with, Span<double> pushed)
    {
        pushed.Clear();
        for (int i = 0; i < nodes; i++)
        {
            var node = network.Nodes[i];
            double hot = network.AmbientK + rises[i], cold = network.AmbientK * network.AmbientK, square = hot * hot;
            pushed[i] = -((1.25 * node.ConvectionWPerK125 * Math.Sqrt(Math.Sqrt(Math.Abs(rises[i])))) + (4 * node.RadiatingM2 * Constants.StefanBoltzmann * square * hot)) / node.CapacityJPerK * with[i];
            if (term.At == i && term.Quantity == ThermalQuantity.HeatCapacity)
            {
                pushed[i] -= push[i];
            }
            else if (term.At == i && term.Quantity == ThermalQuantity.RadiatingArea)
            {
                pushed[i] -= node.RadiatingM2 * Constants.StefanBoltzmann * ((square * square) - (cold * cold)) / node.CapacityJPerK;
            }
        }
    }

    /// <summary>The steps of [L E; 0 L] a term, for the step of L.</summary>
    private ExponentialStep[] For(ExponentialStep exact, double h)
    {
        if (ReferenceEquals(exact, last))
        {
            return lastSlopes;
        }

        if (!kept.TryGetValue(exact, out var slopes))
        {
            if (kept.Count > 64)
            {
                kept.Clear(); // odd intervals of a log leave steps that never come again
            }

            slopes = [.. linear.Select(block => new ExponentialStep(block, 2 * size, h))];
            kept[exact] = slopes;
        }

        (last, lastSlopes) = (exact, slopes);
        return slopes;
    }

    /// <summary>[L E; 0 L], E the slope of L by the logarithm of one quantity.</summary>
    private double[] Beside(ReadOnlySpan<double> free, ThermalTerm term)
    {
        double[] block = new double[4 * size * size];
        for (int row = 0; row < size; row++)
        {
            for (int column = 0; column < size; column++)
            {
                block[(row * 2 * size) + column] = block[((size + row) * 2 * size) + size + column] = free[(row * size) + column];
            }
        }

        void Add(int row, int column, double rate) => block[(row * 2 * size) + size + column] += rate;
        switch (term.Quantity)
        {
            case ThermalQuantity.HeatCapacity:
                Whole(term.At, free);
                break;
            case ThermalQuantity.LinearLoss:
                Add(term.At, term.At, -network.Nodes[term.At].LinearWPerK / network.Nodes[term.At].CapacityJPerK);
                break;
            case ThermalQuantity.Link:
                var link = network.Links[term.At];
                foreach (var (from, to) in ((int, int)[])[(link.A, link.B), (link.B, link.A)])
                {
                    Add(from, from, -link.WPerK / network.Nodes[from].CapacityJPerK);
                    Add(from, to, link.WPerK / network.Nodes[from].CapacityJPerK);
                }

                break;
            case ThermalQuantity.SensorLag when size > nodes:
                Whole(nodes, free);
                break;
            default:
                break; // a radiating area is no part of L
        }

        return block;

        // Capacity and lag divide their row as a whole.
        void Whole(int row, ReadOnlySpan<double> of)
        {
            for (int column = 0; column < size; column++)
            {
                Add(row, column, -of[(row * size) + column]);
            }
        }
    }
}
