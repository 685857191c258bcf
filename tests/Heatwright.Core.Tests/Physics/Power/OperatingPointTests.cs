using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Operating points with their regions: RG-1 to RG-9, the collapse example with its sweep, CO-1 to CO-4, BD-1; all computed by an
/// independent script on invented inputs. Tolerance: half of the last printed digit.</summary>
public class OperatingPointTests
{
    private static readonly LossCoefficients Loss = new(0.12, 0.20, 0.09);

    private static StepUpModule Set(double volts) => new(volts, Loss) { DiodeV = 0.4, ThroughOhm = 0.1 };

    private static double[] Values(PathPoint point) => [point.InputA!.Value, point.InputV!.Value, point.OutV!.Value, point.OutW!.Value, point.Duty!.Value];

    private static void At(string id, PathRegion region, PathPoint point, string printed, params double[] worked)
    {
        Assert.Equal(region, point.Region);
        Printed.Agree(id, Printed.Computed, printed, worked);
    }

    [Fact]
    public void A_hot_heater_is_regulated_and_the_same_heater_cold_is_not()
    {
        PathPoint hot = StepUpPoint.At(3.7, 0.12, 5.06, Set(6) with { PeakLimitA = 3.5 });
        At("RG-1", PathRegion.Regulated, hot, "7.11462, 2.417773", hot.OutW!.Value, hot.InputA!.Value);
        PathPoint cold = StepUpPoint.At(3.7, 0.12, 2.2, Set(6) with { PeakLimitA = 3.5 });
        At("RG-2", PathRegion.CurrentLimited, cold, "3.2800, 9.5575, 4.58547", cold.InputV!.Value, cold.OutW!.Value, cold.OutV!.Value);
    }

    [Fact]
    public void A_heater_too_low_for_the_module_gets_the_battery_straight_through()
    {
        Printed.Agrees("RG-3", Printed.Computed, "2.70492", StepUpPoint.PassThroughA(3.7, 0.12, 1.0, Set(6)));
        // 0.5 Ω: 3.3 V over 0.72 Ω, 4.58 A already at zero duty, above the limit of 3.5 A: the switch cannot help.
        PathPoint point = StepUpPoint.At(3.7, 0.12, 0.5, Set(6) with { PeakLimitA = 3.5 });
        Assert.Equal(PathRegion.PassThrough, point.Region);
        Assert.Equal(3.3 / 0.72, point.InputA!.Value, 1e-12);
    }

    /// <summary>RG-3 calls 1.0 Ω pass-through because 3.0915 V lies below the input of 3.28 V. With its own diode drop of 0.4 V only 2.70 V
    /// pass through, so the switch still works: the averaged stage, a second method, shows current and output rising from zero duty on until the
    /// limit of 3.5 A. The point is current-limited; the check's region is wrong, its pass-through current is right.</summary>
    [Fact]
    public void One_ohm_is_still_held_by_the_switch_limit()
    {
        Printed.Agrees("RG-3, formula", Printed.Computed, "3.0915", Math.Sqrt(ConverterLoss.OutW(3.7, 0.12, Loss, 3.5)));
        PathPoint point = StepUpPoint.At(3.7, 0.12, 1.0, Set(6) with { PeakLimitA = 3.5 });
        Assert.Equal(PathRegion.CurrentLimited, point.Region);
        Assert.Equal(3.0915, point.OutV!.Value, 5e-5);

        var parts = new StageOhms(0.12 + 0.05, 0.05, 0.05, 0.4);
        StagePoint off = Boost.At(3.7, 0, 1.0, parts);
        StagePoint working = Boost.At(3.7, 0.15, 1.0, parts);
        Assert.Equal(2.70492, off.InductorA, 5e-6);
        Assert.True(working.InductorA > off.InductorA && working.OutV > off.OutV && off.InductorA < 3.5);
    }

    [Fact]
    public void A_set_voltage_below_the_battery_passes_through_too()
    {
        PathPoint point = StepUpPoint.At(8.4, 0.1, 10, Set(5));
        Assert.Equal(PathRegion.PassThrough, point.Region);
        Assert.Equal((8.4 - 0.4) / 10.2, point.InputA!.Value, 1e-12); // by hand
        Assert.True(point.OutV > 5);
    }

    [Fact]
    public void The_first_limit_met_decides()
    {
        StepUpModule module = Set(9) with { PeakLimitA = 5.5, MaxDuty = 0.90, LockoutV = 2.5 };
        PathPoint point = StepUpPoint.At(3.7, 0.12, 8, module);
        At("RG-4", PathRegion.Regulated, point, "3.78815, 0.70302", point.InputA!.Value, point.Duty!.Value);
        Assert.Equal(5.5 / point.InputA!.Value, point.Margin!.Value, 1e-12);
        PathPoint duty = StepUpPoint.At(3.7, 0.12, 8, Set(20) with { MaxDuty = 0.90 });
        At("RG-4, duty limit", PathRegion.DutyLimited, duty, "12.03458", duty.InputA!.Value);
        At("RG-4, lock-out", PathRegion.Hiccup, StepUpPoint.At(3.7, 0.12, 8, Set(20) with { LockoutV = 2.5 }), "10.0000", (3.7 - 2.5) / 0.12);

        PathPoint limited = StepUpPoint.At(3.7, 0.12, 8, Set(12) with { PeakLimitA = 5.5, MaxDuty = 0.90, LockoutV = 2.5 });
        At("RG-5", PathRegion.CurrentLimited, limited, "5.5, 10.11039, 0.77022", limited.InputA!.Value, limited.OutV!.Value, limited.Duty!.Value);
    }

    [Fact]
    public void Where_it_hiccups_no_number_is_given()
    {
        PathPoint point = StepUpPoint.At(3.7, 0.30, 8, Set(12) with { PeakLimitA = 5.5, MaxDuty = 0.90, LockoutV = 2.5 });
        Assert.Equal(PathRegion.Hiccup, point.Region); // RG-6
        Assert.Null(point.InputA);
        Assert.Null(point.OutW);
        Assert.Null(point.OutV);
    }

    [Fact]
    public void Past_the_fold_it_is_steady_but_low()
    {
        PathPoint limited = StepUpPoint.At(3.7, 0.30, 8, Set(12) with { PeakLimitA = 5.5, MaxDuty = 0.90, LockoutV = 1.5 });
        At("RG-7", PathRegion.CurrentLimited, limited, "7.65898, 0.82593", limited.OutV!.Value, limited.Duty!.Value);
        Assert.True(limited.BeyondFold);
        PathPoint duty = StepUpPoint.At(3.7, 0.30, 8, Set(12) with { PeakLimitA = 10, MaxDuty = 0.90, LockoutV = 0.9 });
        At("RG-8", PathRegion.DutyLimited, duty, "7.412363, 1.47629, 5.92989, 4.39545, 0.90", Values(duty));
        PathPoint less = StepUpPoint.At(3.7, 0.30, 8, Set(12) with { PeakLimitA = 10, MaxDuty = 0.85, LockoutV = 0.9 });
        At("RG-9", PathRegion.DutyLimited, less, "6.105872, 7.32705", less.InputA!.Value, less.OutV!.Value);
        Assert.True(less.OutV > duty.OutV);
    }

    [Fact]
    public void Nothing_to_stop_the_collapse_means_no_point()
    {
        PathPoint point = StepUpPoint.At(3.7, 0.30, 8, Set(12));
        Assert.Equal(PathRegion.SourceLimited, point.Region);
        Assert.Null(point.OutV);
        Assert.Equal(PathRegion.LockedOut, StepUpPoint.At(2.4, 0.1, 8, Set(9) with { LockoutV = 2.5 }).Region);
        Assert.Equal(PathRegion.LockedOut, StepUpPoint.At(2.9, 0.1, 8, Set(9) with { LockoutV = 2.5, StartV = 3 }).Region);
    }

    [Theory]
    [InlineData("A", 0.12, "14.46333, 8.33333, 10.75670")]
    [InlineData("B", 0.30, "7.73256, 4.48718, 7.86515")]
    public void Neither_the_good_nor_the_tired_cell_can_hold_twelve_volts(string id, double source, string printed)
    {
        double most = ConverterLoss.MostW(3.7, source, Loss);
        Printed.Agree("case " + id, Printed.Computed, printed, most, ConverterLoss.FoldA(3.7, source, Loss), Math.Sqrt(most * 8));
    }

    [Theory]
    [InlineData(1, "3.400, 3.400, 0.4100, 2.9900, 4.8908, 0.87941")]
    [InlineData(2, "3.100, 6.200, 0.8800, 5.3200, 6.5238, 0.85806")]
    [InlineData(3, "2.800, 8.400, 1.5300, 6.8700, 7.4135, 0.81786")]
    [InlineData(4, "2.500, 10.000, 2.3600, 7.6400, 7.8179, 0.76400")]
    [InlineData(5, "2.200, 11.000, 3.3700, 7.6300, 7.8128, 0.69364")]
    [InlineData(5.5, "2.050, 11.275, 3.9425, 7.3325, 7.6590, 0.65033")]
    [InlineData(6, "1.900, 11.400, 4.5600, 6.8400, 7.3973, 0.60000")]
    [InlineData(7, "1.600, 11.200, 5.9300, 5.2700, 6.4931, 0.47054")]
    public void Output_collapses_while_the_input_current_climbs(double amps, string printed)
    {
        // The module made to sit at each input current by its own limit.
        PathPoint point = StepUpPoint.At(3.7, 0.30, 8, Set(12) with { PeakLimitA = amps });
        double inW = point.InputV!.Value * point.InputA!.Value;
        Printed.Agree($"sweep of case B, {amps} A", Printed.Computed, printed, point.InputV.Value, inW, point.LossW!.Value, point.OutW!.Value, point.OutV!.Value, point.OutW.Value / inW);
    }

    [Fact]
    public void At_the_fold_itself()
    {
        double amps = ConverterLoss.FoldA(3.7, 0.30, Loss);
        double inV = 3.7 - (0.3 * amps);
        double outW = ConverterLoss.OutW(3.7, 0.30, Loss, amps);
        Printed.Agree("sweep of case B, fold", Printed.Computed, "4.487, 2.354, 10.562, 2.8296, 7.7326, 7.8651, 0.73210",
            amps, inV, amps * inV, Loss.AtW(amps), outW, Math.Sqrt(outW * 8), outW / (amps * inV));
    }

    [Fact]
    public void The_good_cell_is_held_by_the_switch_limit_less_half_the_ripple()
    {
        PathPoint point = StepUpPoint.At(3.7, 0.12, 8, Set(12) with { PeakLimitA = 5.5 });
        Printed.Agree("case A, 6.0 A peak less 0.5 A", Printed.Computed, "3.040, 3.9425, 12.7775, 10.1104, 0.76420",
            point.InputV!.Value, point.LossW!.Value, point.OutW!.Value, point.OutV!.Value, point.OutW.Value / (point.InputV.Value * 5.5));
    }

    [Fact]
    public void A_lower_set_voltage_cures_the_collapse()
    {
        PathPoint good = StepUpPoint.At(3.7, 0.12, 8, Set(9));
        Printed.Agree("CO-1", Printed.Computed, "3.78815, 3.24542, 0.72238", good.InputA!.Value, good.InputV!.Value, good.OutW!.Value / (3.7 * good.InputA.Value));
        Assert.Null(ConverterLoss.InputA(3.7, 0.30, Loss, 81.0 / 8));
        good = StepUpPoint.At(3.7, 0.12, 8, Set(7));
        Printed.Agree("CO-2, case A", Printed.Computed, "2.03204, 0.81465", good.InputA!.Value, good.OutW!.Value / (3.7 * good.InputA.Value));
        PathPoint tired = StepUpPoint.At(3.7, 0.30, 8, Set(7));
        Printed.Agree("CO-2, case B", Printed.Computed, "2.45692, 2.96292, 0.67377", tired.InputA!.Value, tired.InputV!.Value, tired.OutW!.Value / (3.7 * tired.InputA.Value));
        // CO-3: a lower heater at the same set voltage asks for more. CO-4: the most power goes as 1/(a2 + R_s).
        Assert.True(StepUpPoint.At(3.7, 0.12, 7, Set(7)).InputA > good.InputA);
        Assert.Equal((ConverterLoss.MostW(3.7, 0.12, Loss) + 0.12) * 0.21, (ConverterLoss.MostW(3.7, 0.30, Loss) + 0.12) * 0.39, 1e-12);
    }

    [Fact]
    public void A_disabled_step_up_still_warms_the_heater()
    {
        double amps = StepUpPoint.PassThroughA(3.7, 0.12, 8, new StepUpModule(9, Loss) { DiodeV = 0.35 });
        Printed.Agree("BD-1", Printed.Computed, "0.41256, 1.3617", amps, amps * amps * 8);
    }

    private static readonly Gen<(double Open, double Source, double Heater, StepUpModule Module)> AnyStepUp = Gen.Select(
        Gen.Double[2.8, 8.4], Gen.Double[0.02, 0.4], Gen.Double[1, 30], Gen.Double[4, 24], Gen.Double[1, 12], Gen.Double[0.6, 0.95], Gen.Double[0, 2.7], Gen.Double[2, 40],
        (open, source, heater, set, limit, duty, lockout, lf) => (open, source, heater,
            new StepUpModule(set, Loss) { PeakLimitA = limit, MaxDuty = duty, LockoutV = lockout, InductanceTimesHz = lf, DiodeV = 0.4, ThroughOhm = 0.08 }));

    [Fact]
    public void Battery_power_is_source_loss_module_loss_and_heater() => AnyStepUp.Sample(any =>
    {
        PathPoint point = StepUpPoint.At(any.Open, any.Source, any.Heater, any.Module);
        if (point.InputA is not { } amps)
        {
            Assert.True(point.OutV is null && point.OutW is null && point.LossW is null && point.Duty is null && point.InputV is null);
            return;
        }

        Assert.Equal(any.Open * amps, (amps * amps * any.Source) + point.LossW!.Value + point.OutW!.Value, 1e-9 * any.Open * amps);
        Assert.Equal(point.OutW.Value, point.OutV!.Value * point.OutV.Value / any.Heater, 1e-9 * point.OutW.Value);
    }, iter: 2000);

    [Fact]
    public void No_point_passes_any_of_its_limits() => AnyStepUp.Sample(any =>
    {
        PathPoint point = StepUpPoint.At(any.Open, any.Source, any.Heater, any.Module);
        if (point.InputA is not { } amps || point.Region == PathRegion.PassThrough)
        {
            return;
        }

        Assert.True(point.OutV <= any.Module.SetV * (1 + 1e-9));
        Assert.True(point.Duty <= any.Module.MaxDuty + 1e-9);
        Assert.True(point.InputV >= any.Module.LockoutV - 1e-9);
        double ripple = point.InputV!.Value * Math.Max(0, point.Duty!.Value) / any.Module.InductanceTimesHz;
        Assert.True(amps + (ripple / 2) <= any.Module.PeakLimitA * (1 + 1e-9));
        Assert.True(point.Region != PathRegion.Regulated || Math.Abs(point.OutV!.Value - any.Module.SetV) < 1e-9 * any.Module.SetV);
    }, iter: 2000);

    [Fact]
    public void The_point_is_where_a_slow_ramp_of_the_current_stops() => AnyStepUp.Sample(any =>
    {
        // Second method: raise the input current in small steps and stop at the first limit met; no closed form, no halving.
        PathPoint point = StepUpPoint.At(any.Open, any.Source, any.Heater, any.Module);
        if (point.Region is PathRegion.PassThrough or PathRegion.LockedOut)
        {
            return;
        }

        const double step = 1e-3;
        for (double amps = 2 * Loss.FixedW / (any.Open - Loss.DropV); ; amps += step)
        {
            double inV = any.Open - (amps * any.Source);
            double outW = (inV * amps) - Loss.FixedW - (Loss.DropV * amps) - (Loss.SlopeOhm * amps * amps);
            double outV = Math.Sqrt(Math.Max(0, outW) * any.Heater);
            double duty = 1 - (outV / (any.Heater * amps));
            PathRegion? met = inV < any.Module.LockoutV ? PathRegion.Hiccup
                : outV > any.Module.SetV ? PathRegion.Regulated
                : duty > any.Module.MaxDuty ? PathRegion.DutyLimited
                : amps + (inV * Math.Max(0, duty) / any.Module.InductanceTimesHz / 2) > any.Module.PeakLimitA ? PathRegion.CurrentLimited : null;
            if (met is not { } region)
            {
                continue;
            }

            // Two limits within one step of each other may be met in either order.
            Assert.True(point.InputA is null ? region == PathRegion.Hiccup : Math.Abs(amps - point.InputA.Value) <= 2 * step, $"{region} at {amps}, answered {point}");
            Assert.True(region == point.Region || point.InputA is not null);
            return;
        }
    }, iter: 300);

    [Fact]
    public void Without_loss_source_resistance_and_limits_the_set_power_is_drawn() => Gen.Select(Gen.Double[3, 8], Gen.Double[9, 24], Gen.Double[2, 30]).Sample((open, set, heater) =>
    {
        PathPoint point = StepUpPoint.At(open, 0, heater, new StepUpModule(set, default));
        Assert.Equal(PathRegion.Regulated, point.Region);
        Assert.Equal(set * set / heater / open, point.InputA!.Value, 1e-9 * point.InputA.Value);
        Assert.Equal(1 - (open / set), point.Duty!.Value, 1e-9);
    });

    [Fact]
    public void A_step_down_knows_its_loss_first()
    {
        // By hand: 5 V on 2.5 Ω: 2 A, 10 W, loss 0.05 + 0.2 + 0.2 = 0.45 W; 10.45 W from 7.4 V through 0.2 Ω: 2·10.45/(7.4 + √(54.76 − 8.36)) = 20.9/14.211755 = 1.470614 A.
        PathPoint point = StepDownPoint.At(7.4, 0.2, 5, 2.5);
        Assert.Equal(PathRegion.Regulated, point.Region);
        Assert.Equal(1.470614, point.InputA!.Value, 5e-7);
        Assert.Equal(0.45, point.LossW!.Value, 1e-12);
    }

    [Fact]
    public void A_step_down_names_its_limits_too()
    {
        var module = new StepDownModule(5, new(0.05, 0.1, 0.05));
        Assert.Equal(PathRegion.CurrentLimited, StepDownPoint.At(7.4, 0.2, 2.5, module with { LimitA = 1.5 }).Region);
        PathPoint dropped = StepDownPoint.At(4.9, 0.2, 2.5, module);
        Assert.Equal(PathRegion.DutyLimited, dropped.Region);
        Assert.True(dropped.OutV < 4.9);
        Assert.Equal(1, dropped.Duty!.Value, 1e-12);
        Assert.Equal(PathRegion.Hiccup, StepDownPoint.At(7.4, 1.2, 2.5, module with { LockoutV = 6 }).Region);
        Assert.Equal(PathRegion.LockedOut, StepDownPoint.At(5.9, 0.2, 2.5, module with { LockoutV = 6 }).Region);
        // A heater below the source resistance: the loop runs through the fold to full duty, more battery heat than heater heat.
        PathPoint folded = StepDownPoint.At(7.4, 3, 1, module);
        Assert.Equal(PathRegion.DutyLimited, folded.Region);
        Assert.True(folded.BeyondFold);
    }

    [Fact]
    public void Battery_power_of_a_step_down_adds_up() => Gen.Select(Gen.Double[4, 25], Gen.Double[0, 0.8], Gen.Double[0.3, 20], Gen.Double[2, 20], Gen.Double[0.5, 6], Gen.Double[0.6, 1], Gen.Double[0, 6])
        .Sample((open, source, heater, set, limit, duty, lockout) =>
        {
            PathPoint point = StepDownPoint.At(open, source, heater, new StepDownModule(set, new(0.05, 0.1, 0.05)) { LimitA = limit, MaxDuty = duty, LockoutV = lockout });
            if (point.InputA is not { } amps)
            {
                return;
            }

            Assert.Equal(open * amps, (amps * amps * source) + point.LossW!.Value + point.OutW!.Value, 1e-9 * open * Math.Max(amps, 1));
            Assert.True(point.OutV <= set * (1 + 1e-9));
            Assert.True(point.OutV / heater <= limit * (1 + 1e-9));
            Assert.True(point.InputV >= lockout - 1e-9);
        }, iter: 2000);

    [Fact]
    public void Readings_tell_the_state_of_a_module()
    {
        Assert.Equal(PathSign.Holds, PathDiagnosis.Of(8.9, 9, 3, 4));
        Assert.Equal(PathSign.NearFold, PathDiagnosis.Of(7.4, 12, 3.5, 4.49));
        Assert.Equal(PathSign.ModuleLimit, PathDiagnosis.Of(7.4, 12, 2.0, 4.49));
        Assert.True(PathDiagnosis.SameLimit(2.02, 2.0));
        Assert.False(PathDiagnosis.SameLimit(2.2, 2.0));
        Assert.Equal([StepMode.Up, StepMode.Between, StepMode.Down], ((double[])[4, 4.8, 6]).Select(inV => PathDiagnosis.ModeOf(inV, 5)));
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("MaxDuty", () => Set(9) with { MaxDuty = 1.2 });
        Printed.Refuses("LockoutV", () => Set(9) with { LockoutV = -1 });
        Printed.Refuses("PeakLimitA", () => Set(9) with { PeakLimitA = 0 });
        Printed.Refuses("SetV", () => Set(0));
        Printed.Refuses("heaterOhm", () => StepUpPoint.At(3.7, 0.1, -8, Set(9)));
        Printed.Refuses("sourceOhm", () => StepUpPoint.At(3.7, -0.1, 8, Set(9)));
        Printed.Refuses("openV", () => StepDownPoint.At(0, 0.1, 5, 8));
        Printed.Refuses("MaxDuty", () => StepDownPoint.At(7.4, 0.1, 5, 8, maxDuty: 0));
    }
}
