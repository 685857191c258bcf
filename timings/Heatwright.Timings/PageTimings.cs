using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Playwright;

namespace Heatwright.Timings;

/// <summary>What a maker waits for at the bench: the start page after 'serve', a page of tables, a page with pictures, and what follows a moved slider. In a real browser, on the sample study.</summary>
internal static class PageTimings
{
    private const string Chromium = "/usr/bin/chromium";

    private const int Times = 15;

    private static readonly string[] Tables = ["/brief", "/shelf", "/trials", "/history", "/sums"];

    public static async Task<int> Run(TextWriter says, string folder)
    {
        if (!File.Exists(Chromium))
        {
            says.WriteLine("pages: needs Chromium: apt-get install chromium");
            return 0;
        }

        string home = Directory.CreateTempSubdirectory("heatwright-pages-").FullName;
        try
        {
            string study = Path.Combine(home, "knife.study");
            using (var import = TheProgram.Started("import", Path.Combine(Path.GetDirectoryName(folder)!, "samples", "rope-hot-knife"), study))
            {
                await import.WaitForExitAsync();
            }

            await using var timed = new Timed(await Playwright.CreateAsync());
            var rows = await timed.All(study);
            foreach (var row in rows)
            {
                says.WriteLine($"{row.What}: {Ms(row.Middle)} ms in the middle, {Ms(row.Worst)} ms at worst, {Ms(row.Asked)} ms asked");
            }

            await File.WriteAllTextAsync(Path.Combine(folder, "results", "pages.md"), Page(rows));
            return 0;
        }
        finally
        {
            Directory.Delete(home, recursive: true);
        }
    }

    private sealed record Row(string What, double Middle, double Worst, double Asked)
    {
        public static Row Of(string what, IEnumerable<double> times, double asked)
        {
            double[] sorted = [.. times.Order()];
            return new(what, sorted[sorted.Length / 2], sorted[^1], asked);
        }
    }

    /// <summary>One browser and one server after the other.</summary>
    private sealed class Timed(IPlaywright playwright) : IAsyncDisposable
    {
        private Process? server;
        private IBrowser? browser;

        public async Task<IReadOnlyList<Row>> All(string study)
        {
            browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Chromium, Headless = true, Args = ["--no-sandbox", "--disable-gpu"] });
            var page = await browser.NewPageAsync();
            List<double> starts = [];
            string address = "";
            for (int i = 0; i < 5; i++)
            {
                await page.GotoAsync("about:blank"); // a page that is open asks for its bench again, and would cross the next one
                Stop();
                var watch = Stopwatch.StartNew();
                server = TheProgram.Started("serve", study, "--no-browser", "--port", (45_900 + i).ToString(CultureInfo.InvariantCulture));
                address = string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{45_900 + i}");
                await Answers(address);
                await page.GotoAsync(address + "/", new() { WaitUntil = WaitUntilState.Load });
                starts.Add(watch.Elapsed.TotalMilliseconds);
            }

            // The first pages of a process are compiled while they are asked for: what is asked is a bench that runs.
            while ((await page.GotoAsync(address + "/study.json"))!.Status != 200)
            {
                await Task.Delay(500);
            }

            foreach (string path in Tables.Append("/predictions/A").Append("/arrangements/A/try"))
            {
                await Loaded(page, address + path);
            }

            List<double> tables = [], pictures = [];
            for (int i = 0; i < Times; i++)
            {
                tables.Add(await Loaded(page, address + Tables[i % Tables.Length]));
                await Loaded(page, address + "/brief");
                pictures.Add(await Painted(page, address + "/predictions/A"));
            }

            return [Row.Of("start page after 'serve'", starts, 1000), Row.Of("a page of tables", tables, 150), Row.Of("first picture of a page", pictures, 400), Row.Of("all that follows a moved slider", await Followed(page, address), 100)];
        }

        public async ValueTask DisposeAsync()
        {
            Stop();
            if (browser is not null)
            {
                await browser.DisposeAsync();
            }

            playwright.Dispose();
        }

        private void Stop()
        {
            if (server is { HasExited: false })
            {
                server.Kill();
                server.WaitForExit();
            }

            server?.Dispose();
            server = null;
        }

        private static async Task<double> Loaded(IPage page, string address)
        {
            await page.GotoAsync(address, new() { WaitUntil = WaitUntilState.Load });
            return await page.EvaluateAsync<double>("performance.getEntriesByType('navigation')[0].domComplete");
        }

        private static async Task<double> Painted(IPage page, string address)
        {
            await page.GotoAsync(address, new() { WaitUntil = WaitUntilState.Load });
            return await page.EvaluateAsync<double>("new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(performance.now()))))");
        }

        /// <summary>From the moved slider to the frame that shows what follows; the draws begin behind it and are stopped by the next move.</summary>
        private static async Task<double[]> Followed(IPage page, string address)
        {
            await page.GotoAsync(address + "/arrangements/A/try", new() { WaitUntil = WaitUntilState.Load });
            List<double> times = [];
            for (int i = 0; i < Times; i++)
            {
                times.Add(await page.EvaluateAsync<double>("""
                    step => new Promise(done => {
                      const range = document.querySelector("[aria-label='ohms, silicone leads, slider']"), began = performance.now();
                      new MutationObserver((_, self) => { self.disconnect(); requestAnimationFrame(() => done(performance.now() - began)); }).observe(document.getElementById("seen"), { childList: true });
                      range.value = String(Number(range.min) + (step + 20) * Number(range.step));
                      range.dispatchEvent(new Event("input"));
                    })
                    """, i));
                await page.WaitForTimeoutAsync(100);
            }

            return [.. times];
        }

        private static async Task Answers(string address)
        {
            using var client = new HttpClient();
            for (int i = 0; i < 2000; i++)
            {
                try
                {
                    using var answer = await client.GetAsync(new Uri(address + "/icon.svg"));
                    return;
                }
                catch (HttpRequestException)
                {
                    await Task.Delay(10);
                }
            }

            throw new TimeoutException("The server never answered.");
        }
    }

    private static string Page(IReadOnlyList<Row> rows)
    {
        var text = new StringBuilder("# Pages: what a maker waits for\n\nWritten by `dotnet run -c Release --project timings/Heatwright.Timings -- pages`: the sample study in headless Chromium, one machine for server and browser. The program: " + TheProgram.Words + ".\n\n| what | middle, ms | worst, ms | asked, ms |\n| --- | --- | --- | --- |\n");
        foreach (var row in rows)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {row.What} | {Ms(row.Middle)} | {Ms(row.Worst)} | {Ms(row.Asked)} |\n");
        }

        double load = File.Exists("/proc/loadavg") ? double.Parse(File.ReadAllText("/proc/loadavg").Split(' ')[0], CultureInfo.InvariantCulture) : double.NaN;
        return text.Append(CultureInfo.InvariantCulture, $"\nMachine: {Environment.ProcessorCount} cores, {System.Runtime.InteropServices.RuntimeInformation.OSDescription}, {System.Runtime.InteropServices.RuntimeInformation.FrameworkDescription}; load average at the end {load:0.0}; {DateTime.UtcNow:yyyy-MM-dd}.\n").ToString();
    }

    private static string Ms(double time) => time.ToString("0", CultureInfo.InvariantCulture);
}
