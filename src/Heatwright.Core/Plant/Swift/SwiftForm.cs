namespace Heatwright.Plant;

/// <summary>Which parts of the kernel a form of tools needs. A form whose answers are constants lets the compiler leave the rest out.</summary>
internal interface ISwiftForm
{
    static abstract bool Lags(in SwiftShape shape);

    static abstract bool WorksAtSecond(in SwiftShape shape);

    static abstract bool StepsUp(in SwiftShape shape);

    static abstract bool Transfers(in SwiftShape shape);

    /// <summary>The long pair holds amps, not volts.</summary>
    static abstract bool HoldsAmps(in SwiftShape shape);

    /// <summary>The cells' temperature scales their ohms.</summary>
    static abstract bool Scales(in SwiftShape shape);

    /// <summary>Something asks for the ohms of the RC pairs themselves.</summary>
    static abstract bool UsesOhms(in SwiftShape shape);

    static abstract bool Quantised(in SwiftShape shape);

    static abstract bool FixedNominal(in SwiftShape shape);

    static abstract bool Tracks(in SwiftShape shape);

    static abstract bool Regulates(in SwiftShape shape);

    static abstract bool OnlyWhileOn(in SwiftShape shape);

    static abstract bool CurvedElsewhere(in SwiftShape shape);

    static abstract bool Convects(in SwiftShape shape);

    static abstract bool TouchesOthers(in SwiftShape shape);

    static abstract bool Drains(in SwiftShape shape);

    /// <summary>A piece of work takes a set heat.</summary>
    static abstract bool Needs(in SwiftShape shape);

    static abstract int CellAt(in SwiftShape shape);

    static abstract int ElectronicsAt(in SwiftShape shape);

    static abstract bool FourNodes(in SwiftShape shape);

    static abstract bool Samples(in SwiftShape shape);
}

/// <summary>Whether any lane may be at its work in the steps to come. While all rest, nothing of it needs to be reckoned.</summary>
internal interface ISwiftWork
{
    static abstract bool AtHand { get; }
}

internal readonly struct AtHand : ISwiftWork
{
    static bool ISwiftWork.AtHand => true;
}

internal readonly struct AtRest : ISwiftWork
{
    static bool ISwiftWork.AtHand => false;
}

/// <summary>Whatever the shape says.</summary>
internal readonly struct AnyForm : ISwiftForm
{
    public static bool Lags(in SwiftShape shape) => shape.Lags;

    public static bool WorksAtSecond(in SwiftShape shape) => shape.WorksAtSecond;

    public static bool StepsUp(in SwiftShape shape) => shape.StepsUp;

    public static bool Transfers(in SwiftShape shape) => shape.Transfers;

    public static bool HoldsAmps(in SwiftShape shape) => shape.HoldsAmps;

    public static bool Scales(in SwiftShape shape) => shape.Warms;

    public static bool UsesOhms(in SwiftShape shape) => shape.UsesOhms;

    public static bool Quantised(in SwiftShape shape) => shape.Quantised;

    public static bool FixedNominal(in SwiftShape shape) => shape.FixedNominal;

    public static bool Tracks(in SwiftShape shape) => shape.Tracks;

    public static bool Regulates(in SwiftShape shape) => shape.Regulates;

    public static bool OnlyWhileOn(in SwiftShape shape) => shape.OnlyWhileOn;

    public static bool CurvedElsewhere(in SwiftShape shape) => shape.CurvedElsewhere;

    public static bool Convects(in SwiftShape shape) => shape.Convects;

    public static bool TouchesOthers(in SwiftShape shape) => shape.TouchesOthers;

    public static bool Drains(in SwiftShape shape) => shape.Drains;

    public static bool Needs(in SwiftShape shape) => shape.Needs;

    public static int CellAt(in SwiftShape shape) => shape.CellAt;

    public static int ElectronicsAt(in SwiftShape shape) => shape.ElectronicsAt;

    public static bool FourNodes(in SwiftShape shape) => shape.FourNodes;

    public static bool Samples(in SwiftShape shape) => shape.StepsPerSample > 1;
}

/// <summary>A pack straight on the heater, nothing drawn beside it, cells at the air's temperature, a working node that radiates behind a core, a PI that reads it in steps.</summary>
internal readonly struct PlainForm : ISwiftForm
{
    public static bool Lags(in SwiftShape shape) => false;

    public static bool WorksAtSecond(in SwiftShape shape) => true;

    public static bool StepsUp(in SwiftShape shape) => false;

    public static bool Transfers(in SwiftShape shape) => false;

    public static bool HoldsAmps(in SwiftShape shape) => false;

    public static bool Scales(in SwiftShape shape) => false;

    public static bool UsesOhms(in SwiftShape shape) => false;

    public static bool Quantised(in SwiftShape shape) => true;

    public static bool FixedNominal(in SwiftShape shape) => true;

    public static bool Tracks(in SwiftShape shape) => false;

    public static bool Regulates(in SwiftShape shape) => true;

    public static bool OnlyWhileOn(in SwiftShape shape) => false;

    public static bool CurvedElsewhere(in SwiftShape shape) => false;

    public static bool Convects(in SwiftShape shape) => false;

    public static bool TouchesOthers(in SwiftShape shape) => false;

    public static bool Drains(in SwiftShape shape) => false;

    public static bool Needs(in SwiftShape shape) => false;

    public static int CellAt(in SwiftShape shape) => -1;

    public static int ElectronicsAt(in SwiftShape shape) => -1;

    public static bool FourNodes(in SwiftShape shape) => true;

    public static bool Samples(in SwiftShape shape) => false;

    /// <summary>True where the constants are what the shape says.</summary>
    public static bool Serves(in SwiftShape s) => s is
    {
        WorksAtSecond: true, Quantised: true, FixedNominal: true, Regulates: true, Works: true, FourNodes: true, StepsPerSample: 1, CellAt: < 0, ElectronicsAt: < 0,
        Lags: false, StepsUp: false, Transfers: false, HoldsAmps: false, Warms: false, Tracks: false, OnlyWhileOn: false, CurvedElsewhere: false, Convects: false, TouchesOthers: false, Drains: false, Needs: false,
    };
}

/// <summary>A tool as this program builds it from parts: a working end that holds heater and sensor, a grip that holds the electronics, cells; read and drained all the time, looked after every step.</summary>
/// <typeparam name="TPath">Straight or stepped up.</typeparam>
internal readonly struct BuiltForm<TPath> : ISwiftForm
    where TPath : struct, ISwiftPath
{
    public static bool Lags(in SwiftShape shape) => shape.Lags;

    public static bool WorksAtSecond(in SwiftShape shape) => false;

    public static bool StepsUp(in SwiftShape shape) => TPath.StepsUp;

    public static bool Transfers(in SwiftShape shape) => shape.Transfers;

    public static bool HoldsAmps(in SwiftShape shape) => shape.HoldsAmps;

    public static bool Scales(in SwiftShape shape) => shape.Warms;

    public static bool UsesOhms(in SwiftShape shape) => true;

    public static bool Quantised(in SwiftShape shape) => false;

    public static bool FixedNominal(in SwiftShape shape) => false;

    public static bool Tracks(in SwiftShape shape) => false;

    public static bool Regulates(in SwiftShape shape) => true;

    public static bool OnlyWhileOn(in SwiftShape shape) => true;

    public static bool CurvedElsewhere(in SwiftShape shape) => false;

    public static bool Convects(in SwiftShape shape) => false;

    public static bool TouchesOthers(in SwiftShape shape) => false;

    public static bool Drains(in SwiftShape shape) => true;

    public static bool Needs(in SwiftShape shape) => true;

    public static int CellAt(in SwiftShape shape) => 2;

    public static int ElectronicsAt(in SwiftShape shape) => 1;

    public static bool FourNodes(in SwiftShape shape) => false;

    public static bool Samples(in SwiftShape shape) => shape.StepsPerSample > 1;

    /// <summary>True where the constants are what the shape says.</summary>
    public static bool Serves(in SwiftShape s) => s is
    {
        CellAt: 2, ElectronicsAt: 1, Regulates: true, OnlyWhileOn: true, Drains: true,
        WorksAtSecond: false, Quantised: false, FixedNominal: false, Tracks: false, CurvedElsewhere: false, Convects: false, TouchesOthers: false, FourNodes: false,
    } && s.StepsUp == TPath.StepsUp;
}

internal interface ISwiftPath
{
    static abstract bool StepsUp { get; }
}

internal readonly struct Straight : ISwiftPath
{
    public static bool StepsUp => false;
}

internal readonly struct SteppedUp : ISwiftPath
{
    public static bool StepsUp => true;
}
