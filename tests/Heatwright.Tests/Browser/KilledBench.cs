using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Heatwright.Jobs;
using Heatwright.Tests.Journeys;
using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>The program as a process of its own, killed with signal 9 while two tabs are typed into, and started again; then the network taken away. Keys only, on a telephone's screen in the dark.</summary>
internal static class KilledBench
{
    public static async Task Run(Func<IPlaywright, Task<IBrowser>> launch)
    {
        using var bench = new Bench();
        string file = PenStudy.Begin(bench);
        int port = FreePort();
        string address = string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}/");
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await launch(playwright);
        await using var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 }, ColorScheme = ColorScheme.Dark });
        var (trial, shelf) = (await context.NewPageAsync(), await context.NewPageAsync());
        using (var first = Served(file, port, bench.In("shelf.study")))
        {
            await shelf.GotoAsync(address + "shelf");
            await trial.GotoAsync(address + "trials/cold");
            await Line("2.72");
            await Until(trial, Rows(2));

            // The other tab follows by itself: the stage rule counts what was added by a command, and a form that nobody typed into is drawn anew.
            Assert.Equal(0, bench.Type("part", "add", file, "tip", "switch", "slide switch").Exit);
            await Until(shelf, "document.getElementById('tip') !== null");

            // Half a line, and half a form.
            await trial.Locator("input[name=line]").PressSequentiallyAsync("2.7");
            await shelf.Locator("summary", new() { HasText = "Put a part on the shelf" }).FocusAsync();
            await shelf.Keyboard.PressAsync("Enter");
            await shelf.Locator(".part-form input[name=id]").First.FillAsync("flat");
            await shelf.Locator(".part-form select[name=kind]").First.SelectOptionAsync("cell");
            await shelf.Locator(".part-form input[name=values]").First.FillAsync("ohms=60mohm; full volts=4.2V");

            // While it is typed into, a change made elsewhere is told and takes nothing away.
            Assert.Equal(0, bench.Type("part", "state", file, "tip", "--measured", "mass=4g (scale)").Exit);
            await Until(shelf, "document.querySelector('.behind-now') !== null");
            Assert.Equal("flat", await shelf.Locator(".part-form input[name=id]").First.InputValueAsync());
            first.Kill();
            await first.WaitForExitAsync();
        }

        await trial.Keyboard.TypeAsync("3");
        await trial.Keyboard.PressAsync("Enter");
        await trial.Locator("input[name=line]").PressSequentiallyAsync("2.7");
        await Until(trial, "document.querySelector('.entry .echo').textContent.includes('1 line waits')");
        await shelf.Locator(".part-form input[name=values]").First.FocusAsync();
        await shelf.Keyboard.PressAsync("Enter");
        await Until(shelf, "document.querySelector('.draft-note')?.textContent.includes('does not answer') === true");

        using (var second = Served(file, port, bench.In("shelf.study")))
        {
            // What waited is taken once; what was half typed stands there still, also after the tab was loaded anew.
            await Until(trial, Rows(3));
            Assert.Equal("2.7", await trial.Locator("input[name=line]").InputValueAsync());
            await trial.ReloadAsync();
            Assert.Equal("2.7", await trial.Locator("input[name=line]").InputValueAsync());
            await shelf.ReloadAsync();
            await Until(shelf, "document.querySelector('.draft-note')?.textContent.includes('it is back') === true");
            Assert.Equal("ohms=60mohm; full volts=4.2V", await shelf.Locator(".part-form input[name=values]").First.InputValueAsync());
            await shelf.Locator(".part-form input[name=values]").First.FocusAsync();
            await shelf.Keyboard.PressAsync("Enter");
            await Until(shelf, "location.search === '?kept=flat'");
            await shelf.GotoAsync(address + "shelf");
            Assert.Equal("", await shelf.Locator(".part-form input[name=values]").First.InputValueAsync());
            Assert.Equal(0, await shelf.Locator(".draft-note").CountAsync());

            // The network goes and comes back.
            await context.SetOfflineAsync(true);
            await trial.Locator("input[name=line]").FocusAsync();
            await trial.Keyboard.PressAsync("End");
            await trial.Keyboard.TypeAsync("4");
            await trial.Keyboard.PressAsync("Enter");
            await Until(trial, "document.querySelector('.entry .echo').textContent.includes('1 line waits')");
            await context.SetOfflineAsync(false);
            await Until(trial, Rows(4));
            second.Kill();
            await second.WaitForExitAsync();
        }

        var study = OpenStudy.Read(file).Value.Study;
        Assert.Equal(["2R71", "2.72", "2.73", "2.74"], study.Trials[0].Runs[0].Readings.Select(reading => reading.Raw[0]));
        Assert.Equal(["ohms", "full volts"], study.Parts.Single(part => part.Id.Name == "flat").Stated.Select(value => value.Quantity));

        async Task Line(string text)
        {
            await trial.Locator("input[name=line]").FillAsync(text);
            await trial.Keyboard.PressAsync("Enter");
        }
    }

    private static string Rows(int count) => string.Create(CultureInfo.InvariantCulture, $"document.querySelectorAll('#live .readings tbody tr').length === {count}");

    private static Task Until(IPage page, string holds) => KeyedReadings.Until(page, holds);

    private static int FreePort()
    {
        using var free = new TcpListener(IPAddress.Loopback, 0);
        free.Start();
        return ((IPEndPoint)free.LocalEndpoint).Port;
    }

    private static Process Served(string file, int port, string shelf)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, UseShellExecute = false };
        foreach (string word in (string[])[Path.Combine(AppContext.BaseDirectory, "heatwright.dll"), "serve", file, "--no-browser", "--port", port.ToString(CultureInfo.InvariantCulture), "--shelf", shelf])
        {
            start.ArgumentList.Add(word);
        }

        var process = Process.Start(start)!;
        Assert.Contains("http://", process.StandardOutput.ReadLine() ?? "", StringComparison.Ordinal);
        return process;
    }
}
