using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Check values by a second program (Python).</summary>
public class ThermistorTests
{
    private static readonly SteinhartHart Curve = SteinhartHart.Through((25, 100e3), (85, 10.5e3), (250, 330));

    [Theory]
    [InlineData(25, 100e3)]
    [InlineData(100, 6975.198)]
    [InlineData(200, 744.6129)]
    [InlineData(300, 173.5211)]
    public void Beta_gives_the_resistance(double tC, double ohm)
    {
        Assert.Equal(ohm, Thermistor.ResistanceOhm(100e3, 3950, tC), ohm * 1e-7);
        Assert.Equal(tC, Thermistor.TemperatureC(100e3, 3950, ohm), 1e-4);
    }

    [Fact]
    public void A_temperature_comes_back_from_its_own_resistance() => Gen.Select(Gen.Double[-55, 300], Gen.Double[2000, 5000], Gen.Double[100, 1e6])
        .Sample((tC, betaK, nominalOhm) => Math.Abs(Thermistor.TemperatureC(nominalOhm, betaK, Thermistor.ResistanceOhm(nominalOhm, betaK, tC)) - tC) < 1e-9);

    [Fact]
    public void Hotter_means_less_resistance() => Gen.Select(Gen.Double[-55, 299], Gen.Double[2000, 5000]).Sample((tC, betaK) =>
        Thermistor.ResistanceOhm(1e4, betaK, tC + 1) < Thermistor.ResistanceOhm(1e4, betaK, tC));

    [Fact]
    public void Beta_comes_back_from_two_points() => Gen.Select(Gen.Double[2000, 5000], Gen.Double[0, 50], Gen.Double[60, 200]).Sample((betaK, lowC, highC) =>
        Math.Abs(Thermistor.BetaK((lowC, Thermistor.ResistanceOhm(1e4, betaK, lowC)), (highC, Thermistor.ResistanceOhm(1e4, betaK, highC))) - betaK) < 1e-6);

    [Fact]
    public void Three_points_give_the_published_form()
    {
        Assert.Equal(4.07823636e-4, Curve.A, 5e-12);
        Assert.Equal(2.60447776e-4, Curve.B, 5e-12);
        Assert.Equal(-3.42875045e-8, Curve.C, 5e-16);
        Assert.Equal(148.3632, Curve.TemperatureC(2000), 5.1e-5);
    }

    [Fact]
    public void A_curve_goes_through_its_three_points() =>
        Gen.Select(Gen.Double[2500, 4500], Gen.Double[-0.02, 0.02]).Sample((betaK, wiggle) =>
        {
            (double, double)[] points = [(0, R(0)), (60, R(60) * (1 + wiggle)), (200, R(200))];
            var curve = SteinhartHart.Through(points[0], points[1], points[2]);
            return points.All(point => Math.Abs(curve.TemperatureC(point.Item2) - point.Item1) < 1e-8);
            double R(double tC) => Thermistor.ResistanceOhm(1e4, betaK, tC);
        });

    [Fact]
    public void A_negative_third_coefficient_says_the_points_do_not_belong_together()
    {
        Assert.False(Curve.IsOneThermistor);
        Assert.True(SteinhartHart.Through((0, 32650), (25, 10000), (70, 1752)).IsOneThermistor);   // a common 10 kΩ type, common practice, no source
    }

    [Fact]
    public void A_pure_beta_thermistor_has_no_third_coefficient()
    {
        var curve = SteinhartHart.Through((25, 1e5), (100, Thermistor.ResistanceOhm(1e5, 3950, 100)), (200, Thermistor.ResistanceOhm(1e5, 3950, 200)));
        Assert.Equal(1 / 3950.0, curve.B, 1e-12);
        Assert.Equal(0, curve.C, 1e-15);
    }

    [Fact]
    public void One_percent_of_beta_is_five_kelvin_at_300_C()
    {
        Assert.Equal(5.286475, Thermistor.BetaErrorK(0.01, 300), 5.1e-7);
        // Second way: the same resistance read with a beta that is 0.01 % high.
        double ohm = Thermistor.ResistanceOhm(1e5, 3950, 300);
        Assert.Equal(Thermistor.BetaErrorK(1e-4, 300), Math.Abs(Thermistor.TemperatureC(1e5, 3950 * 1.0001, ohm) - 300), 1e-4);
    }

    [Fact]
    public void A_resistance_beyond_any_temperature_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Thermistor.TemperatureC(1e5, 3950, 1e-3));

    [Fact]
    public void A_third_coefficient_of_none_is_one_thermistor_still()
    {
        Assert.True(new SteinhartHart(1e-3, 2e-4, 0).IsOneThermistor);
        Assert.False(new SteinhartHart(1e-3, 2e-4, -1e-12).IsOneThermistor);
        // ln R = 10: 1/(1e-3 + 2e-3 + 1e-7·1000) K.
        Assert.Equal((1 / 3.1e-3) - 273.15, new SteinhartHart(1e-3, 2e-4, 1e-7).TemperatureC(Math.Exp(10)), 1e-9);
    }

    [Fact]
    public void Plain_numbers_and_points_agree()
    {
        ThreePointThermistor through = Thermistor.ThroughThree(100e3, 25, 10.5e3, 85, 330, 250, 2000);
        Assert.Equal(148.3632, through.TemperatureC, 5.1e-5);
        Assert.Equal((Curve.A, Curve.B, Curve.C, false), (through.A, through.B, through.C, through.IsOne));
        // By hand: ln 10/(1/300 − 1/400) = 2.302585·1200.
        Assert.Equal(Math.Log(10) * 1200, Thermistor.BetaBetween(1e4, 300 - 273.15, 1e3, 400 - 273.15), 1e-8);
        Assert.Equal(0, Thermistor.BetaErrorK(0.01, 25), 1e-12);
        // 400²·0.01·(1/298.15 − 1/400), and as far below 25 °C: 250²·0.01·(1/250 − 1/298.15).
        Assert.Equal(1.3664263, Thermistor.BetaErrorK(0.01, 400 - 273.15), 1e-6);
        Assert.Equal(0.4037397, Thermistor.BetaErrorK(0.01, 250 - 273.15), 1e-6);
    }

    [Fact]
    public void Points_that_say_nothing_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Thermistor.ThroughThree(1e5, 25, 1e5, 85, 330, 250, 2000));
        Assert.Throws<ArgumentOutOfRangeException>(() => Thermistor.ThroughThree(1e5, 25, 330, 85, 330, 250, 2000));
        Assert.Throws<ArgumentOutOfRangeException>(() => Thermistor.ThroughThree(1e5, 25, 1e4, 85, 1e5, 250, 2000));
        Assert.Throws<ArgumentOutOfRangeException>(() => Thermistor.BetaBetween(1e5, 25, 1e4, 25));
        // So far from the points that 1/T is nearly nought, or below it.
        Assert.Throws<ArgumentOutOfRangeException>(() => Thermistor.ThroughThree(100e3, 25, 10.5e3, 85, 330, 250, 1e-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Thermistor.ThroughThree(100e3, 25, 10.5e3, 85, 330, 250, 1e-9));
    }
}
