using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Type K from 20 to 450 °C, temperature over millivolts, breakpoints at whole degrees; by a second program (Python)
/// that walks each chord in 20 000 steps.</summary>
public class ChordTableTests
{
    private static readonly double[] TemperaturesC = [.. Enumerable.Range(20, 431).Select(tC => (double)tC)];
    private static readonly double[] Millivolts = [.. TemperaturesC.Select(tC => Thermocouples.TypeK.EmfV(tC) * 1e3)];

    [Theory]
    [InlineData(2, new[] { 20, 332, 450 }, 0.9399169)]
    [InlineData(1, new[] { 20, 332, 450 }, 0.9399169)]
    [InlineData(0.5, new[] { 20, 135, 255, 335, 450 }, 0.2447111)]
    [InlineData(0.25, new[] { 20, 135, 255, 335, 450 }, 0.2447111)]
    public void The_fewest_chords_are_found(double limitK, int[] breakpointsC, double maxErrorK)
    {
        var chords = ChordTable.Fewest(Millivolts, TemperaturesC, limitK);
        Assert.Equal(breakpointsC, chords.Breakpoints.Select(i => (int)TemperaturesC[i]));
        Assert.Equal(maxErrorK, chords.MaxError, 1e-6);
    }

    [Theory]
    [InlineData(20, 0.7981)]
    [InlineData(135, 5.5317)]
    [InlineData(255, 10.3571)]
    [InlineData(335, 13.6654)]
    [InlineData(450, 18.5158)]
    [InlineData(332, 13.5401)]
    public void Breakpoints_have_these_millivolts(int tC, double mV) => Assert.Equal(mV, Millivolts[tC - 20], 5.1e-5);

    [Fact]
    public void One_straight_line_is_often_enough_for_type_K()
    {
        double[] fineC = [.. Enumerable.Range(0, 43_001).Select(i => 20 + (i / 100.0))];
        var (intercept, slope, maxError) = ChordTable.BestLine([.. fineC.Select(tC => Thermocouples.TypeK.EmfV(tC) * 1e3)], fineC);
        Assert.Equal(2.12862795, intercept, 1e-5);
        Assert.Equal(24.2740177, slope, 5e-6);
        Assert.Equal(1.5816656, maxError, 5e-6);
    }

    [Theory]
    [InlineData("N", 450)]
    [InlineData("T", 400)]
    [InlineData("E", 450)]
    [InlineData("S", 450)]
    public void One_line_is_not_enough_for_other_types(string type, int toC)
    {
        double[] tC = [.. Enumerable.Range(20, toC - 19).Select(each => (double)each)];
        Assert.True(ChordTable.BestLine([.. tC.Select(each => Thermocouples.Find(type)!.EmfV(each) * 1e3)], tC).MaxError > 5);
    }

    /// <summary>A second way: every choice of two inner breakpoints on a coarse grid, in plain loops.</summary>
    [Fact]
    public void No_three_chords_do_better() => Gen.Double[0.2, 3].Sample(bend =>
    {
        double[] x = [.. Enumerable.Range(0, 25).Select(i => i / 24.0)];
        double[] y = [.. x.Select(each => Math.Sin(bend * 3 * each))];
        var chords = ChordTable.Fewest(x, y, 1e-3);
        double least = double.PositiveInfinity;
        int n = chords.Breakpoints.Count - 2;
        foreach (int[] inner in Choices(1, 23, n > 2 ? 0 : n))
        {
            least = Math.Min(least, Worst(x, y, [0, .. inner, 24]));
        }

        return n > 2 || least >= chords.MaxError - 2e-4;   // the law looks between the grid points too
    }, iter: 40);

    [Fact]
    public void One_chord_less_would_break_the_limit()
    {
        double[] x = [.. Millivolts.Where((_, i) => i % 5 == 0)], y = [.. TemperaturesC.Where((_, i) => i % 5 == 0)];
        foreach (double limit in (double[])[0.1, 0.25, 0.5, 1])
        {
            var chords = ChordTable.Fewest(x, y, limit);
            var coarser = ChordTable.Fewest(x, y, chords.MaxError * 0.999999);
            Assert.True(chords.MaxError <= limit);
            Assert.True(coarser.Breakpoints.Count > chords.Breakpoints.Count);
        }
    }

    /// <summary>By hand: a parabola x² over a chord of width h misses by h²/4 in the middle; max|f″|h²/8 with f″ = 2 says the same.</summary>
    [Fact]
    public void A_parabola_misses_its_chord_by_the_bound()
    {
        double[] x = [0, 0.5, 1];
        Assert.Equal(ChordTable.ErrorBound(2, 1), ChordTable.Fewest(x, [0, 0.25, 1], 1).MaxError, 1e-12);
        Assert.Equal(0.25, ChordTable.ErrorBound(2, 1), 1e-12);
    }

    [Fact]
    public void A_straight_curve_needs_one_chord() => Assert.Equal([0, 4], ChordTable.Fewest([0, 1, 2, 3, 4], [1, 3, 5, 7, 9], 1e-9).Breakpoints);

    private static IEnumerable<int[]> Choices(int from, int to, int count) => count == 0
        ? [[]]
        : Enumerable.Range(from, Math.Max(0, to - from + 1)).SelectMany(first => Choices(first + 1, to, count - 1).Select(rest => (int[])[first, .. rest]));

    private static double Worst(double[] x, double[] y, int[] kept)
    {
        double worst = 0;
        for (int k = 0; k < kept.Length - 1; k++)
        {
            for (int i = kept[k]; i <= kept[k + 1]; i++)
            {
                double chord = y[kept[k]] + ((y[kept[k + 1]] - y[kept[k]]) * (x[i] - x[kept[k]]) / (x[kept[k + 1]] - x[kept[k]]));
                worst = Math.Max(worst, Math.Abs(y[i] - chord));
            }
        }

        return worst;
    }

    [Fact]
    public void A_chord_exactly_at_the_limit_is_enough()
    {
        Chords tent = ChordTable.Fewest([0, 1, 2], [0, 1, 0], 1);
        Assert.Equal([0, 2], tent.Breakpoints);
        Assert.Equal(1, tent.MaxError, 1e-12);
        Assert.Equal([0, 1, 2], ChordTable.Fewest([0, 1, 2], [0, 1, 0], 0.99).Breakpoints);
        Assert.Equal(2.25, ChordTable.ErrorBound(2, 3), 1e-12);   // 2·9/8
    }
}
