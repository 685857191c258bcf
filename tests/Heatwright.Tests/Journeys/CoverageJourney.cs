using Heatwright.DemoTruth.Campaign;
using Heatwright.Proofs;
using Heatwright.Trials;

namespace Heatwright.Tests.Journeys;

/// <summary>Short form of the coverage campaign: every kind once made up and fitted, some of them often enough to see limits that are far too narrow or too wide. In full: dotnet run --project proofs -- coverage.</summary>
public sealed class CoverageJourney
{
    private const int Seed = 20261125;

    [Fact]
    public void Every_kind_has_a_made_up_truth_and_gives_an_answer()
    {
        Assert.Equal(TrialCard.All.Select(card => card.Name).Order(StringComparer.Ordinal), BenchLaws.Kinds.Order(StringComparer.Ordinal));
        var result = CoverageCampaign.Run(2, Seed, _ => { }, times50: 1);
        Assert.Empty(result.Failures);
        Assert.All(BenchLaws.Kinds, kind => Assert.Contains(result.Findings, line => line.Kind == kind));
    }

    /// <summary>60 trials of a kind: fewer than 50 truths inside would be chance once in ten thousand; the width is a median and steady to a few in 100.</summary>
    [Fact]
    public void Limits_hold_the_truth_and_are_not_wide_for_it()
    {
        var result = CoverageCampaign.Run(60, Seed, TestContext.Current.TestOutputHelper!.WriteLine, ["cold-ohms", "four-wire-ohms", "hold-power", "cool-down", "amplifier", "converter-points"], 1);
        Assert.All(result.Findings, line => Assert.InRange(line.In95, 83, 100));
        Assert.All(result.Findings, line => Assert.InRange(line.Width ?? 0, 0.7, 1.4));
    }

    /// <summary>The campaign can fail: meters twice as wrong as they promise leave the limits too narrow.</summary>
    [Fact]
    public void Meters_that_break_their_promise_are_seen()
    {
        var result = CoverageCampaign.Run(120, Seed, _ => { }, ["cold-ohms"], 1);
        Assert.True(result.Findings.Single().TwiceIn95 < 85);
    }
}
