using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Step-up points: where the input passes through, loads that are no resistance, and the limits, by hand. Points with heaters stand in OperatingPointTests.</summary>
public class StepUpPointTests
{
    private static readonly LossCoefficients Loss = new(0.12, 0.20, 0.09);

    private static StepUpModule Set(double volts) => new(volts, Loss) { DiodeV = 0.4, ThroughOhm = 0.1 };

    private static PathPoint Solved(double openV, double sourceOhm, LoadLaw load, StepUpModule module) => StepUpPoint.Solve(openV, sourceOhm, load, module, out _).Boxed;

    private static double LimitA(double openV, double sourceOhm, LoadLaw load, StepUpModule module)
    {
        StepUpPoint.Solve(openV, sourceOhm, load, module, out double limitA);
        return limitA;
    }

    private static void Numbers(PathPoint point, PathRegion region, params double[] expected)
    {
        Assert.Equal(region, point.Region);
        double?[] worked = [point.InputA, point.InputV, point.OutV, point.OutW, point.LossW, point.Duty];
        Assert.All(expected.Index(), each => Assert.Equal(each.Item, worked[each.Index]!.Value, 2e-6));
    }

    [Fact]
    public void What_passes_through_goes_through_diode_and_inductor()
    {
        // 8 V over 10.2 Ω: 0.7843137 A; 0.4 V and 0.1 Ω take 0.3137255 + 0.0615148 W.
        Numbers(StepUpPoint.At(8.4, 0.1, 10, Set(5)), PathRegion.PassThrough, 0.7843137, 8.3215686, 7.8431373, 6.1514802, 0.3752403, 0);
        // Half an ampere whatever the volts: 8 − 0.2·0.5.
        Numbers(Solved(8.4, 0.1, LoadLaw.Amps(0.5), Set(5)), PathRegion.PassThrough, 0.5, 8.35, 7.9, 3.95, 0.225, 0);
        // 4.4 V less 0.4 V is 4 V at no resistance: set to 4 V there is nothing to raise, set to 4.1 V there is.
        StepUpModule bare = new(4, default) { DiodeV = 0.4 };
        Numbers(StepUpPoint.At(4.4, 0, 10, bare), PathRegion.PassThrough, 0.4, 4.4, 4, 1.6, 0.16, 0);
        Assert.Equal(PathRegion.Regulated, StepUpPoint.At(4.4, 0, 10, new StepUpModule(4.1, default) { DiodeV = 0.4 }).Region);
        Assert.Equal(0.4, StepUpPoint.At(4.4, 0, 10, new StepUpModule(9, default) { DiodeV = 0.4 }).OffA!.Value, 1e-12);
        Assert.Equal(0, StepUpPoint.PassThroughA(0.3, 0.1, 8, Set(9)));
        Assert.False(StepUpPoint.At(8.4, 0.1, 10, Set(5)).BeyondFold);
    }

    [Fact]
    public void A_limit_met_before_the_loop_can_begin_lets_it_through()
    {
        // 3.3 V over 0.72 Ω: 4.5833 A at zero duty.
        Assert.Equal(PathRegion.PassThrough, StepUpPoint.At(3.7, 0.12, 0.5, Set(6) with { PeakLimitA = 4.58 }).Region);
        Assert.NotEqual(PathRegion.PassThrough, StepUpPoint.At(3.7, 0.12, 0.5, Set(6) with { PeakLimitA = 4.59 }).Region);
    }

    [Fact]
    public void It_starts_above_its_start_and_runs_above_its_lock_out()
    {
        Assert.Equal(PathRegion.LockedOut, StepUpPoint.At(2.5, 0.1, 8, Set(5) with { LockoutV = 2.5 }).Region);
        Assert.Equal(PathRegion.LockedOut, StepUpPoint.At(3, 0.1, 8, Set(5) with { LockoutV = 2, StartV = 3 }).Region);
        Assert.Equal(PathRegion.LockedOut, StepUpPoint.At(2.9, 0.1, 8, Set(5) with { LockoutV = 2.9, StartV = 1 }).Region);
        Assert.Equal(PathRegion.Regulated, StepUpPoint.At(3.01, 0.1, 20, Set(5) with { LockoutV = 2, StartV = 3 }).Region);
        Assert.Equal(double.PositiveInfinity, LimitA(2.5, 0.1, LoadLaw.Ohms(8), Set(5) with { LockoutV = 2.5, PeakLimitA = 3 }));
        // A lock-out far below a volt still ends a collapse: (3.7 − 0.5)/0.3 = 10.67 A.
        Assert.Equal(PathRegion.Hiccup, StepUpPoint.At(3.7, 0.3, 8, Set(12) with { LockoutV = 0.5 }).Region);
        Assert.Equal(PathRegion.SourceLimited, StepUpPoint.At(3.7, 0.3, 8, Set(12)).Region);
        Assert.Equal(3.2 / 0.3, LimitA(3.7, 0.3, LoadLaw.Ohms(8), Set(12) with { LockoutV = 0.5 }), 1e-12);
        Assert.Equal(PathRegion.SourceLimited, StepUpPoint.At(0.2, 0.01, 0.01, new StepUpModule(1, new(0, 0.2, 0))).Region); // all of it is the module's own drop
    }

    [Fact]
    public void A_constant_power_is_held_at_its_set_volts_or_collapses()
    {
        // 9 W: 18.24/(3.5 + √(12.25 − 0.84·9.12)) = 3.2328 A; checked by the power balance below.
        StepUpModule module = Set(9) with { PeakLimitA = 5, InductanceTimesHz = 4 };
        PathPoint held = Solved(3.7, 0.12, LoadLaw.Watts(9), module);
        Assert.Equal(PathRegion.Regulated, held.Region);
        Assert.Equal((9, 9), (held.OutV!.Value, held.OutW!.Value));
        double amps = held.InputA!.Value;
        Assert.Equal(3.7 * amps, 9 + 0.12 + (0.2 * amps) + (0.21 * amps * amps), 1e-12);
        Assert.Equal(1 - (1 / amps), held.Duty!.Value, 1e-12);
        Assert.Equal(5, LimitA(3.7, 0.12, LoadLaw.Watts(9), module));                               // the label: no ripple is taken off
        Assert.Equal(4, LimitA(3.7, 0.12, LoadLaw.Watts(9), module with { MaxDuty = 0.75 }), 1e-12);  // 1 A out over 0.25
        // 3.3 V behind 0.22 Ω give 9 W at (3.3 + √(10.89 − 7.92))/2 = 2.5117 V; behind a diode of 2 V they give nothing.
        Numbers(Solved(3.7, 0.12, LoadLaw.Watts(9), module with { PeakLimitA = 3 }), PathRegion.PassThrough, 9 / 2.5116844, 3.7 - (0.12 * 9 / 2.5116844), 2.5116844, 9);
        Assert.Equal(PathRegion.SourceLimited, Solved(3.7, 0.12, LoadLaw.Watts(9), module with { PeakLimitA = 3, DiodeV = 2 }).Region);
        Assert.Equal(PathRegion.SourceLimited, Solved(3.7, 0.12, LoadLaw.Watts(9), module with { MaxDuty = 0.5, DiodeV = 2 }).Region);
        Assert.Equal(PathRegion.SourceLimited, Solved(3.7, 0.12, LoadLaw.Watts(9), module with { PeakLimitA = 0.5, DiodeV = 2 }).Region);
        Assert.Equal(PathRegion.SourceLimited, Solved(3.7, 0.12, LoadLaw.Watts(30), module with { PeakLimitA = 50 }).Region);
    }

    [Fact]
    public void A_constant_current_meets_each_limit_where_charge_balance_says()
    {
        // Ideal module on a stiff 4 V: 1 A out. Duty 0.75: 4 A in, 16 V out. Peak limit 3 A: 12 V.
        StepUpModule ideal = new(20, default);
        Numbers(Solved(4, 0, LoadLaw.Amps(1), ideal), PathRegion.Regulated, 5, 4, 20, 20, 0, 0.8);
        Numbers(Solved(4, 0, LoadLaw.Amps(1), ideal with { MaxDuty = 0.75 }), PathRegion.DutyLimited, 4, 4, 16, 16, 0, 0.75);
        Numbers(Solved(4, 0, LoadLaw.Amps(1), ideal with { PeakLimitA = 3 }), PathRegion.CurrentLimited, 3, 4, 12, 12, 0, 2 / 3.0);
        // With ripple: I + 4·(1 − 1/I)/2/2 = 3, so I² − 2·I − 1 = 0 and I = 1 + √2.
        Numbers(Solved(4, 0, LoadLaw.Amps(1), ideal with { PeakLimitA = 3, InductanceTimesHz = 2 }), PathRegion.CurrentLimited, 1 + Math.Sqrt(2), 4, 4 * (1 + Math.Sqrt(2)));
        // A source of 0.5 Ω: at 3 A its input is 2.5 V, 7.5 W.
        Numbers(Solved(4, 0.5, LoadLaw.Amps(1), ideal with { PeakLimitA = 3 }), PathRegion.CurrentLimited, 3, 2.5, 7.5, 7.5, 0, 2 / 3.0);
        // Loss 0.12 + 0.2·I + 0.09·I² at 3 A: 1.53 W of 12 W.
        Numbers(Solved(4, 0, LoadLaw.Amps(1), new StepUpModule(20, Loss) { PeakLimitA = 3 }), PathRegion.CurrentLimited, 3, 4, 10.47, 10.47, 1.53, 2 / 3.0);
        Assert.Equal(PathRegion.DutyLimited, Solved(4, 0, LoadLaw.Amps(1), new StepUpModule(20, Loss) { MaxDuty = 2 / 3.0 }).Region);
    }

    [Fact]
    public void A_resistance_with_ripple_by_hand()
    {
        // Ideal, stiff 4 V, 4 Ω: V_out = 4·√I, duty 1 − 1/√I; at 2.25 A: 6 V, duty 1/3, ripple 4/3/L·f. With L·f = 2 the peak is 2.25 + 1/3.
        StepUpModule ideal = new(20, default) { PeakLimitA = 2.25 + (1 / 3.0), InductanceTimesHz = 2 };
        Numbers(StepUpPoint.At(4, 0, 4, ideal), PathRegion.CurrentLimited, 2.25, 4, 6, 9, 0, 1 / 3.0);
        // Duty 0.75 at most: 4 Ω/16 is what the source sees, 16 A.
        Numbers(StepUpPoint.At(4, 0, 4, new StepUpModule(20, default) { MaxDuty = 0.75 }), PathRegion.DutyLimited, 16, 4, 16, 64, 0, 0.75);
        Numbers(StepUpPoint.At(4, 0, 4, new StepUpModule(20, new(0, 0, 0)) { MaxDuty = 0.81 }), PathRegion.Regulated, 25, 4, 20, 100, 0, 0.8);
        Assert.Equal(25, LimitA(4, 0, LoadLaw.Ohms(4), new StepUpModule(20, default) { MaxDuty = 0.8 }), 1e-9);
        Assert.Equal(double.PositiveInfinity, LimitA(4, 0, LoadLaw.Ohms(4), new StepUpModule(20, default) { MaxDuty = 1 }));
        // 12 W without load: at half duty the source would give 4²/(4·(0.5 + 4·0.25)) = 2.7 W, so no current is the duty's, and nothing comes out.
        Assert.Equal(PathRegion.SourceLimited, StepUpPoint.At(4, 0, 4, new StepUpModule(20, new(12, 0, 0.5)) { MaxDuty = 0.5 }).Region);
        // Exactly one current left: E² = 4·B·a0, 4² = 4·1·4 at B = 4·0.25.
        Assert.Equal(2, LimitA(4, 0, LoadLaw.Ohms(4), new StepUpModule(20, new(4, 0, 0)) { MaxDuty = 0.5 }), 1e-9);
    }

    /// <summary>Second method: the same heater written as a straight table goes by halving instead of the closed form.</summary>
    [Fact]
    public void A_resistance_written_as_a_table_is_the_same_resistance() =>
        Gen.Select(Gen.Double[2.8, 8.4], Gen.Double[0.02, 0.4], Gen.Double[1, 30], Gen.Double[4, 24], Gen.Double[1, 12], Gen.Double[0.6, 0.95], Gen.Double[0, 2.7], Gen.Double[2, 40])
            .Sample((open, source, heater, set, limit, duty, lockout, lf) =>
            {
                StepUpModule module = Set(set) with { PeakLimitA = limit, MaxDuty = duty, LockoutV = lockout, InductanceTimesHz = lf };
                PathPoint ohms = StepUpPoint.At(open, source, heater, module);
                PathPoint table = Solved(open, source, LoadLaw.Of(new VoltsAmpsTable([1000], [1000 / heater])), module);
                Assert.Equal(ohms.InputA is null, table.InputA is null);
                Assert.Equal(ohms.Region, table.Region);
                if (ohms.InputA is { } amps)
                {
                    Assert.Equal(amps, table.InputA!.Value, 1e-6 * (1 + amps));
                    Assert.Equal(ohms.OutV!.Value, table.OutV!.Value, 1e-6 * (1 + set));
                    Assert.Equal(ohms.Duty!.Value, table.Duty!.Value, 1e-6);
                }
            }, iter: 1000);

    [Fact]
    public void Plain_numbers_make_the_same_module()
    {
        // RG-5 of OperatingPointTests: 5.5 A, 10.11039 V; with 10 µH at 1 MHz a ripple of 3.04·0.77/10 comes off the label.
        PathPoint point = StepUpPoint.At(3.7, 0.12, 12, 8, 0.12, 0.20, 0.09, limitA: 5.5, lockoutV: 2.5);
        Numbers(point, PathRegion.CurrentLimited, 5.5, 3.04);
        Assert.Equal(10.11039, point.OutV!.Value, 5e-6);
        PathPoint rippled = StepUpPoint.At(3.7, 0.12, 12, 8, 0.12, 0.20, 0.09, limitA: 5.5, inductanceH: 10e-6, switchingHz: 1e6);
        Assert.Equal(5.5, rippled.InputA!.Value + (rippled.InputV!.Value * rippled.Duty!.Value / 10 / 2), 1e-9);
        Assert.Equal((3.7 - 0.4) / 8.12, point.OffA!.Value, 1e-12);
        Assert.Equal(PathRegion.DutyLimited, StepUpPoint.At(3.7, 0.12, 12, 8, 0.12, 0.20, 0.09, maxDuty: 0.6).Region);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("openV", () => StepUpPoint.At(0, 0.1, 8, Set(9)));
        Printed.Refuses("heaterOhm", () => StepUpPoint.At(3.7, 0.1, 0, Set(9)));
        Printed.Refuses("InductanceTimesHz", () => Set(9) with { InductanceTimesHz = 0 });
        Printed.Refuses("StartV", () => Set(9) with { StartV = -1 });
        Printed.Refuses("DiodeV", () => Set(9) with { DiodeV = -0.1 });
        Printed.Refuses("ThroughOhm", () => Set(9) with { ThroughOhm = -0.1 });
    }
}
