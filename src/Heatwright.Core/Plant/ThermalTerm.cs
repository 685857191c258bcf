namespace Heatwright.Plant;

/// <summary>What of a thermal network a slope is taken by.</summary>
internal enum ThermalQuantity
{
    /// <summary>Of a node, J/K.</summary>
    HeatCapacity,

    /// <summary>Of a node to the air, W/K.</summary>
    LinearLoss,

    /// <summary>Emissivity times area of a node, m².</summary>
    RadiatingArea,

    /// <summary>Conductance of a link, W/K.</summary>
    Link,

    /// <summary>Of the sensor, s.</summary>
    SensorLag,
}

/// <summary>One quantity of a network: which, and of which node or link.</summary>
internal readonly record struct ThermalTerm(ThermalQuantity Quantity, int At = 0);
