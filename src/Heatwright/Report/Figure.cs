namespace Heatwright.Report;

/// <summary>An axis of a picture.</summary>
/// <param name="Name">What it shows, written out.</param>
/// <param name="Unit">Unit symbol; empty: a count or a share.</param>
public sealed record FigureAxis(string Name, string Unit)
{
    /// <summary>Name and unit as they stand at the axis.</summary>
    public string Title => Unit.Length == 0 ? Name : $"{Name}, {Unit}";
}

/// <summary>How the points of a curve are shown.</summary>
public enum FigureForm
{
    /// <summary>A line with the slot's dash and a few of its markers.</summary>
    Line,
    /// <summary>Readings: filled discs in ink.</summary>
    Readings,
    /// <summary>Readings that were left out: grey crosses.</summary>
    LeftOut,
}

/// <summary>A curve or a row of readings.</summary>
/// <param name="Name">Said when a point is pressed.</param>
/// <param name="X">Places; as many as <paramref name="Y"/>.</param>
/// <param name="Y">Values; not finite: the line breaks.</param>
/// <param name="Slot">1 to 6: colour, dash and marker of the house.</param>
public sealed record FigureCurve(string Name, IReadOnlyList<double> X, IReadOnlyList<double> Y, int Slot)
{
    /// <summary>Places and values belong together.</summary>
    public IReadOnlyList<double> Y { get; } = Y.Count == X.Count ? Y : throw new ArgumentException("A curve has as many values as places.", nameof(Y));

    /// <summary>1 to 6.</summary>
    public int Slot { get; } = Slot is >= 1 and <= 6 ? Slot : throw new ArgumentOutOfRangeException(nameof(Slot), Slot, "The house has six colours.");

    /// <summary>Label beside the line's end; empty: none.</summary>
    public string EndLabel { get; init; } = "";

    /// <summary>Line or readings.</summary>
    public FigureForm Form { get; init; }
}

/// <summary>The range between two curves.</summary>
public sealed record FigureBand(IReadOnlyList<double> X, IReadOnlyList<double> Low, IReadOnlyList<double> High, int Slot);

/// <summary>An ink line across the picture where something is judged.</summary>
/// <param name="Label">What the line is.</param>
/// <param name="At">Where it stands on the y axis.</param>
public sealed record FigureLimit(string Label, double At);

/// <summary>What a picture shows, without saying who draws it.</summary>
/// <param name="Title">Heading.</param>
/// <param name="Alt">The picture in a sentence, for those who do not see it.</param>
/// <param name="Across">Axis across.</param>
/// <param name="Up">Axis up.</param>
/// <param name="Curves">At most six lines.</param>
public sealed record Figure(string Title, string Alt, FigureAxis Across, FigureAxis Up, IReadOnlyList<FigureCurve> Curves)
{
    /// <summary>Most points a curve is drawn with: more than a screen can show beside each other.</summary>
    public const int MostPoints = 1500;

    /// <summary>Bands under the curves.</summary>
    public IReadOnlyList<FigureBand> Bands { get; init; } = [];

    /// <summary>Limits.</summary>
    public IReadOnlyList<FigureLimit> Limits { get; init; } = [];

    /// <summary>Height on screen, px.</summary>
    public int HeightPx { get; init; } = 300;
}
