namespace Heatwright.Arrangements;

/// <summary>The lumps of the tool, how they touch, and what reads them.</summary>
/// <param name="AirC">Air, °C.</param>
/// <param name="Nodes">One to eight lumps.</param>
/// <param name="HeaterNode">Name of the node that takes the heater's power.</param>
/// <param name="WorkingNode">Name of the node that works.</param>
/// <param name="SensorNode">Name of the node that the sensor sits on.</param>
public sealed record StatedHeat(double AirC, IReadOnlyList<StatedNode> Nodes, string HeaterNode, string WorkingNode, string SensorNode)
{
    /// <summary>Conductances between nodes.</summary>
    public IReadOnlyList<StatedLink> Links { get; init; } = [];

    /// <summary>Lag of the sensor, s; 0: none.</summary>
    public double SensorLagS { get; init; }

    /// <summary>Name of the node of the cells; null: cells stay at air.</summary>
    public string? CellNode { get; init; }

    /// <summary>Name of the node that takes the losses of path, loop and drain; null: they leave the tool.</summary>
    public string? ElectronicsNode { get; init; }
}

/// <summary>A lump.</summary>
/// <param name="Name">Unique.</param>
/// <param name="JPerK">Heat capacity.</param>
public sealed record StatedNode(string Name, double JPerK)
{
    /// <summary>Linear loss to the air, W/K.</summary>
    public double AirWPerK { get; init; }

    /// <summary>Natural convection, W/K^1.25: loss = a·|Δ|^0.25·Δ.</summary>
    public double AirWPerK125 { get; init; }

    /// <summary>Emissivity times area, m².</summary>
    public double RadiatingM2 { get; init; }

    /// <summary>Temperature at the start, °C; null: that of the air.</summary>
    public double? StartC { get; init; }
}

/// <summary>A conductance between two nodes.</summary>
public sealed record StatedLink(string From, string To, double WPerK);
