using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

public class AccuracySpecTests
{
    private static readonly Origin Read = new Origin.Measured(new RunId("run"), "meter 1");

    [Theory]
    [InlineData("±(0.5 % rdg + 2 digits)", 0.005, 0, 2, 0, false)]
    [InlineData("±(0.5%+2)", 0.005, 0, 2, 0, false)]
    [InlineData("+-(1,2 % of reading + 3 dgt)", 0.012, 0, 3, 0, false)]
    [InlineData("0.8%+5d", 0.008, 0, 5, 0, false)]
    [InlineData("±1 %", 0.01, 0, 0, 0, false)]
    [InlineData("±(0.02 % of reading + 0.005 % of range)", 0.0002, 0.00005, 0, 0, false)]
    [InlineData("±(50 ppm of rdg + 10 ppm of range)", 0.00005, 0.00001, 0, 0, false)]
    [InlineData("±(1 % + 2 °C)", 0.01, 0, 0, 2, false)]
    [InlineData("±2.5 °C or 0.75 %, whichever is larger", 0.0075, 0, 0, 2.5, true)]
    [InlineData("±1.5°C or 0.4%", 0.004, 0, 0, 1.5, true)]
    [InlineData("±0.05 V", 0, 0, 0, 0.05, false)]
    public void Specifications_are_read_as_they_are_printed(string text, double ofReading, double ofRange, double digits, double amount, bool larger)
    {
        var spec = AccuracySpec.Read(text).Value;
        Assert.Equal([ofReading, ofRange, digits, amount], [spec.OfReading, spec.OfRange, spec.Digits, spec.Fixed], (a, b) => Math.Abs(a - b) < 1e-15);
        Assert.Equal(larger, spec.TakesLarger);
    }

    [Theory]
    [InlineData("")]
    [InlineData("accurate")]
    [InlineData("2 or 3 digits")]
    [InlineData("0.5 % + pear")]
    [InlineData("5 V + 2 A")]
    public void What_is_no_specification_is_refused(string text) => Assert.False(AccuracySpec.Read(text).IsFine);

    /// <summary>4.20 V, ±(0.5 % + 2 digits of 0.01): a 0.041, u 0.02367136, parts apart 0.01674316 V; worked out by a second program.</summary>
    [Fact]
    public void One_limit_is_rectangular_and_parts_apart_are_smaller()
    {
        var spec = AccuracySpec.Read("±(0.5 % + 2 digits)").Value;
        Assert.Equal(0.041, spec.Limit(4.20, 0.01), 1e-12);
        Assert.Equal(0.02367136, Instrument(spec.Doubt(4.20, Units.Volt, 0.01, "meter 1", "r1")), 5e-9);
        Assert.Equal(0.01674316, Instrument((spec with { Terms = SpecTerms.Apart }).Doubt(4.20, Units.Volt, 0.01, "meter 1", "r1")), 5e-9);

        // By hand: the last digit is 0.01/√12 = 0.00288675 beside it.
        Assert.Equal(0.0238467, spec.Doubt(4.20, Units.Volt, 0.01, "meter 1", "r1").Combined, 5e-8);
    }

    /// <summary>V 4.98 ± (0.5 % + 2·0.01), I 1.27 ± (1.2 % + 3·0.01): u_P 0.1341759 W, u_R 0.08318925 Ω; worked out by a second program, last digits left out.</summary>
    [Fact]
    public void Power_and_resistance_have_the_doubt_of_both_meters()
    {
        var volts = Estimate(4.98, Units.Volt, "0.5 % + 2 digits", "meter 1");
        var amps = Estimate(1.27, Units.Ampere, "1.2 % + 3 digits", "meter 2");
        Assert.Equal(0.02592303, volts.StandardDoubt, 5e-9);
        Assert.Equal(0.02611933, amps.StandardDoubt, 5e-9);
        Assert.Equal(0.1341759, Propagate.Through((v, i) => v * i, Units.Watt, "power", new("V", volts), new("I", amps)).StandardDoubt, 5e-7);
        Assert.Equal(0.08318925, Propagate.Through((v, i) => v / i, Units.Ohm, "resistance", new("V", volts), new("I", amps)).StandardDoubt, 5e-8);
    }

    [Fact]
    public void A_difference_on_one_meter_loses_its_offset_and_keeps_its_gain()
    {
        var spec = AccuracySpec.Read("0.5 % + 2 digits").Value with { Terms = SpecTerms.Apart };
        var open = spec.Doubt(4.10, Units.Volt, 0.01, "meter 1", "open");
        var loaded = spec.Doubt(3.60, Units.Volt, 0.01, "meter 1", "loaded");

        // By hand: gain 0.005·0.5/√3 = 0.00144338, last digits √2·0.01/√12 = 0.00408248; together 0.00433013.
        Assert.Equal(0.00433013, (open - loaded).Combined, 5e-9);
        Assert.DoesNotContain((open - loaded).Causes, cause => cause.Id.Contains("offset", StringComparison.Ordinal));
    }

    [Fact]
    public void A_ratio_on_one_meter_loses_its_gain()
    {
        var spec = AccuracySpec.Read("1 % rdg").Value;
        var v1 = new Estimate(4.0, Units.Volt, spec.Doubt(4.0, Units.Volt, 0, "meter 1", "a"), Read);
        var v2 = new Estimate(2.0, Units.Volt, spec.Doubt(2.0, Units.Volt, 0, "meter 1", "b"), Read);
        Assert.Equal(0, Propagate.ThroughSlopes(x => x[0] / x[1], x => [1 / x[1], -x[0] / (x[1] * x[1])], Units.One, "ratio", new("a", v1), new("b", v2)).StandardDoubt, 1e-12);
    }

    [Fact]
    public void The_larger_of_two_terms_stands_alone()
    {
        // [iec-60584-1] class 2 of type K: 2.5 °C up to 333 °C, 0.75 % above.
        var spec = AccuracySpec.Read("±2.5 °C or 0.75 %").Value;
        Assert.Equal(2.5, spec.Limit(300, 0), 1e-12);
        Assert.Equal(3.0, spec.Limit(400, 0), 1e-12);
        Assert.Equal(3.0 / Math.Sqrt(3), spec.Doubt(400, Units.Celsius, 0, "probe", "r").Combined, 1e-12);
        Assert.Equal(2.5 / Math.Sqrt(3), spec.Doubt(300, Units.Celsius, 0, "probe", "r").Combined, 1e-12);
    }

    [Fact]
    public void A_fixed_amount_follows_the_unit_of_the_reading() =>
        Assert.Equal(50 / Math.Sqrt(3), AccuracySpec.Read("±0.05 V").Value.Doubt(1200, Units.Millivolt, 0, "meter", "r").Combined, 1e-9);

    /// <summary>Hand stopwatch ±0.25 s an edge, common practice: an interval has √2·0.25/√3 = 0.2041241 s.</summary>
    [Fact]
    public void A_hand_stopwatch_is_off_at_both_ends()
    {
        Assert.Equal(0.2041241, UsualDoubts.Stopwatch("t").Combined, 5e-8);
        Assert.Equal(0.2500000, UsualDoubts.Stopwatch("t", 0.5).Combined, 5e-8); // by hand: √(0.0416667 + 0.25/12) = 0.25
        Assert.Equal(0.8504, UsualDoubts.OnRamp(4.166, UsualDoubts.Stopwatch("t")).Combined, 5e-5); // 4.166 K/s · 0.2041241 s
    }

    [Fact]
    public void A_note_rounded_to_five_degrees_has_a_doubt_of_1_443() => Assert.Equal(1.443, UsualDoubts.Noted(5, "T").Combined, 5e-4);

    [Fact]
    public void Readings_that_agree_keep_the_doubt_of_their_last_digit() =>
        Assert.Equal(0.00288675, UsualDoubts.Repeated([3.82, 3.82, 3.82], 0.01, "set").Doubts.Combined, 5e-9);

    [Fact]
    public void Five_readings_have_the_scatter_of_their_mean_and_t_limits()
    {
        // By hand: 1, 2, 3, 4, 5: mean 3, s = √2.5, s/√5 = 0.7071068; ν 4, so the cause carries √(4/2) of it.
        var (mean, doubts) = UsualDoubts.Repeated([1, 2, 3, 4, 5], 0.01, "set");
        Assert.Equal(3, mean, 1e-15);
        Assert.Equal(1.0, doubts.Combined, 1e-12);
        Assert.Equal(4, Coverage.EffectiveDegrees(doubts), 1e-12);

        // Draws reach the t limits: 95 % within 2.7764·0.7071 = 1.9632 (t from the table of [jcgm-100] annex G.2).
        var cause = doubts.Causes.Single();
        double[] drawn = [.. Enumerable.Range(0, 20_000).Select(i => Math.Abs(new Draw(3, i).Of(cause) * doubts.By(cause)))];
        Assert.Equal(0.95, drawn.Count(x => x <= 1.9632) / 20_000.0, 0.006); // four standard errors of a share of 20 000
    }

    [Fact]
    public void Two_readings_have_limits_as_wide_as_t_says()
    {
        // By hand: 1 and 3, s/√2 = 1, t95(1) = 12.7062: the bell shape has 12.7062/1.95996.
        Assert.Equal(12.7062 / 1.959964, UsualDoubts.Repeated([1, 3], 0.01, "set").Doubts.Combined, 5e-5);
    }

    [Theory]
    [InlineData(1, 12.7062)]
    [InlineData(2, 4.3027)]
    [InlineData(3, 3.1824)]
    [InlineData(9, 2.2622)]
    [InlineData(20, 2.0860)]
    public void Factors_are_those_of_the_t_table(double degrees, double factor) => Assert.Equal(factor, Coverage.Factor(0.95, degrees), 5e-5); // [jcgm-100] table G.2, more digits by a second program

    /// <summary>0.03 (ν 5), 0.02 (∞), 0.04 (9): ν 18.83773; worked out by a second program.</summary>
    [Fact]
    public void Effective_degrees_follow_Welch_and_Satterthwaite() =>
        Assert.Equal(18.83773, Coverage.EffectiveDegrees([(0.03, 5), (0.02, double.PositiveInfinity), (0.04, 9)]), 5e-6);

    [Fact]
    public void Two_results_further_apart_than_their_limits_disagree() =>
        Assert.Equal(1.024295, Coverage.Distance(4.98, 0.05, 5.06, 0.06), 5e-7); // by hand: 0.08/√(0.0025 + 0.0036)

    private static double Instrument(Doubts doubts) => Math.Sqrt(doubts.Pushes.Where(push => push.Cause.Group == CauseGroup.Instrument).Sum(push => push.By * push.By));

    private static Estimate Estimate(double value, Unit unit, string spec, string meter)
    {
        var all = AccuracySpec.Read(spec).Value.Doubt(value, unit, 0.01, meter, "r");
        var shared = all.Pushes.Where(push => push.Cause.Group == CauseGroup.Instrument).Aggregate(Doubts.None, (sum, push) => sum.With(push.Cause, push.By));
        return new(value, unit, shared, Read);
    }
}
