using Heatwright.Predictions;
using Heatwright.Report;

namespace Heatwright.Tests.Report;

/// <summary>Curves that go up and down with the work, told by stretches.</summary>
public sealed class StretchesTests
{
    private static readonly double[] Times = [.. Enumerable.Range(0, 4001).Select(i => (double)i)];

    [Fact]
    public void A_saw_has_its_mean_as_line_and_its_teeth_as_range()
    {
        // Teeth of 10 s from 300 to 309: mean 304.5 by hand; the band of the draws reaches 2 further either way.
        double[] saw = [.. Times.Select(t => 300 + (t % 10))];
        var band = new Band("working end", "°C", Times, [.. saw.Select(v => v - 2)], saw, [.. saw.Select(v => v + 2)]);
        var told = Stretches.Of(Times, saw, band, 0, 4000, everyS: 10);
        // About 24 stretches: 4000 / 24 is 166.7 s, the next whole number of teeth is 170 s, and 23 of those are in 4000 s.
        Assert.Equal(23, told.Minutes.Length);
        Assert.All(told.Mean, mean => Assert.Equal(304.5, mean, 1e-9));
        Assert.All(told.Low, low => Assert.Equal(298, low));
        Assert.All(told.High, high => Assert.Equal(311, high));
        Assert.Equal(85 / 60.0, told.Minutes[0], 1e-9);
    }

    [Fact]
    public void What_is_before_the_first_time_is_left_out()
    {
        double[] rise = [.. Times.Select(t => t < 1000 ? 20 : 320.0)];
        var told = Stretches.Of(Times, rise, new Band("working end", "°C", [], [], [], []), 1000, 4000, everyS: 10);
        Assert.All(told.Low, low => Assert.Equal(320, low));
        Assert.Equal((1000 + 65) / 60.0, told.Minutes[0], 1e-9); // 3000 / 24 is 125 s, so 130 s a stretch
    }
}
