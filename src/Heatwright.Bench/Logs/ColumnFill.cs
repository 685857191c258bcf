using System.Text;

namespace Heatwright.Logs;

/// <summary>Goes once over all rows and fills the columns; the hot path is a plain number in a plain cell.</summary>
internal sealed class ColumnFill
{
    /// <summary>Bytes of columns for a byte of text, at most: a row far shorter than what it would fill is refused.</summary>
    public const int RoomForByte = 16;

    private const int MostRefused = 1000;
    private int room;
    private readonly LogPlan plan;
    private readonly RawColumn[] columns;
    private readonly CellCutter cutter;
    private readonly byte[] marks;
    private readonly int[] cellOf;
    private readonly byte[] headerLine;
    private readonly int timeColumn;
    private readonly bool hasReadings;
    private readonly CellUnits units = new();
    private int readings, words, texts;
    private bool timeWord;

    private ColumnFill(LogPlan plan, int capacity, ColumnFill? before)
    {
        this.plan = plan;
        cutter = new(plan.Separator);
        room = Math.Max(1, capacity);
        columns = [.. plan.Columns.Select((column, i) => new RawColumn(column, room, before?.columns[i].Values))];
        marks = [.. plan.Columns.Select(column => (byte)column.Mark)];
        cellOf = new int[columns.Length];
        timeColumn = plan.TimeColumn;
        headerLine = Encoding.UTF8.GetBytes(plan.HeaderLine);
        hasReadings = plan.Columns.Any(column => column.Role is ColumnRole.Number or ColumnRole.Time);
    }

    public IReadOnlyList<RawColumn> Columns => columns;

    public int Rows { get; private set; }

    public List<RefusedRow> Refused { get; } = [];

    public int RefusedCount { get; private set; }

    public List<string> Remarks { get; } = [];

    /// <summary>Reads all rows.</summary>
    /// <param name="text">The rows and what lies before them.</param>
    /// <param name="plan">How to read them.</param>
    /// <param name="before">What was read by an earlier plan of the same columns: its room is used again, so that it is lost.</param>
    public static ColumnFill Run(ReadOnlySpan<byte> text, LogPlan plan, ColumnFill? before = null)
    {
        // A whole row of n cells has at least n - 1 separators, so whole rows never hold more numbers than the file has bytes; short rows grow the columns.
        var body = text[plan.FirstStart..];
        int lines = body.Count((byte)'\n') + (body.EndsWith("\n"u8) ? 0 : 1);
        var fill = new ColumnFill(plan, before?.Rows ?? Math.Min(lines, (body.Length / Math.Max(1, plan.Columns.Count - 1)) + 1), before);
        var walk = new LineWalk(text, plan.FirstStart, plan.LinesBefore);
        while (walk.NextSaying())
        {
            if (!LogSample.IsRule(walk.Line))
            {
                fill.Line(walk.Line, walk.Number, walk.Ended);
            }
        }

        foreach (var column in fill.columns)
        {
            column.Cut(fill.Rows);
        }

        return fill;
    }

    private void Line(ReadOnlySpan<byte> line, int number, bool ended)
    {
        int count = cutter.Cut(line);
        if (count == columns.Length || Tolerable(line, count))
        {
            Row(line, number);
        }
        else if (LogSample.IsRemark(line))
        {
            Remark(line);
        }
        else if (line.Length * RoomForByte / sizeof(double) >= columns.Length && plan.Fixed?.Place(cutter, cellOf) == true)
        {
            Row(line, number, placed: true);
        }
        else
        {
            RefusedCount++;
            Add(number, Refused.Count < MostRefused ? CountReason(count, ended, line) : "");
        }
    }

    private string CountReason(int count, bool ended, ReadOnlySpan<byte> line) => count < columns.Length && !ended
        ? $"The file ends in this row: {count} of {columns.Length} cells."
        : $"{count} cells where the other rows have {columns.Length}: {LineWalk.Show(line)}";

    /// <summary>Empty cells behind the last one, or a missing separator where the last column is empty anyway.</summary>
    private bool Tolerable(ReadOnlySpan<byte> line, int count)
    {
        if (plan.Separator == ' ')
        {
            return false;
        }

        for (int i = columns.Length; i < count; i++)
        {
            if (cutter.Cell(line, i).Length > 0)
            {
                return false;
            }
        }

        for (int i = count; i < columns.Length; i++)
        {
            if (columns[i].Plan.Role != ColumnRole.Nothing)
            {
                return false;
            }
        }

        return true;
    }

    private void Row(ReadOnlySpan<byte> line, int number, bool placed = false)
    {
        (readings, words, texts, timeWord) = (0, 0, 0, false);
        if (Rows == room)
        {
            room = Math.Max(16, room + (room / 2));
            foreach (var column in columns)
            {
                column.Grow(room);
            }
        }

        for (int i = 0; i < columns.Length; i++)
        {
            int cell = placed ? cellOf[i] : i;
            Cell(i, cell >= 0 && cell < cutter.Count ? cutter.Cell(line, cell) : default);
        }

        if (Wrong(line) is { } reason)
        {
            foreach (var column in columns)
            {
                column.Clear(Rows);
            }

            if (reason.Length > 0)
            {
                RefusedCount++;
                Add(number, reason);
            }

            return;
        }

        Units(line, placed);
        Rows++;
    }

    /// <summary>Why the line is no row of readings; null when it is one, empty when it says nothing at all.</summary>
    private string? Wrong(ReadOnlySpan<byte> line)
    {
        if (readings > 0 && words <= readings && !timeWord)
        {
            return null;
        }

        if (readings + words + texts == 0)
        {
            return "";
        }

        if (headerLine.Length > 0 && line.Trim(" \t"u8).SequenceEqual(headerLine))
        {
            return "The header again.";
        }

        return !hasReadings && texts > 0 ? null
            : Refused.Count >= MostRefused ? "More of the same."
            : timeWord ? $"No time in the time column: {LineWalk.Show(line)}"
            : readings == 0 ? $"No number in this line: {LineWalk.Show(line)}"
            : $"More words than numbers: {LineWalk.Show(line)}";
    }

    private void Cell(int index, ReadOnlySpan<byte> cell)
    {
        var column = columns[index];
        switch (column.Plan.Role)
        {
            case ColumnRole.Number:
                if (PlainNumber.TryRead(cell, marks[index], out double value) && Math.Abs(value) < 9.8e37)
                {
                    column.Values[Rows] = value;
                    column.Read++;
                    readings++;
                }
                else
                {
                    int before = words;
                    OddNumber(column, cell);
                    timeWord |= index == timeColumn && words > before;
                }

                break;
            case ColumnRole.Time:
                Time(column, cell);
                break;
            case ColumnRole.Words:
                column.Texts[Rows] = column.Text(cell);
                texts += cell.Length > 0 ? 1 : 0;
                break;
        }
    }

    private void OddNumber(RawColumn column, ReadOnlySpan<byte> cell)
    {
        column.Values[Rows] = double.NaN;
        if (cell.Length == 0)
        {
            return;
        }

        string text = cell.Length > 64 ? "too long" : Encoding.UTF8.GetString(cell);
        var read = NumberCell.Read(text, column.Plan.Mark);
        switch (read.Kind)
        {
            case CellKind.Missing:
                return;
            case CellKind.Word:
                column.Word(cell);
                words++;
                return;
            case CellKind.Overload:
                column.Over(Rows);
                break;
            case CellKind.Undecided:
                column.Undecided++;
                break;
            default:
                column.Values[Rows] = read.Unit.Length == 0 ? read.Value : units.Scaled(column, read.Value, read.Unit);
                column.LateMark |= Marks.Proof(NumberCell.NumberPart(text)) is ',' or '?';
                break;
        }

        column.Read++;
        readings++;
    }

    private void Time(RawColumn column, ReadOnlySpan<byte> cell)
    {
        column.Values[Rows] = double.NaN;
        Span<char> text = stackalloc char[80];
        if (cell.Length is 0 or > 80)
        {
            timeWord |= cell.Length > 0;
            return;
        }

        int length = Encoding.UTF8.GetChars(cell, text);
        var style = column.Plan;
        if (!TimeCell.TryRead(text[..length], style.DotsAreClock, out var parts))
        {
            if (NumberCell.Read(text[..length].ToString(), '.').Kind != CellKind.Missing)
            {
                column.Word(cell);
                timeWord = true;
            }

            return;
        }

        bool open = (parts.DateIsOpen && style.Order is null) || (parts is { ClockFields: 2, HasDate: false } && style.MinutesAndSeconds is null);
        double seconds = open ? double.NaN : parts.Seconds(style.Order ?? default, style.MinutesAndSeconds ?? false);
        timeWord |= !open && double.IsNaN(seconds);
        column.Values[Rows] = seconds;
        if (column.Ends.Length > 0)
        {
            column.Ends[Rows] = parts.IsInterval ? parts.EndS : double.NaN;
        }

        column.Read++;
        readings++;
    }

    /// <summary>Brings numbers with their unit in the next cell to one unit.</summary>
    private void Units(ReadOnlySpan<byte> line, bool placed)
    {
        for (int i = 0; i + 1 < columns.Length; i++)
        {
            if (columns[i].Plan.UnitBeside && !double.IsNaN(columns[i].Values[Rows]))
            {
                int cell = placed ? cellOf[i + 1] : i + 1;
                string unit = cell < 0 ? "" : columns[i + 1].Text(cutter.Cell(line, cell));
                columns[i].Values[Rows] = units.Scaled(columns[i], columns[i].Values[Rows], unit);
            }
        }
    }

    private void Add(int number, string reason)
    {
        if (Refused.Count < MostRefused)
        {
            Refused.Add(new(number, reason));
        }
    }

    private void Remark(ReadOnlySpan<byte> line)
    {
        if (Remarks.Count < PlanMaker.MostPreamble)
        {
            Remarks.Add(Encoding.UTF8.GetString(line.Length > 4096 ? line[..4096] : line).Trim());
        }
    }
}
