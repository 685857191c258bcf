using System.Globalization;
using Heatwright.Parts;
using Heatwright.Plant;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>Real cells of other kinds: a lithium iron phosphate cell under a changing load, and two pouch cells. Sources in tests/reference/README.md.</summary>
public class OtherCellsTests(ITestOutputHelper output)
{
    /// <summary>One turn of the load profile is fitted, the two that follow and their rests are predicted; the charge at the start is counted, for its volts cannot tell it.</summary>
    [Fact]
    public void An_iron_phosphate_cell_is_predicted_through_a_changing_load()
    {
        double[][] slow = [.. RealLogs.Rows("cells/lfp2Ah_slow_discharge_25C.csv").Where(row => row[1] == 2)];
        double[][] rows = [.. RealLogs.Rows("cells/lfp2Ah_dynamic_25C.csv")];
        var fit = CellFit.Fit(Log("slow", slow, row => -row[2], row => row[3]), [Profile([.. rows.Where(row => row[0] <= FirstTurnS)])], massKg: 0.07);

        var all = Profile(rows);
        var run = PlantRunner.Run(
            CellBench.Tool(fit.Cell, fit.HeatCapacityJPerK, fit.CoolingWPerK, all.Drive(), CellBench.StartCharge(fit.Cell, all), 25, 25), new RunSettings { Instants = all.TimesS, StepS = 20 });
        int[] later = [.. Enumerable.Range(0, all.Count).Where(i => all.TimesS[i] > FirstTurnS)];
        double every = Rms(later, run.Trace.TerminalV, all.Volts), steady = Rms([.. later.Where(all.Steady)], run.Trace.TerminalV, all.Volts);
        output.WriteLine($"fit left {fit.MisfitV * 1000:0.0} mV; {later.Length} later rows {every * 1000:0.0} mV RMS, of these with a steady current {steady * 1000:0.0} mV");
        Assert.True(later.Length > 2000);
        Assert.InRange(every, 0, 0.015);
        Assert.InRange(steady, 0, 0.003);
    }

    /// <summary>A run that begins where the open volts are flat asks for the ampere-hours taken before; told, it is silent.</summary>
    [Fact]
    public void A_run_of_a_flat_cell_asks_for_the_charge_taken_before()
    {
        var cell = new Part(new("iron"), PartKind.Cell, "iron", []);
        double[][] slow = [.. RealLogs.Rows("cells/lfp2Ah_slow_discharge_25C.csv").Where(row => row[1] == 2)];
        double[][] late = [.. RealLogs.Rows("cells/lfp2Ah_dynamic_25C.csv").Where(row => row[0] is > 3900 and < 4500)];
        string[] Asked(double? takenBeforeAh)
        {
            var full = new Trial(new("slow"), TrialKind.Discharge, cell.Id, [Run("slow-1", Log("", slow, row => -row[2], row => row[3]))]);
            var pulse = new Trial(new("pulse"), TrialKind.Pulse, cell.Id, [Run("pulse-1", Profile(late)) with { Settings = takenBeforeAh is { } ah ? new Dictionary<string, double> { ["taken before"] = ah * 3600 } : [] }]);
            return [.. PartBench.One(cell, [full, pulse], new InstrumentCauses([])).Remarks.Select(remark => remark.Words).Where(words => words.Contains("taken-before", StringComparison.Ordinal))];
        }

        Assert.Single(Asked(null));
        Assert.Empty(Asked(late[0][4] - late[0][3]));
    }

    private static Run Run(string id, CellLog log) => new(new(id), [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", "")],
        [.. Enumerable.Range(0, log.Count).Select(i => new Reading(i + 1, [.. new[] { log.TimesS[i], log.Volts[i], log.Amps[i] }.Select(value => value.ToString(CultureInfo.InvariantCulture))]))]);

    /// <summary>A pouch cell whose slow and 1C discharges were fitted, its warmth among them, cools in the rest that follows as predicted, whatever mass is assumed.</summary>
    [Theory]
    [InlineData(0.035)]
    [InlineData(0.045)]
    [InlineData(0.060)]
    public void A_pouch_cell_s_cooling_is_predicted(double massKg)
    {
        double[][] discharge = [.. RealLogs.Rows("cells/pouch2p28Ah_discharge_1C.csv")], rest = [.. RealLogs.Rows("cells/pouch2p28Ah_cooldown_after_1C.csv")];
        var slow = Log("slow", [.. RealLogs.Rows("cells/pouch2p28Ah_discharge_0p1C.csv")], _ => 0.228, row => row[1]);
        var loaded = Log("1C", discharge, row => row[0] == 0 ? 0 : 2.28, row => row[1]) with { CellC = [.. discharge.Select(row => 25 + row[2])] };
        var fit = CellFit.Fit(slow, [loaded], massKg);

        double[] times = [.. rest.Select(row => row[0])], read = [.. rest.Select(row => 25 + row[1])];
        var run = PlantRunner.Run(CellBench.Tool(fit.Cell, fit.HeatCapacityJPerK, fit.CoolingWPerK, new Schedule([0, 1e4], [0, 0]), 0.1, read[0], 25), new RunSettings { Instants = times, StepS = 20 });
        double rms = Rms([.. Enumerable.Range(1, times.Length - 1)], [.. run.Trace.NodesK[0].Select(kelvin => kelvin - 273.15)], read);
        output.WriteLine($"{massKg} kg: fit left {fit.MisfitV * 1000:0.0} mV; cooling from {read[0]:0.0} °C missed by {rms:0.00} K RMS over {times.Length} rows");
        Assert.True(times.Length > 150);
        Assert.InRange(rms, 0, 0.4); // a tenth of the four kelvin that it is warmer; the mean of the room over all rows would miss by 0.9
    }

    /// <summary>A large pouch cell whose pulse log alone was fitted, a tenth of its charge between rests of an hour, is predicted at 1C.</summary>
    [Fact]
    public void A_large_pouch_cell_is_predicted_from_its_pulses()
    {
        var pulses = Cycler("pouch33Ah_hppc_25C.csv");
        var fit = CellFit.Fit(pulses, [pulses], massKg: 0.8);
        var log = Cycler("pouch33Ah_discharge_1C_30p6A.csv", "dchg");
        var run = PlantRunner.Run(CellBench.Tool(fit.Cell, fit.HeatCapacityJPerK, fit.CoolingWPerK, log.Drive(), 1, 25, 25), new RunSettings { Instants = log.TimesS, StepS = 20 });
        double[] taken = log.ChargeC();
        int[] rows = [.. Enumerable.Range(1, log.Count - 1).Where(i => taken[i] / taken[^1] is >= 0.05 and <= 0.85)];
        double rms = Rms(rows, run.Trace.TerminalV, log.Volts);
        output.WriteLine($"fit left {fit.MisfitV * 1000:0.0} mV; 1C missed by {rms * 1000:0.0} mV RMS over {rows.Length} rows");
        Assert.True(rows.Length > 40);
        Assert.InRange(rms, 0, 0.025);
    }

    private const double FirstTurnS = 1500;

    private static CellLog Profile(double[][] rows) => Log("profile", rows, row => row[1], row => row[2]) with { TakenBeforeC = (rows[0][4] - rows[0][3]) * 3600 };

    private static CellLog Log(string name, double[][] rows, Func<double[], double> amps, Func<double[], double> volts) =>
        new(name, [.. rows.Select(row => row[0])], [.. rows.Select(amps)], [.. rows.Select(volts)], [.. rows.Select(_ => double.NaN)], 25);

    /// <summary>A log whose last column is a word; amps in it are positive into the cell, and of rows of one instant the first counts.</summary>
    private static CellLog Cycler(string file, string? mode = null)
    {
        double[][] rows = [.. RealLogs.Lines("cells/" + file).Where(line => mode is null || line.EndsWith("," + mode, StringComparison.Ordinal)).Select(line => RealLogs.Numbers(line, 3))];
        return Log(file, [.. rows.Where((row, i) => i == 0 || row[0] > rows[i - 1][0])], row => -row[1], row => row[2]);
    }

    private static double Rms(int[] rows, double[] model, double[] read) => Math.Sqrt(rows.Average(i => (model[i] - read[i]) * (model[i] - read[i])));
}
