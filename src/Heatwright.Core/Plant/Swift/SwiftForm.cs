namespace Heatwright.Plant;

/// <summary>Which parts of the kernel a form of tools needs. A form whose answers are constants lets the compiler leave the rest out.</summary>
internal interface ISwiftForm
{
    static abstract bool Lags(in SwiftShape shape);

    static abstract bool WorksAtSecond(in SwiftShape shape);

    static abstract bool StepsUp(in SwiftShape shape);

    static abstract bool Transfers(in SwiftShape shape);

    static abstract bool Warms(in SwiftShape shape);

    static abstract bool Quantised(in SwiftShape shape);

    static abstract bool FixedNominal(in SwiftShape shape);

    static abstract bool Tracks(in SwiftShape shape);

    static abstract bool Regulates(in SwiftShape shape);

    static abstract bool OnlyWhileOn(in SwiftShape shape);

    static abstract bool CurvedElsewhere(in SwiftShape shape);

    static abstract bool Convects(in SwiftShape shape);

    static abstract bool Drains(in SwiftShape shape);

    static abstract bool Works(in SwiftShape shape);

    static abstract bool HasCells(in SwiftShape shape);

    static abstract bool HasElectronics(in SwiftShape shape);

    static abstract bool Samples(in SwiftShape shape);
}

/// <summary>Whatever the shape says.</summary>
internal readonly struct AnyForm : ISwiftForm
{
    public static bool Lags(in SwiftShape shape) => shape.Lags;

    public static bool WorksAtSecond(in SwiftShape shape) => shape.WorksAtSecond;

    public static bool StepsUp(in SwiftShape shape) => shape.StepsUp;

    public static bool Transfers(in SwiftShape shape) => shape.Transfers;

    public static bool Warms(in SwiftShape shape) => shape.Warms;

    public static bool Quantised(in SwiftShape shape) => shape.Quantised;

    public static bool FixedNominal(in SwiftShape shape) => shape.FixedNominal;

    public static bool Tracks(in SwiftShape shape) => shape.Tracks;

    public static bool Regulates(in SwiftShape shape) => shape.Regulates;

    public static bool OnlyWhileOn(in SwiftShape shape) => shape.OnlyWhileOn;

    public static bool CurvedElsewhere(in SwiftShape shape) => shape.CurvedElsewhere;

    public static bool Convects(in SwiftShape shape) => shape.Convects;

    public static bool Drains(in SwiftShape shape) => shape.Drains;

    public static bool Works(in SwiftShape shape) => shape.Works;

    public static bool HasCells(in SwiftShape shape) => shape.CellAt >= 0;

    public static bool HasElectronics(in SwiftShape shape) => shape.ElectronicsAt >= 0;

    public static bool Samples(in SwiftShape shape) => shape.StepsPerSample > 1;
}

/// <summary>A pack straight on the heater, nothing drawn beside it, cells at the air's temperature, a working node that radiates behind a core, a PI that reads it in steps.</summary>
internal readonly struct PlainForm : ISwiftForm
{
    public static bool Lags(in SwiftShape shape) => false;

    public static bool WorksAtSecond(in SwiftShape shape) => true;

    public static bool StepsUp(in SwiftShape shape) => false;

    public static bool Transfers(in SwiftShape shape) => false;

    public static bool Warms(in SwiftShape shape) => false;

    public static bool Quantised(in SwiftShape shape) => true;

    public static bool FixedNominal(in SwiftShape shape) => true;

    public static bool Tracks(in SwiftShape shape) => false;

    public static bool Regulates(in SwiftShape shape) => true;

    public static bool OnlyWhileOn(in SwiftShape shape) => false;

    public static bool CurvedElsewhere(in SwiftShape shape) => false;

    public static bool Convects(in SwiftShape shape) => false;

    public static bool Drains(in SwiftShape shape) => false;

    public static bool Works(in SwiftShape shape) => true;

    public static bool HasCells(in SwiftShape shape) => false;

    public static bool HasElectronics(in SwiftShape shape) => false;

    public static bool Samples(in SwiftShape shape) => false;

    /// <summary>True where the constants are what the shape says.</summary>
    public static bool Serves(in SwiftShape s) => s is
    {
        WorksAtSecond: true, Quantised: true, FixedNominal: true, Regulates: true, Works: true, StepsPerSample: 1, CellAt: < 0, ElectronicsAt: < 0,
        Lags: false, StepsUp: false, Transfers: false, Warms: false, Tracks: false, OnlyWhileOn: false, CurvedElsewhere: false, Convects: false, Drains: false,
    };
}
