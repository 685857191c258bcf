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
