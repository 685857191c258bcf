using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

/// <summary>A near name is offered; the whole list only where none is near.</summary>
public sealed class NearNamesTests
{
    private static readonly string[] Kinds = ["cold-ohms", "warm-up", "warm-up-marks", "pulse", "two-load-sag", "heater", "cell"];

    [Theory]
    [InlineData("warmup", "warm-up")]
    [InlineData("Warm Up", "warm-up", "warm-up-marks")]
    [InlineData("plus", "pulse")]
    [InlineData("plsue", "pulse")]
    [InlineData("hot-ohms", "cold-ohms")]
    [InlineData("sag", "two-load-sag")]
    [InlineData("heaters", "heater")]
    [InlineData("cel", "cell")]
    [InlineData("xyzzy")]
    [InlineData("")]
    [InlineData("a")]
    public void The_likeliest_come_first(string typed, params string[] near) => Assert.Equal(near, NearNames.Of(typed, Kinds));

    [Fact]
    public void A_list_is_told_whole_where_no_name_is_near()
    {
        Assert.Equal("perhaps pulse", NearNames.Told("puls", Kinds));
        Assert.Equal(string.Join(", ", Kinds), NearNames.Told("xyzzy", Kinds));
        Assert.Equal("abc, abe", NearNames.Told("abd", ["abc", "abe"])); // all of them are
    }

    /// <summary>By hand: one swap, one change, two more letters, everything.</summary>
    [Theory, InlineData("form", "from", 1), InlineData("cold", "gold", 1), InlineData("volt", "volts5", 2), InlineData("", "ohm", 3), InlineData("ohm", "ohm", 0)]
    public void Slips_are_counted(string a, string b, int slips) => Assert.Equal(slips, NearNames.Slips(a, b));

    /// <summary>By hand: letters changed next to each other, dropped, added, and swapped at both ends.</summary>
    [Theory]
    [InlineData("ab", "ba", 1)]
    [InlineData("ab", "bc", 2)]
    [InlineData("ab", "ca", 2)]
    [InlineData("abcd", "badc", 2)]
    [InlineData("xab", "xba", 1)]
    [InlineData("abx", "bax", 1)]
    [InlineData("sitting", "kitten", 3)]
    [InlineData("flaw", "lawn", 2)]
    [InlineData("abc", "xyz", 3)]
    [InlineData("a", "", 1)]
    [InlineData("aab", "b", 2)]
    public void Slips_are_the_same_both_ways(string a, string b, int slips)
    {
        Assert.Equal(slips, NearNames.Slips(a, b));
        Assert.Equal(slips, NearNames.Slips(b, a));
    }

    /// <summary>Two slips at most, and fewer than half of the letters of the name; inside a word from three letters on; in common from four.</summary>
    [Theory]
    [InlineData("ab", "ac", false)]
    [InlineData("abc", "abx", true)]
    [InlineData("abcd", "abxy", false)]
    [InlineData("abcde", "abcxy", true)]
    [InlineData("abcdefgh", "abcdexyz", false)]
    [InlineData("qqqqqabcqqqqq", "abc", true)]
    [InlineData("qqqqqabqqqqq", "ab", false)]
    [InlineData("abc", "qqqqqabcqqqqq", true)]
    [InlineData("ab", "qqqqqabqqqqq", false)]
    [InlineData("cold-ohms", "cold-thingummy", true)]
    [InlineData("two-load-sag", "sag-thingummy", false)]
    [InlineData("Cold-Ohms", " COLD_OHMS ", true)]
    public void A_name_is_near_or_it_is_not(string name, string typed, bool near) => Assert.Equal(near ? [name] : [], NearNames.Of(typed, [name]));

    [Fact]
    public void Slips_come_first_and_then_words_inside() =>
        Assert.Equal(["pulse", "pulsd", "best-pulse", "pulse-of-ages"], NearNames.Of("pulse", ["best-pulse", "pulse-of-ages", "pulsd", "pulse"]));

    [Fact]
    public void Words_in_common_come_last_and_five_names_at_most()
    {
        Assert.Equal(["hot-pulses", "cold-pulse"], NearNames.Of("hot-pulse", ["cold-pulse", "hot-pulses"]));
        Assert.Equal(["zbcd-pulse-xyz", "one-pulse"], NearNames.Of("zbcd-pulse", ["one-pulse", "zbcd-pulse-xyz"]));
        Assert.Equal(["heat1", "heat2", "heat3", "heat4", "heat5"], NearNames.Of("heat0", ["heat6", "heat5", "heat4", "heat3", "heat2", "heat1"]));
    }

    [Fact]
    public void A_part_of_the_list_is_told_as_perhaps()
    {
        Assert.Equal("perhaps abc or abe", NearNames.Told("abd", ["abc", "abe", "xyzzy"]));
        Assert.Equal("abc", NearNames.Told("xyzzy", ["abc"]));
    }
}
