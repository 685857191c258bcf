namespace Heatwright.Logs;

/// <summary>What one time cell says, before the order of its date is settled.</summary>
internal struct TimeParts
{
    /// <summary>True with a date; <see cref="Year"/> is 0 while the order of A, B and C is open.</summary>
    public bool HasDate;
    public bool HasClock;
    public bool HasOffset;
    public bool HasHalf;
    public int A, B, C;
    public int YearDigits;
    public char DateMark;
    public int Year, Month, Day;
    /// <summary>2 for 1:20, 3 for 0:01:20.</summary>
    public int ClockFields;
    public int First, Second;
    public double Third;
    public bool Afternoon;
    public double OffsetS;
    public bool IsInterval;
    public double EndS;

    /// <summary>Seconds since 1970-01-01 or since midnight (or the start); NaN when the date is impossible in this order.</summary>
    public readonly double Seconds(DateOrder order, bool minutesAndSeconds)
    {
        double clock = ClockS(minutesAndSeconds) - OffsetS;
        if (!HasDate)
        {
            return clock;
        }

        (int year, int month, int day) = Date(order);
        return month is >= 1 and <= 12 && year is >= 1 and <= 9999 && day >= 1 && day <= DateTime.DaysInMonth(year, month)
            ? ((new DateOnly(year, month, day).DayNumber - Epoch) * 86400.0) + clock
            : double.NaN;
    }

    public readonly double ClockS(bool minutesAndSeconds)
    {
        if (ClockFields == 2)
        {
            return minutesAndSeconds ? (First * 60.0) + Second + Third : (First * 3600.0) + (Second * 60.0);
        }

        int hour = HasHalf ? (First % 12) + (Afternoon ? 12 : 0) : First;
        return (hour * 3600.0) + (Second * 60.0) + Third;
    }

    public readonly bool Possible(DateOrder order) => !double.IsNaN(Seconds(order, minutesAndSeconds: false));

    public readonly bool DateIsOpen => HasDate && Year == 0;

    private static readonly int Epoch = new DateOnly(1970, 1, 1).DayNumber;

    public readonly (int Year, int Month, int Day) Date(DateOrder order) => Year != 0 ? (Year, Month, Day) : order switch
    {
        DateOrder.DayMonthYear => (Century(C), B, A),
        DateOrder.MonthDayYear => (Century(C), A, B),
        _ => YearDigits == 4 ? (0, 0, 0) : (Century(A), B, C),
    };

    /// <summary>Two digits: 70 to 99 lie in the last century. Common practice, no source.</summary>
    private readonly int Century(int year) => YearDigits == 4 ? year : year + (year >= 70 ? 1900 : 2000);
}
