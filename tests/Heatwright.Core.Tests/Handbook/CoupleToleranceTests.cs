using Heatwright.Handbook;

namespace Heatwright.Tests.Handbook;

/// <summary>[iec-60584-1] tolerance classes, restated by three makers; limits by hand.</summary>
public class CoupleToleranceTests
{
    [Theory]
    [InlineData("K", 1, 100, 1.5)]
    [InlineData("K", 1, 500, 2.0)]
    [InlineData("K", 2, 300, 2.5)]
    [InlineData("K", 2, 400, 3.0)]
    [InlineData("N", 2, 1200, 9.0)]
    [InlineData("T", 1, 100, 0.5)]
    [InlineData("T", 2, 300, 2.25)]
    [InlineData("R", 1, 1000, 1.0)]
    [InlineData("S", 1, 1500, 2.2)]
    [InlineData("S", 2, 1000, 2.5)]
    public void The_larger_of_fixed_limit_and_share_rules(string type, int tolerance, double tC, double limitK) =>
        Assert.Equal(limitK, CoupleTolerances.Find(type, tolerance).LimitK(tC), 1e-12);

    [Theory]
    [InlineData("K", 1, 375)]
    [InlineData("K", 2, 333.3)]
    [InlineData("T", 1, 125)]
    [InlineData("T", 2, 133.3)]
    public void The_share_takes_over_at_the_switch_point(string type, int tolerance, double switchC) =>
        Assert.Equal(switchC, CoupleTolerances.Find(type, tolerance).SwitchPointC, 0.05);

    [Theory]
    [InlineData("K", 1, 1001)]
    [InlineData("J", 2, 751)]
    [InlineData("T", 1, -41)]
    public void Outside_its_range_a_class_promises_nothing(string type, int tolerance, double tC) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CoupleTolerances.Find(type, tolerance).LimitK(tC));

    [Fact]
    public void A_type_without_a_class_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => CoupleTolerances.Find("C", 1));
}
