namespace Heatwright.Arrangements;

/// <summary>How the duty is set: exactly one of duty, pi and onOff, and how it reads.</summary>
public sealed record StatedControl
{
    /// <summary>The same duty always, 0 to 1.</summary>
    public double? Duty { get; init; }

    /// <summary>Sampled PI.</summary>
    public StatedPi? Pi { get; init; }

    /// <summary>On-off with a band.</summary>
    public StatedOnOff? OnOff { get; init; }

    /// <summary>The reading comes in steps of so many kelvin, counted from 0 °C, to the nearest; 0: every digit.</summary>
    public double ReadingStepK { get; init; }

    /// <summary>So long after the last piece of work, or after the start, the tool lies idle, s; null: never.</summary>
    public double? IdleAfterS { get; init; }

    /// <summary>Set point while idle, °C; null: off.</summary>
    public double? IdleC { get; init; }
}

/// <summary>On at or below the lower temperature, off at or above the upper, in between as it was.</summary>
/// <param name="LowC">Goes on here, °C.</param>
/// <param name="HighC">Goes off here, °C.</param>
public sealed record StatedOnOff(double LowC, double HighC)
{
    /// <summary>Duty while on.</summary>
    public double Duty { get; init; } = 1;

    /// <summary>Sample period, s; 0: it looks all the time.</summary>
    public double PeriodS { get; init; }

    /// <summary>Switched off at the start.</summary>
    public bool StartsOff { get; init; }
}

/// <summary>Sampled PI with watts as its output: e = target − reading; u = gain·e + I; s = u held between 0 and all there is; then I moves; duty = s over the full power.</summary>
/// <param name="TargetC">Set point, °C.</param>
/// <param name="PeriodS">Sample period, s.</param>
/// <param name="GainWPerK">Proportional gain.</param>
/// <param name="IntegralWPerKS">Integral gain.</param>
/// <param name="NominalOhm">Ohms with which the firmware turns watts into duty: full power = volts²/ohms.</param>
public sealed record StatedPi(double TargetC, double PeriodS, double GainWPerK, double IntegralWPerKS, double NominalOhm)
{
    /// <summary>Back-calculation: I += period·(integral·e + tracking·(s − u)), 1/s. 0: I stands still while u is beyond an end and e would push it on.</summary>
    public double TrackingPerS { get; init; }

    /// <summary>Duty ceiling.</summary>
    public double MaxDuty { get; init; } = 1;

    /// <summary>What I starts with, W.</summary>
    public double StartW { get; init; }

    /// <summary>Gain on the falling of the reading, W·s/K; 0: no such part.</summary>
    public double DerivativeWSPerK { get; init; }

    /// <summary>Time constant of the filter on it, s.</summary>
    public double FilterS { get; init; }

    /// <summary>Most watts it asks for; null: all there is.</summary>
    public double? MostW { get; init; }

    /// <summary>Volts it reckons with instead of measuring them; null: it measures.</summary>
    public double? NominalV { get; init; }
}
