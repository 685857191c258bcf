using System.Text.Json;

namespace Heatwright.Tests.Journeys;

/// <summary>A tool that exists, in the comparison by its own readings.</summary>
public sealed class ToolJourney : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_tool_stands_by_what_was_read_and_loses_nothing_by_what_was_not()
    {
        // A study of a brief only, so that nothing but the tool is judged.
        string bundle = bench.In("bundle"), study = bench.In("knife.study");
        Directory.CreateDirectory(bundle);
        var demo = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(Path.Combine(Repository.Root, "samples", "rope-hot-knife", "study.json")))!.AsObject();
        demo["trials"] = new System.Text.Json.Nodes.JsonArray();
        demo["arrangements"] = new System.Text.Json.Nodes.JsonArray();
        File.WriteAllText(Path.Combine(bundle, "study.json"), demo.ToJsonString());
        Do("import", bundle, study);
        var lines = demo["brief"]!["requirements"]!.AsArray().Select(line => (Quantity: line!["quantity"]!.GetValue<string>(), Limit: line["limit"]!.GetValue<double>(), Must: line["must"]!.GetValue<bool>())).ToArray();
        var warm = lines.Single(line => line.Quantity == "warmUpTime");
        Assert.True(warm.Must);

        // Read at 0.8 of the limit with ± 0.1 of it: the whole range is kept.
        Put(study, $"warm-up time={Text(0.8 * warm.Limit)}s±{Text(0.1 * warm.Limit)}s (stopwatch)", "mass=410g (scale)");
        var tool = Tool(study);
        Assert.Equal("go", tool.GetProperty("verdict").GetString());
        var known = tool.GetProperty("requirements").EnumerateArray().Where(line => line.ValueKind == JsonValueKind.Object).ToArray();
        Assert.Equal(1, Assert.Single(known).GetProperty("probability").GetDouble());
        Assert.Equal(lines.Length, tool.GetProperty("requirements").GetArrayLength());

        // At the limit itself half of the range is kept: by hand (0 + half)/(2 half) = 0.5.
        Put(study, $"warm-up time={Text(warm.Limit)}s±2s (stopwatch)");
        Assert.Equal(0.5, Warm(study).GetProperty("probability").GetDouble(), 1e-12);
        Assert.Equal("need-more-readings", Tool(study).GetProperty("verdict").GetString());

        // A quarter of the range beyond: limit + 1 s ± 2 s keeps (−1 + 2)/4.
        Put(study, $"warm-up time={Text(warm.Limit + 1)}s±2s (stopwatch)");
        Assert.Equal(0.25, Warm(study).GetProperty("probability").GetDouble(), 1e-12);

        Put(study, $"warm-up time={Text(2 * warm.Limit)}s±1s (stopwatch)");
        Assert.Equal("no-go", Tool(study).GetProperty("verdict").GetString());
        Assert.Equal(2, Tool(study).GetProperty("readings").GetArrayLength());
    }

    [Fact]
    public void The_comparison_shows_the_tool_beside_the_arrangements_and_leaves_empty_what_was_not_read()
    {
        string study = bench.In("bow.study");
        Do("import", Path.Combine(Repository.Root, "samples", "foam-bow"), study);
        Put(study, "warm-up time=3s±0.5s (stopwatch)");
        string table = bench.In("table.csv"), shown = Do("compare", study, "--to", table);
        Assert.Contains("X is mains hot knife, as read on it", shown, StringComparison.Ordinal);
        string[] rows = [.. File.ReadLines(table).Where(line => line.Contains(",X,", StringComparison.Ordinal))];
        Assert.Equal(7, rows.Length); // the lines of its brief
        // 6 s asked, 3 s read: 3 s to spare.
        Assert.Contains(rows, row => row.StartsWith("ready,", StringComparison.Ordinal) && row.EndsWith(",X,3,3,1,go", StringComparison.Ordinal));
        Assert.All(rows.Where(row => !row.StartsWith("ready,", StringComparison.Ordinal)), row => Assert.EndsWith(",X,,,,", row, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("colour=red")]
    [InlineData("warm-up time=soon")]
    [InlineData("mass=40degC")]
    public void A_slip_says_what_could_be_typed(string typed)
    {
        string study = bench.In("empty.study");
        Do("new", study);
        var refused = bench.Type("tool", "add", study, "X", "a tool", "--read", typed);
        Assert.Equal(2, refused.Exit);
        Assert.Matches("  next   .{10,}", refused.Error);
    }

    private void Put(string study, params string[] read) => Do(["tool", "add", study, "X", "mains hot knife", "--read", .. read]);

    private JsonElement Warm(string study) => Tool(study).GetProperty("requirements").EnumerateArray().Single(line => line.ValueKind == JsonValueKind.Object);

    private JsonElement Tool(string study) => JsonDocument.Parse(Do("study", study, "--json")).RootElement.GetProperty("tools")[0];

    private string Do(params string[] words)
    {
        var done = bench.Type(words);
        Assert.True(done.Exit == 0, $"{string.Join(' ', words)}\n{done.Error}");
        return done.Out;
    }

    private static string Text(double value) => value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);
}
