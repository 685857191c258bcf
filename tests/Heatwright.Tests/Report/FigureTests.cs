using System.Security.Cryptography;
using System.Text.Json;
using Heatwright.Report;

namespace Heatwright.Tests.Report;

/// <summary>What a picture says to the drawing library.</summary>
public sealed class FigureTests
{
    private static readonly FigureAxis Time = new("time", "min");
    private static readonly FigureAxis Volts = new("pack", "V");

    private static JsonElement Json(Figure figure) => JsonDocument.Parse(FigureJson.Of(figure)).RootElement;

    private static Figure One(double[] y, string end = "") => new("t", "a", Time, Volts, [new FigureCurve("A", [.. Enumerable.Range(0, y.Length).Select(i => (double)i)], y, 1) { EndLabel = end }]);

    [Fact]
    public void A_long_curve_is_thinned_and_keeps_its_peak_its_dip_and_its_ends()
    {
        double[] y = [.. Enumerable.Range(0, 20_000).Select(i => Math.Sin(i / 500.0))];
        y[7_777] = 9;
        y[13_131] = -9;
        double[] drawn = [.. Json(One(y)).GetProperty("data")[0].GetProperty("y").EnumerateArray().Select(v => v.GetDouble())];
        Assert.InRange(drawn.Length, 500, Figure.MostPoints);
        Assert.Equal(9, drawn.Max());
        Assert.Equal(-9, drawn.Min());
        Assert.Equal(y[0], drawn[0], 1e-6);
        Assert.Equal(y[^1], drawn[^1], 1e-6);
    }

    [Fact]
    public void A_gap_stays_a_gap_even_in_a_thinned_curve()
    {
        double[] y = [.. Enumerable.Range(0, 9_000).Select(i => i == 4_321 ? double.NaN : 1.0 + (i % 7))];
        Assert.Contains(Json(One(y)).GetProperty("data")[0].GetProperty("y").EnumerateArray(), v => v.ValueKind == JsonValueKind.Null);
    }

    [Fact]
    public void Tool_bar_logo_and_legend_are_off()
    {
        var json = Json(One([1, 2, 3]));
        Assert.False(json.GetProperty("config").GetProperty("displayModeBar").GetBoolean());
        Assert.False(json.GetProperty("config").GetProperty("displaylogo").GetBoolean());
        Assert.False(json.GetProperty("layout").GetProperty("showlegend").GetBoolean());
    }

    [Fact]
    public void Labels_of_lines_that_end_together_do_not_lie_on_each_other()
    {
        var figure = new Figure("t", "a", Time, Volts, [.. new[] { "A", "B", "C", "D" }.Select((name, i) => new FigureCurve(name, [0, 10], [0, 5 + (0.01 * i)], i + 1) { EndLabel = name })]);
        var labels = Json(figure).GetProperty("layout").GetProperty("annotations").EnumerateArray().Where(a => a.GetProperty("text").GetString()!.StartsWith("<b>", StringComparison.Ordinal)).ToArray();
        // Height over the plot: 300 px less 30 above and 46 below, for 0 to 5.03 and 7 of 100 more above.
        double pxEach = (300 - 30 - 46) / (5.03 * 1.07);
        double[] at = [.. labels.Select(a => (a.GetProperty("y").GetDouble() * pxEach) + a.GetProperty("yshift").GetDouble()).Order()];
        Assert.Equal(4, at.Length);
        Assert.All(Enumerable.Range(1, 3), i => Assert.InRange(at[i] - at[i - 1], 14, 100));
        Assert.InRange(at[^1], 0, 300 - 30 - 46); // beside the plot, not above it
    }

    [Fact]
    public void Names_cannot_become_tags()
    {
        string json = FigureJson.Of(One([1, 2, 3], "<b>&</script>"));
        Assert.DoesNotContain("</script", json, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain('<', json);
        Assert.Contains(JsonDocument.Parse(json).RootElement.GetProperty("layout").GetProperty("annotations").EnumerateArray(), a => a.GetProperty("text").GetString() == "<b>&lt;b&gt;&amp;&lt;/script&gt;</b>");
    }

    [Fact]
    public void A_band_with_a_gap_is_two_areas()
    {
        double[] x = [0, 1, 2, 3, 4, 5];
        var figure = One([1, 2, 3]) with { Bands = [new FigureBand(x, [0, 0, double.NaN, double.NaN, 0, 0], [1, 1, 1, 1, 1, 1], 1)] };
        Assert.Equal(2, Json(figure).GetProperty("data").EnumerateArray().Count(trace => trace.TryGetProperty("fill", out _)));
    }

    [Fact]
    public void A_curve_with_unequal_lengths_is_refused() => Assert.Throws<ArgumentException>(() => new FigureCurve("A", [1, 2], [1], 1));

    [Theory]
    [InlineData("plotly-basic.min.js")]
    [InlineData("plotly-basic.LICENSE")]
    public void The_drawing_library_is_the_one_that_was_decided_on(string name)
    {
        using var embedded = typeof(Figure).Assembly.GetManifestResourceStream("web/vendor/" + name)!;
        string decision = File.ReadAllText(Path.Combine(Repository.Root, "docs", "decisions", "0020-plotly-basic.md"));
        Assert.Contains(Convert.ToHexStringLower(SHA256.HashData(embedded)), decision, StringComparison.Ordinal);
    }
}
