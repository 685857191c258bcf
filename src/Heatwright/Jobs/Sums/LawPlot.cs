using System.Globalization;
using System.Text;
using Heatwright.Handbook;
using Heatwright.Quantities;

namespace Heatwright.Jobs.Sums;

/// <summary>A law drawn about its own example: one input runs, the rest stands. The same picture on every machine.</summary>
/// <remarks>Colours of middle lightness on no ground at all, so that a light and a dark page both carry it. Points are rounded to tenths of a unit of
/// the picture: the last digits of a function differ between processors, a picture must not.</remarks>
public static class LawPlot
{
    private const int Steps = 32;
    private const double Width = 480, Height = 260, Left = 64, Right = 16, Top = 14, Bottom = 46;

    /// <summary>The picture, or null where nothing can run or nothing changes.</summary>
    public static string? Svg(LawCard card)
    {
        ArgumentNullException.ThrowIfNull(card);
        var example = QuickSum.Run(card.Law.Name, card.Law.Example.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        if (!example.IsFine)
        {
            return null;
        }

        foreach (var input in example.Value.Inputs.Where(input => input is { Typed: true, Value: not null }))
        {
            foreach (var result in example.Value.Results.Where(result => result.Value is not null))
            {
                if (Curve(card, example.Value, input, result.Name) is { } curve)
                {
                    return Drawn(curve, input, result);
                }
            }
        }

        return null;
    }

    private static List<(double X, double Y)>? Curve(LawCard card, SumAnswer example, SumInput running, string result)
    {
        var input = card.Input(running.Name)!;
        if (input.Parameter.ParameterType != typeof(double) || input.IsYesNo)
        {
            return null;
        }

        var (from, to) = Span(input, running.Value!.Value);
        List<(double X, double Y)> points = [];
        for (int i = 0; i <= Steps; i++)
        {
            double x = from + ((to - from) * i / Steps);
            if (QuickSum.At(card, example, running.Name, x, result) is { } y && double.IsFinite(y))
            {
                points.Add((x, y));
            }
        }

        // A curve with many holes, or a line that lies flat, tells nothing.
        double[] heights = [.. points.Select(point => point.Y)];
        return points.Count > Steps * 3 / 4 && heights.Max() - heights.Min() > 1e-6 * Math.Max(Math.Abs(heights.Max()), Math.Abs(heights.Min())) ? points : null;
    }

    /// <summary>Half to double the example, or 60 % to either side on a scale of degrees; inside what the law takes and was fitted to.</summary>
    private static (double From, double To) Span(LawInput input, double at)
    {
        double reach = Math.Max(20, 0.6 * Math.Abs(at));
        var (from, to) = input.Card.Unit == "°C" || at == 0 ? (at - reach, at + reach) : at > 0 ? (0.5 * at, 2 * at) : (2 * at, 0.5 * at);
        from = Math.Max(from, Math.Max(Typed.Lowest(input), input.Card.SoftMin));
        to = Math.Min(to, Math.Min(input.Card.Max, input.Card.SoftMax));
        return from < to ? (from, to) : (0.5 * at, at);
    }

    private static string Drawn(List<(double X, double Y)> points, SumInput input, SumResult result)
    {
        var (xUnit, xScale) = Shown(input.Unit, points.Max(point => Math.Abs(point.X)));
        var (yUnit, yScale) = Shown(result.Unit, points.Max(point => Math.Abs(point.Y)));
        var xs = Ticks(points.Min(point => point.X) * xScale, points.Max(point => point.X) * xScale);
        var ys = Ticks(points.Min(point => point.Y) * yScale, points.Max(point => point.Y) * yScale);
        double X(double x) => Left + ((x - xs.From) / (xs.To - xs.From) * (Width - Left - Right));
        double Y(double y) => Height - Bottom - ((y - ys.From) / (ys.To - ys.From) * (Height - Top - Bottom));
        StringBuilder svg = new();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width:0} {Height:0}\" width=\"{Width:0}\" height=\"{Height:0}\" role=\"img\" aria-label=\"{Escaped(result.Name)} over {Escaped(input.Name)}\" font-family=\"system-ui,sans-serif\" font-size=\"11\" fill=\"#767676\">\n");
        foreach (double tick in xs.At)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{X(tick):0.0} {Top:0.0}V{Height - Bottom:0.0}\" stroke=\"#767676\" stroke-opacity=\".25\"/><text x=\"{X(tick):0.0}\" y=\"{Height - Bottom + 16:0.0}\" text-anchor=\"middle\">{Number(tick)}</text>\n");
        }

        foreach (double tick in ys.At)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{Left:0.0} {Y(tick):0.0}H{Width - Right:0.0}\" stroke=\"#767676\" stroke-opacity=\".25\"/><text x=\"{Left - 6:0.0}\" y=\"{Y(tick) + 4:0.0}\" text-anchor=\"end\">{Number(tick)}</text>\n");
        }

        string line = string.Join(' ', points.Select(point => string.Create(CultureInfo.InvariantCulture, $"{X(point.X * xScale):0.0},{Y(point.Y * yScale):0.0}")));
        svg.Append(CultureInfo.InvariantCulture, $"<polyline points=\"{line}\" fill=\"none\" stroke=\"#3a86c8\" stroke-width=\"2\" stroke-linejoin=\"round\"/>\n");
        double atX = X(input.Value!.Value * xScale), atY = Y(result.Value!.Value * yScale);
        svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{atX:0.0}\" cy=\"{atY:0.0}\" r=\"4\" fill=\"#c8643a\"><title>the example</title></circle>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{(Left + Width - Right) / 2:0.0}\" y=\"{Height - 8:0.0}\" text-anchor=\"middle\">{Escaped(Label(input.Name, xUnit))}</text>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<text transform=\"translate(13 {(Top + Height - Bottom) / 2:0.0}) rotate(-90)\" text-anchor=\"middle\">{Escaped(Label(result.Name, yUnit))}</text>\n</svg>\n");
        return svg.ToString();
    }

    private static string Label(string name, string unit) => unit.Length > 0 ? $"{name}, {unit}" : name;

    private static (string Symbol, double Scale) Shown(string symbol, double largest)
    {
        var own = SumUnits.Own(symbol);
        var unit = SumUnits.For(symbol, largest);
        return (unit.Symbol, own.Factor / unit.Factor);
    }

    /// <summary>Round numbers about a range: steps of 1, 2 or 5 and a power of ten.</summary>
    private static (double From, double To, double[] At) Ticks(double low, double high)
    {
        double rough = (high - low) / 5, power = Math.Pow(10, Math.Floor(Math.Log10(rough) + 1e-9));
        double step = power * (rough / power < 1.5 ? 1 : rough / power < 3.5 ? 2 : rough / power < 7.5 ? 5 : 10);
        long first = (long)Math.Floor((low / step) + 1e-6), last = (long)Math.Ceiling((high / step) - 1e-6);
        return (first * step, last * step, [.. Enumerable.Range(0, (int)(last - first) + 1).Select(i => (first + i) * step)]);
    }

    private static string Number(double value) => Math.Abs(value) is var size && size > 0 && (size < 1e-3 || size >= 1e6)
        ? value.ToString("0.##e+0", CultureInfo.InvariantCulture)
        : value.ToString("0.######", CultureInfo.InvariantCulture);

    private static string Escaped(string text) => text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace("\"", "&quot;", StringComparison.Ordinal);
}
