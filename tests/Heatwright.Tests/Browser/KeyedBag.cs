using System.Text.Json;
using Heatwright.Jobs;
using Heatwright.StudyFile;
using Heatwright.Tests.Journeys;
using Heatwright.Web;
using Microsoft.Playwright;

namespace Heatwright.Tests.Browser;

/// <summary>A bag of twelve parts typed into the browser, no pointer: each part is one line of fields, Tab between them, Enter at the end.</summary>
internal static class KeyedBag
{
    /// <summary>Short name, kind as the list shows it, name, on hand, how it came, values, note.</summary>
    private static readonly string[][] Parts =
    [
        ["round", "cell", "round cell", "2", "bought", "word chemistry=lithium-ion; claimed capacity=3500mAh (3500 mAh 10A); rated current=10A; measured mass=46g±0.5g (scale)", "Light for its label."],
        ["stick", "heater", "stick heater", "", "bought", "claimed rated volts=12V (12 V 40 W); rated power=40W (12 V 40 W); measured mass=9g±0.5g (scale)", ""],
        ["cartridge", "heater", "cartridge heater", "", "salvaged", "claimed rated volts=24V (24 V 60 W)", ""],
        ["module", "step", "step-up module", "", "bought", "claimed switch current=4A (4 A); measured set volts=14.4V (no load); lock-out volts=2.95V±0.05V", ""],
        ["switch", "switch", "heater switch", "", "bought", "sheet ohms=6mohm±2mohm (switch sheet, at 4.5 V drive)", ""],
        ["leads", "leads", "silicone leads", "", "bought", "sheet rated current=15A (wire sheet)", ""],
        ["tabs", "contacts", "welded tabs", "8", "bought", "assumed rated current=15A (nickel strip, from memory)", ""],
        ["sensor", "sensor", "type K probe", "", "bought", "word type=K; assumed lag=1.5s±0.4s (bare bead, from memory)", ""],
        ["controller", "controller", "controller board", "", "bought", "drain=12mA±1mA (display on)", ""],
        ["charger", "charger", "one-cell charger", "", "borrowed", "word chemistry=lithium-ion; word cells=1; sheet charge current=1A±0.1A (linear, 4.2 V)", ""],
        ["board", "protection", "one-cell protection board", "", "bought", "word chemistry=lithium-ion; word cells=1; claimed trip current=12A (12A protection)", ""],
        ["handle", "handle", "tube handle", "", "bought", "diameter=34mm±0.1mm (caliper, inside); length=205mm", ""],
    ];

    public static async Task Type(string folder, Func<IPlaywright, Task<IBrowser>> launch)
    {
        string file = Path.Combine(folder, "keyed.study");
        Assert.True(NewStudy.Create(file, "keyed").IsFine);
        await using var app = WebBench.Build(OpenStudy.Read(file).Value, 0);
        await app.StartAsync();
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await launch(playwright);
        var page = await browser.NewPageAsync();
        await page.GotoAsync(WebBench.Address(app) + "shelf");
        foreach (string[] part in Parts)
        {
            // The page gives the first field the focus each time: nothing is clicked.
            Assert.Equal("id", await page.EvaluateAsync<string>("document.activeElement.name"));
            for (int i = 0; i < part.Length; i++)
            {
                await page.Keyboard.TypeAsync(part[i]);
                if (i < part.Length - 1)
                {
                    await page.Keyboard.PressAsync("Tab");
                }
            }

            await page.Keyboard.PressAsync("Enter");
            await page.WaitForURLAsync(url => !url.EndsWith("/shelf", StringComparison.Ordinal) && (url.EndsWith("=" + part[0], StringComparison.Ordinal) || url.EndsWith("/add", StringComparison.Ordinal)));
            Assert.True(page.Url.EndsWith("/shelf?kept=" + part[0], StringComparison.Ordinal), $"{page.Url}\n{await page.Locator("body").InnerTextAsync()}");
        }

        var typed = OpenStudy.Read(file).Value.Study.Parts;
        Assert.Equal(Parts.Length, typed.Count);
        Assert.Equal(Json(ByCommand(folder).Parts), Json(typed));
    }

    /// <summary>The same bag on the command line: what the page keeps must be what the command keeps.</summary>
    private static Study ByCommand(string folder)
    {
        using var bench = new Bench();
        string file = Path.Combine(folder, "typed.study");
        Assert.Equal(0, bench.Type("new", file).Exit);
        foreach (string[] part in Parts)
        {
            List<string> words = ["part", "add", file, part[0], part[1] switch { "step" => "step-up", "protection" => "supervision", var kind => kind }, part[2], "--from", part[4]];
            words.AddRange(part[3].Length > 0 ? ["--count", part[3]] : []);
            words.AddRange(part[6].Length > 0 ? ["--note", part[6]] : []);
            string origin = "measured";
            foreach (string piece in part[5].Split("; "))
            {
                string[] begun = piece.Split(' ', 2);
                bool says = begun[0] is "word" or "claimed" or "sheet" or "assumed" or "measured";
                origin = says ? begun[0] : origin;
                words.AddRange(["--" + origin, says ? begun[1] : piece]);
            }

            var done = bench.Type([.. words]);
            Assert.True(done.Exit == 0, done.Error);
        }

        return OpenStudy.Read(file).Value.Study;
    }

    private static string Json<T>(T value) => JsonSerializer.Serialize(value, StudyJson.Pretty);
}
