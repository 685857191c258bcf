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
