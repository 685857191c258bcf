namespace Heatwright.Logs;

/// <summary>How the logs of one instrument are read: remembered, it settles what a later file leaves open.</summary>
/// <remarks>What a file proves by itself stands above what is remembered.</remarks>
public sealed record LogMapping
{
    /// <summary>Separator and column names of the file it came from; labels are used only where it is the same.</summary>
    public string Signature { get; init; } = "";

    /// <summary>True when a lone comma between two bare numbers is the separator, false when it is the decimal mark, null when not known.</summary>
    public bool? CommaSeparates { get; init; }

    /// <summary>The decimal mark, '.' or ','; null when not known.</summary>
    public char? DecimalMark { get; init; }

    /// <summary>The order of day, month and year; null when not known.</summary>
    public DateOrder? DateOrder { get; init; }

    /// <summary>True when 1:20 is one minute and twenty seconds, false when it is twenty past one, null when not known.</summary>
    public bool? MinutesAndSeconds { get; init; }

    /// <summary>The unit in which a bare time column counts; null when not known.</summary>
    public string? TimeUnit { get; init; }

    /// <summary>Names and units that the maker gave to columns.</summary>
    public IReadOnlyList<ColumnLabel> Labels { get; init; } = [];

    /// <summary>Numbers that look like marks for 'no reading' and are real readings of this instrument.</summary>
    public IReadOnlyList<double> RealValues { get; init; } = [];
}

/// <summary>A column's name and unit as the maker wants them.</summary>
/// <param name="Column">Name of the column as it is read from the file.</param>
/// <param name="Name">Name to show.</param>
/// <param name="Unit">Unit, empty for none.</param>
public sealed record ColumnLabel(string Column, string Name, string Unit);

/// <summary>Order of the fields of a date.</summary>
public enum DateOrder
{
    /// <summary>31/12/2024.</summary>
    DayMonthYear,
    /// <summary>12/31/2024.</summary>
    MonthDayYear,
    /// <summary>24/12/31.</summary>
    YearMonthDay,
}

/// <summary>Something the file could not settle.</summary>
/// <param name="Text">The question, with an example from the file.</param>
/// <param name="Choices">The possible answers.</param>
public sealed record LogQuestion(string Text, IReadOnlyList<LogChoice> Choices);

/// <summary>One answer to a question.</summary>
/// <param name="Text">The answer, with what the example would then mean.</param>
/// <param name="Mapping">Read the file again with this.</param>
public sealed record LogChoice(string Text, LogMapping Mapping);
