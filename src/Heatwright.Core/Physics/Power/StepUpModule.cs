namespace Heatwright.Physics;

/// <summary>A step-up module: what it is set to, what it loses, what limits it. Limits left out do not limit.</summary>
/// <param name="SetV">Set output voltage.</param>
/// <param name="Loss">Loss over input current.</param>
public sealed record StepUpModule(double SetV, LossCoefficients Loss)
{
    /// <summary>Set output voltage.</summary>
    public double SetV { get; } = Impossible.UnlessPositive(SetV, "V");

    /// <summary>Peak switch current.</summary>
    public double PeakLimitA { get; init => field = value > 0 ? value : throw Impossible.Outside(nameof(PeakLimitA), value, "A", "more than 0"); } = double.PositiveInfinity;

    /// <summary>Inductance times switching frequency, which fixes the ripple: V_in·D/(L·f). Infinite: no ripple, the limit is a mean current.</summary>
    public double InductanceTimesHz { get; init => field = value > 0 ? value : throw Impossible.Outside(nameof(InductanceTimesHz), value, "Ω", "more than 0"); } = double.PositiveInfinity;

    /// <summary>Largest duty.</summary>
    public double MaxDuty { get; init => field = Impossible.UnlessFraction(value, nameof(MaxDuty)); } = 1;

    /// <summary>Input voltage at which it stops.</summary>
    public double LockoutV { get; init => field = Impossible.IfNegative(value, "V", nameof(LockoutV)); }

    /// <summary>Input voltage above which it starts; at least the voltage at which it stops.</summary>
    public double StartV { get; init => field = Impossible.IfNegative(value, "V", nameof(StartV)); }

    /// <summary>Rectifier drop when the input passes through.</summary>
    public double DiodeV { get; init => field = Impossible.IfNegative(value, "V", nameof(DiodeV)); }

    /// <summary>Inductor and rectifier resistance when the input passes through.</summary>
    public double ThroughOhm { get; init => field = Impossible.IfNegative(value, "Ω", nameof(ThroughOhm)); }
}
