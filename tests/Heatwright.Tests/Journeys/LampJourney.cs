using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Heatwright.DemoTruth;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Heatwright.Tests.Journeys;

/// <summary>A load that is no heater goes through the same rooms: a lamp typed from nothing, and the invented inspection lamp.</summary>
public sealed partial class LampJourney(ITestOutputHelper output) : IDisposable
{
    private readonly Bench bench = new();

    private string Study => bench.In("lamp.study");

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task Two_cells_side_by_side_outlast_a_step_up_and_two_in_series_on_every_page()
    {
        // By hand, written down before the program was asked (samples/README.md): A 3.5 W through a step-up take 1.15 A of 2.56 Ah, 2.2 h; B 2.56 Ah at 0.70 A, less 3 of 100, 3.6 h;
        // C 5.12 Ah at 0.70 A, full until 12 of 100 are left, 6.5 h. B's head: (5.7 W - 0.6 W) over 0.087 W/K are 59 K above 20 °C.
        Do("import", Path.Combine(Repository.Root, "samples", "inspection-lamp"), Study);
        await using var app = WebBench.Build(OpenStudy.Read(Study).Value, 0, bench.In("own.study"));
        await app.StartAsync(TestContext.Current.CancellationToken);
        using var client = new HttpClient { BaseAddress = new Uri(WebBench.Address(app)) };
        await WebBench.ReadyAsync(app);
        var json = Json(await Page("/study.json"));
        var found = json.GetProperty("arrangements");
        Assert.Equal(["no-go", "no-go", "go"], found.EnumerateArray().Select(one => one.GetProperty("verdict").GetString()));
        Assert.InRange(Value(0, 0), 2.05, 2.30);
        Assert.InRange(Value(1, 0), 3.45, 3.70);
        Assert.InRange(Value(2, 0), 6.05, 6.75);
        Assert.InRange(Value(1, 1), 68, 82);
        Assert.InRange(Value(2, 1), 40, 49);
        var remarks = json.GetProperty("remarks").EnumerateArray().Where(one => one.GetProperty("reading").GetInt32() > 0).Select(one => $"{one.GetProperty("run").GetString()} {one.GetProperty("reading").GetInt32()}");
        Assert.Equal(["lamp-points-1 3", "leads-drop-1 3"], remarks);

        // Beside the hidden truth: other code, a light with a logarithm, two lumps, radiation.
        using var told = new StringWriter();
        Truth.Print(new Hidden("inspection-lamp"), "C", told);
        double full = double.Parse(FullLight().Match(told.ToString()).Groups[1].Value, CultureInfo.InvariantCulture) / 3600;
        double doubt = found[2].GetProperty("requirements")[0].GetProperty("standardDoubt").GetDouble();
        output.WriteLine($"C: true {full:0.00} h, predicted {Value(2, 0):0.00} ± {doubt:0.00} h");
        Assert.InRange(Value(2, 0), full - (3 * doubt), full + (3 * doubt));

        // The doubt beside a number is that of its draws, although loss, link and grip of one warm-up err against each other: half of what holds the middle 68 of 100.
        var lines = app.Services.GetRequiredService<StudyOnBench>().Now().Result!.Verdicts.SelectMany(one => one.Requirements).Where(line => line.Value?.Origin is Origin.Predicted).ToArray();
        Assert.Equal(12, lines.Length);
        Assert.All(lines, line =>
        {
            double[] drawn = [.. line.Drawn.Order()];
            Assert.InRange(line.Value!.StandardDoubt / ((drawn[drawn.Length * 84 / 100] - drawn[drawn.Length * 16 / 100]) / 2), 0.97, 1.03);
        });

        // The pages say the same, and no page of a lamp speaks of what it has not.
        var lasted = Lasted().Match(WebUtility.HtmlDecode(await Page("/predictions/C")));
        Assert.Equal(Value(2, 0), double.Parse(lasted.Groups["n"].Value, CultureInfo.InvariantCulture) / (lasted.Groups["unit"].Value == "min" ? 60 : 1), 0.06);
        foreach (string path in (string[])["/", "/brief", "/shelf", "/arrangements", "/arrangements/C", "/predictions/A", "/predictions/B", "/predictions/C", "/comparison", "/trials/lamp-points"])
        {
            string page = await Page(path);
            Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
            Assert.DoesNotContain("never reached", page, StringComparison.Ordinal);
            Assert.Contains("invented readings, for demonstration", page, StringComparison.Ordinal);
        }

        double Value(int arrangement, int requirement) => found[arrangement].GetProperty("requirements")[requirement].GetProperty("value").GetDouble();

        Task<string> Page(string path) => client.GetStringAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
    }

    [Fact]
    public void A_build_sheet_of_a_lamp_leaves_out_what_only_a_heater_needs_and_says_why()
    {
        Do("import", Path.Combine(Repository.Root, "samples", "inspection-lamp"), Study);
        string said = Do("build-sheet", Study, "--arrangement", "C", "--out", bench.In("sheet"), "--json");
        var sheet = Json(said);
        string[] sections = [.. sheet.GetProperty("sections").EnumerateArray().Select(one => one.GetProperty("key").GetString()!)];
        Assert.Equal(["lamp", "control", "power", "charging", "handle", "parts", "safety"], sections);
        string page = File.ReadAllText(Path.Combine(bench.In("sheet"), "build-sheet.html"));
        Assert.Contains("no sensor to read", page, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(bench.In("sheet"), "*.c"));
        Assert.DoesNotContain("heater", said, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>By hand: 5.03 Ah at 0.02 A, full until the cells stand at 3.27 V open with 7 of 100 left: 0.93 · 5.03/0.02 = 234 h. A run must not be broken off before.</summary>
    [Fact]
    public void A_small_light_is_followed_for_as_long_as_it_lasts()
    {
        string bundle = bench.In("bundle");
        string sample = Path.Combine(Repository.Root, "samples", "inspection-lamp");
        Directory.CreateDirectory(Path.Combine(bundle, "runs"));
        foreach (string run in Directory.GetFiles(Path.Combine(sample, "runs")).Where(run => !Path.GetFileName(run).StartsWith("lamp-points", StringComparison.Ordinal)))
        {
            File.Copy(run, Path.Combine(bundle, "runs", Path.GetFileName(run)));
        }

        var study = JsonNode.Parse(File.ReadAllText(Path.Combine(sample, "study.json")))!;
        study["trials"]!.AsArray().RemoveAll(trial => trial!["id"]!.GetValue<string>() == "lamp-points");
        var lamp = study["parts"]!.AsArray().Single(part => part!["id"]!.GetValue<string>() == "lamp")!["stated"]!.AsArray();
        lamp.RemoveAll(said => said!["quantity"]!.GetValue<string>() == "load current");
        foreach (var (quantity, value, unit) in new[] { ("load current", 0.02, "A"), ("least input volts", 3.30, "V"), ("dark volts", 2.70, "V") })
        {
            lamp.Add(new JsonObject { ["quantity"] = quantity, ["value"] = value, ["unit"] = unit, ["plusMinus"] = 0, ["origin"] = "measured", ["text"] = "by hand" });
        }

        File.WriteAllText(Path.Combine(bundle, "study.json"), study.ToJsonString());
        Do("import", bundle, Study);
        var told = Json(Do("predict", Study, "--arrangement", "C", "--json"));
        Assert.InRange(told.GetProperty("quantities").EnumerateArray().Single(one => one.GetProperty("name").GetString() == "full light time").GetProperty("value").GetDouble() / 3600, 225, 241);
        Assert.NotEqual("time-over", told.GetProperty("stopReason").GetString());
    }

    [Fact]
    public void A_lamp_typed_from_nothing_has_the_loop_that_was_worked_out_by_hand()
    {
        Bag();
        var loop = Json(Do("arrange", Study, "--lamp", "lamp", "--json"));
        // By hand: 60 + 2·10 + 10 + 10 = 100 mΩ. Full: 4.2 − 0.7·0.1 = 4.13 V, 2.891 W, cells at 4.2 − 0.042 = 4.158 V.
        Near(0.7, loop, "full", "packAmps");
        Near(4.13, loop, "full", "loadVolts");
        Near(2.891, loop, "full", "loadWatts");
        Near(4.158, loop, "full", "packVolts");
        // At the cut-off 3.0 V less 40 mΩ: I = 0.7·(3.0 − 0.04·I − 2.7)/0.6, so I = 0.35/1.0466667 = 0.334395 A, at 2.986624 V 0.998713 W.
        Near(0.334395, loop, "empty", "packAmps");
        Near(0.998713, loop, "empty", "loadWatts");
        string[] places = [.. loop.GetProperty("places").EnumerateArray().Where(place => place.GetProperty("assumed").GetBoolean()).Select(place => place.GetProperty("place").GetString()!)];
        Assert.Equal(["cell", "contacts", "switch", "leads", "handle"], places);
        Assert.Contains("grows weaker before the pack is empty", Do("loop", Study, "A"), StringComparison.Ordinal);
        Assert.Contains("does not stand the volts it gets", Refused("arrange", Study, "--lamp", "lamp", "--pack", "3S1P"), StringComparison.Ordinal);
        Assert.Contains("never gives its full light", Refused("arrange", Study, "--lamp", "five-volts"), StringComparison.Ordinal);
        Assert.Contains("has one load", Refused("arrange", Study, "--lamp", "lamp", "--heater", "wire"), StringComparison.Ordinal);
        Assert.Contains("Which load", Refused("arrange", Study), StringComparison.Ordinal);

        // A heater in its place asks for what only a heater needs; undone, it is a lamp again.
        Do("rewire", Study, "A", "--heater", "wire");
        var hot = OpenStudy.Read(Study).Value.Study.Arrangements.Single();
        Assert.True(hot is { Lamp: null, Heater: not null, Sensor: not null, Controller: not null });
        Do("rewire", Study, "A", "--lamp", "lamp");
        Assert.True(OpenStudy.Read(Study).Value.Study.Arrangements.Single() is { Heater: null, Sensor: null, Controller: null, Lamp.Name: "lamp" });
    }

    [Fact]
    public void The_brief_of_a_lamp_begins_with_its_light_and_asks_for_no_target()
    {
        Bag();
        Assert.Contains("how long a lamp gives its full light", Refused("brief", Study, "--add", "grip at most 43 °C"), StringComparison.Ordinal);
        Do("brief", Study, "--add", "full light for 5 h, from full cells");
        Do("brief", Study, "--set", "end=head");
        Assert.Contains("no hot work", Refused("brief", Study, "--set", "every=60s"), StringComparison.Ordinal);
        var brief = Json(Do("brief", Study, "--json"));
        Assert.False(brief.TryGetProperty("targetC", out var target) && target.ValueKind == JsonValueKind.Number);
        // By hand: 0.7 A · 3.3 V = 2.31 W, over 5 h 11.55 Wh; the lamp for five volts takes 0.2 A · 5 V = 1 W, and is told first.
        Assert.Equal([1.0, 2.31], brief.GetProperty("firstAnswers").EnumerateArray().Select(one => Math.Round(one.GetProperty("leastW").GetDouble(), 9)));
        Assert.Equal(11.55, brief.GetProperty("firstAnswers")[1].GetProperty("leastWh").GetDouble(), 1e-9);
    }

    private void Bag()
    {
        Do("new", Study);
        Do("part", "add", Study, "flat", "cell", "--measured", "ohms=60mohm (pulse)", "full volts=4.2V (rested)", "--sheet", "cut-off volts=3V (sheet)");
        Do("part", "add", Study, "springs", "contacts", "--measured", "ohms=10mohm (drop)");
        Do("part", "add", Study, "slide", "switch", "--measured", "ohms=10mohm (drop)");
        Do("part", "add", Study, "cable", "leads", "--measured", "ohms=10mohm (drop)");
        Do("part", "add", Study, "wire", "heater", "--measured", "ohms=2.7ohm (meter)");
        Do("part", "add", Study, "lamp", "lamp", "--measured", "load current=0.7A (meter)", "least input volts=3.3V (meter)", "dark volts=2.7V (meter)", "--sheet", "most input volts=9V±0.01V (sheet)");
        Do("part", "add", Study, "five-volts", "lamp", "--measured", "load current=0.2A (meter)", "least input volts=5V (meter)");
    }

    private string Do(params string[] words)
    {
        var (exit, told, error) = bench.Type(words);
        Assert.True(exit == 0, $"{string.Join(' ', words)}: {error}{told}");
        return told;
    }

    private string Refused(params string[] words)
    {
        var (exit, told, error) = bench.Type(words);
        Assert.True(exit == 2, told);
        return WhiteSpace().Replace(error, " ");
    }

    private static JsonElement Json(string text) => JsonDocument.Parse(text).RootElement;

    private static void Near(double expected, JsonElement loop, string moment, string number) => Assert.Equal(expected, loop.GetProperty(moment).GetProperty(number).GetProperty("value").GetDouble(), 1e-5);

    [GeneratedRegex(@"^C from full to the end: full light for (\d+) s", RegexOptions.Multiline)]
    private static partial Regex FullLight();

    [GeneratedRegex(@"the full light lasted (?<n>[0-9.]+)\s(?<unit>min|h)\b")]
    private static partial Regex Lasted();

    [GeneratedRegex(@"\s+")]
    private static partial Regex WhiteSpace();
}
