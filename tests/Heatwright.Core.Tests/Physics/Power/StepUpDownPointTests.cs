using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Step-up-down points by hand: loss 0.1 W + 0.15 V·I + 0.06 Ω·I², source 0.12 Ω, 3.7 V, so E = 3.55 V and A = 0.18 Ω.</summary>
public class StepUpDownPointTests
{
    private static readonly LossCoefficients Loss = new(0.1, 0.15, 0.06);

    private static void Numbers(PathPoint point, PathRegion region, params double[] expected)
    {
        Assert.Equal(region, point.Region);
        double?[] worked = [point.InputA, point.InputV, point.OutV, point.OutW, point.LossW, point.Duty];
        Assert.All(expected.Index(), each => Assert.Equal(each.Item, worked[each.Index]!.Value, 2e-6));
    }

    [Fact]
    public void It_holds_its_set_volts_above_and_below_the_battery()
    {
        // 8.2/(3.55 + √(12.6025 − 0.72·4.1)) = 1.2318739 A; loss 0.1 + 0.1847811 + 0.0910508.
        PathPoint point = StepUpDownPoint.At(3.7, 0.12, 4, 4);
        Numbers(point, PathRegion.Regulated, 1.2318739, 3.5521751, 4, 4, 0.3758319, 0.8117714);
        Assert.Equal(3.55 / 0.36, point.FoldA!.Value, 1e-12);
        Assert.Equal((3.55 * 3.55 / 0.72) - 0.1, point.MostW!.Value, 1e-12);
        // 3 V on 4 Ω: 2.25 W; 4.7/(3.55 + √(12.6025 − 0.72·2.35)).
        Numbers(StepUpDownPoint.At(3.7, 0.12, 3, 4), PathRegion.Regulated, 0.6858206, 3.6177015, 3, 2.25);
    }

    [Fact]
    public void Its_input_limit_holds_the_power()
    {
        // 1 A: 3.55 − 0.18 − 0.1 = 3.27 W, √(3.27·4) V; loss 0.1 + 0.15 + 0.06.
        Numbers(StepUpDownPoint.At(3.7, 0.12, 4, 4, limitA: 1), PathRegion.CurrentLimited, 1, 3.58, 3.6166283, 3.27, 0.31, 0.9041571);
        // 0.1 A: 0.355 − 0.0018 − 0.1 = 0.2532 W on 1 Ω, less than one volt and one watt.
        Numbers(StepUpDownPoint.At(3.7, 0.12, 4, 1, limitA: 0.1), PathRegion.CurrentLimited, 0.1, 3.688, 0.5031898, 0.2532);
        // 0.02 A do not cover the 0.1 W that it takes for itself.
        Assert.Equal(PathRegion.SourceLimited, StepUpDownPoint.At(3.7, 0.12, 4, 4, limitA: 0.02).Region);
        // Ideal and far beyond the fold: 25 A leave 0.7 V at the input, 17.5 W.
        PathPoint beyond = StepUpDownPoint.At(3.7, 0.12, 40, 4, 0, 0, 0, limitA: 25);
        Numbers(beyond, PathRegion.CurrentLimited, 25, 0.7, Math.Sqrt(70), 17.5, 0);
        Assert.True(beyond.BeyondFold);
    }

    [Fact]
    public void The_lock_out_ends_it_at_its_current_and_the_first_limit_counts()
    {
        Assert.Equal(PathRegion.Hiccup, StepUpDownPoint.At(3.7, 0.12, 4, 4, lockoutV: 3.6).Region);                           // 0.1/0.12 = 0.83 A come before 1.23 A
        Assert.Equal(PathRegion.Regulated, StepUpDownPoint.At(3.7, 0.12, 4, 4, lockoutV: 3.5).Region);                        // 1.67 A do not
        Assert.Equal(PathRegion.CurrentLimited, StepUpDownPoint.At(3.7, 0.12, 4, 4, limitA: 0.8, lockoutV: 3.6).Region);
        Assert.Equal(PathRegion.Hiccup, StepUpDownPoint.At(3.7, 0.12, 4, 4, limitA: 0.9, lockoutV: 3.6).Region);
        Assert.Equal(PathRegion.LockedOut, StepUpDownPoint.At(3.7, 0.12, 4, 4, lockoutV: 3.7).Region);
        Assert.Equal(PathRegion.Regulated, StepUpDownPoint.At(3.7, 0, 4, 4, lockoutV: 3.69).Region);                          // a stiff source does not sag
    }

    [Fact]
    public void Without_limit_and_lock_out_an_unreachable_power_is_the_sources_limit()
    {
        PathPoint point = StepUpDownPoint.At(3.7, 0.12, 8, 0.5); // 128 W of 17.4 W
        Assert.Equal(PathRegion.SourceLimited, point.Region);
        Assert.Null(point.InputA);
        Assert.Equal(PathRegion.Hiccup, StepUpDownPoint.At(3.7, 0.12, 8, 0.5, lockoutV: 0.5).Region);
        // At the fold itself: 4 V behind 1 Ω give 4 W at 2 A.
        Numbers(StepUpDownPoint.At(4, 1, 4, 4, 0, 0, 0), PathRegion.Regulated, 2, 2, 4, 4, 0, 0.5);
        // A battery below the module's own drop drives nothing: 0.1 V of 0.15 V.
        Assert.Equal(PathRegion.SourceLimited, StepUpDownPoint.At(0.1, 0.12, 0.1, 10, 0).Region);
        Assert.Equal(PathRegion.SourceLimited, StepUpDownPoint.At(0.15, 0.12, 0.1, 10, 0).Region);
    }

    [Fact]
    public void A_constant_power_is_held_at_its_set_volts_or_not_at_all()
    {
        var module = new StepUpDownModule(4, Loss);
        Numbers(StepUpDownPoint.Solve(3.7, 0.12, LoadLaw.Watts(4), module).Boxed, PathRegion.Regulated, 1.2318739, 3.5521751, 4, 4, 0.3758319, 0.8117714);
        Assert.Equal(PathRegion.SourceLimited, StepUpDownPoint.Solve(3.7, 0.12, LoadLaw.Watts(4), module with { LimitA = 1 }).Boxed.Region);
        // 1 A taken at any volts: 3.27 W at an input of 1 A are 3.27 V.
        Numbers(StepUpDownPoint.Solve(3.7, 0.12, LoadLaw.Amps(1), module with { LimitA = 1 }).Boxed, PathRegion.CurrentLimited, 1, 3.58, 3.27, 3.27, 0.31, 1);
    }

    [Fact]
    public void Battery_power_is_source_loss_module_loss_and_heater() =>
        Gen.Select(Gen.Double[2.8, 8.4], Gen.Double[0.02, 0.4], Gen.Double[1, 30], Gen.Double[1, 24], Gen.Double[0.5, 12], Gen.Double[0, 2.7]).Sample((open, source, heater, set, limit, lockout) =>
        {
            PathPoint point = StepUpDownPoint.At(open, source, set, heater, limitA: limit, lockoutV: lockout);
            if (point.InputA is { } amps)
            {
                Assert.Equal(open * amps, (amps * amps * source) + Loss.AtW(amps) + point.OutW!.Value, 1e-9 * open * amps);
                Assert.Equal(point.OutW.Value, point.OutV!.Value * point.OutV.Value / heater, 1e-9 * point.OutW.Value);
                Assert.True(point.OutV <= set * (1 + 1e-9) && amps <= limit && point.InputV >= lockout - 1e-9);
                Assert.Equal(point.OutV.Value / heater, point.Duty!.Value * amps, 1e-9 * amps);
            }
        }, iter: 500);

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("openV", () => StepUpDownPoint.At(0, 0.1, 5, 8));
        Printed.Refuses("sourceOhm", () => StepUpDownPoint.At(3.7, -0.1, 5, 8));
        Printed.Refuses("heaterOhm", () => StepUpDownPoint.At(3.7, 0.1, 5, 0));
        Printed.Refuses("LimitA", () => StepUpDownPoint.At(3.7, 0.1, 5, 8, limitA: 0));
        Printed.Refuses("LockoutV", () => StepUpDownPoint.At(3.7, 0.1, 5, 8, lockoutV: -1));
        Printed.Refuses("SetV", () => StepUpDownPoint.At(3.7, 0.1, 0, 8));
    }
}
