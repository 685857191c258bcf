using CsCheck;
using Heatwright.Numerics;

namespace Heatwright.Tests.Numerics;

public class LinearTableTests
{
    private static readonly Gen<LinearTable> Rising = Gen.Select(Gen.Double[0.01, 5].Array[2, 20], Gen.Double[0.01, 5].Array[20]).Select((steps, rises) =>
        new LinearTable(Summed(steps), Summed(rises[..steps.Length])));

    /// <summary>By hand.</summary>
    [Theory]
    [InlineData(-5, 10)]
    [InlineData(0, 10)]
    [InlineData(1, 15)]
    [InlineData(2, 20)]
    [InlineData(3, 17.5)]
    [InlineData(6, 10)]
    [InlineData(99, 10)]
    public void Between_points_it_is_straight_and_outside_the_ends_are_held(double at, double expected) =>
        Assert.Equal(expected, new LinearTable([0, 2, 6], [10, 20, 10]).At(at), 1e-12);

    [Fact]
    public void A_number_that_is_none_stays_none() => Assert.True(double.IsNaN(new LinearTable([0, 1], [0, 1]).At(double.NaN)));

    [Fact]
    public void One_point_is_a_constant() => Assert.Equal(7, new LinearTable([3], [7]).At(-1));

    [Fact]
    public void Any_hint_gives_the_same_value() => Gen.Select(Rising, Gen.Double[-0.2, 1.2], Gen.Int[-3, 30]).Sample((table, share, hint) =>
    {
        double at = table.First + (share * (table.Last - table.First));
        double plain = table.At(at);
        Assert.Equal(plain, table.At(at, ref hint));
        Assert.Equal(plain, table.At(at, ref hint));
    });

    [Fact]
    public void The_place_of_a_value_leads_back() => Gen.Select(Rising, Gen.Double[0, 1]).Sample((table, share) =>
    {
        double at = table.First + (share * (table.Last - table.First));
        Assert.True(table.IsMonotone);
        // A stretch may be 500 times flatter than it is long, so x gives back fewer digits than y.
        Assert.Equal(at, table.PlaceOf(table.At(at)), 1e-10);
    });

    [Fact]
    public void A_falling_table_is_turned_round_too()
    {
        var table = new LinearTable([0, 1, 3], [9, 5, 1]);
        Assert.Equal(2, table.PlaceOf(3), 1e-12); // by hand
        Assert.Equal(0, table.PlaceOf(100));
        Assert.Equal(3, table.PlaceOf(-100));
    }

    [Fact]
    public void A_table_that_turns_or_rests_has_no_single_place()
    {
        Assert.True(double.IsNaN(new LinearTable([0, 1, 2], [0, 2, 1]).PlaceOf(1.5)));
        Assert.False(new LinearTable([0, 1, 2], [0, 0, 1]).IsMonotone);
    }

    [Fact]
    public void Slopes_are_those_of_the_stretch_and_zero_outside()
    {
        var table = new LinearTable([0, 2, 6], [10, 20, 10]);
        Assert.Equal([0, 5, -2.5, -2.5, 0], new[] { -1.0, 1, 2, 4, 6 }.Select(table.SlopeAt));
    }

    [Fact]
    public void Looking_up_allocates_nothing()
    {
        var table = new LinearTable([0, 2, 6], [10, 20, 10]);
        int hint = 0;
        double sum = table.At(1, ref hint) + table.At(1);
        // What the runtime allocates once, when it recompiles a busy loop, is not the table's: a table that allocated would do so in every pass.
        long least = long.MaxValue;
        for (int pass = 0; pass < 3; pass++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            for (int i = 0; i < 1000; i++)
            {
                sum += table.At(0.006 * i, ref hint) + table.At(0.006 * i);
            }

            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        Assert.Equal(0, least);
        Assert.True(sum > 0);
    }

    [Fact]
    public void Points_that_make_no_table_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new LinearTable([0, 0], [1, 2]));
        Assert.Throws<ArgumentException>(() => new LinearTable([0, 1], [1]));
        Assert.Throws<ArgumentException>(() => new LinearTable([], []));
        Assert.Throws<ArgumentException>(() => new LinearTable([0, double.NaN], [1, 2]));
    }

    private static double[] Summed(double[] steps) => [.. steps.Select((_, i) => steps[..(i + 1)].Sum())];
}
