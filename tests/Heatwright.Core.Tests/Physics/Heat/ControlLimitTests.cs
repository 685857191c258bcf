using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Control, lags, margins and touch at the limits of what they take, and with figures so round that each factor shows; by hand.</summary>
public class ControlLimitTests
{
    [Fact]
    public void Bodies_and_rods_that_cannot_be_are_refused()
    {
        Printed.Refuses("coreLossWPerK", () => TwoNodeTool.Times(1, 1, 1, -1, 2));
        Printed.Refuses("tipLossWPerK", () => TwoNodeTool.Times(1, 1, 1, 2, -1));
        Printed.Refuses("coreLossWPerK + tipLossWPerK", () => TwoNodeTool.Times(1, 1, 1, 0, 0));
        Printed.Refuses("resistanceKPerW", () => TwoNodeTool.TipRiseK(0, 10, 1, 1, 1));
        Printed.Refuses("slowS", () => TwoNodeTool.TipRiseK(1, 0, 1, 1, 1));
        Printed.Refuses("fastS", () => TwoNodeTool.TipRiseK(1, 10, -1, 1, 1));
        Printed.Refuses("timeS", () => TwoNodeTool.TipRiseK(1, 10, 1, 1, -1));
        Printed.Refuses("integralS", () => LoopMargins.Of(1, 0, 30, 180, 3));
        Printed.Refuses("timeConstantS", () => LoopMargins.Of(1, 24, 30, 0, 3));
        Printed.Refuses("delayS", () => LoopMargins.Of(1, 24, 30, 180, 0));
        Printed.Refuses("timeConstantS", () => PowerHistory.HeatThenCoolK(1, 0, 1, 1, 1));
        Printed.Refuses("offS", () => PowerHistory.HeatThenCoolK(1, 1, 1, -1, 1));
        Printed.Refuses("resistanceKPerW", () => PowerHistory.RampK(0, 1, 1, 1, 1));
        Printed.Refuses("lagsS", () => HalfRule.ToFirstOrder([]));
        Printed.Refuses("lagsS", () => HalfRule.ToFirstOrder([0]));
        Printed.Refuses("sampleS", () => DiscretePi.Step(new PiSettings(1, 24), 0, 0, 350, 25, 1).PowerW);
        Printed.Refuses("settings.IntegralS", () => DiscretePi.Step(new PiSettings(1, 0), 0.5, 0, 350, 25, 1).PowerW);
        Printed.Refuses("resistanceKPerW", () => RelayTest.Ultimate(0, 180, 3));
        Printed.Refuses("timeConstantS", () => RelayTest.Ultimate(30, 0, 3));
        Printed.Refuses("delayS", () => RelayTest.Ultimate(30, 180, 0));
        Printed.Refuses("step × resistance", () => RelayTest.Swing(1, 2, 180, 3, 2));
        Printed.Refuses("conductivityWPerMK", () => Fin.EndlessWPerK(1, 0, 1));
        Printed.Refuses("hWPerM2K", () => Fin.EndlessWPerK(1, 1, 0));
        Printed.Refuses("areaM2", () => SurfaceLoss.At(0, 2.2, 0.7, 100, 25));
        Printed.Refuses("convectionWPerM2K125", () => SurfaceLoss.At(1e-3, -2.2, 0.7, 100, 25));
        Printed.Refuses("oneC", () => Touch.ContactC(1, -300, 1, 1));
        Printed.Refuses("otherC", () => Touch.ContactC(1, 1, 1, -300));
        Printed.Refuses("partC", () => Probe.ReadsC(1, 1, -300, 25));
        Printed.Refuses("aroundC", () => Probe.ReadsC(1, 1, 300, -300));
        Printed.Refuses("highC", () => OnOffCycle.Of(30, 180, 3, 20, 25, 350, 349));
        Printed.Refuses("currentA", () => HotWire.TemperatureC(1e-3, -1, 25, 0.9, 1e-6, 1));
        Printed.Refuses("filmK", () => Air.At(149.9));
        Printed.Refuses("filmK", () => Air.At(1500.1));
        Assert.True(Air.At(150).DensityKgPerM3 > Air.At(1500).DensityKgPerM3);
        Assert.Throws<ArgumentException>(() => Touch.ThresholdC([], 1));
    }

    [Fact]
    public void Control_by_hand()
    {
        PiSettings settings = new(2, 10);
        // 2·(100 − 90) + 3 = 23 W wanted, 20 W given; the integral waits while it pushes outwards.
        Assert.Equal(new PiSample(20, 3), DiscretePi.Step(settings, 0.5, 3, 100, 90, 20));
        Assert.Equal(new PiSample(23, 4), DiscretePi.Step(settings, 0.5, 3, 100, 90, 23));             // exactly all of it is no excess
        Assert.Equal(new PiSample(20, 4), DiscretePi.Step(settings, 0.5, 3, 100, 90, 20, AntiWindup.None)); // 2·0.5·10/10
        Assert.Equal(22.9, DiscretePi.Step(settings, 0.5, 23, 100, 101, 20).IntegralW, 1e-12);         // too hot: it may unwind
        Assert.Equal(new PiSample(0, 3), DiscretePi.Step(settings, 0.5, 3, 100, 110, 20));             // −17 W wanted
        Assert.Equal(new PiSample(0, -2), DiscretePi.Step(settings, 0.5, -1, 100, 110, 20, AntiWindup.None));
        Assert.Equal(-29.9, DiscretePi.Step(settings, 0.5, -30, 100, 99, 20).IntegralW, 1e-12);        // −28 W wanted, but cold: it may wind back
        Assert.Equal(new PiSample(0, 19), DiscretePi.Step(settings, 0.5, 20, 100, 110, 20));           // exactly nothing wanted: it may unwind
        // Back calculation: 3 + 0.5·(2 − 3/10), with its own time of 5 s 3 + 0.5·(2 − 3/5).
        Assert.Equal(3.85, DiscretePi.Step(settings, 0.5, 3, 100, 90, 20, AntiWindup.BackCalculation).IntegralW, 1e-12);
        Assert.Equal(3.7, DiscretePi.Step(settings, 0.5, 3, 100, 90, 20, AntiWindup.BackCalculation, 5).IntegralW, 1e-12);
        // A step of more than 20 K starts again from the power that holds it.
        Assert.Equal((7, 5, 5, 20, 0), (DiscretePi.IntegralForNewSetPoint(5, 100, 121, 7, 20), DiscretePi.IntegralForNewSetPoint(5, 100, 120, 7, 20), DiscretePi.IntegralForNewSetPoint(5, 120, 100, 7, 20),
            DiscretePi.IntegralForNewSetPoint(5, 100, 150, 30, 20), DiscretePi.IntegralForNewSetPoint(5, 150, 100, -3, 20)));
        Assert.Equal(7, DiscretePi.IntegralForNewSetPoint(5, 121, 100, 7, 20));
        // Derivative: (1·4 − 2·3·(92 − 90))/(1 + 0.5) = −16/3 W.
        PiSample pid = DiscretePi.StepPid(new PiSettings(2, 10, 3), 0.5, new PiSample(0, 3, 4), 100, 92, 90, 100, 1);
        Assert.Equal((19 - (16 / 3.0), -16 / 3.0), (pid.PowerW, pid.DerivativeW), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-9);
    }

    [Fact]
    public void Margins_droops_and_windows_by_hand()
    {
        Assert.Equal((1, 0, 0.5), (EnoughPower.Margin(5, 0, 2, 0, 1, 0).Probability, EnoughPower.Margin(3, 0, 2, 0, 1, 0).Probability, EnoughPower.Margin(3, 1, 2, 0, 1, 0).Probability));
        PowerMargin margin = EnoughPower.Margin(10, 2, 3, 1, 4, 2);
        Assert.Equal((3, 3, 0.841345), (margin.MarginW, margin.DoubtW, Math.Round(margin.Probability, 6)));
        Assert.Equal(0, EnoughPower.Margin(2, 0, 2, 0, 1, 0).Probability);
        Assert.Equal((0.5, 0), (EnoughPower.SustainedPerS(12, 2, 10, 0.5), EnoughPower.SustainedPerS(1, 2, 10, 0.5)));
        Assert.Equal(2, EnoughPower.UsableW(4, 1, 4e-3, 270, 2, 1), 1e-12);                      // hot 2 Ω, 1 A
        Assert.Equal((4, 0, double.PositiveInfinity), (WorkDroop.RecoveryS(2, 10, 8, 3), WorkDroop.RecoveryS(2, 0, 3, 3), WorkDroop.RecoveryS(2, 10, 3, 3)));
        Assert.Equal(double.PositiveInfinity, WorkDroop.RecoveryS(2, 10, 2, 3));
        Assert.Equal(0.75, SensingWindow.MostDuty(0.02, 0.03, 0.2), 1e-12);
        Assert.Equal((2e-3 * Math.Log(10), 0), (SensingWindow.SettleS(1000, 2e-6, 1, 0.1), SensingWindow.SettleS(1000, 2e-6, 0.1, 1)));
        Assert.Equal(11 * Math.Log(2), SensingWindow.TimeConstantsForBits(10), 1e-12);
        Assert.Equal(0.5, SensingWindow.CoreDroopK(10, 0.1, 2), 1e-12);
        Assert.Equal((0, 6), (Pwm.RippleK(1, 0, 1, 1), PowerFeedForward.MostW(4, 2, 0.75)));
        Assert.Equal((6, 4), (PowerFeedForward.MostW(4, 2, 0.75, 1.5), PowerFeedForward.MostW(4, 2, 0.75, 1)));
        Assert.Equal(0.125, PowerFeedForward.Duty(2, 4, 6, 12), 1e-12);
        Assert.Equal(10 / 256.0 * 5, PowerFeedForward.DutyStepK(10, 8, 5), 1e-12);
        Assert.Equal((3, 12), (PowerFeedForward.RippleK(0.5, 24, 2, 2), PowerFeedForward.RippleK(0.5, 48, 2, 1)));
        Printed.Refuses("bits", () => PowerFeedForward.DutyStepK(10, 0.9, 5));
        Printed.Refuses("bits", () => PowerFeedForward.DutyStepK(10, 32.1, 5));
    }

    [Fact]
    public void Touch_rows_by_hand()
    {
        (double, double)[] rows = [(1, 65), (10, 55), (600, 48)];
        Assert.Equal([65, 65, 55, 55, 48, 48, 48], ((double[])[0.5, 1, 1.01, 10, 11, 600, 601]).Select(seconds => Touch.ThresholdC(rows, seconds)));
        Assert.Equal(40, Touch.ContactC(3, 50, 1, 10), 1e-12);                                    // ¾ of the way
        Assert.Equal(2 * Touch.DamageRatePerS(60), Touch.Damage([(1, 60), (1, 60)]), 1e-9 * Touch.DamageRatePerS(60));
        Assert.Equal(1, Touch.Damage([(Touch.TimeToDeepBurnS(55), 55)]), 1e-12);
        // 3.1e98·e^(−75000/333.15): ln = 1.131402 + 225.653339 − 225.123818.
        Assert.Equal(Math.Exp(Math.Log(3.1e98) - (75000 / 333.15)), Touch.DamageRatePerS(60), 1e-9);
        Printed.Refuses("basalC", () => Touch.DamageRatePerS(-0.1));
        Printed.Refuses("basalC", () => Touch.DamageRatePerS(150.1));
        Assert.True(Touch.DamageRatePerS(150) > Touch.DamageRatePerS(0));
    }

    [Fact]
    public void Lags_and_histories_by_hand()
    {
        Assert.Equal(new ReducedLags(12, 0, 4), HalfRule.ToFirstOrder([4, 10, 1], 1));             // 10 + 2; 2 + 1 + 1
        Assert.Equal(new ReducedLags(10, 4.5, 1.5), HalfRule.ToSecondOrder([4, 10, 1], 1));        // 4 + ½; ½ + 1
        Assert.Equal(new ReducedLags(12, 0, 6.5), HalfRule.ToFirstOrder([10, 4], 2, [3], [0.5]));  // 2 + 2 + 3 − ½
        Assert.Equal(new ReducedLags(10, 0, 2), HalfRule.ToSecondOrder([10], 2));
        Assert.Equal(new ReducedLags(12, 0, 5.5), HalfRule.OfTool(10, 4, 1, 2, 3));                // 2 + 1 + 1 + 1½
        Printed.Refuses("delay", () => HalfRule.ToFirstOrder([10], 0, null, [0.5]));
        // τ = 10 s, 2 K/W, 5 W for 10 s.
        double rest = Math.Exp(-1);
        Assert.Equal(10 * (1 - rest), PowerHistory.HeatThenCoolK(2, 10, 5, 10, 10), 1e-9);
        Assert.Equal(10 * (1 - rest) * rest, PowerHistory.HeatThenCoolK(2, 10, 5, 10, 20), 1e-9);
        Assert.Equal(0, PowerHistory.HeatThenCoolK(2, 10, 5, 0, 20), 1e-12);
        // One kelvin a second a watt: 1 W from 0 s, 3 W from 4 s.
        Assert.Equal((4, 10), (PowerHistory.RiseK(s => s, [(0, 1), (4, 3)], 4), PowerHistory.RiseK(s => s, [(0, 1), (4, 3)], 6)));
        // A ramp from 1 to 3 W over 10 s at τ = 10 s: 2·[(1 − e⁻¹) + 0.2·(10 − 10·(1 − e⁻¹))].
        Assert.Equal(2 * (1 - rest + (2 * rest)), PowerHistory.RampK(2, 10, 1, 3, 10), 1e-9);
        // 2 K/W, slow 10 s, fast 5 s, at 10 s: 1 − (10·e⁻¹ − 5·e⁻²)/5; equal roots 1 − 2/e; no second lag 1 − 1/e.
        Assert.Equal(2 * (1 - (2 * rest) + (rest * rest)), TwoNodeTool.TipRiseK(2, 10, 5, 1, 10), 1e-9);
        Assert.Equal(2 * (1 - (2 * rest)), TwoNodeTool.TipRiseK(2, 10, 10, 1, 10), 1e-9);
        Assert.Equal(2 * (1 - rest), TwoNodeTool.TipRiseK(2, 10, 0, 1, 10), 1e-9);
        Assert.Equal(0, TwoNodeTool.TipRiseK(2, 10, 0, 1, 0));
        Assert.Equal((0, 0), (TwoNodeTool.DelayedRiseK(2, 10, 5, 1, 5), TwoNodeTool.DelayedRiseK(2, 10, 5, 1, 0)));
        Assert.Equal(2 * (1 - rest), TwoNodeTool.DelayedRiseK(2, 10, 5, 1, 15), 1e-9);
    }

    /// <summary>With τ_I = τ the loop is k·e^(−jωθ)/(jωτ): gain one at ω = k/τ, −180° at π/(2θ); so the phase margin is 90° − kθ/τ and the gain margin πτ/(2θk).</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(5)]
    public void Margins_of_a_loop_whose_pole_is_cancelled(double loopGain)
    {
        Margins margins = LoopMargins.Of(loopGain / 20, 100, 20, 100, 10);
        Assert.Equal(Math.PI * 100 / (20 * loopGain), margins.GainMargin, 1e-6);
        Assert.Equal(90 - (loopGain * 10 / 100 * 180 / Math.PI), margins.PhaseMarginDeg, 1e-6);
        // Second method: |1 + L| looked at over a fine grid of frequencies.
        double peak = 0;
        for (double w = 1e-3; w < 1; w *= 1.0005)
        {
            double size = loopGain / (w * 100);
            double real = 1 - (size * Math.Sin(w * 10)), imaginary = -size * Math.Cos(w * 10);
            peak = Math.Max(peak, 1 / Math.Sqrt((real * real) + (imaginary * imaginary)));
        }

        Assert.Equal(peak, margins.PeakSensitivity, 1e-4 * peak);
    }

    [Fact]
    public void An_on_off_cycle_by_hand()
    {
        // No dead time and no band: it stands still at its mark.
        Assert.Equal((350, 0, 0), (OnOffCycle.Of(30, 180, 0, 20, 25, 350, 350).MeanC, OnOffCycle.Of(30, 180, 0, 20, 25, 350, 350).OnS, OnOffCycle.Of(30, 180, 0, 20, 25, 350, 350).OffS));
        // Plateau 100 K over 0 °C, band 25 to 75: on 10·ln(75/25), off 10·ln(75/25): half of the power, 50 °C.
        SawTooth tooth = OnOffCycle.Of(10, 10, 0, 10, 0, 25, 75);
        Assert.Equal((75, 25), (tooth.HighC, tooth.LowC));
        Assert.Equal((10 * Math.Log(3), 10 * Math.Log(3), 50, 0.5), (tooth.OnS, tooth.OffS, tooth.MeanC, tooth.Duty), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) + Math.Abs(a.Item3 - b.Item3) + Math.Abs(a.Item4 - b.Item4) < 1e-9);
        // A dead time of one time constant: 100 − 25/e and 25/e.
        tooth = OnOffCycle.Of(10, 10, 10, 10, 0, 25, 75);
        Assert.Equal((100 - (25 / Math.E), 25 / Math.E), (tooth.HighC, tooth.LowC), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-9);
    }
}
