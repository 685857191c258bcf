using CsCheck;
using Heatwright.Numerics;

namespace Heatwright.Tests.Numerics;

public class CovarianceFactorTests
{
    [Fact]
    public void The_factor_times_itself_is_the_covariance_in_any_units_and_of_any_rank() =>
        Gen.Select(Gen.Int[1, 5], Gen.Int[1, 5]).SelectMany(size => Gen.Select(
            Gen.Double[-1, 1].Array[size.Item1 * size.Item2], Gen.Double[-8, 8].Array[size.Item1], Gen.Const(size.Item2))).Sample((entries, powers, columns) =>
        {
            int n = powers.Length;
            double[] units = [.. powers.Select(power => Math.Pow(10, power))];
            double Cause(int i, int k) => units[i] * entries[(i * columns) + k];
            var covariance = new double[n, n];
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    covariance[i, j] = Enumerable.Range(0, columns).Sum(k => Cause(i, k) * Cause(j, k));
                }
            }

            double[,] factor = CovarianceFactor.Of(covariance);
            Assert.True(factor.GetLength(1) <= Math.Min(n, columns));
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    double back = Enumerable.Range(0, factor.GetLength(1)).Sum(k => factor[i, k] * factor[j, k]);
                    Assert.Equal(covariance[i, j], back, 1e-6 * Math.Sqrt(covariance[i, i]) * Math.Sqrt(covariance[j, j]));
                }
            }
        });

    [Fact]
    public void Two_parameters_that_move_as_one_have_one_cause()
    {
        double[,] factor = CovarianceFactor.Of(new double[,] { { 4, 6 }, { 6, 9 } });
        Assert.Equal(1, factor.GetLength(1));
        Assert.Equal((2, 3), (Math.Abs(factor[0, 0]), Math.Abs(factor[1, 0])));
    }

    [Fact]
    public void A_parameter_without_doubt_moves_with_nothing()
    {
        double[,] factor = CovarianceFactor.Of(new double[,] { { 0, 0 }, { 0, 9 } });
        Assert.Equal(1, factor.GetLength(1));
        Assert.Equal((0, 3), (factor[0, 0], factor[1, 0]));
    }

    [Fact]
    public void What_is_no_covariance_is_refused()
    {
        Assert.Throws<ArgumentException>(() => CovarianceFactor.Of(new double[,] { { 1, 1.1 }, { 1.1, 1 } }));
        Assert.Throws<ArgumentException>(() => CovarianceFactor.Of(new double[,] { { 1, 0.5 }, { 0.4, 1 } }));
        Assert.Throws<ArgumentException>(() => CovarianceFactor.Of(new double[,] { { double.PositiveInfinity } }));
        Assert.Throws<ArgumentException>(() => CovarianceFactor.Of(new double[,] { { -1 } }));
        Assert.Throws<ArgumentException>(() => CovarianceFactor.Of(new double[,] { { 1, 0 } }));
        Assert.Throws<ArgumentException>(() => CovarianceFactor.Of(new double[,] { { 0, 1 }, { 1, 4 } }));
    }
}
