using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Tolerance of thermocouple wire by hand: 1.5 K or 0.4 % from −40 to 1000 °C; and 1 K that grows by 3 mK a kelvin from 1100 °C on.</summary>
public class CoupleToleranceTests
{
    private static readonly CoupleTolerance Flat = new(1.5, 0.004, -40, 1000);
    private static readonly CoupleTolerance Ramp = new(1, 0, 0, 1600, 1100, 0.003);

    [Theory]
    [InlineData(-40, 1.5)]
    [InlineData(100, 1.5)]
    [InlineData(375, 1.5)]
    [InlineData(400, 1.6)]
    [InlineData(1000, 4)]
    public void The_larger_of_a_fixed_part_and_a_share(double tC, double limitK) => Assert.Equal(limitK, Flat.LimitK(tC), 1e-12);

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1100, 1)]
    [InlineData(1200, 1.3)]
    [InlineData(1600, 2.5)]
    public void Or_a_part_that_grows(double tC, double limitK) => Assert.Equal(limitK, Ramp.LimitK(tC), 1e-12);

    [Fact]
    public void Outside_its_class_there_is_none()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Flat.LimitK(-40.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Flat.LimitK(1000.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Flat.LimitK(double.NaN));
        Assert.Equal(375, Flat.SwitchPointC, 1e-9);
        Assert.Equal(double.PositiveInfinity, Ramp.SwitchPointC);
        Assert.Equal(2, new CoupleTolerance(0.1, 0.02, -200, 0).LimitK(-100), 1e-12);   // below zero by its size
    }
}
