using System.Globalization;

namespace Heatwright.Web;

/// <summary>The numbers behind a picture that share their places across: one column for each curve.</summary>
/// <param name="Headings">Place first.</param>
/// <param name="Rows">Numbers in words; a dash where there is none.</param>
/// <param name="Places">How many places the picture has.</param>
internal sealed record PlotTable(IReadOnlyList<string> Headings, IReadOnlyList<IReadOnlyList<string>> Rows, int Places)
{
    /// <summary>A table to read holds no more; the file to take away holds all that is drawn.</summary>
    private const int MostRows = 30;

    /// <summary>A picture is drawn with no more points a curve.</summary>
    private const int MostPoints = 1500;

    private sealed record Column(string Name, double[] X, double[] Y);

    /// <summary>The tables of a picture: one for each set of places.</summary>
    public static IReadOnlyList<PlotTable> All(IReadOnlyList<PlotLine> lines, IReadOnlyList<PlotBand> bands, IReadOnlyList<PlotPoints> points, string across)
    {
        IEnumerable<Column> columns = [.. points.Select(one => new Column(one.Name, one.X, one.Y)), .. lines.Select(one => new Column(one.Name, one.X, one.Y)),
            .. bands.SelectMany(one => new[] { new Column($"{one.Name}, low", one.X, one.Low), new Column($"{one.Name}, high", one.X, one.High) })];
        List<List<Column>> groups = [];
        foreach (var column in columns.Where(column => column.X.Length > 0))
        {
            if (groups.FirstOrDefault(group => group[0].X.AsSpan().SequenceEqual(column.X)) is { } same)
            {
                same.Add(column);
            }
            else
            {
                groups.Add([column]);
            }
        }

        return [.. groups.Select(group => Of(group, across))];
    }

    /// <summary>Numbers as the page carries them for its script: six digits, blanks between, nothing where there is none.</summary>
    public static string Carried(IEnumerable<double> values) => string.Join(' ', values.Select(value => double.IsFinite(value) ? value.ToString("G6", CultureInfo.InvariantCulture) : ""));

    /// <summary>Places of a curve that are carried: all of it, or as many as a picture can show.</summary>
    public static int[] Kept(double[] values, int every) => [.. (values.Length > MostPoints ? PlotPath.Thin(values) : Enumerable.Range(0, values.Length)).Where((_, i) => i % every == 0)];

    private static PlotTable Of(List<Column> group, string across)
    {
        double[] x = group[0].X;
        int step = Math.Max(1, (x.Length + MostRows - 1) / MostRows);
        int[] shown = [.. Enumerable.Range(0, x.Length).Where(i => i % step == 0 || i == x.Length - 1)];
        return new([across, .. group.Select(column => column.Name)], [.. shown.Select(i => (IReadOnlyList<string>)[Words(x[i]), .. group.Select(column => Words(column.Y[i]))])], x.Length);
    }

    private static string Words(double value) => double.IsFinite(value) ? Quantities.Display.Significant(value, 4) : "—";
}
