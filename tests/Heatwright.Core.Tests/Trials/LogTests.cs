using Heatwright.Plant;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>Recorded loads and warm-ups, and what the slowest discharge tells. Every expected value by hand.</summary>
public sealed class LogTests
{
    private static CellLog Cell(double[] time, double[] amps, double[]? volts = null) => new("log", time, amps, volts ?? [.. time.Select(_ => 4.0)], [.. time.Select(_ => double.NaN)], 25);

    /// <summary>1 to 3 A over 10 s, 3 A over 20 s: 20 and 60 C; the plant is given the means, 2 and 3 A, and the last row's own.</summary>
    [Fact]
    public void Charge_runs_straight_between_rows()
    {
        var log = Cell([0, 10, 30], [1, 3, 3.5]);
        Assert.Equal([0, 20, 85], log.ChargeC());
        Assert.Equal([0, 10, 30], log.Drive().Times);
        Assert.Equal([2, 3.25, 3.5], log.Drive().Values);
        Assert.Equal(3, log.Count);
    }

    /// <summary>A fiftieth of the largest, 10 A: 0.2 A.</summary>
    [Theory, InlineData(9.79, false), InlineData(9.81, true), InlineData(-10, false)]
    public void A_row_is_steady_where_the_next_has_the_same_current(double next, bool steady)
    {
        Assert.Equal(steady, Cell([0, 1], [10, next]).Steady(0));
        Assert.True(Cell([0, 1], [10, next]).Steady(1));
        Assert.Equal(steady, Cell([0, 1], [-10, -next]).Steady(0));
    }

    private static readonly CellModel Linear = new(1000, new ChargeCurve.Table([0, 1], [3, 4]), new ChargeCurve.Flat(0.1), new ChargeCurve.Flat(0.02), 10, new ChargeCurve.Flat(0.03), 100);

    /// <summary>Open volts 3 + s, 0.1 Ω at once: 3.4 V at rest are a charge of 0.4; at 2 A they are 3.6 V open; of more than full 1.05 at most, of less than empty none.</summary>
    [Theory, InlineData(3.4, 0, 0.4), InlineData(3.4, 2, 0.6), InlineData(3.4, -2, 0.2), InlineData(9, 0, 1.05), InlineData(2, 0, 0)]
    public void Volts_tell_the_charge(double volts, double amps, double charge)
    {
        Assert.Equal(charge, CellBench.ChargeAt(Linear, volts, amps), 1e-9);
        Assert.Equal(charge, CellBench.StartCharge(Linear, Cell([0, 1], [amps, amps], [volts, volts])), 1e-9);

        // Counted charge goes before: 250 of 1000 C are gone.
        Assert.Equal(0.75, CellBench.StartCharge(Linear, Cell([0, 1], [amps, amps], [volts, volts]) with { TakenBeforeC = 250 }), 1e-12);
    }

    /// <summary>A cell by itself has nothing between it and what draws from it: 2 A at 3.5 V less 2 · 0.1 V are 6.6 W.</summary>
    [Fact]
    public void A_cell_on_the_bench_gives_its_own_volts()
    {
        var run = PlantRunner.Run(CellBench.Tool(Linear, 45, 0.05, Cell([0, 1], [2, 2]).Drive(), 0.5, 25, 25), new RunSettings { Instants = [0] });
        Assert.Equal((3.3, 6.6), (run.Trace.TerminalV[0], run.Trace.LoadW[0]), (a, b) => Math.Abs(a.Item1 - b.Item1) < 1e-9 && Math.Abs(a.Item2 - b.Item2) < 1e-9);
    }

    /// <summary>1 A from 1000 C: after t the open volts are those read and 1·(0.1 + 0.02·(1 − e^(−t/10)) + 0.03·(1 − e^(−t/100))) V, lifted by 0.001·s. At 25 °C the ohms are what they are; at the reference and without energy so everywhere.</summary>
    [Theory, InlineData(1.0), InlineData(2.0)]
    public void The_slow_discharge_tells_open_volts_once_its_drops_are_added(double amps)
    {
        double[] time = [0, 20 / amps, 500 / amps, 1000 / amps], taken = [0, 20, 500, 1000];
        double Drop(double t) => amps * (0.1 + (0.02 * (1 - Math.Exp(-t / 10))) + (0.03 * (1 - Math.Exp(-t / 100))));
        double Open(double s) => 3 + s;
        var log = Cell(time, [.. time.Select(_ => amps)], [.. time.Select((t, i) => Open(1 - (taken[i] / 1000)) - Drop(t))]);
        var curve = SlowDischarge.OpenCurve(log, Linear, new ChargeCurve.Flat(0.001));
        Assert.Equal(4.001, curve.At(1), 1e-9);
        Assert.Equal(3.981, curve.At(0.98), 1e-9);
        Assert.Equal(3.501, curve.At(0.5), 1e-9);
        Assert.Equal(3.001, curve.At(0), 1e-9);
        Assert.Equal(4.051, curve.At(1.05), 1e-9); // beyond full as steeply as just below: 1 V over the whole charge
        Assert.Equal(4.026, curve.At(1.025), 1e-9);
    }

    [Fact]
    public void Open_volts_never_rise_as_charge_goes()
    {
        var log = Cell([0, 500, 501, 1000], [1, 1, 0.998, 1], [4, 3.5, 3.6, 3]);
        var curve = SlowDischarge.OpenCurve(log, Linear, new ChargeCurve.Flat(0));
        Assert.Equal(curve.At(0.5) - 1e-5, curve.At(1 - (500.999 / 1000)), 1e-9);
    }

    /// <summary>20 kJ/mol and 308.15 K against 298.15 K: e^(20000/8.314462618·(1/308.15 − 1/298.15)) = 0.76957, of 0.1 Ω at 2 A 0.15391 V. A cell whose degrees were not read has those of its air.</summary>
    [Theory, InlineData(35, 20), InlineData(double.NaN, 35)]
    public void Warm_ohms_are_smaller(double cellC, double airC)
    {
        double factor = Math.Exp(20000 / 8.314462618 * ((1 / 308.15) - (1 / 298.15)));
        CellLog log = new("log", [0, 250, 500], [2, 2, 2], [3.8, 3.3, 2.8], [cellC, cellC, cellC], airC);
        Assert.Equal(3.8 + (0.2 * factor), SlowDischarge.OpenCurve(log, Linear with { ActivationJPerMol = 20000 }, new ChargeCurve.Flat(0)).At(1), 1e-9);
    }

    private static WarmUpLog Warm(double[] end, double timeDoubtS) => new("log", [0, 1, 3, 4], [8, 6, 2, 0], end, [.. end.Select(_ => double.NaN)], 20) { TimeDoubtS = timeDoubtS };

    /// <summary>Slopes over both neighbours: 10/1, 40/3, 40/3, 10/1 K/s; half a second of each beside 1 K. Where a neighbour was not read, 1 K.</summary>
    [Fact]
    public void A_time_in_doubt_is_a_doubt_of_degrees_where_they_run_fast()
    {
        double[] doubt = Warm([20, 30, 60, 70], 0.5).DoubtK();
        double[] expected = [Math.Sqrt(1 + 25), Math.Sqrt(1 + (400 / 9.0)), Math.Sqrt(1 + (400 / 9.0)), Math.Sqrt(1 + 25)];
        Assert.All(expected.Zip(doubt), pair => Assert.Equal(pair.First, pair.Second, 1e-12));
        Assert.Equal([1, Math.Sqrt(1 + (400 / 9.0)), 1, Math.Sqrt(26)], Warm([20, double.NaN, 60, 70], 0.5).DoubtK().Select((u, i) => i == 3 ? Math.Round(u, 12) : u), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal([1, 1, 1, 1], Warm([20, 30, 60, 70], 0).DoubtK());
        Assert.Equal([1], new WarmUpLog("one", [0], [1], [20], [20], 20) { TimeDoubtS = 5 }.DoubtK());
    }

    [Fact]
    public void Watts_between_two_rows_are_their_mean() => Assert.Equal([7, 4, 1, 0], Warm([20, 30, 60, 70], 0).Drive().Values);
}
