using System.Text.Json;
using Heatwright.Jobs;
using Heatwright.StudyFile;

namespace Heatwright.Tests.Journeys;

/// <summary>The demo's bag typed from nothing, line by line, as a maker would.</summary>
public sealed class TypedBagJourney : IDisposable
{
    private static readonly string[] Lines = File.ReadAllLines(Path.Combine(Repository.Root, "tests", "Heatwright.Tests", "Journeys", "typed-bag.txt"));

    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Seventeen_parts_and_four_arrangements_take_under_sixty_lines_and_are_the_generated_ones()
    {
        Assert.InRange(Lines.Length, 12, 59);
        string file = Typed();
        var typed = OpenStudy.Read(file).Value.Study;
        string demo = bench.In("demo.study");
        Assert.Equal(0, bench.Type("import", Path.Combine(Repository.Root, "samples", "rope-hot-knife"), demo).Exit);
        var made = OpenStudy.Read(demo).Value.Study;
        Assert.Equal(Json(made.Parts), Json(typed.Parts));
        Assert.Equal(Json(made.Arrangements), Json(typed.Arrangements));
    }

    [Fact]
    public void Typed_arrangements_on_the_demos_readings_get_the_demos_verdicts()
    {
        // The same bundle with its arrangements and parts taken from what was typed: the words must not know the difference.
        var typed = OpenStudy.Read(Typed()).Value.Study;
        string demo = bench.In("demo.study");
        bench.Type("import", Path.Combine(Repository.Root, "samples", "rope-hot-knife"), demo);
        var made = OpenStudy.Read(demo).Value;
        string mixed = bench.In("mixed.study");
        using (var book = StudyBook.Create(mixed, made.Study with { Parts = typed.Parts, Arrangements = typed.Arrangements }, TimeProvider.System).Value)
        {
            Assert.Equal(made.Fingerprint, book.Fingerprint);
        }
    }

    [Fact]
    public void Every_line_can_be_taken_back_and_made_again()
    {
        string file = Typed();
        string all = OpenStudy.Read(file).Value.Fingerprint;
        for (int i = 0; i < Lines.Length; i++)
        {
            Assert.Equal(0, bench.Type("undo", file).Exit);
        }

        Assert.Empty(OpenStudy.Read(file).Value.Study.Parts);
        Assert.Equal(2, bench.Type("undo", file).Exit);
        for (int i = 0; i < Lines.Length; i++)
        {
            Assert.Equal(0, bench.Type("redo", file).Exit);
        }

        Assert.Equal(all, OpenStudy.Read(file).Value.Fingerprint);
    }

    private string Typed()
    {
        string file = bench.In("typed.study");
        Assert.Equal(0, bench.Type("new", file).Exit);
        foreach (string line in Lines)
        {
            var done = bench.Type([.. Words(line).Select(word => word == "FILE" ? file : word)]);
            Assert.True(done.Exit == 0, $"{line}\n{done.Error}");
        }

        return file;
    }

    private static string Json<T>(T value) => JsonSerializer.Serialize(value, StudyJson.Pretty);

    /// <summary>Words of a line as a shell splits it: blanks part, double quotes hold together.</summary>
    private static List<string> Words(string line)
    {
        List<string> words = [];
        bool quoted = false, begun = false;
        string word = "";
        foreach (char c in line)
        {
            if (c == '"')
            {
                (quoted, begun) = (!quoted, true);
            }
            else if (c == ' ' && !quoted)
            {
                if (begun)
                {
                    words.Add(word);
                }

                (word, begun) = ("", false);
            }
            else
            {
                (word, begun) = (word + c, true);
            }
        }

        return begun ? [.. words, word] : words;
    }
}
