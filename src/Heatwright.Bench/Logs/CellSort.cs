namespace Heatwright.Logs;

/// <summary>What a cell looks like at first sight, before anything is known of its column.</summary>
internal enum CellSort
{
    Blank,
    Number,
    /// <summary>A number with blanks between its digits: a thousands mark, or two columns.</summary>
    Spaced,
    Time,
    Word,
    /// <summary>Digits next to another separator: the line was cut at the wrong mark.</summary>
    Torn,
}

/// <summary>Sorts cells at first sight.</summary>
internal static class CellSorts
{
    public static CellSort Of(string cell)
    {
        if (cell.Length > 1 && cell[^1] is ',' or ';' or '|')
        {
            return CellSort.Torn;
        }

        var read = NumberCell.Read(cell, '.');
        return read.Kind switch
        {
            CellKind.Missing => CellSort.Blank,
            CellKind.Number => NumberCell.NumberPart(cell).AsSpan().TrimStart("+- ").ContainsAny(" \u00A0") ? CellSort.Spaced : CellSort.Number,
            CellKind.Overload or CellKind.Undecided => CellSort.Number,
            _ => IsTime(cell) ? CellSort.Time : IsTorn(cell) ? CellSort.Torn : CellSort.Word,
        };
    }

    public static bool IsReading(this CellSort sort) => sort is CellSort.Number or CellSort.Spaced or CellSort.Time;

    /// <summary>How much a cell speaks for the separator that cut it.</summary>
    public static double Weight(this CellSort sort) => sort switch
    {
        CellSort.Number or CellSort.Time => 1,
        CellSort.Spaced => 0.4,
        CellSort.Blank => 0.5,
        CellSort.Word => -0.3,
        _ => -4,
    };

    private static bool IsTime(string cell) => TimeCell.TryRead(cell, true, out _) || TimeCell.TryRead(cell, false, out _);

    private static bool IsTorn(string cell)
    {
        for (int i = 1; i < cell.Length; i++)
        {
            bool mark = cell[i] is ',' or ';' or '\t' or '|';
            if (mark && (char.IsAsciiDigit(cell[i - 1]) || (i + 1 < cell.Length && char.IsAsciiDigit(cell[i + 1]))))
            {
                return true;
            }
        }

        return false;
    }
}
