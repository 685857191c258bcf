using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>The reference loop: a first-order tool with dead time under the discrete PI law, warmed from 25 to 350 °C and loaded with 5 W from 600 to
/// 620 s. Pure recursion, so every figure of the independent script must come out to 1e-5 K (times to one sample).</summary>
public class ReferenceLoopTests
{
    private const double SampleS = 0.5, SetC = 350, AirC = 25, MostW = 30;
    private const int LoadFrom = 1200, LoadTo = 1240, Samples = 2400;

    private sealed record Loop(double TuneFactor, AntiWindup Guard = AntiWindup.Conditional, double Gain = 30, double TimeConstantS = 180, int Delay = 6, bool Rounded = false);

    private sealed record Course(double[] ReadC, double[] PowerW)
    {
        public double Overshoot => Math.Max(0, ReadC[..LoadFrom].Max() - SetC);

        public double FirstAt(double level) => SampleS * Array.FindIndex(ReadC, y => y >= level);

        public double SettledS => SampleS * (Array.FindLastIndex(ReadC, LoadFrom - 1, y => Math.Abs(y - SetC) > 2) + 1);

        public double Droop => SetC - ReadC[LoadFrom..].Min();

        public double DroopAtS => SampleS * Array.IndexOf(ReadC[LoadFrom..], ReadC[LoadFrom..].Min());

        public double Rebound => ReadC[LoadFrom..].Max() - SetC;

        public double RecoveredS => SampleS * (Array.FindLastIndex(ReadC, y => Math.Abs(y - SetC) > 2) + 1 - LoadFrom);

        public double At(double seconds) => ReadC[(int)(seconds / SampleS)];
    }

    private static Course Run(Loop loop)
    {
        var pi = PiTuning.Pi(30, 180, 3, loop.TuneFactor);
        double stays = Math.Exp(-SampleS / loop.TimeConstantS);
        double rise = 0, integral = 0;
        double[] read = new double[Samples], power = new double[Samples];
        var line = new Queue<double>(Enumerable.Repeat(0.0, loop.Delay));
        for (int n = 0; n < Samples; n++)
        {
            read[n] = AirC + rise;
            double seen = loop.Rounded ? Math.Round(read[n], MidpointRounding.ToEven) : read[n];
            var sample = DiscretePi.Step(pi, SampleS, integral, SetC, seen, MostW, loop.Guard);
            integral = sample.IntegralW;
            power[n] = sample.PowerW;
            line.Enqueue(sample.PowerW);
            double load = n is >= LoadFrom and < LoadTo ? -5 : 0;
            rise = (stays * rise) + ((1 - stays) * loop.Gain * (line.Dequeue() + load));
        }

        return new Course(read, power);
    }

    private static void Compare(Loop loop, string overshoot, string first, string settled, string droop, string rebound, string recovered)
    {
        var course = Run(loop);
        Printed.Agrees("overshoot", Printed.Computed, overshoot, course.Overshoot, 1e-5);
        Printed.Agrees("first ≥ 345 °C", Printed.Computed, first, course.FirstAt(345), 1e-9);
        Printed.Agrees("settled", Printed.Computed, settled, course.SettledS, 1e-9);
        Printed.Agrees("droop", Printed.Computed, droop, course.Droop, 1e-5);
        Printed.Agrees("rebound", Printed.Computed, rebound, course.Rebound, 1e-5);
        Printed.Agrees("recovered", Printed.Computed, recovered, course.RecoveredS, 1e-9);
    }

    [Fact]
    public void Tight_tuning_with_a_conditional_integrator() => Compare(new(1), "0.00000", "85.5", "104.5", "4.97448", "3.42798", "39.5");

    [Fact]
    public void Half_as_tight() => Compare(new(2), "0.00000", "99.0", "121.0", "6.35165", "2.78111", "54.0");

    [Fact]
    public void Five_times_slower_than_the_dead_time()
    {
        Compare(new(5), "0", "138.5", "182.0", "10.23008", "2.23494", "91.0");
        Assert.Equal(-0.00128, Run(new(5)).At(599.5) - SetC, 1e-5);
    }

    [Fact]
    public void Back_calculation_overshoots() => Compare(new(1, AntiWindup.BackCalculation), "18.29619", "82.5", "132.0", "4.97448", "3.42798", "39.5");

    /// <summary>Without a guard a tip meant for 350 °C goes to 554 °C: a matter of safety, not of tuning.</summary>
    [Fact]
    public void Without_anti_windup_the_tip_passes_its_set_point_by_two_hundred_kelvin() => Compare(new(1, AntiWindup.None), "203.62869", "82.5", "374.5", "4.97449", "3.42798", "39.5");

    [Fact]
    public void A_livelier_tool_than_was_fitted() => Compare(new(1, Gain: 39, TimeConstantS: 144), "1.95903", "49.5", "80.5", "6.64349", "4.81130", "33.0");

    [Fact]
    public void A_duller_tool_than_was_fitted() => Compare(new(1, Gain: 21, TimeConstantS: 216), "0.50763", "162.5", "169.5", "3.93205", "2.35001", "48.5");

    [Fact]
    public void Twice_the_dead_time() => Compare(new(1, Delay: 12), "3.51445", "85.5", "143.0", "7.29291", "8.44631", "67.5");

    [Fact]
    public void A_reading_in_whole_degrees() => Compare(new(1, Rounded: true), "0.50233", "86.0", "103.5", "4.92787", "3.41747", "40.5");

    [Theory]
    [InlineData(1, 9.0)]
    [InlineData(2, 14.0)]
    [InlineData(5, 20.0)]
    public void The_deepest_droop_comes_when_printed(double factor, double printedS) => Assert.Equal(printedS, Run(new(factor)).DroopAtS, 1e-9);

    [Theory]
    [InlineData(AntiWindup.BackCalculation, 92.5)]
    [InlineData(AntiWindup.None, 163.0)]
    public void The_highest_overshoot_comes_when_printed(AntiWindup guard, double printedS)
    {
        double[] read = Run(new(1, guard)).ReadC[..LoadFrom];
        Assert.Equal(printedS, SampleS * Array.IndexOf(read, read.Max()), 1e-9);
    }

    [Fact]
    public void The_first_loop_takes_the_printed_course()
    {
        var course = Run(new(1));
        Printed.Agree("y", Printed.Computed, "150.362821, 269.283785, 346.389618, 347.485816, 349.203017, 349.991488",
            [.. ((double[])[30, 60, 90, 100, 120, 200]).Select(course.At)]);
        Printed.Agree("y under load", Printed.Computed, "346.100541, 345.066246, 347.223238, 353.427976, 351.913908, 350.585822, 350.060421",
            [.. ((double[])[605, 610, 620, 630, 640, 660, 700]).Select(course.At)]);
        Printed.Agree("u", Printed.Computed, "11.284331, 17.117842, 10.833333", course.PowerW[180], course.PowerW[1220], course.PowerW[1199]);
        Assert.Equal(325.0 / 30, course.PowerW[1199], 1e-6); // hold power by hand
    }

    [Fact]
    public void A_derivative_on_the_reading_brakes_and_filters()
    {
        var pid = new PiSettings(2, 20, 4);

        // By hand: D = (0.8·1 − 2·4·(101 − 100))/(0.8 + 0.5) = −5.5385; u = 2·(110 − 101) + 3 − 5.5385 = 15.4615; I = 3 + 2·0.5·9/20 = 3.45.
        var sample = DiscretePi.StepPid(pid, 0.5, new PiSample(0, 3, 1), 110, 101, 100, 30, 0.8);
        Assert.Equal(-5.538462, sample.DerivativeW, 1e-6);
        Assert.Equal(15.461538, sample.PowerW, 1e-6);
        Assert.Equal(3.45, sample.IntegralW, 1e-12);
        Assert.Equal(DiscretePi.Step(pid, 0.5, 3, 110, 101, 30), DiscretePi.StepPid(pid with { DerivativeS = 0 }, 0.5, new PiSample(0, 3), 110, 101, 100, 30, 0.8));
    }

    [Fact]
    public void A_new_set_point_far_away_presets_the_integrator_with_the_hold_power()
    {
        Assert.Equal(10.8, DiscretePi.IntegralForNewSetPoint(4, 200, 350, 10.8, 30));
        Assert.Equal(30, DiscretePi.IntegralForNewSetPoint(4, 200, 350, 40, 30));
        Assert.Equal(4, DiscretePi.IntegralForNewSetPoint(4, 340, 350, 10.8, 30));
    }

    [Fact]
    public void The_output_never_leaves_its_limits_and_a_guarded_integrator_stays_put_at_them() => CsCheck.Check.Sample(
        CsCheck.Gen.Select(CsCheck.Gen.Double[-50, 50], CsCheck.Gen.Double[0, 500], CsCheck.Gen.Double[0, 80]), (integral, read, most) =>
        {
            var sample = DiscretePi.Step(new PiSettings(1, 24), 0.5, integral, 350, read, most);
            Assert.InRange(sample.PowerW, 0, most);
            double wanted = 350 - read + integral;
            Assert.Equal((wanted > most && read < 350) || (wanted < 0 && read > 350), sample.IntegralW == integral && read != 350);
        });
}
