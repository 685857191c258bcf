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
}
