namespace Heatwright.Tests.Journeys;

/// <summary>Every command of the guide, typed in the order of its page, says what the page shows.</summary>
public sealed class GuideJourney : IDisposable
{
    /// <summary>How names end that commands of the guide write or read.</summary>
    private static readonly string[] Written = [".study", ".html", ".zip", ".md", "-sheet", "-pictures"];

    private readonly Bench bench = new();

    public static TheoryData<string> Pages => [.. Directory.GetFiles(Guide, "*.md").Select(page => Path.GetFileName(page)).Order(StringComparer.Ordinal)];

    private static string Guide => Path.Combine(Repository.Root, "docs", "guide");

    public void Dispose() => bench.Dispose();

    [Theory, MemberData(nameof(Pages))]
    public void Every_command_of_a_page_answers_as_the_page_shows(string page)
    {
        string[] lines = File.ReadAllLines(Path.Combine(Guide, page));
        for (int i = 0; i < lines.Length; i++)
        {
            if (!lines[i].StartsWith("$ heatwright ", StringComparison.Ordinal))
            {
                continue;
            }

            var said = bench.Type([.. Words(lines[i]).Skip(2).Select(Here)]);
            Assert.True(said.Exit == 0, $"{page}, line {i + 1}: {said.Error}");
            string all = DemoJourney.Squeezed(said.Out + said.Error);
            foreach (string piece in lines.Skip(i + 1).TakeWhile(line => line != "```" && !line.StartsWith("$ ", StringComparison.Ordinal)).SelectMany(line => line.Split("...")))
            {
                Assert.True(all.Contains(DemoJourney.Squeezed(piece), StringComparison.Ordinal), $"{page}, line {i + 1}: does not say '{piece.Trim()}' but\n{said.Out}");
            }
        }
    }

    [Fact]
    public void The_index_names_every_page_and_every_link_leads_somewhere()
    {
        string index = File.ReadAllText(Path.Combine(Guide, "README.md"));
        foreach (string page in Directory.GetFiles(Guide, "*.md"))
        {
            string name = Path.GetFileName(page);
            Assert.True(name == "README.md" || index.Contains($"({name})", StringComparison.Ordinal), $"The index does not name {name}.");
            foreach (string link in File.ReadAllText(page).Split("](").Skip(1).Select(rest => rest[..rest.IndexOfAny([')', '#'])]))
            {
                Assert.True(Path.Exists(Path.Combine(Guide, link)), $"{name} leads to {link}, which is not there.");
            }
        }
    }

    /// <summary>The words of a line; what stands in quotes is one word.</summary>
    private static IEnumerable<string> Words(string line) =>
        line.Split('"').SelectMany((piece, i) => i % 2 == 1 ? [piece] : piece.Split(' ', StringSplitOptions.RemoveEmptyEntries));

    /// <summary>A word as typed in the checkout, with files that are written in the folder of this test.</summary>
    private string Here(string word) => word.StartsWith("samples/", StringComparison.Ordinal) || word.StartsWith("docs/", StringComparison.Ordinal) ? Path.Combine(Repository.Root, word)
        : !word.Contains(' ', StringComparison.Ordinal) && !word.StartsWith("build", StringComparison.Ordinal) && Written.Any(end => word.EndsWith(end, StringComparison.Ordinal)) ? bench.In(word) : word;
}
