namespace Heatwright.Physics;

/// <summary>What a switching stage loses in its parts. All zero: ideal. A synchronous stage has no diode drop, its second switch is <see cref="DiodeOhm"/>.</summary>
public readonly record struct StageOhms
{
    /// <summary>Takes the four values; none can be negative. Of a step-up with an input capacitor the source resistance adds to the inductor's.</summary>
    public StageOhms(double inductorOhm, double switchOhm, double diodeOhm = 0, double diodeV = 0)
    {
        InductorOhm = Impossible.IfNegative(inductorOhm, "Ω");
        SwitchOhm = Impossible.IfNegative(switchOhm, "Ω");
        DiodeOhm = Impossible.IfNegative(diodeOhm, "Ω");
        DiodeV = Impossible.IfNegative(diodeV, "V");
    }

    /// <summary>Inductor.</summary>
    public double InductorOhm { get; }

    /// <summary>Main switch.</summary>
    public double SwitchOhm { get; }

    /// <summary>Rectifier, slope.</summary>
    public double DiodeOhm { get; }

    /// <summary>Rectifier, drop.</summary>
    public double DiodeV { get; }
}

/// <summary>Averaged steady state of a switching stage.</summary>
/// <param name="OutV">Output voltage.</param>
/// <param name="InA">Input current.</param>
/// <param name="InductorA">Mean inductor current.</param>
/// <param name="Efficiency">Output power over input power, switching loss left out.</param>
public readonly record struct StagePoint(
    [property: Out("V", "output", Name = "output-voltage")] double OutV,
    [property: Out("A", "input current", Name = "input-current")] double InA,
    [property: Out("A", "mean inductor current", Name = "inductor-current")] double InductorA,
    [property: Out("", "efficiency without switching loss")] double Efficiency);
