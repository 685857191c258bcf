using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Switch, edges, PWM and the controller's supply. Values computed by an independent script. Tolerance: half of the last printed digit.</summary>
public class SwitchTests
{
    [Fact]
    public void On_resistance_between_two_gate_voltages()
    {
        (double k, double floor) = MosfetLaw.FromTwoPoints(4.5, 0.020, 2.5, 0.034, 1.0);
        Printed.Agree("SW-1", Printed.Computed, "36.750, 9.500, 25.4783, 27.8750, 46.2500", k * 1000, floor * 1000,
            MosfetLaw.OnOhm(k, floor, 3.3, 1) * 1000, MosfetLaw.OnOhm(k, floor, 3.0, 1) * 1000, MosfetLaw.OnOhm(k, floor, 2.0, 1) * 1000);
    }

    [Fact]
    public void A_switch_warms_and_can_run_away()
    {
        JunctionState state = MosfetLaw.Junction(4, 1, 0.020, 80, 45)!;
        Printed.Agree("SW-2", Printed.Computed, "77.2936, 0.40367", state.JunctionC, state.LossW);
        Printed.Agrees("SW-3", Printed.Computed, "11.1803", MosfetLaw.RunawayA(0.020, 80));
        Assert.NotNull(MosfetLaw.Junction(11.1, 1, 0.020, 80, 45));
        Assert.Null(MosfetLaw.Junction(11.2, 1, 0.020, 80, 45));
    }

    [Fact]
    public void Heat_made_in_a_switch_is_heat_carried_away() => Gen.Select(Gen.Double[0.5, 8], Gen.Double[0.05, 1], Gen.Double[0.002, 0.05], Gen.Double[20, 150], Gen.Double[0, 60], Gen.Double[0, 0.007])
        .Sample((amps, duty, ohm, thermal, around, k) =>
        {
            if (MosfetLaw.Junction(amps, duty, ohm, thermal, around, k) is { } state)
            {
                double made = duty * amps * amps * ohm * (1 + (k * (state.JunctionC - 25)));
                Assert.Equal(made, state.LossW, 1e-9 * (made + 1));
            }
            else
            {
                Assert.True(amps >= MosfetLaw.RunawayA(ohm, thermal, k, duty));
            }
        });

    [Fact]
    public void Edges_gate_and_leads()
    {
        Printed.Agree("SW-4", Printed.Computed, "2.4667, 4.9333", SwitchingLoss.ResistiveEdgeJ(7.4, 2, 1e-6) * 1e6, SwitchingLoss.ResistiveW(7.4, 2, 1e-6, 1e-6, 1000) * 1000);
        Printed.Agrees("SW-5", Printed.Computed, "14.8000", SwitchingLoss.InductiveW(7.4, 2, 1e-6, 1e-6, 1000) * 1000);
        double gate = SwitchingLoss.GateA(3.3, 2.0, 65, 100);
        Printed.Agree("SW-6", Printed.Computed, "7.8788, 761.54", gate * 1000, SwitchingLoss.EdgeS(6e-9, gate) * 1e9);
        Printed.Agrees("SW-7", Printed.Computed, "792.00", SwitchingLoss.GateW(12e-9, 3.3, 20e3) * 1e6);
        Printed.Agree("SW-8", Printed.Computed, "12.500, 50.0", SwitchingLoss.LeadJ(1e-6, 5) * 1e6, SwitchingLoss.SpikeV(1e-6, 5, 100e-9));
        double schottky = SwitchingLoss.ReversePolarityW(1.4, 0.35, 0);
        Printed.Agree("SW-9", Printed.Computed, "0.4900, 9.459", schottky, schottky / (1.4 * 3.7) * 100);
        Printed.Agrees("SW-10", Printed.Computed, "58.800", SwitchingLoss.ReversePolarityW(1.4, 0, 0.030) * 1000);
    }

    [Fact]
    public void An_edge_into_a_resistance_is_the_sum_over_straight_ramps() => Gen.Select(Gen.Double[1, 30], Gen.Double[0.1, 10], Gen.Double[1e-8, 1e-5]).Sample((volts, amps, edge) =>
    {
        // Second method: midpoint sum of v·i with v falling and i rising.
        double sum = Enumerable.Range(0, 1000).Sum(i => volts * (1 - ((i + 0.5) / 1000)) * amps * ((i + 0.5) / 1000)) / 1000 * edge;
        Assert.Equal(sum, SwitchingLoss.ResistiveEdgeJ(volts, amps, edge), 1e-5 * sum);
    }, iter: 20);

    [Fact]
    public void Pulses_cost_the_battery_more_than_a_steady_current()
    {
        PwmState pulsed = Pwm.Pulsed(3.7, 0.15, 1.5, 0.5);
        Printed.Agree("PW-1", Printed.Computed, "2.24242, 3.77135, 0.37713, 0.90909, 1.58563, 1.12121", pulsed.OnA, pulsed.HeaterW, pulsed.PackW, pulsed.Efficiency, pulsed.RmsA, pulsed.MeanA);
        PwmState smooth = Pwm.Smoothed(3.7, 0.15, 1.5, 0.5);
        Printed.Agree("PW-2", Printed.Computed, "2.34921, 4.13908, 0.20695, 0.95238", smooth.OnA, smooth.HeaterW, smooth.PackW, smooth.Efficiency);
    }

    [Fact]
    public void Only_equal_heater_power_is_compared()
    {
        double pulsed = Pwm.PulsedDutyFor(3.7, 0.15, 1.5, 4.0);
        double smooth = Pwm.SmoothedDutyFor(3.7, 0.15, 1.5, 4.0)!.Value;
        Printed.Agree("PW-3", Printed.Computed, "0.53031, 0.40000, 0.48150, 0.19260", pulsed, Pwm.Pulsed(3.7, 0.15, 1.5, pulsed).PackW, smooth, Pwm.Smoothed(3.7, 0.15, 1.5, smooth).PackW);
        Assert.Null(Pwm.SmoothedDutyFor(3.7, 0.15, 1.5, 9));
    }

    [Fact]
    public void A_capacitor_carries_the_pulses()
    {
        Printed.Agree("PW-4", Printed.Computed, "0.7000, 0.7447, 37.234", Pwm.CapacitorA(1.4, 0.5), Pwm.RippleV(1.4, 0.5, 1e3, 470e-6), Pwm.RippleV(1.4, 0.5, 20e3, 470e-6) * 1000);
        Printed.Agree("PW-5", Printed.Computed, "70.50, 14.18, 0.33127, 0.21073, 0.20888", 0.15 * 470e-6 * 1e6, 1e-3 / (0.15 * 470e-6),
            Pwm.PackLossW(3.7, 0.15, 1.5, 0.5, 470e-6, 1e3), Pwm.PackLossW(3.7, 0.15, 1.5, 0.5, 470e-6, 1 / (0.15 * 470e-6)), Pwm.PackLossW(3.7, 0.15, 1.5, 0.5, 470e-6, 20e3));
        Printed.Agrees("PW-6", Printed.Computed, "350.00", Pwm.FaradForRipple(1.4, 0.5, 20e3, 0.050) * 1e6);
        Printed.Agrees("TR-1", Printed.Computed, "0.2500", Pwm.RippleK(20, 0.5, 10, 2.0));
    }

    private static readonly Gen<(double V, double Rs, double R, double D)> AnyPwm =
        Gen.Select(Gen.Double[3, 20], Gen.Double[0.02, 0.5], Gen.Double[0.5, 10], Gen.Double[0.02, 0.98]);

    [Fact]
    public void Battery_energy_is_heater_and_pack_in_both_cases() => AnyPwm.Sample(any =>
    {
        PwmState pulsed = Pwm.Pulsed(any.V, any.Rs, any.R, any.D);
        Assert.Equal(any.V * pulsed.MeanA, pulsed.HeaterW + pulsed.PackW, 1e-9 * any.V * pulsed.MeanA);
        PwmState smooth = Pwm.Smoothed(any.V, any.Rs, any.R, any.D);
        Assert.Equal(any.V * smooth.MeanA, smooth.HeaterW + smooth.PackW, 1e-9 * any.V * smooth.MeanA);
        Assert.True(smooth.Efficiency >= pulsed.Efficiency);
    });

    [Fact]
    public void The_exact_solution_runs_from_pulses_to_smooth() => AnyPwm.Sample(any =>
    {
        double slow = Pwm.PackLossW(any.V, any.Rs, any.R, any.D, 1e-6, 0.01);
        double fast = Pwm.PackLossW(any.V, any.Rs, any.R, any.D, 1, 1e6);
        Assert.Equal(Pwm.Pulsed(any.V, any.Rs, any.R, any.D).PackW, slow, 1e-5 * slow);
        Assert.Equal(Pwm.Smoothed(any.V, any.Rs, any.R, any.D).PackW, fast, 1e-5 * fast);
    });

    [Fact]
    public void The_exact_solution_is_what_small_steps_give()
    {
        // Second method: capacitor stepped through 200 periods in 2000 steps each, midpoint rule.
        const double v = 3.7, rs = 0.15, r = 1.5, c = 470e-6, f = 3e3;
        double u = v;
        double loss = 0;
        for (int i = 0; i < 200 * 2000; i++)
        {
            bool on = i % 2000 < 1000;
            double h = 1 / (f * 2000);
            double Slope(double x) => (((v - x) / rs) - (on ? x / r : 0)) / c;
            double middle = u + (Slope(u) * h / 2);
            u += Slope(middle) * h;
            loss += i >= 199 * 2000 ? (v - middle) * (v - middle) / rs / 2000 : 0;
        }

        Assert.Equal(loss, Pwm.PackLossW(v, rs, r, 0.5, c, f), 1e-4 * loss);
    }

    [Fact]
    public void The_duty_found_gives_the_power_wanted() => AnyPwm.Sample(any =>
    {
        double watts = Pwm.Smoothed(any.V, any.Rs, any.R, any.D).HeaterW;
        if (Pwm.SmoothedDutyFor(any.V, any.Rs, any.R, watts) is { } duty)
        {
            Assert.Equal(watts, Pwm.Smoothed(any.V, any.Rs, any.R, duty).HeaterW, 1e-9 * watts);
            Assert.True(duty <= any.D + 1e-9);
        }
        else
        {
            Assert.Fail("A power that a duty gives must have a duty.");
        }
    });

    [Fact]
    public void A_regulator_strands_charge()
    {
        double alone = ControllerSupply.NeededOpenV(3.3, 0.2);
        Printed.Agree("LD-1", Printed.Computed, "3.50, 11.000, 22.323", alone, ControllerSupply.StrandedCharge(OcvTables.A, alone) * 100, ControllerSupply.StrandedCharge(OcvTables.B, alone) * 100);
        double heating = ControllerSupply.NeededOpenV(3.3, 0.2, 1.4, 0.25);
        Printed.Agree("LD-2", Printed.Computed, "3.850, 67.979, 61.170", heating, ControllerSupply.StrandedCharge(OcvTables.A, heating) * 100, ControllerSupply.StrandedCharge(OcvTables.B, heating) * 100);
        Printed.Agrees("LD-3", Printed.Computed, "3.250", Pack.TerminalV(1, 3.6, 0.25, 1.4));
        Printed.Agrees("LD-4", Printed.Computed, "666.67", ControllerSupply.HoldUpF(0.010, 0.020, 0.3) * 1e6);
    }

    [Fact]
    public void A_cold_heater_can_reset_the_controller() => Printed.Agree("BR-1", Printed.Computed, "3.0000, 2.6000",
        ControllerSupply.MostHeaterA(3.6, 0.15, 2.7, 0.25, 0), ControllerSupply.MostHeaterA(3.6, 0.15, 2.7, 0.25));

    [Fact]
    public void Standby_empties_a_shelved_tool()
    {
        const double q = 0.62 * 3600;
        Printed.Agrees("ST-1", Printed.Computed, "16.9747", ControllerSupply.SelfDischargeA(q, 0.02) * 1e6);
        Printed.Agree("ST-2", Printed.Computed, "154.29, 470.24", ControllerSupply.ShelfLifeS(0.4, q, 50e-6) / 86400, ControllerSupply.ShelfLifeS(0.4, q, 5e-6) / 86400);
        Printed.Agrees("ST-3", Printed.Computed, "21.00", DirectDrive.CurrentA(4.2, 200e3) * 1e6);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("firstGateV", () => MosfetLaw.FromTwoPoints(1, 0.02, 2.5, 0.03, 1));
        Printed.Refuses("gateV", () => MosfetLaw.OnOhm(0.03, 0.01, 0.9, 1));
        Printed.Refuses("duty", () => MosfetLaw.Junction(4, 1.2, 0.02, 80, 45));
        Printed.Refuses("duty", () => Pwm.Pulsed(3.7, 0.1, 2, 1.2));
        Printed.Refuses("duty", () => Pwm.Smoothed(3.7, 0.1, 2, -0.1));
        Printed.Refuses("sourceOhm", () => Pwm.PackLossW(3.7, 0, 1.5, 0.5, 1e-3, 1e3));
        Printed.Refuses("edgeS", () => SwitchingLoss.SpikeV(1e-6, 5, 0));
        Printed.Refuses("driveV", () => SwitchingLoss.GateA(1.8, 2, 65, 100));
        Printed.Refuses("droopV", () => ControllerSupply.HoldUpF(0.01, 0.02, 0));
        Printed.Refuses("charge", () => ControllerSupply.ShelfLifeS(1.4, 2232, 1e-6));
    }
}
