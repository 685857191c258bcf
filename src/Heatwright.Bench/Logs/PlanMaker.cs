using System.Text;
using Heatwright.Quantities;

namespace Heatwright.Logs;

/// <summary>From a separator to a plan: where the readings start, what the columns are called, what they hold.</summary>
internal static class PlanMaker
{
    public const int MostPreamble = 200;
    private static readonly string[] UnitNames = ["unit", "units", "einheit", "unité", "unidad", "unità", "eenheid"];

    public static LogPlan? Make(ReadOnlySpan<byte> text, LogSample sample, byte separator, int cells, int from, int linesBefore, string[]? forced, bool stamped)
    {
        var rows = FullRows(text, sample, separator, cells);
        var looks = Looks(text, rows, separator, cells);
        var roles = looks.Select(look => look.Role).ToArray();
        var preamble = new List<string>();
        var walk = new LineWalk(text, from, linesBefore);
        if (!FindFirst(ref walk, separator, roles, looks, preamble))
        {
            return null;
        }

        var header = forced is not null ? new HeaderRows(forced, null, "") : HeaderRows.Find(preamble, separator, cells);
        return new()
        {
            Separator = separator,
            Columns = Columns(header, looks, roles, stamped),
            FirstStart = walk.Start,
            LinesBefore = walk.Number - 1,
            Preamble = [.. preamble.TakeLast(MostPreamble)],
            HeaderLine = header.Line.Trim(),
            Fixed = separator == ' ' ? FixedColumns.Find(text, rows, cells) : null,
        };
    }

    private static List<LinePlace> FullRows(ReadOnlySpan<byte> text, LogSample sample, byte separator, int cells)
    {
        var cutter = new CellCutter(separator);
        var rows = new List<LinePlace>();
        foreach (var place in sample.Lines)
        {
            var line = place.In(text);
            if (!LogSample.IsRemark(line) && cutter.Cut(line) == cells)
            {
                rows.Add(place);
            }
        }

        return rows;
    }

    private static ColumnLook[] Looks(ReadOnlySpan<byte> text, List<LinePlace> rows, byte separator, int cells)
    {
        var looks = Enumerable.Range(0, cells).Select(_ => new ColumnLook()).ToArray();
        var cutter = new CellCutter(separator);
        bool started = false;
        // The first rows of the same width may still be preamble, with words where readings stand below.
        int skip = rows.Count <= 12 ? rows.Count / 2 : Math.Min(rows.Count / 3, 60);
        foreach (var row in rows.Skip(skip))
        {
            string[] texts = cutter.Texts(row.In(text));
            started |= texts.Any(cell => CellSorts.Of(cell).IsReading());
            for (int i = 0; started && i < cells; i++)
            {
                looks[i].Add(texts[i]);
            }
        }

        return looks;
    }

    /// <summary>The first line whose cells agree with what the columns hold further down.</summary>
    private static bool FindFirst(ref LineWalk walk, byte separator, ColumnRole[] roles, ColumnLook[] looks, List<string> preamble)
    {
        var cutter = new CellCutter(separator);
        while (walk.Next())
        {
            var line = walk.Line;
            if (LineWalk.IsBlank(line) || LogSample.IsRule(line))
            {
                continue;
            }

            if (!LogSample.IsRemark(line) && cutter.Cut(line) is int count && Enough(cutter, line, count, roles.Length) && Agrees(cutter, line, roles, looks))
            {
                return true;
            }

            if (preamble.Count >= 2 * MostPreamble)
            {
                preamble.RemoveRange(0, MostPreamble);
            }

            preamble.Add(Encoding.UTF8.GetString(line.Length > 4096 ? line[..4096] : line));
        }

        return false;
    }

    private static bool Enough(CellCutter cutter, ReadOnlySpan<byte> line, int count, int cells)
    {
        for (int i = cells; i < count; i++)
        {
            if (cutter.Cell(line, i).Length > 0)
            {
                return false;
            }
        }

        return count >= cells;
    }

    private static bool Agrees(CellCutter cutter, ReadOnlySpan<byte> line, ColumnRole[] roles, ColumnLook[] looks)
    {
        int readings = 0, words = 0, wanted = 0;
        for (int i = 0; i < roles.Length; i++)
        {
            if (roles[i] is not (ColumnRole.Number or ColumnRole.Time) || looks[i].NothingSeen)
            {
                continue;
            }

            var sort = CellSorts.Of(cutter.Text(line, i));
            bool first = wanted++ == 0;
            if (first && sort is CellSort.Word or CellSort.Torn)
            {
                // The label of a line in the preamble: 'Range;20 V;2 A'.
                return false;
            }

            readings += sort.IsReading() ? 1 : 0;
            words += sort is CellSort.Word or CellSort.Torn || (roles[i] == ColumnRole.Time && sort is CellSort.Number or CellSort.Spaced) ? 1 : 0;
        }

        return wanted == 0 || (readings > 0 && words * 3 <= wanted && words < wanted);
    }

    private static ColumnPlan[] Columns(HeaderRows header, ColumnLook[] looks, ColumnRole[] roles, bool stamped)
    {
        var columns = new ColumnPlan[looks.Length];
        for (int i = 0; i < looks.Length; i++)
        {
            string cell = header.Names?[i] ?? "";
            // Behind a stamp on each line even the header has one: it is no name.
            cell = stamped && i == 0 ? "stamp" : cell;
            var name = HeaderName.Split(cell);
            string unitText = header.Units?[i].Trim(' ', '(', ')', '[', ']') ?? "";
            unitText = unitText.Length > 0 ? unitText : name.UnitText;
            columns[i] = new()
            {
                Name = name.Name,
                Named = cell.Length > 0,
                UnitText = unitText,
                Unit = HeaderName.UnitOf(unitText, name.Name),
                Look = looks[i],
                Role = roles[i],
                OrderByName = name.DateOrder,
                MinutesByName = name.MinutesAndSeconds,
            };
        }

        Trail(columns);
        Pair(columns);
        CellUnits(columns);
        ColumnNames.MakeDifferent(columns);
        return columns;
    }

    /// <summary>A separator at the end of each line makes an empty column without a name.</summary>
    private static void Trail(ColumnPlan[] columns)
    {
        for (int i = columns.Length - 1; i > 0 && !columns[i].Named && columns[i].Look.NothingSeen; i--)
        {
            columns[i].Role = ColumnRole.Nothing;
        }

        // A table drawn with bars has one before its first cell too.
        if (columns.Length > 1 && !columns[0].Named && columns[0].Look.NothingSeen && columns[^1].Role == ColumnRole.Nothing)
        {
            columns[0].Role = ColumnRole.Nothing;
        }
    }

    /// <summary>A number followed by a column of units: autoranging meters write 950 mV, then 1.02 V.</summary>
    private static void Pair(ColumnPlan[] columns)
    {
        for (int i = 1; i < columns.Length; i++)
        {
            var (number, beside) = (columns[i - 1], columns[i]);
            bool byName = UnitNames.Contains(beside.Name, StringComparer.OrdinalIgnoreCase) || beside.Name.Contains("unit", StringComparison.OrdinalIgnoreCase);
            if (number.Role == ColumnRole.Number && beside.Role == ColumnRole.Words && (byName || !beside.Named)
                && beside.Look.Distinct.All(word => byName ? UnitWords.Find(word) is not null : UnitWords.IsPlainly(word)))
            {
                beside.Role = ColumnRole.UnitOfLeft;
                number.UnitBeside = true;
                SetUnit(number, beside.Look.Distinct);
            }
        }
    }

    private static void CellUnits(ColumnPlan[] columns)
    {
        foreach (var column in columns.Where(column => column is { Role: ColumnRole.Number, UnitBeside: false, Look.Units.Count: > 0 }))
        {
            // The header's unit holds for bare numbers; cells that bring their own are brought to it.
            if (column.Unit is null)
            {
                SetUnit(column, column.Look.Units.Keys);
            }
        }
    }

    private static void SetUnit(ColumnPlan column, IEnumerable<string> words)
    {
        var units = words.Select(word => (Word: word, Unit: UnitWords.Find(word))).Where(pair => pair.Unit is not null).ToList();
        if (units.Count == 0)
        {
            return;
        }

        var most = units.GroupBy(pair => pair.Unit!.Dimension).MaxBy(group => group.Count())!;
        var kinds = most.Select(pair => pair.Unit!).Distinct().ToList();
        // One unit stays as it is; where the prefix changes, all rows go to the unit without prefix.
        column.Unit = kinds.Count == 1 ? kinds[0] : UnitScale.WithoutPrefix(kinds);
        column.UnitText = kinds.Count == 1 ? most.First().Word : column.Unit.Symbol;
    }
}
