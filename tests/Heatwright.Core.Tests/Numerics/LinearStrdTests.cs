using Heatwright.Numerics;

namespace Heatwright.Tests.Numerics;

/// <summary>[nist-strd] linear regression and univariate sets, whole. Certified values carry 15 digits.</summary>
public class LinearStrdTests
{
    public static TheoryData<string> Sets(string table) =>
        [.. StrdTable.Rows(table).Select(row => row["dataset"]).Distinct()];

    [Theory]
    [MemberData(nameof(Sets), "linear_certified.csv")]
    public void A_published_linear_fit_is_met_to_twelve_digits(string name)
    {
        var certified = StrdTable.Rows("linear_certified.csv").Where(row => row["dataset"] == name).ToArray();
        var rows = StrdTable.Rows($"linear/{name}.csv");
        double[] y = [.. rows.Select(row => StrdTable.Number(row["y"]))];
        var fit = name switch
        {
            "Longley" => LinearLeastSquares.Fit(Design(rows, ["1", "x1", "x2", "x3", "x4", "x5", "x6"]), y),
            "NoInt1" => LinearLeastSquares.Fit(Design(rows, ["x"]), y),
            _ => LinearLeastSquares.Polynomial([.. rows.Select(row => StrdTable.Number(row["x"]))], y, certified.Length - 1),
        };

        for (int j = 0; j < certified.Length; j++)
        {
            double value = StrdTable.DigitsAgreeing(fit.Coefficients[j], StrdTable.Number(certified[j]["certified"]));
            double error = StrdTable.DigitsAgreeing(fit.StandardErrors[j], StrdTable.Number(certified[j]["std_dev"]));
            Assert.True(value >= 12, FormattableString.Invariant($"B{j} = {fit.Coefficients[j]:R} agrees to {value:0.0} digits"));
            // Where the certified scatter is zero (Wampler1 and 2) the digits are those of an absolute difference:
            // 2e-10 of scatter is what rounding of the readings themselves leaves at their size of 3e6.
            Assert.True(error >= (certified[j]["std_dev"].StartsWith("0.0000", StringComparison.Ordinal) ? 9 : 10), FormattableString.Invariant($"sd of B{j} = {fit.StandardErrors[j]:R} agrees to {error:0.0} digits"));
        }

        Assert.True(StrdTable.DigitsAgreeing(fit.ResidualStandardDeviation, StrdTable.Number(certified[0]["residual_sd"])) >= 9);
        Assert.Equal(StrdTable.Number(certified[0]["dof"]), fit.DegreesOfFreedom);
        Assert.Equal(certified.Length, fit.Leverages.Sum(), 1e-9); // the trace of a projection is its rank
    }

    [Theory]
    [MemberData(nameof(Sets), "univariate_certified.csv")]
    public void Published_statistics_of_one_row_are_met(string name)
    {
        var certified = StrdTable.Rows("univariate_certified.csv").Single(row => row["dataset"] == name);
        double[] y = StrdTable.Column($"univariate/{name}.csv", "y");

        // Readings such as 1000000.2 are not binary numbers: their own rounding (6e-11) is 6e-10 of the scatter 0.1 in NumAcc3,
        // and 3e-14 of the scatter in Michelso. No program that reads doubles can do better there.
        int digits = name == "NumAcc3" ? 9 : 13;
        Assert.True(StrdTable.DigitsAgreeing(Sample.Mean(y), StrdTable.Number(certified["mean"])) >= 14);
        double spread = StrdTable.DigitsAgreeing(Sample.StandardDeviation(y), StrdTable.Number(certified["std_dev"]));
        double lag = StrdTable.DigitsAgreeing(Sample.Lag1(y), StrdTable.Number(certified["autocorr_lag1"]));
        Assert.True(spread >= digits && lag >= digits, FormattableString.Invariant($"{spread:0.0} {lag:0.0} digits"));
    }

    private static double[,] Design(Dictionary<string, string>[] rows, string[] names)
    {
        var design = new double[rows.Length, names.Length];
        for (int i = 0; i < rows.Length; i++)
        {
            for (int j = 0; j < names.Length; j++)
            {
                design[i, j] = names[j] == "1" ? 1 : StrdTable.Number(rows[i][names[j]]);
            }
        }

        return design;
    }
}
