using Heatwright.BuildSheets;

namespace Heatwright.Tests.BuildSheets;

/// <summary>Numbers that a maker may set for a sheet.</summary>
public sealed class SheetChoicesTests
{
    [Fact]
    public void Every_default_lies_in_its_own_range_and_says_why() => Assert.All(SheetChoices.Defaults.All, choice =>
    {
        Assert.InRange(choice.Value, choice.Least, choice.Most);
        Assert.Equal(choice.Why.Trim(), choice.Why);
        Assert.NotEmpty(choice.Why);
        Assert.True(SheetChoices.Defaults.With(choice.Name, choice.Value, choice.PlusMinus).IsFine, choice.Name);
    });

    [Theory]
    [InlineData("input-capacitor", 1e-7)]
    [InlineData("gate-charge", 1.2e-8)]
    [InlineData("amplifier-offset", 1.5e-4)]
    [InlineData("handle-air", 45)]
    [InlineData("frame", 0.1)]
    [InlineData("charge-rate", 0.5 / 3600)]
    [InlineData("copper", 35e-6)]
    [InlineData("pull-up", 1e7)]
    [InlineData("resistor-tolerance", 0.01)]
    public void Values_leave_in_si_units_but_for_degrees(string name, double si) => Assert.Equal(si, SheetChoices.Defaults.Si(name), 1e-9 * si);

    [Fact]
    public void One_value_is_set_and_the_others_stay()
    {
        var set = SheetChoices.Defaults.With("frame", 200, 10).Value;
        Assert.Equal(0.2, set.Si("frame"), 1e-12);
        Assert.Equal(10 / Math.Sqrt(3), set["frame"].Estimate.StandardDoubt, 1e-12);
        Assert.True(set["frame"].Set);
        Assert.Equal(SheetChoices.Defaults.All.Where(one => one.Name != "frame"), set.All.Where(one => one.Name != "frame"));
        Assert.False(SheetChoices.Defaults["frame"].Set);
    }

    [Theory]
    [InlineData("converter-bits", 20, 0, "8 to 16")]
    [InlineData("converter-bits", 10.5, 0, "whole numbers")]
    [InlineData("board-sides", 1.5, 0, "whole numbers")]
    [InlineData("frame", double.NaN, 0, "1 to 5000 ms")]
    [InlineData("frame", 100, -1, "0 or more")]
    [InlineData("frame", 100, double.NaN, "0 or more")]
    [InlineData("charge-volts", 4, 0, "charge-cable")]
    [InlineData("nonsense", 4, 0, "--names")]
    public void What_cannot_be_is_refused_with_what_can(string name, double value, double doubt, string limit)
    {
        var problem = Assert.Single(SheetChoices.Defaults.With(name, value, doubt).Problems);
        Assert.Contains(limit, problem.Limit, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Next);
    }
}
