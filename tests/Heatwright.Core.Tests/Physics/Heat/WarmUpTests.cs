using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>One and two bodies, warm-up, plateaus. Values computed by an independent script unless a line says otherwise; half of the last printed digit.</summary>
public class WarmUpTests
{
    [Fact]
    public void One_body_warms_by_the_textbook_exponential()
    {
        Printed.Agrees("tau", Printed.Computed, "266.6667", WarmUp.TimeConstantS(8, 0.03));
        Printed.Agrees("T(60)", Printed.Computed, "105.5935", 25 + WarmUp.RiseK(12, 8, 0.03, 60));
        Printed.Agrees("t(350)", Printed.Computed, "446.3937", WarmUp.TimeToRiseS(325, 12, 8, 0.03));
        Printed.Agrees("plateau", Printed.Computed, "425.0", Plateau.LinearC(12, 0.03, 25));
        Assert.Equal(double.PositiveInfinity, WarmUp.TimeToRiseS(400, 12, 8, 0.03));
    }

    /// <summary>By hand: the first moments store everything, so the slope is P/C and no loss shows.</summary>
    [Fact]
    public void The_first_slope_is_power_over_capacity() => Assert.Equal(12.0 / 8, WarmUp.RiseK(12, 8, 0.03, 1e-6) / 1e-6, 1e-8);

    [Theory]
    [InlineData(250, "165.33571", "1984.0286", "1350", "0.68043375", "6.75")]
    [InlineData(300, "232.63016", "2791.5619", "1650", "0.59106695", "8.25")]
    [InlineData(350, "334.79529", "4017.5434", "1950", "0.48537123", "9.75")]
    public void A_warm_up_has_time_energy_efficiency_and_hold_power(double targetC, string time, string energy, string stored, string efficiency, string hold)
    {
        var needs = WarmUp.To(targetC, 25, 12, 6, 0.03);
        Printed.Agrees("t", Printed.Computed, time, needs.TimeS);
        Printed.Agrees("E", Printed.Computed, energy, needs.EnergyJ);
        Printed.Agrees("stored", Printed.Computed, stored, needs.StoredJ);
        Printed.Agrees("efficiency", Printed.Computed, efficiency, needs.Efficiency);
        Printed.Agrees("hold", Printed.Computed, hold, needs.HoldW);
    }

    [Theory]
    [InlineData(1.05, "3.0445")]
    [InlineData(1.5, "1.0986")]
    [InlineData(2, "0.6931")]
    [InlineData(4, "0.2877")]
    public void A_small_margin_makes_a_long_warm_up(double margin, string printed) => Printed.Agrees("t/tau", Printed.Computed, printed, WarmUp.TimeConstantsForMargin(margin));

    [Fact]
    public void The_slope_of_the_time_is_that_of_a_small_change_of_power() => Gen.Select(Gen.Double[1.1, 5], Gen.Double[5, 40]).Sample((margin, watts) =>
    {
        const double g = 0.03, c = 6;
        double rise = watts / margin / g;
        double bump = 1e-5 * watts;
        double slope = (WarmUp.TimeToRiseS(rise, watts + bump, c, g) - WarmUp.TimeToRiseS(rise, watts - bump, c, g)) / (2 * bump);
        Assert.Equal(slope, WarmUp.TimeSlopeSPerW(c / g, watts, margin), 1e-5 * Math.Abs(slope));
    });

    [Fact]
    public void A_loss_by_a_power_law_has_its_plateau_and_time()
    {
        static double Loss(double rise) => 0.006 * Math.Pow(rise, 1.25);
        Printed.Agrees("plateau", Printed.Computed, "437.3448", Plateau.RiseK(_ => 12, Loss, 2000));
        Printed.Agrees("t(250)", Printed.Computed, "194.6674", WarmUp.TimeToRiseS(7, rise => 12 - Loss(rise), 0, 250));
        Assert.Equal(double.PositiveInfinity, WarmUp.TimeToRiseS(7, rise => 12 - Loss(rise), 0, 438));
        Assert.True(Plateau.Holds(_ => 12, Loss, 437.3448));
    }

    [Fact]
    public void A_heater_whose_power_grows_with_heat_can_run_away()
    {
        // Power grows faster than the linear loss: no meeting, so no plateau.
        Assert.True(double.IsNaN(Plateau.RiseK(rise => 5 + (0.05 * rise), rise => 0.03 * rise, 2000)));

        // Loss that bends up later catches it twice: the first meeting from cold holds, by hand 5 + 0.01Δ = 0.03Δ at 250 K.
        Assert.Equal(250, Plateau.RiseK(rise => 5 + (0.01 * rise), rise => 0.03 * rise, 2000), 1e-9);
        Assert.False(Plateau.Holds(rise => 5 + (0.05 * rise), rise => 0.03 * rise + 10, 250));
        Assert.Equal(0, Plateau.RiseK(_ => 0, rise => rise, 100));
    }

    [Fact]
    public void The_integral_form_of_the_time_agrees_with_the_logarithm() => Gen.Select(Gen.Double[5, 40], Gen.Double[1, 20], Gen.Double[0.005, 0.1], Gen.Double[0.05, 0.999]).Sample((watts, c, g, share) =>
    {
        double rise = share * watts / g;
        double exact = WarmUp.TimeToRiseS(rise, watts, c, g);
        Assert.Equal(exact, WarmUp.TimeToRiseS(c, x => watts - (g * x), 0, rise), 1e-9 * exact);
    });

    [Fact]
    public void Time_and_rise_are_inverse_and_heat_is_conserved() => Gen.Select(Gen.Double[5, 40], Gen.Double[1, 20], Gen.Double[0.005, 0.1], Gen.Double[0.001, 0.99]).Sample((watts, c, g, share) =>
    {
        double rise = share * watts / g;
        double time = WarmUp.TimeToRiseS(rise, watts, c, g);
        Assert.Equal(rise, WarmUp.RiseK(watts, c, g, time), 1e-9 * rise);

        // Lost heat by hand: G∫Δdt = P·t − (P·τ)(1 − e^(−t/τ)).
        double tau = c / g;
        double lost = watts * time - (watts * tau * (1 - Math.Exp(-time / tau)));
        Assert.Equal(watts * time, (c * rise) + lost, 1e-9 * watts * time);
    });

    [Fact]
    public void More_power_is_faster_and_more_loss_is_slower() => Gen.Select(Gen.Double[5, 40], Gen.Double[1, 20], Gen.Double[0.005, 0.1]).Sample((watts, c, g) =>
    {
        double rise = 0.7 * watts / g;
        double time = WarmUp.TimeToRiseS(rise, watts, c, g);
        Assert.True(WarmUp.TimeToRiseS(rise, 1.1 * watts, c, g) < time);
        Assert.True(WarmUp.TimeToRiseS(rise, watts, c, 1.1 * g) > time);
        Assert.True(WarmUp.TimeToRiseS(rise, watts, 1.1 * c, g) > time);
    });

    [Fact]
    public void Two_nodes_have_closed_poles_a_tip_response_and_an_invariant()
    {
        var times = TwoNodeTool.Times(1.5, 6, 0.25, 0.004, 0.030);
        Printed.Agree("times", Printed.Computed, "220.7933, 4.728784", times.SlowS, times.FastS);
        var tip = TwoNodeTool.Times(2.2, 5.0, 0.16, 0, 0.034);
        Printed.Agree("tip tool", Printed.Computed, "216.1603, 9.354443", tip.SlowS, tip.FastS);
        Printed.Agrees("K", Printed.Computed, "29.41176", 1 / 0.034);
        Printed.Agrees("(tau1+tau2)/K", Printed.Computed, "7.667500", TwoNodeTool.ApparentCapacityJPerK(1 / 0.034, tip.SlowS, tip.FastS));
        Printed.Agrees("C1+C2+C1G2/G12", Printed.Computed, "7.667500", 2.2 + 5.0 + (2.2 * 0.034 / 0.16)); // by hand
        Assert.Equal(48.7239, TwoNodeTool.CoreAboveTipK(406.0325 * 0.03, 0.25), 5e-4); // 454.7564 − 406.0325 of the steady table
    }

    [Fact]
    public void The_tip_response_is_that_of_the_network() => Gen.Select(Gen.Double[0.3, 5], Gen.Double[1, 20], Gen.Double[0.05, 2], Gen.Double[0.005, 0.1], Gen.Double[1, 900]).Sample((core, tip, between, loss, time) =>
    {
        var times = TwoNodeTool.Times(core, tip, between, 0, loss);
        double network = new HeatNetwork([core, tip], [0, loss], new HeatLink(0, 1, between)).RiseAfterK([0, 0], [10, 0], time)[1];
        Assert.Equal(network, TwoNodeTool.TipRiseK(1 / loss, times.SlowS, times.FastS, 10, time), 1e-8 * 10 / loss);
    });

    [Fact]
    public void Equal_poles_and_vanishing_ones_are_no_special_trouble()
    {
        double near = TwoNodeTool.TipRiseK(30, 100, 99.999, 10, 80);
        Assert.Equal(near, TwoNodeTool.TipRiseK(30, 100, 100, 10, 80), 1e-2);
        Assert.Equal(WarmUp.RiseK(10, 100.0 / 30, 1.0 / 30, 80), TwoNodeTool.TipRiseK(30, 100, 0, 10, 80), 1e-9);
        Assert.Equal(0, TwoNodeTool.DelayedRiseK(30, 100, 5, 10, 4));
        Assert.Equal(WarmUp.RiseK(10, 100.0 / 30, 1.0 / 30, 75), TwoNodeTool.DelayedRiseK(30, 100, 5, 10, 80), 1e-9);
    }

    [Fact]
    public void Impossible_inputs_are_refused_with_their_range()
    {
        Printed.Refuses("capacityJPerK", () => WarmUp.TimeConstantS(0, 0.03));
        Printed.Refuses("conductanceWPerK", () => WarmUp.TimeConstantS(8, -0.03));
        Printed.Refuses("timeS", () => WarmUp.RiseK(12, 8, 0.03, -1));
        Printed.Refuses("targetC", () => WarmUp.To(20, 25, 12, 8, 0.03));
        Printed.Refuses("marginRatio", () => WarmUp.TimeConstantsForMargin(1));
        Printed.Refuses("powerW", () => Plateau.LinearC(double.NaN, 0.03, 25));
        Printed.Refuses("betweenWPerK", () => TwoNodeTool.Times(1, 1, 0, 0, 1));
    }
}
