using CsCheck;
using Heatwright.Numerics;
using Heatwright.Tests.Physics;

namespace Heatwright.Tests.Numerics;

/// <summary>φ functions of numbers and matrices. Printed values computed by an independent script.</summary>
public class PhiTests
{
    [Fact]
    public void Phi_has_the_printed_values_and_the_right_limits()
    {
        Printed.Agree("phi(-0.5)", Printed.Computed, "0.7869387, 0.4261226", Phi.One(-0.5), Phi.Two(-0.5));
        Assert.Equal(1, Phi.One(0));
        Assert.Equal(0.5, Phi.Two(0));
        Assert.Equal(1 - 5e-13, Phi.One(-1e-12), 1e-16); // 1 + z/2: by hand
        Assert.Equal(1, Phi.RisenShare(double.PositiveInfinity));
        Assert.Equal(1e-12, Phi.RisenShare(1e-12), 1e-23);
    }

    [Fact]
    public void Phi_keeps_its_recurrences_on_both_sides_of_the_series() => Gen.Double[-30, 5].Sample(z =>
    {
        Assert.Equal(Math.Exp(z), 1 + (z * Phi.One(z)), 1e-13 * (1 + Math.Exp(z)));
        Assert.Equal(Phi.One(z), 1 + (z * Phi.Two(z)), 1e-13 * (1 + Math.Exp(z)));
    });

    /// <summary>Two nodes, h = 2 s, 14 W, by the block matrix [[Ah, bh], [0, 0]] of [van-loan-1978]: its exponential by a plain Taylor series on a step
    /// halved twenty times, a second method.</summary>
    [Fact]
    public void The_step_matrices_agree_with_the_block_exponential()
    {
        double[] a = [-(0.25 + 0.004) / 1.5, 0.25 / 1.5, 0.25 / 6, -(0.25 + 0.030) / 6];
        var step = new ExponentialStep(a, 2, 2);
        Printed.Agree("e^(Ah)", Printed.Computed, "0.723505901, 0.270499516, 0.0676248791, 0.922593545", step.Exp);
        Printed.Agree("input", Printed.Computed, "15.9058656, 0.676689871", step.Phi1[0] * 14 / 1.5, step.Phi1[2] * 14 / 1.5);

        double scale = 2 / Math.Pow(2, 20);
        double[,] block = { { a[0] * scale, a[1] * scale, 14 / 1.5 * scale }, { a[2] * scale, a[3] * scale, 0 }, { 0, 0, 0 } };
        double[,] power = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
        double[,] term = (double[,])power.Clone();
        for (int k = 1; k < 6; k++)
        {
            term = Times(term, block, 1.0 / k);
            for (int i = 0; i < 9; i++)
            {
                power[i / 3, i % 3] += term[i / 3, i % 3];
            }
        }

        for (int i = 0; i < 20; i++)
        {
            power = Times(power, power, 1);
        }

        Assert.Equal(power[0, 0], step.Exp[0], 1e-9);
        Assert.Equal(power[1, 0], step.Exp[2], 1e-9);
        Assert.Equal(power[0, 2], step.Phi1[0] * 14 / 1.5, 1e-8);
        Assert.Equal(power[1, 2], step.Phi1[2] * 14 / 1.5, 1e-8);
    }

    /// <summary>6 J/K, 20 W, 0.02 W/K, ε 0.7 on 12 cm², air 298.15 K, 120 s; reference 588.22417 K. Exponential Rosenbrock–Euler x + hφ₁(hJ)F(x) has order two,
    /// the classical fourth-order step order four.</summary>
    [Theory]
    [InlineData(8, "8.930e-2", "-4.45e-5")]
    [InlineData(4, "2.224e-2", "-2.71e-6")]
    [InlineData(2, "5.551e-3", "-1.67e-7")]
    public void Both_steppers_have_the_printed_errors(double h, string rosenbrock, string classical)
    {
        const double radiating = 0.7 * 12e-4, around = 298.15;
        double sigma = Heatwright.Physics.Constants.StefanBoltzmann;
        double F(double t) => (20 - (0.02 * (t - around)) - (radiating * sigma * (Math.Pow(t, 4) - Math.Pow(around, 4)))) / 6;
        double Slope(double t) => -(0.02 + (4 * radiating * sigma * Math.Pow(t, 3))) / 6;
        double Exponential(double step)
        {
            double t = around;
            for (int i = 0; i < (int)Math.Round(120 / step); i++)
            {
                t += step * Phi.One(step * Slope(t)) * F(t);
            }

            return t;
        }

        double Fourth(double step)
        {
            double t = around;
            for (int i = 0; i < (int)Math.Round(120 / step); i++)
            {
                double a = F(t), b = F(t + (step / 2 * a)), c = F(t + (step / 2 * b)), d = F(t + (step * c));
                t += step / 6 * (a + (2 * b) + (2 * c) + d);
            }

            return t;
        }

        double reference = Fourth(0.05);
        Printed.Agrees("reference", Printed.Computed, "588.22417", reference);
        Printed.Agrees("exponential", Printed.Computed, rosenbrock, Exponential(h) - reference);
        Printed.Agrees("fourth order", Printed.Computed, classical, Fourth(h) - reference, 0.6e-2 * Math.Abs(Printed.Number(classical)));
    }

    private static double[,] Times(double[,] a, double[,] b, double by)
    {
        double[,] product = new double[3, 3];
        for (int i = 0; i < 27; i++)
        {
            product[i / 9, i / 3 % 3] += by * a[i / 9, i % 3] * b[i % 3, i / 3 % 3];
        }

        return product;
    }
}
