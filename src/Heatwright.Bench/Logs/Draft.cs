using Heatwright.Quantities;

namespace Heatwright.Logs;

/// <summary>A column on its way from the file to the reading.</summary>
internal sealed class Draft
{
    public required string Name { get; set; }

    public string UnitText { get; set; } = "";

    public Unit? Unit { get; set; }

    public ColumnKind Kind { get; set; }

    public double[] Values { get; set; } = [];

    public bool[] Overload { get; init; } = [];

    public string[] Texts { get; init; } = [];

    public double[] Ends { get; init; } = [];

    /// <summary>What the cells showed; null for a column that was put together.</summary>
    public ColumnLook? Look { get; init; }

    public ColumnPlan? Plan { get; init; }

    public List<MissingMark> Missing { get; } = [];

    /// <summary>Read from time cells, not from plain numbers.</summary>
    public bool IsTimeCells { get; set; }

    public bool HasDate { get; set; }

    public bool HasClock { get; set; }

    public LogColumn Done() => new()
    {
        Name = Name,
        UnitText = UnitText,
        Unit = Unit,
        Kind = Kind,
        Values = Values,
        Overload = Overload,
        Texts = Texts,
        Missing = Missing,
    };
}
