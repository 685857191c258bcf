namespace Heatwright.Arrangements;

/// <summary>A quantity over the charge left s, 0 (empty) to 1 (full): exactly one of the three.</summary>
public sealed record StatedCurve
{
    /// <summary>One value at every charge.</summary>
    public double? Flat { get; init; }

    /// <summary>Pairs of charge left and value, charge rising; straight between them, held at both ends.</summary>
    public IReadOnlyList<IReadOnlyList<double>>? Points { get; init; }

    /// <summary>A formula.</summary>
    public StatedFormula? Formula { get; init; }
}

/// <summary>c0 + c1·s + c2·s² + c3·s³ + a·e^(−b·s).</summary>
public sealed record StatedFormula
{
    /// <summary>Constant.</summary>
    public double C0 { get; init; }

    /// <summary>Factor of s.</summary>
    public double C1 { get; init; }

    /// <summary>Factor of s².</summary>
    public double C2 { get; init; }

    /// <summary>Factor of s³.</summary>
    public double C3 { get; init; }

    /// <summary>Factor of the exponential.</summary>
    public double A { get; init; }

    /// <summary>Its steepness.</summary>
    public double B { get; init; }

    /// <summary>Below this charge the value there holds.</summary>
    public double HeldBelow { get; init; }
}

/// <summary>One cell.</summary>
/// <param name="CapacityAh">Charge from full to empty, Ah.</param>
/// <param name="OpenV">Open-circuit volts.</param>
/// <param name="InstantOhm">Ohms seen at once.</param>
public sealed record StatedCell(double CapacityAh, StatedCurve OpenV, StatedCurve InstantOhm)
{
    /// <summary>Ohms of the short RC pair; null: none.</summary>
    public StatedCurve? ShortOhm { get; init; }

    /// <summary>Time constant of the short pair, s.</summary>
    public double? ShortS { get; init; }

    /// <summary>Farads of the short pair, where the time constant follows the charge.</summary>
    public StatedCurve? ShortF { get; init; }

    /// <summary>Ohms of the long RC pair; null: none.</summary>
    public StatedCurve? LongOhm { get; init; }

    /// <summary>Time constant of the long pair, s.</summary>
    public double? LongS { get; init; }

    /// <summary>Farads of the long pair, where the time constant follows the charge.</summary>
    public StatedCurve? LongF { get; init; }

    /// <summary>Activation energy of all ohms, J/mol; 0: no temperature effect.</summary>
    public double ActivationJPerMol { get; init; }

    /// <summary>Temperature at which the ohms are stated, °C.</summary>
    public double OhmsAtC { get; init; } = 25;
}

/// <summary>Cells in series and side by side, and everything in series with them.</summary>
/// <param name="Cell">One cell.</param>
public sealed record StatedPack(StatedCell Cell)
{
    /// <summary>Cells in series.</summary>
    public int Series { get; init; } = 1;

    /// <summary>Strings side by side.</summary>
    public int Parallel { get; init; } = 1;

    /// <summary>Ohms between the cells and the path: links, contacts, protection, fuse, leads, switch.</summary>
    public double LoopOhm { get; init; }

    /// <summary>Charge left at the start, 0 to 1.</summary>
    public double StartCharge { get; init; } = 1;

    /// <summary>On-state pack current at which the protection opens, A; null: none.</summary>
    public double? TripA { get; init; }

    /// <summary>Drain while the load is on, A, on top of the load.</summary>
    public double DrainOnA { get; init; }

    /// <summary>Drain while the load is off, A.</summary>
    public double DrainOffA { get; init; }
}
