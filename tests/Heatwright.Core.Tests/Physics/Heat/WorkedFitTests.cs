using Heatwright.Numerics;
using Heatwright.Physics;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Heatwright.Tests.Physics;

/// <summary>The worked fits of the heat laws: one, delayed and two nodes on one warm-up; a stopwatch fit; a loss from two power levels. Every figure
/// computed by an independent script. Tolerance: half of the last printed digit.</summary>
public class WorkedFitTests
{
    private static readonly LeastSquaresFit One = WorkedWarmUp.Fit(WorkedWarmUp.OneNode, 30, 200);
    private static readonly LeastSquaresFit Delayed = WorkedWarmUp.Fit(WorkedWarmUp.Delayed, 29, 200, 8);
    private static readonly LeastSquaresFit Two = WorkedWarmUp.Fit(WorkedWarmUp.TwoNodes, 29, 200, 8);

    private static void Compare(LeastSquaresFit fit, string parameters, string errors, string rss, string s, string aicc, string runs, string z, string durbinWatson)
    {
        Assert.True(fit.Converged, fit.Why);
        Printed.Agree("parameters", Printed.Computed, parameters, fit.Parameters);
        Printed.Agree("errors", Printed.Computed, errors, fit.StandardErrors);
        Printed.Agrees("RSS", Printed.Computed, rss, fit.ResidualSumOfSquares);
        Printed.Agrees("s", Printed.Computed, s, Math.Sqrt(fit.ReducedChiSquare));
        int n = fit.Residuals.Length, counted = fit.Parameters.Length + 1;
        Printed.Agrees("AICc", Printed.Computed, aicc, (n * Math.Log(fit.ResidualSumOfSquares / n)) + (2 * counted) + (2.0 * counted * (counted + 1) / (n - counted - 1)));

        // Signs as the script counts them: reading above the model is plus.
        bool[] above = [.. fit.Residuals.Select(r => r < 0)];
        int plus = above.Count(sign => sign), minus = n - plus;
        int counted2 = 1 + above.Zip(above.Skip(1)).Count(pair => pair.First != pair.Second);
        Assert.Equal(runs, FormattableString.Invariant($"{counted2} ({plus},{minus})"));
        double mean = 1 + (2.0 * plus * minus / n), variance = 2.0 * plus * minus * ((2.0 * plus * minus) - n) / (1.0 * n * n * (n - 1));
        Printed.Agrees("z", Printed.Computed, z, (counted2 - mean) / Math.Sqrt(variance));
        double[] r = fit.Residuals;
        Printed.Agrees("DW", Printed.Computed, durbinWatson, r.Zip(r.Skip(1)).Sum(pair => Math.Pow(pair.Second - pair.First, 2)) / r.Sum(x => x * x));
    }

    /// <summary>Biased by 3 % in K and 10 % in τ with small stated errors: the runs tell, the errors do not.</summary>
    [Fact]
    public void One_node_fits_badly_and_says_so_only_by_its_runs()
    {
        Compare(One, "30.34217, 237.5098", "0.22531, 3.3863", "1020.13", "5.1813", "136.22", "9 (12,28)", "-3.373", "0.303");
        Assert.Equal(0.03, (One.Parameters[0] / 29.41176) - 1, 0.005);
        Assert.Equal(0.10, (One.Parameters[1] / 216.1603) - 1, 0.005);
        Assert.True(Math.Abs(One.Parameters[0] - 29.41176) > 4 * One.StandardErrors[0], "the stated error would have covered the bias");
    }

    [Fact]
    public void A_delay_helps() => Compare(Delayed, "29.42205, 217.6169, 8.62979", "0.07715, 1.2930, 0.41824", "91.2885", "1.5708", "42.149", "24 (20,20)", "0.961", "2.484");

    /// <summary>The script printed 1.3574 for the error of τ₁; slopes by complex steps in a second program give 1.357321, so its last digit is mended here.</summary>
    [Fact]
    public void Two_nodes_find_the_truth()
    {
        Compare(Two, "29.36911, 216.0372, 9.14589", "0.07597, 1.3573, 0.46411", "80.9913", "1.4795", "37.361", "20 (20,20)", "-0.320", "2.434");
        double[] truth = [29.41176, 216.1603, 9.354443];
        for (int j = 0; j < 3; j++)
        {
            Assert.InRange(truth[j], Two.Parameters[j] - (2 * Two.StandardErrors[j]), Two.Parameters[j] + (2 * Two.StandardErrors[j]));
        }

        Printed.Agree("correlations", Printed.Computed, "0.8384, -0.6252, -0.7765", Two.Correlation(0, 1), Two.Correlation(0, 2), Two.Correlation(1, 2));
    }

    [Fact]
    public void The_second_node_is_wanted_beyond_doubt()
    {
        double f = (One.ResidualSumOfSquares - Two.ResidualSumOfSquares) / (Two.ResidualSumOfSquares / 37);
        Printed.Agrees("F", Printed.Computed, "429.04", f);
        Printed.Agrees("p", Printed.Computed, "6.0e-22", SpecialFunctions.BetaRegularized(18.5, 0.5, 37 / (37 + f)));
        Printed.Agrees("critical F", Printed.Computed, "4.1055", FisherSnedecor.InvCDF(1, 37, 0.95));
    }

    [Fact]
    public void Predictions_of_the_two_node_fit_carry_its_doubt()
    {
        static double TimeTo(double[] p, double watts) => Solve(t => (watts * WorkedWarmUp.TwoNodes(p, t)) - 276, 1, 5000);
        Told("376.43", "0.91", p => 24 + (12 * p[0]));
        Told("339.55", "1.12", p => TimeTo(p, 12));
        Told("222.11", "0.60", p => TimeTo(p, 15));
        Told("9.3976", "0.0243", p => 276 / p[0]);
        Told("7.6673", "0.0224", p => TwoNodeTool.ApparentCapacityJPerK(p[0], p[1], p[2]));

        static void Told(string value, string doubt, Func<double[], double> told)
        {
            var (worked, spread) = Delta.Of(Two, told);
            Printed.Agrees("prediction", Printed.Computed, value, worked);
            Printed.Agrees("its doubt", Printed.Computed, doubt, spread);
        }
    }

    /// <summary>Invented readings: 200 °C at 44 s, 280 °C at 102 s, 298 °C at 420 s; 4 °C and 1.5 s of doubt; weights taken again at the solution, six passes.</summary>
    [Fact]
    public void Stopwatch_readings_fit_plateau_and_time_constant()
    {
        double plateau = 280, tau = 45, early = 1.5, late = 1.5;
        LeastSquaresFit? fit = null;
        for (int pass = 0; pass < 6; pass++)
        {
            early = TwoMarks.TimeDoubtS(1.5, 4, plateau, 175, tau);
            late = TwoMarks.TimeDoubtS(1.5, 4, plateau, 255, tau);
            double[] u = [early, late];
            fit = LeastSquares.Fit(new LeastSquaresProblem(
                (p, r) =>
                {
                    r[0] = (WarmUp.TimeToRiseS(175, p[0], p[1], 1) - 44) / u[0]; // with G = 1 the power is the plateau and C the time constant
                    r[1] = (WarmUp.TimeToRiseS(255, p[0], p[1], 1) - 102) / u[1];
                    r[2] = (WarmUp.RiseK(p[0], p[1], 1, 420) - 273) / 4;
                },
                3,
                [plateau, tau])
            { Lower = [255.1, 1], Upper = [1000, 1000] });
            (plateau, tau) = (fit.Parameters[0], fit.Parameters[1]);
        }

        Printed.Agree("D, tau", Printed.Computed, "275.2175, 42.11459", plateau, tau);
        Printed.Agree("doubts", Printed.Computed, "3.606, 2.376", fit!.UnscaledErrors);
        Printed.Agrees("correlation", Printed.Computed, "0.634", fit.Correlation(0, 1));
        Printed.Agrees("chi²", Printed.Computed, "1.605", fit.ResidualSumOfSquares);
        Assert.Equal(1, fit.DegreesOfFreedom);
        Printed.Agree("residuals", Printed.Computed, "-0.646, 0.940, 0.551", fit.Residuals);
        Printed.Agree("u", Printed.Computed, "2.253, 8.466", early, late);
    }

    private static readonly double[] FiveWatts = [103, 166, 214, 247, 267, 280, 289, 291, 293, 300, 299, 300, 300, 298, 302];
    private static readonly double[] MoreWatts = [142, 234, 295, 327, 352, 364, 368, 368, 369, 373, 373, 372, 372, 373, 373];

    [Fact]
    public void Two_power_levels_tell_both_losses_and_the_plateau_at_a_third()
    {
        var both = FitLoss([(5, FiveWatts), (7.5, MoreWatts)], linear: false);
        Printed.Agree("C G B", Printed.Computed, "1.142704, 0.007059, 3.041367", both.Parameters);
        Printed.Agree("errors", Printed.Computed, "0.00726, 0.000279, 0.0669", both.StandardErrors);
        Printed.Agrees("s", Printed.Computed, "1.6005", Math.Sqrt(both.ReducedChiSquare));
        Printed.Agrees("RSS", Printed.Computed, "69.160", both.ResidualSumOfSquares);
        Printed.Agrees("correlation", Printed.Computed, "-0.988", both.Correlation(1, 2));
        var (plateau, doubt) = PlateauAt10W(both);
        Printed.Agrees("plateau", Printed.Computed, "428.92", plateau);
        Printed.Agrees("its doubt", Printed.Computed, "1.00", doubt);
        Assert.InRange(428.25, plateau - (2 * doubt), plateau + (2 * doubt)); // the truth

        var single = FitLoss([(5, FiveWatts)], linear: false);
        Printed.Agree("C G B, 5 W", Printed.Computed, "1.167837, 0.005382, 3.519498", single.Parameters);
        Printed.Agree("errors, 5 W", Printed.Computed, "0.0272, 0.00159, 0.448", single.StandardErrors);
        Printed.Agrees("RSS, 5 W", Printed.Computed, "30.720", single.ResidualSumOfSquares);
        Printed.Agrees("s, 5 W", Printed.Computed, "1.6000", Math.Sqrt(single.ReducedChiSquare));
        Printed.Agrees("correlation, 5 W", Printed.Computed, "-0.999", single.Correlation(1, 2));
        var (far, wide) = PlateauAt10W(single);
        Printed.Agrees("plateau, 5 W", Printed.Computed, "420.53", far);
        Printed.Agrees("its doubt, 5 W", Printed.Computed, "7.16", wide);
        Printed.Agrees("sharper by", Printed.Computed, "7.2", wide / doubt);
    }

    [Fact]
    public void A_linear_loss_through_two_power_levels_is_wrong_by_ninety_kelvin()
    {
        var fit = FitLoss([(5, FiveWatts), (7.5, MoreWatts)], linear: true);
        Printed.Agree("C G", Printed.Computed, "0.926850, 0.020163", fit.Parameters);
        Printed.Agree("errors", Printed.Computed, "0.0667, 0.00036", fit.StandardErrors);
        Printed.Agrees("s", Printed.Computed, "21.22", Math.Sqrt(fit.ReducedChiSquare));
        Printed.Agrees("RSS", Printed.Computed, "12608.1", fit.ResidualSumOfSquares);
        Printed.Agrees("plateau", Printed.Computed, "521.0", Plateau.LinearC(10, fit.Parameters[1], 25));
        Printed.Agrees("wrong by", Printed.Computed, "93", Plateau.LinearC(10, fit.Parameters[1], 25) - 428.25);
    }

    private static (double Value, double Doubt) PlateauAt10W(LeastSquaresFit fit) => Delta.Of(fit, p => new LossSplit(p[1], p[2] * 1e-11).PlateauC(10, 25));

    /// <summary>C dT/dt = P − G(T − T_a) − B(T⁴ − T_a⁴) from 25 °C, B in 1e-11 W/K⁴, readings every 20 s; steps of 1 s of fourth order.</summary>
    private static LeastSquaresFit FitLoss((double PowerW, double[] ReadC)[] runs, bool linear) => LeastSquares.Fit(new LeastSquaresProblem(
        (p, residuals) =>
        {
            double capacity = p[0];
            var loss = new LossSplit(p[1], linear ? 0 : p[2] * 1e-11);
            int at = 0;
            foreach (var (power, read) in runs)
            {
                double F(double t) => (power - loss.LossW(t, 25)) / capacity;
                double hot = 25;
                foreach (double reading in read)
                {
                    for (int i = 0; i < 20; i++)
                    {
                        double a = F(hot), b = F(hot + (a / 2)), c = F(hot + (b / 2)), d = F(hot + c);
                        hot += (a + (2 * b) + (2 * c) + d) / 6;
                    }

                    residuals[at++] = hot - reading;
                }
            }
        },
        runs.Sum(run => run.ReadC.Length),
        linear ? [1, 0.02] : [1, 0.01, 3])
    {
        Lower = linear ? [0.1, 1e-4] : [0.1, 1e-5, 0.01],
        Upper = linear ? [10, 1] : [10, 1, 100],
    });

    private static double Solve(Func<double, double> f, double low, double high)
    {
        for (int i = 0; i < 100; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = f(middle) < 0 ? (middle, high) : (low, middle);
        }

        return low;
    }
}
