using System.Globalization;
using System.Text.Json;
using Deque.AxeCore.Commons;
using Heatwright.Tests.Web;
using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>Pages in a real browser. With HEATWRIGHT_SHOTS set to a folder, each page is also photographed there.</summary>
[Collection(ServedOnce.Name)]
public sealed class BrowserTests(ServedStudy served)
{
    private const string Overhang = "document.documentElement.scrollWidth - document.documentElement.clientWidth";

    /// <summary>Laptop, tablet, phone.</summary>
    private static readonly (int Width, int Height)[] Sizes = [(1280, 800), (1024, 768), (390, 844)];

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task Each_page_is_quiet_stays_at_home_and_never_scrolls_sideways(ColorScheme scheme)
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await Browsers.Launch(playwright);
        List<string> found = [];
        // Dark differs by its colours only: one size does, unless each is photographed.
        foreach (var (width, height) in scheme == ColorScheme.Light || Browsers.Shots is not null ? Sizes : Sizes[..1])
        {
            await using var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, ColorScheme = scheme });
            var page = await context.NewPageAsync();
            string path = "";
            page.Console += (_, message) => Add(message.Type is "error" or "warning", $"console: {message.Text}");
            page.PageError += (_, error) => Add(true, $"script: {error}");
            page.Request += (_, request) => Add(!request.Url.StartsWith(served.Client.BaseAddress!.ToString(), StringComparison.Ordinal), $"asks {request.Url}");
            page.Response += (_, response) => Add(response.Status >= 400, $"{response.Status} for {response.Url}");
            foreach (string next in ServedStudy.Pages)
            {
                path = next;
                await page.GotoAsync(Address(path));
                int wide = await page.EvaluateAsync<int>(Overhang);
                Add(wide > 0, $"scrolls {wide} px sideways");
                await Browsers.Photograph(page, path, width, scheme);
                await page.EvaluateAsync("document.querySelectorAll('details').forEach(one => one.open = true)");
                wide = await page.EvaluateAsync<int>(Overhang);
                Add(wide > 0, $"scrolls {wide} px sideways with everything opened");
            }

            void Add(bool wrong, string what)
            {
                if (wrong)
                {
                    found.Add(string.Create(CultureInfo.InvariantCulture, $"{path} at {width}: {what}"));
                }
            }
        }

        Assert.Empty(found);
    }

    /// <summary>Rules of WCAG 2.0 to 2.2, levels A and AA. Dark differs by its colours only.</summary>
    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task Each_page_is_clean_for_an_accessibility_checker(ColorScheme scheme)
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await Browsers.Launch(playwright);
        // Tall, so that the bar at the lower edge of the window covers nothing that scrolling would bring free.
        await using var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 1280, Height = 3000 }, ColorScheme = scheme });
        var page = await context.NewPageAsync();
        // The first rows of a table and of a list stand for the hundreds like them. They are taken out of the page: left in and passed over they still cost the checker its time.
        const string TakeOut = "document.querySelectorAll('tbody tr:nth-child(n+8), li:nth-child(n+16), option:nth-child(n+4)').forEach(one => one.remove())";
        const string Check = "options => axe.run(document, options).then(result => JSON.stringify(result.violations))";
        object rules = scheme == ColorScheme.Light ? new { type = "tag", values = (string[])["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } : new { type = "rule", values = (string[])["color-contrast"] };
        string checker = AccessibilityChecker();
        List<string> found = [];
        foreach (string path in ServedStudy.Pages)
        {
            await page.GotoAsync(Address(path));
            await page.EvaluateAsync(TakeOut);
            await page.EvaluateAsync(checker);
            using var violations = JsonDocument.Parse(await page.EvaluateAsync<string>(Check, new { runOnly = rules, resultTypes = (string[])["violations"] }));
            found.AddRange(violations.RootElement.EnumerateArray().Select(rule => $"{path}: {rule.GetProperty("id").GetString()}, {rule.GetProperty("nodes").GetArrayLength()} times, first {rule.GetProperty("nodes")[0]}"));
        }

        Assert.True(found.Count == 0, string.Join("\n", found));
    }

    /// <summary>A page with known faults is not clean: the checker does look.</summary>
    [Fact]
    public async Task The_accessibility_checker_finds_a_picture_without_words_and_a_pale_text()
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await Browsers.Launch(playwright);
        var page = await browser.NewPageAsync();
        await page.SetContentAsync("<html lang=en><title>t</title><main><img src='data:,'><p style='color:#bbb;background:#fff'>pale</p></main>");
        await page.EvaluateAsync(AccessibilityChecker());
        string found = await page.EvaluateAsync<string>("axe.run().then(result => result.violations.map(rule => rule.id).join(' '))");
        Assert.Contains("image-alt", found, StringComparison.Ordinal);
        Assert.Contains("color-contrast", found, StringComparison.Ordinal);
    }

    /// <summary>The checker's script as its package carries it. The package's own call loads it twice a page and opens a window besides, which took half of this test's time.</summary>
    private static string AccessibilityChecker()
    {
        var package = typeof(AxeResult).Assembly;
        using var reader = new StreamReader(package.GetManifestResourceStream(package.GetManifestResourceNames().Single(name => name.EndsWith("axe.min.js", StringComparison.Ordinal)))!);
        return reader.ReadToEnd();
    }

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
        await page.GotoAsync(Address("/comparison"));
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
        await page.GotoAsync(Address("/"));
        await page.Keyboard.PressAsync("Tab");
        Assert.Equal("Skip to the work", await page.EvaluateAsync<string>("document.activeElement.textContent"));
        string light = await Ground(page);
        await page.ClickAsync("#theme");
        string dark = await Ground(page);
        Assert.NotEqual(light, dark);
        await page.GotoAsync(Address("/brief"));
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
        await page.GotoAsync(Address("/shelf"));
        await page.Locator("details.num > summary").First.ClickAsync();
        Assert.True(await page.Locator("details.num .origin").First.IsVisibleAsync());
        Assert.False(await page.Locator("#theme").IsVisibleAsync());
    }

    [Fact]
    public async Task A_picture_reads_values_draws_a_stretch_larger_and_is_taken_away_as_csv_svg_and_png()
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await Browsers.Launch(playwright);
        await TakenPictures.Run(served, browser);
    }

    private static Task<string> Ground(IPage page) => page.EvaluateAsync<string>("getComputedStyle(document.body).backgroundColor");

    private string Address(string path) => new Uri(served.Client.BaseAddress!, path).ToString();
}
