using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

/// <summary>Logs with a known offset, drawn from one truth with its own pace and noise for each.</summary>
public class ClockOffsetTests
{
    [Theory]
    [InlineData(37.42, 1), InlineData(-12.9, 2), InlineData(0, 3), InlineData(500, 4), InlineData(-333.3, 5)]
    public void An_offset_is_found_within_a_part_of_the_slower_pace(double ahead, int seed)
    {
        var random = new Random(seed);
        double[] switches = [.. Enumerable.Range(0, 40).Select(_ => random.NextDouble() * 1800).Order()];
        double Truth(double at) => switches.Count(moment => moment <= at) % 2;
        var first = Series(random, 0, 1700, 1.0, at => 4.1 - (0.4 * Truth(at)));
        var second = Series(random, 100, 1800, 0.7, at => 1.5 * Truth(at));
        var match = ClockOffset.Find(first, second with { TimeS = [.. second.TimeS.Select(time => time - ahead)] })!;
        Assert.True(match.IsClear, match.ToString());
        Assert.Equal(ahead, match.AheadS, 0.25);
    }

    [Fact]
    public void A_regular_pulse_has_many_offsets_and_is_not_called_clear()
    {
        var series = new ClockedSeries([.. Enumerable.Range(0, 2000).Select(i => i * 0.5)], [.. Enumerable.Range(0, 2000).Select(i => (double)(i / 20 % 2))]);
        Assert.False(ClockOffset.Find(series, series)!.IsClear);
    }

    [Fact]
    public void Noise_alone_is_not_called_clear()
    {
        var random = new Random(6);
        Assert.False(ClockOffset.Find(Series(random, 0, 500, 1, _ => 0), Series(random, 0, 500, 1, _ => 0))!.IsClear);
    }

    [Fact]
    public void Too_few_readings_tell_nothing() => Assert.Null(ClockOffset.Find(new([0, 1, 2], [1, 2, 3]), new([0, 1, 2], [1, 2, 3])));

    private static ClockedSeries Series(Random random, double from, double to, double paceS, Func<double, double> truth)
    {
        var times = new List<double>();
        var values = new List<double>();
        for (double at = from; at < to; at += paceS)
        {
            times.Add(at);
            values.Add(truth(at) + (0.01 * (random.NextDouble() - 0.5)));
        }

        return new([.. times], [.. values]);
    }
}
