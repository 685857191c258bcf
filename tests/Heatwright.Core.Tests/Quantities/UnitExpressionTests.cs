using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

/// <summary>Composed units against their exponents, written out by hand from the SI.</summary>
public class UnitExpressionTests
{
    // Factor to SI and the exponents of metre, kilogram, second, ampere, kelvin.
    [Theory]
    [InlineData("", 1, "0 0 0 0 0")]
    [InlineData("  ", 1, "0 0 0 0 0")]
    [InlineData("m", 1, "1 0 0 0 0")]
    [InlineData("kg", 1, "0 1 0 0 0")]
    [InlineData("g", 0.001, "0 1 0 0 0")]
    [InlineData("s", 1, "0 0 1 0 0")]
    [InlineData("min", 60, "0 0 1 0 0")]
    [InlineData("h", 3600, "0 0 1 0 0")]
    [InlineData("d", 86400, "0 0 1 0 0")]
    [InlineData("A", 1, "0 0 0 1 0")]
    [InlineData("K", 1, "0 0 0 0 1")]
    [InlineData("°C", 1, "0 0 0 0 1")]
    [InlineData("degC", 1, "0 0 0 0 1")]
    [InlineData("W", 1, "2 1 -3 0 0")]
    [InlineData("J", 1, "2 1 -2 0 0")]
    [InlineData("V", 1, "2 1 -3 -1 0")]
    [InlineData("Ω", 1, "2 1 -3 -2 0")]
    [InlineData("ohm", 1, "2 1 -3 -2 0")]
    [InlineData("C", 1, "0 0 1 1 0")]
    [InlineData("F", 1, "-2 -1 4 2 0")]
    [InlineData("H", 1, "2 1 -2 -2 0")]
    [InlineData("Pa", 1, "-1 1 -2 0 0")]
    [InlineData("Hz", 1, "0 0 -1 0 0")]
    [InlineData("mol", 1, "0 0 0 0 0")]
    [InlineData("%", 0.01, "0 0 0 0 0")]
    [InlineData("1", 1, "0 0 0 0 0")]
    [InlineData("1/K", 1, "0 0 0 0 -1")]
    [InlineData("%/K", 0.01, "0 0 0 0 -1")]
    [InlineData("mm", 0.001, "1 0 0 0 0")]
    [InlineData("cm", 0.01, "1 0 0 0 0")]
    [InlineData("km", 1000, "1 0 0 0 0")]
    [InlineData("µm", 0.000001, "1 0 0 0 0")]
    [InlineData("μm", 0.000001, "1 0 0 0 0")]
    [InlineData("um", 0.000001, "1 0 0 0 0")]
    [InlineData("nm", 0.000000001, "1 0 0 0 0")]
    [InlineData("pF", 0.000000000001, "-2 -1 4 2 0")]
    [InlineData("kΩ", 1000, "2 1 -3 -2 0")]
    [InlineData("MΩ", 1000000, "2 1 -3 -2 0")]
    [InlineData("GHz", 1000000000, "0 0 -1 0 0")]
    [InlineData("mV", 0.001, "2 1 -3 -1 0")]
    [InlineData("mA", 0.001, "0 0 0 1 0")]
    [InlineData("mW", 0.001, "2 1 -3 0 0")]
    [InlineData("ms", 0.001, "0 0 1 0 0")]
    [InlineData("mΩ", 0.001, "2 1 -3 -2 0")]
    [InlineData("mg", 0.000001, "0 1 0 0 0")]
    [InlineData("mJ", 0.001, "2 1 -2 0 0")]
    [InlineData("mH", 0.001, "2 1 -2 -2 0")]
    [InlineData("mF", 0.001, "-2 -1 4 2 0")]
    [InlineData("m²", 1, "2 0 0 0 0")]
    [InlineData("m³", 1, "3 0 0 0 0")]
    [InlineData("m2", 1, "2 0 0 0 0")]
    [InlineData("m3", 1, "3 0 0 0 0")]
    [InlineData("m^4", 1, "4 0 0 0 0")]
    [InlineData("m^0", 1, "0 0 0 0 0")]
    [InlineData("cm²", 0.0001, "2 0 0 0 0")]
    [InlineData("cm³", 0.000001, "3 0 0 0 0")]
    [InlineData("mm2", 0.000001, "2 0 0 0 0")]
    [InlineData("W/(m·K)", 1, "1 1 -3 0 -1")]
    [InlineData("W/(m K)", 1, "1 1 -3 0 -1")]
    [InlineData("W/m·K", 1, "1 1 -3 0 -1")]
    [InlineData("W/(m²·K)", 1, "0 1 -3 0 -1")]
    [InlineData("W/(cm2*K)", 10000, "0 1 -3 0 -1")]
    [InlineData("J/kgK", 1, "2 0 -2 0 -1")]
    [InlineData("kJ/(kg·K)", 1000, "2 0 -2 0 -1")]
    [InlineData("J/(g·K)", 1000, "2 0 -2 0 -1")]
    [InlineData("m²/s", 1, "2 0 -1 0 0")]
    [InlineData("mm²/s", 0.000001, "2 0 -1 0 0")]
    [InlineData("kg/m³", 1, "-3 1 0 0 0")]
    [InlineData("g/cm³", 1000, "-3 1 0 0 0")]
    [InlineData("W·h", 3600, "2 1 -2 0 0")]
    [InlineData("A·h", 3600, "0 0 1 1 0")]
    [InlineData("kJ/mol", 1000, "2 1 -2 0 0")]
    [InlineData("Pa·s", 1, "-1 1 -1 0 0")]
    [InlineData("µV/K", 0.000001, "2 1 -3 -1 -1")]
    public void A_composed_unit_is_so_much_of_the_SI(string text, double factor, string exponents)
    {
        var (got, d) = UnitExpression.Read(text)!.Value;
        Assert.Equal(factor, got, 1e-12 * factor);
        Assert.Equal(exponents.Split(' ').Select(number => int.Parse(number, CultureInfo.InvariantCulture)), [d.Metre, d.Kilogram, d.Second, d.Ampere, d.Kelvin]);
    }

    [Theory, InlineData("s^½"), InlineData("s½")]
    public void A_root_takes_the_root_of_the_size(string text) => Assert.Equal(60, UnitExpression.Read(text.Replace("s", "h", StringComparison.Ordinal))!.Value.Factor, 1e-12); // √3600

    [Theory]
    [InlineData("pear")]
    [InlineData("W/pear")]
    [InlineData("pear/W")]
    [InlineData("kmin")]
    [InlineData("k1")]
    [InlineData("kkg")]
    [InlineData("W/(m·K")]
    [InlineData("m^")]
    [InlineData("m^x")]
    [InlineData("xV")]
    public void What_is_no_unit_is_none(string text) => Assert.Null(UnitExpression.Read(text));

    // By hand: the number times the factor; a bare number is in the unit expected.
    [Theory]
    [InlineData("5 W/(m·K)", "W/(m·K)", 5)]
    [InlineData("5", "W/(m·K)", 5)]
    [InlineData("5", "mm", 0.005)]
    [InlineData("5 cm", "mm", 0.05)]
    [InlineData("2,5 g/cm³", "kg/m³", 2500)]
    [InlineData("-2.5e3 mm²/s", "m²/s", -0.0025)]
    [InlineData("1E+3 J/gK", "J/(kg·K)", 1000000)]
    [InlineData("1e3", "1", 1000)]
    [InlineData("+4", "1", 4)]
    [InlineData("1,5", "1", 1.5)]
    public void An_amount_is_told_in_the_SI(string text, string expected, double si) =>
        Assert.Equal(si, UnitExpression.Amount(text, expected)!.Value, 1e-12 * Math.Abs(si));

    [Theory]
    [InlineData("5 K", "W")]
    [InlineData("5 pears", "W")]
    [InlineData("W", "W")]
    [InlineData("", "W")]
    [InlineData("5", "pear")]
    [InlineData("1,2,3", "1")]
    [InlineData("1,234.5", "1")]
    [InlineData("5 e", "1")]
    public void What_is_no_such_amount_is_none(string text, string expected) => Assert.Null(UnitExpression.Amount(text, expected));
}
