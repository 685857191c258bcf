using Heatwright.Quantities;

namespace Heatwright.Logs;

/// <summary>A measurement log as columns, with everything that was decided, left out or asked on the way.</summary>
/// <remarks>The bytes themselves stay with the caller: they are the evidence, this is only what was read from them.</remarks>
public sealed record LogReading
{
    /// <summary>The columns, in the order of the file; a date and a clock column have become one.</summary>
    public required IReadOnlyList<LogColumn> Columns { get; init; }

    /// <summary>Index of the time column in <see cref="Columns"/>, or null.</summary>
    public required int? TimeColumn { get; init; }

    /// <summary>What the time column counts.</summary>
    public required TimeBase TimeBase { get; init; }

    /// <summary>Time of each row in seconds on its time base; empty when the log has no time or its unit is still asked.</summary>
    /// <remarks>Epoch, date-time and interval: seconds since 1970-01-01 (UTC where an offset is known). Clock time: since midnight of the first day.</remarks>
    public required double[] TimeS { get; init; }

    /// <summary>Seconds from one row to the next, or that one row covers, where the log itself states it; NaN otherwise.</summary>
    public required double IntervalS { get; init; }

    /// <summary>How many rows of readings were kept.</summary>
    public required int RowsKept { get; init; }

    /// <summary>Lines inside the readings that were left out, each with its reason; the first thousand of them.</summary>
    public required IReadOnlyList<RefusedRow> RowsRefused { get; init; }

    /// <summary>How many lines were left out in all.</summary>
    public required int RowsRefusedCount { get; init; }

    /// <summary>At most one question that the file itself could not settle; what depends on it is NaN until it is answered.</summary>
    public required IReadOnlyList<LogQuestion> Questions { get; init; }

    /// <summary>What was decided and why: marks for missing readings, unwrapped midnights, words between numbers.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>Free lines before and between the readings; the first two hundred of them.</summary>
    public required IReadOnlyList<string> Preamble { get; init; }

    /// <summary>How the file was read; kept per instrument, it answers the same question next time.</summary>
    public required LogMapping Mapping { get; init; }

    /// <summary>How the bytes were turned into text.</summary>
    public required string Encoding { get; init; }

    /// <summary>The columns as a clean file: comma, decimal point, units in the header, one row a reading.</summary>
    public string ToCsv() => LogCsv.Write(this);
}
