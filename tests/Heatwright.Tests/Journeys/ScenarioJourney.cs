using System.Text.Json;
using Heatwright.DemoTruth;

namespace Heatwright.Tests.Journeys;

/// <summary>Nine invented jobs with the verdict that was reckoned by hand before the program was asked; the rope knife, the foam bow and the wax pen have journeys of their own.</summary>
public sealed class ScenarioJourney(ITestOutputHelper output) : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    // By hand, a full cell 4.1 V, loop about 0.1 ohm and 0.06 ohm of each round cell (0.21 of the slim one at 25 °C).
    // Two in series on 9.6 ohm: (8.2 / 9.8)² · 9.6 = 6.7 W; 1.4 J/K · 229 K = 321 J at 6.7 - 1.6 W take 63 s, 30 are allowed. On 3.6 ohm 17 W: 21 s. The third rod was never seen hot.
    [InlineData("repair-pen", "A no-go ready", "B go", "C need-more-readings")]
    // The band holds 10.5 °C in air that counts as 5 °C: 1.64 / 4.5 · 5.5 = 2.0 W, 2.1 to 2.2 W from the cells. 2.45 Ah are 8.7 Wh: 4 h, 8 h, 12 h where 8 h are asked.
    [InlineData("lens-band", "A no-go run", "B close run", "C go")]
    // 1.35 W and 8 J every 20 s: 1.8 W, 1.9 W from the cell; 0.72 Ah are 2.6 Wh: 80 min or 240 lines, 150 asked.
    // A line takes 8 J in 2.5 s, when the heater gives as much: 2.8 J/K fall by 2.9 K at most, from 113 °C, so that the tip is back at 110 °C in well under 3 s,
    // as long as there are 1.9 W: at the 150th line 13 in 100 of the charge are left, (3.38 / 5.0)² · 4.7 · 0.95 = 2.0 W. Too close to call.
    [InlineData("leather-creaser", "A close back")]
    // One cell gives (4.0 / 1.37)² · 1.2 = 10 W, the blade alone loses 11. Five in series give 50 W: 44 J/K · 59 K = 2.6 kJ in 58 s, then 15 W for an hour of 43 Wh.
    [InlineData("uncapping-blade", "A no-go ready", "B done")]
    // Holding and sealing take 2.0 W. Cold the cell has 0.43 ohm: at 3.4 V (3.4 / 4.4)² · 3.9 · 0.95 = 2.2 W: it ends near a charge of 0.14, after 50 to 56 min, 150 to 168 seals.
    [InlineData("graft-sealer", "A close pieces")]
    // 42 milliohm behind 0.15 ohm ask 4.1 / 0.19 = 21 A of a cell of 10 A, and the board opens at 12 A. 0.67 ohm take 4.9 A.
    [InlineData("wood-pen", "A no-go", "B done")]
    // Three in series: (12.3 / 4.0)² · 3.6 = 34 W, 209 K · 5 J/K in 34 s. Through a step-up to 12 V 40 W: 40 / 0.85 / 3.4 V = 14 A of a cell of 10 A and a module of 10 A.
    [InlineData("insert-press", "A go", "B no-go")]
    // 8.2 / 1.7 = 4.8 A open a board of 3 A, not one of 10 A. 129 J at 35 W take 4 s.
    [InlineData("film-sealer", "A no-go", "B go")]
    // (4.1 / 2.36)² · 2.2 = 6.6 W, 0.15 J/K · 279 K = 42 J at 6.6 - 1.3 W: 8 s, 12 allowed.
    [InlineData("stencil-needle", "A go")]
    [Theory]
    public void The_verdict_is_the_one_reckoned_by_hand(string scene, params string[] expected)
    {
        string bundle = bench.In(scene);
        DemoStudy.Write(bundle, new Hidden(scene));
        string[] words = bench.Verdicts(bundle);
        using var json = JsonDocument.Parse(bench.Last);
        var arrangements = json.RootElement.GetProperty("arrangements").EnumerateArray().ToArray();
        for (int i = 0; i < expected.Length; i++)
        {
            string[] said = expected[i].Split(' ');
            var lines = arrangements[i].GetProperty("requirements").EnumerateArray().Select(line => (Id: line.GetProperty("name").GetString(), Word: line.GetProperty("verdict").GetString(), Text: line.ToString())).ToArray();
            output.WriteLine($"{scene} {expected[i]}: {words[i]}\n{string.Join("\n", lines.Select(line => line.Text))}");
            Assert.True(Means(said[1], words[i]), $"{scene} {said[0]} is {words[i]}, by hand {said[1]}.");
            if (said.Length > 2)
            {
                Assert.True(Means(said[1], lines.Single(line => line.Id == said[2]).Word!), $"{scene} {said[0]}: line {said[2]} is {lines.Single(line => line.Id == said[2]).Word}, by hand {said[1]}.");
            }
        }

        // Who trips at once is told so, not that it stays cold.
        Assert.DoesNotContain("stays at 21 °C", bench.Last, StringComparison.Ordinal);

        // The loose clip, the overload mark and the drop typed in volts are found in every bag.
        string[] remarks = [.. json.RootElement.GetProperty("remarks").EnumerateArray().Select(one => one.GetProperty("run").GetString()!)];
        Assert.Contains("leads-drop-1", remarks);
        Assert.Contains(remarks, run => run.EndsWith("-cold-1", StringComparison.Ordinal));
        Assert.Contains(remarks, run => run.EndsWith("-discharge-1", StringComparison.Ordinal));
    }

    [Fact]
    public void A_press_that_stands_by_between_sets_does_more_on_a_charge()
    {
        // By hand, a set of 4 inserts in 80 s, then 10 min of pause; 6.3 W hold 240 °C. Held hot: 680 s · 6.3 W + 120 J = 4.4 kJ. At 150 °C the loss is (129 / 219)^1.15 = 0.54 of that:
        // 80 · 6.3 + 600 · 3.4 + 120 = 2.7 kJ. Off: 0.5 + 0.12 kJ and to warm up again at most 5 J/K · 219 K = 1.1 kJ.
        string bundle = bench.In("press");
        DemoStudy.Write(bundle, new Hidden("insert-press"));
        string text = File.ReadAllText(Path.Combine(bundle, "study.json"));
        File.WriteAllText(Path.Combine(bundle, "study.json"), text.Replace("\"limit\": 60,\n        \"unit\": \"\"", "\"limit\": 300,\n        \"unit\": \"\"", StringComparison.Ordinal));
        double[] done = [.. new[] { "hold 10min", "stand-by 10min at 150C", "stand-by 10min" }.Select(pause =>
        {
            string file = bench.In(Guid.NewGuid().ToString("N") + ".study");
            Assert.Equal(0, bench.Type("import", bundle, file).Exit);
            var set = bench.Type("brief", file, "--set", $"blocks=warm-up; work 4; {pause}; again");
            Assert.True(set.Exit == 0, set.Error);
            var predicted = bench.Type("predict", file, "--arrangement", "A", "--json");
            Assert.True(predicted.Exit == 0, predicted.Error);
            using var json = JsonDocument.Parse(predicted.Out);
            return json.RootElement.GetProperty("quantities").EnumerateArray().Single(one => one.GetProperty("name").GetString() == "pieces of work").GetProperty("value").GetDouble();
        })];
        output.WriteLine(string.Join(", ", done));
        Assert.InRange(done[1] / done[0], 1.4, 4.4 / 2.7 * 1.1);
        Assert.InRange(done[2] / done[0], 2.2, 3.2);
    }

    [Fact]
    public void Blocks_that_cannot_be_are_refused_and_nothing_is_changed()
    {
        string file = bench.In("plain.study");
        Assert.Equal(0, bench.Type("new", file).Exit);
        Assert.Equal(0, bench.Type("brief", file, "--set", "target=200C", "blocks=warm-up; work 3; stand-by 5min at 150C; again").Exit);
        Assert.Equal("warm-up; work 3; stand-by 5 min at 150 °C; again", Blocks());
        var hot = bench.Type("brief", file, "--set", "blocks=warm-up; stand-by 5min at 250C");
        Assert.Equal(2, hot.Exit);
        Assert.Contains("at most the target", hot.Error, StringComparison.Ordinal);
        Assert.Equal(2, bench.Type("brief", file, "--set", "blocks=nap 5min").Exit);
        Assert.Equal("warm-up; work 3; stand-by 5 min at 150 °C; again", Blocks());
        Assert.Equal(0, bench.Type("brief", file, "--set", "blocks=").Exit);
        Assert.Equal("", Blocks());

        string Blocks()
        {
            using var json = JsonDocument.Parse(bench.Type("brief", file, "--json").Out);
            return json.RootElement.GetProperty("blocks").GetString()!;
        }
    }

    /// <summary>Close: neither sure to hold nor sure to fail. Done: it holds, perhaps under a condition.</summary>
    private static bool Means(string hand, string word) => hand switch
    {
        "close" => word is "go-if" or "need-more-readings",
        "done" => word is "go" or "go-if",
        _ => word == hand,
    };
}
