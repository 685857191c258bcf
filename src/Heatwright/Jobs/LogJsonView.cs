using Heatwright.Logs;

namespace Heatwright.Jobs;

/// <summary>A log as machines get it; docs/formats/logs.md says what each field means.</summary>
/// <param name="Columns">Its columns.</param>
/// <param name="TimeColumn">Index of the column that tells the time, from 0; null: none.</param>
/// <param name="TimeBase">What the time counts from.</param>
/// <param name="RowsKept">How many rows were kept.</param>
/// <param name="RowsRefused">The first refused lines.</param>
/// <param name="RowsRefusedCount">How many lines were refused.</param>
/// <param name="Questions">What the file leaves open.</param>
/// <param name="Notes">What was noticed.</param>
public sealed record LogView(
    IReadOnlyList<LogColumnView> Columns,
    int? TimeColumn,
    string TimeBase,
    int RowsKept,
    IReadOnlyList<LogRowView> RowsRefused,
    int RowsRefusedCount,
    IReadOnlyList<LogQuestionView> Questions,
    IReadOnlyList<string> Notes)
{
    /// <summary>The view of a reading.</summary>
    public static LogView Of(LogReading reading) => new(
        [.. reading.Columns.Select(column => new LogColumnView(column.Name, Unit(column), Kind(column.Kind)))],
        reading.TimeColumn,
        reading.TimeBase.Word(),
        reading.RowsKept,
        [.. reading.RowsRefused.Select(row => new LogRowView(row.Line, row.Reason))],
        reading.RowsRefusedCount,
        [.. reading.Questions.Select(question => new LogQuestionView(question.Text, [.. question.Choices.Select(choice => choice.Text)]))],
        reading.Notes);

    /// <summary>The unit's symbol, the unit as written where it is not known, or null.</summary>
    public static string? Unit(LogColumn column) => column.Unit?.Symbol ?? (column.UnitText.Length > 0 ? column.UnitText : null);

    /// <summary>The word for a kind of column.</summary>
    public static string Kind(ColumnKind kind) => kind switch
    {
        ColumnKind.Time => "time",
        ColumnKind.Number => "number",
        ColumnKind.Flag => "flag",
        _ => "text",
    };
}

/// <summary>A column of a log.</summary>
/// <param name="Unit">Unit symbol, or the unit as it was written; null: none.</param>
/// <param name="Kind">time, number, flag or text.</param>
public sealed record LogColumnView(string Name, string? Unit, string Kind);

/// <summary>A refused line of a log.</summary>
/// <param name="Line">Its number in the file, from 1.</param>
/// <param name="Reason">Why it was refused.</param>
public sealed record LogRowView(int Line, string Reason);

/// <summary>A question of a log and its answers.</summary>
/// <param name="Choices">The answers that there are.</param>
public sealed record LogQuestionView(string Text, IReadOnlyList<string> Choices);
