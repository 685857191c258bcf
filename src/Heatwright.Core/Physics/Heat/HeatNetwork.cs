using Heatwright.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heatwright.Physics;

/// <summary>A way for heat between two nodes of a tool.</summary>
/// <param name="From">Number of one node, from 0.</param>
/// <param name="To">Number of the other node.</param>
/// <param name="ConductanceWPerK">Heat per kelvin of difference, W/K.</param>
public sealed record HeatLink(int From, int To, double ConductanceWPerK);

/// <summary>A tool as nodes that store heat, ways between them and ways to the air; all losses linear.</summary>
/// <remarks>C_i dΔ_i/dt = P_i + Σ_j G_ij (Δ_j − Δ_i) − G_ia Δ_i, Δ = rise over the air. Scaling by √C makes the matrix symmetric, so every
/// pole is real and none is positive: a passive tool cannot swing. A fit that gives complex poles has a fault in its data or its model.
/// Source: [incropera-dewitt] ch. 5 and energy balance. Checked: HeatNetworkTests.</remarks>
public sealed class HeatNetwork
{
    private readonly double[] _capacityJPerK;
    private readonly double[] _toAirWPerK;
    private readonly HeatLink[] _links;
    private readonly Matrix<double> _conductance;

    /// <summary>Builds the network; refuses a node that stores nothing, a negative conductance and a link that leads nowhere.</summary>
    public HeatNetwork(IReadOnlyList<double> capacityJPerK, IReadOnlyList<double> toAirWPerK, params IReadOnlyList<HeatLink> links)
    {
        int n = capacityJPerK.Count;
        if (n == 0 || toAirWPerK.Count != n)
        {
            throw new ArgumentException($"{n} heat capacities and {toAirWPerK.Count} ways to air: give one of each a node, and at least one node.");
        }

        _capacityJPerK = [.. capacityJPerK.Select(c => Impossible.UnlessPositive(c, "J/K", nameof(capacityJPerK)))];
        _toAirWPerK = [.. toAirWPerK.Select(g => Impossible.IfNegative(g, "W/K", nameof(toAirWPerK)))];
        _links = [.. links];
        _conductance = Matrix<double>.Build.DenseOfDiagonalArray(_toAirWPerK);
        foreach (var link in _links)
        {
            if (link.From == link.To || link.From < 0 || link.To < 0 || link.From >= n || link.To >= n)
            {
                throw new ArgumentException($"A link from node {link.From} to node {link.To} leads nowhere: nodes are 0 to {n - 1}.", nameof(links));
            }

            double g = Impossible.IfNegative(link.ConductanceWPerK, "W/K", nameof(links));
            _conductance[link.From, link.From] += g;
            _conductance[link.To, link.To] += g;
            _conductance[link.From, link.To] -= g;
            _conductance[link.To, link.From] -= g;
        }
    }

    /// <summary>How many nodes.</summary>
    public int Nodes => _capacityJPerK.Length;

    /// <summary>The matrix A of dΔ/dt = A·Δ + P/C, 1/s.</summary>
    public double[,] RatePerS()
    {
        double[,] a = new double[Nodes, Nodes];
        for (int i = 0; i < Nodes; i++)
        {
            for (int j = 0; j < Nodes; j++)
            {
                a[i, j] = -_conductance[i, j] / _capacityJPerK[i];
            }
        }

        return a;
    }

    /// <summary>Poles, 1/s, slowest first: real, none positive.</summary>
    public double[] PolesPerS()
    {
        var symmetric = Matrix<double>.Build.Dense(Nodes, Nodes, (i, j) => -_conductance[i, j] / Math.Sqrt(_capacityJPerK[i] * _capacityJPerK[j]));
        double[] poles = [.. symmetric.Evd(Symmetricity.Symmetric).EigenValues.Select(pole => pole.Real)];

        // A pole of nothing, of a group without a way to air, comes out as a rounding of the fastest one.
        double rounding = 1e-14 * Nodes * poles.Max(Math.Abs);
        return [.. poles.Select(pole => pole < -rounding ? pole : 0).OrderDescending()];
    }

    /// <summary>Time constants, s, longest first; infinite for a tool without a way to air.</summary>
    public double[] TimeConstantsS() => [.. PolesPerS().Select(pole => pole < 0 ? -1 / pole : double.PositiveInfinity)];

    /// <summary>Rises over air when nothing changes any more, for the power put into each node.</summary>
    public double[] SteadyRiseK(params ReadOnlySpan<double> powerW)
    {
        RefuseCount(powerW.Length);
        if (!EveryNodeReachesAir())
        {
            throw new InvalidOperationException("A node has no way to air, so heat put in stays and there is no plateau: give every group of nodes a way to air.");
        }

        return _conductance.Solve(Vector<double>.Build.DenseOfArray(powerW.ToArray())).ToArray();
    }

    /// <summary>Rises after <paramref name="seconds"/> of constant power, exact for any length of step.</summary>
    public double[] RiseAfterK(ReadOnlySpan<double> riseK, ReadOnlySpan<double> powerW, double seconds) => ExactStep(seconds).After(riseK, powerW);

    /// <summary>The exact step of one length, made once and used often.</summary>
    public HeatStep ExactStep(double seconds)
    {
        double[] rows = [.. RatePerS().Cast<double>()];
        var step = new ExponentialStep(rows, Nodes, Impossible.IfNegative(seconds, "s"));
        return new HeatStep(Square(step.Exp, i => 1), Square(step.Phi1, i => _capacityJPerK[i]));
    }

    /// <summary>When a node first reaches a rise, heated from cold at constant power; infinite when its plateau lies at or below it.</summary>
    /// <remarks>From cold at constant power no node ever falls, so bisection finds the only crossing.</remarks>
    public double TimeToRiseS(int node, double targetRiseK, params ReadOnlySpan<double> powerW)
    {
        Impossible.IfNegative(targetRiseK, "K");
        double[] powers = powerW.ToArray();
        if (SteadyRiseK(powers)[node] <= targetRiseK)
        {
            return double.PositiveInfinity;
        }

        double[] cold = new double[Nodes];
        double Short(double seconds) => RiseAfterK(cold, powers, seconds)[node] - targetRiseK;
        double high = TimeConstantsS()[0];
        while (Short(high) < 0)
        {
            high *= 2;
        }

        return Roots.Monotone(Short, 0, high).X;
    }

    /// <summary>Heat that leaves to the air at these rises, W.</summary>
    public double LossW(ReadOnlySpan<double> riseK) => Sum(_toAirWPerK, riseK);

    /// <summary>Heat stored above air temperature, J.</summary>
    public double StoredJ(ReadOnlySpan<double> riseK) => Sum(_capacityJPerK, riseK);

    private static double Sum(double[] weights, ReadOnlySpan<double> values)
    {
        double sum = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            sum += weights[i] * values[i];
        }

        return sum;
    }

    /// <summary>Rows laid out as a square, each column divided by what belongs to its node.</summary>
    private double[,] Square(double[] rows, Func<int, double> columnOver)
    {
        double[,] square = new double[Nodes, Nodes];
        for (int i = 0; i < rows.Length; i++)
        {
            square[i / Nodes, i % Nodes] = rows[i] / columnOver(i % Nodes);
        }

        return square;
    }

    private bool EveryNodeReachesAir()
    {
        bool[] reaches = [.. _toAirWPerK.Select(g => g > 0)];
        for (int round = 0; round < Nodes; round++)
        {
            foreach (var link in _links.Where(link => link.ConductanceWPerK > 0))
            {
                reaches[link.From] = reaches[link.To] = reaches[link.From] || reaches[link.To];
            }
        }

        return reaches.All(yes => yes);
    }

    private void RefuseCount(int given)
    {
        if (given != Nodes)
        {
            throw new ArgumentException($"{given} powers for {Nodes} nodes: give one power a node, 0 where none goes in.");
        }
    }
}
