using Heatwright.Handbook;
using Heatwright.Numerics;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Worked budget by a second program (Python): tip 350 °C, type K, cold end 30 °C, gain 56, ten bits on 1.1 V.</summary>
public class ErrorBudgetTests
{
    private static readonly IReadOnlyList<BudgetLine> Lines = ErrorBudget.Lines(Thermocouples.TypeK, 350, 30, 56, 1.1 / 1024, new ChainLimits(
        OffsetV: 150e-6, OffsetDriftVPerK: 2e-6, BoardRangeK: 15, BiasA: 1e-9, SourceOhm: 1e3, ResistorTolerance: 0.01, ReferenceShare: 0.01,
        ConverterSteps: 2.5, ColdJunctionK: 2, SensorShare: 0.0075, SensorFloorK: 2.5, StrayV: 10e-6));

    [Theory]
    [InlineData(0, 3.579482, 2.066615)]
    [InlineData(1, 0.715896, 0.413323)]
    [InlineData(2, 0.023863, 0.013777)]
    [InlineData(3, 6.135770, 3.542488)]
    [InlineData(4, 3.123665, 1.803449)]
    [InlineData(5, 1.144389, 0.660713)]
    [InlineData(6, 1.942129, 1.121289)]
    [InlineData(7, 2.625000, 1.515544)]
    [InlineData(8, 0.238632, 0.137774)]
    public void Every_line_agrees(int line, double halfWidthK, double standardK)
    {
        Assert.Equal(halfWidthK, Lines[line].HalfWidthK, 1.5e-6);
        Assert.Equal(standardK, Lines[line].StandardK, 1e-6);
    }

    [Fact]
    public void The_lines_add_up_in_three_ways()
    {
        Assert.Equal(9, Lines.Count);
        Assert.Equal(19.52883, ErrorBudget.WorstK(Lines), 5.1e-6);
        Assert.Equal(8.529934, ErrorBudget.RootSumOfHalfWidthsK(Lines), 5.1e-7);
        Assert.Equal(4.924760, ErrorBudget.CombinedK(Lines), 5.1e-7);
        Assert.Equal(9.849520, 2 * ErrorBudget.CombinedK(Lines), 1.1e-6);
    }

    /// <summary>A second way: the lines drawn as rectangles. Tolerance 0.03 K for 200 000 draws.</summary>
    [Fact]
    public void Drawing_the_lines_gives_the_combined_doubt_and_the_interval()
    {
        const int Draws = 200_000;
        double[] totals = new double[Draws];
        for (int i = 0; i < Draws; i++)
        {
            for (int line = 0; line < Lines.Count; line++)
            {
                totals[i] += ((2 * CounterRandom.Uniform(2024, (ulong)line, (ulong)i)) - 1) * Lines[line].HalfWidthK;
            }
        }

        double[] sizes = [.. totals.Select(Math.Abs).Order()];
        Assert.Equal(4.922, Math.Sqrt(totals.Sum(total => total * total) / Draws), 0.03);
        Assert.Equal(9.431, sizes[(int)(0.95 * Draws)], 0.05);
        Assert.Equal(13.18, sizes[(int)(0.9973 * Draws)], 0.08);
    }

    /// <summary>After calibration at two points with a probe of ±2 K (k = 2): gain and reference leave 0.1 % drift, the offset 15 µV.</summary>
    [Fact]
    public void A_two_point_calibration_removes_the_three_largest()
    {
        double slope = Thermocouples.TypeK.SlopeVPerK(350), signalV = ColdJunction.VoltageV(Thermocouples.TypeK, 350, 30);
        BudgetLine[] left =
        [
            new("offset left", 15e-6 / slope), Lines[1], Lines[2], new("gain drift", 1e-3 * signalV / slope), new("reference drift", 1e-3 * signalV / slope),
            Lines[5], Lines[6], Lines[8],
        ];
        double probeK = 1.0;   // ±2 K at k = 2
        Assert.Equal(1.729623, Math.Sqrt(Math.Pow(ErrorBudget.CombinedK(left), 2) + (probeK * probeK)), 5.1e-7);
    }
}
