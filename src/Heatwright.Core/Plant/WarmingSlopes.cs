using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
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
    private readonly Dictionary<ExponentialStep, StepSlopes> kept = [];
    private readonly int size;
    private readonly int nodes;
    private readonly int width;

    /// <summary>Terms stand side by side, in eights: so many eights a row.</summary>
    private readonly int eights;
    private readonly double[] byLogarithm;

    /// <summary>What the heater pushes, moved by each term, as a share of itself.</summary>
    private readonly Vector512<double>[] heats;
    private Vector512<double>[] moved;
    private Vector512<double>[] next;
    private ExponentialStep? last;
    private StepSlopes? lastSlopes;

    /// <summary>Nothing has moved yet: every run begins where it was read to begin.</summary>
    public WarmingSlopes(ThermalNetwork network, IReadOnlyList<ThermalTerm> terms, int instants)
    {
        (this.network, this.terms) = (network, terms);
        (nodes, width) = (network.Nodes.Count, terms.Count);
        var matrices = new StepMatrices(network, 0);
        size = matrices.Size;
        linear = [.. terms.Select(term => Beside(matrices.Linear, term))];
        eights = (terms.Count + 7) / 8;
        (moved, next) = (new Vector512<double>[size * eights], new Vector512<double>[size * eights]);
        byLogarithm = new double[instants * size * terms.Count];
        heats = new Vector512<double>[eights];
        for (int t = 0; t < terms.Count; t++)
        {
            heats[t / 8] = heats[t / 8].WithElement(t % 8, terms[t] == new ThermalTerm(ThermalQuantity.HeatCapacity, network.HeaterNode) ? -1 : 0);
        }
    }

    /// <summary>Slopes by every term, in their order, K, of a node at an instant; of the sensor behind the last node.</summary>
    public ReadOnlySpan<double> At(int row, int instant)
    {
        int lump = row < nodes ? row : size > nodes ? nodes : network.SensorNode;
        return byLogarithm.AsSpan(((instant * size) + lump) * width, width);
    }

    /// <summary>One exact step under a power that holds; the rises are those before it.</summary>
    public void Move(ExponentialStep exact, double h, ReadOnlySpan<double> rises, double heated)
    {
        var slopes = For(exact, h);
        int count = size, wide = eights, at = network.HeaterNode;
        ReadOnlySpan<Vector512<double>> from = moved, exp = slopes.Exp, phi1 = slopes.Phi1;
        ReadOnlySpan<double> e = exact.Exp, f = exact.Phi1;
        Span<Vector512<double>> to = next;
        for (int v = 0; count == 2 && v < wide; v++)
        {
            // Two lumps, as bench trials have them, without a loop; what waits for nothing stands apart from what waits for the step before.
            var (a, b) = (from[v], from[wide + v]);
            var (upper, lower) = ((exp[v] * rises[0]) + (exp[wide + v] * rises[1]), (exp[(2 * wide) + v] * rises[0]) + (exp[(3 * wide) + v] * rises[1]));
            upper += (phi1[(at * wide) + v] * heated) + (heats[v] * (f[at] * heated));
            lower += (phi1[((2 + at) * wide) + v] * heated) + (heats[v] * (f[2 + at] * heated));
            to[v] = (a * e[0]) + (b * e[1]) + upper;
            to[wide + v] = (a * e[2]) + (b * e[3]) + lower;
        }

        for (int row = 0; count != 2 && row < count; row++)
        {
            for (int v = 0; v < wide; v++)
            {
                int cell = row * count;
                var sum = (phi1[((cell + at) * wide) + v] * heated) + (heats[v] * (f[cell + at] * heated));
                for (int column = 0; column < count; column++, cell++)
                {
                    sum += (from[(column * wide) + v] * e[cell]) + (exp[(cell * wide) + v] * rises[column]);
                }

                to[(row * wide) + v] = sum;
            }
        }

        (moved, next) = (next, moved);
    }

    /// <summary>One step of second order where a loss curves: from the rises before it, what pushes there, the rises of its first stage, and by how much that changes what pushes.</summary>
    public void Move(ExponentialStep exact, double h, ReadOnlySpan<double> rises, ReadOnlySpan<double> push, ReadOnlySpan<double> guess, ReadOnlySpan<double> change)
    {
        var slopes = For(exact, h);
        Span<Vector512<double>> pushed = stackalloc Vector512<double>[size * eights], later = stackalloc Vector512<double>[size * eights];
        Span<double> after = stackalloc double[size];
        for (int i = 0; i < size; i++)
        {
            after[i] = push[i] + change[i];
        }

        Pushed(rises, push, moved, pushed);
        next.AsSpan().Clear();
        Add(exact.Exp, moved, slopes.Exp, rises, next);
        Add(exact.Phi1, pushed, slopes.Phi1, push, next);
        Pushed(guess, after, next, later);
        for (int i = 0; i < later.Length; i++)
        {
            later[i] -= pushed[i];
        }

        Add(exact.Phi2, later, slopes.Phi2, change, next);
        (moved, next) = (next, moved);
    }

    /// <summary>Keeps what stands now as that of an instant.</summary>
    public void Keep(int instant)
    {
        var now = MemoryMarshal.Cast<Vector512<double>, double>(moved.AsSpan());
        var kept = byLogarithm.AsSpan(instant * size * width, size * width);
        for (int lump = 0, at = 0; lump < size; lump++)
        {
            var from = now.Slice(8 * eights * lump, width);
            for (int t = 0; t < from.Length; t++)
            {
                kept[at++] = from[t];
            }
        }
    }

    /// <summary>The slope of a matrix times what it is applied to.</summary>
    private void Add(double[] matrix, ReadOnlySpan<Vector512<double>> along, Vector512<double>[] slopes, ReadOnlySpan<double> of, Vector512<double>[] onto)
    {
        for (int row = 0, to = 0; row < size; row++)
        {
            for (int v = 0; v < eights; v++, to++)
            {
                for (int column = 0, cell = row * size; column < size; column++, cell++)
                {
                    onto[to] += (along[(column * eights) + v] * matrix[cell]) + (slopes[(cell * eights) + v] * of[column]);
                }
            }
        }
    }

    /// <summary>How what pushes the nodes moves, K/s, where the rises move so.</summary>
    private void Pushed(ReadOnlySpan<double> rises, ReadOnlySpan<double> push, ReadOnlySpan<Vector512<double>> with, Span<Vector512<double>> pushed)
    {
        pushed.Clear();
        var single = MemoryMarshal.Cast<Vector512<double>, double>(pushed);
        for (int i = 0; i < nodes; i++)
        {
            var node = network.Nodes[i];
            double hot = network.AmbientK + rises[i], cold = network.AmbientK * network.AmbientK, square = hot * hot, radiates = node.RadiatingM2 * Constants.StefanBoltzmann;
            double falls = -((1.25 * node.ConvectionWPerK125 * Math.Sqrt(Math.Sqrt(Math.Abs(rises[i])))) + (4 * radiates * square * hot)) / node.CapacityJPerK;
            for (int v = 0; v < eights; v++)
            {
                pushed[(i * eights) + v] = with[(i * eights) + v] * falls;
            }

            for (int t = 0; t < terms.Count; t++)
            {
                if (terms[t].At == i)
                {
                    single[(8 * eights * i) + t] -= terms[t].Quantity switch
                    {
                        ThermalQuantity.HeatCapacity => push[i],
                        ThermalQuantity.RadiatingArea => radiates * ((square * square) - (cold * cold)) / node.CapacityJPerK,
                        _ => 0,
                    };
                }
            }
        }
    }

    /// <summary>Slopes of the step's matrices, from the steps of [L E; 0 L].</summary>
    private StepSlopes For(ExponentialStep exact, double h)
    {
        if (ReferenceEquals(exact, last))
        {
            return lastSlopes!;
        }

        if (!kept.TryGetValue(exact, out var slopes))
        {
            if (kept.Count > 64)
            {
                kept.Clear(); // odd intervals of a log leave steps that never come again
            }

            ExponentialStep[] beside = [.. linear.Select(block => new ExponentialStep(block, 2 * size, h))];
            slopes = new(Corner(beside, step => step.Exp), Corner(beside, step => step.Phi1), Corner(beside, step => step.Phi2));
            kept[exact] = slopes;
        }

        (last, lastSlopes) = (exact, slopes);
        return slopes;
    }

    /// <summary>The upper right blocks, the terms of each cell side by side.</summary>
    private Vector512<double>[] Corner(ExponentialStep[] beside, Func<ExponentialStep, double[]> of)
    {
        var corner = new Vector512<double>[size * size * eights];
        for (int t = 0; t < beside.Length; t++)
        {
            double[] whole = of(beside[t]);
            for (int cell = 0; cell < size * size; cell++)
            {
                int at = (cell * eights) + (t / 8);
                corner[at] = corner[at].WithElement(t % 8, whole[(cell / size * 2 * size) + size + (cell % size)]);
            }
        }

        return corner;
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

    /// <summary>Slopes of e^(Lh), h·φ₁ and h·φ₂.</summary>
    private sealed record StepSlopes(Vector512<double>[] Exp, Vector512<double>[] Phi1, Vector512<double>[] Phi2);
}
