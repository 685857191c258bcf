using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Direct and linear paths, the switch current limit of a step-up, loss coefficients and the fold of a source. Values computed by an
/// independent script unless a line says otherwise. Tolerance: half of the last printed digit.</summary>
public class PathLawTests
{
    private static readonly LossCoefficients Small = new(0.10, 0.15, 0.06);
    private static readonly LossCoefficients Tired = new(0.12, 0.20, 0.09);

    [Fact]
    public void A_linear_regulator_turns_the_rest_to_heat() =>
        Printed.Agree("LN-1", Printed.Computed, "78.5714, 45.00", DirectDrive.LinearEfficiency(4.2, 3.3) * 100, DirectDrive.LinearHeatW(4.2, 3.3, 0.050) * 1000);

    [Fact]
    public void A_heater_straight_on_the_pack()
    {
        Printed.Agrees("DR-1", Printed.Computed, "3.01055", DirectDrive.HeaterW(3.7, 2.2, 0.25, 0.6));
        Printed.Agree("DR-2", Printed.Computed, "1.68182, 6.22273", DirectDrive.CurrentA(3.7, 2.2), DirectDrive.HeaterW(3.7, 2.2));
        Printed.Agree("DR-3", Printed.Computed, "2.09091, 9.61818", DirectDrive.CurrentA(4.6, 2.2), DirectDrive.HeaterW(4.6, 2.2));
    }

    /// <summary>Common practice, no source: facts of the trade that any bench confirms. By Ohm's law exact.</summary>
    [Fact]
    public void A_two_and_a_half_ohm_heater_on_four_and_five_volts()
    {
        Printed.Agree("2.5 Ω at 4 V", Printed.Practice, "1.6, 6.4", DirectDrive.CurrentA(4, 2.5), DirectDrive.HeaterW(4, 2.5));
        Printed.Agree("2.5 Ω at 5 V", Printed.Practice, "2, 10", DirectDrive.CurrentA(5, 2.5), DirectDrive.HeaterW(5, 2.5));
    }

    /// <summary>Common practice, no source: a 0.55 Ah cell feeding that heater. By hand: 0.55/1.6 h = 20.6 min; 1.6/0.55 = 2.9.</summary>
    [Fact]
    public void A_small_cell_feeds_it_for_twenty_minutes_at_nearly_three_times_its_capacity()
    {
        double minutes = RunTime.AtCurrentS(0.55 * 3600, DirectDrive.CurrentA(4, 2.5)) / 60;
        Printed.Agrees("0.55 Ah at 1.6 A", Printed.Practice, "20", minutes, within: 1); // 'about'
        Assert.True(minutes < 30);
        Printed.Agrees("1.6 A from 0.55 Ah", Printed.Practice, "2.9", Protection.PerHour(1.6, 0.55 * 3600));
    }

    [Theory]
    [InlineData("SL-1", 4, 3.6, 12, 10e-6, 400e3, "0.7360, 0.6624, 0.96856, 11.6228")]
    [InlineData("SL-2", 4, 3.0, 12, 10e-6, 400e3, "0.7800, 0.5850, 0.81565, 9.7878")]
    [InlineData("SL-4", 2, 3.6, 9, 4.7e-6, 1.2e6, "0.6480, 0.41362, 0.63120, 5.6808")]
    public void The_label_amperes_are_switch_amperes(string id, double limit, double inV, double outV, double henry, double hertz, string printed)
    {
        StepUpLimit most = SwitchCurrentLimit.StepUp(limit, inV, outV, 0.88, henry, hertz);
        Printed.Agree(id, Printed.Computed, printed, most.Duty, most.RippleA, most.MostOutA, most.MostOutW);
        // The equivalent form: (I_lim − ΔI/2)·η·V_in/V_out, efficiency counted once.
        Assert.Equal((limit - (most.RippleA / 2)) * 0.88 * inV / outV, most.MostOutA, 1e-12);
    }

    [Fact]
    public void Efficiency_is_not_counted_twice()
    {
        // SL-3: 0.85234 A is the wrong answer that double counting gives.
        double right = SwitchCurrentLimit.StepUp(4, 3.6, 12, 0.88, 10e-6, 400e3).MostOutA;
        Printed.Agrees("SL-3 (wrong answer)", Printed.Computed, "0.85234", right * 0.88);
        Assert.True(right > 0.9);
    }

    [Fact]
    public void Of_an_inverting_stage_the_switch_carries_both_currents() =>
        // By hand: (4 − 0.3)·3.6·0.8/(3.6·0.8 + 12) = 3.7·2.88/14.88.
        Assert.Equal(3.7 * 2.88 / 14.88, SwitchCurrentLimit.InvertingMostA(4, 0.6, 3.6, 12, 0.8), 1e-12);

    private static readonly double[][] Readings =
        [[3.90, 0.400, 9.00, 0.1545], [3.80, 0.900, 9.00, 0.3485], [3.70, 1.500, 9.00, 0.5656], [3.60, 2.200, 9.00, 0.8000], [3.50, 3.000, 9.00, 1.0456]];

    private static LossFit FitReadings(double ammeter) => ConverterLossFit.Fit([.. Readings.Select(r => r[1] * ammeter)],
        [.. Readings.Select(r => ConverterLoss.ReadLossW(r[0], r[1] * ammeter, r[2], r[3]))]);

    [Fact]
    public void Five_readings_give_the_three_coefficients()
    {
        Printed.Agree("LM-1 losses", Printed.Computed, "0.16950, 0.28350, 0.45960, 0.72000, 1.08960", [.. Readings.Select(r => ConverterLoss.ReadLossW(r[0], r[1], r[2], r[3]))]);
        LossFit fit = FitReadings(1);
        Printed.Agree("LM-1", Printed.Computed, "0.100088, 0.149609, 0.060076, 0.103",
            fit.Loss.FixedW, fit.Loss.DropV, fit.Loss.SlopeOhm, fit.ResidualsW.Max(Math.Abs) * 1000);
        Assert.True(fit.EnoughReadings);
    }

    [Fact]
    public void One_percent_of_an_ammeter_becomes_a_quarter_of_the_drop()
    {
        LossFit fit = FitReadings(1.01);
        Printed.Agree("LM-2", Printed.Computed, "0.10050, 0.18632, 0.05768, 36.7",
            fit.Loss.FixedW, fit.Loss.DropV, fit.Loss.SlopeOhm, (fit.Loss.DropV - FitReadings(1).Loss.DropV) * 1000);
    }

    [Fact]
    public void Input_current_efficiency_and_fold_follow_from_them()
    {
        double stiff = ConverterLoss.InputA(3.7, 0, Small, 9)!.Value;
        Printed.Agree("LM-3", Printed.Computed, "2.685249, 0.905850", stiff, 9 / (3.7 * stiff));
        double amps = ConverterLoss.InputA(3.7, 0.12, Small, 9)!.Value;
        double inV = 3.7 - (0.12 * amps);
        Printed.Agree("LM-4", Printed.Computed, "3.028399, 3.336592, 0.803207, 0.890689", amps, inV, 9 / (3.7 * amps), 9 / (inV * amps));
        Printed.Agree("LM-5", Printed.Computed, "17.40347, 9.86111", ConverterLoss.FoldW(3.7, 0.12, 0.10, 0.15, 0.06), ConverterLoss.FoldA(3.7, 0.12, Small));
        Assert.Null(ConverterLoss.InputA(3.7, 0.12, Small, 18));
        Printed.Agree("LM-6", Printed.Computed, "1.29099, 0.917589", ConverterLoss.BestA(Small), ConverterLoss.BestEfficiency(Small, 3.7));
        double idle = ConverterLoss.InputA(3.7, 0, Small, 0.05)!.Value;
        Printed.Agree("LM-7", Printed.Computed, "0.042284, 0.31959", idle, 0.05 / (3.7 * idle));
    }

    [Fact]
    public void A_regulated_load_folds_its_source()
    {
        Printed.Agree("FO-1", Printed.Computed, "22.81667, 16.8000", SourceFold.MostW(3.7, 0.15), SourceFold.MostW(3.7, 0.15, 2.8));
        double amps = SourceFold.CurrentA(3.7, 0.15, 12)!.Value;
        double second = SourceFold.UnstableA(3.7, 0.15, 12)!.Value;
        Printed.Agree("FO-2", Printed.Computed, "3.841507, 3.123774, 20.82516, 0.57623", amps, 3.7 - (0.15 * amps), second, 3.7 - (0.15 * second));
        Assert.Null(SourceFold.CurrentA(3.7, 0.15, 22.9));
        Assert.Null(SourceFold.UnstableA(3.7, 0.15, 22.9));
        Assert.Equal(SourceFold.MostW(3.7, 0.15), SourceFold.MostW(3.7, 0.15, 1.8), 1e-12); // lock-out below half of the rested voltage is never met
    }

    [Fact]
    public void Input_current_climbs_as_the_cell_empties()
    {
        Printed.Agree("FO-3", Printed.Computed, "3.00365, 3.72313, 4.87337",
            [.. ((double[])[4.2, 3.7, 3.3]).Select(open => ConverterLoss.InputA(open, 0.12, Tired, 10)!.Value)]);
        Assert.Null(ConverterLoss.InputA(3.0, 0.12, Tired, 10));
        double cold = 0.06 + (0.06 * Arrhenius.FactorAtC(0, 20e3));
        Printed.Agree("FO-4", Printed.Computed, "10.9939, 14.4633", ConverterLoss.MostW(3.7, cold, Tired), ConverterLoss.MostW(3.7, 0.12, Tired));
    }

    [Fact]
    public void Three_arrangements_for_the_same_ten_watts()
    {
        double amps = ConverterLoss.InputA(3.7, 0.12, Tired, 10)!.Value;
        Printed.Agree("CA-1", Printed.Computed, "3.72313, 0.72592", amps, 10 / (3.7 * amps));
        Arrangement("CA-2", "5.02637, 1.41050, 0.95807, 6.5741, 12.8853", 2, 0.22);
        Arrangement("CA-3", "1.07069, 3.05610, 0.88436, 6.5741, 12.8853", 1, 0.14);

        static void Arrangement(string id, string printed, int series, double ohm)
        {
            double heater = DirectDrive.HeaterOhmFor(3.7 * series, ohm, 10)!.Value;
            Printed.Agree(id, Printed.Computed, printed, heater, DirectDrive.CurrentA(3.7 * series, heater, ohm), DirectDrive.Efficiency(heater, ohm),
                DirectDrive.HeaterW(3.0 * series, heater, ohm), DirectDrive.HeaterW(4.2 * series, heater, ohm));
        }
    }

    [Fact]
    public void Power_in_is_power_out_plus_loss() => Gen.Select(Gen.Double[2.5, 20], Gen.Double[0, 0.3], Gen.Double[0, 0.3], Gen.Double[0, 0.5], Gen.Double[0, 0.2], Gen.Double[0.01, 30])
        .Sample((open, source, fixedW, drop, slope, watts) =>
        {
            var loss = new LossCoefficients(fixedW, drop, slope);
            if (ConverterLoss.InputA(open, source, loss, watts) is { } amps)
            {
                Assert.Equal(open * amps, watts + loss.AtW(amps) + (source * amps * amps), 1e-9 * open * amps);
                Assert.True(amps <= ConverterLoss.FoldA(open, source, loss) * (1 + 1e-12));
                Assert.True(watts <= ConverterLoss.MostW(open, source, loss) * (1 + 1e-12));
            }
            else
            {
                Assert.True(watts > ConverterLoss.MostW(open, source, loss) * (1 - 1e-12));
            }
        });

    [Fact]
    public void Both_currents_of_a_source_give_the_same_power() => Gen.Select(Gen.Double[2.5, 20], Gen.Double[0.01, 0.5], Gen.Double[0.02, 0.98]).Sample((open, ohm, share) =>
    {
        double watts = share * SourceFold.MostW(open, ohm);
        double low = SourceFold.CurrentA(open, ohm, watts)!.Value;
        double high = SourceFold.UnstableA(open, ohm, watts)!.Value;
        Assert.Equal(watts, low * (open - (ohm * low)), 1e-9 * watts);
        Assert.Equal(watts, high * (open - (ohm * high)), 1e-7 * watts);
        Assert.True(low < high);
    });

    [Fact]
    public void Coefficients_that_made_the_readings_come_back() => Gen.Select(Gen.Double[0, 0.3], Gen.Double[0, 0.5], Gen.Double[0, 0.2]).Sample((fixedW, drop, slope) =>
    {
        var loss = new LossCoefficients(fixedW, drop, slope);
        double[] amps = [0.3, 0.6, 1.2, 2, 3];
        LossFit fit = ConverterLossFit.Fit(amps, [.. amps.Select(loss.AtW)], [0.01, 0.01, 0.02, 0.03, 0.05]);
        Assert.Equal(fixedW, fit.Loss.FixedW, 1e-9);
        Assert.Equal(drop, fit.Loss.DropV, 1e-9);
        Assert.Equal(slope, fit.Loss.SlopeOhm, 1e-9);
    });

    [Fact]
    public void No_coefficient_is_ever_negative_and_no_neighbour_fits_better() => Gen.Select(Gen.Double[-0.2, 1].Array[5], Gen.Double[-1, 1].Array[3]).Sample((losses, nudge) =>
    {
        // Second way to 'best': no allowed step away lowers the squares.
        double[] amps = [0.4, 0.9, 1.5, 2.2, 3.0];
        LossFit fit = ConverterLossFit.Fit(amps, losses);
        double best = fit.ResidualsW.Sum(r => r * r);
        var moved = new LossCoefficients(Math.Max(0, fit.Loss.FixedW + (0.01 * nudge[0])), Math.Max(0, fit.Loss.DropV + (0.01 * nudge[1])), Math.Max(0, fit.Loss.SlopeOhm + (0.01 * nudge[2])));
        Assert.True(amps.Select((a, i) => Math.Pow(losses[i] - moved.AtW(a), 2)).Sum() >= best - 1e-12);
    });

    [Fact]
    public void With_few_readings_fewer_coefficients_are_asked_for()
    {
        LossFit one = ConverterLossFit.Fit([2], [0.4]);
        Assert.Equal((0.0, 0.0, 0.1), (one.Loss.FixedW, one.Loss.DropV, Math.Round(one.Loss.SlopeOhm, 12))); // by hand 0.4/2²
        LossFit two = ConverterLossFit.Fit([1, 2], [0.2, 0.5]);
        Assert.Equal((0.1, 0.0, 0.1), (Math.Round(two.Loss.FixedW, 12), two.Loss.DropV, Math.Round(two.Loss.SlopeOhm, 12))); // by hand
        Assert.False(one.EnoughReadings || two.EnoughReadings);
        Assert.False(ConverterLossFit.Fit([1, 1.5, 2], [0.2, 0.3, 0.5]).EnoughReadings);
    }

    [Fact]
    public void A_lossless_module_on_a_stiff_source_takes_what_it_gives() => Gen.Select(Gen.Double[1, 20], Gen.Double[0.1, 50]).Sample((open, watts) =>
        Assert.Equal(watts / open, ConverterLoss.InputA(open, 0, default, watts)!.Value, 1e-12 * watts));

    [Fact]
    public void Doubt_of_a_loss_is_that_of_a_small_difference() =>
        // By hand: 3.70·3.10 = 11.47 W and 9.00·1.05 = 9.45 W, each product known to √2 %.
        Printed.Agrees("EB-1 loss", Printed.Computed, "0.2102", ConverterLoss.ReadLossDoubtW(3.70, 3.10, 9.00, 1.05, 0.01 * Math.Sqrt(2)));

    [Fact]
    public void A_heater_for_a_power_gives_that_power() => Gen.Select(Gen.Double[3, 20], Gen.Double[0.01, 0.5], Gen.Double[0.05, 0.99]).Sample((open, ohm, share) =>
    {
        double watts = share * SourceFold.MostW(open, ohm);
        double heater = DirectDrive.HeaterOhmFor(open, ohm, watts)!.Value;
        Assert.Equal(watts, DirectDrive.HeaterW(open, heater, ohm), 1e-9 * watts);
        Assert.True(heater >= ohm);
        Assert.Null(DirectDrive.HeaterOhmFor(open, ohm, SourceFold.MostW(open, ohm) * 1.001));
    });

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("duty", () => DirectDrive.HeaterW(3.7, 2.2, 0, 1.2));
        Printed.Refuses("heaterOhm", () => DirectDrive.CurrentA(3.7, 0));
        Printed.Refuses("heaterOhm", () => DirectDrive.CurrentA(3.7, -2.2));
        Printed.Refuses("outV", () => DirectDrive.LinearEfficiency(3, 3.3));
        Printed.Refuses("efficiency", () => SwitchCurrentLimit.StepUp(4, 3.6, 12, 1.1, 1e-5, 4e5));
        Printed.Refuses("outV", () => SwitchCurrentLimit.StepUp(4, 3.6, 3, 0.9, 1e-5, 4e5));
        Printed.Refuses("inductanceH", () => SwitchCurrentLimit.StepUp(4, 3.6, 12, 0.9, 0, 4e5));
        Printed.Refuses("dropV", () => new LossCoefficients(0.1, -0.1, 0.1));
        Printed.Refuses("sourceOhm", () => ConverterLoss.InputA(3.7, -0.1, default, 5));
        Printed.Refuses("currentsA", () => ConverterLossFit.Fit([0], [0.1]));
        Printed.Refuses("doubtsW", () => ConverterLossFit.Fit([1], [0.1], [0]));
        Printed.Refuses("sourceOhm", () => SourceFold.MostW(3.7, 0));
    }
}
