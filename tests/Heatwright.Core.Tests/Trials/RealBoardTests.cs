using Heatwright.Plant;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>A real heater board: fitted on its first steps, the later steps predicted. Its own readings are coarse: 0.5 to 1.3 K a step.</summary>
public class RealBoardTests(ITestOutputHelper output)
{
    [Fact]
    public void Steps_it_was_not_fitted_to_are_predicted_within_a_kelvin()
    {
        double[][] rows = [.. RealLogs.Rows("thermal/lab_board_steps_1heater.csv")];
        Assert.Equal(571, rows.Length);
        var all = Log(rows);
        int cut = Array.FindIndex(rows, row => row[0] > 330);
        var findings = WarmUpFit.Fit([Log(rows[..cut])]);

        var tool = new AssembledTool(null, new PathModel.Direct(), new LoadModel.RecordedPower(all.Drive()),
            new ThermalNetwork([new("board", findings.HeatCapacityJPerK, findings.LinearWPerK, 0, findings.RadiatingM2)], [], 273.15 + all.AirC)
            {
                SensorLagS = findings.LagS,
                StartK = [273.15 + all.EndC[0]],
            },
            new ControllerModel.Fixed(1))
        {
            MaxS = 1e4,
        };
        var run = PlantRunner.Run(tool, new RunSettings { Instants = all.TimesS });
        double sum = 0;
        for (int i = cut; i < rows.Length; i++)
        {
            double left = run.Trace.SensorK[i] - rows[i][2];
            sum += left * left;
        }

        double rms = Math.Sqrt(sum / (rows.Length - cut));
        output.WriteLine($"{findings.Model}: {findings.HeatCapacityJPerK:0.00} J/K, {findings.LinearWPerK * 1000:0.00} mW/K, lag {findings.LagS:0.0} s, fit left {findings.MisfitK:0.00} K, predicted {rms:0.00} K RMS; " + string.Join("; ", findings.Tried));
        Assert.InRange(rms, 0, 1.0);
    }

    private static WarmUpLog Log(double[][] rows) => new("board", [.. rows.Select(row => row[0])], [.. rows.Select(row => row[1] / 255)],
        [.. rows.Select(row => row[2] - 273.15)], [.. rows.Select(_ => double.NaN)], rows[0][2] - 273.15);
}
