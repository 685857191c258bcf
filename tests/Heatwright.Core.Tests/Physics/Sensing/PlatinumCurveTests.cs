using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>A made-up platinum curve with round coefficients, by hand: A = 4·10⁻³, B = −1·10⁻⁶, C = −4·10⁻¹², −200 to 800 °C. The printed table stands in the handbook's tests.</summary>
public class PlatinumCurveTests
{
    private static readonly PlatinumCurve Curve = new(4e-3, -1e-6, -4e-12, -200, 800);

    [Theory]
    [InlineData(0, 100)]
    [InlineData(100, 139)]          // 1 + 0.4 − 0.01
    [InlineData(800, 356)]          // 1 + 3.2 − 0.64
    [InlineData(-100, 58.92)]       // 1 − 0.4 − 0.01 − 4e-12·(−200)·(−1e6) = 0.59 − 0.0008
    [InlineData(-200, 15.04)]       // 1 − 0.8 − 0.04 − 4e-12·(−300)·(−8e6) = 0.16 − 0.0096
    public void Resistance_by_hand_and_back(double tC, double ohm)
    {
        Assert.Equal(ohm, Platinum.ResistanceOhm(Curve, 100, tC), 1e-9);
        Assert.Equal(10 * ohm, Platinum.ResistanceOhm(Curve, 1000, tC), 1e-8);
        Assert.Equal(tC, Platinum.TemperatureC(Curve, 100, ohm), 1e-9);
    }

    [Theory]
    [InlineData(0, 0.4)]
    [InlineData(0.5, 0.3999)]       // 4e-3 − 1e-6
    [InlineData(100, 0.38)]         // 4e-3 − 2e-4
    [InlineData(-100, 0.4228)]      // 4e-3 + 2e-4 − 4e-12·(−700)·1e4 = 4.2e-3 + 2.8e-5
    public void Slope_by_hand(double tC, double ohmPerK)
    {
        Assert.Equal(ohmPerK, Platinum.SlopeOhmPerK(Curve, 100, tC), 1e-12);
        Assert.Equal(0.5 / ohmPerK, Platinum.LeadErrorK(Curve, 100, 0.5, tC), 1e-12);
    }

    [Fact]
    public void The_slope_is_that_of_the_resistance() => Gen.Double[-199, 799].Sample(tC =>
    {
        double rise = Platinum.ResistanceOhm(Curve, 100, tC + 1e-3) - Platinum.ResistanceOhm(Curve, 100, tC - 1e-3);
        Assert.Equal(rise / 2e-3, Platinum.SlopeOhmPerK(Curve, 100, tC), 1e-6);
        Assert.Equal(tC, Platinum.TemperatureC(Curve, 100, Platinum.ResistanceOhm(Curve, 100, tC)), 1e-9);
    });

    [Fact]
    public void Both_ends_belong_to_the_range_and_nothing_beyond()
    {
        foreach (double outside in (double[])[-200.000001, 800.000001, double.NaN])
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => Platinum.ResistanceOhm(Curve, 100, outside));
        }

        foreach (double outside in (double[])[15.03999, 356.00001, double.NaN])
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => Platinum.TemperatureC(Curve, 100, outside));
        }

        // What a sum rounds away is no reason to refuse the end.
        Assert.Equal(800, Platinum.TemperatureC(Curve, 100, Platinum.ResistanceOhm(Curve, 100, 800) + 5e-11), 1e-6);
        Assert.Equal(-200, Platinum.TemperatureC(Curve, 100, Platinum.ResistanceOhm(Curve, 100, -200) - 5e-11), 1e-6);
        Assert.Contains("15.04 to 356 Ω; 400 Ω", Assert.Throws<ArgumentOutOfRangeException>(() => Platinum.TemperatureC(Curve, 100, 400)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Tolerance_and_self_heating_by_hand()
    {
        Assert.Equal(0.8, Platinum.ToleranceK(0.3, 0.005, 100), 1e-12);
        Assert.Equal(0.8, Platinum.ToleranceK(0.3, 0.005, -100), 1e-12);
        Assert.Equal(0.2, Platinum.SelfHeatingK(2e-3, 100, 2e-3), 1e-12);   // 4e-6·100/2e-3
    }
}
