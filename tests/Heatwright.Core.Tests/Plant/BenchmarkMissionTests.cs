using System.Globalization;
using Heatwright.Plant;

namespace Heatwright.Tests.Plant;

/// <summary>The whole coupled tool against an independent solution: adaptive Runge–Kutta of order 8 and an implicit Radau method agree on it to
/// 1e-8 (computed with a general scientific library from the text of the mission; data in tests/reference/missions).</summary>
public class BenchmarkMissionTests
{
    private static readonly PlantRun Run = PlantRunner.Run(Mission1.Tool, new RunSettings { Instants = [.. Rows().Select(row => row[0])], StepS = 0.25 });

    [Fact]
    public void Run_time_matches() => Assert.Equal(3654.170656, Run.RunTimeS, 3654.170656 * 1e-6);

    [Fact]
    public void It_ends_at_the_cut_off_after_116_cuts()
    {
        Assert.Equal(StopReason.CutOff, Run.Stop);
        Assert.Equal(116, Run.WorkDone);
    }

    [Fact]
    public void Energies_and_charge_match()
    {
        Assert.Equal(75450.39499, Run.Energies.LoadJ, 75450 * 1e-5);
        Assert.Equal(77574.48028, Run.Energies.TerminalJ, 77574 * 1e-5);
        Assert.Equal(80052.57979, Run.Energies.BehindOhmsJ, 80052 * 1e-5);
        Assert.Equal(10700.21865, Run.Energies.ChargeC, 10700 * 1e-5);
        Assert.Equal(7313.52111, Run.Energies.WorkJ, 7313 * 1e-5);
        Assert.Equal(3829.6958, Run.Energies.StoredJ, 3829.6958 * 1e-4);
        Assert.Equal(15290.5162 + 32253.5969 + 6950.1356 + 9812.9293, Run.Energies.AirJ, 64307 * 1e-5);
    }

    [Fact]
    public void Every_state_at_every_instant_matches()
    {
        double[][] rows = [.. Rows()];
        Assert.Equal(52, rows.Length);
        Assert.All(rows.Select((row, i) => (row, i)), pair =>
        {
            var (row, i) = pair;
            if (row[0] > Run.RunTimeS)
            {
                return;
            }

            for (int node = 0; node < 4; node++)
            {
                Assert.Equal(row[1 + node], Run.Trace.NodesK[node][i] - 273.15, 0.02);
            }

            Assert.Equal(row[5], Run.Trace.SensorK[i] - 273.15, 0.02);
            Assert.Equal(row[6], Run.Trace.ChargeLeft[i], 1e-5);
            Assert.Equal(row[8], Run.Trace.Duty[i], 1e-3);
            Assert.Equal(row[9], Run.Trace.TerminalV[i], 2e-4);
        });
    }

    [Fact]
    public void Lowest_temperatures_of_the_cuts_match()
    {
        // Cut number, printed lowest sampled tip temperature, °C.
        (int Cut, double LowestC)[] printed =
            [(1, 391.625739), (2, 392.270671), (6, 393.247463), (21, 392.912511), (61, 392.047811), (91, 382.198057), (101, 374.834965), (116, 340.076546)];
        Assert.All(printed, cut => Assert.Equal(cut.LowestC, Run.LowestAtWorkK[cut.Cut - 1] - 273.15, 0.02));
    }

    /// <summary>What the mission comes to with one piece of physics left out, each computed apart with that piece left out (printed to the digits below): run time,
    /// sensor at 395 °C, tip at 600 s and 3000 s, joule out of the pack.</summary>
    [Theory]
    [InlineData("nothing", 142.277, 3654.171, 404.168, 389.107, 77574.5)]
    [InlineData("heater coefficient", 107.140, 3435.921, 403.873, 403.811, 76580.2)]
    [InlineData("RC pair", 136.236, 3679.671, 404.167, 394.031, 78662.7)]
    [InlineData("wiring ohms", 129.311, 3694.736, 404.116, 398.878, 77507.7)]
    [InlineData("radiation", 108.457, 6412.188, 404.441, 404.363, 77975.3)]
    [InlineData("power of the pulses", 158.865, 3481.098, 403.038, 375.389, 77517.7)]
    [InlineData("work", 142.277, 3964.370, 400.083, 400.000, 77649.4)]
    public void Each_piece_of_physics_left_out_gives_what_was_computed_without_it(string leftOut, double readyS, double runTimeS, double at600C, double at3000C, double packJ)
    {
        var tool = leftOut switch
        {
            "heater coefficient" => Mission1.Tool with { Load = new LoadModel.Heater(1.60, 0, 293.15) },
            "RC pair" => Mission1.Tool with
            {
                Pack = new PackModel(new CellModel(Mission1.Cell.CapacityC, Mission1.Cell.OpenV, Mission1.Cell.R0Ohm, new ChargeCurve.Flat(0), 20, new ChargeCurve.Flat(0), 200), 2, 1, 0.060),
            },
            "wiring ohms" => Mission1.Tool with { Pack = new PackModel(Mission1.Cell, 2, 1, 0) },
            "radiation" => Mission1.Tool with
            {
                Network = Mission1.Network with { Nodes = [.. Mission1.Network.Nodes.Select(node => new ThermalNode(node.Name, node.CapacityJPerK, node.LinearWPerK, node.ConvectionWPerK125))] },
            },
            "power of the pulses" => Mission1.Tool with { TakesMeanVoltsForPower = true },
            "work" => Mission1.Tool with { Work = null },
            _ => Mission1.Tool,
        };
        var run = PlantRunner.Run(tool with { Marks = [new("ready", -1, 668.15)] }, new RunSettings { StepS = 0.25, Instants = [600, 3000] });
        Assert.Equal(readyS, run.Events.Single(one => one.Name == "ready").AtS, 0.01);
        Assert.Equal(runTimeS, run.RunTimeS, 0.01);
        Assert.Equal(at600C, run.Trace.NodesK[1][0] - 273.15, 0.01);
        Assert.Equal(at3000C, run.Trace.NodesK[1][1] - 273.15, 0.01);
        Assert.Equal(packJ, run.Energies.TerminalJ, 1);
    }

    [Fact]
    public void Heat_in_is_heat_stored_lost_and_worked()
    {
        var e = Run.Energies;
        Assert.Equal(e.LoadJ, e.StoredJ + e.AirJ + e.WorkJ, 2e-5 * e.LoadJ);
    }

    /// <summary>By hand: flat 4 V behind 0.1 Ω at once and 0.1 Ω slowly, a drain of 0.5 A, 3.8 Ω. All flowing, 4 − 0.2·(I + 0.5) = 3.8·I, so I = 0.975 A and 1.475 A leave at 3.705 V: 5.464875 W at the terminals, of which 3.612375 W heat
    /// and 1.8525 W drain; 0.2·1.475² = 0.435125 W are lost within, and 4 · 1.475 = 5.9 W leave the cells. Behind the instant ohms stand 3.8525 V: 5.6824375 W.</summary>
    [Fact]
    public void The_sums_of_energy_close_with_a_drain()
    {
        const double S = 4000;
        var cell = new CellModel(1e6, new ChargeCurve.Flat(4), new ChargeCurve.Flat(0.1), new ChargeCurve.Flat(0.1), 1, new ChargeCurve.Flat(0), 1);
        var tool = new AssembledTool(new PackModel(cell, 1, 1, 0), new PathModel.Direct(), new LoadModel.Heater(3.8, 0, 293.15), new ThermalNetwork([new("end", 50, 0.05)], [], 293.15), new ControllerModel.Fixed(1)) { DrainOnA = 0.5, DrainOffA = 0.5, MaxS = S };
        var e = PlantRunner.Run(tool, new RunSettings { StepS = 0.25 }).Energies;
        Assert.Equal(5.464875, e.TerminalJ / S, 2e-4);
        Assert.Equal(5.464875, (e.LoadJ + e.DrainJ + e.LoopLossJ + e.PathLossJ) / S, 2e-4);
        Assert.Equal(1.8525, e.DrainJ / S, 2e-4);
        Assert.Equal(5.9, e.OutOfCellsJ / S, 2e-4);
        Assert.Equal(5.6824375, e.BehindOhmsJ / S, 2e-4);
        Assert.Equal(e.OutOfCellsJ, e.TerminalJ + e.CellLossJ, 1e-6);
    }

    [Fact]
    public void Half_the_step_changes_nothing_that_matters()
    {
        var fine = PlantRunner.Run(Mission1.Tool, new RunSettings { StepS = 0.125 });
        Assert.Equal(Run.RunTimeS, fine.RunTimeS, 0.005);
    }

    private static IEnumerable<double[]> Rows() => File.ReadLines(Repository.Reference("missions/mission_benchmark.csv")).Skip(2)
        .Where(line => line.Length > 0)
        .Select(line => line.Split(',').Select(field => double.Parse(field, CultureInfo.InvariantCulture)).ToArray());
}
