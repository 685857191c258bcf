namespace Heatwright.Physics;

/// <summary>A step-up module: what it is set to, what it loses, what limits it. Limits left out do not limit.</summary>
/// <param name="SetV">Set output voltage.</param>
/// <param name="Loss">Loss over input current, up to <see cref="ChangeA"/>.</param>
/// <remarks>A module that works in bursts at light load and steadily above loses steeper above that change: loss = a0 + a1·I + a2·I² + s·max(0, I − I_c). Above I_c that is
/// the same law with a0 − s·I_c and a1 + s, so each point is solved on either side and the one that lies on its side stands. Derived here.</remarks>
public sealed record StepUpModule(double SetV, LossCoefficients Loss)
{
    /// <summary>Set output voltage.</summary>
    public double SetV { get; } = Impossible.UnlessPositive(SetV, "V");

    /// <summary>Input current above which it loses <see cref="SteeperV"/> more per ampere. Infinite: it has no such change.</summary>
    public double ChangeA { get; init => field = value >= 0 ? value : throw Impossible.Outside(nameof(ChangeA), value, "A", "0 or more"); } = double.PositiveInfinity;

    /// <summary>Loss per ampere above the change, beside that below.</summary>
    public double SteeperV { get; init => field = Impossible.IfNegative(value, "V", nameof(SteeperV)); }

    /// <summary>Fixed loss and loss per ampere as they count up to the change.</summary>
    internal (double FixedW, double DropV) Below => (Loss.FixedW, Loss.DropV);

    /// <summary>The same as they count above it; where there is no change, as below.</summary>
    internal (double FixedW, double DropV) Above => double.IsInfinity(ChangeA) ? Below : (Loss.FixedW - (SteeperV * ChangeA), Loss.DropV + SteeperV);

    /// <summary>The side on which an input current lies.</summary>
    internal (double FixedW, double DropV) SideOf(double inputA) => inputA > ChangeA ? Above : Below;

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
