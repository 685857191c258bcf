using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Heatwright.Report;

/// <summary>Says a picture in the words of the drawing library. Colours are names of tokens, put in when it is drawn.</summary>
public static class FigureJson
{
    private const int TopPx = 30;
    private const int FootPx = 46;

    private static readonly string[] Dashes = ["solid", "9px,5px", "2px,5px", "12px,4px,2px,4px", "6px,3px", "1.5px,4px"];
    private static readonly string[] Markers = ["circle", "square", "triangle-up", "diamond", "x-thin-open", "triangle-down"];

    /// <summary>Data, layout and settings as one JSON object without line ends; safe between the tags of a script.</summary>
    public static string Of(Figure figure)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes))
        {
            json.WriteStartObject();
            json.WriteStartArray("data");
            foreach (var band in figure.Bands)
            {
                Band(json, band);
            }

            foreach (var curve in figure.Curves)
            {
                Curve(json, figure, curve);
            }

            json.WriteEndArray();
            Layout(json, figure);
            json.WriteStartObject("config");
            json.WriteBoolean("displayModeBar", false);
            json.WriteBoolean("displaylogo", false);
            json.WriteBoolean("responsive", true);
            json.WriteEndObject();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.ToArray());
    }

    private static void Curve(Utf8JsonWriter json, Figure figure, FigureCurve curve)
    {
        int[] kept = Thinning.Of(curve.Y, Figure.MostPoints);
        bool isLine = curve.Form == FigureForm.Line;
        json.WriteStartObject();
        json.WriteString("type", "scatter");
        json.WriteString("mode", isLine ? "lines" : "markers");
        json.WriteString("name", Plain(curve.Name));
        Numbers(json, "x", kept.Select(i => curve.X[i]));
        Numbers(json, "y", kept.Select(i => curve.Y[i]));
        json.WriteString("hovertemplate", $"%{{fullData.name}}<br>%{{y:.4~g}} {Plain(figure.Up.Unit)}<br>%{{x:.4~g}} {Plain(figure.Across.Unit)}<extra></extra>");
        if (isLine)
        {
            json.WriteStartObject("line");
            json.WriteString("color", Colour(curve.Slot));
            json.WriteString("dash", Dashes[curve.Slot - 1]);
            json.WriteNumber("width", 2);
            json.WriteEndObject();
        }
        else
        {
            bool left = curve.Form == FigureForm.LeftOut;
            Marker(json, left ? "x-thin-open" : "circle", left ? "var(--ink-3)" : "var(--measured)", left ? 8 : curve.X.Count > 200 ? 3.5 : 6);
        }

        json.WriteEndObject();
        if (isLine && figure.Curves.Count(other => other.Form == FigureForm.Line) > 1)
        {
            FewMarkers(json, curve, kept);
        }
    }

    /// <summary>The slot's marker at a few places of a line, so that lines are told apart without colour.</summary>
    private static void FewMarkers(Utf8JsonWriter json, FigureCurve curve, int[] kept)
    {
        int[] there = [.. kept.Where(i => double.IsFinite(curve.Y[i]))];
        if (there.Length < 3)
        {
            return;
        }

        // By place and not by number: instants stand closer where a tool warms up.
        double first = curve.X[there[0]];
        double step = (curve.X[there[^1]] - first) / 6;
        int[] few = [.. Enumerable.Range(1, 5).Select(k => there.MinBy(i => Math.Abs(curve.X[i] - first - ((k - 0.15 * curve.Slot) * step)))).Distinct()];
        json.WriteStartObject();
        json.WriteString("type", "scatter");
        json.WriteString("mode", "markers");
        json.WriteString("hoverinfo", "skip");
        Numbers(json, "x", few.Select(i => curve.X[i]));
        Numbers(json, "y", few.Select(i => curve.Y[i]));
        Marker(json, Markers[curve.Slot - 1], Colour(curve.Slot), 8);
        json.WriteEndObject();
    }

    private static void Marker(Utf8JsonWriter json, string symbol, string colour, double size)
    {
        json.WriteStartObject("marker");
        json.WriteString("symbol", symbol);
        json.WriteString("color", colour);
        json.WriteNumber("size", size);
        json.WriteStartObject("line");
        json.WriteNumber("width", symbol.EndsWith("open", StringComparison.Ordinal) ? 1.5 : 0);
        json.WriteString("color", colour);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    /// <summary>One closed area for each stretch in which both edges are there.</summary>
    private static void Band(Utf8JsonWriter json, FigureBand band)
    {
        int at = 0;
        while (at < band.X.Count)
        {
            int from = at;
            while (at < band.X.Count && double.IsFinite(band.Low[at]) && double.IsFinite(band.High[at]))
            {
                at++;
            }

            if (at - from >= 2)
            {
                Area(json, band, from, at);
            }

            at = Math.Max(at, from + 1);
        }
    }

    private static void Area(Utf8JsonWriter json, FigureBand band, int from, int to)
    {
        int[] low = Thinning.Of([.. band.Low.Skip(from).Take(to - from)], Figure.MostPoints);
        int[] high = Thinning.Of([.. band.High.Skip(from).Take(to - from)], Figure.MostPoints);
        json.WriteStartObject();
        json.WriteString("type", "scatter");
        json.WriteString("mode", "lines");
        json.WriteString("fill", "toself");
        json.WriteString("fillcolor", $"band(--c{band.Slot.ToString(CultureInfo.InvariantCulture)})");
        json.WriteString("hoverinfo", "skip");
        Numbers(json, "x", high.Select(i => band.X[from + i]).Concat(low.Reverse().Select(i => band.X[from + i])));
        Numbers(json, "y", high.Select(i => band.High[from + i]).Concat(low.Reverse().Select(i => band.Low[from + i])));
        json.WriteStartObject("line");
        json.WriteNumber("width", 0);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Layout(Utf8JsonWriter json, Figure figure)
    {
        var (low, high) = FigureRange.Up(figure);
        int longest = figure.Curves.Select(curve => curve.EndLabel.Length).DefaultIfEmpty(0).Max();
        json.WriteStartObject("layout");
        json.WriteBoolean("autosize", true);
        json.WriteNumber("height", figure.HeightPx);
        json.WriteBoolean("showlegend", false);
        json.WriteString("hovermode", "closest");
        json.WriteString("separators", ".\u2009");
        json.WriteString("paper_bgcolor", "rgba(0,0,0,0)");
        json.WriteString("plot_bgcolor", "var(--well)");
        json.WriteStartObject("margin");
        json.WriteNumber("l", 56);
        json.WriteNumber("r", longest == 0 ? 14 : 16 + (8 * Math.Min(longest, 18)));
        json.WriteNumber("t", TopPx);
        json.WriteNumber("b", FootPx);
        json.WriteEndObject();
        json.WriteStartObject("font");
        json.WriteString("family", "var(--face)");
        json.WriteNumber("size", 12.5);
        json.WriteString("color", "var(--ink)");
        json.WriteEndObject();
        json.WriteStartObject("hoverlabel");
        json.WriteString("bgcolor", "var(--sheet)");
        json.WriteString("bordercolor", "var(--ink)");
        json.WriteStartObject("font");
        json.WriteString("color", "var(--ink)");
        json.WriteEndObject();
        json.WriteEndObject();
        Axis(json, "xaxis", FigureRange.Across(figure), 9);
        Axis(json, "yaxis", (low, high), figure.HeightPx < 200 ? 4 : 7);
        Limits(json, figure);
        json.WriteStartArray("annotations");
        Text(json, figure.Up.Title, new("paper", 0), new("paper", 1), "left", "bottom", xShift: -46, yShift: 8);
        Text(json, figure.Across.Title, new("paper", 1), new("paper", 0), "right", "top", xShift: 0, yShift: -24);
        string lines = string.Join("; ", figure.Limits.Where(limit => limit.Label.Length > 0).Select(limit => limit.Label));
        if (lines.Length > 0)
        {
            Text(json, $"line: {lines}", new("paper", 1), new("paper", 1), "right", "bottom", xShift: 0, yShift: 8); // inside, it would lie on the curves that go for it
        }

        double heightPx = figure.HeightPx - TopPx - FootPx;
        foreach (var label in EndLabel.Of(figure, FigureRange.Across(figure), (low, high), heightPx))
        {
            Text(json, label.Text, new("x", label.X), new("y", label.Y), "left", "middle", xShift: 6, yShift: label.UpPx, bold: true);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Axis(Utf8JsonWriter json, string name, (double Low, double High) range, int ticks)
    {
        json.WriteStartObject(name);
        Numbers(json, "range", [range.Low, range.High]);
        json.WriteBoolean("zeroline", false);
        json.WriteBoolean("showline", true);
        json.WriteString("mirror", "ticks");
        json.WriteString("ticks", "inside");
        json.WriteNumber("ticklen", 5);
        json.WriteString("tickcolor", "var(--edge)");
        json.WriteString("linecolor", "var(--edge)");
        json.WriteString("gridcolor", "var(--grid)");
        json.WriteNumber("nticks", ticks);
        json.WriteBoolean("separatethousands", false);
        json.WriteString("exponentformat", "none");
        json.WriteEndObject();
    }

    private static void Limits(Utf8JsonWriter json, Figure figure)
    {
        json.WriteStartArray("shapes");
        foreach (var limit in figure.Limits)
        {
            json.WriteStartObject();
            json.WriteString("type", "line");
            json.WriteString("xref", "paper");
            json.WriteNumber("x0", 0);
            json.WriteNumber("x1", 1);
            json.WriteNumber("y0", limit.At);
            json.WriteNumber("y1", limit.At);
            json.WriteStartObject("line");
            json.WriteString("color", "var(--ink)");
            json.WriteNumber("width", 1.5);
            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private readonly record struct Place(string Axis, double At);

    private static void Text(Utf8JsonWriter json, string text, Place x, Place y, string xAnchor, string yAnchor, double xShift, double yShift, bool bold = false)
    {
        json.WriteStartObject();
        json.WriteString("text", bold ? $"<b>{Plain(text)}</b>" : Plain(text));
        json.WriteBoolean("showarrow", false);
        json.WriteString("xref", x.Axis);
        json.WriteNumber("x", x.At);
        json.WriteString("yref", y.Axis);
        json.WriteNumber("y", y.At);
        json.WriteString("xanchor", xAnchor);
        json.WriteString("yanchor", yAnchor);
        json.WriteNumber("xshift", xShift);
        json.WriteNumber("yshift", Math.Round(yShift, 1));
        json.WriteEndObject();
    }

    private static void Numbers(Utf8JsonWriter json, string name, IEnumerable<double> values)
    {
        json.WriteStartArray(name);
        foreach (double value in values)
        {
            if (double.IsFinite(value))
            {
                json.WriteRawValue(value.ToString("G6", CultureInfo.InvariantCulture)); // six digits are finer than any screen
            }
            else
            {
                json.WriteNullValue();
            }
        }

        json.WriteEndArray();
    }

    private static string Colour(int slot) => $"var(--c{slot.ToString(CultureInfo.InvariantCulture)})";

    /// <summary>The library reads a few tags in texts; a name of the study must never be one.</summary>
    private static string Plain(string text) => text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace(">", "&gt;", StringComparison.Ordinal);
}
