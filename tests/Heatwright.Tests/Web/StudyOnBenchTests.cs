using System.Net;
using Heatwright.Cli;
using Heatwright.Jobs;
using Heatwright.StudyFile;
using Heatwright.Web;

namespace Heatwright.Tests.Web;

public sealed class StudyOnBenchTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("heatwright-bench-").FullName;

    private string StudyPath => Path.Combine(folder, "bow.study");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task Until_the_result_is_there_a_page_says_that_it_is_being_worked_out_and_asks_again()
    {
        // The bow's duty goes through the general stepper and takes seconds: the knife may be worked out before the page is asked for.
        ServedStudy.Open(Path.Combine(Repository.Root, "samples", "foam-bow"), StudyPath);
        using (var book = StudyBook.Open(StudyPath, readOnly: false, TimeProvider.System).Value)
        {
            book.Write("Seeded", book.Read() with { Seed = 4711 }); // a verdict is remembered by all that it rests on: no other test has worked this one out
        }

        await using var app = WebBench.Build(OpenStudy.Read(StudyPath).Value, 0);
        await app.StartAsync(Stop);
        using var client = new HttpClient { BaseAddress = new Uri(WebBench.Address(app)) };
        string page = await client.GetStringAsync(new Uri("/comparison", UriKind.Relative), Stop);
        Assert.Contains("Working it out", page, StringComparison.Ordinal);
        Assert.Contains("http-equiv=\"refresh\"", page, StringComparison.Ordinal);
        using var json = await client.GetAsync(new Uri("/study.json", UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, json.StatusCode);
    }

    [Fact]
    public async Task A_changed_file_is_shown_as_it_stands_and_a_lost_one_is_told()
    {
        Assert.True(NewStudy.Create(StudyPath, "foam bow").IsFine);
        await using var app = WebBench.Build(OpenStudy.Read(StudyPath).Value, 0);
        await app.StartAsync(Stop);
        using var client = new HttpClient { BaseAddress = new Uri(WebBench.Address(app)) };
        await WebBench.ReadyAsync(app);
        Assert.Contains("Foam bow", await client.GetStringAsync(new Uri("/", UriKind.Relative), Stop), StringComparison.Ordinal);
        using (var book = StudyBook.Open(StudyPath, readOnly: false, TimeProvider.System).Value)
        {
            book.Write("Renamed", book.Read() with { Name = "wax pen" });
        }

        await WebBench.ReadyAsync(app);
        Assert.Contains("Wax pen", await client.GetStringAsync(new Uri("/", UriKind.Relative), Stop), StringComparison.Ordinal);
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        File.Delete(StudyPath);
        string lost = await client.GetStringAsync(new Uri("/", UriKind.Relative), Stop);
        Assert.Contains("class=\"problem\"", lost, StringComparison.Ordinal);
        Assert.Contains("shown is what was read last", lost, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_struck_line_keeps_its_place_and_tells_why()
    {
        var study = Bundle.Read(Path.Combine(Repository.Root, "samples", "rope-hot-knife")).Value;
        var trial = study.Trials.Single(one => one.Id.Name == "leads-drop");
        var run = trial.Runs[0];
        var struck = run with { Readings = [.. run.Readings.Select(reading => reading.Number == 2 ? reading with { StruckBecause = "clip moved" } : reading)] };
        var small = study with { Brief = null, Arrangements = [], Parts = [.. study.Parts.Where(part => part.Id == trial.Part)], Trials = [trial with { Runs = [struck] }] };
        StudyBook.Create(StudyPath, small, TimeProvider.System).Value.Dispose();
        await using var app = WebBench.Build(OpenStudy.Read(StudyPath).Value, 0);
        await app.StartAsync(Stop);
        await WebBench.ReadyAsync(app);
        using var client = new HttpClient { BaseAddress = new Uri(WebBench.Address(app)) };
        string page = await client.GetStringAsync(new Uri("/trials/leads-drop", UriKind.Relative), Stop);
        string row = page.Split("<tr class=\"struck\">")[1].Split("</tr>")[0];
        Assert.Equal(2, page.Split("<tr class=\"struck\">").Length);
        Assert.StartsWith("2" + string.Concat(run.Readings[1].Raw), PagesTests.Visible(row).Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("Struck out: clip moved.", PagesTests.Visible(row), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_empty_study_has_every_page_and_each_says_what_comes_there()
    {
        Assert.True(NewStudy.Create(StudyPath, "lens-dew band").IsFine);
        await using var app = WebBench.Build(OpenStudy.Read(StudyPath).Value, 0);
        await app.StartAsync(Stop);
        await WebBench.ReadyAsync(app);
        using var client = new HttpClient { BaseAddress = new Uri(WebBench.Address(app)) };
        foreach (string path in ServedStudy.Pages.Where(path => path.Count(c => c == '/') == 1))
        {
            Assert.Contains("</html>", await client.GetStringAsync(new Uri(path, UriKind.Relative), Stop), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_name_with_marks_of_the_page_language_stays_text()
    {
        Assert.True(NewStudy.Create(StudyPath, "<script>alert(1)</script>").IsFine);
        await using var app = WebBench.Build(OpenStudy.Read(StudyPath).Value, 0);
        await app.StartAsync(Stop);
        await WebBench.ReadyAsync(app);
        using var client = new HttpClient { BaseAddress = new Uri(WebBench.Address(app)) };
        string page = await client.GetStringAsync(new Uri("/", UriKind.Relative), Stop);
        Assert.DoesNotContain("<script>", page, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;alert(1)", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("none.study")]
    [InlineData("none.study", "--port", "70000")]
    [InlineData("none.study", "--port", "12,5")]
    public void A_file_or_port_that_cannot_be_served_ends_with_2_and_says_why(params string[] words)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var screen = new Screen(output, error, outputIsTerminal: false, errorIsTerminal: false, width: 100);
        Assert.Equal(ExitCodes.BadInput, CommandLine.Run(["serve", .. words, "--no-browser"], screen));
        Assert.Contains("next ", error.ToString(), StringComparison.Ordinal);
        Assert.Equal("", output.ToString());
    }
}
