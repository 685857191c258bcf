namespace Heatwright.Report;

/// <summary>What stretch of its axes a picture shows; fixed before it is drawn, so that the places of labels are known.</summary>
internal static class FigureRange
{
    /// <summary>From the first to the last place; readings get a little room, so that no disc is cut.</summary>
    public static (double First, double Last) Across(Figure figure)
    {
        double[] all = [.. figure.Curves.SelectMany(curve => curve.X).Where(double.IsFinite)];
        if (all.Length == 0)
        {
            return (0, 1);
        }

        double first = all.Min();
        double last = all.Max();
        double room = figure.Curves.Any(curve => curve.Form != FigureForm.Line) || last <= first ? 0.02 * Math.Max(last - first, Math.Max(1e-9, Math.Abs(last))) : 0;
        return (room == 0 && first > 0 && first < 0.1 * last ? 0 : first - room, last + room);
    }

    /// <summary>All that is drawn, with a little room, so that the places of labels are known before it is drawn.</summary>
    public static (double Low, double High) Up(Figure figure)
    {
        double[] all = [.. figure.Curves.SelectMany(curve => curve.Y).Concat(figure.Bands.SelectMany(band => band.Low.Concat(band.High))).Concat(figure.Limits.Select(limit => limit.At)).Where(double.IsFinite)];
        if (all.Length == 0)
        {
            return (0, 1);
        }

        double low = all.Min();
        double high = all.Max();
        double room = high > low ? 0.07 * (high - low) : Math.Max(0.1, 0.1 * Math.Abs(low));
        return (low >= 0 && low < 0.25 * high ? 0 : low - room, high + room);
    }
}
