using System.Globalization;
using System.Text.Json;
using Heatwright.Jobs;
using Heatwright.Verdicts;

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

    /// <summary>The step-up on one cell is a no-go; every way out that is named is tried by changing exactly that number and running the tool again.</summary>
    [Fact]
    public void A_no_go_is_explained_with_ways_out_that_hold()
    {
        string file = Knife();
        var opened = OpenStudy.Read(file).Value;
        var result = RunStudy.Run(opened.Study, opened.Fingerprint);
        var why = WhyTool.Of(result, "b", 8).Value;
        Assert.Equal("no-go", why.Verdict);
        var pieces = why.Requirements.Single(line => line.Requirement == "pieces");
        Assert.Equal("no-go", pieces.Verdict);
        Assert.NotEmpty(pieces.WouldHaveToBeTrue);
        Assert.NotEmpty(why.Claims.Concat(why.Assumptions));
        Assert.All(why.Matters!, line => Assert.All(line.Shares, share => Assert.True(share.Total >= 0)));
        Assert.False(WhyTool.Of(result, "Z", 0).IsFine);

        var verdict = result.Verdicts.Single(one => one.Arrangement.Letter == "B");
        var builder = verdict.Prediction!.Builder;
        var line = verdict.Requirements.Single(one => one.Requirement.Id == "pieces").Requirement;
        var flips = WouldHaveToBeTrue.Of(builder, line, Told.ByRun(line, result.Study.Brief!, 1));
        Assert.Equal(pieces.WouldHaveToBeTrue, flips.Take(4).Select(flip => flip.Words));
        Assert.All(flips.Take(4), flip =>
        {
            int place = builder.Inputs.ToList().FindIndex(input => input.Name == flip.Name);
            double[] moved = builder.Middle;
            moved[place] = flip.Flip;
            Assert.True(Heatwright.Predictions.Predict.Once(builder, moved).Pieces >= 40, flip.Words);
            moved[place] = flip.Flip - (0.05 * (flip.Flip - flip.Now)); // not quite so far
            Assert.True(Heatwright.Predictions.Predict.Once(builder, moved).Pieces < 40, flip.Words);
        });
        Assert.Equal(2, bench.Type("next", file, "--minutes", (-3).ToString(CultureInfo.InvariantCulture)).Exit);
    }
}
