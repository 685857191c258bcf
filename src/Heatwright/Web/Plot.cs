using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Components;

namespace Heatwright.Web;

/// <summary>A curve of a picture.</summary>
public sealed record PlotLine(string Name, double[] X, double[] Y, string Colour);

/// <summary>The range between two curves.</summary>
public sealed record PlotBand(double[] X, double[] Low, double[] High, string Colour)
{
    /// <summary>What it is the range of.</summary>
    public string Name { get; init; } = "90 of 100 draws";
}

/// <summary>Readings of a picture.</summary>
public sealed record PlotPoints(string Name, double[] X, double[] Y);

/// <summary>Turns numbers into places on paper, with ticks at round numbers.</summary>
/// <param name="Low">Number at the start of the axis.</param>
/// <param name="High">Number at its end.</param>
/// <param name="From">Place of <paramref name="Low"/>.</param>
/// <param name="To">Place of <paramref name="High"/>.</param>
public sealed record PlotAxis(double Low, double High, double From, double To)
{
    /// <summary>An axis that shows all the numbers, with a little room.</summary>
    public static PlotAxis Around(IEnumerable<double> values, double from, double to, bool room)
    {
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        foreach (double value in values)
        {
            if (double.IsFinite(value))
            {
                (low, high) = (Math.Min(low, value), Math.Max(high, value));
            }
        }

        if (low > high)
        {
            (low, high) = (0, 1);
        }

        double more = high > low ? (room ? 0.06 * (high - low) : 0) : Math.Max(1, Math.Abs(low)) * 0.1;
        return new(low - more, high + more, from, to);
    }

    /// <summary>Place of a number.</summary>
    public double At(double value) => From + ((value - Low) / (High - Low) * (To - From));

    /// <summary>Round numbers along it, about so many; steps of 1, 2 or 5 times a power of ten.</summary>
    public IEnumerable<double> Ticks(int about)
    {
        double rough = (High - Low) / about;
        double power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        double step = power * (rough / power) switch { < 1.5 => 1, < 3.5 => 2, < 7.5 => 5, _ => 10 };
        for (long i = (long)Math.Ceiling(Low / step); i * step <= High; i++)
        {
            yield return Math.Round(i * step, 12);
        }
    }
}

/// <summary>Text in a drawing; written by hand, since in Razor a bare text element is a directive, not the SVG element.</summary>
internal static class PlotWords
{
    /// <param name="x">Place across.</param>
    /// <param name="y">Place of its foot.</param>
    /// <param name="anchor">start, middle or end.</param>
    /// <param name="look">Classes of the style sheet; empty: none.</param>
    /// <param name="text">The words.</param>
    public static RenderFragment At(double x, double y, string anchor, string look, string text) => builder =>
    {
        builder.OpenElement(0, "text");
        builder.AddAttribute(1, "x", PlotPath.Text(x));
        builder.AddAttribute(2, "y", PlotPath.Text(y));
        builder.AddAttribute(3, "text-anchor", anchor);
        builder.AddAttribute(4, "class", look.Length == 0 ? null : look);
        builder.AddContent(5, text);
        builder.CloseElement();
    };
}

/// <summary>Where words of a picture stand already, so that others keep clear of them.</summary>
/// <param name="left">Left end of the room for words.</param>
/// <param name="right">Its right end.</param>
internal sealed class PlotRoom(double left, double right)
{
    /// <summary>Width of a letter and height of a line as the style sheet writes them, points.</summary>
    private const double Letter = 6.6, Line = 14;

    private readonly List<(double Left, double Top, double Right, double Bottom)> taken = [];

    /// <summary>The place, of those that will do, at which the words stand clear of all others; the earlier of two that are as good.</summary>
    /// <param name="words">The words.</param>
    /// <param name="places">Foot of the words, and which end of them that is: start, middle or end.</param>
    public (double X, double Y, string Anchor) Take(string words, params (double X, double Y, string Anchor)[] places)
    {
        var best = places.MinBy(place => Covered(Box(words, place)));
        taken.Add(Box(words, best));
        return best;
    }

    private static (double Left, double Top, double Right, double Bottom) Box(string words, (double X, double Y, string Anchor) at)
    {
        double wide = Letter * words.Length, from = at.X - (at.Anchor == "end" ? wide : at.Anchor == "middle" ? wide / 2 : 0);
        return (from, at.Y - Line + 3, from + wide, at.Y + 3);
    }

    /// <summary>How much of a box lies on others, or beyond the ends.</summary>
    private double Covered((double Left, double Top, double Right, double Bottom) box) =>
        (Line * (Math.Max(0, left - box.Left) + Math.Max(0, box.Right - right)))
        + taken.Sum(other => Math.Max(0, Math.Min(box.Right, other.Right) - Math.Max(box.Left, other.Left)) * Math.Max(0, Math.Min(box.Bottom, other.Bottom) - Math.Max(box.Top, other.Top)));
}

/// <summary>Path data of curves and bands.</summary>
internal static class PlotPath
{
    private const int Stretches = 200;

    /// <summary>A line through the points; it breaks where a number is missing.</summary>
    public static string Line(double[] xs, double[] ys, PlotAxis across, PlotAxis up)
    {
        var path = new StringBuilder();
        bool pen = false;
        foreach (int i in Thin(ys))
        {
            bool there = double.IsFinite(xs[i]) && double.IsFinite(ys[i]);
            if (there)
            {
                path.Append(pen ? 'L' : 'M').Append(Text(across.At(xs[i]))).Append(' ').Append(Text(up.At(ys[i])));
            }

            pen = there;
        }

        return path.ToString();
    }

    /// <summary>The area between two curves, as far as both are there.</summary>
    public static string Band(PlotBand band, PlotAxis across, PlotAxis up)
    {
        int[] there = [.. Every(band.X.Length).Where(i => double.IsFinite(band.Low[i]) && double.IsFinite(band.High[i]))];
        return there.Length < 2 ? "" : "M" + string.Join('L', there.Select(i => Point(band.High[i], i)).Concat(there.Reverse().Select(i => Point(band.Low[i], i)))) + "Z";

        string Point(double y, int i) => $"{Text(across.At(band.X[i]))} {Text(up.At(y))}";
    }

    /// <summary>Discs for readings: short strokes with round ends, one path for all.</summary>
    public static string Points(PlotPoints points, PlotAxis across, PlotAxis up)
    {
        var path = new StringBuilder();
        foreach (int i in Thin(points.Y))
        {
            if (double.IsFinite(points.X[i]) && double.IsFinite(points.Y[i]))
            {
                path.Append('M').Append(Text(across.At(points.X[i]))).Append(' ').Append(Text(up.At(points.Y[i]))).Append("h.01");
            }
        }

        return path.ToString();
    }

    /// <summary>Place on paper as SVG writes it.</summary>
    public static string Text(double place) => place.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>Not more points than a picture can show: of each stretch the first, the least and the greatest, so that a short peak in a million readings is still seen, and a gap.</summary>
    internal static IEnumerable<int> Thin(double[] ys)
    {
        if (ys.Length <= 4 * Stretches)
        {
            return Enumerable.Range(0, ys.Length);
        }

        var kept = new SortedSet<int> { 0, ys.Length - 1 };
        for (int stretch = 0; stretch < Stretches; stretch++)
        {
            int from = (int)((long)ys.Length * stretch / Stretches), to = (int)((long)ys.Length * (stretch + 1) / Stretches);
            int least = -1, greatest = -1, gap = -1;
            for (int i = from; i < to; i++)
            {
                if (!double.IsFinite(ys[i]))
                {
                    gap = i;
                    continue;
                }

                least = least < 0 || ys[i] < ys[least] ? i : least;
                greatest = greatest < 0 || ys[i] > ys[greatest] ? i : greatest;
            }

            kept.UnionWith(((int[])[from, least, greatest, gap]).Where(i => i >= 0));
        }

        return kept;
    }

    /// <summary>Every so manieth point, the last always.</summary>
    private static IEnumerable<int> Every(int count)
    {
        int step = Math.Max(1, count / 400);
        for (int i = 0; i < count; i += step)
        {
            yield return i;
        }

        if (count > 0 && (count - 1) % step != 0)
        {
            yield return count - 1;
        }
    }
}
