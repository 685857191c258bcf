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
    /// <summary>All the work is done.</summary>
    WorkDone,
    /// <summary>The recorded drive is over.</summary>
    RecordOver,
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
    /// <summary>A piece of work begins.</summary>
    WorkStarts,
    /// <summary>Its time is over.</summary>
    WorkEnds,
    /// <summary>A temperature that was asked for was crossed.</summary>
    Crossed,
    /// <summary>A piece of work was not done in its time.</summary>
    WorkMissed,
    /// <summary>The run ended.</summary>
    Stopped,
}

/// <summary>Something that happened, when, and in which region.</summary>
public readonly record struct PlantEvent(Happening What, double AtS, Region Region)
{
    /// <summary>Name of what was crossed; else empty.</summary>
    public string Name { get; init; } = "";
}

/// <summary>Where the energy went, joule. Heater = stored + air + work + shares of nodes below; see the balance test.</summary>
public sealed record Energies
{
    /// <summary>Into the load.</summary>
    public double LoadJ { get; init; }

    /// <summary>Out of the pack's terminals.</summary>
    public double TerminalJ { get; init; }

    /// <summary>Behind the instant ohms of the cells.</summary>
    public double BehindOhmsJ { get; init; }

    /// <summary>Lost in cells, all ohms.</summary>
    public double CellLossJ { get; init; }

    /// <summary>Lost in loop ohms: links, contacts, leads, switch.</summary>
    public double LoopLossJ { get; init; }

    /// <summary>Lost in the power path.</summary>
    public double PathLossJ { get; init; }

    /// <summary>Taken by the work.</summary>
    public double WorkJ { get; init; }

    /// <summary>Given to the air by all nodes.</summary>
    public double AirJ { get; init; }

    /// <summary>Stored in the nodes at the end, against ambient.</summary>
    public double StoredJ { get; init; }

    /// <summary>Charge out of the pack, coulomb.</summary>
    public double ChargeC { get; init; }
}

/// <summary>Values at the instants asked for; NaN after the end.</summary>
public sealed class Trace
{
    internal Trace(double[] timesS, int nodes)
    {
        TimesS = timesS;
        ChargeLeft = Column();
        ShortV = Column();
        LongV = Column();
        IntegralW = Column();
        TerminalV = Column();
        PackA = Column();
        Duty = Column();
        LoadW = Column();
        SensorK = Column();
        NodesK = [.. Enumerable.Range(0, nodes).Select(_ => Column())];
        Regions = new Region[timesS.Length];

        double[] Column()
        {
            double[] column = new double[timesS.Length];
            Array.Fill(column, double.NaN);
            return column;
        }
    }

    /// <summary>Instants, s.</summary>
    public double[] TimesS { get; }

    /// <summary>Charge left, 0 to 1.</summary>
    public double[] ChargeLeft { get; }

    /// <summary>Volts over the short RC pair of one cell.</summary>
    public double[] ShortV { get; }

    /// <summary>Volts over the long RC pair of one cell.</summary>
    public double[] LongV { get; }

    /// <summary>Integral of the controller, W.</summary>
    public double[] IntegralW { get; }

    /// <summary>On-state pack volts at the cells.</summary>
    public double[] TerminalV { get; }

    /// <summary>Mean pack current, A.</summary>
    public double[] PackA { get; }

    /// <summary>Duty.</summary>
    public double[] Duty { get; }

    /// <summary>Mean power into the load, W.</summary>
    public double[] LoadW { get; }

    /// <summary>What the sensor shows, K.</summary>
    public double[] SensorK { get; }

    /// <summary>Temperature of each node, K.</summary>
    public double[][] NodesK { get; }

    /// <summary>Region of the path.</summary>
    public Region[] Regions { get; }

    /// <summary>How many instants were reached before the end.</summary>
    public int Count { get; internal set; }
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

    /// <summary>Pieces of work done before the first that was missed.</summary>
    public int WorkDoneInARow { get; init; }

    /// <summary>All pieces of work that were done.</summary>
    public int WorkDone { get; init; }

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
