using Heatwright.DemoTruth;

namespace Heatwright.Tests.Journeys;

/// <summary>Words follow numbers: one hidden value of the demo's truth is moved across its flip point, by how much drawn at random, and nothing else.</summary>
public sealed class FlipJourney(ITestOutputHelper output) : IDisposable
{
    private readonly Bench bench = new();
    private readonly Random random = new(Environment.TickCount);

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Names_change_and_no_verdict_does()
    {
        DemoStudy.Write(bench.In("renamed"), new Hidden(), rename: random.Next(1, 50));
        Assert.Equal(["go-if", "go-if", "need-more-readings", "no-go"], bench.Verdicts(bench.In("renamed")).Order(StringComparer.Ordinal));
        Assert.All((string[])["blade", "round cell", "stick", "ribbon", "cartridge"], name => Assert.DoesNotContain(name, bench.Last, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void A_heavier_working_end_turns_the_series_pair_from_go_if_to_no_go()
    {
        double factor = 2.0 + random.NextDouble();
        output.WriteLine($"stick.blade times {factor}");
        var hidden = new Hidden();
        hidden["stick.blade"] *= factor;
        DemoStudy.Write(bench.In("heavy"), hidden);
        string[] words = bench.Verdicts(bench.In("heavy"));
        Assert.Equal("no-go", words[0]);
        Assert.Equal(["no-go", "need-more-readings", "go-if"], words[1..]);
    }

    [Fact]
    public void A_better_cell_lifts_the_step_up_from_no_go()
    {
        double factor = 0.05 + (0.15 * random.NextDouble());
        output.WriteLine($"ohms of the round cell times {factor}");
        var hidden = new Hidden();
        hidden["round.r0"] *= factor;
        hidden["round.r1"] *= factor;
        hidden["round.r2"] *= factor;
        DemoStudy.Write(bench.In("strong"), hidden);
        bench.Verdicts(bench.In("strong"));
        using var json = System.Text.Json.JsonDocument.Parse(bench.Last);
        var pieces = json.RootElement.GetProperty("arrangements")[1].GetProperty("requirements")[1];
        Assert.Equal("pieces", pieces.GetProperty("name").GetString());
        Assert.NotEqual("no-go", pieces.GetProperty("verdict").GetString()); // the cell holds the module up; the grip may be the next to say no
    }

    [Fact]
    public void Thin_leads_turn_the_ribbon_on_one_cell_to_no_go()
    {
        double ohm = 0.10 + (0.05 * random.NextDouble());
        output.WriteLine($"leads {ohm} ohm");
        var hidden = new Hidden();
        hidden["leads.ohms"] = ohm;
        DemoStudy.Write(bench.In("thin"), hidden);
        Assert.Equal("no-go", bench.Verdicts(bench.In("thin"))[2]);
    }
}
