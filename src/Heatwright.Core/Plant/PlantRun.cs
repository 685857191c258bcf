namespace Heatwright.Plant;

/// <summary>Why a run ended.</summary>
public enum StopReason
{
    /// <summary>The time asked for is over.</summary>
    TimeOver,
    /// <summary>The on-state volts of the pack reached the cut-off.</summary>
    CutOff,
    /// <summary>The charge is used up.</summary>
    Empty,
    /// <summary>The current passed what the protection lets through.</summary>
    Tripped,
    /// <summary>The module's input fell to its lock-out: from here on its mean power is unknown.</summary>
    LockedOut,
    /// <summary>The source could not carry the load any more: no steady point.</summary>
    Collapsed,
    /// <summary>One cell reached its own cut-off.</summary>
    CellCutOff,
    /// <summary>The pack sagged under what the controller needs: it resets, starts and resets again, and the mean power is unknown.</summary>
    BrownOut,
    /// <summary>The charger's current fell to its end.</summary>
    Charged,
    /// <summary>One cell reached the most it may have while charging.</summary>
    CellFull,
    /// <summary>All the work is done.</summary>
    WorkDone,
    /// <summary>The recorded drive is over.</summary>
    RecordOver,
    /// <summary>The lamp gives less than a tenth of its light, or its driver has switched itself off.</summary>
    LightGone,
}

/// <summary>What an event was.</summary>
public enum Happening
{
    /// <summary>The working node first reached the target.</summary>
    TargetReached,
    /// <summary>The path changed its region.</summary>
    RegionChanged,
    /// <summary>The controller first asked for more than there is.</summary>
    Saturated,
    /// <summary>The controller has again what it asks for.</summary>
    Unsaturated,
    /// <summary>An on-off controller switched on.</summary>
    SwitchedOn,
    /// <summary>An on-off controller switched off.</summary>
    SwitchedOff,
    /// <summary>A block of the duty begins.</summary>
    BlockBegins,
    /// <summary>A piece of work begins.</summary>
    WorkStarts,
    /// <summary>Its time is over.</summary>
    WorkEnds,
    /// <summary>A temperature that was asked for was crossed.</summary>
    Crossed,
    /// <summary>A piece of work was not done in its time.</summary>
    WorkMissed,
    /// <summary>The lamp's driver cannot hold the current any more.</summary>
    LightFalls,
    /// <summary>The run ended.</summary>
    Stopped,
}

/// <summary>Something that happened, when, and in which region.</summary>
public readonly record struct PlantEvent(Happening What, double AtS, Region Region)
{
    /// <summary>Name of what was crossed; else empty.</summary>
    public string Name { get; init; } = "";
}

/// <summary>Where the energy went, joule. Heater = light + stored + air + work + shares of nodes below; see the balance test.</summary>
public sealed record Energies
{
    /// <summary>Into the load.</summary>
    public double LoadJ { get; init; }

    /// <summary>Left the load as light; 0 for anything but a lamp.</summary>
    public double LightJ { get; init; }

    /// <summary>Out of the pack's terminals.</summary>
    public double TerminalJ { get; init; }

    /// <summary>Behind the instant ohms of the cells: what their slow ohms lose is gone from it already.</summary>
    public double BehindOhmsJ { get; init; }

    /// <summary>Lost in cells, all ohms.</summary>
    public double CellLossJ { get; init; }

    /// <summary>Out of the cells in all: what leaves at the terminals, and what is lost within.</summary>
    public double OutOfCellsJ => TerminalJ + CellLossJ;

    /// <summary>Lost in loop ohms: links, contacts, leads, switch.</summary>
    public double LoopLossJ { get; init; }

    /// <summary>Lost in the power path.</summary>
    public double PathLossJ { get; init; }

    /// <summary>Taken by the drains beside the path: controller, indicators.</summary>
    public double DrainJ { get; init; }

    /// <summary>Taken by the work.</summary>
    public double WorkJ { get; init; }

    /// <summary>Given to the air by all nodes.</summary>
    public double AirJ { get; init; }

    /// <summary>Stored in the nodes at the end, against ambient.</summary>
    public double StoredJ { get; init; }

    /// <summary>Charge out of the pack, coulomb.</summary>
    public double ChargeC { get; init; }
}

/// <summary>What one run of a tool did.</summary>
/// <param name="RunTimeS">When it ended, s.</param>
/// <param name="Stop">Why.</param>
/// <param name="Events">What happened, in order.</param>
/// <param name="Energies">Where the energy went.</param>
/// <param name="Trace">Values at the instants asked for.</param>
public sealed record PlantRun(double RunTimeS, StopReason Stop, IReadOnlyList<PlantEvent> Events, Energies Energies, Trace Trace)
{
    /// <summary>When the working node first reached the target; NaN: never.</summary>
    public double TargetS { get; init; } = double.NaN;

    /// <summary>How long a lamp gave its full light, s; NaN: the load is no lamp.</summary>
    public double FullLightS { get; init; } = double.NaN;

    /// <summary>Pieces of work done before the first that was missed.</summary>
    public int WorkDoneInARow { get; init; }

    /// <summary>All pieces of work that were done.</summary>
    public int WorkDone { get; init; }

    /// <summary>Longest way back to the target after a piece of work, s; NaN: not timed, or there was no piece; infinite: it never came back.</summary>
    public double RecoveryS { get; init; } = double.NaN;

    /// <summary>Lowest temperature of the working node in each piece of work, K.</summary>
    public IReadOnlyList<double> LowestAtWorkK { get; init; } = [];

    /// <summary>Highest temperature of each node, K.</summary>
    public IReadOnlyList<double> HighestK { get; init; } = [];

    /// <summary>Lowest on-state pack volts.</summary>
    public double LowestV { get; init; }

    /// <summary>Highest on-state pack current, A.</summary>
    public double HighestA { get; init; }

    /// <summary>Charge left at the end.</summary>
    public double ChargeLeft { get; init; }

    /// <summary>Region at the end.</summary>
    public Region LastRegion { get; init; }
}
