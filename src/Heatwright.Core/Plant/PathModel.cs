namespace Heatwright.Plant;

/// <summary>What stands between pack and load.</summary>
public abstract record PathModel
{
    private PathModel() { }

    /// <summary>Pack straight on the load through the switch.</summary>
    public sealed record Direct : PathModel;

    /// <summary>Step-up module with the three-coefficient loss model: loss = a0 + a1·I_in + a2·I_in².</summary>
    /// <param name="SetV">Set output volts.</param>
    /// <param name="A0W">Loss that is always there, W.</param>
    /// <param name="A1V">Loss per input ampere, V.</param>
    /// <param name="A2Ohm">Loss per input ampere squared, Ω.</param>
    /// <param name="LimitA">Input current at which its own limit holds the current, A (mean inductor current).</param>
    /// <param name="MaxDuty">Largest duty of its switch.</param>
    /// <param name="LockOutV">Input volts under which it stops.</param>
    /// <param name="DiodeV">Drop of its rectifier when the input passes straight through, V.</param>
    public sealed record StepUp(double SetV, double A0W, double A1V, double A2Ohm, double LimitA, double MaxDuty, double LockOutV, double DiodeV) : PathModel
    {
        /// <summary>Above 0.</summary>
        public double SetV { get; } = Guard.Positive(SetV);

        /// <summary>Below 1.</summary>
        public double MaxDuty { get; } = Guard.Share(MaxDuty);

        /// <summary>0 or more; a fit that strays below 0 is held at 0.</summary>
        public double A0W { get; } = Guard.ZeroOrMore(A0W);

        /// <summary>0 or more.</summary>
        public double A1V { get; } = Guard.ZeroOrMore(A1V);

        /// <summary>0 or more.</summary>
        public double A2Ohm { get; } = Guard.ZeroOrMore(A2Ohm);
    }
}

/// <summary>Where the power path works; part of the answer at every instant.</summary>
public enum Region
{
    /// <summary>As set.</summary>
    Regulated,
    /// <summary>Pack straight on the load.</summary>
    Direct,
    /// <summary>The module's duty is at its end.</summary>
    DutyLimited,
    /// <summary>The module's current limit holds.</summary>
    CurrentLimited,
    /// <summary>The source cannot give the power asked: beyond the fold the volts collapse.</summary>
    SourceLimited,
    /// <summary>The input passes straight to the load.</summary>
    PassThrough,
    /// <summary>Input volts below the module's lock-out: it hiccups, its mean power is unknown.</summary>
    LockedOut,
    /// <summary>The protection has opened.</summary>
    Tripped,
}
