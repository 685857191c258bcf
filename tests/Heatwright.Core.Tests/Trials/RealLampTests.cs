using Heatwright.Numerics;
using Heatwright.Plant;

namespace Heatwright.Tests.Trials;

/// <summary>A steel plate under a lamp of which only the drive volts are known: the first half of its log, at 9 and 4 V, tells the second, at 8, 3, 7 and 6 V.</summary>
/// <remarks>Watts are in units of their own, so the plate's heat capacity is set and the rest follows it. The plate loses heat in proportion and by radiation; what stands around it warms more slowly and is not read;
/// its warmth at the start is searched, for the log's first value is all that is known of the time before. A lamp's power goes with some power of its volts: 1.6, within 0.1 (common practice, no source).</remarks>
public class RealLampTests(ITestOutputHelper output)
{
    private const double AirK = 298.15;
    private const double PlateJPerK = 20;
    private const int Exponent = 7;

    /// <summary>Logarithms, but of the exponent: power at 6 V, loss, radiating area, the other body's heat capacity, the link to it, its loss, its rise at the start; the exponent; lag.</summary>
    private static readonly double[] Likely = [Math.Log(20), Math.Log(0.2), Math.Log(0.01), Math.Log(30), Math.Log(0.3), Math.Log(0.02), Math.Log(60), 1.6, Math.Log(0.5)];

    private static readonly double[] Doubt = [2, 1, 1, 1, 1, 1.5, 0.5, 0.1, 1];

    [Fact]
    public void The_second_half_follows_from_the_first_within_three_kelvin()
    {
        double[][] rows = [.. RealLogs.Rows("thermal/halogen_lamp_steel_plate.csv")];
        Assert.Equal(801, rows.Length);
        int half = Array.FindIndex(rows, row => row[0] > 800);
        double[][] first = rows[..half];
        double startK = first[0][2] + 273.15;
        var fit = LeastSquares.FitFromSeveralStarts(
            new LeastSquaresProblem((p, left) => Left(p, first, startK, left), half, Likely)
            {
                PriorMean = Likely,
                PriorDoubt = Doubt,
            },
            [[.. Likely.Select((value, i) => value + ((i % 2 == 0 ? 0.4 : -0.4) * Doubt[i]))], [.. Likely.Select((value, i) => value - ((i % 3 == 0 ? 0.4 : -0.4) * Doubt[i]))]]);
        double[] left = new double[rows.Length];
        Left(fit.Parameters, rows, startK, left);
        double fitted = Rms(left[..half]), predicted = Rms(left[half..]);
        output.WriteLine($"{fitted:0.00} K on the first half, {predicted:0.00} K on the second; power as volts to the {fit.Parameters[Exponent]:0.00}; {fit.Why}");
        Assert.True(fit.Converged);
        Assert.InRange(fitted, 0.1, 1);
        Assert.InRange(predicted, 0.1, 3);

        static double Rms(double[] values) => Math.Sqrt(values.Average(value => value * value));
    }

    private static void Left(ReadOnlySpan<double> p, double[][] rows, double startK, Span<double> left)
    {
        double power = Math.Exp(p[0]), exponent = p[Exponent];
        var network = new ThermalNetwork(
            [new("plate", PlateJPerK, Math.Exp(p[1]), 0, Math.Exp(p[2])), new("around it", Math.Exp(p[3]), Math.Exp(p[5]))],
            [new(0, 1, Math.Exp(p[4]))], AirK)
        {
            SensorLagS = Math.Exp(p[8]),
            StartK = [startK, AirK + Math.Exp(p[6])],
        };
        double[] times = [.. rows.Select(row => row[0])];
        double[] plate = WarmingRun.Run(network, new Schedule(times, [.. rows.Select(row => power * Math.Pow(row[1] / 6, exponent))]), times, 2)[^1];
        for (int i = 0; i < rows.Length; i++)
        {
            left[i] = plate[i] - 273.15 - rows[i][2];
        }
    }
}
