namespace Heatwright.Logs;

/// <summary>Which mark parts the cells, and how many cells a row has: the choice that makes most cells readings.</summary>
internal static class SeparatorFinder
{
    public const int MostCells = 2048;

    /// <summary>In order of preference where two serve equally well.</summary>
    private static readonly byte[] Candidates = [(byte)';', (byte)'\t', (byte)',', (byte)'|', (byte)' ', 0];

    public readonly record struct Choice(byte Separator, int Cells, double Quality, bool HasHeader);

    private sealed record Group(int Cells, List<int> Lines, double Sum);

    public static Choice? Find(ReadOnlySpan<byte> text, LogSample sample, IReadOnlyList<byte>? allowed = null)
    {
        var found = new List<(Choice Choice, int Lines)>();
        foreach (byte separator in allowed ?? Candidates)
        {
            if (BestGroup(text, sample, separator) is { } group)
            {
                double quality = group.Sum / (group.Lines.Count * group.Cells);
                found.Add((new(separator, group.Cells, quality, HasHeader(text, sample, separator, group)), group.Lines.Count));
            }
        }

        if (found.Count == 0)
        {
            return null;
        }

        double most = found.Max(f => f.Lines);
        var best = found.MaxBy(f => Merit(f.Choice, f.Lines / most));
        // Blanks within the cells of a table of tabs part dates from clocks: the tab is the separator.
        var tabs = found.Find(f => f.Choice.Separator == '\t');
        return best.Choice.Separator == ' ' && tabs.Lines >= best.Lines && tabs.Choice.Quality >= best.Choice.Quality ? tabs.Choice : best.Choice;
    }

    /// <summary>Readable cells above all, in many lines, under a header of the same number of names; of two alike, the one with more cells.</summary>
    private static double Merit(Choice choice, double share) =>
        (choice.Quality * (0.4 + (0.6 * share))) + (choice.HasHeader ? 0.5 * share : 0) + (0.02 * Math.Min(choice.Cells, 5));

    private static Group? BestGroup(ReadOnlySpan<byte> text, LogSample sample, byte separator)
    {
        var cutter = new CellCutter(separator);
        var sums = new Dictionary<int, (List<int> Lines, double Sum)>();
        for (int i = 0; i < sample.Lines.Count; i++)
        {
            var line = sample.Lines[i].In(text);
            int cells = LogSample.IsRemark(line) ? 0 : cutter.Cut(line);
            if (cells is 0 or > MostCells || (cells == 1 && separator != 0))
            {
                continue;
            }

            double sum = 0;
            bool any = false;
            for (int c = 0; c < cells; c++)
            {
                var sort = CellSorts.Of(cutter.Text(line, c));
                any |= sort.IsReading();
                sum += sort.Weight();
            }

            if (any)
            {
                var (lines, before) = sums.TryGetValue(cells, out var group) ? group : ([], 0.0);
                lines.Add(i);
                sums[cells] = (lines, before + sum);
            }
        }

        return sums.Count == 0 ? null : sums.Select(pair => new Group(pair.Key, pair.Value.Lines, pair.Value.Sum))
            // One long line must not outweigh many short ones, nor a wide table fall behind its preamble.
            .MaxBy(group => group.Sum / Math.Sqrt(group.Cells));
    }

    /// <summary>Does one of the lines just above the readings name the same number of cells?</summary>
    private static bool HasHeader(ReadOnlySpan<byte> text, LogSample sample, byte separator, Group group)
    {
        var cutter = new CellCutter(separator);
        for (int i = group.Lines[0] - 1; i >= Math.Max(0, group.Lines[0] - 4); i--)
        {
            string[] cells = cutter.Texts(HeaderRows.Bare(sample.Lines[i].In(text)));
            if (HeaderRows.Fits(cells, group.Cells) && cells.Count(cell => CellSorts.Of(cell) is CellSort.Word) * 2 >= group.Cells
                && (group.Cells > 1 || cells[0].Length <= HeaderRows.LongestLoneName))
            {
                return true;
            }
        }

        return false;
    }
}
