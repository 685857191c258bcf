using Heatwright.Arrangements;
using Heatwright.Predictions;
using Heatwright.Tests.Safety;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>A stretch is narrowed on the tool of <see cref="JudgeTests"/>, whose run is longer the more ohms its heater has: 47.37 s · (R + 0.002).</summary>
public sealed class TurningTests
{
    private static readonly PlantBuilder Builder = new SafetyTool { CapacityAh = 0.1 }.Builder;

    private static readonly int Ohms = Builder.Place(PlantKey.HeaterOhms);

    private static (double From, double To) Narrow(double from, double to, int rounds, double turnsAtOhms, bool byRatio = false) =>
        Turning.Narrow(Builder, Ohms, from, to, rounds, run => from < to ? run.RunTimeS < 47.3684 * (turnsAtOhms + 0.002) : run.RunTimeS > 47.3684 * (turnsAtOhms + 0.002), byRatio);

    // By hand: four points inside leave fifths of the stretch.
    [Theory]
    [InlineData(2, 4, 0, 2.9, 2, 4)]
    [InlineData(2, 4, 1, 2.9, 2.8, 3.2)]
    [InlineData(2, 4, 1, 2.2, 2, 2.4)]
    [InlineData(2, 4, 1, 3.9, 3.6, 4)]
    [InlineData(2, 4, 2, 2.9, 2.88, 2.96)]
    [InlineData(4, 2, 1, 2.9, 3.2, 2.8)]
    public void Each_round_leaves_a_fifth(double from, double to, int rounds, double turn, double near, double far)
    {
        var (low, high) = Narrow(from, to, rounds, turn);
        Assert.Equal(near, low, 1e-12);
        Assert.Equal(far, high, 1e-12);
    }

    // By hand: 1, 2, 4, 8, 16, 32 are equal ratios.
    [Theory, InlineData(5, 4, 8), InlineData(1.5, 1, 2), InlineData(20, 16, 32), InlineData(3, 2, 4)]
    public void Equal_ratios_divide_a_stretch_of_many_sizes(double turn, double near, double far)
    {
        var (low, high) = Narrow(1, 32, 1, turn, byRatio: true);
        Assert.Equal(near, low, 1e-9);
        Assert.Equal(far, high, 1e-9);
    }

    [Fact]
    public void One_value_is_moved_and_the_others_stay()
    {
        double[] middle = [1, 2, 3];
        Assert.Equal([1, 9, 3], Turning.Moved(middle, 1, 9));
        Assert.Equal([1, 2, 3], middle);
        Outcome[] runs = Turning.Along(Builder, Ohms, [2, 3]);
        Assert.Equal([94.83, 142.2], runs.Select(run => run.RunTimeS), (a, b) => Math.Abs(a - b) < 0.5);
    }
}
