using System.Globalization;
using System.Text;
using CsCheck;
using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

public class PlainNumberTests
{
    /// <summary>The second method is the correctly rounded parser of the platform.</summary>
    [Fact]
    public void Every_double_written_in_any_form_comes_back_to_the_last_bit() =>
        Gen.Select(Gen.Double, Gen.OneOf(Gen.Const("R"), Gen.Const("E16"), Gen.Const("F3"), Gen.Const("E3"), Gen.Const("G7"))).Where(pair => double.IsFinite(pair.Item1)).Sample(
            (value, form) =>
            {
                string text = value.ToString(form, CultureInfo.InvariantCulture);
                double expected = double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
                return text.Length > 400
                    || (PlainNumber.TryRead(Encoding.UTF8.GetBytes(text), (byte)'.', out double read) && read.Equals(expected)
                        && PlainNumber.TryRead(Encoding.UTF8.GetBytes(text.Replace('.', ',')), (byte)',', out read) && read.Equals(expected));
            },
            iter: 20_000);

    [Fact]
    public void Short_decimals_come_back_to_the_last_bit() =>
        Gen.Select(Gen.Long[-99_999_999_999, 99_999_999_999], Gen.Int[0, 9]).Sample(
            (digits, decimals) =>
            {
                string text = ((decimal)digits / (decimal)Math.Pow(10, decimals)).ToString(CultureInfo.InvariantCulture);
                return PlainNumber.TryRead(Encoding.UTF8.GetBytes(text), (byte)'.', out double read)
                    && read == double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
            },
            iter: 20_000);

    [Theory]
    [InlineData(""), InlineData("-"), InlineData("."), InlineData("e5"), InlineData("1e"), InlineData("1e+"), InlineData("1.2.3"), InlineData("1,2"), InlineData(" 1"), InlineData("1 "), InlineData("0x1F"), InlineData("--1")]
    [InlineData("nan"), InlineData("inf"), InlineData("1_000"), InlineData("12V")]
    public void Anything_else_is_left_to_the_slow_reader(string cell) => Assert.False(PlainNumber.TryRead(Encoding.UTF8.GetBytes(cell), (byte)'.', out _));

    [Fact]
    public void While_the_mark_is_asked_only_whole_numbers_are_plain()
    {
        Assert.True(PlainNumber.TryRead("1234"u8, 0, out double whole));
        Assert.Equal(1234, whole);
        Assert.False(PlainNumber.TryRead("1.234"u8, 0, out _));
    }
}
