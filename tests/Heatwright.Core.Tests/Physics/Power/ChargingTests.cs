using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Charging. Values computed by an independent script. Tolerance: half of the last printed digit.</summary>
public class ChargingTests
{
    private const double Q = 0.62 * 3600;

    private static ChargeCourse Course(double amps, double ohm) => Charging.ConstantCurrentConstantVoltage(Q, amps, ohm, 0.75, 0.05, 0.031);

    [Fact]
    public void Constant_current_then_constant_voltage()
    {
        ChargeCourse half = Course(0.31, 0.15);
        Printed.Agree("CG-1", Printed.Computed, "0.9380, 106.560, 446.40, 17.1312, 123.6912, 34.596", half.TurnCharge, half.CurrentS / 60, half.TauS, half.VoltageS / 60, half.TotalS / 60, half.TailAs / 3.6);
        ChargeCourse full = Course(0.62, 0.15);
        // By hand 446.4 s · ln 20 = 22.288248 min; the last digits printed beside CG-2 (22.2883, 71.8483) are one too many.
        Printed.Agree("CG-2", Printed.Computed, "0.8760, 49.560, 22.2882, 71.8482", full.TurnCharge, full.CurrentS / 60, full.VoltageS / 60, full.TotalS / 60);
        ChargeCourse settled = Course(0.31, 0.45);
        Printed.Agree("CG-3", Printed.Computed, "0.8140, 91.680, 51.3937, 143.0737", settled.TurnCharge, settled.CurrentS / 60, settled.VoltageS / 60, settled.TotalS / 60);
        Printed.Agrees("CG-4", Printed.Computed, "0.99380", half.FinalCharge);
        Printed.Agrees("twice the current", Printed.Computed, "41.9", (1 - (full.TotalS / half.TotalS)) * 100);
    }

    [Fact]
    public void A_lower_end_voltage_leaves_charge_out() => Printed.Agree("row 'lower V_cv for life'", Printed.Computed, "94.69, 76.79, 93.00, 83.24",
        OcvTables.B.ChargeAt(4.10) * 100, OcvTables.B.ChargeAt(4.00) * 100, OcvTables.A.ChargeAt(4.10) * 100, OcvTables.A.ChargeAt(4.00) * 100);

    [Fact]
    public void A_linear_charger_folds_back_when_hot()
    {
        Printed.Agree("LC-1", Printed.Computed, "2.000, 1.300", ChargerHeat.HeatW(5, 3.0, 1), ChargerHeat.HeatW(5, 3.7, 1));
        Printed.Agree("LC-2", Printed.Computed, "0.58333, 0.89744, 1.29630", [.. ((double[])[3.0, 3.7, 4.1]).Select(volts => ChargerHeat.FoldBackA(5, 110, 40, 60, volts))]);
    }

    [Fact]
    public void Fold_back_slows_a_whole_charge()
    {
        var heat = new ChargerHeat(5, 110, 40, 60);
        ChargeCourse folded = Charging.OverTable(OcvTables.B, 7200, 0.15, 1.0, 4.2, 0.05, 0.1, heat);
        Printed.Agrees("LC-3 start", Printed.Computed, "0.67196", Charging.CurrentA(OcvTables.B.VoltsAt(0.05), 0.15, 1, 4.2, heat.MostA(OcvTables.B.VoltsAt(0.05), 0.15)));
        Printed.Agree("LC-3", Printed.Computed, "100.543, 0.81994, 138.67, 0.99553", folded.CurrentS / 60, folded.TurnCharge, folded.TotalS / 60, folded.FinalCharge);
        ChargeCourse cool = Charging.OverTable(OcvTables.B, 7200, 0.15, 1.0, 4.2, 0.05, 0.1);
        Printed.Agree("LC-3 without fold-back", Printed.Computed, "92.392, 0.81994, 130.52", cool.CurrentS / 60, cool.TurnCharge, cool.TotalS / 60);
    }

    [Fact]
    public void Over_a_straight_line_the_table_walk_is_the_closed_form() => Gen.Select(Gen.Double[0.1, 1], Gen.Double[0.05, 0.3], Gen.Double[0, 0.5]).Sample((amps, ohm, from) =>
    {
        // A line from 3.45 to 4.2 V has k = 0.75 V. The midpoint rule in the tail leaves about 1e-5.
        ChargeCourse closed = Charging.ConstantCurrentConstantVoltage(Q, amps, ohm, 0.75, from, amps / 15);
        ChargeCourse walked = Charging.OverTable(OcvTable.Line(3.45, 4.2), Q, ohm, amps, 4.2, from, amps / 15);
        Assert.Equal(closed.CurrentS, walked.CurrentS, 1e-6 * closed.CurrentS);
        Assert.Equal(closed.VoltageS, walked.VoltageS, 1e-4 * closed.VoltageS);
        Assert.Equal(closed.FinalCharge, walked.FinalCharge, 1e-9);
    }, iter: 30);

    [Fact]
    public void The_charge_put_in_is_the_current_over_time() => Gen.Select(Gen.Double[0.1, 1], Gen.Double[0.05, 0.3], Gen.Double[0, 0.5]).Sample((amps, ohm, from) =>
    {
        ChargeCourse course = Charging.ConstantCurrentConstantVoltage(Q, amps, ohm, 0.75, from, amps / 20);
        double tail = course.TauS * (amps - (amps / 20)); // integral of the exponential
        Assert.Equal(Q * (course.FinalCharge - from), (amps * course.CurrentS) + tail, 1e-9 * Q);
        Assert.Equal(tail, course.TailAs, 1e-9 * Q);
    });

    [Fact]
    public void A_nearly_full_cell_starts_in_the_tail()
    {
        ChargeCourse course = Charging.ConstantCurrentConstantVoltage(Q, 0.62, 0.15, 0.75, 0.95, 0.031);
        Assert.Equal(0, course.CurrentS);
        // By hand: first current 0.75·0.05/0.15 = 0.25 A; τ = 446.4 s; 446.4·ln(0.25/0.031) = 931.86 s.
        Assert.Equal(931.86, course.VoltageS, 0.05);
    }

    [Fact]
    public void Sockets_and_cables()
    {
        Printed.Agrees("US-1", Printed.Computed, "0.60811", ChargePower.BatteryA(5, 0.5, 0.9, 3.7));
        Printed.Agrees("US-2", Printed.Computed, "1.90909", ChargePower.SocketA(8.4, 1.0, 0.88, 5));
        Printed.Agree("US-3", Printed.Computed, "4.650, 4.250", ChargePower.AfterCableV(5, 1, 0.35), ChargePower.AfterCableV(5, 3, 0.25));
        Printed.Agrees("US-4", Printed.Computed, "1.30", ChargePower.LeftW(5, 1.5, 1, 6.2));
        Assert.True(ChargePower.NeverEnds(0.050, 0.031));
        Assert.False(ChargePower.NeverEnds(0.010, 0.031));
        Assert.Equal(3.0, Tables.Find("usb-sources").Row("Type-C 3 A").Number("current"));
        Assert.Equal(0, Tables.Find("charge-windows").Row("cold").Number("share"));
    }

    [Fact]
    public void A_bleed_resistor_balances_slowly() => Printed.Agree("BL-1", Printed.Computed, "67.7419, 1.4762",
        Charging.BleedA(4.2, 62) * 1000, Charging.BalanceS(0.05, 7200, 62, 4.2) / 3600);

    [Fact]
    public void What_comes_out_of_a_switching_charger_went_in() => Gen.Select(Gen.Double[3, 20], Gen.Double[0.1, 5], Gen.Double[0.5, 1], Gen.Double[2, 20]).Sample((inV, amps, efficiency, battery) =>
        Assert.Equal(amps, ChargePower.SocketA(battery, ChargePower.BatteryA(inV, amps, efficiency, battery), efficiency, inV), 1e-9 * amps));

    [Fact]
    public void A_folded_charger_makes_just_the_heat_it_can_shed() => Gen.Select(Gen.Double[2.8, 4.2], Gen.Double[0, 0.4], Gen.Double[0, 80], Gen.Double[30, 120]).Sample((open, ohm, around, thermal) =>
    {
        var heat = new ChargerHeat(5, 110, around, thermal);
        double amps = heat.MostA(open, ohm);
        if (double.IsFinite(amps))
        {
            Assert.Equal(heat.ShedW, ChargerHeat.HeatW(5, open + (amps * ohm), amps), 1e-9);
        }
    });

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("capacityAs", () => Charging.ConstantCurrentConstantVoltage(0, 1, 0.1, 0.75, 0, 0.05));
        Printed.Refuses("fromCharge", () => Charging.ConstantCurrentConstantVoltage(Q, 1, 0.1, 0.75, 1.2, 0.05));
        Printed.Refuses("cellOhm", () => Charging.ConstantCurrentConstantVoltage(Q, 1, -0.1, 0.75, 0, 0.05));
        Printed.Refuses("efficiency", () => ChargePower.BatteryA(5, 0.5, 1.2, 3.7));
        Printed.Refuses("batteryV", () => ChargerHeat.FoldBackA(5, 110, 40, 60, 5.5));
        Printed.Refuses("bleedOhm", () => Charging.BleedA(4.2, 0));
        Printed.Refuses("ThermalKPerW", () => new ChargerHeat(5, 110, 40, 0));
    }
}
