using Heatwright.Numerics;

namespace Heatwright.Tests.Numerics;

/// <summary>[nist-strd] nonlinear regression: every set, both of its published starts, all certified parameters and standard deviations.</summary>
public class NonlinearStrdTests
{
    private delegate double Model(double[] b, double x1, double x2);

    private static readonly Dictionary<string, Model> Models = new()
    {
        ["BoxBOD"] = (b, x, _) => b[0] * (1 - Math.Exp(-b[1] * x)),
        ["Chwirut2"] = (b, x, _) => Math.Exp(-b[0] * x) / (b[1] + (b[2] * x)),
        ["DanWood"] = (b, x, _) => b[0] * Math.Pow(x, b[1]),
        ["Eckerle4"] = (b, x, _) => b[0] / b[1] * Math.Exp(-0.5 * Square((x - b[2]) / b[1])),
        ["Gauss1"] = (b, x, _) => (b[0] * Math.Exp(-b[1] * x)) + (b[2] * Math.Exp(-Square((x - b[3]) / b[4]))) + (b[5] * Math.Exp(-Square((x - b[6]) / b[7]))),
        ["Hahn1"] = Cubics,
        ["Kirby2"] = (b, x, _) => (b[0] + (x * (b[1] + (x * b[2])))) / (1 + (x * (b[3] + (x * b[4])))),
        ["Lanczos3"] = (b, x, _) => (b[0] * Math.Exp(-b[1] * x)) + (b[2] * Math.Exp(-b[3] * x)) + (b[4] * Math.Exp(-b[5] * x)),
        ["MGH09"] = (b, x, _) => b[0] * ((x * x) + (x * b[1])) / ((x * x) + (x * b[2]) + b[3]),
        ["Misra1a"] = (b, x, _) => b[0] * (1 - Math.Exp(-b[1] * x)),
        ["Misra1c"] = (b, x, _) => b[0] * (1 - (1 / Math.Sqrt(1 + (2 * b[1] * x)))),
        ["Nelson"] = (b, x1, x2) => b[0] - (b[1] * x1 * Math.Exp(-b[2] * x2)),
        ["Rat42"] = (b, x, _) => b[0] / (1 + Math.Exp(b[1] - (b[2] * x))),
        ["Roszman1"] = (b, x, _) => b[0] - (b[1] * x) - (Math.Atan(b[2] / (x - b[3])) / Math.PI),
        ["Thurber"] = Cubics,
    };

    public static TheoryData<string, string> SetsAndStarts()
    {
        var data = new TheoryData<string, string>();
        foreach (string name in StrdTable.Rows("nonlinear_certified.csv").Select(row => row["dataset"]).Distinct())
        {
            data.Add(name, "start1");
            data.Add(name, "start2");
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(SetsAndStarts))]
    public void A_published_fit_is_found_to_eight_digits_from_both_starts(string name, string start)
    {
        var certified = StrdTable.Rows("nonlinear_certified.csv").Where(row => row["dataset"] == name).ToArray();
        var fit = LeastSquares.Fit(Problem(name, [.. certified.Select(row => StrdTable.Number(row[start]))]));

        Assert.True(fit.Converged, fit.Why);
        for (int j = 0; j < certified.Length; j++)
        {
            double value = StrdTable.DigitsAgreeing(fit.Parameters[j], StrdTable.Number(certified[j]["certified"]));
            double error = StrdTable.DigitsAgreeing(fit.StandardErrors[j], StrdTable.Number(certified[j]["std_dev"]));
            Assert.True(value >= 8, FormattableString.Invariant($"b{j + 1}: {fit.Parameters[j]:R} agrees to {value:0.0} digits; {fit.Iterations} steps, {fit.Evaluations} evaluations"));
            Assert.True(error >= 6, FormattableString.Invariant($"sd of b{j + 1}: {fit.StandardErrors[j]:R} agrees to {error:0.0} digits"));
        }

        Assert.True(StrdTable.DigitsAgreeing(fit.ResidualSumOfSquares, StrdTable.Number(certified[0]["RSS"])) >= 8);
        Assert.Equal(StrdTable.Number(certified[0]["dof"]), fit.DegreesOfFreedom);
    }

    private static LeastSquaresProblem Problem(string name, double[] start)
    {
        var rows = StrdTable.Rows($"nonlinear/{name}.csv");
        double[] y = [.. rows.Select(row => StrdTable.Number(row["y"]))];
        double[] x1 = [.. rows.Select(row => StrdTable.Number(row.TryGetValue("x", out string? x) ? x : row["x1"]))];
        double[] x2 = [.. rows.Select(row => row.TryGetValue("x2", out string? x) ? StrdTable.Number(x) : 0)];
        if (name == "Nelson")
        {
            y = [.. y.Select(value => Math.Log(value))]; // the published model is for log(y)
        }

        var model = Models[name];
        return new LeastSquaresProblem(
            (b, residuals) =>
            {
                double[] parameters = b.ToArray();
                for (int i = 0; i < y.Length; i++)
                {
                    residuals[i] = model(parameters, x1[i], x2[i]) - y[i];
                }
            },
            y.Length,
            start);
    }

    private static double Square(double x) => x * x;

    private static double Cubics(double[] b, double x, double unused) =>
        (b[0] + (x * (b[1] + (x * (b[2] + (x * b[3])))))) / (1 + (x * (b[4] + (x * (b[5] + (x * b[6]))))));
}
