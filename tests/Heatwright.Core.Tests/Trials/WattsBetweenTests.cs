using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>What one meter reads at the start and at the end stands for the rows between.</summary>
public sealed class WattsBetweenTests
{
    private const double No = double.NaN;
    private static readonly double[] Time = [0, 10, 30, 40, 50];

    /// <summary>By hand: from 10 W at 0 s to 9 W at 40 s are 9.75 W at 10 s and 9.25 W at 30 s; behind the last one nobody knows, unless it is said how long it was on.</summary>
    [Theory]
    [InlineData(No, No)]
    [InlineData(60, 9)]
    [InlineData(45, No)]
    public void Watts_lie_on_the_line_between_readings(double offS, double last) =>
        Assert.Equal([10, 9.75, 9.25, 9, last], WattsBetween.Filled(Time, [10, No, No, 9, No], offS));

    /// <summary>Three tenths and more may be a switch in between; nothing is made up there, nor before the first reading.</summary>
    [Fact]
    public void Where_it_may_have_been_switched_nothing_is_filled_in()
    {
        Assert.Equal([10, No, No, 6.9, 6.9], WattsBetween.Filled(Time, [10, No, No, 6.9, 6.9], No));
        Assert.Equal([10, 9.25, 7.75, 7, 7], WattsBetween.Filled(Time, [10, No, No, 7, 7], No));
        Assert.Equal([No, 5, 5, 5, 5], WattsBetween.Filled(Time, [No, 5, No, No, 5], No));
    }

    /// <summary>10 W and 8 W bound the first stretch, 8 W hold until it is switched off at 34 s, in the middle of a stretch.</summary>
    [Theory]
    [InlineData(34, new[] { 0.0, 10, 30, 34, 40, 50 }, new[] { 9.0, 8, 8, 0, 0, 0 })]
    [InlineData(40, new[] { 0.0, 10, 30, 40, 50 }, new[] { 9.0, 8, 8, 0, 0 })]
    [InlineData(double.PositiveInfinity, new[] { 0.0, 10, 30, 40, 50 }, new[] { 9.0, 8, 4, 0, 0 })]
    public void A_warm_up_is_heated_until_the_instant_it_was_switched_off(double offS, double[] times, double[] watts)
    {
        var drive = new WarmUpLog("w", Time, [10, 8, 8, 0, 0], [20, 25, 35, 38, 36], [No, No, No, No, No], 20) { OffS = offS }.Drive();
        Assert.Equal(times, drive.Times);
        Assert.Equal(watts, drive.Values);
    }
}
