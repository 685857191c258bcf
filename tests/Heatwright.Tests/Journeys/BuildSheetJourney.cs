using System.Globalization;
using System.Text.Json;
using Heatwright.Jobs;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Journeys;

/// <summary>The numbers that go into the prototype, written as a maker asks for them. Laws are worked out again here from the sheet's own inputs.</summary>
public sealed class BuildSheetJourney : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    /// <summary>A dew band holds some 20 °C, where a couple gives next to no volts above its cold end: the sheet asked a chain to hold what it cannot see, and told of -17 counts.</summary>
    [Fact]
    public void A_set_point_beneath_what_the_sensor_chain_shows_is_told()
    {
        string file = bench.In("band.study");
        Fine("import", Path.Combine(Repository.Root, "samples", "lens-band"), file);
        Fine("build-sheet", file, "--arrangement", "C", "--out", bench.In("band"), "--on", "2026-03-01");
        string page = Web.PagesTests.Visible(File.ReadAllText(bench.In("band/build-sheet.html")));
        Assert.Contains("lies beneath: with a warm grip the chain shows nothing there", page, StringComparison.Ordinal);
        Assert.DoesNotMatch("hot: [-−][0-9]+ counts", page);
    }

    [Fact]
    public void A_folder_holds_the_page_the_code_the_parts_and_the_drawing_and_its_laws_hold()
    {
        string file = Knife();
        using var sheet = JsonDocument.Parse(Fine("build-sheet", file, "--arrangement", "A", "--out", bench.In("sheet"), "--on", "2026-03-01", "--set", "trace-rise=20K", "--json"));
        string[] names = [.. Directory.GetFiles(bench.In("sheet"), "*", SearchOption.AllDirectories).Select(path => Path.GetRelativePath(bench.In("sheet"), path).Replace('\\', '/')).Order(StringComparer.Ordinal)];
        Assert.Equal(["build-sheet.html", "code/bench.c", "code/bench.h", "code/heat_cal.c", "code/heat_cal.h", "code/heat_control.h", "code/heat_control_float.c", "code/heat_control_int.c", "code/heat_selftest.c", "handle.svg", "parts.csv", "parts.md"], names);

        // The pair has no supervision: that stands before everything else, on the page and for machines.
        Assert.Contains("supervision", sheet.RootElement.GetProperty("breaks")[0].GetString()!, StringComparison.Ordinal);
        string page = File.ReadAllText(bench.In("sheet/build-sheet.html"));
        Assert.InRange(page.IndexOf("Do not build it so", StringComparison.Ordinal), 1, page.IndexOf("<h1>", StringComparison.Ordinal));
        Assert.InRange(page.IndexOf("Not tested", StringComparison.Ordinal), 1, page.IndexOf("Sensor and amplifier", StringComparison.Ordinal));
        Assert.Contains("2026-03-01", File.ReadAllText(bench.In("sheet/code/heat_cal.c")), StringComparison.Ordinal);
        Assert.Contains("width=\"", File.ReadAllText(bench.In("sheet/handle.svg")), StringComparison.Ordinal);

        // IPC-2221, outer layer, constants from memory: area in square mil = (I / (0.048 dT^0.44))^(1/0.725), 35 um is 1.378 mil.
        double most = Math.Max(Value(sheet, "power", "Pack amps, full, heater on"), Value(sheet, "power", "Pack amps at the cut-off, heater on"));
        double mil2 = Math.Pow(most / (0.048 * Math.Pow(20, 0.44)), 1 / 0.725);
        Assert.Equal(mil2 / (35 / 25.4) * 0.0254, Value(sheet, "power", "Trace, outer"), 3);

        // Skogestad 2003: gain tau / (k (tau_c + theta)) with tau_c = theta, integral time min(tau, 4 (tau_c + theta)).
        var (k, tau, theta) = (Value(sheet, "control", "Tool near it: resistance to air"), Value(sheet, "control", "time constant"), Value(sheet, "control", "dead time"));
        Assert.Equal(1, Value(sheet, "control", "Gain") / (tau / (k * 2 * theta)), 6);
        Assert.Equal(1, Value(sheet, "control", "Integral time") / Math.Min(tau, 8 * theta), 6);

        // Non-inverting amplifier: gain 1 + feedback over ground, and one count near the set point is step over gain and slope (42.5 uV/K of type K at 320 °C, IEC 60584-1, within a twentieth).
        double gain = Value(sheet, "sensor", "Gain");
        Assert.Equal(1 + (Value(sheet, "sensor", "Feedback resistor") / Value(sheet, "sensor", "Ground resistor")), gain, 6);
        Assert.Equal(1, Value(sheet, "sensor", "One count near the set point") / (3.3 / 4096 / gain / 41.5e-6), 1);

        // The parts list under the maker's own headings, and never over what is there.
        Fine("build-sheet", file, "--arrangement", "A", "--out", bench.In("other"), "--columns", "qty=How many,description=What,=Shop");
        Assert.StartsWith("How many,What,Shop\r\n", File.ReadAllText(bench.In("other/parts.csv")), StringComparison.Ordinal);
        Assert.Contains("2,round cell,", File.ReadAllText(bench.In("other/parts.csv")), StringComparison.Ordinal);
        Refused("not empty", "build-sheet", file, "--arrangement", "A", "--out", bench.In("other"));
    }

    [Fact]
    public void What_cannot_be_is_told_with_the_nearest_way_out()
    {
        string file = Knife();
        Refused("no such arrangement", "build-sheet", file, "--arrangement", "Q", "--out", bench.In("x"));
        Refused("no such number to set", "build-sheet", file, "--arrangement", "A", "--set", "flavour=3", "--out", bench.In("x"));
        Refused("cannot be that", "build-sheet", file, "--arrangement", "A", "--set", "converter-bits=40", "--out", bench.In("x"));
        Refused("no such series", "build-sheet", file, "--arrangement", "A", "--series", "E7", "--out", bench.In("x"));
        Refused("cannot be opened", "build-sheet", file, "--arrangement", "A", "--drawer", bench.In("gone.txt"), "--out", bench.In("x"));
        File.WriteAllText(bench.In("cal.csv"), "time,counts,degrees\n0,900,300\n10,700,220\n");
        using var few = JsonDocument.Parse(Fine("build-sheet", file, "--arrangement", "A", "--calibration", bench.In("cal.csv"), "--out", bench.In("few"), "--json"));
        Assert.Contains("Too few calibration points", Section(few, "calibration").ToString(), StringComparison.Ordinal);
        File.WriteAllText(bench.In("drawer.txt"), "10k,4\n10,2\n");
        using var near = JsonDocument.Parse(Fine("build-sheet", file, "--arrangement", "A", "--drawer", bench.In("drawer.txt"), "--out", bench.In("near"), "--json"));
        Assert.NotEmpty(Section(near, "sensor").GetProperty("problems").EnumerateArray());

        // A falling tool read a dozen times, 8 counts a kelvin: the table says what was read.
        File.WriteAllLines(bench.In("good.csv"), ["time,counts,degrees", .. Enumerable.Range(0, 24).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i * 20},{100 + (8 * (350 - (i * 14)))},{350 - (i * 14)}"))]);
        using var good = JsonDocument.Parse(Fine("build-sheet", file, "--arrangement", "A", "--calibration", bench.In("good.csv"), "--out", bench.In("good"), "--json"));
        var rows = Section(good, "calibration").GetProperty("table").GetProperty("rows").EnumerateArray().ToList();
        var first = rows[0].EnumerateArray().Select(cell => double.Parse(cell.GetString()!, CultureInfo.InvariantCulture)).ToArray();
        Assert.InRange(first[1] - ((first[0] - 100) / 8), -0.6, 0.6); // the table may miss its law by half a kelvin

        // One of them misread by 30 K: the sheet says which. Two that run backwards are refused.
        string[] lines = File.ReadAllLines(bench.In("good.csv"));
        Calibrated("off.csv", [.. lines.Select((line, i) => i == 8 ? "140," + line.Split(',')[1] + ",282" : line)]); // 252 °C was read as 282
        using var off = JsonDocument.Parse(Fine("build-sheet", file, "--arrangement", "A", "--calibration", bench.In("off.csv"), "--out", bench.In("off"), "--json"));
        var told = Section(off, "calibration").GetProperty("lines").EnumerateArray().Single(line => line.GetProperty("name").GetString() == "Pair that lies off");
        Assert.True(told.GetProperty("warns").GetBoolean());
        Assert.Contains("282 °C", told.GetProperty("words").GetString()!.Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.DoesNotContain("Pair that lies off", Section(good, "calibration").ToString(), StringComparison.Ordinal);
        void Calibrated(string name, string[] pairs) => File.WriteAllLines(bench.In(name), pairs);

        Fine("new", bench.In("empty.study"));
        Refused("no brief", "build-sheet", bench.In("empty.study"), "--out", bench.In("x"));
        Assert.Contains("converter-bits", bench.Type("build-sheet", file, "--names").Out, StringComparison.Ordinal);
    }

    /// <summary>What was seen: a prediction of 3.75 s, and on the sheet 6.25 and 11.25 s beside a promise of 8 s, without a word. Which number counts is said beside it; a promise that the sheet's controller misses is a caution.</summary>
    [Fact]
    public void The_warm_up_that_counts_for_the_promise_stands_on_the_sheet_beside_the_one_predicted()
    {
        string file = Knife();
        double predicted = Report.WrittenReports.Knife.Result.Verdicts.First(one => one.Arrangement.Letter == "A").Prediction!.MiddleOutcome.WarmUpS;
        using var sheet = JsonDocument.Parse(Fine("build-sheet", file, "--arrangement", "A", "--out", bench.In("kept"), "--json"));
        var full = Line(sheet, "320 °C at the end, full pack, this controller");
        Assert.Contains("this counts for the promise 'The blade is at 320 °C within 25 s", full.GetProperty("words").GetString(), StringComparison.Ordinal);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"predicted was {predicted:0.##} s"), full.GetProperty("words").GetString(), StringComparison.Ordinal);
        Assert.Equal(full.GetProperty("value").GetDouble() > 25, full.GetProperty("warns").GetBoolean());

        // A promise that no controller keeps, and one that any does.
        foreach (var (within, late) in new[] { ("1", true), ("4000", false) })
        {
            Fine("brief", file, "--drop", OpenStudy.Read(file).Value.Study.Brief!.Requirements.Single(line => line.Quantity == RequirementQuantity.WarmUpTime).Id);
            Fine("brief", file, "--add", $"blade at 320 °C within {within} s from 20 °C");
            using var other = JsonDocument.Parse(Fine("build-sheet", file, "--arrangement", "A", "--out", bench.In("within-" + within), "--json"));
            var told = Line(other, "320 °C at the end, full pack, this controller");
            Assert.Equal(late, told.GetProperty("warns").GetBoolean());
            Assert.Equal(late, told.GetProperty("words").GetString()!.Contains("It misses the promise", StringComparison.Ordinal));
        }

        JsonElement Line(JsonDocument of, string name) => Section(of, "control").GetProperty("lines").EnumerateArray().Single(line => line.GetProperty("name").GetString() == name);
    }

    private string Knife()
    {
        string file = bench.In("knife.study");
        Fine("import", Path.Combine(Repository.Root, "samples", "rope-hot-knife"), file);
        return file;
    }

    private static JsonElement Section(JsonDocument sheet, string key) => sheet.RootElement.GetProperty("sections").EnumerateArray().First(one => one.GetProperty("key").GetString() == key);

    private static double Value(JsonDocument sheet, string key, string line) => Section(sheet, key).GetProperty("lines").EnumerateArray().First(one => one.GetProperty("name").GetString() == line).GetProperty("value").GetDouble();

    private string Fine(params string[] words)
    {
        var typed = bench.Type(words);
        Assert.True(typed.Exit == 0, typed.Error);
        return typed.Out;
    }

    private void Refused(string what, params string[] words)
    {
        var typed = bench.Type(words);
        Assert.Equal(2, typed.Exit);
        Assert.Contains(what, typed.Error, StringComparison.Ordinal);
    }
}
