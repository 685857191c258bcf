using System.Buffers.Binary;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Heatwright.Tests.Journeys;
using Heatwright.Tests.Web;
using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>Pictures looked into and taken away in a real browser: read values, a stretch drawn larger, CSV, SVG and PNG.</summary>
internal static class TakenPictures
{
    public static async Task Run(ServedStudy served, IBrowser browser)
    {
        await using var context = await browser.NewContextAsync(new() { ColorScheme = ColorScheme.Dark, AcceptDownloads = true });
        var page = await context.NewPageAsync();
        List<string> said = [];
        page.Console += (_, message) => said.Add($"{message.Type}: {message.Text}");
        page.PageError += (_, error) => said.Add($"script: {error}");
        await page.GotoAsync(new Uri(served.Client.BaseAddress!, "/predictions/A").ToString());
        var piece = page.Locator(".piece").Filter(new() { Has = page.Locator("h2", new() { HasTextString = "Grip" }) });
        await piece.Locator(".pic-tools").WaitForAsync();

        // The file to take away holds the grip's degrees as the study's own result has them.
        var band = served.Result.Verdicts[0].Prediction!.Bands.Single(one => one.Name == "grip");
        string[] rows = (await File.ReadAllTextAsync(await Taken(page, piece, "csv"), TestContext.Current.CancellationToken)).Trim().Split('\n');
        Assert.Equal("\"time, min\",\"90 of 100 draws, low (grip, °C)\",\"90 of 100 draws, high (grip, °C)\",\"middle run (grip, °C)\"", rows[0]);
        Assert.Equal(band.TimesS.Length, rows.Length - 1);
        string[] tenth = rows[11].Split(',');
        Assert.Equal(band.TimesS[10] / 60, Number(tenth[0]), 1e-4 * band.TimesS[10]);
        Assert.Equal(band.Middle[10], Number(tenth[3]), 1e-4);
        Assert.Equal(band.Low[10], Number(tenth[1]), 1e-4);

        // The picture: 1920 by 1080, curves and words, in the colours of the light whatever the page wears, with text that a hall can read.
        var svg = XDocument.Parse(await File.ReadAllTextAsync(await Taken(page, piece, "svg"), TestContext.Current.CancellationToken)).Root!;
        Assert.Equal(("1920", "1080", "0 0 860 484"), (svg.Attribute("width")!.Value, svg.Attribute("height")!.Value, svg.Attribute("viewBox")!.Value));
        var texts = svg.Elements().Where(one => one.Name.LocalName == "text").ToArray();
        Assert.Contains(texts, text => text.Value == "time, min");
        Assert.All(texts, text => Assert.True(Number(text.Attribute("font-size")!.Value) * 1920 / 860 >= 24));
        Assert.Contains(svg.Elements(), one => one.Attribute("d")?.Value.Count(c => c == 'L') > 50 && one.Attribute("stroke")!.Value == "rgb(160, 64, 2)"); // the light's second curve
        byte[] png = await File.ReadAllBytesAsync(await Taken(page, piece, "png"), TestContext.Current.CancellationToken);
        Assert.Equal((1920, 1080), (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16, 4)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20, 4))));
        Assert.InRange(png.Length, 8_000, 2_000_000);

        // By keys: the first place is the first row, a step is the next; plus draws half of it, nought all again.
        var figure = piece.Locator("figure.pic");
        await figure.FocusAsync();
        await page.Keyboard.PressAsync("Home");
        string read = await piece.Locator(".reads").InnerTextAsync();
        Assert.Contains("time 0 min", read, StringComparison.Ordinal);
        double first = Number(Regex.Match(read, "middle run ([0-9.]+) °C").Groups[1].Value);
        Assert.Equal(band.Middle[0], first, 0.005);
        await page.Keyboard.PressAsync("ArrowRight");
        Assert.NotEqual(read, await piece.Locator(".reads").InnerTextAsync());
        string whole = await Curve(figure);
        await page.Keyboard.PressAsync("+");
        Assert.NotEqual(whole, await Curve(figure));
        await page.Keyboard.PressAsync("0");
        Assert.True(await piece.Locator("[data-do=whole]").IsDisabledAsync());

        // By pointer: the values where it stands, and a stretch that is drawn across.
        var box = (await figure.Locator("svg:visible").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + (box.Width / 2), box.Y + (box.Height / 2));
        Assert.DoesNotContain("time 0 min", await piece.Locator(".reads").InnerTextAsync(), StringComparison.Ordinal);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + (box.Width * 0.8f), box.Y + (box.Height / 2));
        await page.Mouse.UpAsync();
        Assert.False(await piece.Locator("[data-do=whole]").IsDisabledAsync());

        // Drawings that head tables, tables that draw, and the section of the handle can be taken away, too.
        Dictionary<string, string> files = [];
        foreach (var (path, place, ending) in new[] { ("/arrangements/B", ".loop >> nth=0", "csv"), ("/arrangements/B", ".loop >> nth=0", "png"), ("/predictions/A", "table.takes >> nth=0", "csv"), ("/predictions/A", "table.takes >> nth=0", "svg"), ("/comparison", ".value-plot", "png"), ("/comparison", ".value-plot", "csv"),
            ("/comparison/A", "table.tornado >> nth=0", "csv"), ("/comparison/A", "table.tornado >> nth=0", "png"), ("/predictions/B", ".flow", "csv"), ("/predictions/B", ".flow", "png"), ("/predictions/B", ".flow", "svg"), ("/build-sheet/A", ".drawing", "svg"), ("/build-sheet/A", ".drawing", "png"), ("/trials/round-pulses", "figure.pic >> nth=0", "csv") })
        {
            await page.GotoAsync(new Uri(served.Client.BaseAddress!, path).ToString());
            var tools = page.Locator(place).Locator("xpath=following-sibling::*[contains(@class, 'pic-tools')][1]");
            await tools.Locator($"[data-do={ending}]").WaitForAsync();
            string file = await Taken(page, tools, ending);
            Assert.True(new FileInfo(file).Length > 60, $"{path}: {ending}");
            if (ending == "csv")
            {
                files[path] = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
            }
        }

        // What has no axes to draw a stretch of is looked at as large as the window; Escape closes.
        foreach (var (path, place) in new[] { ("/comparison", ".value-plot"), ("/predictions/A", ".flow"), ("/build-sheet/A", ".drawing") })
        {
            await page.GotoAsync(new Uri(served.Client.BaseAddress!, path).ToString());
            await page.Locator(place).Locator("xpath=following-sibling::*[contains(@class, 'pic-tools')][1]").Locator("[data-do=larger]").ClickAsync();
            var picture = (await page.Locator("dialog.larger").Locator("svg, img").BoundingBoxAsync())!;
            Assert.True(picture.Width >= 900, $"{path}: {picture.Width} px wide");
            await page.Keyboard.PressAsync("Escape");
            Assert.False(await page.Locator("dialog.larger").IsVisibleAsync());
        }

        var energies = served.Result.Verdicts.Single(one => one.Arrangement.Letter == "B").Prediction!.Middle.Energies;
        Assert.StartsWith("from,to,J,mean W\n", files["/predictions/B"]);
        Assert.Contains(FormattableString.Invariant($"cells give,load,{energies.LoadJ:0},"), files["/predictions/B"], StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"load,work,{energies.WorkJ:0},"), files["/predictions/B"], StringComparison.Ordinal);
        SameAsTheCommand(served, files["/arrangements/B"], files["/predictions/A"]);
        await page.GotoAsync(new Uri(served.Client.BaseAddress!, "/").ToString());
        Assert.Equal(0, await page.EvaluateAsync<int>("document.querySelectorAll(\"script[src='/picture.js']\").length")); // the start page stays light
        Assert.Empty(said);
    }

    /// <summary>What is taken away holds the numbers that 'loop' and 'study' give to machines, as far as the page shows them.</summary>
    private static void SameAsTheCommand(ServedStudy served, string loop, string energies)
    {
        using var bench = new Bench();
        var (exit, output, error) = bench.Type("loop", served.Opened.Path, "B", "--json");
        Assert.True(exit == 0, error);
        using var json = JsonDocument.Parse(output);
        string[] rows = loop.Trim().Split('\n');
        Assert.Equal("before it,part,ohms,volts,watts", rows[0]);
        foreach (var (row, step) in rows.Skip(1).Zip(json.RootElement.GetProperty("loop").EnumerateArray()))
        {
            var found = Regex.Match(row, "([0-9.]+) ± [^,]*,-([0-9.]+) V,([0-9.]+) W$");
            Assert.True(found.Success, row);
            Assert.Equal(step.GetProperty("voltsFull").GetProperty("value").GetDouble(), Number(found.Groups[2].Value), 0.0051);
            Assert.Equal(step.GetProperty("wattsFull").GetProperty("value").GetDouble(), Number(found.Groups[3].Value), 0.051);
        }

        Assert.Contains(rows, row => row.Contains("Step-up", StringComparison.Ordinal));
        var joules = served.Json.GetProperty("arrangements")[0].GetProperty("prediction").GetProperty("energiesJ");
        Assert.Equal("out of the cells,J,mean W", energies.Split('\n')[0]);
        foreach (var (name, key) in new[] { ("into the load", "load"), ("lost in the cells", "cells"), ("\"lost in contacts, leads, switch, boards\"", "loop") })
        {
            Assert.Equal(joules.GetProperty(key).GetDouble(), Number(Regex.Match(energies, $"^{name},([0-9.]+),", RegexOptions.Multiline).Groups[1].Value), 0.51);
        }
    }

    private static async Task<string> Taken(IPage page, ILocator place, string ending)
    {
        var file = await page.RunAndWaitForDownloadAsync(() => place.Locator($"[data-do={ending}]").ClickAsync(), new() { Timeout = 120_000 });
        Assert.EndsWith("." + ending, file.SuggestedFilename, StringComparison.Ordinal);
        return (await file.PathAsync())!;
    }

    private static async Task<string> Curve(ILocator figure) => (await figure.Locator("svg:visible path.curve").GetAttributeAsync("d"))!;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
