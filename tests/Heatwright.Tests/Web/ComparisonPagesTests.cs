using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Heatwright.Tests.Web;

/// <summary>What stands behind the comparison, against what the commands write for machines.</summary>
public sealed class ComparisonPagesTests(ServedStudy served) : IClassFixture<ServedStudy>
{
    [Theory]
    [InlineData("md", "| --- |")]
    [InlineData("csv", "requirement,text,rank")]
    [InlineData("svg", "<svg xmlns=")]
    public async Task The_comparison_can_be_taken_away_as_a_file(string ending, string holds)
    {
        using var answer = await served.Client.GetAsync(new Uri($"/comparison.{ending}", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal($"comparison.{ending}", answer.Content.Headers.ContentDisposition!.FileName);
        Assert.Contains(holds, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_value_in_the_csv_is_the_one_machines_read()
    {
        string csv = await served.Page("/comparison.csv");
        int compared = 0;
        foreach (var arrangement in served.Json.GetProperty("arrangements").EnumerateArray())
        {
            foreach (var line in arrangement.GetProperty("requirements").EnumerateArray().Where(line => line.GetProperty("value").ValueKind == JsonValueKind.Number))
            {
                string row = csv.Split('\n').Single(row => row.StartsWith(line.GetProperty("name").GetString() + ",", StringComparison.Ordinal) && row.Contains($",{arrangement.GetProperty("letter").GetString()},", StringComparison.Ordinal));
                Assert.Equal(line.GetProperty("value").GetDouble(), double.Parse(row.Split(',')[^4], CultureInfo.InvariantCulture));
                compared++;
            }
        }

        Assert.InRange(compared, 20, 28);
    }

    [Fact]
    public async Task Why_shows_a_bar_for_each_share_of_doubt_and_the_shares_alone_never_exceed_the_whole()
    {
        string page = await served.Page("/comparison/A");
        Assert.InRange(Regex.Count(page, "<h2>What matters for"), 2, 12);
        foreach (string table in page.Split("<th class=\"r\">with all it touches</th>").Skip(1).Select(part => part.Split("</table>")[0]))
        {
            double[] alone = [.. Regex.Matches(table, "</th><td class=\"r\">([−0-9.]+)</td>").Select(match => double.Parse(match.Groups[1].Value.Replace('−', '-'), CultureInfo.InvariantCulture))];
            // First-order shares of independent sources sum to at most the whole; the estimator scatters by about 1/√128 a share.
            Assert.InRange(alone.Sum(), -0.3, 1.5);
            Assert.Equal(alone.Length, Regex.Count(table, "<path class=\"part\""));
        }

        using var missing = await served.Client.GetAsync(new Uri("/comparison/Z", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, missing.StatusCode);
    }

    [Fact]
    public async Task The_search_counts_what_it_tried_and_minutes_that_are_none_are_refused()
    {
        // By hand: 2 cells, 4 in series by 2 side by side, straight or one module, 3 heaters, 2 contacts, one switch, one pair of leads.
        Assert.Contains("192 arrangements tried", PagesTests.Visible(await served.Page("/search")), StringComparison.Ordinal);
        Assert.Contains("These are no minutes.", PagesTests.Visible(await served.Page("/next?minutes=soon")), StringComparison.Ordinal);
    }
}
