using Heatwright.Plant;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>A real 18650-size cell: fitted on its slow discharge, pulse log and 0.5C discharge, predicted at 1C, 2C and random loads, logs the fit never saw.</summary>
public class RealCellTests(ITestOutputHelper output)
{
    private static readonly CellFindings Findings = CellFit.Fit(
        RealLogs.Cell("cyl2p6Ah_R1_ocv_C20.csv"),
        [RealLogs.Cell("cyl2p6Ah_R1_pulse_0p5C_10min_rest_20min.csv"), RealLogs.Cell("cyl2p6Ah_R1_discharge_0p5C.csv")],
        massKg: 0.045);

    private static readonly CellFindings Second = CellFit.Fit(RealLogs.Cell("cyl2p6Ah_R2_ocv_C20.csv"), [RealLogs.Cell("cyl2p6Ah_R2_discharge_0p5C.csv")], massKg: 0.045, alike: Findings);

    [Theory]
    [InlineData("cyl2p6Ah_R1_discharge_1C.csv", 0.012, 0.010)]
    public void A_log_it_was_not_fitted_to_is_predicted(string file, double rmsV, double runTimeShare)
    {
        // Predicted before the log is read: the load is 2.6 A, the cell starts as full as before the 0.5C run, in the same 25 °C chamber.
        double startCharge = CellBench.ChargeAt(Findings.Cell, 4.181, 0);
        var drive = new Schedule([0, 10, 20_000], [1.3, 2.6, 2.6]);
        double[] instants = [.. Enumerable.Range(0, 400).Select(i => i * 10.0)];
        var run = PlantRunner.Run(
            CellBench.Tool(Findings.Cell, Findings.HeatCapacityJPerK, Findings.CoolingWPerK, drive, startCharge, 25, 25) with { CutoffV = 2.0 },
            new RunSettings { Instants = instants, StepS = 10 });

        var log = RealLogs.Cell(file);
        double[] taken = log.ChargeC();
        double sum = 0;
        int count = 0;
        for (int i = 1; i < log.Count; i++)
        {
            double share = taken[i] / taken[^1];
            int at = (int)Math.Round(log.TimesS[i] / 10);
            if (share is >= 0.05 and <= 0.85 && log.TimesS[i] % 10 == 0)
            {
                double left = run.Trace.TerminalV[at] - log.Volts[i];
                sum += left * left;
                count++;
            }
        }

        double rms = Math.Sqrt(sum / count);
        double readS = Crossing(log.TimesS, log.Volts, 3.0);
        double predictedS = Crossing(instants, run.Trace.TerminalV, 3.0);
        output.WriteLine($"fit left {Findings.MisfitV * 1000:0.0} mV RMS, cooling {Findings.CoolingWPerK:0.000} W/K; {file}: {rms * 1000:0.0} mV RMS over {count} rows, run time to 3.0 V {predictedS:0} s predicted, {readS:0} s read");
        output.WriteLine($"R0 {Findings.Cell.R0Ohm.At(0.5) * 1000:0.0} R1 {Findings.Cell.R1Ohm.At(0.5) * 1000:0.0} R2 {Findings.Cell.R2Ohm.At(0.5) * 1000:0.0} mΩ, {Findings.Cell.Tau1S:0} s, {Findings.Cell.Tau2S:0} s, doubt {Findings.LogOhmsDoubt:0.000}");
        Assert.True(count > 250);
        Assert.InRange(rms, 0, rmsV);
        Assert.InRange(predictedS, readS * (1 - runTimeShare), readS * (1 + runTimeShare));
    }

    /// <summary>Faster and changing loads, driven by the current of the log itself: volts between 5 and 85 % of the charge, and run time to 3.0 V.</summary>
    [Theory]
    [InlineData("cyl2p6Ah_R1_discharge_2C.csv", 0.025, 0.015)]
    [InlineData("cyl2p6Ah_R1_random_load_01.csv", 0.020, 0.015)]
    [InlineData("cyl2p6Ah_R1_random_load_25.csv", 0.020, 0.015)]
    public void Loads_it_was_not_fitted_to_are_predicted(string file, double rmsV, double runTimeShare) => Predicted(Findings, file, rmsV, runTimeShare);

    /// <summary>Another piece of the same purchase, fitted on its own slow and 0.5C logs, with what the first piece's pulses told as what is likely; its other logs are read after that.</summary>
    [Theory]
    [InlineData("cyl2p6Ah_R2_discharge_1C.csv", 0.015, 0.015)]
    [InlineData("cyl2p6Ah_R2_discharge_2C.csv", 0.030, 0.020)]
    [InlineData("cyl2p6Ah_R2_random_load_01.csv", 0.025, 0.020)]
    [InlineData("cyl2p6Ah_R2_random_load_25.csv", 0.025, 0.020)]
    public void Another_piece_is_predicted_with_the_pulses_of_the_first(string file, double rmsV, double runTimeShare) => Predicted(Second, file, rmsV, runTimeShare);

    private void Predicted(CellFindings cell, string file, double rmsV, double runTimeShare)
    {
        var log = RealLogs.Cell(file);
        var tool = CellBench.Tool(cell.Cell, cell.HeatCapacityJPerK, cell.CoolingWPerK, log.Drive(), CellBench.ChargeAt(cell.Cell, log.Volts[0], 0), 25, 25);
        var run = PlantRunner.Run(tool, new RunSettings { Instants = log.TimesS, StepS = 20 });
        double[] taken = log.ChargeC();
        double[] left = [.. Enumerable.Range(1, log.Count - 1).Where(i => taken[i] / taken[^1] is >= 0.05 and <= 0.85 && log.Steady(i)).Select(i => run.Trace.TerminalV[i] - log.Volts[i])];
        double rms = Math.Sqrt(left.Average(v => v * v)), readS = Crossing(log.TimesS, log.Volts, 3.0), predictedS = Crossing(log.TimesS, run.Trace.TerminalV, 3.0);
        output.WriteLine($"{file}: {rms * 1000:0.0} mV RMS over {left.Length} rows, run time to 3.0 V {predictedS:0} s predicted, {readS:0} s read");
        Assert.True(left.Length > 100);
        Assert.InRange(rms, 0, rmsV);
        Assert.InRange(predictedS, readS * (1 - runTimeShare), readS * (1 + runTimeShare));
    }

    private static double Crossing(double[] times, double[] volts, double at)
    {
        for (int i = 1; i < times.Length; i++)
        {
            if (volts[i] <= at)
            {
                return times[i - 1] + ((times[i] - times[i - 1]) * (volts[i - 1] - at) / (volts[i - 1] - volts[i]));
            }
        }

        return double.NaN;
    }
}
