using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Step-down points by hand, each limit from both sides. Loss 0.05 W + 0.1 V·I + 0.05 Ω·I² unless a line says otherwise.</summary>
public class StepDownPointTests
{
    private static readonly StepDownModule Five = new(5, new(0.05, 0.1, 0.05));
    private static readonly StepDownModule Ideal = new(5, default);

    private static void Numbers(PathPoint point, PathRegion region, params double[] expected)
    {
        Assert.Equal(region, point.Region);
        double?[] worked = [point.InputA, point.InputV, point.OutV, point.OutW, point.LossW, point.Duty];
        Assert.All(expected.Index(), each => Assert.Equal(each.Item, worked[each.Index]!.Value, 2e-6));
    }

    private static PathPoint Solved(double openV, double sourceOhm, LoadLaw load, StepDownModule module) => StepDownPoint.Solve(openV, sourceOhm, load, module).Boxed;

    [Fact]
    public void Its_own_current_limit_holds_the_output()
    {
        // 1.5 A on 2.5 Ω: 3.75 V, 5.625 W; loss 0.05 + 0.15 + 0.1125; 2·5.9375/(7.4 + √(54.76 − 4.75)).
        Numbers(StepDownPoint.At(7.4, 0.2, 2.5, Five with { LimitA = 1.5 }), PathRegion.CurrentLimited, 0.8205628, 7.2358874, 3.75, 5.625, 0.3125, 0.5470419);
        Assert.Equal(PathRegion.Regulated, StepDownPoint.At(7.4, 0.2, 2.5, Five with { LimitA = 2 }).Region); // exactly what it needs
        Assert.Equal(1, StepDownPoint.At(7.4, 0.2, 2.5, Five with { LimitA = 2 }).Margin!.Value, 1e-12);
        Assert.Equal(1.25, StepDownPoint.At(7.4, 0.2, 5, 2.5, limitA: 2.5).Margin!.Value, 1e-12);
        Assert.Null(StepDownPoint.At(7.4, 0.2, 2.5, Five with { LimitA = 1.5 }).Margin);
    }

    [Fact]
    public void Its_largest_duty_holds_the_output()
    {
        // I = (4.8 + √(23.04 − 4·2.75·0.05))/(2·2.75); with a duty of 0.8: (3.82 + √(14.5924 − 4·2.678·0.05))/(2·2.678), the battery gives 0.8 of it.
        Numbers(StepDownPoint.At(4.9, 0.2, 2.5, Five), PathRegion.DutyLimited, 1.7349750, 4.5530050, 4.3374374, 7.5253453, 0.3740044, 1);
        Numbers(StepDownPoint.At(4.9, 0.2, 5, 2.5, maxDuty: 0.8), PathRegion.DutyLimited, 1.1305810, 4.6738838, 3.5330657, 4.9930213, 0.2911831, 0.8);
        // Regulated at 7.4 V: the duty limit of (7.3 + √(53.29 − 0.55))/5.5 = 2.6476784 A is the first to come.
        Assert.Equal(1.3238392, StepDownPoint.At(7.4, 0.2, 2.5, Five).Margin!.Value, 1e-6);
    }

    [Fact]
    public void The_lock_out_comes_first_where_it_lies_high()
    {
        // 7 V·0.4 V/0.2 Ω = 14 W at the lock-out; 2·13.95/(0.1 + √(0.01 + 4·2.55·13.95)) = 2.3194032 A, of the 2 A needed.
        Assert.Equal(1.1597016, StepDownPoint.At(7.4, 0.2, 5, 2.5, lockoutV: 7).Margin!.Value, 1e-6);
        Assert.Equal(PathRegion.Hiccup, StepDownPoint.At(7.4, 0.2, 2.5, Five with { LockoutV = 7.2 }).Region); // 7.2·0.2/0.2 = 7.2 W of the 10.45 W
        Assert.Equal(PathRegion.LockedOut, StepDownPoint.At(7.4, 0.2, 2.5, Five with { LockoutV = 7.4 }).Region);
        Assert.Null(StepDownPoint.At(7.4, 0.2, 2.5, Five with { LockoutV = 7.4 }).FoldA);
        // On a stiff source nothing sags.
        Assert.Equal(PathRegion.Regulated, StepDownPoint.At(7.4, 0, 2.5, Five with { LockoutV = 7.39 }).Region);
    }

    [Fact]
    public void Most_power_and_fold_current_are_the_sources()
    {
        PathPoint point = StepDownPoint.At(7.4, 0.2, 2.5, Five);
        Assert.Equal(18.5, point.FoldA!.Value, 1e-12);                              // 7.4/(2·0.2)
        double mostA = Math.Sqrt(point.MostW!.Value / 2.5);
        Assert.Equal(68.45, point.MostW.Value + Five.Loss.AtW(mostA), 1e-9);        // heater and loss together: 7.4²/(4·0.2)
        Assert.Equal(68.45, StepDownPoint.At(7.4, 0.2, 2.5, Ideal).MostW!.Value, 1e-9);
        // A loss without load above what the source can give leaves nothing: 4²/(4·1) = 4 W of 5 W.
        Assert.Equal(0, StepDownPoint.At(4, 1, 2.5, new StepDownModule(3, new(5, 0, 0))).MostW!.Value);
        Assert.Equal(0, StepDownPoint.At(4, 1, 2.5, new StepDownModule(3, new(4, 0, 0))).MostW!.Value);
        PathPoint stiff = StepDownPoint.At(7.4, 0, 2.5, Five);
        Assert.Equal((double.PositiveInfinity, double.PositiveInfinity), (stiff.FoldA!.Value, stiff.MostW!.Value));
        Assert.Equal(10.45 / 7.4, stiff.InputA!.Value, 1e-12);
    }

    [Fact]
    public void Past_the_fold_the_loop_runs_to_its_largest_duty()
    {
        // Ideal: 8/(1 + 0.5) A at full duty; at 0.8: 6.4/(0.5 + 0.64) = 5.6140351 A, the battery gives 4.4912281 A, more than the 4 A of its fold.
        Numbers(StepDownPoint.At(8, 1, 0.5, Ideal), PathRegion.DutyLimited, 16 / 3.0, 8 / 3.0, 8 / 3.0, 128 / 9.0, 0, 1);
        Numbers(StepDownPoint.At(8, 1, 0.5, Ideal with { MaxDuty = 0.8 }), PathRegion.DutyLimited, 4.4912281, 3.5087719, 2.8070175, 15.7586950, 0, 0.8);
        // With its loss: (6.3 + √(39.69 − 4·1.19·0.05))/2.38 = 5.2861692 A, loss 0.05 + 0.5286169 + 1.3971793.
        Numbers(StepDownPoint.At(8, 1, 0.5, Five with { MaxDuty = 0.8 }), PathRegion.DutyLimited, 4.2289354, 3.7710646, 2.6430846, 13.9717924, 1.9757962, 0.8);
        // 8/2 = 4 A leave 8 − 6 = 2 V: a lock-out exactly there stops it, one beneath does not.
        Assert.Equal(PathRegion.Hiccup, StepDownPoint.At(8, 1.5, 0.5, Ideal with { LockoutV = 2 }).Region);
        Numbers(StepDownPoint.At(8, 1.5, 0.5, Ideal with { LockoutV = 1.999 }), PathRegion.DutyLimited, 4, 2, 2, 8, 0, 1);
        Assert.True(StepDownPoint.At(8, 1.5, 0.5, Ideal).BeyondFold);
        // At the fold itself heater and source take the same power: 8²/(4·1) = 16 W, and it is not beyond it.
        PathPoint matched = StepDownPoint.At(8, 1, 1, Ideal);
        Numbers(matched, PathRegion.DutyLimited, 4, 4, 4, 16, 0, 1);
        Assert.False(matched.BeyondFold);
    }

    [Fact]
    public void A_source_that_cannot_even_feed_the_module_gives_no_point()
    {
        Assert.Equal(PathRegion.SourceLimited, StepDownPoint.At(0.05, 0.2, 2.5, Five).Region);                              // below its own drop
        Assert.Equal(PathRegion.SourceLimited, StepDownPoint.At(2, 0.2, 5, new StepDownModule(5, new(10, 0, 0))).Region);   // 10 W without load
        Assert.Null(StepDownPoint.At(0.05, 0.2, 2.5, Five).OutV);
        // drive² = 4·ohms·a0 exactly: 2² = 4·2·0.5, one point is left, 2/(2·2) = 0.5 A.
        Numbers(StepDownPoint.At(2, 0, 2, new StepDownModule(5, new(0.5, 0, 0))), PathRegion.DutyLimited, 0.5, 2, 1, 0.5, 0.5, 1);
    }

    [Fact]
    public void Loads_that_are_no_resistance_are_held_and_limited_too()
    {
        StepDownModule module = new(5, new(0.1, 0.2, 0.1));
        // 1 A at 5 V, loss 0.4 W: 10.8/(8 + √(64 − 10.8)).
        Numbers(Solved(8, 0.5, LoadLaw.Amps(1), module), PathRegion.Regulated, 0.7061670, 7.6469165, 5, 5, 0.4, 0.7061670);
        Numbers(Solved(8, 0.5, LoadLaw.Watts(5), module with { LimitA = 1 }), PathRegion.Regulated, 0.7061670, 7.6469165, 5, 5, 0.4, 0.7061670);
        Assert.Equal(PathRegion.SourceLimited, Solved(8, 0.5, LoadLaw.Amps(1), module with { LimitA = 0.8 }).Region); // no volts make it draw less
        // 0.5 A at 2 V to 2.5 A at 6 V: 1.5 A at 4 V; loss 0.1 + 0.3 + 0.225; 13.25/(8 + √(64 − 13.25)).
        LoadLaw table = LoadLaw.Of(new VoltsAmpsTable([2, 6], [0.5, 2.5]));
        Numbers(Solved(8, 0.5, table, module with { LimitA = 1.5 }), PathRegion.CurrentLimited, 0.8760966, 7.5619517, 4, 6, 0.625, 0.5840644);
        // Full duty from 5.2 V: 2I + 1 = 5 − 0.6·I − 0.1/I, so I = (4 + √(16 − 1.04))/5.2. At 0.9: (3.48 + √(12.1104 − 1.002))/5.01.
        Numbers(Solved(5.2, 0.5, table, module), PathRegion.DutyLimited, 1.5130415, 4.4434792, 4.0260830, 6.0916308, 0.6315378, 1);
        Numbers(Solved(5.2, 0.5, table, module with { MaxDuty = 0.9 }), PathRegion.DutyLimited, 1.2238790, 4.5880605, 3.7197311, 5.0583345, 0.5568966, 0.9);
        // 5 W at full duty from 4.5 V: V = 4.3 − 3/V − 0.02·V, so V = (4.3 + √(18.49 − 12.24))/2.04 = 10/3.
        Numbers(Solved(4.5, 0.5, LoadLaw.Watts(5), module), PathRegion.DutyLimited, 1.5, 3.75, 10 / 3.0, 5, 0.625, 1);
        Assert.Equal(PathRegion.SourceLimited, Solved(3, 0.5, LoadLaw.Watts(5), module).Region); // 3²/2 = 4.5 W at most
    }

    [Fact]
    public void Such_loads_meet_the_lock_out_at_the_input()
    {
        // 1.5 A at 5 V, ideal: 7.5 W from 8 V behind 0.5 Ω is 1 A at 7.5 V.
        Numbers(Solved(8, 0.5, LoadLaw.Amps(1.5), Ideal with { LockoutV = 7.49 }), PathRegion.Regulated, 1, 7.5, 5, 7.5, 0, 2 / 3.0);
        Assert.Equal(PathRegion.Hiccup, Solved(8, 0.5, LoadLaw.Amps(1.5), Ideal with { LockoutV = 7.5 }).Region);
        Assert.Equal(PathRegion.LockedOut, Solved(8, 0.5, LoadLaw.Amps(1.5), Ideal with { LockoutV = 8 }).Region);
        // A duty of exactly the largest is still regulated: 2 A at 5 V from a stiff 10 V is a duty of 0.5.
        Assert.Equal(PathRegion.Regulated, Solved(10, 0, LoadLaw.Amps(2), Ideal with { MaxDuty = 0.5 }).Region);
        Assert.Equal(PathRegion.DutyLimited, Solved(10, 0, LoadLaw.Of(new VoltsAmpsTable([10], [4])), Ideal with { MaxDuty = 0.49 }).Region);
    }

    /// <summary>By hand: 15/29 of 137/34 V less 0.1 V are 1.98414 V; (19 + 0.05 + 0.2675·0.38194)·I² − 1.98414·I + 0.05 = 0 has its larger root at (1.98414 + √(3.93681 − 3.83043))/38.3043 = 0.060314 A, 1.1460 V; the smaller one, 0.8225 V, is where the fixed loss takes all.</summary>
    [Fact]
    public void Where_the_fixed_loss_takes_nearly_all_the_table_still_meets_the_larger_root()
    {
        var module = new StepDownModule(9.9318, new(0.05, 0.1, 0.05)) { LimitA = 2.81, MaxDuty = 15.0 / 29 };
        var table = Solved(137.0 / 34, 0.381945, LoadLaw.Of(new VoltsAmpsTable([20], [20 / 19.0])), module);
        Assert.Equal(PathRegion.DutyLimited, table.Region);
        Assert.Equal(1.1460, table.OutV!.Value, 5e-4);
    }

    /// <summary>Second method: the same heater written as a straight table takes the other way through the solver.</summary>
    [Fact]
    public void A_resistance_written_as_a_table_is_the_same_resistance() =>
        Gen.Select(Gen.Double[4, 12], Gen.Double[0.05, 1], Gen.Double[0.3, 20], Gen.Double[2, 10], Gen.Double[0.5, 6], Gen.Double[0.5, 1], Gen.Double[0, 6])
            .Sample((open, source, heater, set, limit, duty, lockout) =>
            {
                var module = new StepDownModule(set, new(0.05, 0.1, 0.05)) { LimitA = limit, MaxDuty = duty, LockoutV = lockout };
                PathPoint ohms = StepDownPoint.At(open, source, heater, module);
                PathPoint table = Solved(open, source, LoadLaw.Of(new VoltsAmpsTable([20], [20 / heater])), module);
                Assert.Equal(ohms.InputA is null, table.InputA is null);
                if (ohms.InputA is { } amps)
                {
                    Assert.Equal(ohms.Region, table.Region);
                    Assert.Equal(amps, table.InputA!.Value, 1e-7 * (1 + amps));
                    Assert.Equal(ohms.OutV!.Value, table.OutV!.Value, 1e-7 * (1 + set));
                    Assert.Equal(ohms.LossW!.Value, table.LossW!.Value, 1e-7 * (1 + open));
                }
            }, iter: 1000);

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("openV", () => StepDownPoint.At(0, 0.2, 2.5, Five));
        Printed.Refuses("sourceOhm", () => StepDownPoint.At(7.4, -0.2, 2.5, Five));
        Printed.Refuses("heaterOhm", () => StepDownPoint.At(7.4, 0.2, 0, Five));
        Printed.Refuses("LimitA", () => Five with { LimitA = 0 });
        Printed.Refuses("LockoutV", () => Five with { LockoutV = -0.1 });
        Printed.Refuses("SetV", () => new StepDownModule(0, default));
    }
}
