using System.Globalization;

namespace Heatwright.Logs;

/// <summary>At most one question a file, the one that decides most: marks, then dates, then clocks, then the unit of time.</summary>
internal static class Questions
{
    public static IReadOnlyList<LogQuestion> From(LogPlan plan, LogMapping? remembered, LogQuestion? first, LogQuestion? last)
    {
        var answer = remembered ?? new LogMapping();
        var question = first ?? Mark(plan, answer) ?? Date(plan, answer) ?? Clock(plan, answer) ?? last;
        return question is null ? [] : [question];
    }

    private static LogQuestion? Mark(LogPlan plan, LogMapping answer)
    {
        var open = plan.Columns.FirstOrDefault(column => column is { Role: ColumnRole.Number, Mark: '\0' });
        if (open is null)
        {
            return null;
        }

        string example = open.Look.Marks.Example;
        char mark = example.Contains(',', StringComparison.Ordinal) ? ',' : '.';
        string word = mark == ',' ? "comma" : "point";
        string whole = example.Replace(mark.ToString(), "", StringComparison.Ordinal);
        return new(
            $"In column '{open.Name}' a cell reads {example}, and no cell of this file shows what its {word} means. What is it?",
            [
                new($"The decimal mark: {example.Replace(mark, '.')} with three decimals", answer with { DecimalMark = mark }),
                new($"A thousands mark: {whole}", answer with { DecimalMark = mark == ',' ? '.' : ',' }),
            ]);
    }

    private static LogQuestion? Date(LogPlan plan, LogMapping answer)
    {
        var open = plan.Columns.FirstOrDefault(column => column is { Role: ColumnRole.Time, Order: null });
        if (open is null || !(TimeCell.TryRead(open.Look.Times.Example, true, out var parts) || TimeCell.TryRead(open.Look.Times.Example, false, out parts)))
        {
            return null;
        }

        var choices = open.Look.Times.DateOrders().Select(order => new LogChoice($"{Said(order)}: {Long(parts, order)}", answer with { DateOrder = order }));
        return new($"In column '{open.Name}' a date reads {open.Look.Times.Example}, and no row of this file shows the order of day and month. Which is it?", [.. choices]);
    }

    private static string Said(DateOrder order) => order switch
    {
        DateOrder.DayMonthYear => "Day first",
        DateOrder.MonthDayYear => "Month first",
        _ => "Year first",
    };

    private static string Long(TimeParts parts, DateOrder order)
    {
        (int year, int month, int day) = parts.Date(order);
        return parts.Possible(order) ? new DateOnly(year, month, day).ToString("d MMMM yyyy", CultureInfo.InvariantCulture) : "";
    }

    private static LogQuestion? Clock(LogPlan plan, LogMapping answer)
    {
        var open = plan.Columns.FirstOrDefault(column => column is { Role: ColumnRole.Time, MinutesAndSeconds: null });
        string example = open?.Look.Distinct.FirstOrDefault() ?? "";
        return open is null ? null : new(
            $"In column '{open.Name}' a time reads {example}. Is that hours and minutes, or minutes and seconds?",
            [
                new("Hours and minutes", answer with { MinutesAndSeconds = false }),
                new("Minutes and seconds", answer with { MinutesAndSeconds = true }),
            ]);
    }
}
