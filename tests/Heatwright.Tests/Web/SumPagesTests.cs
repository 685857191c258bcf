using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Heatwright.Cli;
using Heatwright.Handbook;
using Heatwright.Jobs;
using Heatwright.Jobs.Sums;
using Heatwright.Web;

namespace Heatwright.Tests.Web;

/// <summary>Quick sums in the browser give what the command line gives, and every sum is an address.</summary>
public sealed partial class SumPagesTests(ServedStudy served) : IClassFixture<ServedStudy>
{
    [Theory]
    [InlineData("thermocouple-voltage", "type=K&hot=100C&cold=0C", 1e-3, 4.096)]
    [InlineData("trace-width", "current=5A&rise=20K&copper=1oz", 1e-3, 1.8158)]
    [InlineData("runtime", "capacity=0,62Ah&current=1,3A", 60, 28.6154)]
    public async Task A_sum_on_its_page_is_the_one_that_machines_read(string law, string query, double scale, double printed)
    {
        // Printed: [nist-srd60] type K, 100 °C; [ipc-2221] curve fit computed elsewhere; 0.62 Ah over 1.3 A by hand, in minutes.
        string page = await served.Page($"/sums/{law}?{query}");
        string answer = page.Split("id=\"answer\"")[1].Split("</section>")[0];
        double shown = double.Parse(DataValue().Match(answer).Groups[1].Value, CultureInfo.InvariantCulture);
        using var output = new StringWriter();
        using var error = new StringWriter();
        Assert.Equal(ExitCodes.Done, CommandLine.Run(["sum", law, .. query.Split('&'), "--json"], new Screen(output, error, false, false, 100)));
        double machine = JsonDocument.Parse(output.ToString()).RootElement.GetProperty("value").GetDouble();
        Assert.Equal(machine, shown * scale, 1e-9 * Math.Abs(machine));
        Assert.Equal(printed, shown, 0.0005);
    }

    [Fact]
    public async Task A_typed_doubt_stands_behind_the_answer_and_names_its_input()
    {
        // By hand: w ~ I^(1/0.725); ±0.1 A is a half width, u = 0.1/√3 A on 5 A, 1.1547 %; times 1/0.725 gives 1.5927 % of 1.8158 mm, 0.02892 mm.
        string page = PagesTests.Visible(await served.Page("/sums/trace-width?current=5A%C2%B10.1A&rise=20K&copper=1oz"));
        Assert.Contains("1.816 ± 0.029 mm", page.Replace('\u00A0', ' '), StringComparison.Ordinal);
        Assert.Contains("current as typed 100 of 100", page, StringComparison.Ordinal);
        Assert.Contains("understood: 20\u00A0K", page, StringComparison.Ordinal);
        Assert.Contains("heatwright sum trace-width 'current=5A±0.1A' rise=20K copper=1oz", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_problem_stands_in_its_own_field_in_the_one_shape_and_keeps_what_was_typed()
    {
        string page = await served.Page("/sums/trace-width?current=-5&rise=20K&copper=x");
        string[] fields = page.Split("<div class=\"ask\">")[1..];
        Assert.Equal(LawCard.Find("trace-width")!.Inputs.Count, fields.Length);
        Assert.Equal([true, false, true, false], fields.Select(field => field.Contains("class=\"problem\"", StringComparison.Ordinal)));
        Assert.Equal([true, false, true, false], fields.Select(field => field.Contains("aria-invalid=\"true\"", StringComparison.Ordinal)));
        Assert.Contains("value=\"-5\"", fields[0], StringComparison.Ordinal);
        Assert.Equal(["Where", "Value", "Limit", "Next"], Regex.Matches(fields[0], "<dt>(Where|Value|Limit|Next)</dt>").Select(match => match.Groups[1].Value));
        Assert.DoesNotContain("<data ", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_law_itself_refuses_stands_at_the_input_it_names()
    {
        string page = await served.Page("/sums/thermocouple-voltage?type=K&hot=1400C&cold=25C");
        string[] fields = page.Split("<div class=\"ask\">")[1..];
        Assert.Equal([false, true, false], fields.Select(field => field.Contains("class=\"problem\"", StringComparison.Ordinal)));
        Assert.Contains("1372", fields[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Outside_a_fitted_range_the_page_answers_with_a_caveat()
    {
        string page = await served.Page("/sums/storage-fade?stored=3.7V&cell=25C&time=365d");
        Assert.Contains("take the answer as rough", page, StringComparison.Ordinal);
        Assert.Contains("<data ", page.Split("id=\"answer\"")[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("trace", "trace-width", "runtime")]
    [InlineData("AMMETER burden", "ohms-from-readings", "trace-width")]
    [InlineData("°C molten", "melting-front", "runtime")]
    public async Task Typing_part_of_a_word_finds_a_sum_without_script(string find, string found, string not)
    {
        string page = await served.Page("/sums?find=" + Uri.EscapeDataString(find));
        Assert.Contains($"<a href=\"/sums/{found}\">", page, StringComparison.Ordinal);
        Assert.DoesNotContain($"<a href=\"/sums/{not}\">", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_law_has_a_page_that_answers_its_own_example_link()
    {
        string list = await served.Page("/sums");
        Assert.Equal(LawCard.All.Count, Regex.Count(list, "<a href=\"/sums/[a-z0-9-]+\">"));
        foreach (var law in LawCard.All)
        {
            string page = await served.Page("/sums/" + law.Law.Name);
            string link = WebUtility.HtmlDecode(Regex.Match(page, $"<a class=\"btn\" href=\"(/sums/{law.Law.Name}\\?[^\"]+)#answer\"").Groups[1].Value);
            string answer = (await served.Page(link)).Split("id=\"answer\"")[1].Split("</section>")[0];
            Assert.DoesNotContain("class=\"problem\"", answer, StringComparison.Ordinal);
            Assert.Equal(law.Results().Count, Regex.Count(answer, "data-result=\""));
        }
    }

    [Theory]
    [InlineData("/sums/no-such-law")]
    [InlineData("/sums/trace-width/more")]
    public async Task A_sum_that_is_not_there_says_where_to_look(string path)
    {
        using var answer = await served.Client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task Sums_answer_while_the_study_is_still_being_worked_out()
    {
        string folder = Directory.CreateTempSubdirectory("heatwright-sums-").FullName;
        try
        {
            string file = Path.Combine(folder, "knife.study");
            ServedStudy.Open(Path.Combine(Repository.Root, "samples", "rope-hot-knife"), file);

            // As nobody worked it out before: what was is remembered, and would be there at once.
            Assert.True(ChangeStudy.Run(file, "seed", study => new(study with { Seed = 20261126 })).IsFine);
            var opened = OpenStudy.Read(file).Value;
            await using var app = WebBench.Build(opened, 0);
            await app.StartAsync(TestContext.Current.CancellationToken);
            using var client = new HttpClient { BaseAddress = new Uri(WebBench.Address(app)) };
            using var json = await client.GetAsync(new Uri("/study.json", UriKind.Relative), TestContext.Current.CancellationToken);
            string page = await client.GetStringAsync(new Uri("/sums/runtime?capacity=620mAh&current=1.3A", UriKind.Relative), TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.ServiceUnavailable, json.StatusCode);
            Assert.Contains("28.62", page, StringComparison.Ordinal);
            Assert.DoesNotContain("http-equiv=\"refresh\"", page, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task What_is_typed_stays_text()
    {
        string page = await served.Page("/sums/runtime?capacity=" + Uri.EscapeDataString("<script>alert(1)</script>\""));
        Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
        Assert.Contains("value=\"&lt;script&gt;alert(1)&lt;/script&gt;&quot;\"", page, StringComparison.Ordinal);
    }

    [GeneratedRegex("<data [^>]*value=\"([^\"]+)\"")]
    private static partial Regex DataValue();
}
