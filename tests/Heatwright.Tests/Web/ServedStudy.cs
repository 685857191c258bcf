using System.Text.Json;
using Heatwright.Jobs;
using Heatwright.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Heatwright.Tests.Web;

/// <summary>The sample study in a file of its own, served in this process and worked out once for all classes of tests that read it; they may run beside each other.</summary>
public sealed class ServedStudy : IAsyncLifetime
{
    /// <summary>Every page there is for the sample.</summary>
    public static readonly IReadOnlyList<string> Pages =
    [
        "/", "/brief", "/history", "/history?of=round", "/shelf", "/shelf/text", "/shelf?kept=round", "/shelf/own", "/trials", "/trials/round-discharge", "/trials/round-pulses", "/trials/cartridge-warm-up", "/arrangements", "/arrangements/A", "/arrangements/B", "/arrangements/C",
        "/arrangements/A/try", "/arrangements/A/try?leads+ohms=60+m%CE%A9&parallel=2&target=340+%C2%B0C", "/arrangements/B/try?series=soon",
        "/predictions", "/predictions/A", "/predictions/B", "/comparison", "/comparison/A", "/next", "/next?minutes=40", "/next?minutes=soon", "/search", "/decision", "/build-sheet/A", "/build-sheet/B", "/check", "/share",
        "/sums", "/sums?find=trace%20width", "/sums?find=no-such-thing", "/sums/trace-width", "/sums/trace-width?current=5A%C2%B10.1A&rise=20K&copper=1oz", "/sums/trace-width?current=-5&rise=150K&copper=x",
        "/sums/step-up-point?open=3.7V&source=0.12ohm&set=9V&heater=8ohm&limit=5.5A&lockout=2.5V", "/sums/storage-fade?stored=3.7V&cell=25C&time=365d",
    ];

    private static readonly Lazy<Task<Served>> Once = new(Served.Start);

    private Served served = null!;

    /// <summary>The study as it stands in the file.</summary>
    public OpenedStudy Opened => served.Opened;

    /// <summary>Asks the server.</summary>
    public HttpClient Client => served.Client;

    /// <summary>The result as machines read it.</summary>
    public JsonElement Json => served.Json;

    /// <summary>The result that the pages show.</summary>
    internal StudyResult Result => served.App.Services.GetRequiredService<StudyOnBench>().Now().Result!;

    /// <summary>A bundle as an opened study file.</summary>
    public static OpenedStudy Open(string bundle, string file)
    {
        Assert.True(NewStudy.Import(bundle, file).IsFine);
        return OpenStudy.Read(file).Value;
    }

    /// <inheritdoc/>
    public async ValueTask InitializeAsync() => served = await Once.Value;

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    /// <summary>Where a page stands.</summary>
    public string Address(string path) => new Uri(Client.BaseAddress!, path).ToString();

    /// <summary>A page's text.</summary>
    public Task<string> Page(string path) => Client.GetStringAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);

    /// <summary>The one server; it ends with the process, and takes its folder with it.</summary>
    private sealed record Served(OpenedStudy Opened, WebApplication App, HttpClient Client, JsonElement Json)
    {
        public static async Task<Served> Start()
        {
            string folder = Directory.CreateTempSubdirectory("heatwright-web-").FullName;
            AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
            var opened = Open(Path.Combine(Repository.Root, "samples", "rope-hot-knife"), Path.Combine(folder, "knife.study"));
            var app = WebBench.Build(opened, 0, Path.Combine(folder, "own.study"));
            await app.StartAsync();
            var client = new HttpClient { BaseAddress = new Uri(WebBench.Address(app)) };
            await WebBench.ReadyAsync(app);
            foreach (string slow in Pages.Where(page => page is "/comparison/A" or "/search" or "/share" || page.StartsWith("/next", StringComparison.Ordinal) || page.StartsWith("/build-sheet", StringComparison.Ordinal)))
            {
                while ((await client.GetStringAsync(new Uri(slow, UriKind.Relative))) is var text && (text.Contains("Working it out", StringComparison.Ordinal) || text.Contains("Laying out", StringComparison.Ordinal) || text.Contains("Drawing the pictures", StringComparison.Ordinal)))
                {
                    await Task.Delay(200);
                }
            }

            return new(opened, app, client, JsonDocument.Parse(await client.GetStringAsync(new Uri("/study.json", UriKind.Relative))).RootElement);
        }
    }
}
