using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Heatwright.Tests.Journeys;
using Heatwright.Tests.Web;
using Heatwright.Web;
using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>An evening's list in a browser for a study that still has something to learn: only the ribbon with the spring holder, whose ohms nobody measured.</summary>
internal static class EveningPage
{
    public static async Task Run(Func<IPlaywright, Task<IBrowser>> launch)
    {
        using var bench = new Bench();
        string bundle = bench.In("bundle"), sample = Path.Combine(Repository.Root, "samples", "rope-hot-knife");
        Directory.CreateDirectory(Path.Combine(bundle, "runs"));
        foreach (string run in Directory.GetFiles(Path.Combine(sample, "runs")))
        {
            File.Copy(run, Path.Combine(bundle, "runs", Path.GetFileName(run)));
        }

        var study = JsonNode.Parse(await File.ReadAllTextAsync(Path.Combine(sample, "study.json")))!;
        study["arrangements"] = new JsonArray([.. study["arrangements"]!.AsArray().Where(one => one!["letter"]!.GetValue<string>() == "C").Select(one => one!.DeepClone())]);
        await File.WriteAllTextAsync(Path.Combine(bundle, "study.json"), study.ToJsonString());
        var opened = ServedStudy.Open(bundle, bench.In("open.study"));
        await using var app = WebBench.Build(opened, 0);
        await app.StartAsync();
        using var told = JsonDocument.Parse(bench.Type("next", opened.Path, "--minutes", "40", "--json").Out);
        var evening = told.RootElement.GetProperty("evening").EnumerateArray().ToArray();
        Assert.NotEmpty(evening);

        using var playwright = await Playwright.CreateAsync();
        await using var browser = await launch(playwright);
        var page = await browser.NewPageAsync();
        await page.GotoAsync(WebBench.Address(app) + "next");
        await page.Locator("[name=minutes]").FillAsync("40");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator(".evening li").First.WaitForAsync();

        // The list and the worth of each reading are those of the command.
        Assert.Equal(evening.Length, await page.Locator(".evening li").CountAsync());
        Assert.Contains(evening[0].GetProperty("trial").GetString()!, await page.Locator(".evening li").First.InnerTextAsync(), StringComparison.Ordinal);
        string[] drops = await page.EvaluateAsync<string[]>("[...document.querySelectorAll('[data-drop]')].map(one => one.dataset.drop)");
        Assert.Equal(told.RootElement.GetProperty("trials").EnumerateArray().Select(trial => trial.GetProperty("drop").GetDouble()), drops.Select(drop => double.Parse(drop, CultureInfo.InvariantCulture)));
        Assert.Contains(drops, drop => double.Parse(drop, CultureInfo.InvariantCulture) > 0);

        // The timer counts the hands-on minutes down.
        await page.Locator(".evening li button").First.ClickAsync();
        string shown = await page.Locator(".evening [role=timer]").First.InnerTextAsync();
        double minutes = evening[0].GetProperty("endMinute").GetDouble() - evening[0].GetProperty("startMinute").GetDouble();
        Assert.EndsWith(" hands on", shown, StringComparison.Ordinal);
        double left = double.Parse(shown.Split(':')[0], CultureInfo.InvariantCulture) + (double.Parse(shown.Split(':')[1].Split(' ')[0], CultureInfo.InvariantCulture) / 60);
        Assert.InRange(left, minutes - 0.5, minutes);
    }
}
