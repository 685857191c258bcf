using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

/// <summary>Every unit of the bench against the SI: what one of it is, and of which kind.</summary>
public class UnitsTests
{
    // Exponents of metre, kilogram, second, ampere, kelvin, money, light: V = W/A with W = kg·m²/s³, Ω = V/A, F = C/V, H = V·s/A.
    private const string Volts = "2 1 -3 -1 0 0 0";
    private const string Ohms = "2 1 -3 -2 0 0 0";
    private const string Watts = "2 1 -3 0 0 0 0";
    private const string Joules = "2 1 -2 0 0 0 0";
    private const string Amps = "0 0 0 1 0 0 0";
    private const string Charge = "0 0 1 1 0 0 0";
    private const string Time = "0 0 1 0 0 0 0";
    private const string Heat = "0 0 0 0 1 0 0";
    private const string Length = "1 0 0 0 0 0 0";
    private const string Area = "2 0 0 0 0 0 0";
    private const string Slope = "2 1 -3 -1 -1 0 0";
    private const string PerLength = "1 1 -3 0 0 0 0";
    private const string Often = "0 0 -1 0 0 0 0";

    [Theory]
    [InlineData("", 1, "0 0 0 0 0 0 0")]
    [InlineData("%", 0.01, "0 0 0 0 0 0 0")]
    [InlineData("V", 1, Volts)]
    [InlineData("mV", 0.001, Volts)]
    [InlineData("µV", 0.000001, Volts)]
    [InlineData("A", 1, Amps)]
    [InlineData("mA", 0.001, Amps)]
    [InlineData("µA", 0.000001, Amps)]
    [InlineData("Ω", 1, Ohms)]
    [InlineData("mΩ", 0.001, Ohms)]
    [InlineData("kΩ", 1000, Ohms)]
    [InlineData("MΩ", 1000000, Ohms)]
    [InlineData("W", 1, Watts)]
    [InlineData("mW", 0.001, Watts)]
    [InlineData("kW", 1000, Watts)]
    [InlineData("J", 1, Joules)]
    [InlineData("kJ", 1000, Joules)]
    [InlineData("kJ/mol", 1000, Joules)]
    [InlineData("Wh", 3600, Joules)] // one watt for an hour of 3600 s
    [InlineData("Ah", 3600, Charge)]
    [InlineData("mAh", 3.6, Charge)]
    [InlineData("C", 1, Charge)]
    [InlineData("s", 1, Time)]
    [InlineData("ms", 0.001, Time)]
    [InlineData("µs", 0.000001, Time)]
    [InlineData("min", 60, Time)]
    [InlineData("h", 3600, Time)]
    [InlineData("d", 86400, Time)] // 24 · 3600
    [InlineData("K", 1, Heat)]
    [InlineData("°C", 274.15, Heat)] // 273.15 + 1
    [InlineData("°F", 255.92777777777777, Heat)] // (459.67 + 1)·5/9 = 2303.35/9
    [InlineData("J/K", 1, "2 1 -2 0 -1 0 0")]
    [InlineData("W/K", 1, "2 1 -3 0 -1 0 0")]
    [InlineData("K/W", 1, "-2 -1 3 0 1 0 0")]
    [InlineData("1/K", 1, "0 0 0 0 -1 0 0")]
    [InlineData("V/K", 1, Slope)]
    [InlineData("µV/K", 0.000001, Slope)]
    [InlineData("m", 1, Length)]
    [InlineData("cm", 0.01, Length)]
    [InlineData("mm", 0.001, Length)]
    [InlineData("µm", 0.000001, Length)]
    [InlineData("in", 0.0254, Length)]
    [InlineData("mil", 0.0000254, Length)]
    [InlineData("m²", 1, Area)]
    [InlineData("cm²", 0.0001, Area)]
    [InlineData("mm²", 0.000001, Area)]
    [InlineData("kg", 1, "0 1 0 0 0 0 0")]
    [InlineData("g", 0.001, "0 1 0 0 0 0 0")]
    [InlineData("W/m", 1, PerLength)]
    [InlineData("W/cm", 100, PerLength)]
    [InlineData("W/in", 39.37007874015748, PerLength)] // 1/0.0254
    [InlineData("Ω/m", 1, "1 1 -3 -2 0 0 0")]
    [InlineData("Hz", 1, Often)]
    [InlineData("kHz", 1000, Often)]
    [InlineData("1/h", 0.0002777777777777778, Often)] // 1/3600
    [InlineData("F", 1, "-2 -1 4 2 0 0 0")]
    [InlineData("H", 1, "2 1 -2 -2 0 0 0")]
    [InlineData("money", 1, "0 0 0 0 0 1 0")]
    [InlineData("lm", 1, "0 0 0 0 0 0 1")]
    public void One_of_each_unit_is_so_much_in_the_SI(string symbol, double si, string kind)
    {
        var unit = Units.Find(symbol)!;
        Assert.Equal(si, unit.ToSi(1), 1e-15 * si);
        Assert.Equal(1, unit.FromSi(si), 1e-12);
        var d = unit.Dimension;
        Assert.Equal(kind.Split(' ').Select(number => int.Parse(number, CultureInfo.InvariantCulture)), [d.Metre, d.Kilogram, d.Second, d.Ampere, d.Kelvin, d.Money, d.Light]);
    }

    [Fact]
    public void The_list_holds_every_unit_once_and_no_other()
    {
        Assert.Equal(59, Units.All.Count()); // the rows above
        Assert.Equal(Units.All.Select(unit => unit.Symbol).Order(StringComparer.Ordinal), Units.All.Select(unit => unit.Symbol));
        Assert.Null(Units.Find("parsec"));
    }

    /// <summary>Fixed points that everybody knows: ice 0 °C = 32 °F, steam 100 °C = 212 °F, both scales meet at −40, nothing is colder than −459.67 °F.</summary>
    [Theory, InlineData(0, 32), InlineData(100, 212), InlineData(-40, -40), InlineData(-273.15, -459.67)]
    public void Celsius_and_Fahrenheit_meet_at_the_fixed_points(double celsius, double fahrenheit)
    {
        Assert.Equal(celsius, Units.Celsius.FromSi(Units.Fahrenheit.ToSi(fahrenheit)), 1e-10);
        Assert.Equal(fahrenheit, Units.Fahrenheit.FromSi(Units.Celsius.ToSi(celsius)), 1e-10);
    }

    [Theory]
    [InlineData("°C", "°F", true)]
    [InlineData("°C", "K", false)]
    [InlineData("K", "°F", false)]
    [InlineData("mV", "V", true)]
    [InlineData("V", "A", false)]
    [InlineData("Wh", "Ah", false)]
    public void A_unit_measures_its_own_kind_and_levels_measure_levels(string a, string b, bool measures) =>
        Assert.Equal(measures, Units.Find(a)!.Measures(Units.Find(b)!));

    /// <summary>By hand, each exponent for itself: sums for a product, differences for a share.</summary>
    [Fact]
    public void Exponents_add_in_a_product_and_go_off_in_a_share()
    {
        var a = new Dimension(1, 2, 3, 4, 5, 6, 7);
        var b = new Dimension(10, 20, 30, 40, 50, 60, 70);
        Assert.Equal(new Dimension(11, 22, 33, 44, 55, 66, 77), a * b);
        Assert.Equal(new Dimension(-9, -18, -27, -36, -45, -54, -63), a / b);
        Assert.Equal(new Dimension(11, 22, 33, 44, 55, 66, 77), a.Multiply(b));
        Assert.Equal(new Dimension(-9, -18, -27, -36, -45, -54, -63), a.Divide(b));
        Assert.Equal(a, a * Dimension.None);
        Assert.Equal(a, a / Dimension.None);
    }
}
