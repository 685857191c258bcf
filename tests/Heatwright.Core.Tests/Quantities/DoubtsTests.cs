using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

public class DoubtsTests
{
    private static readonly Origin Guess = new Origin.Assumed("test");
    private static readonly Cause Meter = Cause.Rectangular("meter volts gain", CauseGroup.Instrument);

    [Fact]
    public void A_number_less_itself_is_exactly_zero_without_doubt()
    {
        var x = Estimate.Within(3.82, 0.04, Units.Volt, "x", CauseGroup.Trial, Guess);
        var difference = x.Doubts - x.Doubts;
        Assert.Equal(0.0, difference.Combined);
        Assert.Empty(difference.Causes);
    }

    [Fact]
    public void A_shared_meter_error_cancels_in_a_difference_and_own_scatter_does_not()
    {
        var hot = Doubts.From(Meter, 0.02).With(Cause.Normal("a", CauseGroup.Trial), 0.003);
        var cold = Doubts.From(Meter, 0.02).With(Cause.Normal("b", CauseGroup.Trial), 0.004);
        Assert.Equal(0.005, (hot - cold).Combined, 1e-15); // by hand: √(3² + 4²) mV
    }

    [Fact]
    public void A_rectangular_half_width_becomes_a_standard_doubt_by_the_root_of_three() =>
        // JCGM 100:2008, 4.3.7: u = a / √3.
        Assert.Equal(0.57735, Estimate.Within(10, 1, Units.Ohm, "r", CauseGroup.Claim, Guess).StandardDoubt, 5e-6);

    [Fact]
    public void Ten_thousand_draws_have_the_spread_that_propagation_says()
    {
        var volts = Estimate.Within(7.4, 0.1, Units.Volt, "v", CauseGroup.Trial, Guess);
        var ohms = Estimate.Within(3.0, 0.05, Units.Ohm, "r", CauseGroup.Trial, Guess);
        var watts = Propagate.Through((v, r) => v * v / r, Units.Watt, "joule", new Input("volts", volts), new Input("ohms", ohms));

        // By hand: 54.76 / 3 = 18.2533; u² = (2·18.2533/7.4·0.057735)² + (18.2533/3·0.028868)².
        Assert.Equal(18.2533, watts.Value, 5e-5);
        Assert.Equal(0.33463, watts.StandardDoubt, 5e-5);

        double[] drawn = [.. Enumerable.Range(0, 10_000).Select(i => new Draw(5, i)).Select(draw => Math.Pow(volts.DrawnSi(draw), 2) / ohms.DrawnSi(draw))];
        double mean = drawn.Average();
        double sd = Math.Sqrt(drawn.Sum(x => (x - mean) * (x - mean)) / drawn.Length);
        Assert.Equal(watts.StandardDoubt, sd, 0.01); // 3 % of it: four standard errors of a spread from 10 000 draws
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Every_shape_has_unit_draws_of_mean_zero_and_spread_one(int which)
    {
        Shape shape = which switch { 0 => new Shape.Normal(), 1 => new Shape.Rectangular(), 2 => new Shape.Triangular(), _ => new Shape.StudentT(8) };
        var cause = new Cause("c", CauseGroup.Trial, shape);
        double[] drawn = [.. Enumerable.Range(0, 20_000).Select(i => new Draw(11, i).Of(cause))];
        Assert.Equal(0, drawn.Average(), 0.03);
        Assert.Equal(1, Math.Sqrt(drawn.Average(x => x * x)), 0.03);
    }

    [Fact]
    public void The_weakest_leaf_of_a_worked_number_is_told()
    {
        var claimed = Estimate.Exact(9.6, Units.Ohm, new Origin.Claimed("24 V 60 W"));
        var read = Estimate.Exact(12, Units.Volt, new Origin.Measured(new RunId("run 1"), "meter 1"));
        var watts = Propagate.Through((v, r) => v * v / r, Units.Watt, "joule", new Input("volts", read), new Input("ohms", claimed));
        Assert.IsType<Origin.Claimed>(watts.Origin.Weakest());
        Assert.Equal(2, watts.Origin.Leaves().Count());
    }

    [Fact]
    public void Celsius_is_a_level_and_cannot_be_shown_as_a_difference()
    {
        var level = Estimate.Exact(25, Units.Celsius, Guess);
        Assert.Equal(298.15, level.Si, 1e-12);
        Assert.Throws<ArgumentException>(() => level.In(Units.Kelvin));
    }
}
