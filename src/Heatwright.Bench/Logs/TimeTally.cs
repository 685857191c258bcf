namespace Heatwright.Logs;

/// <summary>What the cells of a time column prove about its form and the order of its dates.</summary>
internal sealed class TimeTally
{
    private const int MostRuns = 500;
    private static readonly DateOrder[] Orders = [DateOrder.DayMonthYear, DateOrder.MonthDayYear, DateOrder.YearMonthDay];

    private readonly bool[] possible = [true, true, true];
    private readonly List<TimeParts> runs = [];
    private int rows;
    private int openDates;
    private int dotted, dottedDates, dottedClocks;
    private int twoFields, threeFields, fractions, greatest = -1, last = -1;
    private bool wrapped;

    private int Dates { get; set; }

    public int Clocks { get; private set; }

    public int Offsets { get; private set; }

    public int Halves { get; private set; }

    public int Intervals { get; private set; }

    public string Example { get; private set; } = "";

    public bool HasDate(bool dotsAreClock) => Dates + (dotsAreClock ? 0 : dottedDates) > 0;

    public bool HasClock(bool dotsAreClock) => Clocks + (dotsAreClock ? dottedClocks : 0) > 0;

    public void Add(string cell)
    {
        bool triple = TimeCell.IsDottedTriple(cell);
        bool asClock = TimeCell.TryRead(cell, true, out var parts);
        if (triple)
        {
            dotted++;
            dottedDates += TimeCell.TryRead(cell, false, out var date) ? 1 : 0;
            dottedClocks += asClock ? 1 : 0;
            AddDate(cell, date);
            AddClock(parts);
            return;
        }

        rows++;
        Dates += parts.HasDate ? 1 : 0;
        Clocks += parts.HasClock ? 1 : 0;
        Offsets += parts.HasOffset ? 1 : 0;
        Halves += parts.HasHalf ? 1 : 0;
        Intervals += parts.IsInterval ? 1 : 0;
        AddDate(cell, parts);
        AddClock(parts);
    }

    private void AddDate(string cell, TimeParts parts)
    {
        if (!parts.DateIsOpen)
        {
            return;
        }

        openDates++;
        Example = Example.Length == 0 ? cell : Example;
        foreach (var order in Orders)
        {
            possible[(int)order] &= parts.Possible(order);
        }

        if (runs.Count < MostRuns && (runs.Count == 0 || (runs[^1].A, runs[^1].B, runs[^1].C) != (parts.A, parts.B, parts.C)))
        {
            runs.Add(parts);
        }
    }

    private void AddClock(TimeParts parts)
    {
        if (!parts.HasClock || parts.HasDate)
        {
            return;
        }

        twoFields += parts.ClockFields == 2 ? 1 : 0;
        threeFields += parts.ClockFields == 3 ? 1 : 0;
        fractions += parts.ClockFields == 2 && parts.Third > 0 ? 1 : 0;
        wrapped |= last == 23 && parts.First == 0;
        last = parts.First;
        greatest = Math.Max(greatest, parts.First);
    }

    /// <summary>Between dots stands a clock unless only a date is possible there; where both are, the name of the column tells.</summary>
    public bool DotsAreClock(string name) => dotted == 0 || dottedDates < dotted
        || (dottedClocks == dotted && !name.Contains("dat", StringComparison.OrdinalIgnoreCase) && !name.Contains("day", StringComparison.OrdinalIgnoreCase));

    /// <summary>The orders that the dates leave open; one when they settle it.</summary>
    public IReadOnlyList<DateOrder> DateOrders()
    {
        if (openDates == 0)
        {
            return [DateOrder.DayMonthYear];
        }

        var left = Orders.Where(order => possible[(int)order]).ToList();
        // Dots mean day first wherever they are used for dates. Common practice, no source.
        if (left.Count > 1 && runs[0].DateMark == '.' && left.Contains(DateOrder.DayMonthYear))
        {
            return [DateOrder.DayMonthYear];
        }

        if (left.Count > 1 && runs.TrueForAll(run => left.TrueForAll(order => run.Date(order) == run.Date(left[0]))))
        {
            return [left[0]];
        }

        // A run over midnight goes on at the next day; the wrong order would make it jump by weeks.
        var steady = left.Where(Steady).ToList();
        return left.Count > 1 && runs.Count > 1 && rows >= 2 * runs.Count && steady.Count == 1 ? steady
            : left.Count == 0 ? [DateOrder.DayMonthYear] : left;
    }

    private bool Steady(DateOrder order)
    {
        for (int i = 1; i < runs.Count; i++)
        {
            double days = (runs[i].Seconds(order, false) - runs[i].ClockS(false) - runs[i - 1].Seconds(order, false) + runs[i - 1].ClockS(false)) / 86400;
            if (days is < 0.5 or > 3.5)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Is 1:20 a minute and twenty seconds? Null when the column cannot tell; never null where it does not matter.</summary>
    public bool? MinutesAndSeconds => twoFields == 0 || Halves > 0 || Offsets > 0 || wrapped ? false
        : fractions > 0 || greatest > 23 || threeFields > 0 ? true : null;

    /// <summary>More hours than a day has.</summary>
    public bool PassesADay => threeFields > 0 && greatest >= 24;
}
