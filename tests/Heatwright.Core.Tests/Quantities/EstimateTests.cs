using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

/// <summary>Estimates, their draws, spreads and origins, piece by piece.</summary>
public class EstimateTests
{
    private static readonly Origin Guess = new Origin.Assumed("test");
    private static readonly Cause Own = Cause.Normal("own", CauseGroup.Trial);

    [Fact]
    public void An_estimate_in_another_unit_keeps_its_doubt_and_its_sign()
    {
        // By hand: 212 °F ± 9 °F is 100 °C ± 5 °C, 373.15 K with 5 K of doubt.
        var hot = new Estimate(212, Units.Fahrenheit, Doubts.From(Own, -9), Guess);
        Assert.Equal(373.15, hot.Si, 1e-10);
        Assert.Equal(5, hot.SiDoubt, 1e-12);
        Assert.Equal(100, hot.In(Units.Celsius).Value, 1e-10);
        Assert.Equal(-5, hot.In(Units.Celsius).Doubts.By(Own), 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => new Estimate(double.NaN, Units.Volt, Doubts.None, Guess));
        Assert.Empty(Estimate.Within(3, 0, Units.Volt, "x", CauseGroup.Trial, Guess).Doubts.Causes);
        Assert.Equal(373.15, hot.DrawnSi(Draw.Middle), 1e-10);
        var draw = new Draw(7, 3);
        Assert.Equal(373.15 - (5 * draw.Of(Own)), hot.DrawnSi(draw), 1e-10);
    }

    [Fact]
    public void A_draw_belongs_to_its_number_its_seed_and_its_cause()
    {
        Assert.Equal(0, Draw.Middle.Of(Own));
        double first = new Draw(7, 0).Of(Own);
        Assert.NotEqual(0, first);
        Assert.Equal(first, new Draw(7, 0).Of(Own));
        Assert.Equal(4, new HashSet<double> { first, new Draw(7, 1).Of(Own), new Draw(8, 0).Of(Own), new Draw(7, 0).Of(Cause.Normal("other", CauseGroup.Trial)) }.Count);
    }

    /// <summary>All shapes follow one uniform p: by the distribution functions, rectangular p = (x/√3 + 1)/2, triangular p = (1 + x/√6)²/2 below the middle.</summary>
    [Fact]
    public void Every_shape_reaches_the_same_share_in_the_same_draw()
    {
        var flat = Cause.Rectangular("c", CauseGroup.Trial);
        var tent = new Cause("c", CauseGroup.Trial, new Shape.Triangular());
        var student = new Cause("c", CauseGroup.Trial, new Shape.StudentT(4));
        for (int number = 0; number < 400; number++)
        {
            var draw = new Draw(3, number);
            double p = ((draw.Of(flat) / Math.Sqrt(3)) + 1) / 2;
            Assert.InRange(p, 0, 1);
            double x = draw.Of(tent) / Math.Sqrt(6);
            Assert.Equal(p, x < 0 ? (1 + x) * (1 + x) / 2 : 1 - ((1 - x) * (1 - x) / 2), 1e-12);

            // t of 4 degrees in closed form: p = 1/2 + (3/8)·s·(1 − s²/12)·… with s = t/√(1 + t²/4); the draw is t/√2, as the variance 4/2 asks.
            double t = draw.Of(student) * Math.Sqrt(2);
            double s = t / Math.Sqrt(1 + (t * t / 4));
            Assert.Equal(p, 0.5 + (3.0 / 8 * s * (1 - (s * s / 12))), 1e-6);
        }
    }

    // By hand: draws stand in the middle of their share; of 10, 20, 30, 40 a quarter lies half way between the first two.
    [Theory]
    [InlineData(0, 10)]
    [InlineData(0.05, 10)]
    [InlineData(0.125, 10)]
    [InlineData(0.25, 15)]
    [InlineData(0.3, 17)]
    [InlineData(0.5, 25)]
    [InlineData(0.875, 40)]
    [InlineData(0.95, 40)]
    [InlineData(1, 40)]
    public void A_quantile_lies_between_the_draws_beside_it(double share, double value) => Assert.Equal(value, new Spread(Units.Volt, [40, 10, 30, 20]).Quantile(share), 1e-12);

    [Fact]
    public void A_spread_knows_its_limits()
    {
        var spread = new Spread(Units.Volt, [40, 10, 30, 20]);
        Assert.Equal((15, 35), spread.Middle(0.5)); // quantiles 0.25 and 0.75
        Assert.Equal(0.75, spread.ShareWhere(value => value > 10));
        Assert.Equal(Math.Sqrt(2), new Spread(Units.Volt, [1, 3]).StandardDoubt, 1e-15);
        Assert.All(new[] { -0.01, 1.01, double.NaN }, share => Assert.Throws<ArgumentOutOfRangeException>(() => spread.Quantile(share)));
        Assert.Throws<ArgumentException>(() => new Spread(Units.Volt, [1]));
        var none = new Spread(Units.Volt, [double.NaN, double.PositiveInfinity]);
        Assert.Equal((0, double.NaN, double.NaN), (none.Answered, none.Mean, none.Quantile(0.5)));
        Assert.Equal(0, none.ShareWhere(_ => true));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Shape.StudentT(2));
        Assert.Equal(3, new Shape.StudentT(3).DegreesOfFreedom);
    }

    [Fact]
    public void The_weakest_origin_is_a_guess_and_the_strongest_a_reading()
    {
        Origin[] rising =
        [
            new Origin.Assumed("why"), new Origin.Claimed("label"), new Origin.Sheet("sheet", "p. 2"), new Origin.Published(new SourceKey("key"), "table"),
            new Origin.Fitted(new TrialId("t"), []), new Origin.Measured(new RunId("r"), "meter"), new Origin.WorkedOut("law", []),
        ];
        Assert.Equal(["assumed", "claimed", "sheet", "published", "fitted", "measured", "worked out"], rising.Select(origin => origin.Word));
        for (int weak = 0; weak < rising.Length; weak++)
        {
            for (int strong = weak + 1; strong < rising.Length - 1; strong++)
            {
                Assert.Same(rising[weak], Of(rising[weak], rising[strong]).Weakest());
                Assert.Same(rising[weak], Of(rising[strong], rising[weak]).Weakest());
            }
        }

        var nothing = new Origin.WorkedOut("law", []);
        Assert.Same(nothing, nothing.Weakest());
        var predicted = new Origin.Predicted(new ArrangementId("a"), new StudyState("s"), [new("x", Estimate.Exact(1, Units.Volt, rising[2])), new("y", Estimate.Exact(1, Units.Volt, Of(rising[1], rising[5])))]);
        Assert.Equal("predicted", predicted.Word);
        Assert.Equal([rising[2], rising[1], rising[5]], predicted.Leaves());
    }

    [Fact]
    public void Doubts_are_kept_per_cause_with_their_signs()
    {
        var a = Doubts.From(Own, 3).With(Cause.Normal("two", CauseGroup.Claim), -4);
        Assert.Equal(5, a.Combined);
        Assert.Equal(0, a.By(Cause.Normal("unknown", CauseGroup.Trial)));
        Assert.Equal((-6, 8), (a.Times(-2).By(Own), a.Times(-2).By(Cause.Normal("two", CauseGroup.Claim))));
        Assert.Empty(a.Times(0).Causes);
        Assert.Equal(6, a.Add(a).By(Own));
        Assert.Empty(a.Subtract(a).Causes);
        Assert.Single(a.With(Own, -3).Causes);
        Assert.Throws<ArgumentOutOfRangeException>(() => a.With(Own, double.NaN));

        // By hand: 9 and 16 of 25; the larger first, alike ones by name.
        Assert.Equal([("two", 0.64), ("own", 0.36)], a.Shares().Select(pair => (pair.Cause.Id, pair.Share)));
        Assert.Equal([(CauseGroup.Claim, 0.64), (CauseGroup.Trial, 0.36)], a.SharesByGroup());
        Assert.Equal(["a", "b"], Doubts.From(Cause.Normal("b", CauseGroup.Trial), 1).With(Cause.Normal("a", CauseGroup.Trial), -1).Shares().Select(pair => pair.Cause.Id));
        Assert.Empty(Doubts.None.Shares());

        // By hand: Σ 3·1 + (−4)·2 = −5; r = −5/(5·√5).
        var b = Doubts.From(Own, 1).With(Cause.Normal("two", CauseGroup.Claim), 2);
        Assert.Equal(-5, Doubts.Covariance(a, b));
        Assert.Equal(-1 / Math.Sqrt(5), Doubts.Correlation(a, b), 1e-15);
        Assert.Equal(0, Doubts.Correlation(a, Doubts.None));
        Assert.Equal(0, Doubts.Correlation(Doubts.None, a));
    }

    /// <summary>By hand: [4 12 −16; 12 37 −43; −16 −43 98] is L·Lᵀ of (2), (6, 1), (−8, 5, 3).</summary>
    [Fact]
    public void A_covariance_is_taken_apart_into_its_root()
    {
        var doubts = Doubts.FromCovariance("fit", CauseGroup.Trial, new double[,] { { 4, 12, -16 }, { 12, 37, -43 }, { -16, -43, 98 } }, new Shape.StudentT(5));
        double[][] root = [.. doubts.Select(own => Enumerable.Range(1, 3).Select(i => own.By(Cause.Normal($"fit {i}", CauseGroup.Trial))).ToArray())];
        Assert.Equal([2, 0, 0], root[0], (x, y) => Math.Abs(x - y) < 1e-12);
        Assert.Equal([6, 1, 0], root[1], (x, y) => Math.Abs(x - y) < 1e-12);
        Assert.Equal([-8, 5, 3], root[2], (x, y) => Math.Abs(x - y) < 1e-11);
        Assert.Equal(new Shape.StudentT(5), doubts[2].Causes.First().Shape);
    }

    [Fact]
    public void Rounding_is_forgiven_in_a_covariance_and_no_more()
    {
        static IReadOnlyList<Doubts> Of(double[,] covariance) => Doubts.FromCovariance("fit", CauseGroup.Trial, covariance);

        // Unequal halves: of two variances of 1 and 4, 1e-6 of √(1·4) is forgiven.
        Assert.Equal(2, Of(new[,] { { 1, 1 }, { 1 + 1.9e-6, 4 } }).Count);
        Assert.Throws<ArgumentException>(() => Of(new[,] { { 1, 1 }, { 1 + 2.1e-6, 4 } }));
        Assert.Throws<ArgumentException>(() => Of(new[,] { { 1, 1 + 2.1e-6 }, { 1, 4 } }));
        Assert.Throws<ArgumentException>(() => Of(new[,] { { 1, double.NaN }, { double.NaN, 4 } }));
        Assert.Throws<ArgumentException>(() => Of(new double[,] { { 1, 0 } }));

        // A correlation above one by e leaves 1 − (1 + e)² ≈ −2e of a variance: 1e-10 of it is forgiven.
        Assert.Single(Of(new[,] { { 1, 1 + 4e-11 }, { 1 + 4e-11, 1 } })[1].Causes);
        Assert.Throws<ArgumentException>(() => Of(new[,] { { 1, 1 + 6e-11 }, { 1 + 6e-11, 1 } }));

        // Two that are one and the same, and a third that goes with them unlike: 1e-5 is forgiven, either way.
        Assert.All(new[] { 9e-6, -9e-6 }, off => Assert.Equal(3, Of(new[,] { { 1, 1, 0.5 }, { 1, 1, 0.5 + off }, { 0.5, 0.5 + off, 1 } }).Count));
        Assert.All(new[] { 1.1e-5, -1.1e-5 }, off => Assert.Throws<ArgumentException>(() => Of(new[,] { { 1, 1, 0.5 }, { 1, 1, 0.5 + off }, { 0.5, 0.5 + off, 1 } })));

        // What has no variance goes with nothing.
        Assert.Equal([0.0, 2.0], Of(new double[,] { { 0, 0 }, { 0, 4 } }).Select(own => own.Combined));
        Assert.Equal([2.0, 0.0], Of(new double[,] { { 4, 0 }, { 0, 0 } }).Select(own => own.Combined));
    }

    [Fact]
    public void A_law_is_asked_in_the_SI_and_answers_in_the_unit_wanted()
    {
        // By hand: 1000 mV ± 10 mV over 2 Ω is 500 mA ± 5 mA; the other way round the slope turns its sign.
        var volts = new Input("V", new Estimate(1000, Units.Millivolt, Doubts.From(Own, 10), Guess));
        var ohms = new Input("R", Estimate.Exact(2, Units.Ohm, Guess));
        var amps = Propagate.Through((v, r) => v / r, Units.Milliampere, "I", volts, ohms);
        Assert.Equal(500, amps.Value, 1e-9);
        Assert.Equal(5, amps.Doubts.By(Own), 1e-5);
        Assert.Equal(5, Propagate.ThroughSlopes(x => x[0] / x[1], x => [1 / x[1], 0], Units.Milliampere, "I", volts, ohms).Doubts.By(Own), 1e-12);
        Assert.Equal(-20, Propagate.Through(v => 2 / v, Units.Milliohm, "R", volts).Doubts.By(Own), 1e-4); // 2/1² · 0.01, in thousandths
        Assert.Throws<ArgumentException>(() => Propagate.ThroughSlopes(x => x[0], _ => [1], Units.Volt, "x", volts, ohms));
        Assert.Equal(0, Propagate.Through(x => 3 * x, Units.Volt, "x", new Input("R", ohms.Value)).StandardDoubt);

        // Slopes hold where the value is nought, and where the doubt is far smaller than the value, of either sign.
        Assert.Equal(0.03, Propagate.Through(x => 3 * x, Units.Volt, "x", new Input("x", new Estimate(0, Units.Volt, Doubts.From(Own, 0.01), Guess))).Doubts.By(Own), 1e-12);
        Assert.All(new[] { 5.0, -5.0 }, value => Assert.Equal(3e-12, Propagate.Through(x => 3 * x, Units.Volt, "x", new Input("x", new Estimate(value, Units.Volt, Doubts.From(Own, 1e-12), Guess))).Doubts.By(Own), 1e-18));

        // 1 °F of doubt is 5/9 of a kelvin.
        var hot = new Input("T", new Estimate(212, Units.Fahrenheit, Doubts.From(Own, 9), Guess));
        Assert.Equal(5, Propagate.Through(t => t, Units.Celsius, "T", hot).Doubts.By(Own), 1e-5);
        Assert.Equal(9, Propagate.Through(t => t, Units.Fahrenheit, "T", hot).Doubts.By(Own), 1e-5);
        Assert.Equal([500.0, 500.0, 500.0], Propagate.Drawn(x => x[0] / 2, Units.Milliampere, 1, 3, new Input("V", Estimate.Exact(1, Units.Volt, Guess))).Values, (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact]
    public void A_checked_answer_has_a_value_or_a_problem()
    {
        var problem = new Problem("What.", "here", "1", "2", "Next.");
        Assert.Equal("What. Where: here. Value: 1. Limit: 2. Next: Next.", problem.ToString());
        var bad = new Checked<int>(problem);
        Assert.False(bad.IsFine);
        Assert.Throws<InvalidOperationException>(() => bad.Value);
        Assert.Same(problem, Assert.Single(bad.Then(value => new Checked<string>("x")).Problems));
        Assert.Same(problem, Assert.Single(bad.Map(value => "x").Problems));
        Assert.Equal(4, new Checked<int>(2).Map(value => value * 2).Then(value => new Checked<int>(value)).Value);
        Assert.Throws<ArgumentException>(() => new Checked<int>([]));
        Assert.NotEqual(Cause.Normal("a", CauseGroup.Trial), Cause.Normal("b", CauseGroup.Trial));
        Assert.Equal(Cause.Normal("a", CauseGroup.Trial), Cause.Rectangular("a", CauseGroup.Claim)); // one cause by its name
    }

    private static Origin.WorkedOut Of(params Origin[] origins) => new("law", [.. origins.Select((origin, i) => new Input($"x{i}", Estimate.Exact(1, Units.Volt, origin)))]);
}
