using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Cold, rate, spread, protection, heating, ageing and pulse laws of cells. Values computed by an independent script unless a line says
/// otherwise. Tolerance: half of the last printed digit.</summary>
public class CellLawTests
{
    private static double Kelvin(double celsius) => celsius + 273.15;

    /// <summary>[jow-low-temperature] for the form; activation energies from memory.</summary>
    [Theory]
    [InlineData("AR-1", 20e3, "2.9243, 2.0926, 1.5333, 0.6795, 0.6022")]
    [InlineData("AR-2", 30e3, "5.0008, 3.0271, 1.8986, 0.5601, 0.4673")]
    public void A_cold_cell_has_more_ohms(string id, double activation, string printed) => Printed.Agree(id, Printed.Computed, printed,
        [.. ((double[])[-10, 0, 10, 40, 45]).Select(celsius => Arrhenius.FactorAtC(celsius, activation))]);

    [Fact]
    public void Other_activation_energies_at_freezing() =>
        Printed.Agree("AR-3", Printed.Computed, "1.7399, 6.3346", Arrhenius.FactorAtC(0, 15e3), Arrhenius.FactorAtC(0, 50e3));

    [Fact]
    public void Two_measured_temperatures_give_the_activation_energy() =>
        Printed.Agrees("AR-4", Printed.Computed, "20.503", Arrhenius.ActivationJPerMol(0.145, Kelvin(5), 0.080, Kelvin(25)) / 1000);

    /// <summary>'3 to 5 times at −20 °C' stands on an engineering page (published, weak); the energies follow from it.</summary>
    [Fact]
    public void Three_to_five_times_at_minus_twenty_means_fifteen_to_twenty_two_kilojoules() => Printed.Agree("row E_a, whole cell", Printed.Computed, "15.3, 22.4",
        Arrhenius.ActivationJPerMol(3, Kelvin(-20), 1, Kelvin(25)) / 1000, Arrhenius.ActivationJPerMol(5, Kelvin(-20), 1, Kelvin(25)) / 1000);

    [Fact]
    public void Activation_energy_survives_the_round_trip() => Gen.Select(Gen.Double[5e3, 60e3], Gen.Double[-20, 20], Gen.Double[25, 60]).Sample((activation, cold, warm) =>
        Assert.Equal(activation, Arrhenius.ActivationJPerMol(Arrhenius.FactorAtC(cold, activation), Kelvin(cold), Arrhenius.FactorAtC(warm, activation), Kelvin(warm)), 1e-6 * activation));

    /// <summary>[doerffel-2006] for form and limits, from memory.</summary>
    [Fact]
    public void Peukert_gives_less_charge_at_more_current()
    {
        double seconds = RateCapacity.PeukertS(2.0 * 3600, 5 * 3600, 4, 1.05);
        Printed.Agree("PK-1", Printed.Computed, "0.44563, 1.78250", seconds / 3600, seconds * 4 / 3600);
        Printed.Agrees("PK-2", Printed.Computed, "1.05076", RateCapacity.PeukertExponent(1, 2.95, 3, 0.93));
    }

    [Fact]
    public void Peukert_with_exponent_one_is_capacity_over_current() => Gen.Select(Gen.Double[0.1, 50], Gen.Double[0.1, 20]).Sample((ah, amps) =>
        Assert.Equal(ah / amps * 3600, RateCapacity.PeukertS(ah * 3600, 5 * 3600, amps, 1), 1e-9 * ah / amps * 3600));

    /// <summary>From memory: 0.85 to 0.92 at 0 °C and 0.70 to 0.82 at −10 °C for an NMC cell; here the lower ends, in between by hand.</summary>
    [Fact]
    public void A_cold_cell_gives_less_of_its_capacity()
    {
        Heatwright.Handbook.TableRow row = Heatwright.Handbook.Tables.Find("cell-cold-capacity").Row("lithium NMC or NCA");
        double zero = row.Number("at-0-low");
        double minusTen = row.Number("at-minus-10-low");
        double[] shares = [.. ((double[])[40, 25, 12.5, 0, -5, -10, -20]).Select(celsius => RateCapacity.ColdShare(celsius, zero, minusTen))];
        Assert.All(shares.Zip((double[])[1, 1, 0.925, 0.85, 0.775, 0.70, 0.70]), pair => Assert.Equal(pair.Second, pair.First, 1e-12));
    }

    [Fact]
    public void Sag_cuts_capacity_off_in_a_cliff() => Printed.Agree("EM-1", Printed.Computed, "1.9749, 1.9548, 1.8335, 1.3489",
        [.. ((double[])[0.4, 2, 6, 10]).Select(amps => RateCapacity.GivenAs(OcvTables.B, 7200, 0.080, amps, 2.8) / 3600)]);

    /// <summary>Order statistics of the normal distribution, as printed in statistical tables.</summary>
    [Fact]
    public void The_weakest_of_n_lies_so_many_spreads_below_the_mean() => Printed.Agree("e_n", Printed.Computed, "0.56419, 0.84628, 1.02938, 1.16296, 1.26721",
        [.. Enumerable.Range(2, 5).Select(CellSpread.ExpectedShortfall)]);

    [Fact]
    public void Two_and_three_have_closed_forms()
    {
        // 1/√π and 3/(2√π): the known closed forms, a second method.
        Assert.Equal(1 / Math.Sqrt(Math.PI), CellSpread.ExpectedShortfall(2), 1e-12);
        Assert.Equal(1.5 / Math.Sqrt(Math.PI), CellSpread.ExpectedShortfall(3), 1e-12);
        Assert.Equal(0, CellSpread.ExpectedShortfall(1), 1e-12);
    }

    [Fact]
    public void The_weakest_cell_of_a_string()
    {
        Printed.Agrees("SP-1", Printed.Computed, "1.9492", CellSpread.MeanWeakestAs(2.0, 3, 1, 0.03));
        Printed.Agrees("SP-2", Printed.Computed, "3.9282", CellSpread.MeanWeakestAs(4.0, 3, 2, 0.03));
        Printed.Agree("SP-3", Printed.Computed, "-1.81828, 1.8909", (CellSpread.WeakestAtRiskAs(1, 3, 1, 0.03, 0.10) - 1) / 0.03, CellSpread.WeakestAtRiskAs(2.0, 3, 1, 0.03, 0.10));
    }

    [Fact]
    public void A_pack_cutoff_alone_drives_the_weak_cell_down()
    {
        double given = CellSpread.GivenWithPackCutoffAs(OcvTables.B, [7200, 6480], 0.080, 2, 5.6);
        Printed.Agree("SP-4", Printed.Computed, "1.7946, 3.176, 2.424", given / 3600, OcvTables.B.VoltsAt(1 - (given / 7200)) - 0.16, OcvTables.B.VoltsAt(1 - (given / 6480)) - 0.16);
        double guarded = CellSpread.GivenWithCellCutoffAs(OcvTables.B, [7200, 6480], 0.080, 2, 2.8);
        Printed.Agree("SP-5", Printed.Computed, "1.7593, 3.207", guarded / 3600, OcvTables.B.VoltsAt(1 - (guarded / 7200)) - 0.16);
    }

    /// <summary>[protection-ic-guide]: 0.150 V and 25 mΩ stand for 3 A there (published); the hot factor is common practice, no source.</summary>
    [Fact]
    public void Protection_trips_at_half_the_detection_voltage_over_one_switch()
    {
        Printed.Agree("PR-1", Printed.Published, "3.0000", Protection.TripA(0.150, 0.025));
        Printed.Agree("PR-1 hot", Printed.Practice, "2.3077", Protection.TripA(0.150, 0.025, Protection.HotSwitchFactor));
        Assert.True(Protection.MayTrip(1.7, Protection.TripA(0.150, 0.025, 1.3)));
        Assert.False(Protection.MayTrip(1.6, Protection.TripA(0.150, 0.025, 1.3)));
    }

    [Fact]
    public void A_label_that_does_not_fit_the_can_is_not_believed()
    {
        double volume = Protection.CylinderM3(0.018, 0.065);
        Printed.Agree("PR-2", Printed.Computed, "16.5405, 761.8, 2214.6", volume * 1e6, 3.5 * 3.6 / (volume * 1000), 9.9 * 3.7 / (volume * 1000));
        Assert.True(Protection.LabelIsCredible(3.5 * 3.6 * 3600, volume));
        Assert.False(Protection.LabelIsCredible(9.9 * 3.7 * 3600, volume));
        Assert.False(Protection.LabelIsCredible(3.5 * 3.6 * 3600, volume, 0.040)); // 315 Wh/kg
    }

    [Fact]
    public void A_small_cell_is_asked_for_twice_its_capacity_an_hour()
    {
        Printed.Agrees("check 'C-rate'", Printed.Computed, "2.097", Protection.PerHour(1.3, 0.62 * 3600));
        Assert.Equal(CellLoad.TooMuch, Protection.LoadOf(1.3, 0.62 * 3600));
        Assert.Equal(CellLoad.NearLimit, Protection.LoadOf(1.3, 0.62 * 3600, 1.5));
        Assert.Equal(CellLoad.Fine, Protection.LoadOf(1.3, 0.62 * 3600, 5));
    }

    /// <summary>[bernardi-1985], from memory; film coefficient and heat capacity common practice, no source.</summary>
    [Fact]
    public void A_cell_warms_itself()
    {
        double area = SelfHeating.CylinderAreaM2(0.018, 0.065);
        double thermal = SelfHeating.KPerW(10, area);
        double tau = SelfHeating.TauS(0.045, 1000, thermal);
        Printed.Agrees("SH-1", Printed.Computed, "41.8460", area * 1e4);
        Printed.Agree("SH-2", Printed.Computed, "23.8971, 1075.37", thermal, tau);
        double heat = SelfHeating.LossW(5, 0.040);
        Printed.Agree("SH-3", Printed.Computed, "1.0000, 23.8971, 10.2188", heat, SelfHeating.RiseK(heat, thermal, tau, 1e7), SelfHeating.RiseK(heat, thermal, tau, 600));
        Printed.Agrees("SH-4", Printed.Computed, "0.1491", SelfHeating.ReversibleW(5, 298.15, -1e-4));
    }

    /// <summary>[schmalstieg-2014] coefficients (published, read in a public transcription).</summary>
    [Fact]
    public void A_cell_ages_on_the_shelf_and_in_use()
    {
        const double year = 365 * 86400.0;
        Printed.Agree("AG-1", Printed.Computed, "2.86776e-04, 2.3948, 5.0654", Ageing.StorageCapacityFactor(3.70, Kelvin(25)),
            Ageing.StorageFadeAtC(3.70, 25, year) * 100, Ageing.StorageOhmsGain(3.70, Kelvin(25), year) * 100);
        Printed.Agree("AG-2", Printed.Computed, "12.6736, 22.0394", Ageing.StorageFadeAtC(4.10, 40, year) * 100, Ageing.StorageOhmsGain(4.10, Kelvin(40), year) * 100);
        Printed.Agree("AG-3", Printed.Computed, "4.4013, 8.9450", Ageing.StorageFadeAtC(4.162, 25, year) * 100, Ageing.StorageOhmsGain(4.162, Kelvin(25), year) * 100);
        double throughput = Ageing.PublishedThroughputAs(300, 0.8);
        Printed.Agree("AG-4", Printed.Computed, "1032, 12.9553, 21.5445", throughput / 3600, Ageing.CycleFade(3.70, 0.8, throughput) * 100, Ageing.CycleOhmsGain(3.70, 0.8, throughput) * 100);
        Printed.Agrees("AG-2 over AG-1", Printed.Computed, "5.3", Ageing.StorageFadeAtC(4.10, 40, year) / Ageing.StorageFadeAtC(3.70, 25, year));
    }

    [Fact]
    public void Warmer_fuller_and_longer_storage_costs_more() => Gen.Select(Gen.Double[3.3, 4.1], Gen.Double[0, 55], Gen.Double[1, 1000]).Sample((volts, celsius, days) =>
    {
        double here = Ageing.StorageFadeAtC(volts, celsius, days * 86400);
        Assert.True(Ageing.StorageFadeAtC(volts + 0.05, celsius, days * 86400) > here);
        Assert.True(Ageing.StorageFadeAtC(volts, celsius + 1, days * 86400) > here);
        Assert.True(Ageing.StorageFadeAtC(volts, celsius, (days + 1) * 86400) > here);
    });

    /// <summary>[iec-61960-3] direct-current method, standard not read.</summary>
    [Fact]
    public void Two_loads_give_the_resistance()
    {
        Printed.Agrees("IR-1", Printed.Computed, "104.839", PulseOhms.Ohm(3.815, 0.124, 3.763, 0.620) * 1000);
        double half = 0.0005 / Math.Sqrt(3);
        Printed.Agrees("doubt of a 1 mV meter", Printed.Computed, "0.823", PulseOhms.DoubtOhm(half, half, 0.496) * 1000);
        Printed.Agree("OC-1", Printed.Computed, "107.6923, 3.75077", PulseOhms.Ohm(3.740, 0.1, 3.600, 1.4) * 1000, PulseOhms.OpenV(3.740, 0.1, 3.600, 1.4));
        Printed.Agrees("OC-2", Printed.Computed, "3.7590", PulseOhms.OpenBetweenV(3.742, 3.776));
    }

    [Fact]
    public void Two_readings_of_a_true_cell_give_it_back() => Gen.Select(Gen.Double[3, 4.2], Gen.Double[0.01, 0.5], Gen.Double[0, 1], Gen.Double[0.1, 2]).Sample((open, ohm, amps, step) =>
    {
        double first = open - (ohm * amps);
        double second = open - (ohm * (amps + step));
        Assert.Equal(ohm, PulseOhms.Ohm(first, amps, second, amps + step), 1e-9);
        Assert.Equal(open, PulseOhms.OpenV(first, amps, second, amps + step), 1e-9);
        Assert.Equal(open, PulseOhms.OpenFromOneV(first, amps, ohm), 1e-12);
        Assert.Equal(ohm, PulseOhms.LongRunOhm(open, second - 0.02, amps + step, 0.1, 0.2), 1e-9);
    });

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("cellK", () => Arrhenius.Factor(20e3, 0));
        Printed.Refuses("activationJPerMol", () => Arrhenius.FactorAtC(0, -1));
        Printed.Refuses("warmK", () => Arrhenius.ActivationJPerMol(1, 300, 2, 300));
        Printed.Refuses("secondA", () => PulseOhms.Ohm(3.8, 1, 3.7, 1));
        Printed.Refuses("stepA", () => PulseOhms.DoubtOhm(0.001, 0.001, 0));
        Printed.Refuses("exponent", () => RateCapacity.PeukertS(7200, 18000, 1, 0.9));
        Printed.Refuses("secondA", () => RateCapacity.PeukertExponent(1, 10, 1, 20));
        Printed.Refuses("risk", () => CellSpread.WeakestAtRiskAs(7200, 3, 1, 0.03, 1));
        Printed.Refuses("spread", () => CellSpread.MeanWeakestAs(7200, 3, 1, -0.03));
        Printed.Refuses("groups", () => CellSpread.ExpectedShortfall(0));
        Printed.Refuses("switchOhm", () => Protection.TripA(0.15, -0.02));
        Printed.Refuses("cellOhm", () => SelfHeating.LossW(5, -0.04));
        Printed.Refuses("depth", () => Ageing.CycleFade(3.7, 1.2, 1000));
        Printed.Refuses("storedV", () => Ageing.StorageCapacityFactor(0, 300));
    }
}
