using System.Globalization;
using Heatwright.Parts;
using Heatwright.Plant;
using Heatwright.Quantities;
using Heatwright.Tests.Report;
using Heatwright.Tests.Trials;
using Heatwright.Trials;

namespace Heatwright.Tests.Samples;

/// <summary>The real cell of the sample of measured logs: findings with their doubts as a study has them, drawn as a prediction draws them, against logs that no fit has seen.</summary>
/// <remarks>The doubt for the form of the model was set on the other piece, see <see cref="CellFit.FormDoubt"/>. Logs: tests/reference/README.md.</remarks>
public class RealCellBandTests(ITestOutputHelper output)
{
    private const int Draws = 256;

    [Fact]
    public void The_band_of_ninety_in_a_hundred_holds_as_much_of_what_was_read()
    {
        int inside = 0, all = 0;
        foreach (string log in (string[])["discharge_1C", "discharge_2C", "random_load_01", "random_load_25"])
        {
            var (held, read) = Held(RealLogs.Cell($"cyl2p6Ah_R1_{log}.csv"));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{log}: {held} of {read} points, {100.0 * held / read:0} %"));
            Assert.InRange(held / (double)read, 0.85, 0.97);
            (inside, all) = (inside + held, all + read);
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"all: {100.0 * inside / all:0.0} %"));
        Assert.True(all > 1000);
        Assert.InRange(inside / (double)all, 0.85, 0.95);
    }

    private static (int Held, int Read) Held(CellLog log)
    {
        var (study, shelf) = (WrittenReports.Logs.Result.Study, WrittenReports.Logs.Result.Shelf);
        var id = study.Parts.Single(part => part.Kind == PartKind.Cell).Id;
        var found = shelf.FoundOfCell(id)!;
        var (capacity, ohms, open) = (shelf.Value(id, PartQuantities.Capacity)!, shelf.Value(id, PartQuantities.Ohms)!, shelf.Value(id, CellQuantities.OpenVolts)!);
        double start = CellBench.ChargeAt(found.Cell!.Cell, log.Volts[0], 0);
        double[][] drawn = [.. Enumerable.Range(0, Draws).AsParallel().AsOrdered().Select(number =>
        {
            var draw = new Draw(study.Seed, number);
            var cell = found.Cell.Cell.Altered(capacity.DrawnSi(draw), ohms.DrawnSi(draw) / ohms.Si, open.DrawnSi(draw) - open.Si);
            var tool = CellBench.Tool(cell, found.Cell.HeatCapacityJPerK, found.Cell.CoolingWPerK, log.Drive(), start, 25, 25);
            return PlantRunner.Run(tool, new RunSettings { Instants = log.TimesS, StepS = 20 }).Trace.TerminalV;
        })];
        int held = 0, read = 0;
        foreach (int row in Enumerable.Range(1, log.Count - 1).Where(log.Steady))
        {
            double[] volts = [.. drawn.Select(run => run[row]).Where(double.IsFinite).Order()];
            if (volts.Length == Draws)
            {
                read++;
                held += log.Volts[row] >= volts[Draws / 20] && log.Volts[row] <= volts[Draws - 1 - (Draws / 20)] ? 1 : 0;
            }
        }

        return (held, read);
    }
}
