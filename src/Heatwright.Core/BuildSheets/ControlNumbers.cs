namespace Heatwright.BuildSheets;

/// <summary>All numbers of the controller's firmware, as the code needs them.</summary>
public sealed record ControlNumbers
{
    /// <summary>Set point, °C.</summary>
    public required double SetC { get; init; }

    /// <summary>Sample period, s.</summary>
    public required double SampleS { get; init; }

    /// <summary>Gain, W/K.</summary>
    public required double GainWPerK { get; init; }

    /// <summary>Integral time, s.</summary>
    public required double IntegralS { get; init; }

    /// <summary>Power that holds the set point, W: what the integral begins with.</summary>
    public required double HoldW { get; init; }

    /// <summary>Heater and everything in series behind the point where the pack volts are read, Ω.</summary>
    public required double LoadOhm { get; init; }

    /// <summary>Most power, W.</summary>
    public required double MostW { get; init; }

    /// <summary>Most duty.</summary>
    public required double MostDuty { get; init; }

    /// <summary>Pack volts under load at which it stops, V.</summary>
    public required double CutoffV { get; init; }

    /// <summary>Stops above this, °C.</summary>
    public required double StopC { get; init; }

    /// <summary>Stops after so long without work, s.</summary>
    public required double IdleS { get; init; }

    /// <summary>Wait after the heater went off, s.</summary>
    public required double WaitS { get; init; }

    /// <summary>Time of all conversions of a window, s.</summary>
    public required double ReadS { get; init; }

    /// <summary>Counts at or under this: the sensor is shorted or the amplifier lies on its floor.</summary>
    public required int LowCount { get; init; }

    /// <summary>Counts at or above this: the sensor is broken, the pull-up took it.</summary>
    public required int HighCount { get; init; }

    /// <summary>At full power the reading must have risen by <see cref="RiseK"/> after this time, s.</summary>
    public required double RiseS { get; init; }

    /// <summary>See <see cref="RiseS"/>.</summary>
    public required double RiseK { get; init; }
}
