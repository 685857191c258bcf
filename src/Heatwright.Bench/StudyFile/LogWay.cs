using Heatwright.Logs;

namespace Heatwright.StudyFile;

/// <summary>How the logs of one instrument are read, remembered with the study.</summary>
/// <param name="Instrument">Id of the instrument.</param>
/// <param name="Signature">Separator and names of the columns of the file it came from.</param>
public sealed record LogWay(string Instrument, string Signature)
{
    /// <summary>True: a lone comma between two bare numbers separates them; false: it is the decimal mark.</summary>
    public bool? CommaSeparates { get; init; }

    /// <summary>'comma' or 'point'; null: not known.</summary>
    public string? DecimalMark { get; init; }

    /// <summary>Order of day, month and year.</summary>
    public DateOrder? DateOrder { get; init; }

    /// <summary>True: 1:20 is a minute and twenty seconds.</summary>
    public bool? MinutesAndSeconds { get; init; }

    /// <summary>Unit of a bare time column.</summary>
    public string? TimeUnit { get; init; }

    /// <summary>Names and units that the maker gave to columns; the name is the run's column it fills.</summary>
    public IReadOnlyList<ColumnLabel> Labels { get; init; } = [];

    /// <summary>Numbers that look like marks for 'no reading' and are real readings of this instrument.</summary>
    public IReadOnlyList<double> RealValues { get; init; } = [];

    /// <summary>What is remembered of a reading.</summary>
    public static LogWay Of(string instrument, LogMapping mapping, IReadOnlyList<ColumnLabel> labels) => new(instrument, mapping.Signature)
    {
        CommaSeparates = mapping.CommaSeparates,
        DecimalMark = mapping.DecimalMark switch { ',' => "comma", '.' => "point", _ => null },
        DateOrder = mapping.DateOrder,
        MinutesAndSeconds = mapping.MinutesAndSeconds,
        TimeUnit = mapping.TimeUnit,
        Labels = labels,
        RealValues = mapping.RealValues,
    };

    /// <summary>As the reader of logs takes it. The labels are the run's columns and stay out of it.</summary>
    public LogMapping Mapping() => new()
    {
        Signature = Signature,
        CommaSeparates = CommaSeparates,
        DecimalMark = DecimalMark switch { "comma" => ',', "point" => '.', _ => null },
        DateOrder = DateOrder,
        MinutesAndSeconds = MinutesAndSeconds,
        TimeUnit = TimeUnit,
        RealValues = RealValues,
    };
}
