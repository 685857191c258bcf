using System.Net;
using System.Text.RegularExpressions;
using Heatwright.Jobs;

namespace Heatwright.Tests.Web;

/// <summary>The page where an arrangement is tried otherwise, as the server gives it.</summary>
public sealed class TryPagesTests(ServedStudy served) : IClassFixture<ServedStudy>
{
    private const string Tried = "leads+ohms=60+m%CE%A9&step-up=module&series=1";

    [Fact]
    public async Task The_address_says_what_is_tried_and_the_page_shows_it_before_and_after()
    {
        string page = await served.Page("/arrangements/A/try?" + Tried);
        string words = PagesTests.Visible(page);
        Assert.Contains("was 16.04 mΩ", words, StringComparison.Ordinal);
        Assert.Contains("value=\"60 mΩ\"", page, StringComparison.Ordinal);
        Assert.Matches("<option value=\"module\" selected", page);
        Assert.Contains("as tried", words, StringComparison.Ordinal);
        Assert.Matches("class=\"curve s0 was\"", page);
        // The study itself is asked for nothing: nothing was written.
        Assert.Equal(served.Opened.Fingerprint, OpenStudy.Read(served.Opened.Path).Value.Fingerprint);
    }

    [Fact]
    public async Task Without_a_change_the_numbers_are_those_of_the_prediction()
    {
        string page = await served.Page("/arrangements/A/try");
        double runTime = served.Json.GetProperty("arrangements")[0].GetProperty("prediction").GetProperty("runTimeS").GetDouble();
        string shown = Regex.Match(page, "data-number=\"run time\".*?data-value=\"([^\"]+)\"", RegexOptions.Singleline).Groups[1].Value;
        Assert.Equal(runTime, double.Parse(shown, System.Globalization.CultureInfo.InvariantCulture));
        Assert.Contains("disabled", Regex.Match(page, "<button class=\"btn main\"[^>]*>").Value, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Draws_say_how_far_they_are_and_the_page_has_their_verdict_afterwards()
    {
        string lines = await served.Page("/arrangements/A/try/draws?" + Tried);
        Assert.Matches("^([0-9]+ 2048\n)*$", lines);
        string seen = await served.Page("/arrangements/A/try/seen?" + Tried);
        Assert.DoesNotContain("<progress", seen, StringComparison.Ordinal);
        Assert.Equal(2, Regex.Count(seen, "class=\"verdict "));
        Assert.Contains("class=\"band f2\"", seen, StringComparison.Ordinal);
        Assert.Empty(await served.Page("/arrangements/A/try/draws?" + Tried)); // known already: nothing is drawn twice
    }

    [Fact]
    public async Task A_slip_is_told_in_the_one_shape_and_an_unknown_arrangement_is_not_here()
    {
        string slip = PagesTests.Visible(await served.Page("/arrangements/A/try?leads+ohms=soon"));
        Assert.Contains("Where", slip, StringComparison.Ordinal);
        Assert.Contains("Next", slip, StringComparison.Ordinal);
        using var none = await served.Client.GetAsync(new Uri("/arrangements/Z/try", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task Keeping_needs_the_token_of_this_bench()
    {
        using var form = new FormUrlEncodedContent([KeyValuePair.Create("leads ohms", "60 mΩ")]);
        using var answer = await served.Client.PostAsync(new Uri("/arrangements/A/try/keep", UriKind.Relative), form, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(served.Opened.Fingerprint, OpenStudy.Read(served.Opened.Path).Value.Fingerprint);
    }
}
