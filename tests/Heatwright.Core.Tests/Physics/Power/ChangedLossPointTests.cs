using CsCheck;
using Heatwright.Physics;
using Heatwright.Plant;

namespace Heatwright.Tests.Physics;

/// <summary>A step-up whose loss turns steeper above a current: its points against a bisection on the law itself, and by hand.</summary>
public class ChangedLossPointTests
{
    /// <summary>4 V without ohms, 5 W out, losses 0.1 W + 0.1 V·I and 0.5 V more above 1 A. By hand: below, (5 + 0.1)/(4 − 0.1) = 1.3077 A lie beyond the change; above, (5 + 0.1 − 0.5)/(4 − 0.6) = 1.352941 A,
    /// 0.1 + 0.135294 + 0.176471 = 0.411765 W lost, and 4 · 1.352941 − 5 W as much. With the change at 1.4 A it is 1.3077 A.</summary>
    [Fact]
    public void The_point_lies_on_the_side_of_its_current()
    {
        var above = StepUpPoint.At(4, 0, 20, Module(10, 0.1, 0.1, 0, 0.5, 1));
        Assert.Equal(PathRegion.Regulated, above.Region);
        Assert.Equal(1.352941, above.InputA!.Value, 1e-6);
        Assert.Equal(0.411765, above.LossW!.Value, 1e-6);
        Assert.Equal(5.1 / 3.9, StepUpPoint.At(4, 0, 20, Module(10, 0.1, 0.1, 0, 0.5, 1.4)).InputA!.Value, 1e-9);
    }

    /// <summary>4 V behind 0.5 Ω: by hand (4 − 0.1)/1 = 3.9 A up to a change there, (4 − 0.6)/1 = 3.4 A above one at 1 A, and the change itself where it lies between.</summary>
    [Theory, InlineData(5, 3.9), InlineData(1, 3.4), InlineData(3.6, 3.6)]
    public void The_most_output_lies_on_its_side_or_at_the_change(double changeA, double foldA) =>
        Assert.Equal(foldA, StepUpPoint.At(4, 0.5, 20, Module(10, 0.1, 0.1, 0, 0.5, changeA)).FoldA!.Value, 1e-9);

    [Fact]
    public void The_regulated_point_is_the_first_root_of_the_power_balance_or_there_is_none() => Gen.Select(
        Gen.Double[2.6, 8.4], Gen.Double[0.01, 0.5], Gen.Double[2, 40], Gen.Double[0, 0.3], Gen.Double[0, 0.4], Gen.Double[0, 0.2], Gen.Double[0, 1], Gen.Double[0.05, 8])
        .Sample((open, source, heater, own, perAmp, ohms, steeper, change) =>
        {
            const double set = 10;
            double Over(double a) => (a * (open - (a * source))) - own - (perAmp * a) - (ohms * a * a) - (steeper * Math.Max(0, a - change)) - (set * set / heater);
            (double low, double high) = (0, open / source);
            for (int i = 0; i < 300; i++) // the bow's top, by thirds
            {
                (low, high) = Over(low + ((high - low) / 3)) < Over(high - ((high - low) / 3)) ? (low + ((high - low) / 3), high) : (low, high - ((high - low) / 3));
            }

            double top = high;
            var point = StepUpPoint.At(open, source, heater, Module(set, own, perAmp, ohms, steeper, change));
            if (Math.Abs(Over(top)) < 1e-6)
            {
                return;
            }

            if (Over(top) < 0)
            {
                Assert.NotEqual(PathRegion.Regulated, point.Region);
                return;
            }

            (low, high) = (0, top);
            for (int i = 0; i < 200; i++)
            {
                (low, high) = Over((low + high) / 2) < 0 ? ((low + high) / 2, high) : (low, (low + high) / 2);
            }

            Assert.Equal(PathRegion.Regulated, point.Region);
            Assert.Equal(high, point.InputA!.Value, 1e-6 * high);
            Assert.Equal(own + (perAmp * high) + (ohms * high * high) + (steeper * Math.Max(0, high - change)), point.LossW!.Value, 1e-5);
            Assert.Equal(top, point.FoldA!.Value, 1e-4 * top);
        }, iter: 3000);

    /// <summary>At the largest duty amps out are (1 − D)·I: (1 − D)²·R·I² + losses = (V − R_s·I)·I, the largest root by bisection from far above.</summary>
    [Fact]
    public void The_largest_duty_holds_at_the_root_of_its_own_balance() => Gen.Select(
        Gen.Double[2.6, 4.2], Gen.Double[0.02, 0.3], Gen.Double[2, 20], Gen.Double[0.1, 1], Gen.Double[0.1, 6])
        .Sample((open, source, heater, steeper, change) =>
        {
            const double own = 0.1, perAmp = 0.2, ohms = 0.05, rest = 0.25;
            double Over(double a) => (a * (open - (a * source))) - own - (perAmp * a) - (ohms * a * a) - (steeper * Math.Max(0, a - change)) - (heater * rest * rest * a * a);
            (double low, double high) = (open / source, 0);
            for (double a = open / source; a > 0.1; a -= 0.01)
            {
                if (Over(a) > 0)
                {
                    (low, high) = (a, a + 0.01);
                    break;
                }
            }

            if (high == 0)
            {
                return;
            }

            for (int i = 0; i < 100; i++)
            {
                (low, high) = Over((low + high) / 2) > 0 ? ((low + high) / 2, high) : (low, (low + high) / 2);
            }

            var point = StepUpPoint.At(open, source, heater, Module(60, own, perAmp, ohms, steeper, change) with { MaxDuty = 1 - rest });
            Assert.Equal(PathRegion.DutyLimited, point.Region);
            Assert.Equal(low, point.InputA!.Value, 1e-6 * low);
        }, iter: 1000);

    /// <summary>The plant takes the same point, and its watts add up: pack volts times amps are load, loss of the path and loss in the loop.</summary>
    [Fact]
    public void The_plant_takes_the_point_and_its_watts_add_up()
    {
        var module = Module(10, 0.1, 0.1, 0.02, 0.5, 1);
        var on = PowerPath.Solve(4, 0.05, 0.1, new PathModel.StepUp(module), LoadLaw.Ohms(20));
        Assert.Equal(StepUpPoint.At(4, 0.15, 20, module).InputA!.Value, on.PackA, 1e-12);
        Assert.Equal(0.1 + (0.1 * on.PackA) + (0.02 * on.PackA * on.PackA) + (0.5 * (on.PackA - 1)), on.PathLossW, 1e-9);
        Assert.Equal(4 * on.PackA, on.LoadW + on.PathLossW + (0.15 * on.PackA * on.PackA), 1e-9);
    }

    private static StepUpModule Module(double set, double own, double perAmp, double ohms, double steeper, double change) => new(set, new(own, perAmp, ohms)) { SteeperV = steeper, ChangeA = change };
}
