namespace Heatwright.Logs;

/// <summary>What the time column of a log counts.</summary>
public enum TimeBase
{
    /// <summary>No time in the log.</summary>
    None,
    /// <summary>Time since the start of the log.</summary>
    Elapsed,
    /// <summary>Seconds (or thousandths) since 1970-01-01 UTC.</summary>
    Epoch,
    /// <summary>Date and time with their distance from UTC.</summary>
    DateTimeWithOffset,
    /// <summary>Date and time by the clock of some unknown zone.</summary>
    DateTimeWithoutOffset,
    /// <summary>Time of day without a date.</summary>
    ClockTime,
    /// <summary>Spans, each with start and end.</summary>
    Interval,
    /// <summary>Counted samples.</summary>
    SampleIndex,
}

/// <summary>The words for time bases.</summary>
public static class TimeBases
{
    /// <summary>The word that screens and files show.</summary>
    public static string Word(this TimeBase timeBase) => timeBase switch
    {
        TimeBase.Elapsed => "elapsed s",
        TimeBase.Epoch => "epoch",
        TimeBase.DateTimeWithOffset => "date-time with offset",
        TimeBase.DateTimeWithoutOffset => "date-time without offset",
        TimeBase.ClockTime => "clock time",
        TimeBase.Interval => "interval",
        TimeBase.SampleIndex => "sample index",
        _ => "none",
    };

    /// <summary>True where seconds are counted from 1970-01-01.</summary>
    internal static bool IsCalendar(this TimeBase timeBase) => timeBase is TimeBase.Epoch or TimeBase.DateTimeWithOffset
        or TimeBase.DateTimeWithoutOffset or TimeBase.Interval;
}
