using System.Globalization;
using Heatwright.Tests.Web;
using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>Every page in a real browser at every width. With HEATWRIGHT_SHOTS set to a folder, each page is also photographed there.</summary>
public sealed class QuietPagesTests(ServedStudy served) : IClassFixture<ServedStudy>
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
                await page.GotoAsync(served.Address(path));
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
}
