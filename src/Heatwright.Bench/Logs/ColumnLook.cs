namespace Heatwright.Logs;

/// <summary>A first look at a column: what its cells are, which units they bring, what they prove.</summary>
internal sealed class ColumnLook
{
    private const int MostDistinct = 40;

    public int Numbers { get; private set; }

    public int TimeCells { get; private set; }

    public int Words { get; private set; }

    public int Blanks { get; private set; }

    public HashSet<string> Distinct { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, int> Units { get; } = new(StringComparer.Ordinal);

    public MarkTally Marks { get; private set; } = new();

    public TimeTally Times { get; private set; } = new();

    /// <summary>Numbers of one digit and nothing else: a quality flag may be.</summary>
    public bool OnlyDigits { get; private set; } = true;

    public bool HasDecimals { get; private set; }

    public void Add(string cell)
    {
        var sort = CellSorts.Of(cell);
        switch (sort)
        {
            case CellSort.Blank:
                Blanks++;
                return;
            case CellSort.Number or CellSort.Spaced:
                Numbers++;
                AddNumber(cell);
                break;
            case CellSort.Time:
                TimeCells++;
                Times.Add(cell);
                break;
            default:
                Words++;
                break;
        }

        if (Distinct.Count < MostDistinct)
        {
            Distinct.Add(cell);
        }
    }

    private void AddNumber(string cell)
    {
        Marks.Add(cell);
        OnlyDigits &= cell.Length == 1;
        HasDecimals |= cell.Contains('.', StringComparison.Ordinal) || cell.Contains(',', StringComparison.Ordinal);
        string unit = NumberCell.Read(cell, '.').Unit;
        if (unit.Length > 0 && Units.Count < MostDistinct)
        {
            Units[unit] = Units.GetValueOrDefault(unit) + 1;
        }
    }

    /// <summary>Before every row is read, what the sample showed is dropped: its rows come again.</summary>
    public void Restart() => (Marks, Times) = (new(), new());

    public ColumnRole Role => TimeCells > 0 && TimeCells >= Math.Max(Numbers, Words) ? ColumnRole.Time
        : Numbers > 0 && Numbers >= Words ? ColumnRole.Number
        : Words > 0 ? ColumnRole.Words : ColumnRole.Number;

    public bool NothingSeen => Numbers + TimeCells + Words == 0;
}
