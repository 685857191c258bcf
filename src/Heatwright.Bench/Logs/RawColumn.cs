using System.Text;

namespace Heatwright.Logs;

/// <summary>The cells of one column of the file as they are read.</summary>
/// <param name="plan">How the column is read.</param>
/// <param name="capacity">Rows to make room for.</param>
/// <param name="used">Room of an earlier reading that is not needed any more; null: none.</param>
internal sealed class RawColumn(ColumnPlan plan, int capacity, double[]? used = null)
{
    private const int MostWords = 3;
    private const int MostPooled = 4096;
    private readonly Dictionary<string, string> pool = new(StringComparer.Ordinal);
    private byte[] lastCell = new byte[16];
    private int lastLength = -1;
    private string lastText = "";

    public ColumnPlan Plan => plan;

    public double[] Values { get; private set; } = plan.Role is ColumnRole.Number or ColumnRole.Time ? used?.Length >= capacity ? used : new double[capacity] : [];

    public string[] Texts { get; private set; } = plan.Role == ColumnRole.Words ? new string[capacity] : [];

    public bool[] Overload { get; private set; } = [];

    /// <summary>End of each interval, where the cells are intervals.</summary>
    public double[] Ends { get; private set; } = plan.Role == ColumnRole.Time && plan.Look.Times.Intervals > 0 ? new double[capacity] : [];

    public int Read { get; set; }

    public int Words { get; private set; }

    public int Undecided { get; set; }

    public int OtherUnits { get; set; }

    /// <summary>A mark turned up of which the sample knew nothing.</summary>
    public bool LateMark { get; set; }

    public List<string> SomeWords { get; } = [];

    public void Over(int row)
    {
        if (Overload.Length == 0)
        {
            Overload = new bool[Math.Max(capacity, Math.Max(Values.Length, Texts.Length))];
        }

        Overload[row] = true;
        Values[row] = double.NaN;
    }

    /// <summary>Makes room for more rows than the file's size let expect: rows whose last cells are missing are short.</summary>
    public void Grow(int rows)
    {
        Values = Larger(Values, rows);
        Texts = Larger(Texts, rows);
        Overload = Larger(Overload, rows);
        Ends = Larger(Ends, rows);
    }

    private static T[] Larger<T>(T[] values, int rows)
    {
        if (values.Length > 0 && values.Length < rows)
        {
            Array.Resize(ref values, rows);
        }

        return values;
    }

    /// <summary>A row that was refused leaves no mark behind for the next one in its place.</summary>
    public void Clear(int row)
    {
        if (Overload.Length > 0)
        {
            Overload[row] = false;
        }
    }

    public void Word(ReadOnlySpan<byte> cell)
    {
        Words++;
        if (SomeWords.Count < MostWords)
        {
            string word = LineWalk.Show(cell);
            if (!SomeWords.Contains(word))
            {
                SomeWords.Add(word);
            }
        }
    }

    /// <summary>Words come back: each distinct one is kept once.</summary>
    public string Text(ReadOnlySpan<byte> cell)
    {
        if (lastLength >= 0 && cell.SequenceEqual(lastCell.AsSpan(0, lastLength)))
        {
            return lastText;
        }

        if (lastCell.Length < cell.Length)
        {
            lastCell = new byte[cell.Length * 2];
        }

        cell.CopyTo(lastCell);
        lastLength = cell.Length;
        lastText = Encoding.UTF8.GetString(cell).Trim().Replace("\"\"", "\"", StringComparison.Ordinal);
        if (pool.TryGetValue(lastText, out string? known))
        {
            lastText = known;
        }
        else if (pool.Count < MostPooled)
        {
            pool[lastText] = lastText;
        }

        return lastText;
    }

    public void Cut(int rows)
    {
        Values = Values.Length > rows ? Values[..rows] : Values;
        Texts = Texts.Length > rows ? Texts[..rows] : Texts;
        Overload = Overload.Length > rows ? Overload[..rows] : Overload;
        Overload = Overload.AsSpan().Contains(true) ? Overload : [];
        Ends = Ends.Length > rows ? Ends[..rows] : Ends;
    }
}
