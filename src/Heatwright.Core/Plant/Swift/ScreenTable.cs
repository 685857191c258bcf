using Heatwright.Physics;

namespace Heatwright.Plant;

/// <summary>Many arrangements whose steady point with the switch always on is asked for, column by column; those of one path lie together.</summary>
/// <param name="Count">How many, a multiple of the widest lanes.</param>
/// <param name="Straight">So many of them, the first, are straight; the others are stepped up. A multiple too.</param>
/// <param name="AirK">The air around.</param>
internal sealed record ScreenTable(int Count, int Straight, double AirK)
{
    /// <summary>Rows that are worked on as one, in the widest lanes there are.</summary>
    public const int Together = 8;

    /// <summary>A table with the columns of modules filled in.</summary>
    /// <param name="modules">Of each row; null: it is straight. The straight ones come first.</param>
    /// <param name="airK">The air around.</param>
    /// <param name="openV">As <see cref="OpenV"/>; the others as their columns.</param>
    public static ScreenTable Of(IReadOnlyList<StepUpModule?> modules, double airK, double[] openV, double[] cellOhm, double[] loopOhm, double[] heaterOhm, double[] heaterSlope, double[] lossWPerK, double[] radiatingWPerK4)
    {
        double[] Module(Func<StepUpModule, double> number) => [.. modules.Select(module => module is null ? 0 : number(module))];
        return new(modules.Count, modules.TakeWhile(module => module is null).Count(), airK)
        {
            OpenV = openV,
            CellOhm = cellOhm,
            LoopOhm = loopOhm,
            HeaterOhm = heaterOhm,
            HeaterSlope = heaterSlope,
            LossWPerK = lossWPerK,
            RadiatingWPerK4 = radiatingWPerK4,
            SetV = Module(module => module.SetV),
            FixedW = Module(module => module.Loss.FixedW),
            DropV = Module(module => module.Loss.DropV),
            SlopeOhm = Module(module => module.Loss.SlopeOhm),
            LimitA = Module(module => module.PeakLimitA),
            RestSquared = Module(module => (1 - module.MaxDuty) * (1 - module.MaxDuty)),
            LockOutV = Module(module => module.LockoutV),
            DiodeV = Module(module => module.DiodeV),
            ChangeA = Module(module => module.ChangeA),
            AboveFixedW = Module(module => module.Above.FixedW),
            AboveDropV = Module(module => module.Above.DropV),
        };
    }

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

    public required double[] ChangeA { get; init; }

    public required double[] AboveFixedW { get; init; }

    public required double[] AboveDropV { get; init; }
}
