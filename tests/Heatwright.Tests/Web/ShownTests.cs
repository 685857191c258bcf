using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Heatwright.Jobs;
using Heatwright.Web;
using Heatwright.Web.Pieces;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;

namespace Heatwright.Tests.Web;

/// <summary>What stands on the sample's pages where a maker looked twice.</summary>
public sealed class ShownTests(ServedStudy served) : IClassFixture<ServedStudy>
{
    [Fact]
    public async Task On_paper_every_cell_of_the_comparison_has_its_reason()
    {
        string page = await served.Page("/comparison");
        string[] folded = [.. Regex.Matches(page, "<details class=\"behind no-print\"><summary>why</summary>([^<]*)</details>").Select(match => match.Groups[1].Value)];
        string[] paper = [.. Regex.Matches(page, "<span class=\"reason on-paper\"[^>]*>([^<]*)</span>").Select(match => match.Groups[1].Value)];
        Assert.NotEmpty(folded);
        Assert.Equal(folded, paper);
        string rule = Assert.Single(Regex.Matches(await served.Page("/look.css"), "[^\\n]*on-paper[^\\n]*")).Value;
        Assert.Equal("@media screen { .compare .on-paper { display: none; } }", rule);
    }

    [Theory]
    [InlineData("C")]
    [InlineData("D")]
    public async Task A_picture_of_the_build_sheet_that_is_asked_for_first_waits_for_the_sheet(string letter)
    {
        using var answer = await served.Client.GetAsync(new Uri($"/build-sheet/{letter}/files/handle.svg", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("image/svg+xml", answer.Content.Headers.ContentType!.MediaType);
        using var none = await served.Client.GetAsync(new Uri($"/build-sheet/{letter}/files/none.svg", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    /// <summary>The blade of the sample is judged at 320 °C.</summary>
    [Fact]
    public async Task A_loop_says_of_which_heat_the_ohms_of_its_heater_are()
    {
        string page = PagesTests.Visible(await served.Page("/arrangements/A"));
        Assert.Contains("The loop with a full pack, the heater at 320 °C", page, StringComparison.Ordinal);
        Assert.Contains("The loop with the pack at its cut-off, the heater at 320 °C", page, StringComparison.Ordinal);
        Assert.DoesNotContain("full pack, in the first seconds", page, StringComparison.Ordinal);
    }

    /// <summary>By hand: a curve that rises to 160 leaves the place above 150 free at its left; one that stays at 160 leaves only what is below the line; one at 20 leaves the usual place free.</summary>
    [Theory]
    [InlineData(20, 160, "start", false)]
    [InlineData(160, 160, "end", true)]
    [InlineData(20, 20, "end", false)]
    public async Task The_words_of_a_limit_stand_clear_of_the_curve(double first, double then, string anchor, bool below)
    {
        double[] across = [.. Enumerable.Range(0, 101).Select(i => (double)i)], up = [.. across.Select(t => t <= 50 ? first + ((then - first) * t / 50) : then)];
        await using var services = new ServiceCollection().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        var with = ParameterView.FromDictionary(new Dictionary<string, object?>
        {
            ["Lines"] = (IReadOnlyList<PlotLine>)[new PlotLine("middle run", across, up, "s2")],
            ["Limits"] = (IReadOnlyList<(string Name, double At)>)[("target", 150), ("floor", -100), ("ceiling", 300)],
        });
        string drawn = await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<PlotFrame>(with)).ToHtmlString());
        var words = Regex.Matches(drawn, "<path class=\"limit\" d=\"M46 ([0-9.]+)H[0-9]+\"></path>\\s*<text x=\"[0-9.]+\" y=\"([0-9.]+)\" text-anchor=\"([a-z]+)\"[^>]*>target 150</text>");
        Assert.Equal(3, words.Count);
        Assert.All(words, one => Assert.Equal((anchor, below), (one.Groups[3].Value, double.Parse(one.Groups[2].Value, CultureInfo.InvariantCulture) > double.Parse(one.Groups[1].Value, CultureInfo.InvariantCulture))));
    }

    /// <summary>A dot is 10 wide, a hundredth of the draws 2.6: 97 and 98 of 100 would cover one another, 80 stands apart.</summary>
    [Fact]
    public void Dots_that_would_cover_one_another_are_one_with_the_letters_of_both()
    {
        using var pieces = new Heatwright.Report.Pieces();
        static ContenderView One(string letter, double odds) => new(letter, letter, "go", 1, 1, 1, odds, 5, "", []);
        string drawn = pieces.Of<ValuePlot>("Of", new ComparisonView([One("A", 0.98), One("B", 0.97), One("C", 0.80)], [])).Text.Split("</figure>")[0];
        Assert.Equal(2, Regex.Count(drawn, "class=\"dots\""));
        Assert.Contains(">A, B</text>", drawn, StringComparison.Ordinal);
        Assert.Contains(">C</text>", drawn, StringComparison.Ordinal);
    }

    /// <summary>By hand: a letter is 8 wide. Those of 81 of 100 begin at 60 + 260 · 0.84 = 278, those of 95 end at 60 + 260 · 0.92 = 299, clear of them; those of 82 begin at 281, those of 94 begin at 289 and end at 297, too near to stand beside them.</summary>
    [Theory, InlineData(0.81, 0.95, 0), InlineData(0.94, 0.82, 14)]
    public void Letters_of_two_dots_stand_clear_of_one_another(double one, double other, double apart)
    {
        using var pieces = new Heatwright.Report.Pieces();
        static ContenderView One(string letter, double odds) => new(letter, letter, "go", 1, 1, 1, odds, 5, "", []);
        string drawn = pieces.Of<ValuePlot>("Of", new ComparisonView([One("A", one), One("C", other)], [])).Text.Split("</figure>")[0];
        double[] feet = [.. Regex.Matches(drawn, "y=\"([0-9.]+)\"[^>]*>[AC, ]+</text>").Select(match => double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture))];
        Assert.Equal(apart, feet.Max() - feet.Min(), 1e-6);
    }
}
