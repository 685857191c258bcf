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
    [InlineData("0.5 % rd + 2 dgts", 0.005, 0, 2, 0)]
    [InlineData("0.5 % m.v. + 2 counts", 0.005, 0, 2, 0)]
    [InlineData("0.5 % of value + 2 LSD", 0.005, 0, 2, 0)]
    [InlineData("0.5 % f.s.", 0, 0.005, 0, 0)]
    [InlineData("0.5 % of full scale & 1 count", 0, 0.005, 1, 0)]
    [InlineData("0.1 % of span, 0.2 % rng", 0, 0.003, 0, 0)]
    [InlineData("0.1 % reading and 0.2 % rdg", 0.003, 0, 0, 0)]
    [InlineData("2 digits + 3 dig.", 0, 0, 5, 0)]
    [InlineData("[0.5 % + 20 mV]", 0.005, 0, 0, 0.02)]
    [InlineData("0.5 % + 20 mV + 3 d", 0.005, 0, 3, 0.02)]
    [InlineData("40 ppm", 0.00004, 0, 0, 0)]
    [InlineData("40ppm of range", 0, 0.00004, 0, 0)]
    [InlineData("0.5%+2", 0.005, 0, 2, 0)]
    [InlineData("3 C", 0, 0, 0, 3)]
    [InlineData("9 °F", 0, 0, 0, 5)] // nine steps of Fahrenheit are five kelvins
    [InlineData("0.3 K", 0, 0, 0, 0.3)]
    [InlineData("50 ms", 0, 0, 0, 0.05)]
    public void Every_word_of_a_sheet_is_known(string text, double ofReading, double ofRange, double digits, double fixedSi)
    {
        var spec = AccuracySpec.Read(text).Value;
        Assert.Equal([ofReading, ofRange, digits, fixedSi], [spec.OfReading, spec.OfRange, spec.Digits, spec.Fixed * (spec.FixedUnit?.Factor ?? 1)], (a, b) => Math.Abs(a - b) < 1e-15);
        Assert.False(spec.TakesLarger);
    }

    [Theory]
    [InlineData("1 % or 2 C", true)]
    [InlineData("1 % or 2 C whichever is greater", true)]
    [InlineData("1 % and 2 C", false)]
    public void Only_an_or_takes_the_larger(string text, bool larger) => Assert.Equal(larger, AccuracySpec.Read(text).Value.TakesLarger);

    /// <summary>80 characters are read, 81 are no line of a sheet; the refusal shows the first 80.</summary>
    [Fact]
    public void A_specification_has_at_most_eighty_characters()
    {
        string eighty = "1 % + 2 digits".PadRight(80);
        Assert.Equal(2, AccuracySpec.Read(eighty).Value.Digits);
        var refused = Assert.Single(AccuracySpec.Read(eighty + " ").Problems);
        Assert.Equal($"'{eighty}...'", refused.Value);
        Assert.Equal("'pear'", Assert.Single(AccuracySpec.Read("pear").Problems).Value);
    }

    [Theory]
    [InlineData("1 % or")]
    [InlineData("2 digits or 2 C")]
    [InlineData("2")]
    [InlineData("0.5 % + 2.5")]
    [InlineData("0.5 % + 2 pears")]
    [InlineData("0.5 % + 2 + 3 C")]
    [InlineData("1 % + 5k")]
    [InlineData("5 1/h")]
    [InlineData("+")]
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

    /// <summary>By hand, at 4.00: volts 0.01·4 + 2·0.01, amps 0.02·4 + 3·0.01; at 300 °C 0.01·300 + 2.</summary>
    [Fact]
    public void Meters_without_a_sheet_promise_what_common_ones_do()
    {
        Assert.Equal(0.06, AccuracySpec.BenchVolts.Limit(4, 0.01), 1e-15);
        Assert.Equal(0.11, AccuracySpec.BenchAmps.Limit(4, 0.01), 1e-15);
        Assert.Equal(5, AccuracySpec.HandThermometer.Limit(300, 0.1), 1e-12);
        Assert.Equal(5 / Math.Sqrt(3), AccuracySpec.HandThermometer.Doubt(300, Units.Celsius, 0, "probe", "r").Combined, 1e-12);
        Assert.Equal(0.06, AccuracySpec.BenchVolts.Limit(-4, 0.01), 1e-15);
    }

    /// <summary>By hand: 0.1 % of 4 and 0.05 % of a range of 20 are 0.004 + 0.01.</summary>
    [Fact]
    public void A_share_of_the_range_needs_the_range()
    {
        var spec = new AccuracySpec(0.001, 0.0005, 0, 0);
        Assert.Equal(0.014, spec.Limit(4, 0.01, 20), 1e-15);
        Assert.Throws<ArgumentNullException>(() => spec.Limit(4, 0.01));
        Assert.Equal(0.014 / Math.Sqrt(3), spec.Doubt(4, Units.Volt, 0, "m", "r", 20).Combined, 1e-15);
        Assert.Contains(spec.Doubt(4, Units.Volt, 0, "m", "r", 20).Causes, cause => cause.Id == "m V offset at 20 V");
        Assert.Equal(0.004, (spec with { OfRange = 0 }).Limit(4, 0.01), 1e-15);
    }

    /// <summary>By hand at −4.20 with 0.5 % and 2 digits of 0.01: gain −0.021/√3, offset 0.02/√3, together −√(2·0.021·0.02)/√3, last digit 0.01/√12.</summary>
    [Fact]
    public void Each_part_of_a_promise_is_a_cause_of_its_own_with_its_sign()
    {
        var spec = AccuracySpec.Read("0.5 % + 2 digits").Value;
        var below = spec.Doubt(-4.20, Units.Volt, 0.01, "meter 1", "r1").Pushes.ToDictionary(push => push.Cause.Id, push => push.By);
        Assert.Equal(["meter 1 V gain", "meter 1 V gain with offset at 0.01 V", "meter 1 V offset at 0.01 V", "r1 last digit"], below.Keys.Order(StringComparer.Ordinal));
        Assert.Equal(-0.0121244, below["meter 1 V gain"], 5e-8);
        Assert.Equal(0.0115470, below["meter 1 V offset at 0.01 V"], 5e-8);
        Assert.Equal(-0.0167332, below["meter 1 V gain with offset at 0.01 V"], 5e-8);
        Assert.Equal(0.0028868, below["r1 last digit"], 5e-8);
        Assert.Equal("meter 1 V gain", spec.Doubt(1, Units.Millivolt, 0.01, "meter 1", "r1").Causes.First().Id); // one gain for every range of volts
    }

    /// <summary>A fixed amount alone has no step in its name, so that all ranges share it.</summary>
    [Fact]
    public void A_fixed_amount_is_one_cause_on_every_step()
    {
        Assert.Contains(AccuracySpec.Read("0.05 V").Value.Doubt(1, Units.Volt, 0.01, "m", "r").Causes, cause => cause.Id == "m V offset");
        var mixed = AccuracySpec.Read("2 digits + 0.05 V").Value;
        Assert.Equal(0.07 / Math.Sqrt(3), Instrument(mixed.Doubt(1, Units.Volt, 0.01, "m", "r")), 1e-15);
        Assert.Throws<ArgumentException>(() => mixed.Doubt(1, Units.Millivolt, 0.01, "m", "r"));
        Assert.Equal(0.25 / Math.Sqrt(3), Instrument(new AccuracySpec(0, 0, 2, 0.05).Doubt(1, Units.Millivolt, 0.1, "m", "r")), 1e-15); // no unit of its own: that of the reading
        var ranged = new AccuracySpec(0, 0.01, 0, 0.05) { FixedUnit = Units.Volt };
        Assert.Throws<ArgumentException>(() => ranged.Doubt(1, Units.Millivolt, 0, "m", "r", 5));
        Assert.Equal(0.1 / Math.Sqrt(3), Instrument(ranged.Doubt(1, Units.Volt, 0, "m", "r", 5)), 1e-15);
        Assert.Equal(0.05 / Math.Sqrt(3), Instrument(AccuracySpec.Read("0.05 V").Value.Doubt(1, Units.Ampere, 0, "m", "r")), 1e-15);
    }

    /// <summary>By hand: 1 % of 200 is 2 and the fixed amount is 2: at the tie the gain stands, just beneath the offset.</summary>
    [Fact]
    public void Where_one_term_stands_alone_the_other_is_no_cause()
    {
        var spec = AccuracySpec.Read("1 % or 2 C").Value;
        Assert.Equal(["m °C gain"], spec.Doubt(200, Units.Celsius, 0, "m", "r").Causes.Select(cause => cause.Id));
        Assert.Equal(["m °C gain"], spec.Doubt(-200, Units.Celsius, 0, "m", "r").Causes.Select(cause => cause.Id));
        Assert.Equal(["m °C offset"], spec.Doubt(199, Units.Celsius, 0, "m", "r").Causes.Select(cause => cause.Id));
    }

    private static double Instrument(Doubts doubts) => Math.Sqrt(doubts.Pushes.Where(push => push.Cause.Group == CauseGroup.Instrument).Sum(push => push.By * push.By));

    private static Estimate Estimate(double value, Unit unit, string spec, string meter)
    {
        var all = AccuracySpec.Read(spec).Value.Doubt(value, unit, 0.01, meter, "r");
        var shared = all.Pushes.Where(push => push.Cause.Group == CauseGroup.Instrument).Aggregate(Doubts.None, (sum, push) => sum.With(push.Cause, push.By));
        return new(value, unit, shared, Read);
    }
}
