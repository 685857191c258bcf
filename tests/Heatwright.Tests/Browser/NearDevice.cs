using System.Net;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Heatwright.Jobs;
using Heatwright.Tests.Journeys;
using Heatwright.Web;
using Heatwright.Web.Near;
using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>A telephone beside the desk: paired by its owner, used to type readings, let go in mid-entry, and paired again; nothing typed on it is lost.</summary>
internal static class NearDevice
{
    public static async Task Run(Func<IPlaywright, Task<IBrowser>> launch, Func<IPage, string, Task> photograph)
    {
        using var bench = new Bench();
        string file = PenStudy.Begin(bench);
        await using var app = WebBench.Build(OpenStudy.Read(file).Value, 0, bench.In("shelf.study"), new NearOpening(IPAddress.Parse("127.0.0.2"), bench.In("near.json"), TimeProvider.System));
        await app.StartAsync();
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await launch(playwright);
        await using var desk = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 1280, Height = 800 } });
        await using var phone = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 }, HasTouch = true, IsMobile = true, ColorScheme = ColorScheme.Dark });
        var (here, there) = (await desk.NewPageAsync(), await phone.NewPageAsync());
        List<string> noise = [];
        here.Console += (_, message) => noise.AddRange(message.Type == "error" ? [message.Text] : Array.Empty<string>());
        there.PageError += (_, error) => noise.Add(error);

        await Pair();
        Assert.Contains("wax pen", await there.InnerTextAsync(".plate"), StringComparison.OrdinalIgnoreCase);
        await there.GotoAsync(WebBench.NearAddress(app) + "trials/cold");
        Assert.True(await there.Locator(".unsealed").IsVisibleAsync());
        await Line("2.72");
        await Until(there, "document.querySelector('.entry .echo').textContent.includes('kept as 2')");
        Assert.True(await there.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth") <= 0);
        await photograph(there, "near-trial");

        // Let go in mid-entry: the line waits on the device, and the device says why.
        await here.Locator("button", new() { HasText = "Let go" }).ClickAsync();
        await here.Locator(".empty").WaitForAsync();
        await Line("2.73");
        await Until(there, "document.querySelector('.entry .echo').textContent.includes('not paired')");
        Assert.Equal(2, OpenStudy.Read(file).Value.Study.Trials[0].Runs[0].Readings.Count);
        await Pair();
        await there.GotoAsync(WebBench.NearAddress(app) + "trials/cold");
        await Until(there, "document.querySelectorAll('#live .readings tbody tr').length === 3");
        Assert.Equal(["2R71", "2.72", "2.73"], OpenStudy.Read(file).Value.Study.Trials[0].Runs[0].Readings.Select(reading => reading.Raw[0]));
        Assert.Empty(noise);

        async Task Pair()
        {
            await here.GotoAsync(WebBench.Address(app) + "near");
            await here.Locator("button", new() { HasText = "Show six digits" }).ClickAsync();
            string digits = await here.Locator(".digits output").InnerTextAsync();
            await photograph(here, "near-digits");
            await Clean(here);
            await there.GotoAsync(WebBench.NearAddress(app)!);
            Assert.EndsWith("/pair", there.Url, StringComparison.Ordinal);
            await photograph(there, "near-pair");
            await Clean(there);
            await there.Locator("[name=digits]").FillAsync(digits);
            await there.Locator("[name=name]").FillAsync("bench phone");
            await there.Keyboard.PressAsync("Enter");
            await there.WaitForURLAsync(WebBench.NearAddress(app)!);
            // The desk's page shows it without being asked.
            await here.Locator("th", new() { HasText = "bench phone" }).WaitForAsync();
            await photograph(here, "near-paired");
        }

        async Task Line(string text)
        {
            await there.Locator("input[name=line]").FillAsync(text);
            await there.Keyboard.PressAsync("Enter");
        }
    }

    /// <summary>Rules of WCAG 2.0 to 2.2, levels A and AA, on the desk in light and on the telephone in dark; and nothing sticks out to the side.</summary>
    private static async Task Clean(IPage page)
    {
        var result = await page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } });
        Assert.Empty(result.Violations.Select(rule => $"{rule.Id}: {rule.Nodes[0].Html}"));
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth") <= 0);
    }

    private static Task Until(IPage page, string holds) => KeyedReadings.Until(page, holds);
}
