using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Ideal chain of 7.8196364 counts and 52.130909 counts/mV, type K, cold end 28 °C; by a second program (Python).</summary>
public class FixedPointTableTests
{
    private static readonly PhysicalCalibration Chain = new(Thermocouples.TypeK, 28, 7.8196364, 52130.909, 0);
    private static readonly FixedPointTable Table = FixedPointTable.From(Chain, [20, 135, 255, 335, 450]);

    [Fact]
    public void The_whole_numbers_agree()
    {
        Assert.Equal([-9, 238, 489, 662, 915], Table.Counts);
        Assert.Equal([30542, 31264, 30400, 29806], Table.Slopes);
        Assert.Equal([320, 2162, 4078, 5362, 7203], Table.Starts);
    }

    [Theory]
    [InlineData(100, 70.8125, 70.93815)]
    [InlineData(300, 164.6875, 164.65394)]
    [InlineData(500, 260.0000, 260.04574)]
    [InlineData(700, 352.4375, 352.54185)]
    [InlineData(900, 443.3750, 443.41707)]
    public void The_controller_gives_these_degrees(int count, double tableC, double exactC)
    {
        Assert.Equal(tableC, Table.AtC(count));
        Assert.Equal(exactC, Chain.AtC(count), 5.1e-6);
    }

    [Fact]
    public void The_largest_error_over_the_table_is_at_count_49()
    {
        var worst = Enumerable.Range(-9, 925).Select(count => (Count: count, Error: Math.Abs(Table.AtC(count) - Chain.AtC(count)))).MaxBy(each => each.Error);
        Assert.Equal(49, worst.Count);
        Assert.Equal(0.3025300, worst.Error, 5.1e-7);
    }

    /// <summary>The same arithmetic in wide numbers: division that rounds down is what an arithmetic shift does.</summary>
    [Fact]
    public void Shifting_rounds_down_also_below_zero()
    {
        for (int count = -200; count <= 1023; count++)
        {
            int segment = Enumerable.Range(0, 4).Last(i => i == 0 || count >= Table.Counts[i]);
            decimal exact = ((decimal)(count - Table.Counts[segment]) * Table.Slopes[segment] + 2048) / 4096;
            Assert.Equal(Table.Starts[segment] + (int)Math.Floor(exact), Table.SixteenthsAt(count));
        }
    }

    /// <summary>What a missing bracket does: the sum is shifted as a whole (by hand for count 300: (2162 + 62·31264 + 2048) &gt;&gt; 12 = 474, 29.6 °C).</summary>
    [Fact]
    public void A_missing_bracket_gives_nonsense()
    {
        int wrong = (2162 + (62 * 31264) + 2048) >> 12;
        Assert.Equal(29.6, wrong / 16.0, 0.05);
        Assert.True(Math.Abs((wrong / 16.0) - Table.AtC(300)) > 100);
    }

    [Fact]
    public void A_segment_too_steep_for_32_bits_is_refused()
    {
        PhysicalCalibration invented = new(Steep(), 0, 0, 1e6, 0);
        Assert.Equal(3, FixedPointTable.From(invented, [0, 15000, 30000]).Counts.Count);   // 30 000 · 16 · 4096 is just below 2³¹, in two halves
        Assert.Throws<ArgumentException>(() => FixedPointTable.From(invented, [0, 40000]));
    }

    // An invented pair that spans 40 000 degrees, so that sixteenths times 4096 pass 32 bits.
    private static ThermocoupleCurve Steep() => new("invented", [new EmfPiece(0, 50000, [0, 0.001])], []);
}
