using System.Globalization;
using CsCheck;
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

    // By hand: two digits of doubt, the value to the same place, the prefix that leaves 1 to 999 before the point.
    [Theory]
    [InlineData(0.0471, 0.0003, "Ω", "47.10 ± 0.30 mΩ")]
    [InlineData(4700, 0, "Ω", "4.7 kΩ")]
    [InlineData(999.7, 12, "Ω", "1.000 ± 0.012 kΩ")]
    [InlineData(999.996, 0.0999, "Ω", "1.00000 ± 0.00010 kΩ")]
    [InlineData(999.2, 0.12, "Ω", "999.20 ± 0.12 Ω")]
    [InlineData(0.00082, 0.000011, "V", "820 ± 11 µV")]
    [InlineData(-0.35, 0.0021, "V", "−350.0 ± 2.1 mV")]
    [InlineData(2500, 62, "mAh", "2.500 ± 0.062 Ah")]
    [InlineData(0.001, 0.25, "A", "0 ± 250 mA")]
    [InlineData(0.0000409, 0.00000055, "V/K", "40.90 ± 0.55 µV/K")]
    [InlineData(320.4, 1.26, "°C", "320.4 ± 1.3 °C")]
    [InlineData(12345.6, 7.8, "J/K", "12.3456 ± 0.0078 kJ/K")]
    [InlineData(12345.6, 7.8, "min", "12|345.6 ± 7.8 min")]
    [InlineData(1234567, 0, "min", "1|235|000 min")]
    [InlineData(9999, 14, "min", "9999 ± 14 min")]
    [InlineData(-1e-9, 0.02, "K", "0.000 ± 0.020 K")]
    [InlineData(0, 0, "W", "0 W")]
    public void Engineering_leaves_one_to_three_digits_before_the_point(double value, double doubt, string symbol, string shown) =>
        Assert.Equal(shown.Replace(' ', '\u00A0').Replace('|', '\u202F'), Display.Engineering(value, doubt, Units.Find(symbol)!));

    [Fact]
    public void A_column_has_one_unit_chosen_for_its_largest_number()
    {
        var column = Display.Column([(0.047, 0.0012), (0.82, 0.015), (0.0005, 0)], Units.Ohm);
        Assert.Equal("mΩ", column.Unit.Symbol);
        Assert.Equal(["47.0 ± 1.2", "820 ± 15", "0.5"], column.Cells.Select(cell => cell.Replace('\u00A0', ' ')));
    }

    [Theory]
    [InlineData("−12\u202F345.6\u00A0±\u00A07.8\u00A0µΩ", "-12345.6 +- 7.8 uohm")]
    [InlineData("320\u00A0°C", "320 degC")]
    [InlineData("0.5\u00A0mm²", "0.5 mm2")]
    public void Plain_text_has_only_characters_of_ASCII(string shown, string plain) => Assert.Equal(plain, Display.Plain(shown));

    [Fact]
    public void Any_number_shown_is_read_back_as_the_number_shown() =>
        Gen.Select(Gen.Double[-6, 6], Gen.Double[-4, 0], Gen.Bool, Gen.Int[0, Units.All.Count() - 1]).Sample((power, relative, isNegative, which) =>
        {
            var unit = Units.All.ElementAt(which);
            double value = (isNegative && !unit.IsLevel ? -1 : 1) * Math.Pow(10, power);
            double doubt = Math.Abs(value) * Math.Pow(10, relative);
            string shown = Display.Engineering(value, doubt, unit);
            foreach (string text in new[] { shown + " std", Display.Plain(shown) + " std" })
            {
                var answer = TypedValue.Read(text, Expect.Of(unit));
                var amount = Assert.IsType<TypedValue.Amount>(Assert.IsType<Answer.Fine>(answer).Value);
                Assert.True(amount.IsStandard);
                double read = amount.Value * amount.Unit.Factor / unit.Factor;
                double readDoubt = amount.PlusMinus * amount.Unit.Factor / unit.Factor;
                // Two digits of doubt leave at most a twentieth; the value stands to the same place.
                Assert.True(Math.Abs(readDoubt - doubt) <= 0.0501 * doubt && Math.Abs(read - value) <= 0.0501 * doubt, $"{text} for {value.ToString("R", CultureInfo.InvariantCulture)} {unit}");
            }
        }, iter: 3_000);

    [Fact]
    public void A_prefix_never_leaves_a_thousand_or_a_fraction_before_the_point() =>
        Gen.Select(Gen.Double[-8, 8], Gen.Double[-4, 0]).Sample((power, relative) =>
        {
            double value = Math.Pow(10, power);
            string shown = Display.Engineering(value, value * Math.Pow(10, relative), Units.Ohm);
            double number = double.Parse(shown.Split('\u00A0')[0], CultureInfo.InvariantCulture);
            Assert.True(number is >= 0.99 and < 1000 || power < -6, shown);
        }, iter: 3_000);
}
