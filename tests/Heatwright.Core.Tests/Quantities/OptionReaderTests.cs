using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

public class OptionReaderTests
{
    [Fact]
    public void An_option_reads_what_a_field_reads() =>
        Assert.Equal(4700, OptionReader.Amount("--ohms", "4k7", Expect.Ohms).Value.Si);

    [Fact]
    public void An_ambiguous_option_says_what_to_type_for_each_meaning()
    {
        var problem = Assert.Single(OptionReader.Read("--volts", "1,234", Expect.Volts).Problems);
        Assert.Contains("--volts \"1.2340 V\"", problem.Next, StringComparison.Ordinal); // four decimals: three could again be taken for thousands
        Assert.Contains("--volts \"1234 V\"", problem.Next, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3-4 V")]
    [InlineData("<3 V")]
    [InlineData("OL")]
    [InlineData("12V 40W")]
    [InlineData("pear")]
    public void What_is_no_single_number_is_refused_where_one_is_needed(string text) =>
        Assert.Equal("--volts", Assert.Single(OptionReader.Amount("--volts", text, Expect.Volts).Problems).Where);
}
