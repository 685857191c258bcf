using System.Globalization;
using System.Text.Json;

namespace Heatwright.Tests.Journeys;

/// <summary>From the demo's predictions to a choice, as a maker types it.</summary>
public sealed class ChoiceJourney : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    private string Knife()
    {
        string file = bench.In("knife.study");
        var said = bench.Type("import", Path.Combine(Repository.Root, "samples", "rope-hot-knife"), file);
        Assert.True(said.Exit == 0, said.Error);
        return file;
    }

    [Fact]
    public void The_brief_answers_at_once_and_takes_a_sentence()
    {
        string file = Knife();
        var shown = bench.Type("brief", file);
        Assert.Equal(0, shown.Exit);
        Assert.Contains("blade at 320 °C within 25 s from 20 °C", shown.Out, StringComparison.Ordinal);
        Assert.Contains("Needs at least", shown.Out, StringComparison.Ordinal);

        var meant = bench.Type("brief", file, "--say", "want 2: weighs at most 300 g, with cells", "--json");
        using (var json = JsonDocument.Parse(meant.Out))
        {
            Assert.Equal("mass", json.RootElement.GetProperty("quantity").GetString());
            Assert.Equal(300, json.RootElement.GetProperty("limit").GetDouble());
            Assert.False(json.RootElement.GetProperty("must").GetBoolean());
        }

        Assert.Equal(0, bench.Type("brief", file, "--add", "want 2: weighs at most 300 g, with cells").Exit);
        using var after = JsonDocument.Parse(bench.Type("brief", file, "--json").Out);
        var lines = after.RootElement.GetProperty("requirements").EnumerateArray().ToArray();
        Assert.Equal(8, lines.Length);
        Assert.Equal("want 2: mass at most 300 g, with cells", lines[^1].GetProperty("sentence").GetString());

        var refused = bench.Type("brief", file, "--add", "grip at most 43 W");
        Assert.Equal(2, refused.Exit);
        Assert.Contains("43 W", refused.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_brief_can_begin_with_its_first_sentence()
    {
        string file = bench.In("new.study");
        Assert.Equal(0, bench.Type("new", file).Exit);
        Assert.Equal(2, bench.Type("brief", file).Exit);
        Assert.Equal(2, bench.Type("brief", file, "--add", "grip at most 43 °C").Exit);
        var said = bench.Type("brief", file, "--add", "wire at 250 °C within 10 s from 15 °C");
        Assert.True(said.Exit == 0, said.Error);
        using var json = JsonDocument.Parse(bench.Type("brief", file, "--json").Out);
        Assert.Equal(250, json.RootElement.GetProperty("targetC").GetDouble(), 1e-9);
        Assert.Equal(15, json.RootElement.GetProperty("airC").GetDouble(), 1e-9);
    }

    [Fact]
    public void Comparison_reasons_and_next_reading_hang_together_with_the_study()
    {
        string file = Knife();
        using var study = JsonDocument.Parse(bench.Type("study", file, "--json").Out);
        var words = study.RootElement.GetProperty("arrangements").EnumerateArray().ToDictionary(one => one.GetProperty("letter").GetString()!, one => one);

        string table = bench.In("table.md"), sheet = bench.In("table.csv"), picture = bench.In("table.svg");
        using var compared = JsonDocument.Parse(bench.Type("compare", file, "--json", "--to", table).Out);
        var columns = compared.RootElement.GetProperty("arrangements").EnumerateArray().ToArray();
        Assert.Equal(words.Count, columns.Length);
        string[] rank = ["go", "go-if", "need-more-readings", "no-go"];
        int[] places = [.. columns.Select(one => Array.IndexOf(rank, one.GetProperty("verdict").GetString()))];
        Assert.Equal(places.Order(), places);
        Assert.All(columns, one =>
        {
            var own = words[one.GetProperty("letter").GetString()!];
            Assert.Equal(own.GetProperty("verdict").GetString(), one.GetProperty("verdict").GetString());
            // The same numbers as the main job, and the chance of all musts is never above that of any of them.
            var odds = own.GetProperty("requirements").EnumerateArray().Where(line => line.GetProperty("must").GetBoolean() && line.GetProperty("probability").ValueKind == JsonValueKind.Number).Select(line => line.GetProperty("probability").GetDouble());
            Assert.True(one.GetProperty("oddsOfAllMusts").GetDouble() <= odds.Min() + 1e-9);
        });
        Assert.Contains("| requirement | ", File.ReadAllText(table), StringComparison.Ordinal);
        Assert.Equal(0, bench.Type("compare", file, "--to", sheet).Exit);
        Assert.Equal(1 + (7 * columns.Length), File.ReadAllLines(sheet).Length);
        Assert.Equal(0, bench.Type("compare", file, "--to", picture).Exit);
        System.Xml.Linq.XDocument.Load(picture);
        Assert.Equal(2, bench.Type("compare", file, "--to", bench.In("table.doc")).Exit);

        // Nobody beats another and is beaten by it on the same line.
        var beats = compared.RootElement.GetProperty("beats").EnumerateArray().Select(one => (W: one.GetProperty("winner").GetString(), L: one.GetProperty("loser").GetString(), R: one.GetProperty("requirement").GetString())).ToArray();
        Assert.NotEmpty(beats);
        Assert.DoesNotContain(beats, beat => beats.Contains((beat.L, beat.W, beat.R)));

        using var next = JsonDocument.Parse(bench.Type("next", file, "--minutes", "40", "--json").Out);
        double wrong = next.RootElement.GetProperty("wrongNow").GetDouble();
        Assert.InRange(wrong, 0, 1);
        Assert.All(next.RootElement.GetProperty("trials").EnumerateArray(), trial => Assert.InRange(trial.GetProperty("drop").GetDouble(), 0, wrong + 1e-9));
        var evening = next.RootElement.GetProperty("evening").EnumerateArray().ToArray();
        Assert.True(evening.Sum(step => step.GetProperty("endMinute").GetDouble() - step.GetProperty("startMinute").GetDouble()) <= 40);
        Assert.NotEmpty(next.RootElement.GetProperty("advice").GetString()!);
    }

    /// <summary>The step-up on one cell is a no-go; the ways out are named with numbers, and what it rests on is told.</summary>
    [Fact]
    public void A_no_go_is_explained_with_ways_out_and_what_it_rests_on()
    {
        string file = Knife();
        var said = bench.Type("why", file, "B", "--json", "--matters", "16");
        Assert.True(said.Exit == 0, said.Error);
        using var why = JsonDocument.Parse(said.Out);
        Assert.Equal("no-go", why.RootElement.GetProperty("verdict").GetString());
        var pieces = why.RootElement.GetProperty("requirements").EnumerateArray().First(line => line.GetProperty("requirement").GetString() == "pieces");
        Assert.Equal("no-go", pieces.GetProperty("verdict").GetString());
        string[] ways = [.. pieces.GetProperty("wouldHaveToBeTrue").EnumerateArray().Select(way => way.GetString()!)];
        Assert.NotEmpty(ways);
        Assert.NotEmpty(why.RootElement.GetProperty("claims").EnumerateArray().Concat(why.RootElement.GetProperty("assumptions").EnumerateArray()));
        Assert.All(why.RootElement.GetProperty("matters").EnumerateArray(), line => Assert.All(line.GetProperty("shares").EnumerateArray(), share => Assert.True(share.GetProperty("total").GetDouble() >= 0)));

        Assert.Equal(2, bench.Type("why", file, "Z").Exit);
        Assert.Equal(2, bench.Type("next", file, "--minutes", (-3).ToString(CultureInfo.InvariantCulture)).Exit);
    }
}
