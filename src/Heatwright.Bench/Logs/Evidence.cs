using System.Text;

namespace Heatwright.Logs;

/// <summary>Settles marks and orders: from the sample if it can, from every row if it must, from what is remembered at last.</summary>
internal static class Evidence
{
    public static void Decide(ReadOnlySpan<byte> text, LogPlan plan, LogMapping? remembered)
    {
        Settle(plan, null);
        bool[] wanted = [.. plan.Columns.Select(column => IsOpen(column) || (column.Role == ColumnRole.Number && plan.Separator != ',' && column.Look.Marks.IsUnproven))];
        if (wanted.Contains(true))
        {
            ReadAll(text, plan, wanted);
        }

        Settle(plan, remembered);
    }

    /// <summary>Looks at every row of the columns whose marks the sample did not show.</summary>
    public static void DecideAgain(ReadOnlySpan<byte> text, LogPlan plan, LogMapping? remembered, bool[] late)
    {
        ReadAll(text, plan, late);
        Settle(plan, remembered);
    }

    public static bool IsOpen(ColumnPlan column) => column.Role switch
    {
        ColumnRole.Number => column.Mark == '\0',
        ColumnRole.Time => column.Order is null || column.MinutesAndSeconds is null,
        _ => false,
    };

    private static void Settle(LogPlan plan, LogMapping? remembered)
    {
        var file = new MarkTally();
        foreach (var column in plan.Columns.Where(column => column.Role == ColumnRole.Number))
        {
            file.Add(column.Look.Marks);
        }

        bool hasLoneDate = plan.Columns.Any(column => column.Role == ColumnRole.Time && column.Look.Times.HasDate(false) && !column.Look.Times.HasClock(column.Look.Times.DotsAreClock(column.Name)));
        foreach (var column in plan.Columns)
        {
            if (column.Role == ColumnRole.Number)
            {
                column.Mark = column.Look.Marks.Decide(file, plan.Separator, remembered?.DecimalMark);
            }
            else if (column.Role == ColumnRole.Time)
            {
                SettleTime(column, remembered, hasLoneDate);
            }
        }
    }

    private static void SettleTime(ColumnPlan column, LogMapping? remembered, bool hasLoneDate)
    {
        var times = column.Look.Times;
        column.DotsAreClock = times.DotsAreClock(column.Name);
        var orders = times.DateOrders();
        column.Order = orders.Count == 1 ? orders[0]
            : column.OrderByName is { } named && orders.Contains(named) ? named
            : remembered?.DateOrder is { } known && orders.Contains(known) ? known : null;
        column.MinutesAndSeconds = times.MinutesAndSeconds is false ? false
            : column.MinutesByName ?? times.MinutesAndSeconds ?? (hasLoneDate || times.HasDate(column.DotsAreClock) ? false : remembered?.MinutesAndSeconds);
    }

    private static void ReadAll(ReadOnlySpan<byte> text, LogPlan plan, bool[] wanted)
    {
        foreach (var column in plan.Columns.Where((_, i) => wanted[i]))
        {
            column.Look.Restart();
        }

        var cutter = new CellCutter(plan.Separator);
        var walk = new LineWalk(text, plan.FirstStart, plan.LinesBefore);
        while (walk.Next())
        {
            if (walk.Number % 1024 == 0)
            {
                // A proven mark needs no further proof; dates are followed to the end, for a later row may still contradict.
                wanted = [.. wanted.Select((want, i) => want && !(plan.Columns[i].Role == ColumnRole.Number && plan.Columns[i].Look.Marks.Proven != '\0'))];
                if (!wanted.Contains(true))
                {
                    return;
                }
            }

            if (cutter.Cut(walk.Line) != plan.Columns.Count)
            {
                continue;
            }

            for (int i = 0; i < wanted.Length; i++)
            {
                if (wanted[i] && cutter.Cell(walk.Line, i).Length is > 0 and <= 80)
                {
                    Add(plan.Columns[i], cutter.Cell(walk.Line, i));
                }
            }
        }
    }

    private static void Add(ColumnPlan column, ReadOnlySpan<byte> bytes)
    {
        if (column.Role == ColumnRole.Number)
        {
            column.Look.Marks.Add(bytes);
            return;
        }

        string cell = Encoding.UTF8.GetString(bytes);
        if (column.Role == ColumnRole.Time && (TimeCell.TryRead(cell, true, out _) || TimeCell.TryRead(cell, false, out _)))
        {
            column.Look.Times.Add(cell);
        }
    }
}
