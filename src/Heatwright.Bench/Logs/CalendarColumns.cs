using Heatwright.Quantities;

namespace Heatwright.Logs;

/// <summary>Times that a file spreads over several columns: date and clock, clock and AM/PM, year to minute as bare numbers.</summary>
internal static class CalendarColumns
{
    private static readonly string[][] FieldNames =
    [
        ["year", "yyyy", "jahr"], ["month", "mm", "mon", "monat"], ["day", "dd", "tag"], ["hour", "hh", "stunde", "hr"], ["minute", "min", "minuten"], ["second", "sec", "ss", "sekunde"],
    ];

    public static void Join(List<Draft> drafts)
    {
        JoinHalves(drafts);
        JoinDateAndClock(drafts);
        JoinFields(drafts, ByName(drafts) ?? ByDayOfYear(drafts));
    }

    /// <summary>In a file parted by blanks, AM and PM stand in a column of their own.</summary>
    private static void JoinHalves(List<Draft> drafts)
    {
        for (int i = 1; i < drafts.Count; i++)
        {
            var (clock, half) = (drafts[i - 1], drafts[i]);
            if (!clock.IsTimeCells || !clock.HasClock || half.Texts.Length == 0 || !half.Texts.All(IsHalf))
            {
                continue;
            }

            for (int row = 0; row < clock.Values.Length; row++)
            {
                double ofDay = ((clock.Values[row] % 86400) + 86400) % 86400;
                bool afternoon = half.Texts[row].StartsWith("p", StringComparison.OrdinalIgnoreCase);
                clock.Values[row] += afternoon && ofDay < 43200 ? 43200 : !afternoon && ofDay >= 43200 ? -43200 : 0;
            }

            drafts.RemoveAt(i);
            return;
        }
    }

    private static bool IsHalf(string text) => text.Replace(".", "", StringComparison.Ordinal).ToUpperInvariant() is "AM" or "PM";

    private static void JoinDateAndClock(List<Draft> drafts)
    {
        var date = drafts.FirstOrDefault(draft => draft is { IsTimeCells: true, HasDate: true, HasClock: false });
        var clock = drafts.FirstOrDefault(draft => draft is { IsTimeCells: true, HasDate: false, HasClock: true });
        if (date is null || clock is null)
        {
            return;
        }

        for (int row = 0; row < date.Values.Length; row++)
        {
            date.Values[row] += clock.Values[row];
        }

        bool unnamed = date.Plan is { Named: false } && clock.Plan is { Named: false };
        (date.Name, date.HasClock) = (unnamed ? "time" : $"{date.Name} {clock.Name}", true);
        drafts.Remove(clock);
    }

    private static int[]? ByName(List<Draft> drafts)
    {
        var places = FieldNames.Select(names => drafts.FindIndex(draft => draft.Kind == ColumnKind.Number && names.Contains(draft.Name, StringComparer.OrdinalIgnoreCase))).ToList();
        int known = places.TakeWhile(place => place >= 0).Count();
        return known >= 4 && drafts[places[0]].Values.All(year => year is >= 1970 and <= 2100) ? [.. places.Take(known)] : null;
    }

    /// <summary>Year, day of the year, month, day, hour, minute without names: the day of the year proves the rest, row by row.</summary>
    private static int[]? ByDayOfYear(List<Draft> drafts)
    {
        if (drafts.Count < 6 || drafts[0].Plan is not { Named: false } || drafts.Take(6).Any(draft => draft.Kind != ColumnKind.Number) || drafts[0].Values.Length == 0)
        {
            return null;
        }

        for (int row = 0; row < drafts[0].Values.Length; row++)
        {
            double year = drafts[0].Values[row], month = drafts[2].Values[row], day = drafts[3].Values[row];
            bool proven = year is >= 1970 and <= 2100 && month is >= 1 and <= 12 && Whole(year, month, day) && day >= 1
                && day <= DateTime.DaysInMonth((int)year, (int)month)
                && new DateOnly((int)year, (int)month, (int)day).DayOfYear == drafts[1].Values[row]
                && drafts[4].Values[row] is >= 0 and < 25 && drafts[5].Values[row] is >= 0 and < 60;
            if (!proven)
            {
                return null;
            }
        }

        return [0, 2, 3, 4, 5];
    }

    private static bool Whole(params ReadOnlySpan<double> values)
    {
        foreach (double value in values)
        {
            if (value != Math.Floor(value))
            {
                return false;
            }
        }

        return true;
    }

    private static void JoinFields(List<Draft> drafts, int[]? places)
    {
        if (places is null)
        {
            return;
        }

        var first = drafts[places[0]];
        double[] seconds = new double[first.Values.Length];
        for (int row = 0; row < seconds.Length; row++)
        {
            double[] fields = [.. places.Select(place => drafts[place].Values[row])];
            seconds[row] = Seconds(fields);
        }

        var time = new Draft { Name = "time", UnitText = "s", Unit = Units.Second, Kind = ColumnKind.Time, Values = seconds, IsTimeCells = true, HasDate = true, HasClock = true };
        // The day of the year, where it stood between them, goes with the fields it proved.
        int[] gone = [.. places[0] == 0 && places.Length > 1 && places[1] == 2 ? places.Append(1) : places];
        foreach (int place in gone.OrderDescending())
        {
            drafts.RemoveAt(place);
        }

        drafts.Insert(0, time);
    }

    private static double Seconds(double[] fields)
    {
        bool fine = fields.Take(3).All(field => field == Math.Floor(field)) && fields[0] is >= 1 and <= 9999 && fields[1] is >= 1 and <= 12
            && fields[2] >= 1 && fields[2] <= DateTime.DaysInMonth((int)fields[0], (int)fields[1]);
        return !fine ? double.NaN
            : ((new DateOnly((int)fields[0], (int)fields[1], (int)fields[2]).DayNumber - new DateOnly(1970, 1, 1).DayNumber) * 86400.0)
                + (fields.ElementAtOrDefault(3) * 3600) + (fields.ElementAtOrDefault(4) * 60) + fields.ElementAtOrDefault(5);
    }
}
