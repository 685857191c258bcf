using System.Net;
using System.Text.RegularExpressions;

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
        string[] look = (await served.Page("/look.css")).Split("@media print {", 2);
        Assert.Contains(".compare .on-paper { display: none; }", look[0], StringComparison.Ordinal);
        Assert.Contains(".compare .on-paper { display: block; }", look[1], StringComparison.Ordinal);
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
        Assert.DoesNotContain("in the first seconds", page, StringComparison.Ordinal);
    }

    /// <summary>A warm-up comes from below and stays at its target: the words of the target stand where it begins.</summary>
    [Fact]
    public async Task The_words_of_a_target_stand_clear_of_the_curve_that_reaches_it()
    {
        string page = await served.Page("/predictions/A");
        string[] targets = [.. Regex.Matches(page, "<text[^>]*>target [0-9]+</text>").Select(match => match.Value)];
        Assert.NotEmpty(targets);
        Assert.All(targets, text => Assert.Contains("text-anchor=\"start\"", text, StringComparison.Ordinal));
    }
}
