using System.Text.Json;
using System.Text.RegularExpressions;
using Heatwright.Jobs;
using Heatwright.Tests.Journeys;
using Heatwright.Web;

namespace Heatwright.Tests.Web;

/// <summary>Mine beside theirs in the browser: the lines of the command, part by part.</summary>
public sealed class BesidePageTests
{
    [Fact]
    public async Task Each_part_stands_once_above_its_lines_and_every_line_of_the_command_is_there()
    {
        using var bench = new Bench();
        string shared = bench.In("viewers.zip"), file = bench.In("theirs.study");
        foreach (string[] words in new[] { ["import", Path.Combine(Repository.Root, "samples", "foam-bow"), bench.In("bow.study")], ["share", bench.In("bow.study"), shared], new[] { "import", shared, file } })
        {
            var typed = bench.Type(words);
            Assert.True(typed.Exit == 0, typed.Error);
        }

        using var json = JsonDocument.Parse(bench.Type("beside", file, "--json").Out);
        var lines = json.RootElement.GetProperty("lines").EnumerateArray().ToArray();
        await using var app = WebBench.Build(OpenStudy.Read(file).Value, 0, bench.In("own.study"));
        await app.StartAsync(TestContext.Current.CancellationToken);
        using var client = new HttpClient { BaseAddress = new Uri(WebBench.Address(app)) };
        string page = "";
        for (int i = 0; i < 600 && !page.Contains("data-row", StringComparison.Ordinal); i++)
        {
            page = await client.GetStringAsync(new Uri("beside", UriKind.Relative), TestContext.Current.CancellationToken);
            await Task.Delay(100, TestContext.Current.CancellationToken);
        }

        // A study that was shared is one click from it, on the start page and at its trials.
        foreach (string path in (string[])["", "trials"])
        {
            string from = await client.GetStringAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
            for (int i = 0; i < 600 && !from.Contains("href=\"/beside\"", StringComparison.Ordinal) && from.Contains("orking", StringComparison.Ordinal); i++)
            {
                await Task.Delay(200, TestContext.Current.CancellationToken);
                from = await client.GetStringAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
            }

            Assert.Contains("href=\"/beside\"", from, StringComparison.Ordinal);
        }

        Assert.Contains("say what holds for yours on its page", page, StringComparison.Ordinal);
        Assert.NotEmpty(lines);
        Assert.Equal(lines.Length, Regex.Count(page, "data-row="));
        string[] parts = [.. lines.Select(line => line.GetProperty("part").GetString()!).Distinct()];
        Assert.Equal(parts, Regex.Matches(page, "scope=\"rowgroup\"[^>]*>([^<]+)<").Select(match => match.Groups[1].Value));
        Assert.Equal(lines.Count(line => line.GetProperty("says").GetString() == "not read yet"), Regex.Count(page, "class=\"says\">not read yet<"));
    }
}
