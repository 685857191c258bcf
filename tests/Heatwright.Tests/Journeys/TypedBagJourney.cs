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

    [Fact]
    public void A_claim_without_a_unit_is_asked_back_and_nothing_is_lost()
    {
        string file = bench.In("claims.study");
        Assert.Equal(0, bench.Type("new", file).Exit);
        Assert.Equal(0, bench.Type("part", "add", file, "stick", "heater", "--claimed", "rated volts=12V").Exit);
        var refused = bench.Type("part", "state", file, "stick", "--claimed", "rated power=40");
        Assert.Equal(2, refused.Exit);
        Assert.Contains("--claimed \"rated power=40 W\"", refused.Error, StringComparison.Ordinal);
        Assert.Contains("rated volts", bench.Type("part", "show", file, "stick").Out, StringComparison.Ordinal);
        Assert.Equal(0, bench.Type("part", "state", file, "stick", "--claimed", "rated power=40 W").Exit);
        Assert.Equal(0, bench.Type("part", "state", file, "stick", "--measured", "ohms=3.6", "--claimed", "price=4.20").Exit); // a reading means its meter's unit, money its own
    }

    [Fact]
    public void Destroyed_said_of_one_piece_leaves_the_others_sound()
    {
        string file = bench.In("pieces.study");
        Assert.Equal(0, bench.Type("new", file).Exit);
        Assert.Equal(0, bench.Type("part", "add", file, "cells", "cell", "--count", "3").Exit);
        Assert.Equal(0, bench.Type("part", "state", file, "cells", "--sample", "2", "--from", "destroyed").Exit);
        using var shown = System.Text.Json.JsonDocument.Parse(bench.Type("part", "show", file, "cells", "--json").Out);
        Assert.Equal("bought", shown.RootElement.GetProperty("from").GetString());
        var piece = Assert.Single(shown.RootElement.GetProperty("samples").EnumerateArray());
        Assert.Equal(2, piece.GetProperty("number").GetInt32());
        Assert.Equal("destroyed", piece.GetProperty("state").GetString());
        var refused = bench.Type("part", "state", file, "cells", "--sample", "1", "--from", "borrowed");
        Assert.Equal(2, refused.Exit);
        Assert.Contains("whole purchase", refused.Error, StringComparison.Ordinal);
    }
}
