namespace Heatwright.Arrangements;

/// <summary>What stands between pack and load: exactly one.</summary>
public sealed record StatedPath
{
    /// <summary>A step-up module.</summary>
    public StatedStepUp? StepUp { get; init; }
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
}

/// <summary>What the power is for: exactly one.</summary>
public sealed record StatedLoad
{
    /// <summary>A heater whose ohms follow its temperature.</summary>
    public StatedHeater? Heater { get; init; }

    /// <summary>A load that draws the same current at any volts, A.</summary>
    public double? CurrentA { get; init; }
}

/// <summary>R = ohm·(1 + alpha·(T − at)).</summary>
/// <param name="Ohm">Ohms at the reference temperature.</param>
public sealed record StatedHeater(double Ohm)
{
    /// <summary>Reference temperature, °C.</summary>
    public double AtC { get; init; } = 20;

    /// <summary>Temperature coefficient, 1/K.</summary>
    public double AlphaPerK { get; init; }
}
