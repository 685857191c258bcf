using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>When draws are enough: intervals by hand from Wilson's formula (1927) at 2.576, the normal quantile of 99 in 100.</summary>
public class SettlingTests
{
    [Theory]
    [InlineData(256, 256, true)] // all kept: from 256/(256 + 6.636) = 0.9747 up
    [InlineData(250, 256, false)] // 0.9766: from 0.938 to 0.991
    [InlineData(243, 256, false)] // 0.949, and 0.95 within
    [InlineData(0, 256, true)]
    [InlineData(6, 256, false)] // 0.023: up to 0.062
    [InlineData(128, 256, true)] // a half: 0.42 to 0.58
    [InlineData(190, 256, false)] // 0.742: 0.75 within
    [InlineData(2000, 2048, true)] // 0.9766 of many: from 0.9664 up
    [InlineData(1950, 2048, false)] // 0.9521: from 0.939 to 0.963
    public void A_chance_is_clear_when_its_interval_holds_no_limit(int kept, int draws, bool clear) => Assert.Equal(clear, Settling.Clear(kept, draws));
}
