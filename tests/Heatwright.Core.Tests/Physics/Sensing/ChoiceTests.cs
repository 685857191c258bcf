using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Invented options (warm-up s, mass g, cost); check values by a second program (Python).</summary>
public class ChoiceTests
{
    private static readonly double[][] Options = [[60, 180, 25], [45, 210, 30], [60, 190, 26], [90, 150, 20], [45, 210, 35]];
    private static readonly double[] Weights = [0.5, 0.3, 0.2];

    [Fact]
    public void A_B_and_D_are_not_dominated() => Assert.Equal([0, 1, 3], Choice.ParetoSet(Options));

    [Theory]
    [InlineData(0, 0.5933)]
    [InlineData(1, 0.5767)]
    [InlineData(3, 0.5267)]
    public void Weighted_values_agree(int option, double value) => Assert.Equal(value, Choice.Weighted(Values(option), Weights), 5.1e-5);

    [Fact]
    public void The_winner_flips_at_a_weight_of_0_5455()
    {
        double weight = Choice.FlipWeight(Values(0), Values(1), Weights, 0);
        Assert.Equal(0.5455, weight, 5.1e-5);
        double[] flipped = [weight, (1 - weight) * 0.6, (1 - weight) * 0.4];
        Assert.Equal(Choice.Weighted(Values(0), flipped), Choice.Weighted(Values(1), flipped), 1e-12);
    }

    [Fact]
    public void Where_no_weight_flips_the_winner_there_is_none() => Assert.True(double.IsNaN(Choice.FlipWeight([1, 1], [0.5, 0.5], [0.5, 0.5], 0)));

    [Fact]
    public void Nothing_dominates_itself_and_domination_has_one_direction() => Gen.Select(Gen.Int[0, 3].Array[3], Gen.Int[0, 3].Array[3]).Sample((a, b) =>
    {
        double[] first = [.. a.Select(x => (double)x)], second = [.. b.Select(x => (double)x)];
        return !Choice.Dominates(first, first) && !(Choice.Dominates(first, second) && Choice.Dominates(second, first));
    });

    [Fact]
    public void A_scale_ends_at_its_ends() => Assert.Equal([0, 0.5, 1, 1], ((double[])[120, 75, 30, 10]).Select(x => Choice.Scale(x, 120, 30)));

    private static double[] Values(int option) =>
        [Choice.Scale(Options[option][0], 120, 30), Choice.Scale(Options[option][1], 250, 100), Choice.Scale(Options[option][2], 40, 15)];
}
