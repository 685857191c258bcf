using System.Globalization;
using System.Text;

namespace Heatwright.BuildSheets;

/// <summary>The handle drawn to scale: along it from the side, and one cut for every station. One unit is a millimetre; printed at 100 % it is 1:1.</summary>
public static class SectionDrawing
{
    private const double Margin = 8;

    // Attributes, not a style: a page whose policy forbids styles of its own still shows the drawing.
    private static readonly (string Name, string Drawn)[] Drawn =
    [
        ("d", "fill=\"none\" stroke=\"#111\" stroke-width=\".35\""), ("w", "fill=\"none\" stroke=\"#111\" stroke-width=\".7\""), ("c", "fill=\"#f1efe8\" stroke=\"#111\" stroke-width=\".35\""),
        ("g", "fill=\"#fff\""),
        ("t", "font-family=\"sans-serif\" font-size=\"2.6\" fill=\"#111\""), ("s", "font-family=\"sans-serif\" font-size=\"2.2\" fill=\"#111\""),
    ];

    /// <summary>The drawing as SVG, in black, with text in the size of a drawing.</summary>
    public static string Svg(PackedHandle handle, string title)
    {
        double width = handle.Hole.WidthMm, height = handle.Hole.IsRound ? width : handle.Hole.HeightMm;
        double[] cuts = [.. handle.Places.Select(place => place.FromMm).Distinct().Order()];
        double[][] shown = [.. cuts.Select(cut => handle.Places.Where(place => place.FromMm <= cut + 0.01 && place.ToMm > cut + 0.01).Select(place => place.FromMm).ToArray())];
        int perRow = Math.Max(1, (int)((handle.LengthMm + 1) / (width + Margin)));
        int rows = (shown.Length + perRow - 1) / perRow;
        double all = Math.Max(handle.LengthMm, width) + (2 * Margin), high = height + (2 * Margin) + 10 + (rows * (height + 12)) + 6;
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{N(all)}mm\" height=\"{N(high)}mm\" viewBox=\"0 0 {N(all)} {N(high)}\" role=\"img\" aria-label=\"{Escaped(title)}\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"g\" width=\"{N(all)}\" height=\"{N(high)}\"/>\n<text class=\"t\" x=\"{N(Margin)}\" y=\"4\">{Escaped(title)}, millimetres, 1:1 when printed at 100 %{(handle.Assumed.Length > 0 || handle.Places.Any(place => place.Thing.Assumed.Length > 0) ? "; * size assumed" : "")}</text>\n");
        double middle = Margin + (height / 2);
        svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"w\" x=\"{N(Margin)}\" y=\"{N(Margin)}\" width=\"{N(handle.LengthMm)}\" height=\"{N(height)}\"/>\n");
        List<(double X, double Y, string Text)> labels = [];
        foreach (var place in handle.Places.OrderBy(place => place.Across.XMm))
        {
            double h = place.Across.Shape.IsRound ? place.Across.Shape.WidthMm : place.Across.Shape.HeightMm;
            double y = middle - place.Across.YMm - (h / 2);
            svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"c\" x=\"{N(Margin + place.FromMm)}\" y=\"{N(y)}\" width=\"{N(place.ToMm - place.FromMm)}\" height=\"{N(h)}\"/>\n");
            labels.Add(Free(labels, Margin + ((place.FromMm + place.ToMm) / 2), y + (h / 2) + 0.9, Label(handle, place)));
        }

        // Behind all things: what lies in front of another must not hide its number.
        foreach (var (x, y, text) in labels)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<text class=\"t\" x=\"{N(x)}\" y=\"{N(y)}\" text-anchor=\"middle\">{text}</text>\n");
        }

        // The balance point is marked above and below the handle, never through it: numbers stand there.
        double balance = Margin + handle.BalanceMm;
        svg.Append(CultureInfo.InvariantCulture, $"<path class=\"d\" d=\"M{N(balance)} {N(Margin - 2.5)}V{N(Margin)}M{N(balance)} {N(Margin + height)}v2.6\"/>\n<text class=\"s\" x=\"{N(balance + 0.6)}\" y=\"{N(Margin + height + 2.6)}\">balance {N(handle.BalanceMm)}</text>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<path class=\"d\" d=\"M{N(Margin)} {N(Margin + height + 6)}h{N(handle.LengthMm)}m0 -1v2m-{N(handle.LengthMm)} 0v-2\"/>\n<text class=\"s\" x=\"{N(Margin + (handle.LengthMm / 2))}\" y=\"{N(Margin + height + 5.4)}\" text-anchor=\"middle\">{N(handle.LengthMm)}{(handle.Assumed.Length > 0 ? $" ({handle.Assumed} of the handle assumed)" : "")}</text>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<text class=\"s\" x=\"{N(Margin)}\" y=\"{N(Margin + height + 9)}\">cool end</text>\n<text class=\"s\" x=\"{N(Margin + handle.LengthMm)}\" y=\"{N(Margin + height + 9)}\" text-anchor=\"end\">hot end</text>\n");
        for (int cut = 0; cut < cuts.Length; cut++)
        {
            Cut(svg, handle, cuts[cut], Margin + (width / 2) + (cut % perRow * (width + Margin)), Margin + height + 16 + (height / 2) + (cut / perRow * (height + 12)), width, height);
        }

        svg.Append("</svg>\n");
        foreach (var (name, drawn) in Drawn)
        {
            svg.Replace($"class=\"{name}\"", drawn);
        }

        return svg.ToString();
    }

    /// <summary>Number of a place in the drawing and in the list beside it.</summary>
    public static int Number(PackedHandle handle, PackedPlace place) => 1 + handle.Places.ToList().IndexOf(place);

    private static string Label(PackedHandle handle, PackedPlace place) => Number(handle, place).ToString(CultureInfo.InvariantCulture) + (place.Thing.Assumed.Length > 0 ? "*" : "");

    /// <summary>Where a label is on no other one: as near to its place along the handle as can be.</summary>
    private static (double X, double Y, string Text) Free(List<(double X, double Y, string Text)> labels, double x, double y, string text)
    {
        const double wide = 4.2, high = 2.6;
        double[] shifts = [0, .. Enumerable.Range(1, labels.Count).SelectMany(i => new[] { i * wide, -i * wide })];
        return (x + shifts.First(shift => labels.All(other => Math.Abs(other.X - x - shift) >= wide - 1e-9 || Math.Abs(other.Y - y) >= high)), y, text);
    }

    private static void Cut(StringBuilder svg, PackedHandle handle, double at, double x, double y, double width, double height)
    {
        svg.Append(CultureInfo.InvariantCulture, $"<text class=\"s\" x=\"{N(x)}\" y=\"{N(y - (height / 2) - 1)}\" text-anchor=\"middle\">cut at {N(at)}</text>\n");
        svg.Append(handle.Hole.IsRound
            ? string.Create(CultureInfo.InvariantCulture, $"<circle class=\"w\" cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"{N(width / 2)}\"/>\n")
            : string.Create(CultureInfo.InvariantCulture, $"<rect class=\"w\" x=\"{N(x - (width / 2))}\" y=\"{N(y - (height / 2))}\" width=\"{N(width)}\" height=\"{N(height)}\"/>\n"));
        foreach (var place in handle.Places.Where(place => place.FromMm <= at + 0.01 && place.ToMm > at + 0.01))
        {
            var (shape, cx, cy) = (place.Across.Shape, x + place.Across.XMm, y - place.Across.YMm);
            svg.Append(shape.IsRound
                ? string.Create(CultureInfo.InvariantCulture, $"<circle class=\"c\" cx=\"{N(cx)}\" cy=\"{N(cy)}\" r=\"{N(shape.WidthMm / 2)}\"/>\n")
                : string.Create(CultureInfo.InvariantCulture, $"<rect class=\"c\" x=\"{N(cx - (shape.WidthMm / 2))}\" y=\"{N(cy - (shape.HeightMm / 2))}\" width=\"{N(shape.WidthMm)}\" height=\"{N(shape.HeightMm)}\"/>\n"));
            svg.Append(CultureInfo.InvariantCulture, $"<text class=\"t\" x=\"{N(cx)}\" y=\"{N(cy + 0.9)}\" text-anchor=\"middle\">{Label(handle, place)}</text>\n");
        }
    }

    private static string N(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    private static string Escaped(string text) => text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace(">", "&gt;", StringComparison.Ordinal).Replace("\"", "&quot;", StringComparison.Ordinal);
}
