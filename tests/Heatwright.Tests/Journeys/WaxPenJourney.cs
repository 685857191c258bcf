using System.Text.Json;

namespace Heatwright.Tests.Journeys;

/// <summary>The wax pen: a slim cell has power to spare for a small tip, so the plainest wiring wins.</summary>
public sealed class WaxPenJourney(ITestOutputHelper output) : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void One_slim_cell_straight_on_the_loop_is_enough_and_the_bad_readings_are_found()
    {
        // By hand, full cell of 4.1 V with 0.3 ohm in the way: 6.86 ohm take 2.3 W, 0.19 J/K times 69 K are 13 J, losses on the way 0.4 W: 7 s.
        // The spoon of 14.3 ohm takes 1.1 W, and its 0.39 J/K want 27 J: more than 27 / 1.1 = 24 s, where 15 s are allowed.
        string[] words = bench.Verdicts(Path.Combine(Repository.Root, "samples", "wax-pen"));
        Assert.Equal(["go", "go", "no-go"], words);
        using var json = JsonDocument.Parse(bench.Last);
        Assert.InRange(Value(json, 0, 0), 5.5, 8.5);
        Assert.True(Value(json, 2, 0) > 24, "The spoon is ready sooner than its heat allows.");

        // By hand: 0.59 Ah at 3.6 V are 7.6 kJ; holding 100 C takes 0.8 to 1.0 W and the work 0.15 W, 5 % stay in the loop: 6200 to 7700 s, a stroke every 20 s.
        Assert.InRange(Value(json, 0, 1), 310, 385);

        // The step-up does it too. By hand: while on, it takes 1 A and 3.4 W and loses 0.05 W + 0.2 V * 1 A + 0.08 ohm * 1 A² = 0.33 W of them: a tenth fewer strokes at least, for more money.
        Assert.True(Value(json, 1, 1) < Value(json, 0, 1) * 0.9, "The step-up costs nothing.");
        Assert.True(Value(json, 1, 6) > Value(json, 0, 6));
        var remarks = json.RootElement.GetProperty("remarks").EnumerateArray().Where(one => one.GetProperty("reading").GetInt32() > 0).Select(one => $"{one.GetProperty("run").GetString()} {one.GetProperty("reading").GetInt32()}");
        Assert.Equal(["slim-discharge-1 88", "slim-discharge-1 89", "loop-cold-1 3", "leads-drop-1 3"], remarks);

        // C is not compared: it stands at the edge of doing a stroke in its time, and falls off it anywhere.
        TruthJourney.HoldsTruth("wax-pen", "AB", bench.Last, output);
    }

    private static double Value(JsonDocument json, int arrangement, int requirement) =>
        json.RootElement.GetProperty("arrangements")[arrangement].GetProperty("requirements")[requirement].GetProperty("value").GetDouble();
}
