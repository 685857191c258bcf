using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

public class SiPrefixTests
{
    [Theory]
    [InlineData("V", "nV µV mV V kV")]
    [InlineData("A", "pA nA µA mA A kA")]
    [InlineData("Ω", "µΩ mΩ Ω kΩ MΩ GΩ")]
    [InlineData("W", "nW µW mW W kW")]
    [InlineData("J", "µJ mJ J kJ MJ")]
    [InlineData("Wh", "mWh Wh kWh")]
    [InlineData("Ah", "mAh Ah")]
    [InlineData("C", "µC mC C kC")]
    [InlineData("s", "ns µs ms s")]
    [InlineData("m", "nm µm mm m")]
    [InlineData("g", "mg g kg")]
    [InlineData("Hz", "mHz Hz kHz MHz GHz")]
    [InlineData("F", "pF nF µF mF F")]
    [InlineData("H", "nH µH mH H")]
    [InlineData("V/K", "nV/K µV/K mV/K V/K")]
    [InlineData("J/K", "mJ/K J/K kJ/K")]
    [InlineData("W/K", "µW/K mW/K W/K")]
    [InlineData("K/W", "mK/W K/W kK/W")]
    [InlineData("Ω/m", "µΩ/m mΩ/m Ω/m kΩ/m")]
    [InlineData("°C", "")]
    [InlineData("K", "")]
    [InlineData("min", "")]
    [InlineData("%", "")]
    [InlineData("", "")]
    [InlineData("cm", "")]
    public void A_family_is_what_a_bench_says_of_the_unit(string symbol, string family)
    {
        var unit = Units.Find(symbol)!;
        string[] wanted = family.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(wanted, SiPrefix.FamilyOf(unit).Select(one => one.Symbol));
        Assert.Equal(wanted.FirstOrDefault(symbol), SiPrefix.For(unit, 1e-30).Symbol); // beyond its ends there is no other prefix
        Assert.Equal(wanted.LastOrDefault(symbol), SiPrefix.For(unit, 1e30).Symbol);
        foreach (string member in wanted)
        {
            // By the SI: each prefix is a power of a thousand.
            double power = member == symbol ? 1 : member[0] switch { 'p' => 1e-12, 'n' => 1e-9, 'µ' => 1e-6, 'm' => 1e-3, 'k' => 1e3, 'M' => 1e6, _ => 1e9 };
            var one = SiPrefix.FamilyOf(unit).Single(each => each.Symbol == member);
            Assert.Equal(power * unit.Factor, one.Factor, 1e-15 * power * unit.Factor);
            Assert.Equal(unit, SiPrefix.BaseOf(one));
            Assert.Equal(unit.Dimension, one.Dimension);
        }
    }

    [Fact]
    public void What_only_looks_like_a_prefixed_unit_is_none()
    {
        Assert.Null(SiPrefix.BaseOf(new Unit("ms", Units.Metre.Dimension)));
        Assert.Null(SiPrefix.BaseOf(new Unit("V", Units.Volt.Dimension, 1, 2)));
        Assert.Null(SiPrefix.BaseOf(new Unit("xV", Units.Volt.Dimension)));
        Assert.Null(SiPrefix.BaseOf(new Unit("kmV", Units.Volt.Dimension)));
        Assert.Null(SiPrefix.BaseOf(new Unit("volt", Units.Volt.Dimension)));
        Assert.Equal(Units.Gram, SiPrefix.BaseOf(Units.Kilogram));
        Assert.Equal(Units.Metre, SiPrefix.BaseOf(new Unit("km", Units.Metre.Dimension, 1000)));
    }

    [Fact]
    public void A_prefixed_unit_is_the_listed_one_where_it_means_the_same()
    {
        Assert.Same(Units.Millivolt, SiPrefix.Of(Units.Volt, "m"));
        Assert.Same(Units.MilliampereHour, SiPrefix.Of(Units.AmpereHour, "m"));
        Assert.Same(Units.Volt, SiPrefix.Of(Units.Volt, ""));

        // Own units of the same name: half and twice as large, and of another kind.
        Assert.Equal(0.002, SiPrefix.Of(new Unit("V", Units.Volt.Dimension, 2), "m").Factor, 1e-18);
        Assert.Equal(0.0005, SiPrefix.Of(new Unit("V", Units.Volt.Dimension, 0.5), "m").Factor, 1e-18);
        Assert.Equal(Units.Metre.Dimension, SiPrefix.Of(new Unit("V", Units.Metre.Dimension), "m").Dimension);
        Assert.Throws<ArgumentOutOfRangeException>(() => SiPrefix.Of(Units.Volt, "c"));
    }

    [Theory]
    [InlineData("Ω", 999.999, "Ω")]
    [InlineData("Ω", 1000, "kΩ")]
    [InlineData("Ω", -4700, "kΩ")]
    [InlineData("Ω", 1, "Ω")]
    [InlineData("Ω", 0.99999, "mΩ")]
    [InlineData("Ω", 0.001, "mΩ")]
    [InlineData("Ω", 0.00099999, "µΩ")]
    [InlineData("Ω", 0.000001, "µΩ")]
    [InlineData("Ω", 1e-9, "µΩ")] // nobody says nΩ
    [InlineData("Ω", 1e6, "MΩ")]
    [InlineData("Ω", 1e9, "GΩ")]
    [InlineData("Ω", 1e15, "GΩ")]
    [InlineData("mΩ", 1500, "Ω")]
    [InlineData("kΩ", 0.5, "Ω")]
    [InlineData("mAh", 2500, "Ah")]
    [InlineData("Ah", 5000, "Ah")]
    [InlineData("A", 1e-15, "pA")]
    [InlineData("kg", 0.5, "g")]
    [InlineData("g", 1500, "kg")]
    [InlineData("min", 90000, "min")]
    [InlineData("kΩ", 0, "kΩ")]
    [InlineData("kΩ", double.NaN, "kΩ")]
    [InlineData("mV", double.PositiveInfinity, "mV")]
    public void A_size_stands_between_1_and_999_in_its_unit(string symbol, double size, string shown) =>
        Assert.Equal(shown, SiPrefix.For(Units.Find(symbol)!, size).Symbol);
}
