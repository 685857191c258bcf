using System.Globalization;
using System.Xml.Linq;
using Heatwright.Jobs.Showing;
using Heatwright.Report;
using Heatwright.Tests.Journeys;

namespace Heatwright.Tests.Report;

/// <summary>Pictures at the size of a film, captions and chapter lines.</summary>
public sealed class FilmPictureTests : IDisposable
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Points_and_limits_lie_where_their_axes_say()
    {
        var figure = new Figure("A & B", "a line", new("time", "s"), new("volts", "V"), [new("A, one <cell>", [0, 10], [0, 10], 1) { EndLabel = "A" }]) { Limits = [new("cut-off", 5)] };
        var drawn = XDocument.Parse(FigureSvg.Of(figure, "A ends after 10 s. More is said beside it.", isInvented: true));
        Assert.Equal(("1920", "1080"), (drawn.Root!.Attribute("width")!.Value, drawn.Root.Attribute("height")!.Value));
        string[] paths = [.. drawn.Descendants(Svg + "path").Select(path => path.Attribute("d")!.Value)];
        // By hand: up runs from 0 to 10 and 7 % of room, over 630 px from 930 to 300: 10 V at 930 − 630·10/10.7 = 341.2, 5 V at 635.6; across ends at 1790.
        Assert.Contains("M180 930L1790 341.2", paths);
        Assert.Contains("M180 635.6H1790", paths);
        string[] texts = [.. drawn.Descendants(Svg + "text").Select(text => text.Value)];
        Assert.Contains("A, one <cell>", texts);
        Assert.Contains("line: cut-off", texts);
        Assert.Contains("A ends after 10 s.", texts);
        Assert.Contains("invented readings, for demonstration", texts);
        Assert.All(drawn.Descendants(Svg + "text"), text => Assert.InRange(int.Parse(text.Attribute("font-size")!.Value, CultureInfo.InvariantCulture), 28, 60)); // still read on a telephone, where the film is a fifth as wide
    }

    [Fact]
    public void Every_arrangement_and_every_figure_of_the_report_has_its_picture_and_caption()
    {
        var result = WrittenReports.Knife.Result;
        string folder = bench.In("pictures");
        var written = WritePictures.To(folder, result, new("2026-03-01"), []).Value;
        Assert.Equal(4 + 4 + result.Findings.Sum(found => found.Pictures.Count), written.Pictures.Count); // verdicts, curves over the charge, fits
        Assert.All(written.Pictures, one =>
        {
            var drawn = XDocument.Load(Path.Combine(folder, one.File));
            Assert.Equal("1920", drawn.Root!.Attribute("width")!.Value);
            Assert.Equal("1080", drawn.Root.Attribute("height")!.Value);
        });
        string captions = File.ReadAllText(Path.Combine(folder, "captions.md"));
        Assert.All(written.Pictures, one => Assert.Contains($"]({one.File})", captions, StringComparison.Ordinal));
        Assert.Contains("Invented readings", captions, StringComparison.Ordinal);
        Assert.Contains("| requirement |", File.ReadAllText(Path.Combine(folder, "table.md")), StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(folder, "chapters.txt")));
        Assert.Contains("holds something already", Assert.Single(WritePictures.To(folder, result, new(), []).Problems).What, StringComparison.Ordinal);
    }

    [Fact]
    public void Chapter_lines_follow_the_clock_of_the_film()
    {
        var result = WrittenReports.Knife.Result;
        // The run's own file, read plainly: when the working end passes the target of 320 °C, and when it ends.
        var rows = File.ReadAllLines(Path.Combine(Repository.Root, "samples", "rope-hot-knife", "runs", "stick-up-and-down-1.csv")).Select(line => line.Split(',')).ToArray();
        int time = Array.IndexOf(rows[0], "time"), degrees = Array.IndexOf(rows[0], "degrees");
        double At(string[] row, int column) => double.Parse(row[column], CultureInfo.InvariantCulture);
        double there = At(rows.Skip(1).First(row => At(row, degrees) >= 320), time), end = At(rows[^1], time);
        var lines = Chapters.Of(result, FilmClock.Read(["stick-up-and-down-1=2:10", "stick-cold-1=61:00"]).Value).Value;
        Assert.Equal("0:00:00 rope hot knife", lines[0]);
        Assert.Equal("0:02:10 stick heater, warm up: begins", lines[1]);
        Assert.Contains(lines, line => line.StartsWith($"{Clock(130 + there)} stick heater, warm up: 320 °C reached", StringComparison.Ordinal));
        Assert.Contains($"{Clock(130 + end)} stick heater, warm up: ends", lines);
        Assert.Equal("1:01:00 stick heater, cold ohms: begins", lines[^1]);
        Assert.Equal(lines.Order(StringComparer.Ordinal), lines);
        Assert.Contains("no such run", Assert.Single(Chapters.Of(result, [new("nothing", 0)]).Problems).What, StringComparison.Ordinal);
        Assert.Contains("RUN=TIME", Assert.Single(FilmClock.Read(["2:10"]).Problems).Limit, StringComparison.Ordinal);
    }

    private static string Clock(double s) => TimeSpan.FromSeconds(Math.Floor(s)).ToString("h\\:mm\\:ss", CultureInfo.InvariantCulture);
}
