using System.Diagnostics;
using Microsoft.Playwright;

namespace Heatwright.Proofs;

/// <summary>A headless browser on a trial's page, beside the others: sees their lines without being asked to, and types its own.</summary>
internal static class RealBrowser
{
    public const string Chromium = "/usr/bin/chromium";

    private const int LookEveryMs = 50;

    /// <summary>Looks and types until it is cancelled; gives what went wrong.</summary>
    public static async Task<IReadOnlyList<string>> Run(string address, string trial, int number, Sightings sightings, Func<int, string> text, TimeSpan every, Action<string> sends, Action<string> kept, CancellationToken cancel)
    {
        List<string> wrong = [];
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Chromium, Headless = true, Args = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-sync"] });
        var page = await browser.NewPageAsync();
        page.Console += (_, message) => wrong.AddRange(message.Type == "error" ? ["console: " + message.Text] : Array.Empty<string>());
        await page.GotoAsync(address + "trials/" + trial);
        var since = Stopwatch.StartNew();
        for (int i = 0; !cancel.IsCancellationRequested;)
        {
            sightings.Look(number, await page.EvaluateAsync<string>("document.getElementById('live').textContent"));
            if (since.Elapsed > every)
            {
                since.Restart();
                string line = text(i++);
                await page.Locator("input[name=line]").FillAsync(line);
                sends(line);
                await page.Keyboard.PressAsync("Enter");
                if (await Kept(page, line))
                {
                    kept(line);
                }
                else
                {
                    sightings.Forget(line);
                    wrong.Add($"'{line}' was not taken within 30 s");
                }
            }

            await Task.Delay(LookEveryMs, CancellationToken.None);
        }

        return wrong;
    }

    private static async Task<bool> Kept(IPage page, string line)
    {
        for (int i = 0; i < 600; i++)
        {
            if (await page.EvaluateAsync<bool>($"document.getElementById('live').textContent.includes('{line}')"))
            {
                return true;
            }

            await Task.Delay(LookEveryMs);
        }

        return false;
    }
}
