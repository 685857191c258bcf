using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

public class DisplayTests
{
    [Theory]
    [InlineData(18.253333, 0.4231, "18.25 ± 0.42 W")]
    [InlineData(18.253333, 0.0996, "18.25 ± 0.10 W")]
    [InlineData(0.000123456, 0.0000123, "0.000123 ± 0.000012 W")]
    [InlineData(-3.2, 0.15, "−3.20 ± 0.15 W")]
    [InlineData(12345, 678, "12350 ± 680 W")]
    [InlineData(40, 0, "40 W")]
    public void Doubt_gets_two_digits_and_the_value_matches_it(double value, double doubt, string shown) =>
        Assert.Equal(shown.Replace(' ', '\u00A0'), Display.Rounded(value, doubt, Units.Watt));
}
