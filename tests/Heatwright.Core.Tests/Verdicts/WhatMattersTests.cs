using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Tests.Safety;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>Where the doubt of a run time comes from, on the tool of <see cref="JudgeTests"/>: it goes as ohms times charge, 0.4/√3 of 2 Ω (11.5 %) and 0.01/√3 of 0.1 Ah (5.8 %): four parts to one.</summary>
public sealed class WhatMattersTests
{
    private static readonly SafetyTool Tool = new() { CapacityAh = 0.1, OhmsPlusMinus = 0.4, CapacityPlusMinus = 0.01 };

    private static readonly Requirement Long = new("long", "it lasts.", RequirementQuantity.RunTime, 1.5, "min", false, true);

    private static IReadOnlyList<Matters> Of(params Requirement[] lines) =>
        WhatMatters.Of(new Brief("", "blade", "cut", 20, lines), new Prediction(Tool.Arrangement, Tool.Builder, Predict.Middle(Tool.Builder), [], []), 1, 256);

    [Fact]
    public void Shares_are_those_of_a_product_of_two()
    {
        var matters = Assert.Single(Of(Long, new Requirement("cost", "", RequirementQuantity.PartsCost, 1, "money", true, true)));
        Assert.Same(Long, matters.Requirement);
        Assert.Equal(0.8, matters.Shares[0].Total, 0.1);
        Assert.Equal(0.8, matters.Shares[0].First, 0.1);
        Assert.Equal(0.2, matters.Shares[1].Total, 0.1);
        Assert.Equal(0.2, matters.Shares[1].First, 0.1);
        Assert.Contains("tip", matters.Shares[0].Source, StringComparison.Ordinal);
        Assert.Contains("cell", matters.Shares[1].Source, StringComparison.Ordinal);
        var rest = matters.Shares.Single(share => share.Source == WhatMatters.AllElse);
        Assert.Equal(CauseGroup.Assumption, rest.Group);
        Assert.Equal(0, rest.Total, 0.001);
        Assert.Equal(matters.Shares.Select(share => share.Total).OrderDescending(), matters.Shares.Select(share => share.Total));
    }

    /// <summary>By hand: 1.9 · 0.4/√3 = 0.4388 Ω either side, 47.37 s · 1.5632 and 2.4408; charge 1.9 · 0.01/√3 = 0.01097 Ah, 94.83 s times 0.8903 and 1.1097.</summary>
    [Fact]
    public void Bars_stand_in_the_units_of_the_shelf_and_of_the_line_widest_first()
    {
        var bars = Of(Long)[0].Tornado;
        Assert.Equal(["heater ohms, tip", "capacity, cell"], bars.Take(2).Select(bar => bar.Input));
        Assert.Equal(("Ω", "Ah"), (bars[0].Unit, bars[1].Unit));
        Assert.Equal([1.5612, 2.4388, 74.05 / 60, 115.6 / 60], [bars[0].LowInput, bars[0].HighInput, bars[0].AtLow, bars[0].AtHigh], (a, b) => Math.Abs(a - b) < 0.006);
        Assert.Equal([0.08903, 0.11097, 84.43 / 60, 105.2 / 60], [bars[1].LowInput, bars[1].HighInput, bars[1].AtLow, bars[1].AtHigh], (a, b) => Math.Abs(a - b) < 0.006);
        Assert.All(bars, bar => Assert.NotEqual(bar.AtLow, bar.AtHigh));
    }

    [Fact]
    public void What_is_never_reached_whatever_is_drawn_has_no_shares_and_no_bars()
    {
        var never = Assert.Single(Of(new Requirement("ready", "", RequirementQuantity.WarmUpTime, 30, "s", true, true))); // 300 °C with 30 W on 0.118 W/K takes longer than the charge lasts
        Assert.All(never.Shares, share => Assert.Equal((0, 0), (share.First, share.Total)));
        Assert.Empty(never.Tornado);
    }

    [Theory]
    [InlineData("warm-up of tip 3", "warm-up of tip")]
    [InlineData("warm-up of tip three", "warm-up of tip three")]
    [InlineData("tip 12", "tip")]
    [InlineData("tip -1", "tip -1")]
    [InlineData("7", "7")]
    [InlineData("tip", "tip")]
    public void The_numbers_of_a_fit_are_one_source(string cause, string source) => Assert.Equal(source, WhatMatters.SourceOf(Cause.Normal(cause, CauseGroup.Trial)));
}
