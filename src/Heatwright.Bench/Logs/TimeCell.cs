namespace Heatwright.Logs;

/// <summary>Reads the time forms that logs use: dates in any order, clocks of 12 and 24 hours, ISO 8601 instants and intervals.</summary>
internal static class TimeCell
{
    private static readonly string[] Months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

    /// <summary>Reads the whole cell as a time, or nothing.</summary>
    /// <param name="dotsAreClock">18.00.00 is six o'clock in the evening; otherwise it is tried as a date.</param>
    public static bool TryRead(ReadOnlySpan<char> cell, bool dotsAreClock, out TimeParts parts)
    {
        parts = default;
        cell = cell.Trim();
        if (cell.Length is < 4 or > 80 || cell.IndexOfAnyInRange('0', '9') < 0)
        {
            return false;
        }

        return TryInterval(cell, ref parts) || TryInstant(cell, dotsAreClock, ref parts);
    }

    /// <summary>Three pairs of digits between dots could be a clock or a date.</summary>
    public static bool IsDottedTriple(ReadOnlySpan<char> cell)
    {
        cell = cell.Trim();
        return cell.Length == 8 && cell[2] == '.' && cell[5] == '.' && AllDigits(cell[..2]) && AllDigits(cell[3..5]) && AllDigits(cell[6..]);
    }

    private static bool AllDigits(ReadOnlySpan<char> text) => text.IndexOfAnyExceptInRange('0', '9') < 0;

    private static bool TryInstant(ReadOnlySpan<char> cell, bool dotsAreClock, ref TimeParts parts)
    {
        if (cell[0] == '[' && cell[^1] == ']')
        {
            cell = cell[1..^1];
        }

        var scan = new TimeScan(cell);
        bool dotted = dotsAreClock && IsDottedTriple(cell);
        if (!dotted && TryDate(ref scan, ref parts))
        {
            if (scan.AtEnd)
            {
                return true;
            }

            return scan.SkipBetween() && TryClock(ref scan, ref parts, mayDot: true) && scan.AtEnd;
        }

        parts = default;
        scan = new TimeScan(cell);
        if (!TryClock(ref scan, ref parts, mayDot: dotted))
        {
            return false;
        }

        return scan.AtEnd || (scan.SkipBetween() && TryDate(ref scan, ref parts) && scan.AtEnd);
    }

    /// <summary>ISO 8601: start/end or start/duration.</summary>
    private static bool TryInterval(ReadOnlySpan<char> cell, ref TimeParts parts)
    {
        if (cell.Length < 13 || cell.IndexOf('/') is not (>= 10 and int slash) || cell.Count('/') != 1)
        {
            return false;
        }

        TimeParts start = default, end = default;
        var behind = cell[(slash + 1)..];
        if (behind.Length < 2 || !TryInstant(cell[..slash], dotsAreClock: false, ref start) || start is not { HasDate: true, HasClock: true, Year: > 0 })
        {
            return false;
        }

        double startS = start.Seconds(default, false);
        if (behind[0] == 'P')
        {
            start.EndS = startS + IsoDuration(behind);
        }
        else if (TryInstant(behind, dotsAreClock: false, ref end) && end.Year > 0)
        {
            start.EndS = end.Seconds(default, false);
        }
        else
        {
            return false;
        }

        start.IsInterval = true;
        parts = start;
        return !double.IsNaN(start.EndS);
    }

    private static double IsoDuration(ReadOnlySpan<char> text)
    {
        double total = 0;
        bool clock = false;
        var scan = new TimeScan(text);
        scan.Skip('P');
        while (!scan.AtEnd)
        {
            clock |= scan.Skip('T');
            if (!scan.Decimal(out double amount))
            {
                return double.NaN;
            }

            double unitS = (scan.Take(), clock) switch
            {
                ('W', false) => 604800,
                ('D', false) => 86400,
                ('H', true) => 3600,
                ('M', true) => 60,
                ('S', true) => 1,
                _ => double.NaN,
            };
            total += amount * unitS;
        }

        return total;
    }

    private static bool TryDate(ref TimeScan scan, ref TimeParts parts)
    {
        var from = scan;
        parts.HasDate = true;
        if (NamedMonth(ref scan, ref parts))
        {
            return true;
        }

        scan = from;
        if (!scan.Digits(1, 8, out int a, out int length))
        {
            return false;
        }

        if (length == 8)
        {
            // 20240301T120000: only with its T, for eight bare digits are a number.
            (parts.Year, parts.Month, parts.Day) = (a / 10000, a / 100 % 100, a % 100);
            return scan.Peek is 'T' or '_';
        }

        char mark = scan.Take();
        if (mark is not ('-' or '/' or '.') || length == 3 || !scan.Digits(1, 2, out int b, out _) || !scan.Skip(mark) || !scan.Digits(1, 4, out int c, out int last))
        {
            return false;
        }

        parts.DateMark = mark;
        if (length == 4)
        {
            (parts.Year, parts.Month, parts.Day) = (a, b, c);
            return last <= 2 && a > 0;
        }

        (parts.A, parts.B, parts.C, parts.YearDigits) = (a, b, c, last);
        return last is 2 or 4 && (parts.Possible(DateOrder.DayMonthYear) || parts.Possible(DateOrder.MonthDayYear) || parts.Possible(DateOrder.YearMonthDay));
    }

    /// <summary>14-Oct-2018, 14 Oct 2018, Oct 14, 2018.</summary>
    private static bool NamedMonth(ref TimeScan scan, ref TimeParts parts)
    {
        bool dayFirst = scan.Digits(1, 2, out int day, out _);
        if (dayFirst)
        {
            scan.SkipAny("-/. ");
        }

        int month = 1 + Array.IndexOf(Months, scan.Letters());
        scan.SkipAny("-/., ");
        if (month == 0 || (!dayFirst && !scan.Digits(1, 2, out day, out _)))
        {
            return false;
        }

        scan.SkipAny("-/., ");
        if (!scan.Digits(2, 4, out int year, out int digits) || digits == 3)
        {
            return false;
        }

        (parts.Year, parts.Month, parts.Day) = (digits == 4 ? year : year + (year >= 70 ? 1900 : 2000), month, day);
        return true;
    }

    private static bool TryClock(ref TimeScan scan, ref TimeParts parts, bool mayDot)
    {
        bool minus = scan.Skip('-');
        if (minus || !scan.Digits(1, 6, out int first, out int length))
        {
            return false;
        }

        parts.HasClock = true;
        char mark = scan.Peek;
        if (length == 6 && parts.HasDate)
        {
            (parts.First, parts.Second, parts.Third, parts.ClockFields) = (first / 10000, first / 100 % 100, first % 100, 3);
            return Behind(ref scan, ref parts);
        }

        if (length > 4 || !(mark == ':' || (mark == '.' && mayDot)) || !scan.Skip(mark) || !scan.Digits(2, 2, out int second, out _) || second > 59)
        {
            return false;
        }

        (parts.First, parts.Second, parts.ClockFields) = (first, second, 2);
        if (scan.Peek == mark)
        {
            scan.Skip(mark);
            if (!scan.Digits(2, 2, out int third, out _) || third > 60)
            {
                return false;
            }

            (parts.Third, parts.ClockFields) = (third, 3);
        }

        parts.Third += scan.Fraction(out bool had);
        return (parts.ClockFields == 3 || !had || mark == ':') && Behind(ref scan, ref parts);
    }

    /// <summary>AM or PM, and the distance from UTC.</summary>
    private static bool Behind(ref TimeScan scan, ref TimeParts parts)
    {
        var from = scan;
        scan.SkipAny(" \u00A0\u202F");
        if (scan.Half(out bool afternoon))
        {
            (parts.HasHalf, parts.Afternoon) = (true, afternoon);
            if (parts.First is < 1 or > 12)
            {
                return false;
            }
        }
        else
        {
            scan = from;
        }

        from = scan;
        scan.SkipAny(" ");
        if (scan.Offset(out double seconds))
        {
            (parts.HasOffset, parts.OffsetS) = (true, seconds);
        }
        else
        {
            scan = from;
        }

        return !parts.HasDate || parts.First < 25;
    }
}
