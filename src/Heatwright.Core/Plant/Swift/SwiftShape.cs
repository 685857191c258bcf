namespace Heatwright.Plant;

/// <summary>What a swift run must do; the same for all lanes.</summary>
internal readonly record struct SwiftShape
{
    /// <summary>A sensor with a lag of its own; else it reads the working node.</summary>
    public bool Lags { get; init; }

    /// <summary>The working node is the second, not the first, which takes the heater's power.</summary>
    public bool WorksAtSecond { get; init; }

    /// <summary>Place of the cells' node; −1: none.</summary>
    public int CellAt { get; init; }

    /// <summary>Place of the node that takes the losses of loop and path; −1: none.</summary>
    public int ElectronicsAt { get; init; }

    public bool FourNodes { get; init; }

    public bool StepsUp { get; init; }

    public bool Transfers { get; init; }

    /// <summary>The long pair holds amps, not volts.</summary>
    public bool HoldsAmps { get; init; }

    public bool Warms { get; init; }

    /// <summary>Something asks for the ohms of the RC pairs themselves.</summary>
    public bool UsesOhms { get; init; }

    public bool Quantised { get; init; }

    public bool FixedNominal { get; init; }

    public bool Tracks { get; init; }

    public bool Regulates { get; init; }

    public bool OnlyWhileOn { get; init; }

    /// <summary>The working node, where it is not the heater's, is joined to others than that; where it is, to others than the second.</summary>
    public bool TouchesOthers { get; init; }

    /// <summary>Any curved loss at a node other than the working one.</summary>
    public bool CurvedElsewhere { get; init; }

    public bool Convects { get; init; }

    public bool Drains { get; init; }

    public bool Works { get; init; }

    /// <summary>A piece of work takes a set heat.</summary>
    public bool Needs { get; init; }

    /// <summary>Steps in a control period.</summary>
    public int StepsPerSample { get; init; }
}
