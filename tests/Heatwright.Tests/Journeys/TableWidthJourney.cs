using Heatwright.Cli;

namespace Heatwright.Tests.Journeys;

/// <summary>Tables in narrow windows lose no word and cut none.</summary>
public sealed class TableWidthJourney : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Tables_break_at_blanks_alone()
    {
        string file = bench.In("knife.study");
        var taken = bench.Type("import", Path.Combine(Repository.Root, "samples", "rope-hot-knife"), file);
        Assert.True(taken.Exit == 0, taken.Error);
        foreach (string[] words in (string[][])[["part", "list", file], ["part", "show", file, "round"], ["trial", "list", file], ["trial", "kinds"]])
        {
            var wide = Words(160, words).ToHashSet(StringComparer.Ordinal);
            foreach (int width in (int[])[80, 60, 50])
            {
                Assert.DoesNotContain(Words(width, words), word => !wide.Contains(word));
            }
        }
    }

    private static string[] Words(int width, string[] typed)
    {
        using var output = new StringWriter();
        Assert.Equal(0, CommandLine.Run(typed, new Screen(output, TextWriter.Null, false, false, width)));
        Assert.All(output.ToString().Split('\n'), line => Assert.True(line.TrimEnd().Length <= width, line));

        // A blank that holds a number and its unit together is none to break at; the doubt may go on to the next line as a whole.
        return [.. SetOut.Apart(output.ToString()).Split([' ', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries).Where(word => word.Any(char.IsLetterOrDigit))];
    }
}
