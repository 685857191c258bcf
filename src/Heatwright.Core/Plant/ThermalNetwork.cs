namespace Heatwright.Plant;

/// <summary>A lump of one temperature and what it loses to the air.</summary>
/// <param name="Name">As the maker calls it.</param>
/// <param name="CapacityJPerK">Heat capacity, J/K; above 0.</param>
/// <param name="LinearWPerK">Conductance to the air, W/K.</param>
/// <param name="ConvectionWPerK125">Natural convection, W/K^1.25: loss = a·Δ^1.25.</param>
/// <param name="RadiatingM2">Emissivity times area, m²: loss = εA·σ·(T⁴ − T_a⁴).</param>
public sealed record ThermalNode(string Name, double CapacityJPerK, double LinearWPerK, double ConvectionWPerK125 = 0, double RadiatingM2 = 0)
{
    /// <summary>Above 0.</summary>
    public double CapacityJPerK { get; } = Guard.Positive(CapacityJPerK);

    /// <summary>0 or more.</summary>
    public double LinearWPerK { get; } = Guard.ZeroOrMore(LinearWPerK);

    /// <summary>0 or more.</summary>
    public double ConvectionWPerK125 { get; } = Guard.ZeroOrMore(ConvectionWPerK125);

    /// <summary>0 or more.</summary>
    public double RadiatingM2 { get; } = Guard.ZeroOrMore(RadiatingM2);
}

/// <summary>Conductance between two nodes, W/K.</summary>
public sealed record ThermalLink(int A, int B, double WPerK)
{
    /// <summary>0 or more.</summary>
    public double WPerK { get; } = Guard.ZeroOrMore(WPerK);
}

/// <summary>The lumps of the tool, how they touch, and what reads them.</summary>
/// <param name="Nodes">One or more.</param>
/// <param name="Links">Conductances between nodes.</param>
/// <param name="AmbientK">Air, K.</param>
public sealed record ThermalNetwork(IReadOnlyList<ThermalNode> Nodes, IReadOnlyList<ThermalLink> Links, double AmbientK)
{
    /// <summary>Temperatures at the start, K; empty: all at ambient.</summary>
    public IReadOnlyList<double> StartK { get; init; } = [];

    /// <summary>Where the heater's power goes in; −1: nowhere.</summary>
    public int HeaterNode { get; init; }

    /// <summary>The node that works and that the requirement speaks of.</summary>
    public int WorkingNode { get; init; }

    /// <summary>Node of the cells; −1: cells stay at ambient.</summary>
    public int CellNode { get; init; } = -1;

    /// <summary>Node that takes the losses of the power path; −1: they leave the tool.</summary>
    public int ElectronicsNode { get; init; } = -1;

    /// <summary>Node the sensor sits on.</summary>
    public int SensorNode { get; init; }

    /// <summary>Lag of the sensor, s; 0: it reads its node at once.</summary>
    public double SensorLagS { get; init; }

    /// <summary>Heat in the nodes at such rises above the air, J.</summary>
    internal double StoredJ(ReadOnlySpan<double> rises)
    {
        double joules = 0;
        for (int i = 0; i < Nodes.Count; i++)
        {
            joules += Nodes[i].CapacityJPerK * rises[i];
        }

        return joules;
    }
}
