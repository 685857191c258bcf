using System.Text.Json;
using Heatwright.Tests.Journeys;

namespace Heatwright.Tests.Cli;

/// <summary>A maker's own trial by a law of the quick sums.</summary>
public sealed class OwnLawCommandTests : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    /// <summary>By hand: 2 Ω at 20 °C and 4e-3/K make 2.4, 2.8, 3.2 Ω at 70, 120 and 170 °C.</summary>
    [Fact]
    public void Ohms_at_several_temperatures_find_cold_ohms_and_slope_by_their_law()
    {
        var json = Json("trial", "fit", "own-line", "--law", "heater-ohms", "--read", "heater-ohms=2.4 at=70degC", "--read", "heater-ohms=2.8 at=120degC", "--read", "heater-ohms=3.2 at=170degC", "--json");
        Assert.Equal(2, Value(json, "cold"), 1e-6);
        Assert.Equal(4e-3, Value(json, "slope"), 1e-8);
        Assert.Equal("fitted", json.GetProperty("findings")[0].GetProperty("origin").GetString());
    }

    /// <summary>A law whose result is one of its inputs, too. By hand, a line through nothing: (2·1 + 4.02·2)/(1 + 4) = 2.008 Ω.</summary>
    [Fact]
    public void What_is_sought_and_which_result_was_read_can_be_said()
    {
        var json = Json("trial", "fit", "own-line", "--law", "ohms-law", "--result", "voltage", "--find", "resistance", "--read", "voltage=2 current=1", "--read", "voltage=4.02 current=2", "--json");
        Assert.Equal(2.008, Value(json, "resistance"), 1e-6);
    }

    [Theory]
    [InlineData("heater-ohmz", "heater-ohms"), InlineData("", "law")]
    public void A_law_that_is_none_is_refused_with_its_likes(string law, string word)
    {
        var (exit, _, error) = bench.Type("trial", "fit", "own-line", "--law", law, "--read", "x=1 y=2");
        Assert.Equal(2, exit);
        Assert.Contains(word, error, StringComparison.Ordinal);
    }

    /// <summary>By hand: 2 Ω at 20 °C and 4e-3/K make 2.4, 2.8, 3.2 Ω at 70, 120 and 170 °C; the label says 2.5 Ω. The kept trial outlives a bundle.</summary>
    [Fact]
    public void An_own_trial_is_kept_in_a_study_and_its_finding_stands_beside_the_claim()
    {
        string file = bench.In("own.study");
        Well("new", file);
        Well("part", "add", file, "stick", "heater", "heating stick", "--claimed", "ohms=2.5ohm");
        Well("trial", "add", file, "own-line", "--on", "stick", "--law", "heater-ohms", "--find", "cold as ohms, slope");
        Well("trial", "enter", file, "stick-heater-ohms", "--columns", "heater ohms,at", "--read", "2.4 70", "--read", "2.8 120", "--read", "3.2 170");
        Well("export", file, bench.In("out"));
        Well("import", bench.In("out"), bench.In("again.study"));
        foreach (string study in new[] { file, bench.In("again.study") })
        {
            var findings = Json("study", study, "--json").GetProperty("findings").EnumerateArray().ToDictionary(one => one.GetProperty("name").GetString()!, one => one.GetProperty("value").GetDouble());
            Assert.Equal(2, findings["ohms"], 1e-6);
            Assert.Equal(4e-3, findings["slope"], 1e-8);
        }

        string line = Well("study", file).Split('\n').Single(each => each.Contains(" ohms ", StringComparison.Ordinal));
        Assert.Contains("2.5", line, StringComparison.Ordinal);
        Assert.Contains("claimed", line, StringComparison.Ordinal);
    }

    private string Well(params string[] words)
    {
        var (exit, output, error) = bench.Type(words);
        Assert.True(exit == 0, error);
        return output;
    }

    [Fact]
    public void What_is_neither_read_nor_said_nor_sought_is_named()
    {
        var (exit, _, error) = bench.Type("trial", "fit", "own-line", "--law", "heater-ohms", "--find", "cold", "--read", "heater-ohms=2.4 at=70degC");
        Assert.Equal(2, exit);
        Assert.Contains("slope", error, StringComparison.Ordinal);
        (exit, _, error) = bench.Type("trial", "fit", "cold-ohms", "--law", "heater-ohms", "--read", "ohms=2.4");
        Assert.Equal(2, exit);
        Assert.Contains("own-line", error, StringComparison.Ordinal);
    }

    private JsonElement Json(params string[] words)
    {
        var (exit, output, error) = bench.Type(words);
        Assert.True(exit == 0, error);
        return JsonDocument.Parse(output).RootElement;
    }

    private static double Value(JsonElement json, string name) => json.GetProperty("findings").EnumerateArray().Single(finding => finding.GetProperty("name").GetString() == name).GetProperty("value").GetDouble();
}
