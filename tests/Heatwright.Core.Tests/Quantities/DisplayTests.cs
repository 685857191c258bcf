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

    // By hand: four digits; below 0.0001 and from ten millions on as a power of ten.
    [Theory]
    [InlineData(0, 4, "0")]
    [InlineData(double.NaN, 4, "NaN")]
    [InlineData(double.PositiveInfinity, 4, "Infinity")]
    [InlineData(123.456, 4, "123.5")]
    [InlineData(123.456, 6, "123.456")]
    [InlineData(123.456, 1, "100")]
    [InlineData(-123.456, 4, "−123.5")]
    [InlineData(100, 4, "100")]
    [InlineData(0.0001, 4, "0.0001")]
    [InlineData(0.00012346, 4, "0.0001235")]
    [InlineData(0.00009999, 4, "9.999×10⁻⁵")]
    [InlineData(0.000099996, 4, "1×10⁻⁴")]
    [InlineData(9999000, 4, "9999000")]
    [InlineData(9999999, 4, "10000000")]
    [InlineData(10000000, 4, "1×10⁷")]
    [InlineData(99996000, 4, "1×10⁸")]
    [InlineData(-99996000, 4, "−1×10⁸")]
    [InlineData(-99996000, 5, "−9.9996×10⁷")]
    [InlineData(2.5e12, 4, "2.5×10¹²")]
    [InlineData(3.14159e34, 4, "3.142×10³⁴")]
    [InlineData(6.5e-20, 4, "6.5×10⁻²⁰")]
    [InlineData(7.77e-98, 2, "7.8×10⁻⁹⁸")]
    public void Four_digits_stand_where_no_doubt_is_known(double value, int digits, string shown) => Assert.Equal(shown, Display.Significant(value, digits));

    // By hand: the doubt rounds to two digits first, and the value follows it to the same place.
    [Theory]
    [InlineData(5, 0.0994, "5.000", "0.099")]
    [InlineData(5, 0.0995001, "5.00", "0.10")]
    [InlineData(5, 9.94, "5.0", "9.9")]
    [InlineData(5, 9.96, "5", "10")]
    [InlineData(54321, 99.6, "54320", "100")]
    [InlineData(54321, 1000, "54300", "1000")]
    [InlineData(-54351, 1000, "−54400", "1000")]
    [InlineData(0.4, 12, "0", "12")]
    [InlineData(-0.4, 12, "0", "12")]
    public void A_doubt_that_rounds_up_takes_a_place_from_the_value(double value, double doubt, string shown, string shownDoubt)
    {
        Assert.Equal(shown, Display.Value(value, doubt));
        Assert.Equal(shownDoubt, Display.Value(doubt, doubt));
        Assert.Equal($"{shown}\u00A0±\u00A0{shownDoubt}\u00A0V", Display.Rounded(value, doubt, Units.Volt));
    }

    /// <summary>A tool does no half pieces of work.</summary>
    [Theory, InlineData(129.0, 5.5, "129\u00A0±\u00A06"), InlineData(59.2, 4.0, "59\u00A0±\u00A04"), InlineData(40, 0.3, "40\u00A0±\u00A01"), InlineData(40, 0, "40")]
    public void A_count_has_no_decimals(double value, double doubt, string shown) => Assert.Equal(shown, Display.Counted(value, doubt));

    [Fact]
    public void A_unit_stands_behind_a_hard_space_and_money_and_numbers_have_none()
    {
        Assert.Equal("\u00A0V", Display.Behind(Units.Volt));
        Assert.Equal("", Display.Behind(Units.One));
        Assert.Equal("", Display.Behind(Units.Money));
        Assert.Equal("1.235", Display.Value(1.23456, 0));
        Assert.Equal("1.235", Display.Rounded(1.23456, 0, Units.Money));
    }

    // By hand: thousands are parted from five digits on, before the point only.
    [Theory]
    [InlineData(9999.5, 0.25, "9999.50 ± 0.25")]
    [InlineData(10000, 0.25, "10|000.00 ± 0.25")]
    [InlineData(123456, 12, "123|456 ± 12")]
    [InlineData(-1234.5, 0.25, "−1234.50 ± 0.25")]
    [InlineData(-12345.6, 7.8, "−12|345.6 ± 7.8")]
    [InlineData(-123456, 12, "−123|456 ± 12")]
    [InlineData(1e7, 0, "1×10⁷")]
    [InlineData(12346000, 0, "1.235×10⁷")]
    [InlineData(double.PositiveInfinity, 0, "Infinity")]
    [InlineData(45678, 23456, "46|000 ± 23|000")]
    public void Thousands_are_parted_by_a_thin_space(double value, double doubt, string shown) =>
        Assert.Equal(shown.Replace(' ', '\u00A0').Replace('|', '\u202F') + "\u00A0min", Display.Engineering(value, doubt, Units.Minute));

    // By hand: 999.96 in four digits is 1000.0, 999.94 is 999.9; the larger of value and doubt says the prefix.
    [Theory]
    [InlineData(999.94, 0, "999.9 Ω")]
    [InlineData(999.96, 0, "1 kΩ")]
    [InlineData(-999.96, 0, "−1 kΩ")]
    [InlineData(0.5, 1200, "0.0 ± 1.2 kΩ")]
    [InlineData(-1200, 0.5, "−1.20000 ± 0.00050 kΩ")]
    [InlineData(999.4, 1.5, "999.4 ± 1.5 Ω")]
    [InlineData(999.96, 1.5, "1.0000 ± 0.0015 kΩ")]
    public void The_prefix_is_chosen_for_the_number_as_shown(double value, double doubt, string shown) =>
        Assert.Equal(shown.Replace(' ', '\u00A0'), Display.Engineering(value, doubt, Units.Ohm));

    [Fact]
    public void What_has_no_size_keeps_the_unit_that_it_came_in()
    {
        var kilometre = new Unit("km", Units.Metre.Dimension, 1000);
        Assert.Equal("0\u00A0km", Display.Engineering(0, 0, kilometre));
        Assert.Equal("NaN\u00A0km", Display.Engineering(double.NaN, 0, kilometre));
        Assert.Equal("km", Display.Column([], kilometre).Unit.Symbol);
        Assert.Equal("3", Display.Engineering(3, 0, Units.One));
        Assert.Equal("4.2\u00A0m", Display.Engineering(0.0042, 0, kilometre));
    }

    [Fact]
    public void Every_sign_that_is_shown_has_a_plain_spelling()
    {
        Assert.Equal("+- -- ohmohm uu deg ** delta T <=>= 1e-12 m23 ?", Display.Plain("± \u2212\u2013 Ω\u2126 µ\u03BC ° ·× ΔT \u2264\u2265 1×10⁻¹² m²³ é"));
        Assert.Equal("456789e0 a b 10000", Display.Plain("⁴⁵⁶⁷⁸⁹×10⁰ a\u00A0b 10\u202F00\u20090"));
        Assert.Equal("2*10 V", Display.Plain("2×10 V")); // no power of ten without a raised figure
    }

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
