using System.Text.Json;

namespace Heatwright.Tests.Journeys;

/// <summary>The demo as the README has it: typed in an empty folder, twice.</summary>
public sealed class DemoJourney : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void The_demo_runs_the_whole_job_and_says_where_the_report_is()
    {
        var first = bench.Type("demo", "--into", bench.Folder);
        Assert.Equal(0, first.Exit);
        Assert.Equal("", first.Error);
        string report = bench.In("rope-hot-knife.html");
        Assert.Contains(report, Unwrapped(first.Out), StringComparison.Ordinal);
        Assert.True(new FileInfo(report).Length > 100_000);
        Assert.True(File.Exists(bench.In("rope-hot-knife.study")));
        Assert.Contains("serve", first.Out, StringComparison.Ordinal);

        // The README's example, line by line.
        string[] example = [.. File.ReadAllLines(Path.Combine(Repository.Root, "README.md")).SkipWhile(line => line != "$ heatwright demo").Skip(1).TakeWhile(line => line != "```")
            .SelectMany(line => line.Split("...")).Select(piece => piece.Trim()).Where(piece => piece.Length > 0)];
        Assert.True(example.Length > 8);
        string said = Squeezed(first.Out);
        Assert.All(example, piece => Assert.Contains(Squeezed(piece), said, StringComparison.Ordinal));

        string json = bench.Type("demo", "--into", bench.Folder, "--json").Out;
#if !COMMA_DECIMAL
        Assert.Equal(json, bench.Type("demo", "--into", bench.Folder, "--json").Out); // once is enough: the second pass looks at the culture
#endif
        using var parsed = JsonDocument.Parse(json);
        var arrangements = parsed.RootElement.GetProperty("arrangements").EnumerateArray().ToArray();
        Assert.Equal(["go-if", "no-go", "need-more-readings", "go-if"], arrangements.Select(one => one.GetProperty("verdict").GetString()));
        Assert.All(arrangements, one => Assert.NotEmpty(one.GetProperty("because").GetString()!));
        Assert.All(arrangements.SelectMany(one => one.GetProperty("requirements").EnumerateArray()), line =>
        {
            Assert.NotEmpty(line.GetProperty("name").GetString()!);
            Assert.Contains(line.GetProperty("verdict").GetString()!, (string[])["go", "go-if", "no-go", "need-more-readings"]);
            Assert.NotEmpty(line.GetProperty("because").GetString()!);
        });
        Assert.Contains("the module's input falls to its lock-out", arrangements[1].GetProperty("because").GetString()!, StringComparison.Ordinal);
        Assert.Contains("supervision", arrangements[0].GetProperty("because").GetString()!, StringComparison.Ordinal);

        // The bad readings are told, and stay in the study.
        string remarks = parsed.RootElement.GetProperty("remarks").GetRawText();
        Assert.Contains("clip loose", remarks, StringComparison.Ordinal);
        Assert.Contains("overload", remarks, StringComparison.Ordinal);
        Assert.Contains("unit slip", remarks, StringComparison.Ordinal);
        Assert.Equal(4, parsed.RootElement.GetProperty("remarks").EnumerateArray().Count(remark => remark.GetProperty("effect").GetString() == "left out"));
    }

    /// <summary>Without what wrapping and columns add.</summary>
    internal static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c != '│'));

    private static string Unwrapped(string text) => text.Replace("\n", "", StringComparison.Ordinal).Replace("\r", "", StringComparison.Ordinal);
}
