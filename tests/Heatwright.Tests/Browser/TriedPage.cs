using System.Globalization;
using System.Text.Json;
using Heatwright.Jobs;
using Heatwright.StudyFile;
using Heatwright.Tests.Journeys;
using Heatwright.Tests.Web;
using Heatwright.Web;
using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>An arrangement tried in the browser by keys alone: what follows is what the command says, and what is kept can be undone.</summary>
internal static class TriedPage
{
    public static async Task Run(string folder, Func<IPlaywright, Task<IBrowser>> launch)
    {
        string file = Path.Combine(folder, "knife.study");
        Assert.True(Bundle.Read(Path.Combine(Repository.Root, "samples", "rope-hot-knife")).Then(study => StudyBook.Create(file, study with { Arrangements = [study.Arrangements[0]], Decisions = [], PrototypeReadings = [], Plants = [], Tools = [], Files = [] }, TimeProvider.System)).Map(book =>
        {
            book.Dispose();
            return true;
        }).IsFine);
        using var bench = new Bench();
        await using var app = WebBench.Build(OpenStudy.Read(file).Value, 0, Path.Combine(folder, "own.study"));
        await app.StartAsync();
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await launch(playwright);
        var page = await browser.NewPageAsync();
        List<string> said = [];
        page.Console += (_, message) => said.Add($"{message.Type}: {message.Text}");
        page.PageError += (_, error) => said.Add($"script: {error}");
        await WebBench.ReadyAsync(app);
        await page.GotoAsync(WebBench.Address(app) + "arrangements/A/try");
        Assert.True(await page.Locator("#keep button").IsDisabledAsync());

        // A slider by its arrow key: the field says the number, the address keeps it, everything follows, the draws come behind.
        await page.Locator("[aria-label='ohms, silicone leads, slider']").FocusAsync();
        await page.Keyboard.PressAsync("End");
        string typed = await page.Locator("#dials [name='leads ohms']").InputValueAsync();
        await Until(page, "document.querySelector('[data-moved=\"1\"]') !== null");
        Assert.Contains("leads+ohms=", page.Url, StringComparison.Ordinal);
        var command = Command(bench, file, typed);
        Assert.Equal(Value(command, "numbers", "loop ohms"), await Shown(page, "[data-number='loop ohms'] [data-value]"));
        Assert.Equal(Value(command, "numbers", "warm-up time"), await Shown(page, "[data-number='warm-up time'] [data-value]"));
        await Until(page, "document.querySelectorAll('.words .verdict').length === 2");
        Assert.Contains("90 of 100 draws", await page.Locator(".tried-curves").InnerTextAsync(), StringComparison.Ordinal);

        // Typed by keys: a slip is told while it stands there, and nothing is lost.
        await page.Locator("#dials [name='leads ohms']").FocusAsync();
        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.TypeAsync("soon");
        await Until(page, "document.querySelector('#seen .problem') !== null");
        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.TypeAsync("35m");
        await Until(page, "document.querySelector('#seen .problem') === null && document.querySelector('[data-number=\"loop ohms\"]') !== null");
        await Until(page, string.Create(CultureInfo.InvariantCulture, $"Math.abs(Number(document.querySelector('[data-number=\"loop ohms\"] [data-value]').dataset.value) - {Value(Command(bench, file, "35m"), "numbers", "loop ohms")}) < 1e-12"));
        Assert.Contains("was 16", await page.Locator(".loop mark").First.InnerTextAsync(), StringComparison.Ordinal);

        // The address alone brings it all back: in another tab, and after a reload.
        string address = page.Url;
        await page.ReloadAsync();
        Assert.Equal("35m", await page.Locator("#dials [name='leads ohms']").InputValueAsync());
        Assert.Equal("Keep it as B", await page.Locator("#keep button").InnerTextAsync());
        Assert.Single(OpenStudy.Read(file).Value.Study.Arrangements);

        // Kept by keys: one change, and undo takes it back.
        await page.Locator("#keep [name=called]").FocusAsync();
        await page.Keyboard.TypeAsync("long leads");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/arrangements/B", new() { Timeout = 120_000 });
        var study = OpenStudy.Read(file).Value.Study;
        Assert.Equal(["A", "B"], study.Arrangements.Select(one => one.Letter));
        Assert.Equal("long leads", study.Arrangements[1].Name);
        await page.GotoAsync("about:blank"); // the page of B would ask for itself when B is gone
        Assert.Equal(0, bench.Type("undo", file).Exit);
        await page.GotoAsync(address);
        await Until(page, "document.querySelector('#keep button')?.textContent === 'Keep it as B'");
        Assert.Empty(said);
        await app.StopAsync();
    }

    private static JsonElement Command(Bench bench, string file, string leads)
    {
        var (exit, output, error) = bench.Type("try", file, "A", "--set", $"leads ohms={leads}", "--json");
        Assert.True(exit == 0, error);
        return JsonDocument.Parse(output).RootElement;
    }

    private static double Value(JsonElement command, string list, string name) => command.GetProperty(list).EnumerateArray().Single(one => one.GetProperty("name").GetString() == name).GetProperty("is").GetDouble();

    private static async Task<double> Shown(IPage page, string selector) => double.Parse((await page.Locator(selector).GetAttributeAsync("data-value"))!, CultureInfo.InvariantCulture);

    private static async Task Until(IPage page, string holds)
    {
        for (int i = 0; i < 600; i++)
        {
            try
            {
                if (await page.EvaluateAsync<bool>(holds))
                {
                    return;
                }
            }
            catch (PlaywrightException) when (i < 599)
            {
                // The page is just being loaded anew.
            }

            await page.WaitForTimeoutAsync(200);
        }

        Assert.Fail($"Never became true: {holds}");
    }
}
