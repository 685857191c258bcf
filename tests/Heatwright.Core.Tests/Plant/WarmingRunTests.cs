using Heatwright.Plant;

namespace Heatwright.Tests.Plant;

/// <summary>A network that a recorded power warms: against exact solutions, and against the whole plant.</summary>
public sealed class WarmingRunTests
{
    /// <summary>20 J/K that lose 0.1 W/K under 10 W: 100 K·(1 − e^(−t/200 s)); a sensor of 5 s lag behind it: 100·(1 − (200·e^(−t/200) − 5·e^(−t/5))/195).</summary>
    [Fact]
    public void One_body_and_its_sensor_follow_the_exponentials()
    {
        double[] times = [0, 1, 7.5, 60, 61, 400];
        var network = new ThermalNetwork([new ThermalNode("end", 20, 0.1)], [], 293.15) { SensorLagS = 5 };
        double[][] kelvin = WarmingRun.Run(network, new Schedule(times, [10, 10, 10, 10, 10, 10]), times, 2);
        for (int i = 0; i < times.Length; i++)
        {
            Assert.Equal(293.15 + (100 * (1 - Math.Exp(-times[i] / 200))), kelvin[0][i], 1e-9);
            Assert.Equal(293.15 + (100 * (1 - (((200 * Math.Exp(-times[i] / 200)) - (5 * Math.Exp(-times[i] / 5))) / 195))), kelvin[1][i], 1e-9);
        }
    }

    /// <summary>The same body: its rise moves by −100 K·(t/200 s)·e^(−t/200 s) a unit of ln C, and by that less the rise itself a unit of ln G, the two by hand.</summary>
    [Fact]
    public void Slopes_of_one_body_are_those_of_the_exponential()
    {
        double[] times = [0, 1, 7.5, 60, 61, 400];
        var network = new ThermalNetwork([new ThermalNode("end", 20, 0.1)], [], 293.15);
        var slopes = new WarmingSlopes(network, [new(ThermalQuantity.HeatCapacity), new(ThermalQuantity.LinearLoss)], times.Length);
        WarmingRun.Run(network, new Schedule(times, [10, 10, 10, 10, 10, 10]), times, 2, slopes);
        for (int i = 0; i < times.Length; i++)
        {
            double late = 100 * (times[i] / 200) * Math.Exp(-times[i] / 200);
            Assert.Equal(-late, slopes.At(0, i)[0], 1e-9);
            Assert.Equal(late - (100 * (1 - Math.Exp(-times[i] / 200))), slopes.At(0, i)[1], 1e-9);
            Assert.Equal(slopes.At(0, i)[1], slopes.At(1, i)[1]);
        }
    }

    /// <summary>Networks drawn at random: slopes by every quantity of end, grip, link and sensor are those of two whole runs, each moved a little.</summary>
    [Theory, InlineData(1), InlineData(2), InlineData(3), InlineData(4), InlineData(5), InlineData(6)]
    public void Slopes_are_those_of_two_whole_runs(int seed)
    {
        var random = new Random(100 + seed);
        double Between(double low, double high) => low + ((high - low) * random.NextDouble());
        bool two = seed % 2 == 0, radiates = seed % 3 == 0;
        double[] made = [Between(0.5, 30), Between(0.01, 0.2), Between(1e-4, 3e-3), Between(20, 90), Between(0.1, 0.3), Between(0.005, 0.05), Between(0.5, 4)];
        double[] startK = [Between(295, 400), Between(295, 310)];
        ThermalNetwork Network(int moved, double by)
        {
            double[] q = [.. made.Select((value, i) => i == moved ? value * Math.Exp(by) : value)];
            ThermalNode end = new("end", q[0], q[1], seed == 3 ? 0.01 : 0, radiates ? q[2] : 0);
            return new([end, .. two ? [new ThermalNode("grip", q[3], q[4])] : Array.Empty<ThermalNode>()], two ? [new ThermalLink(0, 1, q[5])] : [], 295)
            {
                SensorLagS = seed < 4 ? q[6] : 0,
                StartK = startK[..(two ? 2 : 1)],
            };
        }

        List<(int Made, ThermalTerm Term)> all = [(0, new(ThermalQuantity.HeatCapacity)), (1, new(ThermalQuantity.LinearLoss))];
        all.AddRange(radiates ? [(2, new ThermalTerm(ThermalQuantity.RadiatingArea))] : []);
        all.AddRange(two ? [(3, new ThermalTerm(ThermalQuantity.HeatCapacity, 1)), (4, new(ThermalQuantity.LinearLoss, 1)), (5, new(ThermalQuantity.Link))] : []);
        all.AddRange(seed < 4 ? [(6, new ThermalTerm(ThermalQuantity.SensorLag))] : []);
        double[] times = new double[60];
        for (int i = 1; i < times.Length; i++)
        {
            times[i] = times[i - 1] + Between(0.2, 6);
        }

        var watts = new Schedule(times, [.. times.Select(_ => random.Next(3) == 0 ? 0 : Between(1, 30))]);
        var slopes = new WarmingSlopes(Network(-1, 0), [.. all.Select(pair => pair.Term)], times.Length);
        double[][] kelvin = WarmingRun.Run(Network(-1, 0), watts, times, 2, slopes);
        Assert.Equal(WarmingRun.Run(Network(-1, 0), watts, times, 2), kelvin);
        const double by = 1e-4;
        for (int t = 0; t < all.Count; t++)
        {
            double[][] above = WarmingRun.Run(Network(all[t].Made, by), watts, times, 2), below = WarmingRun.Run(Network(all[t].Made, -by), watts, times, 2);
            double largest = Enumerable.Range(0, times.Length).Max(i => Enumerable.Range(0, kelvin.Length).Max(row => Math.Abs(slopes.At(row, i)[t])));
            Assert.True(largest > 1e-3);
            for (int row = 0; row < above.Length; row++)
            {
                for (int i = 0; i < times.Length; i++)
                {
                    Assert.Equal((above[row][i] - below[row][i]) / (2 * by), slopes.At(row, i)[t], 1e-6 * Math.Max(1, largest));
                }
            }
        }
    }

    /// <summary>Networks drawn at random, with and without radiation, power that changes at odd times: the plant's runner, which shares the matrices and nothing else, says the same.</summary>
    [Theory, InlineData(1), InlineData(2), InlineData(3), InlineData(4), InlineData(5), InlineData(6)]
    public void The_whole_plant_says_the_same(int seed)
    {
        var random = new Random(seed);
        double Between(double low, double high) => low + ((high - low) * random.NextDouble());
        bool two = seed % 2 == 0, radiates = seed % 3 == 0;
        ThermalNode end = new("end", Between(0.5, 30), Between(0.01, 0.2), 0, radiates ? Between(1e-4, 3e-3) : 0);
        var network = new ThermalNetwork(two ? [end, new ThermalNode("grip", Between(20, 90), Between(0.1, 0.3), seed == 6 ? 0.02 : 0)] : [end], two ? [new ThermalLink(0, 1, Between(0.005, 0.05))] : [], 295)
        {
            SensorLagS = seed < 4 ? Between(0.5, 4) : 0,
            StartK = two ? [Between(295, 400), Between(295, 310)] : [Between(295, 400)],
        };
        double[] times = new double[200];
        for (int i = 1; i < times.Length; i++)
        {
            times[i] = times[i - 1] + Between(0.2, 6);
        }

        var watts = new Schedule(times, [.. times.Select(_ => random.Next(3) == 0 ? 0 : Between(1, 30))]);
        double[][] kelvin = WarmingRun.Run(network, watts, times, 2);
        var tool = new AssembledTool(null, new PathModel.Direct(), new LoadModel.RecordedPower(watts), network, new ControllerModel.Fixed(1)) { MaxS = times[^1] + 1 };
        var trace = PlantRunner.Run(tool, new RunSettings { Instants = times, StepS = 2 }).Trace;
        for (int i = 0; i < times.Length; i++)
        {
            Assert.Equal(trace.SensorK[i], kelvin[^1][i], 1e-8);
            Assert.Equal(trace.NodesK[0][i], kelvin[0][i], 1e-8);
            Assert.Equal(trace.NodesK[^1][i], kelvin[^2][i], 1e-8);
        }
    }
}
