using System.Numerics;
using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Sensing window, tuning, margins, feed-forward, on-off and relay. Computed by an independent script unless a line says otherwise.</summary>
public class ControlTests
{
    [Fact]
    public void The_sensing_window_takes_its_share_of_the_frame()
    {
        Assert.Equal(0.95, SensingWindow.MostDuty(0.004, 0.001, 0.1), 1e-15); // by hand: 5 ms of 100 ms
        Printed.Agree("half a step of 10 and 12 bits", Printed.Computed, "7.624619, 9.010913", SensingWindow.TimeConstantsForBits(10), SensingWindow.TimeConstantsForBits(12));
        Printed.Agrees("1 V to half a step of 1.1 V/1024", Printed.Computed, "7.529309", SensingWindow.SettleS(1, 1, 1, 1.1 / 2048));
        Printed.Agrees("core", Printed.Computed, "0.08333", SensingWindow.CoreDroopK(20, 5e-3, 1.2));
        Assert.Equal(0, SensingWindow.SettleS(1, 1, 1e-4, 1e-3));
    }


    /// <summary>[skogestad-2003], rules from memory, numbers computed by a second program: every row.</summary>
    [Fact]
    public void Every_tuning_of_the_file_comes_out()
    {
        var table = ReferenceCsv.Read("worked_examples/simc_pi_tuning.csv");
        Assert.Equal(12, table.Rows.Length);
        foreach (string[] row in table.Rows)
        {
            var pi = PiTuning.PiForSpeed(table.Number(row, "gain_k"), table.Number(row, "tau"), table.Number(row, "theta"), table.Number(row, "tau_c"));
            Assert.Equal(1, pi.GainWPerK / table.Number(row, "Kc"), 2e-6); // six printed digits
            Assert.Equal(table.Number(row, "tau_I"), pi.IntegralS, 1e-12);
            var law = PiTuning.Pi(table.Number(row, "gain_k"), table.Number(row, "tau"), table.Number(row, "theta"), table.Number(row, "tau_c") / table.Number(row, "theta"));
            Assert.Equal(pi.GainWPerK, law.GainWPerK, 1e-12 * pi.GainWPerK);
        }
    }

    /// <summary>[skogestad-2003] example of the half rule, from memory: every row.</summary>
    [Fact]
    public void Every_half_rule_of_the_file_comes_out()
    {
        var table = ReferenceCsv.Read("worked_examples/simc_half_rule.csv");
        Assert.Equal(2, table.Rows.Length);
        double[] lags = [2, 1, 0.4, 0.2, 0.05, 0.05, 0.05];
        var first = HalfRule.ToFirstOrder(lags, 0, [0.3], [0.08]);
        Assert.Equal(table.Number(table.Rows[0], "tau1"), first.SlowS, 1e-12);
        Assert.Equal(table.Number(table.Rows[0], "theta"), first.DelayS, 1e-12);
        var second = HalfRule.ToSecondOrder(lags, 0, [0.3], [0.08]);
        Assert.Equal(table.Number(table.Rows[1], "tau1"), second.SlowS, 1e-12);
        Assert.Equal(table.Number(table.Rows[1], "tau2"), second.FastS, 1e-12);
        Assert.Equal(table.Number(table.Rows[1], "theta"), second.DelayS, 1e-12);

        // By hand for a two-node tool: 216 + 4.65, 4.65 + 0.8 + 0.125 + 0.05.
        var tool = HalfRule.OfTool(216, 9.3, 0.8, 0.25, 0.1);
        Assert.Equal(220.65, tool.SlowS, 1e-12);
        Assert.Equal(5.625, tool.DelayS, 1e-12);
    }

    /// <summary>The script printed 9.325522 and 72.07828 in the third row; bisection in a second program gives 9.32552131 and 72.0782993: mended here.</summary>
    [Theory]
    [InlineData(1, "1.000000, 24, 2.987221, 48.72856, 1.684718")]
    [InlineData(2, "0.6666667, 36, 4.575058, 59.48334, 1.382564")]
    [InlineData(5, "0.3333333, 72, 9.325521, 72.07830, 1.166202")]
    public void A_tool_tuned_has_its_margins(double factor, string printed)
    {
        var pi = PiTuning.Pi(30, 180, 3, factor);
        var margins = LoopMargins.Of(pi.GainWPerK, pi.IntegralS, 30, 180, 3);
        Printed.Agree("tuning", Printed.Computed, printed, pi.GainWPerK, pi.IntegralS, margins.GainMargin, margins.PhaseMarginDeg, margins.PeakSensitivity);
    }

    /// <summary>[skogestad-2003]: with τ_I = τ and τ_c = θ the loop is 1/(2θs)·e^(−θs): margins π and 90° − 90°/π in closed form.</summary>
    [Fact]
    public void With_the_integral_time_at_the_time_constant_the_margins_are_known_in_closed_form()
    {
        var margins = LoopMargins.Of(1, 180, 30, 180, 3);
        Printed.Agree("margins", Printed.Computed, "3.141593, 61.35211, 1.590490", margins.GainMargin, margins.PhaseMarginDeg, margins.PeakSensitivity);
        Assert.Equal(Math.PI, margins.GainMargin, 1e-9);
        Assert.Equal(90 - (90 / Math.PI), margins.PhaseMarginDeg, 1e-9);
    }

    /// <summary>Second method: complex arithmetic of the loop itself at the two crossings that the margins imply.</summary>
    [Fact]
    public void Margins_put_the_loop_on_the_unit_circle_and_on_the_axis() => Gen.Select(Gen.Double[50, 400], Gen.Double[1, 10], Gen.Double[1, 6]).Sample((tau, theta, factor) =>
    {
        var pi = PiTuning.Pi(30, tau, theta, factor);
        var margins = LoopMargins.Of(pi.GainWPerK, pi.IntegralS, 30, tau, theta);
        Complex Loop(double w, double gain) => gain * (1 + (1 / new Complex(0, w * pi.IntegralS))) * 30 * Complex.Exp(new Complex(0, -w * theta)) / new Complex(1, w * tau);

        // With the gain raised by its margin the loop passes −1: the smallest distance to it over frequency is zero.
        double nearest = Enumerable.Range(0, 200_000).Min(i => Complex.Abs(1 + Loop((0.2 + (1.6 * i / 200_000)) * Math.PI / 2 / theta, pi.GainWPerK * margins.GainMargin)));
        Assert.Equal(0, nearest, 1e-4);
        double peak = Enumerable.Range(1, 20_000).Max(i => 1 / Complex.Abs(1 + Loop(i * 1e-4 * Math.PI / theta * 1.5, pi.GainWPerK)));
        Assert.Equal(peak, margins.PeakSensitivity, 1e-3 * peak);
        Assert.True(margins.GainMargin > 2.5 && margins.PhaseMarginDeg > 40, "the rule gave a nervous loop");
    }, iter: 10);

    [Fact]
    public void A_series_controller_and_its_parallel_sum_are_the_same_filter() => Gen.Select(Gen.Double[0.1, 5], Gen.Double[5, 200], Gen.Double[0.1, 20], Gen.Double[1e-3, 10]).Sample((gain, integral, derivative, w) =>
    {
        var parallel = PiTuning.ToParallel(new PiSettings(gain, integral, derivative));
        Complex s = new(0, w);
        var series = gain * (1 + (1 / (s * integral))) * (1 + (s * derivative));
        var sum = parallel.GainWPerK * (1 + (1 / (s * parallel.IntegralS)) + (s * parallel.DerivativeS));
        Assert.True(Complex.Abs(series - sum) <= 1e-10 * Complex.Abs(series));
    });

    [Fact]
    public void A_second_lag_becomes_the_derivative_time()
    {
        var pid = PiTuning.SeriesPid(1, new ReducedLags(2, 1.2, 0.77), 0.77);
        Assert.Equal(2 / 1.54, pid.GainWPerK, 1e-12); // by hand
        Assert.Equal(2, pid.IntegralS, 1e-12);
        Assert.Equal(1.2, pid.DerivativeS, 1e-12);
        Assert.Equal(0.5, PiTuning.LeastGainWPerK(5, 10), 1e-12); // by hand: 5 W held within 10 K
    }

    [Fact]
    public void Feed_forward_follows_the_square_of_the_voltage()
    {
        double nominal = 8.2 * 8.2 / 1.9;
        Printed.Agree("30 W at 8.2 and 6.4 V", Printed.Computed, "0.8477097, 1.391602", PowerFeedForward.Duty(30, nominal, 8.2, 8.2), PowerFeedForward.Duty(30, nominal, 8.2, 6.4));
        Printed.Agrees("limit", Printed.Computed, "21.56", PowerFeedForward.MostW(6.4, 1.9, 1, 1000));
        Assert.Equal(12.8, PowerFeedForward.MostW(6.4, 1.9, 1, 2), 1e-12); // by hand: 2 A × 6.4 V
        Printed.Agrees("8.4 to 6.0 V", Printed.Computed, "1.96", PowerFeedForward.Duty(10, 20, 8.4, 6.0) / PowerFeedForward.Duty(10, 20, 8.4, 8.4));
        Printed.Agrees("8 bits", Printed.Computed, "3.5", PowerFeedForward.DutyStepK(30, 8, 30));
        Printed.Agrees("step", Printed.Computed, "0.117", 30 / 256.0);
        Printed.Agrees("ripple", Printed.Computed, "0.21", PowerFeedForward.RippleK(0.5, 20, 0.1, 1.2));
    }

    /// <summary>Second method: between switching on and off the core takes (1 − d)·P for d·T_f; half of that swing lies to either side.</summary>
    [Fact]
    public void Ripple_is_half_of_what_the_core_takes_while_on() => Gen.Select(Gen.Double[0, 1], Gen.Double[1, 60], Gen.Double[0.01, 1]).Sample((d, watts, period) =>
        Assert.Equal((watts - (d * watts)) * d * period / 1.2 / 2, PowerFeedForward.RippleK(d, watts, period, 1.2), 1e-12));

    [Fact]
    public void An_on_off_control_swings_by_its_dead_time()
    {
        var cycle = OnOffCycle.Of(30, 180, 3, 20, 25, 348, 352);
        Printed.Agree("levels", Printed.Computed, "356.5123, 342.6613", cycle.HighC, cycle.LowC);
        Printed.Agree("times", Printed.Computed, "9.054424, 7.682262, 16.73669, 0.5409926", cycle.OnS, cycle.OffS, cycle.PeriodS, cycle.Duty);
        Printed.Agrees("mean", Printed.Computed, "349.5956", cycle.MeanC);
        Printed.Agrees("swing", Printed.Computed, "13.85", cycle.HighC - cycle.LowC);
        Printed.Agrees("no dead time", Printed.Computed, "4.833641", OnOffCycle.Of(30, 180, 0, 20, 25, 348, 352).PeriodS);
    }

    /// <summary>Second method: the cycle stepped in small steps with the delay as a line of samples.</summary>
    [Fact]
    public void A_stepped_on_off_loop_swings_the_same()
    {
        const double step = 1e-3;
        double stays = Math.Exp(-step / 180);
        var line = new Queue<bool>(Enumerable.Repeat(false, 3000));
        double rise = 300, high = 0, low = 1e9;
        bool on = false;
        for (int n = 0; n < 200_000; n++)
        {
            double y = 25 + rise;
            on = y < 348 || (on && y < 352);
            line.Enqueue(on);
            rise = (stays * rise) + ((1 - stays) * (line.Dequeue() ? 600 : 0));
            if (n > 100_000)
            {
                high = Math.Max(high, y);
                low = Math.Min(low, y);
            }
        }

        var cycle = OnOffCycle.Of(30, 180, 3, 20, 25, 348, 352);
        Assert.Equal(cycle.HighC, high, 0.01); // one step of 1 ms is 0.002 K
        Assert.Equal(cycle.LowC, low, 0.01);
    }

    [Fact]
    public void A_relay_test_has_the_swing_of_the_script()
    {
        var swing = RelayTest.Swing(10, 30, 180, 3, 0);
        Printed.Agree("a, Pu, Ku", Printed.Computed, "4.958564, 11.90164, 2.567759", swing.AmplitudeK, swing.PeriodS, swing.UltimateGainWPerK);
        var (gain, period) = RelayTest.TrueUltimate(30, 180, 3);
        Printed.Agree("true", Printed.Computed, "3.162847, 11.92002", gain, period);
        Printed.Agrees("low by", Printed.Computed, "-19", 100 * ((swing.UltimateGainWPerK / gain) - 1));
        var wide = RelayTest.Swing(10, 30, 180, 3, 2);
        Printed.Agree("hysteresis", Printed.Computed, "6.925507, 16.62417", wide.AmplitudeK, wide.PeriodS);
        Assert.Equal(2 * 180 * Math.Log((2 * Math.Exp(3.0 / 180)) - 1), swing.PeriodS, 1e-9); // the closed form without hysteresis
    }

    [Fact]
    public void A_relay_test_finds_back_the_tool() => Gen.Select(Gen.Double[20, 500], Gen.Double[0.5, 15], Gen.Double[1, 20]).Sample((tau, theta, watts) =>
    {
        var swing = RelayTest.Swing(watts, 30, tau, theta, 0);
        var found = RelayTest.Finding(swing.AmplitudeK, swing.PeriodS, watts, 30);
        Assert.Equal(tau, found.TimeConstantS, 1e-8 * tau);
        Assert.Equal(theta, found.DelayS, 1e-8 * theta);
    });

    [Fact]
    public void Impossible_inputs_are_refused_with_their_range()
    {
        Printed.Refuses("settle + read", () => SensingWindow.MostDuty(0.1, 0.1, 0.1));
        Printed.Refuses("delayS", () => PiTuning.Pi(30, 180, 0, 1));
        Printed.Refuses("plateau", () => OnOffCycle.Of(30, 180, 3, 5, 25, 348, 352));
        Printed.Refuses("lowC", () => OnOffCycle.Of(30, 180, 3, 20, 25, 20, 352));
        Printed.Refuses("step × resistance", () => RelayTest.Finding(400, 10, 10, 30));
        Printed.Refuses("mostW", () => DiscretePi.Step(new PiSettings(1, 24), 0.5, 0, 350, 25, -1).PowerW);
    }
}
