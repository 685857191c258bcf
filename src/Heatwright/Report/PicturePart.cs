using Heatwright.Web;

namespace Heatwright.Report;

/// <summary>A picture with what is said under it.</summary>
/// <param name="Figure">What it shows.</param>
/// <param name="Caption">A sentence or two; empty: none.</param>
/// <param name="Behind">Its numbers.</param>
internal sealed record Placed(Figure Figure, string Caption, Html Behind);

/// <summary>A picture in the report: drawn by the script from the JSON beside it, with its numbers one press away.</summary>
internal static class PicturePart
{
    public static Html Of(Figure figure, string caption, Html behind, bool half = false) => Html.Of($"""
        <figure class="plot {(half ? "half" : "")}"><h3>{figure.Title}</h3>
        <div class="draw h{figure.HeightPx}" role="img" aria-label="{figure.Alt}"></div>
        <script type="application/json">{new Html(FigureJson.Of(figure))}</script>
        <figcaption>{caption}</figcaption>{behind}</figure>

        """);

    /// <summary>Curves as a table at so many places, where they share their places across.</summary>
    public static Html Table(string across, IReadOnlyList<double> x, IReadOnlyList<(string Name, IReadOnlyList<double> Y)> columns, string format)
    {
        const int Most = 15;
        int step = Math.Max(1, (x.Count - 1) / Most);
        int[] rows = [.. Enumerable.Range(0, x.Count).Where(i => i % step == 0)];
        return Html.Of($"""
            <details class="behind"><summary>Numbers behind it</summary><div class="wide" tabindex="0" role="region" aria-label="Numbers behind the picture"><table><thead><tr><th class="r" scope="col">{across}</th>{Html.Each(columns, column => Html.Of($"""<th class="r" scope="col">{column.Name}</th>"""))}</tr></thead><tbody>{Html.Each(rows, i => Html.Of(
                $"""<tr><td class="r">{Say.Number(x[i], "0.##")}</td>{Html.Each(columns, column => Html.Of($"""<td class="r">{Show(column.Y, i)}</td>"""))}</tr>"""))}</tbody></table></div></details>
            """);

        string Show(IReadOnlyList<double> y, int i) => i < y.Count && double.IsFinite(y[i]) ? Say.Number(y[i], format) : "—";
    }
}
