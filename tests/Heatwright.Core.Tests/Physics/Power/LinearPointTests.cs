using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>A linear regulator by Kirchhoff's laws, by hand: 3.3 V, 0.2 V of drop-out, 0.1 A for itself, source 0.5 Ω.</summary>
public class LinearPointTests
{
    private static readonly LinearModule Module = new(3.3, 0.2) { QuiescentA = 0.1 };

    private static PathPoint Solved(double openV, LoadLaw load, LinearModule module, double sourceOhm = 0.5) => LinearPoint.Solve(openV, sourceOhm, load, module).Boxed;

    private static void Numbers(PathPoint point, PathRegion region, params double[] expected)
    {
        Assert.Equal(region, point.Region);
        double?[] worked = [point.InputA, point.InputV, point.OutV, point.OutW, point.LossW, point.Duty];
        Assert.All(expected.Index(), each => Assert.Equal(each.Item, worked[each.Index]!.Value, 2e-6));
    }

    [Fact]
    public void It_holds_its_volts_and_burns_the_rest()
    {
        // 5 − 0.5·1.1 = 4.45 V; (4.45 − 3.3)·1 + 4.45·0.1 W.
        Numbers(Solved(5, LoadLaw.Ohms(3.3), Module), PathRegion.Regulated, 1.1, 4.45, 3.3, 3.3, 1.595, 3.3 / 4.45);
        Numbers(Solved(5, LoadLaw.Ohms(3.3), Module with { LimitA = 1 }), PathRegion.Regulated, 1.1, 4.45, 3.3);
        Numbers(Solved(5, LoadLaw.Watts(3.3), Module), PathRegion.Regulated, 1.1, 4.45, 3.3, 3.3);
    }

    [Fact]
    public void Its_current_limit_lowers_the_volts()
    {
        // 0.5 A: 1.65 V; input 5 − 0.3; loss 0.5·3.05 + 0.1·4.7.
        Numbers(Solved(5, LoadLaw.Ohms(3.3), Module with { LimitA = 0.5 }), PathRegion.CurrentLimited, 0.6, 4.7, 1.65, 0.825, 1.995, 1.65 / 4.7);
        Assert.Equal(PathRegion.SourceLimited, Solved(5, LoadLaw.Amps(1), Module with { LimitA = 0.99 }).Region);    // no volts make it draw less
        Assert.Equal(PathRegion.SourceLimited, Solved(5, LoadLaw.Watts(3.3), Module with { LimitA = 0.9 }).Region);  // less volts, more current
        Numbers(Solved(5, LoadLaw.Amps(1), Module with { LimitA = 1 }), PathRegion.Regulated, 1.1, 4.45, 3.3);
    }

    [Fact]
    public void Below_its_drop_out_the_output_follows_the_input()
    {
        // 3.6 − 0.05 − 0.2 = 3.35 V through 3.8 Ω: 0.8815789 A.
        Numbers(Solved(3.6, LoadLaw.Ohms(3.3), Module), PathRegion.DutyLimited, 0.9815789, 3.1092105, 2.9092105, 2.5646988, 0.4872367, 2.9092105 / 3.1092105);
        // 0.9 A would be 2.97 V, which leaves less than the drop-out of 3.1 V; 0.85 A are 2.805 V of 3.125 V.
        Numbers(Solved(3.6, LoadLaw.Ohms(3.3), Module with { LimitA = 0.9 }), PathRegion.DutyLimited, 0.9815789, 3.1092105, 2.9092105);
        Numbers(Solved(3.6, LoadLaw.Ohms(3.3), Module with { LimitA = 0.85 }), PathRegion.CurrentLimited, 0.95, 3.125, 2.805);
    }

    [Fact]
    public void Input_exactly_a_drop_out_above_is_enough()
    {
        // 4 V behind 0.5 Ω at 1 A: 3.5 V, a drop-out of 0.5 V above 3 V.
        LinearModule exact = new(3, 0.5);
        Numbers(Solved(4, LoadLaw.Ohms(3), exact), PathRegion.Regulated, 1, 3.5, 3, 3, 0.5, 3 / 3.5);
        Assert.Equal(PathRegion.DutyLimited, Solved(3.99, LoadLaw.Ohms(3), exact).Region);
    }

    [Fact]
    public void Less_than_a_volt_is_still_an_output_and_nothing_is_none()
    {
        // 0.9 − 0.05 − 0.2 = 0.65 V through 3.8 Ω.
        Numbers(Solved(0.9, LoadLaw.Ohms(3.3), Module), PathRegion.DutyLimited, 0.1 + (0.65 / 3.8), 0.2 + (0.65 * 3.3 / 3.8), 0.65 * 3.3 / 3.8);
        Assert.Equal(PathRegion.SourceLimited, Solved(0.25, LoadLaw.Ohms(3.3), Module).Region); // 0.25 − 0.05 − 0.2 = 0
        Assert.Equal(PathRegion.SourceLimited, Solved(0.1, LoadLaw.Ohms(3.3), Module).Region);
        Assert.Equal(PathRegion.SourceLimited, Solved(2, LoadLaw.Amps(5), Module).Region);      // 5 A through 0.5 Ω take more than 2 V
    }

    [Fact]
    public void What_the_battery_gives_is_lost_or_in_the_load() => Gen.Select(Gen.Double[0.5, 9], Gen.Double[0, 0.8], Gen.Double[1, 50], Gen.Double[0.2, 3], Gen.Double[0, 0.05]).Sample((open, source, ohm, limit, own) =>
    {
        LinearModule module = new(3.3, 0.3) { QuiescentA = own, LimitA = limit };
        PathPoint point = Solved(open, LoadLaw.Ohms(ohm), module, source);
        PathPoint table = Solved(open, LoadLaw.Of(new VoltsAmpsTable([20], [20 / ohm])), module, source);
        Assert.Equal(point.Region, table.Region);
        if (point.InputA is { } amps)
        {
            Assert.Equal(open * amps, (amps * amps * source) + point.OutW!.Value + point.LossW!.Value, 1e-9 * (1 + (open * amps)));
            Assert.Equal(point.OutV!.Value, table.OutV!.Value, 1e-9);
            Assert.True(point.OutV <= 3.3 + 1e-9 && point.OutV / ohm <= limit + 1e-9 && point.InputV - point.OutV >= 0.3 - 1e-9);
        }
    }, iter: 500);

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("SetV", () => new LinearModule(0, 0.2));
        Printed.Refuses("DropoutV", () => new LinearModule(3.3, -0.2));
        Printed.Refuses("QuiescentA", () => Module with { QuiescentA = -0.1 });
        Printed.Refuses("LimitA", () => Module with { LimitA = 0 });
    }
}
