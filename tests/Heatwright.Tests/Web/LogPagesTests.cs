using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Heatwright.Jobs;
using Heatwright.StudyFile;
using Heatwright.Tests.Journeys;
using Heatwright.Trials;
using Heatwright.Web;
using Microsoft.AspNetCore.Builder;

namespace Heatwright.Tests.Web;

/// <summary>A log sent to a trial's page: shown as it is understood, asked about where it is open, taken in as the command takes it; meters and blocks beside it.</summary>
public sealed class LogPagesTests : IAsyncLifetime
{
    private const string Meters = "V=0.5%+8mV; s=exact";

    private readonly Bench bench = new();
    private WebApplication app = null!;
    private HttpClient client = null!;

    private string Study => bench.In("page.study");

    public async ValueTask InitializeAsync()
    {
        foreach (string study in new[] { Study, bench.In("command.study") })
        {
            Assert.Equal(0, bench.Type("new", study, "--name", "dew band").Exit);
            Assert.Equal(0, bench.Type("part", "add", study, "band", "heater", "band").Exit);
            Assert.Equal(0, bench.Type("trial", "add", study, "warm-up", "--on", "band", "--name", "up").Exit);
        }

        app = WebBench.Build(OpenStudy.Read(Study).Value, 0, bench.In("shelf.study"));
        await app.StartAsync();
        client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = new Uri(WebBench.Address(app)) };
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        await app.DisposeAsync();
        bench.Dispose();
    }

    [Fact]
    public async Task A_log_is_looked_at_first_and_then_taken_in_as_the_command_takes_it()
    {
        byte[] log = Encoding.UTF8.GetBytes("Zeit [s];U [V];I [A];T head [°C];T grip [°C]\n0;6,01;1,52;20,1;20,0\n1;6,01;1,51;22,4;20,0\n2;6,00;1,51;24,6;20,0\nrubbish\n3;6,00;1,50;26,7;20,1\n4;6,00;OL;28,7;20,1\n");
        (await Form("/trials", "/meters/add", ("id", "logger"), ("name", "the board"), ("reads", Meters), ("steps", "V=2mV"))).Dispose();
        (await Form("/trials", "/meters/add", ("id", "probe"), ("reads", "degC=1%+2K"))).Dispose();
        string at = await Send(log, "C:\\bench\\warm up.csv");
        string page = PagesTests.Visible(await Page(at));
        Assert.Contains("warm up.csv", page, StringComparison.Ordinal);
        Assert.Contains("5 rows kept, 1 left out", page, StringComparison.Ordinal);
        Assert.Contains("OL", page, StringComparison.Ordinal);
        Assert.Empty(OpenStudy.Read(Study).Value.Study.Trials[0].Runs);

        // Two columns in degrees: names do not settle which is the head.
        using var open = await Form(at, at + "/take", ("instrument", "logger"), ("set air", "20C"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, open.StatusCode);
        using var taken = await Form(at, at + "/take", ("instrument", "logger"), ("column degrees", "T head"), ("column grip degrees", "T grip"), ("meter degrees", "probe"), ("set air", "20C"));
        Assert.Equal("/trials/up#run-up-1", taken.Headers.Location!.ToString());
        using var again = await Form("/trials/up", at + "/take");
        Assert.Equal(HttpStatusCode.NotFound, again.StatusCode);

        string command = bench.In("command.study"), file = bench.In("warm up.csv");
        await File.WriteAllBytesAsync(file, log, TestContext.Current.CancellationToken);
        Assert.Equal(0, bench.Type("meter", "add", command, "logger", "the board", "--reads", "V=0.5%+8mV", "s=exact", "--step", "V=2mV").Exit);
        Assert.Equal(0, bench.Type("meter", "add", command, "probe", "--reads", "degC=1%+2K").Exit);
        var done = bench.Type("log", "import", file, command, "--trial", "up", "--instrument", "logger", "--columns", "degrees=T head,grip degrees=T grip", "--meter", "degrees=probe", "--set", "air=20C");
        Assert.True(done.Exit == 0, done.Error);
        var (mine, theirs) = (OpenStudy.Read(Study).Value, OpenStudy.Read(command).Value);
        Assert.Equal(theirs.Fingerprint, mine.Fingerprint);
        var run = Assert.Single(mine.Study.Trials[0].Runs);
        Assert.Equal(20, run.Settings["air"]);
        Assert.Equal([("time", ""), ("volts", "logger"), ("amps", "logger"), ("degrees", "probe"), ("grip degrees", "logger")], run.Columns.Select(column => (column.Name, column.Instrument)).OrderBy(pair => Array.IndexOf(["time", "volts", "amps", "degrees", "grip degrees"], pair.Name)));
        Assert.Equal("OL", run.Readings[^1].Raw[run.Columns.ToList().FindIndex(column => column.Name == "amps")]);
    }

    /// <summary>What was seen: amps were asked of the maker between the current that was set and the one that was read, and the record number was offered as amps.</summary>
    [Fact]
    public async Task The_current_that_was_read_is_taken_and_the_record_number_is_offered_for_nothing()
    {
        string rows = string.Concat(Enumerable.Range(1, 6).Select(i => $"{i};{10 * i};4174;1,00;0,99{i};2{i},4;2{i},0\n"));
        string page = await Page(await Send(Encoding.UTF8.GetBytes("Rec#;Zeit [s];U [mV];I soll;I ist [A];T Kopf [°C];T Luft [°C]\n" + rows), "load.csv"));
        Assert.Matches("<select class=\"in\" name=\"column amps\".*?<option value=\"I ist\" selected", page);
        Assert.DoesNotContain("<option value=\"Rec#\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("'Rec#' is not taken: if it is", PagesTests.Visible(page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_still_open_is_to_be_chosen_below_and_no_command_is_named()
    {
        string at = await Send(Encoding.UTF8.GetBytes("Zeit [s];T vorn [°C];T hinten [°C]\n0;20,1;20,0\n1;22,4;20,0\n2;24,6;20,0\n"), "two.csv");
        using var open = await Form(at, at + "/take", ("instrument", ""));
        string page = PagesTests.Visible(await open.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains("Choose it below, under 'Take it in'", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Import it again", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_log_leaves_open_is_asked_once_on_its_page()
    {
        // 03/04 may be the third of April or the fourth of March, and no line of this log settles it.
        string at = await Send(Encoding.UTF8.GetBytes("date,volts [V],amps [A],degrees [degC]\n03/04/2024 10:00:00,6.01,1.52,20.1\n03/04/2024 10:00:10,6.01,1.52,25.1\n03/04/2024 10:00:20,6.00,1.51,29.1\n"), "when.csv");
        string page = await Page(at);
        Assert.Equal(2, Regex.Count(page, "name=\"choice\""));
        Assert.DoesNotContain("Take it in", page, StringComparison.Ordinal);
        using var answered = await Form(at, at + "/answer", ("choice", "0"));
        Assert.Equal(at, answered.Headers.Location!.ToString());
        page = await Page(at);
        Assert.DoesNotContain("name=\"choice\"", page, StringComparison.Ordinal);
        using var taken = await Form(at, at + "/take");
        Assert.Equal("/trials/up#run-up-1", taken.Headers.Location!.ToString());
        Assert.Equal(["0", "10", "20"], OpenStudy.Read(Study).Value.Study.Trials[0].Runs[0].Readings.Select(reading => reading.Raw[0]));
    }

    [Fact]
    public async Task Nothing_sent_is_told_and_pasted_lines_do_as_well_as_a_file()
    {
        using var nothing = await Sent([], "", "");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, nothing.StatusCode);
        Assert.Contains("No log was chosen", await nothing.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        using var pasted = await Sent([], "", "time [s]\tvolts [V]\tamps [A]\tdegrees [degC]\r\n0\t6\t1.5\t20\r\n1\t6\t1.5\t22\r\n");
        string at = pasted.Headers.Location!.ToString();
        using var away = await Form(at, at + "/away");
        Assert.Equal("/trials/up", away.Headers.Location!.ToString());
        using var gone = await client.GetAsync(new Uri(at, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
        using var strange = await client.GetAsync(new Uri("/trials/up/log/..%2F..%2Fetc%2Fpasswd", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, strange.StatusCode);
        Assert.Empty(OpenStudy.Read(Study).Value.Study.Files);
    }

    [Fact]
    public async Task A_block_is_one_change_and_a_slip_in_it_keeps_none_of_it_and_all_that_was_pasted()
    {
        (await Form("/trials/up", "/trials/up/run", ("columns", "time"), ("columns", "volts"), ("columns", "amps"), ("columns", "degrees"))).Dispose();
        int changes = ChangeStudy.History(Study).Value.Count;
        using var slip = await Form("/trials/up", "/trials/up/block", ("run", "up-1"), ("block", "0 6 1.5 20\n1 6 1.5 hot\n2 6 1.5 24\n"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, slip.StatusCode);
        string page = await slip.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("line 2", page, StringComparison.Ordinal);
        Assert.Contains("2 6 1.5 24", page, StringComparison.Ordinal);
        using var whole = await Form("/trials/up", "/trials/up/block", ("run", "up-1"), ("block", "0 6 1.5 20\n# the lid was opened\n\n1 6 1.5 22\n2 6 1.5 24\n"));
        Assert.Equal("/trials/up#run-up-1", whole.Headers.Location!.ToString());
        Assert.Equal(changes + 1, ChangeStudy.History(Study).Value.Count);
        Assert.Equal(3, OpenStudy.Read(Study).Value.Study.Trials[0].Runs[0].Readings.Count);
    }

    [Fact]
    public async Task A_meters_promise_that_cannot_be_read_stays_in_its_field()
    {
        using var slip = await Form("/trials", "/meters/add", ("id", "bench"), ("reads", "V=about right"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, slip.StatusCode);
        Assert.Contains("V=about right", await slip.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        (await Form("/trials", "/meters/add", ("id", "bench"), ("name", "bench meter"), ("reads", Meters), ("steps", "V=2mV"))).Dispose();
        using var json = JsonDocument.Parse(bench.Type("meter", "list", Study, "--json").Out);
        var spec = json.RootElement[0].GetProperty("specs")[0];
        Assert.Equal((0.5, 0.008, 0.002), (spec.GetProperty("percent").GetDouble(), spec.GetProperty("offset").GetDouble(), spec.GetProperty("resolution").GetDouble()));
        Assert.Contains("V ±(0.5 % + 0.008 V), steps of 0.002 V", PagesTests.Visible(await Page("/trials")), StringComparison.Ordinal);
    }

    private async Task<string> Send(byte[] log, string name)
    {
        using var sent = await Sent(log, name, "");
        Assert.Equal(HttpStatusCode.SeeOther, sent.StatusCode);
        return sent.Headers.Location!.ToString();
    }

    private async Task<HttpResponseMessage> Sent(byte[] log, string name, string text)
    {
        using var form = new MultipartFormDataContent { { new StringContent(await Token("/trials/up")), "token" }, { new StringContent(text), "text" } };
        if (name.Length > 0)
        {
            form.Add(new ByteArrayContent(log), "log", name);
        }

        return await client.PostAsync(new Uri("/trials/up/log", UriKind.Relative), form, TestContext.Current.CancellationToken);
    }

    private async Task<HttpResponseMessage> Form(string from, string to, params (string Name, string Value)[] fields)
    {
        using var form = new FormUrlEncodedContent([new("token", await Token(from)), .. fields.Select(field => KeyValuePair.Create(field.Name, field.Value))]);
        return await client.PostAsync(new Uri(to, UriKind.Relative), form, TestContext.Current.CancellationToken);
    }

    private async Task<string> Token(string path) => Regex.Match(await Page(path), "name=\"token\" value=\"([^\"]+)\"").Groups[1].Value;

    private Task<string> Page(string path) => client.GetStringAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
}
