using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Whole discharges of the published two-pair cell to 3.0 V: checks CH-13 to CH-16 (computed by an independent script), the load laws of
/// <see cref="TwoRcCell"/> under them. Tolerance: half of the last printed digit; the loop here steps 0.05 s at the elements of the middle of
/// the step, and finds the end inside the step.</summary>
public class CellRunTests
{
    [Fact]
    public void Constant_current() => Run("CH-13", "3497.5, 0.82579, 3.03748, 0.02848", (_, _) => 0.85);

    [Fact]
    public void A_fifth_of_the_current_gets_more_out() => Run("CH-14", "17713.3, 0.83646, 3.16833", (_, _) => 0.17);

    [Fact]
    public void Constant_resistance() => Run("CH-15", "4047.0, 0.82926, 3.06390", (emf, ohm) => TwoRcCell.CurrentThroughA(emf, ohm, 5));

    [Fact]
    public void Constant_power() => Run("CH-16", "3644.0, 0.82404, 3.03669", (emf, ohm) => TwoRcCell.CurrentAtPowerA(emf, ohm, 3)!.Value);

    [Fact]
    public void A_cell_that_cannot_give_the_power_has_no_current() => Assert.Null(TwoRcCell.CurrentAtPowerA(3, 0.5, 4.6)); // 3²/(4·0.5) = 4.5 W at most

    private static void Run(string id, string printed, Func<double, double, double> loadA)
    {
        const double step = 0.05;
        var state = new TwoRcState(1, 0, 0);
        double seconds = 0;
        double joules = 0;
        (double amps, double volts) = At(state);
        while (true)
        {
            TwoRcState middle = Advanced(state, amps, step / 2);
            (double middleA, double middleV) = At(middle);
            TwoRcCircuit circuit = ClosedFormCell.Circuit(middle.Charge);
            TwoRcState next = TwoRcCell.Advance(state, circuit, middleA, ClosedFormCell.CapacityAs, step);
            (double nextA, double nextV) = At(next);
            if (nextV < 3.0)
            {
                double share = (volts - 3.0) / (volts - nextV); // straight inside one short step
                seconds += share * step;
                joules += share * step * 3.0 * middleA;
                state = TwoRcCell.Advance(state, circuit, middleA, ClosedFormCell.CapacityAs, share * step);
                break;
            }

            (state, seconds, amps, volts) = (next, seconds + step, nextA, nextV);
            joules += step * middleV * middleA;
        }

        double[] worked = [seconds, (1 - state.Charge) * 0.85, joules / 3600, state.Charge];
        Printed.Agree(id, Printed.Computed, printed, worked[..printed.Split(',').Length]);

        TwoRcState Advanced(TwoRcState from, double current, double time) =>
            TwoRcCell.Advance(from, ClosedFormCell.Circuit(from.Charge), current, ClosedFormCell.CapacityAs, time);

        (double Amps, double Volts) At(TwoRcState at)
        {
            double ohm = ClosedFormCell.Circuit(at.Charge).SeriesOhm;
            double emf = TwoRcCell.EmfV(ClosedFormCell.OpenV(at.Charge), at);
            double current = loadA(emf, ohm);
            return (current, emf - (current * ohm));
        }
    }
}
