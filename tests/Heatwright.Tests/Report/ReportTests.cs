using System.Text.Json;
using System.Text.RegularExpressions;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Report;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Report;

/// <summary>The report of a study as one file.</summary>
public sealed partial class ReportTests
{
    [Fact]
    public void The_same_study_gives_the_same_bytes() => Assert.Equal(WrittenReports.Knife.Html, ReportHtml.Write(WrittenReports.Knife.Result));

    [Fact]
    public void A_tool_that_exists_has_its_column_and_an_empty_cell_where_nothing_was_read()
    {
        var result = WrittenReports.Knife.Result;
        var warm = result.Study.Brief!.Requirements.Single(line => line.Quantity == RequirementQuantity.WarmUpTime);
        ExistingTool tool = new("tool-X", "X", "mains hot knife", [new("warmUpTime", 0.5 * warm.Limit, "s", 1, "stopwatch"), new("mass", 410, "g", 0, "scale")]);
        string html = ReportHtml.Write(result with { Tools = [ToolVerdict.Of(result.Study.Brief, tool)] });
        Assert.Contains("mains hot knife, as read on it", html, StringComparison.Ordinal);
        string read = Cell(html, "X", warm.Id);
        Assert.Contains($"{(0.5 * warm.Limit).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture)}", WrittenReports.Seen(read), StringComparison.Ordinal);
        Assert.Contains("v-go", read, StringComparison.Ordinal);
        var other = result.Study.Brief.Requirements.First(line => line.Quantity == RequirementQuantity.GripTemperature);
        Assert.Contains($"data-cell=\"X {other.Id}\"></td>", html, StringComparison.Ordinal);
        Assert.Contains("mass 410 g (scale)", WrittenReports.Seen(html), StringComparison.Ordinal);
        Assert.DoesNotContain("as read on it", WrittenReports.Knife.Html, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_requirement_of_every_arrangement_shows_the_numbers_that_machines_read()
    {
        var (result, html) = WrittenReports.Knife;
        var view = JsonDocument.Parse(JsonSerializer.Serialize(StudyView.Of(result))).RootElement;
        int compared = 0;
        foreach (var arrangement in view.GetProperty("Arrangements").EnumerateArray())
        {
            string letter = arrangement.GetProperty("Letter").GetString()!;
            foreach (var line in arrangement.GetProperty("Requirements").EnumerateArray())
            {
                string cell = Cell(html, letter, line.GetProperty("Name").GetString()!);
                Assert.Contains(">" + line.GetProperty("Verdict").GetString()!.Replace("need-more-readings", "need more readings", StringComparison.Ordinal) + "<", cell, StringComparison.Ordinal);
                if (line.GetProperty("Value").ValueKind == JsonValueKind.Null)
                {
                    continue;
                }

                string symbol = line.GetProperty("Unit").GetString()!;
                string shown = Display.Rounded(line.GetProperty("Value").GetDouble(), line.GetProperty("StandardDoubt").GetDouble(), Units.Find(symbol) ?? Units.One);
                Assert.Equal(symbol == "money" ? shown.Replace("\u00A0money", "", StringComparison.Ordinal) : shown, WrittenReports.Seen(Value().Match(cell).Value));
                compared++;
            }
        }

        Assert.InRange(compared, 20, 200);
    }

    [Fact]
    public void Every_arrangement_and_every_requirement_is_there()
    {
        var (result, html) = WrittenReports.Knife;
        Assert.Equal(4, result.Verdicts.Count);
        Assert.All(result.Verdicts, verdict =>
        {
            Assert.Contains($"id=\"arrangement-{verdict.Arrangement.Letter}\"", html, StringComparison.Ordinal);
            Assert.Contains(Html.Escaped(verdict.Arrangement.Name), html, StringComparison.Ordinal);
            Assert.All(verdict.Requirements, line => Assert.Contains(Html.Escaped(line.Requirement.Text), html, StringComparison.Ordinal));
            Assert.All(verdict.Safety.Conditions, condition => Assert.Contains(Html.Escaped(condition.Words[1..]), html, StringComparison.Ordinal));
        });
    }

    [Fact]
    public void Every_finding_and_every_remark_is_there()
    {
        var (result, html) = WrittenReports.Knife;
        string seen = WrittenReports.Seen(html);
        var findings = result.Findings.SelectMany(found => found.Findings).ToArray();
        Assert.InRange(findings.Length, 10, 500);
        Assert.All(findings, finding => Assert.Contains(Display.Rounded(Heatwright.Web.Say.Scaled(finding.Value)), seen, StringComparison.Ordinal));
        Assert.All(result.Findings.SelectMany(found => found.Remarks), remark => Assert.Contains(remark.Words[1..], seen, StringComparison.Ordinal));
    }

    [Fact]
    public void An_opened_prediction_goes_down_to_runs_and_to_guesses_with_their_reason()
    {
        string cell = WrittenReports.Seen(Cell(WrittenReports.Knife.Html, "A", WrittenReports.Knife.Result.Verdicts[0].Requirements[0].Requirement.Id));
        Assert.Contains("round-discharge-1", cell, StringComparison.Ordinal); // a run of the sample
        Assert.Contains("assumed: ", cell, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("biggest shares of it", cell, StringComparison.Ordinal);
    }

    [Fact]
    public void Invented_readings_are_called_so_and_measured_ones_are_not()
    {
        Assert.Contains("Invented readings", WrittenReports.Knife.Html, StringComparison.Ordinal);
        Assert.DoesNotContain("Invented readings", WrittenReports.Logs.Html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_study_without_brief_shows_findings_and_fits_only()
    {
        var (result, html) = WrittenReports.Logs;
        Assert.Empty(result.Verdicts);
        Assert.Contains("id=\"findings\"", html, StringComparison.Ordinal);
        Assert.Contains("id=\"fits\"", html, StringComparison.Ordinal);
        Assert.Contains("id=\"cautions\"", html, StringComparison.Ordinal);
        Assert.All(["id=\"comparison\"", "id=\"curves\"", "id=\"energy\""], absent => Assert.DoesNotContain(absent, html, StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_is_asked_of_the_network()
    {
        foreach (string html in new[] { WrittenReports.Knife.Html, WrittenReports.Logs.Html })
        {
            string own = WrittenReports.Own(html);
            Assert.DoesNotMatch(Address(), own);
            Assert.DoesNotMatch(Loads(), own);
            Assert.Contains("default-src 'none'", own, StringComparison.Ordinal); // and the browser is told to refuse what the library might ask for
        }
    }

    [Fact]
    public void As_many_scripts_end_as_begin()
    {
        string html = WrittenReports.Knife.Html;
        Assert.Equal(Regex.Count(html, "<script[ >]"), Regex.Count(html, "</script>", RegexOptions.IgnoreCase));
        Assert.Equal(Regex.Count(html, "<script[ >]"), Regex.Count(html, "</script", RegexOptions.IgnoreCase));
    }

    [Fact]
    public void Every_picture_is_readable_json_with_points()
    {
        var pictures = Picture().Matches(WrittenReports.Knife.Html).Select(match => JsonDocument.Parse(match.Groups[1].Value).RootElement).ToArray();
        Assert.InRange(pictures.Length, 10, 200);
        Assert.All(pictures, picture => Assert.All(picture.GetProperty("data").EnumerateArray(), trace => Assert.NotEqual(0, trace.GetProperty("x").GetArrayLength())));
    }

    [Fact]
    public void Names_of_a_study_cannot_become_tags()
    {
        var result = WrittenReports.Logs.Result;
        const string Hostile = "<b>&\"'</script>";
        var study = result.Study with { Name = Hostile, Parts = [.. result.Study.Parts.Select(part => part with { Name = Hostile })] };
        var hostile = result with
        {
            Study = study,
            Shelf = new(study.Parts, result.Findings),
            Findings = [.. result.Findings.Select(found => found with { Pictures = [.. found.Pictures.Select(picture => picture with { Title = Hostile, XName = Hostile })] })],
        };
        string html = ReportHtml.Write(hostile);
        Assert.DoesNotContain("<b>&", html, StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;&amp;&quot;&#39;&lt;/script&gt;", html, StringComparison.Ordinal);
        Assert.Equal(Regex.Count(WrittenReports.Logs.Html, "</script", RegexOptions.IgnoreCase), Regex.Count(html, "</script", RegexOptions.IgnoreCase));
    }

    [Fact]
    public void Every_number_opens_and_says_its_origin()
    {
        string html = WrittenReports.Own(WrittenReports.Knife.Html);
        int openers = Regex.Count(html, "<details class=\"origin num\">");
        Assert.InRange(openers, 100, 5000);
        Assert.Equal(openers, Regex.Count(html, "opens where it comes from</span></summary><div class=\"from\"><p>[A-Z]"));
    }

    [Fact]
    public void Both_energy_sums_of_an_arrangement_agree() // what leaves the cells is heat in the end: two tallies of the plant, one sum
    {
        Assert.All(WrittenReports.Knife.Result.Verdicts, verdict =>
        {
            var e = verdict.Prediction!.Middle.Energies;
            double leaves = e.LoadJ + e.CellLossJ + e.LoopLossJ + e.PathLossJ;
            Assert.Equal(leaves, e.WorkJ + e.AirJ + e.StoredJ, 0.005 * leaves);
        });
    }

    [Fact]
    public void The_style_of_the_report_takes_its_colours_from_the_tokens() =>
        Assert.DoesNotMatch(Hex(), File.ReadAllText(Path.Combine(Repository.Root, "src", "Heatwright", "Report", "Assets", "report.css")));

    private static string Cell(string html, string letter, string id)
    {
        int start = html.IndexOf($"data-cell=\"{letter} {id}\"", StringComparison.Ordinal);
        Assert.InRange(start, 0, html.Length);
        return html[start..html.IndexOf("</td>", start, StringComparison.Ordinal)];
    }

    [GeneratedRegex("<data class=\"v.*?</data>", RegexOptions.Singleline)]
    private static partial Regex Value();

    [GeneratedRegex("#[0-9a-fA-F]{3,6}\\b|rgba?\\(")]
    private static partial Regex Hex();

    [GeneratedRegex("https?://", RegexOptions.IgnoreCase)]
    private static partial Regex Address();

    [GeneratedRegex("<link|<img|<iframe|\\ssrc=|@import|url\\(", RegexOptions.IgnoreCase)]
    private static partial Regex Loads();

    [GeneratedRegex("<script type=\"application/json\">(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex Picture();
}
