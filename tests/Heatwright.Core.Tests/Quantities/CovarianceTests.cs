using CsCheck;
using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

public class CovarianceTests
{
    [Fact]
    public void Doubts_drawn_from_a_covariance_have_that_covariance() => Gen.Double[-2, 2].Array2D[4, 6].Sample(root =>
    {
        // Any A·Aᵀ is a covariance: rows of A are four parameters, columns six independent pushes; the second parameter is a thousandfold.
        double[] scale = [1, 1000, 1e-3, 1];
        double[,] covariance = new double[4, 4];
        for (int i = 0; i < 4; i++)
        {
            for (int j = 0; j < 4; j++)
            {
                covariance[i, j] = Enumerable.Range(0, 6).Sum(k => root[i, k] * root[j, k]) * scale[i] * scale[j];
            }
        }

        var doubts = Doubts.FromCovariance("fit", CauseGroup.Trial, covariance);
        for (int i = 0; i < 4; i++)
        {
            for (int j = 0; j < 4; j++)
            {
                Assert.Equal(covariance[i, j], Doubts.Covariance(doubts[i], doubts[j]), 1e-6 * Math.Sqrt(covariance[i, i]) * Math.Sqrt(covariance[j, j]) + 1e-60); // parts below 1e-13 of a variance count as rounding: their root
            }
        }
    }, iter: 500);

    [Fact]
    public void A_parameter_that_follows_another_fully_adds_no_cause()
    {
        var doubts = Doubts.FromCovariance("fit", CauseGroup.Trial, new double[,] { { 4, 6 }, { 6, 9 } }); // by hand: (2, 3)ᵀ(2, 3)
        Assert.Equal("fit 1", Assert.Single(doubts[1].Causes).Id);
        Assert.Equal(1, Doubts.Correlation(doubts[0], doubts[1]), 1e-12);
        Assert.Equal(0, (doubts[0].Times(3) - doubts[1].Times(2)).Combined, 1e-12);
    }

    [Fact]
    public void A_parameter_held_fixed_has_no_doubt() =>
        Assert.Equal(0, Doubts.FromCovariance("fit", CauseGroup.Trial, new double[,] { { 0, 0 }, { 0, 4 } })[0].Combined);

    [Fact]
    public void What_is_no_covariance_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Doubts.FromCovariance("fit", CauseGroup.Trial, new double[,] { { 1, 2 }, { 2, 1 } }));
        Assert.Throws<ArgumentException>(() => Doubts.FromCovariance("fit", CauseGroup.Trial, new double[,] { { 1, 0.5 }, { -0.5, 1 } }));
        Assert.Throws<ArgumentException>(() => Doubts.FromCovariance("fit", CauseGroup.Trial, new double[,] { { -1 } }));
        Assert.Throws<ArgumentException>(() => Doubts.FromCovariance("fit", CauseGroup.Trial, new double[,] { { double.PositiveInfinity } }));
    }
}
