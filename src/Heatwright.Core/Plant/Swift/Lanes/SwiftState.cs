using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>What moves, in lanes, at the start of a step; and what the last step left for the next.</summary>
internal struct SwiftState
{
    // The long pair: its volts, or the amps of one cell's where it holds those.
    public Lanes Charge, ShortV, Long, T0, T1, T2, T3, Sensor, IntegralW, Duty;

    // Of the step before, for values in the middle of the step to come.
    public Lanes LastA, LastW, LastPathW, LastT0, LastT1, LastT2, LastT3, LastSensor;

    /// <summary>Terminal volts and charge at the start of the step before.</summary>
    public Lanes LastV, LastCharge;

    /// <summary>One over the cells' kelvin, and what their temperature makes of their ohms.</summary>
    public Lanes PerCellK, Factor;

    /// <summary>Seconds since the start.</summary>
    public Lanes NowS;

    /// <summary>Present or next piece of work, and the heat it still takes.</summary>
    public Lanes WorkStartS, WorkEndS, WorkLeftJ;

    /// <summary>Lanes that still run.</summary>
    public Lanes Alive;

    /// <summary>Terminal volts and on-state amps where a lane was stopped for a look.</summary>
    public Lanes PackV, PackA;

    public Lanes High0, High1, High2, High3, LowV, HighA, LowAtWork;

    /// <summary>Lowest rise at work within the step before; infinite: no work in it. It counts once the lane has lived through that step.</summary>
    public Lanes StepLow;

    /// <summary>Sums: load and contact joule.</summary>
    public Lanes LoadJ, WorkJ;

    /// <summary>Lanes that need a look before they go on.</summary>
    public Lanes Alert;

    /// <summary>Lanes at their cut-off, and lanes whose path is gone: no steady point of the module, or a tripped protection.</summary>
    public Lanes Cut, Gone;

    /// <summary>Steps since the start.</summary>
    public long Step;

    /// <summary>Step within the control period.</summary>
    public int Phase;

    /// <summary>How much of the last step's change is drawn on to the middle of the step to come: half; nothing where there is no step before.</summary>
    public Lanes Onward, MinusOnward;
}
