using System.Text.Json;
using System.Text.Json.Nodes;

namespace Heatwright.Tests.Journeys;

/// <summary>The shelf of the demo searched as a maker types it.</summary>
public sealed class SearchJourney : IDisposable
{
    private static readonly string Sample = Path.Combine(Repository.Root, "samples", "rope-hot-knife");

    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Every_arrangement_of_the_shelf_is_tried_and_each_family_put_aside_has_its_reason()
    {
        string file = bench.In("knife.study");
        Assert.Equal(0, bench.Type("import", Sample, file).Exit);
        var said = bench.Type("search", file, "--json");
        Assert.True(said.Exit == 0, said.Error);
        using var json = JsonDocument.Parse(said.Out);
        // By hand: 2 cells, 4 in series by 2 side by side, straight or one module, 3 heaters, 2 contacts, one switch, one pair of leads.
        Assert.Equal(2 * 8 * 2 * 3 * 2, json.RootElement.GetProperty("tried").GetInt32());
        // The cartridge of 9 ohms on one cell, by hand: (4.2 / 9.2)² · 9 = 1.9 W at 0.02 W/K and more: under 100 °C, where 320 are asked; nobody runs that over a charge.
        int cold = json.RootElement.GetProperty("tooCold").GetInt32();
        string[] reasons = [.. json.RootElement.GetProperty("discarded").EnumerateArray().Where(family => family.GetProperty("family").GetString() == "1S1P round cell, straight, cartridge heater").Select(family => family.GetProperty("reason").GetString()!)];
        Assert.InRange(cold, 4, 60);
        Assert.Contains("it stands at", Assert.Single(reasons), StringComparison.Ordinal);
        Assert.Contains("320 °C are asked", reasons[0], StringComparison.Ordinal);
        var best = json.RootElement.GetProperty("best").EnumerateArray().ToArray();
        Assert.InRange(best.Length, 1, 5);
        Assert.Contains(best, one => one.GetProperty("verdict").GetString() is "go" or "go-if");
        Assert.Empty(json.RootElement.GetProperty("buy").EnumerateArray());
        var put = json.RootElement.GetProperty("discarded").EnumerateArray().ToArray();
        Assert.NotEmpty(put);
        Assert.All(put, family => Assert.True(family.GetProperty("reason").GetString()!.Length > 10));
        Assert.True(put.Sum(family => family.GetProperty("count").GetInt32()) + best.Length <= 192);
        // A heater above its label is never offered without saying what a stuck switch does.
        Assert.All(best.Where(one => one.GetProperty("dutyCeiling").GetDouble() < 0.9), one =>
            Assert.Contains(one.GetProperty("warnings").EnumerateArray(), warning => warning.GetString()!.Contains("stuck on", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_shelf_that_cannot_do_it_says_what_kind_of_part_would()
    {
        // Nothing but the salvaged cartridge, and a brief that it cannot meet: hot in a tenth of the time.
        string file = Changed(study =>
        {
            Keep(study, part => part["kind"]!.GetValue<string>() != "heater" || part["id"]!.GetValue<string>() == "cartridge");
            study["arrangements"] = new JsonArray();
            study["trials"] = new JsonArray([.. study["trials"]!.AsArray().Where(trial => study["parts"]!.AsArray().Any(part => part!["id"]!.GetValue<string>() == trial!["part"]!.GetValue<string>())).Select(trial => trial!.DeepClone())]);
            study["brief"]!["requirements"]![0]!["limit"] = 0.5;
        });
        using var json = JsonDocument.Parse(bench.Type("search", file, "--json").Out);
        Assert.DoesNotContain(json.RootElement.GetProperty("best").EnumerateArray(), one => one.GetProperty("verdict").GetString() is "go" or "go-if");
        Assert.All(json.RootElement.GetProperty("discarded").EnumerateArray(), family => Assert.NotEmpty(family.GetProperty("reason").GetString()!));
    }

    [Fact]
    public void A_shelf_without_a_heater_is_told_to_add_one()
    {
        string file = Changed(study =>
        {
            Keep(study, part => part["kind"]!.GetValue<string>() != "heater");
            study["arrangements"] = new JsonArray();
            study["trials"] = new JsonArray([.. study["trials"]!.AsArray().Where(trial => study["parts"]!.AsArray().Any(part => part!["id"]!.GetValue<string>() == trial!["part"]!.GetValue<string>())).Select(trial => trial!.DeepClone())]);
        });
        var said = bench.Type("search", file);
        Assert.Equal(2, said.Exit);
        Assert.Contains("no heater", said.Error, StringComparison.Ordinal);
    }

    private static void Keep(JsonNode study, Func<JsonNode, bool> keep) =>
        study["parts"] = new JsonArray([.. study["parts"]!.AsArray().Where(part => keep(part!)).Select(part => part!.DeepClone())]);

    private string Changed(Action<JsonNode> change)
    {
        string bundle = bench.In("changed"), file = bench.In("changed.study");
        Directory.CreateDirectory(Path.Combine(bundle, "runs"));
        var study = JsonNode.Parse(File.ReadAllText(Path.Combine(Sample, "study.json")))!;
        change(study);
        File.WriteAllText(Path.Combine(bundle, "study.json"), study.ToJsonString());
        var runs = study["trials"]!.AsArray().SelectMany(trial => trial!["runs"]!.AsArray()).Select(run => run!["id"]!.GetValue<string>() + ".csv");
        foreach (string run in runs)
        {
            File.Copy(Path.Combine(Sample, "runs", run), Path.Combine(bundle, "runs", run));
        }

        var said = bench.Type("import", bundle, file);
        Assert.True(said.Exit == 0, said.Error);
        return file;
    }
}
