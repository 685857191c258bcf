using Heatwright.Physics;

namespace Heatwright.Plant;

/// <summary>What stands between pack and load. The laws of the modules stand in Physics; the plant has none of its own.</summary>
public abstract record PathModel
{
    private PathModel() { }

    /// <summary>Pack straight on the load through the switch.</summary>
    public sealed record Direct : PathModel;

    /// <summary>Step-up module: loss = a0 + a1·I_in + a2·I_in², steeper above a change where the module has one.</summary>
    /// <param name="Module">Set volts, loss, limits.</param>
    public sealed record StepUp(StepUpModule Module) : PathModel
    {
        /// <summary>A module without ripple: its limit is a mean current.</summary>
        /// <param name="setV">Set output volts.</param>
        /// <param name="a0W">Loss that is always there, W.</param>
        /// <param name="a1V">Loss per input ampere, V.</param>
        /// <param name="a2Ohm">Loss per input ampere squared, Ω.</param>
        /// <param name="limitA">Input current at which its own limit holds the current, A.</param>
        /// <param name="maxDuty">Largest duty of its switch.</param>
        /// <param name="lockOutV">Input volts under which it stops.</param>
        /// <param name="diodeV">Drop of its rectifier when the input passes straight through, V.</param>
        public StepUp(double setV, double a0W, double a1V, double a2Ohm, double limitA, double maxDuty, double lockOutV, double diodeV)
            : this(new StepUpModule(setV, new(a0W, a1V, a2Ohm)) { PeakLimitA = limitA, MaxDuty = maxDuty, LockoutV = lockOutV, DiodeV = diodeV })
        {
        }
    }

    /// <summary>Step-down module: loss = a0 + a1·I_out + a2·I_out².</summary>
    /// <param name="Module">Set volts, loss, limits.</param>
    public sealed record StepDown(StepDownModule Module) : PathModel;

    /// <summary>Step-up-down module: loss over input current, no duty limit.</summary>
    /// <param name="Module">Set volts, loss, limits.</param>
    public sealed record StepUpDown(StepUpDownModule Module) : PathModel;

    /// <summary>Linear regulator.</summary>
    /// <param name="Module">Set volts, drop-out.</param>
    public sealed record Linear(LinearModule Module) : PathModel;
}

/// <summary>Where the power path works; part of the answer at every instant.</summary>
public enum Region
{
    /// <summary>As set.</summary>
    Regulated,
    /// <summary>Pack straight on the load.</summary>
    Direct,
    /// <summary>The module's duty is at its end; a linear regulator is out of headroom.</summary>
    DutyLimited,
    /// <summary>The module's current limit holds.</summary>
    CurrentLimited,
    /// <summary>A limit holds beyond the fold: there more input current gives less output.</summary>
    SourceLimited,
    /// <summary>The input passes straight to the load.</summary>
    PassThrough,
    /// <summary>Input volts below the module's lock-out: it hiccups, its mean power is unknown.</summary>
    LockedOut,
    /// <summary>The protection has opened.</summary>
    Tripped,
    /// <summary>The source cannot carry the load and nothing holds it: no steady point, the volts collapse.</summary>
    Collapsed,
    /// <summary>Charging at the set current.</summary>
    ChargeCurrent,
    /// <summary>Charging at what the charger's own heat allows.</summary>
    ChargeFoldedBack,
    /// <summary>Charging at the set volts.</summary>
    ChargeVolts,
}
