using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Heatwright.Quantities;

namespace Heatwright.Tests.Web;

public sealed partial class PagesTests(ServedStudy served) : IClassFixture<ServedStudy>
{
    public static TheoryData<string> Pages => [.. ServedStudy.Pages];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Every_page_is_whole_and_says_that_the_readings_are_invented(string path)
    {
        using var answer = await served.Client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        string page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.InRange(page.Length, 4000, 400_000);
        Assert.Contains("<h1>", page, StringComparison.Ordinal);
        Assert.EndsWith("</html>", page.TrimEnd(), StringComparison.Ordinal);
        Assert.Contains("invented readings", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Working it out", page, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task A_page_loads_its_small_scripts_and_no_picture_script_and_nothing_inline(string path)
    {
        string page = await served.Page(path);
        string[] entry = path.StartsWith("/trials/", StringComparison.Ordinal) ? ["<script src=\"/entry.js\">"] : path == "/trials" ? ["<script src=\"/plan.js\">"] : path.StartsWith("/next", StringComparison.Ordinal) ? ["<script src=\"/evening.js\">"] : path.Contains("/try", StringComparison.Ordinal) ? ["<script src=\"/try.js\">"] : [];
        Assert.Equal(["<script src=\"/bench.js\">", "<script src=\"/step.js\" defer>", .. entry], Script().Matches(page).Select(match => match.Value));
        Assert.DoesNotMatch(Inline(), page);
        Assert.DoesNotContain("http://", page.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task A_page_has_one_name_no_id_twice_and_a_word_for_every_picture(string path)
    {
        string page = await served.Page(path);
        Assert.Equal(1, Regex.Count(page, "<h1>"));
        string[] ids = [.. Regex.Matches(page, " id=\"([^\"]+)\"").Select(match => match.Groups[1].Value)];
        Assert.Equal(ids.Distinct().Count(), ids.Length);
        Assert.Equal(Regex.Count(page, "role=\"img\""), Regex.Count(page, "role=\"img\" aria-label=\"[^\"]{5,}\""));
        Assert.All(Regex.Matches(page, "href=\"#([^\"]+)\"").Select(match => match.Groups[1].Value), target => Assert.Contains(target, ids));
        Assert.True(page.IndexOf("class=\"skip\"", StringComparison.Ordinal) < page.IndexOf("<header", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("/trials/round-pulses", 2, 1)]
    [InlineData("/predictions/A", 7, 10)]
    public async Task A_picture_is_drawn_for_three_widths(string path, int pictures, int curves)
    {
        string page = await served.Page(path);
        Assert.Equal(pictures, Regex.Count(page, "<figure class=\"pic\" data-across"));
        Assert.Equal(3 * (pictures + Regex.Count(page, "<figure class=\"pic flow\">")), Regex.Count(page, "role=\"img\""));
        Assert.InRange(Regex.Count(page, "class=\"dots\" d=\"M[0-9.]+ [0-9.]+h.01M") + Regex.Count(page, "class=\"band f[0-9]\" d=\"M"), pictures > 2 ? 15 : 6, (6 * pictures) + 3); // draws, and lowest to highest where there are more pieces than places
        Assert.Equal(3 * curves, Regex.Count(page, "class=\"curve s[0-9]\" d=\"M[0-9.]+ [0-9.]+L"));
    }

    [Fact]
    public async Task A_fit_has_its_band_the_path_its_point_and_each_claim_its_place_beside_what_was_read()
    {
        string fit = await served.Page("/trials/round-pulses");
        var found = served.Result.Findings.Single(one => one.Part.Name == "round").Pictures.Single(one => one.Title.StartsWith("round-pulses", StringComparison.Ordinal));
        double[] low = Carried(fit, "data-form=\"band\"", "low"), high = Carried(fit, "data-form=\"band\"", "high");
        double widest = found.Doubt.Where(double.IsFinite).Max();
        Assert.True(widest is > 1e-5 and < 0.1, $"{widest} V");
        Assert.Equal(4 * widest, low.Zip(high, (a, b) => b - a).Max(), 2e-4);

        // Arrangement B ends at its module's lock-out: the last point stands just below it.
        string path = await served.Page("/predictions/B");
        var prediction = served.Result.Verdicts.Single(one => one.Arrangement.Letter == "B").Prediction!;
        var end = Heatwright.Plant.OperatingPicture.Of(prediction.Builder.Build(prediction.Builder.Middle), prediction.Middle.Trace)!.Moments[^1];
        Assert.InRange(end.Point.PackA, 0.95 * end.LockOutA, end.LockOutA);
        Assert.Contains($">{end.Point.PackA.ToString("0.00", CultureInfo.InvariantCulture)}</td>", path, StringComparison.Ordinal);
        Assert.Contains("regulated: the module holds its set volts", path, StringComparison.Ordinal);
        var energies = prediction.Middle.Energies;
        Assert.Contains(FormattableString.Invariant($">cells give {(energies.LoadJ + energies.CellLossJ + energies.LoopLossJ + energies.PathLossJ) / prediction.Middle.RunTimeS:0.0} W</text>"), path, StringComparison.Ordinal);

        string shelf = Visible((await served.Page("/shelf")).Split("id=\"said-against-read\"")[1].Split("</section>")[0]);
        Assert.Contains("capacity, round cell", shelf, StringComparison.Ordinal);
        Assert.Contains("contradicted, −39%", shelf, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("A")]
    [InlineData("B")]
    public async Task Worst_cases_are_those_of_the_commands_answer(string letter)
    {
        string table = (await served.Page("/predictions/" + letter)).Split("id=\"worst\"")[1].Split("</section>")[0];
        var said = Heatwright.Jobs.ToolView.Of(Heatwright.Jobs.PredictTool.Run(served.Result.Study, letter, 0, null, TestContext.Current.CancellationToken).Value).WorstCases;
        Assert.Equal(said.Count, Regex.Count(table, "<tbody data-case="));
        foreach (var one in said.Where(one => one.Name is "cold day" or "switch stuck on" or "weak cell" or "all cells weak"))
        {
            string rows = WebUtility.HtmlDecode(table).Split($"data-case=\"{one.Name}\"")[1].Split("</tbody>")[0];
            Assert.Contains($"data-of=\"runTime\">{Heatwright.Web.Say.Time(one.RunTimeS)}</td>", rows, StringComparison.Ordinal);
            Assert.Contains($">{Heatwright.Web.Say.Number(one.GripC, "0.0")}</td>", rows, StringComparison.Ordinal);
            Assert.Contains(one.Missed.Count > 0 ? "Missed: " : one.Lines == 0 ? "No line of the brief" : one.Name == "switch stuck on" ? "What is asked of heat and amps is kept." : "The brief is kept.", rows, StringComparison.Ordinal);

            // Two sentences have a blank between them, wherever the first ends.
            Assert.DoesNotMatch(@"(\.|</b>)<span>", rows);
        }
    }

    private static double[] Carried(string page, string form, string what) =>
        [.. Regex.Match(page.Split(form)[1].Split('>')[0], $"data-{what}=\"([^\"]*)\"").Groups[1].Value.Split(' ').Select(one => double.Parse(one, CultureInfo.InvariantCulture))];

    [Fact]
    public void A_peak_of_one_reading_in_a_million_stays_in_the_picture()
    {
        double[] readings = [.. Enumerable.Range(0, 1_000_000).Select(i => i == 654_321 ? 99.0 : i % 7)];
        readings[100_000] = double.NaN;
        int[] drawn = [.. Heatwright.Web.PlotPath.Thin(readings)];
        Assert.InRange(drawn.Length, 400, 900);
        Assert.Contains(654_321, drawn);
        Assert.Contains(100_000, drawn);
        Assert.Equal((0, 999_999), (drawn[0], drawn[^1]));
        Assert.Equal(drawn.Order(), drawn);
    }

    [Fact]
    public async Task Every_value_on_the_comparison_is_the_one_machines_read()
    {
        string page = await served.Page("/comparison");
        int compared = 0;
        foreach (var arrangement in served.Json.GetProperty("arrangements").EnumerateArray())
        {
            foreach (var line in arrangement.GetProperty("requirements").EnumerateArray())
            {
                string key = $"data-cell=\"{arrangement.GetProperty("letter").GetString()} {line.GetProperty("name").GetString()}\"";
                string cell = page.Split(key)[1].Split("</td>")[0];
                if (line.GetProperty("value") is { ValueKind: JsonValueKind.Number } value)
                {
                    Assert.Equal(value.GetDouble(), double.Parse(DataValue().Match(cell).Groups[1].Value, CultureInfo.InvariantCulture));
                    Assert.Contains(Display.Value(value.GetDouble(), line.GetProperty("standardDoubt").GetDouble()), Visible(cell), StringComparison.Ordinal);
                    compared++;
                }

                Assert.Contains(line.GetProperty("verdict").GetString()!.Replace("need-more-readings", "need more readings", StringComparison.Ordinal), Visible(cell), StringComparison.Ordinal);
            }
        }

        Assert.InRange(compared, 20, 28);
    }

    [Theory]
    [InlineData("A")]
    [InlineData("B")]
    [InlineData("D")]
    public async Task What_came_out_of_the_cells_is_what_became_heat_or_work(string letter)
    {
        // Energy is conserved: heater and losses on one side, work, air and what is left in the tool on the other.
        var sums = Sum().Matches(await served.Page("/predictions/" + letter)).Select(match => double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)).ToArray();
        Assert.Equal(2, sums.Length);
        Assert.InRange(sums[0], 100, 1e6);
        Assert.InRange(sums[1] / sums[0], 0.995, 1.005);
    }

    [Theory]
    [InlineData("A", "round", 2)]
    [InlineData("B", "round", 1)]
    public async Task The_loop_counts_every_cell_in_series(string letter, string cell, int series)
    {
        double one = served.Json.GetProperty("findings").EnumerateArray().Single(finding => finding.GetProperty("part").GetString() == cell && finding.GetProperty("name").GetString() == "ohms").GetProperty("value").GetDouble();
        string loop = (await served.Page("/arrangements/" + letter)).Split("loop-table")[1].Split("</table>")[0];
        double[] ohms = [.. loop.Split("<tr").Skip(2).Select(row => DataValue().Match(row).Groups[1].Value)
            .Select((text, i) => double.Parse(text, CultureInfo.InvariantCulture) * (loop.Split("<tr")[i + 2].Contains("mΩ</span></data>", StringComparison.Ordinal) ? 1e-3 : 1))];
        Assert.Equal(series * one, ohms[0], 1e-9);
        Assert.Equal(ohms[..^1].Sum(), ohms[^1], 1e-9);
    }

    [Fact]
    public async Task Every_number_opens_its_origin()
    {
        foreach (string path in ServedStudy.Pages)
        {
            string page = await served.Page(path);
            if (path.StartsWith("/build-sheet", StringComparison.Ordinal))
            {
                // The sheet's numbers open as they do in the file that is printed; inside an opened one stand those it rests on.
                Assert.InRange(Regex.Count(page, "<details class=\"origin num\">"), 60, 300);
                continue;
            }

            Assert.Equal(Regex.Count(page, "<data "), Regex.Count(page, "<details class=\"num\">"));
            Assert.Equal(Regex.Count(page, "<data "), Regex.Count(page, "<div class=\"origin\">"));
        }

        Assert.InRange(Regex.Count(await served.Page("/shelf"), "<data "), 60, 400);
    }

    [Fact]
    public async Task Every_remark_stands_on_the_page_of_its_trial()
    {
        foreach (var remark in served.Json.GetProperty("remarks").EnumerateArray())
        {
            string page = Visible(await served.Page("/trials/" + remark.GetProperty("trial").GetString()));
            string words = remark.GetProperty("words").GetString()!;
            Assert.Contains(char.ToUpperInvariant(words[0]) + words[1..], page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_start_names_what_the_best_choice_lacks_as_the_page_of_readings_does()
    {
        string page = Visible(await served.Page("/"));
        Assert.Contains("No reading here would change the choice, but do not build it as it stands: A is the best choice, once there is per-cell supervision", Visible(await served.Page("/next")), StringComparison.Ordinal);
        Assert.Contains("Get per-cell supervision", page.Split("Next step")[1], StringComparison.Ordinal);
        Assert.DoesNotContain("Take the ", page.Split("Next step")[1], StringComparison.Ordinal);
        Assert.Contains("Lithium cells:", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Each_stage_is_on_the_rule_and_the_later_ones_say_so()
    {
        string page = await served.Page("/comparison");
        Assert.Equal(9, Regex.Count(page, "<li class=\"done-"));
        Assert.Single(Regex.Matches(page, "aria-current=\"page\""));
        Assert.Contains("Freeze the decision", Visible(await served.Page("/decision")), StringComparison.Ordinal);
        Assert.Contains("Decide first", Visible(await served.Page("/check")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/nothing-here")]
    [InlineData("/trials/no-such-trial")]
    [InlineData("/arrangements/Z")]
    [InlineData("/predictions/<b>")]
    public async Task An_unknown_page_says_what_where_and_what_next(string path)
    {
        using var answer = await served.Client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        string page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("There is no such page.", page, StringComparison.Ordinal);
        Assert.Contains(path, Visible(page), StringComparison.Ordinal);
        Assert.Equal(["Where", "Value", "Limit", "Next"], Regex.Matches(page, "<dt>(Where|Value|Limit|Next)</dt>").Select(match => match.Groups[1].Value));
        Assert.DoesNotContain("<b>\"", page, StringComparison.Ordinal);
    }

    /// <summary>Text as a reader sees it: tags gone, entities read, blanks as one.</summary>
    internal static string Visible(string html) => Blanks().Replace(WebUtility.HtmlDecode(Tag().Replace(html, "")), " ");

    [GeneratedRegex("<script[^>]*>")]
    private static partial Regex Script();

    [GeneratedRegex("<style| style=\"| on[a-z]+=\"|javascript:")]
    private static partial Regex Inline();

    [GeneratedRegex("<data [^>]*value=\"([^\"]+)\"")]
    private static partial Regex DataValue();

    [GeneratedRegex("together</th><td class=\"r\">([0-9]+)</td>")]
    private static partial Regex Sum();

    [GeneratedRegex("<[^>]+>")]
    private static partial Regex Tag();

    [GeneratedRegex("[\\s-[\u00A0]]+")]
    private static partial Regex Blanks();
}
