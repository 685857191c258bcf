using Heatwright.Quantities;

namespace Heatwright.Logs;

internal enum ColumnRole
{
    Number,
    Time,
    Words,
    /// <summary>Holds the unit of the column before it.</summary>
    UnitOfLeft,
    /// <summary>Empty behind a trailing separator.</summary>
    Nothing,
}

/// <summary>How one column of the file is read.</summary>
internal sealed class ColumnPlan
{
    public required string Name { get; set; }

    public string UnitText { get; set; } = "";

    public Unit? Unit { get; set; }

    public required ColumnLook Look { get; init; }

    public ColumnRole Role { get; set; }

    /// <summary>Decimal mark, or '\0' while it is asked.</summary>
    public char Mark { get; set; } = '.';

    public bool DotsAreClock { get; set; }

    /// <summary>Null while it is asked.</summary>
    public DateOrder? Order { get; set; }

    /// <summary>Null while it is asked.</summary>
    public bool? MinutesAndSeconds { get; set; }

    public DateOrder? OrderByName { get; init; }

    public bool? MinutesByName { get; init; }

    public bool Named { get; init; }

    /// <summary>The next column holds this one's unit.</summary>
    public bool UnitBeside { get; set; }
}

/// <summary>How the whole file is read.</summary>
internal sealed class LogPlan
{
    public required byte Separator { get; init; }

    public required IReadOnlyList<ColumnPlan> Columns { get; init; }

    /// <summary>Where the first row of readings starts, and how many lines lie before it.</summary>
    public required int FirstStart { get; init; }

    public required int LinesBefore { get; init; }

    public required List<string> Preamble { get; init; }

    /// <summary>The header line, to know it again when it comes back.</summary>
    public required string HeaderLine { get; init; }

    /// <summary>Ends (or starts) of the columns of a fixed-width file, to place the cells of a row with gaps; null for other files.</summary>
    public FixedColumns? Fixed { get; init; }

    /// <summary>The first column of plain numbers that is named for time; a word there is the label of some other line.</summary>
    public int TimeColumn => Columns.ToList().FindIndex(column => column.Role == ColumnRole.Number && HeaderName.IsTime(column.Name));

    public bool HasHeader => HeaderLine.Length > 0;

    public string Signature => $"{(Separator == 0 ? '-' : (char)Separator)} {string.Join('\u001F', Columns.Select(column => column.Name))}";
}
