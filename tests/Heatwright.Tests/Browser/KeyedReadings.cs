using System.Globalization;
using System.Text.Json;
using Heatwright.Jobs;
using Heatwright.Tests.Journeys;
using Heatwright.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>A trial planned and typed in the browser by keys alone, with one slip, one struck line, and the server gone in the middle.</summary>
internal static class KeyedReadings
{
    public static async Task Type(string folder, Func<IPlaywright, Task<IBrowser>> launch)
    {
        using var bench = new Bench();
        string file = Path.Combine(folder, "keyed.study"), typed = Path.Combine(folder, "typed.study");
        foreach (string study in new[] { file, typed })
        {
            Assert.Equal(0, bench.Type("new", study, "--name", "wax pen").Exit);
            Assert.Equal(0, bench.Type("part", "add", study, "wire", "heater", "coil").Exit);
        }

        using var playwright = await Playwright.CreateAsync();
        await using var browser = await launch(playwright);
        var page = await browser.NewPageAsync();
        int port;
        await using (var app = await Served(file, 0))
        {
            port = new Uri(WebBench.Address(app)).Port;
            await page.GotoAsync(WebBench.Address(app) + "trials");
            await page.Locator("select[name=kind]").SelectOptionAsync("four-wire-ohms");
            await page.Locator("form[action='/trials/add'] input[name=name]").FillAsync("four");
            await page.Keyboard.PressAsync("Enter");
            await page.WaitForURLAsync("**/trials/four");
            await Line(page, "7,22 1");
            await Until(page, "document.getElementById('entry').dataset.run === 'four-1'");
            await Line(page, "3.61 V 0.5A");
            await Kept(page, 2);
            // What is understood, and what the checks say, stands there before Enter is pressed.
            await page.Locator("input[name=line]").PressSequentiallyAsync("1.80 250mA");
            await Until(page, "document.querySelector('.entry .echo').textContent.includes('0.25')");
            await page.Keyboard.PressAsync("Enter");
            await Kept(page, 3);
            await Line(page, "nonsense");
            await Until(page, "document.querySelector('input[name=line]').value === 'nonsense'");
            await page.Locator("input[name=line]").FillAsync("");
            await app.StopAsync();
        }

        // The server is gone: the line waits in the browser, and is kept once when the server is back.
        await Line(page, "7.21 1");
        await Until(page, "document.querySelector('.entry .echo').textContent.includes('1 line waits')");
        await using (var again = await Served(file, port))
        {
            await Until(page, "document.querySelectorAll('#live .readings tbody tr').length === 4");
            await page.ReloadAsync();
            await page.Locator("summary", new() { HasText = "Strike a reading out" }).ClickAsync();
            await page.Locator("input[name=numbers]").FillAsync("3");
            await page.Locator("input[name=because]").FillAsync("clip loose");
            await page.Keyboard.PressAsync("Enter");
            await Until(page, "document.querySelectorAll('#live tr.struck').length === 1");
            await Until(page, "document.querySelector('#live .findings dd') !== null");
            string shown = await page.Locator("#live .findings dd").First.InnerTextAsync();
            Assert.Contains("7.2", shown, StringComparison.Ordinal);
        }

        Assert.Equal(0, bench.Type("trial", "add", typed, "four-wire-ohms", "--on", "wire", "--name", "four").Exit);
        Assert.Equal(0, bench.TypeWith("7,22 1\n3.61 V 0.5A\n1.80 250mA\n7.21 1\n", "trial", "enter", typed, "four").Exit);
        Assert.Equal(0, bench.Type("strike", typed, "four-1", "3", "--because", "clip loose").Exit);
        Assert.Equal(Told(bench, typed), Told(bench, file));
    }

    private static string Told(Bench bench, string file)
    {
        using var json = JsonDocument.Parse(bench.Type("trial", "list", file, "--json").Out);
        var run = OpenStudy.Read(file).Value.Study.Trials[0].Runs[0];
        return json.RootElement.ToString() + string.Join('|', run.Readings.Select(reading => string.Create(CultureInfo.InvariantCulture, $"{reading.Number}:{string.Join(' ', reading.Raw)}:{reading.StruckBecause}")));
    }

    private static async Task<WebApplication> Served(string file, int port)
    {
        var app = WebBench.Build(OpenStudy.Read(file).Value, port);
        await app.StartAsync();
        return app;
    }

    private static async Task Line(IPage page, string text)
    {
        await page.Locator("input[name=line]").FillAsync(text);
        await page.Keyboard.PressAsync("Enter");
    }

    private static Task Kept(IPage page, int number) => Until(page, string.Create(CultureInfo.InvariantCulture, $"document.querySelector('input[name=number]').value === '{number + 1}' && document.querySelectorAll('#live .readings tbody tr').length >= {number}"));

    /// <summary>The page's own policy forbids the browser library to wait inside it, so it is asked from outside.</summary>
    internal static async Task Until(IPage page, string holds)
    {
        for (int i = 0; i < 300; i++)
        {
            try
            {
                if (await page.EvaluateAsync<bool>(holds))
                {
                    return;
                }
            }
            catch (PlaywrightException) when (i < 299)
            {
                // The page is just being loaded anew.
            }

            await Task.Delay(100);
        }

        Assert.Fail($"never came true: {holds}\n{await page.Locator("body").InnerTextAsync()}");
    }
}
