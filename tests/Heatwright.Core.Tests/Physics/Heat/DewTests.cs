using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Dew: by hand, against steam-table values, and against another published pair of coefficients.</summary>
public sealed class DewTests
{
    // Saturation pressures of water: release of the international association for the properties of water and steam, as tabled; from memory.
    [Theory, InlineData(0.01, 611.66), InlineData(10, 1228.2), InlineData(20, 2339.3), InlineData(30, 4247.0), InlineData(50, 12352)]
    public void Vapour_pressures_are_those_of_the_steam_tables(double airC, double pascal) => Assert.Equal(pascal, Dew.SaturationPa(airC), 0.006 * pascal);

    // By hand, 20 °C and half: ln 0.5 + 352.4 / 263.12 = 0.64616; 243.12 · 0.64616 / 16.97384 = 9.255.
    [Fact]
    public void Half_full_air_of_20_degrees_bedews_what_is_colder_than_9_3() => Assert.Equal(9.255, Dew.PointC(20, 0.5), 5e-4);

    [Fact]
    public void Full_air_has_its_dew_point_at_its_own_temperature() => Assert.All([-10.0, 0, 15, 40], air => Assert.Equal(air, Dew.PointC(air, 1), 1e-9));

    /// <summary>Alduchov and Eskridge 1996: 17.625 and 243.04, from memory.</summary>
    [Fact]
    public void Another_published_pair_of_coefficients_says_the_same_within_a_tenth_of_a_kelvin()
    {
        foreach (double air in (double[])[-20, -5, 5, 20, 35, 50])
        {
            foreach (double humidity in (double[])[0.3, 0.6, 0.9])
            {
                double gamma = Math.Log(humidity) + (17.625 * air / (243.04 + air));
                Assert.Equal(243.04 * gamma / (17.625 - gamma), Dew.PointC(air, humidity), 0.1);
            }
        }
    }
}
