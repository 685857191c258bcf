using CsCheck;
using Heatwright.BuildSheets;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.BuildSheets;

/// <summary>Tables of whole numbers: the bound holds at every count, and no table has fewer pieces.</summary>
public sealed class CountTableTests
{
    private static readonly PhysicalCalibration Chain = new(Thermocouples.TypeK, 28, 7.8196364, 52130.909, 0);

    [Theory]
    [InlineData(2)]
    [InlineData(1)]
    [InlineData(0.5)]
    [InlineData(0.25)]
    public void The_bound_holds_at_every_count_and_the_table_never_falls(double bound)
    {
        var table = CountTable.Fewest(Chain.AtC, 0, 915, bound).Value;
        int before = int.MinValue;
        double worst = 0;
        for (int count = 0; count <= 915; count++)
        {
            int now = table.SixteenthsAt(count);
            worst = Math.Max(worst, Math.Abs((now / 16.0) - Chain.AtC(count)));
            Assert.True(now >= before);
            before = now;
        }

        Assert.True(worst <= bound);
        Assert.Equal(worst, table.WorstK, 1e-12);
    }

    [Fact]
    public void It_needs_no_more_pieces_than_the_worked_table_of_chords()
    {
        // Four chords keep 0.25 K over 20 to 450 °C, two keep 1 K (worked example of the trade's handbook, independent script); a free end can only help.
        Assert.InRange(CountTable.Fewest(Chain.AtC, 0, 915, 0.3025).Value.At.Count, 2, 4);
        Assert.InRange(CountTable.Fewest(Chain.AtC, 0, 915, 1.0).Value.At.Count, 1, 2);
    }

    [Fact]
    public void No_table_of_small_cases_has_fewer_pieces() =>
        Gen.Select(Gen.Double[0.2, 6].Array[8], Gen.Double[0.15, 2.5], Gen.Double[-50, 50]).Sample(drawn =>
        {
            var (steps, bound, from) = drawn;
            double[] law = new double[steps.Length];
            law[0] = from;
            for (int i = 1; i < law.Length; i++)
            {
                law[i] = law[i - 1] + steps[i];
            }

            var table = CountTable.Fewest(count => law[(int)count], 0, law.Length - 1, bound).Value;
            return table.At.Count == FewestByForce(law, bound);
        }, iter: 60);

    [Fact]
    public void A_bound_under_the_rounding_is_refused() => Assert.False(CountTable.Fewest(Chain.AtC, 0, 915, 0.01).IsFine);

    /// <summary>Second method: every subset of counts as beginnings of pieces, every whole slope, the controller's own arithmetic written out.</summary>
    private static int FewestByForce(double[] law, double bound)
    {
        int n = law.Length, best = n;
        for (int mask = 0; mask < 1 << (n - 1); mask++)
        {
            int[] begins = [0, .. Enumerable.Range(1, n - 1).Where(k => (mask & (1 << (k - 1))) != 0)];
            if (begins.Length < best && begins.Select((begin, piece) => (begin, end: piece + 1 < begins.Length ? begins[piece + 1] : n)).All(piece => Keeps(law, piece.begin, piece.end, bound)))
            {
                best = begins.Length;
            }
        }

        return best;
    }

    private static bool Keeps(double[] law, int begin, int end, double bound)
    {
        int start = (int)Math.Round(16 * law[begin]);
        int next = end < law.Length ? (int)Math.Round(16 * law[end]) : int.MaxValue;
        if (Math.Abs((start / 16.0) - law[begin]) > bound)
        {
            return false;
        }

        // Slopes matter in steps of 1/(n−1) of a sixteenth at the most; 64 of 4096 is finer than that.
        for (long slope = 0; slope < 16 * 4096 * 8; slope += 64)
        {
            bool good = true;
            for (int k = begin; k < end && good; k++)
            {
                int value = start + (int)(((slope * (k - begin)) + 2048) >> 12);
                good = Math.Abs((value / 16.0) - law[k]) <= bound && value <= next;
            }

            if (good)
            {
                return true;
            }
        }

        return false;
    }
}
