using System.Text.Json;
using Heatwright.Jobs;

namespace Heatwright.Tests.Journeys;

/// <summary>Parts carried between a study and the maker's own shelf.</summary>
public sealed class OwnShelfJourney : IDisposable
{
    private readonly Bench bench = new();

    private string Demo => bench.In("demo.study");

    private string Next => bench.In("next.study");

    private string Shelf => bench.In("own/shelf.study");

    public OwnShelfJourney()
    {
        Do("import", Path.Combine(Repository.Root, "samples", "rope-hot-knife"), Demo);
        Do("new", Next);
    }

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_part_goes_to_the_shelf_and_into_the_next_study_with_readings_meters_and_findings()
    {
        Do("give", Demo, "stick", "--shelf", Shelf);
        Do("take", Next, "stick", "--shelf", Shelf);
        // The same readings on the same meters give the same findings, to the last digit.
        Assert.Equal(Findings(Demo), Findings(Next));
        Assert.True(Findings(Next).Count >= 4, "ohms, coefficient, heat capacity, loss");
        var whence = OpenStudy.Read(Next).Value.Study.Parts[0].Whence!;
        Assert.Equal("own shelf stick", $"{whence.Study} {whence.Part}");
    }

    [Fact]
    public void Nothing_is_linked_and_newer_is_said_with_the_difference()
    {
        Do("give", Demo, "stick", "--shelf", Shelf);
        Do("take", Next, "stick", "--shelf", Shelf);
        Assert.Equal("same", Stands(Next));
        Do("part", "state", Next, "stick", "--measured", "mass=9.4g±0.1g (better scale)");
        Assert.Equal("newer here", Stands(Next));
        Assert.Equal("same", Stands(Demo));
        string refused = Refused("take", Next, "stick", "--shelf", Shelf);
        Assert.Contains("The part is newer here.", refused, StringComparison.Ordinal);
        Assert.Contains("mass, measured: here 9.4 g ± 0.1 (better scale), there 9 g ± 0.5 (scale)", refused, StringComparison.Ordinal);
        Do("give", Next, "stick", "--shelf", Shelf);
        Assert.Equal("same", Stands(Next));
        Assert.Equal("newer there", Stands(Demo));
        Do("take", Demo, "stick", "--shelf", Shelf);
        Assert.Equal("same", Stands(Demo));
        Assert.Contains(OpenStudy.Read(Demo).Value.Study.Parts.Single(part => part.Id.Name == "stick").Stated, value => value is { Quantity: "mass", Value: 9.4 });
    }

    [Fact]
    public void What_changed_on_both_sides_is_lost_on_neither()
    {
        Do("give", Demo, "stick", "--shelf", Shelf);
        Do("take", Next, "stick", "--shelf", Shelf);
        Do("part", "state", Next, "stick", "--note", "here");
        Do("part", "state", Shelf, "stick", "--note", "there");
        Assert.Equal("newer on both sides", Stands(Next));
        Assert.Contains("note: here here, there there", Refused("take", Next, "stick", "--shelf", Shelf), StringComparison.Ordinal);
        Refused("give", Next, "stick", "--shelf", Shelf);
        Do("take", Next, "stick", "--over", "--shelf", Shelf);
        Assert.Equal("there", OpenStudy.Read(Next).Value.Study.Parts[0].Note);
        Do("undo", Next);
        Assert.Equal("here", OpenStudy.Read(Next).Value.Study.Parts[0].Note);
    }

    [Fact]
    public void A_name_that_is_taken_by_another_part_is_asked_for_another()
    {
        Do("give", Demo, "stick", "--shelf", Shelf);
        Do("part", "add", Next, "stick", "heater", "glue stick");
        Assert.Contains("another part of this name", Refused("take", Next, "stick", "--shelf", Shelf), StringComparison.Ordinal);
        Do("take", Next, "stick", "--as", "stick-2", "--shelf", Shelf);
        Assert.Equal(["stick", "stick-2"], OpenStudy.Read(Next).Value.Study.Parts.Select(part => part.Id.Name));
    }

    [Fact]
    public void Trials_whose_names_are_taken_get_others_and_the_part_stays_the_same()
    {
        Do("give", Demo, "stick", "--shelf", Shelf);
        Do("take", Next, "stick", "--shelf", Shelf);
        string said = Do("take", Next, "stick", "--as", "other", "--shelf", Shelf, "--json");
        Assert.NotEmpty(Json(said).GetProperty("renamed").EnumerateArray());
        var study = OpenStudy.Read(Next).Value.Study;
        Assert.Equal(PartState.Of(study, new("stick")), PartState.Of(study, new("other")));
        Assert.Equal(study.Trials.Count, study.Trials.Select(trial => trial.Id).Distinct().Count());
    }

    [Fact]
    public void A_study_from_a_finished_one_begins_with_all_of_it_and_remembers_whence()
    {
        string again = bench.In("again.study");
        Do("new", again, "--from", Demo, "--name", "second knife");
        var (old, study) = (OpenStudy.Read(Demo).Value.Study, OpenStudy.Read(again).Value.Study);
        Assert.Equal("second knife", study.Name);
        Assert.Equal(old.Parts.Count, study.Parts.Count);
        Assert.Equal(Findings(Demo), Findings(again));
        Assert.All(study.Parts, part => Assert.Equal(("rope hot knife", part.Id), (part.Whence!.Study, part.Whence.Part)));
        Assert.Equal(2, bench.Type("new", again, "--from", Demo).Exit);
    }

    [Fact]
    public void A_study_from_a_finished_one_keeps_its_files_byte_for_byte()
    {
        string again = bench.In("again.study"), log = bench.In("slow.csv");
        File.WriteAllText(log, "time,volts\n0,4.1\n60,4.0\n");
        Do("file", "add", Demo, log);
        Do("new", again, "--from", Demo);
        var kept = Assert.Single(OpenStudy.Whole(again).Value.Files, file => file.Name == "slow.csv");
        Assert.Equal(File.ReadAllBytes(log), kept.Content);
    }

    [Fact]
    public void A_shelf_of_a_newer_format_is_refused_and_left_as_it_is()
    {
        Do("give", Demo, "stick", "--shelf", Shelf);
        using (var file = new FileStream(Shelf, FileMode.Open))
        {
            // Bytes 60 to 63 of a SQLite file are its user version, here the number of our format.
            file.Position = 60;
            file.Write([0, 0, 0, 99]);
        }

        byte[] before = File.ReadAllBytes(Shelf);
        string error = Refused("take", Next, "stick", "--shelf", Shelf);
        Assert.Contains("newer", error, StringComparison.OrdinalIgnoreCase);
        Assert.Empty(OpenStudy.Read(Next).Value.Study.Parts);
        Assert.Equal(before, File.ReadAllBytes(Shelf));
    }

    [Fact]
    public void Drawer_prices_money_and_constants_stay_on_the_shelf()
    {
        Do("shelf", "currency", "EUR", "--shelf", Shelf);
        Do("shelf", "resistors", "4k7", "10R", "R47", "--shelf", Shelf);
        Do("shelf", "resistors", "100k", "10R", "--shelf", Shelf);
        Do("shelf", "price", "silicone wire, 1 m", "0.90", "--shelf", Shelf);
        Do("shelf", "constant", "cut of rope", "55J", "--why", "own trial", "--shelf", Shelf);
        var own = Json(Do("shelf", "show", "--shelf", Shelf, "--json")).GetProperty("own");
        Assert.Equal([0.47, 10, 4700, 100_000], own.GetProperty("resistors").EnumerateArray().Select(one => one.GetDouble()));
        Assert.Equal("EUR", own.GetProperty("currency").GetString());
        Assert.Equal(0.9, own.GetProperty("prices")[0].GetProperty("price").GetDouble());
        Assert.Equal("55 J own trial", $"{own.GetProperty("constants")[0].GetProperty("value").GetDouble()} {own.GetProperty("constants")[0].GetProperty("unit").GetString()} {own.GetProperty("constants")[0].GetProperty("why").GetString()}");
        Assert.Contains("source", Refused("shelf", "constant", "g", "9.81", "--shelf", Shelf), StringComparison.Ordinal);
    }

    [Fact]
    public void An_absent_shelf_says_how_it_begins()
    {
        string error = Refused("take", Next, "stick", "--shelf", Shelf);
        Assert.Contains("heatwright give", error, StringComparison.Ordinal);
        Assert.False(File.Exists(Shelf));
    }

    private List<string> Findings(string file)
    {
        var study = OpenStudy.Read(file).Value.Study;
        return [.. LoopView.Bench(study).Found(new("stick"))!.Findings.Select(finding => $"{finding.Quantity} {finding.Value.Value:R} {finding.Value.StandardDoubt:R}")];
    }

    private string Stands(string file) => Json(Do("shelf", "compare", file, "--shelf", Shelf, "--json")).EnumerateArray().Single(pair => pair.GetProperty("there").GetString() == "stick").GetProperty("stands").GetString()!;

    private string Do(params string[] words)
    {
        var done = bench.Type(words);
        Assert.True(done.Exit == 0, $"{string.Join(' ', words)}\n{done.Error}");
        return done.Out;
    }

    private string Refused(params string[] words)
    {
        var done = bench.Type(words);
        Assert.Equal(2, done.Exit);
        return done.Error;
    }

    private static JsonElement Json(string text) => JsonDocument.Parse(text).RootElement;
}
