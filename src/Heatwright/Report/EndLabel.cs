namespace Heatwright.Report;

/// <summary>A label beside a line's end.</summary>
/// <param name="Text">What it says.</param>
/// <param name="X">Where the line ends.</param>
/// <param name="Y">Where the line ends.</param>
/// <param name="UpPx">How far it is moved up, so that it lies on no other label.</param>
internal readonly record struct EndLabel(string Text, double X, double Y, double UpPx)
{
    private const double LinePx = 15;

    /// <summary>Labels of a picture, moved apart where they would lie on each other, and kept beside the plot.</summary>
    public static EndLabel[] Of(Figure figure, (double First, double Last) across, (double Low, double High) up, double heightPx)
    {
        var ends = figure.Curves.Where(curve => curve.EndLabel.Length > 0).Select(curve => (Curve: curve, At: LastOf(curve))).Where(end => end.At >= 0)
            .Select(end => (end.Curve.EndLabel, X: end.Curve.X[end.At], Y: end.Curve.Y[end.At])).OrderBy(end => end.Y).ToArray();
        double[] px = [.. ends.Select(end => (end.Y - up.Low) / (up.High - up.Low) * heightPx)];
        double[] at = [.. px];
        bool Near(int i, int j) => Math.Abs(ends[i].X - ends[j].X) < 0.05 * (across.Last - across.First);
        for (int i = 0; i < at.Length; i++)
        {
            at[i] = Math.Max(at[i], Enumerable.Range(0, i).Where(j => Near(i, j)).Select(j => at[j] + LinePx).DefaultIfEmpty(at[i]).Max());
        }

        for (int i = at.Length - 1; i >= 0; i--)
        {
            double top = Enumerable.Range(i + 1, at.Length - i - 1).Where(j => Near(i, j)).Select(j => at[j] - LinePx).DefaultIfEmpty(heightPx - (LinePx / 2)).Min();
            at[i] = Math.Min(at[i], top);
        }

        return [.. ends.Select((end, i) => new EndLabel(end.EndLabel, end.X, end.Y, at[i] - px[i]))];
    }

    private static int LastOf(FigureCurve curve) => Enumerable.Range(0, curve.Y.Count).LastOrDefault(i => double.IsFinite(curve.Y[i]), -1);
}
