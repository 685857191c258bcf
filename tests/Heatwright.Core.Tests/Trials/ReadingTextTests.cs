using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>What the text of one reading says. Expected values by hand.</summary>
public sealed class ReadingTextTests
{
    [Theory]
    [InlineData("3.82", "V", 3.82), InlineData("3,82", "V", 3.82), InlineData("3820", "mV", 3.82), InlineData("3.82V", "mV", 3.82), InlineData("410 mA", "A", 0.41)]
    [InlineData("4k7", "Ω", 4700), InlineData("6R8", "Ω", 6.8), InlineData("+1.5E-3", "V", 0.0015), InlineData("1:20", "s", 80), InlineData("231.5", "°C", 231.5), InlineData("212 °F", "°C", 100)]
    public void Spellings_of_a_number_are_read_in_the_units_of_the_column(string raw, string unit, double expected)
    {
        var read = ReadingText.Read(raw, Units.Find(unit), "column");
        Assert.Equal(ReadingSays.Number, read.Says);
        Assert.Equal(expected, read.Value, 9);
    }

    [Theory]
    [InlineData("", ReadingSays.Nothing), InlineData("-", ReadingSays.Nothing), InlineData("--.--", ReadingSays.Nothing), InlineData("OL", ReadingSays.Overload), InlineData(".0F", ReadingSays.Overload)]
    [InlineData("abc", ReadingSays.Unclear), InlineData("9.9E37", ReadingSays.Overload), InlineData("-9.9E+37", ReadingSays.Overload), InlineData("NaN", ReadingSays.Nothing), InlineData("3 A", ReadingSays.Unclear), InlineData("3-4", ReadingSays.Unclear)]
    public void What_is_no_number_says_so(string raw, ReadingSays says)
    {
        var read = ReadingText.Read(raw, Units.Volt, "volts");
        Assert.Equal(says, read.Says);
        Assert.True(double.IsNaN(read.Value));
        Assert.Equal(says == ReadingSays.Unclear, read.Why.Length > 0);
    }
}
