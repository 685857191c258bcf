using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using Heatwright.Instruments;
using Heatwright.StudyFile;
using Heatwright.Web;
using Microsoft.AspNetCore.Builder;

namespace Heatwright.Tests.Journeys;

/// <summary>Listening by the command as it is typed: recordings, a network instrument, a table, a study, and the live page. Values are invented.</summary>
public sealed class ListeningJourney : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Two_recordings_on_one_clock_become_a_table()
    {
        var (exit, said, error) = bench.Type("listen", $"meter=replay:{Frames("meter", 40, i => $"U:4.{i:00}V")}", $"tip=replay:{Frames("tip", 40, i => $"tip:{200 + i}.5C,set:240")}", "--csv", bench.In("both.csv"));
        Assert.True(exit == 0, error);
        Assert.Contains("40 lines from meter, 40 lines from tip", said, StringComparison.Ordinal);
        string[] table = File.ReadAllLines(bench.In("both.csv"));
        Assert.StartsWith("# begun 20", table[0], StringComparison.Ordinal);
        Assert.Equal("time [s],instrument,name,value,unit", table[1]);
        Assert.Equal(40 + 80, table.Length - 2);
        Assert.Equal(Enumerable.Range(0, 40).Select(i => $"4.{i:00}".TrimEnd('0').TrimEnd('.')), table.Where(line => line.Contains(",meter,U,", StringComparison.Ordinal)).Select(line => line.Split(',')[3]));
        Assert.All(table.Where(line => line.Contains(",tip,tip,", StringComparison.Ordinal)), line => Assert.EndsWith(",°C", line, StringComparison.Ordinal));
        double[] times = [.. table.Skip(2).Where(line => line.Contains(",meter,", StringComparison.Ordinal)).Select(line => double.Parse(line.Split(',')[0], CultureInfo.InvariantCulture))];
        Assert.Equal(times.Order(), times);
        Assert.Contains("cannot be begun", bench.Type("listen", $"replay:{bench.In("meter.frames")}", "--csv", bench.In("both.csv")).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_go_into_a_study_as_one_run_that_one_undo_takes_back()
    {
        string file = Study();
        string frames = Frames("load", 60, i => i == 30 ? "U=3.90V I=OL" : string.Create(CultureInfo.InvariantCulture, $"U={4.1 - (i * 0.002):0.000}V I=1.5A"));
        var (exit, said, error) = bench.Type("listen", $"load=replay:{frames}", "--into", file, "--trial", "empty", "--columns", "volts=load.U,amps=load.I", "--json");
        Assert.True(exit == 0, error);
        var last = JsonDocument.Parse(said.TrimEnd().Split('\n')[^1]).RootElement;
        Assert.Equal(("empty-1", 60), (last.GetProperty("run").GetString(), last.GetProperty("stored").GetInt32()));
        using (var book = StudyBook.Open(file, readOnly: false).Value)
        {
            var run = Assert.Single(book.Read().Trials[0].Runs);
            Assert.Equal(60, run.Readings.Count);
            Assert.Equal(["4.1", "1.5"], run.Readings[0].Raw.Skip(1));
            Assert.Equal(["3.9", "OL"], run.Readings[30].Raw.Skip(1));
            Assert.Equal(["s", "V", "A"], run.Columns.Select(column => column.Unit));
            Assert.Equal("Listened to load", book.Undo().Value!.What);
            Assert.Empty(book.Read().Trials[0].Runs);
            Assert.Equal("Listened to load", book.Redo().Value!.What);
            Assert.Equal(60, book.Read().Trials[0].Runs[0].Readings.Count);
        }
    }

    [Fact]
    public async Task A_network_instrument_is_asked_and_its_overload_is_no_number()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var answering = Task.Run(() => Answer(listener, ["+3.98200000E+00", "+9.90000000E+37", "+3.98100000E+00"]), TestContext.Current.CancellationToken);
        var (exit, said, error) = await Task.Run(() => bench.Type("listen", $"meter=tcp:127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}", "--ask", "MEAS:VOLT:DC?", "--every", "0.05", "--lines", "3", "--json"), TestContext.Current.CancellationToken);
        listener.Stop();
        Assert.True(exit == 0, error);
        var values = said.TrimEnd().Split('\n').Select(line => JsonDocument.Parse(line).RootElement).Where(line => line.TryGetProperty("values", out _)).Select(line => line.GetProperty("values")[0]).ToArray();
        Assert.Equal(["number 3.982", "overload ", "number 3.981"], values.Select(value => $"{value.GetProperty("kind").GetString()} {(value.TryGetProperty("value", out var number) ? number.GetDouble().ToString(CultureInfo.InvariantCulture) : "")}"));
        await answering;
    }

    [Theory]
    [InlineData("This is not the address of an instrument.", "meter"), InlineData("Two sources have one name.", "a=replay:x", "a=replay:x"), InlineData("The recorded frames are not there.", "replay:gone.frames")]
    [InlineData("This is no number for the option.", "tcp:127.0.0.1:1", "--seconds", "soon"), InlineData("A study and a trial belong together.", "tcp:127.0.0.1:1", "--into", "a.study")]
    public void A_slip_is_told_before_anything_is_opened(string what, params string[] words)
    {
        var (exit, _, error) = bench.Type(["listen", .. words]);
        Assert.Equal(2, exit);
        Assert.Contains(what, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_live_page_tells_each_value_with_its_peaks_and_lets_in_only_its_own()
    {
        var hub = new LiveHub();
        await using var app = LiveBench.Build(hub, 0);
        await app.StartAsync(TestContext.Current.CancellationToken);
        using var client = new HttpClient { BaseAddress = new Uri(WebBench.Address(app)) };
        // 5000 lines between two looks, one of them a peak: far more than is drawn.
        for (int i = 0; i < 5000; i++)
        {
            hub.Take(new Heard.Line("meter", i * 0.0001, "", [new("U", ReadoutKind.Number, i == 1234 ? 99 : 4, null, "4")]));
        }

        hub.Settle(last: false);
        hub.Take(new Heard.Line("meter", 1, "", [new("U", ReadoutKind.Overload, double.NaN, null, "OL")]));
        hub.Take(new Heard.Note("meter", 1.1, LinkState.Lost, "<b>gone</b>"));
        hub.Settle(last: false);
        string page = await client.GetStringAsync(new Uri("/", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Contains("OL", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script>", page, StringComparison.Ordinal);
        using var answer = await client.GetAsync(new Uri("/events", UriKind.Relative), HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
        Assert.Equal("text/event-stream", answer.Content.Headers.ContentType!.MediaType);
        Assert.Contains("connect-src 'self'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        using var lines = new StreamReader(await answer.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken), Encoding.UTF8);
        var first = JsonDocument.Parse((await lines.ReadLineAsync(TestContext.Current.CancellationToken))!["data: ".Length..]).RootElement;
        var channel = first.GetProperty("channels")[0];
        Assert.Equal(("OL", JsonValueKind.Null), (channel.GetProperty("text").GetString(), channel.GetProperty("value").ValueKind));
        var points = channel.GetProperty("points").EnumerateArray().Select(point => point[1]).ToList();
        // The overload is no number and no line through it either: a gap, which goes as a word.
        Assert.Equal("NaN", points[^1].GetString());
        double[] drawn = [.. points.SkipLast(1).Select(level => level.GetDouble())];
        Assert.InRange(drawn.Length, 2, 24);
        Assert.Equal(99, drawn.Max());
        await lines.ReadLineAsync(TestContext.Current.CancellationToken);
        hub.Take(new Heard.Line("meter", 2, "", [new("U", ReadoutKind.Number, 3.9, null, "+3.900")]));
        hub.Settle(last: true);
        var second = JsonDocument.Parse((await lines.ReadLineAsync(TestContext.Current.CancellationToken))!["data: ".Length..]).RootElement;
        Assert.Equal(3.9, second.GetProperty("channels")[0].GetProperty("value").GetDouble());
        Assert.Equal("3.900", second.GetProperty("channels")[0].GetProperty("text").GetString());
        Assert.True(second.GetProperty("over").GetBoolean());
        using var foreign = new HttpRequestMessage(HttpMethod.Get, "/events");
        foreign.Headers.Add("Origin", "http://elsewhere.example");
        Assert.Equal(HttpStatusCode.Forbidden, (await client.SendAsync(foreign, TestContext.Current.CancellationToken)).StatusCode);
    }

    private static async Task Answer(TcpListener listener, string[] answers)
    {
        using var client = await listener.AcceptTcpClientAsync();
        using var lines = new StreamReader(client.GetStream(), Encoding.ASCII);
        int next = 0;
        while (await lines.ReadLineAsync() is { } asked)
        {
            string? answer = asked.Contains("*IDN?", StringComparison.Ordinal) ? "bench meter" : asked.Contains('?', StringComparison.Ordinal) ? answers[Math.Min(next++, answers.Length - 1)] : null;
            if (answer is not null)
            {
                await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes(answer + "\n"));
            }
        }
    }

    /// <summary>A recording of lines, twenty a second.</summary>
    private string Frames(string name, int lines, Func<int, string> line)
    {
        File.WriteAllLines(bench.In(name + ".frames"), ["heatwright frames 1", .. Enumerable.Range(0, lines).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i * 0.05:0.000} < {line(i)}\\n"))]);
        return bench.In(name + ".frames");
    }

    private string Study()
    {
        Directory.CreateDirectory(bench.In("bow"));
        File.WriteAllText(bench.In("bow/study.json"), """
            { "format": "heatwright-bundle-1", "name": "foam bow", "seed": 1, "parts": [ { "id": "cell", "kind": "cell", "name": "cell", "stated": [] } ],
              "trials": [ { "id": "empty", "kind": "discharge", "part": "cell", "runs": [] } ] }
            """);
        Assert.Equal(0, bench.Type("import", bench.In("bow"), bench.In("bow.study")).Exit);
        return bench.In("bow.study");
    }
}
