using System.Text.Json;

namespace Heatwright.Tests.Journeys;

/// <summary>The foam bow: a light wire, fast to heat, and a step-up that nobody needs.</summary>
public sealed class FoamBowJourney(ITestOutputHelper output) : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void The_thicker_wire_on_one_cell_needs_no_converter_and_the_bad_readings_are_found()
    {
        // By hand: 4.58 ohm on one cell of 3.6 to 4.1 V is 2.6 to 3.4 W, near the 3.0 W that hold the wire; 2.78 ohm is 4.1 to 5.5 W.
        string[] words = bench.Verdicts(Path.Combine(Repository.Root, "samples", "foam-bow"));
        Assert.Equal("go", words[2]);
        Assert.Contains(words[0], (string[])["need-more-readings", "no-go"]);
        Assert.Equal("go-if", words[1]); // its limit current is only claimed
        Assert.Equal("go-if", words[3]); // two cells in series without supervision
        using var json = JsonDocument.Parse(bench.Last);
        var remarks = json.RootElement.GetProperty("remarks").EnumerateArray().Where(one => one.GetProperty("reading").GetInt32() > 0).Select(one => $"{one.GetProperty("run").GetString()} {one.GetProperty("reading").GetInt32()}");
        Assert.Equal(["round-discharge-1 88", "round-discharge-1 89", "thick-cold-1 3", "leads-drop-1 3"], remarks);

        // B is not compared: its prediction rests on a label that is false.
        TruthJourney.HoldsTruth("foam-bow", "ACD", bench.Last, output);
    }
}
