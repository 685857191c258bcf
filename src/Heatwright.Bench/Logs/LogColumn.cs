using Heatwright.Quantities;

namespace Heatwright.Logs;

/// <summary>One column of a log.</summary>
public sealed record LogColumn
{
    /// <summary>Name from the file, without its unit; made different from its neighbours where the file repeats or omits it.</summary>
    public required string Name { get; init; }

    /// <summary>Unit as the file writes it; empty where it writes none.</summary>
    public required string UnitText { get; init; }

    /// <summary>The unit of <see cref="Values"/>, or null where it is unknown.</summary>
    public required Unit? Unit { get; init; }

    /// <summary>What the column holds.</summary>
    public required ColumnKind Kind { get; init; }

    /// <summary>One value a row; NaN where there is none, where the input was over range, and in columns of words.</summary>
    public required double[] Values { get; init; }

    /// <summary>True in the rows where the instrument said over range; empty when that never happened.</summary>
    public bool[] Overload { get; init; } = [];

    /// <summary>One text a row for columns of words; empty for columns of numbers.</summary>
    public IReadOnlyList<string> Texts { get; init; } = [];

    /// <summary>Numbers that stood for 'no reading', with the evidence.</summary>
    public IReadOnlyList<MissingMark> Missing { get; init; } = [];
}

/// <summary>What a column of a log holds.</summary>
public enum ColumnKind
{
    /// <summary>Instants or elapsed time.</summary>
    Time,
    /// <summary>Numbers with or without a unit.</summary>
    Number,
    /// <summary>Free words.</summary>
    Text,
    /// <summary>A few words or single digits that come back: quality flags, states.</summary>
    Flag,
}

/// <summary>A number that the instrument writes where it has no reading.</summary>
/// <param name="Value">The number, for example -200.</param>
/// <param name="Count">How often it stood in the column.</param>
/// <param name="Why">The evidence.</param>
public sealed record MissingMark(double Value, int Count, string Why);

/// <summary>A line that was left out.</summary>
/// <param name="Line">Number of the line in the file, from 1.</param>
/// <param name="Reason">Why.</param>
public sealed record RefusedRow(int Line, string Reason);
