namespace Heatwright.Logs;

/// <summary>Where the columns of a fixed-width file stand, so that a row with gaps still finds its columns.</summary>
internal sealed record FixedColumns(int[] Edges, bool AtRight)
{
    /// <summary>The edges, if nearly all full rows share them.</summary>
    public static FixedColumns? Find(ReadOnlySpan<byte> text, IReadOnlyList<LinePlace> fullRows, int cells)
    {
        if (fullRows.Count < 3)
        {
            return null;
        }

        var cutter = new CellCutter((byte)' ');
        cutter.Cut(fullRows[^1].In(text));
        int[] ends = [.. Enumerable.Range(0, cells).Select(cutter.End)], starts = [.. Enumerable.Range(0, cells).Select(cutter.Start)];
        int sameEnds = 0, sameStarts = 0;
        foreach (var row in fullRows)
        {
            cutter.Cut(row.In(text));
            sameEnds += Enumerable.Range(0, cells).All(i => cutter.End(i) == ends[i]) ? 1 : 0;
            sameStarts += Enumerable.Range(0, cells).All(i => cutter.Start(i) == starts[i]) ? 1 : 0;
        }

        return sameEnds * 10 >= fullRows.Count * 9 ? new(ends, true) : sameStarts * 10 >= fullRows.Count * 9 ? new(starts, false) : null;
    }

    /// <summary>For each column the cell of this row that stands there, or -1; false when a cell stands between the columns.</summary>
    public bool Place(CellCutter cutter, int[] cellOf)
    {
        Array.Fill(cellOf, -1);
        int column = 0;
        for (int cell = 0; cell < cutter.Count; cell++)
        {
            int edge = AtRight ? cutter.End(cell) : cutter.Start(cell);
            while (column < Edges.Length && Edges[column] != edge)
            {
                column++;
            }

            if (column == Edges.Length)
            {
                return false;
            }

            cellOf[column++] = cell;
        }

        return true;
    }
}
