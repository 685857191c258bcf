namespace Heatwright.Arrangements;

/// <summary>What stands between pack and load: exactly one.</summary>
public sealed record StatedPath
{
    /// <summary>A step-up module.</summary>
    public StatedStepUp? StepUp { get; init; }

    /// <summary>A step-down module.</summary>
    public StatedStepDown? StepDown { get; init; }

    /// <summary>A module that steps up and down.</summary>
    public StatedStepUpDown? StepUpDown { get; init; }

    /// <summary>A linear regulator.</summary>
    public StatedLinear? Linear { get; init; }
}

/// <summary>A step-up module: loss = fixed + drop·I_in + slope·I_in².</summary>
/// <param name="SetV">Set output volts.</param>
public sealed record StatedStepUp(double SetV)
{
    /// <summary>Loss that is always there while on, W.</summary>
    public double FixedW { get; init; }

    /// <summary>Loss per input ampere, V.</summary>
    public double DropV { get; init; }

    /// <summary>Loss per input ampere squared, Ω.</summary>
    public double SlopeOhm { get; init; }

    /// <summary>Mean input current that its own limit holds, A; null: none.</summary>
    public double? LimitA { get; init; }

    /// <summary>Largest duty of its switch.</summary>
    public double MaxDuty { get; init; } = 1;

    /// <summary>Input volts under which it stops.</summary>
    public double LockOutV { get; init; }

    /// <summary>Drop of its rectifier when the input passes straight through, V.</summary>
    public double DiodeV { get; init; }

    /// <summary>Ohms of inductor and rectifier when the input passes straight through.</summary>
    public double ThroughOhm { get; init; }
}

/// <summary>A step-down module: loss = fixed + drop·I_out + slope·I_out².</summary>
/// <param name="SetV">Set output volts.</param>
public sealed record StatedStepDown(double SetV)
{
    /// <summary>Loss that is always there while on, W.</summary>
    public double FixedW { get; init; }

    /// <summary>Loss per output ampere, V.</summary>
    public double DropV { get; init; }

    /// <summary>Loss per output ampere squared, Ω.</summary>
    public double SlopeOhm { get; init; }

    /// <summary>Output current that its own limit holds, A; null: none.</summary>
    public double? LimitA { get; init; }

    /// <summary>Largest duty of its switch.</summary>
    public double MaxDuty { get; init; } = 1;

    /// <summary>Input volts under which it stops.</summary>
    public double LockOutV { get; init; }
}

/// <summary>A module that steps up and down: loss = fixed + drop·I_in + slope·I_in².</summary>
/// <param name="SetV">Set output volts.</param>
public sealed record StatedStepUpDown(double SetV)
{
    /// <summary>Loss that is always there while on, W.</summary>
    public double FixedW { get; init; }

    /// <summary>Loss per input ampere, V.</summary>
    public double DropV { get; init; }

    /// <summary>Loss per input ampere squared, Ω.</summary>
    public double SlopeOhm { get; init; }

    /// <summary>Mean input current that its own limit holds, A; null: none.</summary>
    public double? LimitA { get; init; }

    /// <summary>Input volts under which it stops.</summary>
    public double LockOutV { get; init; }
}

/// <summary>A linear regulator: what goes in comes out, and the volts between are lost.</summary>
/// <param name="SetV">Set output volts.</param>
public sealed record StatedLinear(double SetV)
{
    /// <summary>Its input must stand so much above its output.</summary>
    public double DropoutV { get; init; }

    /// <summary>What it draws for itself while on, A.</summary>
    public double QuiescentA { get; init; }

    /// <summary>Largest output current, A; null: none.</summary>
    public double? LimitA { get; init; }
}

/// <summary>What the power is for: exactly one.</summary>
public sealed record StatedLoad
{
    /// <summary>A heater whose ohms follow its temperature.</summary>
    public StatedHeater? Heater { get; init; }

    /// <summary>A load that draws the same current at any volts, A.</summary>
    public double? CurrentA { get; init; }

    /// <summary>A load that draws the same power at any volts, W.</summary>
    public double? PowerW { get; init; }

    /// <summary>Pairs of volts and amps, both rising; straight between, from zero to the first, the last current beyond the last.</summary>
    public IReadOnlyList<IReadOnlyList<double>>? VoltsAmps { get; init; }

    /// <summary>A self-limiting heater.</summary>
    public StatedSelfLimiting? SelfLimiting { get; init; }
}

/// <summary>R = leastOhm up to switchC, above it leastOhm·e^(steepness·(T − switchC)).</summary>
/// <param name="LeastOhm">Least ohms.</param>
/// <param name="SwitchC">Where the climb begins, °C.</param>
/// <param name="SteepnessPerK">Steepness of the climb, 1/K.</param>
public sealed record StatedSelfLimiting(double LeastOhm, double SwitchC, double SteepnessPerK);

/// <summary>R = ohm·(1 + alpha·(T − at)).</summary>
/// <param name="Ohm">Ohms at the reference temperature.</param>
public sealed record StatedHeater(double Ohm)
{
    /// <summary>Reference temperature, °C.</summary>
    public double AtC { get; init; } = 20;

    /// <summary>Temperature coefficient, 1/K.</summary>
    public double AlphaPerK { get; init; }
}
