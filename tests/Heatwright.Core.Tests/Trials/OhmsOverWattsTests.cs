using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>Ohms per watt and watts per kelvin tell ohms per kelvin.</summary>
public sealed class OhmsOverWattsTests
{
    private static readonly Part Strip = new(new("strip"), PartKind.Heater, "strip", []);

    private static Finding Found(string quantity, double value, Unit unit, double doubt) =>
        new(Strip.Id, quantity, new Estimate(value, unit, Doubts.From(Cause.Normal(quantity, CauseGroup.Trial), doubt), new Origin.Fitted(new("t"), [new("r")])));

    private static readonly Finding[] All =
        [Found(PartQuantities.Ohms, 3.15, Units.Ohm, 0), Found("ohms per watt", 0.00656, Units.Ohm, 0.00042), Found(PartQuantities.LinearLoss, 0.0495, Units.WattPerKelvin, 0.0127)];

    /// <summary>By hand: 6.56 mΩ/W · 49.5 mW/K / 3.15 Ω = 1.0309e-4 1/K; 6.40 % and 25.66 % of it are 26.44 %, 2.726e-5.</summary>
    [Fact]
    public void A_coefficient_follows_from_a_sweep_and_the_loss()
    {
        var alpha = Assert.Single(Assert.Single(OhmsOverWatts.Of(Strip, All)).Findings);
        Assert.Equal(PartQuantities.Alpha, alpha.Quantity);
        Assert.Equal(1.0309e-4, alpha.Value.Si, 1e-8);
        Assert.Equal(2.726e-5, alpha.Value.SiDoubt, 1e-7);
    }

    [Fact]
    public void It_is_not_told_twice_nor_without_all_three()
    {
        Assert.Empty(OhmsOverWatts.Of(Strip, [.. All, Found(PartQuantities.Alpha, 2e-4, Units.PerKelvin, 1e-5)]));
        Assert.All(All, left => Assert.Empty(OhmsOverWatts.Of(Strip, [.. All.Where(one => one != left)])));
        Assert.Empty(OhmsOverWatts.Of(Strip with { Kind = PartKind.Leads }, All));
    }
}
