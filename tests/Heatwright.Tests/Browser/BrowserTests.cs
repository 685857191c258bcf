using System.Globalization;
using Heatwright.Tests.Web;
using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>Pages in a real browser. With HEATWRIGHT_SHOTS set to a folder, each page is also photographed there.</summary>
public sealed class BrowserTests(ServedStudy served) : IClassFixture<ServedStudy>
{
    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task The_first_page_of_a_report_is_one_sheet_of_paper(string paper)
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await Browsers.Launch(playwright);
        var page = await browser.NewPageAsync();
        foreach (string letter in (string[])["A", "B", "C"])
        {
            await page.SetContentAsync(Heatwright.Report.ReportHtml.Write(served.Result, new("2026-03-01", letter, OnePage: true)));
            byte[] printed = await page.PdfAsync(new() { Format = paper });
            Assert.Equal(1, System.Text.RegularExpressions.Regex.Count(System.Text.Encoding.Latin1.GetString(printed), @"/Type\s*/Page\b"));
        }
    }

    [Fact]
    public async Task A_number_opens_its_origin_by_keyboard_and_is_the_one_machines_read()
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await Browsers.Launch(playwright);
        var page = await browser.NewPageAsync();
        await page.GotoAsync(served.Address("/comparison"));
        var arrangement = served.Json.GetProperty("arrangements")[0];
        var line = arrangement.GetProperty("requirements")[0];
        var cell = page.Locator($"[data-cell='{arrangement.GetProperty("letter").GetString()} {line.GetProperty("name").GetString()}']");
        string? shown = await cell.Locator("data").GetAttributeAsync("value");
        Assert.Equal(line.GetProperty("value").GetDouble(), double.Parse(shown!, CultureInfo.InvariantCulture));
        Assert.False(await cell.Locator(".origin").IsVisibleAsync());
        await cell.Locator("summary").First.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        Assert.True(await cell.Locator(".origin").IsVisibleAsync());
        await Browsers.Photograph(page, "/comparison/opened", 1280, ColorScheme.Light);
        Assert.Contains("redicted for", await cell.Locator(".origin").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_skip_link_comes_first_and_the_theme_is_remembered()
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await Browsers.Launch(playwright);
        await using var context = await browser.NewContextAsync(new() { ColorScheme = ColorScheme.Light });
        var page = await context.NewPageAsync();
        await page.GotoAsync(served.Address("/"));
        await page.Keyboard.PressAsync("Tab");
        Assert.Equal("Skip to the work", await page.EvaluateAsync<string>("document.activeElement.textContent"));
        string light = await Ground(page);
        await page.ClickAsync("#theme");
        string dark = await Ground(page);
        Assert.NotEqual(light, dark);
        await page.GotoAsync(served.Address("/brief"));
        Assert.Equal(dark, await Ground(page));
        Assert.Equal("Light", await page.TextContentAsync("#theme"));
    }

    [Fact]
    public async Task Without_script_every_page_still_shows_its_numbers()
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await Browsers.Launch(playwright);
        await using var context = await browser.NewContextAsync(new() { JavaScriptEnabled = false });
        var page = await context.NewPageAsync();
        await page.GotoAsync(served.Address("/shelf"));
        await page.Locator("details.num > summary").First.ClickAsync();
        Assert.True(await page.Locator("details.num .origin").First.IsVisibleAsync());
        Assert.False(await page.Locator("#theme").IsVisibleAsync());
    }

    private static Task<string> Ground(IPage page) => page.EvaluateAsync<string>("getComputedStyle(document.body).backgroundColor");
}
