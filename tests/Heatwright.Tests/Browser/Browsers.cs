using System.Globalization;
using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>What all tests in a real browser need.</summary>
internal static class Browsers
{
    private const string Chromium = "/usr/bin/chromium";

    /// <summary>Where screenshots go; null: none are taken.</summary>
    public static string? Shots => Environment.GetEnvironmentVariable("HEATWRIGHT_SHOTS") is { Length: > 0 } folder ? folder : null;

    public static async Task<IBrowser> Launch(IPlaywright playwright)
    {
        if (!File.Exists(Chromium))
        {
            Assert.Skip("needs Chromium: apt-get install chromium");
        }

        return await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Chromium,
            Headless = true,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public static async Task Photograph(IPage page, string path, int width, ColorScheme scheme)
    {
        if (Shots is { } folder)
        {
            string name = string.Create(CultureInfo.InvariantCulture, $"{(path == "/" ? "start" : path.Trim('/').Replace('/', '-'))}-{width}-{scheme}.png");
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name), FullPage = true });
        }
    }

    /// <summary>Runs something in a folder of its own, which is gone afterwards.</summary>
    public static async Task InAFolder(string prefix, Func<string, Task> run)
    {
        string folder = Directory.CreateTempSubdirectory(prefix).FullName;
        try
        {
            await run(folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
