using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>[chen-2006] coefficients (published, read in a public transcription). Checks CH-1 to CH-12 (computed by an independent script);
/// the two reference tables were computed by a stiff solver. Tolerance: half of the last printed digit.</summary>
public class ClosedFormCellTests
{
    private static readonly TwoRcCircuit Half = ClosedFormCell.Circuit(0.5);

    [Theory]
    [InlineData("CH-1", 1.00, "4.1029, 0.074460, 0.046690, 703.60, 0.049840, 4475.0, 32.851, 223.03")]
    [InlineData("CH-2", 0.50, "3.803362, 0.074461, 0.046690, 702.72, 0.049840, 4475.0, 32.810, 223.03")]
    [InlineData("CH-3", 0.20, "3.725029, 0.075654, 0.047634, 653.10, 0.049840, 4448.3, 31.110, 221.70")]
    [InlineData("CH-4", 0.10, "3.674569, 0.088115, 0.064096, 508.61, 0.049841, 4072.9, 32.600, 203.00")]
    [InlineData("CH-5", 0.05, "3.516365, 0.120644, 0.121415, 320.45, 0.052656, 2914.4, 38.907, 153.46")]
    [InlineData("CH-6", 0.02, "3.177288, 0.170401, 0.225803, 128.97, 0.346112, 954.3, 29.121, 330.31")]
    public void Elements_follow_the_charge_left(string id, double charge, string printed)
    {
        TwoRcCircuit circuit = ClosedFormCell.Circuit(charge);
        Printed.Agree(id, Printed.Computed, printed, ClosedFormCell.OpenV(charge), circuit.SeriesOhm, circuit.ShortOhm, circuit.ShortF,
            circuit.LongOhm, circuit.LongF, circuit.ShortS, circuit.LongS);
    }

    [Fact]
    public void An_empty_cell_still_has_a_rested_voltage() => Printed.Agrees("CH-7", Printed.Computed, "2.6540", ClosedFormCell.OpenV(0));

    [Fact]
    public void Near_empty_the_fitted_capacitances_would_turn_negative_so_they_are_held_at_two_percent()
    {
        Assert.Equal(ClosedFormCell.Circuit(0.02), ClosedFormCell.Circuit(0.005));
        Assert.Equal(ClosedFormCell.Circuit(0.02), ClosedFormCell.Circuit(-0.01));
        // By hand: the raw fits cross zero at ln(752.9/703.6)/13.51 and ln(6056/4475)/27.12.
        Printed.Agree("capacitance zero crossings", Printed.Computed, "0.005013, 0.011156", Math.Log(752.9 / 703.6) / 13.51, Math.Log(6056.0 / 4475) / 27.12);
        Assert.True(ClosedFormCell.Circuit(0).ShortF > 0 && ClosedFormCell.Circuit(0).LongF > 0);
    }

    [Fact]
    public void The_table_of_the_published_model_is_met_row_by_row()
    {
        int rows = 0;
        foreach (string[] row in Printed.Rows("cells/model_chen_rincon_mora_2006.csv"))
        {
            TwoRcCircuit circuit = ClosedFormCell.Circuit(Printed.Number(row[0]));
            double[] worked = [ClosedFormCell.OpenV(Printed.Number(row[0])), circuit.SeriesOhm, circuit.ShortOhm, circuit.ShortF, circuit.LongOhm, circuit.LongF];
            // The file prints six significant digits and drops trailing zeros: half a unit of the sixth digit.
            for (int i = 0; i < worked.Length; i++)
            {
                double digit = 0.5000001 * Math.Pow(10, Math.Floor(Math.Log10(worked[i])) - 5);
                Printed.Agrees($"charge {row[0]}, column {i + 1}", Printed.Published, row[i + 1], worked[i], digit);
            }

            rows++;
        }

        Assert.Equal(20, rows);
    }

    [Fact]
    public void A_pulse_load_gives_the_voltages_of_the_stiff_solution()
    {
        // The elements move with the charge, so the exact update is taken in half-second steps with the elements of the middle of the step:
        // second order, error below 1e-6 V; the file prints 1e-6 V. Allowed: 3e-6 V.
        var state = new TwoRcState(1, 0, 0);
        double now = 0;
        double amps = 0;
        int rows = 0;
        foreach (string[] row in Printed.Rows("cells/model_chen_rincon_mora_pulse_0A8.csv"))
        {
            double until = Printed.Number(row[0]);
            while (now < until - 1e-9)
            {
                double middle = state.Charge - (amps * 0.25 / ClosedFormCell.CapacityAs);
                state = TwoRcCell.Advance(state, ClosedFormCell.Circuit(middle), amps, ClosedFormCell.CapacityAs, 0.5);
                now += 0.5;
            }

            amps = Printed.Number(row[1]);
            double volts = TwoRcCell.TerminalV(ClosedFormCell.OpenV(state.Charge), state, ClosedFormCell.Circuit(state.Charge).SeriesOhm, amps);
            Printed.Agrees($"t = {row[0]} s", Printed.Computed, row[3], volts, 3e-6);
            Printed.Agrees($"t = {row[0]} s charge", Printed.Computed, row[2], state.Charge, 1e-9);
            rows++;
        }

        Assert.Equal(104, rows);
    }

    [Fact]
    public void Resistance_grows_with_the_length_of_the_load()
    {
        Printed.Agree("CH-8", Printed.Computed, "74.625, 76.085", Half.OhmAfter(0.1) * 1000, Half.OhmAfter(1) * 1000);
        Printed.Agree("CH-9", Printed.Computed, "125.407, 167.608, 170.991", Half.OhmAfter(60) * 1000, Half.OhmAfter(600) * 1000, Half.SettledOhm * 1000);
        Printed.Agree("CH-10", Printed.Computed, "88.912, 3.727787", Half.OhmAfter(10) * 1000, ClosedFormCell.OpenV(0.5) - (0.85 * Half.OhmAfter(10)));
        // 171 mΩ after minutes against 75 mΩ of a fast tester.
        Printed.Agrees("note under CH-16", Printed.Computed, "2.29", Half.SettledOhm / Half.OhmAfter(0.1));
    }

    [Fact]
    public void One_step_charges_a_pair_and_a_rest_empties_it()
    {
        double charged = TwoRcCell.PairV(0, Half.ShortOhm, Half.ShortS, 1.5, 10);
        Printed.Agrees("CH-11", Printed.Computed, "0.018399", charged);
        Printed.Agrees("CH-12", Printed.Computed, "0.0073741", TwoRcCell.PairV(charged, Half.ShortOhm, Half.ShortS, 0, 30));
    }

    [Fact]
    public void The_standard_pulse_method_reports_near_the_series_resistor()
    {
        // 0.17 A for 10 s, then 0.85 A for 1 s, charge held; second method: the sums of exponentials written out.
        double first = ClosedFormCell.OpenV(0.5) - (0.17 * Half.OhmAfter(10));
        double second = ClosedFormCell.OpenV(0.5) - (0.17 * Half.OhmAfter(11)) - (0.68 * Half.OhmAfter(1));
        Printed.Agree("IR-2", Printed.Computed, "3.788247, 3.736297, 76.3970, 74.4608", first, second, PulseOhms.Ohm(first, 0.17, second, 0.85) * 1000, Half.SeriesOhm * 1000);
    }

    [Fact]
    public void Two_half_steps_are_one_whole_step() => Gen.Select(Gen.Double[-0.2, 0.2], Gen.Double[0.01, 0.5], Gen.Double[1, 500], Gen.Double[-2, 5], Gen.Double[0, 1000])
        .Sample((v, ohm, tau, amps, step) =>
        {
            double half = TwoRcCell.PairV(v, ohm, tau, amps, step / 2);
            Assert.Equal(TwoRcCell.PairV(v, ohm, tau, amps, step), TwoRcCell.PairV(half, ohm, tau, amps, step / 2), 1e-12);
        });

    [Fact]
    public void Energy_into_a_pair_is_stored_or_turned_to_heat() => Gen.Select(Gen.Double[0.01, 0.5], Gen.Double[10, 5000], Gen.Double[0.1, 5], Gen.Double[1, 1000])
        .Sample((ohm, farad, amps, seconds) =>
        {
            // Second routine: heat ∫v²/R dt in closed form for a pair that starts empty; v = RI(1 − e).
            double tau = ohm * farad;
            double volts = TwoRcCell.PairV(0, ohm, tau, amps, seconds);
            double e = Math.Exp(-seconds / tau);
            double given = ohm * amps * amps * (seconds - (tau * (1 - e)));
            double heat = ohm * amps * amps * (seconds - (2 * tau * (1 - e)) + (tau * (1 - (e * e)) / 2));
            double stored = farad * volts * volts / 2;
            Assert.Equal(given, heat + stored, 1e-9 * ohm * amps * amps * (seconds + tau));
        });

    [Fact]
    public void A_scaled_cell_keeps_its_time_constants() => Gen.Select(Gen.Double[0.1, 10], Gen.Double[0, 1]).Sample((factor, charge) =>
    {
        TwoRcCircuit circuit = ClosedFormCell.Circuit(charge);
        TwoRcCircuit scaled = circuit.Scaled(factor);
        Assert.Equal(circuit.ShortS, scaled.ShortS, 1e-9 * circuit.ShortS);
        Assert.Equal(circuit.OhmAfter(10) * factor, scaled.OhmAfter(10), 1e-12);
    });

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("charge", () => ClosedFormCell.OpenV(1.2));
        Printed.Refuses("seriesOhm", () => TwoRcCell.TerminalV(3.7, default, -0.1, 1));
        Printed.Refuses("tauS", () => TwoRcCell.PairV(0, 0.1, 0, 1, 1));
        Printed.Refuses("stepS", () => TwoRcCell.PairV(0, 0.1, 10, 1, -1));
        Printed.Refuses("loadOhm", () => TwoRcCell.CurrentThroughA(3.7, 0.1, 0));
        Printed.Refuses("factor", () => Half.Scaled(0));
        Printed.Refuses("capacityAs", () => TwoRcCell.Advance(default, Half, 1, 0, 1));
    }
}
