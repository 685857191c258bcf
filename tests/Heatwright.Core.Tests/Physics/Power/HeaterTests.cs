using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Heaters: resistance over temperature, labels, self-limiting heaters, meters and supplies. Values computed by an independent script unless
/// a line says otherwise. Tolerance: half of the last printed digit.</summary>
public class HeaterTests
{
    /// <summary>[iec-60751] coefficients, from memory.</summary>
    [Fact]
    public void Platinum_follows_its_parabola_and_back()
    {
        Printed.Agree("HR-1", Printed.Computed, "138.5055, 175.8560, 212.0515",
            [.. ((double[])[100, 200, 300]).Select(celsius => HeaterOhms.ParabolaOhm(100, 3.9083e-3, -5.775e-7, celsius))]);
        // Exact inverse of the unrounded value; the printed resistance alone leaves 0.0001 K.
        Printed.Agrees("HR-2", Printed.Computed, "300.0000", HeaterOhms.ParabolaC(100, 3.9083e-3, -5.775e-7, 212.0515)!.Value, within: 2e-4);
    }

    [Fact]
    public void A_ceramic_heater_more_than_doubles_when_hot()
    {
        double hot = HeaterOhms.LinearOhm(2.2, 4.0e-3, 350, 25);
        Printed.Agree("HR-3", Printed.Computed, "2.3000, 5.0600, 1.68182, 0.73123, 6.22273, 2.70553", HeaterOhms.InrushFactor(4.0e-3, 350, 25), hot,
            DirectDrive.CurrentA(3.7, 2.2), DirectDrive.CurrentA(3.7, hot), DirectDrive.HeaterW(3.7, 2.2), DirectDrive.HeaterW(3.7, hot));
    }

    [Fact]
    public void A_heater_tells_its_own_temperature_as_well_as_its_slope_is_known()
    {
        Printed.Agree("HR-4", Printed.Computed, "184.091, 169.628", HeaterSensor.TemperatureC(3.60, 2.20, 4.0e-3, 25), HeaterSensor.TemperatureC(3.60, 2.20, 4.4e-3, 25));
        Printed.Agrees("HR-7", Printed.Computed, "5.7500", HeaterSensor.ErrorK(0.01, 2.3, 4.0e-3));
    }

    [Fact]
    public void A_slope_means_nothing_without_its_reference()
    {
        Printed.Agree("HR-5", Printed.Computed, "4.08163e-3, 4.26525e-3", HeaterOhms.Rereferred(1, 4.0e-3, 25, 20).SlopePerK, HeaterOhms.Rereferred(1, 3.93e-3, 20, 0).SlopePerK);
    }

    /// <summary>[gbt-1234] factors as read on a public page (published).</summary>
    [Fact]
    public void A_heating_alloy_hardly_changes()
    {
        Table table = Tables.Find("heating-alloy-factors");
        double[] at = table.Numbers("temperature");
        double[] nickelChromium = table.Numbers("Cr20Ni80");
        Printed.Agree("HR-6", Printed.Computed, "1.0215, 2.2572", HeaterOhms.Factor(at, nickelChromium, 350), 2.2 * HeaterOhms.Factor(at, nickelChromium, 500));
        Assert.Equal(11, table.Rows.Count);
        Assert.Equal(8, table.Columns.Count);
        Assert.All(table.Columns.Skip(1), column => Assert.Equal(1, table.Numbers(column.Name)[0]));
        Assert.Equal(0.968, HeaterOhms.Factor(at, table.Numbers("Cr27Al7Mo2"), 1000));
    }

    [Fact]
    public void Metals_rise_more_steeply_than_heating_alloys()
    {
        Table table = Tables.Find("heater-metal-slopes");
        Assert.Equal(0.003729, table.Row("platinum").Number("slope"));
        Assert.True(table.Row("nickel").Number("slope") > table.Row("tungsten").Number("slope"));
        Assert.True(Math.Abs(table.Row("nickel-chromium 80/20").Number("slope")) < 0.5e-3);
    }

    [Fact]
    public void Rereferring_leaves_every_resistance_where_it_was() => Gen.Select(Gen.Double[0.5, 50], Gen.Double[-1e-3, 5e-3], Gen.Double[0, 40], Gen.Double[0, 40], Gen.Double[0, 300])
        .Sample((ohm, slope, from, to, at) =>
        {
            (double other, double otherSlope) = HeaterOhms.Rereferred(ohm, slope, from, to);
            Assert.Equal(HeaterOhms.LinearOhm(ohm, slope, at, from), HeaterOhms.LinearOhm(other, otherSlope, at, to), 1e-9 * ohm);
            Assert.Equal(slope, HeaterOhms.SlopePerK(ohm, from, HeaterOhms.LinearOhm(ohm, slope, 350, from), 350), 1e-12);
        });

    [Fact]
    public void The_parabola_inverts() => Gen.Select(Gen.Double[-50, 600], Gen.Double[2e-3, 6e-3], Gen.Double[-6e-7, 8e-6]).Sample((at, a, b) =>
        Assert.Equal(at, HeaterOhms.ParabolaC(100, a, b, HeaterOhms.ParabolaOhm(100, a, b, at))!.Value, 1e-7));

    [Fact]
    public void Power_goes_with_the_square_of_the_voltage()
    {
        Printed.Agrees("HP-1", Printed.Computed, "20.000", HeaterLabel.PowerW(45, 18, 12));
        Printed.Agree("HP-2", Printed.Computed, "5.8800, 4.5633, 3.6300", [.. ((double[])[4.2, 3.7, 3.3]).Select(volts => HeaterLabel.PowerW(12, 6, volts))]);
    }

    [Theory]
    [InlineData("HP-3", 3.7, "180.6290, 3.61258, 311.14")]
    [InlineData("HP-4", 4.6, "243.5814, 4.87163, 480.91")]
    public void A_metal_heater_settles_far_below_what_its_cold_power_promises(string id, double volts, string printed)
    {
        double coldW = DirectDrive.HeaterW(volts, 2.2);
        VoltagePlateau settled = VoltageDriven.At(coldW, 4e-3, 0.02);
        Printed.Agree(id, Printed.Computed, printed, settled.RiseK, settled.HotPowerW, VoltageDriven.At(coldW, 0, 0.02).RiseK);
    }

    [Theory]
    [InlineData("PT-1", 6, "223.7698, 5.96309")]
    [InlineData("PT-2", 12, "249.0971, 6.72291")]
    [InlineData("PT-3", 24, "274.6624, 7.48987")]
    public void A_self_limiting_heater_hardly_follows_the_voltage(string id, double volts, string printed)
    {
        PtcBalance balance = Ptc.Balance(volts, 5, 220, 0.05, 0.03);
        Printed.Agree(id, Printed.Computed, printed, balance.AtC, balance.PowerW);
        Assert.Equal(volts * volts / 5, balance.InrushW, 1e-12); // PT-2: 28.80 W
    }

    [Fact]
    public void What_a_self_limiting_heater_takes_it_loses() => Gen.Select(Gen.Double[2, 30], Gen.Double[1, 50], Gen.Double[60, 280], Gen.Double[0, 0.15], Gen.Double[0.005, 0.2]).Sample((volts, least, switchC, beta, g) =>
    {
        PtcBalance balance = Ptc.Balance(volts, least, switchC, beta, g);
        Assert.Equal(volts * volts / Ptc.Ohm(least, switchC, beta, balance.AtC), balance.PowerW, 1e-9 * balance.InrushW);
        Assert.True(Ptc.Balance(volts * 1.1, least, switchC, beta, g).AtC > balance.AtC);
    });

    [Fact]
    public void A_heater_below_the_source_resistance_gains_power_as_it_warms() => Gen.Select(Gen.Double[3, 20], Gen.Double[0.05, 2], Gen.Double[0.05, 5]).Sample((open, source, heater) =>
    {
        double change = DirectDrive.HeaterW(open, heater * 1.001, source) - DirectDrive.HeaterW(open, heater, source);
        Assert.True(heater > source * 1.001 ? change < 0 : heater * 1.001 >= source || change > 0);
    });

    [Fact]
    public void Reading_a_sensor_in_the_heater_circuit_costs_duty()
    {
        Printed.Agrees("SS-1", Printed.Computed, "0.9000", Pwm.DutyCeiling(0.002, 0.020));
        Printed.Agrees("SS-2", Printed.Computed, "0.2400", HeaterSensor.SeriesErrorK(1e-6, 9.6, 40e-6));
        Printed.Agrees("SS-3", Printed.Computed, "240.00", Amplifier.ImpliedGain(3.0, 0.0125));
    }

    [Fact]
    public void Leads_and_meters_change_a_low_resistance()
    {
        Printed.Agree("ME-1", Printed.Computed, "93.6170, 6.818", OhmReading.HeaterShare(2.2, 0.15) * 100, 0.15 / 2.2 * 100);
        Printed.Agrees("ME-2", Printed.Computed, "0.92500", DirectDrive.CurrentA(3.7, 2.2, 1.8));
        double amps = DirectDrive.CurrentA(3.7, 2.2, 0.050);
        Printed.Agree("ME-3", Printed.Computed, "1.64444, 2.2000", amps, OhmReading.FromVoltAmpOhm(3.7, amps, 0.050));
        Assert.Equal(9.1, OhmReading.LessLeadsOhm(9.3, 0.2), 1e-12);
    }

    [Fact]
    public void A_supply_in_current_limit_is_not_at_its_set_voltage()
    {
        (double volts, double amps, double watts, bool limited) = OhmReading.BehindLimit(18, 1.2, 9.6);
        Printed.Agree("CC-1", Printed.Computed, "11.520, 13.824", volts, watts);
        Assert.True(limited && OhmReading.InLimit(volts, 18, amps, 1.2));
        Assert.False(OhmReading.InLimit(17.9, 18, 1.19, 1.2));
        Printed.Agrees("CC-1, not this", Printed.Computed, "33.750", DirectDrive.HeaterW(18, 9.6));
    }

    [Fact]
    public void Four_readings_give_an_efficiency_with_its_doubt()
    {
        ReadEfficiency read = EnergyChecks.Efficiency(3.70, 3.10, 9.00, 1.05);
        Printed.Agree("EB-1", Printed.Computed, "0.82389, 0.01648, 2.020, 0.2102", read.Share, read.ShareDoubt, read.LossW, read.LossDoubtW);
        Assert.Equal(ReadingFault.None, EnergyChecks.Judge(read, 1));
        Assert.Equal(ReadingFault.OutputExceedsInput, EnergyChecks.Judge(EnergyChecks.Efficiency(3.7, 2.4, 9, 1.05), 1));
        Assert.Equal(ReadingFault.HalfIsLost, EnergyChecks.Judge(EnergyChecks.Efficiency(3.7, 6, 9, 1.05), 1));
        Assert.Equal(ReadingFault.None, EnergyChecks.Judge(EnergyChecks.Efficiency(3.7, 0.05, 9, 0.005), 0.01));
    }

    [Fact]
    public void Readings_must_keep_their_energy()
    {
        Assert.True(EnergyChecks.RunAgrees(7.0 * 3600, 7200, 3.7));
        Assert.False(EnergyChecks.RunAgrees(8.0 * 3600, 7200, 3.7));
        Assert.False(EnergyChecks.RunAgrees(4.0 * 3600, 7200, 3.7));
        Assert.True(EnergyChecks.BelowStored(3.7, 1.0, 60, 1.5, 200)); // 222 J in, 300 J stored
        Assert.False(EnergyChecks.BelowStored(3.7, 2.0, 60, 1.5, 200));
        Assert.True(EnergyChecks.MetersDiffer(3.70, 3.75));
        Assert.False(EnergyChecks.MetersDiffer(3.70, 3.72));
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("referenceOhm", () => HeaterOhms.LinearOhm(-2.2, 4e-3, 350));
        Printed.Refuses("atC", () => HeaterOhms.LinearOhm(2.2, 4e-3, -300));
        Printed.Refuses("atC", () => HeaterOhms.LinearOhm(2.2, -4e-3, 400));
        Printed.Refuses("hotC", () => HeaterOhms.SlopePerK(2.2, 25, 3, 25));
        Printed.Refuses("atC", () => HeaterOhms.Factor([20, 100], [1, 1.01], 200));
        Printed.Refuses("labelV", () => HeaterLabel.PowerW(45, 0, 12));
        Printed.Refuses("leastOhm", () => Ptc.Balance(12, -5, 220, 0.05, 0.03));
        Printed.Refuses("readOhm", () => OhmReading.LessLeadsOhm(0.1, 0.2));
        Printed.Refuses("burdenOhm", () => OhmReading.FromVoltAmpOhm(3.7, 1.7, 5));
        Printed.Refuses("meterDoubt", () => EnergyChecks.Efficiency(1, 1, 1, 1, 2));
        Printed.Refuses("offS", () => Pwm.DutyCeiling(0.03, 0.02));
    }
}
