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

    /// <summary>The short pair is a charge transfer: its volts grow less than the current.</summary>
    public bool ChargeTransfer { get; init; }

    /// <summary>Ohms of the long RC pair; null: none.</summary>
    public StatedCurve? LongOhm { get; init; }

    /// <summary>Time constant of the long pair, s.</summary>
    public double? LongS { get; init; }

    /// <summary>Farads of the long pair, where the time constant follows the charge.</summary>
    public StatedCurve? LongF { get; init; }

    /// <summary>The long pair holds a lagging current, not volts: v₂ = R₂·i₂ at the charge of the moment.</summary>
    public bool LongHoldsAmps { get; init; }

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

    /// <summary>Cells that differ: groups in series, in each the cells side by side; empty: all alike. Series and parallel follow from it.</summary>
    public IReadOnlyList<IReadOnlyList<StatedMember>> Groups { get; init; } = [];
}

/// <summary>How one cell of a pack differs from the one that is described.</summary>
public sealed record StatedMember
{
    /// <summary>Its capacity over that of the described cell.</summary>
    public double CapacityFactor { get; init; } = 1;

    /// <summary>All its ohms over those of the described cell; its time constants stay.</summary>
    public double OhmFactor { get; init; } = 1;

    /// <summary>Its charge left at the start; null: that of the pack.</summary>
    public double? StartCharge { get; init; }
}

/// <summary>A charger in place of path and load: set current, then set volts, then done.</summary>
/// <param name="SetA">Current into the pack, A.</param>
/// <param name="HoldV">Volts at the pack, behind cells and loop, that it never passes.</param>
/// <param name="EndA">Done when the current has fallen to this.</param>
public sealed record StatedCharger(double SetA, double HoldV, double EndA)
{
    /// <summary>Pack volts under which only <see cref="GentleA"/> flows; 0: never.</summary>
    public double GentleBelowV { get; init; }

    /// <summary>Current under that.</summary>
    public double GentleA { get; init; }

    /// <summary>A linear charger that lowers its current to hold its own temperature; null: it does not.</summary>
    public StatedChargerHeat? Heat { get; init; }
}

/// <summary>Heat of a linear charger: (input − pack)·current over its ohms to the air.</summary>
/// <param name="InV">Its input volts.</param>
/// <param name="HoldsC">Temperature it holds, °C.</param>
/// <param name="AirC">Air at the charger, °C.</param>
/// <param name="KPerW">From chip to air.</param>
public sealed record StatedChargerHeat(double InV, double HoldsC, double AirC, double KPerW);
