using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Heatwright.Jobs;

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

    /// <summary>A warm-up comes from below and is held above its target: the words of the target stand where it begins, or below its line.</summary>
    [Fact]
    public async Task The_words_of_a_target_stand_clear_of_the_curve_that_reaches_it()
    {
        string page = await served.Page("/predictions/A");
        var targets = Regex.Matches(page, "<path class=\"limit\" d=\"M46 ([0-9.]+)H[0-9]+\"></path>\\s*<text x=\"[0-9.]+\" y=\"([0-9.]+)\" text-anchor=\"([a-z]+)\"[^>]*>target [0-9]+</text>");
        Assert.NotEmpty(targets);
        Assert.All(targets, one => Assert.True(one.Groups[3].Value == "start" || double.Parse(one.Groups[2].Value, CultureInfo.InvariantCulture) > double.Parse(one.Groups[1].Value, CultureInfo.InvariantCulture), one.Value));
    }

    /// <summary>A dot is 10 wide, a hundredth of the draws 2.6: 97 and 98 of 100 would cover one another, 80 stands apart.</summary>
    [Fact]
    public void Dots_that_would_cover_one_another_are_one_with_the_letters_of_both()
    {
        using var pieces = new Heatwright.Report.Pieces();
        static ContenderView One(string letter, double odds) => new(letter, letter, "go", 1, 1, 1, odds, 5, "", []);
        string drawn = pieces.Of<Heatwright.Web.Pieces.ValuePlot>("Of", new ComparisonView([One("A", 0.98), One("B", 0.97), One("C", 0.80)], [])).Text.Split("</figure>")[0];
        Assert.Equal(2, Regex.Count(drawn, "class=\"dots\""));
        Assert.Contains(">A, B</text>", drawn, StringComparison.Ordinal);
        Assert.Contains(">C</text>", drawn, StringComparison.Ordinal);
    }
}
