using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Limits from causes of several shapes, against closed forms and the tables of the bell and of t.</summary>
public sealed class CauseLimitsTests
{
    private static (double Low, double High) Middle(double share, double degrees, double scatter, params (Shape Shape, CauseGroup Group, double By)[] causes) => CauseLimits.Middle(
        new Estimate(10, Units.Volt, causes.Select((cause, i) => (cause, i)).Aggregate(Doubts.None, (sum, pair) => sum.With(new Cause($"cause {pair.i}", pair.cause.Group, pair.cause.Shape), pair.cause.By)), new Origin.Assumed("test")), scatter, degrees, share);

    /// <summary>Scatter alone: 1.959964 of the bell, 0.674490 for the half; 2.570582 by the table of t for 5 degrees, 4.302653 for 2, 12.706205 for 1, 3.182446 for 3. Two scatters of 3 and 4 are 5 together.</summary>
    [Theory]
    [InlineData(0.95, double.PositiveInfinity, 0, 1.959964), InlineData(0.5, double.PositiveInfinity, 0, 0.674490), InlineData(0.95, double.PositiveInfinity, 2, 1.959964), InlineData(0.95, 0.5, 2, 1.959964)]
    [InlineData(0.95, 5, 0, 2.570582), InlineData(0.95, 2, 0, 4.302653), InlineData(0.95, 1, 0, 12.706205), InlineData(0.95, 3, 0, 3.182446), InlineData(0.5, 1, 0, 1), InlineData(0.95, 5, 2, 2.570582 * 0.4)]
    public void Scatter_alone_is_a_bell_or_a_t(double share, double degrees, double scatter, double times)
    {
        var (low, high) = Middle(share, degrees, scatter, (new Shape.Normal(), CauseGroup.Trial, 3), (new Shape.Normal(), CauseGroup.Trial, -4));
        Assert.Equal(10 + (5 * times), high, 1e-4);
        Assert.Equal(10 - (5 * times), low, 1e-4);
    }

    [Fact]
    public void A_value_without_doubt_has_no_limits_apart() => Assert.Equal((10, 10), Middle(0.95, 3, 0));

    public static TheoryData<string, double, double> Shapes => new()
    {
        { "flat", 0.95, 0.95 * Math.Sqrt(3) }, { "flat", 0.5, 0.5 * Math.Sqrt(3) }, { "flat", 1, Math.Sqrt(3) },
        { "peaked", 0.95, Math.Sqrt(6) * (1 - Math.Sqrt(0.05)) }, { "peaked", 0.5, Math.Sqrt(6) * (1 - Math.Sqrt(0.5)) },
        { "bell", 0.95, 1.959964 }, { "bell", 0.5, 0.674490 },
        { "t of 5", 0.95, 2.570582 * Math.Sqrt(0.6) }, { "t of 5", 0.5, 0.726687 * Math.Sqrt(0.6) },
    };

    /// <summary>Closed forms: a flat spread of standard size 1 ends at √3, a peaked one at √6 and its distance to the end shrinks with the root; the table of t times √(3/5). A strata of 4000 is within a few thousandths.</summary>
    [Theory, MemberData(nameof(Shapes))]
    public void A_cause_of_its_own_shape_keeps_it(string shape, double share, double expected)
    {
        Shape of = shape switch { "flat" => new Shape.Rectangular(), "peaked" => new Shape.Triangular(), "bell" => new Shape.Normal(), _ => new Shape.StudentT(5) };
        foreach (double by in (double[])[2, -2])
        {
            var (low, high) = Middle(share, double.PositiveInfinity, 0, (of, CauseGroup.Instrument, by));
            Assert.Equal(10 + (2 * expected), high, 0.012);
            Assert.Equal(10 - (2 * expected), low, 0.012);
        }
    }

    /// <summary>Beside a next to nothing of an instrument the scatter is what it is alone: t where its degrees are known, its own push where no scatter is said.</summary>
    [Theory, InlineData(5, 0, 2.570582 * 3), InlineData(5, 2, 2.570582 * 2), InlineData(double.PositiveInfinity, 0, 1.959964 * 3), InlineData(double.PositiveInfinity, 2, 1.959964 * 2), InlineData(0.5, 2, 1.959964 * 2), InlineData(1, 0, 12.706 * 3), InlineData(2, 0, 4.302653 * 3)]
    public void Scatter_beside_an_instrument_keeps_its_own_tails(double degrees, double scatter, double half)
    {
        var (low, high) = Middle(0.95, degrees, scatter, (new Shape.Normal(), CauseGroup.Trial, 3), (new Shape.Rectangular(), CauseGroup.Instrument, 1e-9));
        Assert.Equal(10 + half, high, 0.02 * half);
        Assert.Equal(10 - half, low, 0.02 * half);
    }

    /// <summary>By hand: two flat limits of standard size 1 make a peaked one of √2: √2·√6·(1 − √0.05); drawn in orders that have nothing to do with each other. A flat 3 beside a bell of 4 lies between the bell of 5 and the flat one.</summary>
    [Fact]
    public void Causes_are_drawn_apart_from_each_other()
    {
        var (low, high) = Middle(0.95, double.PositiveInfinity, 0, (new Shape.Rectangular(), CauseGroup.Instrument, 1), (new Shape.Rectangular(), CauseGroup.Assumption, 1));
        Assert.Equal(10 + (Math.Sqrt(12) * (1 - Math.Sqrt(0.05))), high, 0.1);
        Assert.Equal(10 - (Math.Sqrt(12) * (1 - Math.Sqrt(0.05))), low, 0.1);
        var mixed = Middle(0.95, double.PositiveInfinity, 4, (new Shape.Rectangular(), CauseGroup.Instrument, 3), (new Shape.Normal(), CauseGroup.Trial, 4));
        Assert.InRange(mixed.High - 10, 5 * 0.95 * 1.7321, 5 * 1.96);
        Assert.InRange(10 - mixed.Low, 5 * 0.95 * 1.7321, 5 * 1.96);
    }
}
