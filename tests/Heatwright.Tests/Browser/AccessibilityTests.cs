using System.Text.Json;
using Deque.AxeCore.Commons;
using Heatwright.Tests.Web;
using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>Every page before a checker of accessibility.</summary>
public sealed class AccessibilityTests(ServedStudy served) : IClassFixture<ServedStudy>
{
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
            await page.GotoAsync(served.Address(path));
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
}
