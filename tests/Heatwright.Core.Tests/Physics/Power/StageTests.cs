using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Averaged step-up and step-down stages, [erickson-fpe] chapter 3 (formula from memory, the inductor-only case published in a worked problem).
/// Checks BK-1 and BO-1 to BO-9 computed by an independent script. Tolerance: half of the last printed digit.</summary>
public class StageTests
{
    private static readonly Gen<(double In, double Load, StageOhms Stage)> AnyStage =
        Gen.Select(Gen.Double[2.5, 20], Gen.Double[2, 50], Gen.Double[0.005, 0.3], Gen.Double[0.005, 0.1], Gen.Double[0, 0.1], Gen.Double[0, 0.7],
            (inV, load, inductor, onOhm, diodeOhm, diodeV) => (inV, load, new StageOhms(inductor, onOhm, diodeOhm, diodeV)));

    [Fact]
    public void Step_down_at_half_duty()
    {
        StagePoint point = Buck.At(7.4, 0.5, 2.2, 0.03, 0.03, 0.03);
        Printed.Agree("BK-1", Printed.Computed, "3.601770, 0.818584, 0.973451", point.OutV, point.InA, point.Efficiency);
        // Most at full duty, by hand: 7.4·2.2/2.26.
        Assert.Equal(7.4 * 2.2 / 2.26, Buck.MostV(7.4, 2.2, new(0.03, 0.03, 0.03)), 1e-12);
    }

    [Fact]
    public void Step_up_at_a_duty()
    {
        Printed.Agree("BO-1", Printed.Computed, "11.00826, 3.05785, 0.89256", Values(Boost.At(3.7, 0.7, 12, 0.11, 0.02, 0.02)));
        Printed.Agree("BO-2", Printed.Computed, "10.61690, 2.94914, 0.86083", Values(Boost.At(3.7, 0.7, 12, 0.11, 0.02, 0.05, 0.35)));
        Printed.Agree("BO-9", Printed.Computed, "10.96296, 13.7037, 0.29630", Values(Boost.At(3.7, 0.9, 8, 0.17, 0.02, 0.02)));
    }

    private static double[] Values(StagePoint point) => [point.OutV, point.InductorA, point.Efficiency];

    [Theory]
    [InlineData("BO-3", 0.02, 0, "0.732105, 3.73281, 0.86885")]
    [InlineData("BO-4", 0.05, 0.35, "0.743943, 3.90539, 0.83045")]
    public void Duty_for_a_wanted_voltage(string id, double diodeOhm, double diodeV, string printed)
    {
        var stage = new StageOhms(0.11, 0.02, diodeOhm, diodeV);
        double duty = Boost.DutyFor(3.7, 12, 12, stage)!.Value;
        StagePoint point = Boost.At(3.7, duty, 12, stage);
        Printed.Agree(id, Printed.Computed, printed, duty, point.InductorA, point.Efficiency);
        Assert.Equal(12, point.OutV, 1e-9);
    }

    [Fact]
    public void A_voltage_above_the_peak_gain_has_no_duty() => Assert.Null(Boost.DutyFor(3.7, 24, 12, new(0.11, 0.02, 0.02))); // BO-5

    [Fact]
    public void Gain_has_a_peak_and_falls_beyond_it()
    {
        Printed.Agree("BO-6", Printed.Computed, "4.80384, 0.89592", Boost.PeakGain(12, 0.11, 0.02, 0.02), Boost.PeakDuty(12, 0.11, 0.02));
        Printed.Agrees("BO-7", Printed.Computed, "4.74684", Boost.PeakGain(12, 0.11, 0.02, 0.05));
        Printed.Agree("BO-8", Printed.Computed, "3.24443, 0.84589", Boost.PeakGain(8, 0.17, 0.02, 0.02), Boost.PeakDuty(8, 0.17, 0.02));
        // BO-9 lies beyond the duty of BO-8.
        Assert.True(Boost.At(3.7, 0.9, 8, 0.17, 0.02, 0.02).OutV < Boost.At(3.7, 0.846, 8, 0.17, 0.02, 0.02).OutV);
        // Closed form R/(2√(aR) + b) of the source, written out: a second way to the same peak.
        Assert.Equal(12 / ((2 * Math.Sqrt(0.13 * 12)) + 0.03), Boost.PeakGain(12, 0.11, 0.02, 0.05), 1e-12);
        Assert.Equal(0.5, Boost.At(3.7, Boost.PeakDuty(12, 0.11, 0.02), 12, 0.11, 0.02, 0.02).Efficiency, 1e-12);
    }

    [Fact]
    public void The_textbook_table_is_met_row_by_row()
    {
        int rows = 0;
        foreach (string[] row in Printed.Rows("converters/boost_ccm_losses_textbook.csv"))
        {
            double[] x = [.. row.Take(7).Select(Printed.Number)];
            StagePoint point = Boost.At(x[0], x[1], x[2], x[3], x[4], diodeOhm: x[6], diodeV: x[5]);
            Printed.Agree($"row {rows + 1}", Printed.Computed, $"{row[7]}, {row[8]}", point.OutV, point.Efficiency);
            rows++;
        }

        Assert.Equal(33, rows);
    }

    [Fact]
    public void Input_power_is_output_power_plus_the_loss_in_every_part() => Gen.Select(AnyStage, Gen.Double[0.05, 0.95]).Sample((any, duty) =>
    {
        // Summed part by part: inductor, switch while on, rectifier while off.
        StagePoint up = Boost.At(any.In, duty, any.Load, any.Stage);
        double a = up.InductorA;
        double loss = a * ((a * (any.Stage.InductorOhm + (duty * any.Stage.SwitchOhm) + ((1 - duty) * any.Stage.DiodeOhm))) + ((1 - duty) * any.Stage.DiodeV));
        Assert.Equal(any.In * a, (up.OutV * up.OutV / any.Load) + loss, 1e-9 * any.In * a);

        StagePoint down = Buck.At(any.In, duty, any.Load, any.Stage);
        a = down.InductorA;
        loss = a * ((a * (any.Stage.InductorOhm + (duty * any.Stage.SwitchOhm) + ((1 - duty) * any.Stage.DiodeOhm))) + ((1 - duty) * any.Stage.DiodeV));
        Assert.Equal(any.In * down.InA, (down.OutV * down.OutV / any.Load) + loss, 1e-9 * any.In * any.In / any.Load);
    });

    [Fact]
    public void Without_losses_both_are_ideal_transformers() => Gen.Select(Gen.Double[1, 20], Gen.Double[0.05, 0.95], Gen.Double[1, 100]).Sample((inV, duty, load) =>
    {
        Assert.Equal(inV / (1 - duty), Boost.At(inV, duty, load).OutV, 1e-9 * inV / (1 - duty));
        Assert.Equal(inV * duty, Buck.At(inV, duty, load).OutV, 1e-9 * inV);
        Assert.Equal(1, Boost.At(inV, duty, load).Efficiency, 1e-9);
        Assert.Equal(1, Buck.At(inV, duty, load).Efficiency, 1e-9);
    });

    [Fact]
    public void The_duty_found_gives_the_voltage_wanted() => Gen.Select(AnyStage, Gen.Double[0.02, 0.8]).Sample((any, duty) =>
    {
        double outV = Boost.At(any.In, duty, any.Load, any.Stage).OutV;
        double? found = Boost.DutyFor(any.In, outV, any.Load, any.Stage);
        Assert.NotNull(found);
        Assert.True(found <= duty + 1e-9); // never the lossy side of the peak
        Assert.Equal(outV, Boost.At(any.In, found.Value, any.Load, any.Stage).OutV, 1e-9 * outV);

        outV = Buck.At(any.In, duty, any.Load, any.Stage).OutV;
        if (outV > 0)
        {
            Assert.Equal(duty, Buck.DutyFor(any.In, outV, any.Load, any.Stage)!.Value, 1e-9);
        }
    });

    [Fact]
    public void No_duty_beats_the_peak_gain() => Gen.Select(AnyStage, Gen.Double[0, 0.999]).Sample((any, duty) =>
    {
        var stage = new StageOhms(any.Stage.InductorOhm, any.Stage.SwitchOhm, any.Stage.DiodeOhm);
        double peak = Boost.PeakGain(any.Load, stage.InductorOhm, stage.SwitchOhm, stage.DiodeOhm);
        Assert.True(Boost.At(any.In, duty, any.Load, stage).OutV <= any.In * peak * (1 + 1e-12));
        Assert.Null(Boost.DutyFor(any.In, any.In * peak * 1.0001, any.Load, stage));
    });

    [Fact]
    public void A_step_down_cannot_step_up() => Assert.Null(Buck.DutyFor(5, 5.01, 10, default));

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("duty", () => Boost.At(3.7, 1.2, 12));
        Printed.Refuses("duty", () => Boost.At(3.7, 1, 12));
        Printed.Refuses("duty", () => Buck.At(3.7, -0.1, 12));
        Printed.Refuses("inductorOhm", () => Boost.At(3.7, 0.5, 12, -0.1));
        Printed.Refuses("diodeV", () => new StageOhms(0, 0, 0, -0.4));
        Printed.Refuses("loadOhm", () => Boost.DutyFor(3.7, 12, 0, default));
        Printed.Refuses("inV", () => Boost.At(-3.7, 0.5, 12));
        Printed.Refuses("inductorOhm", () => Boost.PeakGain(12, 0));
    }
}
