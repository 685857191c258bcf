using System.Globalization;
using System.Text;
using Heatwright.Web;

namespace Heatwright.Report;

/// <summary>A picture as a standing-alone SVG at the size of a film, 1920 by 1080, large enough to be read on a telephone.</summary>
internal static class FigureSvg
{
    /// <summary>Width, px.</summary>
    public const int Wide = 1920;

    /// <summary>Height, px.</summary>
    public const int High = 1080;

    private const double Left = 180, Right = 1790, Top = 300, Foot = 930;
    private const int MostLetters = 96;

    private static readonly string[] Dashes = ["", "22 12", "5 12", "30 10 5 10", "14 7", "4 9"];

    /// <summary>The picture. Same figure, same bytes.</summary>
    /// <param name="figure">What it shows.</param>
    /// <param name="caption">What is said under it.</param>
    /// <param name="isInvented">True: it says so in its corner.</param>
    public static string Of(Figure figure, string caption, bool isInvented)
    {
        var (first, last) = FigureRange.Across(figure);
        var (low, high) = FigureRange.Up(figure);
        var across = new PlotAxis(first, last, Left, Right);
        var up = new PlotAxis(low, high, Foot, Top);
        var svg = new StringBuilder(Head(figure));
        Text(svg, figure.Title, 60, 84, 52, weight: 700);
        if (isInvented)
        {
            Text(svg, "invented readings, for demonstration", Wide - 60, 84, 30, anchor: "end", colour: Tokens.Of("--ink-2"));
        }

        Names(svg, figure);
        Grid(svg, across, up);
        foreach (var band in figure.Bands)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path d=\"{PlotPath.Band(new([.. band.X], [.. band.Low], [.. band.High], ""), across, up)}\" fill=\"{Tokens.Slot(band.Slot)}\" fill-opacity=\"{Tokens.Of("--band")}\"/>\n");
        }

        foreach (var limit in figure.Limits)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{Left} {up.At(limit.At):0.#}H{Right}\" stroke=\"{Tokens.Of("--ink")}\" stroke-width=\"3\"/>\n");
        }

        foreach (var curve in figure.Curves)
        {
            Curve(svg, curve, across, up);
        }

        foreach (var label in EndLabel.Of(figure, (first, last), (low, high), (Foot - Top) / 3)) // moved apart in thirds: their letters are three times as large as on a page
        {
            Text(svg, label.Text, across.At(label.X) + 16, up.At(label.Y) - (3 * label.UpPx) + 14, 42, weight: 700);
        }

        Text(svg, figure.Up.Title, 60, Top - 28, 34);
        Text(svg, figure.Across.Title, Right, Foot + 92, 34, anchor: "end");
        string lines = string.Join("; ", figure.Limits.Where(limit => limit.Label.Length > 0).Select(limit => limit.Label));
        if (lines.Length > 0)
        {
            Text(svg, $"line: {lines}", Right, Top - 28, 34, anchor: "end");
        }

        Text(svg, Short(caption), 60, High - 26, 28, colour: Tokens.Of("--ink-2"));
        return svg.Append("</svg>\n").ToString();
    }

    private static string Head(Figure figure) => string.Create(CultureInfo.InvariantCulture,
        $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{Wide}\" height=\"{High}\" viewBox=\"0 0 {Wide} {High}\" role=\"img\" font-family=\"sans-serif\" fill=\"none\" stroke-linejoin=\"round\" stroke-linecap=\"round\">\n<title>{Html.Escaped(figure.Alt)}</title>\n<rect width=\"{Wide}\" height=\"{High}\" fill=\"{Tokens.Of("--well")}\"/>\n");

    /// <summary>Letters with their names, in the colour and dash of their lines, two beside each other.</summary>
    private static void Names(StringBuilder svg, Figure figure)
    {
        FigureCurve[] lines = [.. figure.Curves.Where(curve => curve.Form == FigureForm.Line && curve.EndLabel.Length > 0)];
        for (int i = 0; i < lines.Length; i++)
        {
            double x = 60 + (i % 2 * 930), y = 138 + (i / 2 * 46);
            svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{x} {y - 10}h70\" stroke=\"{Tokens.Slot(lines[i].Slot)}\" stroke-width=\"6\"{Dash(lines[i])}/>\n");
            Text(svg, lines[i].Name.Length > 56 ? lines[i].Name[..55] + "…" : lines[i].Name, x + 84, y, 28);
        }
    }

    private static void Grid(StringBuilder svg, PlotAxis across, PlotAxis up)
    {
        string grid = Tokens.Of("--line"), edge = Tokens.Of("--edge");
        foreach (double tick in up.Ticks(6))
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{Left} {up.At(tick):0.#}H{Right}\" stroke=\"{grid}\" stroke-width=\"2\"/>\n");
            Text(svg, Say.Number(tick, "0.####"), Left - 18, up.At(tick) + 12, 32, anchor: "end");
        }

        foreach (double tick in across.Ticks(8))
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{across.At(tick):0.#} {Foot}V{Top}\" stroke=\"{grid}\" stroke-width=\"2\"/>\n");
            Text(svg, Say.Number(tick, "0.####"), across.At(tick), Foot + 46, 32, anchor: "middle");
        }

        svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{Left} {Top}V{Foot}H{Right}\" stroke=\"{edge}\" stroke-width=\"3\"/>\n");
    }

    private static void Curve(StringBuilder svg, FigureCurve curve, PlotAxis across, PlotAxis up)
    {
        double[] x = [.. curve.X], y = [.. curve.Y];
        if (curve.Form == FigureForm.Line)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path d=\"{PlotPath.Line(x, y, across, up)}\" stroke=\"{Tokens.Slot(curve.Slot)}\" stroke-width=\"6\"{Dash(curve)}/>\n");
            return;
        }

        string colour = curve.Form == FigureForm.LeftOut ? Tokens.Of("--ink-3") : Tokens.Of("--measured");
        svg.Append(CultureInfo.InvariantCulture, $"<path d=\"{PlotPath.Points(new(curve.Name, x, y), across, up)}\" stroke=\"{colour}\" stroke-width=\"{(x.Length > 200 ? 8 : 14)}\"/>\n");
    }

    private static string Dash(FigureCurve curve) => Dashes[curve.Slot - 1] is { Length: > 0 } dash ? $" stroke-dasharray=\"{dash}\"" : "";

    private static void Text(StringBuilder svg, string text, double x, double y, int size, string anchor = "start", int weight = 400, string? colour = null) => svg.Append(CultureInfo.InvariantCulture,
        $"<text x=\"{x:0.#}\" y=\"{y:0.#}\" font-size=\"{size}\" font-weight=\"{weight}\" text-anchor=\"{anchor}\" fill=\"{colour ?? Tokens.Of("--ink")}\">{Html.Escaped(text)}</text>\n");

    /// <summary>The first sentence: the rest stands beside the picture.</summary>
    private static string Short(string text)
    {
        string first = text.IndexOf(". ", StringComparison.Ordinal) is var end and > 0 ? text[..(end + 1)] : text;
        return first.Length > MostLetters ? first[..(MostLetters - 1)] + "…" : first;
    }
}
