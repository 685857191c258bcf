namespace Heatwright.Plant;

/// <summary>Many arrangements whose steady point with the switch always on is asked for, column by column; those of one path lie together.</summary>
/// <param name="Count">How many, a multiple of the widest lanes.</param>
/// <param name="Straight">So many of them, the first, are straight; the others are stepped up. A multiple too.</param>
/// <param name="AirK">The air around.</param>
internal sealed record ScreenTable(int Count, int Straight, double AirK)
{
    /// <summary>Rows that are worked on as one, in the widest lanes there are.</summary>
    public const int Together = 8;

    /// <summary>Volts behind all ohms, and ohms of the cells: at the first charge state for all arrangements, then at the second.</summary>
    public required double[] OpenV { get; init; }

    /// <inheritdoc cref="OpenV"/>
    public required double[] CellOhm { get; init; }

    public required double[] LoopOhm { get; init; }

    /// <summary>Heater at the air's temperature, and what a kelvin adds.</summary>
    public required double[] HeaterOhm { get; init; }

    /// <inheritdoc cref="HeaterOhm"/>
    public required double[] HeaterSlope { get; init; }

    /// <summary>Loss of the end by a kelvin, and by radiation, W/K⁴.</summary>
    public required double[] LossWPerK { get; init; }

    /// <inheritdoc cref="LossWPerK"/>
    public required double[] RadiatingWPerK4 { get; init; }

    // Of the modules; whatever where it is straight.
    public required double[] SetV { get; init; }

    public required double[] FixedW { get; init; }

    public required double[] DropV { get; init; }

    public required double[] SlopeOhm { get; init; }

    public required double[] LimitA { get; init; }

    public required double[] RestSquared { get; init; }

    public required double[] LockOutV { get; init; }

    public required double[] DiodeV { get; init; }
}
