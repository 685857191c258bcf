using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Resistance over temperature by hand, with its limits. Printed values stand in HeaterTests.</summary>
public class HeaterOhmsTests
{
    [Fact]
    public void A_straight_line_holds_below_its_reference_too()
    {
        Assert.Equal(6, HeaterOhms.LinearOhm(10, 4e-3, -80), 1e-12);                // 10·(1 − 0.4)
        Assert.Equal(0.5, HeaterOhms.LinearOhm(10, 4e-3, -217.5), 1e-12);           // 10·(1 − 0.95)
        Assert.Equal(0.72685, HeaterOhms.LinearOhm(1, 1e-3, -273.15, 0), 1e-12);    // absolute zero itself
        Assert.Equal(1.27315, HeaterOhms.LinearOhm(1, 1e-3, 0, -273.15), 1e-12);
        Printed.Refuses("atC", () => HeaterOhms.LinearOhm(1, 1e-3, -273.16, 0));
        Printed.Refuses("fromC", () => HeaterOhms.LinearOhm(1, 1e-3, 0, -273.16));
        Printed.Refuses("fromC", () => HeaterOhms.LinearOhm(1, 1e-3, 0, double.PositiveInfinity));
        Printed.Refuses("atC", () => HeaterOhms.LinearOhm(1, 1 / 128.0, -128, 0));  // nothing left: 1 − 128/128
        Printed.Refuses("slopePerK", () => HeaterOhms.LinearOhm(1, double.NaN, 100));
        Assert.Equal(0.22, HeaterOhms.SlopePerK(2, 20, 4.2, 25), 1e-12);            // (2.1 − 1)/5
        Assert.Equal(-0.1, HeaterOhms.SlopePerK(2, 25, 3, 20), 1e-12);              // 0.5 over −5 K
        SlopeMoved moved = HeaterOhms.Moved(2.2, 4e-3, 25, 20);
        Assert.Equal((2.156, 4e-3 / 0.98), (Math.Round(moved.Ohm, 12), moved.SlopePerK));
    }

    [Fact]
    public void A_parabola_turns_back_at_its_top_and_says_none_beyond()
    {
        // r = 1 + t − t²: highest at t = 0.5, where r = 1.25.
        Assert.Equal(0.5, HeaterOhms.ParabolaC(1, 1, -1, 1.25)!.Value, 1e-12);
        Assert.Null(HeaterOhms.ParabolaC(1, 1, -1, 1.26));
        Assert.Equal(1.25, HeaterOhms.ParabolaOhm(1, 1, -1, 0.5), 1e-12);
        Assert.Equal(0.2, HeaterOhms.ParabolaC(2, 1, -1, 2.32)!.Value, 1e-12);      // 2·(1 + 0.2 − 0.04)
        Assert.Equal(3, HeaterOhms.ParabolaC(2, 0.5, 0, 5)!.Value, 1e-12);          // no square: 2·(1 + 1.5)
        Assert.Equal(2, HeaterOhms.ParabolaC(1, 1, 1, 7)!.Value, 1e-12);            // 1 + 2 + 4
        Printed.Refuses("linearPerK", () => HeaterOhms.ParabolaC(1, -1, -1, 1.1));
        Printed.Refuses("zeroOhm", () => HeaterOhms.ParabolaOhm(0, 1, 1, 1));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(50, 1.5)]
    [InlineData(100, 2)]
    [InlineData(150, 3)]
    [InlineData(200, 4)]
    [InlineData(275, 7)]
    [InlineData(300, 8)]
    public void A_factor_lies_straight_between_its_two_points(double atC, double factor) => Assert.Equal(factor, HeaterOhms.Factor([0, 100, 200, 300], [1, 2, 4, 8], atC), 1e-12);

    [Theory]
    [InlineData(-1)]
    [InlineData(301)]
    public void A_factor_outside_its_table_is_refused(double atC) => Printed.Refuses("atC", () => HeaterOhms.Factor([0, 100, 200, 300], [1, 2, 4, 8], atC));

    [Fact]
    public void A_cold_heater_draws_more()
    {
        Assert.Equal(2.3, HeaterOhms.InrushFactor(4e-3, 350, 25), 1e-12);
        Assert.Equal(2.32, HeaterOhms.InrushFactor(4e-3, 350), 1e-12);
        // A label at another voltage: 45·(12/18)², and nothing at no volts.
        Assert.Equal((20, 0), (Math.Round(HeaterLabel.PowerW(45, 18, 12), 12), HeaterLabel.PowerW(45, 18, 0)));
    }
}
